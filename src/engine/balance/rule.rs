//! The order of events within a day: how much a store yields, keeps and spills.

/// The lesser and the greater of two numbers that are never NaN: a comparison, where the standard library's own call a
/// function in WebAssembly.
pub(super) trait Bound {
    /// The lesser.
    fn least(self, other: Self) -> Self;
    /// The greater.
    fn most(self, other: Self) -> Self;
}

impl Bound for f64 {
    #[inline(always)]
    fn least(self, other: Self) -> Self {
        if other < self { other } else { self }
    }
    #[inline(always)]
    fn most(self, other: Self) -> Self {
        if self < other { other } else { self }
    }
}

/// What one store does on one day, in L.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outcome {
    /// Delivered to the uses.
    pub yield_l: f64,
    /// In store when the day ends.
    pub content_l: f64,
    /// Over the rim.
    pub spill_l: f64,
}

/// One day of a store of capacity S with content V₋₁, inflow Q and demand D, all in L and 0 or more:
/// `Y = min(D, V₋₁ + θQ)`, `V = min(V₋₁ + Q − θY, S) − (1 − θ)Y`, spill `V₋₁ + Q − Y − V`.
///
/// θ (0 to 1) is the share of the inflow that may be drawn before it spills: 0 is yield after spillage, 1 yield
/// before spillage. Where a tiny store meets a huge day the yield is held to what can be in store beside it,
/// `S/(1 − θ)`, so that the content is never below empty.
///
/// Source: Jenkins et al. 1978; Fewkes & Butler 2000 (as interpolated between by θ there).
#[inline(always)]
pub fn day(capacity_l: f64, content_l: f64, inflow_l: f64, demand_l: f64, inflow_first: f64) -> Outcome {
    let later = 1.0 - inflow_first;
    let mut yield_l = demand_l.least(content_l + inflow_first * inflow_l);
    if later > 0.0 {
        yield_l = yield_l.least(capacity_l / later);
    }
    let before_spill = content_l + inflow_l - inflow_first * yield_l;
    if before_spill > capacity_l {
        let kept = (capacity_l - later * yield_l).most(0.0);
        Outcome { yield_l, content_l: kept, spill_l: before_spill - capacity_l }
    } else {
        Outcome { yield_l, content_l: (before_spill - later * yield_l).most(0.0), spill_l: 0.0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(inflow_first: f64, yields: [f64; 5], contents: [f64; 5], spills: [f64; 5]) {
        let mut content = 3.0;
        for (at, inflow) in [0.0, 6.0, 0.0, 0.0, 1.0].into_iter().enumerate() {
            let outcome = day(5.0, content, inflow, 2.0, inflow_first);
            assert_eq!(outcome, Outcome { yield_l: yields[at], content_l: contents[at], spill_l: spills[at] }, "{at}");
            content = outcome.content_l;
        }
    }

    #[test]
    fn five_days_by_hand_under_both_rules() {
        // S = 5, V₀ = 3, D = 2, Q = 0 6 0 0 1, worked by hand from the published rules (Jenkins et al. 1978).
        check(0.0, [2.0, 1.0, 2.0, 2.0, 0.0], [1.0, 4.0, 2.0, 0.0, 1.0], [0.0, 2.0, 0.0, 0.0, 0.0]);
        check(1.0, [2.0; 5], [1.0, 5.0, 3.0, 1.0, 0.0], [0.0; 5]);
    }

    #[test]
    fn a_tiny_store_on_a_huge_day_is_never_below_empty() {
        let outcome = day(1.0, 1.0, 1000.0, 500.0, 0.5);
        assert_eq!(outcome.yield_l, 2.0);
        assert_eq!(outcome.content_l, 0.0);
        assert!((1001.0 - outcome.yield_l - outcome.content_l - outcome.spill_l).abs() < 1e-12);
    }
}

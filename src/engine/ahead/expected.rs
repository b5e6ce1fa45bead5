//! What to expect of the next outcome, from outcomes that are as likely.

use crate::quantity::order::sorted;

/// A range: one outcome in ten is expected below, one above, and half on either side of the middle.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Expected {
    /// One in ten is expected to be less.
    pub tenth: f64,
    /// As likely to be less as more.
    pub half: f64,
    /// One in ten is expected to be more.
    pub ninetieth: f64,
}

/// The fewest outcomes from which a range of 80 % can be told: of nine, the next lies between the least and the most
/// with that chance.
pub const FEWEST: usize = 9;

impl Expected {
    /// The range of some outcomes, in any order; all 0 of none.
    pub fn of(outcomes: Vec<f64>) -> Self {
        let sorted = sorted(outcomes);
        Self { tenth: next(&sorted, 0.1), half: next(&sorted, 0.5), ninetieth: next(&sorted, 0.9) }
    }
}

/// The value below which the next outcome lies with a chance of `share` (0 to 1), from outcomes that are sorted and as
/// likely: at place `share (n + 1)` of them, straight between neighbours, held to the least and the most; 0 of none.
///
/// The next of n + 1 interchangeable outcomes falls into each of the n + 1 gaps with the same chance, so that the range
/// from 10 % to 90 % holds 80 % of what comes, however few the years (nine at least). The percentiles of the sample
/// itself, which lie nearer together, would promise too much.
///
/// Source: Weibull 1939, as definition 6 of Hyndman & Fan, The American Statistician 50, 1996.
pub fn next(sorted: &[f64], share: f64) -> f64 {
    let Some(last) = sorted.len().checked_sub(1) else { return 0.0 };
    #[expect(clippy::cast_precision_loss, reason = "years of a few centuries")]
    let place = (share * (sorted.len() + 1) as f64 - 1.0).clamp(0.0, last as f64);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to the last index")]
    let below = place.floor() as usize;
    let above = (below + 1).min(last);
    let part = place - place.floor();
    let (least, most) = (sorted[below], sorted[above]);
    if part == 0.0 || least == most { least } else { least + part * (most - least) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nine_years_reach_from_the_least_to_the_most_and_more_years_lie_within() {
        // By hand from definition 6: of nine the 10 % point is the 0.1 · 10 = 1st, of nineteen the 2nd; of ten it lies
        // at place 1.1, a tenth of the way from the first to the second.
        let numbers = |to: u8| (1..=to).map(f64::from).collect::<Vec<_>>();
        assert_eq!(Expected::of(numbers(9)), Expected { tenth: 1.0, half: 5.0, ninetieth: 9.0 });
        assert_eq!(Expected::of(numbers(19)), Expected { tenth: 2.0, half: 10.0, ninetieth: 18.0 });
        assert!((Expected::of(numbers(10)).tenth - 1.1).abs() < 1e-12);
        assert_eq!(Expected::of(numbers(3)), Expected { tenth: 1.0, half: 2.0, ninetieth: 3.0 });
        assert_eq!(Expected::of(Vec::new()), Expected::default());
    }

    #[test]
    fn what_never_ends_is_not_reckoned_with() {
        let days = [3.0, f64::INFINITY, f64::INFINITY];
        assert_eq!(next(&days, 0.25), 3.0);
        assert_eq!(next(&days, 0.5), f64::INFINITY);
    }
}

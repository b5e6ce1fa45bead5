//! The smallest store that never runs dry, without trying any: the sequent peak.

/// What a store must hold so that no day is short, in L, or why none suffices.
///
/// All water is taken as held in one store that is full at first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SequentPeak {
    /// So much, under either rule for the order of events within a day.
    Enough {
        /// Under yield before spillage.
        before_spillage_l: f64,
        /// Under yield after spillage.
        after_spillage_l: f64,
    },
    /// More is wanted than comes: any store, however large, runs dry in the end.
    Impossible {
        /// Mean inflow, in L a day.
        mean_inflow_l: f64,
        /// Mean demand, in L a day.
        mean_demand_l: f64,
    },
}

/// The deficit that has run up by the end of each step: `Kₜ = max(0, Kₜ₋₁ + Dₜ − Qₜ)`, `K₀ = 0`.
///
/// Source: Thomas & Fiering, in Maass et al., Design of Water-Resource Systems (1962), and Thomas & Fiering 1963.
pub fn deficits<'a>(
    inflow_l: impl IntoIterator<Item = &'a f64>,
    demand_l: impl IntoIterator<Item = &'a f64>,
) -> impl Iterator<Item = f64> {
    inflow_l.into_iter().zip(demand_l).scan(0.0, |deficit: &mut f64, (inflow, demand)| {
        *deficit = (*deficit + demand - inflow).max(0.0);
        Some(*deficit)
    })
}

/// Sequent peak over the days taken twice in a row, so that a dry spell across the ends counts whole.
///
/// Under yield before spillage it is the greatest of the deficits K. Under yield after spillage a day's use must be in
/// store when the day begins and its inflow must find room beside it, so that
/// `xₜ = max(Dₜ + Dₜ₊₁, xₜ₋₁ + Dₜ₊₁ − Qₜ)`, `x₀ = D₁`, and the store must hold the greatest x: with constant demand that is
/// K + 2D (a linear program gives the same).
///
/// # Example
/// ```
/// use eavewater::engine::sizing::sequent_peak::{SequentPeak, sequent_peak};
/// // Two days of use must be bridged; the inflow comes on the third.
/// let peak = sequent_peak(&[0.0, 0.0, 6.0], &[2.0, 2.0, 2.0]);
/// assert_eq!(peak, SequentPeak::Enough { before_spillage_l: 4.0, after_spillage_l: 8.0 });
/// ```
#[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
pub fn sequent_peak(inflow_l: &[f64], demand_l: &[f64]) -> SequentPeak {
    let days = inflow_l.len().min(demand_l.len());
    let (inflow_l, demand_l) = (&inflow_l[..days], &demand_l[..days]);
    let (inflow, demand): (f64, f64) = (inflow_l.iter().sum(), demand_l.iter().sum());
    // Rounding alone makes nothing impossible.
    if demand > inflow * (1.0 + 1e-12) {
        return SequentPeak::Impossible { mean_inflow_l: inflow / days as f64, mean_demand_l: demand / days as f64 };
    }
    let before_spillage_l =
        deficits(inflow_l.iter().chain(inflow_l), demand_l.iter().chain(demand_l)).fold(0.0, f64::max);
    let mut filled = demand_l.first().copied().unwrap_or(0.0);
    let mut after_spillage_l = filled;
    for day in 0..2 * days {
        let (today, tomorrow) = (demand_l[day % days], demand_l[(day + 1) % days]);
        filled = (today + tomorrow).max(filled + tomorrow - inflow_l[day % days]);
        after_spillage_l = after_spillage_l.max(filled);
    }
    SequentPeak::Enough { before_spillage_l, after_spillage_l }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_worked_table_of_sixteen_months() {
        // "Reservoir Operations and Mass Balance", worked example by hand (Computational Geography Laboratory, 2026):
        // release 15 a month, required storage 68; the column K follows from the printed inflows by the recursion.
        let inflow = [8.0, 6.0, 10.0, 25.0, 40.0, 50.0, 30.0, 12.0, 8.0, 5.0, 4.0, 3.0, 4.0, 6.0, 10.0, 22.0];
        let steps: Vec<f64> = deficits(&inflow, &[15.0; 16]).collect();
        assert_eq!(steps, [7.0, 16.0, 21.0, 11.0, 0.0, 0.0, 0.0, 3.0, 10.0, 20.0, 31.0, 43.0, 54.0, 63.0, 68.0, 61.0]);
        // Its inflows sum to 243, its release to 240.
        assert!(matches!(sequent_peak(&inflow, &[15.0; 16]), SequentPeak::Enough { .. }));
    }

    #[test]
    fn nine_years_of_a_textbook() {
        // Loucks & van Beek, Water Resource Systems Planning and Management: inflows and release from memory, the steps
        // follow from them; required 7.5.
        let inflow = [1.0, 3.0, 3.0, 5.0, 8.0, 6.0, 7.0, 2.0, 1.0];
        let release = [3.5; 9];
        let steps: Vec<f64> = deficits(inflow.iter().chain(&inflow), release.iter().chain(&release)).collect();
        assert_eq!(steps, [2.5, 3.0, 3.5, 2.0, 0.0, 0.0, 0.0, 1.5, 4.0, 6.5, 7.0, 7.5, 6.0, 1.5, 0.0, 0.0, 1.5, 4.0]);
        assert!(
            matches!(sequent_peak(&inflow, &release), SequentPeak::Enough { before_spillage_l, .. } if before_spillage_l == 7.5)
        );
    }

    #[test]
    fn an_exercise_with_varying_demand() {
        // Exercise text (mass diagram, sequent peak, linear program), inflows and demands as read; total inflow equals
        // total demand; worked here: 11 at the end of one pass, 12 in two.
        let (inflow, demand) = ([6.0, 10.0, 9.0, 5.0, 4.0, 0.0], [7.0, 0.0, 7.0, 8.0, 4.0, 8.0]);
        assert_eq!(deficits(&inflow, &demand).last(), Some(11.0));
        assert!(
            matches!(sequent_peak(&inflow, &demand), SequentPeak::Enough { before_spillage_l, .. } if before_spillage_l == 12.0)
        );
    }

    #[test]
    fn more_wanted_than_comes_is_impossible() {
        assert_eq!(
            sequent_peak(&[1.0, 2.0], &[2.0, 2.0]),
            SequentPeak::Impossible { mean_inflow_l: 1.5, mean_demand_l: 2.0 }
        );
        assert_eq!(sequent_peak(&[], &[]), SequentPeak::Enough { before_spillage_l: 0.0, after_spillage_l: 0.0 });
    }
}

//! How quickly a system recovers and how hard it fails.

use super::dry_runs::DryRun;

/// Resilience and vulnerability of a run with dry days.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Resilience {
    /// Chance that a dry day is followed by one that isn't, 0 to 1.
    pub resilience: f64,
    /// Mean over the stretches of dry days of what the house lacked on the worst of their days, in L.
    pub vulnerability_l: f64,
}

/// Resilience: the number of stretches that ended over the number of dry days from which a next day is known.
/// Vulnerability: the mean of the stretches' worst days. `None` for a run without dry days; `still_dry` says whether
/// the last day of the run was one.
///
/// Source: Hashimoto, Stedinger & Loucks, Water Resources Research 18(1), 1982: `γ = ρ/(1 − α)` as the mean of
/// transitions from unsatisfactory to satisfactory, and `ν` as the expected largest severity of a sojourn with equal
/// weights.
#[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
pub fn resilience(runs: &[DryRun], still_dry: bool) -> Option<Resilience> {
    let dry_days: usize = runs.iter().map(|run| run.days).sum();
    if dry_days == 0 {
        return None;
    }
    let unfinished = usize::from(still_dry);
    let followed = dry_days - unfinished;
    let ended = runs.len() - unfinished;
    Some(Resilience {
        resilience: if followed == 0 { 0.0 } else { ended as f64 / followed as f64 },
        vulnerability_l: runs.iter().map(|run| run.worst_day_l).sum::<f64>() / runs.len() as f64,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono::NaiveDate;

    #[test]
    fn two_stretches_by_hand() {
        // Dry for 3 days (worst 40 L) and for 1 day (10 L), both over at the end: 2 recoveries from 4 dry days.
        let run = |days, worst_day_l| DryRun { start: NaiveDate::MIN, days, shortfall_l: worst_day_l, worst_day_l };
        let runs = [run(3, 40.0), run(1, 10.0)];
        assert_eq!(resilience(&runs, false), Some(Resilience { resilience: 0.5, vulnerability_l: 25.0 }));
        // The record ends within the second: one recovery from three days whose next day is known.
        assert_eq!(resilience(&runs, true).map(|both| both.resilience), Some(1.0 / 3.0));
        assert_eq!(resilience(&[], false), None);
    }
}

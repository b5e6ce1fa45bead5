//! How quickly a system recovers and how hard it fails.

use chrono::{Days, NaiveDate};

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
/// Vulnerability: the mean of the stretches' worst days. `None` for a run without dry days. `dates` are the days of the
/// run, in order; the day after one is not known where it isn't among them.
///
/// Source: Hashimoto, Stedinger & Loucks, Water Resources Research 18(1), 1982: `γ = ρ/(1 − α)` as the mean of
/// transitions from unsatisfactory to satisfactory, and `ν` as the expected largest severity of a sojourn with equal
/// weights.
#[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
pub fn resilience(runs: &[DryRun], dates: &[NaiveDate]) -> Option<Resilience> {
    let dry_days: usize = runs.iter().map(|run| run.days).sum();
    if dry_days == 0 {
        return None;
    }
    let after = |run: &DryRun| run.start.checked_add_days(Days::new(run.days as u64));
    let is_known = |date: NaiveDate| dates.binary_search(&date).is_ok();
    let unfinished = runs.iter().filter(|run| !after(run).is_some_and(is_known)).count();
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

    #[test]
    fn two_stretches_by_hand() {
        // Dry for 3 days (worst 40 L) and for 1 day (10 L), both over at the end: 2 recoveries from 4 dry days.
        let day = |day| NaiveDate::from_ymd_opt(2001, 1, day).unwrap_or_default();
        let run = |start, days, worst_day_l| DryRun { start, days, shortfall_l: worst_day_l, worst_day_l };
        let runs = [run(day(2), 3, 40.0), run(day(9), 1, 10.0)];
        let dates: Vec<NaiveDate> = (1..=10).map(day).collect();
        assert_eq!(resilience(&runs, &dates), Some(Resilience { resilience: 0.5, vulnerability_l: 25.0 }));
        // The record ends within the second: one recovery from three days whose next day is known.
        assert_eq!(resilience(&runs, &dates[..9]).map(|both| both.resilience), Some(1.0 / 3.0));
        // What comes after the first was left out too: no recovery is known of the two days whose next day is.
        let without: Vec<NaiveDate> = dates[..9].iter().copied().filter(|date| *date != day(5)).collect();
        assert_eq!(resilience(&runs, &without).map(|both| both.resilience), Some(0.0));
        assert_eq!(resilience(&[], &dates), None);
    }
}

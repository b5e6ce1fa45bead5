//! Stretches of dry days.

use chrono::NaiveDate;

use crate::engine::balance::series::SHORT_BY;

/// Dry days in a row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DryRun {
    /// The first of them.
    pub start: NaiveDate,
    /// How many.
    pub days: usize,
    /// What the house lacked in all, in L.
    pub shortfall_l: f64,
    /// What it lacked on the worst of the days, in L.
    pub worst_day_l: f64,
}

/// All stretches of dry days, in order, from what the house lacked on each date (L). A year that was left out of the
/// weather ends a stretch.
pub fn dry_runs(dates: &[NaiveDate], house_shortfall_l: &[f64]) -> Vec<DryRun> {
    let mut runs: Vec<DryRun> = Vec::new();
    let mut yesterday: Option<NaiveDate> = None;
    for (date, short) in dates.iter().zip(house_shortfall_l) {
        if *short > SHORT_BY {
            let goes_on = yesterday.is_some() && yesterday == date.pred_opt();
            match runs.last_mut().filter(|_| goes_on) {
                Some(run) => {
                    run.days += 1;
                    run.shortfall_l += short;
                    run.worst_day_l = run.worst_day_l.max(*short);
                }
                None => runs.push(DryRun { start: *date, days: 1, shortfall_l: *short, worst_day_l: *short }),
            }
            yesterday = Some(*date);
        } else {
            yesterday = None;
        }
    }
    runs
}

/// The longest stretch, the earliest of equals.
pub fn longest(runs: &[DryRun]) -> Option<DryRun> {
    runs.iter().copied().reduce(|longest, run| if run.days > longest.days { run } else { longest })
}

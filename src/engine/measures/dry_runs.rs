//! Stretches of dry days.

use chrono::{Days, NaiveDate};

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

impl DryRun {
    /// Whether a day of it is among some dates in order.
    pub fn touches(&self, dates: &[NaiveDate]) -> bool {
        let last = self.start.checked_add_days(Days::new(self.days.saturating_sub(1) as u64)).unwrap_or(self.start);
        dates.first().is_some_and(|first| last >= *first) && dates.last().is_some_and(|end| self.start <= *end)
    }
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
pub fn longest<'a>(runs: impl IntoIterator<Item = &'a DryRun>) -> Option<DryRun> {
    runs.into_iter().copied().reduce(|longest, run| if run.days > longest.days { run } else { longest })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(days: &[(i32, u32, u32)]) -> Vec<NaiveDate> {
        days.iter().filter_map(|(year, month, day)| NaiveDate::from_ymd_opt(*year, *month, *day)).collect()
    }

    #[test]
    fn a_stretch_touches_the_dates_that_it_has_a_day_among() {
        let day = |day| NaiveDate::default() + Days::new(day);
        let run = DryRun { start: day(10), days: 3, shortfall_l: 1.0, worst_day_l: 1.0 };
        let dates: Vec<NaiveDate> = (0..30).map(day).collect();
        assert!(run.touches(&dates[12..20]) && run.touches(&dates[5..11]) && run.touches(&dates));
        assert!(!run.touches(&dates[13..20]) && !run.touches(&dates[..10]) && !run.touches(&[]));
    }

    #[test]
    fn stretches_by_hand_and_the_earliest_of_the_longest() {
        let dates = on(&[(2001, 1, 1), (2001, 1, 2), (2001, 1, 3), (2001, 1, 4), (2001, 1, 5), (2001, 1, 6)]);
        let runs = dry_runs(&dates, &[5.0, 7.0, 0.0, SHORT_BY / 2.0, 1.0, 2.0]);
        assert_eq!(
            runs.iter().map(|run| (run.days, run.shortfall_l, run.worst_day_l)).collect::<Vec<_>>(),
            [(2, 12.0, 7.0), (2, 3.0, 2.0)]
        );
        assert_eq!(longest(&runs).map(|run| run.start), dates.first().copied());
        assert_eq!(longest(&[]), None);
    }

    #[test]
    fn a_year_left_out_ends_a_stretch() {
        let runs = dry_runs(&on(&[(2001, 12, 30), (2001, 12, 31), (2003, 1, 1)]), &[1.0; 3]);
        assert_eq!(runs.iter().map(|run| run.days).collect::<Vec<_>>(), [2, 1]);
    }
}

//! How full the store is at each time of the year.

use chrono::{Datelike, NaiveDate};

use crate::quantity::order::sorted;

/// Days of a year without 29 February.
pub const DAYS: usize = 365;

/// Percentiles of the store on one day of the year, in L.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DayOfYear {
    /// One year in ten holds less.
    pub tenth: f64,
    /// One year in two holds less.
    pub half: f64,
    /// Nine years in ten hold less.
    pub ninetieth: f64,
}

impl DayOfYear {
    /// Of a day that no year has.
    const NONE: DayOfYear = DayOfYear { tenth: f64::NAN, half: f64::NAN, ninetieth: f64::NAN };
}

/// The 10th, 50th and 90th percentiles of the content over the years, for each day from 1 January to 31 December;
/// 29 February counts with the 28th. Days that no year has are not numbers.
pub fn by_day_of_year(dates: &[NaiveDate], contents_l: &[f64]) -> Vec<DayOfYear> {
    let mut by_day: Vec<Vec<f64>> = vec![Vec::new(); DAYS];
    for (date, content) in dates.iter().zip(contents_l) {
        by_day[day_of_year(*date)].push(*content);
    }
    by_day.into_iter().map(|contents| percentiles(contents).unwrap_or(DayOfYear::NONE)).collect()
}

/// The same for the day of the year of one date; none where no year has it.
pub fn on_day(dates: &[NaiveDate], contents_l: &[f64], day: NaiveDate) -> Option<DayOfYear> {
    let mut on_it = Vec::new();
    for (date, content) in dates.iter().zip(contents_l) {
        if day_of_year(*date) == day_of_year(day) {
            on_it.push(*content);
        }
    }
    percentiles(on_it)
}

fn percentiles(values: Vec<f64>) -> Option<DayOfYear> {
    let values = sorted(values);
    let of = |share| percentile(&values, share);
    (!values.is_empty()).then(|| DayOfYear { tenth: of(0.1), half: of(0.5), ninetieth: of(0.9) })
}

/// The place of a date in a year without 29 February, 0 to 364.
fn day_of_year(date: NaiveDate) -> usize {
    let after_leap_day = date.leap_year() && date.ordinal() >= 60;
    (date.ordinal0() as usize - usize::from(after_leap_day)).min(DAYS - 1)
}

/// A percentile (share 0 to 1) of sorted values, straight between neighbours; 0 of none.
///
/// Source: Hyndman & Fan, The American Statistician 50, 1996, definition 7.
pub fn percentile(sorted: &[f64], share: f64) -> f64 {
    let Some(last) = sorted.len().checked_sub(1) else { return 0.0 };
    #[expect(clippy::cast_precision_loss, reason = "years of a few centuries")]
    let place = share.clamp(0.0, 1.0) * last as f64;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to the last index")]
    let below = place.floor() as usize;
    let above = (below + 1).min(last);
    sorted[below] + (place - place.floor()) * (sorted[above] - sorted[below])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_percentile_lies_straight_between_neighbours() {
        // By hand: of 10, 20, 30, 40 the 10th percentile lies at place 0.3, the 90th at 2.7 (Hyndman & Fan type 7).
        let values = [10.0, 20.0, 30.0, 40.0];
        assert!((percentile(&values, 0.1) - 13.0).abs() < 1e-12);
        assert!((percentile(&values, 0.5) - 25.0).abs() < 1e-12);
        assert!((percentile(&values, 0.9) - 37.0).abs() < 1e-12);
        assert_eq!(percentile(&[], 0.5), 0.0);
    }

    #[test]
    fn a_day_that_no_year_has_is_no_zero() {
        let dates: Vec<NaiveDate> =
            NaiveDate::from_ymd_opt(2020, 3, 1).into_iter().flat_map(|first| first.iter_days().take(40)).collect();
        let by_day = by_day_of_year(&dates, &[700.0; 40]);
        // 1 March is the 60th day of a common year, 9 April the 99th.
        let known: Vec<usize> = (0..DAYS).filter(|day| by_day[*day].half.is_finite()).collect();
        assert_eq!((known.first(), known.last(), known.len()), (Some(&59), Some(&98), 40));
        assert_eq!(on_day(&dates, &[700.0; 40], NaiveDate::from_ymd_opt(2026, 8, 30).unwrap_or_default()), None);
    }

    #[test]
    fn the_leap_day_counts_with_the_day_before() {
        let day = |y, m, d| NaiveDate::from_ymd_opt(y, m, d).map(day_of_year);
        assert_eq!(day(2004, 2, 29), day(2003, 2, 28));
        assert_eq!(day(2004, 3, 1), day(2003, 3, 1));
        assert_eq!(day(2004, 12, 31), Some(364));
        assert_eq!(day(2003, 1, 1), Some(0));
    }
}

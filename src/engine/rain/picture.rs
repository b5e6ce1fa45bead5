//! What a record looks like: months, years, dry spells, the wettest day.

use chrono::{Datelike, NaiveDate};

use super::generated::spread::rain_year_totals_mm;
use super::report::{DayDepth, DaySpan};
use super::spans::spans;
use crate::site::rain::RainRecord;

/// The least depth of a wet day, in mm. Source: ETCCDI climate indices (wet days and consecutive dry days, at 1 mm),
/// from memory.
pub const WET_DAY_MM: f64 = 1.0;

/// A calendar year of a record.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YearTotal {
    /// The year.
    pub year: i32,
    /// The sum of its measured days in mm.
    pub total_mm: f64,
    /// How many of its days were measured.
    pub measured_days: u16,
    /// Whether every day of it was: otherwise the total is too small by an unknown amount.
    pub complete: bool,
}

/// Mean total of each month, January to December, in mm: the mean of its measured days times its mean length in the
/// months of the record. That is the plain mean of the totals where nothing is missing. `None` without a measured day.
pub fn monthly_totals_mm(record: &RainRecord) -> [Option<f64>; 12] {
    monthly(record, |depth_mm| depth_mm)
}

/// Mean number of wet days ([`WET_DAY_MM`] or more) in each month, January to December, reckoned as the totals are.
pub fn monthly_wet_days(record: &RainRecord) -> [Option<f64>; 12] {
    monthly(record, is_wet)
}

/// Mean annual rain in mm, and of how many calendar years: those that lack [`crate::site::household::USUAL_MISSING_DAYS`] at most, as
/// [`rain_year_totals_mm`] takes them. `None` without one; the sum of the monthly totals says about as much then.
pub fn annual_mean_mm(record: &RainRecord) -> Option<(f64, usize)> {
    let totals = rain_year_totals_mm(record, 0);
    (!totals.is_empty()).then(|| (totals.iter().sum::<f64>() / totals.len() as f64, totals.len()))
}

/// The total of each calendar year in which the record has a day, in order.
pub fn yearly_totals(record: &RainRecord) -> Vec<YearTotal> {
    let mut years: Vec<YearTotal> = Vec::new();
    for (date, depth) in record.days() {
        let year = date.year();
        if years.last().is_none_or(|last| last.year != year) {
            years.push(YearTotal { year, total_mm: 0.0, measured_days: 0, complete: false });
        }
        if let (Some(total), Some(depth_mm)) = (years.last_mut(), depth) {
            total.total_mm += depth_mm;
            total.measured_days += 1;
        }
    }
    for total in &mut years {
        let leap = NaiveDate::from_ymd_opt(total.year, 2, 29).is_some();
        total.complete = total.measured_days == if leap { 366 } else { 365 };
    }
    years
}

/// The `most` longest runs of days under [`WET_DAY_MM`], the longest first, the earlier of equals first. A missing day
/// ends a run, since it may have rained.
pub fn longest_dry_spells(record: &RainRecord, most: usize) -> Vec<DaySpan> {
    let mut longest: Vec<DaySpan> = Vec::new();
    for spell in spans(record, |depth| depth.is_some_and(|depth_mm| depth_mm < WET_DAY_MM)) {
        let place = longest.iter().take_while(|longer| longer.days() >= spell.days()).count(); // equals stay in order
        longest.insert(place, spell);
        longest.truncate(most);
    }
    longest
}

/// The day with the greatest depth, the earliest of equals. `None` without a measured day.
pub fn wettest_day(record: &RainRecord) -> Option<DayDepth> {
    let measured = record.days().filter_map(|(date, depth)| Some(DayDepth { date, depth_mm: depth? }));
    measured.reduce(|wettest, day| if day.depth_mm > wettest.depth_mm { day } else { wettest })
}

fn monthly(record: &RainRecord, value: fn(f64) -> f64) -> [Option<f64>; 12] {
    let (sums, measured) = measured_by_month(record, value);
    let (mut months, mut days) = ([0_usize; 12], [0_i64; 12]);
    let mut before = None;
    for (date, _) in record.days() {
        let month0 = date.month0() as usize;
        if before != Some(month0) {
            months[month0] += 1;
            days[month0] += days_of_month(date);
            before = Some(month0);
        }
    }
    std::array::from_fn(|month0| {
        let (days, months) = (days[month0] as f64, months[month0] as f64);
        (measured[month0] > 0).then(|| sums[month0] / measured[month0] as f64 * days / months)
    })
}

/// For January to December the sum of a value of the measured days' depths, and how many of them there are.
pub(super) fn measured_by_month(record: &RainRecord, value: fn(f64) -> f64) -> ([f64; 12], [usize; 12]) {
    let (mut sums, mut days) = ([0.0; 12], [0; 12]);
    for (date, depth) in record.days() {
        if let Some(depth_mm) = depth {
            sums[date.month0() as usize] += value(depth_mm);
            days[date.month0() as usize] += 1;
        }
    }
    (sums, days)
}

/// 1 for a wet day, 0 for another.
pub(super) fn is_wet(depth_mm: f64) -> f64 {
    if depth_mm >= WET_DAY_MM { 1.0 } else { 0.0 }
}

fn days_of_month(day: NaiveDate) -> i64 {
    let first = day.with_day(1);
    let next = first.and_then(|first| first.checked_add_months(chrono::Months::new(1)));
    first.zip(next).map_or(0, |(first, next)| (next - first).num_days())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    fn record(start: &str, depths_mm: Vec<Option<f64>>) -> RainRecord {
        RainRecord { source: String::new(), start: start.parse().unwrap(), depths_mm }
    }

    #[test]
    fn a_missing_day_neither_adds_to_a_month_nor_takes_from_it() {
        // 30 measured days of 2 mm in a month of 31: the month is 62 mm.
        let mut depths = vec![Some(2.0); 31];
        depths[10] = None;
        let record = record("2001-01-01", depths);
        assert_eq!(monthly_totals_mm(&record)[0], Some(62.0));
        assert_eq!(monthly_wet_days(&record)[0], Some(31.0));
        assert_eq!(monthly_totals_mm(&record)[1], None);
    }

    #[test]
    fn a_month_is_the_mean_of_its_totals_where_nothing_is_missing() {
        // February 2003 (28 days of 1 mm) and 2004 (29 days of 3 mm): (28 + 87) / 2.
        let depth = |date: NaiveDate| Some(if date.year() == 2003 { 1.0 } else { 3.0 });
        let start: NaiveDate = "2003-02-01".parse().unwrap();
        let record = record("2003-02-01", start.iter_days().take(394).map(depth).collect());
        assert!((monthly_totals_mm(&record)[1].unwrap() - 57.5).abs() < 1e-9);
    }

    #[test]
    fn a_year_with_a_day_missing_is_not_complete() {
        let mut depths = vec![Some(1.0); 365 + 366];
        depths[400] = None;
        let record = record("2003-01-01", depths);
        let years = yearly_totals(&record);
        assert_eq!(years.iter().map(|year| year.complete).collect::<Vec<_>>(), [true, false]);
        assert_eq!((years[1].total_mm, years[1].measured_days), (365.0, 365));
        // The missing day counts as its month's mean, 1 mm: 365 and 366 mm in two years.
        assert_eq!(annual_mean_mm(&record), Some((365.5, 2)));
    }

    #[test]
    fn dry_spells_end_at_a_millimetre_or_a_missing_day() {
        let depths = [Some(0.0), Some(0.9), None, Some(0.0), Some(0.0), Some(0.0), Some(1.0), Some(0.5)];
        let spells = longest_dry_spells(&record("2001-01-01", depths.to_vec()), 2);
        let found: Vec<(String, i64)> = spells.iter().map(|spell| (spell.first.to_string(), spell.days())).collect();
        assert_eq!(found, [("2001-01-04".to_string(), 3), ("2001-01-01".to_string(), 2)]);
    }

    #[test]
    fn the_wettest_day_is_the_earliest_of_equals() {
        let found = wettest_day(&record("2001-01-01", vec![None, Some(3.0), Some(3.0)])).unwrap();
        assert_eq!((found.date.to_string(), found.depth_mm), ("2001-01-02".to_string(), 3.0));
        assert_eq!(wettest_day(&record("2001-01-01", vec![None])), None);
    }
}

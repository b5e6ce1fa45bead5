//! Missing days: every day of a record made usable, and an account of how.

use chrono::{Datelike, Days, NaiveDate};

use super::weather::{Origin, Weather};
use crate::site::rain::{MissingDays, RainRecord};

/// The record with a depth on every day that is left.
///
/// A missing day takes the depth of the same calendar day of the nearest other year in which it was measured, the
/// earlier of two equally near ones; 29 February, where no other year has it, that of 28 February; a day that every year lacks
/// that of the last day before it, within a month, that one has. Years too poor to be used themselves still lend their measured days. Only days between the record's first and last count as missing: a
/// record that starts in May lacks nothing of that spring.
///
/// # Errors
/// [`GapError`], naming what is lacking.
pub fn usable(record: &RainRecord, treatment: MissingDays) -> Result<Weather, GapError> {
    let calendar = calendar_of(record)?;
    let left_out_years = match treatment {
        MissingDays::Fill => Vec::new(),
        MissingDays::LeaveOutYears { with_more_than } => years_lacking(record, with_more_than)?,
    };
    let mut weather = Weather {
        dates: Vec::with_capacity(record.depths_mm.len()),
        depths_mm: Vec::with_capacity(record.depths_mm.len()),
        filled_days: 0,
        left_out_years,
        origin: Origin::Measured,
    };
    for (date, depth) in record.days() {
        if weather.left_out_years.binary_search(&date.year()).is_ok() {
            continue;
        }
        let depth_mm = match depth {
            Some(depth_mm) => depth_mm,
            None => {
                weather.filled_days += 1;
                let before = (0..=MOST_DAYS as u64).filter_map(|days| date.checked_sub_days(Days::new(days)));
                before
                    .into_iter()
                    .find_map(|date| lent(&calendar, date))
                    .ok_or(GapError::NoYearHasDay { month: date.month(), day: date.day() })?
            }
        };
        weather.dates.push(date);
        weather.depths_mm.push(depth_mm);
    }
    Ok(weather)
}

/// Why a record can't be made usable.
#[derive(Clone, Debug, PartialEq)]
pub enum GapError {
    /// No day of it was measured.
    NothingMeasured,
    /// Every year lacks too many days.
    NoYearLeft {
        /// The number of missing days that a year may have.
        with_more_than: u16,
        /// The year that lacks the fewest.
        best_year: i32,
        /// How many it lacks.
        lacking: usize,
    },
    /// A missing day that no other year has either, nor any of the days before it.
    NoYearHasDay {
        /// Its month, 1 to 12.
        month: u32,
        /// Its day of the month, 1 to 31.
        day: u32,
    },
    /// A depth that is no depth: negative, infinite or not a number.
    NotADepth {
        /// Its day.
        date: NaiveDate,
        /// What the record has, in mm.
        depth_mm: f64,
    },
}

/// Most days of a month.
const MOST_DAYS: usize = 31;

/// The measured depths of each day of the calendar, in order of the years: every month has room for 31 days.
type Calendar = Vec<Vec<(i32, f64)>>;

/// Where a day (month and day from 1) stands in a calendar.
fn place_of(month: u32, day: u32) -> usize {
    (month as usize - 1) * MOST_DAYS + day as usize - 1
}

fn calendar_of(record: &RainRecord) -> Result<Calendar, GapError> {
    let mut calendar: Calendar = vec![Vec::new(); 12 * MOST_DAYS];
    let mut measured = false;
    for (date, depth) in record.days() {
        let Some(depth_mm) = depth else { continue };
        if !(depth_mm.is_finite() && depth_mm >= 0.0) {
            return Err(GapError::NotADepth { date, depth_mm });
        }
        calendar[place_of(date.month(), date.day())].push((date.year(), depth_mm));
        measured = true;
    }
    if measured { Ok(calendar) } else { Err(GapError::NothingMeasured) }
}

fn years_lacking(record: &RainRecord, with_more_than: u16) -> Result<Vec<i32>, GapError> {
    let mut lacking: Vec<(i32, usize)> = Vec::new();
    for (date, depth) in record.days() {
        if lacking.last().is_none_or(|(year, _)| *year != date.year()) {
            lacking.push((date.year(), 0));
        }
        if let (Some((_, days)), None) = (lacking.last_mut(), depth) {
            *days += 1;
        }
    }
    let best = lacking.iter().min_by_key(|(_, days)| *days).copied();
    let left_out: Vec<i32> =
        lacking.iter().filter(|(_, days)| *days > usize::from(with_more_than)).map(|(year, _)| *year).collect();
    match best {
        Some((best_year, lacking_days)) if left_out.len() == lacking.len() => {
            Err(GapError::NoYearLeft { with_more_than, best_year, lacking: lacking_days })
        }
        _ => Ok(left_out),
    }
}

fn lent(calendar: &Calendar, date: NaiveDate) -> Option<f64> {
    let nearest = |month: u32, day: u32| {
        let years = calendar[place_of(month, day)].iter().filter(|(year, _)| *year != date.year());
        // The first of equals is taken, and years stand in order.
        years.min_by_key(|(year, _)| (year - date.year()).abs()).map(|(_, depth_mm)| *depth_mm)
    };
    match (date.month(), date.day()) {
        (2, 29) => nearest(2, 29).or_else(|| nearest(2, 28)),
        (month, day) => nearest(month, day),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    /// Each day's depth is the last two digits of its year; the days named are missing.
    fn record(first: &str, last: &str, missing: impl Fn(NaiveDate) -> bool) -> RainRecord {
        let depth = |date: NaiveDate| (!missing(date)).then_some(f64::from(date.year() % 100));
        let days = day(first).iter_days().take_while(|date| *date <= day(last));
        RainRecord { source: String::new(), start: day(first), depths_mm: days.map(depth).collect() }
    }

    #[track_caller]
    fn depth_on(weather: &Weather, date: &str) -> f64 {
        weather.depths_mm[weather.dates.binary_search(&day(date)).unwrap()]
    }

    #[test]
    fn a_missing_day_comes_from_the_nearest_year_and_the_earlier_of_two() {
        let missing = ["2003-05-01", "2003-05-02", "2002-05-02"].map(day);
        let record = record("2001-01-01", "2005-12-31", |date| missing.contains(&date));
        let weather = usable(&record, MissingDays::Fill).unwrap();
        assert_eq!(weather.filled_days, 3);
        assert_eq!(weather.dates.len(), record.depths_mm.len());
        assert_eq!(depth_on(&weather, "2003-05-01"), 2.0);
        assert_eq!(depth_on(&weather, "2003-05-02"), 4.0);
        assert_eq!(depth_on(&weather, "2002-05-02"), 1.0);
    }

    #[test]
    fn a_leap_day_without_another_takes_the_28th() {
        let record = record("2003-01-01", "2005-12-31", |date| date == day("2004-02-29"));
        assert_eq!(depth_on(&usable(&record, MissingDays::Fill).unwrap(), "2004-02-29"), 3.0);
    }

    #[test]
    fn years_lacking_more_than_the_limit_are_left_out_and_the_others_filled() {
        let record = record("2001-01-01", "2003-12-31", |date| {
            (date.year() == 2002 && date.month() == 1) || date == day("2003-06-01")
        });
        let weather = usable(&record, MissingDays::LeaveOutYears { with_more_than: 30 }).unwrap();
        assert_eq!((weather.left_out_years.as_slice(), weather.filled_days), (&[2002][..], 1));
        assert_eq!(weather.dates.len(), 730);
        assert_eq!(depth_on(&weather, "2003-06-01"), 2.0);
        let all = usable(&record, MissingDays::LeaveOutYears { with_more_than: 31 }).unwrap();
        assert_eq!((all.left_out_years.len(), all.filled_days), (0, 32));
    }

    #[test]
    fn a_day_that_every_year_lacks_takes_the_one_before() {
        let holiday = |date: NaiveDate| date.month() == 3 && (10..=14).contains(&date.day());
        let weather = usable(&record("2001-01-01", "2003-12-31", holiday), MissingDays::Fill).unwrap();
        // 9 March of the nearest other year.
        assert_eq!(["2001-03-10", "2002-03-14"].map(|date| depth_on(&weather, date)), [2.0, 1.0]);
        assert_eq!(weather.filled_days, 15);
    }

    #[test]
    fn days_before_the_start_and_after_the_end_are_not_missing() {
        let record = record("2001-11-01", "2003-02-10", |_| false);
        let weather = usable(&record, MissingDays::LeaveOutYears { with_more_than: 0 }).unwrap();
        assert_eq!((weather.left_out_years.len(), weather.dates.len()), (0, record.depths_mm.len()));
    }

    #[test]
    fn what_cannot_be_made_usable_says_why() {
        let one_year = record("2001-01-01", "2001-12-31", |date| date == day("2001-06-01"));
        assert_eq!(usable(&one_year, MissingDays::Fill), Err(GapError::NoYearHasDay { month: 6, day: 1 }));
        assert_eq!(
            usable(&one_year, MissingDays::LeaveOutYears { with_more_than: 0 }),
            Err(GapError::NoYearLeft { with_more_than: 0, best_year: 2001, lacking: 1 })
        );
        let nothing = record("2001-01-01", "2001-01-31", |_| true);
        assert_eq!(usable(&nothing, MissingDays::Fill), Err(GapError::NothingMeasured));
        let bad = RainRecord { source: String::new(), start: day("2001-01-01"), depths_mm: vec![Some(-1.0)] };
        assert_eq!(
            usable(&bad, MissingDays::Fill),
            Err(GapError::NotADepth { date: day("2001-01-01"), depth_mm: -1.0 })
        );
    }
}

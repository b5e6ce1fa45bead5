//! Weathers that may come: what other years brought from this day of the calendar on.

use chrono::{Datelike, NaiveDate};

use crate::engine::rain::weather::Weather;

/// The rain (mm) that each year of a weather would bring on some days that follow one another: one list for each time
/// that the weather has the first day's day of the calendar, in order.
///
/// A year goes on into the next one, and the last into the first; where years were left out, on the next that has the
/// day. 29 February takes the rain of the 28th from a year that has none. Empty where the weather never has the first
/// day, or no days are asked for.
pub fn of_years(weather: &Weather, days: &[NaiveDate]) -> Vec<Vec<f64>> {
    let Some(first) = days.first() else { return Vec::new() };
    let leap_day = is_leap_day(*first);
    let begins = if leap_day { (2, 28) } else { calendar(*first) };
    let starts = (0..weather.dates.len()).filter(|at| calendar(weather.dates[*at]) == begins);
    starts.map(|at| follow(weather, at + usize::from(leap_day), days)).collect()
}

/// The rain of a weather on some days, from one place in it on.
fn follow(weather: &Weather, from: usize, days: &[NaiveDate]) -> Vec<f64> {
    let length = weather.dates.len();
    let mut at = from % length;
    let mut rain_mm = Vec::with_capacity(days.len());
    for day in days {
        let wanted = calendar(*day);
        if calendar(weather.dates[at]) != wanted {
            if is_leap_day(*day) {
                rain_mm.push(weather.depths_mm[(at + length - 1) % length]);
                continue;
            }
            let ahead = (0..length).find(|ahead| calendar(weather.dates[(at + ahead) % length]) == wanted);
            at = (at + ahead.unwrap_or(0)) % length;
        }
        rain_mm.push(weather.depths_mm[at]);
        at = (at + 1) % length;
    }
    rain_mm
}

fn calendar(date: NaiveDate) -> (u32, u32) {
    (date.month(), date.day())
}

fn is_leap_day(date: NaiveDate) -> bool {
    calendar(date) == (2, 29)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    /// Whole years, each day with the depth `year.ordinal`: 2003.032 is 1 February 2003.
    fn years(years: &[i32]) -> Weather {
        let dates: Vec<NaiveDate> = years
            .iter()
            .flat_map(|year| {
                NaiveDate::from_ymd_opt(*year, 1, 1).unwrap().iter_days().take_while(|d| d.year() == *year)
            })
            .collect();
        Weather {
            depths_mm: dates.iter().map(|date| f64::from(date.year()) + f64::from(date.ordinal()) / 1000.0).collect(),
            dates,
            filled_days: 0,
            left_out_years: Vec::new(),
            origin: crate::engine::rain::weather::Origin::Measured,
        }
    }

    fn days(first: &str, count: usize) -> Vec<NaiveDate> {
        first.parse::<NaiveDate>().unwrap().iter_days().take(count).collect()
    }

    #[test]
    fn each_year_goes_on_into_the_next_and_the_last_into_the_first() {
        let futures = of_years(&years(&[2001, 2002, 2003]), &days("2026-12-31", 3));
        assert_eq!(
            futures,
            [[2001.365, 2002.001, 2002.002], [2002.365, 2003.001, 2003.002], [2003.365, 2001.001, 2001.002]]
        );
    }

    #[test]
    fn a_year_left_out_is_stepped_over() {
        let futures = of_years(&years(&[2001, 2003]), &days("2026-12-31", 2));
        assert_eq!(futures, [[2001.365, 2003.001], [2003.365, 2001.001]]);
    }

    #[test]
    fn a_record_that_ends_in_spring_goes_on_where_it_has_the_day() {
        let mut weather = years(&[2001, 2002]);
        let ends = weather.dates.iter().position(|date| *date == "2002-03-31".parse().unwrap()).unwrap();
        weather.dates.truncate(ends + 1);
        weather.depths_mm.truncate(ends + 1);
        // From 31 March: 2001 has it and goes on; 2002 has it and then takes April where it first comes.
        assert_eq!(of_years(&weather, &days("2026-03-31", 2)), [[2001.090, 2001.091], [2002.090, 2001.091]]);
    }

    #[test]
    fn the_leap_day_is_taken_from_the_day_before_or_dropped() {
        let futures = of_years(&years(&[2003, 2004]), &days("2028-02-28", 3));
        assert_eq!(futures, [[2003.059, 2003.059, 2003.060], [2004.059, 2004.060, 2004.061]]);
        let futures = of_years(&years(&[2003, 2004]), &days("2027-02-28", 2));
        assert_eq!(futures, [[2003.059, 2003.060], [2004.059, 2004.061]]);
        let futures = of_years(&years(&[2003, 2004]), &days("2028-02-29", 2));
        assert_eq!(futures, [[2003.059, 2003.060], [2004.060, 2004.061]]);
    }

    #[test]
    fn without_the_day_there_is_no_future() {
        let mut weather = years(&[2001]);
        weather.dates.truncate(31);
        weather.depths_mm.truncate(31);
        assert!(of_years(&weather, &days("2026-03-31", 2)).is_empty());
        assert!(of_years(&weather, &[]).is_empty());
    }
}

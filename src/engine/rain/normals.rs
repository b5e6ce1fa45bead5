//! Days from monthly means alone: equal rain days, evenly spaced. Real years are rougher.

use chrono::{Datelike, Months, NaiveDate};

use super::weather::{Origin, Weather};
use crate::site::rain::Normals;

/// Mean depth of a rain day in mm where only the month's total is known. Common practice, no source.
pub const MEAN_RAIN_DAY_MM: f64 = 8.0;
/// The first year of the days that are made. They have no date of their own; each year is like the others.
pub const FIRST_YEAR: i32 = 2001;
/// The most years that are made.
pub const MOST_YEARS: u16 = 400;

/// `years` (1 to 400) equal years from 1 January 2001 on, each day with its depth.
///
/// A month of D days and T mm has n rain days of T / n mm each: n is the mean number of rain days, rounded, at least 1
/// and at most D; without one, T / [`MEAN_RAIN_DAY_MM`], rounded likewise. Rain day k (0 to n − 1) falls in the middle
/// of the k-th of n equal parts of the month: on day ⌊(2k + 1) D / 2n⌋ + 1. A month of 0 mm has none. In leap years
/// February has the same rain over 29 days.
///
/// # Errors
/// [`NormalsError`]: a number of years or a monthly figure out of range.
pub fn even_years(normals: &Normals, years: u16) -> Result<Weather, NormalsError> {
    if !(1..=MOST_YEARS).contains(&years) {
        return Err(NormalsError::Years { years, most: MOST_YEARS });
    }
    check(normals)?;
    let (mut dates, mut depths_mm) = (Vec::new(), Vec::new());
    let firsts = (FIRST_YEAR..FIRST_YEAR + i32::from(years))
        .flat_map(|year| (1..=12).filter_map(move |month| NaiveDate::from_ymd_opt(year, month, 1)));
    for first in firsts {
        let month0 = first.month0() as usize;
        let length = days_in_month(first);
        let rain = rain_days(normals, month0, length);
        let depth_mm = if rain == 0 { 0.0 } else { normals.totals_mm[month0] / rain as f64 };
        let start = depths_mm.len();
        dates.extend(first.iter_days().take(length));
        depths_mm.resize(start + length, 0.0);
        for k in 0..rain {
            depths_mm[start + (2 * k + 1) * length / (2 * rain)] = depth_mm;
        }
    }
    Ok(Weather { dates, depths_mm, filled_days: 0, left_out_years: Vec::new(), origin: Origin::Even })
}

/// Why no days can be made of monthly means.
#[derive(Clone, Debug, PartialEq)]
pub enum NormalsError {
    /// No years, or too many.
    Years {
        /// How many were wanted.
        years: u16,
        /// The most that are made.
        most: u16,
    },
    /// A total that is negative, infinite or not a number.
    Total {
        /// Its month, 1 to 12.
        month: usize,
        /// The total in mm.
        total_mm: f64,
    },
    /// A number of rain days that is negative, not a number or above the month's days.
    RainDays {
        /// Their month, 1 to 12.
        month: usize,
        /// The number.
        rain_days: f64,
        /// The month's days (29 for February).
        most: f64,
    },
}

/// Whether every figure is in its range.
///
/// # Errors
/// [`NormalsError`].
pub fn check(normals: &Normals) -> Result<(), NormalsError> {
    const LONGEST: [f64; 12] = [31.0, 29.0, 31.0, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 30.0, 31.0];
    for (month0, &total_mm) in normals.totals_mm.iter().enumerate() {
        if !(total_mm.is_finite() && total_mm >= 0.0) {
            return Err(NormalsError::Total { month: month0 + 1, total_mm });
        }
    }
    for (month0, &rain_days) in normals.rain_days.iter().flatten().enumerate() {
        if !(0.0..=LONGEST[month0]).contains(&rain_days) {
            return Err(NormalsError::RainDays { month: month0 + 1, rain_days, most: LONGEST[month0] });
        }
    }
    Ok(())
}

fn rain_days(normals: &Normals, month0: usize, length: usize) -> usize {
    let total_mm = normals.totals_mm[month0];
    if total_mm == 0.0 {
        return 0;
    }
    let known = normals.rain_days.map(|days| days[month0]);
    let days = known.unwrap_or(total_mm / MEAN_RAIN_DAY_MM);
    days.round().clamp(1.0, length as f64) as usize
}

fn days_in_month(first: NaiveDate) -> usize {
    let next = first.checked_add_months(Months::new(1));
    next.and_then(|next| usize::try_from((next - first).num_days()).ok()).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    fn normals(totals_mm: [f64; 12], rain_days: Option<[f64; 12]>) -> Normals {
        Normals { source: String::new(), totals_mm, rain_days }
    }

    const TOTALS: [f64; 12] = [80.0, 60.0, 55.5, 30.0, 12.0, 1.0, 0.0, 0.3, 25.0, 70.0, 95.0, 900.0];

    #[test]
    fn each_month_keeps_its_total_in_leap_years_too() {
        let weather = even_years(&normals(TOTALS, None), 4).unwrap();
        assert_eq!(weather.dates.len(), 1461);
        assert_eq!(weather.origin, Origin::Even);
        for year in 2001..=2004 {
            for (month0, total_mm) in TOTALS.iter().enumerate() {
                let days = weather.dates.iter().zip(&weather.depths_mm);
                let of_month = days.filter(|(date, _)| date.year() == year && date.month0() as usize == month0);
                let sum: f64 = of_month.map(|(_, depth)| depth).sum();
                assert!((sum - total_mm).abs() < 1e-9, "{year} month {month0}: {sum}");
            }
        }
    }

    #[test]
    fn rain_days_are_as_many_as_given_and_evenly_spaced() {
        let weather = even_years(&normals([30.0; 12], Some([3.0; 12])), 1).unwrap();
        let january: Vec<u32> = (0..31).filter(|&day| weather.depths_mm[day] > 0.0).map(|day| day as u32 + 1).collect();
        // By hand: 31 days in three parts of 10⅓; their middles lie on the 6th, the 16th and the 26th day.
        assert_eq!(january, [6, 16, 26]);
        assert_eq!(weather.depths_mm[5], 10.0);
        assert_eq!(weather.depths_mm.iter().filter(|depth| **depth > 0.0).count(), 36);
    }

    #[test]
    fn without_rain_days_a_rain_day_brings_about_eight_millimetres() {
        let weather = even_years(&normals([80.0; 12], None), 1).unwrap();
        assert!(weather.depths_mm.iter().all(|depth| *depth == 0.0 || *depth == 8.0));
    }

    #[test]
    fn figures_out_of_range_are_refused() {
        let mut totals = TOTALS;
        totals[4] = -1.0;
        assert_eq!(even_years(&normals(totals, None), 1), Err(NormalsError::Total { month: 5, total_mm: -1.0 }));
        let mut days = [3.0; 12];
        days[1] = 30.0;
        assert_eq!(
            even_years(&normals(TOTALS, Some(days)), 1),
            Err(NormalsError::RainDays { month: 2, rain_days: 30.0, most: 29.0 })
        );
        assert_eq!(even_years(&normals(TOTALS, None), 0), Err(NormalsError::Years { years: 0, most: MOST_YEARS }));
        totals[4] = f64::NAN;
        assert!(even_years(&normals(totals, None), 1).is_err());
    }
}

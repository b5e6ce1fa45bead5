//! Drawing the days of years that haven't happened.

use chrono::{Datelike, NaiveDate};

use super::RainModel;
use super::draws::Draws;
use super::month::MonthRain;
use crate::engine::rain::drier;
use crate::engine::rain::weather::{Origin, Weather};

/// Generated years have no date of their own; they are numbered from 1.
const FIRST_YEAR: i32 = 1;

/// So many years of days, from 1 January of year 1 on, with leap years where the calendar has them. The same model, number and
/// seed give the same days everywhere; with a greater number the first years stay the same, but for the factor that gives a
/// draw the means of its model.
pub fn years(model: &RainModel, years: u16, seed: u64) -> Weather {
    let mut draws = Draws::of_seed(seed);
    // Of mean 1 and this coefficient of variation.
    let square = model.multiplier_cv * model.multiplier_cv;
    let multiplier = |draws: &mut Draws| draws.gamma(1.0 / square, square).unwrap_or(1.0);
    let end = NaiveDate::from_ymd_opt(FIRST_YEAR + i32::from(years), 1, 1);
    let first = NaiveDate::from_ymd_opt(FIRST_YEAR, 1, 1).unwrap_or_default();
    let mut weather = Weather {
        dates: Vec::new(),
        depths_mm: Vec::new(),
        filled_days: 0,
        left_out_years: Vec::new(),
        origin: Origin::Generated,
    };
    let mut factor = multiplier(&mut draws);
    let mut wet = draws.uniform() < model.months[0].wet_share();
    for date in first.iter_days().take_while(|date| Some(*date) < end) {
        let number = date.month0() as usize;
        if number == model.first_month && date.day() == 1 {
            factor = multiplier(&mut draws);
        }
        let MonthRain { wet_after_dry, wet_after_wet, shape, scale_mm, .. } = model.months[number];
        wet = draws.uniform() < if wet { wet_after_wet } else { wet_after_dry };
        let depth = if wet { draws.gamma(shape, scale_mm).unwrap_or(0.0) } else { 0.0 };
        weather.dates.push(date);
        weather.depths_mm.push(depth * factor);
    }
    match model.means_mm {
        Some(means_mm) => drier::scaled(&weather, &factors_to(&weather, means_mm.map(|mm| mm * f64::from(years)))),
        None => weather,
    }
}

/// By what each month's days are multiplied to have these totals in mm; 1 where none of them was wet.
fn factors_to(weather: &Weather, totals_mm: [f64; 12]) -> [f64; 12] {
    let mut factors = totals_mm;
    for (number, factor) in factors.iter_mut().enumerate() {
        let days = weather.dates.iter().zip(&weather.depths_mm);
        let drawn_mm: f64 = days.filter(|(date, _)| date.month0() as usize == number).map(|(_, mm)| mm).sum();
        *factor = if drawn_mm > 0.0 { *factor / drawn_mm } else { 1.0 };
    }
    factors
}

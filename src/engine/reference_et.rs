//! Reference evapotranspiration of a place: what a well-watered meadow of short grass gives to the air.
//!
//! Source: Allen, Pereira, Raes & Smith, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56 (1998); the
//! numbers of the equations are those of that paper.

use std::f64::consts::PI;

use crate::site::climate::Climate;

/// Solar constant, MJ/m²/min.
const SOLAR_CONSTANT: f64 = 0.0820;
const MINUTES_A_DAY: f64 = 24.0 * 60.0;
/// Depth of water in mm that a MJ/m² evaporates (eq. 20).
const EVAPORATED_MM_PER_MJ: f64 = 0.408;
/// Day of the year of the 15th of each month, for which FAO-56, Annex 2, Table 2.6 is worked.
const MID_MONTH: [f64; 12] = [15.0, 46.0, 74.0, 105.0, 135.0, 166.0, 196.0, 227.0, 258.0, 288.0, 319.0, 349.0];

/// Extraterrestrial radiation in MJ/m² a day, for a latitude in radians (north positive) on a day of the year (1 to
/// 366). Where the sun does not rise or set, the day has none or all 24 hours of it.
///
/// Source: FAO-56 eq. 21, with the inverse relative distance (23), the solar declination (24) and the sunset hour
/// angle (25).
pub fn extraterrestrial_radiation(latitude: f64, day_of_year: f64) -> f64 {
    let year_angle = 2.0 * PI * day_of_year / 365.0;
    let cosine = |angle: f64| sine(angle + PI / 2.0);
    let inverse_distance = 1.0 + 0.033 * cosine(year_angle);
    let declination = 0.409 * sine(year_angle - 1.39);
    let (sines, cosines) = (sine(latitude) * sine(declination), cosine(latitude) * cosine(declination));
    // The tangents of both are their sines by their cosines; at a pole the sun never crosses the horizon.
    let sunset = libm::acos((-sines / cosines).clamp(-1.0, 1.0));
    let radiation = MINUTES_A_DAY / PI * SOLAR_CONSTANT * inverse_distance * (sunset * sines + cosines * sine(sunset));
    radiation.max(0.0)
}

/// The sine of an angle of a few turns, to 1e-14: its series (Abramowitz & Stegun 4.3.65) within a quarter of a turn. A
/// library's takes angles of any size, at ten times the weight.
fn sine(angle: f64) -> f64 {
    let half_turns = (angle / PI).round_ties_even();
    let rest = angle - half_turns * PI;
    let (mut term, mut sum) = (rest, rest);
    for power in [2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0] {
        term *= -rest * rest / (power * (power + 1.0));
        sum += term;
    }
    if half_turns % 2.0 == 0.0 { sum } else { -sum }
}

/// Reference evapotranspiration in mm a day from the mean daily minimum and maximum temperature in °C and the
/// extraterrestrial radiation in MJ/m² a day; never below 0.
///
/// Source: Hargreaves, FAO-56 eq. 52.
pub fn hargreaves(least_c: f64, greatest_c: f64, radiation: f64) -> f64 {
    let mean_c = (least_c + greatest_c) / 2.0;
    let span_c = (greatest_c - least_c).max(0.0);
    (0.0023 * (mean_c + 17.8) * span_c.sqrt() * EVAPORATED_MM_PER_MJ * radiation).max(0.0)
}

/// Reference evapotranspiration of January to December in mm a day: as entered, or by Hargreaves with the radiation of
/// the 15th of the month.
///
/// Hargreaves' estimate tends to be too high where it is humid and too low where it is windy (FAO-56, under eq. 52).
pub fn by_month(climate: &Climate) -> [f64; 12] {
    match climate {
        Climate::ReferenceEt { mm_a_day } => *mm_a_day,
        Climate::Temperatures { latitude, least_c, greatest_c } => std::array::from_fn(|month| {
            let radiation = extraterrestrial_radiation(latitude * PI / 180.0, MID_MONTH[month]);
            hargreaves(least_c[month], greatest_c[month], radiation)
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::sine;

    #[test]
    fn the_sine_is_that_of_a_library() {
        for step in -200..200 {
            let angle = f64::from(step) / 20.0;
            assert!((sine(angle) - libm::sin(angle)).abs() < 1e-14, "{angle}: {} {}", sine(angle), libm::sin(angle));
        }
    }
}

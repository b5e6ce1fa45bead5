//! The model's parameters from monthly means alone.

use super::month::{MEAN_DAYS, MonthRain};
use crate::engine::rain::normals::{self, MEAN_RAIN_DAY_MM, NormalsError};
use crate::site::rain::Normals;

/// The chance of a wet day after a dry one, for a share f of wet days: 0.75 f (Geng, Penning de Vries & Supit 1986).
pub fn wet_after_dry(wet_share: f64) -> f64 {
    0.75 * wet_share
}

/// The chance of a wet day after a wet one: 0.25 + P(W|D) (same paper). With [`wet_after_dry`] the long-run share of wet
/// days is f again.
pub fn wet_after_wet(wet_after_dry: f64) -> f64 {
    (0.25 + wet_after_dry).min(1.0)
}

/// The gamma scale β in mm for a mean wet day of μ mm: −2.16 + 1.83 μ (same paper), but never under half of μ: below
/// about 1.6 mm the line says nothing, and at 1.18 mm it would reach 0. Half of μ is a shape of 2; common practice, no
/// source.
pub fn scale_mm(mean_depth_mm: f64) -> f64 {
    (1.83 * mean_depth_mm - 2.16).max(0.5 * mean_depth_mm)
}

/// The months of a place of which only means are known: rain days as given, else as many as bring
/// [`MEAN_RAIN_DAY_MM`] each; at most every day. A month's mean total comes out as it was given.
///
/// # Errors
/// [`NormalsError`]: a monthly figure out of range.
pub fn months(means: &Normals) -> Result<[MonthRain; 12], NormalsError> {
    normals::check(means)?;
    let mut months = [MonthRain::NEVER; 12];
    for (number, (month, days)) in months.iter_mut().zip(MEAN_DAYS).enumerate() {
        let total_mm = means.totals_mm[number];
        if total_mm <= 0.0 {
            continue;
        }
        let given = means.rain_days.map(|rain_days| rain_days[number]).filter(|rain_days| *rain_days > 0.0);
        let wet_share = (given.unwrap_or(total_mm / MEAN_RAIN_DAY_MM) / days).min(1.0);
        let mean_depth_mm = total_mm / (wet_share * days);
        let (after_dry, scale_mm) = (wet_after_dry(wet_share), scale_mm(mean_depth_mm));
        *month = MonthRain {
            wet_after_dry: after_dry,
            wet_after_wet: wet_after_wet(after_dry),
            shape: mean_depth_mm / scale_mm,
            scale_mm,
        };
    }
    Ok(months)
}

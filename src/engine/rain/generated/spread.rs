//! How widely the years differ.

use chrono::{Datelike, NaiveDate};

use super::month::{MEAN_DAYS, MonthRain};
use crate::site::household::USUAL_MISSING_DAYS;
use crate::site::rain::RainRecord;

/// Totals of the rain years of a record, in mm and in order. A rain year begins with `first_month` (0 to 11); a day that is missing
/// counts as the mean of its month's measured days, and a year that lacks more than [`USUAL_MISSING_DAYS`] doesn't count: a few
/// days of a year say little of its total, and a record of a person's own seldom has all of them.
pub fn rain_year_totals_mm(record: &RainRecord, first_month: usize) -> Vec<f64> {
    let begins = |date: NaiveDate| date.month0() as usize == first_month && date.day() == 1;
    let (mut sums, mut counts) = ([0.0; 12], [0.0; 12]);
    for (date, depth_mm) in record.days().filter_map(|(date, depth)| Some((date.month0() as usize, depth?))) {
        sums[date] += depth_mm;
        counts[date] += 1.0;
    }
    let mut totals = Vec::new();
    // The year that is running, with its days so far that are missing; none before the first begins.
    let mut running: Option<(f64, u16)> = None;
    let counts_in =
        |year: Option<(f64, u16)>| year.filter(|(_, missing)| *missing <= USUAL_MISSING_DAYS).map(|(sum, _)| sum);
    for (date, depth) in record.days() {
        if begins(date) {
            totals.extend(counts_in(running));
            running = Some((0.0, 0));
        }
        let month = date.month0() as usize;
        if let Some((sum, missing)) = &mut running {
            *sum += depth.unwrap_or_else(|| sums[month] / f64::max(counts[month], 1.0));
            *missing += u16::from(depth.is_none());
        }
    }
    if record.end().and_then(|end| end.succ_opt()).is_some_and(begins) {
        totals.extend(counts_in(running));
    }
    totals
}

/// Coefficient of variation: the sample's standard deviation (n − 1) over its mean. `None` of fewer than two or of
/// nothing.
pub fn cv(totals: &[f64]) -> Option<f64> {
    let number = totals.len() as f64;
    let mean = totals.iter().sum::<f64>() / number;
    if totals.len() < 2 || mean <= 0.0 {
        return None;
    }
    let squares: f64 = totals.iter().map(|total| (total - mean) * (total - mean)).sum();
    Some((squares / (number - 1.0)).sqrt() / mean)
}

/// Coefficient of variation of the annual totals that the chain alone makes, months taken as independent of each
/// other.
pub fn chain_cv(months: &[MonthRain; 12]) -> f64 {
    let (mut mean, mut variance) = (0.0, 0.0);
    for (month, days) in months.iter().zip(MEAN_DAYS) {
        mean += month.mean_total_mm(days);
        variance += month.total_variance(days.round());
    }
    if mean > 0.0 { variance.sqrt() / mean } else { 0.0 }
}

/// Coefficient of variation of an annual multiplier with mean 1 that brings years of `chain_cv` to `wanted_cv`. Both
/// being independent, `1 + wanted² = (1 + chain²)(1 + multiplier²)`. 0 where the chain alone spreads them enough.
pub fn multiplier_cv(wanted_cv: f64, chain_cv: f64) -> f64 {
    let chain = chain_cv * chain_cv;
    ((wanted_cv * wanted_cv - chain) / (1.0 + chain)).max(0.0).sqrt()
}

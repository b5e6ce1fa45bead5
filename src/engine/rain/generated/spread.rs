//! How widely the years differ.

use chrono::{Datelike, NaiveDate};

use super::month::{MEAN_DAYS, MonthRain};
use crate::engine::rain::picture::measured_by_month;
use crate::site::household::USUAL_MISSING_DAYS;
use crate::site::rain::RainRecord;

/// Totals of the rain years of a record, in mm and in order. A rain year begins with `first_month` (0 to 11); a day that is missing
/// counts as the mean of its month's measured days, and a year that lacks more than [`USUAL_MISSING_DAYS`] doesn't count: a few
/// days of a year say little of its total, and a record of a person's own seldom has all of them.
pub fn rain_year_totals_mm(record: &RainRecord, first_month: usize) -> Vec<f64> {
    let begins = |date: NaiveDate| date.month0() as usize == first_month && date.day() == 1;
    let (sums, counts) = measured_by_month(record, |depth_mm| depth_mm);
    let mut totals = Vec::new();
    // The year that is running, with its days so far that are missing: those before the record begins and after it ends, too.
    let mut running = (0.0, 0);
    let back = |date: &NaiveDate| date.pred_opt();
    let first = std::iter::successors(Some(record.start), back).find(|date| begins(*date)).unwrap_or(record.start);
    let mut days = record.days().peekable();
    for date in first.iter_days() {
        if begins(date) && date > first {
            totals.extend((running.1 <= USUAL_MISSING_DAYS).then_some(running.0));
            running = (0.0, 0);
            if days.peek().is_none() {
                break;
            }
        }
        let depth = days.next_if(|(day, _)| *day == date).and_then(|(_, depth)| depth);
        let month = date.month0() as usize;
        running.0 += depth.unwrap_or_else(|| sums[month] / counts[month].max(1) as f64);
        running.1 += u16::from(depth.is_none());
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

//! The model's parameters from a record, by maximum likelihood, month by month.

use chrono::Datelike;

use super::month::MonthRain;
use super::{ModelError, gamma};
use crate::site::rain::RainRecord;

/// The least depth of a wet day of the model, in mm: a hundredth of an inch, as in WGEN (Richardson & Wright 1984, from
/// memory). What falls on drier days is left out of the model; it hardly wets a roof.
pub const WET_MM: f64 = 0.254;

/// Fewer wet days in a month than this say nothing of its shape; it then has that of the whole record. Common practice,
/// no source.
const LEAST_WET_DAYS: usize = 10;

/// Rounding may leave a gap where all amounts are equal; below this there is none.
const LEAST_GAP: f64 = 1e-9;

#[derive(Clone, Copy, Default)]
struct Tally {
    /// Days after a dry and after a wet day, and how many of them were wet.
    after: [usize; 2],
    wet_after: [usize; 2],
    wet_days: usize,
    sum_mm: f64,
    sum_ln: f64,
}

impl Tally {
    /// ln(mean) − mean(ln) of the wet days.
    fn log_gap(&self) -> f64 {
        let wet_days = self.wet_days as f64;
        (libm::log(self.sum_mm / wet_days) - self.sum_ln / wet_days).max(0.0)
    }
}

/// The months of a record, a day being wet from `wet_mm` (above 0) on.
///
/// Chances are those of the days whose day before was measured too: the number of wet days after a dry (wet) day over
/// the number of days after one; a day counts to its own month. Where no day followed a wet one, P(W|W) = 0.25 + P(W|D) as in
/// [`super::from_normals`]. The gamma distribution has location 0; its mean is the mean of the wet days.
///
/// # Errors
/// [`ModelError::MonthUnmeasured`], [`ModelError::NotADepth`].
pub fn fit(record: &RainRecord, wet_mm: f64) -> Result<[MonthRain; 12], ModelError> {
    let tallies = count(record, wet_mm)?;
    // The shape of the whole record, each wet day taken relative to its month's mean.
    let wet_days: usize = tallies.iter().map(|tally| tally.wet_days).sum();
    let gaps: f64 =
        tallies.iter().filter(|tally| tally.wet_days > 0).map(|tally| tally.log_gap() * tally.wet_days as f64).sum();
    let gap_of_all = gaps / wet_days.max(1) as f64;
    let mut months = [MonthRain::NEVER; 12];
    for (number, (tally, month)) in tallies.iter().zip(&mut months).enumerate() {
        if tally.after[0] + tally.after[1] == 0 {
            return Err(ModelError::MonthUnmeasured { month: number + 1 });
        }
        if tally.wet_days == 0 {
            continue;
        }
        let chance =
            |state: usize| (tally.after[state] > 0).then(|| tally.wet_after[state] as f64 / tally.after[state] as f64);
        let wet_after_dry = chance(0).unwrap_or(1.0);
        let gap = if tally.wet_days < LEAST_WET_DAYS { gap_of_all } else { tally.log_gap() };
        let shape = gamma::shape(if gap < LEAST_GAP { 0.0 } else { gap });
        *month = MonthRain {
            wet_after_dry,
            wet_after_wet: chance(1).unwrap_or_else(|| super::from_normals::wet_after_wet(wet_after_dry)),
            shape,
            scale_mm: tally.sum_mm / tally.wet_days as f64 / shape,
        };
    }
    Ok(months)
}

fn count(record: &RainRecord, wet_mm: f64) -> Result<[Tally; 12], ModelError> {
    let mut tallies = [Tally::default(); 12];
    let mut before: Option<bool> = None;
    for (date, depth) in record.days() {
        let tally = &mut tallies[date.month0() as usize];
        let Some(depth_mm) = depth else {
            before = None;
            continue;
        };
        if !(depth_mm.is_finite() && depth_mm >= 0.0) {
            return Err(ModelError::NotADepth { date, depth_mm });
        }
        let wet = depth_mm >= wet_mm;
        if let Some(before) = before {
            tally.after[usize::from(before)] += 1;
            tally.wet_after[usize::from(before)] += usize::from(wet);
        }
        if wet {
            tally.wet_days += 1;
            tally.sum_mm += depth_mm;
            tally.sum_ln += libm::log(depth_mm);
        }
        before = Some(wet);
    }
    Ok(tallies)
}

//! What recorded and generated years have in common, in the same figures for both.

use chrono::Datelike;

use super::month::MEAN_DAYS;
use super::spread::{cv, rain_year_totals_mm};
use crate::engine::rain::picture::{WET_DAY_MM, is_wet, measured_by_month};
use crate::quantity::order::sorted;
use crate::site::rain::RainRecord;

/// What some years of days look like.
#[derive(Clone, Debug, PartialEq)]
pub struct Likeness {
    /// Mean total of January to December in mm.
    pub monthly_mm: [f64; 12],
    /// Mean number of wet days (1 mm or more) in January to December.
    pub wet_days: [f64; 12],
    /// How many whole rain years there are.
    pub rain_years: usize,
    /// Their mean total in mm.
    pub annual_mm: f64,
    /// Coefficient of variation of their totals; `None` of fewer than two.
    pub annual_cv: Option<f64>,
    /// The driest and the wettest of them in mm.
    pub extremes_mm: Option<(f64, f64)>,
    /// The longest dry spell (days under 1 mm) of a middle year and of one year in ten, in days; a spell counts to the
    /// calendar year in which it ends. `None` without any wet day: no spell ends.
    pub longest_spell: Option<(usize, usize)>,
    /// The longest dry spell of all, in days.
    pub record_spell: usize,
}

/// Takes the figures of some days in order; `first_month` is where a rain year begins, 0 to 11.
pub fn likeness(record: &RainRecord, first_month: usize) -> Likeness {
    let (sums, counts) = measured_by_month(record, |depth_mm| depth_mm);
    let (wets, _) = measured_by_month(record, is_wet);
    let of_month = |number: usize, value: f64| value / counts[number].max(1) as f64 * MEAN_DAYS[number];
    let totals = sorted(rain_year_totals_mm(record, first_month));
    let spells = longest_spells(record);
    let rank = |share: f64| spells.get((share * spells.len() as f64) as usize).copied();
    Likeness {
        monthly_mm: std::array::from_fn(|number| of_month(number, sums[number])),
        wet_days: std::array::from_fn(|number| of_month(number, wets[number])),
        rain_years: totals.len(),
        annual_mm: totals.iter().sum::<f64>() / totals.len().max(1) as f64,
        annual_cv: cv(&totals),
        extremes_mm: totals.first().copied().zip(totals.last().copied()),
        longest_spell: rank(0.5).zip(rank(0.9)).filter(|_| wets.iter().any(|days| *days > 0.0)),
        record_spell: spells.last().copied().unwrap_or(0),
    }
}

/// The longest dry spell that ended in each calendar year, in days, the shortest first. A missing day ends a spell.
fn longest_spells(record: &RainRecord) -> Vec<usize> {
    let mut longest: Vec<usize> = Vec::new();
    let (mut year, mut spell) = (None, 0);
    for (date, depth) in record.days() {
        let dry = depth.is_some_and(|depth_mm| depth_mm < WET_DAY_MM);
        if let Some(of_year) = longest.last_mut().filter(|_| !dry) {
            *of_year = (*of_year).max(spell);
        }
        if year != Some(date.year()) {
            year = Some(date.year());
            longest.push(0);
        }
        spell = if dry { spell + 1 } else { 0 };
    }
    if let Some(of_year) = longest.last_mut() {
        *of_year = (*of_year).max(spell);
    }
    longest.sort_unstable();
    longest
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_any_rain_no_year_has_a_dry_spell_of_its_own() {
        let start = chrono::NaiveDate::from_ymd_opt(2001, 1, 1).unwrap_or_default();
        let record = |depth_mm| RainRecord { source: String::new(), start, depths_mm: vec![Some(depth_mm); 1461] };
        let dry = likeness(&record(0.0), 0);
        assert_eq!((dry.longest_spell, dry.record_spell), (None, 1461));
        assert!(likeness(&record(2.0), 0).longest_spell.is_some());
    }
}

//! Years drawn from models that are as uncertain as the record is short: each is drawn from a model of its own, fitted
//! to rain years that were drawn from the record with replacement.
//!
//! A model that is fitted once holds its parameters for certain, and years drawn from it lie nearer together than the
//! next real one can be told to: the bootstrap of whole blocks puts the doubt about the parameters back.
//! Source: Efron & Tibshirani, An Introduction to the Bootstrap, 1993, ch. 8 (blocks of what hangs together: 8.6).

use chrono::{Datelike, Months, NaiveDate};

use super::futures::of_years;
use crate::engine::rain::generated::draws::Draws;
use crate::engine::rain::generated::years::years;
use crate::engine::rain::generated::{LEAST_YEARS_FOR_SPREAD, RainModel};
use crate::site::household::GeneratedYears;
use crate::site::rain::{Rain, RainRecord};

/// The most futures that are drawn: each takes a fit of its own.
pub const MOST: u16 = 60;

/// The rain (mm) of as many futures as years are wanted, at most [`MOST`], on some days that follow one another; `None`
/// where the record has too few rain years for it.
pub fn futures(record: &RainRecord, days: &[NaiveDate], wanted: GeneratedYears) -> Option<Vec<Vec<f64>>> {
    let first_month = RainModel::of(&Rain::Record(record.clone()), None).ok()?.first_month;
    let blocks = blocks(record, first_month);
    if blocks.len() < LEAST_YEARS_FOR_SPREAD {
        return None;
    }
    let seed = u64::from(wanted.seed);
    let mut draws = Draws::of_seed(seed);
    let spread = wanted.spread.map(crate::quantity::Share::get);
    let mut futures = Vec::new();
    for future in 0..wanted.years.min(MOST) {
        let again = resampled(&blocks, first_month, &mut draws);
        // A draw that leaves out all years in which a month was measured can't be fitted; another is tried.
        let Ok(model) = RainModel::of(&Rain::Record(again), spread) else { continue };
        let drawn = years(&model, 2, seed.wrapping_add(u64::from(future)));
        futures.extend(of_years(&drawn, days).into_iter().next());
    }
    Some(futures)
}

/// The rain years of a record, each from the first of its first month on, that have any day.
fn blocks(record: &RainRecord, first_month: usize) -> Vec<Vec<Option<f64>>> {
    let mut blocks: Vec<Vec<Option<f64>>> = Vec::new();
    for (date, depth) in record.days() {
        if date.month0() as usize == first_month && date.day() == 1 {
            blocks.push(Vec::new());
        }
        // 29 February stays out, so that all blocks are alike.
        if let Some(block) = blocks.last_mut().filter(|_| (date.month(), date.day()) != (2, 29)) {
            block.push(depth);
        }
    }
    blocks.retain(|block| block.iter().any(Option::is_some));
    blocks
}

/// As many rain years drawn with replacement, one after the other.
fn resampled(blocks: &[Vec<Option<f64>>], first_month: usize, draws: &mut Draws) -> RainRecord {
    #[expect(clippy::cast_possible_truncation, reason = "a month")]
    let start = NaiveDate::from_ymd_opt(1, 1 + first_month as u32, 1).unwrap_or_default();
    let mut depths_mm = Vec::new();
    for number in 0..blocks.len() {
        let share = draws.uniform();
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            clippy::cast_precision_loss,
            reason = "a place"
        )]
        let block = &blocks[((share * blocks.len() as f64) as usize).min(blocks.len() - 1)];
        #[expect(clippy::cast_possible_truncation, reason = "years of a few centuries")]
        let [from, to] = [number, number + 1].map(|years| start + Months::new(12 * years as u32));
        let mut day = 0;
        for date in from.iter_days().take_while(|date| *date < to) {
            if (date.month(), date.day()) == (2, 29) {
                depths_mm.push(None);
            } else {
                depths_mm.push(block.get(day).copied().flatten());
                day += 1;
            }
        }
    }
    RainRecord { source: String::new(), start, depths_mm }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::site::demo;

    #[test]
    fn a_draw_gives_the_same_futures_and_another_gives_others() {
        let record = demo::rain();
        let days: Vec<NaiveDate> = NaiveDate::from_ymd_opt(2026, 5, 20).unwrap().iter_days().take(90).collect();
        let wanted = GeneratedYears { years: 12, ..GeneratedYears::CENTURY };
        let drawn = futures(&record, &days, wanted).unwrap();
        assert!(drawn.len() == 12 && drawn.iter().all(|rain_mm| rain_mm.len() == 90));
        assert_eq!(futures(&record, &days, wanted), Some(drawn.clone()));
        assert_ne!(futures(&record, &days, GeneratedYears { seed: 2, ..wanted }), Some(drawn));
        assert_eq!(futures(&record, &days, GeneratedYears { years: 400, ..wanted }).unwrap().len(), usize::from(MOST));
    }

    #[test]
    fn years_drawn_anew_are_years_of_the_record_and_a_short_record_has_too_few() {
        // Each year of the record rains its own number, every day from March on.
        let start = NaiveDate::from_ymd_opt(2001, 3, 1).unwrap();
        let day = |date: NaiveDate| f64::from(date.year() - 2000 - i32::from(date.month() < 3));
        let depths: Vec<Option<f64>> = start.iter_days().take(6 * 365 + 1).map(|date| Some(day(date))).collect();
        let record = RainRecord { source: String::new(), start, depths_mm: depths };
        let blocks = blocks(&record, 2);
        assert_eq!(blocks.len(), 6);
        let again = resampled(&blocks, 2, &mut Draws::of_seed(5));
        let mut seen = std::collections::BTreeSet::new();
        for (date, depth) in again.days() {
            if (date.month(), date.day()) == (2, 29) {
                assert_eq!(depth, None);
            } else if (date.month(), date.day()) == (3, 1) {
                let whole: Vec<f64> =
                    again.days().skip_while(|(other, _)| *other < date).take(59).map(|(_, mm)| mm.unwrap()).collect();
                assert!(whole.iter().all(|mm| *mm == whole[0]), "a year stays together");
                seen.insert(whole[0] as u32);
            }
        }
        assert!(seen.len() > 1 && seen.iter().all(|year| (1..=6).contains(year)), "{seen:?}");
        let days = [start];
        let short = RainRecord { depths_mm: record.depths_mm[..4 * 365].to_vec(), ..record };
        assert_eq!(futures(&short, &days, GeneratedYears::CENTURY), None);
    }
}

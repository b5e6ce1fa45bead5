//! What makes a whole record doubtful: a unit that looks wrong, a drizzle that no gauge measures, unlikely dry runs.

use super::report::{DayDepth, Notice, Occasions};
use super::unlikely_dry::unlikely_dry_runs;
use crate::quantity::order::sorted;
use crate::site::rain::RainRecord;

/// The least and the greatest mean annual rain that is taken for granted, in mm: from the edge of a desert where
/// nobody lives on rain to above the wettest stations on Earth (some 11,900 mm at Mawsynram; from memory).
pub const ANNUAL_RANGE_MM: (f64, f64) = (10.0, 13_000.0);

/// Days of the mean Gregorian year.
const DAYS_PER_YEAR: f64 = 365.2425;

/// The least share of rain days (any depth) in a series that counts as a drizzle. Own criterion, with the next.
const DRIZZLE_RAIN_DAYS: f64 = 0.4;
/// The least share of them under 1 mm. Gauges that are read once a day, in steps of 0.1 mm or more, give a fifth to a
/// third even where it rains every other day; series computed on a grid give about half. Own criterion.
const DRIZZLE_UNDER_1_MM: f64 = 0.4;

/// Everything doubtful about a record as a whole. The record isn't changed.
pub fn doubts(record: &RainRecord) -> Vec<Notice> {
    let mut doubts: Vec<Notice> = far_above_others(record).into_iter().chain(annual_total(record)).collect();
    doubts.extend(
        unlikely_dry_runs(record).into_iter().map(|run| Notice::UnlikelyDryRun { span: run.span, chance: run.chance }),
    );
    doubts.extend(drizzle(record));
    doubts
}

/// A twentieth of the rain days, at the most, of which each has over twice the rain of the wettest other one. In the seven
/// records of tests/data none of these has over 1.7 times the next (own criterion).
fn far_above_others(record: &RainRecord) -> Option<Notice> {
    const FEWEST_RAIN_DAYS: usize = 20;
    const LEAST_MM: f64 = 100.0;
    let dated = record.days().filter_map(|(date, depth)| Some(DayDepth { date, depth_mm: depth? }));
    let mut rain: Vec<DayDepth> = dated.filter(|day| day.depth_mm > 0.0).collect();
    if rain.len() < FEWEST_RAIN_DAYS {
        return None;
    }
    let most = rain.len() / 20;
    let depths = sorted(rain.iter().map(|day| day.depth_mm).collect());
    let wettest = depths.iter().rev();
    let mut pairs = wettest.clone().zip(wettest.skip(1)).take(most);
    let (least_mm, next_mm) = pairs.rfind(|(one, next)| **one >= LEAST_MM && **one > 2.0 * **next)?;
    rain.retain(|day| day.depth_mm >= *least_mm);
    let mut days = Occasions::new();
    rain.into_iter().for_each(|day| days.add(day));
    Some(Notice::FarAboveOthers { days, next_mm: *next_mm })
}

/// Less than a year says nothing of an annual total.
fn annual_total(record: &RainRecord) -> Option<Notice> {
    let measured = record.depths_mm.iter().flatten().count();
    let sum: f64 = record.depths_mm.iter().flatten().sum();
    if measured < 365 {
        return None;
    }
    let mean_mm = sum / measured as f64 * DAYS_PER_YEAR;
    let (least, most) = ANNUAL_RANGE_MM;
    (!(least..=most).contains(&mean_mm)).then_some(Notice::AnnualTotalUnlikely { mean_mm })
}

/// Less than a year may be one wet season, where it drizzles indeed.
fn drizzle(record: &RainRecord) -> Option<Notice> {
    let measured = record.depths_mm.iter().flatten().count();
    let rain = record.depths_mm.iter().flatten().filter(|depth| **depth > 0.0).count();
    let light = record.depths_mm.iter().flatten().filter(|depth| **depth > 0.0 && **depth < 1.0).count();
    if measured < 365 || rain == 0 {
        return None;
    }
    let rain_days = rain as f64 / measured as f64;
    let under_1_mm = light as f64 / rain as f64;
    (rain_days >= DRIZZLE_RAIN_DAYS && under_1_mm >= DRIZZLE_UNDER_1_MM)
        .then_some(Notice::Drizzle { rain_days, under_1_mm })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    fn record(days: usize, depth: impl Fn(usize) -> f64) -> RainRecord {
        let depths_mm = (0..days).map(|day| Some(depth(day))).collect();
        RainRecord { source: String::new(), start: "2001-01-01".parse().unwrap(), depths_mm }
    }

    #[test]
    fn a_year_of_a_few_millimetres_looks_like_another_unit() {
        // 0.02 a day makes some 7.3 a year; 40 a day some 14,600.
        for (depth, wrong) in [(0.02, true), (2.0, false), (40.0, true)] {
            let notices = doubts(&record(730, |_| depth));
            assert_eq!(notices.iter().any(|n| matches!(n, Notice::AnnualTotalUnlikely { .. })), wrong, "{depth}");
        }
    }

    #[test]
    fn a_day_far_above_all_others_is_doubted() {
        let far = |days: &[(usize, f64)]| {
            let record = record(400, |day| match days.iter().find(|(at, _)| *at == day) {
                Some((_, depth)) => *depth,
                None => {
                    if day % 4 == 0 {
                        60.0
                    } else {
                        0.0
                    }
                }
            });
            doubts(&record).into_iter().find_map(|notice| match notice {
                Notice::FarAboveOthers { days, next_mm } => Some((days.count, next_mm)),
                _ => None,
            })
        };
        assert_eq!(far(&[(100, 1_500.0)]), Some((1, 60.0)));
        assert_eq!(far(&[(100, 999.0), (200, 1_500.0)]), Some((2, 60.0)));
        assert_eq!(far(&[(100, 119.0)]), None);
        // What one day in ten brings is the climate.
        let often: Vec<(usize, f64)> = (0..40).map(|day| (day * 10, 150.0)).collect();
        assert_eq!(far(&often), None);
    }

    #[test]
    fn a_drizzle_needs_many_rain_days_and_little_on_each() {
        let drizzles = |depth: fn(usize) -> f64| {
            doubts(&record(730, depth)).iter().any(|notice| matches!(notice, Notice::Drizzle { .. }))
        };
        assert!(drizzles(|day| if day % 2 == 0 {
            0.0
        } else if day % 4 == 1 {
            0.5
        } else {
            9.0
        }));
        assert!(!drizzles(|day| if day % 2 == 0 { 0.0 } else { 9.0 }));
        assert!(!drizzles(|day| if day % 5 > 0 { 0.0 } else { 0.5 }));
    }
}

//! Runs of zeros that the rest of a record makes very unlikely: perhaps days on which nobody measured.
//!
//! Own criterion. Rain on a day depends on whether it rained before (a Markov chain, as Richardson 1981 has it), but a
//! chain of one day makes long droughts too rare. So the chance of rain is taken among days that follow at least
//! [`SETTLED_DAYS`] dry ones, by calendar month, from the days outside the run: with w days with rain and d without,
//! the chance that m such days all stay dry is `Π (d + ½ + i) / (w + d + 1 + i)`, i = 0 … m − 1 (beta-binomial with
//! Jeffreys' prior), which is cautious where w + d is small. The months of a run multiply. Where a month has fewer
//! than [`LEAST_DAYS`] settled days elsewhere, all of its days elsewhere are the guide; a month seen in fewer than
//! [`LEAST_YEARS`] other years says nothing (chance 1). Runs are judged worst first, and one that is found unlikely is
//! no longer a guide for the others.

use chrono::{Datelike, NaiveDate};

use super::report::DaySpan;
use super::spans::spans;
use crate::site::rain::RainRecord;

/// Dry days after which a spell counts as settled.
pub const SETTLED_DAYS: i64 = 5;
/// The least length of a run that is judged, in days: what is not measured is mostly a month's sheet or more.
pub const LEAST_RUN_DAYS: i64 = 30;
/// A run is unlikely below this chance. A record of a few hundred dry spells has one by luck in some dozens of records.
pub const UNLIKELY: f64 = 1e-4;
/// Settled days that a month must have elsewhere to be a guide.
pub const LEAST_DAYS: usize = 20;
/// Other years in which a month must have been seen.
pub const LEAST_YEARS: usize = 3;

/// A run of zeros, and its chance if the other years are a guide.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnlikelyRun {
    /// Its days.
    pub span: DaySpan,
    /// Its chance, 0 to 1.
    pub chance: f64,
}

/// The runs of zeros whose chance is below [`UNLIKELY`], in order of their dates.
pub fn unlikely_dry_runs(record: &RainRecord) -> Vec<UnlikelyRun> {
    let days = settled(record);
    let mut runs = spans(record, |depth| depth == Some(0.0));
    runs.retain(|run| run.days() >= LEAST_RUN_DAYS);
    let mut counts = Counts::new(record.start.year(), record.end().map_or(record.start.year(), |end| end.year()));
    days.iter().for_each(|day| counts.add(day));
    let mut unlikely: Vec<UnlikelyRun> = Vec::new();
    loop {
        let chances = runs.iter().map(|run| chance(*run, &days, record.start, &mut counts));
        let worst = chances.enumerate().min_by(|(_, a), (_, b)| a.total_cmp(b));
        let Some((at, chance)) = worst.filter(|(_, chance)| *chance < UNLIKELY) else { break };
        let span = runs.remove(at);
        of(span, &days, record.start).iter().for_each(|day| counts.remove(day));
        let place = unlikely.iter().take_while(|other| other.span.first < span.first).count();
        unlikely.insert(place, UnlikelyRun { span, chance });
    }
    unlikely
}

/// A day as the criterion sees it.
#[derive(Clone, Copy)]
struct Day {
    year: i32,
    month0: usize,
    /// `None` where it is missing.
    rain: Option<bool>,
    /// After at least `SETTLED_DAYS` dry ones.
    settled: bool,
}

fn settled(record: &RainRecord) -> Vec<Day> {
    let mut dry_before = 0;
    record
        .days()
        .map(|(date, depth)| {
            let rain = depth.map(|depth| depth > 0.0);
            let settled = dry_before >= SETTLED_DAYS;
            dry_before = if rain == Some(false) { dry_before + 1 } else { 0 };
            Day { year: date.year(), month0: date.month0() as usize, rain, settled }
        })
        .collect()
}

fn of(span: DaySpan, days: &[Day], start: NaiveDate) -> &[Day] {
    let at = |date: NaiveDate| usize::try_from((date - start).num_days()).unwrap_or(0);
    days.get(at(span.first)..=at(span.last)).unwrap_or(&[])
}

/// The chance of a run, with its own days taken out of the counts meanwhile.
fn chance(run: DaySpan, days: &[Day], start: NaiveDate, counts: &mut Counts) -> f64 {
    let own = of(run, days, start);
    own.iter().for_each(|day| counts.remove(day));
    let mut chance = 1.0;
    for month0 in 0..12 {
        let in_run = own.iter().filter(|day| day.month0 == month0 && day.settled).count();
        if in_run == 0 || counts.years_with(month0) < LEAST_YEARS {
            continue;
        }
        let [rain, dry] = counts.guide(month0);
        for i in 0..in_run {
            chance *= (dry as f64 + 0.5 + i as f64) / ((rain + dry) as f64 + 1.0 + i as f64);
        }
    }
    own.iter().for_each(|day| counts.add(day));
    chance
}

/// How many days had rain and how many had not, by month.
struct Counts {
    settled: [[usize; 2]; 12],
    all: [[usize; 2]; 12],
    /// Measured days of each month, year after year.
    measured: Vec<[usize; 12]>,
    first_year: i32,
}

impl Counts {
    fn new(first_year: i32, last_year: i32) -> Counts {
        let years = usize::try_from(last_year - first_year + 1).unwrap_or(0);
        Counts { settled: [[0; 2]; 12], all: [[0; 2]; 12], measured: vec![[0; 12]; years], first_year }
    }

    fn add(&mut self, day: &Day) {
        self.change(day, |count| count + 1);
    }

    fn remove(&mut self, day: &Day) {
        self.change(day, |count| count.saturating_sub(1));
    }

    fn change(&mut self, day: &Day, change: impl Fn(usize) -> usize) {
        let Some(rain) = day.rain else { return };
        let kind = usize::from(!rain);
        self.all[day.month0][kind] = change(self.all[day.month0][kind]);
        if day.settled {
            self.settled[day.month0][kind] = change(self.settled[day.month0][kind]);
        }
        let year = usize::try_from(day.year - self.first_year).ok().and_then(|at| self.measured.get_mut(at));
        if let Some(year) = year {
            year[day.month0] = change(year[day.month0]);
        }
    }

    fn years_with(&self, month0: usize) -> usize {
        self.measured.iter().filter(|year| year[month0] > 0).count()
    }

    /// Days with rain and without.
    fn guide(&self, month0: usize) -> [usize; 2] {
        let settled = self.settled[month0];
        if settled[0] + settled[1] >= LEAST_DAYS { settled } else { self.all[month0] }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    /// Years from 2001 on of the depth that `depth` gives for a day.
    fn record(years: i32, depth: impl Fn(NaiveDate) -> f64) -> RainRecord {
        let start: NaiveDate = "2001-01-01".parse().unwrap();
        let days = start.iter_days().take_while(|date| date.year() < 2001 + years);
        RainRecord { source: String::new(), start, depths_mm: days.map(|date| Some(depth(date))).collect() }
    }

    #[test]
    fn a_dry_season_of_every_year_is_likely() {
        let season = |date: NaiveDate| if date.month() >= 6 && date.day().is_multiple_of(3) { 8.0 } else { 0.0 };
        assert_eq!(unlikely_dry_runs(&record(8, season)), []);
        assert_eq!(unlikely_dry_runs(&record(1, season)), []);
    }

    #[test]
    fn two_dry_months_amid_rain_every_week_are_unlikely() {
        let rain = |date: NaiveDate| {
            let gap = date.year() == 2004 && (date.month() == 3 || date.month() == 4);
            if date.ordinal().is_multiple_of(7) && !gap { 8.0 } else { 0.0 }
        };
        let runs = unlikely_dry_runs(&record(8, rain));
        assert_eq!(runs.len(), 1, "{runs:?}");
        assert!(runs[0].span.days() >= 61);
        assert!(runs[0].chance < UNLIKELY);
    }

    #[test]
    fn two_years_are_too_few_to_judge() {
        let rain = |date: NaiveDate| {
            if date.ordinal().is_multiple_of(7) && !(date.year() == 2002 && date.month() < 6) { 8.0 } else { 0.0 }
        };
        assert_eq!(unlikely_dry_runs(&record(2, rain)), []);
    }
}

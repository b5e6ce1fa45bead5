//! A run year by year.

use chrono::{Datelike, NaiveDate};

use super::dry_runs::{DryRun, longest};
use super::interval::wilson;
use crate::engine::balance::plan::{Plan, Store};
use crate::engine::balance::series::Series;

/// One calendar year of a run.
#[derive(Clone, Debug, PartialEq)]
pub struct Year {
    /// The calendar year.
    pub year: i32,
    /// Whether the run has all its days.
    pub complete: bool,
    /// Days that the run has.
    pub days: usize,
    /// Rain, in mm.
    pub rain_mm: f64,
    /// Days on which a demand of the house was not met in full.
    pub dry_days: usize,
    /// The longest stretch of them that touches the year, whole, whenever it began and ended.
    pub longest_dry_run: Option<DryRun>,
    /// What the uses got, in L.
    pub yield_l: f64,
    /// What they asked for and did not get, in L.
    pub shortfall_l: f64,
    /// What went over rims and out of the system, in L.
    pub spill_l: f64,
    /// Hauled, in L.
    pub hauled_l: f64,
    /// Loads of hauled water.
    pub loads: usize,
    /// What they cost, in the household's currency.
    pub hauling_cost: f64,
    /// Days on which a step of rationing was in force.
    pub rationed_days: usize,
    /// What rationing kept the uses from asking for, in L.
    pub cut_l: f64,
    /// The least live water in all stores at the end of a day, in L.
    pub least_l: f64,
}

/// The years of a run of a plan in order; `dry_runs` are its stretches of dry days.
pub fn years(plan: &Plan, series: &Series, dry_runs: &[DryRun]) -> Vec<Year> {
    // What spills into another store is still there.
    let leaves: Vec<f64> = plan.stores.iter().map(Store::spill_that_leaves).collect();
    let spilled = |from: usize, to: usize| -> f64 {
        series.spill_l.iter().zip(&leaves).map(|(of, leaves)| leaves * of[from..to].iter().sum::<f64>()).sum()
    };
    let live = series.total_live_l();
    let mut years = Vec::new();
    for (year, from, to) in spans(&series.dates) {
        let dates = &series.dates[from..to];
        let loads = series.loads.iter().filter(|load| (from..to).contains(&load.day));
        years.push(Year {
            year,
            complete: to - from == days_of(year),
            days: to - from,
            rain_mm: series.rain_mm[from..to].iter().sum(),
            dry_days: series.dry_days().skip(from).take(to - from).filter(|dry| *dry).count(),
            longest_dry_run: longest(dry_runs.iter().filter(|run| run.touches(dates))),
            yield_l: sum(&series.yield_l, from, to),
            shortfall_l: sum(&series.shortfall_l, from, to),
            spill_l: spilled(from, to),
            hauled_l: sum(&series.hauled_l, from, to),
            loads: loads.clone().count(),
            hauling_cost: loads.map(|load| load.price).sum(),
            rationed_days: (from..to).filter(|day| series.rationed.iter().any(|step| step[*day])).count(),
            cut_l: sum(&series.cut_l, from, to),
            least_l: live[from..to].iter().copied().fold(f64::INFINITY, f64::min),
        });
    }
    years
}

/// The sum over some days of all columns.
fn sum(columns: &[Vec<f64>], from: usize, to: usize) -> f64 {
    columns.iter().map(|column| column[from..to].iter().sum::<f64>()).sum()
}

/// Share of years without a dry day, as it was seen and within what range it may lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GoodYears {
    /// Complete years without a dry day.
    pub good: usize,
    /// Complete years.
    pub all: usize,
    /// The Wilson interval at 95 % of the chance of a good year.
    pub range: (f64, f64),
}

/// Good years among the complete ones; `None` if there is no complete year.
pub fn good_years(years: &[Year]) -> Option<GoodYears> {
    let complete = || years.iter().filter(|year| year.complete);
    let (good, all) = (complete().filter(|year| year.dry_days == 0).count(), complete().count());
    wilson(good, all).map(|range| GoodYears { good, all, range })
}

/// Year, first day and the day after the last, of each calendar year among dates in order.
fn spans(dates: &[NaiveDate]) -> Vec<(i32, usize, usize)> {
    let mut spans: Vec<(i32, usize, usize)> = Vec::new();
    for (day, date) in dates.iter().enumerate() {
        match spans.last_mut().filter(|(year, _, _)| *year == date.year()) {
            Some(span) => span.2 = day + 1,
            None => spans.push((date.year(), day, day + 1)),
        }
    }
    spans
}

fn days_of(year: i32) -> usize {
    NaiveDate::from_ymd_opt(year, 12, 31).map_or(365, |last| last.ordinal() as usize)
}

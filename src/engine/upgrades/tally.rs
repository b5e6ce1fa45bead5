//! The few sums by which systems are compared on the same rain.

use chrono::Datelike;

use crate::engine::balance::plan::{Plan, plan};
use crate::engine::balance::run::{Conduct, Day, Standing, run_from};
use crate::engine::balance::series::SHORT_BY;
use crate::engine::question::Answer;
use crate::engine::rain::weather::Weather;
use crate::quantity::DAYS_A_YEAR;
use crate::site::findings::Finding;
use crate::site::system::System;

/// What a run comes to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Tally {
    /// Length of the run, in years of 365.25 days.
    pub years: f64,
    /// What the uses got, in L.
    pub yield_l: f64,
    /// What they wanted and did not get, rationed or not, in L.
    pub lacked_l: f64,
    /// Hauled water, in L.
    pub hauled_l: f64,
    /// Spill that left the system, in L.
    pub spill_l: f64,
    /// Days on which a demand of the house was not met in full.
    pub dry_days: usize,
    /// The most of them in one calendar year.
    pub worst_dry_days: usize,
    /// That year; the first of several, and without dry days the first of all.
    pub worst_year: i32,
    /// What was paid for hauled water.
    pub hauling_cost: f64,
}

impl Tally {
    /// Water that lacked or had to be hauled, in L a year.
    pub fn lacking_l_a_year(&self) -> f64 {
        (self.lacked_l + self.hauled_l) / self.years
    }

    /// Spill, in L a year.
    pub fn spill_l_a_year(&self) -> f64 {
        self.spill_l / self.years
    }

    /// Yield, in L a year.
    pub fn yield_l_a_year(&self) -> f64 {
        self.yield_l / self.years
    }

    /// Dry days a year.
    pub fn dry_days_a_year(&self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
        let days = self.dry_days as f64;
        days / self.years
    }
}

impl From<&Answer> for Tally {
    /// The sums of a run whose days were kept.
    fn from(answer: &Answer) -> Self {
        let worst = answer.years.iter().map(|year| year.dry_days).max().unwrap_or(0);
        Tally {
            years: answer.series.years(),
            yield_l: answer.total.yield_l,
            lacked_l: answer.total.lacked_l(),
            hauled_l: answer.total.hauled_l,
            spill_l: answer.total.spill_l,
            dry_days: answer.series.dry_days().filter(|dry| *dry).count(),
            worst_dry_days: worst,
            worst_year: answer.years.iter().find(|year| year.dry_days == worst).map_or(0, |year| year.year),
            hauling_cost: answer.ledger.hauling_cost,
        }
    }
}

/// Runs a system through the weather and keeps the sums alone. Beside a house, it begins with the water of that house.
///
/// # Errors
/// The system's findings, if it has any.
pub fn tally(
    system: &System,
    weather: &Weather,
    conduct: Conduct,
    house: Option<&Plan>,
) -> Result<Tally, Vec<Finding>> {
    let plan = plan(system)?;
    let standing = Standing::beside(&plan, house, conduct.start_share);
    Ok(run_and_sum(&plan, weather, standing, conduct.inflow_first))
}

fn run_and_sum(plan: &Plan, weather: &Weather, mut standing: Standing, inflow_first: f64) -> Tally {
    let mut dates = weather.dates.iter();
    let mut tally = Tally::default();
    let (mut year, mut dry_this_year) = (None, 0);
    let (days, depths_mm) = (&weather.dates, &weather.depths_mm);
    let ledger = run_from(plan, days, depths_mm, &mut standing, inflow_first, |day: &Day| {
        let Some(date) = dates.next() else { return false };
        if year != Some(date.year()) {
            dry_this_year = 0;
            tally.worst_year = if year.is_none() { date.year() } else { tally.worst_year };
            year = Some(date.year());
        }
        if day.house_shortfall_l(plan) > SHORT_BY {
            tally.dry_days += 1;
            dry_this_year += 1;
            if dry_this_year > tally.worst_dry_days {
                (tally.worst_dry_days, tally.worst_year) = (dry_this_year, date.year());
            }
        }
        true
    });
    let total = ledger.total();
    #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
    let days = weather.dates.len() as f64;
    Tally {
        years: days / DAYS_A_YEAR,
        yield_l: total.yield_l,
        lacked_l: total.lacked_l(),
        hauled_l: total.hauled_l,
        spill_l: total.spill_l,
        hauling_cost: ledger.hauling_cost,
        ..tally
    }
}

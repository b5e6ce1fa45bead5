//! The days of a run, kept.

use chrono::NaiveDate;

use crate::engine::rain::weather::Weather;
use crate::quantity::DAYS_A_YEAR;

use super::ledger::Ledger;
use super::plan::Plan;
use super::run::{Conduct, Day, run};

/// A demand short by no more than this, in L, is met: rounding, not thirst.
pub const SHORT_BY: f64 = 1e-9;

/// Every day of a run. Volumes in L; the outer lists are in the order of the system's own, the inner ones have a value
/// for each day.
#[derive(Clone, Debug)]
pub struct Series {
    /// The dates.
    pub dates: Vec<NaiveDate>,
    /// The rain of each day, in mm.
    pub rain_mm: Vec<f64>,
    /// Live water by store.
    pub live_l: Vec<Vec<f64>>,
    /// Water below the outlet by tank.
    pub dead_l: Vec<Vec<f64>>,
    /// Runoff that reached each tank.
    pub inflow_l: Vec<Vec<f64>>,
    /// First flush by feed.
    pub first_flush_l: Vec<Vec<f64>>,
    /// Spill by store.
    pub spill_l: Vec<Vec<f64>>,
    /// What each use got.
    pub yield_l: Vec<Vec<f64>>,
    /// What each use asked for, after rationing, and did not get.
    pub shortfall_l: Vec<Vec<f64>>,
    /// What rationing kept each use from asking for; no columns without steps of rationing.
    pub cut_l: Vec<Vec<f64>>,
    /// Whether each step of rationing was in force.
    pub rationed: Vec<Vec<bool>>,
    /// Hauled water by store.
    pub hauled_l: Vec<Vec<f64>>,
    /// Every load of hauled water, in order.
    pub loads: Vec<Load>,
    /// What the uses that count for a dry day asked for and did not get.
    pub house_shortfall_l: Vec<f64>,
}

/// A load of hauled water.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// The day on which it came, as a place among the dates.
    pub day: usize,
    /// What it cost, in the household's currency.
    pub price: f64,
}

impl Series {
    /// How long it is, in years of 365.25 days.
    pub fn years(&self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
        let days = self.dates.len() as f64;
        days / DAYS_A_YEAR
    }

    /// Live water in all stores on each day, in L.
    pub fn total_live_l(&self) -> Vec<f64> {
        (0..self.dates.len()).map(|day| self.live_l.iter().map(|store| store[day]).sum()).collect()
    }

    /// Whether each day was a dry day: one on which a demand of the house was not met in full.
    pub fn dry_days(&self) -> impl Iterator<Item = bool> + '_ {
        self.house_shortfall_l.iter().map(|short| *short > SHORT_BY)
    }

    /// What each tank held on a day, dead storage included, in L.
    pub fn tank_contents_l(&self, plan: &Plan, day: usize) -> Vec<f64> {
        let mut contents: Vec<f64> = self.dead_l.iter().map(|tank| tank[day]).collect();
        for (store, live) in plan.stores.iter().zip(&self.live_l) {
            let surface = store.joined.surface_m(live[day]);
            for (tank, live) in store.tanks.iter().zip(store.joined.live_of_each(surface)) {
                contents[*tank] += live;
            }
        }
        contents
    }
}

/// Adds a day's values to their columns.
fn keep<T: Copy>(columns: &mut [Vec<T>], values: &[T]) {
    for (column, value) in columns.iter_mut().zip(values) {
        column.push(*value);
    }
}

/// Runs the plan through the weather and keeps every day.
pub fn run_and_keep(plan: &Plan, weather: &Weather, conduct: Conduct) -> (Ledger, Series) {
    let days = weather.dates.len();
    let columns = |count: usize| vec![Vec::with_capacity(days); count];
    let (stores, tanks, uses) = (plan.stores.len(), plan.tanks.len(), plan.uses.len());
    let mut series = Series {
        dates: weather.dates.clone(),
        rain_mm: weather.depths_mm.clone(),
        live_l: columns(stores),
        dead_l: columns(tanks),
        inflow_l: columns(tanks),
        first_flush_l: columns(plan.feeds.len()),
        spill_l: columns(stores),
        yield_l: columns(uses),
        shortfall_l: columns(uses),
        cut_l: if plan.rations.is_empty() { Vec::new() } else { columns(uses) },
        rationed: vec![Vec::with_capacity(days); plan.rations.len()],
        hauled_l: columns(stores),
        loads: Vec::new(),
        house_shortfall_l: Vec::with_capacity(days),
    };
    let ledger = run(plan, weather, conduct, |day: &Day| {
        keep(&mut series.live_l, &day.live_l);
        keep(&mut series.dead_l, &day.dead_l);
        keep(&mut series.inflow_l, &day.inflow_l);
        keep(&mut series.first_flush_l, &day.first_flush_l);
        keep(&mut series.spill_l, &day.spill_l);
        keep(&mut series.yield_l, &day.yield_l);
        keep(&mut series.hauled_l, &day.hauled_l);
        keep(&mut series.cut_l, &day.cut_l);
        keep(&mut series.rationed, &day.rationed);
        for (hauling, _) in plan.hauling.iter().zip(&day.load_came).filter(|(_, came)| **came) {
            series.loads.push(Load { day: series.house_shortfall_l.len(), price: hauling.price });
        }
        for (using, column) in series.shortfall_l.iter_mut().enumerate() {
            column.push(day.demand_l[using] - day.yield_l[using]);
        }
        series.house_shortfall_l.push(day.house_shortfall_l(plan));
    });
    (ledger, series)
}

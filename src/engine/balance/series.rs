//! The days of a run, kept.

use chrono::NaiveDate;

use crate::engine::rain::weather::Weather;
use crate::quantity::DAYS_A_YEAR;

use super::ledger::Ledger;
use super::plan::Plan;
use super::run::{Conduct, Day, Standing, run_from};

/// A demand short by no more than this, in L, is met: rounding, not thirst.
pub const SHORT_BY: f64 = 1e-9;

/// Every day of a run, as far as something asks for it afterwards: ten thousands of days are kept while somebody waits.
/// Volumes in L; the outer lists are in the order of the system's own, the inner ones have a value for each day.
#[derive(Clone, Debug)]
pub struct Series {
    /// The dates.
    pub dates: Vec<NaiveDate>,
    /// The rain of each day, in mm.
    pub rain_mm: Vec<f64>,
    /// Live water by store.
    pub live_l: Vec<Vec<f64>>,
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
}

/// Writes a day's values into their columns, which are full of what `T` is by default: what most values of most columns are.
fn keep<T: Copy + Default + PartialEq>(columns: &mut [Vec<T>], values: &[T], day: usize) {
    for (column, value) in columns.iter_mut().zip(values) {
        if *value != T::default() {
            column.as_mut_slice()[day] = *value;
        }
    }
}

/// Runs the plan through the weather and keeps every day.
pub fn run_and_keep(plan: &Plan, weather: &Weather, conduct: Conduct) -> (Ledger, Series) {
    run_and_keep_from(plan, weather, &mut Standing::first(plan, conduct.start_share), conduct.inflow_first)
}

/// The same from what stands in it, which is left as it is after the last day.
pub fn run_and_keep_from(
    plan: &Plan,
    weather: &Weather,
    standing: &mut Standing,
    inflow_first: f64,
) -> (Ledger, Series) {
    let days = weather.dates.len();
    // One by one: a copy of zeros is dearer than zeros.
    let zeros = |count: usize| (0..count).map(|_| vec![0.0; days]).collect();
    let (stores, uses) = (plan.stores.len(), plan.uses.len());
    let mut series = Series {
        dates: weather.dates.clone(),
        rain_mm: weather.depths_mm.clone(),
        live_l: zeros(stores),
        spill_l: zeros(stores),
        yield_l: zeros(uses),
        shortfall_l: zeros(uses),
        cut_l: zeros(if plan.rations.is_empty() { 0 } else { uses }),
        rationed: vec![vec![false; days]; plan.rations.len()],
        hauled_l: zeros(stores),
        loads: Vec::new(),
        house_shortfall_l: vec![0.0; days],
    };
    let mut number = 0;
    let (dates, depths_mm) = (&weather.dates, &weather.depths_mm);
    let ledger = run_from(plan, dates, depths_mm, standing, inflow_first, |day: &Day| {
        keep(&mut series.live_l, &day.live_l, number);
        keep(&mut series.spill_l, &day.spill_l, number);
        keep(&mut series.yield_l, &day.yield_l, number);
        keep(&mut series.hauled_l, &day.hauled_l, number);
        keep(&mut series.cut_l, &day.cut_l, number);
        keep(&mut series.rationed, &day.rationed, number);
        for (hauling, _) in plan.hauling.iter().zip(&day.load_came).filter(|(_, came)| **came) {
            series.loads.push(Load { day: number, price: hauling.price });
        }
        let mut house_short_l = 0.0;
        for (at, using) in plan.uses.iter().enumerate() {
            let short_l = day.demand_l[at] - day.yield_l[at];
            if short_l != 0.0 {
                series.shortfall_l[at][number] = short_l;
                if using.counts {
                    house_short_l += short_l;
                }
            }
        }
        series.house_shortfall_l[number] = house_short_l;
        number += 1;
        true
    });
    (ledger, series)
}

/// What else went on every day of a run, for whoever goes through it step by step; in L, the lists as in [`Series`].
#[derive(Clone, Debug)]
pub struct Inside {
    /// Water below the outlet by tank.
    pub dead_l: Vec<Vec<f64>>,
    /// Runoff that reached each tank.
    pub inflow_l: Vec<Vec<f64>>,
    /// First flush by feed.
    pub first_flush_l: Vec<Vec<f64>>,
}

impl Inside {
    /// Runs the days of a series again.
    pub fn of(plan: &Plan, series: &Series, conduct: Conduct) -> Self {
        let columns = |count: usize| vec![Vec::new(); count];
        let (tanks, feeds) = (plan.tanks.len(), plan.feeds.len());
        let mut inside = Self { dead_l: columns(tanks), inflow_l: columns(tanks), first_flush_l: columns(feeds) };
        let push = |columns: &mut [Vec<f64>], values: &[f64]| {
            columns.iter_mut().zip(values).for_each(|(column, value)| column.push(*value));
        };
        let mut standing = Standing::first(plan, conduct.start_share);
        run_from(plan, &series.dates, &series.rain_mm, &mut standing, conduct.inflow_first, |day| {
            push(&mut inside.dead_l, &day.dead_l);
            push(&mut inside.inflow_l, &day.inflow_l);
            push(&mut inside.first_flush_l, &day.first_flush_l);
            true
        });
        inside
    }
}

//! The system run from each reading to the next.

use super::timeline::Timeline;
use crate::engine::balance::plan::Plan;
use crate::engine::balance::run::{Standing, run_from};

/// Factors on what the system is entered to catch and to use.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factors {
    /// On the capture efficiency of all feeds.
    pub capture: f64,
    /// On all uses; a leak counts as use where nothing tells them apart.
    pub uses: f64,
    /// What leaks from one store beyond what is entered, in L a day.
    pub leak_l: f64,
}

impl Factors {
    /// As it is entered.
    pub const ENTERED: Factors = Factors { capture: 1.0, uses: 1.0, leak_l: 0.0 };
}

/// From one reading of a store to its next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// The store.
    pub store: usize,
    /// The days of both readings.
    pub days: (usize, usize),
    /// What was read at its end, in L.
    pub read_l: f64,
    /// What the system, run from the reading at its beginning, then holds, in L.
    pub run_l: f64,
    /// Runoff that reached the store's tanks, in L.
    pub inflow_l: f64,
    /// The sum of the squares of each day's, in L².
    pub inflow_squares: f64,
    /// The sum of the squares of what was wanted each day, in L²; where all of it is known to the litre, none.
    pub wanted_squares: f64,
    /// What was wanted on days of which nothing is known, in L.
    pub wanted_l: f64,
    /// What was drawn on days of which it is known, in L, and the sum of its squares.
    pub known_l: (f64, f64),
    /// Whether it was known at both ends how much had been drawn.
    pub marked: bool,
    /// Whether the rain of all its days was measured.
    pub measured: bool,
}

/// Runs the system along the timeline, each store put right at each of its readings that `counts`; `lifted_l` is added
/// to each of them, to see how much of it is left at the next.
pub fn run_spans(
    plan: &Plan,
    timeline: &Timeline,
    counts: &[bool],
    factors: Factors,
    inflow_first: f64,
    lifted_l: f64,
) -> Vec<Span> {
    let mut undrawn = plan.clone().without_hauling();
    undrawn.scale_capture(factors.capture);
    undrawn.add_leak(timeline.leak_store(), factors.leak_l.max(0.0));
    let drawing = |factor: f64| {
        let mut plan = undrawn.clone();
        plan.scale_uses(factor);
        plan
    };
    let (mut drawn, mut plan) = (factors.uses, drawing(factors.uses));
    let stores = plan.stores.len();
    let mut standing = Standing::share(&plan, 0.5);
    let mut open: Vec<Option<Span>> = vec![None; stores];
    let mut spans = Vec::new();
    let mut next = 0;
    for (day, date) in timeline.dates.iter().enumerate() {
        for (_, store, litres) in timeline.brought.iter().filter(|brought| brought.0 == day) {
            standing.pour(&plan, *store, *litres);
        }
        let rain = timeline.rain_mm[day];
        let known = timeline.draws.factor(day);
        let today_drawn = known.unwrap_or(factors.uses);
        if today_drawn != drawn {
            (drawn, plan) = (today_drawn, drawing(today_drawn));
        }
        run_from(&plan, &[*date], &[rain.unwrap_or(0.0)], &mut standing, inflow_first, |today| {
            for (store, span) in plan.stores.iter().zip(&mut open) {
                let Some(span) = span else { continue };
                let inflow: f64 = store.tanks.iter().map(|tank| today.inflow_l[*tank]).sum();
                let wanted: f64 = plan.uses_of(store).iter().map(|using| today.demand_l[*using]).sum();
                span.inflow_l += inflow;
                span.inflow_squares += inflow * inflow;
                if known.is_some() {
                    span.known_l = (span.known_l.0 + wanted, span.known_l.1 + wanted * wanted);
                } else {
                    span.wanted_l += wanted;
                    span.wanted_squares += wanted * wanted;
                }
                span.measured &= rain.is_some();
            }
            true
        });
        while let Some(reading) = timeline.readings.get(next).filter(|reading| reading.day == day) {
            next += 1;
            if !counts.get(next - 1).copied().unwrap_or(true) || reading.store >= stores {
                continue;
            }
            if let Some(span) = open[reading.store].take() {
                let run_l = standing.live_l[reading.store];
                let marked = [span.days.0, day].iter().all(|day| timeline.draws.marks.contains(day));
                spans.push(Span { days: (span.days.0, day), read_l: reading.live_l, run_l, marked, ..span });
            }
            let capacity = plan.stores[reading.store].joined.live_capacity_l;
            standing.live_l[reading.store] = (reading.live_l + lifted_l).clamp(0.0, capacity);
            open[reading.store] = Some(Span {
                store: reading.store,
                days: (day, day),
                read_l: 0.0,
                run_l: 0.0,
                inflow_l: 0.0,
                inflow_squares: 0.0,
                wanted_squares: 0.0,
                wanted_l: 0.0,
                known_l: (0.0, 0.0),
                marked: false,
                measured: true,
            });
        }
    }
    spans
}

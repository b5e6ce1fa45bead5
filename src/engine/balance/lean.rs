//! A plain system lowered once more, for many cases side by side: what comes to each tank on each day depends neither on
//! the size of tanks nor on the uses, so it is reckoned once.

use std::ops::Range;

use chrono::{Datelike, NaiveDate};

use crate::engine::rain::weather::Weather;

use super::plan::{Plan, SpillTo};
use super::rule::Bound;

/// Days of one calendar month in a row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MonthOfDays {
    /// Its first day, as a place among the days.
    pub from: usize,
    /// The day after its last.
    pub to: usize,
    /// January to December as 0 to 11.
    pub month: usize,
    /// Whether the days of a calendar year end with it.
    pub ends_year: bool,
    /// Whether all days of that year are there.
    pub whole_year: bool,
}

/// The days of a weather by months and years.
#[derive(Clone, Debug, PartialEq)]
pub struct Calendar {
    /// The months in order.
    pub months: Vec<MonthOfDays>,
    /// Years of which all days are there.
    pub whole_years: usize,
    /// Months that are gone through beforehand, uncounted: see [`Calendar::with_run_in`].
    pub run_in: Range<usize>,
    /// How many times they are.
    pub run_ins: usize,
}

impl Calendar {
    /// The calendar of some dates in order.
    pub fn of(dates: &[NaiveDate]) -> Self {
        let mut months: Vec<MonthOfDays> = Vec::new();
        let (mut first_of_year, mut whole_years) = (0, 0);
        for (day, date) in dates.iter().enumerate() {
            let month = date.month0() as usize;
            let goes_on = day > 0 && dates[day - 1].year() == date.year() && dates[day - 1].month0() as usize == month;
            match months.last_mut().filter(|_| goes_on) {
                Some(last) => last.to = day + 1,
                None => months.push(MonthOfDays { from: day, to: day + 1, month, ends_year: false, whole_year: false }),
            }
            if dates.get(day + 1).is_none_or(|next| next.year() != date.year()) {
                let days = day + 1 - first_of_year;
                let whole_year = days == if date.leap_year() { 366 } else { 365 };
                if let Some(last) = months.last_mut() {
                    (last.ends_year, last.whole_year) = (true, whole_year);
                }
                whole_years += usize::from(whole_year);
                first_of_year = day + 1;
            }
        }
        Self { months, whole_years, run_in: 0..0, run_ins: 0 }
    }

    /// With a run-in, so that a run begins with what the years before it left and not with a fill of which nobody knows
    /// where it came from: the months up to the last one that comes before the first in the year, twenty years of them, a
    /// shorter record again and again: large tanks take years to fill. It begins with dead storage alone, so that more
    /// storage, more rain or less use never leaves less.
    #[must_use]
    pub fn with_run_in(self) -> Self {
        const MONTHS: usize = 20 * 12;
        let before_first =
            |month: &MonthOfDays| self.months.first().is_some_and(|first| (month.month + 1) % 12 == first.month);
        let to = self.months.iter().rposition(before_first).map_or(self.months.len(), |at| at + 1);
        let run_ins = if to == 0 { 0 } else { MONTHS.div_ceil(to) };
        Self { run_in: to.saturating_sub(MONTHS)..to, run_ins, ..self }
    }

    /// The days of the run-in, as places among the days.
    pub fn run_in_days(&self) -> Range<usize> {
        let months = self.months.get(self.run_in.clone()).unwrap_or_default();
        months.first().map_or(0, |first| first.from)..months.last().map_or(0, |last| last.to)
    }

    /// How many days each calendar month has in all.
    pub fn days_of_months(&self) -> [usize; 12] {
        let mut days = [0; 12];
        for month in &self.months {
            days[month.month] += month.to - month.from;
        }
        days
    }
}

/// A plain system: nothing pumps, hauls, leaks, evaporates, rations or waters by the weather. Its stores, upstream first.
#[derive(Clone, Debug, PartialEq)]
pub struct Lean {
    pub(super) stores: Vec<LeanStore>,
    pub(super) tanks: usize,
}

#[derive(Clone, Debug, PartialEq)]
pub(super) struct LeanStore {
    pub tanks: Vec<usize>,
    /// Whether another store spills into it.
    pub fed: bool,
    /// The tanks that its spill goes to, and in how many shares it goes.
    pub spills_to: Vec<usize>,
    pub shares: f64,
    pub uses: Vec<usize>,
    pub thirst: Thirst,
}

/// How a store's shortfall counts for a dry day.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Thirst {
    /// None of its uses counts.
    Never,
    /// The first so many of its uses count: what they lack together is their demand less the yield.
    First(usize),
    /// Uses that count stand behind some that don't: each is served in its turn.
    Each(Vec<bool>),
}

impl Lean {
    /// The plan as a plain system; `None` where it has something that only the general run can do.
    pub fn of(plan: &Plan) -> Option<Self> {
        // Named one by one, so that whoever adds something to a plan has to say here whether lanes can do it.
        let Plan { sections: _, feeds: _, stores: _, uses: _, tanks, pumps, hauling, gardens, rations } = plan;
        let plain = pumps.is_empty()
            && hauling.is_empty()
            && gardens.is_empty()
            && rations.is_empty()
            && tanks.iter().all(|tank| tank.open.is_none() && tank.leak_l == 0.0);
        if !plain {
            return None;
        }
        let into = |to: &SpillTo| if let SpillTo::Tank(tank) = to { Some(*tank) } else { None };
        let mut stores: Vec<LeanStore> = Vec::with_capacity(plan.stores.len());
        for store in &plan.stores {
            let counts: Vec<bool> = store.uses.iter().map(|using| plan.uses[*using].counts).collect();
            let first = counts.iter().take_while(|counts| **counts).count();
            let all = counts.iter().filter(|counts| **counts).count();
            #[expect(clippy::cast_precision_loss, reason = "a handful of rims")]
            stores.push(LeanStore {
                tanks: store.tanks.clone(),
                fed: stores.iter().any(|above| above.spills_to.iter().any(|to| store.tanks.contains(to))),
                spills_to: store.spills_to.iter().filter_map(into).collect(),
                shares: store.spills_to.len() as f64,
                uses: store.uses.clone(),
                thirst: match all {
                    0 => Thirst::Never,
                    all if all == first => Thirst::First(all),
                    _ => Thirst::Each(counts),
                },
            });
        }
        Some(Self { stores, tanks: plan.tanks.len() })
    }
}

/// Whether two plans gather the same water at the same tanks on every day.
pub fn gather_alike(one: &Plan, other: &Plan) -> bool {
    one.sections == other.sections && one.feeds == other.feeds && one.tanks.len() == other.tanks.len()
}

/// What comes to each tank from its feeds on each day, in L, reckoned some days at a time.
#[derive(Clone, Debug, Default)]
pub struct Inflows {
    /// By tank.
    pub by_tank: Vec<Vec<f64>>,
    in_chamber_l: Vec<f64>,
    at_feed_l: Vec<f64>,
}

impl Inflows {
    /// Before the first of so many days.
    pub fn before_first_day(plan: &Plan, days: usize) -> Self {
        Self {
            by_tank: vec![Vec::with_capacity(days); plan.tanks.len()],
            in_chamber_l: vec![0.0; plan.feeds.len()],
            at_feed_l: vec![0.0; plan.feeds.len()],
        }
    }

    /// All days at once.
    pub fn of(plan: &Plan, weather: &Weather) -> Self {
        let mut inflows = Self::before_first_day(plan, weather.dates.len());
        inflows.go_on(plan, weather, weather.dates.len());
        inflows
    }

    /// Goes on for at most so many days; whether days are left. The same sums in the same order as in the run.
    pub fn go_on(&mut self, plan: &Plan, weather: &Weather, most_days: usize) -> bool {
        let Self { by_tank, in_chamber_l, at_feed_l } = self;
        let from = by_tank.first().map_or(weather.depths_mm.len(), Vec::len);
        let to = (from + most_days).min(weather.depths_mm.len());
        for column in by_tank.iter_mut() {
            column.resize(to, 0.0);
        }
        for (day, rain_mm) in weather.depths_mm.iter().enumerate().take(to).skip(from) {
            let rains = *rain_mm > 0.0;
            if rains {
                at_feed_l.fill(0.0);
                for section in &plan.sections {
                    let runoff_l =
                        section.area_m2 * (rain_mm - section.wetting_mm).most(0.0) * section.runoff_coefficient;
                    for (feed, share) in &section.outlets {
                        at_feed_l[*feed] += share * runoff_l;
                    }
                }
            }
            for ((feed, in_chamber_l), at_feed_l) in plan.feeds.iter().zip(in_chamber_l.iter_mut()).zip(&*at_feed_l) {
                let passes_l = if rains { feed.capture * at_feed_l } else { 0.0 };
                let mut diverted_l = 0.0;
                // An empty chamber on a dry day stays empty.
                if let Some(chamber) = feed.chamber.as_ref().filter(|_| rains || *in_chamber_l > 0.0) {
                    diverted_l = chamber.day(day, passes_l, in_chamber_l).diverted_l;
                }
                by_tank[feed.tank][day] += passes_l - diverted_l;
            }
        }
        to < weather.depths_mm.len()
    }

    /// The sum of some tanks on each day, in their order.
    pub(super) fn together(&self, tanks: &[usize]) -> Vec<f64> {
        let days = self.by_tank.first().map_or(0, Vec::len);
        let mut sums = vec![0.0; days];
        for tank in tanks {
            for (sum, inflow) in sums.iter_mut().zip(&self.by_tank[*tank]) {
                *sum += inflow;
            }
        }
        sums
    }
}

impl Plan {
    /// What all uses want on each day where that depends on the month alone, in L.
    pub fn demand_by_month_l(&self) -> [f64; 12] {
        std::array::from_fn(|month| self.uses.iter().map(|using| using.daily_l[month]).sum())
    }

    /// The same plan with the uses of another one, which has as many.
    pub fn with_uses_of(&self, other: &Plan) -> Plan {
        Plan { uses: other.uses.clone(), gardens: other.gardens.clone(), ..self.clone() }
    }
}

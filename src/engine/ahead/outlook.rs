//! Where to look ahead from: what was read, what has rained and come since, and the weathers that may come.

use chrono::NaiveDate;

use super::expected::Expected;
use crate::engine::balance::plan::Plan;
use crate::engine::balance::run::{Standing, run_from};
use crate::engine::balance::series::SHORT_BY;

/// Days that are looked ahead: a year.
pub const HORIZON_DAYS: usize = 365;

/// What is known of a store on a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Event {
    /// The day.
    pub date: NaiveDate,
    /// The store, as its place in the plan.
    pub store: usize,
    /// Water brought to it or live water standing in it, in L.
    pub litres: f64,
    /// Whether it was brought, before anything else that day; else it was read, at the end of that day.
    pub brought: bool,
}

/// What is known today.
#[derive(Clone, Debug)]
pub struct Known {
    /// The day at whose end the contents were read.
    pub read_on: NaiveDate,
    /// Live water in each store then, in L.
    pub live_l: Vec<f64>,
    /// The day, at whose end the looking ahead begins; not before the reading.
    pub today: NaiveDate,
    /// The rain of each day after the reading up to today in mm; `None` where nobody measured.
    pub rain_mm: Vec<Option<f64>>,
    /// What was brought, and read of other stores, after the reading and up to today.
    pub events: Vec<Event>,
}

impl Known {
    /// The days from the one after the reading to the last that is looked at.
    pub fn days(&self) -> Vec<NaiveDate> {
        self.read_on.iter_days().skip(1).take(self.since() + HORIZON_DAYS).collect()
    }

    /// The day of the last reading of any store.
    pub fn last_read_on(&self) -> NaiveDate {
        let read = self.events.iter().filter(|event| !event.brought).map(|event| event.date);
        read.fold(self.read_on, NaiveDate::max)
    }

    /// How many days have passed since the reading.
    pub fn since(&self) -> usize {
        usize::try_from((self.today - self.read_on).num_days()).unwrap_or(0)
    }
}

/// One system from today on.
#[derive(Clone, Debug)]
pub struct Outlook {
    /// The system, without hauling: what would come by itself is not counted on.
    pub plan: Plan,
    /// θ of the rule within a day.
    pub inflow_first: f64,
    /// What is known.
    pub known: Known,
    /// The days, from the one after the reading on.
    pub days: Vec<NaiveDate>,
    /// The rain of each future on them, in mm; where it was measured all have the same.
    pub futures: Vec<Vec<f64>>,
}

/// What one future brings.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Course {
    /// Live water in all stores at the end of today and of each day after it, in L.
    pub live_l: Vec<f64>,
    /// How many days from tomorrow on are served before the first dry day; `None` if there is none within the horizon.
    pub lasts: Option<usize>,
    /// The use that lacks water on that day, as its place in the plan, the first of them if they are several.
    pub short: Option<usize>,
}

impl Outlook {
    /// Joins a plan with what is known and with futures that have a depth for each of [`Known::days`].
    pub fn new(plan: Plan, inflow_first: f64, known: Known, futures: Vec<Vec<f64>>) -> Self {
        let days = known.days();
        let mut outlook = Self { plan: plan.without_hauling(), inflow_first, known, days, futures };
        for future in &mut outlook.futures {
            for (depth, measured) in future.iter_mut().zip(&outlook.known.rain_mm) {
                *depth = measured.unwrap_or(*depth);
            }
        }
        outlook
    }

    /// The rain if it never rains again: what was measured, and nothing more.
    pub fn no_more_rain(&self) -> Vec<f64> {
        let mut rain_mm = vec![0.0; self.days.len()];
        for (depth, measured) in rain_mm.iter_mut().zip(&self.known.rain_mm) {
            *depth = measured.unwrap_or(0.0);
        }
        rain_mm
    }

    /// The course if it never rains again.
    pub fn floor(&self) -> Course {
        let no_more = self.no_more_rain();
        self.course(&self.plan, self.standing_today(&no_more), &no_more)
    }

    /// What stands at the end of today under some rain.
    pub fn standing_today(&self, rain_mm: &[f64]) -> Standing {
        let mut standing = Standing::contents(&self.plan, &self.known.live_l);
        let since = self.known.since();
        let mut from = 0;
        while from < since {
            let on = |day: usize, brought: bool| {
                let events = self.known.events.iter();
                events.filter(move |event| event.date == self.days[day] && event.brought == brought)
            };
            on(from, true).for_each(|event| standing.pour(&self.plan, event.store, event.litres));
            // On to the next day on which something was brought, or to the end of one on which something was read.
            let mut to = from + 1;
            while to < since && on(to - 1, false).next().is_none() && on(to, true).next().is_none() {
                to += 1;
            }
            let (days, rain_mm) = (&self.days[from..to], &rain_mm[from..to]);
            run_from(&self.plan, days, rain_mm, &mut standing, self.inflow_first, |_| true);
            on(to - 1, false).for_each(|event| {
                if let Some(live_l) = standing.live_l.get_mut(event.store) {
                    *live_l = event.litres;
                }
            });
            from = to;
        }
        standing
    }

    /// The course from what stands today under some rain, with a system that may be another than the one until today.
    pub fn course(&self, plan: &Plan, mut standing: Standing, rain_mm: &[f64]) -> Course {
        let mut live_l = Vec::with_capacity(HORIZON_DAYS + 1);
        live_l.push(standing.live_l.iter().sum());
        let (mut lasts, mut short) = (None, None);
        let since = self.known.since();
        let (days, rain_mm) = (&self.days[since..], &rain_mm[since..]);
        run_from(plan, days, rain_mm, &mut standing, self.inflow_first, |day| {
            if lasts.is_none() {
                short = short_use(plan, &day.demand_l, &day.yield_l);
                lasts = short.map(|_| live_l.len() - 1);
            }
            live_l.push(day.live_l.iter().sum());
            true
        });
        Course { live_l, lasts, short }
    }

    /// Whether the house lacks nothing for the first so many days from tomorrow on.
    pub fn lasts_for(&self, plan: &Plan, mut standing: Standing, rain_mm: &[f64], days: usize) -> bool {
        let since = self.known.since();
        let to = (since + days).min(self.days.len());
        let mut lasts = true;
        let (days, rain_mm) = (&self.days[since..to], &rain_mm[since..to]);
        run_from(plan, days, rain_mm, &mut standing, self.inflow_first, |day| {
            lasts = short_use(plan, &day.demand_l, &day.yield_l).is_none();
            lasts
        });
        lasts
    }
}

/// The first use of the house that gets less than it wants.
fn short_use(plan: &Plan, demand_l: &[f64], yield_l: &[f64]) -> Option<usize> {
    let short = |at: &usize| plan.uses[*at].counts && demand_l[*at] - yield_l[*at] > SHORT_BY;
    (0..plan.uses.len()).find(short)
}

/// How long the water lasts, in days from tomorrow on; infinite where it lasts beyond the horizon.
pub fn lasting(courses: &[Course]) -> Expected {
    #[expect(clippy::cast_precision_loss, reason = "at most the horizon")]
    Expected::of(courses.iter().map(|course| course.lasts.map_or(f64::INFINITY, |days| days as f64)).collect())
}

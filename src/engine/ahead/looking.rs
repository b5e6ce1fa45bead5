//! Looking ahead in slices, none of which holds the thread for long.

use chrono::NaiveDate;

use super::expected::{Expected, next};
use super::outlook::{Course, HORIZON_DAYS, Outlook, lasting};
use crate::engine::balance::plan::Plan;
use crate::engine::balance::run::Standing;
use crate::quantity::order::sorted;

/// Something that could be done today.
#[derive(Clone, Debug)]
pub enum Step {
    /// The house's uses draw only this share (0 to 1) of what they do.
    UseShare(f64),
    /// So many litres are brought to a store.
    Delivery {
        /// The store, as its place in the plan.
        store: usize,
        /// How much.
        litres: f64,
    },
    /// Another system from tomorrow on, with stores and tanks as they are.
    Instead(Box<Plan>),
}

/// To when the water is to last, for the safe use.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Target {
    /// Days from tomorrow on, 1 to the horizon.
    pub days: usize,
}

/// How much the house can draw a day so that the water lasts to the target, without any rationing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SafeUse {
    /// The target.
    pub target: Target,
    /// For each future, rising: the factor on the house's uses with which the water just lasts, at most [`MOST_FACTOR`].
    pub factors: Vec<f64>,
    /// What the house's uses draw a day on average to the target, in L.
    pub now_l: f64,
}

impl SafeUse {
    /// The factor with which the water lasts with a chance (0 to 1).
    pub fn factor(&self, chance: f64) -> f64 {
        next(&self.factors, 1.0 - chance)
    }

    /// What the house may draw a day with a chance (0 to 1), in L.
    pub fn litres_a_day(&self, chance: f64) -> f64 {
        self.factor(chance) * self.now_l
    }
}

/// Uses are tried up to so many times what they are.
pub const MOST_FACTOR: f64 = 8.0;
/// Halvings of the range of factors: to a thousandth of the present use.
const HALVINGS: usize = 13;

/// The answer.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ahead {
    /// The day of the reading.
    pub read_on: NaiveDate,
    /// The day of the last reading of any store.
    pub last_read_on: NaiveDate,
    /// Today, and the days that follow.
    pub dates: Vec<NaiveDate>,
    /// What the stores hold on each of them, in L.
    pub fan: Vec<Expected>,
    /// What they hold if it never rains again.
    pub floor: Course,
    /// Days from tomorrow on until the first dry day, infinite beyond the horizon.
    pub lasting: Expected,
    /// The same for each future, rising.
    pub lasts: Vec<f64>,
    /// The use that lacks water first in most futures that have a dry day, as its place in the system; none has none.
    pub short: Option<usize>,
    /// What each step would make of that.
    pub steps: Vec<Expected>,
    /// The steps of rationing that are in force at the end of today, as places in the system.
    pub in_force: Vec<usize>,
    /// How much is safe.
    pub safe: SafeUse,
    /// Days since the reading on which nobody measured the rain.
    pub unknown_days: usize,
}

impl Ahead {
    /// In how many futures a dry day comes within so many days from tomorrow on, and of how many.
    pub fn dry_within(&self, days: usize) -> (usize, usize) {
        #[expect(clippy::cast_precision_loss, reason = "at most the horizon")]
        let days = days as f64;
        (self.lasts.iter().filter(|lasts| **lasts < days).count(), self.lasts.len())
    }
}

/// The work, done a step at a time.
#[derive(Clone, Debug)]
pub struct Looking {
    outlook: Outlook,
    target: Target,
    steps: Vec<Step>,
    courses: Vec<Course>,
    standing: Vec<Standing>,
    factors: Vec<f64>,
    with_steps: Vec<Vec<Course>>,
}

impl Looking {
    /// The work that answers for an outlook, a target and some steps.
    pub fn new(outlook: Outlook, target: Target, steps: Vec<Step>) -> Self {
        let (courses, standing, factors) = (Vec::new(), Vec::new(), Vec::new());
        Self { outlook, target, with_steps: vec![Vec::new(); steps.len()], steps, courses, standing, factors }
    }

    /// The share that is done, 0 to 1.
    #[expect(clippy::cast_precision_loss, reason = "futures of a few centuries")]
    pub fn done(&self) -> f64 {
        let steps: usize = self.with_steps.iter().map(Vec::len).sum();
        let done = self.courses.len() + HALVINGS * self.factors.len() + steps;
        let all = self.outlook.futures.len() * (1 + HALVINGS + self.steps.len());
        if all == 0 { 1.0 } else { done as f64 / all as f64 }
    }

    /// Days of the system that the next step runs, at most.
    pub fn next_days(&self) -> usize {
        let futures = self.outlook.futures.len();
        let bisects = self.courses.len() == futures && self.with_steps.iter().all(|courses| courses.len() == futures);
        if bisects { (HALVINGS + 1) * self.target.days } else { HORIZON_DAYS + self.outlook.known.since() }
    }

    /// Does the next piece: one future, for one question. False once nothing is left.
    pub fn step(&mut self) -> bool {
        let futures = self.outlook.futures.len();
        if self.courses.len() < futures {
            let rain_mm = &self.outlook.futures[self.courses.len()];
            let standing = self.outlook.standing_today(rain_mm);
            self.courses.push(self.outlook.course(&self.outlook.plan, standing.clone(), rain_mm));
            self.standing.push(standing);
        } else if let Some(at) = self.with_steps.iter().position(|courses| courses.len() < futures) {
            let future = self.with_steps[at].len();
            let course = self.stepped(&self.steps[at], self.standing[future].clone(), &self.outlook.futures[future]);
            self.with_steps[at].push(course);
        } else if self.factors.len() < futures {
            let future = self.factors.len();
            self.factors.push(self.just_lasting(&self.standing[future], &self.outlook.futures[future]));
        } else {
            return false;
        }
        true
    }

    fn stepped(&self, step: &Step, mut standing: Standing, rain_mm: &[f64]) -> Course {
        match step {
            Step::UseShare(share) => {
                let mut plan = self.outlook.plan.clone();
                plan.scale_house_uses(*share);
                self.outlook.course(&plan, standing, rain_mm)
            }
            Step::Delivery { store, litres } => {
                standing.pour(&self.outlook.plan, *store, *litres);
                self.outlook.course(&self.outlook.plan, standing, rain_mm)
            }
            Step::Instead(plan) => self.outlook.course(plan, standing, rain_mm),
        }
    }

    /// The factor on the house's uses with which the water just lasts to the target under some rain, by bisection:
    /// more use never makes it last longer. No step of rationing cuts them: what is safe is told of what is drawn.
    fn just_lasting(&self, standing: &Standing, rain_mm: &[f64]) -> f64 {
        let lasts = |factor: f64| {
            let mut plan = self.outlook.plan.clone();
            plan.rations.clear();
            plan.scale_house_uses(factor);
            self.outlook.lasts_for(&plan, standing.clone(), rain_mm, self.target.days)
        };
        if lasts(MOST_FACTOR) {
            return MOST_FACTOR;
        }
        let (mut lasting, mut lacking) = (0.0, MOST_FACTOR);
        for _ in 0..HALVINGS {
            let middle = (lasting + lacking) / 2.0;
            if lasts(middle) { lasting = middle } else { lacking = middle }
        }
        lasting
    }

    /// The answer, once nothing is left to do; `None` before, and where there is no future.
    pub fn answer(&self) -> Option<Ahead> {
        let outlook = &self.outlook;
        if self.factors.len() < outlook.futures.len() || outlook.futures.is_empty() {
            return None;
        }
        let since = outlook.known.since();
        let floor = outlook.floor();
        let today = outlook.standing_today(&outlook.no_more_rain());
        let steps = outlook.plan.rations.iter().enumerate();
        let on_day = |day: usize| Expected::of(self.courses.iter().map(|course| course.live_l[day]).collect());
        let dates: Vec<NaiveDate> =
            std::iter::once(outlook.known.today).chain(outlook.days[since..].iter().copied()).collect();
        #[expect(clippy::cast_precision_loss, reason = "at most the horizon")]
        let lasts = |course: &Course| course.lasts.map_or(f64::INFINITY, |days| days as f64);
        Some(Ahead {
            read_on: outlook.known.read_on,
            last_read_on: outlook.known.last_read_on(),
            fan: (0..dates.len()).map(on_day).collect(),
            floor,
            lasting: lasting(&self.courses),
            lasts: sorted(self.courses.iter().map(lasts).collect()),
            short: self
                .courses
                .iter()
                .filter_map(|course| course.short)
                .max_by_key(|short| self.courses.iter().filter(|course| course.short == Some(*short)).count()),
            in_force: steps.filter(|(_, step)| step.is_in_force(&today.live_l)).map(|(at, _)| at).collect(),
            steps: self.with_steps.iter().map(|courses| lasting(courses)).collect(),
            safe: SafeUse {
                target: self.target,
                factors: sorted(self.factors.clone()),
                now_l: outlook.plan.house_use_l(&dates[1..=self.target.days.clamp(1, HORIZON_DAYS)]),
            },
            unknown_days: outlook.known.rain_mm.iter().filter(|depth| depth.is_none()).count(),
            dates,
        })
    }
}

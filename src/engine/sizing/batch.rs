//! Many cases on the same rain, in small steps: eight at a time where the system is plain, one by one where it isn't.

use std::sync::Arc;

use crate::engine::balance::lanes::{Eight, WIDTH};
use crate::engine::balance::lean::{Calendar, Inflows, Lean, gather_alike};
use crate::engine::balance::plan::Plan;
use crate::engine::balance::run::Conduct;
use crate::engine::balance::side_by_side::{Block, CaseOf, Frame};
use crate::engine::rain::weather::Weather;

use super::tally::{Tally, Tallying};

/// One case: a system with its tanks and roofs from one plan and its uses from another, of the same parts.
#[derive(Clone, Debug)]
pub struct Case {
    /// Where tanks and roofs are from.
    pub tanks: Arc<Plan>,
    /// Where the uses are from.
    pub uses: Arc<Plan>,
}

impl Case {
    /// A plan as it is.
    pub fn of(plan: Arc<Plan>) -> Self {
        Self { tanks: Arc::clone(&plan), uses: plan }
    }
}

/// Rain with its calendar and how a run begins: what all batches of one house share.
#[derive(Clone, Debug)]
pub struct Ground {
    /// The days.
    pub weather: Weather,
    /// Their months and years.
    pub calendar: Calendar,
    /// How a run begins, and its order within a day.
    pub conduct: Conduct,
}

impl Ground {
    /// Joins them, with a run-in.
    pub fn new(weather: Weather, conduct: Conduct) -> Self {
        Self { calendar: Calendar::of(&weather.dates).with_run_in(), weather, conduct }
    }

    /// How many days a run goes through, those of the run-in with them.
    fn days(&self) -> usize {
        self.weather.dates.len() + self.calendar.run_ins * self.calendar.run_in_days().len()
    }

    /// The same under another order within a day.
    pub fn under(&self, inflow_first: f64) -> Self {
        Self { conduct: Conduct { inflow_first, ..self.conduct }, ..self.clone() }
    }
}

/// Days that one step does, so that it ends within a few ms on a slow phone.
const GATHERED_A_STEP: usize = 4_000;
const LANES_A_STEP: usize = 12_000;
const GENERAL_A_STEP: usize = 1_200;
/// What a day of each kind takes, by the like of one gathered.
const LANES_WEIGH: f64 = 0.4;
const GENERAL_WEIGH: f64 = 4.0;

/// Cases that gather the same water and have stores of the same make.
struct Group {
    gathers: Arc<Plan>,
    lean: Lean,
    cases: Vec<usize>,
}

enum Work {
    Gather(Inflows),
    Lanes(Box<AtWork>),
}

/// A group with the block of its cases that is on its way.
struct AtWork {
    frame: Frame,
    from: usize,
    block: Block<Eight>,
}

/// Cases on their way.
pub struct Batch {
    ground: Arc<Ground>,
    cases: Vec<Case>,
    tallies: Vec<Tally>,
    groups: Vec<Group>,
    /// Cases for the general run.
    general: Vec<usize>,
    work: Option<Work>,
    one: Option<(Arc<Plan>, Tallying)>,
    done: f64,
    all: f64,
}

impl Batch {
    /// A batch before its first step.
    pub fn new(ground: Arc<Ground>, cases: Vec<Case>) -> Self {
        let (mut groups, mut general): (Vec<Group>, Vec<usize>) = (Vec::new(), Vec::new());
        let (mut known, mut known_group): (Option<Arc<Plan>>, Option<usize>) = (None, None);
        for (at, case) in cases.iter().enumerate() {
            if !known.as_ref().is_some_and(|known| Arc::ptr_eq(known, &case.tanks)) {
                known_group = Lean::of(&case.tanks).map(|lean| {
                    let alike = |group: &Group| group.lean == lean && gather_alike(&group.gathers, &case.tanks);
                    groups.iter().position(alike).unwrap_or_else(|| {
                        groups.push(Group { gathers: Arc::clone(&case.tanks), lean, cases: Vec::new() });
                        groups.len() - 1
                    })
                });
                known = Some(Arc::clone(&case.tanks));
            }
            match known_group {
                Some(group) => groups[group].cases.push(at),
                None => general.push(at),
            }
        }
        // The last is taken first.
        groups.reverse();
        general.reverse();
        #[expect(clippy::cast_precision_loss, reason = "cases and days are few")]
        let all = {
            let blocks: usize = groups.iter().map(|group| group.cases.len().div_ceil(WIDTH)).sum();
            let passes = blocks as f64 * LANES_WEIGH + general.len() as f64 * GENERAL_WEIGH;
            groups.len() as f64 * ground.weather.dates.len() as f64 + passes * ground.days() as f64
        };
        let tallies = vec![Tally::default(); cases.len()];
        Self { ground, cases, tallies, groups, general, work: None, one: None, done: 0.0, all }
    }

    /// How much of the work is done, 0 to 1.
    pub fn progress(&self) -> f64 {
        if self.all > 0.0 { (self.done / self.all).min(1.0) } else { 1.0 }
    }

    /// The tallies, in the order of the cases: whole once [`Batch::step`] has said that nothing is left.
    pub fn tallies(&self) -> &[Tally] {
        &self.tallies
    }

    /// All of it at once.
    pub fn run(mut self) -> Vec<Tally> {
        while self.step() {}
        self.tallies
    }

    /// Does a small piece of the work; whether some is left.
    #[expect(clippy::cast_precision_loss, reason = "days are few")]
    pub fn step(&mut self) -> bool {
        let ground = Arc::clone(&self.ground);
        let days = ground.weather.dates.len();
        if let Some(group) = self.groups.last() {
            let inflows = Inflows::before_first_day(&group.gathers, days);
            match self.work.take().unwrap_or(Work::Gather(inflows)) {
                Work::Gather(mut inflows) => {
                    self.done += GATHERED_A_STEP.min(days) as f64;
                    let left = inflows.go_on(&group.gathers, &ground.weather, GATHERED_A_STEP);
                    self.work = Some(if left {
                        Work::Gather(inflows)
                    } else {
                        let frame = Frame::new(group.lean.clone(), inflows, ground.calendar.clone(), ground.conduct);
                        let block = self.block(&frame, 0);
                        Work::Lanes(Box::new(AtWork { frame, from: 0, block }))
                    });
                }
                Work::Lanes(mut at_work) => {
                    self.done += LANES_A_STEP.min(days) as f64 * LANES_WEIGH;
                    if at_work.block.go_on(&at_work.frame, LANES_A_STEP) {
                        self.work = Some(Work::Lanes(at_work));
                    } else {
                        let AtWork { frame, from, block } = *at_work;
                        self.take(&frame, from, &block);
                        self.next_block(frame, from + WIDTH);
                    }
                }
            }
            return !self.groups.is_empty() || !self.general.is_empty();
        }
        let Some(at) = self.general.last().copied() else { return false };
        let (plan, mut tallying) = self.one.take().unwrap_or_else(|| {
            let Case { tanks, uses } = &self.cases[at];
            let plan = if Arc::ptr_eq(tanks, uses) { Arc::clone(tanks) } else { Arc::new(tanks.with_uses_of(uses)) };
            let tallying = Tallying::before_first_day(&plan, &ground.calendar, ground.conduct);
            (plan, tallying)
        });
        self.done += GENERAL_A_STEP.min(days) as f64 * GENERAL_WEIGH;
        if tallying.go_on(&plan, &ground.weather, &ground.calendar, GENERAL_A_STEP) {
            self.one = Some((plan, tallying));
        } else {
            self.tallies[at] = tallying.tally(&ground.calendar);
            self.general.pop();
        }
        !self.general.is_empty()
    }

    /// The cases of the group at work, from one on, in lanes.
    fn block(&self, frame: &Frame, from: usize) -> Block<Eight> {
        let cases = self.groups.last().map(|group| group.cases.as_slice()).unwrap_or_default();
        let cases: Vec<CaseOf> =
            cases.iter().skip(from).take(WIDTH).map(|at| (&*self.cases[*at].tanks, &*self.cases[*at].uses)).collect();
        Block::new(frame, &cases)
    }

    fn next_block(&mut self, frame: Frame, from: usize) {
        if self.groups.last().is_some_and(|group| from < group.cases.len()) {
            let block = self.block(&frame, from);
            self.work = Some(Work::Lanes(Box::new(AtWork { frame, from, block })));
        } else {
            self.groups.pop();
        }
    }

    /// Takes down what the cases of a block came to.
    #[expect(clippy::cast_precision_loss, reason = "days are few")]
    fn take(&mut self, frame: &Frame, from: usize, block: &Block<Eight>) {
        let Some(group) = self.groups.last() else { return };
        let inflow_l = frame.inflow_l;
        let days = self.ground.calendar.days_of_months();
        let cases = &group.cases[from..(from + WIDTH).min(group.cases.len())];
        for (at, outcome) in cases.iter().zip(block.outcomes(cases.len())) {
            let by_month = self.cases[*at].uses.demand_by_month_l();
            let demand_l = by_month.iter().zip(days).map(|(demand, days)| demand * days as f64).sum();
            self.tallies[*at] = Tally::of_lane(&outcome, inflow_l, &self.ground.calendar, demand_l);
        }
    }
}

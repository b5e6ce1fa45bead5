//! Eight cases of one plain system at once, days outside, cases inside: one case alone waits for its own last result.

use super::lanes::{Lanes, WIDTH};
use super::lean::{Calendar, Inflows, Lean, MonthOfDays, Thirst};
use super::plan::Plan;
use super::run::Conduct;
use super::series::SHORT_BY;

/// What all cases of a block have in common.
#[derive(Clone, Debug)]
pub struct Frame {
    lean: Lean,
    inflows: Inflows,
    /// What comes to each store from its own feeds on each day.
    by_store: Vec<Vec<f64>>,
    /// All that came to the tanks, in L.
    pub inflow_l: f64,
    calendar: Calendar,
    conduct: Conduct,
}

impl Frame {
    /// Joins a plain system with what comes to its tanks and with the days.
    pub fn new(lean: Lean, inflows: Inflows, calendar: Calendar, conduct: Conduct) -> Self {
        let by_store: Vec<Vec<f64>> = lean.stores.iter().map(|store| inflows.together(&store.tanks)).collect();
        let inflow_l = by_store.iter().flatten().sum();
        Self { lean, inflows, by_store, inflow_l, calendar, conduct }
    }
}

/// A case: the sizes of the tanks of one plan and the uses of another (or the same).
pub type CaseOf<'a> = (&'a Plan, &'a Plan);

/// What a case came to.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Outcome {
    /// What the uses got, in L.
    pub yield_l: f64,
    /// Days on which a demand of the house was not met in full.
    pub dry_days: f64,
    /// Whole years without such a day.
    pub good_years: f64,
    /// Such days in the worst calendar year.
    pub worst_year: f64,
    /// Calendar years of which a part is there, with such a day.
    pub dry_parts: f64,
    /// Water in the tanks before the first day, in L.
    pub stored_first_l: f64,
    /// Water in the tanks after the last day, in L.
    pub stored_last_l: f64,
}

/// One store of eight cases.
#[derive(Clone, Debug)]
struct StoreLanes<L> {
    capacity: L,
    /// The most that may be drawn on a day: capacity over 1 − θ.
    most_yield: L,
    content: L,
    demand: [L; 12],
    /// The demand of those of its uses that count for a dry day.
    counting: [L; 12],
    /// Each use's demand, where they have to be served one by one.
    each: Vec<[L; 12]>,
}

/// Days of the longest month.
const MONTH: usize = 31;

/// Where a month's days of several stores are put down.
#[derive(Clone, Debug)]
struct Scratch<L> {
    /// What comes to each tank, where more than its own feeds bring it.
    arriving: Vec<[L; MONTH]>,
    /// What comes to the store at work, above its dead storage; then what is in it before it spills.
    passing: [L; MONTH],
    /// What each store gives.
    given: Vec<[L; MONTH]>,
    /// What all uses that count lack.
    short: [L; MONTH],
}

/// Up to eight cases on their way through the days.
#[derive(Clone, Debug)]
pub struct Block<L> {
    stores: Vec<StoreLanes<L>>,
    /// Dead storage of each tank, and what of it is full.
    dead: Vec<(L, L)>,
    scratch: Scratch<L>,
    stored_first: L,
    yield_by_month: [L; 12],
    dry: L,
    dry_before_year: L,
    good: L,
    worst: L,
    dry_parts: L,
    run_ins: usize,
    next_month: usize,
}

impl<L: Lanes> Block<L> {
    /// Cases (1 to 8) before their first day; lanes that are left over repeat the first case.
    pub fn new(frame: &Frame, cases: &[CaseOf]) -> Self {
        let lanes = |value: &dyn Fn(&Plan, &Plan) -> f64| {
            L::of(std::array::from_fn(|lane| {
                cases.get(lane).or(cases.first()).map_or(0.0, |(tanks, uses)| value(tanks, uses))
            }))
        };
        let later = 1.0 - frame.conduct.inflow_first;
        let run_ins = frame.calendar.run_ins;
        let start = if run_ins > 0 { 0.0 } else { frame.conduct.start_share };
        let stores: Vec<StoreLanes<L>> = frame
            .lean
            .stores
            .iter()
            .enumerate()
            .map(|(at, store)| {
                let capacity = |tanks: &Plan| tanks.stores[at].joined.live_capacity_l;
                let sum = |uses: &Plan, month: usize, first: usize| {
                    store.uses.iter().take(first).fold(0.0, |sum, using| sum + uses.uses[*using].daily_l[month])
                };
                let demand = |first: usize| std::array::from_fn(|month| lanes(&|_, uses| sum(uses, month, first)));
                StoreLanes {
                    capacity: lanes(&|tanks, _| capacity(tanks)),
                    most_yield: lanes(&|tanks, _| if later > 0.0 { capacity(tanks) / later } else { f64::INFINITY }),
                    content: lanes(&|tanks, _| if tanks.stores[at].filled { start * capacity(tanks) } else { 0.0 }),
                    demand: demand(store.uses.len()),
                    counting: demand(if let Thirst::First(first) = store.thirst { first } else { 0 }),
                    each: match store.thirst {
                        Thirst::Each(_) => {
                            let each = |using: &usize| {
                                std::array::from_fn(|month| lanes(&|_, uses| uses.uses[*using].daily_l[month]))
                            };
                            store.uses.iter().map(each).collect()
                        }
                        _ => Vec::new(),
                    },
                }
            })
            .collect();
        let dead: Vec<(L, L)> = (0..frame.lean.tanks)
            .map(|tank| {
                let dead = |plan: &Plan| plan.tanks[tank].dead_l;
                let filled = |plan: &Plan| plan.stores[plan.tanks[tank].store].filled;
                let share = if run_ins > 0 { 1.0 } else { start };
                let first = |plan: &Plan| if filled(plan) { share * dead(plan) } else { 0.0 };
                (lanes(&|tanks, _| dead(tanks)), lanes(&|tanks, _| first(tanks)))
            })
            .collect();
        let zero = L::all(0.0);
        let mut block = Self {
            scratch: Scratch {
                arriving: vec![[zero; MONTH]; frame.lean.tanks],
                passing: [zero; MONTH],
                given: vec![[zero; MONTH]; stores.len()],
                short: [zero; MONTH],
            },
            stored_first: zero,
            yield_by_month: [zero; 12],
            dry: zero,
            dry_before_year: zero,
            good: zero,
            worst: zero,
            dry_parts: zero,
            run_ins,
            next_month: frame.calendar.run_in.start,
            stores,
            dead,
        };
        block.stored_first = block.stored();
        block
    }

    fn stored(&self) -> L {
        let live = self.stores.iter().fold(L::all(0.0), |sum, store| sum.plus(store.content));
        self.dead.iter().fold(live, |sum, (_, full)| sum.plus(*full))
    }

    /// Goes on for some months, until so many days are done; whether days are left.
    pub fn go_on(&mut self, frame: &Frame, most_days: usize) -> bool {
        L::go_on(self, frame, most_days)
    }

    /// The same, in whatever instructions it is called from.
    #[inline(always)]
    pub(super) fn days(&mut self, frame: &Frame, most_days: usize) -> bool {
        let mut done = 0;
        let end = if self.run_ins > 0 { frame.calendar.run_in.end } else { frame.calendar.months.len() };
        while let Some(month) = frame.calendar.months[..end].get(self.next_month).filter(|_| done < most_days) {
            let filling = self.dead.iter().any(|(whole, full)| {
                let (whole, full) = (whole.values(), full.values());
                whole.iter().zip(&full).any(|(whole, full)| full < whole)
            });
            if frame.lean.stores.len() == 1
                && frame.conduct.inflow_first == 0.0
                && !filling
                && self.stores[0].each.is_empty()
            {
                self.one_store(frame, month);
            } else {
                self.all_stores(frame, month, filling);
            }
            if month.ends_year {
                self.end_year(month.whole_year);
            }
            done += month.to - month.from;
            self.next_month += 1;
        }
        if self.run_ins > 0 && self.next_month >= end {
            self.run_ins -= 1;
            self.next_month = frame.calendar.run_in.start;
            if self.run_ins == 0 {
                self.begin();
            }
            return true;
        }
        self.next_month < end
    }

    /// Counts from the first day on, with what the run-in left.
    fn begin(&mut self) {
        let zero = L::all(0.0);
        self.yield_by_month = [zero; 12];
        (self.dry, self.dry_before_year, self.good, self.worst, self.dry_parts) = (zero, zero, zero, zero, zero);
        self.stored_first = self.stored();
        self.next_month = 0;
    }

    #[inline(always)]
    fn end_year(&mut self, whole: bool) {
        let dry = self.dry.minus(self.dry_before_year);
        self.worst = self.worst.most(dry);
        let is_dry = dry.above(L::all(0.5));
        if whole {
            self.good = self.good.plus(L::all(1.0).minus(is_dry));
        } else {
            self.dry_parts = self.dry_parts.plus(is_dry);
        }
        self.dry_before_year = self.dry;
    }

    /// A month of a single store under yield after spillage: `Y = min(D, V)`, `V = min(V + Q, S) − Y`.
    #[inline(always)]
    fn one_store(&mut self, frame: &Frame, month: &MonthOfDays) {
        let store = &mut self.stores[0];
        let (capacity, demand, counting) = (store.capacity, store.demand[month.month], store.counting[month.month]);
        let short_by = L::all(SHORT_BY);
        let mut content = store.content;
        let mut yielded = self.yield_by_month[month.month];
        let mut dry = self.dry;
        for inflow in &frame.by_store[0][month.from..month.to] {
            let given = demand.least(content);
            content = content.plus(L::all(*inflow)).least(capacity).minus(given);
            yielded = yielded.plus(given);
            dry = dry.plus(counting.minus(given).above(short_by));
        }
        store.content = content;
        self.yield_by_month[month.month] = yielded;
        self.dry = dry;
    }

    /// A month of any number of stores under any θ: `rule::day` in lanes, with spill from store to store. Water only goes
    /// downstream, so each store does its whole month in turn; what has to be summed day by day over stores waits for that.
    #[inline(always)]
    fn all_stores(&mut self, frame: &Frame, month: &MonthOfDays, filling: bool) {
        let Self { stores, dead, scratch, .. } = self;
        let Scratch { arriving, passing, given, short } = scratch;
        let theta = frame.conduct.inflow_first;
        let (first, later, zero, short_by) = (L::all(theta), L::all(1.0 - theta), L::all(0.0), L::all(SHORT_BY));
        let days = month.to - month.from;
        let (passing, short) = (&mut passing[..days], &mut short[..days]);
        short.fill(zero);
        for tank in frame.lean.stores.iter().filter(|store| store.fed || filling).flat_map(|store| &store.tanks) {
            for (arriving, own) in arriving[*tank].iter_mut().zip(&frame.inflows.by_tank[*tank][month.from..month.to]) {
                *arriving = L::all(*own);
            }
        }
        for (at, (store, lanes)) in frame.lean.stores.iter().zip(stores.iter_mut()).enumerate() {
            let own = if store.fed || filling {
                passing.fill(zero);
                for tank in &store.tanks {
                    let (whole, mut full) = dead[*tank];
                    for (passing, comes) in passing.iter_mut().zip(&arriving[*tank]) {
                        let kept = comes.least(whole.minus(full)).most(zero);
                        full = full.plus(kept);
                        *passing = passing.plus(comes.minus(kept));
                    }
                    dead[*tank].1 = full;
                }
                None
            } else {
                Some(&frame.by_store[at][month.from..month.to])
            };
            let (capacity, demand, counting) = (lanes.capacity, lanes.demand[month.month], lanes.counting[month.month]);
            let mut content = lanes.content;
            let given = &mut given[at][..days];
            for (day, ((passing, yielded), short)) in
                passing.iter_mut().zip(given.iter_mut()).zip(short.iter_mut()).enumerate()
            {
                let inflow = own.and_then(|own| own.get(day)).map_or(*passing, |own| L::all(*own));
                let (given, before_spill);
                if theta == 0.0 {
                    given = demand.least(content);
                    before_spill = content.plus(inflow);
                    content = before_spill.least(capacity).minus(given);
                } else {
                    given = demand.least(content.plus(first.times(inflow))).least(lanes.most_yield);
                    before_spill = content.plus(inflow).minus(first.times(given));
                    content = before_spill.least(capacity).minus(later.times(given)).most(zero);
                }
                *yielded = given;
                *passing = before_spill;
                *short = short.plus(counting.minus(given).most(zero));
            }
            lanes.content = content;
            if let Thirst::Each(counts) = &store.thirst {
                for (given, short) in given.iter().zip(short.iter_mut()) {
                    let mut to_give = *given;
                    for (counts, demand) in counts.iter().zip(&lanes.each) {
                        let demand = demand[month.month];
                        let given = demand.least(to_give);
                        to_give = to_give.minus(given);
                        if *counts {
                            *short = short.plus(demand.minus(given));
                        }
                    }
                }
            }
            for tank in &store.spills_to {
                for (arriving, passing) in arriving[*tank].iter_mut().zip(passing.iter()) {
                    let spill = passing.minus(capacity).most(zero);
                    let each = if store.shares == 1.0 { spill } else { spill.over(L::all(store.shares)) };
                    *arriving = arriving.plus(each);
                }
            }
        }
        let mut yielded = self.yield_by_month[month.month];
        let mut dry = self.dry;
        for (day, short) in short.iter().enumerate() {
            for given in given.iter() {
                yielded = yielded.plus(given[day]);
            }
            dry = dry.plus(short.above(short_by));
        }
        self.yield_by_month[month.month] = yielded;
        self.dry = dry;
    }

    /// What the first `cases` came to.
    pub fn outcomes(&self, cases: usize) -> Vec<Outcome> {
        let yielded = self.yield_by_month.iter().fold(L::all(0.0), |sum, month| sum.plus(*month)).values();
        let (dry, good, worst) = (self.dry.values(), self.good.values(), self.worst.values());
        let dry_parts = self.dry_parts.values();
        let (first, last) = (self.stored_first.values(), self.stored().values());
        (0..cases.min(WIDTH))
            .map(|lane| Outcome {
                yield_l: yielded[lane],
                dry_days: dry[lane],
                good_years: good[lane],
                worst_year: worst[lane],
                dry_parts: dry_parts[lane],
                stored_first_l: first[lane],
                stored_last_l: last[lane],
            })
            .collect()
    }
}

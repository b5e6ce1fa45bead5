//! The daily water balance: the loop over the days. It allocates only before the first day.

use std::mem::replace;

use chrono::{Datelike, NaiveDate};

use crate::engine::rain::weather::Weather;
use crate::site::household::Reckoning;

use super::garden::{self, GardenTally, RootZone};
use super::ledger::{FlushTally, Ledger};
use super::plan::{Plan, SpillTo, Store, TankPlan, UsePlan};
use super::ration::{Cuts, RationTally};
use super::rule::{self, Bound};

/// What happened on one day, for whoever watches a run. Volumes in L; slices in the order of the plan's own lists. They
/// are no `Vec`s because the run reads and writes them by place, which for a `Vec` is a call where code is made for size.
#[derive(Clone, Debug, Default)]
pub struct Day {
    /// Live water in each store when the day ends.
    pub live_l: Box<[f64]>,
    /// Water below the outlet in each tank when the day ends.
    pub dead_l: Box<[f64]>,
    /// Runoff that reached each tank from its feeds.
    pub inflow_l: Box<[f64]>,
    /// What each feed's diverter kept back.
    pub first_flush_l: Box<[f64]>,
    /// Spill of each store, wherever it went.
    pub spill_l: Box<[f64]>,
    /// What each use asked for, after rationing.
    pub demand_l: Box<[f64]>,
    /// What rationing kept each use from asking for.
    pub cut_l: Box<[f64]>,
    /// What each use got.
    pub yield_l: Box<[f64]>,
    /// Hauled water poured into each store.
    pub hauled_l: Box<[f64]>,
    /// Whether a load of each hauling came.
    pub load_came: Box<[bool]>,
    /// Whether each step of rationing was in force.
    pub rationed: Box<[bool]>,
}

/// How a run begins and which rule it follows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conduct {
    /// Share of each store's live and dead storage that is full before the first day, 0 to 1.
    pub start_share: f64,
    /// θ of [`rule::day`], 0 to 1.
    pub inflow_first: f64,
}

impl From<&Reckoning> for Conduct {
    /// As a site is reckoned.
    fn from(reckoning: &Reckoning) -> Self {
        Self { start_share: reckoning.start.get(), inflow_first: reckoning.inflow_first.get() }
    }
}

impl Day {
    /// What the uses that make a dry day lack today, in L.
    pub fn house_shortfall_l(&self, plan: &Plan) -> f64 {
        let mut short_l = 0.0;
        for ((using, wanted), given) in plan.uses.iter().zip(&self.demand_l).zip(&self.yield_l) {
            if using.counts {
                short_l += wanted - given;
            }
        }
        short_l
    }
}

/// Runs the plan through the weather, day by day, showing each day to `watch`, and returns the ledger.
///
/// The order within a day: rationing looks at the stores; hauled loads that are due, and orders for new ones; pumps; roofs, screens, diverters; rain on
/// the gardens; then each store, upstream first: inflow fills dead storage, then the operating rule with the uses in
/// their order; spill flows on; leaks and evaporation; the gardens drink last.
///
/// # Example
/// ```
/// use eavewater::engine::balance::{plan::plan, run::{Conduct, run}};
/// use eavewater::engine::rain::weather::{Origin, Weather};
/// use eavewater::site::demo;
/// let rain = demo::rain();
/// let weather = Weather {
///     dates: rain.days().map(|(date, _)| date).collect(),
///     depths_mm: rain.depths_mm.iter().map(|depth| depth.unwrap()).collect(),
///     filled_days: 0,
///     left_out_years: vec![],
///     origin: Origin::Measured,
/// };
/// let ledger = run(&plan(&demo::site().system).unwrap(), &weather, Conduct { start_share: 1.0, inflow_first: 0.0 }, |_| ());
/// assert!(ledger.residual().abs() < 1e-9);
/// ```
pub fn run(plan: &Plan, weather: &Weather, conduct: Conduct, mut watch: impl FnMut(&Day)) -> Ledger {
    let mut standing = Standing::first(plan, conduct.start_share);
    let (dates, depths_mm) = (&weather.dates, &weather.depths_mm);
    run_from(plan, dates, depths_mm, &mut standing, conduct.inflow_first, |day| {
        watch(day);
        true
    })
}

/// Runs the plan from what stands in it through some days with their rain (mm), as [`run`] does, until they end or
/// `watch` says no; `standing` is then what stands when the last day that was run ends.
pub fn run_from(
    plan: &Plan,
    dates: &[NaiveDate],
    depths_mm: &[f64],
    standing: &mut Standing,
    inflow_first: f64,
    mut watch: impl FnMut(&Day) -> bool,
) -> Ledger {
    let mut running = Running::begin(plan, standing, inflow_first);
    for (date, rain_mm) in dates.iter().zip(depths_mm) {
        running.day(date.month0() as usize, *rain_mm);
        if !watch(&running.state.day) {
            break;
        }
    }
    running.end(standing)
}

/// A run on its way: what doesn't depend on who watches it, and so is in the program once.
struct Running<'a> {
    plan: &'a Plan,
    inflow_first: f64,
    state: State,
    ledger: Ledger,
}

impl<'a> Running<'a> {
    fn begin(plan: &'a Plan, standing: &Standing, inflow_first: f64) -> Self {
        let state = State::standing(plan, standing);
        let ledger = Ledger {
            flushes: vec![FlushTally::default(); plan.feeds.len()],
            gardens: plan
                .gardens
                .iter()
                .map(|garden| GardenTally { using: garden.using, ..GardenTally::default() })
                .collect(),
            rations: vec![RationTally::default(); plan.rations.len()],
            stored_first_l: state.stored_l(),
            ..Ledger::default()
        };
        Self { plan, inflow_first, state, ledger }
    }

    #[inline(never)]
    fn day(&mut self, month: usize, rain_mm: f64) {
        let Self { plan, inflow_first, state, ledger } = self;
        state.asks_anew = plan.demand_follows_state() || month != state.month;
        state.month = month;
        if !plan.rations.is_empty() {
            state.cuts.look(plan, &mut state.day, &mut ledger.rations);
        }
        if !plan.hauling.is_empty() {
            haul(plan, state, ledger, month);
        }
        if !plan.pumps.is_empty() {
            pump(plan, state, ledger, month);
        }
        collect(plan, state, ledger, month, rain_mm);
        if !plan.gardens.is_empty() {
            garden::wake(plan, &mut state.root_zones, &mut ledger.gardens, month, rain_mm);
        }
        for (number, store) in plan.stores.iter().enumerate() {
            balance(plan, state, ledger, number, store, month, *inflow_first);
        }
        if !plan.gardens.is_empty() {
            garden::drink(plan, &mut state.root_zones, &mut ledger.gardens, month, &state.day.yield_l);
        }
        state.days += 1;
    }

    fn end(self, standing: &mut Standing) -> Ledger {
        let Self { state, mut ledger, .. } = self;
        ledger.stored_last_l = state.stored_l();
        state.leave(standing);
        ledger
    }
}

struct State {
    day: Day,
    /// Water on its way into each tank today; all of it has come when the day ends.
    arriving_l: Box<[f64]>,
    /// Runoff on its way to each feed today.
    at_feed_l: Box<[f64]>,
    in_chamber_l: Box<[f64]>,
    pump_runs: Box<[bool]>,
    /// Days until the load that is ordered comes.
    load_due: Box<[Option<u32>]>,
    root_zones: Box<[RootZone]>,
    cuts: Cuts,
    /// Days that have been run.
    days: usize,
    /// Whether it rained on the last of them.
    rained: bool,
    /// The month of the last of them; 12 before the first.
    month: usize,
    /// Whether the uses may ask for something else today than on the day before.
    asks_anew: bool,
    /// What the uses of each store ask for together.
    asked_l: Box<[f64]>,
    /// What was last shared out among them as they ask now; NaN before that.
    shared_l: Box<[f64]>,
}

/// What stands in a system between two days.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// Live water in each store, in L.
    pub live_l: Vec<f64>,
    /// Water below the outlet in each tank, in L.
    pub dead_l: Vec<f64>,
    in_chamber_l: Vec<f64>,
    pump_runs: Vec<bool>,
    load_due: Vec<Option<u32>>,
    root_zones: Vec<RootZone>,
    /// Days since diverters that are emptied by hand were last counted from.
    days: usize,
}

impl Standing {
    /// The same share (0 to 1) of every store's live and dead storage; diverters empty, pumps at rest, nothing ordered,
    /// the soil of gardens at field capacity.
    pub fn share(plan: &Plan, share: f64) -> Self {
        Self {
            live_l: plan.stores.iter().map(|store| share * store.joined.live_capacity_l).collect(),
            dead_l: plan.tanks.iter().map(|tank| share * tank.dead_l).collect(),
            in_chamber_l: vec![0.0; plan.feeds.len()],
            pump_runs: vec![false; plan.pumps.len()],
            load_due: vec![None; plan.hauling.len()],
            root_zones: vec![RootZone::default(); plan.gardens.len()],
            days: 0,
        }
    }

    /// The same, but for stores that nothing fills: they begin empty.
    pub fn first(plan: &Plan, share: f64) -> Self {
        let mut standing = Self::share(plan, share);
        for (live_l, store) in standing.live_l.iter_mut().zip(&plan.stores).filter(|(_, store)| !store.filled) {
            *live_l = 0.0;
            store.tanks.iter().for_each(|tank| standing.dead_l[*tank] = 0.0);
        }
        standing
    }

    /// Pours water (L) into a store, as much as it has room for.
    pub fn pour(&mut self, plan: &Plan, store: usize, litres: f64) {
        if let (Some(live_l), Some(store)) = (self.live_l.get_mut(store), plan.stores.get(store)) {
            *live_l = (*live_l + litres).min(store.joined.live_capacity_l);
        }
    }

    /// So much live water in each store (L; held to what it can hold), dead storage full, else as [`Standing::share`].
    pub fn contents(plan: &Plan, live_l: &[f64]) -> Self {
        let mut standing = Self::share(plan, 1.0);
        for (held_l, live_l) in standing.live_l.iter_mut().zip(live_l) {
            *held_l = live_l.clamp(0.0, *held_l);
        }
        standing
    }

    /// Where a run begins: with the same share of every store, or beside a house with the water of that house.
    pub fn beside(plan: &Plan, house: Option<&Plan>, share: f64) -> Self {
        house.map_or_else(|| Self::first(plan, share), |house| Self::carried(plan, house, share))
    }

    /// The water of a house whose stores are full to a share (0 to 1), in another plan of the same house: each tank
    /// that is still there keeps its litres as far as they find room, a new one stands empty. So that nothing is
    /// gained by having been full on the first day.
    fn carried(plan: &Plan, house: &Plan, share: f64) -> Self {
        let before = Self::first(house, share);
        let mut standing = Self::share(plan, 0.0);
        for (store, live_l) in house.stores.iter().zip(&before.live_l) {
            let surface_m = store.joined.surface_m(*live_l);
            for (tank, live_l) in store.tanks.iter().zip(store.joined.live_of_each(surface_m)) {
                let kept = plan.tanks.iter().position(|other| other.id == house.tanks[*tank].id);
                if let Some((at, tank_plan)) = kept.and_then(|at| Some((at, plan.tanks.get(at)?))) {
                    let dead_l = before.dead_l[*tank].least(tank_plan.dead_l);
                    standing.dead_l[at] = dead_l;
                    standing.live_l[tank_plan.store] += live_l + before.dead_l[*tank] - dead_l;
                }
            }
        }
        for (live_l, store) in standing.live_l.iter_mut().zip(&plan.stores) {
            *live_l = live_l.least(store.joined.live_capacity_l);
        }
        standing
    }
}

impl State {
    fn standing(plan: &Plan, standing: &Standing) -> Self {
        let zeros = |length: usize| vec![0.0; length].into_boxed_slice();
        Self {
            day: Day {
                live_l: standing.live_l.clone().into(),
                dead_l: standing.dead_l.clone().into(),
                inflow_l: zeros(plan.tanks.len()),
                first_flush_l: zeros(plan.feeds.len()),
                spill_l: zeros(plan.stores.len()),
                demand_l: zeros(plan.uses.len()),
                yield_l: zeros(plan.uses.len()),
                hauled_l: zeros(plan.stores.len()),
                cut_l: zeros(plan.uses.len()),
                load_came: vec![false; plan.hauling.len()].into(),
                rationed: vec![false; plan.rations.len()].into(),
            },
            arriving_l: zeros(plan.tanks.len()),
            at_feed_l: zeros(plan.feeds.len()),
            in_chamber_l: standing.in_chamber_l.clone().into(),
            pump_runs: standing.pump_runs.clone().into(),
            load_due: standing.load_due.clone().into(),
            days: standing.days,
            root_zones: standing.root_zones.clone().into(),
            cuts: Cuts::none(plan),
            rained: false,
            month: 12,
            asks_anew: true,
            asked_l: zeros(plan.stores.len()),
            shared_l: zeros(plan.stores.len()),
        }
    }

    fn leave(self, standing: &mut Standing) {
        *standing = Standing {
            live_l: self.day.live_l.into_vec(),
            dead_l: self.day.dead_l.into_vec(),
            in_chamber_l: self.in_chamber_l.into_vec(),
            pump_runs: self.pump_runs.into_vec(),
            load_due: self.load_due.into_vec(),
            root_zones: self.root_zones.into_vec(),
            days: self.days,
        };
    }

    fn stored_l(&self) -> f64 {
        self.day.live_l.iter().chain(self.day.dead_l.iter()).sum()
    }

    /// Fills a tank's dead storage with water that comes to it, and returns what is left for its store.
    #[inline(always)]
    fn after_dead_storage(&mut self, tanks: &[TankPlan], tank: usize, litres: f64) -> f64 {
        let kept = litres.least(tanks[tank].dead_l - self.day.dead_l[tank]).most(0.0);
        self.day.dead_l[tank] += kept;
        litres - kept
    }
}

/// A load is ordered when the store begins the day below the trigger, comes so many days later before anything else
/// happens, and is paid whole even where it finds no room for all of it.
fn haul(plan: &Plan, state: &mut State, ledger: &mut Ledger, month: usize) {
    state.day.hauled_l.fill(0.0);
    for (number, hauling) in plan.hauling.iter().enumerate() {
        let store = plan.tanks[hauling.tank].store;
        let capacity_l = plan.stores[store].joined.live_capacity_l;
        let low = state.day.live_l[store] < hauling.trigger_share * capacity_l;
        let due = state.load_due[number].or(low.then_some(hauling.notice_days));
        state.day.load_came[number] = due == Some(0);
        state.load_due[number] = match due {
            Some(0) => {
                let room = capacity_l - state.day.live_l[store] + plan.tanks[hauling.tank].dead_l
                    - state.day.dead_l[hauling.tank];
                let poured = hauling.load_l.least(room.most(0.0));
                let live = state.after_dead_storage(&plan.tanks, hauling.tank, poured);
                state.day.live_l[store] += live;
                state.day.hauled_l[store] += poured;
                ledger.by_month[month].hauled_l += poured;
                ledger.loads += 1;
                ledger.hauling_cost += hauling.price;
                None
            }
            Some(days) => Some(days - 1),
            None => None,
        };
    }
}

/// A pump starts when the receiving store is below its start level and runs, day after day, until the stop level.
fn pump(plan: &Plan, state: &mut State, ledger: &mut Ledger, month: usize) {
    for (number, pump) in plan.pumps.iter().enumerate() {
        let to_store = plan.tanks[pump.to_tank].store;
        let capacity_l = plan.stores[to_store].joined.live_capacity_l;
        if state.day.live_l[to_store] < pump.start_share * capacity_l {
            state.pump_runs[number] = true;
        }
        if !state.pump_runs[number] {
            continue;
        }
        let room = (pump.stop_share * capacity_l - state.day.live_l[to_store]).most(0.0);
        let lifted = pump.limit_l.least(state.day.live_l[pump.from_store]).least(room);
        state.day.live_l[pump.from_store] -= lifted;
        let live = state.after_dead_storage(&plan.tanks, pump.to_tank, lifted);
        state.day.live_l[to_store] += live;
        ledger.by_month[month].pumped_l += lifted;
        if lifted >= room {
            state.pump_runs[number] = false;
        }
    }
}

/// Rain to roofs, through screens and diverters, on its way to the tanks:
/// `q_s = A_s c_s max(0, P − w_s)`, `Q_f = κ_f Σ share_sf q_s`.
#[inline(always)]
fn collect(plan: &Plan, state: &mut State, ledger: &mut Ledger, month: usize, rain_mm: f64) {
    if state.rained {
        state.day.inflow_l.fill(0.0);
        state.day.first_flush_l.fill(0.0);
    }
    state.rained = rain_mm > 0.0;
    if !state.rained {
        for (feed, in_chamber_l) in plan.feeds.iter().zip(&mut state.in_chamber_l) {
            if let Some(chamber) = feed.chamber.as_ref().filter(|_| *in_chamber_l > 0.0) {
                chamber.day(state.days, 0.0, in_chamber_l);
            }
        }
        return;
    }
    let flows = &mut ledger.by_month[month];
    for section in &plan.sections {
        let runs_mm = (rain_mm - section.wetting_mm).most(0.0);
        let beyond_wetting_l = section.area_m2 * runs_mm;
        let runoff_l = beyond_wetting_l * section.runoff_coefficient;
        flows.roof_rain_l += section.area_m2 * rain_mm;
        flows.wetting_l += section.area_m2 * rain_mm.least(section.wetting_mm);
        flows.not_run_off_l += beyond_wetting_l - runoff_l;
        let mut taken_l = 0.0;
        for (feed, share) in &section.outlets {
            state.at_feed_l[*feed] += share * runoff_l;
            taken_l += share * runoff_l;
        }
        flows.uncollected_l += runoff_l - taken_l;
    }
    for (number, feed) in plan.feeds.iter().enumerate() {
        let reaches_l = replace(&mut state.at_feed_l[number], 0.0);
        let passes_l = feed.capture * reaches_l;
        flows.escaped_l += reaches_l - passes_l;
        let mut diverted_l = 0.0;
        if let Some(chamber) = &feed.chamber {
            let tally = &mut ledger.flushes[number];
            if passes_l > 0.0 {
                tally.storms += 1;
                tally.found_full += usize::from(chamber.is_full(state.in_chamber_l[number]));
            }
            let flushed = chamber.day(state.days, passes_l, &mut state.in_chamber_l[number]);
            diverted_l = flushed.diverted_l;
            tally.diverted_l += flushed.diverted_l;
            tally.dripped_l += flushed.dripped_l;
        }
        state.day.first_flush_l[number] = diverted_l;
        flows.first_flush_l += diverted_l;
        flows.inflow_l += passes_l - diverted_l;
        state.day.inflow_l[feed.tank] += passes_l - diverted_l;
    }
    for (tank, plan) in plan.tanks.iter().enumerate() {
        state.arriving_l[tank] += state.day.inflow_l[tank];
        if let Some((mouth_m2, _)) = plan.open {
            state.arriving_l[tank] += mouth_m2 * rain_mm;
            flows.open_rain_l += mouth_m2 * rain_mm;
        }
    }
}

/// One store's day: dead storage first, then the operating rule, spill to where it is plumbed, losses.
#[inline(always)]
fn balance(
    plan: &Plan,
    state: &mut State,
    ledger: &mut Ledger,
    number: usize,
    store: &Store,
    month: usize,
    inflow_first: f64,
) {
    let (tanks, uses) = (plan.tanks.as_slice(), plan.uses.as_slice());
    let mut inflow_l = 0.0;
    for tank in &store.tanks {
        let arrives_l = replace(&mut state.arriving_l[*tank], 0.0);
        if arrives_l > 0.0 {
            inflow_l += state.after_dead_storage(tanks, *tank, arrives_l);
        }
    }
    if state.asks_anew {
        let mut asked_l = 0.0;
        for using in &store.uses {
            asked_l += ask(&uses[*using], state, ledger, *using, month);
        }
        state.asked_l[number] = asked_l;
        state.shared_l[number] = f64::NAN;
    }
    let demand_l = state.asked_l[number];
    let flows = &mut ledger.by_month[month];
    let outcome = rule::day(store.joined.live_capacity_l, state.day.live_l[number], inflow_l, demand_l, inflow_first);
    // The same water among the same wants is shared as it was: on most days there is enough, or nothing.
    if outcome.yield_l != state.shared_l[number] {
        let mut to_give_l = outcome.yield_l;
        for using in &store.uses {
            let given = state.day.demand_l[*using].least(to_give_l);
            state.day.yield_l[*using] = given;
            to_give_l -= given;
        }
        state.shared_l[number] = outcome.yield_l;
    }
    flows.demand_l += demand_l;
    flows.yield_l += outcome.yield_l;
    state.day.live_l[number] = outcome.content_l;
    state.day.spill_l[number] = outcome.spill_l;
    if outcome.spill_l > 0.0 {
        #[expect(clippy::cast_precision_loss, reason = "a handful of rims")]
        let each_l = outcome.spill_l / store.spills_to.len() as f64;
        for to in &store.spills_to {
            match to {
                SpillTo::Tank(tank) => state.arriving_l[*tank] += each_l,
                SpillTo::Garden => {
                    flows.spill_l += each_l;
                    flows.spill_to_garden_l += each_l;
                }
                SpillTo::Ground => flows.spill_l += each_l,
            }
        }
    }
    if store.loses {
        lose(tanks, state, ledger, number, store, month);
    }
}

/// What a use asks for today, in L: what it wants less what rationing cuts.
#[inline(always)]
fn ask(plan: &UsePlan, state: &mut State, ledger: &mut Ledger, using: usize, month: usize) -> f64 {
    let wanted_l = match plan.garden {
        None => plan.daily_l[month],
        Some(garden) => state.root_zones[garden].wanted_l,
    };
    let cut_l = state.cuts.cut_l(using, wanted_l, &mut ledger.rations);
    ledger.by_month[month].cut_l += cut_l;
    state.day.cut_l[using] = cut_l;
    state.day.demand_l[using] = wanted_l - cut_l;
    wanted_l - cut_l
}

/// Leaks and evaporation take from the live water first, then from what lies below the tank's own outlet.
fn lose(tanks: &[TankPlan], state: &mut State, ledger: &mut Ledger, number: usize, store: &Store, month: usize) {
    let flows = &mut ledger.by_month[month];
    let surface_m = store.joined.surface_m(state.day.live_l[number]);
    for (place, tank) in store.tanks.iter().enumerate() {
        let tank_plan = &tanks[*tank];
        let mut take = |wanted_l: f64| {
            let from_live = wanted_l.least(state.day.live_l[number]);
            let from_dead = (wanted_l - from_live).least(state.day.dead_l[*tank]);
            state.day.live_l[number] -= from_live;
            state.day.dead_l[*tank] -= from_dead;
            from_live + from_dead
        };
        flows.leak_l += take(tank_plan.leak_l);
        if let Some((_, evaporation_mm)) = tank_plan.open {
            flows.evaporation_l += take(evaporation_mm[month] * store.joined.surface_m2(place, surface_m));
        }
    }
}

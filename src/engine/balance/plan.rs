//! A system lowered to flat numbers and indices, once, before the days begin.

use chrono::{Datelike, NaiveDate};

use crate::site::findings::{Finding, findings};
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::tank::{Cover, OverflowTo, Tank};

use super::first_flush::Chamber;
use super::garden::{GardenPlan, gardens};
use super::level::Joined;
use super::ration::{RationPlan, rations};

/// A system ready to run. Indices are places in the system's own lists; stores come in an order in which each spills
/// only into later ones.
#[derive(Clone, Debug)]
pub struct Plan {
    pub(super) sections: Vec<Section>,
    pub(super) feeds: Vec<FeedPlan>,
    pub(super) tanks: Vec<TankPlan>,
    /// The stores, upstream first.
    pub stores: Vec<Store>,
    pub(super) pumps: Vec<PumpPlan>,
    /// The uses, in the order of the system's list.
    pub uses: Vec<UsePlan>,
    pub(super) hauling: Vec<HaulingPlan>,
    /// The gardens by the weather.
    pub gardens: Vec<GardenPlan>,
    /// The steps of rationing.
    pub rations: Vec<RationPlan>,
}

impl Plan {
    /// Whether what the uses ask for depends on what happened before: on the soil of a garden, or on how much is in
    /// store. Where it doesn't, each use asks for the same on every day of a month.
    pub fn demand_follows_state(&self) -> bool {
        !self.gardens.is_empty() || !self.rations.is_empty()
    }

    /// Dead storage of some tanks, in L.
    pub fn dead_l(&self, tanks: &[usize]) -> f64 {
        tanks.iter().filter_map(|at| self.tanks.get(*at)).map(|tank| tank.dead_l).sum()
    }

    /// What a tank can never hold because its store spills at a lower rim, in L, and the tank of that rim; `None` for a
    /// tank in no store.
    pub fn stranded(&self, tank: usize) -> Option<(f64, usize)> {
        let store = self.stores.iter().find(|store| store.tanks.contains(&tank))?;
        let place = store.tanks.iter().position(|other| *other == tank)?;
        Some((*store.joined.stranded_l.get(place)?, *store.tanks.get(*store.joined.spills_at.first()?)?))
    }
}

impl Plan {
    /// The same without hauled water.
    #[must_use]
    pub fn without_hauling(mut self) -> Self {
        self.hauling.clear();
        self
    }

    /// What the uses that count for a dry day want on average over some days, in L a day; 0 over none.
    pub fn house_use_l(&self, days: &[NaiveDate]) -> f64 {
        let wanted: f64 = days
            .iter()
            .flat_map(|day| {
                self.uses.iter().filter(|using| using.counts).map(|using| using.daily_l[day.month0() as usize])
            })
            .sum();
        #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
        if days.is_empty() { 0.0 } else { wanted / days.len() as f64 }
    }

    /// What all uses want on average over some days, gardens by the weather left out, in L a day; 0 over none.
    pub fn uses_l(&self, days: &[NaiveDate]) -> f64 {
        let wanted =
            |day: &NaiveDate| -> f64 { self.uses.iter().map(|using| using.daily_l[day.month0() as usize]).sum() };
        #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
        let over = days.len().max(1) as f64;
        days.iter().map(wanted).sum::<f64>() / over
    }

    /// The uses that draw on a store, as places in the plan.
    pub fn uses_of<'a>(&self, store: &'a Store) -> &'a [usize] {
        &store.uses
    }

    /// Multiplies the capture efficiency of all feeds.
    pub fn scale_capture(&mut self, factor: f64) {
        self.feeds.iter_mut().for_each(|feed| feed.capture *= factor);
    }

    /// No feed catches more than all that runs off to it.
    pub fn catch_no_more_than_all(&mut self) {
        self.feeds.iter_mut().for_each(|feed| feed.capture = feed.capture.min(1.0));
    }

    /// Lets a store lose more, in L a day.
    pub fn add_leak(&mut self, store: usize, litres: f64) {
        if let Some(store) = self.stores.get_mut(store).filter(|_| litres > 0.0)
            && let Some(tank) = store.tanks.first().and_then(|tank| self.tanks.get_mut(*tank))
        {
            tank.leak_l += litres;
            store.loses = true;
        }
    }

    /// Multiplies what all uses draw.
    pub fn scale_uses(&mut self, factor: f64) {
        for using in &mut self.uses {
            using.daily_l.iter_mut().for_each(|litres| *litres *= factor);
        }
        self.gardens.iter_mut().for_each(|garden| garden.litres_per_mm *= factor);
    }

    /// Multiplies what the uses that count for a dry day draw.
    pub fn scale_house_uses(&mut self, factor: f64) {
        for using in self.uses.iter_mut().filter(|using| using.counts) {
            using.daily_l.iter_mut().for_each(|litres| *litres *= factor);
            if let Some(garden) = using.garden.and_then(|garden| self.gardens.get_mut(garden)) {
                garden.litres_per_mm *= factor;
            }
        }
    }
}

#[derive(Clone, Debug, PartialEq)]
pub(super) struct Section {
    pub area_m2: f64,
    pub runoff_coefficient: f64,
    pub wetting_mm: f64,
    /// Feed and share.
    pub outlets: Vec<(usize, f64)>,
}

#[derive(Clone, Debug, PartialEq)]
pub(super) struct FeedPlan {
    pub capture: f64,
    pub tank: usize,
    pub chamber: Option<Chamber>,
}

#[derive(Clone, Debug)]
pub(super) struct TankPlan {
    pub id: PartId,
    pub store: usize,
    pub dead_l: f64,
    pub leak_l: f64,
    /// For an uncovered tank: the area that catches rain in m², and evaporation in mm a day by month.
    pub open: Option<(f64, [f64; 12])>,
}

/// Tanks at one level.
#[derive(Clone, Debug)]
pub struct Store {
    /// The tanks in it, as places in the system's list.
    pub tanks: Vec<usize>,
    /// Their common level.
    pub joined: Joined,
    /// Whether any of its tanks loses water other than to uses.
    pub(super) loses: bool,
    /// Whether anything brings it water: see [`System::is_filled`].
    pub(super) filled: bool,
    /// Where its spill goes, in equal shares.
    pub(super) spills_to: Vec<SpillTo>,
    /// The uses that draw on it, first served first.
    pub(super) uses: Vec<usize>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum SpillTo {
    Ground,
    Garden,
    Tank(usize),
}

#[derive(Clone, Debug)]
pub(super) struct PumpPlan {
    pub from_store: usize,
    pub to_tank: usize,
    pub start_share: f64,
    pub stop_share: f64,
    pub limit_l: f64,
}

/// A use as numbers.
#[derive(Clone, Debug)]
pub struct UsePlan {
    /// Whether a day without it is a dry day of the house.
    pub counts: bool,
    pub(super) daily_l: [f64; 12],
    /// Its place among the gardens, if it is one: then it asks for what its soil needs.
    pub(super) garden: Option<usize>,
}

#[derive(Clone, Debug)]
pub(super) struct HaulingPlan {
    pub tank: usize,
    pub trigger_share: f64,
    pub load_l: f64,
    pub price: f64,
    pub notice_days: u32,
}

/// Lowers a system.
///
/// # Errors
/// All its findings, if it has any: then it can't run.
pub fn plan(system: &System) -> Result<Plan, Vec<Finding>> {
    let found = findings(system);
    if !found.is_empty() {
        return Err(found);
    }
    // A system without findings has every part that it names; a mention of no part is left out rather than guessed.
    let at = |id: PartId| system.tanks.iter().position(|tank| tank.id == id);
    let stores = stores_upstream_first(system);
    let store_of: Vec<usize> = (0..system.tanks.len())
        .map(|tank| stores.iter().position(|store| store.contains(&tank)).unwrap_or(0))
        .collect();
    let indoor_exists = system.uses.iter().any(|using| !using.outdoor);
    let mut plan = Plan {
        sections: Vec::with_capacity(system.sections.len()),
        feeds: Vec::with_capacity(system.feeds.len()),
        tanks: Vec::with_capacity(system.tanks.len()),
        stores: Vec::with_capacity(stores.len()),
        pumps: Vec::with_capacity(system.pumps.len()),
        uses: Vec::with_capacity(system.uses.len()),
        hauling: Vec::with_capacity(system.hauling.len()),
        gardens: gardens(system),
        rations: Vec::new(),
    };
    for section in &system.sections {
        let mut outlets = Vec::with_capacity(section.outlets.len());
        for outlet in &section.outlets {
            if let Some(feed) = system.feeds.iter().position(|feed| feed.id == outlet.feed) {
                outlets.push((feed, outlet.share.get()));
            }
        }
        plan.sections.push(Section {
            area_m2: section.area.get(),
            runoff_coefficient: section.runoff_coefficient.get(),
            wetting_mm: section.wetting_loss.get(),
            outlets,
        });
    }
    for feed in &system.feeds {
        if let Some(tank) = feed.tank.and_then(at) {
            let chamber = feed.diverter.as_ref().map(Chamber::new);
            plan.feeds.push(FeedPlan { capture: feed.capture.get(), tank, chamber });
        }
    }
    for (tank, store) in system.tanks.iter().zip(&store_of) {
        plan.tanks.push(tank_plan(tank, *store));
    }
    for pump in &system.pumps {
        if let (Some(from), Some(to_tank)) = (pump.from.and_then(at), pump.to.and_then(at)) {
            plan.pumps.push(PumpPlan {
                from_store: store_of[from],
                to_tank,
                start_share: pump.start.get(),
                stop_share: pump.stop.get(),
                limit_l: pump.limit.get(),
            });
        }
    }
    for (number, using) in system.uses.iter().enumerate() {
        plan.uses.push(UsePlan {
            garden: plan.gardens.iter().position(|garden| garden.using == number),
            counts: !using.outdoor || !indoor_exists,
            daily_l: std::array::from_fn(|month| using.amount.litres_a_day(month)),
        });
    }
    for hauling in &system.hauling {
        if let Some(tank) = hauling.tank.and_then(at) {
            plan.hauling.push(HaulingPlan {
                tank,
                trigger_share: hauling.trigger.get(),
                load_l: hauling.load.get(),
                price: hauling.price.get(),
                #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to 90 by its range")]
                notice_days: hauling.notice.get() as u32,
            });
        }
    }
    for (number, tanks) in stores.iter().enumerate() {
        plan.stores.push(store_plan(system, number, tanks, &store_of));
    }
    plan.rations = rations(system, &store_of, |store| plan.stores[store].joined.live_capacity_l);
    Ok(plan)
}

fn tank_plan(tank: &Tank, store: usize) -> TankPlan {
    TankPlan {
        id: tank.id,
        store,
        dead_l: tank.dead_storage().get(),
        leak_l: tank.leak.get(),
        open: match &tank.cover {
            Cover::Covered => None,
            Cover::Uncovered { evaporation } => Some((tank.open_mouth_m2(), evaporation.map(|depth| depth.get()))),
        },
    }
}

impl Store {
    /// The share (0 to 1) of what goes over its rims that goes into no other store.
    #[expect(clippy::cast_precision_loss, reason = "a few rims")]
    pub fn spill_that_leaves(&self) -> f64 {
        let out = self.spills_to.iter().filter(|to| !matches!(to, SpillTo::Tank(_))).count();
        out as f64 / self.spills_to.len().max(1) as f64
    }
}

fn store_plan(system: &System, number: usize, tanks: &[usize], store_of: &[usize]) -> Store {
    let members: Vec<&Tank> = tanks.iter().map(|tank| &system.tanks[*tank]).collect();
    let joined = Joined::new(&members);
    let spills_to = joined.spills_at.iter().map(|lowest| spill_to(system, members[*lowest])).collect();
    let draws_here = |tank: Option<PartId>| {
        tank.and_then(|id| system.tanks.iter().position(|tank| tank.id == id)).is_some_and(|at| store_of[at] == number)
    };
    Store {
        tanks: tanks.to_vec(),
        loses: members.iter().any(|tank| tank.leak.get() > 0.0 || tank.cover != Cover::Covered),
        uses: (0..system.uses.len()).filter(|using| draws_here(system.uses[*using].tank)).collect(),
        joined,
        spills_to,
        filled: members.first().is_some_and(|tank| system.is_filled(tank.id)),
    }
}

fn spill_to(system: &System, tank: &Tank) -> SpillTo {
    match tank.overflow_to {
        OverflowTo::Ground => SpillTo::Ground,
        OverflowTo::Garden => SpillTo::Garden,
        OverflowTo::Tank(to) => {
            system.tanks.iter().position(|tank| tank.id == to).map_or(SpillTo::Ground, SpillTo::Tank)
        }
    }
}

/// The stores as places in the list of tanks, each before those that it can spill into. Overflows have no loop (that
/// would be a finding), so there is always a next store that nothing waiting spills into.
fn stores_upstream_first(system: &System) -> Vec<Vec<usize>> {
    let mut waiting: Vec<Vec<usize>> = system
        .stores()
        .iter()
        .map(|store| store.iter().filter_map(|id| system.tanks.iter().position(|tank| tank.id == *id)).collect())
        .collect();
    let spills_into = |from: &[usize], to: &[usize]| {
        from.iter().any(|tank| matches!(spill_to(system, &system.tanks[*tank]), SpillTo::Tank(at) if to.contains(&at)))
    };
    let mut order = Vec::with_capacity(waiting.len());
    while !waiting.is_empty() {
        let free =
            (0..waiting.len()).find(|at| waiting.iter().all(|other| !spills_into(other, &waiting[*at]))).unwrap_or(0);
        order.push(waiting.remove(free));
    }
    order
}

//! What a level that was read says of the water in its store.

use std::borrow::Cow;

use crate::engine::balance::level::Joined;
use crate::site::Shape;
use crate::site::diary::{Level, Water};
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::tank::Tank;

use super::balance::plan::{Plan, Store};

/// Water in a store by a reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Held {
    /// The store, as its place in the plan.
    pub store: usize,
    /// Live water in it, in L, up to what it can hold.
    pub live_l: f64,
    /// All water in the tanks of the store that it tells of, dead storage with it, in L.
    pub whole_l: f64,
    /// Whether the reading says that it stood at its lowest rim (within a hundredth of what it holds).
    pub full: bool,
    /// Whether the reading is above what the tank can hold, by more than a hundredth of it.
    pub above_rim: bool,
}

/// A reading within this share of a store's live capacity of the rim is brim-full.
const FULL_WITHIN: f64 = 0.01;

/// A level that was read tells of the tanks that were joined with the one that was read when it was, or that are now where that
/// isn't known. What it says of each store in which they are now, that of the tank that was read first, each with its tanks that
/// it tells of, as places in the system's list; nothing where the tank is no longer there. Tanks that were joined later had no
/// water in them.
pub fn held_in_each(
    plan: &Plan,
    system: &System,
    of: Water,
    level: Level,
    joined: &[PartId],
) -> Vec<(Held, Vec<usize>)> {
    let Some(own) = store_of(plan, system, of.tank()) else { return Vec::new() };
    let is_told = |store: usize, at: usize| {
        let id = system.tanks[at].id;
        if joined.is_empty() { store == own } else { id == of.tank() || joined.contains(&id) }
    };
    let stores = std::iter::once(own).chain((0..plan.stores.len()).filter(|store| *store != own));
    let parts: Vec<(usize, Vec<usize>)> = stores
        .map(|store| (store, plan.stores[store].tanks.iter().copied().filter(|at| is_told(store, *at)).collect()))
        .filter(|(_, tanks): &(usize, Vec<usize>)| !tanks.is_empty())
        .collect();
    let joined_of = |tanks: &[usize]| {
        let tanks: Vec<&Tank> = tanks.iter().filter_map(|at| system.tanks.get(*at)).collect();
        Joined::new(&tanks)
    };
    let all: Vec<usize> = parts.iter().flat_map(|(_, tanks)| tanks).copied().collect();
    let then = if all == plan.stores[own].tanks {
        Cow::Borrowed(&plan.stores[own].joined)
    } else {
        Cow::Owned(joined_of(&all))
    };
    let Some(whole) = held_by(&then, plan.dead_l(&all), system, (own, of, level)) else { return Vec::new() };
    let surface_m = then.surface_m(whole.live_l);
    let in_store = |(store, tanks): (usize, Vec<usize>)| {
        let mut held = Held { store, ..whole };
        if tanks.len() < all.len() {
            // A valve has been shut since: each side kept the level that was common.
            let part = joined_of(&tanks);
            held.live_l = part.live_l(surface_m).clamp(0.0, part.live_capacity_l);
            held.whole_l = held.live_l + plan.dead_l(&tanks);
            held.full = is_full(held.live_l, part.live_capacity_l);
        }
        if tanks.len() < plan.stores[store].tanks.len() {
            held.beside(0.0, plan);
        }
        (held, tanks)
    };
    parts.into_iter().map(in_store).collect()
}

/// What a reading says of the store in which its tank is now; `None` where that is no longer there: see [`held_in_each`].
pub fn held(plan: &Plan, system: &System, of: Water, level: Level, joined: &[PartId]) -> Option<Held> {
    held_in_each(plan, system, of, level, joined).into_iter().next().map(|(held, _)| held)
}

impl Held {
    /// The same with so much water (L) in the other tanks of the store.
    pub fn beside(&mut self, others_l: f64, plan: &Plan) {
        let store = &plan.stores[self.store];
        let capacity_l = store.joined.live_capacity_l;
        self.live_l = (self.whole_l + others_l - plan.dead_l(&store.tanks)).clamp(0.0, capacity_l);
        self.full = is_full(self.live_l, capacity_l);
    }
}

fn is_full(live_l: f64, capacity_l: f64) -> bool {
    live_l >= capacity_l * (1.0 - FULL_WITHIN)
}

/// What a reading says of joined tanks with so much dead storage.
fn held_by(joined: &Joined, dead_l: f64, system: &System, (store, of, level): (usize, Water, Level)) -> Option<Held> {
    let capacity_l = joined.live_capacity_l;
    let tank = system.tank(of.tank())?;
    let whole_l = match of {
        Water::Tank(_) => tank.capacity().get(),
        Water::Store(_) => capacity_l + dead_l,
    };
    let live_of = |volume_l: f64| match of {
        Water::Tank(_) => joined.live_l(tank.floor.get() + depth_m(&tank.shape, tank.overflow.get(), volume_l)),
        Water::Store(_) => volume_l - (whole_l - capacity_l),
    };
    let (live_l, above_rim) = match level {
        Level::Full => (capacity_l, false),
        Level::Depth(depth) => {
            let most = tank.overflow.get();
            (joined.live_l(tank.floor.get() + depth.get()), depth.get() > most * (1.0 + FULL_WITHIN))
        }
        Level::Share(share) => (live_of(share.get() * whole_l), share.get() > 1.0 + FULL_WITHIN),
        Level::Volume(volume) => (live_of(volume.get()), volume.get() > whole_l * (1.0 + FULL_WITHIN)),
    };
    let live_l = live_l.clamp(0.0, capacity_l);
    Some(Held { store, live_l, whole_l: live_l + dead_l, full: is_full(live_l, capacity_l), above_rim })
}

/// How high water stands in a tank of a store with so much live water, in m over the tank's floor; dead storage is full.
pub fn level_in_m(store: &Store, tank: &Tank, live_l: f64) -> f64 {
    (store.joined.surface_m(live_l) - tank.floor.get()).max(tank.outlet.get())
}

/// The store, as its place in the plan, that holds a tank.
pub fn store_of(plan: &Plan, system: &System, tank: PartId) -> Option<usize> {
    let place = system.tanks.iter().position(|other| other.id == tank)?;
    plan.stores.iter().position(|store| store.tanks.contains(&place))
}

/// The store that holds most of those on which uses draw, or of all where they draw on none, as its place in the plan.
pub fn largest(plan: &Plan) -> usize {
    let size = |store: &usize| {
        let of = &plan.stores[*store];
        (!plan.uses_of(of).is_empty(), of.joined.live_capacity_l)
    };
    (0..plan.stores.len()).reduce(|most, store| if size(&store) > size(&most) { store } else { most }).unwrap_or(0)
}

/// The depth in m, up to `most_m`, at which a shape holds so much: bisection down to a millionth of it.
fn depth_m(shape: &Shape, most_m: f64, volume_l: f64) -> f64 {
    let (mut low, mut high) = (0.0, most_m);
    if volume_l >= shape.volume_l(high) {
        return high;
    }
    for _ in 0..40 {
        let middle = (low + high) / 2.0;
        if shape.volume_l(middle) < volume_l { low = middle } else { high = middle }
    }
    high
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;
    use crate::engine::balance::plan::plan;
    use crate::quantity::{Length, Share, Volume};
    use crate::site::{ShapeKind, demo};

    #[test]
    fn a_depth_in_one_of_two_joined_boxes_tells_of_both() {
        // Two boxes of 1 m² and 2 m high, the second standing half a metre higher, outlets 0.1 m over the floors. At
        // a depth of 1.1 m in the first, 1 m of it is live, and 0.5 m of the second: 1500 L of 3300 L.
        let mut system = demo::site().system;
        for (tank, floor) in system.tanks.iter_mut().zip([0.0, 0.5]) {
            tank.shape = Shape::usual(ShapeKind::Box, Volume::litres(2000.0), Length::metres(2.0));
            (tank.floor, tank.outlet, tank.overflow) =
                (Length::metres(floor), Length::metres(0.1), Length::metres(2.0));
        }
        let plan = plan(&system).unwrap();
        let first = Water::Tank(system.tanks[0].id);
        let second = Water::Tank(system.tanks[1].id);
        let live = |of, level| held(&plan, &system, of, level, &[]).unwrap();
        let about = |held: Held, litres: f64| (held.live_l - litres).abs() < 1e-3 && !held.full && !held.above_rim;
        assert!(about(live(first, Level::Depth(Length::metres(1.1))), 1500.0));
        assert!(about(live(second, Level::Depth(Length::metres(0.6))), 1500.0));
        assert!(about(live(first, Level::Share(Share::of_one(0.55))), 1500.0));
        assert!(about(live(second, Level::Volume(Volume::litres(600.0))), 1500.0));
        // The store as a whole: 200 L of dead storage below the 1500 L.
        let store = Water::Store(system.tanks[0].id);
        assert!(about(live(store, Level::Volume(Volume::litres(1700.0))), 1500.0));
        assert!(about(live(store, Level::Share(Share::of_one(1700.0 / 3500.0))), 1500.0));
        assert!(live(first, Level::Full).full && (live(first, Level::Full).live_l - 3300.0).abs() < 1e-9);
        let over = live(first, Level::Depth(Length::metres(2.3)));
        assert!(over.above_rim && over.full);
        assert_eq!(held(&plan, &system, Water::Tank(PartId(99)), Level::Full, &[]), None);

        // The valve has been shut since: each side kept the level that was common, 1 m and 0.5 m of live water; and of
        // 1500 L of live water in both, or of all there was.
        let joined: Vec<PartId> = system.tanks[..2].iter().map(|tank| tank.id).collect();
        system.trunk_lines.iter_mut().for_each(|line| line.open = false);
        let plan = crate::engine::balance::plan::plan(&system).unwrap();
        for (of, level) in [(first, Level::Depth(Length::metres(1.1))), (store, Level::Volume(Volume::litres(1700.0)))]
        {
            let sides = held_in_each(&plan, &system, of, level, &joined);
            let litres: Vec<f64> = sides.iter().map(|(held, _)| held.live_l.round()).collect();
            let whole: Vec<f64> = sides.iter().map(|(held, _)| held.whole_l.round()).collect();
            assert_eq!((litres, whole), (vec![1000.0, 500.0], vec![1100.0, 600.0]));
        }
        // Brim-full while joined: the lower rim is at 2 m, half a metre under the other's.
        let full: Vec<bool> =
            held_in_each(&plan, &system, second, Level::Full, &joined).iter().map(|(held, _)| held.full).collect();
        assert_eq!(full, [false, true]);
        // Read apart, it tells of its own.
        assert_eq!(held_in_each(&plan, &system, first, Level::Full, &[]).len(), 1);
    }
}

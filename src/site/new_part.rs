//! A new part of each kind, with values to start from.

use super::feed::{Feed, USUAL_CAPTURE, USUAL_DIVERTER};
use super::findings::findings;
use super::hauling::Hauling;
use super::part::PartId;
use super::pump::Pump;
use super::rationing::{Cut, RationStep};
use super::roof::{Material, Outlet, RoofSection};
use super::system::{Part, PartKind, System};
use super::tank::{Build, Cover, OverflowTo, Shape, ShapeKind, Tank};
use super::trunk::TrunkLine;
use super::uses::{Amount, Class, Use};
use crate::quantity::{Area, Count, Days, Depth, Flow, Length, Money, Share, Volume};

/// Wetting loss assumed for a roof: 0.5 mm a rain day (common practice, no source; enHealth 2011 Appendix B takes
/// 2 mm a month for all losses of the kind).
pub const USUAL_WETTING_LOSS: Depth = Depth::millimetres(0.5);
/// Water for one person: 50 L a day, at which WHO sees most basic needs met and few health concerns.
pub const USUAL_PER_HEAD: Flow = Flow::litres_a_day(50.0);
/// Height of the outlet over a tank's floor that keeps sludge out of the pipe (common practice, no source).
const USUAL_OUTLET: Length = Length::metres(0.1);
/// Height of a tank's overflow pipe below its rim (common practice, no source).
const OVERFLOW_BELOW_RIM: f64 = 0.1;

/// A tank of a capacity (to the overflow) and a height (to the rim) that stands on the ground.
pub fn tank(id: PartId, name: String, capacity: Volume, height: Length) -> Tank {
    let overflow = (height.get() - OVERFLOW_BELOW_RIM).max(height.get() / 2.0);
    let mut tank = Tank {
        id,
        name,
        build: Build::AboveGround,
        shape: Shape::usual(ShapeKind::UprightCylinder, capacity, height),
        floor: Length::metres(0.0),
        outlet: Length::metres(USUAL_OUTLET.get().min(overflow / 4.0)),
        overflow: Length::metres(overflow),
        overflow_to: OverflowTo::Ground,
        leak: Flow::litres_a_day(0.0),
        cover: Cover::Covered,
    };
    tank.set_capacity(capacity);
    tank
}

/// A tank until its size is known: 5,000 L, 2 m high.
pub fn usual_tank(id: PartId, name: String) -> Tank {
    tank(id, name, Volume::litres(5_000.0), Length::metres(2.0))
}

/// A tank like another, to stand beside it: of its build, shape, sizes and heights, so that both fill to one level
/// and none has room above the other's overflow. It spills where the other does, and does not leak.
pub fn tank_beside(neighbour: &Tank, id: PartId, name: String) -> Tank {
    Tank { id, name, leak: Flow::litres_a_day(0.0), ..neighbour.clone() }
}

/// From where to where a new pump lifts: into the store that nothing fills yet from one that something does, else from the
/// second store into the first.
fn from_and_to(system: &System) -> [Option<PartId>; 2] {
    let stores = system.stores();
    let is_filled = |store: &&Vec<PartId>| {
        let fills = |to: Option<PartId>| to.is_some_and(|tank| store.contains(&tank));
        system.feeds.iter().any(|feed| fills(feed.tank))
            || system.pumps.iter().any(|pump| fills(pump.to))
            || system.tanks.iter().any(|tank| match tank.overflow_to {
                OverflowTo::Tank(into) => fills(Some(into)) && !store.contains(&tank.id),
                _ => false,
            })
    };
    let first = |store: Option<&Vec<PartId>>| store.and_then(|store| store.first().copied());
    match (stores.iter().find(|store| !is_filled(store)), stores.iter().find(is_filled)) {
        (Some(to), Some(from)) => [first(Some(from)), first(Some(to))],
        _ => [first(stores.get(1)), first(stores.first())],
    }
}

/// A new part of a kind for the system, not yet in it. It is joined to what is there as a household would most
/// likely want it: a new section runs to the first feed, a new feed fills the first tank, a new pump lifts to
/// what nothing fills yet.
pub fn part(system: &System, kind: PartKind, name: String) -> Part {
    let id = system.unused_id();
    let first_tank = system.tanks.first().map(|tank| tank.id);
    match kind {
        PartKind::Section => Part::Section(RoofSection {
            id,
            name,
            material: Material::Metal,
            area: Area::square_metres(50.0),
            runoff_coefficient: Material::Metal.runoff_coefficient(),
            wetting_loss: USUAL_WETTING_LOSS,
            outlets: system
                .feeds
                .first()
                .map(|feed| Outlet { feed: feed.id, share: Share::of_one(1.0) })
                .into_iter()
                .collect(),
        }),
        PartKind::Feed => {
            Part::Feed(Feed { id, name, tank: first_tank, capture: USUAL_CAPTURE, diverter: Some(USUAL_DIVERTER) })
        }
        PartKind::Tank => Part::Tank(usual_tank(id, name)),
        PartKind::TrunkLine => {
            let line = |other| TrunkLine { id, name: name.clone(), ends: [first_tank, other], open: true };
            // The newest tank is the one that is most likely still to be joined, but not one that can't be.
            let fits = |other: &PartId| {
                let mut joined = system.clone();
                joined.trunk_lines.push(line(Some(*other)));
                findings(&joined).len() <= findings(system).len()
            };
            Part::TrunkLine(line(system.tanks.iter().rev().map(|tank| tank.id).find(fits)))
        }
        PartKind::Pump => {
            let [from, to] = from_and_to(system);
            let (start, stop) = (Share::of_one(0.5), Share::of_one(0.9));
            Part::Pump(Pump { id, name, from, to, start, stop, limit: Flow::litres_a_day(2_000.0) })
        }
        PartKind::Use => Part::Use(Use {
            id,
            name,
            class: Class::House,
            tank: first_tank,
            amount: Amount::PerHead { each: USUAL_PER_HEAD, heads: Count::number(2.0) },
            outdoor: false,
            barriers: Vec::new(),
        }),
        PartKind::Hauling => Part::Hauling(Hauling {
            id,
            name,
            tank: first_tank,
            trigger: Share::of_one(0.1),
            load: Volume::litres(4_000.0),
            price: Money::coins(0.0),
            notice: Days::from_days(2.0),
        }),
        PartKind::Ration => Part::Ration(RationStep {
            id,
            name,
            tank: first_tank,
            below: Share::of_one(0.5),
            // What is outdoors is what a household does without first.
            cuts: system
                .uses
                .iter()
                .filter(|using| using.outdoor && using.class != Class::Animals)
                .map(|using| Cut { using: using.id, share: Share::of_one(0.5) })
                .collect(),
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;

    #[test]
    fn a_new_pump_lifts_to_what_nothing_fills() {
        let mut system = System::default();
        let tank = |id: u32, floor: f64| {
            let mut tank = tank(PartId(id), String::new(), Volume::litres(1_000.0), Length::metres(1.5));
            tank.floor = Length::metres(floor);
            tank
        };
        let ends = |system: &System| match part(system, PartKind::Pump, String::new()) {
            Part::Pump(pump) => [pump.from, pump.to],
            _ => [None; 2],
        };
        system.tanks = vec![tank(1, 5.0), tank(2, -1.0)];
        let feed = |to: u32| Feed {
            id: PartId(3),
            name: String::new(),
            tank: Some(PartId(to)),
            capture: USUAL_CAPTURE,
            diverter: None,
        };
        system.feeds = vec![feed(2)];
        assert_eq!(ends(&system), [Some(PartId(2)), Some(PartId(1))], "from the cistern to the tank on the roof");
        system.feeds = vec![feed(1)];
        assert_eq!(ends(&system), [Some(PartId(1)), Some(PartId(2))]);
        system.tanks.truncate(1);
        assert_eq!(ends(&system), [None, Some(PartId(1))]);
    }

    #[test]
    fn a_new_part_leaves_a_house_that_runs_running() {
        for kind in PartKind::ALL {
            let mut system = demo::site().system;
            let part = part(&system, kind, "New".to_owned());
            assert_eq!(part.kind(), kind);
            system.put(part);
            assert_eq!(findings(&system), [], "{kind:?}");
        }
    }
}

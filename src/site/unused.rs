//! What runs and is of no use: a roof without area, water that no use can reach, uses that no water reaches, water that
//! would have to run uphill.

use super::feed::Feed;
use super::part::PartId;
use super::system::System;
use super::tank::{Cover, OverflowTo, Tank};

/// Something that does nothing for the house.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unused {
    /// A roof section without area.
    NoArea(PartId),
    /// A feed to which no roof section gives a share of its water.
    NoRoof(PartId),
    /// A tank that fills, but no use draws on it, nor on any that it leads to.
    Undrawn(PartId),
    /// A tank that is drawn on, but neither rain nor other water comes to it by any way.
    Unreached(PartId),
    /// A tank whose outlet is no lower than the lowest rim of those that are joined with it: water never stands so high.
    TooHigh(PartId),
    /// A tank whose overflow leads to one that fills to above it.
    Uphill(PartId),
}

impl Unused {
    /// The part.
    pub fn part(self) -> PartId {
        let (Unused::NoArea(part)
        | Unused::NoRoof(part)
        | Unused::Undrawn(part)
        | Unused::Unreached(part)
        | Unused::TooHigh(part)
        | Unused::Uphill(part)) = self;
        part
    }
}

/// All of them, in the order of the parts. Of tanks joined to one store the first is named.
pub fn unused(system: &System) -> Vec<Unused> {
    let stores = system.stores();
    let at = |tank: PartId| stores.iter().position(|store| store.contains(&tank));
    let spills = system.tanks.iter().filter_map(|tank| match tank.overflow_to {
        OverflowTo::Tank(to) => Some((at(tank.id)?, at(to)?)),
        OverflowTo::Ground | OverflowTo::Garden => None,
    });
    let pumped = system.pumps.iter().filter_map(|pump| Some((at(pump.from?)?, at(pump.to?)?)));
    let ways: Vec<(usize, usize)> = spills.chain(pumped).collect();
    let (fed, dry): (Vec<&Feed>, Vec<&Feed>) = system.feeds.iter().partition(|feed| {
        let mut outlets = system.sections.iter().flat_map(|section| &section.outlets);
        outlets.any(|outlet| outlet.feed == feed.id && outlet.share.get() > 0.0)
    });
    let open = system.tanks.iter().filter(|tank| tank.cover != Cover::Covered).map(|tank| tank.id);
    let sources =
        fed.iter().filter_map(|feed| feed.tank).chain(system.hauling.iter().filter_map(|hauling| hauling.tank));
    let mut reached = vec![false; stores.len()];
    sources.chain(open).filter_map(at).for_each(|store| reached[store] = true);
    let mut drawn = vec![false; stores.len()];
    system.uses.iter().filter_map(|using| at(using.tank?)).for_each(|store| drawn[store] = true);
    // No way is longer than there are stores.
    for _ in 0..stores.len() {
        for (from, to) in &ways {
            reached[*to] |= reached[*from];
            drawn[*from] |= drawn[*to];
        }
    }
    let flat = system.sections.iter().filter(|section| section.area.get() <= 0.0);
    let of_stores = stores.iter().enumerate().filter_map(|(at, store)| match (reached[at], drawn[at]) {
        (true, false) => Some(Unused::Undrawn(*store.first()?)),
        (false, true) => Some(Unused::Unreached(*store.first()?)),
        _ => None,
    });
    let rims = stores.iter().map(|store| {
        let members = store.iter().filter_map(|id| system.tank(*id));
        members.map(Tank::overflow_elevation).fold(f64::INFINITY, f64::min)
    });
    let rims: Vec<f64> = rims.collect();
    let rim_of = |tank: PartId| Some(rims[at(tank)?]);
    let too_high = |tank: &&Tank| rim_of(tank.id).is_some_and(|rim| tank.floor.get() + tank.outlet.get() >= rim);
    let uphill = |tank: &&Tank| match tank.overflow_to {
        OverflowTo::Tank(to) => rim_of(to).is_some_and(|rim| rim_of(tank.id).is_some_and(|from| from < rim)),
        OverflowTo::Ground | OverflowTo::Garden => false,
    };
    let too_high = system.tanks.iter().filter(too_high).map(|tank| Unused::TooHigh(tank.id));
    let uphill = system.tanks.iter().filter(uphill).map(|tank| Unused::Uphill(tank.id));
    let dry = dry.iter().map(|feed| Unused::NoRoof(feed.id));
    flat.map(|section| Unused::NoArea(section.id)).chain(dry).chain(of_stores).chain(too_high).chain(uphill).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Area, Length};
    use crate::site::demo;

    #[test]
    fn a_whole_house_has_nothing_unused() {
        assert_eq!(unused(&demo::site().system), []);
    }

    #[test]
    fn water_that_no_use_reaches_and_uses_that_no_water_reaches_are_told() {
        let mut system = demo::site().system;
        let tanks: Vec<PartId> = system.tanks.iter().map(|tank| tank.id).collect();
        // All uses on the barrel: the joined tanks still lead to it by their overflow.
        system.uses.iter_mut().for_each(|using| using.tank = Some(tanks[2]));
        assert_eq!(unused(&system), []);
        // Without the overflow nothing leads there, and nothing comes to the barrel.
        system.tanks.iter_mut().for_each(|tank| tank.overflow_to = OverflowTo::Ground);
        system.feeds.retain(|feed| feed.tank != Some(tanks[2]));
        assert_eq!(unused(&system), [Unused::Undrawn(tanks[0]), Unused::Unreached(tanks[2])]);
    }

    #[test]
    fn water_that_would_have_to_run_uphill_is_told() {
        let mut system = demo::site().system;
        // Two of the three are joined; the third takes the overflow of the first.
        let [second, third] = [1, 2].map(|at| system.tanks[at].id);
        system.tanks[1].floor = Length::metres(10.0);
        assert_eq!(unused(&system), [Unused::TooHigh(second)]);
        system.tanks[1].floor = Length::metres(0.0);
        system.tanks[2].floor = Length::metres(10.0);
        let spills = |tank: &Tank| tank.overflow_to == OverflowTo::Tank(third);
        let lead_there: Vec<Unused> =
            system.tanks.iter().filter(|tank| spills(tank)).map(|tank| Unused::Uphill(tank.id)).collect();
        assert!(!lead_there.is_empty());
        assert_eq!(unused(&system), lead_there);
    }

    #[test]
    fn a_downspout_without_a_roof_is_told() {
        let mut system = demo::site().system;
        let feed = system.feeds[1].id;
        let outlets = system.sections.iter_mut().flat_map(|section| &mut section.outlets);
        outlets
            .filter(|outlet| outlet.feed == feed)
            .for_each(|outlet| outlet.share = crate::quantity::Share::of_one(0.0));
        assert_eq!(unused(&system).first(), Some(&Unused::NoRoof(feed)));
    }

    #[test]
    fn a_roof_of_no_area_is_told() {
        let mut system = demo::site().system;
        system.sections[0].area = Area::square_metres(0.0);
        assert_eq!(unused(&system), [Unused::NoArea(system.sections[0].id)]);
    }
}

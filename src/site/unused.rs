//! What runs and is of no use: a roof without area, water that no use can reach, uses that no water reaches.

use super::part::PartId;
use super::system::System;
use super::tank::{Cover, OverflowTo};

/// Something that does nothing for the house.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unused {
    /// A roof section without area.
    NoArea(PartId),
    /// A tank that fills, but no use draws on it, nor on any that it leads to.
    Undrawn(PartId),
    /// A tank that is drawn on, but neither rain nor other water comes to it by any way.
    Unreached(PartId),
}

impl Unused {
    /// The part.
    pub fn part(self) -> PartId {
        let (Unused::NoArea(part) | Unused::Undrawn(part) | Unused::Unreached(part)) = self;
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
    let fed = system.feeds.iter().filter(|feed| {
        let mut outlets = system.sections.iter().flat_map(|section| &section.outlets);
        outlets.any(|outlet| outlet.feed == feed.id && outlet.share.get() > 0.0)
    });
    let open = system.tanks.iter().filter(|tank| tank.cover != Cover::Covered).map(|tank| tank.id);
    let sources = fed.filter_map(|feed| feed.tank).chain(system.hauling.iter().filter_map(|hauling| hauling.tank));
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
    flat.map(|section| Unused::NoArea(section.id)).chain(of_stores).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Area;
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
    fn a_roof_of_no_area_is_told() {
        let mut system = demo::site().system;
        system.sections[0].area = Area::square_metres(0.0);
        assert_eq!(unused(&system), [Unused::NoArea(system.sections[0].id)]);
    }
}

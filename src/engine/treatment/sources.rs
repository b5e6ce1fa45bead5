//! Which roofs a tap drinks from, and what lies between roof and tank.

use crate::site::details::Detail;
use crate::site::feed::{Diverter, Drain, Feed};
use crate::site::part::PartId;
use crate::site::roof::RoofSection;
use crate::site::system::System;
use crate::site::tank::OverflowTo;

/// What is asked of a roof section, since it gets into the water: each is not asked yet, no, or yes.
pub const ROOF_QUESTIONS: [Detail; 7] = [
    Detail::LeadFlashing,
    Detail::Asbestos,
    Detail::TreatedTimber,
    Detail::FreshPaint,
    Detail::Flue,
    Detail::Droppings,
    Detail::Spray,
];
/// The answer yes to such a question, as it is kept.
pub const YES: f64 = 2.0;
/// The answer no.
pub const NO: f64 = 1.0;

/// Metals and other substances that a yes may bring into the water, which no disinfection takes out.
pub const fn brings_metals(question: Detail) -> bool {
    matches!(question, Detail::LeadFlashing | Detail::TreatedTimber | Detail::FreshPaint)
}

/// The same for substances made of carbon: tar, solvents, spray.
pub const fn brings_organics(question: Detail) -> bool {
    matches!(question, Detail::TreatedTimber | Detail::FreshPaint | Detail::Flue | Detail::Spray)
}

/// The tanks whose water can come to a tank: those joined with it, and those that overflow or are pumped into these.
pub fn tanks_behind(system: &System, tank: PartId) -> Vec<PartId> {
    let stores = system.stores();
    let mut behind: Vec<PartId> = Vec::new();
    let mut wanted = vec![tank];
    while let Some(next) = wanted.pop() {
        if behind.contains(&next) {
            continue;
        }
        behind.push(next);
        wanted.extend(stores.iter().filter(|store| store.contains(&next)).flatten());
        let spills = system.tanks.iter().filter(|tank| tank.overflow_to == OverflowTo::Tank(next));
        wanted.extend(spills.map(|tank| tank.id));
        wanted.extend(system.pumps.iter().filter(|pump| pump.to == Some(next)).filter_map(|pump| pump.from));
    }
    behind
}

/// The feeds that fill a tank, straight or through others.
pub fn feeds_behind(system: &System, tank: PartId) -> Vec<&Feed> {
    let tanks = tanks_behind(system, tank);
    system.feeds.iter().filter(|feed| feed.tank.is_some_and(|tank| tanks.contains(&tank))).collect()
}

/// The roof sections whose water can come to a tank.
pub fn sections_behind(system: &System, tank: PartId) -> Vec<&RoofSection> {
    let feeds: Vec<PartId> = feeds_behind(system, tank).iter().map(|feed| feed.id).collect();
    let runs = |section: &&RoofSection| {
        section.outlets.iter().any(|outlet| outlet.share.get() > 0.0 && feeds.contains(&outlet.feed))
    };
    system.sections.iter().filter(runs).collect()
}

/// Whether a feed's first flush works: it has a diverter that empties.
pub fn flushes(feed: &Feed) -> bool {
    feed.diverter.as_ref().is_some_and(|Diverter { drain, .. }| *drain != Drain::Never)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;

    #[test]
    fn water_is_followed_back_to_the_roof() {
        let system = demo::site().system;
        let names = |tank: PartId| {
            let mut names: Vec<&str> =
                sections_behind(&system, tank).iter().map(|section| section.name.as_str()).collect();
            names.sort_unstable();
            names
        };
        let tank = |name: &str| system.tanks.iter().find(|tank| tank.name == name).map_or(PartId(0), |tank| tank.id);
        // The two big tanks are joined and the barrel takes the overflow of one: both roofs reach all three.
        for name in ["New tank", "Old tank", "Garden barrel"] {
            assert_eq!(names(tank(name)), ["North roof", "South roof"], "{name}");
        }
        let mut parted = system.clone();
        parted.trunk_lines[0].open = false;
        let new: Vec<&str> =
            sections_behind(&parted, tank("New tank")).iter().map(|section| section.name.as_str()).collect();
        assert_eq!(new, ["South roof"]);
    }
}

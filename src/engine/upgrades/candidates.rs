//! The changes that make sense for a system, read off the system itself.

use crate::engine::balance::garden::litres_a_day_of;
use crate::engine::balance::level::Joined;
use crate::engine::checks::flush::wanted_l;
use crate::engine::checks::standing::is_raised;
use crate::quantity::{Area, Bore, Kind, Length, Share, Units, Volume, shown};
use crate::site::feed::{Drain, USUAL_CAPTURE, USUAL_DIVERTER};
use crate::site::findings::findings;
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::tank::{Cover, OverflowTo, Tank};
use crate::site::upgrade::{Into, NameFor, Upgrade};
use crate::site::uses::{AmountKind, Class, Use};

/// Sizes of another tank: shares of what its store holds, and days of what is drawn from it.
const SHARES_OF_STORE: [f64; 3] = [0.5, 1.0, 2.0];
const DAYS_OF_USE: [f64; 2] = [30.0, 90.0];
/// Sizes of another roof: shares of the section beside which it stands. Smaller ones, in m², are not worth a gutter.
const SHARES_OF_ROOF: [f64; 2] = [0.5, 1.0];
const LEAST_ROOF_M2: f64 = 2.0;
/// Smaller tanks, in L, are not worth a pipe; sizes closer than this ratio are one.
const LEAST_TANK_L: f64 = 100.0;
const ONE_SIZE_WITHIN: f64 = 1.25;
/// A cut in a use: a fifth less.
const CUT_TO: f64 = 0.8;
/// Rims this close in height, in m, are level.
const LEVEL_WITHIN: f64 = 0.001;
const ROUNDING: f64 = 1e-9;

/// The changes that make sense: each leaves a system that can run. Sizes are round in the person's units. A system
/// with findings has none.
pub fn candidates(system: &System, units: &Units, name_for: NameFor) -> Vec<Upgrade> {
    if !findings(system).is_empty() {
        return Vec::new();
    }
    let mut found = Vec::new();
    let stores = system.stores();
    another_tank(system, &stores, units, &mut found);
    another_roof(system, units, &mut found);
    collecting(system, &stores, &mut found);
    joining(system, &stores, &mut found);
    levelling(system, &stores, &mut found);
    feeds(system, units, &mut found);
    overflows(system, &stores, &mut found);
    // Nobody is told to let people or animals drink less.
    let spared = [Class::Drinking, Class::Animals];
    let draws = |using: &Use| using.amount.mean() > 0.0 || using.amount.kind() == AmountKind::Garden;
    let thirsty = system.uses.iter().filter(|using| !spared.contains(&using.class) && draws(using));
    found.extend(thirsty.map(|using| Upgrade::CutUse { using: using.id, to: Share::of_one(CUT_TO) }));
    for tank in &system.tanks {
        if tank.leak.get() > 0.0 {
            found.push(Upgrade::MendLeak(tank.id));
        }
        if tank.cover != Cover::Covered {
            found.push(Upgrade::Cover(tank.id));
        }
    }
    found.retain(|upgrade| findings(&upgrade.made(system, name_for)).is_empty());
    found
}

fn members<'a>(system: &'a System, store: &[PartId]) -> Vec<&'a Tank> {
    store.iter().filter_map(|id| system.tank(*id)).collect()
}

/// Beside the tank at whose rim the store spills, so that all of the new one can fill.
fn another_tank(system: &System, stores: &[Vec<PartId>], units: &Units, found: &mut Vec<Upgrade>) {
    for store in stores {
        let draws_here = |using: &Use| using.tank.is_some_and(|tank| store.contains(&tank));
        let pumped = system.pumps.iter().any(|pump| pump.from.is_some_and(|tank| store.contains(&tank)));
        if !pumped && !system.uses.iter().any(draws_here) {
            continue;
        }
        let tanks = members(system, store);
        let Some(beside) = Joined::new(&tanks).spills_at.first().and_then(|at| store.get(*at)).copied() else {
            continue;
        };
        // Nobody is to put more weight on a roof or a tower.
        if system.tank(beside).is_some_and(is_raised) {
            continue;
        }
        let capacity_l: f64 = tanks.iter().map(|tank| tank.capacity().get()).sum();
        let drawn_l = litres_a_day_of(system, draws_here);
        let drawn_l = drawn_l.iter().sum::<f64>() / 12.0;
        let wanted = SHARES_OF_STORE.map(|share| share * capacity_l).into_iter();
        let wanted = wanted.chain(DAYS_OF_USE.map(|days| days * drawn_l));
        let mut sizes: Vec<f64> = Vec::new();
        for litres in wanted.map(|litres| shown::round(litres.max(LEAST_TANK_L), Kind::Volume, units)) {
            let is_one = |other: &f64| (litres / other).max(other / litres) < ONE_SIZE_WITHIN;
            if !sizes.iter().any(is_one) {
                sizes.push(litres);
            }
        }
        found.extend(sizes.into_iter().map(|litres| Upgrade::AddTank { beside, capacity: Volume::litres(litres) }));
    }
}

/// Beside each section that is collected whole; what isn't yet, is to be collected first.
fn another_roof(system: &System, units: &Units, found: &mut Vec<Upgrade>) {
    for section in system.sections.iter().filter(|section| section.collected_share() >= 1.0 - ROUNDING) {
        for share in SHARES_OF_ROOF {
            let area = Area::square_metres(shown::round(share * section.area.get(), Kind::Area, units));
            if area.get() >= LEAST_ROOF_M2 {
                found.push(Upgrade::AddRoof { like: section.id, area });
            }
        }
    }
}

/// What nothing takes goes to a downspout that takes from the section already, or to the first one of each store.
fn collecting(system: &System, stores: &[Vec<PartId>], found: &mut Vec<Upgrade>) {
    let wanting =
        system.sections.iter().filter(|section| section.collected_share() < 1.0 - ROUNDING && section.area.get() > 0.0);
    for section in wanting {
        let own = section.outlets.iter().map(|outlet| outlet.feed).next();
        let mut feeds: Vec<PartId> = own.into_iter().collect();
        if feeds.is_empty() {
            let fills = |store: &Vec<PartId>| {
                system.feeds.iter().find(|feed| feed.tank.is_some_and(|tank| store.contains(&tank)))
            };
            feeds.extend(stores.iter().filter_map(fills).map(|feed| feed.id));
        }
        let section = section.id;
        found.extend(feeds.iter().map(|feed| Upgrade::Collect { section, into: Into::Feed(*feed) }));
        if let (true, Some(tank)) = (feeds.is_empty(), system.tanks.first()) {
            found.push(Upgrade::Collect { section, into: Into::NewFeed(tank.id) });
        }
    }
}

/// Two stores become one; where a shut valve would do it, by that. Not where one stands so high that it would only run dry
/// into the other, or could hardly be filled.
fn joining(system: &System, stores: &[Vec<PartId>], found: &mut Vec<Upgrade>) {
    let store_of =
        |tank: Option<PartId>| stores.iter().position(|store| tank.is_some_and(|tank| store.contains(&tank)));
    let mut by_valve: Vec<(usize, usize)> = Vec::new();
    for line in system.trunk_lines.iter().filter(|line| !line.open) {
        if let (Some(one), Some(other)) = (store_of(line.ends[0]), store_of(line.ends[1]))
            && one != other
        {
            by_valve.push((one.min(other), one.max(other)));
            found.push(Upgrade::OpenValve(line.id));
        }
    }
    for (one, store) in stores.iter().enumerate() {
        for (other, next) in stores.iter().enumerate().skip(one + 1) {
            let tanks = || system.tanks.iter().filter(|tank| store.contains(&tank.id) || next.contains(&tank.id));
            let lowest_rim = tanks().map(Tank::overflow_elevation).fold(f64::INFINITY, f64::min);
            let highest_outlet = tanks().map(|tank| tank.floor.get() + tank.outlet.get()).fold(f64::MIN, f64::max);
            if let (false, Some(a), Some(b)) = (by_valve.contains(&(one, other)), store.first(), next.first())
                && highest_outlet < lowest_rim
                && tanks().all(|tank| keeps(tank, lowest_rim))
            {
                found.push(Upgrade::Join([*a, *b]));
            }
        }
    }
}

/// Whether a tank can still be filled to most of what it holds where it runs over at a rim of another, by its elevation in m.
fn keeps(tank: &Tank, rim_m: f64) -> bool {
    /// Nobody gives up more of a tank for a pipe (common practice, no source).
    const LEAST_KEPT: f64 = 0.75;
    tank.shape.volume_l((rim_m - tank.floor.get()).min(tank.overflow.get())) >= LEAST_KEPT * tank.capacity().get()
}

/// Capacity above the lowest rim is won by raising the low tanks, or by lowering the high ones as far as the lowest
/// floor: nobody is to dig.
fn levelling(system: &System, stores: &[Vec<PartId>], found: &mut Vec<Upgrade>) {
    for store in stores {
        let tanks = members(system, store);
        let rims = || tanks.iter().map(|tank| tank.overflow_elevation());
        let (lowest, highest) = (rims().fold(f64::INFINITY, f64::min), rims().fold(f64::NEG_INFINITY, f64::max));
        if highest - lowest <= LEVEL_WITHIN {
            continue;
        }
        let moved = |is_moved: &dyn Fn(f64) -> bool| -> Vec<&Tank> {
            tanks.iter().copied().filter(|tank| is_moved(tank.overflow_elevation())).collect()
        };
        let ids = |tanks: &[&Tank]| tanks.iter().map(|tank| tank.id).collect();
        let low = moved(&|rim| rim < highest - LEVEL_WITHIN);
        found.push(Upgrade::Level { tanks: ids(&low), rim: Length::metres(highest) });
        let high = moved(&|rim| rim > lowest + LEVEL_WITHIN);
        let ground = tanks.iter().map(|tank| tank.floor.get()).fold(f64::INFINITY, f64::min);
        if high.iter().all(|tank| lowest - tank.overflow.get() >= ground - LEVEL_WITHIN) {
            found.push(Upgrade::Level { tanks: ids(&high), rim: Length::metres(lowest) });
        }
    }
}

/// Screens mended, diverters made smaller, holes that let less run away while it rains.
fn feeds(system: &System, units: &Units, found: &mut Vec<Upgrade>) {
    for feed in &system.feeds {
        let capture = feed.capture.get();
        // What is usual is taken for granted: nobody found a fault there.
        if capture < USUAL_CAPTURE.get() - ROUNDING {
            found.push(Upgrade::MendScreen { feed: feed.id, capture: USUAL_CAPTURE });
        }
        let Some(diverter) = &feed.diverter else { continue };
        // No smaller than the check of the first flush wants it.
        let enough = wanted_l(system, feed).max(diverter.volume.get() / 2.0);
        let round = [1.0, 1.2].map(|times| shown::round(times * enough, Kind::Volume, units));
        if let Some(less) = round.into_iter().find(|less| *less > 0.0 && *less >= enough)
            && diverter.volume.get() > less * ONE_SIZE_WITHIN
        {
            found.push(Upgrade::FlushVolume { feed: feed.id, volume: Volume::litres(less) });
        }
        if let (Drain::Hole { diameter }, Drain::Hole { diameter: usual }) = (diverter.drain, USUAL_DIVERTER.drain) {
            // A wider chamber needs a wider hole to be empty in the same time.
            let wider = (diverter.chamber.get() / USUAL_DIVERTER.chamber.get()).max(1.0);
            let usual = shown::round(usual.get() * wider, Kind::Bore, units);
            if diameter.get() > usual * ONE_SIZE_WITHIN {
                found.push(Upgrade::HoleBore { feed: feed.id, diameter: Bore::metres(usual) });
            }
        }
    }
}

/// An overflow that is lost may fill a tank of another store whose rim is no higher.
fn overflows(system: &System, stores: &[Vec<PartId>], found: &mut Vec<Upgrade>) {
    for store in stores {
        let tanks = members(system, store);
        let joined = Joined::new(&tanks);
        for tank in joined.spills_at.iter().filter_map(|at| tanks.get(*at)) {
            if matches!(tank.overflow_to, OverflowTo::Tank(_)) {
                continue;
            }
            let below = |other: &&Tank| {
                !store.contains(&other.id) && other.overflow_elevation() <= tank.overflow_elevation() + LEVEL_WITHIN
            };
            for other in stores.iter().filter_map(|store| members(system, store).into_iter().find(below)) {
                found.push(Upgrade::OverflowInto { tank: tank.id, into: other.id });
            }
        }
    }
}

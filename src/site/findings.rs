//! What keeps a system from working, all of it at once.

use super::climate::ClimateValue;
use super::part::{Field, PartId};
use super::system::System;
use super::tank::{OverflowTo, Shape};
use super::uses::Amount;
use crate::quantity::{Kind, Range};

/// One thing that is wrong with a system, with the parts that it concerns.
#[derive(Clone, Debug, PartialEq)]
pub enum Finding {
    /// There is no tank.
    NoTank,
    /// There is no use.
    NoUse,
    /// A number is not within its range (or not a number at all).
    OutOfRange {
        /// The part.
        part: PartId,
        /// The value.
        field: Field,
        /// Its kind.
        kind: Kind,
        /// What stands there.
        value: f64,
        /// What is allowed.
        range: Range,
    },
    /// A section's shares come to more than 1.
    SharesAboveOne {
        /// The section.
        section: PartId,
        /// What they come to.
        total: f64,
    },
    /// A feed fills no tank.
    FeedWithoutTank(PartId),
    /// A use draws on no tank.
    UseWithoutTank(PartId),
    /// Hauled water goes to no tank.
    HaulingWithoutTank(PartId),
    /// A trunk line lacks an end.
    TrunkLineOpenEnded(PartId),
    /// A trunk line begins and ends at one tank.
    TrunkLineToItself(PartId),
    /// A pump lacks a tank to draw on or to fill.
    PumpOpenEnded(PartId),
    /// A pump draws on the store that it fills.
    PumpToItself(PartId),
    /// A pump would stop below the level at which it starts.
    PumpStopsBelowStart(PartId),
    /// A tank's outlet is above its overflow.
    OutletAboveOverflow(PartId),
    /// A tank's overflow is above its rim.
    OverflowAboveRim(PartId),
    /// A tank's cone is higher than the tank.
    ConeAboveRim(PartId),
    /// A table's rows do not rise from one to the next, or there are none.
    TableNotRising {
        /// The tank.
        tank: PartId,
        /// The first row that does not rise, counted from 1; 0 where there is none at all.
        row: usize,
    },
    /// A garden follows the weather, but the climate isn't given.
    GardenWithoutClimate(PartId),
    /// A number of the climate that a garden needs can't be.
    ClimateFault(PartId, ClimateValue),
    /// A step of rationing looks at no tank.
    RationWithoutTank(PartId),
    /// Overflows lead back to where they came from.
    SpillLoop(Vec<PartId>),
    /// Water is hauled twice to one store.
    HauledTwice(PartId),
    /// A part names another one that is not there.
    Orphan {
        /// The part.
        part: PartId,
        /// What it names.
        names: PartId,
    },
    /// Two parts have one identity.
    SharedIdentity(PartId),
}

/// Everything that keeps the system from working; empty for one that can run.
pub fn findings(system: &System) -> Vec<Finding> {
    let mut found = Vec::new();
    if system.tanks.is_empty() {
        found.push(Finding::NoTank);
    }
    if system.uses.is_empty() {
        found.push(Finding::NoUse);
    }
    identities(system, &mut found);
    ranges(system, &mut found);
    roof(system, &mut found);
    tanks(system, &mut found);
    connections(system, &mut found);
    gardens(system, &mut found);
    found.extend(spill_loop(system).map(Finding::SpillLoop));
    found
}

/// Shares that come to this much more than 1 by rounding alone are taken as 1.
const SHARE_ROUNDING: f64 = 1e-9;

fn identities(system: &System, found: &mut Vec<Finding>) {
    let ids: Vec<PartId> = system.parts().iter().map(super::system::Part::id).collect();
    let mut shared: Vec<PartId> = Vec::new();
    for (at, id) in ids.iter().enumerate() {
        if ids[..at].contains(id) && !shared.contains(id) {
            let place = shared.iter().take_while(|other| *other < id).count();
            shared.insert(place, *id);
        }
    }
    found.extend(shared.into_iter().map(Finding::SharedIdentity));
}

fn ranges(system: &System, found: &mut Vec<Finding>) {
    for mut part in system.parts() {
        let id = part.id();
        for number in part.numbers() {
            let (kind, value) = (number.value.kind(), number.value.si());
            if !number.range.holds(value) {
                found.push(Finding::OutOfRange { part: id, field: number.field, kind, value, range: number.range });
            }
        }
    }
}

fn roof(system: &System, found: &mut Vec<Finding>) {
    for section in &system.sections {
        let total = section.collected_share();
        if total > 1.0 + SHARE_ROUNDING {
            found.push(Finding::SharesAboveOne { section: section.id, total });
        }
        for outlet in &section.outlets {
            if !system.feeds.iter().any(|feed| feed.id == outlet.feed) {
                found.push(Finding::Orphan { part: section.id, names: outlet.feed });
            }
        }
    }
}

fn tanks(system: &System, found: &mut Vec<Finding>) {
    for tank in &system.tanks {
        if tank.outlet > tank.overflow {
            found.push(Finding::OutletAboveOverflow(tank.id));
        }
        if let Shape::ConeBottom { cone_height, height, .. } = &tank.shape
            && cone_height > height
        {
            found.push(Finding::ConeAboveRim(tank.id));
        }
        if let Shape::Table(rows) = &tank.shape {
            let limits = |row: &super::tank_shape::TableRow| {
                Range::new(0.0, 30.0).holds(row.depth.get()) && Range::new(0.0, 10_000_000.0).holds(row.volume.get())
            };
            let rises = |at: usize| {
                let (depth, volume) =
                    at.checked_sub(1).map_or((0.0, 0.0), |below| (rows[below].depth.get(), rows[below].volume.get()));
                limits(&rows[at]) && rows[at].depth.get() > depth && rows[at].volume.get() > volume
            };
            let first = (0..rows.len()).find(|at| !rises(*at)).map(|at| at + 1);
            if let Some(row) = first.or(rows.is_empty().then_some(0)) {
                found.push(Finding::TableNotRising { tank: tank.id, row });
                continue;
            }
        }
        if tank.overflow.get() > tank.shape.height() {
            found.push(Finding::OverflowAboveRim(tank.id));
        }
    }
}

fn connections(system: &System, found: &mut Vec<Finding>) {
    let known = |id: PartId| system.tank(id).is_some();
    let mut check = |part: PartId, ends: &[Option<PartId>], missing: fn(PartId) -> Finding| {
        let mut told = false;
        for end in ends {
            match *end {
                None if !told => {
                    found.push(missing(part));
                    told = true;
                }
                Some(names) if !known(names) => found.push(Finding::Orphan { part, names }),
                _ => {}
            }
        }
    };
    for feed in &system.feeds {
        check(feed.id, &[feed.tank], Finding::FeedWithoutTank);
    }
    for using in &system.uses {
        check(using.id, &[using.tank], Finding::UseWithoutTank);
    }
    for hauling in &system.hauling {
        check(hauling.id, &[hauling.tank], Finding::HaulingWithoutTank);
    }
    for step in &system.rationing {
        check(step.id, &[step.tank], Finding::RationWithoutTank);
    }
    for line in &system.trunk_lines {
        check(line.id, &line.ends, Finding::TrunkLineOpenEnded);
    }
    for pump in &system.pumps {
        check(pump.id, &[pump.from, pump.to], Finding::PumpOpenEnded);
    }
    for tank in &system.tanks {
        if let OverflowTo::Tank(names) = tank.overflow_to
            && !known(names)
        {
            found.push(Finding::Orphan { part: tank.id, names });
        }
    }
    for step in &system.rationing {
        for cut in &step.cuts {
            if !system.uses.iter().any(|using| using.id == cut.using) {
                found.push(Finding::Orphan { part: step.id, names: cut.using });
            }
        }
    }
    let stores = system.stores();
    let store_of = |id: Option<PartId>| stores.iter().position(|store| id.is_some_and(|id| store.contains(&id)));
    for line in &system.trunk_lines {
        if line.ends[0].is_some() && line.ends[0] == line.ends[1] {
            found.push(Finding::TrunkLineToItself(line.id));
        }
    }
    for pump in &system.pumps {
        if store_of(pump.from).is_some() && store_of(pump.from) == store_of(pump.to) {
            found.push(Finding::PumpToItself(pump.id));
        }
        if pump.stop < pump.start {
            found.push(Finding::PumpStopsBelowStart(pump.id));
        }
    }
    for (at, hauling) in system.hauling.iter().enumerate() {
        let store = store_of(hauling.tank);
        if store.is_some() && system.hauling[..at].iter().any(|other| store_of(other.tank) == store) {
            found.push(Finding::HauledTwice(hauling.id));
        }
    }
}

/// The climate is asked for only where a garden follows it.
fn gardens(system: &System, found: &mut Vec<Finding>) {
    let mut gardens = system.uses.iter().filter(|using| matches!(using.amount, Amount::Garden(_)));
    match system.climate.as_ref().filter(|climate| climate.is_known()) {
        None => found.extend(gardens.map(|garden| Finding::GardenWithoutClimate(garden.id))),
        Some(climate) => {
            found.extend(gardens.next().and_then(|garden| Some(Finding::ClimateFault(garden.id, climate.fault()?))))
        }
    }
}

/// The tanks of a loop of overflows, if there is one: the spill of a store goes out at its lowest rims, and comes
/// back to it through other stores or at once.
fn spill_loop(system: &System) -> Option<Vec<PartId>> {
    let stores = system.stores();
    let store_of = |id: PartId| stores.iter().position(|store| store.contains(&id));
    // Every tank with an overflow into another counts, not only the lowest of a store: opening or shutting a valve
    // must not turn a system that runs into one that can't.
    let edges: Vec<(usize, usize, PartId)> = system
        .tanks
        .iter()
        .filter_map(|tank| match tank.overflow_to {
            OverflowTo::Tank(to) => Some((store_of(tank.id)?, store_of(to)?, tank.id)),
            _ => None,
        })
        .collect();
    let mut done = vec![false; stores.len()];
    (0..stores.len()).find_map(|start| loop_from(start, &edges, &mut Vec::new(), &mut done))
}

/// A loop that can be reached from a store behind a path. Stores from which none can be reached are `done`: each is gone
/// through once, however many ways lead to it.
fn loop_from(
    at: usize,
    edges: &[(usize, usize, PartId)],
    path: &mut Vec<(usize, PartId)>,
    done: &mut [bool],
) -> Option<Vec<PartId>> {
    if done[at] {
        return None;
    }
    for (_, to, tank) in edges.iter().filter(|(from, _, _)| *from == at) {
        path.push((at, *tank));
        if let Some(begin) = path.iter().position(|(store, _)| store == to) {
            return Some(path[begin..].iter().map(|(_, tank)| *tank).collect());
        }
        if let Some(found) = loop_from(*to, edges, path, done) {
            return Some(found);
        }
        path.pop();
    }
    done[at] = true;
    None
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Area, Length, Share};
    use crate::site::demo;
    use crate::site::roof::Outlet;

    #[track_caller]
    fn check(spoil: impl FnOnce(&mut System), expected: impl Fn(&Finding) -> bool) {
        let mut system = demo::site().system;
        assert_eq!(findings(&system), [], "the demo house can run");
        spoil(&mut system);
        let found = findings(&system);
        assert!(found.iter().any(expected), "{found:?}");
    }

    #[test]
    fn what_cannot_work_is_found() {
        check(|system| system.tanks.clear(), |finding| *finding == Finding::NoTank);
        check(|system| system.uses.clear(), |finding| *finding == Finding::NoUse);
        check(|system| system.feeds[0].tank = None, |finding| matches!(finding, Finding::FeedWithoutTank(_)));
        check(|system| system.uses[0].tank = None, |finding| matches!(finding, Finding::UseWithoutTank(_)));
        check(
            |system| system.tanks[0].outlet = Length::metres(system.tanks[0].overflow.get() + 0.1),
            |finding| matches!(finding, Finding::OutletAboveOverflow(_)),
        );
        check(
            |system| system.tanks[0].overflow = Length::metres(29.0),
            |finding| matches!(finding, Finding::OverflowAboveRim(_)),
        );
        for bad in [-1.0, f64::NAN, f64::INFINITY] {
            check(
                |system| system.sections[0].area = Area::square_metres(bad),
                |finding| matches!(finding, Finding::OutOfRange { field: Field::Area, .. }),
            );
        }
        check(
            |system| {
                let feed = system.feeds[0].id;
                system.sections[0].outlets = vec![Outlet { feed, share: Share::of_one(0.6) }; 2];
            },
            |finding| matches!(finding, Finding::SharesAboveOne { total, .. } if (*total - 1.2).abs() < 1e-12),
        );
        check(
            |system| system.uses[0].tank = Some(PartId(999)),
            |finding| matches!(finding, Finding::Orphan { names: PartId(999), .. }),
        );
        check(|system| system.uses[1].id = system.uses[0].id, |finding| matches!(finding, Finding::SharedIdentity(_)));
        check(
            |system| system.tanks[0].shape = Shape::Table(Vec::new()),
            |finding| matches!(finding, Finding::TableNotRising { row: 0, .. }),
        );
    }

    #[test]
    fn a_loop_of_overflows_is_found_with_the_tanks_in_it() {
        let mut system = demo::site().system;
        system.trunk_lines.clear();
        let ids: Vec<PartId> = system.tanks.iter().map(|tank| tank.id).collect();
        system.tanks[0].overflow_to = OverflowTo::Tank(ids[1]);
        assert_eq!(spill_loop(&system), None);
        system.tanks[1].overflow_to = OverflowTo::Tank(ids[0]);
        assert_eq!(spill_loop(&system), Some(vec![ids[0], ids[1]]));
    }

    #[test]
    fn however_many_ways_lead_through_overflows_each_store_is_gone_through_once() {
        // Stores of two tanks, both of which spill into the next: each doubles the ways to the last.
        let mut system = demo::site().system;
        let (tank, line) = (system.tanks[0].clone(), system.trunk_lines[0].clone());
        system.tanks.clear();
        system.trunk_lines.clear();
        for store in 0..60 {
            let [id, beside, joint] = [0, 1, 500].map(|at| PartId(1000 + 2 * store + at));
            let overflow_to = OverflowTo::Tank(PartId(id.0 + 2));
            system.tanks.extend([id, beside].map(|id| super::super::tank::Tank { id, overflow_to, ..tank.clone() }));
            let ends = [Some(id), Some(beside)];
            system.trunk_lines.push(super::super::trunk::TrunkLine { id: joint, ends, open: true, ..line.clone() });
        }
        assert_eq!(spill_loop(&system), None);
        let first = system.tanks[0].id;
        if let Some(last) = system.tanks.last_mut() {
            last.overflow_to = OverflowTo::Tank(first);
        }
        assert_eq!(spill_loop(&system).map(|tanks| tanks.len()), Some(60));
    }

    #[test]
    fn a_store_that_spills_into_itself_is_a_loop() {
        let mut system = demo::site().system;
        let ids: Vec<PartId> = system.tanks.iter().map(|tank| tank.id).collect();
        system.tanks[0].overflow_to = OverflowTo::Tank(ids[1]);
        assert!(spill_loop(&system).is_some());
    }
}

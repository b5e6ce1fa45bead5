//! The engine's line through the readings: from each level that was read the balance is run with the rain that is known,
//! until the next reading, or until a day comes whose rain nobody knows.

use chrono::{Days, NaiveDate};

use super::joined::Known;
use crate::engine::balance::plan::Plan;
use crate::engine::balance::run::{Standing, run_from};
use crate::engine::levels::{Held, held_in_each, largest, store_of};
use crate::site::diary::{Diary, EntryId, Told};
use crate::site::system::System;

/// A level that was read, as water over the outlets of its store.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LevelRead {
    /// The entry.
    pub id: EntryId,
    /// The day.
    pub date: NaiveDate,
    /// What it says.
    pub held: Held,
    /// Live water at the end of that day, in L: with what was brought on it and written down after the reading.
    pub end_l: f64,
    /// Whether the tanks of the store were then joined as they are now: only then can it be reckoned on from it.
    pub as_now: bool,
}

/// All levels that were read of tanks that are there, by day; one for each store of which an entry tells.
pub fn levels_read(plan: &Plan, system: &System, diary: &Diary) -> Vec<LevelRead> {
    let brought = brought(plan, system, diary);
    let mut read = Vec::new();
    // What was read last of tanks that have been joined with others since: the tanks, and all water in them.
    let mut apart: Vec<(Vec<usize>, f64)> = Vec::new();
    for entry in diary.entries() {
        if let Told::Level { of, level, joined, .. } = &entry.told {
            let parts = held_in_each(plan, system, *of, *level, joined);
            let whole = parts.len() == 1 && (joined.is_empty() || joined.len() == parts[0].1.len());
            for (mut held, told) in parts {
                apart.retain(|(tanks, _)| !tanks.iter().any(|tank| told.contains(tank)));
                let tanks = &plan.stores[held.store].tanks;
                let told_all = told.len() == tanks.len();
                if !told_all {
                    let beside = apart.iter().filter(|(others, _)| others.iter().all(|tank| tanks.contains(tank)));
                    held.beside(beside.map(|(_, litres)| litres).sum(), plan);
                    apart.push((told, held.whole_l));
                }
                let later = brought.iter().filter(|load| load.date == entry.date && load.id > entry.id);
                let later_l: f64 = later.filter(|load| load.store == held.store).map(|load| load.litres).sum();
                let room_l = (plan.stores[held.store].joined.live_capacity_l - held.live_l).max(0.0);
                let end_l = held.live_l + later_l.min(room_l);
                let as_now = whole && told_all;
                read.push(LevelRead { id: entry.id, date: entry.date, held, end_l, as_now });
            }
        }
    }
    read
}

/// Content of one store as the engine has it on some days that follow one another, from a reading on.
#[derive(Clone, Debug, PartialEq)]
pub struct Stretch {
    /// The day of the reading.
    pub start: NaiveDate,
    /// Live water at the end of each day, in L; the first is the reading's.
    pub live_l: Vec<f64>,
}

/// The stretches of a store from its readings on that touch the days from `first` to `to`. A reading counts for the end of its day; water
/// that was brought is poured in on its day. Other stores begin at their last reading, or half full.
pub fn track(
    plan: &Plan,
    system: &System,
    diary: &Diary,
    known: &Known<'_>,
    (store, first, to): (usize, NaiveDate, NaiveDate),
    inflow_first: f64,
) -> Vec<Stretch> {
    let read = levels_read(plan, system, diary);
    let brought = brought(plan, system, diary);
    let own: Vec<&LevelRead> = read.iter().filter(|read| read.held.store == store).collect();
    let mut stretches = Vec::with_capacity(own.len());
    for (at, from) in own.iter().enumerate() {
        let until = own.get(at + 1).map_or(to, |next| next.date.min(to));
        if from.date >= until || until < first || !from.as_now {
            continue;
        }
        let mut live_l: Vec<f64> = plan.stores.iter().map(|store| 0.5 * store.joined.live_capacity_l).collect();
        for earlier in read.iter().take_while(|earlier| earlier.date <= from.date) {
            live_l[earlier.held.store] = earlier.end_l;
        }
        live_l[store] = from.end_l;
        let mut standing = Standing::contents(plan, &live_l);
        let mut stretch = Stretch { start: from.date, live_l: vec![from.end_l] };
        let mut date = from.date;
        while date < until {
            let Some(next) = date.checked_add_days(Days::new(1)) else { break };
            date = next;
            let Some(rain_mm) = known.mm(date) else { break };
            for load in brought.iter().filter(|load| load.date == date) {
                standing.pour(plan, load.store, load.litres);
            }
            run_from(plan, &[date], &[rain_mm], &mut standing, inflow_first, |_| true);
            stretch.live_l.push(standing.live_l[store]);
        }
        if stretch.live_l.len() > 1 {
            stretches.push(stretch);
        }
    }
    stretches
}

/// Water that was brought.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Brought {
    /// The entry.
    pub id: EntryId,
    /// The day.
    pub date: NaiveDate,
    /// The store, as its place in the plan.
    pub store: usize,
    /// How much, in L.
    pub litres: f64,
}

/// All water that was brought, by day. What went to no tank that is known went where the house has its water hauled to,
/// else to the largest store that is drawn on.
pub fn brought(plan: &Plan, system: &System, diary: &Diary) -> Vec<Brought> {
    let hauled_to = system.hauling.first().and_then(|hauling| hauling.tank);
    let mut brought = Vec::new();
    for entry in diary.entries() {
        if let Told::Delivery { to, volume, .. } = entry.told {
            let store = to.or(hauled_to).and_then(|tank| store_of(plan, system, tank)).unwrap_or(largest(plan));
            brought.push(Brought { id: entry.id, date: entry.date, store, litres: volume.get() });
        }
    }
    brought
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::engine::balance::plan::plan;
    use crate::quantity::{Area, Depth, Flow, Length, Share, Volume};
    use crate::site::diary::{Entry, Level, Water};
    use crate::site::uses::Amount;
    use crate::site::{Shape, demo};

    fn day(date: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 3, date).unwrap()
    }

    /// One box of 1 m² and 2 m, outlet at the floor, one roof of 100 m² that loses nothing, one use of 50 L a day.
    fn plain() -> System {
        let mut system = demo::site().system;
        system.sections.truncate(1);
        system.feeds.truncate(1);
        system.tanks.truncate(1);
        system.uses.truncate(1);
        system.trunk_lines.clear();
        let section = &mut system.sections[0];
        (section.area, section.runoff_coefficient) = (Area::square_metres(100.0), Share::of_one(1.0));
        section.wetting_loss = Depth::default();
        system.feeds[0].capture = Share::of_one(1.0);
        system.feeds[0].diverter = None;
        let metre = Length::metres(1.0);
        let tank = &mut system.tanks[0];
        tank.shape = Shape::Box { length: metre, width: metre, height: Length::metres(2.0) };
        (tank.outlet, tank.overflow) = (Length::default(), Length::metres(2.0));
        system.uses[0].amount = Amount::Daily(Flow::litres_a_day(50.0));
        system.uses[0].tank = Some(tank.id);
        system
    }

    fn told(id: u64, date: u32, told: Told) -> Entry {
        Entry { id: EntryId(id), edited: id, date: day(date), told, note: String::new() }
    }

    #[test]
    fn the_line_goes_by_hand_from_reading_to_reading_and_stops_where_rain_is_unknown() {
        let system = plain();
        let plan = plan(&system).unwrap();
        let tank = system.tanks[0].id;
        let level = |id, date, metres| {
            told(
                id,
                date,
                Told::Level {
                    of: Water::Tank(tank),
                    level: Level::Depth(Length::metres(metres)),
                    undrawn: None,
                    joined: Vec::new(),
                },
            )
        };
        let rain = |id, date, mm| told(id, date, Told::Rain(Depth::millimetres(mm)));
        let load = Told::Delivery { to: None, volume: Volume::litres(300.0), price: None };
        let diary = Diary::of(vec![
            level(1, 1, 1.0),
            rain(2, 2, 0.0),
            rain(3, 3, 3.0),
            told(4, 3, load),
            rain(5, 4, 0.0),
            level(6, 5, 1.4),
            rain(7, 6, 0.0),
        ]);
        let known = Known::of(None, &diary);
        let stretches = track(&plan, &system, &diary, &known, (0, day(1), day(9)), 0.0);
        // 1000 L; −50; +300 of rain −50 +300 brought; −50; the rain of the 5th is unknown: stop. Then 1400 − 50.
        let lines: Vec<(NaiveDate, Vec<f64>)> =
            stretches.into_iter().map(|stretch| (stretch.start, stretch.live_l)).collect();
        assert_eq!(lines, [(day(1), vec![1000.0, 950.0, 1500.0, 1450.0]), (day(5), vec![1400.0, 1350.0])]);
    }

    #[test]
    fn what_is_brought_after_the_reading_of_the_day_stands_in_the_tank_at_its_end() {
        let system = plain();
        let plan = plan(&system).unwrap();
        let of = Water::Tank(system.tanks[0].id);
        let read = Told::Level { of, level: Level::Depth(Length::metres(1.0)), undrawn: None, joined: Vec::new() };
        let load = |litres| Told::Delivery { to: None, volume: Volume::litres(litres), price: None };
        let end = |first: Told, then: Told| {
            let read = levels_read(&plan, &system, &Diary::of(vec![told(1, 1, first), told(2, 1, then)]));
            (read[0].held.live_l, read[0].end_l)
        };
        // 1 m on 1 m², 2 m to the rim.
        assert_eq!(end(read.clone(), load(300.0)), (1000.0, 1300.0));
        assert_eq!(end(load(300.0), read.clone()), (1000.0, 1000.0));
        assert_eq!(end(read, load(5000.0)), (1000.0, 2000.0));
    }
}

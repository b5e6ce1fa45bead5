//! The stored file of version 2: everything that a site can hold, each kind at least once.

use std::path::PathBuf;

use chrono::NaiveDate;
use eavewater::app::event::Event;
use eavewater::app::model::Model;
use eavewater::app::update::update;
use eavewater::app::view::frame;
use eavewater::quantity::{Count, Customary, Depth, Flow, Hours, Length, Money, Share, Units, Volume};
use eavewater::records::cupboard::{Opened, SiteFile, SiteId};
use eavewater::records::exchange;
use eavewater::site::barrier::{Barrier, BarrierKind};
use eavewater::site::climate::Climate;
use eavewater::site::details::Detail;
use eavewater::site::diary::{Diary, Entry, EntryId, Level, Line, Parameter, Removed, TestResult, Told, Water};
use eavewater::site::garden::Garden;
use eavewater::site::habits::Habits;
use eavewater::site::household::GeneratedYears;
use eavewater::site::part::PartId;
use eavewater::site::prices::Priced;
use eavewater::site::rationing::{Cut, RationStep};
use eavewater::site::trial::{Levers, Trial};
use eavewater::site::upkeep::{Interval, Job};
use eavewater::site::uses::{Amount, Class, Use};
use eavewater::site::wanted::Wanted;
use eavewater::site::work::Task;
use serde_json::Value;

use crate::saved::{every_part, no_rain, odd_rain, says_all_of};

/// Written by the program when it came to keep what was `removed`: `everything` and `rationed`.
const V2: &str = include_str!("../saved/v2.json");

fn day(day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 7, day).unwrap()
}

/// A diary with every kind of entry, every way of reading a level, every task, parameter and result, and one taken out.
fn diary() -> Diary {
    let (tank, part) = (PartId(30), Some(PartId(60)));
    let level = |of, level, undrawn: Option<f64>| {
        let joined = if undrawn.is_some() { vec![tank, PartId(31)] } else { Vec::new() };
        Told::Level { of, level, undrawn: undrawn.map(Hours::from_hours), joined }
    };
    let mut all = vec![
        level(Water::Tank(tank), Level::Depth(Length::metres(1.05)), None),
        level(Water::Store(tank), Level::Share(Share::of_one(0.625)), Some(9.5)),
        level(Water::Tank(tank), Level::Volume(Volume::litres(2_839.058_838)), Some(240.0)),
        level(Water::Store(tank), Level::Full, None),
        Told::Rain(Depth::millimetres(0.0)),
        Told::Rain(Depth::millimetres(12.7)),
        Told::Meter { of: None, reading: Volume::litres(1e9 / 3.0) },
        Told::Meter { of: part, reading: Volume::litres(0.0) },
        Told::Delivery { to: Some(tank), volume: Volume::litres(5000.0), price: Some(Money::coins(85.5)) },
        Told::Delivery { to: None, volume: Volume::litres(0.1), price: None },
        Told::Note,
    ];
    let on = |number: usize| number.is_multiple_of(2).then_some(PartId(20));
    all.extend(Task::ALL.iter().enumerate().map(|(number, task)| Told::Work { on: on(number), task: *task }));
    let found = [
        TestResult::Value(7.25),
        TestResult::Below(0.5),
        TestResult::Present,
        TestResult::Absent,
        TestResult::Value(0.0),
    ];
    let tested = Parameter::ALL.iter().zip(found.iter().cycle());
    all.extend(tested.map(|(parameter, found)| Told::Test { at: part, parameter: *parameter, found: *found }));
    let entries = (1..).zip(all).map(|(number, told)| Entry {
        id: EntryId(1_790_000_000_000 + number),
        edited: 1_790_000_000_000 + number + if number.is_multiple_of(3) { 999 } else { 0 },
        date: day(1 + u32::try_from(number).unwrap() % 31),
        told,
        note: if number.is_multiple_of(4) {
            "Dusk, \"calm\" <b>\\</b> ✓\nsecond line".to_owned()
        } else {
            String::new()
        },
    });
    let removed = Removed { id: EntryId(1_790_000_000_000), edited: 1_790_000_000_500, date: day(1) };
    Diary::of_lines(entries.map(Line::Entry).chain([Line::Removed(removed)]).collect())
}

/// Every part, and whatever came since version 1.
fn everything() -> SiteFile {
    let mut file = SiteFile { diary: diary(), ..every_part() };
    let system = &mut file.site.system;
    system.uses[0].barriers = (80..).zip(BarrierKind::ALL).map(|(id, kind)| Barrier { id: PartId(id), kind }).collect();
    let garden = Use {
        id: PartId(65),
        name: "Bed".to_owned(),
        class: Class::Garden,
        tank: Some(PartId(31)),
        amount: Amount::Garden(Garden::default()),
        outdoor: true,
        barriers: Vec::new(),
    };
    system.uses.push(garden);
    system.climate = Some(Climate::Temperatures {
        latitude: -36.85,
        least_c: [15.5, 16.0, 14.5, 12.0, 9.5, 7.5, 6.5, 7.0, 8.5, 10.5, 12.0, 14.0],
        greatest_c: [24.0, 24.5, 23.0, 20.5, 17.5, 15.0, 14.5, 15.0, 16.5, 18.0, 20.0, 22.0],
    });
    system.greatest_gone = 321;
    let mut habits = Habits::usual(system);
    for (number, line) in habits.lines.iter_mut().enumerate() {
        line.times = Count::number(0.1 + number as f64);
    }
    system.habits = Some(habits);
    for detail in Detail::ALL {
        let of = (detail.row().options > 0).then_some(PartId(30));
        system.details.set(of, *detail, Some(detail.row().range.greatest)).unwrap();
    }
    let site = &mut file.site;
    site.begun = Some(1_790_000_000_123);
    site.reckoning.generated = Some(GeneratedYears { years: 250, seed: u32::MAX, spread: Some(Share::of_one(0.31)) });
    site.reckoning.wanted = Wanted::Days(Share::of_one(0.95));
    for (number, priced) in Priced::ALL.into_iter().enumerate() {
        site.prices.set(priced, Money::coins(0.173 + number as f64));
    }
    for (number, task) in Task::ALL.into_iter().enumerate() {
        let interval = Interval {
            days: Some(30.5 + number as f64),
            rain_mm: number.is_multiple_of(2).then_some(300.0),
            litres: number.is_multiple_of(3).then_some(3_785.4),
        };
        site.upkeep.choose(Job { task, part: PartId(30) }, Some(interval));
    }
    let option = Trial {
        reckoning: Some(Box::new(site.reckoning.clone())),
        levers: Levers { rain: 0.7, ..Levers::NONE },
        ..Trial::of_system("Dry \"years\"".to_owned(), every_part().site.system)
    };
    site.options = vec![option];
    file.trial = Trial {
        name: "More roof".to_owned(),
        system: Some(Box::new(every_part().site.system)),
        reckoning: Some(Box::new(file.site.reckoning.clone())),
        levers: Levers { storage: 1.25, roof: 1.0 / 3.0, uses: 10.0, rain: 0.8 },
    };
    file
}

/// What `everything` has in its other way: steps of rationing, reference evapotranspiration, years wanted good.
fn rationed() -> SiteFile {
    let mut file = odd_rain();
    file.site.system.tanks = every_part().site.system.tanks;
    file.site.system.uses = every_part().site.system.uses;
    file.site.system.rationing = vec![RationStep {
        id: PartId(90),
        name: "No baths".to_owned(),
        tank: Some(PartId(30)),
        below: Share::of_one(0.3),
        cuts: vec![Cut { using: PartId(61), share: Share::of_one(0.5) }],
    }];
    file.site.system.climate =
        Some(Climate::ReferenceEt { mm_a_day: [6.1, 5.4, 4.0, 2.6, 1.5, 1.0, 1.1, 1.7, 2.6, 3.8, 4.9, 5.8] });
    file.site.system.uses[1].amount = Amount::Daily(Flow::litres_a_day(0.1 + 0.2));
    file.site.reckoning.wanted = Wanted::GoodYears(7);
    file
}

fn sites() -> Vec<SiteFile> {
    vec![everything(), rationed()]
}

/// Writes the file anew when the present version has come to keep more: `cargo test --test native write_the_stored_file --
/// --ignored`. Never for a version that was released.
#[test]
#[ignore = "writes into the sources"]
fn write_the_stored_file_of_the_present_version() {
    let path: PathBuf = [env!("CARGO_MANIFEST_DIR"), "tests/saved/v2.json"].iter().collect();
    std::fs::write(path, exchange::export(&Units::customary(Customary::Metric), None, sites())).unwrap();
}

#[test]
fn a_file_of_version_2_holds_what_it_held() {
    let export = exchange::import(V2.as_bytes()).unwrap();
    assert_eq!(export.units, Units::customary(Customary::Metric));
    let mut sites = sites();
    // Details that came since are in no old file.
    let stored = &export.sites[0].site.system.details.0;
    assert!(stored.len() > 50);
    sites[0].site.system.details.0.retain(|entered| stored.contains(entered));
    assert!(export.sites == sites, "something was lost or changed");
}

#[test]
fn what_a_file_of_version_2_says_is_written_again() {
    let export = exchange::import(V2.as_bytes()).unwrap();
    let written: Value = serde_json::from_str(&exchange::export(&export.units, None, export.sites)).unwrap();
    assert!(says_all_of(&written, &serde_json::from_str(V2).unwrap()), "something was lost or changed");
}

/// Each key of an object, with those in it.
fn keys(value: &Value, found: &mut Vec<String>) {
    match value {
        Value::Object(values) => {
            for (key, value) in values {
                found.push(key.clone());
                keys(value, found);
            }
        }
        Value::Array(values) => values.iter().for_each(|value| keys(value, found)),
        _ => {}
    }
}

/// Whatever the program writes of anything that the tests make stands in the stored file too: who adds a key is told to put
/// it there.
#[test]
fn every_key_that_is_written_is_in_the_stored_file() {
    let (mut stored, mut written) = (Vec::new(), Vec::new());
    keys(&serde_json::from_str(V2).unwrap(), &mut stored);
    let files = vec![everything(), rationed(), every_part(), odd_rain(), no_rain()];
    keys(
        &serde_json::from_str(&exchange::export(&Units::customary(Customary::Us), None, files)).unwrap(),
        &mut written,
    );
    written.retain(|key| !stored.contains(key));
    assert_eq!(written, [] as [String; 0]);
}

#[test]
fn a_site_of_a_newer_version_stays_untouched_and_is_told() {
    let mut model = Model::default();
    let troubles = vec![eavewater::records::cupboard::Trouble::Newer("site.7".to_owned())];
    let opened = Opened { untouched: vec![SiteId(7)], troubles, ..Opened::default() };
    update(&mut model, Event::Started(day(1), Ok(opened)));
    assert_eq!(model.index().sites, [SiteId(7)], "it stays named");
    let told = frame::notice(&model).unwrap().text;
    assert!(told.contains("newer Eavewater"), "{told}");
}

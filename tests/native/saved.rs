//! Files written by past versions open to what they hold; what is written now opens to the same.

use chrono::NaiveDate;
use eavewater::quantity::{
    Area, Bore, Count, Customary, Days, Depth, Flow, Hours, Length, Money, Share, Units, Volume,
};
use eavewater::records::cupboard::SiteFile;
use eavewater::records::exchange;
use eavewater::site::details::{Detail, Details};
use eavewater::site::diary::Diary;
use eavewater::site::feed::{Diverter, Drain, Feed};
use eavewater::site::garden::{Crop, Garden, Soil, Watering};
use eavewater::site::habits::{HabitValue, Habits};
use eavewater::site::hauling::Hauling;
use eavewater::site::household::{GeneratedYears, Reckoning, Site};
use eavewater::site::part::PartId;
use eavewater::site::prices::Priced;
use eavewater::site::pump::Pump;
use eavewater::site::rain::{MissingDays, Normals, Rain, RainRecord};
use eavewater::site::roof::{Material, Outlet, RoofSection};
use eavewater::site::system::System;
use eavewater::site::tank::{Build, Cover, OverflowTo, Tank};
use eavewater::site::trial::{Levers, Trial};
use eavewater::site::trunk::TrunkLine;
use eavewater::site::uses::{Amount, Class, Use};
use eavewater::site::{Shape, TableRow};
use proptest::prelude::*;
use serde_json::Value;

/// Written by the first program that wrote version 1: the demo house with twelve years of rain, then `every_part`,
/// `odd_rain` and `no_rain`.
const V1: &str = include_str!("../saved/v1.json");

/// A site in which every kind of part and value occurs.
pub fn every_part() -> SiteFile {
    let system = System {
        sections: sections(),
        feeds: feeds(),
        tanks: tanks(),
        trunk_lines: vec![
            TrunkLine {
                id: PartId(40),
                name: "Line".to_owned(),
                ends: [Some(PartId(30)), Some(PartId(31))],
                open: false,
            },
            TrunkLine { id: PartId(41), name: "Loose line".to_owned(), ends: [Some(PartId(32)), None], open: true },
        ],
        pumps: vec![Pump {
            id: PartId(50),
            name: "Pump".to_owned(),
            from: Some(PartId(33)),
            to: None,
            start: Share::of_one(0.3),
            stop: Share::of_one(0.95),
            limit: Flow::litres_a_day(1234.5),
        }],
        uses: uses(),
        hauling: vec![Hauling {
            id: PartId(70),
            name: "Truck".to_owned(),
            tank: Some(PartId(30)),
            trigger: Share::of_one(0.15),
            load: Volume::litres(7_570.823_568),
            price: Money::coins(185.5),
            notice: Days::from_days(3.0),
        }],
        details: Details::default(),
        ..System::default()
    };
    let reckoning = Reckoning {
        start: Share::of_one(0.5),
        inflow_first: Share::of_one(0.25),
        missing_days: MissingDays::Fill,
        rain_factors: [0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 1.0, 1.1, 1.2, 1.3, 1.4, 3.0].map(Share::of_one),
        generated: None,
        wanted: eavewater::site::wanted::Wanted::default(),
    };
    let normals = Normals {
        source: "Gauge by the \"old\" well, 1961\u{2013}1990 \\ ✓".to_owned(),
        totals_mm: [120.5, 98.1, 77.0, 40.25, 20.0, 5.0, 0.0, 0.1, 33.3, 66.6, 99.9, 133.2],
        rain_days: Some([14.0, 12.0, 11.0, 7.5, 4.0, 1.0, 0.0, 0.2, 5.0, 9.0, 12.0, 15.0]),
    };
    let site = Site { name: "Every part".to_owned(), system, reckoning, ..Site::default() };
    SiteFile { site, rain: Some(Rain::Normals(normals)), diary: Diary::default(), trial: Trial::NONE }
}

fn sections() -> Vec<RoofSection> {
    let section = |(number, material): (u32, Material)| RoofSection {
        id: PartId(1 + number),
        name: format!("Section {number}"),
        material,
        area: Area::square_metres(10.0 * f64::from(number) + 0.1),
        runoff_coefficient: Share::of_one(0.81),
        wetting_loss: Depth::millimetres(0.4),
        outlets: (0..number % 3)
            .map(|feed| Outlet { feed: PartId(20 + feed), share: Share::of_one(1.0 / 3.0) })
            .collect(),
    };
    let materials = [
        Material::Metal,
        Material::Tile,
        Material::Shingle,
        Material::Concrete,
        Material::FlatGravel,
        Material::Planted,
        Material::Other,
    ];
    (0..).zip(materials).map(section).collect()
}

fn feeds() -> Vec<Feed> {
    let feed = |id, tank, drain: Option<Drain>| Feed {
        id: PartId(id),
        name: format!("Feed {id}"),
        tank,
        capture: Share::of_one(0.88),
        diverter: drain.map(|drain| Diverter {
            volume: Volume::litres(21.5),
            chamber: Bore::metres(0.102_26),
            drain,
            storm: Hours::from_hours(5.5),
        }),
    };
    vec![
        feed(20, Some(PartId(30)), Some(Drain::Hole { diameter: Bore::metres(0.0015) })),
        feed(21, Some(PartId(31)), Some(Drain::ByHand { every: Days::from_days(45.0) })),
        feed(22, Some(PartId(32)), Some(Drain::Never)),
        feed(23, None, None),
    ]
}

fn tanks() -> Vec<Tank> {
    let metres = Length::metres;
    let table = [(0.5, 400.0), (1.25, 1_312.5)]
        .map(|(depth, litres)| TableRow { depth: metres(depth), volume: Volume::litres(litres) });
    let evaporation = [0.5, 1.0, 2.0, 3.0, 4.5, 6.0, 7.0, 6.5, 4.0, 2.5, 1.0, 0.5].map(Depth::millimetres);
    let tank = |id, build, shape, overflow_to, cover| Tank {
        id: PartId(id),
        name: format!("Tank {id}"),
        build,
        shape,
        floor: metres(-1.5),
        outlet: metres(0.1),
        overflow: metres(1.1),
        overflow_to,
        leak: Flow::litres_a_day(0.75),
        cover,
    };
    vec![
        tank(
            30,
            Build::AboveGround,
            Shape::UprightCylinder { diameter: metres(2.0), height: metres(1.2) },
            OverflowTo::Tank(PartId(31)),
            Cover::Covered,
        ),
        tank(
            31,
            Build::Cistern,
            Shape::Box { length: metres(3.1), width: metres(2.2), height: metres(1.3) },
            OverflowTo::Garden,
            Cover::Uncovered { evaporation },
        ),
        tank(
            32,
            Build::Bladder,
            Shape::LyingCylinder { diameter: metres(1.2), length: metres(2.6) },
            OverflowTo::Ground,
            Cover::Covered,
        ),
        tank(
            33,
            Build::Barrel,
            Shape::ConeBottom { diameter: metres(1.4), cone_height: metres(0.3), height: metres(1.6) },
            OverflowTo::Ground,
            Cover::Covered,
        ),
        tank(34, Build::Cistern, Shape::Table(table.to_vec()), OverflowTo::Ground, Cover::Covered),
    ]
}

fn uses() -> Vec<Use> {
    let monthly = [0.0, 0.0, 1.0, 4.0, 8.0, 12.0, 15.5, 15.0, 8.0, 4.0, 1.0, 0.0].map(Flow::litres_a_day);
    let using = |id, class, tank, amount, outdoor| Use {
        id: PartId(id),
        name: format!("Use {id}"),
        class,
        tank,
        amount,
        outdoor,
        barriers: Vec::new(),
    };
    let (first, second) = (Some(PartId(30)), Some(PartId(31)));
    let head = Amount::PerHead { each: Flow::litres_a_day(7.5), heads: Count::number(4.0) };
    let event = Amount::PerEvent { each: Volume::litres(60.0), a_week: Count::number(2.5) };
    vec![
        using(60, Class::Drinking, first, head, false),
        using(61, Class::House, first, event, false),
        using(62, Class::Garden, second, Amount::Monthly(monthly), true),
        using(63, Class::Animals, second, Amount::Daily(Flow::litres_a_day(33.0)), true),
        using(64, Class::Travel, None, Amount::Daily(Flow::litres_a_day(0.0)), true),
    ]
}

/// A site without parts whose record lacks days and has numbers that take all their digits.
pub fn odd_rain() -> SiteFile {
    let site = Site { name: "Odd rain".to_owned(), ..Site::default() };
    SiteFile { site, rain: Some(Rain::Record(odd_record())), diary: Diary::default(), trial: Trial::NONE }
}

fn odd_record() -> RainRecord {
    RainRecord {
        source: String::new(),
        start: NaiveDate::from_ymd_opt(1999, 2, 28).unwrap(),
        depths_mm: vec![
            Some(0.0),
            None,
            Some(0.1 + 0.2),
            Some(1.0 / 3.0),
            None,
            Some(5e-324),
            Some(1e21),
            Some(1817.9),
        ],
    }
}

/// A site without rain.
pub fn no_rain() -> SiteFile {
    SiteFile { rain: None, ..odd_rain() }
}

#[test]
fn a_file_of_version_1_holds_what_it_held() {
    let export = exchange::import(V1.as_bytes()).unwrap();
    assert_eq!(export.units, Units::customary(Customary::Us));
    let [demo, rest @ ..] = export.sites.as_slice() else { panic!("no sites") };
    assert_eq!(rest, [every_part(), odd_rain(), no_rain()]);
    // The demo house may change; the file has it as it was.
    assert_eq!(demo.site.name, "Emberlow (demo)");
    assert_eq!(demo.site.system.parts().len(), 13);
    let Some(Rain::Record(record)) = &demo.rain else { panic!("no record") };
    assert_eq!(record.start, NaiveDate::from_ymd_opt(2011, 1, 1).unwrap());
    assert_eq!(record.end(), NaiveDate::from_ymd_opt(2022, 12, 31));
}

#[test]
fn what_a_file_of_version_1_says_is_written_again() {
    let export = exchange::import(V1.as_bytes()).unwrap();
    let mut written: Value = serde_json::from_str(&exchange::export(&export.units, None, export.sites)).unwrap();
    written["version"] = 1.into();
    assert!(says_all_of(&written, &serde_json::from_str(V1).unwrap()), "something was lost or changed");
}

/// Whether a document says all that an older one does, with every number the same to the last bit however it is
/// spelled. It may have keys that the older one lacks.
pub fn says_all_of(new: &Value, old: &Value) -> bool {
    match (new, old) {
        (Value::Number(new), Value::Number(old)) => new.as_f64().map(f64::to_bits) == old.as_f64().map(f64::to_bits),
        (Value::Array(new), Value::Array(old)) => {
            new.len() == old.len() && new.iter().zip(old).all(|(new, old)| says_all_of(new, old))
        }
        (Value::Object(new), Value::Object(old)) => {
            old.iter().all(|(key, value)| new.get(key).is_some_and(|new| says_all_of(new, value)))
        }
        _ => new == old,
    }
}

#[test]
fn details_of_parts_and_site_come_back() {
    let mut file = every_part();
    let details = &mut file.site.system.details;
    details.set(None, Detail::DesignIntensity, Some(152.4)).unwrap();
    details.set(Some(PartId(20)), Detail::GutterShape, Some(2.0)).unwrap();
    details.set(Some(PartId(30)), Detail::OverflowBore, Some(0.1)).unwrap();
    check_comes_back(&file);
}

#[test]
fn options_and_prices_come_back_and_may_be_absent() {
    let mut file = every_part();
    let option = |name: &str, rain| Trial {
        levers: Levers { rain, ..Levers::NONE },
        ..Trial::of_system(name.to_owned(), every_part().site.system)
    };
    file.site.options = vec![option("Second tank", 1.0), option("Dry \"years\"", 0.7)];
    file.site.prices.set(Priced::TankLitre, Money::coins(0.173));
    file.site.prices.set(Priced::Lid, Money::coins(0.0));
    check_comes_back(&file);
    let text = exchange::export(&Units::default(), None, vec![file]);
    let mut written: Value = serde_json::from_str(&text).unwrap();
    written["sites"][0]["site"]["options"].take();
    written["sites"][0]["site"]["prices"].take();
    let read = exchange::import(written.to_string().as_bytes()).unwrap().sites.remove(0);
    assert_eq!(read, every_part());
}

#[track_caller]
fn check_comes_back(file: &SiteFile) {
    let text = exchange::export(&Units::default(), None, vec![file.clone()]);
    assert_eq!(exchange::import(text.as_bytes()).unwrap().sites, std::slice::from_ref(file));
}

#[test]
fn habits_come_back() {
    let mut system = every_part().site.system;
    let mut habits = Habits::usual(&system);
    habits.set(HabitValue::People, 4.5);
    for (number, line) in habits.lines.iter_mut().enumerate() {
        line.times = Count::number(0.1 + number as f64);
        line.to = system.uses.get(number).map(|using| using.id);
    }
    system.habits = Some(habits);
    check_comes_back(&SiteFile { site: Site { system, ..no_rain().site }, ..no_rain() });
}

#[test]
fn every_kind_of_garden_comes_back() {
    let mut site = Site { system: System::default(), ..no_rain().site };
    let garden = |crop, soil, watering| Amount::Garden(Garden { crop, soil, watering, ..Garden::default() });
    let amounts = (Crop::ALL.map(|crop| garden(crop, Soil::Loam, Watering::Drip)).into_iter())
        .chain(Soil::ALL.map(|soil| garden(Crop::Other, soil, Watering::Drip)))
        .chain(Watering::ALL.map(|watering| garden(Crop::Other, Soil::Other, watering)));
    for (number, amount) in amounts.enumerate() {
        let id = PartId(u32::try_from(number).unwrap() + 1);
        site.system.uses.push(Use { id, amount, ..uses().remove(0) });
    }
    check_comes_back(&SiteFile { site, rain: None, diary: Diary::default(), trial: Trial::NONE });
}

proptest! {
    #[test]
    fn any_number_comes_back_bit_for_bit(numbers in prop::array::uniform12(prop::num::f64::ANY)) {
        let numbers = numbers.map(|number| if number.is_finite() { number } else { 0.0 });
        let record = RainRecord { depths_mm: numbers.map(Some).to_vec(), ..odd_record() };
        let text = exchange::export(&Units::default(), None, vec![SiteFile { rain: Some(Rain::Record(record)), ..no_rain() }]);
        let back = exchange::import(text.as_bytes()).unwrap().sites.remove(0);
        let Some(Rain::Record(back)) = back.rain else { panic!("no record") };
        let bits = |number: f64| number.to_bits();
        prop_assert_eq!(back.depths_mm.into_iter().flatten().map(bits).collect::<Vec<_>>(), numbers.map(bits));
    }

    #[test]
    fn any_system_comes_back(system in crate::any_system::system()) {
        let generated = Some(GeneratedYears { years: 400, seed: u32::MAX, spread: Some(Share::of_one(0.31)) });
        let reckoning = Reckoning { generated, ..Reckoning::default() };
        check_comes_back(&SiteFile { site: Site { system, reckoning, ..no_rain().site }, ..no_rain() });
    }
}

/// The description of the file names every key that is written.
#[test]
fn the_description_of_the_file_knows_all_its_keys() {
    fn keys(value: &Value, found: &mut std::collections::BTreeSet<String>) {
        match value {
            Value::Object(values) => values.iter().for_each(|(key, value)| {
                found.insert(key.clone());
                keys(value, found);
            }),
            Value::Array(items) => items.iter().for_each(|item| keys(item, found)),
            _ => (),
        }
    }
    let description = include_str!("../../src/records/FILE.md");
    let written = exchange::export(&Units::default(), None, vec![every_part(), odd_rain(), no_rain()]);
    let mut found = std::collections::BTreeSet::new();
    for text in [written.as_str(), include_str!("../saved/v2.json")] {
        keys(&serde_json::from_str(text).unwrap(), &mut found);
    }
    assert!(found.len() > 100, "{found:?}");
    let lacking: Vec<&String> = found
        .iter()
        .filter(|key| !description.contains(&format!("`{key}`")) && !description.contains(&format!("\"{key}\"")))
        .collect();
    assert_eq!(lacking, Vec::<&String>::new());
}

//! One roof, one tank, one use: the system of handbooks and of independent reckonings.

use eavewater::engine::balance::ledger::Ledger;
use eavewater::engine::balance::plan::plan;
use eavewater::engine::balance::run::Conduct;
use eavewater::engine::balance::series::{Series, run_and_keep};
use eavewater::engine::rain::weather::Weather;
use eavewater::engine::rain::{gaps, import};
use eavewater::quantity::{Area, Depth, Flow, Length, Share, Volume};
use eavewater::site::Shape;
use eavewater::site::feed::Feed;
use eavewater::site::new_part;
use eavewater::site::part::PartId;
use eavewater::site::rain::MissingDays;
use eavewater::site::roof::{Material, Outlet, RoofSection};
use eavewater::site::system::System;
use eavewater::site::uses::{Amount, Class, Use};

/// The tank.
pub const TANK: PartId = PartId(3);

/// A roof in m² with coefficient and wetting loss in mm, a tank without dead storage in L, a use in L a day.
pub fn system(area: f64, coefficient: f64, wetting: f64, capacity: f64, demand: f64) -> System {
    let (roof, feed, tank, using) = (PartId(1), PartId(2), TANK, PartId(4));
    let height = Length::metres(2.0);
    let mut store = new_part::tank(tank, "Tank".to_owned(), Volume::litres(capacity), height);
    store.shape = Shape::usual(eavewater::site::ShapeKind::Box, Volume::litres(capacity), height);
    store.overflow = height;
    store.outlet = Length::metres(0.0);
    System {
        sections: vec![RoofSection {
            id: roof,
            name: "Roof".to_owned(),
            material: Material::Metal,
            area: Area::square_metres(area),
            runoff_coefficient: Share::of_one(coefficient),
            wetting_loss: Depth::millimetres(wetting),
            outlets: vec![Outlet { feed, share: Share::of_one(1.0) }],
        }],
        feeds: vec![Feed {
            id: feed,
            name: "Feed".to_owned(),
            tank: Some(tank),
            capture: Share::of_one(1.0),
            diverter: None,
        }],
        tanks: vec![store],
        uses: vec![Use {
            id: using,
            name: "House".to_owned(),
            class: Class::House,
            tank: Some(tank),
            amount: Amount::Daily(Flow::litres_a_day(demand)),
            outdoor: false,
            barriers: Vec::new(),
        }],
        ..System::default()
    }
}

/// The whole of a record in tests/data, which has no gaps.
pub fn weather(record: &str) -> Weather {
    let path = format!("{}/tests/data/{record}-daily.csv", env!("CARGO_MANIFEST_DIR"));
    let import = import::read(&std::fs::read(path).unwrap(), None, record).unwrap();
    gaps::usable(&import.record, MissingDays::Fill).unwrap()
}

/// The run from a full tank under the rule θ.
pub fn from_full(system: &System, weather: &Weather, inflow_first: f64) -> (Ledger, Series) {
    run_and_keep(&plan(system).unwrap(), weather, Conduct { start_share: 1.0, inflow_first })
}

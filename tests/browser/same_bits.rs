//! The engine's results here against those that `reckon --days` computed natively just before, bit for bit.

use eavewater::engine::balance::run::Conduct;
use eavewater::engine::balance::series::Inside;
use eavewater::engine::question::answer;
use eavewater::records::exchange::import;
use serde_json::Value;
use wasm_bindgen_test::wasm_bindgen_test;

/// Sites with every kind of part, and what the native program made of them (see the Makefile).
const SITES: &[u8] = include_bytes!("../cases/every-part.json");
const NATIVE: &str = include_str!("../../target/native-days.json");

#[track_caller]
fn same(what: &str, ours: &[f64], native: &Value) {
    let native: Vec<f64> = native.as_array().unwrap().iter().map(|value| value.as_f64().unwrap()).collect();
    assert_eq!(ours.len(), native.len(), "{what}");
    for (day, (ours, native)) in ours.iter().zip(&native).enumerate() {
        assert_eq!(ours.to_bits(), native.to_bits(), "{what}, day {day}: {ours} here, {native} natively");
    }
}

#[wasm_bindgen_test]
fn every_day_is_the_same_as_natively() {
    let native: Value = serde_json::from_str(NATIVE).unwrap();
    let sites = import(SITES).unwrap().sites;
    assert!(!sites.is_empty());
    for (file, native) in sites.iter().zip(native.as_array().unwrap()) {
        let answer = answer(&file.site, file.rain.as_ref().unwrap()).unwrap();
        let (ours, days) = (&answer.series, &native["series"]);
        let inside = Inside::of(&answer.plan, ours, Conduct::from(&file.site.reckoning));
        same("rain", &ours.rain_mm, &days["rain_mm"]);
        for (name, columns) in [
            ("live_l_by_store", &ours.live_l),
            ("spill_l_by_store", &ours.spill_l),
            ("hauled_l_by_store", &ours.hauled_l),
            ("cut_l_by_use", &ours.cut_l),
            ("dead_l_by_tank", &inside.dead_l),
            ("inflow_l_by_tank", &inside.inflow_l),
            ("first_flush_l_by_feed", &inside.first_flush_l),
            ("yield_l_by_use", &ours.yield_l),
            ("shortfall_l_by_use", &ours.shortfall_l),
        ] {
            for (at, column) in columns.iter().enumerate() {
                same(name, column, &days[name][at]);
            }
        }
        assert_eq!(answer.ledger.residual().to_bits(), native["residual"].as_f64().unwrap().to_bits());
        assert_eq!(
            answer.reliability.volumetric.to_bits(),
            native["volumetric_reliability"].as_f64().unwrap().to_bits()
        );
    }
}

//! The weeks ahead of a household whose readings contradict what it entered.

use std::sync::Arc;

use chrono::{Days, NaiveDate};
use eavewater::app::ahead::{Found, Lookout, Sight};
use eavewater::app::model::KeptSite;
use eavewater::app::sketch::{Sketch, SketchRain};
use eavewater::engine::ahead::ask::By;
use eavewater::engine::rain::import;
use eavewater::quantity::{Area, Count, Depth, Flow, Units, Volume};
use eavewater::records::cupboard::{SiteFile, SiteId};
use eavewater::site::diary::{Diary, Entry, EntryId, Level, Told, Water};
use eavewater::site::rain::Rain;
use eavewater::site::trial::Trial;
use eavewater::words::learning;

use crate::workflows::sketch;

fn day(days: u64) -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 10, 16).unwrap() + Days::new(days)
}

/// A house of 120 L a day on the rain of Hyderabad, whose tank was read on some days; of every day the rain was written.
fn house(levels: &[(u64, f64)], rained_mm: impl Fn(u64) -> f64) -> KeptSite {
    let site = Sketch {
        roof: Area::square_metres(96.0),
        people: Count::number(2.0),
        other: Flow::litres_a_day(0.0),
        tank: Volume::litres(20_000.0),
        per_head: Flow::litres_a_day(60.0),
        rain: SketchRain::None,
        ..sketch()
    }
    .site();
    let of = Water::Tank(site.system.tanks[0].id);
    let level = |litres: f64| Told::Level {
        of,
        level: Level::Volume(Volume::litres(litres)),
        undrawn: None,
        joined: Vec::new(),
    };
    let last = levels.last().unwrap().0;
    let told = levels.iter().map(|(at, litres)| (*at, level(*litres)));
    let told = told.chain((1..=last).map(|at| (at, Told::Rain(Depth::millimetres(rained_mm(at))))));
    let entries = (1..).zip(told).map(|(id, (at, told))| Entry {
        id: EntryId(id),
        edited: id,
        date: day(at),
        told,
        note: String::new(),
    });
    let file = std::fs::read("tests/data/hyderabad-daily.csv").unwrap();
    let record = import::read(&file, None, "hyderabad").unwrap().record;
    let diary = Diary::of(entries.collect());
    KeptSite::of_file(SiteId(1), SiteFile { site, rain: Some(Rain::Record(record)), diary, trial: Trial::NONE })
}

fn seen(kept: &KeptSite, by: By, today: u64) -> (Arc<Found>, Lookout) {
    let mut lookout = Lookout::NONE;
    lookout.wishes.by = by;
    lookout.turn_to(Some(kept), day(today));
    while lookout.is_going() {
        lookout.go_on(10_000);
    }
    let Sight::Clear(found) = &lookout.sight else { panic!("{:?}", lookout.sight) };
    (Arc::clone(found), lookout)
}

#[test]
fn water_that_goes_faster_than_entered_lasts_as_long_as_the_readings_say() {
    // 15,000 L on the first day, 222 L less on each dry one: 9,200 L go in 41.4 days.
    let levels: Vec<(u64, f64)> = [0, 7, 14, 21, 28, 35, 41].map(|at| (at, 15_000.0 - 222.0 * at as f64)).into();
    let kept = house(&levels, |_| 0.0);
    let (shown, lookout) = seen(&kept, By::Readings, 41);
    let (entered, _) = seen(&kept, By::Entered, 41);
    let tank = &kept.site.system.tanks[0];
    let live_l = 15_000.0 - 222.0 * 41.0 - tank.dead_storage().get();
    let lasts = |found: &Found| found.ahead.floor.lasts.unwrap() as f64;
    assert!((lasts(&shown) - live_l / 222.0).abs() <= 1.0, "{} {}", lasts(&shown), live_l / 222.0);
    assert!((lasts(&entered) - live_l / 120.0).abs() <= 1.0, "{} {}", lasts(&entered), live_l / 120.0);
    // 222 L for 120 L, within a litre or two by what is read.
    let factors = shown.shown.unwrap();
    assert!((factors.uses - 1.85).abs() < 0.03 && factors.capture == 1.0, "{factors:?}");
    assert_eq!(entered.shown, None);
    let lesson = lookout.lesson.unwrap();
    assert!(learning::sentences(&lesson, &Units::default()).join(" ").contains("leaks included"));
    // Some days after the last reading the house tells of the same water as the weeks ahead begin with.
    let (later, lookout) = seen(&kept, By::Readings, 46);
    let live_l = |by| {
        let stands = KeptSite { by, ..kept.clone() }.stands(day(46)).unwrap();
        stands.live_l.iter().sum::<f64>()
    };
    let [by_readings, entered] = [live_l(lookout.lesson), live_l(None)];
    assert!((by_readings - later.ahead.fan[0].half).abs() < 1e-6, "{by_readings} {}", later.ahead.fan[0].half);
    assert!((entered - by_readings - 5.0 * 120.0 * (factors.uses - 1.0)).abs() < 1e-6, "{entered} {by_readings}");
    // Who entered what is used is told of nothing.
    let right: Vec<(u64, f64)> = levels.iter().map(|(at, _)| (*at, 15_000.0 - 120.0 * *at as f64)).collect();
    assert_eq!(seen(&house(&right, |_| 0.0), By::Readings, 41).0.shown, None);
}

#[test]
fn rain_that_came_isnt_missed_where_more_is_used() {
    // 222 L a day go for 120, and rain on the 20th day brings what the roof gives, or nothing.
    let unaccounted = |fell_mm: f64, caught: bool| {
        let rained = |at: u64| if at == 20 { fell_mm } else { 0.0 };
        let dry = house(&[(0, 0.0), (1, 0.0)], rained);
        let (section, feed) = (&dry.site.system.sections[0], &dry.site.system.feeds[0]);
        let runs_mm = fell_mm - section.wetting_loss.get();
        let diverted_l = feed.diverter.as_ref().map_or(0.0, |diverter| diverter.volume.get());
        let came_l = 96.0 * section.runoff_coefficient.get() * runs_mm * feed.capture.get() - diverted_l;
        let level = |at: u64| 12_000.0 - 222.0 * at as f64 + if at >= 20 && caught { came_l } else { 0.0 };
        let levels = [0, 4, 8, 12, 16, 21, 25, 29, 33, 37, 41].map(|at| (at, level(at)));
        seen(&house(&levels, rained), By::Readings, 41).1.lesson.unwrap().unaccounted
    };
    // Over four weeks 2,900 L more went than was entered: more than 20 mm bring, and no sign of a blocked screen.
    assert!(!unaccounted(20.0, true));
    assert!(!unaccounted(60.0, true));
    assert!(unaccounted(60.0, false));
}

#[test]
fn a_last_reading_that_doesnt_fit_is_told_on_the_house() {
    let levels = |last_l: f64| -> Vec<(u64, f64)> {
        let days = [0, 7, 14, 21, 28, 35, 41].map(|at| (at, 15_000.0 - 120.0 * at as f64));
        days.into_iter().chain([(42, last_l)]).collect()
    };
    let told = |last_l: f64| {
        let lesson = seen(&house(&levels(last_l), |_| 0.0), By::Readings, 42).1.lesson.unwrap();
        learning::in_lines(&lesson).concat()
    };
    assert!(told(15_700.0).contains("doesn't fit the days around it"), "{}", told(15_700.0));
    assert!(!told(9_960.0).contains("fit"), "{}", told(9_960.0));
}

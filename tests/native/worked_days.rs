//! Small systems over a few days, worked by hand: the figures stand beside their arithmetic.

use chrono::NaiveDate;
use eavewater::engine::balance::ledger::Ledger;
use eavewater::engine::balance::plan::plan;
use eavewater::engine::balance::run::Conduct;
use eavewater::engine::balance::series::{Inside, Series, run_and_keep};
use eavewater::engine::measures::years::years;
use eavewater::engine::rain::weather::{Origin, Weather};
use eavewater::quantity::{Days, Depth, Flow, Length, Money, Share, Volume};
use eavewater::site::feed::Feed;
use eavewater::site::hauling::Hauling;
use eavewater::site::part::PartId;
use eavewater::site::pump::Pump;
use eavewater::site::roof::Outlet;
use eavewater::site::system::System;
use eavewater::site::tank::{Cover, OverflowTo};
use eavewater::site::trunk::TrunkLine;
use eavewater::site::uses::Amount;

use crate::one_tank;

const ROOF: usize = 0;
const TANK: PartId = PartId(3);
const SECOND: PartId = PartId(30);

/// 100 m² that give a litre each for a mm, a box of 1,000 L and 2 m, 100 L a day.
fn house() -> System {
    one_tank::system(100.0, 1.0, 0.0, 1_000.0, 100.0)
}

/// The house with a second box of 1,000 L and 2 m.
fn two_tanks() -> System {
    let mut system = house();
    let mut second = system.tanks[0].clone();
    second.id = SECOND;
    second.name = "Second".to_owned();
    system.tanks.push(second);
    system
}

fn from(first: (i32, u32, u32), depths_mm: &[f64]) -> Weather {
    Weather {
        dates: NaiveDate::from_ymd_opt(first.0, first.1, first.2).unwrap().iter_days().take(depths_mm.len()).collect(),
        depths_mm: depths_mm.to_vec(),
        filled_days: 0,
        left_out_years: Vec::new(),
        origin: Origin::Measured,
    }
}

/// The run from so full a start, yield after spillage, from 1 June on.
pub fn days(system: &System, start_share: f64, depths_mm: &[f64]) -> (Ledger, Series) {
    let (ledger, series) = run_and_keep(
        &plan(system).unwrap(),
        &from((2001, 6, 1), depths_mm),
        Conduct { start_share, inflow_first: 0.0 },
    );
    assert!(ledger.residual().abs() < 1e-12);
    (ledger, series)
}

/// What else went on in that run.
fn inside(system: &System, start_share: f64, series: &Series) -> Inside {
    Inside::of(&plan(system).unwrap(), series, Conduct { start_share, inflow_first: 0.0 })
}

#[track_caller]
fn check(ours: &[f64], by_hand: &[f64]) {
    assert_eq!(ours.len(), by_hand.len());
    for (day, (ours, by_hand)) in ours.iter().zip(by_hand).enumerate() {
        assert!((ours - by_hand).abs() < 1e-6, "day {day}: {ours} is not {by_hand}");
    }
}

#[test]
fn shares_screens_and_what_no_feed_takes() {
    let mut system = house();
    system.feeds[0].capture = Share::of_one(0.8);
    system.sections[ROOF].outlets[0].share = Share::of_one(0.75);
    let (ledger, series) = days(&system, 0.0, &[4.0]);
    // 400 L run off; 300 reach the feed, 100 nothing; the screen loses 60; 240 reach the tank.
    let total = ledger.total();
    check(&[total.roof_rain_l, total.uncollected_l, total.escaped_l, total.inflow_l], &[400.0, 100.0, 60.0, 240.0]);
    check(&series.live_l[0], &[240.0]);
}

#[test]
fn a_section_can_run_to_two_feeds() {
    let mut system = two_tanks();
    let other = PartId(20);
    let feed = Feed { id: other, name: "Other".to_owned(), tank: Some(SECOND), ..system.feeds[0].clone() };
    system.feeds.push(feed);
    let share = |feed, share| Outlet { feed, share: Share::of_one(share) };
    system.sections[ROOF].outlets = vec![share(system.feeds[0].id, 0.25), share(other, 0.75)];
    let (_, series) = days(&system, 0.0, &[4.0]);
    let inside = inside(&system, 0.0, &series);
    check(&[inside.inflow_l[0][0], inside.inflow_l[1][0]], &[100.0, 300.0]);
}

#[test]
fn uses_are_served_in_their_order() {
    let mut system = house();
    let mut second = system.uses[0].clone();
    second.id = PartId(40);
    second.amount = Amount::Daily(Flow::litres_a_day(50.0));
    system.uses.push(second);
    // 120 L are there: the first use takes its 100, the second the 20 that are left.
    let (_, series) = days(&system, 0.12, &[0.0]);
    check(&[series.yield_l[0][0], series.yield_l[1][0], series.house_shortfall_l[0]], &[100.0, 20.0, 30.0]);
    system.uses.swap(0, 1);
    let (_, series) = days(&system, 0.12, &[0.0]);
    check(&[series.yield_l[0][0], series.yield_l[1][0], series.house_shortfall_l[0]], &[50.0, 70.0, 30.0]);
}

#[test]
fn a_day_without_an_outdoor_use_is_no_dry_day_of_the_house() {
    let mut system = house();
    let mut garden = system.uses[0].clone();
    garden.id = PartId(40);
    garden.outdoor = true;
    system.uses.push(garden);
    let (_, series) = days(&system, 0.15, &[0.0]);
    assert_eq!(series.dry_days().collect::<Vec<_>>(), [false]);
    check(&[series.shortfall_l[1][0]], &[50.0]);
    // Where every use is outdoors they all count.
    system.uses[0].outdoor = true;
    let (_, series) = days(&system, 0.15, &[0.0]);
    assert_eq!(series.dry_days().collect::<Vec<_>>(), [true]);
}

#[test]
fn a_monthly_amount_changes_with_the_month() {
    let mut system = house();
    system.uses[0].amount = Amount::Monthly(std::array::from_fn(|month| Flow::litres_a_day(10.0 * (month + 1) as f64)));
    let weather = from((2001, 6, 29), &[0.0; 4]);
    let plan = plan(&system).unwrap();
    let (_, series) = run_and_keep(&plan, &weather, Conduct { start_share: 1.0, inflow_first: 0.0 });
    // 29 and 30 June at 60 L, 1 and 2 July at 70 L.
    check(&series.yield_l[0], &[60.0, 60.0, 70.0, 70.0]);
}

#[test]
fn dead_storage_fills_first_and_stays_behind() {
    let mut system = house();
    system.tanks[0].outlet = Length::metres(0.2);
    // 0.2 of 2 m are 100 L. Of 150 L that come, 100 fill it, 50 are live; they are drawn the day after.
    let (_, series) = days(&system, 0.0, &[1.5, 0.0, 0.0]);
    check(&inside(&system, 0.0, &series).dead_l[0], &[100.0, 100.0, 100.0]);
    check(&series.live_l[0], &[50.0, 0.0, 0.0]);
    check(&series.yield_l[0], &[0.0, 50.0, 0.0]);
}

#[test]
fn spill_goes_on_to_the_next_tank_the_same_day() {
    let mut system = two_tanks();
    system.tanks[0].overflow_to = OverflowTo::Tank(SECOND);
    system.tanks[1].overflow_to = OverflowTo::Garden;
    // From empty 2,300 L come: 1,000 stay, 1,300 spill to the second, which keeps 1,000 and spills 300 to the garden.
    let (ledger, series) = days(&system, 0.0, &[23.0]);
    let plan = plan(&system).unwrap();
    let by_tank = |tank: usize| plan.stores.iter().position(|store| store.tanks == [tank]).unwrap();
    check(&[series.spill_l[by_tank(0)][0], series.spill_l[by_tank(1)][0]], &[1_300.0, 300.0]);
    check(&[ledger.total().spill_l, ledger.total().spill_to_garden_l], &[300.0, 300.0]);
    // What the second took in has not left the house, in the year either.
    check(&[years(&plan, &series, &[])[0].spill_l], &[300.0]);
}

#[test]
fn joined_tanks_draw_down_together_and_strand_what_stands_above_the_lower_rim() {
    let mut system = two_tanks();
    system.tanks[1].floor = Length::metres(0.5);
    system.trunk_lines.push(TrunkLine {
        id: PartId(50),
        name: "Trunk line".to_owned(),
        ends: [Some(TANK), Some(SECOND)],
        open: true,
    });
    // 500 L a metre each. The lower rim is at 2 m: 1,000 L of the first and 1.5 m, 750 L, of the second are live; half a
    // metre of the second, 250 L, is stranded. 2,000 L come: 250 spill.
    let plan = plan(&system).unwrap();
    check(&[plan.stores[0].joined.live_capacity_l], &[1_750.0]);
    check(&plan.stores[0].joined.stranded_l, &[0.0, 250.0]);
    let (ledger, series) = days(&system, 0.0, &[20.0, 0.0]);
    check(&[ledger.total().spill_l], &[250.0]);
    // The day after, 100 L less: 1,650 L stand at 1.9 m, with 950 L in the first and 700 L in the second.
    let joined = &plan.stores[0].joined;
    check(&joined.live_of_each(joined.surface_m(series.live_l[0][1])).collect::<Vec<_>>(), &[950.0, 700.0]);
    // The valve shut, they are two: the first spills 1,000 L by itself, the second stays empty.
    system.trunk_lines[0].open = false;
    let (ledger, _) = days(&system, 0.0, &[20.0]);
    check(&[ledger.total().spill_l], &[1_000.0]);
}

#[test]
fn level_rims_spill_in_equal_shares() {
    let mut system = two_tanks();
    system.trunk_lines.push(TrunkLine {
        id: PartId(50),
        name: "Trunk line".to_owned(),
        ends: [Some(TANK), Some(SECOND)],
        open: true,
    });
    system.tanks[1].overflow_to = OverflowTo::Garden;
    let (ledger, _) = days(&system, 0.0, &[24.0]);
    check(&[ledger.total().spill_l, ledger.total().spill_to_garden_l], &[400.0, 200.0]);
}

#[test]
fn a_pump_runs_from_its_start_level_to_its_stop_level() {
    let mut system = two_tanks();
    system.feeds[0].tank = Some(SECOND);
    system.pumps.push(Pump {
        id: PartId(60),
        name: "Pump".to_owned(),
        from: Some(SECOND),
        to: Some(TANK),
        start: Share::of_one(0.3),
        stop: Share::of_one(0.6),
        limit: Flow::litres_a_day(200.0),
    });
    // Both start with 350 L; the house takes 100 L a day from the first tank, and none comes to the second.
    // Day 0: 350 is not below 300: no pumping; 250 left. Day 1: 250 < 300: 200 lifted, 450, 100 used: 350.
    // Day 2: still running towards 600: only the 150 left in the cistern: 500, less 100: 400. Day 3: nothing to lift: 300.
    let (ledger, series) = days(&system, 0.35, &[0.0; 4]);
    let lowered = plan(&system).unwrap();
    let store = |tank: usize| lowered.stores.iter().position(|store| store.tanks == [tank]).unwrap();
    check(&series.live_l[store(0)], &[250.0, 350.0, 400.0, 300.0]);
    check(&series.live_l[store(1)], &[350.0, 150.0, 0.0, 0.0]);
    check(&[ledger.total().pumped_l], &[350.0]);
    // With a full cistern and no limit to speak of it stops at 600 L and waits until the level is below 300 L again.
    system.pumps[0].limit = Flow::litres_a_day(10_000.0);
    system.uses[0].amount = Amount::Daily(Flow::litres_a_day(150.0));
    let weather = from((2001, 6, 1), &[20.0, 0.0, 0.0, 0.0]);
    let (_, series) = run_and_keep(&plan(&system).unwrap(), &weather, Conduct { start_share: 0.2, inflow_first: 0.0 });
    // Day 0 the cistern holds 200 before the rain comes: all of it is lifted: 400, less 150: 250.
    // Day 1 it is full: 250 → 600, less 150: 450. Day 2: 450 is not below 300, and it had stopped: 300. Day 3: 150.
    check(&series.live_l[store(0)], &[250.0, 450.0, 300.0, 150.0]);
}

#[test]
fn a_load_comes_after_its_notice_and_is_paid_whole() {
    let mut system = house();
    system.hauling.push(Hauling {
        id: PartId(70),
        name: "Truck".to_owned(),
        tank: Some(TANK),
        trigger: Share::of_one(0.25),
        load: Volume::litres(900.0),
        price: Money::coins(80.0),
        notice: Days::from_days(2.0),
    });
    // From 300 L, 100 a day: 200 after day 0. Day 1 begins below 250: ordered. Day 3: it comes to 0 L: 900, less 100.
    let (ledger, series) = days(&system, 0.3, &[0.0; 4]);
    check(&series.live_l[0], &[200.0, 100.0, 0.0, 800.0]);
    check(&series.hauled_l[0], &[0.0, 0.0, 0.0, 900.0]);
    assert_eq!((ledger.loads, ledger.hauling_cost), (1, 80.0));
    // Without notice it comes at once; what finds no room is lost to the household, not to the bill.
    system.hauling[0].notice = Days::from_days(0.0);
    let (ledger, series) = days(&system, 0.2, &[0.0]);
    check(&series.hauled_l[0], &[800.0]);
    assert_eq!((ledger.loads, ledger.hauling_cost), (1, 80.0));
}

#[test]
fn leaks_sun_and_rain_on_an_open_tank() {
    let mut system = house();
    system.tanks[0].leak = Flow::litres_a_day(20.0);
    system.tanks[0].cover = Cover::Uncovered { evaporation: [Depth::millimetres(10.0); 12] };
    // The box of 1,000 L and 2 m has 0.5 m²: 4 mm of rain on it are 2 L, 10 mm of evaporation 5 L. Of 500 L: 400 L from the
    // roof and 2 L come, 100 are used, 20 leak, 5 evaporate: 777.
    let (ledger, series) = days(&system, 0.5, &[4.0]);
    check(&series.live_l[0], &[777.0]);
    let total = ledger.total();
    check(&[total.open_rain_l, total.leak_l, total.evaporation_l], &[2.0, 20.0, 5.0]);
}

#[test]
fn a_tank_that_nothing_fills_begins_empty_however_full_the_house_begins() {
    // The second tank has no roof, pump, truck or overflow that leads to it: of 2,000 L half stand in the first.
    let (ledger, series) = days(&two_tanks(), 1.0, &[0.0, 0.0]);
    assert!((ledger.stored_first_l - 1_000.0).abs() < 1e-9);
    assert_eq!(series.house_shortfall_l, [0.0, 0.0]);
    let mut joined = two_tanks();
    joined.trunk_lines.push(TrunkLine {
        id: PartId(40),
        name: "Line".to_owned(),
        ends: [Some(TANK), Some(SECOND)],
        open: true,
    });
    assert!((days(&joined, 1.0, &[0.0]).0.stored_first_l - 2_000.0).abs() < 1e-9);
}

//! Gardens by the weather and rationing over a few days, worked by hand: the figures stand beside their arithmetic.

use eavewater::engine::balance::plan::plan;
use eavewater::engine::measures::dry_runs::dry_runs;
use eavewater::engine::measures::reliability::reliability;
use eavewater::engine::measures::years::years;
use eavewater::quantity::{Area, Count, Days, Flow, Length, Money, Share, Volume};
use eavewater::site::climate::Climate;
use eavewater::site::findings::{Finding, findings};
use eavewater::site::garden::Garden;
use eavewater::site::hauling::Hauling;
use eavewater::site::part::PartId;
use eavewater::site::rationing::{Cut, RationStep};
use eavewater::site::system::System;
use eavewater::site::uses::Amount;

use crate::one_tank;
use crate::worked_days::days;

const USING: PartId = PartId(4);
const SECOND: PartId = PartId(40);
const TANK: PartId = PartId(3);

/// A tank of 1,000 L that no roof fills, and a bed of 10 m² as its only use: K_c 1.2 in 5 mm of reference
/// evapotranspiration: 6 mm a day. Roots of 0.5 m in a soil that holds 0.2: 100 mm in all, 0.12 of it, 12 mm, readily
/// available. Four fifths of the water reach the roots: 12.5 L for a mm.
fn bed() -> System {
    let mut system = one_tank::system(0.0, 1.0, 0.0, 1_000.0, 0.0);
    system.climate = Some(Climate::ReferenceEt { mm_a_day: [5.0; 12] });
    system.uses[0].amount = Amount::Garden(Garden {
        area: Area::square_metres(10.0),
        crop_coefficient: Count::number(1.2),
        available_water: Share::of_one(0.2),
        root_depth: Length::metres(0.5),
        depletion: Share::of_one(0.12),
        efficiency: Share::of_one(0.8),
        ..Garden::default()
    });
    system
}

#[track_caller]
fn check(ours: &[f64], by_hand: &[f64]) {
    assert_eq!(ours.len(), by_hand.len());
    for (day, (ours, by_hand)) in ours.iter().zip(by_hand).enumerate() {
        assert!((ours - by_hand).abs() < 1e-9, "{day}: {ours} is not {by_hand}");
    }
}

#[test]
fn a_bed_is_watered_once_the_soil_is_depleted_as_far_as_plants_bear() {
    // Day 0: from field capacity the bed drinks 6 of 12 mm; day 1 the other 6; from day 2 on each day's 6 mm, 75 L, are
    // watered and it stays at 12.
    let (ledger, series) = days(&bed(), 1.0, &[0.0; 5]);
    check(&series.yield_l[0], &[0.0, 0.0, 75.0, 75.0, 75.0]);
    let tally = ledger.gardens[0];
    check(&[tally.watered_mm, tally.drunk_mm, tally.depletion_last_mm], &[18.0, 30.0, 12.0]);
    assert_eq!((tally.watered_days, tally.thirsty_days), (3, 0));
}

#[test]
fn the_days_rain_fills_the_soil_first_and_what_is_too_much_percolates() {
    // Depleted by 6, 12 mm after two dry days. Day 2: 4 mm of rain leave 8; the bed would come to 14, 2 above 12: 2 mm,
    // 25 L, are watered, and it stands at 12. Day 3: 20 mm fill 12 and 8 percolate; it drinks 6. Day 4: 1 mm: from 5
    // to 11, nothing to water. Day 5: from 11 it would come to 17: 5 mm, 62.5 L.
    let (ledger, series) = days(&bed(), 1.0, &[0.0, 0.0, 4.0, 20.0, 1.0, 0.0]);
    check(&series.yield_l[0], &[0.0, 0.0, 25.0, 0.0, 0.0, 62.5]);
    let tally = ledger.gardens[0];
    check(&[tally.rain_mm, tally.percolated_mm, tally.watered_mm, tally.drunk_mm], &[17.0, 8.0, 7.0, 36.0]);
}

#[test]
fn without_water_the_bed_suffers_and_what_it_missed_is_not_asked_for_twice() {
    // An empty tank. Days 0 to 1 to 12 mm; day 2: nothing comes of the 75 L, it still drinks 6 (K_s is 1 at 12): 18.
    // Day 3: K_s = (100 − 18)/(100 − 12) = 0.931818…: it drinks 5.590909…, to 23.590909…. Each day lacks 75 L, no more.
    let (ledger, series) = days(&bed(), 0.0, &[0.0; 4]);
    check(&series.shortfall_l[0], &[0.0, 0.0, 75.0, 75.0]);
    let drunk = 6.0 * 82.0 / 88.0;
    let tally = ledger.gardens[0];
    check(&[tally.depletion_last_mm, tally.drunk_mm, tally.potential_mm], &[18.0 + drunk, 18.0 + drunk, 24.0]);
    assert_eq!(tally.thirsty_days, 1);
}

#[test]
fn out_of_season_bare_soil_dries_unwatered() {
    // Grown in July only, in June: 0.3 of 5 mm a day from bare soil, nothing watered however long.
    let mut system = bed();
    let Amount::Garden(garden) = &mut system.uses[0].amount else { panic!() };
    (garden.grows_from, garden.grows_to) = (6, 6);
    let (ledger, series) = days(&system, 1.0, &[0.0; 20]);
    check(&series.yield_l[0], &[0.0; 20]);
    // 8 days to 12 mm; the ninth still 1.5 (K_s is 1 at 12).
    assert!((ledger.gardens[0].depletion_last_mm - 30.0).abs() < 3.0);
    assert!(ledger.gardens[0].depletion_last_mm < 30.0);
    assert_eq!(ledger.gardens[0].thirsty_days, 0);
}

#[test]
fn a_garden_needs_a_climate_and_a_climate_that_can_be() {
    let mut system = bed();
    assert_eq!(findings(&system), []);
    system.climate = None;
    assert_eq!(findings(&system), [Finding::GardenWithoutClimate(USING)]);
    system.climate = Some(Climate::Temperatures { latitude: 40.0, least_c: [9.0; 12], greatest_c: [8.0; 12] });
    assert!(matches!(findings(&system)[..], [Finding::ClimateFault(USING, _)]));
    // Without a garden nobody asks.
    system.uses[0].amount = Amount::Daily(Flow::litres_a_day(1.0));
    assert_eq!(findings(&system), []);
}

/// 100 L a day for the house and 50 L for something else, from 1,000 L.
fn two_uses() -> System {
    let mut system = one_tank::system(0.0, 1.0, 0.0, 1_000.0, 100.0);
    let mut second = system.uses[0].clone();
    second.id = SECOND;
    second.amount = Amount::Daily(Flow::litres_a_day(50.0));
    system.uses.push(second);
    system
}

fn step(number: u32, below: f64, cuts: &[(PartId, f64)]) -> RationStep {
    RationStep {
        id: PartId(80 + number),
        name: format!("Step {number}"),
        tank: Some(TANK),
        below: Share::of_one(below),
        cuts: cuts.iter().map(|(using, share)| Cut { using: *using, share: Share::of_one(*share) }).collect(),
    }
}

#[test]
fn steps_cut_what_they_name_while_the_store_is_low() {
    let mut system = two_uses();
    system.rationing = vec![step(1, 0.6, &[(SECOND, 0.5)]), step(2, 0.4, &[(SECOND, 0.2), (USING, 0.3)])];
    // Day 0 begins at 700 L, not below 600: 150 drawn. Day 1 at 550: step 1: the second use takes 25: 125. Day 2 at 425:
    // the same: 300. Day 3 at 300, below 400: both steps; the second use keeps its deeper cut, the house takes 70: 95: 205.
    let (ledger, series) = days(&system, 0.7, &[0.0; 4]);
    check(&series.live_l[0], &[550.0, 425.0, 300.0, 205.0]);
    check(&series.cut_l[1], &[0.0, 25.0, 25.0, 25.0]);
    check(&series.cut_l[0], &[0.0, 0.0, 0.0, 30.0]);
    assert_eq!(series.rationed, [[false, true, true, true], [false, false, false, true]]);
    // Step 1 counts all cuts of the second use, its cut being the deepest; step 2 that of the house.
    let [first, second] = ledger.rations[..] else { panic!() };
    assert_eq!((first.days, second.days), (3, 1));
    check(&[first.cut_l, second.cut_l, ledger.total().cut_l], &[75.0, 30.0, 105.0]);
    // No dry day, but 105 of 600 L wanted were not there to be had.
    assert!(series.dry_days().all(|dry| !dry));
    check(&[reliability(&ledger.total(), &series).volumetric], &[495.0 / 600.0]);
    check(&[reliability(&ledger.total(), &series).time], &[1.0]);
    let year = &years(&plan(&system).unwrap(), &series, &dry_runs(&series.dates, &series.house_shortfall_l))[0];
    assert_eq!((year.rationed_days, year.cut_l), (3, 105.0));
}

#[test]
fn a_bed_that_is_rationed_drinks_less_in_the_end() {
    // Cut by half from the first day: from day 2 on 37.5 L of the 75; at K_s = 1/2 it would hold there.
    let mut system = bed();
    system.tanks[0].set_capacity(Volume::litres(100_000.0));
    system.rationing = vec![step(1, 1.0, &[(USING, 0.5)])];
    let (ledger, series) = days(&system, 0.9, &[0.0; 365]);
    check(&series.yield_l[0][..4], &[0.0, 0.0, 37.5, 37.5]);
    check(&[ledger.rations[0].cut_l], &[363.0 * 37.5]);
    // K_s = (100 − D)/88 = 1/2 at D = 56 before drinking: 56 + 3 at the end of a day that was watered 3 mm.
    assert!((ledger.gardens[0].depletion_last_mm - 59.0).abs() < 1e-6);
}

#[test]
fn loads_and_their_cost_are_told_year_by_year() {
    let mut system = two_uses();
    system.hauling.push(Hauling {
        id: PartId(70),
        name: "Truck".to_owned(),
        tank: Some(TANK),
        trigger: Share::of_one(0.2),
        load: Volume::litres(600.0),
        price: Money::coins(80.0),
        notice: Days::from_days(0.0),
    });
    // 150 L a day from a full tank on 1 June: below 200 L as day 6 begins (1,000 − 6 × 150 = 100): a load of 600; four
    // days on 100 L again, and so on: of days 6, 10, 14, … 52 are before day 214, 1 January.
    let (ledger, series) = days(&system, 1.0, &[0.0; 214 + 31]);
    let told = years(&plan(&system).unwrap(), &series, &dry_runs(&series.dates, &series.house_shortfall_l));
    assert_eq!((told[0].year, told[0].loads, told[0].hauling_cost), (2001, 52, 52.0 * 80.0));
    assert_eq!(told.iter().map(|year| year.loads).sum::<usize>(), ledger.loads);
    assert_eq!(told.iter().map(|year| year.hauling_cost).sum::<f64>(), ledger.hauling_cost);
    assert_eq!(series.loads[0].day, 6);
    assert_eq!(series.loads[1].day, 10);
}

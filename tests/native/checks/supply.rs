use chrono::Datelike;
use eavewater::engine::checks::supply::{self, Curve};
use eavewater::engine::checks::{Asked, Figure, Subject, Verdict, of_part, water};
use eavewater::engine::question::answer;
use eavewater::quantity::{Area, Customary, Length, Units};
use eavewater::site::climate::Climate;
use eavewater::site::demo;
use eavewater::site::details::{Detail, Details};
use eavewater::site::garden::Garden;
use eavewater::site::household::Site;
use eavewater::site::new_part;
use eavewater::site::rain::Rain;
use eavewater::site::system::{Part, PartKind};
use eavewater::site::uses::Amount;
use eavewater::words::checks::said;
use proptest::prelude::*;

use super::{check, enter, house, near};

const GALLON: f64 = 3.785_411_784;
const FOOT: f64 = 0.3048;
const PSI: f64 = 6.894_757_293;

#[test]
fn peak_flow_is_read_off_the_codes_table() {
    // National Standard Plumbing Code, Table B.5.4 (Hunter's curve, flush tanks): fixture units and gal/min.
    for (units, gallons) in
        [(3.0, 3.0), (5.0, 4.5), (8.0, 7.0), (12.0, 9.0), (14.0, 10.5), (120.0, 49.0), (200.0, 65.0), (1000.0, 210.0)]
    {
        near(supply::peak_l_min(units), gallons * GALLON, 1e-12);
    }
    assert!(supply::peak_l_min(0.0) == 0.0);
    // The same code's units (from memory): a toilet, a basin, a shower, a washing machine (2.5 + 1 + 2 + 4) and a kitchen
    // sink (1.5) are 11, for which its table has 8.5 gal/min.
    let site = house(|_| ());
    let found = check(&site, site.system.tanks[0].id, Subject::PeakFlow);
    near(found.figure(Figure::FixtureUnits), 11.0, 1e-12);
    near(found.figure(Figure::PeakFlow), 8.5 * GALLON, 1e-12);
}

#[test]
fn net_positive_suction_head_is_that_of_the_handbook() {
    // Crane TP-410 example 7.32: tank at 5 psig, water of 60 °F (62.364 lb/ft³, 0.256 psi), lift 25 ft, loss 6 ft:
    // 13.887 ft.
    let density = 62.364 * 16.018_463;
    let found = supply::npsh_m((14.696 + 5.0) * PSI, 0.256 * PSI, density, 25.0 * FOOT, 6.0 * FOOT);
    near(found, 13.887 * FOOT, 2e-3);
    assert!((water::vapour_kpa(15.56) / PSI - 0.256).abs() < 0.001);
}

#[test]
fn power_is_that_of_the_handbook() {
    // Crane TP-410 example 7.15: 100 gal/min of water (70 °F) against 421 ft at 70 %: 15.2 hp.
    let watts = supply::power_w(100.0 * GALLON / 60_000.0, 421.0 * FOOT, 998.0, 0.7);
    near(watts / 745.7, 15.2, 3e-3);
}

#[test]
fn a_vessel_gives_what_the_acceptance_factors_say() {
    // Acceptance factors of pressure vessels charged to the lower pressure, 30/50 psi 0.31 and 40/60 psi 0.27 (makers'
    // tables to two digits, from memory), less the 2 psi of charge that is missing here.
    for (low, high, factor) in [(30.0, 50.0, 0.31), (40.0, 60.0, 0.27)] {
        let found = supply::drawdown_l(100.0, low * PSI, high * PSI, 14.696 * PSI);
        near(found, 100.0 * factor * (low - 2.03 + 14.696) / (low + 14.696), 0.005 / factor);
    }
}

#[test]
fn the_duty_point_is_where_both_curves_meet() {
    // Worked apart: the pump makes 40 − 2·10⁷ Q², the pipes ask 10 + 10⁷ Q²; they meet at Q = √(30 ÷ 3·10⁷) = 1.0 L/s,
    // 20 m.
    let pump = |flow: f64| 40.0 - 2e7 * flow * flow;
    let curve = Curve { points: [(0.0, 40.0), (0.7e-3, pump(0.7e-3)), (1.3e-3, pump(1.3e-3))] };
    let duty = curve.duty(|flow| 10.0 + 1e7 * flow * flow).unwrap();
    near(duty, 1e-3, 1e-9);
    near(curve.head_m(duty), 20.0, 1e-9);
    assert_eq!(curve.duty(|_| 41.0), None);
}

#[test]
fn a_pumps_curve_never_rises_on_its_way() {
    let l_min = 1.0 / 60_000.0;
    let curve = |points: [(f64, f64); 3]| Curve { points: points.map(|(flow, head)| (flow * l_min, head)) };
    // A parabola through these would stand at 47 m at 15 L/min, and at −5 m at 40: straight it is.
    let (bulging, sagging) =
        (curve([(0.0, 42.0), (35.0, 41.0), (60.0, 12.0)]), curve([(0.0, 42.0), (10.0, 20.0), (60.0, 12.0)]));
    near(bulging.head_m(15.0 * l_min), 42.0 - 15.0 / 35.0, 1e-9);
    near(sagging.head_m(38.0 * l_min), 20.0 - 8.0 * 28.0 / 50.0, 1e-9);
    for curve in [bulging, sagging, curve([(0.0, 42.0), (35.0, 32.0), (60.0, 12.0)])] {
        let heads: Vec<f64> = (0..=120).map(|half| curve.head_m(f64::from(half) * 0.5 * l_min)).collect();
        assert!(heads.is_sorted_by(|one, next| *next <= one + 0.01), "{heads:?}");
    }
}

#[test]
fn a_supply_answers_for_its_tap_its_suction_its_vessel_and_its_power() {
    let mut site = house(|_| ());
    let tank = site.system.tanks[0].id;
    let tap = check(&site, tank, Subject::HighestTap);
    assert!(tap.figure(Figure::TapClean) > tap.margin.unwrap().has, "clean filters leave more");
    enter(&mut site, Some(tank), Detail::HighestTap, 45.0);
    assert_eq!(check(&site, tank, Subject::HighestTap).verdict, Verdict::Fails);
    enter(&mut site, Some(tank), Detail::MidHead, 50.0);
    assert_eq!(check(&site, tank, Subject::HighestTap).verdict, Verdict::Outside);
    // Lift of 8.5 m at 2,000 m above the sea, where FAO-56 has 79.8 kPa (8.15 m of water): nothing is left.
    enter(&mut site, Some(tank), Detail::PumpHeight, 8.6);
    enter(&mut site, None, Detail::Altitude, 2000.0);
    let suction = check(&site, tank, Subject::Suction);
    assert!(suction.margin.unwrap().has < 0.0 && suction.fails());
    // 84 L a day (8 and 20 L for three) against 340 kPa and the lift of 8.5 m, 83.3 kPa, at 30 %: 84 · 423.3 ÷ 0.3 ÷ 3600
    // = 32.9 Wh; at 3 h of sun and 70 % 15.7 W; for two days at half discharge 132 Wh, 11.0 Ah at 12 V.
    let power = check(&site, tank, Subject::Power);
    for (figure, value) in
        [(Figure::EnergyADay, 32.93), (Figure::Panel, 15.68), (Figure::Battery, 131.7), (Figure::AmpereHours, 10.98)]
    {
        near(power.figure(figure), value, 2e-3);
    }
}

#[test]
fn the_highest_tap_is_judged_before_the_pump_starts() {
    // By hand, pipe so wide that nothing is lost in it: 200 kPa less 9.80665 · 0.9997 kPa a metre (10 °C) over 5 m is 150.98;
    // at 9 °C to 15 °C water weighs within 0.1 % of that.
    let mut site = house(|_| ());
    let tank = site.system.tanks[0].id;
    for (detail, value) in [
        (Detail::PipeBore, 0.5),
        (Detail::PumpHeight, 0.0),
        (Detail::HighestTap, 5.0),
        (Detail::FilterFouled, 30.0),
        (Detail::CutIn, 200.0),
        (Detail::ShutHead, 60.0),
    ] {
        enter(&mut site, Some(tank), detail, value);
    }
    let margin = |site: &Site| check(site, tank, Subject::HighestTap).margin.unwrap().has;
    near(margin(&site), 150.98 - 30.0, 2e-3);
    enter(&mut site, Some(tank), Detail::CutIn, 140.0);
    near(margin(&site), 90.98 - 30.0, 4e-3);
    // Without a vessel the pump runs whenever a tap is open.
    enter(&mut site, Some(tank), Detail::Vessel, 0.0);
    assert!(margin(&site) > 150.0);
}

#[test]
fn a_vessel_is_as_large_as_its_pump_is_strong() {
    let mut site = house(|_| ());
    let tank = site.system.tanks[0].id;
    let wants = |site: &Site| check(site, tank, Subject::Vessel).margin.unwrap().wants;
    let before = wants(&site);
    // Twice the flow at the same heads: twice the water between two starts.
    for (detail, value) in [(Detail::MidFlow, 70.0), (Detail::EndFlow, 120.0)] {
        enter(&mut site, Some(tank), detail, value);
    }
    near(wants(&site), 2.0 * before, 1e-9);
    // 42 m of water are 412 kPa: a pump that should stop at 600 runs for ever.
    enter(&mut site, Some(tank), Detail::CutOut, 600.0);
    let vessel = check(&site, tank, Subject::Vessel);
    assert!(vessel.fails() && vessel.margin.unwrap().of == Figure::DutyHead);
}

#[test]
fn no_pump_is_checked_where_nobody_said_that_there_is_one() {
    let mut site = house(|site| site.system.details = Details::default());
    let tank = site.system.tanks[0].id;
    let of_pump = |site: &Site| {
        let asked = Asked { site, rain: None, answer: None, read: None, today: chrono::NaiveDate::default() };
        let subjects = [Subject::HighestTap, Subject::Suction, Subject::Vessel, Subject::Power];
        of_part(&asked, tank).iter().filter(|check| subjects.contains(&check.subject)).count()
    };
    assert_eq!(of_pump(&site), 0);
    let using = site.system.uses[0].id;
    assert!(check(&site, using, Subject::Gravity).margin.is_some(), "it runs by itself");
    // Who has entered something of a pump has one, until gravity is said.
    enter(&mut site, Some(tank), Detail::Vessel, 50.0);
    assert_eq!(of_pump(&site), 4);
    enter(&mut site, Some(tank), Detail::SuppliedBy, 0.0);
    assert_eq!(of_pump(&site), 0);
}

#[test]
fn a_garden_by_the_weather_counts_in_the_energy_of_its_pump() {
    // What the pump lifts on a mean day of a use's busiest month: the sum of the balance's days, month by month.
    let mut site = house(|_| ());
    site.system.uses[1].amount = Amount::Garden(Garden { area: Area::square_metres(40.0), ..Garden::default() });
    site.system.climate = Some(Climate::ReferenceEt { mm_a_day: [4.0; 12] });
    let rain = Rain::Record(demo::rain());
    let outcome = answer(&site, &rain).unwrap();
    let tank = site.system.tanks[0].id;
    let asked =
        Asked { site: &site, rain: None, answer: Some(&outcome), read: None, today: chrono::NaiveDate::default() };
    let found = of_part(&asked, tank).into_iter().find(|check| check.subject == Subject::Power).unwrap();
    let mut by_month = [(0.0, 0.0); 12];
    for (day, date) in outcome.series.dates.iter().enumerate() {
        let month = &mut by_month[date.month0() as usize];
        month.0 += outcome.series.yield_l[1][day] + outcome.series.shortfall_l[1][day];
        month.1 += 1.0;
    }
    let busiest = by_month.iter().map(|(litres, days)| litres / days).fold(0.0, f64::max);
    assert!(busiest > 0.0);
    near(found.figure(Figure::DailyUse), 24.0 + busiest, 1e-9);
}

#[test]
fn gravity_gives_a_pound_for_each_2_3_feet() {
    // 1 psi is 2.307 ft of water (Engineering Toolbox, PVC page). A tap 5 m below the outlet, shut: 7.11 psi.
    let mut site = house(|site| {
        site.system.tanks[0].floor = Length::metres(5.9);
        site.system.trunk_lines[0].open = false;
    });
    let (tank, using) = (site.system.tanks[0].id, site.system.uses[0].id);
    enter(&mut site, Some(tank), Detail::SuppliedBy, 0.0);
    // As if its filters let all through.
    enter(&mut site, Some(using), Detail::FilterFouled, 0.0);
    let found = check(&site, using, Subject::Gravity);
    near(found.figure(Figure::TapStatic) / PSI, 5.0 / FOOT / 2.307, 2e-3);
    assert_eq!(found.verdict, Verdict::Holds);
    assert!(found.figure(Figure::TapFull) > found.margin.unwrap().has);
    // They take their part: 50 kPa.
    enter(&mut site, Some(using), Detail::FilterFouled, 50.0);
    let dirty = check(&site, using, Subject::Gravity);
    near(dirty.margin.unwrap().has, found.margin.unwrap().has - 50.0, 1e-9);
    near(dirty.figure(Figure::TapFull), found.figure(Figure::TapFull) - 50.0, 1e-9);
    assert!(dirty.figure(Figure::OpenPipe) < found.figure(Figure::OpenPipe));
    enter(&mut site, Some(using), Detail::FilterFouled, 0.0);
    enter(&mut site, Some(using), Detail::TapHeight, 6.0);
    assert_eq!(check(&site, using, Subject::Gravity).verdict, Verdict::Fails);
    // Joined with a tank that runs over below its outlet, nothing ever stands in it.
    enter(&mut site, Some(using), Detail::TapHeight, 0.0);
    site.system.trunk_lines[0].open = true;
    let joined = check(&site, using, Subject::Gravity);
    assert!(joined.figure(Figure::TapFull) < found.figure(Figure::TapFull) - 20.0);
}

#[test]
fn a_pump_between_stores_answers_for_its_lift() {
    let mut site = house(|site| {
        site.system.trunk_lines[0].open = false;
        let Part::Pump(pump) = new_part::part(&site.system, PartKind::Pump, "Pump".into()) else { panic!() };
        site.system.put(Part::Pump(pump));
    });
    let pump = site.system.pumps[0].id;
    let lift = check(&site, pump, Subject::Lift);
    // From the outlet of the old tank (0.2 + 0.1 m) to the overflow of the new one (2.3 m).
    near(lift.figure(Figure::StaticHead), 2.0, 1e-9);
    assert_eq!(lift.verdict, Verdict::Holds);
    // A curve that ends at 12 m of head, where the pipes ask for a few: it runs beyond its end, which is told of a curve that
    // somebody entered, unless a narrow pipe throttles it.
    let told =
        |site: &Site| said(&check(site, pump, Subject::Lift), &site.system, &Units::customary(Customary::Metric)).to_do;
    assert!(lift.figure(Figure::PipesAsk).is_nan() && told(&site).is_empty(), "{}", told(&site));
    enter(&mut site, Some(pump), Detail::EndHead, 12.0);
    let beyond = check(&site, pump, Subject::Lift);
    assert!(beyond.figure(Figure::DutyHead) > beyond.figure(Figure::PipesAsk) + 1.0);
    assert!(told(&site).contains("it runs beyond it"), "{}", told(&site));
    let mut narrow = site.clone();
    enter(&mut narrow, Some(pump), Detail::PipeBore, 0.015);
    let held = check(&narrow, pump, Subject::Lift);
    assert!(held.figure(Figure::PipesAsk).is_nan() && held.figure(Figure::DutyFlow) < beyond.figure(Figure::DutyFlow));
    assert!(!told(&narrow).contains("it runs beyond it"), "{}", told(&narrow));
    enter(&mut site, Some(pump), Detail::ShutHead, 1.5);
    enter(&mut site, Some(pump), Detail::MidHead, 1.0);
    enter(&mut site, Some(pump), Detail::EndHead, 0.5);
    assert_eq!(check(&site, pump, Subject::Lift).verdict, Verdict::Fails);
}

proptest! {
    #[test]
    fn more_fixtures_never_draw_less_and_dirtier_filters_never_leave_more(units in 0.0..900.0, more in 0.0..100.0, dirt in 0.0..500.0) {
        prop_assert!(supply::peak_l_min(units + more) >= supply::peak_l_min(units));
        let pressure = |kpa: f64| {
            let mut site = house(|_| ());
            let tank = site.system.tanks[0].id;
            enter(&mut site, Some(tank), Detail::FilterFouled, kpa);
            check(&site, tank, Subject::HighestTap).margin.unwrap().has
        };
        prop_assert!(pressure(dirt + more) <= pressure(dirt));
    }
}

use eavewater::engine::checks::{Asked, Figure, Subject, Verdict, again, flush};
use eavewater::engine::question::answer;
use eavewater::quantity::{Bore, Volume};
use eavewater::site::demo;
use eavewater::site::details::Detail;
use eavewater::site::feed::Drain;
use eavewater::site::rain::Rain;
use proptest::prelude::*;

use super::{check, enter, house, near};

#[test]
fn a_standpipe_drains_as_torricelli_says() {
    // t = 2A/(Cd a √(2g)) √h, any fluid-mechanics text, worked apart: 2 m of 4 in Schedule 40 pipe, C = 0.62, holes of
    // 1, 2 and 3 mm: 2.99, 0.748 and 0.332 h.
    for (hole_mm, hours) in [(1.0, 2.99), (2.0, 0.748), (3.0, 0.332)] {
        near(flush::drain_seconds(0.102_26, 2.0, hole_mm / 1000.0) / 3600.0, hours, 2e-3);
    }
    // scipy 1.17 (solve_ivp, DOP853): a tank of 2.0 m² from 1.8 m through 25 mm with C = 0.62 is empty after 3981.6155 s.
    let chamber_m = (2.0_f64 * 4.0 / std::f64::consts::PI).sqrt();
    near(flush::drain_seconds(chamber_m, 1.8, 0.025), 3_981.615_515, 1e-9);
    near(flush::hole_m(chamber_m, 1.8, 3_981.615_515), 0.025, 1e-9);
}

#[test]
fn rules_stand_side_by_side() {
    // Texas Manual 2005: 10 gal for 1,000 ft² and 1 to 2 gal for 100 ft² are 0.407 and 0.407–0.815 mm.
    near(flush::TEXAS_LEAST, 0.4075, 2e-4);
    near(flush::TEXAS_MOST, 0.8149, 2e-4);
    let site = house(|_| ());
    let feed = site.system.feeds[0].id;
    let found = check(&site, feed, Subject::FlushVolume);
    // 64 m² of south roof: 26.1, 52.2, 32 and 128 L.
    for (figure, litres) in [
        (Figure::FlushTexasLeast, 26.1),
        (Figure::FlushTexasMost, 52.2),
        (Figure::FlushLittleDirt, 32.0),
        (Figure::FlushMuchDirt, 128.0),
    ] {
        near(found.figure(figure), litres, 2e-3);
    }
    assert_eq!(found.verdict, Verdict::Fails);
    // 52.15 L fill 6.35 m of 4 in pipe of 8.213 L/m.
    near(found.figure(Figure::ChamberWanted), 52.15 / 8.213, 1e-3);
    let clean = house(|site| {
        site.system.feeds[0].diverter.as_mut().unwrap().volume = Volume::litres(33.0);
        enter(site, Some(feed), Detail::Dirt, 0.0);
    });
    assert_eq!(check(&clean, feed, Subject::FlushVolume).verdict, Verdict::Holds);
}

#[test]
fn a_chamber_that_no_house_has_room_for_is_not_enough_however_much_it_holds() {
    for (litres, verdict) in [(45.0, Verdict::Holds), (200.0, Verdict::Fails)] {
        let clean = house(|site| {
            site.system.feeds[0].diverter.as_mut().unwrap().volume = Volume::litres(litres);
            enter(site, Some(site.system.feeds[0].id), Detail::Dirt, 0.0);
        });
        let found = check(&clean, clean.system.feeds[0].id, Subject::FlushVolume);
        // 4 in pipe holds 8.213 L a metre: 200 L stand 24 m tall.
        near(found.figure(Figure::ChamberHeight), litres / 8.213, 1e-3);
        assert_eq!(found.verdict, verdict, "{litres}");
    }
}

#[test]
fn one_that_never_drains_is_warned_of() {
    for drain in [Drain::Never, Drain::Hole { diameter: Bore::metres(0.0) }] {
        let site = house(|site| site.system.feeds[0].diverter.as_mut().unwrap().drain = drain);
        let found = check(&site, site.system.feeds[0].id, Subject::FlushDrain);
        assert_eq!((found.verdict, found.margin), (Verdict::Fails, None));
    }
}

#[test]
fn its_cost_is_that_of_the_balance_without_it() {
    let (site, rain) = (demo::site(), Rain::Record(demo::rain()));
    let with = answer(&site, &rain).unwrap();
    let asked =
        Asked { site: &site, rain: Some(&rain), answer: Some(&with), read: None, today: chrono::NaiveDate::default() };
    let checks = again::of_part(&asked, site.system.feeds[0].id);
    let cost = checks.iter().find(|check| check.subject == Subject::FlushYield).unwrap();
    assert!(cost.figure(Figure::UsedWithout) >= cost.figure(Figure::UsedWith));
    assert!(cost.figure(Figure::DryDaysWithout) <= cost.figure(Figure::DryDaysWith));
    assert!(cost.figure(Figure::DivertedAYear) > 0.0);
}

proptest! {
    #[test]
    fn more_roof_never_wants_less_pipe_and_a_larger_hole_never_loses_less(area in 1.0..500.0, more in 1.0..3.0, hole in 0.2..8.0) {
        let wanted = |area: f64| {
            let site = house(|site| site.system.sections[0].area = eavewater::quantity::Area::square_metres(area));
            check(&site, site.system.feeds[0].id, Subject::FlushVolume).figure(Figure::ChamberWanted)
        };
        prop_assert!(wanted(area * more) >= wanted(area));
        prop_assert!(flush::loss_l(2.0, hole * more / 1000.0, 6.0) >= flush::loss_l(2.0, hole / 1000.0, 6.0));
        prop_assert!(flush::drain_seconds(0.1, 2.0, hole * more / 1000.0) <= flush::drain_seconds(0.1, 2.0, hole / 1000.0));
    }
}

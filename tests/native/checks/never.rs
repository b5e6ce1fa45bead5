//! What may never happen, on thousands of houses: each part asked the way its sheet asks it.

use eavewater::engine::checks::{Figure, Subject, Verdict, of_part};
use eavewater::engine::treatment::{boiling, cartridge, contact, dose, ultraviolet};
use eavewater::quantity::{Area, Length};
use eavewater::site::details::Detail;
use eavewater::site::feed::Drain;
use eavewater::site::household::Site;
use eavewater::site::part::PartId;
use proptest::prelude::*;

use super::{check, enter, house};

/// What is wanted of a part of the demo house, as its margin says.
fn wanted(site: &Site, part: PartId, subject: Subject) -> f64 {
    check(site, part, subject).margin.unwrap().wants
}

/// Whether a part that held does not hold any more, or the other way round.
fn worse(before: Verdict, after: Verdict) -> bool {
    before == Verdict::Holds || after != Verdict::Holds
}

proptest! {
    #[test]
    fn more_roof_or_harder_rain_never_wants_less_of_what_carries_it(
        area in 1.0..500.0, intensity in 5.0..300.0, more in 1.0..3.0, bore in 0.04..0.2, pitch in 0u8..5,
    ) {
        let of = |area: f64, intensity: f64| {
            let mut site = house(|site| site.system.sections[0].area = Area::square_metres(area));
            let (feed, tank) = (site.system.feeds[0].id, site.system.tanks[0].id);
            let section = site.system.sections[0].id;
            enter(&mut site, None, Detail::DesignIntensity, intensity);
            enter(&mut site, Some(feed), Detail::Downspout, bore);
            enter(&mut site, Some(section), Detail::Pitch, f64::from(pitch));
            let spouts = check(&site, feed, Subject::Downspout);
            let wants = [Subject::Gutter, Subject::Downspout, Subject::Screen, Subject::Inlet].map(|subject| wanted(&site, feed, subject));
            let bores = [spouts.figure(Figure::DownspoutsWanted), spouts.figure(Figure::RuleBore)];
            (wants, bores, wanted(&site, tank, Subject::Overflow), spouts.verdict)
        };
        let here = of(area, intensity);
        for after in [of(area * more, intensity), of(area, intensity * more)] {
            prop_assert!(after.0.iter().zip(here.0).all(|(after, before)| *after >= before));
            prop_assert!(after.1.iter().zip(here.1).all(|(after, before)| *after >= before));
            prop_assert!(after.2 >= here.2);
            prop_assert!(worse(here.3, after.3));
        }
    }

    #[test]
    fn a_wider_deeper_or_steeper_gutter_never_carries_less_and_a_strainer_never_helps(
        shape in 0u8..3, width in 0.06..0.4, depth in 0.05..0.3, fall in 0.0..0.02, more in 1.0..2.0,
    ) {
        let carries = |width: f64, depth: f64, fall: f64, strainer: f64| {
            let mut site = house(|_| ());
            let feed = site.system.feeds[0].id;
            for (detail, value) in [
                (Detail::GutterShape, f64::from(shape)),
                (Detail::GutterWidth, width),
                (Detail::GutterDepth, depth),
                (Detail::GutterSole, 0.05),
                (Detail::GutterSlope, fall),
                (Detail::Strainer, strainer),
            ] {
                enter(&mut site, Some(feed), detail, value);
            }
            let has = |subject| check(&site, feed, subject).margin.unwrap().has;
            (has(Subject::Gutter), has(Subject::Downspout))
        };
        let here = carries(width, depth, fall, 0.0);
        for after in [carries(width * more, depth, fall, 0.0), carries(width, depth * more, fall, 0.0)] {
            prop_assert!(after.0 >= here.0 * 0.999_999 && after.1 >= here.1 * 0.999_999);
        }
        prop_assert!(carries(width, depth, fall * more, 0.0).0 >= here.0);
        prop_assert!(carries(width, depth, fall, 1.0).1 <= here.1);
    }

    #[test]
    fn a_larger_storm_never_brings_or_spills_less(depth in 1.0..300.0, hours in 0.5..48.0, more in 1.0..3.0) {
        let brings = |depth: f64| {
            let mut site = house(|_| ());
            enter(&mut site, None, Detail::StormDepth, depth);
            enter(&mut site, None, Detail::StormDuration, hours);
            let found = check(&site, site.system.feeds[0].id, Subject::StormFeed);
            (found.figure(Figure::StormLitres), found.figure(Figure::FlushFull))
        };
        let (here, after) = (brings(depth), brings(depth * more));
        prop_assert!(after.0 >= here.0 && after.1 <= here.1);
    }

    #[test]
    fn a_wider_hole_never_drains_slower_and_more_dirt_never_wants_less(hole in 0.5..8.0, more in 1.0..3.0, dirt in 0u8..2) {
        let of = |hole: f64, dirt: u8| {
            let mut site = house(|site| {
                if let Some(diverter) = &mut site.system.feeds[0].diverter {
                    diverter.drain = Drain::Hole { diameter: eavewater::quantity::Bore::metres(hole / 1000.0) };
                }
            });
            let feed = site.system.feeds[0].id;
            enter(&mut site, Some(feed), Detail::Dirt, f64::from(dirt));
            let drain = check(&site, feed, Subject::FlushDrain).figure(Figure::DrainTime);
            let loss = check(&site, feed, Subject::FlushLoss).figure(Figure::HoleLoss);
            (drain, loss, wanted(&site, feed, Subject::FlushVolume))
        };
        let here = of(hole, dirt);
        let wider = of(hole * more, dirt);
        prop_assert!(wider.0 <= here.0 && wider.1 >= here.1);
        prop_assert!(of(hole, dirt + 1).2 >= here.2);
    }

    #[test]
    fn more_wind_never_needs_less_to_hold_and_anchors_never_bear_less(speed in 5.0..80.0, more in 1.0..1.8, anchors in 3u8..9) {
        let of = |speed: f64, anchors: u8| {
            let mut site = house(|_| ());
            let tank = site.system.tanks[0].id;
            enter(&mut site, None, Detail::WindSpeed, speed);
            enter(&mut site, Some(tank), Detail::Anchors, f64::from(anchors));
            let found = check(&site, tank, Subject::Wind);
            [Figure::HoldingLitres, Figure::AnchorPull, Figure::AnchorShear, Figure::WindForce]
                .map(|figure| found.figure(figure))
        };
        let here = of(speed, anchors);
        prop_assert!(of(speed * more, anchors).iter().zip(here).all(|(after, before)| *after >= before));
        let shared = of(speed, anchors + 1);
        prop_assert!(shared[0] == here[0] && shared[1] <= here[1] && shared[2] <= here[2]);
    }

    #[test]
    fn higher_groundwater_never_wants_less_ballast_and_more_cover_never_more(
        depth in 0.0..4.0f64, rises in 0.0..4.0f64, cover in 0.0..1.0,
    ) {
        let of = |depth: f64, cover: f64| {
            let mut site = house(|site| {
                site.system.tanks[0].floor = Length::metres(-3.0);
                site.system.tanks[0].build = eavewater::site::tank::Build::Cistern;
            });
            let tank = site.system.tanks[0].id;
            enter(&mut site, None, Detail::Groundwater, depth);
            enter(&mut site, Some(tank), Detail::SoilCover, cover);
            let found = check(&site, tank, Subject::Uplift);
            [Figure::Uplift, Figure::UpliftLitres, Figure::ConcreteWanted].map(|figure| found.figure(figure))
        };
        let here = of(depth, cover);
        prop_assert!(of(depth - rises, cover).iter().zip(here).all(|(after, before)| *after >= before - 1e-9));
        prop_assert!(of(depth, cover + 0.5).iter().zip(here).all(|(after, before)| *after <= before + 1e-9));
    }

    #[test]
    fn a_heavier_tank_or_poorer_soil_never_stands_better(kilograms in 100.0..50_000.0, more in 1.0..3.0, soil in 0u8..4) {
        let of = |kilograms: f64, soil: u8| {
            let mut site = house(|_| ());
            let tank = site.system.tanks[0].id;
            enter(&mut site, Some(tank), Detail::EmptyMass, kilograms);
            enter(&mut site, None, Detail::Soil, f64::from(soil));
            check(&site, tank, Subject::Pad)
        };
        let here = of(kilograms, soil);
        prop_assert!(of(kilograms * more, soil).margin.unwrap().wants >= here.margin.unwrap().wants);
        prop_assert!(of(kilograms, soil + 1).margin.unwrap().has <= here.margin.unwrap().has);
    }

    #[test]
    fn a_longer_or_rougher_pipe_never_gives_more_flow_or_pressure(
        length in 1.0..1000.0, more in 1.0..3.0, bore in 0.012..0.1, material in 0u8..3,
    ) {
        let of = |length: f64, material: u8| {
            let mut site = house(|_| ());
            let (tank, line) = (site.system.tanks[0].id, site.system.trunk_lines[0].id);
            for part in [tank, line] {
                enter(&mut site, Some(part), Detail::PipeLength, length);
                enter(&mut site, Some(part), Detail::PipeBore, bore);
                enter(&mut site, Some(part), Detail::PipeMaterial, f64::from(material));
            }
            let trunk = check(&site, line, Subject::TrunkFlow);
            let tap = check(&site, tank, Subject::HighestTap);
            let duty = tap.found.iter().find(|(figure, _)| *figure == Figure::DutyFlow).map_or(0.0, |(_, flow)| *flow);
            [trunk.figure(Figure::TrunkFlow), -trunk.figure(Figure::LevelTime), tap.margin.unwrap().has, duty]
        };
        let here = of(length, material);
        let no_more = |after: [f64; 4]| {
            after.iter().zip(here).all(|(after, before)| *after <= before + 1e-6 * before.abs() + 1e-9)
        };
        prop_assert!(no_more(of(length * more, material)));
        // Copper is as smooth as plastic; from there on each is rougher.
        prop_assert!(no_more(of(length, material + 1)));
    }

    #[test]
    fn a_higher_or_thirstier_site_never_lifts_better(altitude in 0.0..4000.0, higher in 0.0..1500.0, celsius in 1.0..40.0) {
        let of = |altitude: f64, celsius: f64| {
            let mut site = house(|_| ());
            let tank = site.system.tanks[0].id;
            enter(&mut site, None, Detail::Altitude, altitude);
            enter(&mut site, None, Detail::WaterTemperature, celsius);
            enter(&mut site, Some(tank), Detail::PumpHeight, 3.0);
            // The suction pipe so wide that thinner warm water does not count.
            enter(&mut site, Some(tank), Detail::SuctionBore, 0.2);
            check(&site, tank, Subject::Suction).margin.unwrap().has
        };
        prop_assert!(of(altitude + higher, celsius) <= of(altitude, celsius));
        prop_assert!(of(altitude, celsius + 10.0) <= of(altitude, celsius));
    }

    #[test]
    fn more_use_or_days_never_wants_a_smaller_panel_or_battery(days in 0.5..10.0, more in 1.0..3.0, sun in 0.5..4.0) {
        let of = |days: f64, sun: f64| {
            let mut site = house(|_| ());
            let tank = site.system.tanks[0].id;
            enter(&mut site, Some(tank), Detail::Autonomy, days);
            enter(&mut site, Some(tank), Detail::SunHours, sun);
            let found = check(&site, tank, Subject::Power);
            (found.figure(Figure::Panel), found.figure(Figure::Battery))
        };
        let here = of(days, sun);
        prop_assert!(of(days * more, sun).1 >= here.1);
        prop_assert!(of(days, sun * more).0 <= here.0);
    }

    #[test]
    fn more_flow_or_dimmer_water_never_gets_more_light(
        tested in 1.0..200.0, at in 1.0..100.0, clarity in 0.3..1.0, flow in 0.5..200.0, more in 1.0..4.0, dim in 0.2..1.0,
    ) {
        let here = ultraviolet::dose(tested, at, clarity, flow, clarity);
        prop_assert!(ultraviolet::dose(tested, at, clarity, flow * more, clarity) <= here);
        prop_assert!(ultraviolet::dose(tested, at, clarity, flow, clarity * dim) <= here);
        prop_assert!(here <= tested);
        let (less, enough) = (ultraviolet::logs(here / more), ultraviolet::logs(here));
        prop_assert!(less.iter().zip(enough).all(|(less, enough)| *less <= enough));
    }

    #[test]
    fn colder_or_more_alkaline_water_never_wants_less_contact_and_more_time_is_never_worth_less(
        celsius in 0.0..30.0, colder in 0.0..20.0, ph in 5.0..9.0, more_ph in 0.0..1.0, residual in 0.1..5.0,
        minutes in 0.0..500.0, more in 1.0..3.0,
    ) {
        let wants = |celsius: f64, ph: f64| {
            [contact::giardia_3_log_ct(residual, celsius, ph), contact::viruses_4_log_ct(celsius, ph)]
                .map(|ct| ct.unwrap_or(f64::INFINITY))
        };
        let here = wants(celsius, ph);
        for after in [wants(celsius - colder, ph), wants(celsius, ph + more_ph)] {
            prop_assert!(after.iter().zip(here).all(|(after, before)| *after >= before));
        }
        let worth = |minutes: f64| contact::logs(residual * minutes, here[0], contact::MOST_GIARDIA);
        prop_assert!(worth(minutes * more) >= worth(minutes));
        prop_assert!(contact::contact_minutes(200.0, 10.0 * more, 0.1) <= contact::contact_minutes(200.0, 10.0, 0.1));
    }

    #[test]
    fn older_or_warmer_stock_is_never_stronger_and_weaker_stock_never_wants_less(
        days in 0.0..700.0, more in 0.0..300.0, celsius in 0.0..40.0, warmer in 0.0..15.0, strength in 0.01..0.13,
    ) {
        let left = dose::left_after(days, strength, celsius);
        prop_assert!(dose::left_after(days + more, strength, celsius) <= left);
        prop_assert!(dose::left_after(days, strength, celsius + warmer) <= left);
        let amount = |strength: f64| dose::amount(5.0, 1000.0, strength).unwrap();
        prop_assert!(amount(strength * left.max(0.05)) >= amount(strength));
    }

    #[test]
    fn higher_ground_never_boils_shorter_and_a_thirstier_tap_never_keeps_its_cartridge_longer(
        metres in -400.0..6000.0, higher in 0.0..3000.0, litres in 1.0..500.0, more in 1.0..3.0,
    ) {
        prop_assert!(boiling::minutes(metres + higher) >= boiling::minutes(metres));
        prop_assert!(cartridge::days(10_000.0, litres * more) <= cartridge::days(10_000.0, litres));
    }

    #[test]
    fn no_detail_within_its_range_makes_a_check_say_not_a_number(
        at in 0..Detail::ALL.len(), other in 0..Detail::ALL.len(), low in 0.0..=1.0f64, high in 0.0..=1.0f64,
    ) {
        let mut site = house(|_| ());
        for (at, part) in [(at, low), (other, high)] {
            let detail = Detail::ALL[at];
            let row = detail.row();
            let mut value: f64 = row.range.least + part * (row.range.greatest - row.range.least);
            if row.options > 0 {
                value = value.round();
            }
            let parts: Vec<PartId> = site.system.parts().iter().map(|part| part.id()).collect();
            for of in std::iter::once(None).chain(parts.into_iter().map(Some)) {
                enter(&mut site, of, detail, value);
            }
        }
        for part in site.system.parts() {
            let asked = eavewater::engine::checks::Asked {
                read: None,
                site: &site, rain: None, answer: None, today: chrono::NaiveDate::default(),
            };
            for check in of_part(&asked, part.id()) {
                for (figure, value) in &check.found {
                    prop_assert!(!value.is_nan(), "{:?} {figure:?}", check.subject);
                }
                if let Some(margin) = check.margin {
                    prop_assert!(!margin.has.is_nan() && !margin.wants.is_nan(), "{:?}", check.subject);
                }
            }
        }
    }
}

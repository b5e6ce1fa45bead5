use eavewater::engine::checks::gutter::{self, Gutter, GutterShape};
use eavewater::engine::checks::{Figure, Subject, Verdict, overflow};
use eavewater::quantity::{Area, Customary, Depth, Flow, Length, Share, Units};
use eavewater::site::details::Detail;
use eavewater::site::household::Site;
use eavewater::site::part::PartId;
use eavewater::site::pump::Pump;
use eavewater::site::tank::Cover;
use eavewater::words::checks::said;
use proptest::prelude::*;

use super::{check, enter, house, near};

const GALLON: f64 = 3.785_411_784;

fn half_round(width_m: f64) -> Gutter {
    Gutter { shape: GutterShape::HalfRound, width_m, depth_m: width_m / 2.0, sole_m: width_m }
}

#[test]
fn half_round_gutters_carry_what_the_standard_gives() {
    // EN 12056-3:2000 clause 5: 0.9 · 2.78e-5 · A^1.25 worked apart for 100, 125 and 150 mm: 0.778, 1.359 and 2.143 L/s.
    for (width_m, litres) in [(0.1, 0.778), (0.125, 1.359), (0.15, 2.143)] {
        near(half_round(width_m).level_l_s(), litres, 1e-3);
    }
}

#[test]
fn gutters_of_any_shape_stay_at_the_same_share_of_frictionless_flow() {
    // A level gutter without friction fed along its length: momentum from full depth upstream to critical depth at the
    // outlet (Chow, Open-Channel Hydraulics 1959, ch. 12), solved with scipy 1.17 (quad, brentq), in L/s. The standard
    // counts on 0.9 of 0.80 of it.
    let walls = |shape, width_m, sole_m, depth_m| Gutter { shape, width_m, depth_m, sole_m };
    for (gutter, frictionless) in [
        (half_round(0.1), 1.078_366),
        (half_round(0.125), 1.883_829),
        (walls(GutterShape::Box, 0.1, 0.1, 0.1), 4.344_296),
        (walls(GutterShape::Box, 0.125, 0.125, 0.09), 4.636_531),
        (walls(GutterShape::Box, 0.15, 0.15, 0.075), 4.232_554),
        (walls(GutterShape::Trapezoid, 0.125, 0.08, 0.09), 3.554_692),
        (walls(GutterShape::Trapezoid, 0.15, 0.09, 0.1), 4.829_218),
    ] {
        near(gutter.level_l_s() / frictionless, 0.9 * 0.801, 0.022);
    }
}

#[test]
fn upright_pipes_carry_what_the_codes_print() {
    // National Standard Plumbing Code 2006, Table 13.6.1: gal/min of stacks 7/24 full.
    for (inches, gallons) in [(2.0, 23.0), (3.0, 67.0), (4.0, 144.0), (5.0, 261.0), (6.0, 424.0), (8.0, 913.0)] {
        assert!((gutter::leader_l_min(inches * 0.0254) / GALLON - gallons).abs() <= 0.5, "{inches} in");
    }
    // International Plumbing Code 2015, Table 1106.3, by the real inside of Schedule 40 pipe.
    for (bore_m, gallons) in [(0.0525, 30.0), (0.0779, 92.0), (0.102_26, 192.0), (0.154, 563.0)] {
        assert_eq!(gutter::leader_table_l_min(bore_m), Some(gallons * GALLON));
    }
    assert_eq!(gutter::leader_table_l_min(0.03), None);
}

#[test]
fn an_outlet_turns_from_weir_to_orifice_without_a_step() {
    // EN 12056-3:2000 Table 7: both forms are meant to meet at half the diameter; the second is an orifice whose
    // discharge coefficient any hydraulics text gives as 0.60 to 0.62.
    let bore_m = 0.08;
    near(gutter::outlet_l_s(bore_m, 0.04, false), gutter::outlet_l_s(bore_m, 0.040_001, false), 1e-4);
    let plain = std::f64::consts::PI * bore_m * bore_m / 4.0 * (2.0 * 9.806_65 * 0.1_f64).sqrt() * 1000.0;
    near(gutter::outlet_l_s(bore_m, 0.1, false) / plain, 0.61, 0.02);
    near(gutter::outlet_l_s(bore_m, 0.1, true) * 2.0, gutter::outlet_l_s(bore_m, 0.1, false), 1e-12);
}

#[test]
fn the_codes_gutter_table_reads_as_printed() {
    // International Plumbing Code Table 1106.6: 5 in, 1/8 in a foot: 3,520 ft² at 1 in/h. 1 gal/min is 96.25 ft² there.
    near(gutter::table_l_min(0.127, 1.0 / 96.0).unwrap(), 3520.0 / 96.25 * GALLON, 1e-4);
    assert_eq!(gutter::table_l_min(0.127, 0.002), None, "flatter than the table");
    assert_eq!(gutter::table_l_min(0.05, 0.02), None, "smaller than the table");
}

#[test]
fn an_overflow_lets_out_critical_flow_and_then_that_of_an_orifice() {
    // Critical flow in a round section at a given specific energy, solved with scipy 1.17 (brentq), in L/min.
    for (bore_m, head_m, litres) in [(0.1, 0.05, 80.074_296), (0.1, 0.099_999_9, 270.43), (0.15, 0.1, 372.865_942)] {
        near(overflow::pipe_l_min(bore_m, head_m), litres, 1e-4);
    }
    // No step where the pipe begins to run full.
    near(overflow::pipe_l_min(0.1, 0.100_001), overflow::pipe_l_min(0.1, 0.099_999), 1e-3);
    assert!(overflow::pipe_l_min(0.1, 0.0) == 0.0 && overflow::pipe_l_min(0.0, 0.2) == 0.0);
}

#[test]
fn a_tank_answers_for_its_overflow() {
    // 64 m² at 150 mm/h bring 160 L/min. The 50 mm pipe with 100 mm over its invert lets out the critical
    // flow at its top, 270.43 · 0.5^2.5 = 47.81 L/min after the 100 mm pipe below, times √(75 ÷ 25) = 82.8 L/min.
    let mut site = house(|_| ());
    let tank = site.system.tanks[0].id;
    enter(&mut site, Some(tank), Detail::OverflowBore, 0.05);
    let found = check(&site, tank, Subject::Overflow);
    let margin = found.margin.unwrap();
    near(margin.has, 82.8, 1e-3);
    near(margin.wants, 160.0, 1e-9);
    assert_eq!((found.verdict, found.is_guess()), (Verdict::Fails, false));
    enter(&mut site, Some(tank), Detail::OverflowBore, 0.1);
    assert_eq!(check(&site, tank, Subject::Overflow).verdict, Verdict::Holds);
    // The old tank, joined with it, has the lower rim: over it goes what both feeds bring (58 m²: 145 L/min more), and on into
    // the barrel. With the valve shut each has its own.
    let (old, barrel) = (site.system.tanks[1].id, site.system.tanks[2].id);
    let wants = |site: &Site, tank: PartId| check(site, tank, Subject::Overflow).margin.unwrap().wants;
    near(wants(&site, old), 160.0 + 145.0, 1e-9);
    near(wants(&site, barrel), 160.0 + 145.0, 1e-9);
    near(wants(&site, tank), 160.0, 1e-9);
    let mut shut = site.clone();
    shut.system.trunk_lines[0].open = false;
    near(wants(&shut, old), 145.0, 1e-9);
    // Where both rims are level each lets out half of it, but no less than comes to it alone.
    let mut level = site.clone();
    let rim_m = level.system.tanks[1].overflow_elevation();
    let first = &mut level.system.tanks[0];
    first.overflow = Length::metres(rim_m - first.floor.get());
    near(wants(&level, old), (160.0 + 145.0) / 2.0, 1e-9);
    near(wants(&level, tank), 160.0, 1e-9);
    // Without a cover it catches rain itself: 2.4 m high and so full of π/4 d² m².
    let mut open = shut.clone();
    open.system.tanks[0].cover = Cover::Uncovered { evaporation: [Depth::millimetres(0.0); 12] };
    let mouth_m2 = open.system.tanks[0].shape.full_volume().get() / 1000.0 / open.system.tanks[0].shape.height();
    near(wants(&open, tank), 160.0 + mouth_m2 * 150.0 / 60.0, 1e-9);
    // A leader that is known and carries more than the overflow lets out is told, not judged.
    let told = |site: &Site| {
        said(&check(site, tank, Subject::Overflow), &site.system, &Units::customary(Customary::Metric)).verdict
    };
    assert!(!told(&site).contains("inlets"), "{}", told(&site));
    let feed = site.system.feeds.iter().find(|feed| feed.tank == Some(tank)).unwrap().id;
    let mut wide = site.clone();
    enter(&mut wide, Some(feed), Detail::InletBore, 0.15);
    assert!(told(&wide).contains("its inlets that are known can carry"), "{}", told(&wide));
    // A pump whose float sticks adds all that it can bring: 60 L/min where nothing is entered.
    let pump = Pump {
        id: PartId(99),
        name: String::new(),
        from: None,
        to: Some(tank),
        start: Share::of_one(0.5),
        stop: Share::of_one(0.9),
        limit: Flow::litres_a_day(100.0),
    };
    site.system.pumps.push(pump);
    near(check(&site, tank, Subject::Overflow).margin.unwrap().wants, 160.0 + 60.0, 1e-9);
    site.system.tanks[0].overflow = Length::metres(site.system.tanks[0].shape.height());
    let rim = check(&site, tank, Subject::Overflow);
    assert_eq!((rim.verdict, rim.margin), (Verdict::Fails, None));
}

proptest! {
    #[test]
    fn more_rain_never_wants_fewer_downspouts_and_longer_gutters_never_carry_more_level(
        area in 1.0..500.0, more in 1.0..4.0, length in 50.0..500.0,
    ) {
        let wanted = |area: f64| {
            let site = house(|site| site.system.sections[0].area = Area::square_metres(area));
            check(&site, site.system.feeds[0].id, Subject::Downspout).figure(Figure::DownspoutsWanted)
        };
        prop_assert!(wanted(area * more) >= wanted(area));
        prop_assert!(gutter::length_factor(length * more, 0.0) <= gutter::length_factor(length, 0.0));
        prop_assert!(gutter::length_factor(length, 0.01) >= gutter::length_factor(length, 0.0));
        prop_assert!(overflow::pipe_l_min(0.1, more * 0.05) >= overflow::pipe_l_min(0.1, 0.05));
    }
}

#[test]
fn a_gap_is_twice_the_pipe() {
    // ASME A112.1.2 (from memory): twice the effective opening, 1 in at the least.
    let mut site = house(|_| ());
    let tank = site.system.tanks[0].id;
    let hauling =
        eavewater::site::new_part::part(&site.system, eavewater::site::system::PartKind::Hauling, "Truck".into());
    site.system.put(hauling);
    enter(&mut site, Some(tank), Detail::InletBore, 0.06);
    let found = check(&site, tank, Subject::AirGap);
    near(found.margin.unwrap().wants, 0.12, 1e-12);
    assert_eq!(found.verdict, Verdict::Fails);
    assert_ne!(found.part, PartId(0));
}

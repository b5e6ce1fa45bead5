use eavewater::engine::checks::pipe::{self, Pipe};
use eavewater::engine::checks::{Figure, Subject, trunk, water};
use eavewater::site::details::Detail;
use proptest::prelude::*;

use super::{check, enter, house, near};

const GALLON_M3: f64 = 3.785_411_784e-3;

fn plastic(bore_m: f64, length_m: f64, fittings: f64) -> Pipe {
    Pipe { bore_m, length_m, roughness_m: 1.5e-6, c: 150.0, fittings, viscosity_m2_s: 1.002e-3 / 998.2 }
}

#[test]
fn water_is_as_the_tables_say() {
    // CRC Handbook of Chemistry and Physics (from memory): density and viscosity of water.
    for (celsius, density, viscosity) in
        [(0.0, 999.84, 1.792e-3), (20.0, 998.2, 1.002e-3), (40.0, 992.2, 0.653e-3), (60.0, 983.2, 0.466e-3)]
    {
        near(water::density_kg_m3(celsius), density, 1e-4);
        near(water::viscosity_pa_s(celsius), viscosity, 5e-3);
    }
    // FAO-56 example 2: 81.8 kPa at 1800 m; example 3: 3.075 kPa at 24.5 °C.
    assert!((water::air_kpa(1800.0) - 81.8).abs() < 0.05);
    assert!((water::vapour_kpa(24.5) - 3.075).abs() < 0.0005);
}

#[test]
fn friction_factors_are_those_of_the_library() {
    // fluids 1.3.1: Colebrook and Swamee-Jain at Re 1e5, ε/D 1e-4, and at Re 40,000, 6e-5; laminar at 1,000.
    near(pipe::colebrook(1e5, 1e-4), 0.018_513_866, 1e-7);
    near(pipe::swamee_jain(1e5, 1e-4), 0.018_452_424, 2e-6);
    near(pipe::colebrook(4e4, 6e-5), 0.022_160_356_066_1, 1e-11);
    near(pipe::friction_factor(1000.0, 1e-4), 0.064, 1e-12);
}

#[test]
fn a_plastic_pipe_loses_what_the_library_says() {
    // fluids 1.3.1: D 25 mm, L 40 m, Q 0.5 L/s, roughness 1.5e-6 m: f 0.0245839673, head 2.0807576121 m.
    near(plastic(0.025, 40.0, 0.0).darcy_m(0.5e-3), 2.080_757_612_1, 1e-9);
    // EPANET by wntr 1.5.0: 2.21612 m by Hazen-Williams with C = 140, whose constants alone differ by 0.03 %.
    near(pipe::hazen_williams_m(0.5e-3, 140.0, 0.025, 40.0), 2.216_119_766, 5e-4);
}

#[test]
fn friction_losses_are_those_of_the_printed_table() {
    // Illinois Administrative Code title 77 part 906 App. A Exhibit I: ft in 100 ft, Schedule 40, C = 150; printed to
    // 0.01, within 3.5 % or 0.02 ft.
    for (gallons, bore_m, feet) in [
        (5.0, 0.026_644_6, 1.52),
        (10.0, 0.026_644_6, 5.50),
        (10.0, 0.035_052, 1.46),
        (20.0, 0.040_894, 2.46),
        (30.0, 0.040_894, 5.22),
        (30.0, 0.052_501_8, 1.54),
        (50.0, 0.052_501_8, 3.98),
        (50.0, 0.077_927_2, 0.58),
        (100.0, 0.077_927_2, 2.09),
        (100.0, 0.102_260_4, 0.55),
    ] {
        let found = pipe::hazen_williams_m(gallons * GALLON_M3 / 60.0, 150.0, bore_m, 100.0);
        assert!((found - feet).abs() <= (0.035_f64 * feet).max(0.02), "{gallons} gal/min: {found} is not {feet}");
    }
}

#[test]
fn a_handbook_tank_empties_as_printed() {
    // Crane TP-410M example 7.6: 7 m of head through 60 m of 80 mm Schedule 40 pipe (77.9 mm), six elbows and a ball
    // valve, steel, 15 °C: 2.74 m/s, 781 L/min with f = 0.017 for full turbulence; the library's own 2.77 and 792.
    // Elbows K = 30 f_T = 0.51, valve 3 f_T, entrance 0.5, exit 1 by the same book.
    let steel =
        Pipe { roughness_m: 4.5e-5, viscosity_m2_s: 1.14e-6, ..plastic(0.0779, 60.0, 6.0 * 0.51 + 0.051 + 0.5 + 1.0) };
    let flow = steel.flow_for(7.0);
    near(flow * 60_000.0, 781.0, 0.05);
}

#[test]
fn tanks_even_out_as_the_integral_says() {
    // scipy 1.17 (ODE): tanks of 2.5 and 4.5 m² from 1.6 and 0.4 m through a hole of 25 mm, C = 0.62, are even after
    // 2612.390991 s.
    let hole = |head: f64| 0.62 * std::f64::consts::PI * 0.025 * 0.025 / 4.0 * (2.0 * 9.806_65 * head).sqrt();
    near(trunk::seconds_to_level([2.5, 4.5], 1.2, 0.0, hole), 2_612.390_991, 1e-6);
    // fluids 1.3.1 and scipy 1.17 (brentq, quad): 5 and 3 m², 10 m of 50 mm, K 5.5, 0.5 m apart: 118.4659 L/min at
    // 1.00557 m/s; 666.262 s to 50 mm apart.
    let pipe = plastic(0.05, 10.0, 5.5);
    near(pipe.flow_for(0.5) * 60_000.0, 118.465_857, 1e-6);
    near(trunk::seconds_to_level([5.0, 3.0], 0.5, 0.05, |head| pipe.flow_for(head)), 666.261_65, 1e-5);
}

#[test]
fn a_trunk_line_answers_for_itself() {
    let mut site = house(|_| ());
    let line = site.system.trunk_lines[0].id;
    enter(&mut site, Some(line), Detail::PipeBore, 0.04);
    let found = check(&site, line, Subject::TrunkFlow);
    assert!((found.figure(Figure::DarcyLoss) - 0.5).abs() < 1e-6, "all of the difference is used up");
    let draw = check(&site, line, Subject::TrunkDraw);
    assert!(draw.margin.unwrap().wants > 0.0 && draw.figure(Figure::TrunkFlow) < 20.0);
}

proptest! {
    #[test]
    fn more_flow_or_length_never_loses_less_and_a_wider_pipe_never_more(
        bore in 0.01..0.2, length in 1.0..500.0, litres in 0.01..20.0, more in 1.0..3.0,
    ) {
        let flow = litres / 1000.0;
        let loss = |bore, length, flow| plastic(bore, length, 2.0).darcy_m(flow);
        let here = loss(bore, length, flow);
        prop_assert!(loss(bore, length * more, flow) >= here);
        prop_assert!(loss(bore, length, flow * more) >= here);
        prop_assert!(loss(bore * more, length, flow) <= here * 1.000_001);
        prop_assert!((plastic(bore, length, 2.0).flow_for(0.5) / plastic(bore, length, 2.0).flow_for(0.5 * more)) <= 1.0);
    }
}

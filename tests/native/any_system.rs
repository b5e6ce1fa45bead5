//! Random systems and weather for the laws.

use chrono::NaiveDate;
use eavewater::engine::rain::weather::{Origin, Weather};
use eavewater::quantity::{Area, Bore, Count, Days, Depth, Flow, Hours, Length, Money, Share, Volume};
use eavewater::site::barrier::{Barrier, BarrierKind};
use eavewater::site::climate::Climate;
use eavewater::site::feed::{Diverter, Drain, Feed};
use eavewater::site::findings::findings;
use eavewater::site::garden::{Crop, Garden, Soil, Watering};
use eavewater::site::hauling::Hauling;
use eavewater::site::part::PartId;
use eavewater::site::pump::Pump;
use eavewater::site::rationing::{Cut, RationStep};
use eavewater::site::roof::{Material, Outlet, RoofSection};
use eavewater::site::system::System;
use eavewater::site::tank::{Build, Cover, OverflowTo, Tank};
use eavewater::site::trunk::TrunkLine;
use eavewater::site::uses::{Amount, Class, Use};
use eavewater::site::{Shape, ShapeKind};
use proptest::collection::vec;
use proptest::prelude::*;

const TANK: u32 = 100;
const FEED: u32 = 200;

fn share() -> impl Strategy<Value = f64> {
    prop_oneof![1 => Just(0.0), 1 => Just(1.0), 4 => 0.0..1.0]
}

fn section(number: usize, feeds: usize) -> impl Strategy<Value = RoofSection> {
    (0.0..200.0, share(), 0.0..2.0, share(), 0..feeds, 0..feeds).prop_map(
        move |(area, coefficient, wetting, taken, first, second)| RoofSection {
            id: PartId(number as u32),
            name: format!("Roof {number}"),
            material: Material::Other,
            area: Area::square_metres(area),
            runoff_coefficient: Share::of_one(coefficient),
            wetting_loss: Depth::millimetres(wetting),
            outlets: vec![
                Outlet { feed: PartId(FEED + first as u32), share: Share::of_one(taken / 2.0) },
                Outlet { feed: PartId(FEED + second as u32), share: Share::of_one(taken / 3.0) },
            ],
        },
    )
}

fn diverter() -> impl Strategy<Value = Option<Diverter>> {
    let drain = prop_oneof![
        (0.0..0.01).prop_map(|diameter| Drain::Hole { diameter: Bore::metres(diameter) }),
        (1u32..60).prop_map(|every| Drain::ByHand { every: Days::from_days(f64::from(every)) }),
        Just(Drain::Never),
    ];
    proptest::option::of((0.0..100.0, 0.02..0.3, drain, 0.0..24.0).prop_map(|(litres, bore, drain, storm)| Diverter {
        volume: Volume::litres(litres),
        chamber: Bore::metres(bore),
        drain,
        storm: Hours::from_hours(storm),
    }))
}

fn tank(number: usize, tanks: usize) -> impl Strategy<Value = Tank> {
    let shape = (prop::sample::select(ShapeKind::ALL.to_vec()), 50.0..20_000.0, 0.5..3.0)
        .prop_map(|(kind, litres, height)| Shape::usual(kind, Volume::litres(litres), Length::metres(height)));
    let open = proptest::option::of(0.0..15.0);
    (shape, -2.0..1.0, 0.0..0.3, 0.5..1.0, 0..tanks + 2, 0.0..30.0, open).prop_map(
        move |(shape, floor, outlet, overflow, to, leak, open)| {
            let rim = shape.height();
            Tank {
                id: PartId(TANK + number as u32),
                name: format!("Tank {number}"),
                build: Build::AboveGround,
                shape,
                floor: Length::metres(floor),
                outlet: Length::metres(outlet * rim),
                overflow: Length::metres(overflow * rim),
                overflow_to: match to {
                    0 => OverflowTo::Ground,
                    1 => OverflowTo::Garden,
                    other => OverflowTo::Tank(PartId(TANK + other as u32 - 2)),
                },
                leak: Flow::litres_a_day(if leak > 10.0 { 0.0 } else { leak }),
                cover: open.map_or(Cover::Covered, |mm| Cover::Uncovered { evaporation: [Depth::millimetres(mm); 12] }),
            }
        },
    )
}

fn garden() -> impl Strategy<Value = Garden> {
    let plants = (0.0..300.0, 0.1..1.5, 0u8..12, prop_oneof![Just(None), (0u8..12).prop_map(Some)]);
    let soil = (0.02..0.4, 0.1..3.0, 0.05..0.9, 0.1..1.0);
    (plants, soil).prop_map(|((area, coefficient, from, to), (holds, depth, depletion, efficiency))| Garden {
        area: Area::square_metres(area),
        crop: Crop::Other,
        crop_coefficient: Count::number(coefficient),
        grows_from: from,
        grows_to: to.unwrap_or((from + 11) % 12),
        soil: Soil::Other,
        available_water: Share::of_one(holds),
        root_depth: Length::metres(depth),
        depletion: Share::of_one(depletion),
        watering: Watering::Other,
        efficiency: Share::of_one(efficiency),
    })
}

fn climate() -> impl Strategy<Value = Climate> {
    prop_oneof![
        prop::array::uniform12(0.0..12.0).prop_map(|mm_a_day| Climate::ReferenceEt { mm_a_day }),
        (-90.0..90.0, prop::array::uniform12(-30.0..30.0), prop::array::uniform12(0.0..25.0)).prop_map(
            |(latitude, least_c, span): (f64, [f64; 12], [f64; 12])| Climate::Temperatures {
                latitude,
                least_c,
                greatest_c: std::array::from_fn(|month| least_c[month] + span[month]),
            }
        ),
    ]
}

fn ration_step(number: usize, tanks: usize, uses: usize) -> impl Strategy<Value = RationStep> {
    let cut = (0..uses, share())
        .prop_map(|(using, share)| Cut { using: PartId(300 + using as u32), share: Share::of_one(share) });
    (0..tanks, share(), vec(cut, 0..3)).prop_map(move |(tank, below, cuts)| RationStep {
        id: PartId(700 + number as u32),
        name: format!("Step {number}"),
        tank: Some(PartId(TANK + tank as u32)),
        below: Share::of_one(below),
        cuts,
    })
}

fn rationing(tanks: usize, uses: usize) -> impl Strategy<Value = Vec<RationStep>> {
    (0usize..3)
        .prop_flat_map(move |steps| (0..steps).map(|number| ration_step(number, tanks, uses)).collect::<Vec<_>>())
}

fn using(number: usize, tanks: usize) -> impl Strategy<Value = Use> {
    let amount = prop_oneof![
        (0.0..800.0).prop_map(|litres| Amount::Daily(Flow::litres_a_day(litres))),
        (0.0..100.0, 0.0..6.0)
            .prop_map(|(each, heads)| Amount::PerHead { each: Flow::litres_a_day(each), heads: Count::number(heads) }),
        prop::array::uniform12(0.0..300.0).prop_map(|months| Amount::Monthly(months.map(Flow::litres_a_day))),
        (0.0..500.0, 0.0..7.0)
            .prop_map(|(each, week)| Amount::PerEvent { each: Volume::litres(each), a_week: Count::number(week) }),
        garden().prop_map(Amount::Garden),
    ];
    let barriers = prop::collection::vec(0..BarrierKind::ALL.len(), 0..4);
    (amount, 0..tanks, any::<bool>(), barriers).prop_map(move |(amount, tank, outdoor, barriers)| Use {
        id: PartId(300 + number as u32),
        name: format!("Use {number}"),
        class: Class::House,
        tank: Some(PartId(TANK + tank as u32)),
        amount,
        outdoor,
        barriers: (1000 + 10 * number as u32..)
            .zip(barriers)
            .map(|(id, kind)| Barrier { id: PartId(id), kind: BarrierKind::ALL[kind] })
            .collect(),
    })
}

/// A system that can run. Joints that would make a loop are left out.
pub fn system() -> impl Strategy<Value = System> {
    (0usize..4, 1usize..4, 1usize..5, 1usize..5).prop_flat_map(|(sections, feeds, tanks, uses)| {
        let sections: Vec<_> = (0..sections).map(|number| section(number, feeds)).collect();
        let feeds: Vec<_> = (0..feeds)
            .map(|number| {
                (share(), diverter(), 0..tanks).prop_map(move |(capture, diverter, tank)| Feed {
                    id: PartId(FEED + number as u32),
                    name: format!("Feed {number}"),
                    tank: Some(PartId(TANK + tank as u32)),
                    capture: Share::of_one(capture),
                    diverter,
                })
            })
            .collect();
        let rationing = rationing(tanks, uses);
        let uses: Vec<_> = (0..uses).map(|number| using(number, tanks)).collect();
        let joints = (
            vec((0..tanks, 0..tanks, any::<bool>()), 0..4),
            vec((0..tanks, 0..tanks, share(), share(), 0.0..3000.0), 0..3),
            proptest::option::of((0..tanks, share(), 1.0..9000.0, 0u32..5)),
        );
        let tanks: Vec<_> = (0..tanks).map(|number| tank(number, tanks)).collect();
        let more = (rationing, climate());
        (sections, feeds, tanks, uses, joints, more).prop_map(
            |(sections, feeds, tanks, uses, joints, (rationing, climate))| {
                let mut system =
                    System { sections, feeds, tanks, uses, rationing, climate: Some(climate), ..System::default() };
                drop_loops(&mut system);
                join(&mut system, joints);
                system
            },
        )
    })
}

type Joints = (Vec<(usize, usize, bool)>, Vec<(usize, usize, f64, f64, f64)>, Option<(usize, f64, f64, u32)>);

fn join(system: &mut System, (lines, pumps, hauling): Joints) {
    let tank = |at: usize| Some(PartId(TANK + at as u32));
    for (number, (a, b, open)) in lines.into_iter().enumerate() {
        let id = PartId(400 + number as u32);
        let line = TrunkLine { id, name: format!("Line {number}"), ends: [tank(a), tank(b)], open };
        try_with(system, |system| system.trunk_lines.push(line));
    }
    for (number, (a, b, start, span, limit)) in pumps.into_iter().enumerate() {
        let pump = Pump {
            id: PartId(500 + number as u32),
            name: format!("Pump {number}"),
            from: tank(a),
            to: tank(b),
            start: Share::of_one(start),
            stop: Share::of_one(start + span * (1.0 - start)),
            limit: Flow::litres_a_day(limit),
        };
        try_with(system, |system| system.pumps.push(pump));
    }
    if let Some((at, trigger, load, notice)) = hauling {
        system.hauling.push(Hauling {
            id: PartId(600),
            name: "Hauling".to_owned(),
            tank: tank(at),
            trigger: Share::of_one(trigger),
            load: Volume::litres(load),
            price: Money::coins(90.0),
            notice: Days::from_days(f64::from(notice)),
        });
    }
}

fn try_with(system: &mut System, change: impl FnOnce(&mut System)) {
    let before = system.clone();
    change(system);
    if !findings(system).is_empty() {
        *system = before;
    }
}

fn drop_loops(system: &mut System) {
    let wanted: Vec<OverflowTo> = system.tanks.iter().map(|tank| tank.overflow_to).collect();
    system.tanks.iter_mut().for_each(|tank| tank.overflow_to = OverflowTo::Ground);
    for (at, to) in wanted.into_iter().enumerate() {
        try_with(system, |system| system.tanks[at].overflow_to = to);
    }
}

/// Up to a year of days, most of them dry, from the end of February of a leap year on.
pub fn weather() -> impl Strategy<Value = Weather> {
    vec(prop_oneof![3 => Just(0.0), 1 => 0.0..5.0, 1 => 0.0..80.0], 1..380).prop_map(|depths_mm| Weather {
        dates: NaiveDate::from_ymd_opt(2004, 2, 20).unwrap().iter_days().take(depths_mm.len()).collect(),
        depths_mm,
        filled_days: 0,
        left_out_years: Vec::new(),
        origin: Origin::Measured,
    })
}

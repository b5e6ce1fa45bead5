//! The demo: an invented household in an invented place, with invented rain. Its story: two joined tanks whose rims
//! stand at different heights, a porch roof not yet collected; it spills in the wet months and runs dry at the end
//! of the dry ones. Its names are of the language in which it is made.

use chrono::{Datelike, NaiveDate};

use super::barrier::{Barrier, BarrierKind};
use super::details::{Detail, Details, Entered};
use super::feed::{Diverter, Drain, Feed, USUAL_DIVERTER};
use super::household::Site;
use super::new_part;
use super::part::PartId;
use super::rain::RainRecord;
use super::roof::{Material, Outlet, RoofSection};
use super::system::System;
use super::tank::{Build, OverflowTo, Tank};
use super::trunk::TrunkLine;
use super::uses::{Amount, Class, Use};
use crate::quantity::{Area, Bore, Count, Flow, Length, Share, Volume};

const SOUTH: PartId = PartId(1);
const NORTH: PartId = PartId(2);
const PORCH: PartId = PartId(3);
const KITCHEN_CORNER: PartId = PartId(4);
const YARD_CORNER: PartId = PartId(5);
const NEW_TANK: PartId = PartId(6);
const OLD_TANK: PartId = PartId(7);
const BARREL: PartId = PartId(8);
const TRUNK_LINE: PartId = PartId(9);

/// What its drinking water passes.
const BARRIERS: [Barrier; 3] = [
    Barrier { id: PartId(14), kind: BarrierKind::Sediment },
    Barrier { id: PartId(15), kind: BarrierKind::Carbon },
    Barrier { id: PartId(16), kind: BarrierKind::Ultraviolet },
];

/// The demo household's site.
pub fn site() -> Site {
    let system = System {
        sections: vec![
            section(SOUTH, said!("South roof", "Techo sur"), 64.0, Material::Metal, Some(KITCHEN_CORNER)),
            section(NORTH, said!("North roof", "Techo norte"), 58.0, Material::Metal, Some(YARD_CORNER)),
            section(PORCH, said!("Porch", "Alero"), 22.0, Material::Shingle, None),
        ],
        feeds: vec![
            feed(KITCHEN_CORNER, said!("Kitchen corner", "Esquina de la cocina"), NEW_TANK, USUAL_DIVERTER),
            feed(
                YARD_CORNER,
                said!("Yard corner", "Esquina del patio"),
                OLD_TANK,
                Diverter {
                    volume: Volume::litres(12.0),
                    drain: Drain::Hole { diameter: Bore::metres(0.0015) },
                    ..USUAL_DIVERTER
                },
            ),
        ],
        tanks: tanks(),
        trunk_lines: vec![TrunkLine {
            id: TRUNK_LINE,
            name: phrase!("Trunk line", "Tubería de unión").to_owned(),
            ends: [Some(NEW_TANK), Some(OLD_TANK)],
            open: true,
        }],
        pumps: Vec::new(),
        uses: uses(),
        hauling: Vec::new(),
        details: details(),
        ..System::default()
    };
    Site { name: phrase!("Emberlow (demo)", "Emberlow (ejemplo)").to_owned(), system, ..Site::default() }
}

/// Cartridges for 10,000 L each, a class A lamp for 30 L/min; the house is on a pump.
fn details() -> Details {
    let of = |barrier: usize, detail, value| Entered { of: Some(BARRIERS[barrier].id), detail, value };
    Details(vec![
        of(0, Detail::RatedLitres, 10_000.0),
        of(1, Detail::RatedLitres, 10_000.0),
        of(2, Detail::LampClass, 1.0),
        of(2, Detail::LampFlow, 30.0),
        Entered { of: Some(NEW_TANK), detail: Detail::SuppliedBy, value: 1.0 },
    ])
}

fn section(id: PartId, name: &str, area_m2: f64, material: Material, feed: Option<PartId>) -> RoofSection {
    RoofSection {
        id,
        name: name.to_owned(),
        material,
        area: Area::square_metres(area_m2),
        runoff_coefficient: material.runoff_coefficient(),
        wetting_loss: new_part::USUAL_WETTING_LOSS,
        outlets: feed.map(|feed| Outlet { feed, share: Share::of_one(1.0) }).into_iter().collect(),
    }
}

fn feed(id: PartId, name: &str, tank: PartId, diverter: Diverter) -> Feed {
    Feed { id, name: name.to_owned(), tank: Some(tank), capture: super::feed::USUAL_CAPTURE, diverter: Some(diverter) }
}

fn tanks() -> Vec<Tank> {
    let tank = |id, name: &str, litres, height| {
        new_part::tank(id, name.to_owned(), Volume::litres(litres), Length::metres(height))
    };
    vec![
        tank(NEW_TANK, said!("New tank", "Tanque nuevo"), 9_000.0, 2.4),
        Tank {
            floor: Length::metres(0.2),
            overflow_to: OverflowTo::Tank(BARREL),
            ..tank(OLD_TANK, said!("Old tank", "Tanque viejo"), 5_000.0, 1.9)
        },
        Tank {
            build: Build::Barrel,
            overflow_to: OverflowTo::Garden,
            ..tank(BARREL, said!("Garden barrel", "Barril"), 300.0, 0.9)
        },
    ]
}

fn uses() -> Vec<Use> {
    let per_head = |each, heads| Amount::PerHead { each: Flow::litres_a_day(each), heads: Count::number(heads) };
    let watering = [0.0, 0.0, 0.0, 4.0, 8.0, 12.0, 15.0, 15.0, 8.0, 4.0, 0.0, 0.0].map(Flow::litres_a_day);
    let using = |id, name: &str, class, tank, amount, outdoor| Use {
        id: PartId(id),
        name: name.to_owned(),
        class,
        tank: Some(tank),
        amount,
        outdoor,
        barriers: if class == Class::Drinking { BARRIERS.to_vec() } else { Vec::new() },
    };
    vec![
        using(
            10,
            said!("Drinking and cooking", "Beber y cocinar"),
            Class::Drinking,
            NEW_TANK,
            per_head(8.0, 3.0),
            false,
        ),
        using(11, said!("Washing and toilet", "Aseo e inodoro"), Class::House, NEW_TANK, per_head(20.0, 3.0), false),
        using(12, said!("Hens", "Gallinas"), Class::Animals, OLD_TANK, per_head(0.4, 10.0), true),
        using(
            13,
            said!("Beans and herbs", "Frijoles y hierbas"),
            Class::Garden,
            BARREL,
            Amount::Monthly(watering),
            true,
        ),
    ]
}

/// Chance of rain on a day after a dry day and after a wet one, and the mean depth in mm of a rain day: January to
/// December, invented.
const MONTHS: [(f64, f64, f64); 12] = [
    (0.30, 0.62, 9.5),
    (0.28, 0.60, 9.0),
    (0.24, 0.55, 8.0),
    (0.18, 0.48, 7.0),
    (0.10, 0.38, 6.0),
    (0.07, 0.30, 6.0),
    (0.05, 0.26, 6.0),
    (0.05, 0.26, 7.0),
    (0.09, 0.36, 8.0),
    (0.16, 0.48, 9.0),
    (0.26, 0.58, 10.0),
    (0.31, 0.62, 10.0),
];
const FIRST_YEAR: i32 = 2011;
const LAST_YEAR: i32 = 2022;

/// The demo household's rain: twelve years, drawn from the invented months above by a fixed sequence of numbers.
pub fn rain() -> RainRecord {
    let start = NaiveDate::from_ymd_opt(FIRST_YEAR, 1, 1).unwrap_or(NaiveDate::MIN);
    let mut draws = Draws(20_110_101);
    let mut wet = false;
    let depths_mm = start
        .iter_days()
        .take_while(|day| day.year() <= LAST_YEAR)
        .map(|day| {
            let (after_dry, after_wet, mean) = MONTHS[day.month0() as usize % 12];
            wet = draws.next() < if wet { after_wet } else { after_dry };
            // Depths spread exponentially about the mean, to a tenth of a millimetre as a gauge is read.
            let depth = -mean * libm::log(1.0 - draws.next());
            Some(if wet { (depth * 10.0).round().max(1.0) / 10.0 } else { 0.0 })
        })
        .collect();
    RainRecord {
        source: phrase!("Invented rain of an invented place", "Lluvia inventada de un lugar inventado").to_owned(),
        start,
        depths_mm,
    }
}

/// A fixed sequence of numbers from 0 to below 1: a linear congruential generator with the multiplier and increment
/// of Knuth's MMIX (The Art of Computer Programming 2, 3.3.4, from memory).
struct Draws(u64);

impl Draws {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        #[expect(clippy::cast_precision_loss, reason = "53 bits fit")]
        let upper_bits = (self.0 >> 11) as f64;
        upper_bits / (1u64 << 53) as f64
    }
}

//! Gutter, outlet, downspout and screen for a design rain.

use super::flush::roof_area_m2;
use super::{Asked, Check, Figure, Subject, chosen};
use crate::engine::balance::first_flush::{GRAVITY, HOLE_DISCHARGE};
use crate::quantity::area::SQUARE_METRES_PER_SQUARE_FOOT;
use crate::quantity::depth::MILLIMETRES_PER_INCH;
use crate::quantity::length::METRES_PER_INCH;
use crate::quantity::volume::LITRES_PER_US_GALLON;
use crate::site::circle;
use crate::site::details::Detail;
use crate::site::feed::Feed;

const MINUTES_AN_HOUR: f64 = 60.0;
const SECONDS_A_MINUTE: f64 = 60.0;
const LITRES_PER_CUBIC_METRE: f64 = 1000.0;
const MILLIMETRES_PER_METRE: f64 = 1000.0;

/// By how much a pitch catches more than its plan area, wind-driven rain counted: flat to 3 in 12, to 5, 8, 11, steeper.
///
/// Source: the pitch factors usual in gutter sizing (as a home magazine prints them).
pub const PITCH_FACTORS: [f64; 5] = [1.0, 1.05, 1.1, 1.2, 1.3];

/// Semicircular gutters by diameter in inches: ft² of roof that each drains at 1 in/h with a fall of 1/16, 1/8, 1/4 and
/// 1/2 in a foot. Source: International Plumbing Code 2000–2012, Table 1106.6 (from memory).
pub const SEMICIRCULAR: [(f64, [f64; 4]); 7] = [
    (3.0, [680.0, 960.0, 1360.0, 1920.0]),
    (4.0, [1440.0, 2040.0, 2880.0, 4080.0]),
    (5.0, [2500.0, 3520.0, 5000.0, 7080.0]),
    (6.0, [3840.0, 5440.0, 7680.0, 11_080.0]),
    (7.0, [5520.0, 7800.0, 11_040.0, 15_600.0]),
    (8.0, [7960.0, 11_200.0, 15_920.0, 22_400.0]),
    (10.0, [14_400.0, 20_400.0, 28_800.0, 40_000.0]),
];
/// The falls of that table.
const TABLE_FALLS: [f64; 4] = [1.0 / 192.0, 1.0 / 96.0, 1.0 / 48.0, 1.0 / 24.0];

/// Vertical leaders by nominal inches: flow in US gal/min. Source: International Plumbing Code 2015, Table 1106.3.
pub const LEADERS: [(f64, f64); 6] =
    [(2.0, 30.0), (3.0, 92.0), (4.0, 192.0), (5.0, 360.0), (6.0, 563.0), (8.0, 1208.0)];

/// Share of a gutter's nominal capacity that may be counted on (EN 12056-3:2000 clause 5).
const DESIGN_SHARE: f64 = 0.9;

/// Shapes of gutters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GutterShape {
    /// Half a circle.
    HalfRound,
    /// Upright walls.
    Box,
    /// Leaning walls.
    Trapezoid,
}

/// A gutter's cross-section, in m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gutter {
    /// Its shape.
    pub shape: GutterShape,
    /// Width at the top.
    pub width_m: f64,
    /// Depth to the spilling edge; half the width for a half-round one.
    pub depth_m: f64,
    /// Width at the bottom.
    pub sole_m: f64,
}

impl Gutter {
    /// Area to the spilling edge, in m².
    pub fn area_m2(&self) -> f64 {
        match self.shape {
            GutterShape::HalfRound => circle(self.width_m) / 2.0,
            GutterShape::Box => self.width_m * self.depth_m,
            GutterShape::Trapezoid => (self.width_m + self.sole_m) / 2.0 * self.depth_m,
        }
    }

    /// Depth of water when full, in m.
    pub fn full_m(&self) -> f64 {
        if self.shape == GutterShape::HalfRound { self.width_m / 2.0 } else { self.depth_m }
    }

    /// What a short level gutter may carry to a free outlet, in L/s.
    ///
    /// Half-round: 0.9 · 2.78e-5 · A^1.25 (A in mm², EN 12056-3:2000 clause 5). Others: 0.9 · 3.48e-5 · A^1.25 with a
    /// depth factor (from memory), which the standard draws and which critical flow at a free outlet makes (depth ÷
    /// width at the top)^¼.
    pub fn level_l_s(&self) -> f64 {
        let area_mm2 = self.area_m2() * MILLIMETRES_PER_METRE * MILLIMETRES_PER_METRE;
        let nominal = match self.shape {
            GutterShape::HalfRound => 2.78e-5,
            GutterShape::Box | GutterShape::Trapezoid => 3.48e-5 * (self.depth_m / self.width_m).sqrt().sqrt(),
        };
        // a^1.25 without a power function: a · √√a.
        DESIGN_SHARE * nominal * area_mm2 * area_mm2.sqrt().sqrt()
    }
}

/// By how much length and fall change what a gutter carries. `length` is in depths of water.
///
/// Source: EN 12056-3:2000 Table 6 (from memory): falls under 4 mm in a metre count as level; from 10 on nothing more is
/// gained.
pub fn length_factor(length: f64, fall: f64) -> f64 {
    const LENGTHS: [f64; 8] = [50.0, 75.0, 100.0, 125.0, 150.0, 175.0, 200.0, 500.0];
    const FALLS: [(f64, [f64; 8]); 5] = [
        (0.003, [1.0, 0.97, 0.93, 0.90, 0.86, 0.83, 0.80, 0.60]),
        (0.004, [1.0, 1.02, 1.03, 1.05, 1.07, 1.08, 1.10, 1.10]),
        (0.006, [1.0, 1.04, 1.08, 1.12, 1.17, 1.21, 1.25, 1.25]),
        (0.008, [1.0, 1.07, 1.13, 1.20, 1.27, 1.33, 1.40, 1.40]),
        (0.010, [1.0, 1.09, 1.18, 1.27, 1.37, 1.46, 1.55, 1.55]),
    ];
    // The row of the greatest fall that this one reaches: no credit for what lies between.
    let row = FALLS.iter().rev().find(|(least, _)| fall >= *least).map_or(&FALLS[0].1, |(_, row)| row);
    let length = length.clamp(LENGTHS[0], LENGTHS[LENGTHS.len() - 1]);
    let after = LENGTHS.iter().position(|end| *end >= length).unwrap_or(LENGTHS.len() - 1).max(1);
    let part = (length - LENGTHS[after - 1]) / (LENGTHS[after] - LENGTHS[after - 1]);
    row[after - 1] + part * (row[after] - row[after - 1])
}

/// What the code's table gives a half-round gutter, in L/min; none below its least size or fall, or above its sizes.
pub fn table_l_min(diameter_m: f64, fall: f64) -> Option<f64> {
    const ROUNDING: f64 = 1e-6;
    let inches = diameter_m / METRES_PER_INCH + ROUNDING;
    let row = SEMICIRCULAR.iter().rev().find(|(size, _)| inches >= *size)?;
    let column = TABLE_FALLS.iter().rposition(|least| fall + ROUNDING >= *least)?;
    Some(row.1[column] * SQUARE_METRES_PER_SQUARE_FOOT * MILLIMETRES_PER_INCH / MINUTES_AN_HOUR)
}

/// What a round outlet in a gutter's floor passes under a head, in L/s: a weir up to half its diameter, an orifice above.
///
/// Source: EN 12056-3:2000 Table 7 (from memory; both meet at half the diameter, and the second is an orifice of
/// C = 0.61): k·D·h^1.5/7500 and k·D²·√h/15000 with mm, k = 0.5 with a strainer.
pub fn outlet_l_s(diameter_m: f64, head_m: f64, strainer: bool) -> f64 {
    let (diameter, head) = (diameter_m * MILLIMETRES_PER_METRE, head_m * MILLIMETRES_PER_METRE);
    let factor = if strainer { 0.5 } else { 1.0 };
    if head <= diameter / 2.0 {
        factor * diameter * head * head.sqrt() / 7500.0
    } else {
        factor * diameter * diameter * head.sqrt() / 15_000.0
    }
}

/// What an upright pipe carries running 7/24 full, in L/min: 27.8 · r^(5/3) · d^(8/3) US gal/min, d in inches.
///
/// Source: the formula behind Table 13.6.1 of the National Standard Plumbing Code 2006, which it gives to the last digit
/// (Wyly & Eaton, National Bureau of Standards Monograph 31, from memory).
pub fn leader_l_min(diameter_m: f64) -> f64 {
    const FULL: f64 = 7.0 / 24.0;
    let inches = diameter_m / METRES_PER_INCH;
    let five_thirds = libm::pow(FULL, 5.0 / 3.0);
    let eight_thirds = libm::pow(inches, 8.0 / 3.0);
    27.8 * five_thirds * eight_thirds * LITRES_PER_US_GALLON
}

/// What the code's table of vertical leaders gives, in L/min: that of the nominal size reached; none below 2 in.
pub fn leader_table_l_min(diameter_m: f64) -> Option<f64> {
    // A nominal size is a little more than its pipe's inside.
    const NOMINAL: f64 = 1.05;
    let inches = diameter_m / METRES_PER_INCH * NOMINAL;
    LEADERS.iter().rev().find(|(size, _)| inches >= *size).map(|(_, gallons)| gallons * LITRES_PER_US_GALLON)
}

/// What a design rain brings to a feed, in L/min: all that falls, since a hard rain on a wet roof loses little.
pub fn design_flow(asked: &Asked<'_>, check: &mut Check, feed: &Feed) -> f64 {
    let intensity = check.of_site(asked, Detail::DesignIntensity);
    let mut effective_m2 = 0.0;
    for section in &asked.site.system.sections {
        let share: f64 =
            section.outlets.iter().filter(|outlet| outlet.feed == feed.id).map(|outlet| outlet.share.get()).sum();
        if share > 0.0 {
            let pitch = check.detail_of(asked, Some(section.id), Detail::Pitch, Detail::Pitch.row().usual);
            effective_m2 += share * section.area.get() * PITCH_FACTORS[chosen(pitch).min(4)];
        }
    }
    effective_m2 * intensity / MINUTES_AN_HOUR
}

pub(super) fn checks(asked: &Asked<'_>, feed: &Feed, checks: &mut Vec<Check>) {
    checks.push(gutter(asked, feed));
    checks.push(downspout(asked, feed));
    checks.push(screen(asked, feed));
    checks.push(inlet(asked, feed));
}

fn gutter_of(asked: &Asked<'_>, check: &mut Check) -> Gutter {
    let shape = [GutterShape::HalfRound, GutterShape::Box, GutterShape::Trapezoid]
        [chosen(check.detail(asked, Detail::GutterShape)).min(2)];
    let width_m = check.detail(asked, Detail::GutterWidth);
    let (mut depth_m, mut sole_m) = (width_m / 2.0, width_m);
    if shape != GutterShape::HalfRound {
        depth_m = check.detail(asked, Detail::GutterDepth);
    }
    if shape == GutterShape::Trapezoid {
        sole_m = check.detail(asked, Detail::GutterSole);
    }
    Gutter { shape, width_m, depth_m, sole_m }
}

fn gutter(asked: &Asked<'_>, feed: &Feed) -> Check {
    let mut check = Check::new(feed.id, Subject::Gutter);
    check.known(Figure::RoofArea, roof_area_m2(&asked.site.system, feed));
    let flow = design_flow(asked, &mut check, feed);
    let outlets = check.detail(asked, Detail::Downspouts);
    let gutter = gutter_of(asked, &mut check);
    let fall = check.detail(asked, Detail::GutterSlope);
    let length = check.detail(asked, Detail::GutterLength);
    let factor = length_factor(length / gutter.full_m(), fall);
    let level = check.finds(Figure::GutterLevel, gutter.level_l_s() * SECONDS_A_MINUTE);
    check.finds(Figure::GutterFactor, factor);
    let half_round = gutter.shape == GutterShape::HalfRound;
    if let Some(table) = table_l_min(gutter.width_m, fall).filter(|_| half_round) {
        check.finds(Figure::GutterTable, table);
    }
    check.judge(Figure::GutterFlow, level * factor, flow / outlets);
    check
}

/// Head over an outlet as a share of the full depth of a gutter that runs to it (EN 12056-3:2000, from memory).
const HEAD_SHARE: f64 = 0.47;

fn downspout(asked: &Asked<'_>, feed: &Feed) -> Check {
    let mut check = Check::new(feed.id, Subject::Downspout);
    let area = check.known(Figure::RoofArea, roof_area_m2(&asked.site.system, feed));
    let flow = design_flow(asked, &mut check, feed);
    let bore = check.detail(asked, Detail::Downspout);
    let count = check.detail(asked, Detail::Downspouts);
    let strainer = check.detail(asked, Detail::Strainer) > 0.5;
    let gutter = gutter_of(asked, &mut check);
    let outlet = outlet_l_s(bore, HEAD_SHARE * gutter.full_m(), strainer) * SECONDS_A_MINUTE;
    let outlet = check.finds(Figure::OutletFlow, outlet);
    let leader = check.finds(Figure::LeaderFlow, leader_l_min(bore));
    if let Some(table) = leader_table_l_min(bore) {
        check.finds(Figure::LeaderTable, table);
    }
    let each = outlet.min(leader);
    if each > 0.0 {
        check.finds(Figure::DownspoutsWanted, (flow / each).ceil().max(1.0));
    }
    // One square inch for 100 ft² of roof.
    let rule_m2 = area * METRES_PER_INCH * METRES_PER_INCH / (100.0 * SQUARE_METRES_PER_SQUARE_FOOT);
    check.finds(Figure::RuleBore, (rule_m2 / count * 4.0 / std::f64::consts::PI).sqrt());
    check.judge(Figure::DownspoutFlow, each * count, flow);
    check
}

/// Water standing on a screen before it runs past, in m (common practice, no source).
const ON_SCREEN_M: f64 = 0.02;

fn screen(asked: &Asked<'_>, feed: &Feed) -> Check {
    let mut check = Check::new(feed.id, Subject::Screen);
    let flow = design_flow(asked, &mut check, feed);
    let bore = check.detail(asked, Detail::ScreenBore);
    let open = check.detail(asked, Detail::ScreenOpen);
    let blocked = check.detail(asked, Detail::ScreenBlocked);
    let open_m2 = circle(bore) * open * (1.0 - blocked);
    let passes = HOLE_DISCHARGE * open_m2 * (2.0 * GRAVITY * ON_SCREEN_M).sqrt() * LITRES_PER_CUBIC_METRE;
    check.judge(Figure::ScreenFlow, passes * SECONDS_A_MINUTE, flow);
    check
}

/// The last piece of pipe, into the tank: all downspouts of the feed come together in it.
fn inlet(asked: &Asked<'_>, feed: &Feed) -> Check {
    let mut check = Check::new(feed.id, Subject::Inlet);
    let flow = design_flow(asked, &mut check, feed);
    let bore = check.detail(asked, Detail::InletBore);
    check.judge(Figure::LeaderFlow, leader_l_min(bore), flow);
    check
}

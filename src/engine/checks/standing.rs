//! Does a tank stand: full on its pad, empty in the wind, buried in wet ground.

use super::now;
use super::overflow::segment;
use super::{Asked, Check, Figure, Subject, Verdict, chosen};
use crate::engine::balance::first_flush::GRAVITY;
use crate::quantity::following::BEARING;
use crate::site::Shape;
use crate::site::circle;
use crate::site::details::Detail;
use crate::site::tank::{Build, Cover, Tank};

const LITRES_PER_CUBIC_METRE: f64 = 1000.0;
const NEWTONS_A_KILONEWTON: f64 = 1000.0;
/// Fresh water, kg/m³.
const WATER: f64 = 1000.0;
/// Concrete and moist backfill, kg/m³: 150 and 120 lb/ft³ (as an engineer's buoyancy sheet for a buried tank takes them,
/// 1999); backfill under water weighs what it displaces less.
const CONCRETE: f64 = 2403.0;
const BACKFILL: f64 = 1922.0;

/// A tank as wind, soil and water meet it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Area that it covers, in m².
    pub footprint_m2: f64,
    /// Height over its floor, in m.
    pub height_m: f64,
    /// Area that faces the wind, in m², the greatest.
    pub facing_m2: f64,
    /// Length of its foot along the wind, the shortest, in m: over half of it an empty tank tips.
    pub foot_m: f64,
    /// Whether it is round to the wind.
    pub round: bool,
}

/// The body of a shape, its wall left out of account.
pub fn body(shape: &Shape) -> Body {
    match shape {
        Shape::UprightCylinder { diameter, height } | Shape::ConeBottom { diameter, height, .. } => Body {
            footprint_m2: circle(diameter.get()),
            height_m: height.get(),
            facing_m2: diameter.get() * height.get(),
            foot_m: diameter.get(),
            round: true,
        },
        Shape::Box { length, width, height } => Body {
            footprint_m2: length.get() * width.get(),
            height_m: height.get(),
            facing_m2: length.get().max(width.get()) * height.get(),
            foot_m: length.get().min(width.get()),
            round: false,
        },
        Shape::LyingCylinder { diameter, length } => Body {
            footprint_m2: diameter.get() * length.get(),
            height_m: diameter.get(),
            facing_m2: diameter.get() * length.get(),
            foot_m: diameter.get(),
            round: false,
        },
        Shape::Table(_) => {
            let height = shape.height();
            let footprint_m2 = shape.full_volume().get() / LITRES_PER_CUBIC_METRE / height;
            let across = (footprint_m2 * 4.0 / std::f64::consts::PI).sqrt();
            Body { footprint_m2, height_m: height, facing_m2: across * height, foot_m: across, round: true }
        }
    }
}

/// Allowable bearing of bedrock, layered rock, sandy gravel, sand, clay or silt, in lb/ft².
///
/// Source: International Building Code Table 1806.2.
pub const BEARING_PSF: [f64; 5] = [12_000.0, 4000.0, 3000.0, 2000.0, 1500.0];

/// Velocity pressure of wind, in N/m²: 0.613 · Kz · Kzt · Kd · V² (ASCE 7, SI form), on level ground.
pub fn velocity_pressure_n_m2(speed_m_s: f64, exposure: f64, directionality: f64) -> f64 {
    0.613 * exposure * directionality * speed_m_s * speed_m_s
}

/// Velocity pressure exposure coefficient at a height: 2.01 · (z/zg)^(2/α), z at least 15 ft (ASCE 7-05 Table 6-3).
/// Exposure 0 to 2 is B to D.
pub fn exposure_coefficient(height_m: f64, exposure: usize) -> f64 {
    use crate::quantity::length::METRES_PER_FOOT;
    const FEET: [(f64, f64); 3] = [(7.0, 1200.0), (9.5, 900.0), (11.5, 700.0)];
    let (alpha, gradient_ft) = FEET[exposure.min(2)];
    let feet = (height_m / METRES_PER_FOOT).max(15.0);
    2.01 * libm::pow(feet / gradient_ft, 2.0 / alpha)
}

/// Directionality of round tanks (ASCE 7-16 Table 26.6-1: 1.0, from memory) and gust factor of rigid bodies (0.85).
const DIRECTIONALITY: f64 = 1.0;
const GUST: f64 = 0.85;
/// Suction on a lid, flat or low, as a share of the velocity pressure: that of the windward part, taken for all of it (ASCE 7-16
/// section 29.4.2.2, from memory).
const LID_SUCTION: f64 = 0.8;

/// Force coefficient: of an upright cylinder on the ground 0.63 (ASCE 7-16 section 29.4.2.1, from memory), of a slender one up
/// to 0.7 at a height of 25 diameters; of a square body 1.3, 1.4 and 2.0 at 1, 7 and 25 (ASCE 7-10 Figure 29.5-1, from memory).
pub fn force_coefficient(slenderness: f64, round: bool) -> f64 {
    let [low, middle, high] = if round { [0.63, 0.63, 0.7] } else { [1.3, 1.4, 2.0] };
    let between = |from: f64, to: f64, part: f64| from + part.clamp(0.0, 1.0) * (to - from);
    if slenderness <= 7.0 {
        between(low, middle, (slenderness - 1.0) / 6.0)
    } else {
        between(middle, high, (slenderness - 7.0) / 18.0)
    }
}

/// Wind on an empty tank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wind {
    /// Force to the side, in N.
    pub force_n: f64,
    /// Suction on the lid, in N.
    pub lifts_n: f64,
    /// Weight, in N, below which it slides: the force over the friction, and what lifts it.
    pub slides_under_n: f64,
    /// Weight, in N, below which it tips over the edge of its foot.
    pub tips_under_n: f64,
}

/// What wind does to a body: force at half its height, suction at the middle of its lid, if it has one; friction at its foot;
/// water lies level, so that its weight acts at the middle of the foot until it slides or tips.
pub fn wind(body: &Body, has_lid: bool, pressure_n_m2: f64, friction: f64) -> Wind {
    let slenderness = body.height_m / (body.facing_m2 / body.height_m);
    let force_n = pressure_n_m2 * GUST * force_coefficient(slenderness, body.round) * body.facing_m2;
    let tipping_n_m = force_n * body.height_m / 2.0;
    let lifts_n = if has_lid { pressure_n_m2 * GUST * LID_SUCTION * body.footprint_m2 } else { 0.0 };
    Wind {
        force_n,
        lifts_n,
        slides_under_n: if friction > 0.0 { force_n / friction + lifts_n } else { f64::INFINITY },
        tips_under_n: tipping_n_m / (body.foot_m / 2.0) + lifts_n,
    }
}

/// Safety that an empty tank should have against sliding and tipping (common practice, no source).
pub const AGAINST_WIND: f64 = 1.5;
/// Safety against flotation (FEMA 259, Example C7: usual for tanks).
pub const AGAINST_FLOTATION: f64 = 1.3;

/// What an empty tank is taken to weigh: 25 kg for each 1,000 L of plastic, 450 kg of concrete (common practice, no source).
pub fn usual_mass_kg(tank: &Tank) -> f64 {
    let kilograms = if tank.build == Build::Cistern { 450.0 } else { 25.0 };
    tank.shape.full_volume().get() / LITRES_PER_CUBIC_METRE * kilograms
}

pub(super) fn checks(asked: &Asked<'_>, tank: &Tank, checks: &mut Vec<Check>) {
    let body = body(&tank.shape);
    if !(body.footprint_m2 > 0.0 && body.height_m > 0.0 && body.footprint_m2.is_finite()) {
        return;
    }
    checks.push(pad(asked, tank, &body));
    let below_m = -tank.floor.get();
    let buried = below_m >= body.height_m / 2.0;
    if !buried {
        checks.push(blown(asked, tank, &body));
    }
    checks.push(floated(asked, tank, &body));
}

fn mass(asked: &Asked<'_>, check: &mut Check, tank: &Tank) -> f64 {
    check.detail_of(asked, Some(tank.id), Detail::EmptyMass, usual_mass_kg(tank))
}

/// A floor higher over the ground, in m, stands on more than a pad: a slab, a roof or a tower bears it (common practice, no
/// source).
const RAISED_M: f64 = 0.6;

/// Whether something other than a pad on the ground bears a tank.
pub fn is_raised(tank: &Tank) -> bool {
    tank.floor.get() > RAISED_M
}

fn pad(asked: &Asked<'_>, tank: &Tank, body: &Body) -> Check {
    let mut check = Check::new(tank.id, Subject::Pad);
    let water = check.known(Figure::Capacity, tank.shape.full_volume().get());
    let empty = mass(asked, &mut check, tank);
    if is_raised(tank) {
        // What bears it is no soil: its strength is for an engineer to find.
        check.known(Figure::FloorAbove, tank.floor.get());
        check.finds(Figure::FullMass, water * WATER / LITRES_PER_CUBIC_METRE + empty);
        check.verdict = Verdict::Lacks;
        return check;
    }
    let area = check.detail_of(asked, Some(tank.id), Detail::PadArea, body.footprint_m2);
    let thickness = check.detail(asked, Detail::PadThickness);
    let soil = check.of_site(asked, Detail::Soil);
    // A litre of water weighs a kilogram.
    let full = check.finds(Figure::FullMass, water * WATER / LITRES_PER_CUBIC_METRE + empty);
    let pad = check.finds(Figure::PadMass, area * thickness * CONCRETE);
    let pressure = (full + pad) * GRAVITY / NEWTONS_A_KILONEWTON / area;
    let allowed = BEARING_PSF[chosen(soil).min(4)] * BEARING[1].factor;
    check.judge(Figure::SoilPressure, allowed, pressure);
    check
}

/// Fewer anchors leave a side from which the wind tips a tank about them (common practice, no source).
pub const LEAST_ANCHORS: f64 = 3.0;

/// What each of so many anchors around a foot must hold upwards, in N: 4 M ÷ (N D) − W ÷ N, with M the moment of the wind about the
/// middle of the foot, D its length and W the weight less what lifts it (API 650 section 5.12, from memory).
pub fn anchor_pull_n(wind: &Wind, weight_n: f64, anchors: f64) -> f64 {
    // 2 M ÷ D is what the weight has to be against tipping alone.
    let tips_n = wind.tips_under_n - wind.lifts_n;
    ((AGAINST_WIND * (2.0 * tips_n + wind.lifts_n) - weight_n) / anchors).max(0.0)
}

/// Litres that must stand in a tank so that a wind neither slides nor tips it, with its own weight counted; at most what
/// it holds.
pub fn holding_l(asked: &Asked<'_>, tank: &Tank) -> f64 {
    let body = body(&tank.shape);
    let mut check = Check::new(tank.id, Subject::Wind);
    let (_, weight_n) = wind_on(asked, &mut check, tank, &body);
    litres_for(weight_n, mass(asked, &mut check, tank))
}

fn litres_for(weight_n: f64, empty_kg: f64) -> f64 {
    (weight_n / GRAVITY - empty_kg).max(0.0) * LITRES_PER_CUBIC_METRE / WATER
}

/// The wind, and the weight in N that stands against it with safety.
fn wind_on(asked: &Asked<'_>, check: &mut Check, tank: &Tank, body: &Body) -> (Wind, f64) {
    let speed = check.of_site(asked, Detail::WindSpeed);
    let exposure = chosen(check.of_site(asked, Detail::Exposure));
    let friction = check.detail(asked, Detail::Friction);
    // Only what stands out of the ground meets the wind.
    let top = tank.floor.get() + body.height_m;
    let out = top.min(body.height_m).max(0.0);
    let standing = Body { facing_m2: body.facing_m2 * out / body.height_m, height_m: out, ..*body };
    let coefficient = exposure_coefficient(top, exposure);
    let pressure = velocity_pressure_n_m2(speed, coefficient, DIRECTIONALITY);
    check.finds(Figure::WindPressure, pressure / NEWTONS_A_KILONEWTON);
    let wind = wind(&standing, tank.cover == Cover::Covered, pressure, friction);
    (wind, AGAINST_WIND * wind.slides_under_n.max(wind.tips_under_n))
}

fn blown(asked: &Asked<'_>, tank: &Tank, body: &Body) -> Check {
    let mut check = Check::new(tank.id, Subject::Wind);
    let capacity = check.known(Figure::Capacity, tank.shape.full_volume().get());
    let empty = mass(asked, &mut check, tank);
    let (wind, wanted_n) = wind_on(asked, &mut check, tank, body);
    let anchors = check.detail(asked, Detail::Anchors);
    let weight_n = empty * GRAVITY;
    check.finds(Figure::WindForce, wind.force_n / NEWTONS_A_KILONEWTON);
    check.finds(Figure::WindLift, wind.lifts_n / NEWTONS_A_KILONEWTON);
    check.finds(Figure::SlidesUnder, wind.slides_under_n / GRAVITY);
    check.finds(Figure::TipsUnder, wind.tips_under_n / GRAVITY);
    let litres = check.finds(Figure::HoldingLitres, litres_for(wanted_n, empty));
    if anchors >= LEAST_ANCHORS {
        // Sliding: all of them, friction left out.
        let pull_n = anchor_pull_n(&wind, weight_n, anchors);
        check.finds(Figure::AnchorPull, pull_n / NEWTONS_A_KILONEWTON);
        check.finds(Figure::AnchorShear, AGAINST_WIND * wind.force_n / anchors / NEWTONS_A_KILONEWTON);
    } else if litres > capacity {
        // Even full it would not stand.
        check.judge(Figure::HoldingLitres, capacity, litres);
    } else if litres == 0.0 {
        check.judge(Figure::HoldingLitres, capacity, litres);
    } else if let Some(holds) = now::content_l(asked, tank.id) {
        check.known(Figure::ContentNow, holds);
        check.judge(Figure::HoldingLitres, holds, litres);
        // It holds by water that may not be there: that is to be looked at, not relied on.
        if check.verdict == Verdict::Holds {
            check.verdict = Verdict::Tells;
        }
    }
    check
}

/// Upward force on what lies under the groundwater, and the weight that holds it down, both in N.
fn floated(asked: &Asked<'_>, tank: &Tank, body: &Body) -> Check {
    let mut check = Check::new(tank.id, Subject::Uplift);
    check.known(Figure::Capacity, tank.shape.full_volume().get());
    let below = check.known(Figure::FloorBelow, -tank.floor.get());
    let groundwater = check.of_site(asked, Detail::Groundwater);
    let empty = mass(asked, &mut check, tank);
    let cover = check.detail(asked, Detail::SoilCover);
    let cast = check.detail(asked, Detail::HoldDown);
    let depth = (below - groundwater).clamp(0.0, body.height_m);
    let displaced = displaced_m3(&tank.shape, body, depth);
    let uplift = check.finds(Figure::Uplift, displaced * WATER * GRAVITY / NEWTONS_A_KILONEWTON);
    // Soil and concrete under water weigh what they displace less: the concrete is at the foot, the soil on top.
    let dry = cover.min(groundwater.max(0.0));
    let soil = body.footprint_m2 * (BACKFILL * dry + (BACKFILL - WATER) * (cover - dry));
    let concrete = if depth > 0.0 { cast * (CONCRETE - WATER) / CONCRETE } else { cast };
    let holds = (empty + soil + concrete) * GRAVITY / NEWTONS_A_KILONEWTON;
    let missing = (AGAINST_FLOTATION * uplift - holds).max(0.0);
    check.finds(Figure::UpliftLitres, missing * NEWTONS_A_KILONEWTON / GRAVITY);
    check.finds(Figure::ConcreteWanted, missing * NEWTONS_A_KILONEWTON / GRAVITY * CONCRETE / (CONCRETE - WATER));
    check.judge(Figure::HeldDown, holds, AGAINST_FLOTATION * uplift);
    check
}

/// Volume of a shape below a depth, in m³, as water outside meets it.
fn displaced_m3(shape: &Shape, body: &Body, depth: f64) -> f64 {
    match shape {
        Shape::LyingCylinder { diameter, length } => segment(diameter.get(), depth).0 * length.get(),
        Shape::ConeBottom { .. } => shape.volume_l(depth) / LITRES_PER_CUBIC_METRE,
        _ => body.footprint_m2 * depth,
    }
}

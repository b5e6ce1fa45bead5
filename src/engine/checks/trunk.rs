//! Trunk lines: how fast tanks even out, and how far apart they stand while one is drawn on.

use super::pipe::Pipe;
use super::{Asked, Check, Figure, Subject};
use crate::site::details::Detail;
use crate::site::tank::Tank;
use crate::site::trunk::TrunkLine;

const LITRES_PER_CUBIC_METRE: f64 = 1000.0;
const SECONDS_A_MINUTE: f64 = 60.0;
const SECONDS_AN_HOUR: f64 = 3600.0;
/// Fastest water that is advised in plastic pipe, in m/s: 5 ft/s.
pub const FASTEST_M_S: f64 = 5.0 * crate::quantity::length::METRES_PER_FOOT;
/// Levels this close, in m, count as even.
const EVEN_M: f64 = 0.01;

/// Mean area of a tank's water between outlet and overflow, in m².
pub fn surface_m2(tank: &Tank) -> f64 {
    let live = (tank.capacity().get() - tank.dead_storage().get()) / LITRES_PER_CUBIC_METRE;
    live / (tank.overflow.get() - tank.outlet.get())
}

/// Seconds in which two tanks even out from one difference of level to another, by the flow (m³/s) that each difference
/// drives: ∫ A₁A₂/(A₁+A₂) dh ÷ Q(h), taken over √h, in which it is nearly straight (Simpson's rule).
pub fn seconds_to_level(areas_m2: [f64; 2], from_m: f64, to_m: f64, flow: impl Fn(f64) -> f64) -> f64 {
    const STEPS: usize = 16;
    let [first, second] = areas_m2;
    let together = first * second / (first + second);
    let (start, end) = (to_m.max(0.0).sqrt(), from_m.sqrt());
    #[expect(clippy::cast_precision_loss, reason = "a few steps")]
    let (step, at) = ((end - start) / STEPS as f64, |number: usize| number as f64);
    let slowness = |root: f64| {
        // At even levels the limit of 2√h/Q is that just above it.
        let root = root.max(end * 1e-6);
        2.0 * root / flow(root * root)
    };
    let mut sum = 0.0;
    for number in 0..=STEPS {
        let weight = if number == 0 || number == STEPS {
            1.0
        } else if number % 2 == 1 {
            4.0
        } else {
            2.0
        };
        sum += weight * slowness(start + at(number) * step);
    }
    together * sum * step / 3.0
}

pub(super) fn checks(asked: &Asked<'_>, line: &TrunkLine, checks: &mut Vec<Check>) {
    let system = &asked.site.system;
    let ends = line.ends.map(|end| end.and_then(|end| system.tank(end)));
    let [Some(first), Some(second)] = ends else { return };
    let areas = [surface_m2(first), surface_m2(second)];
    if areas.iter().all(|area| *area > 0.0 && area.is_finite()) {
        checks.push(levelling(asked, line, areas));
        checks.push(drawing(asked, line, areas));
    }
}

fn levelling(asked: &Asked<'_>, line: &TrunkLine, areas: [f64; 2]) -> Check {
    let mut check = Check::new(line.id, Subject::TrunkFlow);
    check.known(Figure::FirstSurface, areas[0]);
    check.known(Figure::SecondSurface, areas[1]);
    let difference = check.detail(asked, Detail::LevelDifference);
    let pipe = Pipe::of(asked, &mut check, line.id, Detail::PipeBore, Detail::PipeLength);
    let flow = pipe.flow_for(difference);
    check.finds(Figure::TrunkFlow, flow * LITRES_PER_CUBIC_METRE * SECONDS_A_MINUTE);
    check.finds(Figure::DarcyLoss, pipe.darcy_m(flow));
    check.finds(Figure::HazenLoss, pipe.hazen_williams_m(flow));
    let even = EVEN_M.min(difference / 2.0);
    let seconds = seconds_to_level(areas, difference, even, |head| pipe.flow_for(head));
    check.finds(Figure::LevelTime, seconds / SECONDS_AN_HOUR);
    check.judge(Figure::WaterSpeed, FASTEST_M_S, pipe.speed_m_s(flow));
    check
}

/// Greatest difference of level, in m, that drawing at one end should make (common practice, no source).
const APART_M: f64 = 0.1;

/// While water is drawn from the first tank, the second sends the share that keeps both falling alike.
fn drawing(asked: &Asked<'_>, line: &TrunkLine, areas: [f64; 2]) -> Check {
    let mut check = Check::new(line.id, Subject::TrunkDraw);
    check.known(Figure::FirstSurface, areas[0]);
    check.known(Figure::SecondSurface, areas[1]);
    let drawn = check.detail(asked, Detail::FarDraw);
    let pipe = Pipe::of(asked, &mut check, line.id, Detail::PipeBore, Detail::PipeLength);
    let through = drawn * areas[1] / (areas[0] + areas[1]);
    check.finds(Figure::TrunkFlow, through);
    let flow = through / SECONDS_A_MINUTE / LITRES_PER_CUBIC_METRE;
    check.finds(Figure::WaterSpeed, pipe.speed_m_s(flow));
    check.judge(Figure::LevelsApart, APART_M, pipe.darcy_m(flow));
    check
}

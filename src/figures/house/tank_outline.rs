//! The outline of a tank in section, as its shape and its way of building ask for.

use crate::figures::pen::Point;
use crate::site::tank::{Build, Shape, Tank};

/// How far the side of a barrel or the end of a lying tank bulges.
const BULGE: f64 = 5.0;
const STEPS: i32 = 8;
/// Cosines of a quarter turn in eight steps.
const QUARTER: [f64; 9] = [
    1.0,
    0.980_785_280_403_230_4,
    0.923_879_532_511_286_7,
    0.831_469_612_302_545_2,
    std::f64::consts::FRAC_1_SQRT_2,
    0.555_570_233_019_602_2,
    0.382_683_432_365_089_8,
    0.195_090_322_016_128_27,
    0.0,
];

/// The convex outline of a tank in a rectangle.
pub(super) fn outline(tank: &Tank, (x, y): Point, width: f64, height: f64) -> Vec<Point> {
    let (right, bottom) = (x + width, y + height);
    match (tank.build, &tank.shape) {
        (Build::Bladder, _) => pillow((x, y), width, height),
        (Build::Barrel, _) | (_, Shape::LyingCylinder { .. }) => bulging((x, y), width, height),
        (_, Shape::ConeBottom { cone_height, height: whole, .. }) => {
            let share = (cone_height.get() / whole.get()).clamp(0.0, 1.0);
            let shoulder = bottom - height * if share.is_nan() { 0.0 } else { share };
            let middle = x + width / 2.0;
            vec![(x, y), (right, y), (right, shoulder), (middle + 2.0, bottom), (middle - 2.0, bottom), (x, shoulder)]
        }
        _ => vec![(x, y), (right, y), (right, bottom), (x, bottom)],
    }
}

/// Level above and below, with ends that bulge.
fn bulging((x, y): Point, width: f64, height: f64) -> Vec<Point> {
    let mut points = Vec::new();
    let mut side = |from: f64, to: f64, edge: f64, out: f64| {
        for step in 0..=STEPS {
            let share = f64::from(step) / f64::from(STEPS);
            points.push((edge + out * 4.0 * share * (1.0 - share), from + (to - from) * share));
        }
    };
    side(y, y + height, x + width - BULGE, BULGE);
    side(y + height, y, x + BULGE, -BULGE);
    points
}

/// A filled bladder: a superellipse of exponent 4.
fn pillow((x, y): Point, width: f64, height: f64) -> Vec<Point> {
    // On a superellipse of exponent 4 stand the roots of cosine and sine.
    let place = |across: f64, down: f64| (x + width / 2.0 * (1.0 + across), y + height / 2.0 * (1.0 + down));
    let mut points = Vec::new();
    let mut quarter = |across: f64, down: f64, turned: bool| {
        for step in 0..QUARTER.len() - 1 {
            let (cosine, sine) = (QUARTER[step].sqrt(), QUARTER[QUARTER.len() - 1 - step].sqrt());
            let (a, b) = if turned { (sine, cosine) } else { (cosine, sine) };
            points.push(place(across * a, down * b));
        }
    };
    quarter(1.0, 1.0, false);
    quarter(-1.0, 1.0, true);
    quarter(-1.0, -1.0, false);
    quarter(1.0, -1.0, true);
    points
}

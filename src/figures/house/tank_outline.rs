//! The outline of a tank in section, as its shape and its way of building ask for.

use crate::figures::pen::Point;
use crate::site::tank::{Build, Shape, Tank};

/// How far the side of a barrel or the end of a lying tank bulges.
const BULGE: f64 = 5.0;
const STEPS: i32 = 8;

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
    let side = |from: f64, to: f64, edge: f64, out: f64| {
        (0..=STEPS).map(move |step| {
            let share = f64::from(step) / f64::from(STEPS);
            (edge + out * 4.0 * share * (1.0 - share), from + (to - from) * share)
        })
    };
    let right = side(y, y + height, x + width - BULGE, BULGE);
    right.chain(side(y + height, y, x + BULGE, -BULGE)).collect()
}

/// A filled bladder: a superellipse of exponent 4.
fn pillow((x, y): Point, width: f64, height: f64) -> Vec<Point> {
    let rounded = |value: f64| value.signum() * value.abs().sqrt();
    (0..4 * STEPS)
        .map(|step| {
            let angle = f64::from(step) / f64::from(4 * STEPS) * std::f64::consts::TAU;
            (x + width / 2.0 * (1.0 + rounded(libm::cos(angle))), y + height / 2.0 * (1.0 + rounded(libm::sin(angle))))
        })
        .collect()
}

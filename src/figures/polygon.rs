//! Convex polygons: cut at heights, and hatched.

use super::pen::{Point, Stroke};

/// The part of a convex polygon that lies from one height down to another (y grows downwards).
pub(super) fn between(polygon: &[Point], top: f64, bottom: f64) -> Vec<Point> {
    let below_top = cut(polygon, &|(_, y)| y - top);
    cut(&below_top, &|(_, y)| bottom - y)
}

/// Lines that rise to the right across a convex polygon, `spacing` apart along x.
pub(super) fn hatch(polygon: &[Point], spacing: f64) -> Vec<Stroke> {
    slanted(polygon, spacing, 1.0)
}

/// Lines that fall to the right across a convex polygon, `spacing` apart along x.
pub(super) fn back_hatch(polygon: &[Point], spacing: f64) -> Vec<Stroke> {
    slanted(polygon, spacing, -1.0)
}

fn slanted(polygon: &[Point], spacing: f64, slope: f64) -> Vec<Stroke> {
    let along = |(x, y): Point| x + slope * y;
    let least = polygon.iter().map(|p| along(*p)).fold(f64::INFINITY, f64::min);
    let greatest = polygon.iter().map(|p| along(*p)).fold(f64::NEG_INFINITY, f64::max);
    let mut lines = Vec::new();
    // Lines stand on a raster of the whole sheet, so that neighbouring areas match.
    let mut at = ((least / spacing).floor() + 1.0) * spacing;
    while at < greatest {
        let ends = crossings(polygon, &|p| along(p) - at);
        if let [a, b] = ends[..] {
            lines.push([a, b]);
        }
        at += spacing;
    }
    lines
}

/// The places where a line crosses the edges of a polygon.
fn crossings(polygon: &[Point], side: &dyn Fn(Point) -> f64) -> Vec<Point> {
    let mut crossings = Vec::new();
    for (a, b) in edges(polygon) {
        if (side(a) < 0.0) != (side(b) < 0.0) {
            crossings.push(on_edge(a, b, side(a), side(b)));
        }
    }
    crossings
}

fn cut(polygon: &[Point], side: &dyn Fn(Point) -> f64) -> Vec<Point> {
    let mut kept = Vec::with_capacity(polygon.len() + 2);
    for (a, b) in edges(polygon) {
        if side(a) >= 0.0 {
            kept.push(a);
        }
        if (side(a) >= 0.0) != (side(b) >= 0.0) {
            kept.push(on_edge(a, b, side(a), side(b)));
        }
    }
    kept
}

fn edges(polygon: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    (0..polygon.len()).map(|at| (polygon[at], polygon[if at + 1 < polygon.len() { at + 1 } else { 0 }]))
}

fn on_edge(a: Point, b: Point, side_a: f64, side_b: f64) -> Point {
    let share = side_a / (side_a - side_b);
    (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share)
}

#[cfg(test)]
mod tests {
    use super::*;

    const SQUARE: [Point; 4] = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)];

    #[test]
    fn a_cut_keeps_what_lies_between() {
        let cut = between(&SQUARE, 4.0, 7.0);
        assert!(cut.iter().all(|(_, y)| (4.0..=7.0).contains(y)), "{cut:?}");
        assert_eq!(cut.len(), 4);
        assert!(between(&SQUARE, 11.0, 12.0).is_empty());
    }

    #[test]
    fn hatching_stays_inside() {
        for lines in [hatch(&SQUARE, 3.0), back_hatch(&SQUARE, 3.0)] {
            assert!(lines.len() >= 5);
            assert!(
                lines
                    .iter()
                    .flatten()
                    .all(|(x, y)| (-1e-9..=10.0 + 1e-9).contains(x) && (-1e-9..=10.0 + 1e-9).contains(y))
            );
        }
        assert!(hatch(&[], 3.0).is_empty());
    }
}

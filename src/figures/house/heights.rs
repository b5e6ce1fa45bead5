//! Elevations in metres to heights on the sheet: true to each other, save that long stretches in which no tank
//! stands are shortened.

use crate::quantity::order::distinct;

/// Longest stretch without a tank that is drawn at its true length, in m.
const LONGEST_GAP: f64 = 0.8;
/// Most pixels for a metre: a lone barrel is not drawn like a silo.
const MOST_PER_METRE: f64 = 95.0;
/// Height that all tanks together should take, at least and at most.
const WANTED: (f64, f64) = (130.0, 230.0);
/// Height of the lowest tank, as long as the whole stays below [`TALLEST`].
const LOWEST_TANK: f64 = 26.0;
const TALLEST: f64 = 460.0;

/// How elevations are drawn.
pub(super) struct Heights {
    /// Elevations in m, rising, with the metres drawn up to each.
    knots: Vec<(f64, f64)>,
    /// Pixels for a metre.
    pub per_metre: f64,
}

impl Heights {
    /// Fits the elevations of floors and rims (`spans`, in m); `wide` is the scale that suits the tanks' widths.
    pub fn fitting(spans: &[(f64, f64)], wide: f64) -> Self {
        let mut heights = Self { knots: knots(spans), per_metre: 1.0 };
        let lowest = spans.iter().map(|span| span.0).fold(0.0, f64::min);
        let highest = spans.iter().map(|span| span.1).fold(0.0, f64::max);
        let total = (heights.up(highest) - heights.up(lowest)).max(0.1);
        let least = spans.iter().map(|(floor, rim)| rim - floor).fold(f64::INFINITY, f64::min).max(0.01);
        let fitting = wide.clamp(WANTED.0 / total, WANTED.1 / total).min(MOST_PER_METRE);
        heights.per_metre = fitting.max((LOWEST_TANK / least).min(TALLEST / total));
        heights
    }

    /// How far over the level 0 an elevation is drawn, in pixels.
    pub fn up(&self, elevation: f64) -> f64 {
        let (mut z0, mut m0) = self.knots.first().copied().unwrap_or((0.0, 0.0));
        if elevation <= z0 {
            return (m0 + elevation - z0) * self.per_metre;
        }
        for &(z1, m1) in &self.knots {
            if elevation <= z1 && z1 > z0 {
                return (m0 + (m1 - m0) * (elevation - z0) / (z1 - z0)) * self.per_metre;
            }
            (z0, m0) = (z1, m1);
        }
        (m0 + elevation - z0) * self.per_metre
    }
}

/// Floors, rims and the level 0 in rising order, with the metres drawn.
fn knots(spans: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut elevations = vec![0.0];
    for (floor, rim) in spans {
        elevations.extend([*floor, *rim]);
    }
    let mut knots: Vec<(f64, f64)> = Vec::new();
    for elevation in distinct(elevations) {
        let drawn = knots.last().map_or(0.0, |&(below, drawn)| {
            let middle = f64::midpoint(below, elevation);
            let within_a_tank = spans.iter().any(|(floor, rim)| *floor < middle && middle < *rim);
            let step = elevation - below;
            drawn + if within_a_tank { step } else { step.min(LONGEST_GAP) }
        });
        knots.push((elevation, drawn));
    }
    let ground = knots.iter().find(|(elevation, _)| *elevation == 0.0).map_or(0.0, |(_, drawn)| *drawn);
    knots.iter_mut().for_each(|(_, drawn)| *drawn -= ground);
    knots
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn heights_keep_their_order_and_tanks_their_proportions() {
        let spans = [(0.0, 2.0), (-3.0, -0.5), (15.0, 17.0), (0.2, 1.1)];
        let heights = Heights::fitting(&spans, 40.0);
        assert!(heights.up(0.0).abs() < 1e-9);
        let drawn: Vec<f64> = (-40..250).map(|tenth| heights.up(f64::from(tenth) / 10.0)).collect();
        assert!(drawn.windows(2).all(|pair| pair[0] < pair[1]), "a higher point is drawn higher");
        let tall = |(floor, rim): (f64, f64)| heights.up(rim) - heights.up(floor);
        assert!((tall(spans[0]) / 2.0 - tall(spans[1]) / 2.5).abs() < 1e-9);
        assert!((tall(spans[0]) - tall(spans[2])).abs() < 1e-9);
        assert!(heights.up(17.0) < 300.0, "the empty slope between is shortened: {}", heights.up(17.0));
    }

    #[test]
    fn nothing_is_a_height_too() {
        let heights = Heights::fitting(&[], 40.0);
        assert!(heights.per_metre.is_finite() && heights.up(1.0).is_finite());
    }
}

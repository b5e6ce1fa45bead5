//! Probabilities, and the line of log odds on which predictions are mixed. By plain arithmetic alone: whoever packs and whoever
//! unpacks must come to the same bits on any machine.

use alloc::boxed::Box;

/// Steps of each table.
const STEPS: usize = 4096;
/// Log odds further from even than this count as this.
pub const FAR: f32 = 12.0;

/// Both tables.
pub struct Curve {
    odds: Box<[f32; STEPS]>,
    chance: Box<[f32; STEPS]>,
}

/// e to the power of `x`: a short series of a small part of it, squared ten times.
fn exponential(x: f64) -> f64 {
    let small = x / 1024.0;
    let mut power = 1.0 + small * (1.0 + small / 2.0 * (1.0 + small / 3.0 * (1.0 + small / 4.0)));
    for _ in 0..10 {
        power *= power;
    }
    power
}

fn logistic(x: f64) -> f64 {
    1.0 / (1.0 + exponential(-x))
}

/// The middle of a step, as a part of all.
fn middle(step: usize) -> f64 {
    (step as f64 + 0.5) / STEPS as f64
}

impl Curve {
    /// Makes the tables.
    pub fn new() -> Self {
        let far = f64::from(FAR);
        let mut odds = Box::new([0.0; STEPS]);
        let mut chance = Box::new([0.0; STEPS]);
        for (step, chance) in chance.iter_mut().enumerate() {
            *chance = logistic((2.0 * middle(step) - 1.0) * far) as f32;
        }
        // The way back from a chance to its odds by Newton's method, from even odds outwards.
        let mut x = 0.0;
        for step in STEPS / 2..STEPS {
            for _ in 0..6 {
                let now = logistic(x);
                x += (middle(step) - now) / (now * (1.0 - now));
            }
            odds[step] = x as f32;
            odds[STEPS - 1 - step] = -x as f32;
        }
        Self { odds, chance }
    }

    /// The log odds of a chance in 4,096ths.
    pub fn odds(&self, chance: u32) -> f32 {
        self.odds[chance as usize % STEPS]
    }

    /// Log odds, no further from even than `FAR`.
    pub fn within(odds: f32) -> f32 {
        odds.clamp(-FAR, FAR)
    }

    /// The chance that has these log odds, which are `within` the ends.
    pub fn chance(&self, odds: f32) -> f32 {
        self.chance[(((odds + FAR) * (STEPS as f32 / (2.0 * FAR))) as usize).min(STEPS - 1)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the standard library's own exponential and logarithm.
    #[test]
    fn the_tables_are_the_logistic_curve_and_its_way_back() {
        let curve = Curve::new();
        for step in 0..STEPS {
            let chance = middle(step);
            assert!((f64::from(curve.odds(step as u32)) - (chance / (1.0 - chance)).ln()).abs() < 1e-5, "{step}");
            let odds = (2.0 * chance - 1.0) * 12.0;
            assert!((f64::from(curve.chance(odds as f32)) - 1.0 / (1.0 + (-odds).exp())).abs() < 0.0016, "{step}");
        }
        assert!(curve.chance(Curve::within(f32::MAX)) < 1.0 && curve.chance(Curve::within(f32::MIN)) > 0.0);
    }
}

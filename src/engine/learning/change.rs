//! What changed: capture alone, use alone, or both.

use super::fit::{Fit, Row, rows, whitened};
use super::spans::Factors;
use super::timeline::Timeline;
use crate::engine::balance::plan::Plan;

/// What changed since a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// The share of the rain that is missing: if capture alone changed, and if both did.
    pub missing: [f64; 2],
    /// The share of use that is added: if use alone changed, and if both did.
    pub more: [f64; 2],
    /// Whether capture alone, and use alone, explains the readings as well as both do.
    pub alone: [bool; 2],
}

/// The 99 % point of χ² with one degree of freedom: twice the logarithm of how much likelier the readings are with one
/// more factor free stays below it 99 times in 100 where that factor didn't change (Wilks, Annals of Mathematical
/// Statistics 9, 1938; any table of χ²).
const CHI_SQUARED_99: f64 = 6.635;
/// What is believed of a factor that changed: as before, give or take 1.
const FREE: f64 = 1.0;
const ROUNDS: usize = 6;

/// What explains the readings since a day, on which one was read, against a normal. What isn't taken to have changed is
/// held to the normal as closely as that is known.
pub fn changed(plan: &Plan, timeline: &Timeline, normal: &Fit, since: usize, inflow_first: f64) -> Change {
    let after = timeline.within(since..timeline.dates.len());
    let held = normal.errors.map(|error| 1.0 / (error * error).clamp(1e-6, 1.0));
    let explain = |free: [bool; 2]| explained(plan, &after, normal, free, held, inflow_first);
    let ((capture, capture_off), (uses, uses_off), (both, both_off)) =
        (explain([true, false]), explain([false, true]), explain([true, true]));
    Change {
        missing: [capture, both].map(|factors| 1.0 - factors.capture / normal.factors.capture),
        more: [uses, both].map(|factors| factors.uses / normal.factors.uses - 1.0),
        alone: [capture_off, uses_off].map(|off| off - both_off < CHI_SQUARED_99),
    }
}

/// The likeliest factors where some are free to change for the worse, and −2 ln of their likelihood up to a constant
/// (Gauss–Newton as in the fit; spreads as they are with the normal, so that likelihoods compare).
fn explained(
    plan: &Plan,
    after: &Timeline,
    normal: &Fit,
    free: [bool; 2],
    held: [f64; 2],
    inflow_first: f64,
) -> (Factors, f64) {
    let counts: Vec<bool> = after.readings.iter().map(|reading| !reading.above_rim).collect();
    let run = |factors| rows(plan, after, &counts, factors, inflow_first);
    let usual = run(normal.factors);
    let scale = normal.spread.max(1.0);
    let held: [f64; 2] = std::array::from_fn(|at| if free[at] { FREE } else { held[at] });
    let mut factors = normal.factors;
    // From within what is looked for: a tank that runs full or dry with the normal would say nothing of the slopes.
    if free[0] {
        factors.capture *= 0.7;
    }
    if free[1] {
        factors.uses *= 1.3;
    }
    let mut best = (factors, f64::INFINITY);
    for _ in 0..ROUNDS {
        let rows: Vec<Row> =
            run(factors).into_iter().zip(&usual).map(|(row, usual)| Row { variance: usual.variance, ..row }).collect();
        let from = [factors.capture - normal.factors.capture, factors.uses - normal.factors.uses];
        let mut off_squares = held[0] * from[0] * from[0] + held[1] * from[1] * from[1];
        let mut a = [[held[0], 0.0], [0.0, held[1]]];
        let mut b = [-held[0] * from[0], -held[1] * from[1]];
        for (off, slopes) in whitened(&rows) {
            let (off, slopes) = (off / scale, slopes.map(|slope| slope / scale));
            // Huber's loss, as in the fit: a wrong reading isn't all the evidence.
            let cut = off.clamp(-3.0, 3.0);
            off_squares += cut * (2.0 * off - cut);
            for one in 0..2 {
                b[one] += slopes[one] * cut;
                (0..2).for_each(|other| a[one][other] += slopes[one] * slopes[other]);
            }
        }
        if off_squares < best.1 {
            best = (factors, off_squares);
        }
        let determinant = a[0][0] * a[1][1] - a[0][1] * a[1][0];
        let (capture, uses) = (
            factors.capture + (a[1][1] * b[0] - a[0][1] * b[1]) / determinant,
            factors.uses + (a[0][0] * b[1] - a[1][0] * b[0]) / determinant,
        );
        let most = if free[0] { normal.factors.capture } else { 4.0 };
        let least = if free[1] { normal.factors.uses } else { 0.02 };
        let next =
            Factors { capture: capture.clamp(0.02, most), uses: uses.clamp(least, 6.0_f64.max(least)), ..factors };
        if (next.capture - factors.capture).abs().max((next.uses - factors.uses).abs()) < 1e-3 {
            break;
        }
        factors = next;
    }
    best
}

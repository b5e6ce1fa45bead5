//! Capture and use, fitted to the readings by least squares.

use super::spans::{Factors, Span, run_spans};
use super::timeline::Timeline;
use crate::engine::balance::plan::Plan;
use crate::engine::measures::percentiles::percentile;
use crate::quantity::order::sorted;

/// How well a level is read, as a share of what the store holds (a dipstick or a sight tube; common practice, no source).
pub const READING_SHARE: f64 = 0.01;
/// How much a day's use differs from the mean, as a share of it (common practice, no source).
pub const USE_SPREAD: f64 = 0.3;
/// How much a day's catch differs from what the gauge makes of it, as a share of it (common practice, no source).
pub const CATCH_SPREAD: f64 = 0.1;
/// The spreads above count as much as so many readings when the fit's own spread is found.
const PRIOR_WEIGHT: f64 = 6.0;
/// What is believed of a factor before any reading: 1, give or take 1.
const BELIEF: f64 = 1.0;
/// A factor whose range at 90 % is wider than this on either side is not told.
pub const WIDEST: f64 = 0.3;
/// The fewest readings in a row that say anything.
pub const FEWEST_SPANS: usize = 4;
/// The 95 % point of the standard normal distribution.
const NORMAL_95: f64 = 1.644_853_626_951_472_7;
/// A difference of so many standard errors is no chance.
const OUT: f64 = 5.0;
const ROUNDS: usize = 8;

/// A factor with its range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The most likely.
    pub value: f64,
    /// The half-width of the range that holds it with a chance of 90 %.
    pub half_width: f64,
}

/// What the fit says.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// Capture against what is entered; `None` where the readings can't tell it.
    pub capture: Option<Estimate>,
    /// Use against what is entered, leaks included; `None` likewise.
    pub uses: Option<Estimate>,
    /// The factors themselves, whether told or not.
    pub factors: Factors,
    /// From how many readings to the next it was fitted.
    pub spans: usize,
    /// How many more ended brim-full, and so say "at least" only.
    pub at_least: usize,
    /// How much wider the differences are than was expected of reading, use and catch.
    pub spread: f64,
    /// Readings that can't be right: their places in the timeline.
    pub odd: Vec<usize>,
}

/// A span as the fit sees it.
#[derive(Clone, Copy, Debug)]
pub struct Row {
    /// The span, run with the factors.
    pub span: Span,
    /// What one more of the factor on capture, and on uses, would add at its end, in L.
    pub slopes: [f64; 2],
    /// What one litre more at its beginning would add at its end.
    pub kept: f64,
    /// The variance that is expected of the difference, in L².
    pub variance: f64,
    /// Whether it counts in the fit: measured, neither brim-full nor empty at its end.
    pub counts: bool,
    /// Whether it ended brim-full.
    pub full: bool,
    reading_variance: f64,
}

/// Brim-full and empty, as shares of what the store holds.
const FULL: f64 = 0.985;
const EMPTY: f64 = 0.015;

/// The rows of a timeline under some factors.
pub fn rows(plan: &Plan, timeline: &Timeline, counts: &[bool], factors: Factors, inflow_first: f64) -> Vec<Row> {
    const STEP: f64 = 0.02;
    let least = plan.stores.iter().map(|store| store.joined.live_capacity_l).fold(f64::INFINITY, f64::min);
    let lifted_l = 0.002 * least;
    let run = |factors, lifted| run_spans(plan, timeline, counts, factors, inflow_first, lifted);
    let base = run(factors, 0.0);
    let caught = run(Factors { capture: factors.capture + STEP, ..factors }, 0.0);
    let used = run(Factors { uses: factors.uses + STEP, ..factors }, 0.0);
    let lifted = run(factors, lifted_l);
    let mut rows = Vec::with_capacity(base.len());
    for (at, span) in base.into_iter().enumerate() {
        let capacity = plan.stores[span.store].joined.live_capacity_l;
        let slope = |other: &[Span]| (other[at].run_l - span.run_l) / STEP;
        let kept = ((lifted[at].run_l - span.run_l) / lifted_l).clamp(0.0, 1.0);
        let reading_variance = (READING_SHARE * capacity).powi(2);
        // What a day's chance adds is left of it only as far as what the factors add is.
        let caught_share = if span.inflow_l > 0.0 { slope(&caught) * factors.capture / span.inflow_l } else { 0.0 };
        let used_share = if span.wanted_l > 0.0 { slope(&used) * factors.uses / span.wanted_l } else { 0.0 };
        let variance = reading_variance * (1.0 + kept * kept)
            + CATCH_SPREAD * CATCH_SPREAD * span.inflow_squares * caught_share.abs().min(1.0)
            + USE_SPREAD * USE_SPREAD * span.wanted_squares * used_share.abs().min(1.0);
        let full = span.read_l >= FULL * capacity;
        let empty = span.read_l <= EMPTY * capacity;
        let off = span.read_l - span.run_l;
        // "At least" and "at most" count once they are broken.
        let bound_holds = if full { off <= 2.0 * variance.sqrt() } else { off >= -2.0 * variance.sqrt() };
        rows.push(Row {
            span,
            slopes: [slope(&caught), slope(&used)],
            kept,
            variance,
            counts: span.measured && !((full || empty) && bound_holds),
            full,
            reading_variance,
        });
    }
    rows
}

/// Differences and slopes of the rows that count, each divided so that all are independent and of variance 1: errors of
/// a reading go into the span before it and, as far as it is kept, the span after it.
fn whitened(rows: &[Row]) -> Vec<(f64, [f64; 2])> {
    let mut out: Vec<(f64, [f64; 2])> = Vec::new();
    for store in 0..=rows.iter().map(|row| row.span.store).max().unwrap_or(0) {
        let mut before: Option<(usize, f64, (f64, [f64; 2]))> = None;
        for row in rows.iter().filter(|row| row.span.store == store) {
            if !row.counts {
                before = None;
                continue;
            }
            let off = row.span.read_l - row.span.run_l;
            // A step of the Cholesky factor of a matrix with one line beside its diagonal.
            let shared = match before {
                Some((end, root, _)) if end == row.span.days.0 => -row.kept * row.reading_variance / root,
                _ => 0.0,
            };
            let root = (row.variance - shared * shared).max(0.01 * row.variance).sqrt();
            let last = before.map_or((0.0, [0.0; 2]), |(_, _, last)| last);
            let white = |value: f64, last: f64| (value - shared * last) / root;
            let this = (white(off, last.0), [white(row.slopes[0], last.1[0]), white(row.slopes[1], last.1[1])]);
            out.push(this);
            before = Some((row.span.days.1, root, this));
        }
    }
    out
}

/// Fits capture and use; `None` below [`FEWEST_SPANS`]. All of [`Fitting`] at once.
pub fn fit(plan: &Plan, timeline: &Timeline, inflow_first: f64) -> Option<Fit> {
    let mut fitting = Fitting::new(timeline.clone());
    while fitting.step(plan, inflow_first) {}
    fitting.fit
}

/// A fit on its way, a round at a time.
///
/// Generalised least squares on the differences between what was read and what the system, run from the reading before
/// with the measured rain, holds (Gauss–Newton; Seber & Wild, Nonlinear Regression, 1989, ch. 2); the scale of the
/// expected spreads from the differences themselves and from the expectation (scaled inverse χ², Gelman et al., Bayesian
/// Data Analysis, 2013, §14.2); ranges by Student's t.
#[derive(Clone, Debug)]
pub struct Fitting {
    /// What it is fitted to.
    pub timeline: Timeline,
    /// The fit, once [`Fitting::step`] has said that nothing is left; `None` where it can't be told.
    pub fit: Option<Fit>,
    counts: Vec<bool>,
    odd: Vec<usize>,
    factors: Factors,
    rounds: usize,
    done: bool,
}

impl Fitting {
    /// Nothing fitted yet.
    pub fn new(timeline: Timeline) -> Self {
        let counts: Vec<bool> = timeline.readings.iter().map(|reading| !reading.above_rim).collect();
        let odd = (0..counts.len()).filter(|at| !counts[*at]).collect();
        Self { timeline, fit: None, counts, odd, factors: Factors::ENTERED, rounds: 0, done: false }
    }

    /// Days that a step runs.
    pub fn days(&self) -> usize {
        4 * self.timeline.dates.len()
    }

    /// Does a round of the fit, or looks for a reading that can't be right. False once nothing is left.
    pub fn step(&mut self, plan: &Plan, inflow_first: f64) -> bool {
        if self.done {
            return false;
        }
        if self.rounds < ROUNDS {
            self.round(plan, inflow_first);
            return true;
        }
        let most_odd = self.timeline.readings.len() / 10 + 1;
        let odd = self.fit.as_ref().and_then(|fit| odd_one(plan, &self.timeline, &self.counts, fit, inflow_first));
        match odd.filter(|_| self.odd.len() < most_odd) {
            Some(at) => {
                self.counts[at] = false;
                self.odd.push(at);
                (self.rounds, self.factors) = (0, Factors::ENTERED);
            }
            None => {
                if let Some(fit) = &mut self.fit {
                    fit.odd.clone_from(&self.odd);
                }
                self.done = true;
            }
        }
        !self.done
    }

    #[expect(clippy::cast_precision_loss, reason = "readings are few")]
    fn round(&mut self, plan: &Plan, inflow_first: f64) {
        let factors = self.factors;
        let rows = rows(plan, &self.timeline, &self.counts, factors, inflow_first);
        let white = whitened(&rows);
        if white.len() < FEWEST_SPANS {
            (self.fit, self.rounds) = (None, ROUNDS);
            return;
        }
        let belief = 1.0 / (BELIEF * BELIEF);
        let (mut a, mut b) = ([belief, 0.0, belief], [belief * (1.0 - factors.capture), belief * (1.0 - factors.uses)]);
        for (off, [caught, used]) in &white {
            a[0] += caught * caught;
            a[1] += caught * used;
            a[2] += used * used;
            b[0] += caught * off;
            b[1] += used * off;
        }
        let determinant = a[0] * a[2] - a[1] * a[1];
        let step = [(a[2] * b[0] - a[1] * b[1]) / determinant, (a[0] * b[1] - a[1] * b[0]) / determinant];
        self.factors.capture = (factors.capture + step[0]).clamp(0.02, 4.0);
        self.factors.uses = (factors.uses + step[1]).clamp(0.02, 6.0);
        let close = step[0].abs().max(step[1].abs()) < 1e-4;
        self.rounds = if close { ROUNDS } else { self.rounds + 1 };
        let squares: f64 = white.iter().map(|(off, _)| off * off).sum();
        let freedom = PRIOR_WEIGHT + (white.len() as f64 - 2.0).max(1.0);
        let scale = ((PRIOR_WEIGHT + squares) / freedom).sqrt();
        let told = |value: f64, variance: f64| {
            let half_width = student_95(freedom) * scale * variance.sqrt();
            (half_width <= WIDEST).then_some(Estimate { value, half_width })
        };
        self.fit = Some(Fit {
            capture: told(self.factors.capture, a[2] / determinant),
            uses: told(self.factors.uses, a[0] / determinant),
            factors: self.factors,
            spans: white.len(),
            at_least: rows.iter().filter(|row| row.full && !row.counts).count(),
            spread: scale,
            odd: Vec::new(),
        });
    }
}

/// A reading that lies far off what runs to it, and from which what runs on lies as far off the other way; or the last
/// of a store that lies far off.
fn odd_one(plan: &Plan, timeline: &Timeline, counts: &[bool], fit: &Fit, inflow_first: f64) -> Option<usize> {
    let rows = rows(plan, timeline, counts, fit.factors, inflow_first);
    let raw = |row: &Row| (row.span.read_l - row.span.run_l) / row.variance.sqrt();
    // The middle of the sizes, which one wrong reading doesn't move: 0.6745 for normal differences.
    let sizes = sorted(rows.iter().filter(|row| row.counts).map(|row| raw(row).abs()).collect());
    let scale = (percentile(&sizes, 0.5) / 0.674_5).max(1.0);
    let score = |row: &Row| raw(row) / scale;
    let mut worst: Option<(f64, usize)> = None;
    for (at, row) in rows.iter().enumerate().filter(|(_, row)| row.span.measured) {
        let follows = rows[at + 1..].iter().find(|next| next.span.store == row.span.store);
        let off = score(row);
        let back = follows.map(&score);
        let spike = back.is_some_and(|back| off * back < 0.0 && back.abs() > OUT / 2.0) || back.is_none();
        if off.abs() > OUT && spike && worst.is_none_or(|(most, _)| off.abs() > most) {
            let found = timeline.readings.iter().position(|r| (r.day, r.store) == (row.span.days.1, row.span.store));
            worst = found.map(|found| (off.abs(), found)).or(worst);
        }
    }
    worst.map(|(_, at)| at)
}

/// The 95 % point of Student's t with so many degrees of freedom (4 or more, to three digits).
///
/// Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.5.
fn student_95(freedom: f64) -> f64 {
    let z = NORMAL_95;
    let squared = z * z;
    let odd = |by_power: [f64; 4]| by_power.iter().rev().fold(0.0, |sum, factor| sum * squared + factor) * z;
    z + odd([1.0, 1.0, 0.0, 0.0]) / (4.0 * freedom)
        + odd([3.0, 16.0, 5.0, 0.0]) / (96.0 * freedom * freedom)
        + odd([-15.0, 17.0, 19.0, 3.0]) / (384.0 * freedom * freedom * freedom)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn students_t_agrees_with_tables() {
        // Any table of Student's t, one-sided 5 %: 1.860 with 8 degrees of freedom, 1.725 with 20, 1.671 with 60.
        for (freedom, t) in [(8.0, 1.860), (20.0, 1.725), (60.0, 1.671)] {
            assert!((student_95(freedom) - t).abs() < 2e-3, "{freedom}: {}", student_95(freedom));
        }
    }
}

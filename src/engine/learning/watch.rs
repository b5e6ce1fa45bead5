//! Whether the last weeks are unlike those before: capture fallen, use risen.

use super::fit::{Fit, Row, fit, rows};
use super::timeline::Timeline;
use crate::engine::balance::plan::Plan;

/// What was noticed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Alarm {
    /// Less water comes than before.
    CaptureFallen {
        /// The share that is missing, as far as the last readings tell.
        by: f64,
        /// The day from which on, counted from the timeline's first.
        since: usize,
    },
    /// More water goes than before, in use or by a leak.
    UseRisen {
        /// The share that is added.
        by: f64,
        /// The day from which on.
        since: usize,
    },
}

/// The days that are watched: the last half year.
pub const WATCHED_DAYS: usize = 183;
/// The fewest spans before them that make a normal.
const NORMAL_SPANS: usize = 12;
/// Changes that are looked for: three tenths less capture, three tenths more use.
const SHIFT: f64 = 0.3;
/// The sum of evidence at which it is called. At `ln 1000`, some 7, at most one span in a thousand calls falsely if all
/// expected spreads are right (Lorden, Annals of Mathematical Statistics 42, 1971); since single differences are held back,
/// less does: the tests measure how often it cries wolf.
pub const THRESHOLD: f64 = 5.0;

/// What is noticed in the last half year against what was fitted before it; `None` where there is no normal yet.
pub fn watch(plan: &Plan, timeline: &Timeline, inflow_first: f64) -> Option<Vec<Alarm>> {
    let earlier = before(timeline)?;
    let from = earlier.dates.len();
    let normal = fit(plan, &earlier, inflow_first).filter(is_normal)?;
    Some(alarms(plan, timeline, &normal, from, inflow_first).0)
}

/// Whether a fit rests on enough to be called normal.
pub fn is_normal(fit: &Fit) -> bool {
    fit.spans >= NORMAL_SPANS
}

/// The days before the last half year; `None` where there are none.
pub fn before(timeline: &Timeline) -> Option<Timeline> {
    let before = timeline.dates.len().checked_sub(WATCHED_DAYS)?;
    Some(timeline.before(before))
}

/// The alarms that hold at the end, and on which span after `from` each kind was first called.
///
/// A running sum of evidence for each change, never below nothing: the logarithm of how much likelier a span is with the
/// change than without (Page, Biometrika 41, 1954).
pub fn alarms(
    plan: &Plan,
    timeline: &Timeline,
    normal: &Fit,
    from: usize,
    inflow_first: f64,
) -> (Vec<Alarm>, [Option<usize>; 2]) {
    let counts: Vec<bool> = timeline.readings.iter().map(|reading| !reading.above_rim).collect();
    // Use and leak together: a meter says nothing of what is normal.
    let timeline = &timeline.before(timeline.dates.len());
    let rows = rows(plan, timeline, &counts, normal.factors, inflow_first);
    let after: Vec<&Row> = rows.iter().filter(|row| row.span.days.0 + 1 >= from && row.span.measured).collect();
    let mut first = [None; 2];
    let mut held = Vec::new();
    for (kind, factor, sign) in [(0, normal.factors.capture, -1.0), (1, normal.factors.uses, 1.0)] {
        let (mut evidence, mut since) = (0.0_f64, None);
        let (mut sum, mut weight) = (0.0, 0.0);
        for (at, row) in after.iter().enumerate().filter(|(_, row)| row.counts) {
            let change = sign * SHIFT * factor * row.slopes[kind];
            let variance = row.variance * normal.spread.max(1.0).powi(2);
            // A single reading, however wrong, is not all the evidence.
            let off = (row.span.read_l - row.span.run_l).clamp(-3.0 * variance.sqrt(), 3.0 * variance.sqrt());
            evidence += change * (off - change / 2.0) / variance;
            if evidence <= 0.0 {
                (evidence, since, sum, weight) = (0.0, None, 0.0, 0.0);
                continue;
            }
            since = since.or(Some(row.span.days.0));
            sum += row.slopes[kind] * off / variance;
            weight += row.slopes[kind] * row.slopes[kind] / variance;
            if evidence > THRESHOLD && first[kind].is_none() {
                first[kind] = Some(at);
            }
        }
        if let Some(since) = since.filter(|_| evidence > THRESHOLD && weight > 0.0) {
            let by = (sum / weight / factor).abs();
            held.push(if kind == 0 { Alarm::CaptureFallen { by, since } } else { Alarm::UseRisen { by, since } });
        }
    }
    (held, first)
}

//! Whether the last weeks are unlike those before: capture fallen, use risen.

use super::change::{Change, changed};
use super::fit::{Fit, NORMAL_95, Row, fit, rows};
use super::spans::Factors;
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
    /// One of the two, and the readings can't yet tell which.
    Either {
        /// The share of the rain that is missing if it is capture.
        missing: f64,
        /// The share that is added if it is use.
        more: f64,
        /// The day from which on.
        since: usize,
    },
}

impl Alarm {
    /// The day from which on, counted from the timeline's first.
    pub fn since(self) -> usize {
        let (Alarm::CaptureFallen { since, .. } | Alarm::UseRisen { since, .. } | Alarm::Either { since, .. }) = self;
        since
    }
}

/// The days that are watched: the last half year, or the later half of a shorter diary.
pub const WATCHED_DAYS: usize = 183;
/// The fewest spans before them that make a normal.
pub const NORMAL_SPANS: usize = 8;
/// Changes that are looked for: three tenths less capture, three tenths more use.
const SHIFT: f64 = 0.3;
/// A normal of a few weeks is only roughly known: changes count from so many of its standard errors on (chosen, as the
/// threshold, on made diaries).
const MARGIN: f64 = 0.7;
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

/// The days before those that are watched; `None` where there are none.
pub fn before(timeline: &Timeline) -> Option<Timeline> {
    let before = Some(timeline.dates.len()).filter(|days| *days > 1)?;
    Some(timeline.within(0..before - WATCHED_DAYS.min(before / 2)))
}

/// The alarms that hold at the end, and on which span after `from` each kind was first called. What changed is told by
/// [`changed`]: less rain that comes and more water that goes look alike in a level under rain.
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
    let timeline = &timeline.within(0..timeline.dates.len());
    let rows = rows(plan, timeline, &counts, normal.factors, inflow_first);
    let after: Vec<&Row> = rows.iter().filter(|row| row.span.days.0 + 1 >= from && row.span.measured).collect();
    let mut first = [None; 2];
    let mut held: Option<usize> = None;
    for (kind, factor, sign) in [(0, normal.factors.capture, -1.0), (1, normal.factors.uses, 1.0)] {
        let (mut evidence, mut since) = (0.0_f64, None);
        for (at, row) in after.iter().enumerate().filter(|(_, row)| row.counts) {
            let change = sign * SHIFT * factor * row.slopes[kind];
            let variance = row.variance * normal.spread.max(1.0).powi(2);
            // What would be off if the normal were a little worse than it was found.
            let edge = sign * MARGIN * normal.errors[kind] * row.slopes[kind];
            // A single reading, however wrong, is not all the evidence.
            let off = (row.span.read_l - row.span.run_l - edge).clamp(-3.0 * variance.sqrt(), 3.0 * variance.sqrt());
            evidence += change * (off - change / 2.0) / variance;
            if evidence <= 0.0 {
                (evidence, since) = (0.0, None);
                continue;
            }
            since = since.or(Some(row.span.days.0));
            if evidence > THRESHOLD && first[kind].is_none() {
                first[kind] = Some(at);
            }
        }
        if let Some(since) = since.filter(|_| evidence > THRESHOLD) {
            held = Some(held.map_or(since, |other| other.max(since)));
        }
    }
    let told = held.map(|since| (since, changed(plan, timeline, normal, since, inflow_first)));
    let told = told.map_or_else(Vec::new, |(since, Change { missing, more, alone })| match alone {
        [true, false] => vec![Alarm::CaptureFallen { by: missing[0], since }],
        [false, true] => vec![Alarm::UseRisen { by: more[0], since }],
        [true, true] => vec![Alarm::Either { missing: missing[0], more: more[0], since }],
        [false, false] => {
            vec![Alarm::CaptureFallen { by: missing[1], since }, Alarm::UseRisen { by: more[1], since }]
        }
    });
    (told, first)
}

/// The days over which rain is looked for where there is no normal.
const BALANCED_DAYS: usize = 28;
/// So many stretches without rain say what is really used (common practice, no source).
const FEWEST_DRY: usize = 3;

/// Whether most of the last four weeks' rain isn't to be found in what was read, against what the system is entered to
/// catch and to use, or what dry stretches say is used: beyond three standard errors, so that chance does it once in a thousand
/// times.
pub fn is_unaccounted(plan: &Plan, timeline: &Timeline, inflow_first: f64) -> bool {
    let of = |timeline: &Timeline| -> Vec<Row> {
        let counts: Vec<bool> = timeline.readings.iter().map(|reading| !reading.above_rim).collect();
        let mut rows = rows(plan, timeline, &counts, Factors::ENTERED, inflow_first);
        rows.retain(|row| row.counts);
        rows
    };
    let (more, doubt) = more_used(&of(timeline)).unwrap_or_default();
    let days = timeline.dates.len();
    let from = timeline.readings.iter().map(|reading| reading.day).rfind(|day| day + BALANCED_DAYS < days);
    let (mut came, mut used, mut lacking, mut variance) = (0.0, 0.0, 0.0, 0.0);
    for row in of(&timeline.within(from.unwrap_or(0)..days)) {
        came += row.slopes[0];
        used -= row.slopes[1];
        lacking += lacks(&row) + more * row.slopes[1];
        variance += row.variance;
    }
    lacking > came / 2.0 && came > 0.0 && lacking > 3.0 * (variance + doubt * used * used).sqrt()
}

/// How much less was read at the end of a stretch than the system would then hold, in L.
fn lacks(row: &Row) -> f64 {
    row.span.run_l - row.span.read_l
}

/// How much more than entered is used by stretches in which nothing came, as a share, and its variance; none where they are too
/// few or, nine times in ten, don't contradict what is entered.
fn more_used(rows: &[Row]) -> Option<(f64, f64)> {
    let (mut dry, mut used, mut lacking, mut variance) = (0, 0.0, 0.0, 0.0);
    for row in rows.iter().filter(|row| row.span.inflow_l == 0.0) {
        dry += 1;
        used -= row.slopes[1];
        lacking += lacks(row);
        variance += row.variance;
    }
    (dry >= FEWEST_DRY && used > 0.0 && lacking.abs() > NORMAL_95 * variance.sqrt())
        .then(|| (lacking / used, variance / (used * used)))
}

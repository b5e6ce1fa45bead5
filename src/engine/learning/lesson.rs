//! All that the readings say, worked out in slices.

use chrono::NaiveDate;

use super::fit::{Estimate, Fit, Fitting};
use super::timeline::Timeline;
use super::watch::{Alarm, alarms, before, is_normal};
use crate::engine::balance::plan::Plan;

/// What the readings say.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lesson {
    /// The first day.
    pub first: NaiveDate,
    /// The last.
    pub last: NaiveDate,
    /// The fit of all of them; `None` where they are too few.
    pub fit: Option<Fit>,
    /// The dates of readings that can't be right.
    pub odd: Vec<NaiveDate>,
    /// What was noticed in the last half year; `None` where there is no normal to compare with.
    pub alarms: Option<Vec<Alarm>>,
}

impl Lesson {
    /// The leak, in L a day, where there is one beyond doubt: no more than one house in a hundred without any is told so.
    pub fn leak(&self) -> Option<Estimate> {
        self.fit.as_ref()?.leak_l.filter(|leak| leak.value > BEYOND_DOUBT * leak.half_width)
    }
}

/// Half-widths of a range of 90 % that leave one in a hundred beyond them on one side (normal: 2.326 over 1.645).
const BEYOND_DOUBT: f64 = 1.414;

/// The work on it.
#[derive(Clone, Debug)]
pub struct Learning {
    plan: Plan,
    inflow_first: f64,
    whole: Fitting,
    normal: Option<Fitting>,
    lesson: Option<Lesson>,
}

impl Learning {
    /// The work on a timeline.
    pub fn new(plan: Plan, timeline: Timeline, inflow_first: f64) -> Self {
        let normal = before(&timeline).map(Fitting::new);
        Self { plan, inflow_first, whole: Fitting::new(timeline), normal, lesson: None }
    }

    /// Days that a step runs.
    pub fn days(&self) -> usize {
        self.whole.days()
    }

    /// Does the next piece. False once nothing is left.
    pub fn step(&mut self) -> bool {
        if self.lesson.is_some() {
            return false;
        }
        if self.whole.step(&self.plan, self.inflow_first) {
            return true;
        }
        if self.normal.as_mut().is_some_and(|normal| normal.step(&self.plan, self.inflow_first)) {
            return true;
        }
        let timeline = &self.whole.timeline;
        let date = |day: usize| timeline.dates.get(day).copied().unwrap_or_default();
        let watched = self.normal.as_ref().and_then(|normal| Some((normal, normal.fit.as_ref()?)));
        let watched = watched.filter(|(_, fit)| is_normal(fit));
        let alarms = watched
            .map(|(normal, fit)| alarms(&self.plan, timeline, fit, normal.timeline.dates.len(), self.inflow_first).0);
        let odd = self.whole.fit.iter().flat_map(|fit| &fit.odd);
        self.lesson = Some(Lesson {
            first: date(0),
            last: timeline.dates.last().copied().unwrap_or_default(),
            odd: odd.filter_map(|at| Some(date(timeline.readings.get(*at)?.day))).collect(),
            fit: self.whole.fit.clone(),
            alarms,
        });
        false
    }

    /// What was found, once nothing is left.
    pub fn lesson(self) -> Option<Lesson> {
        self.lesson
    }
}

//! All that the readings say, worked out in slices.

use chrono::NaiveDate;

use super::fit::{Estimate, Fit, Fitting};
use super::spans::{Factors, run_spans};
use super::timeline::{Reading, Timeline};
use super::watch::{Alarm, alarms, before, is_normal, is_unaccounted};
use crate::engine::balance::plan::{Plan, plan};
use crate::site::diary::Diary;
use crate::site::household::Site;
use crate::site::rain::Rain;

/// What the readings say.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lesson {
    /// The first day.
    pub first: NaiveDate,
    /// The last.
    pub last: NaiveDate,
    /// The fit of all of them, or of those since something changed; `None` where they are too few.
    pub fit: Option<Fit>,
    /// The day on which something changed, where the fit is of the days since.
    pub since: Option<NaiveDate>,
    /// The dates of readings that can't be right.
    pub odd: Vec<NaiveDate>,
    /// Of these the newest of its store, where it is lower than expected: it may be right, and water going.
    pub newest_low: Option<NaiveDate>,
    /// What was noticed in the last half year; `None` where there is no normal to compare with.
    pub alarms: Option<Vec<Alarm>>,
    /// Whether, without a normal, most of the last weeks' rain is not to be found in the levels.
    pub unaccounted: bool,
    /// The store that a leak is told of, as its place in the plan.
    pub leaks_from: usize,
}

/// The usual gutter and screen pass on nine tenths: clearly more of what is entered can't come.
pub const MORE_THAN_ALL: f64 = 1.2;

impl Lesson {
    /// What the readings contradict of what is entered, as factors to reckon on with: a factor whose range leaves 1 out, and a leak
    /// beyond doubt. A capture that tells of more than can come is left out. None where they contradict nothing.
    pub fn contradicts(&self) -> Option<Factors> {
        let fit = self.fit.as_ref()?;
        let told = |estimate: &Option<Estimate>| {
            let estimate = estimate.filter(|estimate| (estimate.value - 1.0).abs() > estimate.half_width);
            estimate.map(|estimate| estimate.value)
        };
        let comes = fit.capture.filter(|capture| capture.value - capture.half_width <= MORE_THAN_ALL);
        let factors = Factors {
            capture: told(&comes).unwrap_or(1.0),
            uses: told(&fit.uses).unwrap_or(1.0),
            leak_l: self.leak().map_or(0.0, |leak| leak.value),
        };
        (factors != Factors::ENTERED).then_some(factors)
    }

    /// Makes of a plan as it is entered one as the readings show it; see [`Self::contradicts`].
    pub fn correct(&self, plan: &mut Plan) {
        if let Some(Factors { capture, uses, leak_l }) = self.contradicts() {
            plan.scale_capture(capture);
            plan.catch_no_more_than_all();
            plan.scale_uses(uses);
            plan.add_leak(self.leaks_from, leak_l);
        }
    }

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
    alarms: Option<Vec<Alarm>>,
    compared: bool,
    since: Option<(usize, Fitting)>,
    lesson: Option<Lesson>,
}

/// What a site's diary says up to a day, all at once; none where it has not two readings or its system can't run.
pub fn learn(site: &Site, rain: Option<&Rain>, diary: &Diary, today: NaiveDate) -> Option<Lesson> {
    let mut learning = Learning::of(site, rain, diary, today)?;
    while learning.step() {}
    learning.lesson()
}

impl Learning {
    /// The work on what a site's diary says up to a day; none as for [`learn`].
    pub fn of(site: &Site, rain: Option<&Rain>, diary: &Diary, today: NaiveDate) -> Option<Self> {
        let plan = plan(&site.system).ok()?;
        let timeline = Timeline::of(&plan, site, rain, diary, today)?;
        Some(Self::new(plan, timeline, site.reckoning.inflow_first.get()))
    }

    /// The work on a timeline.
    pub fn new(plan: Plan, timeline: Timeline, inflow_first: f64) -> Self {
        let normal = before(&timeline).map(Fitting::new);
        let whole = Fitting::new(timeline);
        Self { plan, inflow_first, whole, normal, alarms: None, compared: false, since: None, lesson: None }
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
        if !self.compared {
            self.compare();
            return true;
        }
        if self.since.as_mut().is_some_and(|(_, since)| since.step(&self.plan, self.inflow_first)) {
            return true;
        }
        let timeline = &self.whole.timeline;
        let date = |day: usize| timeline.dates.get(day).copied().unwrap_or_default();
        let odd: Vec<usize> = self.whole.fit.iter().flat_map(|fit| &fit.odd).copied().collect();
        let low = self.newest_low(&odd);
        let since = self.since.as_ref().and_then(|(day, since)| Some((date(*day), since.fit.clone()?)));
        let (since, fit) = since.map_or_else(|| (None, self.whole.fit.clone()), |(day, fit)| (Some(day), Some(fit)));
        self.lesson = Some(Lesson {
            first: date(0),
            last: timeline.dates.last().copied().unwrap_or_default(),
            fit,
            since,
            odd: odd.iter().filter_map(|at| Some(date(timeline.readings.get(*at)?.day))).collect(),
            newest_low: low.map(|reading| date(reading.day)),
            unaccounted: self.alarms.is_none() && is_unaccounted(&self.plan, timeline, self.inflow_first),
            alarms: self.alarms.take(),
            leaks_from: timeline.leak_store(),
        });
        false
    }

    /// Compares the last weeks with the time before; where something changed, the days since have a fit of their own,
    /// unless a leak is told from use, which takes all of them.
    fn compare(&mut self) {
        let timeline = &self.whole.timeline;
        let watched = self.normal.as_ref().and_then(|normal| Some((normal, normal.fit.as_ref()?)));
        let watched = watched.filter(|(_, fit)| is_normal(fit));
        self.alarms = watched
            .map(|(normal, fit)| alarms(&self.plan, timeline, fit, normal.timeline.dates.len(), self.inflow_first).0);
        let since = self.alarms.iter().flatten().next().map(|alarm| alarm.since());
        let together = self.whole.fit.as_ref().is_none_or(|fit| fit.leak_l.is_none());
        self.since =
            since.filter(|_| together).map(|since| (since, Fitting::new(timeline.within(since..timeline.dates.len()))));
        self.compared = true;
    }

    /// Of readings that can't be right the one that is the newest of its store and below what the days before it lead to.
    fn newest_low(&self, odd: &[usize]) -> Option<&Reading> {
        if odd.is_empty() {
            return None;
        }
        let timeline = &self.whole.timeline;
        let factors = self.whole.fit.as_ref().map_or(Factors::ENTERED, |fit| fit.factors);
        let spans = run_spans(&self.plan, timeline, &[], factors, self.inflow_first, 0.0);
        odd.iter().filter_map(|at| timeline.readings.get(*at)).find(|reading| {
            let newest = spans.iter().rfind(|span| span.store == reading.store);
            newest.is_some_and(|span| span.days.1 == reading.day && span.read_l < span.run_l)
        })
    }

    /// What was found, once nothing is left.
    pub fn lesson(self) -> Option<Lesson> {
        self.lesson
    }
}

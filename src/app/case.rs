//! The open site with its outcomes.

use std::sync::Arc;

use chrono::NaiveDate;

use crate::app::ahead::{Sight, Wishes};
use crate::app::model::{KeptSite, Model};
use crate::app::view::Outcome;
use crate::engine::ahead::ask::By;
use crate::engine::learning::lesson::Lesson;
use crate::engine::question::answer_beside;
use crate::quantity::Units;
use crate::site::trial::Trial;

/// What the places are drawn from. Outcomes are reckoned anew only when what they depend on has changed.
pub struct Case {
    /// The open site.
    pub site: Option<KeptSite>,
    /// The person's units.
    pub units: Units,
    /// The day.
    pub today: NaiveDate,
    /// Width for figures, in pixels.
    pub width: f64,
    /// The trial beside the real system.
    pub trial: Trial,
    /// What is wanted of the weeks ahead, and what is known of them.
    pub ahead: (Wishes, Sight),
    /// What the readings say.
    pub lesson: Option<Arc<Lesson>>,
    /// The site under an open trial.
    shown: Option<KeptSite>,
    /// The site's outcome; none without rain.
    pub outcome: Option<Arc<Outcome>>,
    /// The outcome of the trial, where there is one.
    pub tried: Option<Arc<Outcome>>,
}

impl PartialEq for Case {
    /// Outcomes follow from the rest.
    fn eq(&self, other: &Self) -> bool {
        self.width == other.width
            && self.today == other.today
            && self.trial == other.trial
            && self.units == other.units
            && self.site == other.site
            && self.ahead == other.ahead
            && match (&self.lesson, &other.lesson) {
                (Some(one), Some(other)) => Arc::ptr_eq(one, other),
                (one, other) => one.is_none() && other.is_none(),
            }
    }
}

/// Whether the outcome of one is that of the other, whatever else is in their diaries.
fn asks_the_same(one: Option<&KeptSite>, other: Option<&KeptSite>) -> bool {
    match (one, other) {
        (Some(one), Some(other)) => one.id == other.id && one.site == other.site && one.rain == other.rain,
        (None, None) => true,
        _ => false,
    }
}

impl Case {
    /// The site as it is shown, under the trial if one is open, with its outcome.
    pub fn shown(&self) -> (Option<&KeptSite>, Option<&Outcome>) {
        match &self.shown {
            Some(tried) => (Some(tried), self.tried.as_deref()),
            None => (self.site.as_ref(), self.outcome.as_deref()),
        }
    }

    /// The case as it is now, given the one before.
    pub fn of(model: &Model, width: f64, before: Option<&Self>) -> Self {
        let by = model.ahead.lesson.clone().filter(|_| model.ahead.wishes.by == By::Readings);
        let seen = |kept: KeptSite| KeptSite { by: by.clone(), ..kept.with_written_rain() };
        let mut site = model.site().cloned().map(seen);
        // The trial stands beside the site here.
        let trial = site.as_mut().map_or(Trial::NONE, |kept| std::mem::replace(&mut kept.trial, Trial::NONE));
        let same = before.filter(|before| asks_the_same(before.site.as_ref(), site.as_ref()));
        let tried_before = same.filter(|before| before.trial == trial && !trial.is_none());
        let reckon = |trial: &Trial| {
            let kept = site.as_ref()?;
            let house = (!trial.is_none()).then_some(&kept.site.system);
            Some(Arc::new(answer_beside(&trial.of(&kept.site), house, kept.rain.as_deref()?)))
        };
        let ahead = (model.ahead.wishes, model.ahead.sight.clone());
        let lesson = model.ahead.lesson.clone();
        let shown = trial.system.is_some().then(|| model.shown_site()).flatten().map(seen);
        let outcome = match same {
            Some(before) => before.outcome.clone(),
            None => reckon(&Trial::NONE),
        };
        let tried = match tried_before {
            Some(before) => before.tried.clone(),
            None if trial.is_none() => None,
            None => reckon(&trial),
        };
        Self {
            units: model.units.clone(),
            today: model.today,
            width,
            trial,
            ahead,
            lesson,
            shown,
            outcome,
            tried,
            site,
        }
    }
}

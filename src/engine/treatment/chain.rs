//! The whole chain from roof to tap: what is proven of it, what it lacks most, and what stands in the wrong order.

use chrono::NaiveDate;

use super::limits::{Judgement, judge};
use super::results::{Result, at_tap, number};
use super::sources::{ROOF_QUESTIONS, YES, brings_metals, brings_organics, feeds_behind, flushes, sections_behind};
use super::step::{CLEAR, Effect, Known, Step, step};
use super::targets::{Germ, stars, weakest};
use crate::engine::checks::{Asked, Verdict};
use crate::site::barrier::BarrierKind;
use crate::site::details::Detail;
use crate::site::diary::{Diary, Parameter, Told};
use crate::site::part::PartId;
use crate::site::uses::{Class, Use};
use crate::site::work::Task;

/// Something in the wrong order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Disorder {
    /// A lamp without anything before it that holds back dirt.
    LampInDirtyWater,
    /// Germs grow on carbon, and nothing after it disinfects.
    CarbonLast,
    /// The water is over 1 NTU: light and chlorine work, but less surely.
    Hazy,
}

/// A chain.
#[derive(Clone, Debug, PartialEq)]
pub struct Chain {
    /// The use at whose tap it ends.
    pub tap: PartId,
    /// What that water is for.
    pub class: Class,
    /// Feeds that its water comes through, and how many of them have a first flush that works.
    pub feeds: (usize, usize),
    /// The barriers in order.
    pub steps: Vec<Step>,
    /// Logs of bacteria, viruses and protozoa that are proven.
    pub logs: [f64; 3],
    /// Stars of WHO's scheme.
    pub stars: u8,
    /// The germ that lacks most to three stars, with what it lacks.
    pub weakest: Option<(Germ, f64)>,
    /// Against sediment.
    pub sediment: Effect,
    /// Against metals.
    pub metals: Effect,
    /// Against organic substances.
    pub organics: Effect,
    /// What is on the roofs that the water comes from: the section, and the question answered with yes.
    pub on_roofs: Vec<(PartId, Detail)>,
    /// Roof sections of which something was not asked yet.
    pub not_asked: Vec<PartId>,
    /// What stands in the wrong order.
    pub disorders: Vec<Disorder>,
    /// The newest results of tests of this water.
    pub results: Vec<Result>,
}

/// Whether people may come to drink what a use draws: for drinking by intent, for the house by accident, for travel by
/// both. Garden and animals have no chain.
pub const fn has_chain(class: Class) -> bool {
    matches!(class, Class::Drinking | Class::House | Class::Travel)
}

/// The chain of a use.
pub fn chain(asked: &Asked<'_>, diary: &Diary, using: &Use) -> Chain {
    let system = &asked.site.system;
    let results = at_tap(diary, system, using.id, using.tank);
    let mut known = known(asked, diary, using, &results);
    let mut steps: Vec<Step> = Vec::with_capacity(using.barriers.len());
    for barrier in &using.barriers {
        let step = step(asked, *barrier, &known);
        known.filtered |= step.sediment > Effect::Nothing;
        steps.push(step);
    }
    let mut logs = [0.0; 3];
    for step in &steps {
        for (sum, each) in logs.iter_mut().zip(step.logs) {
            *sum += each;
        }
    }
    let best = |of: fn(&Step) -> Effect| steps.iter().map(of).max().unwrap_or_default();
    let feeds = using.tank.map(|tank| feeds_behind(system, tank)).unwrap_or_default();
    let (mut on_roofs, mut not_asked) = (Vec::new(), Vec::new());
    for section in using.tank.map(|tank| sections_behind(system, tank)).unwrap_or_default() {
        let answers = ROOF_QUESTIONS.map(|question| (question, system.details.get(Some(section.id), question)));
        on_roofs.extend(answers.iter().filter(|(_, is)| *is == Some(YES)).map(|(question, _)| (section.id, *question)));
        if answers.iter().any(|(_, is)| is.is_none_or(|is| is == 0.0)) {
            not_asked.push(section.id);
        }
    }
    Chain {
        tap: using.id,
        class: using.class,
        feeds: (feeds.len(), feeds.iter().filter(|feed| flushes(feed)).count()),
        stars: stars(&logs),
        weakest: weakest(&logs),
        sediment: best(|step| step.sediment),
        metals: best(|step| step.metals),
        organics: best(|step| step.organics),
        disorders: disorders(&steps, known.turbidity),
        logs,
        steps,
        on_roofs,
        not_asked,
        results,
    }
}

impl Chain {
    /// What it comes to: enough from two stars on; one star names its gap; nothing proven is not enough for drinking, and
    /// something to know where nobody is meant to drink.
    pub fn verdict(&self) -> Verdict {
        match self.stars {
            2.. => Verdict::Holds,
            1 => Verdict::Lacks,
            _ if self.class == Class::House => Verdict::Tells,
            _ => Verdict::Fails,
        }
    }

    /// The newest tests for germs that leave doubt about what is proven: something grew that is no sign of droppings, or
    /// the test was too coarse.
    pub fn doubts(&self) -> impl Iterator<Item = &Result> {
        self.results.iter().filter(|result| {
            matches!(result.of, Parameter::EColi | Parameter::Coliforms)
                && matches!(judge(result.of, result.found, false).0, Judgement::Watch | Judgement::CannotTell)
        })
    }

    /// Whether no metal was ever tested for in its water.
    pub fn no_metal_tested(&self) -> bool {
        !self.results.iter().any(|result| result.of.is_metal())
    }

    /// What is on its roofs and no barrier is certified against.
    pub fn unguarded(&self) -> impl Iterator<Item = (PartId, Detail)> + '_ {
        self.on_roofs.iter().copied().filter(|(_, question)| {
            (brings_metals(*question) && self.metals != Effect::Certified)
                || (brings_organics(*question) && self.organics != Effect::Certified)
        })
    }

    /// Whether chlorine is among its barriers.
    pub fn is_chlorinated(&self) -> bool {
        self.steps.iter().any(|step| step.barrier.kind == BarrierKind::Chlorine)
    }
}

/// Days that a measured residual counts for: it decays in days, and is measured once a week (common practice, no source).
const RESIDUAL_COUNTS_DAYS: f64 = 7.0;
/// Days that water found clear counts as clear: storms change what comes off a roof (common practice, no source).
const CLEAR_COUNTS_DAYS: f64 = 31.0;
/// Days that a test of clearness to light or of acidity counts for: a year (common practice, no source).
const TEST_COUNTS_DAYS: f64 = 366.0;

fn known(asked: &Asked<'_>, diary: &Diary, using: &Use, results: &[Result]) -> Known {
    const SHARE_OF_PERCENT: f64 = 0.01;
    let within = |days: f64, of| {
        let recent = |result: &&Result| result.of == of && days_between(result.date, asked.today) <= days;
        results.iter().find(recent).and_then(|result| number(result.found))
    };
    let tested = |of| within(TEST_COUNTS_DAYS, of);
    let at = asked.site.system.uses.iter().position(|other| other.id == using.id);
    Known {
        // Whatever its age: cloudy water takes something away.
        turbidity: within(f64::INFINITY, Parameter::Turbidity),
        found_clear: within(CLEAR_COUNTS_DAYS, Parameter::Turbidity).is_some_and(|turbidity| turbidity <= CLEAR),
        clarity: tested(Parameter::Transmittance).map(|percent| percent * SHARE_OF_PERCENT),
        ph: tested(Parameter::Ph),
        residual: within(f64::INFINITY, Parameter::FreeChlorine),
        residual_fresh: within(RESIDUAL_COUNTS_DAYS, Parameter::FreeChlorine).is_some(),
        litres_a_day: asked.answer.zip(at).and_then(|(answer, at)| mean(answer.series.yield_l.get(at)?)),
        filtered: false,
        lamp_days: lamp_changed(diary, using).map(|date| days_between(date, asked.today)),
        tap: Some(using.id),
    }
}

fn mean(values: &[f64]) -> Option<f64> {
    #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
    let days = values.len() as f64;
    (days > 0.0).then(|| values.iter().sum::<f64>() / days)
}

/// When a lamp of this tap was last changed.
fn lamp_changed(diary: &Diary, using: &Use) -> Option<NaiveDate> {
    let here = |on: Option<PartId>| on.is_none_or(|on| on == using.id || using.barriers.iter().any(|own| own.id == on));
    let changes =
        diary.entries().iter().filter(|entry| matches!(entry.told, Told::Work { on, task: Task::Lamp } if here(on)));
    changes.map(|entry| entry.date).next_back()
}

fn days_between(from: NaiveDate, to: NaiveDate) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
    let days = (to - from).num_days().max(0) as f64;
    days
}

fn disorders(steps: &[Step], turbidity: Option<f64>) -> Vec<Disorder> {
    let kinds: Vec<BarrierKind> = steps.iter().map(|step| step.barrier.kind).collect();
    let place = |wanted: BarrierKind| kinds.iter().position(|kind| *kind == wanted);
    let disinfects =
        |kind: &BarrierKind| matches!(kind, BarrierKind::Ultraviolet | BarrierKind::Chlorine | BarrierKind::Boiling);
    let mut found = Vec::new();
    if place(BarrierKind::Ultraviolet)
        .is_some_and(|lamp| !steps[..lamp].iter().any(|step| step.sediment > Effect::Nothing))
    {
        found.push(Disorder::LampInDirtyWater);
    }
    let last_carbon = kinds.iter().rposition(|kind| *kind == BarrierKind::Carbon);
    if last_carbon.is_some_and(|carbon| !kinds[carbon..].iter().any(disinfects)) {
        found.push(Disorder::CarbonLast);
    }
    if turbidity.is_some_and(|turbidity| turbidity > CLEAR) && kinds.iter().any(disinfects) {
        found.push(Disorder::Hazy);
    }
    found
}

//! The newest results of water tests that concern a tap.

use chrono::{Days, NaiveDate};

use super::chain::has_chain;
use super::limits::{Judgement, judge};
use super::sources::tanks_behind;
use crate::site::barrier::BarrierKind;
use crate::site::diary::{Diary, Parameter, TestResult, Told};
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::uses::Use;

/// A result in the diary.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Result {
    /// The day of the sample.
    pub date: NaiveDate,
    /// Where it was taken, if that was written down.
    pub at: Option<PartId>,
    /// What was tested for.
    pub of: Parameter,
    /// What was found.
    pub found: TestResult,
    /// Since it was over a limit, the day of the first sample within it, which alone doesn't clear it.
    pub within_on: Option<NaiveDate>,
}

/// After E. coli, so many days lie between the two samples without it that clear the water: one glass may miss what still
/// comes in. Common practice, no source.
const DAYS_BETWEEN_CLEAN: Days = Days::new(7);

impl Result {
    /// From when on the next sample within the limit clears this one; none while none has been.
    pub fn cleared_from(&self) -> Option<NaiveDate> {
        self.within_on?.checked_add_days(DAYS_BETWEEN_CLEAN)
    }

    /// Which result stands once a newer one has come.
    fn then(self, newer: Result) -> Result {
        let judged = |result: &Result| judge(result.of, result.found, false).0;
        if judged(&self) != Judgement::Fails || judged(&newer) == Judgement::Fails {
            return newer;
        }
        if judged(&newer) == Judgement::CannotTell || newer.date == self.date {
            return self;
        }
        match self.cleared_from() {
            None if self.of == Parameter::EColi => Result { within_on: Some(newer.date), ..self },
            Some(from) if newer.date < from => self,
            _ => newer,
        }
    }
}

/// The result that stands for each parameter, in the order of [`Parameter::ALL`], of those that `concerns` says yes to: the
/// newest. But what was over a limit of health stands until a sample of a later day is within it: neither a test too coarse
/// to tell nor another sample of the same day clears it. After E. coli it takes two such samples, a week apart.
pub fn newest(diary: &Diary, concerns: impl Fn(Option<PartId>) -> bool) -> Vec<Result> {
    let mut newest: Vec<Result> = Vec::new();
    for entry in diary.entries() {
        if let Told::Test { at, parameter, found } = entry.told
            && concerns(at)
        {
            let result = Result { date: entry.date, at, of: parameter, found, within_on: None };
            match newest.iter_mut().find(|stands| stands.of == parameter) {
                Some(stands) => *stands = stands.then(result),
                None => newest.push(result),
            }
        }
    }
    Parameter::ALL.into_iter().filter_map(|of| newest.iter().find(|result| result.of == of).copied()).collect()
}

/// The newest results that concern a tap: taken there, at a tank that its water comes from, or nobody wrote where.
pub fn at_tap(diary: &Diary, system: &System, tap: PartId, tank: Option<PartId>) -> Vec<Result> {
    let tanks = tank.map(|tank| tanks_behind(system, tank)).unwrap_or_default();
    newest(diary, |at| at.is_none_or(|at| at == tap || tanks.contains(&at)))
}

/// The newest results that concern the tap of a use and are over a limit of health.
pub fn over_limit_at(diary: &Diary, system: &System, using: &Use) -> Vec<Result> {
    let mut results = at_tap(diary, system, using.id, using.tank);
    results.retain(|result| is_over_limit(result, is_chlorinated(using)));
    results
}

/// The newest results that are over a limit of health, of water that people may come to drink; each once, whatever taps
/// it concerns.
pub fn over_limit(diary: &Diary, system: &System) -> Vec<Result> {
    let mut over: Vec<Result> = Vec::new();
    for using in system.uses.iter().filter(|using| has_chain(using.class)) {
        for result in over_limit_at(diary, system, using) {
            if !over.contains(&result) {
                over.push(result);
            }
        }
    }
    over
}

/// Whether a result is over a limit of health.
pub fn is_over_limit(result: &Result, chlorinated: bool) -> bool {
    judge(result.of, result.found, chlorinated).0 == Judgement::Fails
}

/// Whether chlorine is dosed on the way to a use.
pub fn is_chlorinated(using: &Use) -> bool {
    using.barriers.iter().any(|barrier| barrier.kind == BarrierKind::Chlorine)
}

/// The number that a result says, if it says one: less than a limit counts as that limit, which errs on the safe side
/// where less is better.
pub const fn number(found: TestResult) -> Option<f64> {
    match found {
        TestResult::Value(value) | TestResult::Below(value) => Some(value),
        TestResult::Present | TestResult::Absent => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;
    use crate::site::diary::{Entry, EntryId};
    use crate::site::uses::Class;

    fn diary(tests: &[(u64, Option<PartId>, Parameter, TestResult)]) -> Diary {
        let entry = |(id, &(day, at, parameter, found)): (u64, &(u64, Option<PartId>, Parameter, TestResult))| Entry {
            id: EntryId(id),
            edited: id,
            date: NaiveDate::default() + chrono::Days::new(day),
            told: Told::Test { at, parameter, found },
            note: String::new(),
        };
        Diary::of((1..).zip(tests).map(entry).collect())
    }

    #[test]
    fn the_newest_test_over_a_limit_of_health_stands_until_a_newer_one_is_within() {
        let system = demo::site().system;
        let over = |tests: &[_]| over_limit(&diary(tests), &system);
        let found = (1, None, Parameter::EColi, TestResult::Present);
        // Nobody wrote where: it concerns every tap, and is told once.
        assert_eq!(over(&[found]).len(), 1);
        let lead = (1, None, Parameter::Lead, TestResult::Value(40.0));
        assert_eq!(over(&[lead]).len(), 1);
        assert_eq!(over(&[lead, (2, None, Parameter::Lead, TestResult::Value(2.0))]), []);
        assert_eq!(over(&[found, (2, None, Parameter::Lead, TestResult::Below(2.0))]).len(), 1);
        // Ten in 100 mL is no answer where none may be, and a clean glass of the same day doesn't clean the other one.
        assert_eq!(over(&[found, (2, None, Parameter::EColi, TestResult::Below(10.0))]), over(&[found]));
        assert_eq!(over(&[found, (1, None, Parameter::EColi, TestResult::Absent)]).len(), 1);
        // Zinc is a matter of taste (EPA, 40 CFR 143).
        assert_eq!(over(&[(1, None, Parameter::Zinc, TestResult::Value(9e3))]), []);
    }

    #[test]
    fn after_e_coli_two_samples_a_week_apart_clear_the_water() {
        let system = demo::site().system;
        let found = |day| (day, None, Parameter::EColi, TestResult::Present);
        let none = |day| (day, None, Parameter::EColi, TestResult::Absent);
        let stands = |tests: &[_]| {
            let over = over_limit(&diary(tests), &system);
            over.first().map(|result| (result.date, result.within_on))
        };
        let day = |day| NaiveDate::default() + Days::new(day);
        assert_eq!(stands(&[found(1), none(4)]), Some((day(1), Some(day(4)))));
        assert_eq!(stands(&[found(1), none(4), none(10)]), Some((day(1), Some(day(4)))), "six days apart");
        assert_eq!(stands(&[found(1), none(4), none(11)]), None);
        assert_eq!(stands(&[found(1), none(4), found(8), none(11)]), Some((day(8), Some(day(11)))), "it came back");
        let coarse = (11, None, Parameter::EColi, TestResult::Below(10.0));
        assert_eq!(stands(&[found(1), none(4), coarse]), Some((day(1), Some(day(4)))));
    }

    #[test]
    fn water_that_nobody_comes_to_drink_is_not_told_of() {
        let mut system = demo::site().system;
        let found = diary(&[(1, None, Parameter::EColi, TestResult::Present)]);
        system.uses.retain(|using| matches!(using.class, Class::Garden | Class::Animals));
        assert_eq!(over_limit(&found, &system), []);
    }
}

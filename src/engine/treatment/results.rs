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
/// to tell nor another sample of the same day clears it. After E. coli it takes two such samples, a week apart. A sample
/// speaks for the place where it was taken; one at the `tap`, where the water is drunk, for what comes to it too; and any
/// for one of which nobody wrote where.
pub fn newest(diary: &Diary, tap: Option<PartId>, concerns: impl Fn(Option<PartId>) -> bool) -> Vec<Result> {
    let mut standing: Vec<Result> = Vec::new();
    for entry in diary.entries() {
        if let Told::Test { at, parameter, found } = entry.told
            && concerns(at)
        {
            let result = Result { date: entry.date, at, of: parameter, found, within_on: None };
            let at_the_tap = at.is_some() && at == tap;
            let mut known = false;
            for stands in standing.iter_mut().filter(|stands| stands.of == parameter) {
                known |= stands.at == at;
                if stands.at == at || stands.at.is_none() || at_the_tap {
                    *stands = stands.then(result);
                }
            }
            if !known {
                standing.push(result);
            }
        }
    }
    let told = |of: Parameter| {
        let of_it = standing.iter().filter(|result| result.of == of);
        of_it.max_by_key(|result| (judge(of, result.found, false).0 == Judgement::Fails, result.date)).copied()
    };
    Parameter::ALL.into_iter().filter_map(told).collect()
}

/// The newest results that concern a tap: taken there, at a tank that its water comes from, or nobody wrote where.
pub fn at_tap(diary: &Diary, system: &System, tap: PartId, tank: Option<PartId>) -> Vec<Result> {
    let tanks = tank.map(|tank| tanks_behind(system, tank)).unwrap_or_default();
    newest(diary, Some(tap), |at| at.is_none_or(|at| at == tap || tanks.contains(&at)))
}

/// The newest results that concern the tap of a use and are over a limit of health.
pub fn over_limit_at(diary: &Diary, system: &System, using: &Use) -> Vec<Result> {
    let mut results = at_tap(diary, system, using.id, using.tank);
    results.retain(|result| is_over_limit(result, is_chlorinated(using)));
    results
}

/// Whether a result that concerns the tap of a use asks for another test soon: one over a limit of health, or coliforms,
/// which tell that something gets in.
pub fn asks_to_repeat(diary: &Diary, system: &System, using: &Use) -> bool {
    let asks = |result: &Result| match judge(result.of, result.found, is_chlorinated(using)).0 {
        Judgement::Fails => true,
        Judgement::Watch => result.of == Parameter::Coliforms,
        _ => false,
    };
    at_tap(diary, system, using.id, using.tank).iter().any(asks)
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

/// Of these results, the first that is over a limit of health for something that boiling leaves in the water.
pub fn stays_when_boiled(results: &[Result]) -> Option<Parameter> {
    results.iter().find(|result| is_over_limit(result, false) && result.of.stays_when_boiled()).map(|result| result.of)
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
    fn a_tap_is_cleared_by_its_own_samples_alone() {
        let system = demo::site().system;
        let using = system.uses.iter().find(|using| has_chain(using.class));
        let (Some(tap), Some(tank)) = (using.map(|using| using.id), using.and_then(|using| using.tank)) else {
            unreachable!()
        };
        let test = |day, at, found| (day, Some(at), Parameter::EColi, found);
        let (found, none) = (TestResult::Present, TestResult::Absent);
        let stands = |tests: &[_]| at_tap(&diary(tests), &system, tap, Some(tank)).first().map(|result| result.found);
        assert_eq!(stands(&[test(1, tap, found), test(8, tank, none), test(15, tank, none)]), Some(found));
        assert_eq!(stands(&[test(1, tap, found), test(8, tap, none), test(15, tap, none)]), Some(none));
        let both = [test(1, tap, found), test(2, tank, found), test(9, tank, none), test(16, tank, none)];
        assert_eq!(stands(&both), Some(found), "the tank's samples clear the tank");
        // What comes out where it is drunk is what counts.
        assert_eq!(stands(&[test(1, tank, found), test(8, tap, none), test(15, tap, none)]), Some(none));
    }

    #[test]
    fn water_that_nobody_comes_to_drink_is_not_told_of() {
        let mut system = demo::site().system;
        let found = diary(&[(1, None, Parameter::EColi, TestResult::Present)]);
        system.uses.retain(|using| matches!(using.class, Class::Garden | Class::Animals));
        assert_eq!(over_limit(&found, &system), []);
    }
}

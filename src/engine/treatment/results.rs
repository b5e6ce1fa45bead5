//! The newest results of water tests that concern a tap.

use chrono::NaiveDate;

use super::sources::tanks_behind;
use crate::site::diary::{Diary, Parameter, TestResult, Told};
use crate::site::part::PartId;
use crate::site::system::System;

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
}

/// The newest result for each parameter, in the order of [`Parameter::ALL`]; only those that `concerns` says yes to.
pub fn newest(diary: &Diary, concerns: impl Fn(Option<PartId>) -> bool) -> Vec<Result> {
    let mut newest: Vec<Result> = Vec::new();
    for entry in diary.entries() {
        if let Told::Test { at, parameter, found } = entry.told
            && concerns(at)
        {
            newest.retain(|result| result.of != parameter);
            newest.push(Result { date: entry.date, at, of: parameter, found });
        }
    }
    Parameter::ALL.into_iter().filter_map(|of| newest.iter().find(|result| result.of == of).copied()).collect()
}

/// The newest results that concern a tap: taken there, at a tank that its water comes from, or nobody wrote where.
pub fn at_tap(diary: &Diary, system: &System, tap: PartId, tank: Option<PartId>) -> Vec<Result> {
    let tanks = tank.map(|tank| tanks_behind(system, tank)).unwrap_or_default();
    newest(diary, |at| at.is_none_or(|at| at == tap || tanks.contains(&at)))
}

/// The number that a result says, if it says one: less than a limit counts as that limit, which errs on the safe side
/// where less is better.
pub const fn number(found: TestResult) -> Option<f64> {
    match found {
        TestResult::Value(value) | TestResult::Below(value) => Some(value),
        TestResult::Present | TestResult::Absent => None,
    }
}

//! What gardens and rationing came to, in sentences.

use crate::engine::question::Answer;
use crate::quantity::Units;
use crate::site::system::System;
use crate::words;

/// A sentence for each garden by the weather and for each step of rationing, its name before it.
pub fn what_uses_did(answer: &Answer, system: &System, units: &Units) -> Vec<String> {
    let days = answer.series.dates.len();
    let mut said = Vec::new();
    for tally in &answer.ledger.gardens {
        if let (Some(using), Some(yield_l)) = (system.uses.get(tally.using), answer.series.yield_l.get(tally.using)) {
            let sentence = words::garden::garden(tally, days, yield_l.iter().sum(), units);
            said.push([&using.name, ". ", &sentence].concat());
        }
    }
    for (step, tally) in system.rationing.iter().zip(&answer.ledger.rations) {
        said.push([&step.name, ". ", &words::garden::ration(tally, days, units)].concat());
    }
    said
}

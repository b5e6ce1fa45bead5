//! Pumps that lift water from a low cistern to a tank above.

use super::part::{Choice, Field, Number, PartId};
use crate::quantity::{Flow, Share};

/// A pumped transfer.
#[derive(Clone, Debug, PartialEq)]
pub struct Pump {
    /// Its identity.
    pub id: PartId,
    /// What the household calls it.
    pub name: String,
    /// The tank that it draws on, once chosen.
    pub from: Option<PartId>,
    /// The tank that it fills, once chosen.
    pub to: Option<PartId>,
    /// Share of the receiving store below which it starts, 0 to 1.
    pub start: Share,
    /// Share of the receiving store at which it stops, 0 to 1, at or above `start`.
    pub stop: Share,
    /// Most that it moves in a day, 0 to 1,000,000 L.
    pub limit: Flow,
}

impl Pump {
    /// The numbers of the pump, with their ranges.
    pub fn numbers(&mut self) -> Vec<Number<'_>> {
        vec![
            Number::new(Field::StartLevel, 0.0, 1.0, &mut self.start),
            Number::new(Field::StopLevel, 0.0, 1.0, &mut self.stop),
            Number::new(Field::DailyLimit, 0.0, 1_000_000.0, &mut self.limit),
        ]
    }

    /// Takes a choice.
    pub(super) fn choose(&mut self, field: Field, choice: Choice) {
        let part = if let Choice::Part(part) = choice { Some(part) } else { None };
        match field {
            Field::DrawsFrom => self.from = part,
            Field::PumpsTo => self.to = part,
            _ => {}
        }
    }
}

//! Trunk lines: pipes that join tanks at the bottom.

use super::part::{Choice, Field, PartId};

/// A pipe between two tanks, with a valve.
#[derive(Clone, Debug, PartialEq)]
pub struct TrunkLine {
    /// Its identity.
    pub id: PartId,
    /// What the household calls it.
    pub name: String,
    /// The two tanks that it joins, once they are chosen.
    pub ends: [Option<PartId>; 2],
    /// Whether its valve is open: then both tanks are one store.
    pub open: bool,
}

impl TrunkLine {
    /// Takes a choice.
    pub(super) fn choose(&mut self, field: Field, choice: Choice) {
        let part = match choice {
            Choice::Open(open) => {
                self.open = open;
                return;
            }
            Choice::Part(part) => Some(part),
            _ => None,
        };
        match field {
            Field::FirstTank => self.ends[0] = part,
            Field::SecondTank => self.ends[1] = part,
            _ => {}
        }
    }
}

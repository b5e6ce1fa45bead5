//! Hauled water: loads that arrive when the store is low.

use super::part::{Choice, Field, Number, PartId};
use crate::quantity::{Days, Money, Share, Volume};

/// When water is hauled, to which tank, and at what price.
#[derive(Clone, Debug, PartialEq)]
pub struct Hauling {
    /// Its identity.
    pub id: PartId,
    /// What the household calls it.
    pub name: String,
    /// The tank that is filled, once chosen.
    pub tank: Option<PartId>,
    /// Share of the store below which a load is ordered, 0 to 1.
    pub trigger: Share,
    /// Volume of a load, 1 to 1,000,000 L.
    pub load: Volume,
    /// Price of a load, 0 to 1,000,000.
    pub price: Money,
    /// Whole days between order and arrival, 0 to 90.
    pub notice: Days,
}

impl Hauling {
    /// The numbers of the hauling, with their ranges.
    pub fn numbers(&mut self) -> Vec<Number<'_>> {
        vec![
            Number::new(Field::Trigger, 0.0, 1.0, &mut self.trigger),
            Number::new(Field::Load, 1.0, 1_000_000.0, &mut self.load),
            Number::new(Field::LoadPrice, 0.0, 1_000_000.0, &mut self.price),
            Number::new(Field::Notice, 0.0, 90.0, &mut self.notice),
        ]
    }

    /// Takes a choice.
    pub(super) fn choose(&mut self, choice: Choice) {
        self.tank = if let Choice::Part(tank) = choice { Some(tank) } else { None };
    }
}

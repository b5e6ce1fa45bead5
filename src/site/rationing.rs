//! Rationing: what the household does without while its water is low.

use super::part::{Choice, Field, Number, PartId};
use crate::quantity::{Range, Share};

/// A step of rationing: while a store is low, named uses are cut. Where several steps cut one use, the deepest cut
/// holds.
#[derive(Clone, Debug, PartialEq)]
pub struct RationStep {
    /// Its identity.
    pub id: PartId,
    /// What the household calls it.
    pub name: String,
    /// The tank whose store is looked at, once chosen.
    pub tank: Option<PartId>,
    /// In force on a day that begins with less than this share of the store's live capacity, 0 to 1.
    pub below: Share,
    /// What is cut.
    pub cuts: Vec<Cut>,
}

/// A use that is cut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// The use.
    pub using: PartId,
    /// The share of its amount that it does without, 0 to 1.
    pub share: Share,
}

/// What a cut may be.
pub const CUT: Range = crate::quantity::range::SHARE;

impl RationStep {
    /// The numbers of the step, with their ranges.
    pub fn numbers(&mut self) -> Vec<Number<'_>> {
        let mut numbers = vec![Number::new(Field::RationBelow, 0.0, 1.0, &mut self.below)];
        for cut in &mut self.cuts {
            numbers.push(Number::new(Field::CutOf(cut.using), CUT.least, CUT.greatest, &mut cut.share));
        }
        numbers
    }

    /// Takes a choice.
    pub(super) fn choose(&mut self, choice: Choice) {
        self.tank = if let Choice::Part(tank) = choice { Some(tank) } else { None };
    }

    /// Cuts a use by a share; none takes it out.
    pub(super) fn cut(&mut self, using: PartId, share: f64) {
        self.cuts.retain(|cut| cut.using != using);
        if share > 0.0 {
            self.cuts.push(Cut { using, share: Share::of_one(share) });
        }
    }
}

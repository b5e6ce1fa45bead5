//! Looking ahead: wishes taken, work done in slices.

use crate::app::ahead::AheadEvent;
use crate::app::model::{Model, Place};
use crate::engine::ahead::outlook::HORIZON_DAYS;

pub(super) fn update(model: &mut Model, event: AheadEvent) {
    let wishes = &mut model.ahead.wishes;
    match event {
        AheadEvent::TargetChosen(days) => wishes.days = days.clamp(1, HORIZON_DAYS),
        AheadEvent::ChanceChosen(chance) if (0.0..=1.0).contains(&chance) => wishes.chance = chance,
        AheadEvent::ChanceChosen(_) => {}
        AheadEvent::YearsChosen(years) => wishes.years = years,
        AheadEvent::BasisChosen(by) => wishes.by = by,
    }
}

/// Whether a slice of the work is wanted, where its result is seen.
pub(super) fn wanted(model: &mut Model) -> bool {
    if !matches!(model.place, Place::House | Place::Ahead | Place::Upkeep | Place::Report) {
        return false;
    }
    let kept = model.site().cloned();
    model.ahead.turn_to(kept.as_ref(), model.today);
    model.ahead.is_going()
}

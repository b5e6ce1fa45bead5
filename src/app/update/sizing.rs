//! Trials beside the real system, and how the balance is reckoned.

use std::sync::Arc;

use crate::app::effect::Effect;
use crate::app::event::Lever;
use crate::app::model::{Model, Notice, Undo};
use crate::quantity::Share;
use crate::quantity::range::SHARE;
use crate::site::trial::{FACTOR, Trial};

use super::sites::{change, put};

pub(super) fn drag(model: &mut Model, lever: Lever, factor: f64) -> Vec<Effect> {
    if FACTOR.holds(factor) {
        let levers = &mut model.trial.levers;
        *match lever {
            Lever::Storage => &mut levers.storage,
            Lever::Roof => &mut levers.roof,
            Lever::Uses => &mut levers.uses,
            Lever::Rain => &mut levers.rain,
        } = factor;
    }
    Vec::new()
}

/// The trial becomes the system, unless a part left its range by it.
pub(super) fn keep(model: &mut Model) -> Vec<Effect> {
    let trial = model.trial.clone();
    let Some(kept) = model.site_mut() else { return Vec::new() };
    let site = trial.of(&kept.site);
    let rain_fits =
        site.reckoning.rain_factors.iter().all(|factor| crate::site::household::RAIN_FACTOR.holds(factor.get()));
    if !rain_fits || super::next::is_out_of_range(&site.system) {
        model.notice = Some(Notice::TrialCannotRun);
        return Vec::new();
    }
    let undo = Undo::Site(kept.id, Arc::clone(&kept.site));
    let effects = put(kept, site);
    model.undo = Some(undo);
    model.notice = Some(Notice::TrialKept);
    model.trial = Trial::NONE;
    effects
}

pub(super) fn start(model: &mut Model, share: f64) -> Vec<Effect> {
    if !SHARE.holds(share) {
        return Vec::new();
    }
    change(model, |site| site.reckoning.start = Share::of_one(share))
}

pub(super) fn rule(model: &mut Model, inflow_first: f64) -> Vec<Effect> {
    if !SHARE.holds(inflow_first) {
        return Vec::new();
    }
    change(model, |site| site.reckoning.inflow_first = Share::of_one(inflow_first))
}

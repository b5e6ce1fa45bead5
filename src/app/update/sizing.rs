//! Trials beside the real system, and how the balance is reckoned.

use std::sync::Arc;

use crate::app::effect::Effect;
use crate::app::event::Lever;
use crate::app::model::{Model, Notice, Undo};
use crate::quantity::Share;
use crate::quantity::range::SHARE;
use crate::site::findings::{Finding, findings};
use crate::site::household::Reckoning;
use crate::site::trial::{FACTOR, Trial};

use super::sites::{change, put};

pub(super) fn drag(model: &mut Model, lever: Lever, factor: f64) -> Vec<Effect> {
    if FACTOR.holds(factor) {
        let mut trial = model.trial().clone();
        *match lever {
            Lever::Storage => &mut trial.levers.storage,
            Lever::Roof => &mut trial.levers.roof,
            Lever::Uses => &mut trial.levers.uses,
            Lever::Rain => &mut trial.levers.rain,
        } = factor;
        model.set_trial(trial);
    }
    Vec::new()
}

/// Keeps the trials that were changed.
pub(super) fn unsaved(model: &mut Model) -> Vec<Effect> {
    let changed = std::mem::take(&mut model.unsaved_trials);
    let kept = model.sites.iter().filter(|kept| changed.contains(&kept.id));
    kept.map(|kept| Effect::SaveTrial(kept.id, kept.trial.clone())).collect()
}

/// The trial becomes the house, unless a part left its range by it, or the house can run and the trial can't.
pub(super) fn keep(model: &mut Model) -> Vec<Effect> {
    let trial = model.trial().clone();
    let Some(kept) = model.site_mut() else { return Vec::new() };
    let mut site = trial.of(&kept.site);
    let rain_fits =
        site.reckoning.rain_factors.iter().all(|factor| crate::site::household::RAIN_FACTOR.holds(factor.get()));
    let found = findings(&site.system);
    // A number that could not have been entered: the levers went too far.
    if !rain_fits || found.iter().any(|finding| matches!(finding, Finding::OutOfRange { .. })) {
        model.notice = Some(Notice::TrialCannotRun);
        return Vec::new();
    }
    // A house with findings may become one that has fewer.
    if !found.is_empty() && findings(&kept.site.system).is_empty() {
        model.notice = Some(Notice::TrialWouldNotRun);
        return Vec::new();
    }
    // As an option it would now be the house beside itself.
    let tried = trial.settled(&kept.site.system);
    site.options.retain(|option| !option.is_the_same(&tried));
    let undo = Undo::Site(kept.id, Arc::clone(&kept.site), None);
    let reckoning = site.reckoning != kept.site.reckoning;
    let effects = put(kept, site);
    model.undo = Some(undo);
    model.notice = Some(Notice::TrialKept { reckoning });
    model.set_trial(Trial::NONE);
    effects
}

/// Changes how the house that is shown is reckoned: in the trial, if one is open, else for good.
pub(super) fn reckon_otherwise(model: &mut Model, change_it: impl FnOnce(&mut Reckoning)) -> Vec<Effect> {
    let Some(kept) = model.site() else { return Vec::new() };
    if kept.trial.system.is_none() {
        return change(model, |site| change_it(&mut site.reckoning));
    }
    let mut trial = kept.trial.clone();
    let mut reckoning = trial.reckoning(&kept.site.reckoning).clone();
    change_it(&mut reckoning);
    trial.reckoning = (reckoning != kept.site.reckoning).then(|| Box::new(reckoning));
    model.set_trial(trial);
    Vec::new()
}

pub(super) fn start(model: &mut Model, share: f64) -> Vec<Effect> {
    if !SHARE.holds(share) {
        return Vec::new();
    }
    reckon_otherwise(model, |reckoning| reckoning.start = Share::of_one(share))
}

pub(super) fn rule(model: &mut Model, inflow_first: f64) -> Vec<Effect> {
    if !SHARE.holds(inflow_first) {
        return Vec::new();
    }
    reckon_otherwise(model, |reckoning| reckoning.inflow_first = Share::of_one(inflow_first))
}

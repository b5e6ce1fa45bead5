//! Changes judged in slices, trials opened and made real, options kept.

use std::sync::Arc;

use crate::app::effect::Effect;
use crate::app::model::{KeptSite, Model, Notice, Place, Undo};
use crate::app::next::{Next, NextEvent, OptionsRun};
use crate::engine::upgrades::{Beside, RankBy, Upgrades};
use crate::quantity::Money;
use crate::site::findings::findings;
use crate::site::prices::Priced;
use crate::site::trial::{MOST_OPTIONS, Trial};
use crate::words::{self, next as say, parts::new_name};

use super::sites::{change, put};

pub(super) fn update(model: &mut Model, event: NextEvent) -> Vec<Effect> {
    match event {
        NextEvent::Wanted => start(model),
        NextEvent::GoOn => go_on(model),
        NextEvent::Stopped => model.next.upgrades = None,
        NextEvent::RankedBy(by) => rank(model, by),
        NextEvent::Priced(priced, price) => return set_price(model, priced, price),
        NextEvent::Tried(upgrade) => {
            let Some(kept) = model.site() else { return Vec::new() };
            let name = say::title(&upgrade, &kept.site.system, &model.units);
            let system = upgrade.made(&kept.site.system, new_name);
            try_out(model, Trial::of_system(name, system));
        }
        NextEvent::StepsTried(steps) => {
            let Some(trial) = model.next.upgrades.as_ref().and_then(|work| after_steps(work, steps)) else {
                return Vec::new();
            };
            try_out(model, trial);
        }
        NextEvent::TrialOpened => open_trial(model),
        NextEvent::OptionKept => return keep_option(model),
        NextEvent::OptionOpened(at) => {
            let Some(option) = model.site().and_then(|kept| kept.site.options.get(at).cloned()) else {
                return Vec::new();
            };
            try_out(model, option);
        }
        NextEvent::OptionNamed(at, name) => {
            let name = name.trim().to_owned();
            if name.is_empty() {
                return Vec::new();
            }
            return change(model, |site| {
                site.options.get_mut(at).into_iter().for_each(|option| option.name.clone_from(&name));
            });
        }
        NextEvent::OptionRemoved(at) => {
            let Some(kept) = model.site() else { return Vec::new() };
            let Some(option) = kept.site.options.get(at) else { return Vec::new() };
            let (notice, undo) =
                (Notice::PartRemoved(option.name.clone()), Undo::Site(kept.id, Arc::clone(&kept.site), None));
            model.notice = Some(notice);
            model.undo = Some(undo);
            return change(model, |site| {
                site.options.remove(at);
            });
        }
    }
    Vec::new()
}

fn start(model: &mut Model) {
    let Some(kept) = model.site().cloned().map(KeptSite::with_written_rain) else { return };
    let Some(rain) = kept.rain.as_deref() else { return };
    let work = Upgrades::new(&kept.site, rain, &model.units, model.next.by, new_name);
    (model.next.upgrades, model.next.refused) = match work.and_then(Upgrades::of_whole_years) {
        Ok(work) => (Some(Box::new(work)), None),
        Err(refused) => (None, Some(refused)),
    };
}

/// Judges the changes of the open site, unless they are judged as it is now.
pub(super) fn judge_for_report(model: &mut Model) -> Vec<Effect> {
    let fresh = model.site().zip(model.next.upgrades.as_deref()).is_some_and(|(kept, work)| {
        work.site().system == kept.site.system && work.site().reckoning == kept.site.reckoning
    });
    if !fresh {
        start(model);
    }
    Vec::new()
}

fn rank(model: &mut Model, by: RankBy) {
    model.next.by = by;
    if let Some(work) = &mut model.next.upgrades {
        work.rank_by(by);
    }
}

fn set_price(model: &mut Model, priced: Priced, price: f64) -> Vec<Effect> {
    let effects = change(model, |site| site.prices.set(priced, Money::coins(price)));
    let prices = model.site().map(|kept| kept.site.prices.clone());
    if let (Some(work), Some(prices)) = (&mut model.next.upgrades, prices) {
        work.reprice(&prices);
    }
    effects
}

/// Days that are run in one slice of the work: some milliseconds on a slow phone.
const DAYS_A_SLICE: usize = 6_000;

fn go_on(model: &mut Model) {
    model.next.going = false;
    let mut days = 0;
    if let Some(work) = model.next.upgrades.as_mut().filter(|work| !work.is_done()) {
        while days < DAYS_A_SLICE && work.step() {
            days += work.days();
        }
    } else if let Some(beside) = model.next.beside_mut().filter(|beside| !beside.is_done()) {
        while days < DAYS_A_SLICE && beside.step() {
            days += beside.days();
        }
    } else {
        model.ahead.go_on(DAYS_A_SLICE);
    }
}

/// Asks for the next slice where work is in hand; after every event.
pub(super) fn due(model: &mut Model) -> Option<Effect> {
    if matches!(model.place, Place::Sizing | Place::Report) {
        lay_beside(model);
    }
    let judging = model.next.upgrades.as_ref().is_some_and(|work| !work.is_done());
    let running = model.next.beside().is_some_and(|beside| !beside.is_done());
    let wanted = (super::ahead::wanted(model) || judging || running) && !model.next.going;
    model.next.going |= wanted;
    wanted.then_some(Effect::GoOn)
}

/// Begins anew with the options where the site or its rain is another than the one they were run for.
fn lay_beside(model: &mut Model) {
    let kept = model.site().filter(|kept| !kept.site.options.is_empty()).cloned().map(KeptSite::with_written_rain);
    let Some((site, rain)) = kept.and_then(|kept| Some((kept.site, kept.rain?))) else {
        model.next.beside = None;
        return;
    };
    let holds = |beside: &OptionsRun| Arc::ptr_eq(&beside.0, &site) && beside.1 == rain;
    if !model.next.beside.as_ref().is_some_and(holds) {
        let beside = Beside::new(&site, &rain).ok().map(Box::new);
        model.next.beside = Some((site, rain, beside));
    }
}

fn after_steps(work: &Upgrades, steps: usize) -> Option<Trial> {
    let last = work.steps().get(steps.checked_sub(1)?)?;
    let name = say::steps_name(steps);
    Some(Trial::of_system(name, last.judged.upgrade.made(&last.system, new_name)))
}

/// Puts a trial beside the house; the one that was there can be brought back.
fn try_out(model: &mut Model, trial: Trial) {
    let before = model.set_trial(trial);
    model.sheet = None;
    model.place = Place::Sizing;
    // The trial itself is told over the place; only what it pushed away needs a notice.
    model.notice = (!before.is_none()).then_some(Notice::TrialOpened);
    model.undo = model.notice.as_ref().map(|_| Undo::Trial(Box::new(before)));
}

/// From here on parts are changed in a trial; what the levers had done is part of it.
fn open_trial(model: &mut Model) {
    let Some(kept) = model.site() else { return };
    let trial = kept.trial.with_system(kept.trial.system(&kept.site.system));
    model.set_trial(trial);
}

/// The trial is given up; it can be brought back.
pub(super) fn drop_trial(model: &mut Model) {
    let before = model.set_trial(Trial::NONE);
    if before.system.is_some() {
        model.undo = Some(Undo::Trial(Box::new(before)));
        model.notice = Some(Notice::TrialDropped);
    }
}

fn keep_option(model: &mut Model) -> Vec<Effect> {
    let (trial, units) = (model.trial().clone(), model.units.clone());
    let Some(kept) = model.site_mut() else { return Vec::new() };
    let mut site = (*kept.site).clone();
    if trial.is_none() || site.options.len() >= MOST_OPTIONS {
        return Vec::new();
    }
    let mut option = trial.settled(&site.system);
    let system = option.system(&site.system);
    if !findings(&system).is_empty() {
        model.notice = Some(Notice::TrialCannotRun);
        return Vec::new();
    }
    if site.options.iter().any(|other| other.is_the_same(&option)) {
        return Vec::new();
    }
    let taken = |name: &str| site.options.iter().any(|option| option.name == name);
    let sizes = || say::option_name(&site.system, &system, option.levers.rain, &units);
    let name = words::free_name(&if trial.name.is_empty() { sizes() } else { trial.name.clone() }, taken);
    option.name.clone_from(&name);
    site.options.push(option);
    let undo = Undo::Site(kept.id, Arc::clone(&kept.site), None);
    let effects = put(kept, site);
    model.undo = Some(undo);
    model.notice = Some(Notice::OptionKept(name));
    effects
}

/// Leaves behind what belonged to another site.
pub(super) fn forget(model: &mut Model) {
    model.next = Next { by: model.next.by, going: model.next.going, ..Next::NONE };
    model.climate_before = None;
}

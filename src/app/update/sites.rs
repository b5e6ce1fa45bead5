//! Sites: sketched, opened, named, copied, removed, brought back.

use std::sync::Arc;

use crate::app::effect::Effect;
use crate::app::model::{KeptSite, Model, Notice, Place, Undo};
use crate::app::sketch::Sketch;
use crate::records::cupboard::SiteId;
use crate::records::undone::without;
use crate::site::demo;
use crate::site::household::Site;
use crate::site::rain::Rain;
use crate::site::trial::Trial;
use crate::words;

/// Changes the open site and keeps it.
pub(super) fn change(model: &mut Model, change: impl FnOnce(&mut Site)) -> Vec<Effect> {
    let mut change = Some(change);
    changed(model, &mut |site| {
        if let Some(change) = change.take() {
            change(site);
        }
    })
}

/// The same for all changes, in the program once.
fn changed(model: &mut Model, change: &mut dyn FnMut(&mut Site)) -> Vec<Effect> {
    let Some(kept) = model.site_mut() else { return Vec::new() };
    let mut site = (*kept.site).clone();
    change(&mut site);
    put(kept, site)
}

/// Puts a site in the place of what it was, and keeps it if it differs.
pub(super) fn put(kept: &mut KeptSite, site: Site) -> Vec<Effect> {
    if site == *kept.site {
        return Vec::new();
    }
    kept.site = Arc::new(site);
    vec![Effect::SaveSite(kept.id, Arc::clone(&kept.site))]
}

/// Adds a site at the end of the list and opens it.
fn add(model: &mut Model, site: Site, rain: Option<Arc<Rain>>) -> Vec<Effect> {
    let kept = KeptSite {
        id: model.unused_id(),
        site: Arc::new(site),
        rain,
        diary: Arc::default(),
        trial: Trial::NONE,
        by: None,
    };
    insert(model, model.sites.len(), kept)
}

fn insert(model: &mut Model, at: usize, kept: KeptSite) -> Vec<Effect> {
    let mut effects = vec![Effect::SaveSite(kept.id, Arc::clone(&kept.site))];
    if let Some(rain) = &kept.rain {
        effects.push(Effect::SaveRain(kept.id, Some(Arc::clone(rain))));
    }
    if !kept.diary.is_empty() {
        effects.push(Effect::SaveDiary(kept.id, Arc::clone(&kept.diary)));
    }
    if !kept.trial.is_none() {
        model.unsaved_trials.push(kept.id);
    }
    look_at(model, Some(kept.id));
    model.sites.insert(at.min(model.sites.len()), kept);
    effects.push(Effect::SaveIndex(model.index()));
    effects
}

/// Turns to a site, leaving behind what belonged to the one before.
fn look_at(model: &mut Model, id: Option<SiteId>) {
    if model.open != id {
        // What was done there can't be taken back from here.
        model.undo = None;
        model.notice.take_if(|notice| notice.can_be_undone());
    }
    model.open = id;
    model.sheet = None;
    model.form = None;
    model.sketching = false;
    super::next::forget(model);
    model.read_rain = None;
}

pub(super) fn sketch_drawn(model: &mut Model, sketch: &Sketch) -> Vec<Effect> {
    let rain = sketch.rain(model);
    model.place = if rain.is_some() { Place::Sizing } else { Place::Rain };
    let site = sketch.site_under(model);
    add(model, site, rain)
}

pub(super) fn demo(model: &mut Model) -> Vec<Effect> {
    model.place = Place::House;
    add(model, demo::site(), Some(Arc::new(Rain::Record(demo::rain()))))
}

pub(super) fn open(model: &mut Model, id: SiteId) -> Vec<Effect> {
    if !model.sites.iter().any(|kept| kept.id == id) {
        return Vec::new();
    }
    look_at(model, Some(id));
    model.place = Place::House;
    vec![Effect::SaveIndex(model.index())]
}

pub(super) fn name(model: &mut Model, name: &str) -> Vec<Effect> {
    let name = name.trim();
    if name.is_empty() {
        return Vec::new();
    }
    change(model, |site| site.name = name.to_owned())
}

pub(super) fn duplicate(model: &mut Model, id: SiteId) -> Vec<Effect> {
    let Some(kept) = model.sites.iter().find(|kept| kept.id == id) else { return Vec::new() };
    let (mut site, rain) = ((*kept.site).clone(), kept.rain.clone());
    (site.name, site.begun) = (words::copy_of(&site.name), None);
    add(model, site, rain)
}

pub(super) fn remove(model: &mut Model, id: SiteId) -> Vec<Effect> {
    let Some(at) = model.sites.iter().position(|kept| kept.id == id) else { return Vec::new() };
    let kept = model.sites.remove(at);
    if model.open == Some(id) {
        look_at(model, model.sites.first().map(|kept| kept.id));
    }
    model.notice = Some(Notice::SiteRemoved(kept.site.name.clone()));
    model.undo = Some(Undo::Removed(at, kept));
    vec![Effect::SaveIndex(model.index()), Effect::RemoveSite(id)]
}

/// The trial that the last change left, where undoing it would put back the whole of another.
pub(super) fn trial_taken_back_to(model: &Model) -> Option<(Undo, Trial)> {
    let undo = model.undo.as_ref().filter(|undo| matches!(undo, Undo::Trial(_)))?;
    Some((undo.clone(), model.trial().clone()))
}

/// What was changed in a trial since would go with it: then it can't be undone any more. Of a site it is remembered what the
/// change led to.
pub(super) fn follow_undo(model: &mut Model, stood: Option<(Undo, Trial)>) {
    if stood.is_some_and(|(undo, trial)| model.undo.as_ref() == Some(&undo) && *model.trial() != trial) {
        model.undo = None;
        model.notice.take_if(|notice| notice.can_be_undone());
    }
    if let Some(Undo::Site(id, _, after @ None)) = &mut model.undo {
        *after = model.sites.iter().find(|kept| kept.id == *id).map(|kept| Arc::clone(&kept.site));
    }
}

pub(super) fn undo(model: &mut Model) -> Vec<Effect> {
    model.notice = None;
    match model.undo.take() {
        Some(Undo::Site(id, before, after)) => {
            let Some(kept) = model.sites.iter_mut().find(|kept| kept.id == id) else { return Vec::new() };
            let Some(site) = without(&kept.site, &before, after.as_ref().unwrap_or(&kept.site)) else {
                return Vec::new();
            };
            put(kept, site)
        }
        Some(Undo::Trial(trial)) => {
            model.set_trial(*trial);
            Vec::new()
        }
        Some(Undo::Rain(id, generated, rain)) => match model.sites.iter_mut().find(|kept| kept.id == id) {
            Some(kept) => {
                kept.rain = Some(rain);
                let mut effects = vec![Effect::SaveRain(id, kept.rain.clone())];
                effects.extend(super::rain::with_generated(kept, generated));
                effects
            }
            None => Vec::new(),
        },
        Some(Undo::Removed(at, kept)) => insert(model, at, kept),
        Some(Undo::Entries(site, ids)) => {
            let gone = ids.into_iter().flat_map(|id| super::diary::undo(model, site, id, None));
            gone.collect()
        }
        Some(Undo::Entry(site, id, before)) => super::diary::undo(model, site, id, before),
        Some(Undo::TakenIn(before, index)) => {
            model.notice = Some(Notice::PutBack);
            super::kept::put_back(model, &before, index)
        }
        None => Vec::new(),
    }
}

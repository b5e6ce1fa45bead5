//! Parts: added, copied, removed, moved, changed.

use crate::app::effect::Effect;
use crate::app::event::Shift;
use crate::app::model::{KeptSite, Model, Notice, Undo};
use crate::site::edit::EditError;
use crate::site::new_part;
use crate::site::part::PartId;
use crate::site::system::{PartKind, System};
use crate::site::trial::{Levers, Trial};
use crate::words;

use super::sites::put;

pub(super) fn add(model: &mut Model, kind: PartKind) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let part = new_part::part(&kept.site.system, kind, words::parts::new_name(&kept.site.system, kind));
    model.sheet = Some(part.id());
    change_system(model, |system| system.put(part))
}

pub(super) fn duplicate(model: &mut Model, id: PartId) -> Vec<Effect> {
    let mut copy = None;
    let effects = change_system(model, |system| {
        let name = words::copy_of(&system.name_of(id));
        copy = system.duplicate(id, name);
    });
    model.sheet = copy.or(model.sheet);
    effects
}

pub(super) fn remove(model: &mut Model, id: PartId) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let Some(part) = kept.site.system.part(id) else { return Vec::new() };
    told_as_removed(model, kept, part.name());
    model.sheet = None;
    change_system(model, |system| system.remove(id))
}

pub(super) fn remove_barrier(model: &mut Model, id: PartId) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let Some(barrier) = kept.site.system.barrier(id).copied() else { return Vec::new() };
    told_as_removed(model, kept, words::treatment::barriers::name(barrier.kind));
    change_system(model, |system| system.remove_barrier(id))
}

/// Tells that something is about to go, and keeps what there was to bring it back.
fn told_as_removed(model: &mut Model, kept: KeptSite, name: &str) {
    model.undo = Some(match &model.trial.system {
        Some(_) => Undo::Trial(Box::new(model.trial.clone())),
        None => Undo::Site(kept.id, kept.site),
    });
    model.notice = Some(Notice::PartRemoved(name.to_owned()));
}

pub(super) fn shift(model: &mut Model, id: PartId, shift: Shift) -> Vec<Effect> {
    change_system(model, |system| system.shift(id, shift == Shift::Down))
}

/// Changes the system that is shown: that of the trial, if one is open, else the house's own, which is kept then.
pub(super) fn change_system(model: &mut Model, change_it: impl FnOnce(&mut System)) -> Vec<Effect> {
    edit(model, |system| {
        change_it(system);
        Ok(())
    })
}

/// The same for a change that may be refused: then there is a notice, and all is as it was.
pub(super) fn edit(model: &mut Model, edit: impl FnOnce(&mut System) -> Result<(), EditError>) -> Vec<Effect> {
    let Some(shown) = model.shown_site() else { return Vec::new() };
    let mut site = (*shown.site).clone();
    if let Err(error) = edit(&mut site.system) {
        model.notice = Some(Notice::Refused(error));
        return Vec::new();
    }
    if model.trial.system.is_some() {
        let levers = Levers { rain: model.trial.levers.rain, ..Levers::NONE };
        let name = std::mem::take(&mut model.trial.name);
        model.trial = Trial { levers, ..Trial::of_system(name, site.system) };
        return Vec::new();
    }
    match model.site_mut() {
        Some(kept) => put(kept, site),
        None => Vec::new(),
    }
}

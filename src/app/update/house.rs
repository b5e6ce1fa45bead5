//! Parts: added, copied, removed, moved, changed.

use crate::app::effect::Effect;
use crate::app::event::Shift;
use crate::app::model::{Model, Notice, Undo};
use crate::site::edit::EditError;
use crate::site::new_part;
use crate::site::part::PartId;
use crate::site::system::{PartKind, System};
use crate::words;

use super::sites::{change, put};

pub(super) fn add(model: &mut Model, kind: PartKind) -> Vec<Effect> {
    let Some(kept) = model.site() else { return Vec::new() };
    let part = new_part::part(&kept.site.system, kind, words::parts::new_name(&kept.site.system, kind));
    model.sheet = Some(part.id());
    change(model, |site| site.system.put(part))
}

pub(super) fn duplicate(model: &mut Model, id: PartId) -> Vec<Effect> {
    let mut copy = None;
    let effects = change(model, |site| {
        let name = words::copy_of(&site.system.name_of(id));
        copy = site.system.duplicate(id, name);
    });
    model.sheet = copy.or(model.sheet);
    effects
}

pub(super) fn remove(model: &mut Model, id: PartId) -> Vec<Effect> {
    let Some(kept) = model.site() else { return Vec::new() };
    let Some(part) = kept.site.system.part(id) else { return Vec::new() };
    let before = Undo::Site(kept.id, std::sync::Arc::clone(&kept.site));
    model.notice = Some(Notice::PartRemoved(part.name().to_owned()));
    model.undo = Some(before);
    model.sheet = None;
    change(model, |site| site.system.remove(id))
}

pub(super) fn remove_barrier(model: &mut Model, id: PartId) -> Vec<Effect> {
    let Some(kept) = model.site() else { return Vec::new() };
    let Some(barrier) = kept.site.system.barrier(id) else { return Vec::new() };
    let before = Undo::Site(kept.id, std::sync::Arc::clone(&kept.site));
    model.notice = Some(Notice::PartRemoved(words::treatment::barriers::name(barrier.kind).to_owned()));
    model.undo = Some(before);
    change(model, |site| site.system.remove_barrier(id))
}

pub(super) fn shift(model: &mut Model, id: PartId, shift: Shift) -> Vec<Effect> {
    change(model, |site| site.system.shift(id, shift == Shift::Down))
}

/// Changes the open site's system, or refuses with a notice and leaves it as it is.
pub(super) fn edit(model: &mut Model, edit: impl FnOnce(&mut System) -> Result<(), EditError>) -> Vec<Effect> {
    let Some(kept) = model.site_mut() else { return Vec::new() };
    let mut site = (*kept.site).clone();
    match edit(&mut site.system) {
        Ok(()) => put(kept, site),
        Err(error) => {
            model.notice = Some(Notice::Refused(error));
            Vec::new()
        }
    }
}

//! Parts: added, copied, removed, moved, changed.

use crate::app::effect::Effect;
use crate::app::event::Shift;
use crate::app::model::{KeptSite, Model, Notice, Undo};
use crate::engine::ahead::standing::finds_no_room;
use crate::records::cupboard::SiteId;
use crate::site::edit::EditError;
use crate::site::feed::DrainKind;
use crate::site::new_part;
use crate::site::part::{Choice, Field, PartId};
use crate::site::system::{Part, PartKind, System};
use crate::site::trunk::TrunkLine;
use crate::site::uses::{Amount, Use};
use crate::words;

use super::sites::put;

pub(super) fn add(model: &mut Model, kind: PartKind) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let part = new_part::part(&kept.site.system, kind, words::parts::new_name(&kept.site.system, kind));
    model.sheet = Some(part.id());
    change_system(model, |system| system.put(part))
}

pub(super) fn duplicate(model: &mut Model, id: PartId) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let mut copy = None;
    let effects = change_system(model, |system| {
        let name = system.name_of(id);
        let plain = name.trim_end_matches(|sign: char| sign.is_ascii_digit()).trim_end();
        let name = words::free_name(plain, |name| system.parts().iter().any(|part| part.name() == name));
        copy = system.duplicate(id, name);
    });
    if let Some(copy) = copy {
        let of = kept.site.system.name_of(id);
        let name = model.shown_site().map(|kept| kept.site.system.name_of(copy)).unwrap_or_default();
        told(model, kept, Notice::Changed(words::house::is_copy(&name, &of)));
        model.sheet = Some(copy);
    }
    effects
}

pub(super) fn remove(model: &mut Model, id: PartId) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let Some(part) = kept.site.system.part(id) else { return Vec::new() };
    told(model, kept, Notice::PartRemoved(part.name().to_owned()));
    model.sheet = None;
    change_system(model, |system| system.remove(id))
}

pub(super) fn remove_barrier(model: &mut Model, id: PartId) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let Some(barrier) = kept.site.system.barrier(id).copied() else { return Vec::new() };
    told(model, kept, Notice::PartRemoved(words::treatment::barriers::name(barrier.kind).to_owned()));
    change_system(model, |system| system.remove_barrier(id))
}

/// Opens a shut valve and shuts an open one.
pub(super) fn turn_valve(model: &mut Model, id: PartId) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let Some(Part::TrunkLine(line)) = kept.site.system.part(id) else { return Vec::new() };
    let line = TrunkLine { open: !line.open, ..line };
    let mut notice = words::house::turned(&line.name, line.open);
    let mut with = (*kept.site).clone();
    with.system.put(Part::TrunkLine(line.clone()));
    if let (true, Some(end)) = (line.open, line.ends[0])
        && let Some((litres, rim)) = finds_no_room(&kept.site, &with, &kept.diary, model.today, end)
        && let Some(tank) = with.system.tanks.get(rim)
    {
        notice.push_str(&words::house::runs_out(litres, &tank.name, &model.units));
    }
    told(model, kept, Notice::Changed(notice));
    change_system(model, |system| system.put(Part::TrunkLine(line)))
}

/// Puts a tank beside another: like it and on the same level, joined at the bottom by a pipe whose valve is open.
pub(super) fn add_tank(model: &mut Model, beside: PartId) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let Some(neighbour) = kept.site.system.tank(beside).cloned() else { return Vec::new() };
    let mut with = kept.site.system.clone();
    let name = words::parts::new_name(&with, PartKind::Tank);
    let id = with.unused_id();
    with.put(Part::Tank(new_part::tank_beside(&neighbour, id, name.clone())));
    let pipe = words::parts::new_name(&with, PartKind::TrunkLine);
    let line = TrunkLine { id: with.unused_id(), name: pipe, ends: [Some(beside), Some(id)], open: true };
    with.put(Part::TrunkLine(line));
    told(model, kept, Notice::Changed(words::house::stands(&name, &neighbour.name)));
    change_system(model, |system| *system = with)
}

/// Adds a tank of the usual shape and size that stands on the ground, joined to nothing.
pub(super) fn add_free_tank(model: &mut Model) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let system = &kept.site.system;
    let tank = new_part::part(system, PartKind::Tank, words::parts::new_name(system, PartKind::Tank));
    told(model, kept, Notice::Changed(words::house::stands_free(tank.name())));
    change_system(model, |system| system.put(tank))
}

/// Tells what is about to be changed, and keeps what there was to bring it back.
pub(super) fn told(model: &mut Model, kept: KeptSite, notice: Notice) {
    model.undo = Some(match &kept.trial.system {
        Some(_) => Undo::Trial(Box::new(kept.trial)),
        None => Undo::Site(kept.id, kept.site, None),
    });
    model.notice = Some(notice);
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
    let mut edit = Some(edit);
    edited(model, &mut |system| edit.take().map_or(Ok(()), |edit| edit(system)))
}

/// The same for all edits, in the program once.
fn edited(model: &mut Model, edit: &mut dyn FnMut(&mut System) -> Result<(), EditError>) -> Vec<Effect> {
    let Some(shown) = model.shown_site() else { return Vec::new() };
    let mut site = (*shown.site).clone();
    if let Err(error) = edit(&mut site.system) {
        model.notice = Some(Notice::Refused(error));
        return Vec::new();
    }
    let trial = model.trial();
    if trial.system.is_some() {
        let trial = trial.with_system(site.system);
        model.set_trial(trial);
        return Vec::new();
    }
    match model.site_mut() {
        Some(kept) => put(kept, site),
        None => Vec::new(),
    }
}

/// Makes a choice for a part. A use whose amount is given another way has what was entered in that way before, as long
/// as it comes to the same, or to what only the weather knows.
pub(super) fn choose(model: &mut Model, id: PartId, field: Field, choice: Choice) -> Vec<Effect> {
    let Some(kept) = model.shown_site() else { return Vec::new() };
    let using = kept.site.system.uses.iter().find(|using| using.id == id);
    let mut again = None;
    if let (Choice::Amount(kind), Some(Use { amount, .. })) = (choice, using)
        && kind != amount.kind()
    {
        let of_this = |before: &(SiteId, PartId, Amount)| before.0 == kept.id && before.1 == id;
        let fits = |before: &&(SiteId, PartId, Amount)| {
            of_this(before) && before.2.kind() == kind && before.2.comes_to_the_same(amount)
        };
        again = model.amounts.iter().find(fits).map(|before| before.2.clone());
        model.amounts.retain(|before| !of_this(before) || before.2.kind() != amount.kind());
        model.amounts.push((kept.id, id, amount.clone()));
    }
    // A diverter that goes takes its sizes with it.
    let feed = kept.site.system.feeds.iter().find(|feed| feed.id == id);
    if choice == Choice::Drain(DrainKind::NoDiverter) && feed.is_some_and(|feed| feed.diverter.is_some()) {
        told(model, kept, Notice::PartRemoved(words::house::DIVERTER.to_owned()));
    }
    edit(model, |system| {
        system.choose(id, field, choice)?;
        for using in system.uses.iter_mut().filter(|using| using.id == id) {
            using.amount = again.take().unwrap_or_else(|| using.amount.clone());
        }
        Ok(())
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::event::Event;
    use crate::app::update::tests::demo;
    use crate::app::update::update;
    use crate::site::findings::findings;
    use crate::site::uses::AmountKind;

    #[test]
    fn a_valve_turned_divides_the_store_and_can_be_turned_back() {
        let mut model = demo();
        let system = |model: &Model| model.shown_site().map(|kept| kept.site.system.clone()).unwrap_or_default();
        let before = system(&model);
        update(&mut model, Event::ValveTurned(before.trunk_lines[0].id));
        assert_eq!(system(&model).stores().len(), before.stores().len() + 1);
        update(&mut model, Event::UndoWanted);
        assert_eq!(system(&model), before);
    }

    #[test]
    fn a_part_that_went_comes_back_and_what_was_changed_since_stays() {
        let mut model = demo();
        let system = |model: &Model| model.site().map(|kept| kept.site.system.clone()).unwrap_or_default();
        let before = system(&model);
        let (roof, tank) = (before.sections[0].id, before.tanks[0].id);
        update(&mut model, Event::PartRemoved(tank));
        update(&mut model, Event::NumberEntered(roof, Field::Area, 77.0));
        update(&mut model, Event::PartAdded(PartKind::Section));
        assert!(matches!(model.notice, Some(Notice::PartRemoved(_))), "it is still offered");
        assert!(update(&mut model, Event::UndoWanted).iter().any(|effect| matches!(effect, Effect::SaveSite(..))));
        let after = system(&model);
        assert_eq!(
            (&after.tanks, &after.feeds, &after.trunk_lines),
            (&before.tanks, &before.feeds, &before.trunk_lines)
        );
        assert_eq!((after.sections.len(), after.sections[0].area.get()), (before.sections.len() + 1, 77.0));
    }

    #[test]
    fn a_diverter_that_is_taken_out_can_be_brought_back() {
        let mut model = demo();
        let feeds = |model: &Model| model.site().map(|kept| kept.site.system.feeds.clone()).unwrap_or_default();
        let before = feeds(&model);
        update(&mut model, Event::ChoiceMade(before[0].id, Field::Drain, Choice::Drain(DrainKind::NoDiverter)));
        assert_eq!(feeds(&model)[0].diverter, None);
        update(&mut model, Event::UndoWanted);
        assert_eq!(feeds(&model), before);
    }

    #[test]
    fn a_tank_added_beside_any_of_the_demos_matches_it() {
        let tanks = demo().site().map(|kept| kept.site.system.tanks.clone()).unwrap_or_default();
        assert!(tanks.len() > 1);
        for beside in tanks {
            let mut model = demo();
            let before = model.site().map(|kept| findings(&kept.site.system).len());
            update(&mut model, Event::TankWanted(beside.id));
            let system = model.site().map(|kept| kept.site.system.clone()).unwrap_or_default();
            let new = system.tanks.last().cloned();
            let (shape, floor) = (beside.shape.clone(), beside.floor);
            let rim = floor.get() + shape.height();
            let found =
                new.map(|new| (new.floor.get() + new.shape.height(), new.overflow_elevation(), new.floor, new.shape));
            assert_eq!(found, Some((rim, beside.overflow_elevation(), floor, shape)), "{}", beside.name);
            assert_eq!(Some(findings(&system).len()), before, "{}", beside.name);
            assert_eq!(model.sheet, None);
        }
    }

    #[test]
    fn an_amount_given_another_way_and_back_is_what_was_entered() {
        let mut model = demo();
        let id = model.site().map(|kept| kept.site.system.uses[0].id).unwrap_or(PartId(0));
        let amount = |model: &Model| model.site().map(|kept| kept.site.system.uses[0].amount.clone());
        let way = |model: &mut Model, kind| {
            update(model, Event::ChoiceMade(id, Field::AmountGiven, Choice::Amount(kind)));
            amount(model)
        };
        way(&mut model, AmountKind::Monthly);
        for (month, litres) in [(0, 10.0), (6, 70.0)] {
            update(&mut model, Event::NumberEntered(id, Field::Month(month), litres));
        }
        let entered = amount(&model);
        way(&mut model, AmountKind::Garden);
        assert_eq!(way(&mut model, AmountKind::Monthly), entered);
        way(&mut model, AmountKind::Daily);
        assert_eq!(way(&mut model, AmountKind::Monthly), entered);
        // Another amount entered meanwhile is not lost for it.
        way(&mut model, AmountKind::Daily);
        update(&mut model, Event::NumberEntered(id, Field::Amount, 33.0));
        let monthly = way(&mut model, AmountKind::Monthly).map(|amount| amount.mean());
        assert!(monthly.is_some_and(|mean| (mean - 33.0).abs() < 1e-9));
    }

    #[test]
    fn a_tank_added_stands_on_its_neighbours_level_and_shares_its_water() {
        let mut model = demo();
        update(&mut model, Event::Next(crate::app::next::NextEvent::TrialOpened));
        let real = model.site().map(|kept| kept.site.clone());
        let system = |model: &Model| model.shown_site().map(|kept| kept.site.system.clone()).unwrap_or_default();
        let before = system(&model);
        let beside = before.tanks[0].clone();
        update(&mut model, Event::TankWanted(beside.id));
        let after = system(&model);
        assert_eq!(after.tanks.len(), before.tanks.len() + 1);
        let new = after.tanks.last().map(|tank| (tank.id, tank.floor));
        assert!(new.is_some_and(|(_, floor)| floor == beside.floor));
        assert!(
            after
                .stores()
                .iter()
                .any(|store| store.contains(&beside.id) && new.is_some_and(|(id, _)| store.contains(&id)))
        );
        assert_eq!(model.site().map(|kept| kept.site.clone()), real, "only the trial has it");
        update(&mut model, Event::UndoWanted);
        assert_eq!(system(&model), before);
    }

    #[test]
    fn a_tank_that_stands_free_is_joined_to_nothing_and_taken_back() {
        let mut model = demo();
        let system = |model: &Model| model.site().map(|kept| kept.site.system.clone()).unwrap_or_default();
        let before = system(&model);
        update(&mut model, Event::FreeTankWanted);
        let after = system(&model);
        let new = after.tanks.last().map_or(PartId(0), |tank| tank.id);
        assert_eq!((after.tanks.len(), before.tank(new)), (before.tanks.len() + 1, None));
        assert!(after.stores().contains(&vec![new]) && after.trunk_lines == before.trunk_lines);
        assert_eq!(findings(&after), findings(&before), "it runs as it did");
        update(&mut model, Event::UndoWanted);
        assert_eq!(system(&model), before);
    }
}

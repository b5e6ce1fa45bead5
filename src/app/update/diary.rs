//! The diary: entries written, changed, taken out, brought back.

use std::sync::Arc;

use chrono::NaiveDate;

use crate::app::draft::Draft;
use crate::app::effect::Effect;
use crate::app::form::Form;
use crate::app::model::{KeptSite, Model, Notice, SiteId, Undo};
use crate::engine::diary::joined::LONGEST_DRY_SPELL;
use crate::engine::treatment::results::{Result, over_limit};
use crate::quantity::Depth;
use crate::site::diary::{Diary, Entry, EntryId, Half, LAST_MOMENT, LONGEST_NOTE, Line, Removed, Subject, Told, YEARS};
use crate::site::upkeep::Job;

/// Opens an empty form.
pub(super) fn open(model: &mut Model, subject: Subject) -> Vec<Effect> {
    model.form = model.site().map(|kept| Form::new(subject, model.today, kept));
    model.sheet = None;
    Vec::new()
}

/// Opens the form of an entry that is there.
pub(super) fn open_entry(model: &mut Model, id: EntryId) -> Vec<Effect> {
    let form = model.site().and_then(|kept| Some(Form::of(kept.diary.entry(id)?, &model.units, kept)));
    model.form = form.or(model.form.take());
    Vec::new()
}

/// Writes an entry of the open site. One that tells of a day outside all years of a diary is not written, which is said.
pub(super) fn write(model: &mut Model, draft: Draft, moment: u64) -> Vec<Effect> {
    if !YEARS.contains(&chrono::Datelike::year(&draft.date)) {
        model.notice = Some(Notice::NoSuchDay(draft.date));
        return Vec::new();
    }
    let Some(kept) = model.site_mut() else { return Vec::new() };
    let mut note = draft.note.trim().to_owned();
    while note.len() > LONGEST_NOTE {
        note.pop();
    }
    let moment = moment.min(LAST_MOMENT);
    let id = draft.id.unwrap_or_else(|| kept.diary.free_id(moment));
    // Where two phones come together the last edited counts: an edit comes after what it changes, whatever the clock says.
    let after = kept.diary.entry(id).map(|before| before.edited.saturating_add(1));
    let edited = after.map_or(id.0, |after| after.max(moment).min(LAST_MOMENT));
    let test = written_test(&draft);
    let told = with_joined(draft.told, kept, id);
    let entry = Entry { id, edited, date: draft.date, told, note };
    let site = kept.id;
    let (before, effect) = put(kept, Line::Entry(entry));
    let before = before.and_then(|before| before.entry().cloned());
    // Only the newest tests count, and only of water that is drunk.
    let over = test.filter(|told| over_limit(&kept.diary, &kept.site.system).contains(told));
    model.undo = Some(Undo::Entry(site, id, before));
    model.notice = Some(over.map_or(Notice::EntryWritten, Notice::TestOverLimit));
    model.form = None;
    if model.persists == Some(false) {
        // Asked once: a browser that says no is asked again next time the page is opened.
        model.persists = None;
        return vec![effect, Effect::AskToPersist];
    }
    vec![effect]
}

/// A level with the tanks that are joined with the one that was read, or were when the entry that it changes was written:
/// those that are joined later tell nothing of it.
fn with_joined(told: Told, kept: &KeptSite, id: EntryId) -> Told {
    let Told::Level { of, level, undrawn, .. } = told else { return told };
    let before = kept.diary.entry(id).and_then(|entry| match &entry.told {
        Told::Level { of: before, joined, .. } if before.tank() == of.tank() => Some(joined.clone()),
        _ => None,
    });
    let now = || kept.site.system.stores().into_iter().find(|store| store.contains(&of.tank()));
    Told::Level { of, level, undrawn, joined: before.or_else(now).unwrap_or_default() }
}

/// The same, and opens an empty form of the same subject for the day after.
pub(super) fn write_and_next(model: &mut Model, draft: Draft, moment: u64) -> Vec<Effect> {
    let (subject, next) = (draft.told.subject(), draft.date.succ_opt().unwrap_or(draft.date));
    let effects = write(model, draft, moment);
    if effects.is_empty() {
        return effects;
    }
    open(model, subject);
    model.form.iter_mut().for_each(|form| form.date = next);
    effects
}

/// Writes that jobs were done on a day.
pub(super) fn write_jobs(model: &mut Model, jobs: &[Job], date: NaiveDate, moment: u64) -> Vec<Effect> {
    write_all(model, jobs.iter().map(|job| (date, Told::Work { on: Some(job.part), task: job.task })), moment)
}

/// Writes that it did not rain on any day from the first to the last.
pub(super) fn write_dry_spell(model: &mut Model, [first, last]: [NaiveDate; 2], moment: u64) -> Vec<Effect> {
    let days = first.iter_days().take_while(|day| *day <= last).take(LONGEST_DRY_SPELL);
    write_all(model, days.map(|day| (day, Told::Rain(Depth::millimetres(0.0)))), moment)
}

/// Writes entries; all of it is undone together.
fn write_all(model: &mut Model, all: impl Iterator<Item = (NaiveDate, Told)>, moment: u64) -> Vec<Effect> {
    let (mut effects, mut ids, mut of) = (Vec::new(), Vec::new(), None);
    for (date, told) in all {
        effects.extend(write(model, Draft { id: None, date, told, note: String::new() }, moment));
        if let Some(Undo::Entry(site, id, None)) = model.undo.take() {
            of = Some(site);
            ids.push(id);
        }
    }
    model.undo = of.map(|site| Undo::Entries(site, ids));
    effects
}

/// Takes an entry out of the open site's diary.
pub(super) fn remove(model: &mut Model, id: EntryId, moment: u64) -> Vec<Effect> {
    let Some(kept) = model.site_mut() else { return Vec::new() };
    let site = kept.id;
    let Some((before, effect)) = take_out(kept, id, moment) else { return Vec::new() };
    model.undo = Some(Undo::Entry(site, id, Some(before)));
    model.notice = Some(Notice::EntryRemoved);
    vec![effect]
}

/// Puts an entry back as it was before it was changed, or takes it out if it was new.
pub(super) fn undo(model: &mut Model, site: SiteId, id: EntryId, before: Option<Entry>) -> Vec<Effect> {
    let Some(kept) = model.sites.iter_mut().find(|kept| kept.id == site) else { return Vec::new() };
    match before {
        Some(mut before) => {
            // Where two phones come together, the last edited counts: that is this one.
            let now = kept.diary.line(id).map_or(0, |line| line.edited().saturating_add(1));
            before.edited = before.edited.max(now).min(LAST_MOMENT);
            vec![put(kept, Line::Entry(before)).1]
        }
        None => take_out(kept, id, 0).map(|(_, effect)| effect).into_iter().collect(),
    }
}

/// The result that a draft tells of.
fn written_test(draft: &Draft) -> Option<Result> {
    let Told::Test { at, parameter: of, found } = draft.told else { return None };
    Some(Result { date: draft.date, at, of, found, within_on: None })
}

fn put(kept: &mut KeptSite, line: Line) -> (Option<Line>, Effect) {
    let before = Arc::make_mut(&mut kept.diary).put(line.clone());
    let was = before.as_ref().map(Line::half);
    (before, Effect::SaveLine(kept.id, line, was))
}

fn take_out(kept: &mut KeptSite, id: EntryId, moment: u64) -> Option<(Entry, Effect)> {
    let before = kept.diary.entry(id)?.clone();
    let edited = before.edited.saturating_add(1).max(moment).min(LAST_MOMENT);
    let effect = put(kept, Line::Removed(Removed { id, edited, date: before.date })).1;
    Some((before, effect))
}

/// Takes over a half-year that another window wrote.
pub(super) fn half_read_again(model: &mut Model, site: SiteId, half: Half, lines: Vec<Line>) -> Vec<Effect> {
    let Some(kept) = model.sites.iter_mut().find(|kept| kept.id == site) else { return Vec::new() };
    // What was written here last is not to be taken back over what the other window wrote after it.
    let is_other =
        |id: &EntryId| lines.iter().any(|line| line.id() == *id && kept.diary.line(*id).as_ref() != Some(line));
    let is_stale = match &model.undo {
        Some(Undo::Entry(of, id, _)) => *of == site && is_other(id),
        Some(Undo::Entries(of, ids)) => *of == site && ids.iter().any(is_other),
        Some(Undo::TakenIn(..)) => true,
        _ => false,
    };
    if is_stale {
        model.undo = None;
    }
    let mut all = kept.diary.lines();
    all.retain(|line| line.half() != half && !lines.iter().any(|other| other.id() == line.id()));
    all.extend(lines);
    kept.diary = Arc::new(Diary::of_lines(all));
    Vec::new()
}

//! What is kept: opened, saved, exported, taken in.

use std::sync::Arc;

use chrono::NaiveDate;

use crate::app::csv;
use crate::app::effect::Effect;
use crate::app::merging::merge;
use crate::app::model::{KeptSite, Model, Notice, Place, Undo};
use crate::engine::question::answer;
use crate::figures;
use crate::figures::drawing::Drawing;
use crate::language::Language;
use crate::quantity::Units;
use crate::records::cupboard::{Index, Opened, SiteFile, SiteId, Trouble};
use crate::records::exchange;
use crate::records::shelf::ShelfError;
use crate::records::slots::PutError;

pub(super) fn started(model: &mut Model, today: NaiveDate, opened: Result<Opened, ShelfError>) -> Vec<Effect> {
    model.started = true;
    model.today = today;
    match opened {
        Ok(opened) => lay_out(model, opened),
        Err(_) => {
            model.denied = true;
            model.notice = Some(Notice::NothingIsKept);
        }
    }
    Vec::new()
}

pub(super) fn read_again(model: &mut Model, opened: Opened) -> Vec<Effect> {
    let (open, place) = (model.open, model.place);
    lay_out(model, opened);
    // This window stays where it was if that site is still there.
    if model.sites.iter().any(|kept| Some(kept.id) == open) {
        model.open = open;
    }
    model.place = place;
    model.sheet = model.sheet.filter(|part| model.site().is_some_and(|kept| kept.site.system.part(*part).is_some()));
    model.unsaved_trials.clear();
    super::next::forget(model);
    model.undo = None;
    if !matches!(model.notice, Some(Notice::Trouble(_))) {
        model.notice = Some(Notice::ReadAgain);
    }
    Vec::new()
}

fn lay_out(model: &mut Model, opened: Opened) {
    model.sites = opened.sites.into_iter().map(|(id, file)| KeptSite::of_file(id, file)).collect();
    model.untouched = opened.untouched;
    model.greatest = opened.greatest;
    model.open = opened.index.open;
    model.units = opened.index.units;
    model.language = opened.index.language;
    model.exported = opened.index.exported;
    model.used = opened.used;
    // The worst of them.
    let weight = |trouble: &Trouble| match trouble {
        Trouble::SetAside(_) => 0,
        Trouble::Newer(_) => 1,
        Trouble::SiteLost(_) => 2,
    };
    if let Some(trouble) = opened.troubles.into_iter().max_by_key(weight) {
        model.notice = Some(Notice::Trouble(trouble));
    }
}

pub(super) fn saved(model: &mut Model, result: Result<(), PutError>) -> Vec<Effect> {
    match result {
        Err(error) => model.notice = Some(Notice::NotSaved(error)),
        Ok(()) if matches!(model.notice, Some(Notice::NotSaved(_))) => model.notice = None,
        Ok(()) => {}
    }
    Vec::new()
}

pub(super) fn units(model: &mut Model, units: Units) -> Vec<Effect> {
    model.units = units;
    vec![Effect::SaveIndex(model.index())]
}

pub(super) fn language(model: &mut Model, language: Language) -> Vec<Effect> {
    model.language = Some(language);
    vec![Effect::SaveIndex(model.index())]
}

/// Exports everything, and remembers when.
pub(super) fn export(model: &mut Model) -> Vec<Effect> {
    let text = exchange::export(&model.units, model.language, model.sites.iter().map(KeptSite::file).collect());
    model.exported = Some(model.today);
    vec![
        Effect::Download { name: format!("eavewater-{}.json", model.today), media_type: "application/json", text },
        Effect::SaveIndex(model.index()),
    ]
}

/// The open site as a file of its own, to be handed on. It is no copy of all that is here.
pub(super) fn export_site(model: &Model) -> Vec<Effect> {
    let Some(kept) = model.site() else { return Vec::new() };
    let text = exchange::export(&model.units, model.language, vec![kept.file()]);
    let name = format!("{}.json", named_by_day(&kept.site.name, model));
    vec![Effect::Download { name, media_type: "application/json", text }]
}

/// The name of a file: a title in plain letters, and the day.
fn named_by_day(title: &str, model: &Model) -> String {
    let mut name = String::new();
    for letter in title.chars().map(plain) {
        if letter.is_ascii_alphanumeric() {
            name.push(letter.to_ascii_lowercase());
        } else if !name.ends_with('-') {
            name.push('-');
        }
    }
    format!("{}-{}", name.trim_matches('-'), model.today)
}

/// A figure as a file of its own, named by its title and the day.
pub(super) fn picture(model: &Model, (title, caption): (&str, &str), drawing: &Drawing, bitmap: bool) -> Vec<Effect> {
    let (svg, width, height) = figures::picture::picture(drawing, title, caption);
    let name = named_by_day(title, model);
    if bitmap {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a sheet of some hundred pixels")]
        let size = (width.ceil() as u32, height.ceil() as u32);
        vec![Effect::DownloadBitmap { name: name + ".png", svg, size }]
    } else {
        vec![Effect::Download { name: name + ".svg", media_type: "image/svg+xml", text: svg }]
    }
}

/// The letter that an accented one of Spanish is written with where there are no accents.
fn plain(letter: char) -> char {
    match letter {
        'á' | 'Á' => 'a',
        'é' | 'É' => 'e',
        'í' | 'Í' => 'i',
        'ó' | 'Ó' => 'o',
        'ú' | 'ü' | 'Ú' | 'Ü' => 'u',
        'ñ' | 'Ñ' => 'n',
        other => other,
    }
}

/// The diary of the open site as CSV.
pub(super) fn diary_table(model: &Model) -> Vec<Effect> {
    let Some(kept) = model.site() else { return Vec::new() };
    let text = csv::diary(&kept.diary, &kept.site.system);
    vec![Effect::Download {
        name: say!("diary-{day}.csv", "diario-{day}.csv", day = model.today),
        media_type: "text/csv",
        text,
    }]
}

/// The days of the open site's balance as CSV; nothing where it can't be run.
pub(super) fn results_table(model: &Model) -> Vec<Effect> {
    let Some(kept) = model.site().cloned().map(KeptSite::with_written_rain) else { return Vec::new() };
    let Some(rain) = kept.rain.as_deref() else { return Vec::new() };
    let Ok(answer) = answer(&kept.site, rain) else { return Vec::new() };
    let text = csv::results(&answer);
    vec![Effect::Download {
        name: say!("results-{day}.csv", "resultados-{day}.csv", day = model.today),
        media_type: "text/csv",
        text,
    }]
}

pub(super) fn file_read(model: &mut Model, bytes: &[u8]) -> Vec<Effect> {
    match exchange::import(bytes) {
        // On an empty phone there is nothing to compare with: it is taken in at once.
        Ok(export) if model.sites.is_empty() && model.untouched.is_empty() => {
            model.read_file = Some(Arc::new(export));
            return file_accepted(model, true);
        }
        Ok(export) => {
            model.notice = None;
            model.read_file = Some(Arc::new(export));
        }
        Err(error) => {
            model.read_file = None;
            model.notice = Some(Notice::FileRefused(error));
        }
    }
    Vec::new()
}

/// Takes the file that waits in beside what is there; `houses` takes its houses where they differ.
pub(super) fn file_merged(model: &mut Model, houses: bool) -> Vec<Effect> {
    let Some(file) = model.read_file.take() else { return Vec::new() };
    model.notice = None;
    let (_, sites, index) = merge(model, &file, houses);
    vec![Effect::TakeIn { sites, index, replace: false }]
}

pub(super) fn file_accepted(model: &mut Model, replace: bool) -> Vec<Effect> {
    if !replace {
        return file_merged(model, false);
    }
    let Some(file) = model.read_file.take() else { return Vec::new() };
    model.notice = None;
    let sites = named_anew(model, file.sites.iter().cloned());
    let mut index = Index { units: file.units.clone(), language: file.language.or(model.language), ..model.index() };
    index.sites = model.untouched.clone();
    index.sites.extend(sites.iter().map(|(id, _)| *id));
    index.open = sites.first().map(|(id, _)| *id).or(model.open);
    // All that is here then stands in the file: it is as good as exported today.
    if model.untouched.is_empty() {
        index.exported = Some(model.today);
    }
    vec![Effect::TakeIn { sites, index, replace }]
}

/// Sites under names that none here has had.
fn named_anew(model: &Model, sites: impl Iterator<Item = SiteFile>) -> Vec<(SiteId, SiteFile)> {
    (model.unused_id().0..).map(SiteId).zip(sites).collect()
}

/// Puts back all that was here before a file was taken in.
pub(super) fn put_back(model: &Model, before: &[KeptSite], mut index: Index) -> Vec<Effect> {
    let sites = named_anew(model, before.iter().map(KeptSite::file));
    for id in index.sites.iter_mut().chain(&mut index.open) {
        if let Some((_, (new, _))) = before.iter().zip(&sites).find(|(kept, _)| kept.id == *id) {
            *id = *new;
        }
    }
    vec![Effect::TakeIn { sites, index, replace: true }]
}

pub(super) fn taken_in(
    model: &mut Model,
    sites: Vec<(SiteId, SiteFile)>,
    index: Index,
    replace: bool,
    result: Result<(), PutError>,
) -> Vec<Effect> {
    let puts_back = model.notice == Some(Notice::PutBack);
    model.notice = match result {
        Ok(()) if puts_back => Some(Notice::PutBack),
        Ok(()) => Some(Notice::TakenIn(sites.len())),
        // Without storage nothing is kept anyway: the person may look at the file all the same.
        Err(PutError::Shelf(ShelfError::Denied)) => Some(Notice::NothingIsKept),
        Err(error) => {
            model.notice = Some(Notice::NotSaved(error));
            return Vec::new();
        }
    };
    let undone = puts_back || sites.is_empty() || model.sites.is_empty();
    let before = (!undone).then(|| Undo::TakenIn(model.sites.clone(), model.index()));
    if replace {
        model.sites.clear();
    }
    for (id, file) in sites {
        model.sites.push(KeptSite::of_file(id, file));
    }
    // A merged site stands in the place of the one that it was.
    let mut there = std::mem::take(&mut model.sites);
    for id in &index.sites {
        if let Some(at) = there.iter().position(|kept| kept.id == *id) {
            model.sites.push(there.swap_remove(at));
        }
    }
    model.units = index.units;
    model.language = index.language;
    model.open = index.open;
    model.exported = index.exported;
    model.place = Place::House;
    model.sheet = None;
    super::next::forget(model);
    model.undo = before;
    Vec::new()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_picture_is_named_in_plain_letters() {
        let drawing = Drawing { width: 100.0, height: 50.0, marks: Vec::new(), readings: Vec::new() };
        let model = Model { today: NaiveDate::from_ymd_opt(2026, 3, 4).unwrap_or_default(), ..Model::default() };
        let effects = picture(&model, ("¿Adónde fue el agua, día a día, año por año?", ""), &drawing, false);
        let [Effect::Download { name, .. }] = effects.as_slice() else { unreachable!("one file") };
        assert_eq!(name, "adonde-fue-el-agua-dia-a-dia-ano-por-ano-2026-03-04.svg");
    }
}

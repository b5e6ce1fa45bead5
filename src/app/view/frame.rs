//! What stands around the places: the bar, the site's name, the notice.

use chrono::NaiveDate;

use crate::app::model::{Model, Notice, Place, Undo};
use crate::words::{self, errors, kept};

/// A notice in words.
#[derive(Clone, Debug, PartialEq)]
pub struct NoticeView {
    /// What is told.
    pub text: String,
    /// Whether it asks for attention.
    pub warning: bool,
    /// Whether it came by itself: then it moves nothing.
    pub unasked: bool,
    /// What can be done about it besides dismissing it.
    pub offer: Option<Offer>,
}

/// What a notice offers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Offer {
    /// Undo.
    Undo,
    /// Let the new version take over.
    Switch,
    /// Export a file.
    Export,
}

/// The notice, if there is one.
pub fn notice(model: &Model) -> Option<NoticeView> {
    let notice = model.notice.as_ref()?;
    let empty = Default::default();
    let system = model.site().map_or(&empty, |kept| &kept.site.system);
    let text = match notice {
        Notice::NothingIsKept => kept::NOTHING_IS_KEPT.to_owned(),
        Notice::NotSaved(error) => errors::put(*error),
        Notice::Trouble(trouble) => kept::trouble(trouble),
        Notice::Refused(error) => errors::edit(error, system, &model.units),
        Notice::IntervalRefused(kind, range) => errors::out_of_range(*kind, *range, &model.units),
        Notice::NotUnderstood(error) => errors::typed(error),
        Notice::RainRefused(error) => errors::rain(error),
        Notice::FileRefused(error) => errors::file(error),
        Notice::TrialCannotRun => words::next::TRIAL_TOO_LARGE.to_owned(),
        Notice::TrialWouldNotRun => words::next::TRIAL_WOULD_NOT_RUN.to_owned(),
        Notice::PartRemoved(name) | Notice::SiteRemoved(name) => kept::removed(name),
        Notice::Changed(sentence) => sentence.clone(),
        Notice::HabitsPut => words::habits::ARE_PUT.to_owned(),
        Notice::TrialKept { reckoning } => words::next::trial_kept(*reckoning).to_owned(),
        Notice::TrialOpened => words::next::TRIAL_OPENED.to_owned(),
        Notice::TrialDropped => words::next::TRIAL_DROPPED.to_owned(),
        Notice::OptionKept(name) => words::next::option_kept(name),
        Notice::TakenIn(sites) => kept::imported(*sites),
        Notice::PutBack => kept::PUT_BACK.to_owned(),
        Notice::RainKept { instead } => if *instead { words::rain::KEPT_INSTEAD } else { words::rain::KEPT }.to_owned(),
        Notice::EntryWritten => match written_for(model) {
            Some(date) if date != model.today => words::diary::written_for(date),
            _ => words::diary::WRITTEN.to_owned(),
        },
        Notice::TestOverLimit(result) => {
            let alarm = model.site().map(|kept| super::water::alarm(kept, result));
            [alarm.as_deref().unwrap_or_default(), words::diary::WRITTEN.text()].join(" ")
        }
        Notice::EntryRemoved => words::diary::REMOVED.to_owned(),
        Notice::NoSuchDay(date) => words::diary::no_such_day(*date),
        Notice::RainRemoved => words::rain::REMOVED.to_owned(),
        Notice::ReadAgain => kept::READ_AGAIN.to_owned(),
        Notice::WorksOffline => kept::WORKS_OFFLINE.to_owned(),
        Notice::NoOffline => kept::NO_OFFLINE.to_owned(),
        Notice::UpdateReady => kept::UPDATE_READY.to_owned(),
    };
    let offer = match notice {
        notice if notice.can_be_undone() => model.undo.as_ref().map(|_| Offer::Undo),
        Notice::UpdateReady => Some(Offer::Switch),
        Notice::NotSaved(_) | Notice::NothingIsKept if !model.sites.is_empty() => Some(Offer::Export),
        _ => None,
    };
    Some(NoticeView { text, warning: notice.is_warning(), unasked: notice.is_unasked(), offer })
}

/// The day of the entry that was written last.
fn written_for(model: &Model) -> Option<NaiveDate> {
    let Some(Undo::Entry(site, id, _)) = &model.undo else { return None };
    let kept = model.sites.iter().find(|kept| kept.id == *site)?;
    Some(kept.diary.entry(*id)?.date)
}

/// The name of a place.
pub fn place(place: Place) -> &'static str {
    match place {
        Place::House => said!("House", "Casa"),
        Place::Diary => said!("Diary", "Diario"),
        Place::Ahead => said!("Ahead", "Por venir"),
        Place::Sizing => said!("Sizing", "Tamaño"),
        Place::Upkeep => said!("Upkeep", "Cuidados"),
        Place::Rain => said!("Rain", "Lluvia"),
        Place::Kept => said!("Sites", "Sitios"),
        Place::Report => words::report::TITLE.text(),
        Place::Method => words::method::TITLE.text(),
    }
}

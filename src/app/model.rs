//! What the app knows while it runs.

use std::sync::Arc;

use chrono::NaiveDate;

use super::ahead::Lookout;
use super::form::Form;
use super::next::Next;
use crate::app::study::Studies;
use crate::engine::ahead::standing::{Stands, stands};
use crate::engine::balance::plan::plan;
use crate::engine::diary::joined::joined;
use crate::engine::learning::lesson::Lesson;
use crate::engine::rain::import::Import;
use crate::engine::rain::rain_unit::RainUnit;
use crate::language::Language;
use crate::quantity::typed::TypedError;
use crate::quantity::{Kind, Range, Units};
pub use crate::records::cupboard::SiteId;
use crate::records::cupboard::{Index, SiteFile, Trouble};
use crate::records::exchange::Export;
use crate::records::slots::PutError;
use crate::site::climate::Climate;
use crate::site::diary::{Diary, Entry, EntryId};
use crate::site::edit::EditError;
use crate::site::household::{GeneratedYears, Site};
use crate::site::part::PartId;
use crate::site::rain::Rain;
use crate::site::trial::Trial;
use crate::site::uses::Amount;

/// A site as the app holds it; its rain is shared, being large.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptSite {
    /// Its name on this phone.
    pub id: SiteId,
    /// The site.
    pub site: Arc<Site>,
    /// Its rain.
    pub rain: Option<Arc<Rain>>,
    /// Its diary.
    pub diary: Arc<Diary>,
    /// The trial beside it.
    pub trial: Trial,
    /// What its readings show, where it is reckoned by that; never kept.
    pub by: Option<Arc<Lesson>>,
}

impl KeptSite {
    /// As it comes from a file.
    pub fn of_file(id: SiteId, file: SiteFile) -> Self {
        let SiteFile { site, rain, diary, trial } = file;
        Self { id, site: Arc::new(site), rain: rain.map(Arc::new), diary: Arc::new(diary), trial, by: None }
    }

    /// The site with the rain of its diary beside its own: what its balance is run on.
    #[must_use]
    pub fn with_written_rain(mut self) -> Self {
        let joined = joined(self.rain.as_deref(), &self.diary, self.site.reckoning.missing_days);
        self.rain = joined.map(Arc::new).or(self.rain);
        self
    }

    /// What stands in its tanks by the readings; none without one, or while it can't run.
    pub fn stands(&self, today: NaiveDate) -> Option<Stands> {
        let mut plan = plan(&self.site.system).ok()?;
        if let Some(lesson) = &self.by {
            lesson.correct(&mut plan);
        }
        stands(&plan, &self.site, self.rain.as_deref(), &self.diary, today)
    }

    /// As it goes into a file.
    pub fn file(&self) -> SiteFile {
        SiteFile {
            site: (*self.site).clone(),
            rain: self.rain.as_deref().cloned(),
            diary: (*self.diary).clone(),
            trial: self.trial.clone(),
        }
    }
}

/// The places reached from the bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The drawing.
    House,
    /// What happened.
    Diary,
    /// The weeks to come.
    Ahead,
    /// How long the water lasts in the long run.
    Sizing,
    /// What must be done.
    Upkeep,
    /// The rain.
    Rain,
    /// Sites, units, files: reached from the head of the page.
    Kept,
    /// The report of the site: reached from the house and from sizing.
    Report,
    /// All formulas: reached from every answer.
    Method,
}

impl Place {
    /// The places on the bar, in its order.
    pub const BAR: [Place; 6] = [Place::House, Place::Diary, Place::Ahead, Place::Sizing, Place::Upkeep, Place::Rain];

    /// All places with their names in the page's address.
    const ADDRESSES: [(Place, &str); 9] = [
        (Place::House, "house"),
        (Place::Diary, "diary"),
        (Place::Ahead, "ahead"),
        (Place::Sizing, "sizing"),
        (Place::Upkeep, "upkeep"),
        (Place::Rain, "rain"),
        (Place::Kept, "sites"),
        (Place::Report, "report"),
        (Place::Method, "method"),
    ];

    /// Its name in the page's address, the same in every language.
    pub fn address(self) -> &'static str {
        Self::ADDRESSES.iter().find(|(place, _)| *place == self).map_or("", |(_, name)| name)
    }

    /// The place of a name in the page's address; the house without one.
    pub fn of_address(name: &str) -> Option<Self> {
        let named = Self::ADDRESSES.iter().find(|(_, own)| *own == name).map(|(place, _)| *place);
        named.or(name.is_empty().then_some(Place::House))
    }
}

/// Rain that was read and waits to be kept.
#[derive(Clone, Debug)]
pub struct ReadRain {
    /// The file's bytes, to be read again in another unit.
    pub bytes: Arc<Vec<u8>>,
    /// Where it came from.
    pub source: String,
    /// The unit that the person chose, if any.
    pub unit: Option<RainUnit>,
    /// What was read, with its report.
    pub import: Arc<Import>,
}

impl PartialEq for ReadRain {
    /// What was read once is not read again into the same.
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.import, &other.import) && self.source == other.source && self.unit == other.unit
    }
}

/// Something told once, until the person dismisses it.
#[derive(Clone, Debug, PartialEq)]
pub enum Notice {
    /// Storage is denied: nothing is kept.
    NothingIsKept,
    /// A write failed.
    NotSaved(PutError),
    /// Something was amiss when the records were opened.
    Trouble(Trouble),
    /// A change was refused.
    Refused(EditError),
    /// How often work is done was out of range.
    IntervalRefused(Kind, Range),
    /// A text was no quantity.
    NotUnderstood(TypedError),
    /// A rain file could not be read.
    RainRefused(crate::engine::rain::import::ImportError),
    /// A file could not be taken in.
    FileRefused(crate::records::exchange::ImportError),
    /// A trial can't be kept as it is.
    TrialCannotRun,
    /// The trial can't run, and the house can.
    TrialWouldNotRun,
    /// A part was removed; it can be undone.
    PartRemoved(String),
    /// The drawing was changed, as this sentence says; it can be undone.
    Changed(String),
    /// The household's habits were put in the place of what the uses were; it can be undone.
    HabitsPut,
    /// A site was removed; it can be undone.
    SiteRemoved(String),
    /// A trial was kept; it can be undone.
    TrialKept {
        /// Whether the house is reckoned otherwise by it.
        reckoning: bool,
    },
    /// A trial was opened; the one before can be brought back.
    TrialOpened,
    /// A trial was given up; it can be brought back.
    TrialDropped,
    /// A trial was kept as an option of this name.
    OptionKept(String),
    /// So many sites were taken in.
    TakenIn(usize),
    /// What was there before a file was taken in is there again.
    PutBack,
    /// Rain was kept for the site; if it had other rain, that can be brought back.
    RainKept {
        /// Whether the house is reckoned with it now, instead of with generated years.
        instead: bool,
    },
    /// The rain of the site was removed; it can be brought back.
    RainRemoved,
    /// An entry was written into the diary; it can be undone.
    EntryWritten,
    /// A test was written that is over a limit of health; it can be undone.
    TestOverLimit(crate::engine::treatment::results::Result),
    /// An entry was taken out of the diary; it can be brought back.
    EntryRemoved,
    /// A diary tells of no such day; nothing was written.
    NoSuchDay(NaiveDate),
    /// Another window changed what is kept; it has been read again.
    ReadAgain,
    /// The app works without a network from now on.
    WorksOffline,
    /// It does not.
    NoOffline,
    /// A new version waits.
    UpdateReady,
}

impl Notice {
    /// Whether it asks for attention rather than telling good news.
    pub fn is_warning(&self) -> bool {
        let only_tells = self.can_be_undone()
            || matches!(self, Notice::PutBack | Notice::ReadAgain | Notice::WorksOffline | Notice::UpdateReady);
        !only_tells || matches!(self, Notice::TestOverLimit(_))
    }

    /// Whether it tells of a change that can be taken back.
    pub fn can_be_undone(&self) -> bool {
        matches!(
            self,
            Notice::PartRemoved(_)
                | Notice::Changed(_)
                | Notice::HabitsPut
                | Notice::SiteRemoved(_)
                | Notice::TrialKept { .. }
                | Notice::RainRemoved
                | Notice::EntryWritten
                | Notice::TestOverLimit(_)
                | Notice::EntryRemoved
                | Notice::TrialOpened
                | Notice::TrialDropped
                | Notice::OptionKept(_)
                | Notice::RainKept { .. }
                | Notice::TakenIn(_)
        )
    }

    /// Whether it came by itself, of nothing that the person did.
    pub fn is_unasked(&self) -> bool {
        matches!(self, Notice::WorksOffline | Notice::NoOffline | Notice::UpdateReady | Notice::ReadAgain)
    }

    /// Whether it only tells what was done and goes with the next thing that is done: what it offers to undo, if
    /// anything, can be taken back by hand too.
    pub(super) fn is_passing(&self, undo: Option<&Undo>) -> bool {
        match self {
            Notice::Changed(_)
            | Notice::OptionKept(_)
            | Notice::ReadAgain
            | Notice::WorksOffline
            | Notice::FileRefused(_)
            | Notice::Refused(_) => true,
            Notice::TakenIn(_) => !matches!(undo, Some(Undo::TakenIn(..))),
            Notice::EntryWritten => !matches!(undo, Some(Undo::Entry(_, _, Some(_)))),
            Notice::RainKept { .. } => !matches!(undo, Some(Undo::Rain(..))),
            _ => false,
        }
    }
}

/// What the last change took away.
#[derive(Clone, Debug, PartialEq)]
pub enum Undo {
    /// A site as it was before a part went or a trial was kept, and as it was after, once that is known.
    Site(SiteId, Arc<Site>, Option<Arc<Site>>),
    /// A trial that was given up.
    Trial(Box<Trial>),
    /// The rain that a site had, and the generated years that it was reckoned with then.
    Rain(SiteId, Option<GeneratedYears>, Arc<Rain>),
    /// A site that was removed, and its place in the list.
    Removed(usize, KeptSite),
    /// An entry of the diary of a site as it was before it was changed; none where it was new.
    Entry(SiteId, EntryId, Option<Entry>),
    /// Entries that were new.
    Entries(SiteId, Vec<EntryId>),
    /// All that was here before a file was taken in.
    TakenIn(Vec<KeptSite>, Index),
}

/// All of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Model {
    /// Whether the records have been opened.
    pub started: bool,
    /// The day.
    pub today: NaiveDate,
    /// The sites in the person's order.
    pub sites: Vec<KeptSite>,
    /// Sites of a newer program, kept but not opened.
    pub untouched: Vec<SiteId>,
    /// The greatest number under which any record is kept.
    pub greatest: u32,
    /// The one that is open.
    pub open: Option<SiteId>,
    /// The units that the person wants.
    pub units: Units,
    /// The language that the person chose; none is the device's own.
    pub language: Option<Language>,
    /// The day of the last export, if there was one.
    pub exported: Option<NaiveDate>,
    /// How many characters what is kept takes.
    pub used: usize,
    /// Whether the browser denies all storage.
    pub denied: bool,
    /// Whether the browser promised not to throw away what is kept; none while it wasn't heard.
    pub persists: Option<bool>,
    /// Where the person is.
    pub place: Place,
    /// Whether the sketch is being drawn.
    pub sketching: bool,
    /// The entry that is being filled in, as it was when the form was opened.
    pub form: Option<Form>,
    /// The part whose sheet is open.
    pub sheet: Option<PartId>,
    /// The climate of the open site as it was given in the other way, for whoever comes back to that.
    pub climate_before: Option<Climate>,
    /// Sites whose trial was changed and is still to be kept.
    pub unsaved_trials: Vec<SiteId>,
    /// Questions about size, and how far they are.
    pub studies: Studies,
    /// What to change next.
    pub next: Next,
    /// The weeks ahead.
    pub ahead: Lookout,
    /// Rain that waits to be kept.
    pub read_rain: Option<ReadRain>,
    /// A file that waits to be taken in.
    pub read_file: Option<Arc<Export>>,
    /// Amounts of uses as they were before they were given another way; not kept.
    pub amounts: Vec<(SiteId, PartId, Amount)>,
    /// What is being told.
    pub notice: Option<Notice>,
    /// What can be undone.
    pub undo: Option<Undo>,
}

impl Default for Model {
    /// Before the records are opened.
    fn default() -> Self {
        Self {
            started: false,
            today: NaiveDate::default(),
            sites: Vec::new(),
            untouched: Vec::new(),
            greatest: 0,
            open: None,
            units: Units::default(),
            language: None,
            exported: None,
            used: 0,
            denied: false,
            persists: None,
            place: Place::House,
            sketching: false,
            form: None,
            sheet: None,
            climate_before: None,
            unsaved_trials: Vec::new(),
            studies: Studies::default(),
            next: Next::NONE,
            ahead: Lookout::NONE,
            read_rain: None,
            read_file: None,
            amounts: Vec::new(),
            notice: None,
            undo: None,
        }
    }
}

impl Model {
    /// The site that is open.
    pub fn site(&self) -> Option<&KeptSite> {
        self.sites.iter().find(|kept| Some(kept.id) == self.open)
    }

    pub(super) fn site_mut(&mut self) -> Option<&mut KeptSite> {
        self.sites.iter_mut().find(|kept| Some(kept.id) == self.open)
    }

    /// The trial beside the open site.
    pub fn trial(&self) -> &Trial {
        const NONE: &Trial = &Trial::NONE;
        self.site().map_or(NONE, |kept| &kept.trial)
    }

    /// Puts a trial beside the open site; the one that was there.
    pub(super) fn set_trial(&mut self, trial: Trial) -> Trial {
        let Some(kept) = self.site_mut() else { return Trial::NONE };
        let (id, before) = (kept.id, std::mem::replace(&mut kept.trial, trial));
        if !self.unsaved_trials.contains(&id) {
            self.unsaved_trials.push(id);
        }
        before
    }

    /// The open site as it is shown and changed: under the trial, if one is open, else as it is.
    pub fn shown_site(&self) -> Option<KeptSite> {
        let kept = self.site()?;
        let trial = &kept.trial;
        let site = if trial.system.is_some() { Arc::new(trial.of(&kept.site)) } else { kept.site.clone() };
        Some(KeptSite { site, ..kept.clone() })
    }

    /// The index as it is to be kept.
    pub fn index(&self) -> Index {
        let ids = self.sites.iter().map(|kept| kept.id);
        Index {
            sites: ids.chain(self.untouched.iter().copied()).collect(),
            open: self.open,
            units: self.units.clone(),
            language: self.language,
            exported: self.exported,
        }
    }

    /// A name on this phone that no site has.
    pub fn unused_id(&self) -> SiteId {
        let ids = self.sites.iter().map(|kept| kept.id).chain(self.untouched.iter().copied());
        SiteId(ids.map(|id| id.0).fold(self.greatest, u32::max).saturating_add(1))
    }
}

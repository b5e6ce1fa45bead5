//! What happens: what the person did, what the browser reports.

use std::sync::Arc;

use chrono::NaiveDate;

use super::ahead::AheadEvent;
use super::draft::Draft;
use super::model::Place;
use super::next::NextEvent;
use super::sketch::Sketch;
use crate::engine::question::Refusal;
use crate::engine::rain::rain_unit::RainUnit;
use crate::engine::sizing::study::{Findings, Inquiry};
use crate::figures::drawing::Drawing;
use crate::language::Language;
use crate::quantity::{Customary, Kind};
use crate::records::cupboard::{Index, Opened, SiteFile, SiteId};
use crate::records::shelf::ShelfError;
use crate::records::slots::PutError;
use crate::site::barrier::BarrierKind;
use crate::site::climate::ClimateValue;
use crate::site::details::Detail;
use crate::site::diary::{EntryId, Half, Line, Subject};
use crate::site::habits::{Habit, HabitValue};
use crate::site::household::GeneratedYears;
use crate::site::part::{Choice, Field, PartId};
use crate::site::rain::{MissingDays, Normals};
use crate::site::system::PartKind;
use crate::site::upkeep::Job;
use crate::site::wanted::Wanted;

/// What can be dragged on the sizing place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lever {
    /// Capacity of all tanks.
    Storage,
    /// Area of the whole roof.
    Roof,
    /// All uses.
    Uses,
    /// All rain.
    Rain,
}

impl Lever {
    /// All levers.
    pub const ALL: [Lever; 4] = [Lever::Storage, Lever::Roof, Lever::Uses, Lever::Rain];
}

/// One thing that happened.
#[derive(Clone, Debug)]
pub enum Event {
    /// The app began, on this day, with what is kept.
    Started(NaiveDate, Result<Opened, ShelfError>),
    /// Another window changed what is kept; it was read again.
    ReadAgain(Opened),
    /// Another window changed a half-year of a diary; it was read again.
    HalfReadAgain(SiteId, Half, Vec<Line>),
    /// A new day has begun, or the same goes on.
    DayCame(NaiveDate),
    /// The last write ended.
    Saved(Result<(), PutError>),
    /// A taking-in of sites ended.
    TakenIn {
        /// The sites that came.
        sites: Vec<(SiteId, SiteFile)>,
        /// The index after.
        index: Index,
        /// Whether those that were there are gone.
        replace: bool,
        /// How it ended.
        result: Result<(), PutError>,
    },

    /// A place was chosen on the bar.
    PlaceOpened(Place),
    /// The page's address names a place: after a reload, or the browser's way back.
    PlaceCalled(Place),
    /// A notice was read.
    NoticeDismissed,
    /// The last removal or keeping is to be undone.
    UndoWanted,

    /// A new house is to be sketched.
    SketchWanted,
    /// The sketch was given up.
    SketchLeft,
    /// The sketch is done.
    SketchDrawn(Sketch),
    /// The demo house is wanted.
    DemoWanted,
    /// Another site is wanted.
    SiteOpened(SiteId),
    /// The open site got a name.
    SiteNamed(String),
    /// A copy of a site is wanted.
    SiteDuplicated(SiteId),
    /// A site is to go.
    SiteRemoved(SiteId),

    /// A part was tapped.
    PartOpened(PartId),
    /// Its sheet was closed.
    SheetClosed,
    /// A new part is wanted.
    PartAdded(PartKind),
    /// The valve of a trunk line was turned.
    ValveTurned(PartId),
    /// A tank is wanted beside one that is there.
    TankWanted(PartId),
    /// A tank is wanted that stands free.
    FreeTankWanted,
    /// A copy of a part is wanted.
    PartDuplicated(PartId),
    /// A part is to go.
    PartRemoved(PartId),
    /// A part is to move among its kind.
    PartShifted(PartId, Shift),
    /// A number of a part was entered, in the unit that its kind is kept in.
    NumberEntered(PartId, Field, f64),
    /// A part got a name.
    PartNamed(PartId, String),
    /// The table of a tank was entered.
    TableEntered(PartId, Vec<crate::site::TableRow>),
    /// A detail of a part or of the site was entered, in the unit that its kind is kept in; none is the usual value.
    DetailEntered(Option<PartId>, Detail, Option<f64>),
    /// A barrier is wanted at the end of a use's chain.
    BarrierAdded(PartId, BarrierKind),
    /// A barrier is to go.
    BarrierRemoved(PartId),
    /// A barrier is to move in its chain.
    BarrierShifted(PartId, Shift),
    /// The way in which the climate is given was chosen.
    ClimateWayChosen {
        /// By latitude and temperatures; else by reference evapotranspiration.
        temperatures: bool,
    },
    /// A number of the climate was entered.
    ClimateEntered(ClimateValue, f64),
    /// A number of the habits was entered.
    HabitEntered(HabitValue, f64),
    /// A published figure was chosen for a habit, by its place.
    HabitFigureChosen(Habit, usize),
    /// A habit was given to a use, or to none.
    HabitGoesTo(Habit, Option<PartId>),
    /// What the habits come to is to be put into the uses.
    HabitsPut,
    /// A choice was made for a part.
    ChoiceMade(PartId, Field, Choice),

    /// A rain file or text was read.
    RainRead(Vec<u8>, String),
    /// The rain that waits is in another unit.
    RainUnitChosen(RainUnit),
    /// The rain that waits is to be kept.
    RainKept,
    /// It is not.
    RainDiscarded,
    /// Monthly means were entered.
    NormalsEntered(Normals),
    /// The site's rain is to go.
    RainRemoved,
    /// Generated years are wanted in the place of the site's rain, or no longer.
    GeneratedChosen(Option<GeneratedYears>),
    /// By how much to multiply each month's rain.
    RainFactorsEntered([f64; 12]),
    /// The treatment of missing days was chosen.
    MissingDaysChosen(MissingDays),

    /// An entry is to be filled in for today.
    FormWanted(Subject),
    /// An entry is to be changed.
    EntryOpened(EntryId),
    /// The form was given up.
    FormLeft,
    /// An entry of the diary was written or changed, at this moment in milliseconds since 1970.
    EntryWritten(Draft, u64),
    /// The same, and the next day is to be written.
    EntryWrittenAndNext(Draft, u64),
    /// An entry is to go, at this moment in milliseconds since 1970.
    EntryRemoved(EntryId, u64),
    /// It did not rain on any day from the first to the last, at a moment.
    DrySpellWritten([NaiveDate; 2], u64),
    /// Jobs of which nothing was written were done on this day, said at this moment in milliseconds since 1970.
    JobsWritten(Vec<Job>, NaiveDate, u64),
    /// How often work is done was entered as text: days, rain, litres; none goes back to the usual.
    IntervalEntered(Job, Option<[String; 3]>),
    /// A calendar of the upkeep is wanted, at this moment in milliseconds since 1970.
    CalendarWanted(u64),

    /// A lever was let go.
    LeverLeft,
    /// A lever was dragged to a factor.
    LeverDragged(Lever, f64),
    /// The trial becomes the system.
    TrialKept,
    /// The trial is given up.
    TrialDropped,
    /// How full the tanks are on the first day, a share.
    StartChosen(f64),
    /// The order of events within a day: θ.
    RuleChosen(f64),

    /// A section with a question about size was opened or shut.
    InquiryOpened(Inquiry, bool),
    /// It is to be reckoned again, or for the first time.
    InquiryWanted(Inquiry),
    /// It is not to go on.
    InquiryCancelled(Inquiry),
    /// The question of this ticket is so far, 0 to 1.
    StudyWentOn(u32, f64),
    /// The question of this ticket is answered.
    Studied(u32, Arc<Result<Findings, Refusal>>),
    /// How sure the household wants to be was chosen.
    WantedChosen(Wanted),
    /// Something happened about what to change next, or an option.
    Next(NextEvent),
    /// Something happened about the weeks ahead.
    Ahead(AheadEvent),

    /// A language was chosen.
    LanguageChosen(Language),
    /// A set of units was chosen.
    UnitsChosen(Customary),
    /// A unit was chosen for one kind.
    UnitChosen(Kind, &'static str),

    /// A figure is wanted as a file, by its title, with what it shows: as a bitmap, or as SVG.
    PictureWanted {
        /// The title.
        title: &'static str,
        /// What it shows, in a line.
        caption: String,
        /// The figure.
        drawing: Arc<Drawing>,
        /// Whether as PNG.
        bitmap: bool,
    },
    /// A file of everything is wanted.
    ExportWanted,
    /// The open site is to go out as a file of its own.
    SiteExportWanted,
    /// The diary of the open site is wanted as a table.
    DiaryTableWanted,
    /// The days of its balance are wanted as a table.
    ResultsTableWanted,
    /// What is kept takes so many characters.
    StorageMeasured(usize),
    /// The browser promised not to throw away what is kept, or did not.
    Persists(bool),
    /// A file was read.
    FileRead(Vec<u8>),
    /// It is to be taken in, in the place of what is there or beside it.
    FileAccepted {
        /// Whether the sites that are there go.
        replace: bool,
    },
    /// It is to be taken in beside what is there, with its houses where they differ.
    FileHousesTaken,
    /// It is not.
    FileDiscarded,

    /// The app can start without a network from now on, or can't.
    Offline(bool),
    /// A new version waits.
    UpdateReady,
    /// It is to take over.
    UpdateAccepted,
}

/// Which way a part moves in its list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shift {
    /// Towards the first.
    Up,
    /// Towards the last.
    Down,
}

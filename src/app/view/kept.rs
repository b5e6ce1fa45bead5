//! Sites, units, files.

use crate::app::merging::{Change, ChangeKind, Lost, lost, merge};
use crate::app::model::{KeptSite, Model};
use crate::quantity::{Customary, Kind, Units};
use crate::records::cupboard::SiteId;
use crate::words;

/// The place as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptView {
    /// The sites: identity, name, what there is of it, whether it is open.
    pub sites: Vec<SiteRow>,
    /// Sets of units with words, and whether they hold whole.
    pub sets: Vec<(Customary, &'static str, bool)>,
    /// Each kind with its name and the symbol of the unit that is wanted.
    pub kinds: Vec<(Kind, &'static str, &'static str)>,
    /// What taking in the file that was read would do.
    pub file: Option<Vec<String>>,
    /// Whether a house of that file differs from the one here.
    pub differs: bool,
    /// How much room what is kept takes, and whether the browser promised to keep it.
    pub room: String,
    /// A reminder that the last export is old.
    pub reminder: Option<String>,
}

/// A site in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct SiteRow {
    /// Its identity.
    pub id: SiteId,
    /// Its name.
    pub name: String,
    /// Its parts and rain in a line.
    pub detail: String,
    /// Whether it is open.
    pub open: bool,
}

/// Sites, units and files of a model.
pub fn kept(model: &Model) -> KeptView {
    KeptView {
        sites: model
            .sites
            .iter()
            .map(|kept| SiteRow {
                id: kept.id,
                name: kept.site.name.clone(),
                detail: detail(kept),
                open: Some(kept.id) == model.open,
            })
            .collect(),
        sets: unit_sets(&model.units),
        kinds: Kind::SWITCHABLE.map(|kind| (kind, words::kept::kind(kind), model.units.of(kind).symbol)).into(),
        file: model.read_file.as_deref().map(|file| {
            let (changes, _, _) = merge(model, file, false);
            let mut lines = vec![words::kept::file_holds(file.sites.len(), model.sites.len())];
            lines.extend(changes.iter().map(line));
            let Lost { sites, rains, trials, entries } = lost(model, file);
            lines.extend(words::kept::lost([sites, rains, trials], entries));
            lines
        }),
        differs: model.read_file.as_ref().is_some_and(|file| {
            let differs = |change: &Change| matches!(change.kind, ChangeKind::Merged { house_differs: true, .. });
            merge(model, file, false).0.iter().any(differs)
        }),
        room: if model.denied {
            words::kept::NOTHING_IS_KEPT.to_owned()
        } else {
            words::kept::room(model.used, model.persists)
        },
        reminder: reminder(model),
    }
}

/// Sets of units with words, and whether they hold whole.
pub fn unit_sets(units: &Units) -> Vec<(Customary, &'static str, bool)> {
    Customary::ALL.map(|set| (set, words::kept::customary(set), same_units(units, &Units::customary(set)))).into()
}

/// A name for a new site that no other has.
pub fn free_name(model: &Model) -> String {
    let taken = |name: &str| model.sites.iter().any(|kept| kept.site.name == name);
    words::free_name(said!("My house", "Mi casa"), taken)
}

fn same_units(one: &Units, other: &Units) -> bool {
    Kind::SWITCHABLE.iter().all(|kind| one.of(*kind) == other.of(*kind))
}

fn detail(kept: &KeptSite) -> String {
    let tanks = words::count(kept.site.system.tanks.len(), phrase!("tank", "tanque"), phrase!("tanks", "tanques"));
    let roof = words::count(
        kept.site.system.sections.len(),
        phrase!("roof section", "sección de techo"),
        phrase!("roof sections", "secciones de techo"),
    );
    let rain =
        if kept.rain.is_some() { said!("with rain", "con lluvia") } else { said!("no rain yet", "aún sin lluvia") };
    format!("{roof}, {tanks}, {rain}")
}

fn line(change: &Change) -> String {
    let Change { name, kind } = change;
    match *kind {
        ChangeKind::New { entries } => words::kept::comes_in(name, entries),
        ChangeKind::Same => words::kept::same(name),
        ChangeKind::Merged { diary, rain, trial, house_differs } => {
            words::kept::merged(name, diary, [rain, trial], house_differs)
        }
    }
}

/// An export older than this, in days, is old; so is a diary that was begun so long ago and never exported.
const OLD_EXPORT_DAYS: i64 = 30;

/// The reminder as the open site's house tells it: not where its own diary is empty.
pub fn reminder_at_house(model: &Model) -> Option<String> {
    model.site().filter(|kept| !kept.diary.is_empty())?;
    reminder(model)
}

/// A reminder to export, where something was written since the last export and that is old.
pub fn reminder(model: &Model) -> Option<String> {
    let newest =
        model.sites.iter().filter_map(|kept| kept.diary.entries().iter().map(|entry| entry.edited).max()).max()?;
    let oldest =
        model.sites.iter().filter_map(|kept| kept.diary.entries().iter().map(|entry| entry.id.0).min()).min()?;
    let day = |moment: u64| {
        const MILLISECONDS_A_DAY: u64 = 86_400_000;
        chrono::NaiveDate::from_ymd_opt(1970, 1, 1)?.checked_add_days(chrono::Days::new(moment / MILLISECONDS_A_DAY))
    };
    let since = model.exported.or(day(oldest))?;
    let days = (model.today - since).num_days();
    let changed = model.exported.is_none_or(|exported| day(newest).is_some_and(|newest| newest > exported));
    (changed && days >= OLD_EXPORT_DAYS).then(|| words::kept::export_old(model.exported, days))
}

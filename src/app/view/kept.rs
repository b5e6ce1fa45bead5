//! Sites, units, files.

use crate::app::model::{KeptSite, Model};
use crate::quantity::{Customary, Kind, Units};
use crate::records::cupboard::{SiteFile, SiteId};
use crate::words;

/// The place as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptView {
    /// The sites: identity, name, what there is of it, whether it is open.
    pub sites: Vec<SiteRow>,
    /// Sets of units with words, and whether they hold whole.
    pub sets: Vec<(Customary, &'static str, bool)>,
    /// Each kind with its units and the one that is wanted.
    pub kinds: Vec<(Kind, &'static str, Vec<&'static str>, &'static str)>,
    /// What taking in the file that was read would do.
    pub file: Option<String>,
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
        kinds: Kind::SWITCHABLE
            .map(|kind| {
                let symbols = kind.units().iter().map(|unit| unit.symbol).collect();
                (kind, words::kept::kind(kind), symbols, model.units.of(kind).symbol)
            })
            .into(),
        file: model.read_file.as_deref().map(|file| {
            let there: Vec<SiteFile> = model.sites.iter().map(KeptSite::file).collect();
            let new = file.sites.iter().filter(|site| !there.contains(site)).count();
            words::kept::file_holds(file.sites.len(), new, there.len())
        }),
    }
}

/// Sets of units with words, and whether they hold whole.
pub fn unit_sets(units: &Units) -> Vec<(Customary, &'static str, bool)> {
    Customary::ALL.map(|set| (set, words::kept::customary(set), same_units(units, &Units::customary(set)))).into()
}

/// A name for a new site that no other has.
pub fn free_name(model: &Model) -> String {
    let taken = |name: &str| model.sites.iter().any(|kept| kept.site.name == name);
    words::free_name("My house", taken)
}

fn same_units(one: &Units, other: &Units) -> bool {
    Kind::SWITCHABLE.iter().all(|kind| one.of(*kind) == other.of(*kind))
}

fn detail(kept: &KeptSite) -> String {
    let tanks = words::count(kept.site.system.tanks.len(), "tank", "tanks");
    let roof = words::count(kept.site.system.sections.len(), "roof section", "roof sections");
    format!("{roof}, {tanks}, {}", if kept.rain.is_some() { "with rain" } else { "no rain yet" })
}

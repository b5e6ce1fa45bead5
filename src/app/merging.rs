//! What taking in a file beside what is there comes to: new sites come in; a site that is here already, by the moment at
//! which it was begun, or by its name where that isn't known of both, takes the entries that its diary lacks, and the
//! file's rain and trial if it has none. Its house stays as it is here, unless those of the file are wanted.

use super::model::Model;
use crate::records::cupboard::{Index, SiteFile, SiteId};
use crate::records::exchange::Export;
use crate::site::diary::Merged;
use crate::site::household::Site;

/// What becomes of one site of the file.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// Its name.
    pub name: String,
    /// What happens.
    pub kind: ChangeKind,
}

/// What happens to a site.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChangeKind {
    /// It comes in, with so many entries.
    New {
        /// Entries of its diary.
        entries: usize,
    },
    /// It is here already, the same in all.
    Same,
    /// It is here already and takes something.
    Merged {
        /// Entries that come and that change.
        diary: Merged,
        /// Whether its rain comes.
        rain: bool,
        /// Whether its trial comes.
        trial: bool,
        /// Whether the file's house differs from the one that is here and stays.
        house_differs: bool,
    },
}

/// The merge of a file with what is there: what becomes of each site, the sites to be written under new names on this
/// phone, and the index that then counts. Whole or not at all: a merged site is written anew, and the index puts it in
/// the place of the old one. `houses` takes the file's house and rain where they differ.
pub fn merge(model: &Model, file: &Export, houses: bool) -> (Vec<Change>, Vec<(SiteId, SiteFile)>, Index) {
    let mut index = model.index();
    let mut changes = Vec::with_capacity(file.sites.len());
    let mut sites = Vec::new();
    let mut next = model.unused_id().0;
    let mut taken: Vec<SiteId> = Vec::new();
    for coming in &file.sites {
        let here = model.sites.iter().find(|kept| is_same(&kept.site, &coming.site) && !taken.contains(&kept.id));
        let Some(here) = here else {
            let name = coming.site.name.clone();
            changes.push(Change { name, kind: ChangeKind::New { entries: coming.diary.entries().len() } });
            index.sites.push(SiteId(next));
            sites.push((SiteId(next), coming.clone()));
            next = next.saturating_add(1);
            continue;
        };
        let name = here.site.name.clone();
        taken.push(here.id);
        let mut merged = here.file();
        let diary = merged.diary.merge(coming.diary.lines());
        let rain = merged.rain.is_none() && coming.rain.is_some();
        if rain {
            merged.rain.clone_from(&coming.rain);
        }
        let trial = merged.trial.is_none() && !coming.trial.is_none();
        if trial {
            merged.trial.clone_from(&coming.trial);
        }
        let house_differs = merged.site != coming.site || (merged.rain != coming.rain && coming.rain.is_some());
        if houses && house_differs {
            merged.site = coming.site.clone();
            merged.rain = coming.rain.clone().or(merged.rain);
        }
        if !(diary != Merged::default() || rain || trial || houses && house_differs) {
            let stays = ChangeKind::Merged { diary, rain, trial, house_differs };
            changes.push(Change { name, kind: if house_differs { stays } else { ChangeKind::Same } });
            continue;
        }
        changes.push(Change { name, kind: ChangeKind::Merged { diary, rain, trial, house_differs } });
        for id in index.sites.iter_mut().chain(&mut index.open) {
            if *id == here.id {
                *id = SiteId(next);
            }
        }
        sites.push((SiteId(next), merged));
        next = next.saturating_add(1);
    }
    if index.open.is_none() {
        index.open = sites.first().map(|(id, _)| *id);
    }
    (changes, sites, index)
}

/// Whether two sites are one house.
fn is_same(here: &Site, coming: &Site) -> bool {
    match (here.begun, coming.begun) {
        (Some(here), Some(coming)) => here == coming,
        _ => here.name == coming.name,
    }
}

/// What is here and not in a file, and so would be lost if the file took the place of all.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lost {
    /// Sites, by name.
    pub sites: Vec<String>,
    /// The others whose rain the file lacks, by name.
    pub rains: Vec<String>,
    /// The others whose trial is another in the file, or is none, by name.
    pub trials: Vec<String>,
    /// Entries of their diaries that the file lacks or has as they were before they were last changed.
    pub entries: usize,
}

/// What would be lost if a file took the place of all.
pub fn lost(model: &Model, file: &Export) -> Lost {
    let mut lost = Lost::default();
    for kept in &model.sites {
        let name = &kept.site.name;
        let Some(coming) = file.sites.iter().find(|coming| is_same(&kept.site, &coming.site)) else {
            lost.sites.push(name.clone());
            continue;
        };
        if kept.rain.is_some() && coming.rain.is_none() {
            lost.rains.push(name.clone());
        }
        if !kept.trial.is_none() && kept.trial != coming.trial {
            lost.trials.push(name.clone());
        }
        // What was taken out there after it was written here goes either way.
        let there = |id| coming.diary.line(id).map(|line| line.edited());
        lost.entries += kept.diary.entries().iter().filter(|entry| there(entry.id) < Some(entry.edited)).count();
    }
    lost
}

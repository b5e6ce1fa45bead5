//! Which records there are: an index with what belongs to the phone, and for each site one record of the site, one of
//! its rain, which is large and changes seldom, and one of each half-year of its diary (`halves`).

use chrono::NaiveDate;

use super::json::Value;
use super::place::{Place, Read};
use super::shapes;
use super::shelf::{Shelf, ShelfError};
use super::slots::{self, PutError, VERSION};
use crate::language::Language;
use crate::quantity::Units;
use crate::site::diary::Diary;
use crate::site::household::Site;
use crate::site::rain::Rain;
use crate::site::trial::Trial;

/// Names a site on this phone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SiteId(pub u32);

/// A site with its rain, its diary and the trial beside it.
#[derive(Clone, Debug, PartialEq)]
pub struct SiteFile {
    /// The site.
    pub site: Site,
    /// Its rain, once it has any.
    pub rain: Option<Rain>,
    /// Its diary.
    pub diary: Diary,
    /// The trial that is open beside it.
    pub trial: Trial,
}

/// What belongs to the phone rather than to a site. A site is there when the index names it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Index {
    /// The sites in the person's order.
    pub sites: Vec<SiteId>,
    /// The one that is open.
    pub open: Option<SiteId>,
    /// The units that the person wants.
    pub units: Units,
    /// The language that the person chose; none is the device's own.
    pub language: Option<Language>,
    /// The day of the last export, if there was one.
    pub exported: Option<NaiveDate>,
}

/// What opening the cupboard brought to light.
#[derive(Clone, Debug, PartialEq)]
pub enum Trouble {
    /// A damaged text was set aside under this key; the generation before it was used if there was one.
    SetAside(String),
    /// A record was written by a newer program: it is read as far as it is understood, and never written.
    Newer(String),
    /// A site named by the index can't be read from any generation.
    SiteLost(SiteId),
}

/// The cupboard as opened.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Opened {
    /// The index.
    pub index: Index,
    /// The sites that could be read, in the index's order.
    pub sites: Vec<(SiteId, SiteFile)>,
    /// Sites of a newer program that can't be understood: they stay named and untouched.
    pub untouched: Vec<SiteId>,
    /// The greatest number that any record is kept under, even of a site that is lost: new sites get greater ones, so
    /// that none inherits what belonged to another.
    pub greatest: u32,
    /// How many characters everything takes, keys included.
    pub used: usize,
    /// What was amiss.
    pub troubles: Vec<Trouble>,
}

const PREFIX: &str = "eavewater/";
const INDEX: &str = "eavewater/index";
const SITES: &str = "eavewater/site/";
/// Names sites that are being put in the place of all others, until that is done.
const INCOMING: &str = "eavewater/incoming";

fn site_key(id: SiteId) -> String {
    format!("{SITES}{}", id.0)
}

fn trial_key(id: SiteId) -> String {
    format!("eavewater/trial/{}", id.0)
}

fn rain_key(id: SiteId) -> String {
    format!("eavewater/rain/{}", id.0)
}

/// The open cupboard: remembers the generation of each record that it read or wrote, so that a change made in another
/// window is noticed and never written over.
pub struct Cupboard<S> {
    pub(super) shelf: S,
    generations: Vec<(String, u64)>,
}

impl<S: Shelf> Cupboard<S> {
    /// Opens the cupboard on a shelf.
    ///
    /// # Errors
    /// [`ShelfError::Denied`] where there is no shelf; damage is reported in [`Opened::troubles`] instead.
    pub fn open(shelf: S) -> Result<(Self, Opened), ShelfError> {
        let mut cupboard = Self { shelf, generations: Vec::new() };
        let mut opened = Opened::default();
        let index: Option<Index> = cupboard.read(INDEX, shapes::index::read, &mut opened.troubles)?;
        let index_known = index.is_some();
        opened.index = index.unwrap_or_default();
        cupboard.finish_incoming(&mut opened.index)?;
        // Sites that the index does not name are found again: an index may be lost, a site must not be.
        for id in cupboard.sites_on_shelf()? {
            if !opened.index.sites.contains(&id) {
                opened.index.sites.push(id);
            }
        }
        for id in opened.index.sites.clone() {
            match cupboard.read(&site_key(id), shapes::site::read, &mut opened.troubles)? {
                Some(site) => {
                    let rain = cupboard.read(&rain_key(id), shapes::rain::read, &mut opened.troubles)?;
                    let diary = cupboard.read_diary(id, &mut opened.troubles)?;
                    let trial = cupboard.read(&trial_key(id), shapes::trial::read_trial, &mut opened.troubles)?;
                    let trial = trial.unwrap_or(Trial::NONE);
                    opened.sites.push((id, SiteFile { site, rain, diary, trial }));
                }
                None if opened.troubles.contains(&Trouble::Newer(site_key(id))) => opened.untouched.push(id),
                None => {
                    opened.troubles.push(Trouble::SiteLost(id));
                    opened.index.sites.retain(|other| *other != id);
                }
            }
        }
        opened.greatest = cupboard.greatest_number()?;
        opened.used = cupboard.used()?;
        let open = opened.index.open.filter(|open| index_known && opened.sites.iter().any(|(id, _)| id == open));
        opened.index.open = open.or(opened.sites.first().map(|(id, _)| *id));
        Ok((cupboard, opened))
    }

    /// Reads a record's newest generation that is whole and can be understood.
    pub(super) fn read<T>(
        &mut self,
        key: &str,
        shape: fn(&Place<'_>) -> Read<T>,
        troubles: &mut Vec<Trouble>,
    ) -> Result<Option<T>, ShelfError> {
        let mut read = None;
        self.read_document(key, troubles, &mut |document| {
            read = Some(shape(document)?);
            Ok(())
        })?;
        Ok(read)
    }

    /// Has `take` read a record's newest generation that is whole and that it can understand.
    fn read_document(
        &mut self,
        key: &str,
        troubles: &mut Vec<Trouble>,
        take: &mut dyn FnMut(&Place<'_>) -> Read<()>,
    ) -> Result<(), ShelfError> {
        loop {
            let found = slots::get(&self.shelf, key)?;
            troubles.extend(found.set_aside.into_iter().map(Trouble::SetAside));
            let Some(newest) = found.newest else { return Ok(()) };
            self.remember(key, newest.generation);
            if newest.version > VERSION {
                // It stays as it is, and is shown as far as it is understood.
                troubles.push(Trouble::Newer(key.to_owned()));
                let _ = Value::read(&newest.content).is_ok_and(|document| take(&Place::top(&document)).is_ok());
                return Ok(());
            }
            let document = Value::read(&newest.content);
            if document.is_ok_and(|document| take(&Place::top(&document)).is_ok()) {
                return Ok(());
            }
            troubles.push(Trouble::SetAside(key.to_owned()));
            slots::set_newest_aside(&self.shelf, key)?;
            self.forget_generation(key);
            let again = slots::get(&self.shelf, key)?.newest.map(|opened| opened.generation);
            if again == Some(newest.generation) {
                // No room to set it aside: it stays, unread.
                return Ok(());
            }
        }
    }

    pub(super) fn write(&mut self, key: String, document: &Value) -> Result<(), PutError> {
        let known = self.generations.iter().find(|(other, _)| *other == key).map_or(0, |(_, generation)| *generation);
        let generation = slots::put(&self.shelf, &key, known, &document.written())?;
        self.remember(&key, generation);
        Ok(())
    }

    fn remember(&mut self, key: &str, generation: u64) {
        self.forget_generation(key);
        self.generations.push((key.to_owned(), generation));
    }

    fn forget_generation(&mut self, key: &str) {
        self.generations.retain(|(other, _)| other != key);
    }

    /// Writes the index.
    ///
    /// # Errors
    /// See [`PutError`].
    pub fn save_index(&mut self, index: &Index) -> Result<(), PutError> {
        self.write(INDEX.to_owned(), &shapes::index::write(index))
    }

    /// Writes a site without its rain.
    ///
    /// # Errors
    /// See [`PutError`].
    pub fn save_site(&mut self, id: SiteId, site: &Site) -> Result<(), PutError> {
        self.write(site_key(id), &shapes::site::write(site))
    }

    /// Writes the rain of a site, or takes it away.
    ///
    /// # Errors
    /// See [`PutError`].
    pub fn save_rain(&mut self, id: SiteId, rain: Option<&Rain>) -> Result<(), PutError> {
        match rain {
            Some(rain) => self.write(rain_key(id), &shapes::rain::write(rain)),
            None => Ok(self.forget(rain_key(id))?),
        }
    }

    /// Writes the trial beside a site, or takes it away.
    ///
    /// # Errors
    /// See [`PutError`].
    pub fn save_trial(&mut self, id: SiteId, trial: &Trial) -> Result<(), PutError> {
        if trial.is_none() {
            return Ok(self.forget(trial_key(id))?);
        }
        self.write(trial_key(id), &shapes::trial::write_trial(trial))
    }

    /// Takes a site, its rain, its trial and its diary away.
    ///
    /// # Errors
    /// Only the shelf's own.
    pub fn remove_site(&mut self, id: SiteId) -> Result<(), ShelfError> {
        self.forget(site_key(id))?;
        self.forget(rain_key(id))?;
        self.forget(trial_key(id))?;
        self.remove_diary(id)
    }

    pub(super) fn forget(&mut self, key: String) -> Result<(), ShelfError> {
        slots::remove(&self.shelf, &key)?;
        self.forget_generation(&key);
        Ok(())
    }

    /// Puts sites in the place of all that are there, or beside them if `index` names those too: all of it, or none.
    /// The new sites are written first; the index is what makes them count; what it no longer names goes last.
    ///
    /// # Errors
    /// See [`PutError`]; everything is as it was then.
    pub fn take_in(&mut self, sites: &[(SiteId, SiteFile)], index: &Index) -> Result<(), PutError> {
        let incoming: Vec<SiteId> = sites.iter().map(|(id, _)| *id).collect();
        let written = self.write(INCOMING.to_owned(), &shapes::index::write_ids(&incoming)).and_then(|()| {
            sites.iter().try_for_each(|(id, file)| {
                self.save_site(*id, &file.site)?;
                self.save_rain(*id, file.rain.as_ref())?;
                self.save_diary(*id, &file.diary)?;
                self.save_trial(*id, &file.trial)
            })?;
            self.save_index(index)
        });
        if let Err(error) = written {
            for (id, _) in sites {
                self.remove_site(*id)?;
            }
            self.forget(INCOMING.to_owned())?;
            return Err(error);
        }
        Ok(self.finish_incoming(&mut index.clone())?)
    }

    /// The sites that have a record, whether the index names them or not.
    fn sites_on_shelf(&self) -> Result<Vec<SiteId>, ShelfError> {
        let keys = slots::keys(&self.shelf, SITES)?;
        let id = |key: &String| key.strip_prefix(SITES).and_then(|number| number.parse().ok()).map(SiteId);
        Ok(keys.iter().filter_map(id).collect())
    }

    /// How many characters everything on the shelf takes, keys included.
    ///
    /// # Errors
    /// Only the shelf's own.
    pub fn used(&self) -> Result<usize, ShelfError> {
        let mut used = 0;
        for key in self.shelf.keys()? {
            used += key.len() + self.shelf.get(&key)?.map_or(0, |text| text.encode_utf16().count());
        }
        Ok(used)
    }

    /// The greatest number under which there is a record of any site.
    fn greatest_number(&self) -> Result<u32, ShelfError> {
        let keys = slots::keys(&self.shelf, PREFIX)?;
        let number = |key: &String| key.split('/').nth(2)?.parse().ok();
        Ok(keys.iter().filter_map(number).max().unwrap_or(0))
    }

    /// Ends a taking-in that was interrupted: if the index names the sites, what it doesn't name goes; if not, they do.
    fn finish_incoming(&mut self, index: &mut Index) -> Result<(), ShelfError> {
        let mut newer = Vec::new();
        let incoming: Option<Vec<SiteId>> = self.read(INCOMING, shapes::index::read_ids, &mut newer)?;
        let Some(incoming) = incoming.filter(|_| newer.is_empty()) else { return Ok(()) };
        let counted = incoming.iter().all(|id| index.sites.contains(id));
        for id in self.sites_on_shelf()? {
            let goes = if counted { !index.sites.contains(&id) } else { incoming.contains(&id) };
            if goes {
                self.remove_site(id)?;
            }
        }
        index.sites.retain(|id| counted || !incoming.contains(id));
        self.forget(INCOMING.to_owned())
    }

    /// Whether a key that changed on the shelf (in another window) belongs to this cupboard.
    pub fn is_ours(key: &str) -> bool {
        key.starts_with(PREFIX)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::super::envelope;
    use super::super::shelf::{MemoryShelf, Stops};
    use super::*;
    use crate::site::demo;
    use crate::site::trial::Levers;

    const ROOM: usize = 1_000_000;

    fn file(name: &str) -> SiteFile {
        let site = Site { name: name.to_owned(), ..demo::site() };
        SiteFile { site, rain: Some(Rain::Record(demo::rain())), diary: Diary::default(), trial: Trial::NONE }
    }

    fn index(ids: &[u32]) -> Index {
        Index {
            sites: ids.iter().copied().map(SiteId).collect(),
            open: ids.first().copied().map(SiteId),
            ..Index::default()
        }
    }

    fn filled(shelf: &MemoryShelf) -> Cupboard<&MemoryShelf> {
        let (mut cupboard, opened) = Cupboard::open(shelf).unwrap();
        assert_eq!(opened, Opened::default());
        cupboard.take_in(&[(SiteId(1), file("one")), (SiteId(2), file("two"))], &index(&[1, 2])).unwrap();
        cupboard
    }

    fn names(shelf: &MemoryShelf) -> Vec<String> {
        let opened = Cupboard::open(shelf).unwrap().1;
        opened.sites.into_iter().map(|(_, file)| file.site.name).collect()
    }

    #[test]
    fn what_was_saved_opens_the_same() {
        let shelf = MemoryShelf::with_room(ROOM);
        filled(&shelf);
        let opened = Cupboard::open(&shelf).unwrap().1;
        assert_eq!(opened.index, index(&[1, 2]));
        assert!(opened.sites[1] == (SiteId(2), file("two")), "a site came back changed");
        assert_eq!(opened.troubles, []);
    }

    #[test]
    fn a_trial_is_kept_beside_its_site_and_goes_with_it() {
        let shelf = MemoryShelf::with_room(ROOM);
        let mut cupboard = filled(&shelf);
        let levers = Levers { storage: 2.0, rain: 0.7, ..Levers::NONE };
        let reckoning = Some(Box::new(file("two").site.reckoning));
        let trial = Trial { levers, reckoning, ..Trial::of_system("New tank".to_owned(), file("two").site.system) };
        let lever_only = Trial { levers, ..Trial::NONE };
        cupboard.save_trial(SiteId(1), &lever_only).unwrap();
        cupboard.save_trial(SiteId(2), &trial).unwrap();
        let trials = |shelf| {
            let opened = Cupboard::open(shelf).unwrap().1;
            opened.sites.into_iter().map(|(_, file)| file.trial).collect::<Vec<_>>()
        };
        assert_eq!(trials(&shelf), [lever_only, trial.clone()]);
        cupboard.save_trial(SiteId(1), &Trial::NONE).unwrap();
        assert_eq!(trials(&shelf), [Trial::NONE, trial.clone()]);
        // One that comes in with its site is kept with it.
        let index = Index { sites: vec![SiteId(3)], ..Index::default() };
        cupboard.take_in(&[(SiteId(3), SiteFile { trial: trial.clone(), ..file("three") })], &index).unwrap();
        assert_eq!(trials(&shelf), [trial]);
        cupboard.remove_site(SiteId(3)).unwrap();
        cupboard.remove_site(SiteId(2)).unwrap();
        assert_eq!(slots::keys(&&shelf, "eavewater/trial/").unwrap(), [] as [String; 0]);
    }

    #[test]
    fn a_damaged_site_falls_back_and_the_rest_opens() {
        let shelf = MemoryShelf::with_room(ROOM);
        let mut cupboard = filled(&shelf);
        cupboard.save_site(SiteId(1), &file("changed").site).unwrap();
        let torn = shelf.get("eavewater/site/1/b").unwrap().unwrap();
        shelf.put("eavewater/site/1/b", &torn[..torn.len() / 2]).unwrap();
        let opened = Cupboard::open(&shelf).unwrap().1;
        assert_eq!(opened.sites[0].1.site.name, "one");
        assert_eq!(opened.sites[1].1.site.name, "two");
        assert_eq!(opened.troubles, [Trouble::SetAside("set-aside/1/eavewater/site/1".to_owned())]);
    }

    #[test]
    fn a_lost_index_loses_no_site() {
        let shelf = MemoryShelf::with_room(ROOM);
        filled(&shelf);
        shelf.put("eavewater/index/a", "rubbish").unwrap();
        shelf.put("eavewater/index/b", "rubbish").unwrap();
        assert_eq!(names(&shelf), ["one", "two"]);
    }

    #[test]
    fn content_that_cannot_be_understood_is_set_aside() {
        let shelf = MemoryShelf::with_room(ROOM);
        let mut cupboard = filled(&shelf);
        cupboard.write(site_key(SiteId(1)), &"not a site".into()).unwrap();
        let opened = Cupboard::open(&shelf).unwrap().1;
        assert_eq!(opened.sites[0].1.site.name, "one");
        assert_eq!(opened.troubles.len(), 1);
    }

    #[test]
    fn what_a_newer_program_wrote_is_shown_and_stays() {
        let shelf = MemoryShelf::with_room(ROOM);
        filled(&shelf);
        let newer = |id: u32, content: &Value| {
            let sealed = envelope::seal(VERSION + 1, 9, &content.written());
            shelf.put(&format!("{}/b", site_key(SiteId(id))), &sealed).unwrap();
        };
        let Value::Object(mut later) = shapes::site::write(&file("later").site) else { panic!("no object") };
        later.push(("moon".to_owned(), "full".into()));
        newer(1, &Value::Object(later));
        newer(2, &"of another shape".into());
        let before: Vec<String> = shelf.keys().unwrap().iter().map(|key| shelf.get(key).unwrap().unwrap()).collect();
        let (mut cupboard, opened) = Cupboard::open(&shelf).unwrap();
        assert_eq!(
            opened.sites.iter().map(|(id, file)| (id.0, file.site.name.as_str())).collect::<Vec<_>>(),
            [(1, "later")]
        );
        assert_eq!(opened.untouched, [SiteId(2)]);
        assert_eq!(opened.troubles, [1, 2].map(|id| Trouble::Newer(site_key(SiteId(id)))));
        assert_eq!(cupboard.save_site(SiteId(1), &file("changed").site), Err(PutError::Newer));
        let after: Vec<String> = shelf.keys().unwrap().iter().map(|key| shelf.get(key).unwrap().unwrap()).collect();
        assert_eq!(after, before);
    }

    #[test]
    fn a_replacement_killed_anywhere_is_whole_or_did_not_happen() {
        for writes in 0..40 {
            let shelf = MemoryShelf::with_room(ROOM);
            filled(&shelf);
            let (mut cupboard, _) = Cupboard::open(Stops::after(&shelf, writes)).unwrap();
            let _ = cupboard.take_in(&[(SiteId(3), file("three")), (SiteId(4), file("four"))], &index(&[3, 4]));
            let after = names(&shelf);
            assert!(after == ["one", "two"] || after == ["three", "four"], "after {writes} writes: {after:?}");
        }
    }

    #[test]
    fn a_replacement_without_room_changes_nothing() {
        let probe = MemoryShelf::with_room(ROOM);
        filled(&probe);
        let used: usize =
            probe.keys().unwrap().iter().map(|key| key.len() + probe.get(key).unwrap().unwrap().len()).sum();
        let shelf = MemoryShelf::with_room(used + 5_000);
        let mut cupboard = filled(&shelf);
        let result = cupboard.take_in(&[(SiteId(3), file("three"))], &index(&[3]));
        assert_eq!(result, Err(PutError::Shelf(ShelfError::Full)));
        assert_eq!(names(&shelf), ["one", "two"]);
    }
}

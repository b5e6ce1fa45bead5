//! The diary in the cupboard: one record for each half-year of each site. A change of one entry reads that half-year as
//! it is on the shelf now, changes the entry and writes it, so that what another window wrote meanwhile stays.

use super::cupboard::{Cupboard, SiteId, Trouble};
use super::shapes;
use super::shelf::{Shelf, ShelfError};
use super::slots::{self, PutError};
use crate::site::diary::{Diary, EntryId, Half, Line};

const DIARIES: &str = "eavewater/diary/";

fn prefix(site: SiteId) -> String {
    format!("{DIARIES}{}/", site.0)
}

fn key(site: SiteId, half: Half) -> String {
    format!("{DIARIES}{}/{}-{}", site.0, half.year, if half.second { 2 } else { 1 })
}

/// Which half-year of which site a key on the shelf belongs to, if to any: `eavewater/diary/3/2026-2/a`.
pub(super) fn half_of_key(key: &str) -> Option<(SiteId, Half)> {
    let mut steps = key.strip_prefix(DIARIES)?.split('/');
    let site = SiteId(steps.next()?.parse().ok()?);
    let (year, half) = steps.next()?.rsplit_once('-')?;
    Some((site, Half { year: year.parse().ok()?, second: half == "2" }))
}

impl<S: Shelf> Cupboard<S> {
    /// Reads the whole diary of a site. An entry found in two half-years was being moved when the page was killed: the
    /// last edited counts, and the other is cleared away.
    pub(super) fn read_diary(&mut self, site: SiteId, troubles: &mut Vec<Trouble>) -> Result<Diary, ShelfError> {
        let mut stood: Vec<(Half, EntryId)> = Vec::new();
        let mut all = Vec::new();
        for key in slots::keys(&self.shelf, &prefix(site))? {
            let Some((_, half)) = half_of_key(&key) else { continue };
            if let Some(lines) = self.read(&key, shapes::diary::read, troubles)? {
                stood.extend(lines.iter().map(|line| (half, line.id())));
                all.extend(lines);
            }
        }
        let diary = Diary::of_lines(all);
        if stood.len() > diary.lines().len() {
            for (half, id) in stood {
                if diary.line(id).is_some_and(|line| line.half() != half) {
                    // If that can't be written the entry is still read once.
                    let _ = self.forget_line(site, id, half);
                }
            }
        }
        Ok(diary)
    }

    /// The lines of one half-year as they are on the shelf now.
    ///
    /// # Errors
    /// Only the shelf's own.
    pub fn read_half(&mut self, site: SiteId, half: Half) -> Result<Vec<Line>, ShelfError> {
        let lines = self.read(&key(site, half), shapes::diary::read, &mut Vec::new())?;
        Ok(lines.unwrap_or_default())
    }

    fn change_half(
        &mut self,
        site: SiteId,
        half: Half,
        change: &mut dyn FnMut(&mut Vec<Line>),
    ) -> Result<(), PutError> {
        let mut lines = self.read_half(site, half)?;
        let before = lines.len();
        change(&mut lines);
        if lines.is_empty() && before == 0 {
            return Ok(());
        }
        self.write(key(site, half), &shapes::diary::write(&lines))
    }

    /// Writes a line; `was` is the half-year in which it stood before, if it did.
    ///
    /// # Errors
    /// See [`PutError`]. Killed in between, the entry is there as it was or as it is to be.
    pub fn save_line(&mut self, site: SiteId, line: &Line, was: Option<Half>) -> Result<(), PutError> {
        let half = line.half();
        self.change_half(site, half, &mut |lines| {
            lines.retain(|other| other.id() != line.id());
            lines.push(line.clone());
        })?;
        match was.filter(|was| *was != half) {
            Some(was) => self.forget_line(site, line.id(), was),
            None => Ok(()),
        }
    }

    /// Forgets that a line stood in a half-year.
    fn forget_line(&mut self, site: SiteId, id: EntryId, half: Half) -> Result<(), PutError> {
        self.change_half(site, half, &mut |lines| lines.retain(|other| other.id() != id))
    }

    /// Writes the whole diary of a site over what is there; half-years that it doesn't name stay.
    ///
    /// # Errors
    /// See [`PutError`].
    pub fn save_diary(&mut self, site: SiteId, diary: &Diary) -> Result<(), PutError> {
        for half in diary.halves() {
            self.change_half(site, half, &mut |lines| *lines = diary.half(half))?;
        }
        Ok(())
    }

    /// Takes the diary of a site away.
    pub(super) fn remove_diary(&mut self, site: SiteId) -> Result<(), ShelfError> {
        for key in slots::keys(&self.shelf, &prefix(site))? {
            self.forget(key)?;
        }
        Ok(())
    }

    /// Which half-year of which site a key that changed on the shelf belongs to, if to any.
    pub fn half_of_key(key: &str) -> Option<(SiteId, Half)> {
        half_of_key(key)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::super::cupboard::{Index, SiteFile};
    use super::super::shelf::{MemoryShelf, Stops};
    use super::*;
    use crate::quantity::Depth;
    use crate::site::demo;
    use crate::site::diary::{Entry, Removed, Told};
    use crate::site::trial::Trial;
    use chrono::NaiveDate;

    const SITE: SiteId = SiteId(1);

    fn entry(id: u64, month: u32, day: u32) -> Entry {
        let date = NaiveDate::from_ymd_opt(2026, month, day).unwrap();
        Entry { id: EntryId(id), edited: id, date, told: Told::Rain(Depth::millimetres(1.5)), note: String::new() }
    }

    fn line(entry: &Entry) -> Line {
        Line::Entry(entry.clone())
    }

    fn gone(entry: &Entry) -> Line {
        Line::Removed(Removed { id: entry.id, edited: entry.edited + 1, date: entry.date })
    }

    fn shelf_with(entries: Vec<Entry>) -> MemoryShelf {
        let shelf = MemoryShelf::with_room(1_000_000);
        let (mut cupboard, _) = Cupboard::open(&shelf).unwrap();
        let file = SiteFile { site: demo::site(), rain: None, diary: Diary::of(entries), trial: Trial::NONE };
        let index = Index { sites: vec![SITE], open: Some(SITE), ..Index::default() };
        cupboard.take_in(&[(SITE, file)], &index).unwrap();
        shelf
    }

    fn diary(shelf: &MemoryShelf) -> Diary {
        Cupboard::open(shelf).unwrap().1.sites.remove(0).1.diary
    }

    #[test]
    fn a_new_entry_rewrites_its_own_half_year_only() {
        let shelf = shelf_with(vec![entry(1, 2, 1), entry(2, 8, 1)]);
        let first = shelf.get("eavewater/diary/1/2026-1/a").unwrap();
        let (mut cupboard, _) = Cupboard::open(&shelf).unwrap();
        cupboard.save_line(SITE, &line(&entry(3, 9, 1)), None).unwrap();
        assert_eq!(shelf.get("eavewater/diary/1/2026-1/a").unwrap(), first);
        assert_eq!(shelf.get("eavewater/diary/1/2026-1/b").unwrap(), None);
        assert_eq!(diary(&shelf), Diary::of(vec![entry(1, 2, 1), entry(2, 8, 1), entry(3, 9, 1)]));
    }

    #[test]
    fn two_windows_write_in_turn_and_nothing_is_lost() {
        let shelf = shelf_with(vec![]);
        let (mut one, _) = Cupboard::open(&shelf).unwrap();
        let (mut other, _) = Cupboard::open(&shelf).unwrap();
        let all: Vec<Entry> = (1..=28).map(|day| entry(day.into(), 3, day)).collect();
        for pair in all.chunks(2) {
            one.save_line(SITE, &line(&pair[0]), None).unwrap();
            other.save_line(SITE, &line(&pair[1]), None).unwrap();
        }
        let half = Half::of(all[1].date);
        one.save_line(SITE, &gone(&all[1]), Some(half)).unwrap();
        let mut left = Diary::of(all.clone());
        left.put(gone(&all[1]));
        assert_eq!((diary(&shelf).entries().len(), diary(&shelf)), (27, left));
    }

    #[test]
    fn a_move_killed_anywhere_leaves_the_entry_once() {
        for writes in 0..4 {
            let before = entry(1, 2, 1);
            let shelf = shelf_with(vec![before.clone(), entry(2, 8, 1)]);
            let (mut cupboard, _) = Cupboard::open(Stops::after(&shelf, writes)).unwrap();
            let moved = Entry { edited: 50, ..entry(1, 9, 9) };
            let _ = cupboard.save_line(SITE, &line(&moved), Some(Half::of(before.date)));
            let found = diary(&shelf);
            let now = found.entry(EntryId(1)).unwrap();
            assert!(found.entries().len() == 2 && (*now == before || *now == moved), "after {writes} writes");
            // Taken out after that, it doesn't come back from where it stood before.
            let (mut cupboard, _) = Cupboard::open(&shelf).unwrap();
            cupboard.save_line(SITE, &gone(now), Some(Half::of(now.date))).unwrap();
            assert_eq!(diary(&shelf).entry(EntryId(1)), None);
        }
    }

    #[test]
    fn a_torn_half_year_falls_back_and_the_rest_opens() {
        let shelf = shelf_with(vec![entry(1, 2, 1), entry(2, 8, 1)]);
        let (mut cupboard, _) = Cupboard::open(&shelf).unwrap();
        cupboard.save_line(SITE, &line(&entry(3, 8, 2)), None).unwrap();
        let torn = shelf.get("eavewater/diary/1/2026-2/b").unwrap().unwrap();
        shelf.put("eavewater/diary/1/2026-2/b", &torn[..torn.len() - 7]).unwrap();
        let opened = Cupboard::open(&shelf).unwrap().1;
        assert_eq!(opened.sites[0].1.diary, Diary::of(vec![entry(1, 2, 1), entry(2, 8, 1)]));
        assert_eq!(opened.troubles, [Trouble::SetAside("set-aside/1/eavewater/diary/1/2026-2".to_owned())]);
    }

    #[test]
    fn a_removed_site_takes_its_diary_along() {
        let shelf = shelf_with(vec![entry(1, 2, 1)]);
        let (mut cupboard, _) = Cupboard::open(&shelf).unwrap();
        cupboard.remove_site(SITE).unwrap();
        assert_eq!(slots::keys(&&shelf, DIARIES).unwrap(), Vec::<String>::new());
    }

    #[test]
    fn what_is_left_of_a_lost_site_is_not_inherited() {
        let shelf = shelf_with(vec![entry(1, 2, 1)]);
        slots::remove(&&shelf, "eavewater/site/1").unwrap();
        let opened = Cupboard::open(&shelf).unwrap().1;
        assert_eq!((opened.sites.len(), opened.greatest), (0, 1));
    }

    #[test]
    fn keys_name_their_half_year() {
        let (site, half) = half_of_key("eavewater/diary/12/2026-2/a").unwrap();
        assert_eq!((site, half), (SiteId(12), Half { year: 2026, second: true }));
        assert_eq!(half_of_key("eavewater/site/12/a"), None);
    }
}

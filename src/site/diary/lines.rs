//! The lines of a diary in their order: entries and what was taken out, and how two diaries of one site come together.

use chrono::{Datelike, NaiveDate};

use super::{Entry, EntryId, Told};

/// Half a calendar year: entries are kept together by it, so that a new one doesn't rewrite ten years.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Half {
    /// The year.
    pub year: i32,
    /// Whether it is July to December.
    pub second: bool,
}

impl Half {
    /// The half in which a day lies.
    pub fn of(date: NaiveDate) -> Self {
        Half { year: date.year(), second: date.month0() >= 6 }
    }
}

/// That an entry was taken out: kept, so that it stays out where two phones come together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Removed {
    /// The identity of the entry.
    pub id: EntryId,
    /// When it was taken out, in milliseconds since 1970 (UTC); after it was last changed.
    pub edited: u64,
    /// The day that it told of.
    pub date: NaiveDate,
}

/// What is kept of an identity.
#[derive(Clone, Debug, PartialEq)]
pub enum Line {
    /// The entry.
    Entry(Entry),
    /// That there was one.
    Removed(Removed),
}

impl Line {
    /// The identity.
    pub const fn id(&self) -> EntryId {
        match self {
            Line::Entry(Entry { id, .. }) | Line::Removed(Removed { id, .. }) => *id,
        }
    }

    /// When it came to stand as it does, in milliseconds since 1970 (UTC).
    pub const fn edited(&self) -> u64 {
        match self {
            Line::Entry(Entry { edited, .. }) | Line::Removed(Removed { edited, .. }) => *edited,
        }
    }

    /// The half-year with which it is kept.
    pub fn half(&self) -> Half {
        match self {
            Line::Entry(Entry { date, .. }) | Line::Removed(Removed { date, .. }) => Half::of(*date),
        }
    }

    /// The entry, if it is one.
    pub const fn entry(&self) -> Option<&Entry> {
        match self {
            Line::Entry(entry) => Some(entry),
            Line::Removed(_) => None,
        }
    }
}

/// What merging changed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Merged {
    /// Entries that came.
    pub new: usize,
    /// Entries that were edited later elsewhere and so changed here.
    pub changed: usize,
    /// Entries that were taken out elsewhere after they were last changed here, and so went.
    pub removed: usize,
    /// Days on which rain came that have rain here too: both count.
    pub rained_twice: usize,
}

/// All entries of a site, by day and then by when they were made; each identity occurs once.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Diary {
    entries: Vec<Entry>,
    /// By identity.
    removed: Vec<Removed>,
}

impl Diary {
    /// A diary of entries in any order. Of several with one identity the last edited counts.
    pub fn of(entries: Vec<Entry>) -> Self {
        Self::of_lines(entries.into_iter().map(Line::Entry).collect())
    }

    /// A diary of lines in any order. Of several with one identity the last edited counts.
    pub fn of_lines(lines: Vec<Line>) -> Self {
        let mut diary = Diary::default();
        diary.merge(lines);
        diary
    }

    /// The entries, by day and then by when they were made.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// Its lines: the entries, and what was taken out.
    pub fn lines(&self) -> Vec<Line> {
        self.clone().into_lines().collect()
    }

    fn into_lines(self) -> impl Iterator<Item = Line> {
        self.entries.into_iter().map(Line::Entry).chain(self.removed.into_iter().map(Line::Removed))
    }

    /// Whether nothing is written in it.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// The entry of an identity.
    pub fn entry(&self, id: EntryId) -> Option<&Entry> {
        self.entries.iter().find(|entry| entry.id == id)
    }

    /// What is kept of an identity.
    pub fn line(&self, id: EntryId) -> Option<Line> {
        let removed = || Some(Line::Removed(*self.removed.iter().find(|removed| removed.id == id)?));
        self.entry(id).cloned().map(Line::Entry).or_else(removed)
    }

    /// The first identity from a moment (milliseconds since 1970) on that no entry has or had.
    pub fn free_id(&self, moment: u64) -> EntryId {
        let mut id = EntryId(moment);
        while self.line(id).is_some() {
            id.0 = id.0.saturating_add(1);
        }
        id
    }

    /// Writes a line in its place; one of the same identity goes, and is returned.
    pub fn put(&mut self, line: Line) -> Option<Line> {
        let before = self.forget(line.id());
        match line {
            Line::Entry(entry) => {
                let at = self.entries.partition_point(|other| (other.date, other.id) < (entry.date, entry.id));
                self.entries.insert(at, entry);
            }
            Line::Removed(removed) => {
                let at = self.removed.partition_point(|other| other.id < removed.id);
                self.removed.insert(at, removed);
            }
        }
        before
    }

    /// Forgets an identity, as if it had never been here.
    pub fn forget(&mut self, id: EntryId) -> Option<Line> {
        let before = self.line(id);
        self.entries.retain(|entry| entry.id != id);
        self.removed.retain(|removed| removed.id != id);
        before
    }

    /// Takes in lines of another diary of the same site: new entries, and what was changed or taken out later than here.
    /// Of several with one identity the last edited counts. Says what that changed.
    pub fn merge(&mut self, lines: Vec<Line>) -> Merged {
        let rained = |entry: &&Entry| matches!(entry.told, Told::Rain(_));
        let rained_here: Vec<NaiveDate> = self.entries.iter().filter(rained).map(|entry| entry.date).collect();
        let here = std::mem::take(self).into_lines().map(|line| (false, line));
        let mut all: Vec<(bool, Line)> = here.chain(lines.into_iter().map(|line| (true, line))).collect();
        // What is here comes after what came of the same moment.
        all.sort_by_key(|(came, line)| (line.id(), line.edited(), !came));
        let (mut merged, mut rained_there) = (Merged::default(), Vec::new());
        let (mut entries, mut removed) = (Vec::with_capacity(all.len()), Vec::new());
        let mut all = all.into_iter().peekable();
        while let Some((mut came, mut line)) = all.next() {
            let mut stood = !came && line.entry().is_some();
            while let Some(later) = all.next_if(|(_, later)| later.id() == line.id()) {
                (came, line) = later;
                stood |= !came && line.entry().is_some();
            }
            match line {
                Line::Removed(gone) => {
                    merged.removed += usize::from(stood);
                    removed.push(gone);
                }
                Line::Entry(entry) => {
                    if came && stood {
                        merged.changed += 1;
                    } else if came {
                        merged.new += 1;
                        rained_there.extend(Some(&entry).filter(rained).map(|entry| entry.date));
                    }
                    entries.push(entry);
                }
            }
        }
        rained_there.sort_unstable();
        rained_there.dedup();
        merged.rained_twice = rained_there.iter().filter(|day| rained_here.binary_search(day).is_ok()).count();
        // Those of one day stand by identity already.
        entries.sort_by_key(|entry| entry.date);
        (self.entries, self.removed) = (entries, removed);
        merged
    }

    /// The lines of one half-year.
    pub fn half(&self, half: Half) -> Vec<Line> {
        self.lines().into_iter().filter(|line| line.half() == half).collect()
    }

    /// The half-years of which something is kept, in order.
    pub fn halves(&self) -> Vec<Half> {
        let mut halves: Vec<Half> = self.lines().iter().map(Line::half).collect();
        halves.sort_unstable();
        halves.dedup();
        halves
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Depth;

    fn day(year: i32, month: u32, day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(year, month, day).unwrap_or_default()
    }

    fn rain(id: u64, date: NaiveDate, mm: f64) -> Entry {
        Entry { id: EntryId(id), edited: id, date, told: Told::Rain(Depth::millimetres(mm)), note: String::new() }
    }

    fn ids(entries: &[Entry]) -> Vec<u64> {
        entries.iter().map(|entry| entry.id.0).collect()
    }

    fn lines(entries: &[Entry]) -> Vec<Line> {
        entries.iter().cloned().map(Line::Entry).collect()
    }

    fn gone(id: u64, edited: u64) -> Line {
        Line::Removed(Removed { id: EntryId(id), edited, date: day(2026, 1, 1) })
    }

    #[test]
    fn back_dated_entries_stand_at_their_day() {
        let mut diary = Diary::default();
        for (id, date) in [(5, day(2026, 3, 1)), (6, day(2025, 12, 31)), (7, day(2026, 3, 1)), (8, day(2026, 1, 1))] {
            assert_eq!(diary.put(Line::Entry(rain(id, date, 1.0))), None);
        }
        assert_eq!(ids(diary.entries()), [6, 8, 5, 7]);
        let before = diary.put(Line::Entry(rain(7, day(2025, 1, 1), 2.0)));
        assert_eq!(before, Some(Line::Entry(rain(7, day(2026, 3, 1), 1.0))));
        assert_eq!(ids(diary.entries()), [7, 6, 8, 5]);
        assert_eq!(diary.free_id(7), EntryId(9));
        assert_eq!(diary.forget(EntryId(1)), None);
    }

    #[test]
    fn as_many_entries_of_one_identity_as_a_file_holds_are_taken_in_without_a_wait() {
        // Looking through all for each would take minutes.
        let many =
            |id: fn(u64) -> u64| (1..=300_000).map(move |n| Entry { edited: n, ..rain(id(n), day(2026, 1, 1), 1.0) });
        let mut diary = Diary::of(many(|_| 7).collect());
        assert_eq!(diary.entries().iter().map(|entry| entry.edited).collect::<Vec<_>>(), [300_000]);
        let others: Vec<Entry> = many(|n| 400_000 - n).collect();
        assert_eq!(diary.merge(lines(&others)), Merged { new: 300_000, rained_twice: 1, ..Merged::default() });
        assert!(diary.entries().is_sorted_by_key(|entry| entry.id));
    }

    #[test]
    fn halves_part_at_new_year_and_midyear() {
        let days = [day(2025, 12, 31), day(2026, 1, 1), day(2026, 6, 30), day(2026, 7, 1)];
        let diary = Diary::of((1..).zip(days).map(|(id, date)| rain(id, date, 0.0)).collect());
        let halves = diary.halves();
        assert_eq!(halves.len(), 3);
        let kept: Vec<Vec<u64>> =
            halves.iter().map(|half| diary.half(*half).iter().map(|line| line.id().0).collect()).collect();
        assert_eq!(kept, [vec![1], vec![2, 3], vec![4]]);
    }

    #[test]
    fn merging_takes_what_is_new_and_what_was_edited_later() {
        let mut here = Diary::of(vec![rain(1, day(2026, 1, 1), 1.0), rain(2, day(2026, 1, 2), 2.0)]);
        let later = Entry { edited: 90, ..rain(1, day(2026, 1, 3), 10.0) };
        let earlier = Entry { edited: 1, ..rain(2, day(2026, 1, 2), 99.0) };
        let merged = here.merge(lines(&[earlier, later.clone(), rain(3, day(2026, 1, 2), 3.0)]));
        assert_eq!(merged, Merged { new: 1, changed: 1, removed: 0, rained_twice: 1 });
        assert_eq!(ids(here.entries()), [2, 3, 1]);
        assert_eq!(here.entry(EntryId(1)), Some(&later));
        assert_eq!(here.merge(here.lines()), Merged::default());
    }

    #[test]
    fn what_was_taken_out_stays_out_unless_it_was_changed_later() {
        let both = vec![rain(1, day(2026, 1, 1), 1.0), rain(2, day(2026, 1, 2), 2.0), rain(3, day(2026, 1, 3), 3.0)];
        let there = Diary::of(both.clone());
        let mut here = there.clone();
        here.put(gone(1, 50));
        here.put(gone(2, 50));
        // The other phone changed the second afterwards.
        let later = Entry { edited: 60, ..rain(2, day(2026, 1, 2), 20.0) };
        let mut changed_there = there.clone();
        changed_there.put(Line::Entry(later.clone()));
        let mut met = here.clone();
        assert_eq!(met.merge(changed_there.lines()), Merged { new: 1, ..Merged::default() });
        assert_eq!(met.entries(), [later, both[2].clone()]);
        // There the first goes, and both phones are the same from then on.
        assert_eq!(changed_there.merge(here.lines()), Merged { removed: 1, ..Merged::default() });
        assert_eq!(changed_there, met);
        assert_eq!(met.merge(there.lines()), Merged::default(), "an old file brings nothing back");
        assert_eq!(met.free_id(1), EntryId(4), "nothing new takes the identity of what was taken out");
    }
}

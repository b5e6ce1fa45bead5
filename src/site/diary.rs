//! The diary of a site: what the household read, measured, bought, did and noted, day by day. A day without an entry is
//! unknown, never zero. Data and its order; no computing.

use chrono::{Datelike, NaiveDate};

use super::part::PartId;
use super::work::Task;
use crate::quantity::{Depth, Hours, Length, Money, Range, Share, Volume};

/// Names an entry among all entries of its site, on whatever phone it was made: milliseconds since 1970 (UTC) at which
/// it was made, or the next number that was free.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryId(pub u64);

/// One line of the diary.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Its identity, which says when it was made.
    pub id: EntryId,
    /// When it was last changed, in milliseconds since 1970 (UTC); that of its making if it never was.
    pub edited: u64,
    /// The day that it tells of.
    pub date: NaiveDate,
    /// What it tells.
    pub told: Told,
    /// What else there is to say, in the household's words; may be empty.
    pub note: String,
}

/// What an entry tells.
#[derive(Clone, Debug, PartialEq)]
pub enum Told {
    /// How much water stood in a tank or store that day.
    Level {
        /// Where it was read.
        of: Water,
        /// How it was read.
        level: Level,
        /// Hours since the reading before in which nobody drew water, within [`UNDRAWN`], if that was seen to.
        undrawn: Option<Hours>,
        /// The tanks that were joined with it when that was written, itself among them; none where nobody wrote it down:
        /// then those that are joined with it now.
        joined: Vec<PartId>,
    },
    /// Rain of the day; 0 is a dry day that was looked at.
    Rain(Depth),
    /// A water meter, as it stood: what has passed since it was put in.
    Meter {
        /// The use or pump that it measures; none for all that is drawn.
        of: Option<PartId>,
        /// Its reading.
        reading: Volume,
    },
    /// Water that was brought.
    Delivery {
        /// The tank that took it, where there are several.
        to: Option<PartId>,
        /// How much.
        volume: Volume,
        /// What it cost in all, if that was written down.
        price: Option<Money>,
    },
    /// Work that was done.
    Work {
        /// On which part; none for the whole house.
        on: Option<PartId>,
        /// What was done.
        task: Task,
    },
    /// A water test.
    Test {
        /// The part at which the sample was taken, if it was written down.
        at: Option<PartId>,
        /// What was tested for.
        parameter: Parameter,
        /// What was found.
        found: TestResult,
    },
    /// The note alone.
    Note,
}

/// What an entry is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// A level.
    Level,
    /// Rain.
    Rain,
    /// A meter.
    Meter,
    /// Water that was brought.
    Delivery,
    /// Work that was done.
    Work,
    /// A water test.
    Test,
    /// A note.
    Note,
}

impl Subject {
    /// All of them, the most usual first.
    pub const ALL: [Subject; 7] =
        [Subject::Level, Subject::Rain, Subject::Meter, Subject::Delivery, Subject::Work, Subject::Test, Subject::Note];
}

impl Told {
    /// What it is about.
    pub const fn subject(&self) -> Subject {
        match self {
            Told::Level { .. } => Subject::Level,
            Told::Rain(_) => Subject::Rain,
            Told::Meter { .. } => Subject::Meter,
            Told::Delivery { .. } => Subject::Delivery,
            Told::Work { .. } => Subject::Work,
            Told::Test { .. } => Subject::Test,
            Told::Note => Subject::Note,
        }
    }
}

/// Where a level was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Water {
    /// One tank.
    Tank(PartId),
    /// All tanks that are joined with this one.
    Store(PartId),
}

impl Water {
    /// The tank by which it is named.
    pub const fn tank(self) -> PartId {
        match self {
            Water::Tank(id) | Water::Store(id) => id,
        }
    }
}

/// A level as it was read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Level {
    /// Depth of water over the floor of the tank (of the tank that names a store).
    Depth(Length),
    /// Share of what it holds to the overflow (a store: to its lowest rim), dead storage counted.
    Share(Share),
    /// Volume in it, dead storage counted.
    Volume(Volume),
    /// Up to the overflow.
    Full,
}

/// What a water test looks for. Each has one unit in which its value is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Parameter {
    /// Escherichia coli.
    EColi,
    /// Total coliforms.
    Coliforms,
    /// Turbidity.
    Turbidity,
    /// Acidity.
    Ph,
    /// Free chlorine.
    FreeChlorine,
    /// Lead.
    Lead,
    /// Copper.
    Copper,
    /// Zinc.
    Zinc,
    /// Cadmium.
    Cadmium,
    /// Arsenic.
    Arsenic,
    /// Chromium, all of it.
    Chromium,
    /// Iron.
    Iron,
    /// Manganese.
    Manganese,
    /// Aluminium.
    Aluminium,
    /// Benzo(a)pyrene, of soot and tar.
    Benzopyrene,
    /// Asbestos fibres longer than 10 µm, in millions.
    Asbestos,
    /// Nitrate, as nitrate.
    Nitrate,
    /// Electrical conductivity.
    Conductivity,
    /// Transmittance of ultraviolet light (254 nm, 1 cm).
    Transmittance,
    /// Something else, which the note names.
    Other,
}

impl Parameter {
    /// All of them.
    pub const ALL: [Parameter; 20] = [
        Parameter::EColi,
        Parameter::Coliforms,
        Parameter::Turbidity,
        Parameter::Ph,
        Parameter::FreeChlorine,
        Parameter::Lead,
        Parameter::Copper,
        Parameter::Zinc,
        Parameter::Cadmium,
        Parameter::Arsenic,
        Parameter::Chromium,
        Parameter::Iron,
        Parameter::Manganese,
        Parameter::Aluminium,
        Parameter::Benzopyrene,
        Parameter::Asbestos,
        Parameter::Nitrate,
        Parameter::Conductivity,
        Parameter::Transmittance,
        Parameter::Other,
    ];

    /// Whether boiling leaves it in the water, and more of it in less water.
    pub const fn stays_when_boiled(self) -> bool {
        self.is_metal() || matches!(self, Parameter::Benzopyrene | Parameter::Asbestos | Parameter::Nitrate)
    }

    /// Whether it is a metal, or arsenic, which is guarded against as metals are.
    pub const fn is_metal(self) -> bool {
        matches!(
            self,
            Parameter::Lead
                | Parameter::Copper
                | Parameter::Zinc
                | Parameter::Cadmium
                | Parameter::Arsenic
                | Parameter::Chromium
                | Parameter::Iron
                | Parameter::Manganese
                | Parameter::Aluminium
        )
    }

    /// The unit in which its value is kept and shown: the one that reports of laboratories use.
    pub const fn unit(self) -> &'static str {
        match self {
            Parameter::EColi | Parameter::Coliforms => "in 100 mL",
            Parameter::Turbidity => "NTU",
            Parameter::Ph | Parameter::Other => "",
            Parameter::FreeChlorine | Parameter::Nitrate => "mg/L",
            Parameter::Lead
            | Parameter::Copper
            | Parameter::Zinc
            | Parameter::Cadmium
            | Parameter::Arsenic
            | Parameter::Chromium
            | Parameter::Iron
            | Parameter::Manganese
            | Parameter::Aluminium
            | Parameter::Benzopyrene => "µg/L",
            Parameter::Asbestos => "million/L",
            Parameter::Conductivity => "µS/cm",
            Parameter::Transmittance => "%",
        }
    }
}

/// What a test found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TestResult {
    /// A value in the parameter's unit, 0 or more.
    Value(f64),
    /// Less than the least that the test can tell, in the parameter's unit.
    Below(f64),
    /// Present, without a number.
    Present,
    /// Absent.
    Absent,
}

/// Rain of a day, in mm: none was ever measured above 1,825 mm (World Meteorological Organization, archive of weather
/// extremes: Foc-Foc, 1966).
pub const DAY_RAIN: Range = Range::new(0.0, 1825.0);
/// What a meter may read, in L.
pub const METER: Range = Range::new(0.0, 1e10);
/// What a delivery may bring, in L.
pub const DELIVERY: Range = Range::new(0.1, 1_000_000.0);
/// A depth in a tank, in m.
pub const LEVEL_DEPTH: Range = Range::new(0.0, 30.0);
/// A volume in tanks, in L.
pub const LEVEL_VOLUME: Range = Range::new(0.0, 10_000_000.0);
/// Hours between two readings in which nobody drew water: an hour to a hundred days.
pub const UNDRAWN: Range = Range::new(1.0, 2400.0);
/// What a test may find, in its unit.
pub const FOUND: Range = Range::new(0.0, 1e6);
/// The years that a diary may tell of: those of gauges and of people now alive, with room.
pub const YEARS: std::ops::RangeInclusive<i32> = 1800..=2300;
/// The greatest identity and moment: whole numbers up to here are the same in every program that reads JSON.
pub const LAST_MOMENT: u64 = 1 << 53;
/// The most bytes that a note keeps.
pub const LONGEST_NOTE: usize = 2000;

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

/// What merging changed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Merged {
    /// Entries that came.
    pub new: usize,
    /// Entries that were edited later elsewhere and so changed here.
    pub changed: usize,
    /// Days on which rain came that have rain here too: both count.
    pub rained_twice: usize,
}

/// Sorts entries.
fn order(entries: &mut [Entry], key: fn(&Entry) -> (u64, u64)) {
    entries.sort_by_key(key);
}

/// Puts an entry last, or in the place of the last where that has its identity. Says whether it is one more.
fn push(entries: &mut Vec<Entry>, entry: Entry) -> bool {
    if let Some(last) = entries.last_mut().filter(|last| last.id == entry.id) {
        *last = entry;
        return false;
    }
    entries.push(entry);
    true
}

/// All entries of a site, by day and then by when they were made; each identity occurs once.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Diary {
    entries: Vec<Entry>,
}

impl Diary {
    /// A diary of entries in any order. Of several with one identity the last edited counts.
    pub fn of(entries: Vec<Entry>) -> Self {
        let mut diary = Diary::default();
        diary.merge(entries);
        diary
    }

    /// The entries, by day and then by when they were made.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// Whether nothing is written in it.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }

    /// The entry of an identity.
    pub fn entry(&self, id: EntryId) -> Option<&Entry> {
        self.entries.iter().find(|entry| entry.id == id)
    }

    /// The first identity from a moment (milliseconds since 1970) on that no entry has.
    pub fn free_id(&self, moment: u64) -> EntryId {
        let mut id = EntryId(moment);
        while self.entry(id).is_some() {
            id.0 = id.0.saturating_add(1);
        }
        id
    }

    /// Writes an entry in its place; one of the same identity goes, and is returned.
    pub fn put(&mut self, entry: Entry) -> Option<Entry> {
        let before = self.remove(entry.id);
        self.insert(entry);
        before
    }

    fn insert(&mut self, entry: Entry) {
        let at = self.entries.partition_point(|other| (other.date, other.id) < (entry.date, entry.id));
        self.entries.insert(at, entry);
    }

    /// Takes an entry out.
    pub fn remove(&mut self, id: EntryId) -> Option<Entry> {
        let at = self.entries.iter().position(|entry| entry.id == id)?;
        Some(self.entries.remove(at))
    }

    /// Takes in entries of another diary of the same site: new ones, and those that were edited later than the ones
    /// here. Of several with one identity the last edited counts. Says what that changed.
    pub fn merge(&mut self, mut entries: Vec<Entry>) -> Merged {
        let mut merged = Merged::default();
        let mut here = std::mem::take(&mut self.entries);
        let rained = |entry: &&Entry| matches!(entry.told, Told::Rain(_));
        let rained_here: Vec<NaiveDate> = here.iter().filter(rained).map(|entry| entry.date).collect();
        order(&mut here, |entry| (entry.id.0, 0));
        order(&mut entries, |entry| (entry.id.0, entry.edited));
        let is_new = |entry: &&Entry| here.binary_search_by_key(&entry.id, |own| own.id).is_err();
        let mut rained_there: Vec<NaiveDate> =
            entries.iter().filter(rained).filter(is_new).map(|entry| entry.date).collect();
        rained_there.sort_unstable();
        rained_there.dedup();
        merged.rained_twice = rained_there.iter().filter(|day| rained_here.binary_search(day).is_ok()).count();
        let mut coming = entries.into_iter().peekable();
        let mut all = Vec::with_capacity(here.len());
        for mut entry in here {
            while let Some(other) = coming.next_if(|other| other.id <= entry.id) {
                if other.id < entry.id {
                    merged.new += usize::from(push(&mut all, other));
                } else if entry.edited < other.edited {
                    merged.changed += 1;
                    entry = other;
                }
            }
            all.push(entry);
        }
        for other in coming {
            merged.new += usize::from(push(&mut all, other));
        }
        order(&mut all, |entry| {
            let day = i64::from(entry.date.num_days_from_ce()) - i64::from(i32::MIN);
            (day.unsigned_abs(), entry.id.0)
        });
        self.entries = all;
        merged
    }

    /// The entries of one half-year.
    pub fn half(&self, half: Half) -> &[Entry] {
        let from = self.entries.partition_point(|entry| Half::of(entry.date) < half);
        let to = self.entries.partition_point(|entry| Half::of(entry.date) <= half);
        &self.entries[from..to]
    }

    /// The half-years in which something is written, in order.
    pub fn halves(&self) -> Vec<Half> {
        let mut halves: Vec<Half> = Vec::new();
        for entry in &self.entries {
            let half = Half::of(entry.date);
            if halves.last() != Some(&half) {
                halves.push(half);
            }
        }
        halves
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(year: i32, month: u32, day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(year, month, day).unwrap_or_default()
    }

    fn rain(id: u64, date: NaiveDate, mm: f64) -> Entry {
        Entry { id: EntryId(id), edited: id, date, told: Told::Rain(Depth::millimetres(mm)), note: String::new() }
    }

    fn ids(entries: &[Entry]) -> Vec<u64> {
        entries.iter().map(|entry| entry.id.0).collect()
    }

    #[test]
    fn back_dated_entries_stand_at_their_day() {
        let mut diary = Diary::default();
        for (id, date) in [(5, day(2026, 3, 1)), (6, day(2025, 12, 31)), (7, day(2026, 3, 1)), (8, day(2026, 1, 1))] {
            assert_eq!(diary.put(rain(id, date, 1.0)), None);
        }
        assert_eq!(ids(diary.entries()), [6, 8, 5, 7]);
        assert_eq!(diary.put(rain(7, day(2025, 1, 1), 2.0)).map(|before| before.date), Some(day(2026, 3, 1)));
        assert_eq!(ids(diary.entries()), [7, 6, 8, 5]);
        assert_eq!(diary.free_id(7), EntryId(9));
        assert_eq!(diary.remove(EntryId(1)), None);
    }

    #[test]
    fn as_many_entries_of_one_identity_as_a_file_holds_are_taken_in_without_a_wait() {
        // Looking through all for each would take minutes.
        let many =
            |id: fn(u64) -> u64| (1..=300_000).map(move |n| Entry { edited: n, ..rain(id(n), day(2026, 1, 1), 1.0) });
        let mut diary = Diary::of(many(|_| 7).collect());
        assert_eq!(diary.entries().iter().map(|entry| entry.edited).collect::<Vec<_>>(), [300_000]);
        assert_eq!(diary.merge(many(|n| 400_000 - n).collect()), Merged { new: 300_000, changed: 0, rained_twice: 1 });
        assert!(diary.entries().is_sorted_by_key(|entry| entry.id));
    }

    #[test]
    fn halves_part_at_new_year_and_midyear() {
        let days = [day(2025, 12, 31), day(2026, 1, 1), day(2026, 6, 30), day(2026, 7, 1)];
        let diary = Diary::of((1..).zip(days).map(|(id, date)| rain(id, date, 0.0)).collect());
        let halves = diary.halves();
        assert_eq!(halves.len(), 3);
        let kept: Vec<Vec<u64>> = halves.iter().map(|half| ids(diary.half(*half))).collect();
        assert_eq!(kept, [vec![1], vec![2, 3], vec![4]]);
    }

    #[test]
    fn merging_takes_what_is_new_and_what_was_edited_later() {
        let mut here = Diary::of(vec![rain(1, day(2026, 1, 1), 1.0), rain(2, day(2026, 1, 2), 2.0)]);
        let later = Entry { edited: 90, ..rain(1, day(2026, 1, 3), 10.0) };
        let earlier = Entry { edited: 1, ..rain(2, day(2026, 1, 2), 99.0) };
        let merged = here.merge(vec![earlier, later.clone(), rain(3, day(2026, 1, 2), 3.0)]);
        assert_eq!(merged, Merged { new: 1, changed: 1, rained_twice: 1 });
        assert_eq!(ids(here.entries()), [2, 3, 1]);
        assert_eq!(here.entry(EntryId(1)), Some(&later));
        assert_eq!(here.merge(here.entries().to_vec()), Merged::default());
    }
}

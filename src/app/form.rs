//! An entry of the diary while it is being filled in.

use chrono::NaiveDate;

use super::draft::Draft;
use super::model::KeptSite;
use crate::engine::treatment::results::number;
use crate::quantity::{Depth, Hours, Kind, Length, Money, Range, Share, Units, Volume, shown, typed};
use crate::site::diary::{
    DAY_RAIN, DELIVERY, Diary, Entry, EntryId, LEVEL_DEPTH, LEVEL_VOLUME, LONGEST_NOTE, Level, METER, Parameter,
    Subject, TestResult, Told, UNDRAWN, Water, YEARS,
};
use crate::site::part::PartId;
use crate::site::work::Task;
use crate::words;

/// How a level is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LevelBy {
    /// By its depth.
    Depth,
    /// By the share.
    Share,
    /// By the volume.
    Volume,
    /// Full to the overflow.
    Full,
}

impl LevelBy {
    /// All ways.
    pub const ALL: [LevelBy; 4] = [LevelBy::Depth, LevelBy::Share, LevelBy::Volume, LevelBy::Full];
}

/// How a test's result is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FoundBy {
    /// A value.
    Value,
    /// Less than a value.
    Below,
    /// Present.
    Present,
    /// Absent.
    Absent,
}

impl FoundBy {
    /// All ways.
    pub const ALL: [FoundBy; 4] = [FoundBy::Value, FoundBy::Below, FoundBy::Absent, FoundBy::Present];

    /// Whether a result of that parameter can be given so.
    pub fn fits(self, parameter: Parameter) -> bool {
        matches!(self, FoundBy::Value | FoundBy::Below) || parameter.may_be_present()
    }
}

/// An entry as it is being filled in: what is typed stays text until it is written.
#[derive(Clone, Debug, PartialEq)]
pub struct Form {
    /// The entry that is being changed; none for a new one.
    pub id: Option<EntryId>,
    /// What it is about.
    pub subject: Subject,
    /// The day that it tells of.
    pub date: NaiveDate,
    /// The number as typed.
    pub text: String,
    /// The price as typed.
    pub price: String,
    /// The part that it is about, if one is.
    pub part: Option<PartId>,
    /// Whether a level is of all tanks joined with that one.
    pub whole_store: bool,
    /// How a level is read.
    pub by: LevelBy,
    /// Hours before it without any draw as typed; blank where that was not seen to.
    pub undrawn: String,
    /// What was done.
    pub task: Task,
    /// What was tested for.
    pub parameter: Parameter,
    /// How its result is given.
    pub found: FoundBy,
    /// What else there is to say.
    pub note: String,
}

/// A price may be so much.
const PRICE: Range = Range::new(0.0, 1e9);
/// A share of what a tank holds.
const SHARE: Range = Range::new(0.0, 2.0);

impl Form {
    /// An empty form for today. A level is asked for where and how it was read last.
    pub fn new(subject: Subject, today: NaiveDate, kept: &KeptSite) -> Self {
        let mut form = Form {
            id: None,
            subject,
            date: today,
            text: String::new(),
            price: String::new(),
            part: None,
            whole_store: false,
            by: LevelBy::Depth,
            undrawn: String::new(),
            task: Task::Gutter,
            parameter: Parameter::EColi,
            found: FoundBy::Value,
            note: String::new(),
        };
        if subject == Subject::Level {
            let there = |of: Water| kept.site.system.tank(of.tank()).is_some();
            let last = kept.diary.entries().iter().rev().find_map(|entry| match entry.told {
                Told::Level { of, level, .. } if there(of) => Some((of, level)),
                _ => None,
            });
            form.part = last.map(|(of, _)| of.tank()).or(kept.site.system.tanks.first().map(|tank| tank.id));
            if let Some((of, level)) = last {
                form.take_level(of, level);
            }
            if form.by == LevelBy::Full {
                form.by = by_before(&kept.diary, form.part).unwrap_or(LevelBy::Depth);
            }
        }
        form
    }

    /// The form of an entry that is to be changed.
    pub fn of(entry: &Entry, units: &Units, kept: &KeptSite) -> Self {
        let mut form = Form { part: None, ..Form::new(entry.told.subject(), entry.date, kept) };
        form.id = Some(entry.id);
        form.note.clone_from(&entry.note);
        match &entry.told {
            Told::Level { of, level, undrawn, .. } => {
                form.take_level(*of, *level);
                form.undrawn =
                    undrawn.map_or_else(String::new, |hours| shown::entered(hours.get(), Kind::Hours, units));
            }
            Told::Meter { of, .. } => form.part = *of,
            Told::Delivery { to, price, .. } => {
                form.part = *to;
                form.price = price.map_or_else(String::new, |price| shown::entered(price.get(), Kind::Money, units));
            }
            Told::Work { on, task } => (form.part, form.task) = (*on, *task),
            Told::Test { at, parameter, found } => {
                (form.part, form.parameter) = (*at, *parameter);
                form.found = match *found {
                    TestResult::Value(_) => FoundBy::Value,
                    TestResult::Below(_) => FoundBy::Below,
                    TestResult::Present => FoundBy::Present,
                    TestResult::Absent => FoundBy::Absent,
                };
            }
            Told::Rain(_) | Told::Note => {}
        }
        if let (Some(value), Some((kind, _))) = (number_of(&entry.told), form.number()) {
            form.text = match entry.told {
                Told::Meter { .. } => bare(&shown::metered(value, units), kind, units),
                _ => digits(value, kind, units),
            };
        }
        form
    }

    /// Turns to another part; a level is asked for as that tank was read last.
    pub fn turn_to(&mut self, part: Option<PartId>, diary: &Diary) {
        self.part = part;
        if self.subject == Subject::Level
            && let Some(by) = by_before(diary, part)
        {
            self.by = by;
        }
    }

    fn take_level(&mut self, of: Water, level: Level) {
        self.part = Some(of.tank());
        self.whole_store = matches!(of, Water::Store(_));
        self.by = level_by(level);
    }

    /// The kind of the number that is asked for and what it may be; none where no number is.
    pub fn number(&self) -> Option<(Kind, Range)> {
        match self.subject {
            Subject::Level => match self.by {
                LevelBy::Depth => Some((Kind::Length, LEVEL_DEPTH)),
                LevelBy::Share => Some((Kind::Share, SHARE)),
                LevelBy::Volume => Some((Kind::Volume, LEVEL_VOLUME)),
                LevelBy::Full => None,
            },
            Subject::Rain => Some((Kind::Depth, DAY_RAIN)),
            Subject::Meter => Some((Kind::Volume, METER)),
            Subject::Delivery => Some((Kind::Volume, DELIVERY)),
            Subject::Test if matches!(self.found_by(), FoundBy::Value | FoundBy::Below) => {
                Some((Kind::Count, self.parameter.range()))
            }
            Subject::Work | Subject::Test | Subject::Note => None,
        }
    }

    /// How the result is given: present or absent only where that says something.
    pub fn found_by(&self) -> FoundBy {
        if self.found.fits(self.parameter) { self.found } else { FoundBy::Value }
    }

    /// Whether other tanks are joined with the one that it names.
    pub fn is_joined(&self, kept: &KeptSite) -> bool {
        let mut stores = kept.site.system.stores().into_iter().filter(|store| store.len() > 1);
        stores.any(|store| self.part.is_some_and(|tank| store.contains(&tank)))
    }

    /// The number that is asked for with what it may be here: water doesn't stand much over the rim of its tank.
    fn number_here(&self, kept: &KeptSite) -> Option<(Kind, Range)> {
        /// The height of a tank may have been entered a little too low.
        const WITHIN: f64 = 1.1;
        let (kind, range) = self.number()?;
        let tank = self.part.and_then(|tank| kept.site.system.tank(tank)).filter(|_| self.by == LevelBy::Depth);
        let greatest = tank.filter(|_| self.subject == Subject::Level).map(|tank| tank.shape.height() * WITHIN);
        Some((kind, greatest.map_or(range, |greatest| Range::new(range.least, range.greatest.min(greatest)))))
    }

    /// The number that a depth too large for its tank may have been meant as: a dipstick has centimetres on it.
    pub fn meant(&self, units: &Units, kept: &KeptSite) -> Option<String> {
        let (kind, range) = self.number_here(kept).filter(|(kind, _)| *kind == Kind::Length)?;
        let holds = |text: &str| typed::quantity(text, kind, units).ok().map(|read| range.holds(read.si));
        let in_cm = [self.text.trim(), "\u{a0}cm"].concat();
        (holds(&self.text) == Some(false) && holds(&in_cm) == Some(true)).then_some(in_cm)
    }

    /// What would be written.
    ///
    /// # Errors
    /// A sentence that says what is lacking or wrong.
    pub fn draft(&self, units: &Units, kept: &KeptSite) -> Result<Draft, String> {
        if !YEARS.contains(&chrono::Datelike::year(&self.date)) {
            return Err(words::diary::no_such_day(self.date));
        }
        // A number that nobody touched stays what it is, however it is rounded where it is shown.
        let before = self.id.and_then(|id| kept.diary.entry(id));
        let untouched = before.filter(|entry| {
            let form = Form::of(entry, units, kept);
            form.text == self.text && form.number() == self.number()
        });
        let value = match self.number_here(kept) {
            Some((kind, range)) => match untouched.and_then(|entry| number_of(&entry.told)) {
                Some(value) => value,
                None => self.read(&self.text, kind, range, units)?,
            },
            None => 0.0,
        };
        let told = match self.subject {
            Subject::Level => {
                let tank = self.part.ok_or_else(|| words::diary::NO_TANK.to_owned())?;
                let whole = self.whole_store && self.is_joined(kept);
                let of = if whole { Water::Store(tank) } else { Water::Tank(tank) };
                let level = match self.by {
                    LevelBy::Depth => Level::Depth(Length::metres(value)),
                    LevelBy::Share => Level::Share(Share::of_one(value)),
                    LevelBy::Volume => Level::Volume(Volume::litres(value)),
                    LevelBy::Full => Level::Full,
                };
                let undrawn = match self.undrawn.trim() {
                    "" => None,
                    text => Some(Hours::from_hours(self.read(text, Kind::Hours, UNDRAWN, units)?)),
                };
                // Which tanks are joined is looked at when it is written.
                Told::Level { of, level, undrawn, joined: Vec::new() }
            }
            Subject::Rain => Told::Rain(Depth::millimetres(value)),
            Subject::Meter => Told::Meter { of: self.part, reading: Volume::litres(value) },
            Subject::Delivery => {
                let price = if self.price.trim().is_empty() {
                    None
                } else {
                    Some(Money::coins(self.read(&self.price, Kind::Money, PRICE, units)?))
                };
                Told::Delivery { to: self.part, volume: Volume::litres(value), price }
            }
            Subject::Work => Told::Work { on: self.part, task: self.task },
            Subject::Test => {
                let found = match self.found_by() {
                    FoundBy::Value => TestResult::Value(value),
                    FoundBy::Below => TestResult::Below(value),
                    FoundBy::Present => TestResult::Present,
                    FoundBy::Absent => TestResult::Absent,
                };
                Told::Test { at: self.part, parameter: self.parameter, found }
            }
            Subject::Note if self.note.trim().is_empty() => return Err(words::diary::EMPTY_NOTE.to_owned()),
            Subject::Note => Told::Note,
        };
        if self.note.trim().len() > LONGEST_NOTE {
            return Err(words::diary::LONG_NOTE.to_owned());
        }
        Ok(Draft { id: self.id, date: self.date, told, note: self.note.clone() })
    }

    fn read(&self, text: &str, kind: Kind, range: Range, units: &Units) -> Result<f64, String> {
        let read = typed::quantity(text, kind, units).map_err(|error| words::errors::typed(&error))?;
        if range.holds(read.si) {
            return Ok(read.si);
        }
        Err(words::diary::out_of_range(kind, range, units))
    }
}

/// The number of an entry as it is kept; none where it has none.
fn number_of(told: &Told) -> Option<f64> {
    match *told {
        Told::Level { level: Level::Depth(depth), .. } => Some(depth.get()),
        Told::Level { level: Level::Share(share), .. } => Some(share.get()),
        Told::Level { level: Level::Volume(volume), .. }
        | Told::Meter { reading: volume, .. }
        | Told::Delivery { volume, .. } => Some(volume.get()),
        Told::Rain(depth) => Some(depth.get()),
        Told::Test { found, .. } => number(found),
        Told::Level { level: Level::Full, .. } | Told::Work { .. } | Told::Note => None,
    }
}

/// A value as the pad types it: without the unit that stands beside it.
fn digits(si: f64, kind: Kind, units: &Units) -> String {
    bare(&shown::entered(si, kind, units), kind, units)
}

fn bare(text: &str, kind: Kind, units: &Units) -> String {
    text.strip_suffix(units.of(kind).sign()).map_or(text, str::trim_end).to_owned()
}

fn level_by(level: Level) -> LevelBy {
    match level {
        Level::Depth(_) => LevelBy::Depth,
        Level::Share(_) => LevelBy::Share,
        Level::Volume(_) => LevelBy::Volume,
        Level::Full => LevelBy::Full,
    }
}

/// How a tank was read last, but for when it was just full; `None` where it never was.
fn by_before(diary: &Diary, tank: Option<PartId>) -> Option<LevelBy> {
    let mut by = diary.entries().iter().rev().filter_map(|entry| match entry.told {
        Told::Level { of, level, .. } if Some(of.tank()) == tank => Some(level_by(level)),
        _ => None,
    });
    by.find(|by| *by != LevelBy::Full)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::app::event::Event;
    use crate::app::model::Model;
    use crate::app::update::update;
    use crate::quantity::Customary;

    #[test]
    fn a_depth_over_the_rim_is_refused_and_centimetres_are_offered() {
        let read = |text: &str| {
            let units = Units::customary(Customary::Metric);
            let mut model = Model { started: true, ..Model::default() };
            update(&mut model, Event::DemoWanted);
            let kept = model.site()?;
            let tank = kept.site.system.tanks.first()?;
            assert!((1.5..3.0).contains(&tank.shape.height()), "{}", tank.shape.height());
            let mut form = Form::new(Subject::Level, NaiveDate::default(), kept);
            (form.part, form.by, form.text) = (Some(tank.id), LevelBy::Depth, text.to_owned());
            Some((form.draft(&units, kept).is_ok(), form.meant(&units, kept)))
        };
        assert_eq!(read("135"), Some((false, Some("135\u{a0}cm".to_owned()))));
        assert_eq!(read("25"), Some((false, Some("25\u{a0}cm".to_owned()))), "no tank is so deep");
        assert_eq!(read("135\u{a0}cm"), Some((true, None)));
        assert_eq!(read("1.35"), Some((true, None)));
        assert_eq!(read("135000"), Some((false, None)));
        assert_eq!(read("135 m"), Some((false, None)));
    }

    #[test]
    fn a_number_that_nobody_touched_stays_what_it_is() {
        let mut model = Model { started: true, ..Model::default() };
        update(&mut model, Event::DemoWanted);
        let tank = model.site().and_then(|kept| kept.site.system.tanks.first()).map(|tank| tank.id);
        let of = Water::Tank(tank.unwrap_or(PartId(1)));
        let level = |level| Told::Level { of, level, undrawn: None, joined: Vec::new() };
        for told in [
            level(Level::Depth(Length::metres(1.2))),
            level(Level::Volume(Volume::litres(1_234.567_8))),
            Told::Rain(Depth::millimetres(33.3)),
            Told::Meter { of: None, reading: Volume::litres(1_234_567.0) },
            Told::Delivery { to: None, volume: Volume::litres(2000.0), price: None },
            Told::Test { at: None, parameter: Parameter::Lead, found: TestResult::Below(2.123_456_7) },
        ] {
            for set in Customary::ALL {
                let units = Units::customary(set);
                let draft = Draft { id: None, date: NaiveDate::default(), told: told.clone(), note: String::new() };
                update(&mut model, Event::EntryWritten(draft, 7));
                let kept = model.site().unwrap();
                let entry = kept.diary.entries().last().unwrap();
                let form = Form { note: "only a note".to_owned(), ..Form::of(entry, &units, kept) };
                let again = form.draft(&units, kept).map(|draft| number_of(&draft.told));
                assert_eq!(again, Ok(number_of(&told)), "{set:?}");
                // What was typed anew counts.
                let typed = Form { text: "0.5".to_owned(), ..form };
                assert_ne!(typed.draft(&units, kept).map(|draft| number_of(&draft.told)), Ok(number_of(&told)));
                let id = entry.id;
                update(&mut model, Event::EntryRemoved(id, 0));
            }
        }
    }

    #[test]
    fn a_number_that_is_changed_is_what_the_pad_types() {
        for set in Customary::ALL {
            let units = Units::customary(set);
            for (si, kind) in [
                (1.524, Kind::Length),
                (0.35, Kind::Share),
                (4000.0, Kind::Volume),
                (25.4, Kind::Depth),
                (0.0, Kind::Depth),
            ] {
                let text = digits(si, kind, &units);
                assert!(text.chars().all(|sign| sign.is_ascii_digit() || ".,".contains(sign)), "{text}");
                let read = typed::quantity(&text, kind, &units).map(|read| read.si);
                assert!(read.as_ref().is_ok_and(|read| (read - si).abs() <= 1e-3 * si), "{text}: {read:?}");
            }
        }
    }
}

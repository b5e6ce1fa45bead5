//! The diary of a site: what the household read, measured, bought, did and noted, day by day. A day without an entry is
//! unknown, never zero. Data and its order; no computing.

mod lines;

use chrono::NaiveDate;

use super::part::PartId;
use super::work::Task;
pub use lines::{Diary, Half, Line, Merged, Removed};

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

    /// The part that it is about, if it is about one.
    pub const fn part(&self) -> Option<PartId> {
        match self {
            Told::Level { of, .. } => Some(of.tank()),
            Told::Meter { of: part, .. }
            | Told::Delivery { to: part, .. }
            | Told::Work { on: part, .. }
            | Told::Test { at: part, .. } => *part,
            Told::Rain(_) | Told::Note => None,
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

    /// What it may be, in its unit.
    pub const fn range(self) -> Range {
        match self {
            Parameter::Ph => Range::new(0.0, 14.0),
            Parameter::Transmittance => Range::new(0.0, 100.0),
            _ => FOUND,
        }
    }

    /// Whether a test may tell only that it is there or not.
    pub const fn may_be_present(self) -> bool {
        matches!(self, Parameter::EColi | Parameter::Coliforms | Parameter::Other)
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

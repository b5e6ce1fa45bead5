//! What was found in a rain file: every figure that a person should see before anything is kept.

use chrono::NaiveDate;

use super::rain_unit::RainUnit;

/// The account of an import. Whatever was refused, changed or doubted stands in `notices`; nothing else was.
#[derive(Clone, Debug, PartialEq)]
pub struct Report {
    /// Rows with a date that was understood, missing days among them.
    pub rows_read: usize,
    /// The first and the last day.
    pub span: DaySpan,
    /// Days of the span that have a depth.
    pub measured_days: usize,
    /// Days of the span that have none.
    pub missing_days: usize,
    /// Lines that were comments (`#`).
    pub comment_lines: usize,
    /// Everything worth saying, in the order of the variants.
    pub notices: Vec<Notice>,
}

/// One thing worth saying about a rain file.
#[derive(Clone, Debug, PartialEq)]
pub enum Notice {
    /// Lines above the table and its header were passed over.
    LinesAboveTable {
        /// How many.
        lines: usize,
    },
    /// Rows that could not be understood were left out.
    RowsUnreadable(Occasions<UnreadableRow>),
    /// Dates such as 3/4/2001 leave open which number is the day, and the numbers alone did not decide it.
    DateOrderAssumed {
        /// How they were read.
        order: DateOrder,
        /// What that rests on.
        basis: OrderBasis,
    },
    /// The file does not say its unit; this one was assumed.
    UnitAssumed {
        /// The unit.
        unit: RainUnit,
        /// Mean of the rain days (above 0) as written; 0 if there are none.
        mean_rain_day: f64,
    },
    /// Rows of several times of a day: their depths were added up to days.
    AddedUp {
        /// How many.
        rows: usize,
    },
    /// Rows that say that nothing was measured.
    MarkedMissing(Occasions<NaiveDate>),
    /// Days without a depth within the span, for whatever reason.
    Gaps {
        /// How many runs of missing days.
        gaps: usize,
        /// How many missing days in all.
        days: usize,
        /// The longest run, the earliest if several.
        longest: DaySpan,
    },
    /// Dates given more than once with the same depth; taken once.
    RepeatedDates(Occasions<NaiveDate>),
    /// Dates given again with another depth; the first measured depth was kept.
    ConflictingDates(Occasions<Conflict>),
    /// Rain too small to measure; counted as 0 mm.
    Traces(Occasions<NaiveDate>),
    /// Zeros which the publisher presumed where nothing was reported (GHCN-Daily flag P); kept as published.
    PresumedZero(Occasions<NaiveDate>),
    /// Depths under zero; treated as missing.
    Negative(Occasions<DayDepth>),
    /// Depths that failed the publisher's quality checks; treated as missing.
    QualityFlagged(Occasions<FlaggedDepth>),
    /// Totals of several days; nobody knows on which of them the rain fell, so days without a depth stay missing.
    MultiDayTotals(Occasions<MultiDayTotal>),
    /// Depths above what has ever been measured in a day; treated as missing.
    BeyondWorldRecord(Occasions<DayDepth>),
    /// Days with far more rain than any other of the record. Kept as written.
    FarAboveOthers {
        /// The days.
        days: Occasions<DayDepth>,
        /// The wettest other day, in mm.
        next_mm: f64,
    },
    /// A mean year outside what is found on Earth: the unit looks wrong.
    AnnualTotalUnlikely {
        /// Mean measured day times the days of a mean year, in mm.
        mean_mm: f64,
    },
    /// A run of zeros that the rest of the record makes very unlikely: perhaps days without a measurement.
    /// Kept as written.
    UnlikelyDryRun {
        /// Its days.
        span: DaySpan,
        /// Its chance, 0 to 1, if the other years are a guide.
        chance: f64,
    },
    /// Rain on so many days and so little of it that it was hardly measured by a gauge. Kept as written.
    Drizzle {
        /// Share of measured days with any rain, 0 to 1.
        rain_days: f64,
        /// Share of those days under 1 mm, 0 to 1.
        under_1_mm: f64,
    },
}

/// How often something happened, and the first few times.
#[derive(Clone, Debug, PartialEq)]
pub struct Occasions<T> {
    /// How often.
    pub count: usize,
    /// The first few, at most `FIRST_FEW`.
    pub first: Vec<T>,
}

/// How many occasions are kept to be shown.
pub const FIRST_FEW: usize = 5;

impl<T> Occasions<T> {
    /// None yet.
    pub fn new() -> Occasions<T> {
        Occasions { count: 0, first: Vec::new() }
    }

    /// One more.
    pub fn add(&mut self, occasion: T) {
        self.count += 1;
        if self.first.len() < FIRST_FEW {
            self.first.push(occasion);
        }
    }
}

impl<T> Default for Occasions<T> {
    fn default() -> Self {
        Occasions::new()
    }
}

/// Days from `first` to `last`, both included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DaySpan {
    /// The first day.
    pub first: NaiveDate,
    /// The last day, not before the first.
    pub last: NaiveDate,
}

impl DaySpan {
    /// How many days.
    pub fn days(&self) -> i64 {
        (self.last - self.first).num_days() + 1
    }
}

/// A depth on a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DayDepth {
    /// The day.
    pub date: NaiveDate,
    /// The depth in mm.
    pub depth_mm: f64,
}

/// A depth that failed a quality check of its publisher.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlaggedDepth {
    /// The day.
    pub date: NaiveDate,
    /// The depth in mm, `None` for a trace or a missing one.
    pub depth_mm: Option<f64>,
    /// The publisher's flag.
    pub flag: char,
}

/// Two different depths for one day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conflict {
    /// The day.
    pub date: NaiveDate,
    /// The depth that was kept, in mm.
    pub kept_mm: f64,
    /// The depth that was not, in mm; `None` where one row said that nothing was measured.
    pub refused_mm: Option<f64>,
}

/// A total over several days.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MultiDayTotal {
    /// The day on which it was read.
    pub read_on: NaiveDate,
    /// How many days it covers, that one included; `None` if the file doesn't say.
    pub days: Option<u16>,
    /// The total in mm.
    pub total_mm: f64,
}

/// A row that could not be understood.
#[derive(Clone, Debug, PartialEq)]
pub struct UnreadableRow {
    /// Its line in the file, from 1.
    pub line: usize,
    /// Why.
    pub fault: RowFault,
}

/// Why a row could not be understood.
#[derive(Clone, Debug, PartialEq)]
pub enum RowFault {
    /// No date in the date's place.
    NotADate {
        /// What stands there, shortened.
        text: String,
    },
    /// A date of the right form that no calendar has, or that fits only the other order of day and month.
    NoSuchDay {
        /// What stands there, shortened.
        text: String,
    },
    /// A year outside 1700–2200.
    YearOutOfRange {
        /// What stands there, shortened.
        text: String,
    },
    /// No finite number in the rain's place.
    NotANumber {
        /// What stands there, shortened.
        text: String,
    },
    /// The row ends before the columns in question.
    TooFewCells {
        /// How many it has.
        cells: usize,
    },
}

impl RowFault {
    /// A cell's text, cut where it is longer than 40 characters.
    pub(super) fn excerpt(text: &str) -> String {
        text.chars().take(40).collect()
    }
}

/// Which number of a date such as 3/4/2001 is the day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DateOrder {
    /// 3/4/2001 is the third of April.
    DayFirst,
    /// 3/4/2001 is the fourth of March.
    MonthFirst,
}

/// What the order of day and month rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OrderBasis {
    /// Dates which only this order allows.
    Dates,
    /// More rows follow the day before in this order.
    Succession,
    /// Nothing: it was assumed.
    Assumed,
}

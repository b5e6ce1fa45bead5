//! The rain of a place as it was measured or published: data, no computing.

use chrono::NaiveDate;

/// A daily rain record: one value for each civil day from `start` on.
/// A day without a measurement is `None`, never zero.
#[derive(Clone, Debug, PartialEq)]
pub struct RainRecord {
    /// Where it came from, in the person's or the file's words.
    pub source: String,
    /// The first day.
    pub start: NaiveDate,
    /// Depth of each day in mm, 0 or more; `None` where it is missing.
    pub depths_mm: Vec<Option<f64>>,
}

impl RainRecord {
    /// The days of the record with what was measured on them, in mm.
    pub fn days(&self) -> impl Iterator<Item = (NaiveDate, Option<f64>)> + '_ {
        self.start.iter_days().zip(self.depths_mm.iter().copied())
    }

    /// The last day, or `None` for a record without days.
    pub fn end(&self) -> Option<NaiveDate> {
        let span = u64::try_from(self.depths_mm.len()).ok()?.checked_sub(1)?;
        self.start.checked_add_days(chrono::Days::new(span))
    }
}

/// Long-term monthly means, where no daily record is at hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Normals {
    /// Where they came from, in the person's words.
    pub source: String,
    /// Mean total of January to December in mm, 0 or more.
    pub totals_mm: [f64; 12],
    /// Mean number of rain days in January to December where known, 0 to the month's days.
    pub rain_days: Option<[f64; 12]>,
}

/// What a site knows of its rain.
#[derive(Clone, Debug, PartialEq)]
pub enum Rain {
    /// Measured days.
    Record(RainRecord),
    /// Twelve monthly means.
    Normals(Normals),
}

/// What to do with days that the record lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MissingDays {
    /// Leave out each year with more missing days than this (0 to 366); fill the few that remain as `Fill` does.
    LeaveOutYears {
        /// The largest number of missing days that a year may have.
        with_more_than: u16,
    },
    /// Take the same calendar day of the nearest other year that has it.
    Fill,
}

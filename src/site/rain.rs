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

/// What people know of their rain without any record: how much a year, and in which months most of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YearTotal {
    /// The total in mm.
    pub mm: f64,
    /// The first month in which most of it falls, 0 for January to 11.
    pub first: usize,
    /// The last one, which may come before the first in the calendar.
    pub last: usize,
}

impl YearTotal {
    /// This share of the rain is "most of it" (common practice, no source); more where the other months would get more each.
    const MOST: f64 = 0.9;

    /// How many months have most of it, 1 to 12, and which share (0 to 1) of it that is.
    pub fn wet(&self) -> (usize, f64) {
        let months = (self.last + 12 - self.first) % 12 + 1;
        (months, Self::MOST.max(months as f64 / 12.0))
    }

    /// The twelve monthly means in mm: most of the total evenly in its months, the rest evenly in the others.
    pub fn by_month_mm(&self) -> [f64; 12] {
        let after_first = |month: usize| (month + 12 - self.first) % 12;
        let (wet, share) = self.wet();
        let [each_wet, each_dry] = [share / wet as f64, (1.0 - share) / (12 - wet).max(1) as f64];
        std::array::from_fn(|month| self.mm * if after_first(month) < wet { each_wet } else { each_dry })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_years_total_falls_mostly_in_its_months() {
        // By hand: 1,000 mm, nine tenths from November to March, 180 mm each; a tenth in seven others.
        let by_month = YearTotal { mm: 1_000.0, first: 10, last: 2 }.by_month_mm();
        for (month, mm) in by_month.into_iter().enumerate() {
            let wanted = if matches!(month, 10 | 11 | 0..=2) { 180.0 } else { 100.0 / 7.0 };
            assert!((mm - wanted).abs() < 1e-9, "{month}: {mm}");
        }
        for (first, last) in [(0, 11), (3, 2), (1, 11), (5, 5)] {
            let by_month = YearTotal { mm: 600.0, first, last }.by_month_mm();
            assert!((by_month.iter().sum::<f64>() - 600.0).abs() < 1e-9, "{first} to {last}");
            assert!(by_month.iter().all(|mm| *mm <= by_month[first] + 1e-9), "no other month is wetter");
        }
    }
}

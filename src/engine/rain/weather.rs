//! Rain as the balance takes it: every day has a depth.

use chrono::NaiveDate;

use crate::site::rain::RainRecord;

/// A run of days in order, each with its depth. Days follow one another except where a year was left out.
#[derive(Clone, Debug, PartialEq)]
pub struct Weather {
    /// The date of each day.
    pub dates: Vec<NaiveDate>,
    /// The depth of each day in mm, 0 or more; as long as `dates`.
    pub depths_mm: Vec<f64>,
    /// How many of the days were missing and have been filled from another year.
    pub filled_days: usize,
    /// Calendar years of the record that were left out for their missing days.
    pub left_out_years: Vec<i32>,
    /// Where the days come from.
    pub origin: Origin,
}

impl Weather {
    /// The same days as a record, for looking at them. Only where no year was left out.
    pub fn as_record(&self) -> RainRecord {
        RainRecord {
            source: String::new(),
            start: self.dates.first().copied().unwrap_or_default(),
            depths_mm: self.depths_mm.iter().copied().map(Some).collect(),
        }
    }
}

/// Where days come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// They were measured.
    Measured,
    /// They were drawn by a model of the place's rain, day by day.
    Generated,
    /// They are equal rain days, evenly spaced, made of monthly means.
    Even,
}

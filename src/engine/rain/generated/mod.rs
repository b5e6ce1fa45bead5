//! Years that haven't happened: days drawn by a model of the place's rain.
//!
//! The model is Richardson's (1981): whether a day is wet depends on whether the day before was (a Markov chain of two
//! states), and the depth of a wet day follows a gamma distribution, each with parameters of its own for each month.
//! Such chains make one year too much like another, so every rain year is multiplied by a number of its own, drawn so that the
//! years spread as widely as they should. [`fit`] takes the parameters from a record, [`from_normals`] from monthly
//! means alone, [`spread`] finds the multiplier, [`years`] draws days, [`likeness`] shows recorded and generated years
//! side by side.
//!
//! The same seed gives the same days on every platform: the generator of random numbers is an integer one, and all
//! functions that rounding could touch come from `libm`.

pub mod draws;
pub mod fit;
pub mod from_normals;
pub mod gamma;
pub mod likeness;
pub mod month;
pub mod spread;
pub mod years;

use chrono::NaiveDate;

use self::month::MonthRain;
use super::normals::NormalsError;
use crate::site::rain::Rain;

/// A model of a place's rain.
#[derive(Clone, Debug, PartialEq)]
pub struct RainModel {
    /// January to December.
    pub months: [MonthRain; 12],
    /// The month in which a rain year begins, 0 to 11: the driest, so that a wet season isn't cut in two.
    pub first_month: usize,
    /// Coefficient of variation of the number by which a rain year is multiplied, 0 or more.
    pub multiplier_cv: f64,
    /// What falls in January to December of a mean year, in mm, where that is all that is known: a draw as a whole has these
    /// means. None of a record, whose own are but a sample.
    pub means_mm: Option<[f64; 12]>,
}

/// Why there is no model of a place's rain.
#[derive(Clone, Debug, PartialEq)]
pub enum ModelError {
    /// The record has no two measured days in a row in a month.
    MonthUnmeasured {
        /// The month, 1 to 12.
        month: usize,
    },
    /// A depth that is no depth: negative, infinite or not a number.
    NotADepth {
        /// Its day.
        date: NaiveDate,
        /// What the record has, in mm.
        depth_mm: f64,
    },
    /// The monthly means can't be used.
    Normals(NormalsError),
}

/// The spread of the years where a record is too short to tell it and nobody entered one: a coefficient of variation of
/// annual rain of 25 %. Between humid places (about 15 %) and semi-arid ones (about 40 %); common practice, no source.
pub const USUAL_SPREAD: f64 = 0.25;

/// The fewest complete rain years of a record from which the spread of its years is taken. Common practice, no source.
pub const LEAST_YEARS_FOR_SPREAD: usize = 5;

impl RainModel {
    /// The model of a site's rain. `spread` is the coefficient of variation of annual rain that the household knows of;
    /// without it, that of the record's complete rain years, if it has [`LEAST_YEARS_FOR_SPREAD`], else
    /// [`USUAL_SPREAD`].
    ///
    /// # Errors
    /// See [`ModelError`].
    pub fn of(rain: &Rain, spread: Option<f64>) -> Result<Self, ModelError> {
        let (months, recorded, means_mm) = match rain {
            Rain::Record(record) => {
                let months = fit::fit(record, fit::WET_MM)?;
                let totals = spread::rain_year_totals_mm(record, month::driest(&months));
                (months, (totals.len() >= LEAST_YEARS_FOR_SPREAD).then(|| spread::cv(&totals)).flatten(), None)
            }
            Rain::Normals(normals) => {
                (from_normals::months(normals).map_err(ModelError::Normals)?, None, Some(normals.totals_mm))
            }
        };
        let wanted_cv = spread.or(recorded).unwrap_or(USUAL_SPREAD);
        Ok(Self {
            first_month: month::driest(&months),
            multiplier_cv: spread::multiplier_cv(wanted_cv, spread::chain_cv(&months)),
            months,
            means_mm,
        })
    }
}

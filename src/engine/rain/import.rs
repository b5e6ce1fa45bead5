//! A rain file, of whatever form, to a record and an account of it. Nothing is kept here; the caller decides.

use super::gather::{self, UnitBasis};
pub use super::lines::{MOST_BYTES, MOST_LINES};
use super::lines::{delimiter_of, lines_of, text_of};
use super::rain_unit::RainUnit;
use super::report::{Occasions, Report, UnreadableRow};
use super::{doubts, import_csv, import_ghcn};
use crate::site::rain::RainRecord;

/// Reads a rain file: a table with a date and a depth in each row, or a daily station file of GHCN-Daily.
///
/// `unit` is what the person says the numbers are; without it the column's name decides, and without that the look of
/// the numbers (then `unit_guessed`). `source` becomes the record's.
///
/// Depths are 0 to 1,825 mm a day, dates in the years 1700–2200, the file at most 64 MiB.
///
/// # Errors
/// One [`ImportError`] where no record can be made of it. Whatever is wrong with single rows is in the report instead.
pub fn read(bytes: &[u8], unit: Option<RainUnit>, source: &str) -> Result<Import, ImportError> {
    let text = text_of(bytes)?;
    let (lines, comments) = lines_of(&text)?;
    let delimiter = delimiter_of(&lines);
    let mut reading = match import_ghcn::rows_of(&lines, delimiter)? {
        Some(reading) => reading,
        None => import_csv::rows_of(&lines, delimiter)?,
    };
    if let Some(unit) = unit {
        (reading.unit, reading.unit_basis) = (unit, UnitBasis::Told);
    }
    let (unit, form, columns) = (reading.unit, reading.form, reading.columns.clone());
    let unit_guessed = matches!(reading.unit_basis, UnitBasis::Guessed { .. });
    let (record, mut report) = gather::record_of(reading, source, comments)?;
    report.notices.extend(doubts::doubts(&record));
    Ok(Import { record, report, unit, unit_guessed, form, columns })
}

/// A rain file that was understood.
#[derive(Clone, Debug, PartialEq)]
pub struct Import {
    /// The rain.
    pub record: RainRecord,
    /// What was found on the way.
    pub report: Report,
    /// The unit in which the file was read.
    pub unit: RainUnit,
    /// Whether that unit was guessed from the look of the numbers.
    pub unit_guessed: bool,
    /// How the file is laid out.
    pub form: Form,
    /// Which columns were taken.
    pub columns: Columns,
}

/// How a rain file is laid out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A table with a date and a depth in each row.
    Table,
    /// GHCN-Daily, one row a day.
    GhcnByDay,
    /// GHCN-Daily, one row for each day and element.
    GhcnByElement,
}

/// The columns that were taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Columns {
    /// Of the date: one, or year, month and day.
    pub date: Vec<Column>,
    /// Of the rain.
    pub rain: Column,
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Column {
    /// Its place, from 1.
    pub place: usize,
    /// Its name, where the table has names.
    pub name: Option<String>,
}

/// Why no record can be made of a file.
#[derive(Clone, Debug, PartialEq)]
pub enum ImportError {
    /// There is nothing in it but blanks and comments.
    Empty,
    /// It is too large.
    TooManyBytes {
        /// Its size.
        bytes: usize,
        /// The most that is read.
        most: usize,
    },
    /// It has too many lines.
    TooManyLines {
        /// The most that are read.
        most: usize,
    },
    /// It isn't plain text (a spreadsheet's own file, for instance).
    NotText,
    /// No date was found near its top.
    NoDates,
    /// No column holds depths.
    NoRainColumn {
        /// The names of the columns, if they have any.
        header: Vec<String>,
    },
    /// Several columns could hold the rain and no name tells which.
    SeveralRainColumns {
        /// Those columns.
        columns: Vec<Column>,
    },
    /// The rows are of more than one station.
    SeveralStations {
        /// The station of the first row.
        first: String,
        /// The other one.
        second: String,
        /// The line in which it first stands, from 1.
        line: usize,
    },
    /// More rows could not be understood than could.
    MostlyUnreadable {
        /// How many could.
        rows_read: usize,
        /// Those that could not.
        unreadable: Occasions<UnreadableRow>,
    },
    /// Its rows lie a month apart: they are totals of months.
    Monthly {
        /// How many there are.
        rows: usize,
    },
    /// Each day has many rows and none names its time.
    ManyRowsADay {
        /// How many, on average.
        rows: usize,
    },
    /// No day has a depth.
    NothingMeasured,
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    #[track_caller]
    fn check_refused(text: &str, expected: &ImportError) {
        assert_eq!(read(text.as_bytes(), None, "test").as_ref().err(), Some(expected), "{text}");
    }

    #[test]
    fn what_is_no_rain_file_is_refused() {
        check_refused("", &ImportError::Empty);
        check_refused("# nothing\n\n", &ImportError::Empty);
        check_refused("date,rain_mm\n", &ImportError::NoDates);
        check_refused("date,rain_mm\n2001-01-01,NA\n", &ImportError::NothingMeasured);
        check_refused("date,rain_mm\n2001-01-01,-5\n", &ImportError::NothingMeasured);
    }

    #[test]
    fn a_file_of_mostly_broken_rows_is_refused_with_their_lines() {
        let text = "date,rain_mm\n2001-01-01,5\n3001-01-02,5\n2001-13-01,5\n";
        match read(text.as_bytes(), None, "test") {
            Err(ImportError::MostlyUnreadable { rows_read: 1, unreadable }) => {
                assert_eq!(unreadable.first.iter().map(|row| row.line).collect::<Vec<_>>(), [3, 4]);
            }
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn far_dates_make_a_long_gap_and_no_more() {
        let import = read(b"date,rain_mm\n1700-01-01,5\n2200-12-31,5\n", None, "test").unwrap();
        assert_eq!(import.record.depths_mm.len(), 182_986); // 501 years, 121 of them leap years
        assert_eq!(import.report.missing_days, 182_984);
    }

    #[test]
    fn a_million_lines_of_one_day_are_no_days() {
        let text = "2001-01-01,5\n".repeat(1_000_000);
        assert_eq!(read(text.as_bytes(), None, "test").unwrap_err(), ImportError::ManyRowsADay { rows: 1_000_000 });
    }

    #[test]
    fn the_columns_taken_are_named() {
        let import = read(b"rain_mm,date\n5,2001-01-01\n", None, "test").unwrap();
        assert_eq!(import.columns.rain, Column { place: 1, name: Some("rain_mm".to_string()) });
        assert_eq!(import.columns.date, [Column { place: 2, name: Some("date".to_string()) }]);
    }
}

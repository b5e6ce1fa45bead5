//! Any table with a date and a depth in each row: what its rows say, before anything is made of it.

use super::columns::{DatePlace, layout_of, shown};
use super::gather::{Entry, Reading, Row, UnitBasis, mean_rain_day};
use super::import::{Columns, Form, ImportError};
use super::lines::{Cutter, Line};
use super::rain_unit::{RainUnit, unit_from_rain_days, unit_in_name};
use super::report::{Occasions, RowFault, UnreadableRow};
use super::written_date::{self, WrittenDate};
use super::written_depth::{self, WrittenDepth};

/// Reads the rows of a table. Columns may stand in any order, with or without names.
///
/// # Errors
/// Those of finding the columns: `NoDates`, `NoRainColumn`, `SeveralRainColumns`.
pub(super) fn rows_of(lines: &[Line<'_>], delimiter: u8) -> Result<Reading, ImportError> {
    let layout = layout_of(lines, delimiter)?;
    let mut cutter = Cutter::new(delimiter);
    let (mut rows, mut unreadable) = (Vec::new(), Occasions::new());
    // A line right above the rows that is no header is a row which cannot be read.
    let broken = usize::from(layout.header.is_empty() && layout.lines_above > 0);
    for line in &lines[layout.first_row - broken..] {
        let cells = cutter.cells(line.text);
        let minute = match layout.date {
            DatePlace::Cell(at) => cells.get(at).and_then(|cell| written_date::minute(cell)),
            DatePlace::Split { .. } => None,
        };
        let row = date_in(&cells, layout.date).and_then(|date| {
            let depth = cells.get(layout.rain).ok_or(RowFault::TooFewCells { cells: cells.len() });
            let entry = match depth.and_then(|cell| written_depth::read(cell, delimiter != b',')) {
                Ok(WrittenDepth::Number(number)) => Entry::Number(number),
                Ok(WrittenDepth::Trace) => Entry::Trace,
                Ok(WrittenDepth::Missing) => Entry::Missing,
                // A time of a day that can't be read leaves the day unknown.
                Err(fault) if minute.is_some() => {
                    unreadable.add(UnreadableRow { line: line.number, fault });
                    Entry::Missing
                }
                Err(fault) => return Err(fault),
            };
            Ok(Row { line: line.number, date, minute, entry })
        });
        match row {
            Ok(row) => rows.push(row),
            Err(fault) => unreadable.add(UnreadableRow { line: line.number, fault }),
        }
    }
    let told = layout.header.get(layout.rain).and_then(|name| unit_in_name(name));
    let (unit, unit_basis) = match told {
        Some(unit) => (unit, UnitBasis::Told),
        None => guess(&rows),
    };
    let date = match layout.date {
        DatePlace::Cell(cell) => vec![cell],
        DatePlace::Split { year, month, day } => vec![year, month, day],
    };
    Ok(Reading {
        rows,
        unreadable,
        multi_day: Vec::new(),
        lines_above: layout.lines_above - broken,
        unit,
        unit_basis,
        form: Form::Table,
        columns: Columns {
            date: date.into_iter().map(|cell| shown(&layout.header, cell)).collect(),
            rain: shown(&layout.header, layout.rain),
        },
    })
}

fn date_in(cells: &[&str], place: DatePlace) -> Result<WrittenDate, RowFault> {
    let cell = |at: usize| cells.get(at).copied().ok_or(RowFault::TooFewCells { cells: cells.len() });
    match place {
        DatePlace::Cell(at) => written_date::read(cell(at)?),
        DatePlace::Split { year, month, day } => written_date::read_split(cell(year)?, cell(month)?, cell(day)?),
    }
}

fn guess(rows: &[Row]) -> (RainUnit, UnitBasis) {
    let mean_rain_day = mean_rain_day(rows);
    let whole = |row: &Row| !matches!(row.entry, Entry::Number(number) if number.fract() != 0.0);
    let unit = if mean_rain_day > 0.0 {
        unit_from_rain_days(mean_rain_day, rows.iter().all(whole))
    } else {
        RainUnit::Millimetres
    };
    (unit, UnitBasis::Guessed { mean_rain_day })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::super::import::read;
    use super::super::report::Notice;
    use super::*;

    #[track_caller]
    fn check(text: &str, start: &str, depths_mm: &[Option<f64>]) {
        let import = read(text.as_bytes(), None, "test").unwrap();
        assert_eq!(import.record.start.to_string(), start, "{text}");
        assert_eq!(import.record.depths_mm, depths_mm, "{text}");
    }

    #[test]
    fn any_order_delimiter_and_decimal_sign_reads_alike() {
        let depths = [Some(5.3), None, Some(0.0)];
        check("date,rain_mm\n2001-03-05,5.3\n2001-03-06,\n2001-03-07,0\n", "2001-03-05", &depths);
        check("rain_mm;day\r\n5,3;05.03.2001\r\nNA;06.03.2001\r\n0;07.03.2001\r\n\r\n", "2001-03-05", &depths);
        check("date\tmm\n20010305\t5,3\n20010306\t-9999\n20010307\tT\n", "2001-03-05", &depths);
        check(
            "\u{feff}# from the shed\n\"Date\",\"Rain (mm)\"\n\"3/5/2001\",\"5.3\"\n3/6/2001,M\n3/7/2001,0\n",
            "2001-03-05",
            &depths,
        );
        check("2001,3,7,0\n2001,3,5,5.3\n", "2001-03-05", &depths);
    }

    #[test]
    fn latin_letters_of_old_files_do_no_harm() {
        let import = read(b"date;pr\xE9cip;pluie (mm)\n2001-03-05;x;5,3\n", None, "test").unwrap();
        assert_eq!(import.record.depths_mm, [Some(5.3)]);
    }

    #[test]
    fn the_unit_comes_from_the_caller_then_the_name_then_a_guess() {
        let unit = |text: &str, told| {
            let import = read(text.as_bytes(), told, "test").unwrap();
            (import.unit, import.unit_guessed)
        };
        let inches = "date,rain (in)\n2001-03-05,0.43\n2001-03-06,1.2\n";
        assert_eq!(unit(inches, None), (RainUnit::Inches, false));
        assert_eq!(unit(inches, Some(RainUnit::Millimetres)), (RainUnit::Millimetres, false));
        assert_eq!(unit("2001-03-05,0.43\n2001-03-06,1.2\n", None), (RainUnit::Inches, true));
        assert_eq!(unit("2001-03-05,109\n2001-03-06,15\n", None), (RainUnit::TenthsOfMillimetre, true));
        assert_eq!(unit("2001-03-05,10.9\n2001-03-06,1.5\n", None), (RainUnit::Millimetres, true));
    }

    #[test]
    fn a_row_that_cannot_be_read_is_named_by_its_line() {
        let import = read(
            b"date,rain_mm\n2001-03-05,5\n\n2001-03-06,lots\n2001-02-30,1\n2001-03-07,2\n2001-03-08,2\n",
            None,
            "test",
        )
        .unwrap();
        let lines: Vec<usize> = import
            .report
            .notices
            .iter()
            .find_map(|notice| match notice {
                Notice::RowsUnreadable(rows) => Some(rows.first.iter().map(|row| row.line).collect()),
                _ => None,
            })
            .unwrap();
        assert_eq!(lines, [4, 5]);
        assert_eq!(import.report.rows_read, 3);
    }
}

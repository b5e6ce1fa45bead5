//! The daily station files of GHCN-Daily, as NOAA publishes them: what their rows say.
//!
//! Two forms: one row a day with named columns (`STATION`, `DATE`, `PRCP`, `PRCP_ATTRIBUTES`, …), and one row for each
//! day and element without names (station, date, element, value, measurement flag, quality flag, source flag).
//! Source for both forms and for the flags: NOAA, GHCN-Daily readme (Menne et al. 2012), from memory.

use chrono::Datelike;

use super::columns::shown;
use super::gather::{Entry, Reading, Row, UnitBasis};
use super::import::{Columns, Form, ImportError};
use super::lines::{Cutter, Line};
use super::rain_unit::RainUnit;
use super::report::{Occasions, RowFault, UnreadableRow};
use super::written_date::{self, WrittenDate};
use super::written_depth::{self, WrittenDepth, decimals};
use crate::quantity::order::rising;

/// Reads the rows if the lines have one of the two forms; `None` if they have neither.
///
/// Without a unit of their own, depths are tenths of a millimetre where all are whole numbers, inches where any has two
/// decimals, else millimetres: the publisher's own unit and the two in which files can be ordered.
///
/// # Errors
/// `SeveralStations`.
pub(super) fn rows_of(lines: &[Line<'_>], delimiter: u8) -> Result<Option<Reading>, ImportError> {
    let mut cutter = Cutter::new(delimiter);
    let Some(first) = lines.first() else { return Ok(None) };
    let header = cutter.owned_cells(first.text);
    let place = |name: &str| header.iter().position(|cell| cell.eq_ignore_ascii_case(name));
    if let (Some(station), Some(date), Some(depth)) = (place("STATION"), place("DATE"), place("PRCP")) {
        let places = Places {
            station,
            date,
            depth,
            flags: place("PRCP_ATTRIBUTES"),
            total: place("MDPR"),
            total_flags: place("MDPR_ATTRIBUTES"),
            total_days: place("DAPR"),
        };
        return wide(&lines[1..], cutter, &header, places).map(Some);
    }
    match header.as_slice() {
        [station, date, element, _, ..] if is_long(station, date, element) => long(lines, cutter).map(Some),
        _ => Ok(None),
    }
}

/// Where the columns of the wide form stand, from 0.
struct Places {
    station: usize,
    date: usize,
    depth: usize,
    flags: Option<usize>,
    total: Option<usize>,
    total_flags: Option<usize>,
    total_days: Option<usize>,
}

fn wide(lines: &[Line<'_>], mut cutter: Cutter, header: &[String], at: Places) -> Result<Reading, ImportError> {
    let mut reading = empty(shown(header, at.date), shown(header, at.depth), Form::GhcnByDay);
    let mut stations = OneStation::default();
    let mut most_decimals = 0;
    for line in lines {
        let cells = cutter.cells(line.text);
        let cell = |place: Option<usize>| place.and_then(|place| cells.get(place)).copied().unwrap_or("");
        stations.check(cell(Some(at.station)), line.number)?;
        let date = written_date::read(cell(Some(at.date)));
        let depth = match cells.get(at.depth) {
            Some(depth) => entry(depth, Flags::of(cell(at.flags))),
            None => Err(RowFault::TooFewCells { cells: cells.len() }),
        };
        most_decimals = most_decimals.max(decimals(cell(Some(at.depth)))).max(decimals(cell(at.total)));
        match date.and_then(|date| Ok((date, depth?))) {
            Ok((date, entry)) => {
                reading.rows.push(Row { minute: None, line: line.number, date, entry });
                let total = written_depth::read(cell(at.total), false);
                if let (Ok(WrittenDepth::Number(total)), None) = (total, Flags::of(cell(at.total_flags)).quality) {
                    reading.multi_day.push((date, cell(at.total_days).parse().ok(), total));
                }
            }
            Err(fault) => reading.unreadable.add(UnreadableRow { line: line.number, fault }),
        }
    }
    reading.unit = match most_decimals {
        0 => RainUnit::TenthsOfMillimetre,
        1 => RainUnit::Millimetres,
        _ => RainUnit::Inches,
    };
    Ok(with_mean(reading))
}

fn long(lines: &[Line<'_>], mut cutter: Cutter) -> Result<Reading, ImportError> {
    let mut reading = empty(shown(&[], 1), shown(&[], 3), Form::GhcnByElement);
    let mut stations = OneStation::default();
    let mut day_counts: Vec<(WrittenDate, u16)> = Vec::new();
    for line in lines {
        let cells = cutter.cells(line.text);
        let [station, date, element, value, ..] = cells[..] else {
            let fault = RowFault::TooFewCells { cells: cells.len() };
            reading.unreadable.add(UnreadableRow { line: line.number, fault });
            continue;
        };
        stations.check(station, line.number)?;
        if !["PRCP", "MDPR", "DAPR"].contains(&element) {
            continue;
        }
        let flag = |place: usize| cells.get(place).and_then(|flag| flag.chars().next());
        let flags = Flags { measurement: flag(4), quality: flag(5) };
        match written_date::read(date).and_then(|date| Ok((date, entry(value, flags)?))) {
            Ok((date, entry)) => match (element, entry) {
                ("PRCP", entry) => reading.rows.push(Row { minute: None, line: line.number, date, entry }),
                ("MDPR", Entry::Number(total)) => reading.multi_day.push((date, None, total)),
                ("DAPR", Entry::Number(days)) if (1.0..=366.0).contains(&days) => day_counts.push((date, days as u16)),
                _ => {}
            },
            Err(fault) => reading.unreadable.add(UnreadableRow { line: line.number, fault }),
        }
    }
    let counted: Vec<f64> = day_counts.iter().map(|(date, _)| day_number(*date)).collect();
    let order = rising(&counted);
    for (date, days, _) in &mut reading.multi_day {
        let day = day_number(*date);
        let found = order.binary_search_by(|place| counted[*place].total_cmp(&day));
        *days = found.ok().map(|at| day_counts[order[at]].1);
    }
    Ok(with_mean(reading))
}

/// The number of a day, to put days in order; all dates that are no days are one.
fn day_number(date: WrittenDate) -> f64 {
    date.on(super::report::DateOrder::DayFirst).map_or(f64::NEG_INFINITY, |day| f64::from(day.num_days_from_ce()))
}

/// The flags of one value.
struct Flags {
    measurement: Option<char>,
    quality: Option<char>,
}

impl Flags {
    /// From a cell such as `T,,Z`: measurement, quality, source.
    fn of(cell: &str) -> Flags {
        let mut flags = cell.split(',').map(|flag| flag.trim().chars().next());
        Flags { measurement: flags.next().flatten(), quality: flags.next().flatten() }
    }
}

fn entry(cell: &str, flags: Flags) -> Result<Entry, RowFault> {
    let depth = written_depth::read(cell, false)?;
    Ok(match (depth, flags.quality, flags.measurement) {
        (WrittenDepth::Missing, _, _) => Entry::Missing,
        (WrittenDepth::Number(number), Some(flag), _) => Entry::Flagged { number: Some(number), flag },
        (WrittenDepth::Trace, Some(flag), _) => Entry::Flagged { number: None, flag },
        (WrittenDepth::Trace, None, _) => Entry::Trace,
        (WrittenDepth::Number(0.0), None, Some('T')) => Entry::Trace,
        (WrittenDepth::Number(0.0), None, Some('P')) => Entry::PresumedZero,
        (WrittenDepth::Number(number), None, _) => Entry::Number(number),
    })
}

fn is_long(station: &str, date: &str, element: &str) -> bool {
    let code = |text: &str| text.bytes().all(|byte| byte.is_ascii_uppercase() || byte.is_ascii_digit());
    station.len() == 11
        && code(station)
        && date.len() == 8
        && element.len() == 4
        && code(element)
        && written_date::read(date).is_ok()
}

/// Sees to it that all rows are of one station.
#[derive(Default)]
struct OneStation {
    name: String,
}

impl OneStation {
    fn check(&mut self, station: &str, line: usize) -> Result<(), ImportError> {
        if self.name.is_empty() {
            self.name = station.to_string();
        }
        if self.name == station || station.is_empty() {
            return Ok(());
        }
        let second = RowFault::excerpt(station);
        Err(ImportError::SeveralStations { first: RowFault::excerpt(&self.name), second, line })
    }
}

fn empty(date: super::import::Column, rain: super::import::Column, form: Form) -> Reading {
    Reading {
        rows: Vec::new(),
        unreadable: Occasions::new(),
        multi_day: Vec::new(),
        lines_above: 0,
        unit: RainUnit::TenthsOfMillimetre,
        unit_basis: UnitBasis::Told,
        form,
        columns: Columns { date: vec![date], rain },
    }
}

fn with_mean(mut reading: Reading) -> Reading {
    reading.unit_basis = UnitBasis::Guessed { mean_rain_day: super::gather::mean_rain_day(&reading.rows) };
    reading
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::super::import::{Form, Import, read};
    use super::super::report::Notice;
    use super::*;

    // Written by hand after the published description of the format (GHCN-Daily readme, from memory).
    const BY_DAY: &str = "\"STATION\",\"DATE\",\"NAME\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"DAPR\",\"MDPR\",\"MDPR_ATTRIBUTES\"\n\
        \"XX000000001\",\"2001-01-01\",\"HILL, WEST\",\"  109\",\",,Z\",,,\n\
        \"XX000000001\",\"2001-01-02\",\"HILL, WEST\",\"    0\",\"T,,Z\",,,\n\
        \"XX000000001\",\"2001-01-03\",\"HILL, WEST\",\"    0\",\"P,,Z\",,,\n\
        \"XX000000001\",\"2001-01-04\",\"HILL, WEST\",\" 2540\",\",X,Z\",,,\n\
        \"XX000000001\",\"2001-01-07\",\"HILL, WEST\",,,\"    3\",\"  330\",\",,Z\"\n\
        \"XX000000001\",\"2001-01-08\",\"HILL, WEST\",\"   25\",\",,Z\",,,\n";

    const BY_ELEMENT: &str = "XX000000001,20010101,PRCP,109,,,Z,\nXX000000001,20010101,TMAX,50,,,Z,\n\
        XX000000001,20010102,PRCP,0,T,,Z,\nXX000000001,20010103,PRCP,0,P,,Z,\nXX000000001,20010104,PRCP,2540,,X,Z,\n\
        XX000000001,20010107,DAPR,3,,,Z,\nXX000000001,20010107,MDPR,330,,,Z,\nXX000000001,20010108,PRCP,25,,,Z,0700\n";

    #[track_caller]
    fn check(text: &str, form: Form) -> Import {
        let import = read(text.as_bytes(), None, "test").unwrap();
        assert_eq!((import.form, import.unit, import.unit_guessed), (form, RainUnit::TenthsOfMillimetre, true));
        let expected = [Some(10.9), Some(0.0), Some(0.0), None, None, None, None, Some(2.5)];
        assert_eq!(import.record.depths_mm, expected);
        for wanted in ["Traces", "PresumedZero", "QualityFlagged", "MultiDayTotals"] {
            let found = import.report.notices.iter().any(|notice| format!("{notice:?}").starts_with(wanted));
            assert!(found, "{wanted} is not reported");
        }
        let totals = import.report.notices.iter().find_map(|notice| match notice {
            Notice::MultiDayTotals(totals) => Some(totals.first[0]),
            _ => None,
        });
        let total = totals.unwrap();
        assert_eq!((total.days, total.total_mm, total.read_on.to_string()), (Some(3), 33.0, "2001-01-07".to_string()));
        import
    }

    #[test]
    fn both_forms_say_the_same() {
        check(BY_DAY, Form::GhcnByDay);
        check(BY_ELEMENT, Form::GhcnByElement);
    }

    #[test]
    fn ordered_files_are_in_millimetres_or_inches() {
        let unit = |depth: &str| {
            let text = format!("STATION,DATE,PRCP\nXX000000001,2001-01-01,{depth}\n");
            read(text.as_bytes(), None, "test").unwrap().unit
        };
        assert_eq!(unit("10.9"), RainUnit::Millimetres);
        assert_eq!(unit("0.43"), RainUnit::Inches);
        assert_eq!(unit("109"), RainUnit::TenthsOfMillimetre);
    }

    #[test]
    fn two_stations_in_one_file_are_refused() {
        let text = "STATION,DATE,PRCP\nXX000000001,2001-01-01,5\nXX000000002,2001-01-02,5\n";
        assert!(matches!(read(text.as_bytes(), None, "test"), Err(ImportError::SeveralStations { line: 3, .. })));
    }
}

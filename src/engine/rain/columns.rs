//! Which columns of a table hold the date and the rain.

use super::import::{Column, ImportError};
use super::lines::{Cutter, Line, SAMPLE};
use super::{written_date, written_depth};

/// How a table is laid out. Indices count cells from 0.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Layout {
    /// The first line with data, as an index into the lines.
    pub(super) first_row: usize,
    /// The names of the columns; empty without a header.
    pub(super) header: Vec<String>,
    /// Lines above the table and its header.
    pub(super) lines_above: usize,
    /// Where the date stands.
    pub(super) date: DatePlace,
    /// Where the rain stands.
    pub(super) rain: usize,
}

/// Where the date of a row stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum DatePlace {
    /// In one cell.
    Cell(usize),
    /// In three.
    Split { year: usize, month: usize, day: usize },
}

impl DatePlace {
    fn holds(self, cell: usize) -> bool {
        match self {
            DatePlace::Cell(date) => cell == date,
            DatePlace::Split { year, month, day } => [year, month, day].contains(&cell),
        }
    }
}

/// Finds the layout from the names in the header, where there is one, and from what the cells look like.
///
/// # Errors
/// `NoDates`, `NoRainColumn`, `SeveralRainColumns`.
pub(super) fn layout_of(lines: &[Line<'_>], delimiter: u8) -> Result<Layout, ImportError> {
    let mut cutter = Cutter::new(delimiter);
    let mut sample = Vec::new();
    for line in lines.iter().take(SAMPLE) {
        sample.push(cutter.owned_cells(line.text));
    }
    let start = start_of(&sample).ok_or(ImportError::NoDates)?;
    let rows = &sample[start.first_row..];
    let rain = rain_column(&start.header, rows, start.date)?;
    let Start { first_row, header, header_lines, date } = start;
    Ok(Layout { first_row, header, lines_above: first_row - header_lines, date, rain })
}

/// A column as the person sees it: counted from 1, with its name.
pub(super) fn shown(header: &[String], index: usize) -> Column {
    Column { place: index + 1, name: header.get(index).filter(|name| !name.is_empty()).cloned() }
}

struct Start {
    first_row: usize,
    header: Vec<String>,
    /// The lines in which the names of the columns stand, units under them.
    header_lines: usize,
    date: DatePlace,
}

/// The words of a column's name in small letters.
fn words_of(name: &str) -> Vec<String> {
    let mut words = Vec::new();
    for word in name.split(|c: char| !c.is_alphanumeric()) {
        if !word.is_empty() {
            words.push(word.to_ascii_lowercase());
        }
    }
    words
}

fn start_of(sample: &[Vec<String>]) -> Option<Start> {
    let date_cells = |cells: &[String]| -> Vec<usize> {
        (0..cells.len()).filter(|&cell| written_date::read(&cells[cell]).is_ok()).collect()
    };
    let dated = sample.iter().map(|cells| date_cells(cells)).enumerate().find(|(_, dates)| !dates.is_empty());
    if let Some((first_row, dates)) = dated {
        let (header, header_lines) = header_above(&sample[..first_row]);
        let named = |cell: &&usize| header.get(**cell).is_some_and(|name| is_of_date(name));
        let cell = dates.iter().find(named).or(dates.first()).copied()?;
        return Some(Start { first_row, header, header_lines, date: DatePlace::Cell(cell) });
    }
    for (above, cells) in sample.iter().enumerate() {
        let place = |names: &[&str]| cells.iter().position(|cell| names.contains(&cell.to_ascii_lowercase().as_str()));
        let year = place(&["year", "yr", "yyyy", "y"]);
        let month = place(&["month", "mon", "mo", "mm", "m"]);
        let day = place(&["day", "dy", "da", "dd", "d"]);
        if let (Some(year), Some(month), Some(day)) = (year, month, day) {
            let date = DatePlace::Split { year, month, day };
            let header = cells.clone();
            return (above + 1 < sample.len()).then_some(Start { first_row: above + 1, header, header_lines: 1, date });
        }
    }
    let split_at = |cells: &[String]| {
        cells.windows(3).position(|three| written_date::read_split(&three[0], &three[1], &three[2]).is_ok())
    };
    let (first_row, year) =
        sample.iter().enumerate().find_map(|(row, cells)| split_at(cells).map(|year| (row, year)))?;
    let date = DatePlace::Split { year, month: year + 1, day: year + 2 };
    let (header, header_lines) = header_above(&sample[..first_row]);
    Some(Start { first_row, header, header_lines, date })
}

/// The names of the columns, and in how many lines above the first row they stand: one, or two where that with the names
/// has another under it, of units or places, whose words are then added to them. None where nothing looks so.
fn header_above(above: &[Vec<String>]) -> (Vec<String>, usize) {
    let is_header = |cells: &&Vec<String>| cells.len() > 1 && !cells.iter().any(|cell| looks_measured(cell));
    let Some(last) = above.last().filter(is_header) else { return (Vec::new(), 0) };
    let of_rain = |cells: &&Vec<String>| cells.iter().any(|cell| rank(cell).is_some());
    let of_date = |cells: &&Vec<String>| cells.iter().any(|cell| is_of_date(cell));
    let names = above.iter().rev().nth(1).filter(|_| !of_rain(&last) && !of_date(&last));
    let names = names.filter(is_header).filter(of_rain).filter(of_date);
    match names {
        Some(names) => {
            let under = |at: usize| last.get(at).map_or("", String::as_str);
            let joined = names.iter().enumerate().map(|(at, name)| [name, " ", under(at)].concat().trim().to_owned());
            (joined.collect(), 2)
        }
        None => (last.clone(), 1),
    }
}

/// The column whose name speaks best of rain; without such a name, the only one that holds measurements.
fn rain_column(header: &[String], rows: &[Vec<String>], date: DatePlace) -> Result<usize, ImportError> {
    let mut named: Option<(u8, usize)> = None;
    for (cell, name) in header.iter().enumerate() {
        if let Some(rank) = rank(name).filter(|rank| !date.holds(cell) && named.is_none_or(|(best, _)| *rank < best)) {
            named = Some((rank, cell));
        }
    }
    if let Some((_, cell)) = named {
        return Ok(cell);
    }
    let width = rows.iter().map(Vec::len).max().unwrap_or(0);
    let measured = |cell: usize| {
        let (mut all, mut fitting, mut looks) = (0, 0, false);
        for text in rows.iter().filter_map(|row| row.get(cell)) {
            all += 1;
            fitting += usize::from(written_depth::read(text, true).is_ok());
            looks |= looks_measured(text);
        }
        looks && 5 * fitting >= 4 * all
    };
    let mut candidates = Vec::new();
    for cell in 0..width {
        if !date.holds(cell) && measured(cell) && !header.get(cell).is_some_and(|name| is_of_something_else(name)) {
            candidates.push(cell);
        }
    }
    match candidates[..] {
        [] => Err(ImportError::NoRainColumn { header: header.to_vec() }),
        [cell] => Ok(cell),
        _ => Err(ImportError::SeveralRainColumns {
            columns: candidates.iter().map(|&cell| shown(header, cell)).collect(),
        }),
    }
}

/// How well a name speaks of rain, 0 best; `None` if it doesn't.
fn rank(name: &str) -> Option<u8> {
    const NAMES: [&str; 11] = [
        "rain",
        "rainfall",
        "prcp",
        "precip",
        "precipitation",
        "precipitations",
        "pluie",
        "lluvia",
        "regen",
        "niederschlag",
        "pcp",
    ];
    const OTHER: [&str; 14] = [
        "attributes",
        "flag",
        "flags",
        "quality",
        "days",
        "hours",
        "duration",
        "probability",
        "prob",
        "intensity",
        "rate",
        "code",
        "cover",
        "type",
    ];
    let words = words_of(name);
    let is_one_of = |word: &String, list: &[&str]| list.contains(&word.as_str());
    if words.iter().any(|word| is_one_of(word, &OTHER)) {
        return None;
    }
    match words.first() {
        Some(first) if is_one_of(first, &NAMES) => Some(0),
        _ if words.iter().any(|word| is_one_of(word, &NAMES)) => Some(1),
        _ if words.iter().any(|word| ["rain", "precip", "prcp"].iter().any(|stem| word.contains(stem))) => Some(2),
        _ => None,
    }
}

/// Whether a column is named after the date.
fn is_of_date(name: &str) -> bool {
    words_of(name).iter().any(|word| ["date", "day", "datum", "fecha"].contains(&word.as_str()))
}

/// Whether a column is named after another thing that a station measures.
fn is_of_something_else(name: &str) -> bool {
    const STEMS: [&str; 8] = ["temp", "tmax", "tmin", "tavg", "wind", "humid", "press", "snow"];
    const UNITS: [&str; 5] = ["c", "f", "hpa", "kmh", "mph"];
    let names = |word: &String| UNITS.contains(&word.as_str()) || STEMS.iter().any(|stem| word.starts_with(stem));
    words_of(name).iter().any(names)
}

fn looks_measured(cell: &str) -> bool {
    use written_depth::WrittenDepth::{Number, Trace};
    !cell.is_empty() && matches!(written_depth::read(cell, true), Ok(Number(_) | Trace))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::super::lines::lines_of;
    use super::*;

    fn layout(text: &str) -> Result<Layout, ImportError> {
        let (lines, _) = lines_of(text).unwrap();
        layout_of(&lines, b',')
    }

    #[track_caller]
    fn check(text: &str, date: DatePlace, rain: usize) {
        let found = layout(text).unwrap();
        assert_eq!((found.date, found.rain), (date, rain), "{text}");
    }

    #[test]
    fn columns_are_found_by_name_in_any_order() {
        check("rain_mm,date\n1,2001-01-01\n", DatePlace::Cell(1), 0);
        check("date,tmax,precipitation,wind\n2001-01-01,9,1,3\n", DatePlace::Cell(0), 2);
        check("Date,Rain days,Precip (in)\n2001-01-01,9,1\n", DatePlace::Cell(0), 2);
        check("date,prcp_flag,daily_prcp\n2001-01-01,9,1\n", DatePlace::Cell(0), 2);
    }

    #[test]
    fn columns_are_found_without_names() {
        check("2001-01-01,5.3\n", DatePlace::Cell(0), 1);
        check("5.3,2001-01-01\n", DatePlace::Cell(1), 0);
        check("hill,2001-01-01,NA\nhill,2001-01-02,3\n", DatePlace::Cell(1), 2);
        check("when,how much\n2001-01-01,5.3\n", DatePlace::Cell(0), 1);
    }

    #[test]
    fn units_may_stand_under_the_names_and_titles_above_them() {
        let text = "Station on the hill, 120 m\nDate,Temp,Rain\n,°C,mm\n2001-01-01,9,1\n2001-01-02,8,0\n";
        check(text, DatePlace::Cell(0), 2);
        let found = layout(text).unwrap();
        assert_eq!((found.header[2].as_str(), found.lines_above), ("Rain mm", 1));
        // A title with commas is no line of names.
        let found = layout("Daily rain, at the hill\nday,mm\n2001-01-01,1\n").unwrap();
        assert_eq!((found.header, found.lines_above), (vec!["day".to_owned(), "mm".to_owned()], 1));
    }

    #[test]
    fn what_is_named_after_something_else_is_not_the_rain() {
        check("when,Max Temp (°C),amount\n2001-01-01,9,1\n", DatePlace::Cell(0), 2);
        check("when,wind_mph,total,hPa\n2001-01-01,9,1,1003\n", DatePlace::Cell(0), 2);
    }

    #[test]
    fn dates_may_stand_in_three_columns() {
        let split = DatePlace::Split { year: 0, month: 1, day: 2 };
        check("year,month,day,rain\n2001,1,31,4\n", split, 3);
        check("2001,1,31,4\n", split, 3);
        check("day,month,year,rain\n31,1,2001,4\n", DatePlace::Split { year: 2, month: 1, day: 0 }, 3);
    }

    #[test]
    fn a_first_row_with_a_broken_date_is_no_header() {
        let found = layout("20x1-01-01,4\n2001-01-02,5\n").unwrap();
        assert_eq!((found.header.len(), found.first_row, found.lines_above), (0, 1, 1));
    }

    #[test]
    fn several_columns_without_names_are_refused() {
        assert!(matches!(
            layout("2001-01-01,4,9\n"),
            Err(ImportError::SeveralRainColumns { columns }) if columns.len() == 2
        ));
        assert_eq!(layout("a,b\n1,2\n"), Err(ImportError::NoDates));
        assert!(matches!(layout("date,colour\n2001-01-01,red\n"), Err(ImportError::NoRainColumn { .. })));
    }
}

//! What went wrong with something that was typed, changed, read or saved: what, where, what to do.

use crate::engine::question::Refusal;
use crate::engine::rain::gaps::GapError;
use crate::engine::rain::import::ImportError as RainError;
use crate::engine::rain::normals::NormalsError;
use crate::quantity::typed::{Typed, TypedError};
use crate::quantity::{Kind, Range, Units, shown};
use crate::records::exchange::ImportError as FileError;
use crate::records::json::{SyntaxError, SyntaxFault};
use crate::records::place::{Fault, ShapeError, Wanted};
use crate::records::shelf::ShelfError;
use crate::records::slots::PutError;
use crate::site::edit::EditError;
use crate::site::system::System;

use super::rain_report::unreadable_row;

/// A text that is not a quantity.
pub fn typed(error: &TypedError) -> String {
    match error {
        TypedError::Empty => "Type a number.".to_owned(),
        TypedError::NotANumber { text } => format!("“{text}” is not a number. Type one, such as 1,700 or 2 1/2."),
        TypedError::UnknownUnit { text, kind } => {
            let symbols: Vec<String> =
                kind.units().iter().map(|unit| unit.sign().to_owned()).filter(|symbol| !symbol.is_empty()).collect();
            match symbols.as_slice() {
                [] => format!("“{text}” is not needed here. Type the number alone."),
                _ => format!("“{text}” is not a unit for this. Use {}.", super::list(&symbols)),
            }
        }
    }
}

/// A number outside its range.
pub fn out_of_range(kind: Kind, range: Range, units: &Units) -> String {
    format!(
        "It must be between {} and {}. Until then the old value stands.",
        shown::entered(range.least, kind, units),
        shown::entered(range.greatest, kind, units)
    )
}

/// How a typed quantity was understood, in the person's unit; `None` where that is plain from what was typed.
pub fn understood(typed: &Typed, kind: Kind, units: &Units) -> Option<String> {
    let own = units.of(kind);
    let plain = matches!(typed.parts.as_slice(), [(_, unit)] if unit.symbol == own.symbol);
    (!plain).then(|| format!("Understood as {}.", shown::entered(typed.si, kind, units)))
}

/// A change that was refused.
pub fn edit(error: &EditError, system: &System, units: &Units) -> String {
    match error {
        EditError::OutOfRange { field, kind, range, .. } => {
            format!("{}: {}", super::parts::label(*field, system), out_of_range(*kind, *range, units))
        }
        EditError::NoSuchValue => "That part is no longer there. Nothing was changed.".to_owned(),
        EditError::DetailOutOfRange(detail) => {
            let row = detail.row();
            format!("{}: {}", super::checks::details::label(*detail), out_of_range(row.kind, row.range, units))
        }
        EditError::NamelessPart => "A part needs a name. The old one stays.".to_owned(),
    }
}

/// A write that failed.
pub fn put(error: PutError) -> String {
    match error {
        PutError::Shelf(ShelfError::Denied) => {
            "Not saved: this browser does not let the app keep anything. What you see stays until you close it; \
             export a file to keep it."
        }
        PutError::Shelf(ShelfError::Full) => {
            "Not saved: the browser's storage is full. What you see stays until you close it; export a file, then \
             remove a site that you no longer need."
        }
        PutError::ChangedElsewhere => {
            "Not saved: another window changed this site meanwhile. Export a file if you want to keep what you see, \
             then load the page again."
        }
        PutError::Newer => {
            "Not saved: a newer Eavewater wrote this record. Load the page again to get the newer version."
        }
    }
    .to_owned()
}

/// A file that can't be taken in.
pub fn file(error: &FileError) -> String {
    match error {
        FileError::NotText => "This is not a text file. Choose a file that Eavewater exported.".to_owned(),
        FileError::NotJson(SyntaxError { line, column, fault }) => format!(
            "This is not a file that Eavewater exported, or it is damaged: line {line}, column {column}: {}. Nothing was \
             changed.",
            match fault {
                SyntaxFault::Ends => "it ends before it is complete",
                SyntaxFault::Misplaced => "what stands there does not belong there",
                SyntaxFault::TooDeep => "too many lists stand within each other",
            }
        ),
        FileError::OtherFormat { format } => format!(
            "This is not a file that Eavewater exported: it says that its format is “{format}”. Nothing was changed."
        ),
        FileError::WrongShape(error) => format!(
            "This is not a file that Eavewater exported, or it is damaged: {}. Nothing was changed.",
            wrong_shape(error)
        ),
        FileError::TooLarge => "This file is larger than any that Eavewater exports.".to_owned(),
        FileError::Newer { version } => format!(
            "A newer Eavewater wrote this file (version {version}). Load the page again while online to get the newer \
             version, then import it."
        ),
    }
}

/// A value in a file that does not have the shape it must have.
fn wrong_shape(error: &ShapeError) -> String {
    let place = if error.path.is_empty() { "the whole" } else { &error.path };
    let must_be = match &error.fault {
        Fault::Missing => return format!("{place} is missing"),
        Fault::Length { wanted, found } => return format!("{place} has {found} values instead of {wanted}"),
        Fault::Unknown { name } => return format!("{place}: “{name}” is not known"),
        Fault::OutOfRange => return format!("{place} is beyond what it may be"),
        Fault::NotA(Wanted::WholeNumber { most }) => &format!("a whole number from 0 to {most}"),
        Fault::NotA(Wanted::Number) => "a number",
        Fault::NotA(Wanted::Text) => "text",
        Fault::NotA(Wanted::Truth) => "true or false",
        Fault::NotA(Wanted::Date) => "a date such as 2004-07-31",
        Fault::NotA(Wanted::List) => "a list",
        Fault::NotA(Wanted::Object) => "an object",
        Fault::NotA(Wanted::Choice) => "the name of a choice",
    };
    format!("{place} must be {must_be}")
}

/// A rain file of which no record can be made.
pub fn rain(error: &RainError) -> String {
    match error {
        RainError::Empty => {
            "There is nothing in it. Choose a file with a date and a rain depth in each row.".to_owned()
        }
        RainError::TooManyBytes { bytes, most } => format!(
            "The file is too large: {} MB; at most {} MB are read. Cut it to one station.",
            bytes / 1_000_000,
            most / 1_000_000
        ),
        RainError::TooManyLines { most } => {
            format!("The file has more than {} lines. Cut it to one station.", super::number_text(*most))
        }
        RainError::NotText => {
            "This is not plain text; a spreadsheet must be saved as CSV first. Nothing was changed.".to_owned()
        }
        RainError::NoDates => {
            "No dates were found. Each row needs a date such as 2004-07-31 and a rain depth.".to_owned()
        }
        RainError::NoRainColumn { header } if header.is_empty() => {
            "No column holds rain depths. Each row needs a date and a number.".to_owned()
        }
        RainError::NoRainColumn { header } => {
            format!("No column holds rain depths. The columns are {}. Name the right one “rain”.", super::list(header))
        }
        RainError::SeveralRainColumns { columns } => {
            let names: Vec<String> = columns
                .iter()
                .map(|column| column.name.clone().unwrap_or_else(|| format!("number {}", column.place)))
                .collect();
            format!("Several columns could be the rain: {}. Name the right one “rain”.", super::list(&names))
        }
        RainError::SeveralStations { first, second, line } => {
            format!("There are several stations in it: {first}, and {second} from line {line} on. Keep one of them.")
        }
        RainError::MostlyUnreadable { rows_read, unreadable } => format!(
            "Only {} could be read and {} could not. {}",
            super::count(*rows_read, "row", "rows"),
            super::number_text(unreadable.count),
            unreadable.first.iter().map(unreadable_row).collect::<Vec<_>>().join(" ")
        ),
        RainError::NothingMeasured => "No row holds a measured depth.".to_owned(),
    }
}

/// Why there is no answer, but for the findings of the system, which are told one by one.
pub fn refusal(refusal: &Refusal) -> Option<String> {
    Some(match refusal {
        Refusal::System(_) => return None,
        Refusal::Gaps(GapError::NothingMeasured) => "The rain record holds no measured day. Load another.".to_owned(),
        Refusal::Gaps(GapError::NoYearLeft { with_more_than, best_year, lacking }) => format!(
            "Every year lacks more than {with_more_than} days; {best_year} lacks the fewest, {lacking}. Allow more missing \
             days, or fill them from other years."
        ),
        Refusal::Gaps(GapError::NoYearHasDay { month, day }) => format!(
            "No year of the record has a depth for {day} {}, so that day can't be filled. Leave out years with missing \
             days instead, or load a longer record.",
            month_name(*month as usize)
        ),
        Refusal::Gaps(GapError::NotADepth { date, depth_mm }) => not_a_depth(*date, *depth_mm),
        Refusal::Normals(error) => normals(error),
        Refusal::Model(error) => super::generated::no_model(error),
    })
}

/// A depth in a record that is none.
pub fn not_a_depth(date: chrono::NaiveDate, depth_mm: f64) -> String {
    format!("The record holds {depth_mm} mm for {}, which is no depth. Load it anew.", super::date(date))
}

/// Why monthly means can't be used.
pub fn normals(error: &NormalsError) -> String {
    match error {
        NormalsError::Years { .. } => "No year of rain could be made of the means.".to_owned(),
        NormalsError::Total { month, total_mm } => {
            format!("{}: {total_mm} mm is no monthly total. Enter it anew.", month_name(*month))
        }
        NormalsError::RainDays { month, rain_days, most } => {
            format!("{}: {rain_days} rain days; the month has {most}. Enter them anew.", month_name(*month))
        }
    }
}

fn month_name(month: usize) -> &'static str {
    super::months().get(month.wrapping_sub(1)).copied().unwrap_or_default()
}

/// A line of a tank's table that can't be read.
pub fn table_row(line: usize, text: &str) -> String {
    format!("Line {line}, “{text}”, is not a depth and a volume. Write, for example: 0.5 m  900 L.")
}

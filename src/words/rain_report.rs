//! What was found in a rain file, before anything is kept.

use chrono::NaiveDate;

use super::{count, date, number_text, percent};
use crate::engine::rain::rain_unit::RainUnit;
use crate::engine::rain::report::{DateOrder, DaySpan, Notice, Occasions, OrderBasis, Report, RowFault, UnreadableRow};
use crate::quantity::{Kind, Units, shown};

/// A unit of a rain file.
pub const fn unit(unit: RainUnit) -> &'static str {
    match unit {
        RainUnit::Millimetres => "Millimetres",
        RainUnit::TenthsOfMillimetre => "Tenths of a millimetre",
        RainUnit::Centimetres => "Centimetres",
        RainUnit::Inches => "Inches",
        RainUnit::HundredthsOfInch => "Hundredths of an inch",
    }
}

/// The whole of the record in a sentence.
pub fn summary(report: &Report) -> String {
    format!(
        "{} read: {} to {}, {} with a depth and {} without.",
        count(report.rows_read, "row", "rows"),
        date(report.span.first),
        date(report.span.last),
        count(report.measured_days, "day", "days"),
        number_text(report.missing_days)
    )
}

/// Whether a notice is a doubt about the record as a whole, rather than an account of single rows.
pub fn is_doubt(notice: &Notice) -> bool {
    matches!(
        notice,
        Notice::AnnualTotalUnlikely { .. }
            | Notice::UnlikelyDryRun { .. }
            | Notice::Drizzle { .. }
            | Notice::UnitAssumed { .. }
            | Notice::DateOrderAssumed { .. }
            | Notice::BeyondWorldRecord(_)
            | Notice::ConflictingDates(_)
    )
}

/// A notice as a sentence.
pub fn sentence(notice: &Notice, units: &Units) -> String {
    let depth = |mm: f64| shown::figure(mm, Kind::Depth, units);
    let days = |number: usize| count(number, "day", "days");
    match notice {
        Notice::LinesAboveTable { lines } => format!("{} above the table passed over.", count(*lines, "line", "lines")),
        Notice::RowsUnreadable(rows) => format!(
            "{} could not be read and left out: {}",
            count(rows.count, "row", "rows"),
            some(rows, unreadable_row)
        ),
        Notice::DateOrderAssumed { order, basis } => format!(
            "Dates were read with the {} first{}",
            match order {
                DateOrder::DayFirst => "day",
                DateOrder::MonthFirst => "month",
            },
            match basis {
                OrderBasis::Dates => ", as some of them can only be read.",
                OrderBasis::Succession => ", since the days follow one another so.",
                OrderBasis::Assumed => ". The file does not decide it: check a date that you know.",
            }
        ),
        Notice::UnitAssumed { unit: assumed, mean_rain_day } => format!(
            "The file does not say its unit. {} were assumed, a mean rain day being {} in the file's own numbers. Choose \
             another unit below if that is wrong.",
            unit(*assumed),
            shown::significant(*mean_rain_day, 3)
        ),
        Notice::MarkedMissing(dates) => {
            format!("{} marked as not measured: {}", days(dates.count), some(dates, |day| date(*day)))
        }
        Notice::Gaps { gaps, days: missing, longest } => format!(
            "{} missing in {}, the longest {}. They count as unknown, never as dry.",
            days(*missing),
            count(*gaps, "gap", "gaps"),
            span(longest)
        ),
        Notice::RepeatedDates(dates) => {
            format!(
                "{} given more than once, with the same depth; taken once: {}",
                days(dates.count),
                some(dates, |day| date(*day))
            )
        }
        Notice::ConflictingDates(conflicts) => format!(
            "{} given again with another depth; the first was kept: {}",
            days(conflicts.count),
            some(conflicts, |conflict| format!(
                "{} ({} kept, {} not)",
                date(conflict.date),
                depth(conflict.kept_mm),
                conflict.refused_mm.map_or_else(|| "“not measured”".to_owned(), depth)
            ))
        ),
        Notice::Traces(dates) => format!("{} with a trace of rain, counted as none.", days(dates.count)),
        Notice::PresumedZero(dates) => {
            format!("{} where the publisher presumed none because nothing was reported; kept so.", days(dates.count))
        }
        Notice::Negative(rows) => format!(
            "{} with a depth below zero, treated as missing: {}",
            days(rows.count),
            some(rows, |row| date(row.date))
        ),
        Notice::QualityFlagged(rows) => format!(
            "{} failed the publisher's quality checks and count as missing: {}",
            days(rows.count),
            some(rows, |row| format!("{} (flag {})", date(row.date), row.flag))
        ),
        Notice::MultiDayTotals(totals) => format!(
            "{} over several days, whose rain can't be told apart; days without a depth stay missing: {}",
            count(totals.count, "total", "totals"),
            some(totals, |total| format!("{} by {}", depth(total.total_mm), date(total.read_on)))
        ),
        Notice::BeyondWorldRecord(rows) => format!(
            "{} above {}, the most ever measured in a day (WMO: Foc-Foc, La Réunion, January 1966); treated as missing: {}",
            days(rows.count),
            depth(1825.0),
            some(rows, |row| date(row.date))
        ),
        Notice::AnnualTotalUnlikely { mean_mm } => format!(
            "A mean year comes to {}, which is found nowhere on Earth (10 to 13,000 mm). The unit looks wrong.",
            depth(*mean_mm)
        ),
        Notice::UnlikelyDryRun { span: dry, .. } => format!(
            "No rain at all {}, which the other years make very unlikely: perhaps nobody measured and zeros were \
             written. Kept as written.",
            span(dry)
        ),
        Notice::Drizzle { rain_days, under_1_mm } => format!(
            "Rain on {} of days, {} of them under 1 mm: more like a computed series than a gauge's. Kept as written.",
            percent(*rain_days),
            percent(*under_1_mm)
        ),
    }
}

/// A row that could not be read, with its line.
pub fn unreadable_row(row: &UnreadableRow) -> String {
    let fault = match &row.fault {
        RowFault::NotADate { text } => format!("“{text}” is not a date"),
        RowFault::NoSuchDay { text } => format!("“{text}” is not a day of the calendar"),
        RowFault::YearOutOfRange { text } => format!("“{text}” is not between 1700 and 2200"),
        RowFault::NotANumber { text } => format!("“{text}” is not a depth"),
        RowFault::TooFewCells { cells } => format!("it has only {}", count(*cells, "cell", "cells")),
    };
    format!("line {}: {fault}.", row.line)
}

fn some<T>(occasions: &Occasions<T>, each: impl Fn(&T) -> String) -> String {
    let mut first = Vec::with_capacity(occasions.first.len());
    for occasion in &occasions.first {
        first.push(each(occasion));
    }
    among(&first, occasions.count)
}

/// The first of so many occasions.
fn among(first: &[String], count: usize) -> String {
    let more = count.saturating_sub(first.len());
    let first = first.join("; ");
    match more {
        0 if first.ends_with('.') => first,
        0 => format!("{first}."),
        _ => format!("{first}; and {} more.", number_text(more)),
    }
}

fn span(span: &DaySpan) -> String {
    let whole = |day: NaiveDate| date(day);
    if span.first == span.last {
        format!("on {}", whole(span.first))
    } else {
        format!("from {} to {}", whole(span.first), whole(span.last))
    }
}

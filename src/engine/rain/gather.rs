//! Rows of a file to a record: one depth a day, and an account of every row that was changed or refused.

use chrono::NaiveDate;

use super::import::{Columns, Form, ImportError};
use super::rain_unit::RainUnit;
use super::report::{
    Conflict, DateOrder, DayDepth, DaySpan, FlaggedDepth, MultiDayTotal, Notice, Occasions, OrderBasis, Report,
    RowFault, UnreadableRow,
};
use super::written_date::{WrittenDate, order_of};
use crate::site::rain::RainRecord;

/// The greatest depth ever measured in 24 hours, in mm: Foc-Foc, La Réunion, 7–8 January 1966.
/// Source: World Meteorological Organization, archive of weather and climate extremes (from memory).
pub const WORLD_RECORD_DAY_MM: f64 = 1825.0;

/// What a file said, before its dates were ordered and its depths judged.
pub(super) struct Reading {
    pub(super) rows: Vec<Row>,
    pub(super) unreadable: Occasions<UnreadableRow>,
    /// Totals of several days: the day of reading, how many days, the total in the file's unit.
    pub(super) multi_day: Vec<(WrittenDate, Option<u16>, f64)>,
    pub(super) lines_above: usize,
    pub(super) unit: RainUnit,
    pub(super) unit_basis: UnitBasis,
    pub(super) form: Form,
    pub(super) columns: Columns,
}

/// What the unit rests on.
#[derive(Clone, Copy)]
pub(super) enum UnitBasis {
    /// The person or the file.
    Told,
    /// The look of the numbers.
    Guessed { mean_rain_day: f64 },
}

/// A row that was understood.
pub(super) struct Row {
    pub(super) line: usize,
    pub(super) date: WrittenDate,
    /// The time of the day that it names, in minutes.
    pub(super) minute: Option<u16>,
    pub(super) entry: Entry,
}

/// What a row says of its day, in the file's unit.
#[derive(Clone, Copy)]
pub(super) enum Entry {
    Number(f64),
    Trace,
    PresumedZero,
    Flagged { number: Option<f64>, flag: char },
    Missing,
}

/// The mean of the numbers above 0, as written, those of times of one day taken together; 0 if there are none.
pub(super) fn mean_rain_day(rows: &[Row]) -> f64 {
    let (mut count, mut sum) = (0_usize, 0.0);
    let mut counted: Option<WrittenDate> = None;
    for row in rows {
        if let Entry::Number(number) = row.entry
            && number > 0.0
        {
            count += usize::from(row.minute.is_none() || counted != Some(row.date));
            sum += number;
            counted = Some(row.date);
        }
    }
    if count == 0 { 0.0 } else { sum / count as f64 }
}

/// So many rows of a day are no stations: they are times of the day (common practice, no source).
const MANY_A_DAY: usize = 6;

/// Makes the record. The span runs from the first to the last dated row; days between without a depth are missing.
///
/// # Errors
/// `Monthly`, `ManyRowsADay`, `MostlyUnreadable`, `NothingMeasured`.
pub(super) fn record_of(reading: Reading, source: &str, comments: usize) -> Result<(RainRecord, Report), ImportError> {
    let dates = reading.rows.iter().map(|row| row.date);
    if is_monthly(dates.clone()) {
        return Err(ImportError::Monthly { rows: reading.rows.len() });
    }
    let order = order_of(dates);
    let mut found = Found { unreadable: reading.unreadable, ..Found::default() };
    let read_as = order.map_or(DateOrder::DayFirst, |(order, _)| order);
    let dates: Vec<Option<NaiveDate>> = reading.rows.iter().map(|row| row.date.on(read_as)).collect();
    let mut times: Vec<(NaiveDate, u16)> =
        reading.rows.iter().zip(&dates).filter_map(|(row, date)| Some(((*date)?, row.minute?))).collect();
    times.sort_unstable();
    times.dedup();
    let day_count = distinct(dates.iter().copied().flatten()).len();
    if times.is_empty()
        && let Some(rows) = dates.iter().flatten().count().checked_div(day_count).filter(|rows| *rows >= MANY_A_DAY)
    {
        return Err(ImportError::ManyRowsADay { rows });
    }
    // Only several times of a day, each with its own rain, make up the day.
    if times.len() < 2 * day_count {
        times.clear();
    }
    let first = dates.iter().flatten().min().copied().unwrap_or_default();
    let last = dates.iter().flatten().max().copied().unwrap_or_default();
    let day_of = |date: NaiveDate| usize::try_from((date - first).num_days()).unwrap_or(0);
    let mut days = vec![Given::Nowhere; day_of(last) + 1];
    let mut rows_read = 0;
    let mut seen = vec![false; times.len()];
    for (row, date) in reading.rows.iter().zip(dates) {
        match date {
            Some(date) => {
                rows_read += 1;
                let depth = found.judge(date, row.entry, reading.unit);
                let time = row.minute.and_then(|minute| times.binary_search(&(date, minute)).ok());
                match time {
                    None => found.place(&mut days[day_of(date)], date, depth),
                    // The same time once more is no more rain.
                    Some(time) if std::mem::replace(&mut seen[time], true) => found.repeated.add(date),
                    Some(_) => {
                        found.added += 1;
                        add(&mut days[day_of(date)], depth);
                    }
                }
            }
            None => {
                let text = match row.date {
                    WrittenDate::Either { first, second, year } => format!("{first}/{second}/{year}"),
                    WrittenDate::Exact(date) => date.to_string(),
                };
                found.unreadable.add(UnreadableRow { line: row.line, fault: RowFault::NoSuchDay { text } });
            }
        }
    }
    if found.unreadable.count > rows_read {
        let unreadable = found.unreadable;
        return Err(ImportError::MostlyUnreadable { rows_read, unreadable });
    }
    if let Some(most) = usual_times(&times) {
        // What fell at the times that a day lacks nobody knows.
        let lacking = times.chunk_by(|one, other| one.0 == other.0).filter(|times| times.len() < most);
        lacking.for_each(|times| days[day_of(times[0].0)] = Given::Missing);
    }
    let depths_mm =
        days.into_iter().map(|given| if let Given::Depth(depth_mm) = given { Some(depth_mm) } else { None });
    let record = RainRecord { source: source.to_string(), start: first, depths_mm: depths_mm.collect() };
    let measured_days = record.depths_mm.iter().flatten().count();
    if measured_days == 0 {
        return Err(ImportError::NothingMeasured);
    }
    for (date, days, total) in reading.multi_day {
        if let Some(read_on) = date.on(read_as) {
            found.multi_day.add(MultiDayTotal { read_on, days, total_mm: reading.unit.to_mm(total) });
        }
    }
    let report = Report {
        rows_read,
        span: DaySpan { first, last },
        measured_days,
        missing_days: record.depths_mm.len() - measured_days,
        comment_lines: comments,
        notices: found.notices(reading.lines_above, order, reading.unit, reading.unit_basis, &record),
    };
    Ok((record, report))
}

/// So many times of a day as nearly all days have; none where they are now more, now fewer, as a gauge writes that counts drops.
fn usual_times(times: &[(NaiveDate, u16)]) -> Option<usize> {
    const NEARLY_ALL: f64 = 0.8;
    let counts: Vec<usize> = times.chunk_by(|one, other| one.0 == other.0).map(<[_]>::len).collect();
    let most = counts.iter().max().copied()?;
    let having = counts.iter().filter(|count| **count == most).count();
    (having as f64 >= NEARLY_ALL * counts.len() as f64).then_some(most)
}

/// The days of some dates, in order, each once.
fn distinct(dates: impl Iterator<Item = NaiveDate>) -> Vec<NaiveDate> {
    let mut days: Vec<NaiveDate> = dates.collect();
    days.sort_unstable();
    days.dedup();
    days
}

/// Whether, with one number or the other for the day, the rows lie a month apart.
fn is_monthly(dates: impl Iterator<Item = WrittenDate> + Clone) -> bool {
    /// A shorter file may be a few days of a diary.
    const FEWEST: usize = 6;
    /// Where day and month may be either, twelve days of one month look like the first of twelve months.
    const FEWEST_OPEN: usize = 13;
    /// A month may be missing now and then.
    const MOSTLY: f64 = 0.9;
    [DateOrder::DayFirst, DateOrder::MonthFirst].into_iter().any(|order| {
        let days = distinct(dates.clone().filter_map(|date| date.on(order)));
        let apart: Vec<i64> = days.windows(2).map(|pair| (pair[1] - pair[0]).num_days()).collect();
        let months = apart.iter().filter(|days| (28..=31).contains(*days)).count();
        let open = dates.clone().all(|date| {
            [DateOrder::DayFirst, DateOrder::MonthFirst].map(|order| date.on(order)) != [date.on(order); 2]
        });
        days.len() >= if open { FEWEST_OPEN } else { FEWEST }
            && days.len() == dates.clone().count()
            && apart.iter().all(|days| *days >= 28)
            && months as f64 >= MOSTLY * apart.len() as f64
    })
}

/// Adds the depth of a time of day to its day; with one of them missing nobody knows what the day had.
fn add(given: &mut Given, depth: Option<f64>) {
    *given = match (*given, depth) {
        (Given::Nowhere, Some(mm)) => Given::Depth(mm),
        (Given::Depth(sum_mm), Some(mm)) => Given::Depth(sum_mm + mm),
        (Given::Missing, _) | (_, None) => Given::Missing,
    };
}

/// What the rows gave for a day.
#[derive(Clone, Copy, PartialEq)]
enum Given {
    /// No row is for it.
    Nowhere,
    /// Only that nothing was measured.
    Missing,
    /// A depth in mm.
    Depth(f64),
}

/// What was found among the rows, by kind.
#[derive(Default)]
struct Found {
    /// Rows that were added up to days.
    added: usize,
    unreadable: Occasions<UnreadableRow>,
    missing: Occasions<NaiveDate>,
    repeated: Occasions<NaiveDate>,
    conflicting: Occasions<Conflict>,
    traces: Occasions<NaiveDate>,
    presumed: Occasions<NaiveDate>,
    negative: Occasions<DayDepth>,
    flagged: Occasions<FlaggedDepth>,
    multi_day: Occasions<MultiDayTotal>,
    beyond: Occasions<DayDepth>,
}

impl Found {
    /// The depth of a row in mm, `None` for missing; what is odd about it is noted.
    fn judge(&mut self, date: NaiveDate, entry: Entry, unit: RainUnit) -> Option<f64> {
        match entry {
            Entry::Number(number) => {
                let depth_mm = unit.to_mm(number);
                if depth_mm < 0.0 {
                    self.negative.add(DayDepth { date, depth_mm });
                    None
                } else if depth_mm > WORLD_RECORD_DAY_MM {
                    self.beyond.add(DayDepth { date, depth_mm });
                    None
                } else {
                    Some(depth_mm + 0.0) // a written "-0" becomes 0
                }
            }
            Entry::Trace => {
                self.traces.add(date);
                Some(0.0)
            }
            Entry::PresumedZero => {
                self.presumed.add(date);
                Some(0.0)
            }
            Entry::Flagged { number, flag } => {
                self.flagged.add(FlaggedDepth { date, depth_mm: number.map(|number| unit.to_mm(number)), flag });
                None
            }
            Entry::Missing => {
                self.missing.add(date);
                None
            }
        }
    }

    /// Puts a depth to its day. The first measured one stays.
    fn place(&mut self, given: &mut Given, date: NaiveDate, depth: Option<f64>) {
        let new = depth.map_or(Given::Missing, Given::Depth);
        match (*given, depth) {
            (Given::Nowhere, _) => *given = new,
            (kept, _) if kept == new => self.repeated.add(date),
            (Given::Depth(kept_mm), refused_mm) => self.conflicting.add(Conflict { date, kept_mm, refused_mm }),
            (Given::Missing, Some(kept_mm)) => {
                self.conflicting.add(Conflict { date, kept_mm, refused_mm: None });
                *given = new;
            }
            (Given::Missing, None) => {}
        }
    }

    fn notices(
        self,
        lines: usize,
        order: Option<(DateOrder, OrderBasis)>,
        unit: RainUnit,
        unit_basis: UnitBasis,
        record: &RainRecord,
    ) -> Vec<Notice> {
        fn some<T>(notices: &mut Vec<Notice>, occasions: Occasions<T>, notice: fn(Occasions<T>) -> Notice) {
            if occasions.count > 0 {
                notices.push(notice(occasions));
            }
        }
        let mut notices = Vec::new();
        if lines > 0 {
            notices.push(Notice::LinesAboveTable { lines });
        }
        some(&mut notices, self.unreadable, Notice::RowsUnreadable);
        if let Some((order, basis)) = order.filter(|(_, basis)| *basis != OrderBasis::Dates) {
            notices.push(Notice::DateOrderAssumed { order, basis });
        }
        if let UnitBasis::Guessed { mean_rain_day } = unit_basis {
            notices.push(Notice::UnitAssumed { unit, mean_rain_day });
        }
        if self.added > 0 {
            notices.push(Notice::AddedUp { rows: self.added });
        }
        some(&mut notices, self.missing, Notice::MarkedMissing);
        notices.extend(gaps(record));
        some(&mut notices, self.repeated, Notice::RepeatedDates);
        some(&mut notices, self.conflicting, Notice::ConflictingDates);
        some(&mut notices, self.traces, Notice::Traces);
        some(&mut notices, self.presumed, Notice::PresumedZero);
        some(&mut notices, self.negative, Notice::Negative);
        some(&mut notices, self.flagged, Notice::QualityFlagged);
        some(&mut notices, self.multi_day, Notice::MultiDayTotals);
        some(&mut notices, self.beyond, Notice::BeyondWorldRecord);
        notices
    }
}

fn gaps(record: &RainRecord) -> Option<Notice> {
    let spans = super::spans::spans(record, |depth| depth.is_none());
    let longest = spans.iter().rev().max_by_key(|span| span.days()).copied()?;
    let days = record.depths_mm.iter().filter(|depth| depth.is_none()).count();
    Some(Notice::Gaps { gaps: spans.len(), days, longest })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::super::import::read;
    use super::*;

    fn notices(text: &str) -> (Vec<Option<f64>>, Vec<Notice>) {
        let import = read(text.as_bytes(), None, "test").unwrap();
        (import.record.depths_mm, import.report.notices)
    }

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    #[test]
    fn a_clean_file_has_nothing_to_say() {
        assert_eq!(notices("date,rain_mm\n2001-01-01,5\n2001-01-02,0\n").1, []);
    }

    #[test]
    fn gaps_are_counted_and_the_longest_is_named() {
        let (depths, notices) = notices("date,rain_mm\n2001-01-01,5\n2001-01-03,0\n2001-01-06,5\n");
        assert_eq!(depths.len(), 6);
        let longest = DaySpan { first: day("2001-01-04"), last: day("2001-01-05") };
        assert_eq!(notices, [Notice::Gaps { gaps: 2, days: 3, longest }]);
    }

    #[test]
    fn the_first_measured_depth_of_a_day_stays() {
        let (depths, notices) =
            notices("date,rain_mm\n2001-01-01,5\n2001-01-01,6\n2001-01-01,5\n2001-01-02,NA\n2001-01-02,7\n");
        assert_eq!(depths, [Some(5.0), Some(7.0)]);
        let repeated = notices.iter().any(|n| matches!(n, Notice::RepeatedDates(dates) if dates.count == 1));
        let conflicts = notices.iter().find_map(|notice| match notice {
            Notice::ConflictingDates(conflicts) => Some(conflicts.first.clone()),
            _ => None,
        });
        assert!(repeated);
        assert_eq!(
            conflicts.unwrap(),
            [
                Conflict { date: day("2001-01-01"), kept_mm: 5.0, refused_mm: Some(6.0) },
                Conflict { date: day("2001-01-02"), kept_mm: 7.0, refused_mm: None },
            ]
        );
    }

    #[test]
    fn depths_that_cannot_be_are_missing_and_reported() {
        let (depths, notices) =
            notices("date,rain_mm\n2001-01-01,-3\n2001-01-02,1825\n2001-01-03,1825.1\n2001-01-04,1e300\n");
        assert_eq!(depths, [None, Some(1825.0), None, None]);
        assert!(notices.iter().any(|n| matches!(n, Notice::Negative(days) if days.first[0].depth_mm == -3.0)));
        assert!(notices.iter().any(|n| matches!(n, Notice::BeyondWorldRecord(days) if days.count == 2)));
    }

    #[test]
    fn an_open_order_of_day_and_month_is_reported() {
        let (_, found) = notices("date,rain_mm\n1/2/2001,3\n");
        let order = DateOrder::DayFirst;
        assert_eq!(found, [Notice::DateOrderAssumed { order, basis: OrderBasis::Assumed }]);
    }

    #[test]
    fn totals_of_months_are_no_days() {
        let months = |write: fn(usize) -> String| (0..14).map(|month| write(month) + ",3.25\n").collect::<String>();
        let files = [
            months(|month| format!("{}/1/{}", month % 12 + 1, 2012 + month / 12)),
            months(|month| format!("1.{}.{}", month % 12 + 1, 2012 + month / 12)),
            months(|month| format!("{}-{:02}-01", 2012 + month / 12, month % 12 + 1)),
        ];
        for file in files {
            assert_eq!(read(file.as_bytes(), None, "test").unwrap_err(), ImportError::Monthly { rows: 14 }, "{file}");
        }
        // Ten days of a diary whose first number is the day, too, and those of one that is written now and then.
        let ten: String = (1..=10).map(|day| format!("{day:02}/11/2026,3.5\n")).collect();
        assert_eq!(read(ten.as_bytes(), None, "test").unwrap().record.depths_mm.len(), 10);
        let days = "2012-01-01,3\n2012-02-01,3\n2012-02-02,3\n2012-03-01,3\n2012-04-01,3\n2012-05-01,3\n2012-06-01,3\n";
        assert!(read(days.as_bytes(), None, "test").is_ok());
    }

    #[test]
    fn times_of_a_day_are_added_up() {
        let hours = "when,mm\n2001-03-05 00:00,1\n2001-03-05 12:00,2.5\n2001-03-05 18:00,0\n2001-03-06 00:00,0\n2001-03-06 12:00,\n\
                     2001-03-06 18:00,1\n2001-03-07 00:00,0\n2001-03-07 12:00,0\n2001-03-07 18:00,0\n";
        let (depths, told) = notices(hours);
        assert_eq!(depths, [Some(3.5), None, Some(0.0)], "a time that is missing leaves its day unknown");
        assert!(told.contains(&Notice::AddedUp { rows: 9 }), "{told:?}");
        assert!(!told.iter().any(|notice| matches!(notice, Notice::RepeatedDates(_) | Notice::ConflictingDates(_))));
        // So does one that can't be read, and, where each day has as many, one that isn't there.
        let spoilt = hours.replace("12:00,2.5", "12:00,bad");
        assert_eq!(notices(&spoilt).0, [None, None, Some(0.0)]);
        let days = |hours: &[u32]| -> String {
            (1..=8).flat_map(|day| hours.iter().map(move |hour| format!("2001-03-{day:02} {hour:02}:00,1\n"))).collect()
        };
        let cut = days(&[0, 6, 12, 18]).replace("2001-03-08 18:00,1\n", "");
        assert_eq!(notices(&cut).0[6..], [Some(4.0), None]);
        // With the time in a column of its own nobody knows what is what.
        let apart = "date,hour,rain\n".to_owned() + &days(&[0, 6, 12, 18, 21, 22]).replace(' ', ",").replace(":00", "");
        assert_eq!(
            read(apart.as_bytes(), Some(RainUnit::Millimetres), "test").unwrap_err(),
            ImportError::ManyRowsADay { rows: 6 }
        );
        // One reading a day at an hour is a day's, and the same rows once more are no more rain.
        let (depths, told) = notices("2001-03-05 07:00,1\n2001-03-06 07:00,2\n2001-03-06 07:00,2\n");
        assert_eq!(depths, [Some(1.0), Some(2.0)]);
        assert!(!told.iter().any(|notice| matches!(notice, Notice::AddedUp { .. })));
        let twice = |hours: &[u32]| notices(&["when,mm\n", &days(hours), &days(hours)].concat()).0;
        assert_eq!(twice(&[0, 6, 12, 18]), [Some(4.0); 8]);
        assert_eq!(twice(&[7]), [Some(1.0); 8]);
    }

    #[test]
    fn the_unit_of_times_of_a_day_is_that_of_their_days() {
        // 12 mm of rain on a day, 0.5 an hour: inches by the hour, millimetres by the day.
        let hours: String =
            (1..=8).flat_map(|day| (0..24).map(move |hour| format!("2001-03-{day:02} {hour:02}:00,0.5\n"))).collect();
        let import = read(hours.as_bytes(), None, "test").unwrap();
        assert_eq!((import.unit, import.record.depths_mm[0]), (RainUnit::Millimetres, Some(12.0)));
    }
}

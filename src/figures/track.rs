//! Content of a store as it was read, with the line that was reckoned from each reading on.

use chrono::{Datelike, NaiveDate};

use super::drawing::{Anchor, Drawing, Ink, Reading};
use super::frame::{DIGITS, Frame, Wanted, with_unit};
use super::lettering::SMALL;
use super::pen::Point;
use super::scale::Scale;
use super::table::Table;
use super::ticks;
use crate::quantity::shown::significant;

/// Width of a tick's label.
const TICK: f64 = 46.0;
/// Radius of a reading's dot.
const DOT: f64 = 4.0;

/// A reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Read {
    /// The day.
    pub date: NaiveDate,
    /// The content, in the unit that is shown.
    pub value: f64,
    /// Whether it was brim-full: it may have been more.
    pub at_least: bool,
}

/// Readings and lines within some days.
#[derive(Clone, Copy, Debug)]
pub struct Track<'a> {
    /// The first day.
    pub from: NaiveDate,
    /// The last day.
    pub to: NaiveDate,
    /// What the store holds when full.
    pub capacity: f64,
    /// The readings, by day; those of other days are not drawn.
    pub reads: &'a [Read],
    /// What was reckoned: first day and the content at the end of each day from there on.
    pub lines: &'a [(NaiveDate, Vec<f64>)],
    /// What is written.
    pub words: &'a TrackWords,
}

/// What is written at readings and lines.
#[derive(Clone, Debug, PartialEq)]
pub struct TrackWords {
    /// The unit.
    pub unit: String,
    /// At the line of the capacity.
    pub capacity: String,
    /// Under the finger where it was read, and where it was reckoned.
    pub kinds: [String; 2],
    /// Short names of January to December.
    pub months: [String; 12],
    /// Over the columns of the table: day, read, reckoned, difference.
    pub columns: [String; 4],
}

/// A day as it is read off: "5 Mar 2026".
pub(super) fn day_text(date: NaiveDate, months: &[String; 12]) -> String {
    format!("{} {} {}", date.day(), months.get(date.month0() as usize).map_or("", String::as_str), date.year())
}

/// Ticks of some days; at their ends where no month or only one begins within.
pub(super) fn day_ticks(
    frame: &mut Frame,
    x: &Scale,
    (from, to): (NaiveDate, NaiveDate),
    months: &[String; 12],
    strip: f64,
) {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "pixels are few")]
    let most = ((frame.right - frame.left) / TICK).floor() as usize;
    let mut marks = ticks::dates(from, to, months, most);
    if marks.len() < 2 {
        let text = |date: NaiveDate| {
            format!("{} {}", date.day(), months.get(date.month0() as usize).map_or("", String::as_str))
        };
        marks = [from, to].map(|day| ticks::DateTick { day, text: text(day) }).into();
    }
    for tick in marks {
        let place = x.at(days(from, tick.day));
        frame.pen.line(Ink::Grid, &[(place, frame.top), (place, frame.bottom + strip)]);
        frame.below(place, strip, &tick.text);
    }
}

/// Days from one date to another.
pub(super) fn days(from: NaiveDate, to: NaiveDate) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "days are few")]
    let days = (to - from).num_days() as f64;
    days
}

impl Track<'_> {
    fn is_within(&self, date: NaiveDate) -> bool {
        self.from <= date && date <= self.to
    }

    /// Draws the chart for a width.
    pub fn drawing(&self, width: f64) -> Drawing {
        let greatest = self.reads.iter().map(|read| read.value).fold(self.capacity, f64::max);
        let wanted = Wanted { width, range: (0.0, greatest), unit: &self.words.unit, right: 10.0, strip: 0.0 };
        let mut frame = Frame::new(&wanted);
        let x = Scale { from: (0.0, days(self.from, self.to).max(1.0)), to: (frame.left + DOT, frame.right - DOT) };
        day_ticks(&mut frame, &x, (self.from, self.to), &self.words.months, 0.0);
        let y = frame.y.at(self.capacity);
        frame.pen.line(Ink::Capacity, &[(frame.left, y), (frame.right, y)]);
        frame.pen.text(Ink::Label, (frame.left + 6.0, y - 5.0), Anchor::Start, SMALL, &self.words.capacity);
        let mut readings = Vec::new();
        for (start, values) in self.lines {
            let mut points: Vec<Point> = Vec::new();
            for (date, value) in start.iter_days().zip(values) {
                if self.is_within(date) {
                    let point = (x.at(days(self.from, date)), frame.y.at(*value));
                    points.push(point);
                    if date > *start {
                        readings.push(self.reading(point, date, *value, 1));
                    }
                }
            }
            frame.pen.line(Ink::WaterLine, &points);
        }
        for read in self.reads.iter().filter(|read| self.is_within(read.date)) {
            let point = (x.at(days(self.from, read.date)), frame.y.at(read.value));
            frame.pen.circle(if read.at_least { Ink::Line } else { Ink::Solid }, point, DOT);
            readings.retain(|other: &Reading| (other.x - point.0).abs() > 0.01);
            readings.push(self.reading(point, read.date, read.value, 0));
        }
        let order = crate::quantity::order::rising(&readings.iter().map(|reading| reading.x).collect::<Vec<_>>());
        let readings = order.into_iter().map(|at| readings[at].clone()).collect();
        frame.finished(0.0, readings)
    }

    fn reading(&self, (x, y): Point, date: NaiveDate, value: f64, kind: usize) -> Reading {
        let label = format!("{}, {}", day_text(date, &self.words.months), self.words.kinds[kind]);
        Reading { x, y, label, value: with_unit(value, &self.words.unit) }
    }

    /// Each reading with what was reckoned for its day from the reading before.
    pub fn table(&self) -> Table {
        let row = |read: &Read| {
            let reckoned = self.lines.iter().find_map(|(start, values)| {
                let at = usize::try_from((read.date - *start).num_days()).ok().filter(|at| *at > 0)?;
                values.get(at)
            });
            let text = |value: f64| significant(value, DIGITS);
            vec![
                day_text(read.date, &self.words.months),
                text(read.value),
                reckoned.map_or_else(|| "—".to_owned(), |value| text(*value)),
                reckoned.map_or_else(|| "—".to_owned(), |value| text(read.value - value)),
            ]
        };
        let rows = self.reads.iter().filter(|read| self.is_within(read.date)).map(row).collect();
        Table { columns: self.words.columns.to_vec(), rows }.in_unit(1..4, &self.words.unit)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::sound::assert_sound;

    fn day(month: u32, day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, month, day).unwrap_or_default()
    }

    fn words() -> TrackWords {
        TrackWords {
            unit: "L".into(),
            capacity: "full".into(),
            kinds: ["read", "reckoned"].map(String::from),
            months: std::array::from_fn(|at| format!("M{}", at + 1)),
            columns: ["day", "read", "reckoned", "apart"].map(String::from),
        }
    }

    #[test]
    fn a_reading_stands_beside_what_was_reckoned_for_its_day() {
        let words = words();
        let reads = [
            Read { date: day(3, 1), value: 1000.0, at_least: false },
            Read { date: day(3, 4), value: 900.0, at_least: true },
        ];
        let lines = [(day(3, 1), vec![1000.0, 950.0, 960.0, 910.0])];
        let track =
            Track { from: day(2, 20), to: day(3, 10), capacity: 1500.0, reads: &reads, lines: &lines, words: &words };
        let drawing = track.drawing(358.0);
        assert_sound(&drawing);
        let labels: Vec<&str> = drawing.readings.iter().map(|reading| reading.label.as_str()).collect();
        assert_eq!(labels, ["1 M3 2026, read", "2 M3 2026, reckoned", "3 M3 2026, reckoned", "4 M3 2026, read"]);
        let rows = track.table().rows;
        assert_eq!(rows, [["1 M3 2026", "1,000", "—", "—"], ["4 M3 2026", "900", "910", "−10"]]);
    }

    #[test]
    fn one_day_and_no_reading_still_draw() {
        let words = words();
        for to in [day(3, 1), day(12, 31)] {
            let track = Track { from: day(3, 1), to, capacity: 0.0, reads: &[], lines: &[], words: &words };
            assert_sound(&track.drawing(320.0));
        }
    }
}

//! Content of a store over time, day by day, with the stretches in which it fell short.

use chrono::{Datelike, NaiveDate};

use super::drawing::{Anchor, Drawing, Ink, Reading};
use super::frame::{DIGITS, Frame, Wanted, with_unit};
use super::lettering::{self, SMALL};
use super::pen::Point;
use super::scale::Scale;
use super::table::Table;
use super::ticks;
use crate::quantity::shown::significant;

/// Room under the plot for the marks of shortfall.
const STRIP: f64 = 14.0;
/// Width of a tick's label.
const TICK: f64 = 46.0;

/// Daily contents, in the unit that is shown.
#[derive(Clone, Copy, Debug)]
pub struct Contents<'a> {
    /// The first day.
    pub start: NaiveDate,
    /// The content at the end of each day.
    pub values: &'a [f64],
    /// Whether demand was not met on each day; days beyond the end were met.
    pub short: &'a [bool],
    /// What the store holds when full.
    pub capacity: Option<f64>,
    /// What is written.
    pub words: &'a ContentsWords,
}

/// What is written at contents over time.
#[derive(Clone, Debug, PartialEq)]
pub struct ContentsWords {
    /// The unit.
    pub unit: String,
    /// At the line of the capacity.
    pub capacity: String,
    /// At the mark of shortfall, and over the column of days short.
    pub shortfall: String,
    /// Short names of January to December.
    pub months: [String; 12],
    /// Over the columns of the table: month, least and greatest content.
    pub columns: [String; 3],
}

/// What of the days falls into one column of pixels.
struct Column {
    first: usize,
    last: usize,
    least: usize,
    greatest: usize,
    short: bool,
}

impl Contents<'_> {
    /// Draws the chart for a width.
    pub fn drawing(&self, width: f64) -> Drawing {
        let full = self.capacity.unwrap_or(0.0);
        let greatest = self.values.iter().copied().filter(|value| value.is_finite()).fold(full, f64::max);
        let wanted = Wanted { width, range: (0.0, greatest), unit: &self.words.unit, right: 10.0, strip: STRIP };
        let mut frame = Frame::new(&wanted);
        #[expect(clippy::cast_precision_loss, reason = "days are few")]
        let last = self.values.len().saturating_sub(1) as f64;
        let x = Scale { from: (0.0, last.max(1.0)), to: (frame.left, frame.right) };
        self.date_ticks(&mut frame, &x);
        let columns = self.columns(frame.right - frame.left);
        let mut line: Vec<Point> = Vec::with_capacity(4 * columns.len());
        for column in &columns {
            let mut before = None;
            for day in [column.first, column.least.min(column.greatest), column.least.max(column.greatest), column.last]
            {
                if before != Some(day) {
                    line.push((at(&x, day), frame.y.at(self.values[day])));
                }
                before = Some(day);
            }
        }
        if let (Some(first), Some(last)) = (line.first(), line.last()) {
            let base = frame.y.at(0.0);
            let mut area = vec![(first.0, base)];
            area.extend(&line);
            area.push((last.0, base));
            frame.pen.area(Ink::Band, &area);
        }
        frame.pen.line(Ink::WaterLine, &line);
        if let Some(capacity) = self.capacity.filter(|_| !self.values.is_empty()) {
            let y = frame.y.at(capacity);
            frame.pen.line(Ink::Capacity, &[(frame.left, y), (frame.right, y)]);
            frame.pen.text(Ink::Label, (frame.left + 6.0, y - 5.0), Anchor::Start, SMALL, &self.words.capacity);
        }
        self.shortfalls(&mut frame, &x, &columns);
        let readings = columns.iter().map(|column| self.reading(&frame, &x, column)).collect();
        frame.finished(STRIP, readings)
    }

    /// Least and greatest content and days short of each month.
    pub fn table(&self) -> Table {
        let [month, least, greatest] = self.words.columns.clone();
        let mut rows = Vec::new();
        let mut from = 0;
        while from < self.values.len() {
            let key = |day: usize| self.day(day).map(|day| (day.year(), day.month()));
            let to = (from..self.values.len()).take_while(|day| key(*day) == key(from)).last().unwrap_or(from) + 1;
            let days = &self.values[from..to];
            let short = (from..to).filter(|day| self.is_short(*day)).count();
            rows.push(vec![
                self.day(from).map_or_else(String::new, |day| self.month_of(day)),
                significant(days.iter().copied().fold(f64::INFINITY, f64::min), DIGITS),
                significant(days.iter().copied().fold(f64::NEG_INFINITY, f64::max), DIGITS),
                short.to_string(),
            ]);
            from = to;
        }
        Table { columns: vec![month, least, greatest, self.words.shortfall.clone()], rows }
            .in_unit(1..3, &self.words.unit)
    }

    fn is_short(&self, day: usize) -> bool {
        self.short.get(day).copied().unwrap_or(false)
    }

    fn day(&self, at: usize) -> Option<NaiveDate> {
        self.start.checked_add_days(chrono::Days::new(u64::try_from(at).ok()?))
    }

    fn month_of(&self, day: NaiveDate) -> String {
        let name = usize::try_from(day.month0()).ok().and_then(|month| self.words.months.get(month));
        format!("{} {}", name.map_or("", String::as_str), day.year())
    }

    /// Days gathered to columns a pixel wide, so that no drop and no peak gets lost; one day a column where there
    /// is room.
    fn columns(&self, pixels: f64) -> Vec<Column> {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "pixels are few")]
        let most = (pixels.floor() as usize).max(1);
        let count = self.values.len();
        let used = count.min(most);
        let by = |a: &usize, b: &usize| self.values[*a].total_cmp(&self.values[*b]);
        (0..used)
            .map(|column| (column * count / used, (column + 1) * count / used))
            .map(|(from, to)| Column {
                first: from,
                last: to - 1,
                least: (from..to).min_by(by).unwrap_or(from),
                greatest: (from..to).max_by(by).unwrap_or(from),
                short: (from..to).any(|day| self.is_short(day)),
            })
            .collect()
    }

    fn date_ticks(&self, frame: &mut Frame, x: &Scale) {
        let Some(end) = self.values.len().checked_sub(1).and_then(|last| self.day(last)) else { return };
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "pixels are few")]
        let most = ((frame.right - frame.left) / TICK).floor() as usize;
        for tick in ticks::dates(self.start, end, &self.words.months, most) {
            #[expect(clippy::cast_precision_loss, reason = "days are few")]
            let place = x.at((tick.day - self.start).num_days() as f64);
            frame.pen.line(Ink::Grid, &[(place, frame.top), (place, frame.bottom + STRIP)]);
            frame.below(place, STRIP, &tick.text);
        }
    }

    /// A bar with a point downwards under each stretch of shortfall, and the word for it above the plot.
    fn shortfalls(&self, frame: &mut Frame, x: &Scale, columns: &[Column]) {
        let top = frame.bottom + 2.0;
        for stretch in columns.chunk_by(|a, b| a.short == b.short).filter(|stretch| stretch[0].short) {
            let (left, right) = (at(x, stretch[0].first), at(x, stretch[stretch.len() - 1].last));
            let (middle, half) = (f64::midpoint(left, right), ((right - left) / 2.0).max(1.0));
            let bar =
                [(middle - half, top), (middle + half, top), (middle + half, top + 4.0), (middle - half, top + 4.0)];
            frame.pen.area(Ink::Shortfall, &bar);
            shortfall_point(frame, middle, top + 3.0);
        }
        if columns.iter().any(|column| column.short) {
            let right = frame.right;
            let wide = lettering::width(&self.words.shortfall, SMALL);
            frame.pen.text(Ink::Label, (right, 14.0), Anchor::End, SMALL, &self.words.shortfall);
            shortfall_point(frame, right - wide - 10.0, 6.0);
        }
    }

    fn reading(&self, frame: &Frame, x: &Scale, column: &Column) -> Reading {
        let (least, greatest) = (self.values[column.least], self.values[column.greatest]);
        let day = self.day(column.least);
        let (label, value) = if column.first == column.last {
            let date = |day: NaiveDate| format!("{} {}", day.day(), self.month_of(day));
            (day.map(date), with_unit(least, &self.words.unit))
        } else {
            let range = format!("{}–{}", significant(least, DIGITS), with_unit(greatest, &self.words.unit));
            (day.map(|day| self.month_of(day)), range)
        };
        Reading { x: at(x, column.least), y: frame.y.at(least), label: label.unwrap_or_default(), value }
    }
}

fn at(x: &Scale, day: usize) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "days are few")]
    x.at(day as f64)
}

/// The mark of shortfall: a point downwards.
fn shortfall_point(frame: &mut Frame, x: f64, top: f64) {
    frame.pen.area(Ink::Shortfall, &[(x - 4.0, top), (x + 4.0, top), (x, top + 8.0)]);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::Mark;
    use crate::figures::sound::assert_sound;

    fn words() -> ContentsWords {
        ContentsWords {
            unit: "gal".into(),
            capacity: "Full".into(),
            shortfall: "Short".into(),
            months: std::array::from_fn(|at| format!("M{}", at + 1)),
            columns: ["Month", "Least", "Most"].map(String::from),
        }
    }

    fn start() -> NaiveDate {
        NaiveDate::from_ymd_opt(1961, 1, 1).unwrap_or_default()
    }

    #[test]
    fn a_single_empty_day_in_sixty_years_still_reaches_the_base() {
        let mut values = vec![800.0; 21_915];
        values[9_999] = 0.0;
        let words = words();
        let contents = Contents { start: start(), values: &values, short: &[], capacity: Some(1000.0), words: &words };
        let drawing = contents.drawing(358.0);
        assert_sound(&drawing);
        let line = drawing.marks.iter().find_map(|mark| match mark {
            Mark::Path { d, ink: Ink::WaterLine } => Some(d),
            _ => None,
        });
        let line = line.map_or("", String::as_str);
        let lowest =
            line.split(['M', 'L']).filter_map(|point| point.split(' ').nth(1)?.parse().ok()).fold(0.0, f64::max);
        let base = drawing.readings.iter().map(|reading| reading.y).fold(0.0, f64::max);
        assert!((lowest - base).abs() < 0.06 && lowest > 100.0, "{lowest} reaches {base}");
        assert!(line.len() < 40_000, "reduced to columns of pixels");
        assert!(drawing.readings.iter().any(|reading| reading.value == "0–800\u{a0}gal"));
        assert!(drawing.readings.len() <= 358);
    }

    #[test]
    fn shortfall_is_marked_by_shape_and_counted_in_the_table() {
        let values: Vec<f64> = (0..40).map(|day| f64::from(40 - day)).collect();
        let short: Vec<bool> = (0..40).map(|day| day >= 35).collect();
        let words = words();
        let contents = Contents { start: start(), values: &values, short: &short, capacity: None, words: &words };
        let marks = |drawing: &Drawing| {
            drawing.marks.iter().filter(|mark| matches!(mark, Mark::Path { ink: Ink::Shortfall, .. })).count()
        };
        assert_eq!(marks(&contents.drawing(358.0)), 3, "bar, point and the point beside the word");
        assert_eq!(marks(&Contents { short: &[], ..contents }.drawing(358.0)), 0);
        let table = contents.table();
        assert_eq!(table.rows, [["M1 1961", "10", "40", "0"], ["M2 1961", "1", "9", "5"]]);
    }

    #[test]
    fn no_days_make_an_empty_chart() {
        let words = words();
        let contents = Contents { start: start(), values: &[], short: &[], capacity: None, words: &words };
        let drawing = contents.drawing(358.0);
        assert_sound(&drawing);
        assert!(drawing.readings.is_empty() && contents.table().rows.is_empty());
        let bad = Contents { values: &[f64::NAN, 1.0, f64::INFINITY], ..contents };
        assert_sound(&bad.drawing(f64::NAN));
    }
}

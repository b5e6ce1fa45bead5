//! The store through the year: what it holds on each day of the year in one year of ten, in half of them, and in
//! nine of ten.

use super::drawing::{Anchor, Drawing, Ink, Reading};
use super::frame::{DIGITS, Frame, Wanted, apart, with_unit};
use super::lettering::{self, SMALL};
use super::pen::Point;
use super::scale::Scale;
use super::table::Table;
use crate::quantity::shown::significant;

/// Days before the first of each month, in a common year.
const FIRSTS: [usize; 12] = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];

/// Percentiles of the content for each day of the year, in the unit that is shown. All three are equally long: 365
/// or 366 days from the first of January. Days of which nothing is known are not numbers, of all three alike.
#[derive(Clone, Copy, Debug)]
pub struct YearBand<'a> {
    /// Undercut in one year of ten.
    pub low: &'a [f64],
    /// Undercut in half of the years.
    pub median: &'a [f64],
    /// Undercut in nine years of ten.
    pub high: &'a [f64],
    /// What the store holds when full.
    pub capacity: Option<f64>,
    /// What is written.
    pub words: &'a YearBandWords,
}

/// What is written at a store through the year.
#[derive(Clone, Debug, PartialEq)]
pub struct YearBandWords {
    /// The unit.
    pub unit: String,
    /// At the lower line.
    pub low: String,
    /// At the middle line.
    pub median: String,
    /// At the upper line.
    pub high: String,
    /// At the line of the capacity.
    pub capacity: String,
    /// Over the table's column of months.
    pub month: String,
    /// Short names of January to December.
    pub months: [String; 12],
}

impl YearBand<'_> {
    /// Draws the chart for a width.
    pub fn drawing(&self, width: f64) -> Drawing {
        let days = self.days();
        let all = self.high.iter().chain(&self.capacity).copied().filter(|value| value.is_finite());
        let greatest = all.fold(0.0, f64::max);
        let wanted = Wanted { width, range: (0.0, greatest), unit: &self.words.unit, right: 10.0, strip: 0.0 };
        let mut frame = Frame::new(&wanted);
        #[expect(clippy::cast_precision_loss, reason = "366 at most")]
        let x = Scale { from: (0.0, days.max(2) as f64 - 1.0), to: (frame.left, frame.right) };
        let y = frame.y;
        #[expect(clippy::cast_precision_loss, reason = "366 at most")]
        let line = |values: &[f64]| -> Vec<Point> {
            let height = |value: f64| if value.is_finite() { y.at(value) } else { f64::NAN };
            values.iter().take(days).enumerate().map(|(day, value)| (x.at(day as f64), height(*value))).collect()
        };
        let (low, median, high) = (line(self.low), line(self.median), line(self.high));
        for (high, low) in known(&high).zip(known(&low)) {
            let band: Vec<Point> = high.iter().chain(low.iter().rev()).copied().collect();
            frame.pen.area(Ink::Band, &band);
        }
        if let Some(capacity) = self.capacity.filter(|_| days > 0) {
            let at = frame.y.at(capacity);
            frame.pen.line(Ink::Capacity, &[(frame.left, at), (frame.right, at)]);
            frame.pen.text(Ink::Label, (frame.right, at - 5.0), Anchor::End, SMALL, &self.words.capacity);
        }
        self.month_labels(&mut frame, &x);
        for (ink, line) in [(Ink::Line, &low), (Ink::WaterLine, &median), (Ink::Faint, &high)] {
            known(line).for_each(|stretch| frame.pen.line(ink, stretch));
        }
        self.labels(&mut frame, [&high, &median, &low]);
        let readings = median.iter().enumerate().filter(|(_, place)| place.1.is_finite()).map(|(day, place)| Reading {
            x: place.0,
            y: place.1,
            label: self.date(day),
            value: format!(
                "{} ({}–{})",
                with_unit(self.median[day], &self.words.unit),
                significant(self.low[day], DIGITS),
                significant(self.high[day], DIGITS)
            ),
        });
        frame.finished(0.0, readings.collect())
    }

    /// The percentiles on the first of each month.
    pub fn table(&self) -> Table {
        let words = &self.words;
        let mut rows = Vec::new();
        for (month, first) in words.months.iter().zip(FIRSTS) {
            if first < self.days() {
                let at = |values: &[f64]| match values[first] {
                    value if value.is_finite() => significant(value, DIGITS),
                    _ => "—".to_owned(),
                };
                rows.push(vec![month.clone(), at(self.low), at(self.median), at(self.high)]);
            }
        }
        let columns = vec![words.month.clone(), words.low.clone(), words.median.clone(), words.high.clone()];
        Table { columns, rows }.in_unit(1..4, &self.words.unit)
    }

    fn days(&self) -> usize {
        self.low.len().min(self.median.len()).min(self.high.len())
    }

    /// First days of the months, a day later from March on where the year has 366.
    fn first(&self, month: usize) -> usize {
        FIRSTS[month] + usize::from(month > 1 && self.days() == 366)
    }

    fn date(&self, day: usize) -> String {
        let month = (0..12).rev().find(|month| self.first(*month) <= day).unwrap_or(0);
        format!("{} {}", day - self.first(month) + 1, self.words.months[month])
    }

    fn month_labels(&self, frame: &mut Frame, x: &Scale) {
        if self.days() == 0 {
            return;
        }
        let step = if frame.right - frame.left < 480.0 { 2 } else { 1 };
        for month in (0..12).step_by(step) {
            #[expect(clippy::cast_precision_loss, reason = "366 at most")]
            let place = x.at(self.first(month) as f64);
            frame.pen.line(Ink::Grid, &[(place, frame.top), (place, frame.bottom)]);
            frame.below(place + 14.0, 0.0, &self.words.months[month]);
        }
    }

    /// Writes at the lines where they lie farthest apart.
    fn labels(&self, frame: &mut Frame, lines: [&[Point]; 3]) {
        let [high, _, low] = lines;
        let inner = |at: usize| (high.len() / 6..high.len() / 2).contains(&at);
        let spreads = high.iter().zip(low).map(|(high, low)| low.1 - high.1).enumerate();
        let spreads = spreads.filter(|(_, spread)| spread.is_finite());
        let farthest = spreads.max_by(|a, b| inner(a.0).cmp(&inner(b.0)).then(a.1.total_cmp(&b.1)));
        let Some((day, _)) = farthest else { return };
        // Not over an edge, where only the first or the last weeks of a year are known.
        let x = high[day].0.clamp(frame.left + 70.0, (frame.right - 70.0).max(frame.left + 70.0));
        let wanted = [high[day].1 - 6.0, lines[1][day].1 + 5.0, low[day].1 + 17.0];
        let placed = apart(&wanted, (frame.top + 12.0, frame.bottom - 6.0));
        for (text, y) in [&self.words.high, &self.words.median, &self.words.low].into_iter().zip(placed) {
            // Clear of the numbers at the axis.
            let half = lettering::width(text, SMALL) / 2.0 + 4.0;
            let x = x.min(frame.right - half).max(frame.left + half);
            frame.pen.text(Ink::Label, (x, y), Anchor::Middle, SMALL, text);
        }
    }
}

/// The stretches of a line of which something is known.
fn known(line: &[Point]) -> impl Iterator<Item = &[Point]> {
    line.split(|place| !place.1.is_finite()).filter(|stretch| !stretch.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::sound::assert_sound;

    fn words() -> YearBandWords {
        YearBandWords {
            unit: "L".into(),
            low: "1 year in 10".into(),
            median: "half".into(),
            high: "9 in 10".into(),
            capacity: "Full".into(),
            month: "Month".into(),
            months: std::array::from_fn(|at| format!("M{}", at + 1)),
        }
    }

    #[test]
    fn the_table_has_the_numbers_of_the_lines() {
        let low: Vec<f64> = (0..365).map(f64::from).collect();
        let median: Vec<f64> = low.iter().map(|value| value + 100.0).collect();
        let high: Vec<f64> = low.iter().map(|value| value + 200.0).collect();
        let words = words();
        let band = YearBand { low: &low, median: &median, high: &high, capacity: Some(600.0), words: &words };
        let drawing = band.drawing(358.0);
        assert_sound(&drawing);
        assert_eq!(band.table().rows[2], ["M3", "59", "159", "259"]);
        assert_eq!(drawing.readings[59].label, "1 M3");
        assert_eq!(drawing.readings[59].value, "159\u{a0}L (59–259)");
        assert!(drawing.readings[200].y < drawing.readings[59].y, "more is drawn higher");
    }

    #[test]
    fn days_of_which_nothing_is_known_are_gaps() {
        let some: Vec<f64> = (0..365).map(|day| if (10..50).contains(&day) { 500.0 } else { f64::NAN }).collect();
        let words = words();
        let band = YearBand { low: &some, median: &some, high: &some, capacity: Some(600.0), words: &words };
        let drawing = band.drawing(358.0);
        assert_sound(&drawing);
        assert_eq!(drawing.readings.len(), 40);
        let table = band.table();
        assert_eq!((&*table.rows[0][2], &*table.rows[1][2], &*table.rows[2][2]), ("—", "500", "—"));
    }

    #[test]
    fn no_word_runs_into_the_numbers_of_the_axis() {
        let words = YearBandWords { low: "1 year in 10 below".into(), ..words() };
        // Farthest apart at the earliest day of which words may stand.
        let high: Vec<f64> = (0..365).map(|day| 1000.0 - f64::from(day)).collect();
        let zero = [0.0; 365];
        let band = YearBand { low: &zero, median: &zero, high: &high, capacity: None, words: &words };
        for mark in band.drawing(288.0).marks {
            if let crate::figures::Mark::Text { text, x, .. } = mark
                && text == words.low
            {
                // Numbers of the axis end at its left end, at 20 and more.
                assert!(x - lettering::width(&text, SMALL) / 2.0 > 20.0, "{x}");
            }
        }
    }

    #[test]
    fn no_days_make_an_empty_chart() {
        let words = words();
        let band = YearBand { low: &[], median: &[], high: &[], capacity: None, words: &words };
        assert_sound(&band.drawing(760.0));
        assert!(band.table().rows.is_empty());
    }
}

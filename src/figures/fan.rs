//! What may be in store on the days to come: a range that widens, its middle, and the floor with no more rain.

use chrono::{Datelike, NaiveDate};

use super::drawing::{Anchor, Drawing, Ink, Reading};
use super::frame::{Beside, DIGITS, Frame, Wanted, apart_beside, with_unit};
use super::lettering::{self, SMALL};
use super::pen::Point;
use super::scale::Scale;
use super::table::Table;
use super::ticks;
use crate::quantity::shown::significant;

/// Width of a tick's label.
const TICK: f64 = 46.0;
/// Half of what labels in a row keep between them.
const GAP: f64 = 3.0;

/// Contents to come, in the unit that is shown, all from the same first day on.
#[derive(Clone, Copy, Debug)]
pub struct Fan<'a> {
    /// The first day.
    pub start: NaiveDate,
    /// Undercut with a chance of one in ten.
    pub low: &'a [f64],
    /// As likely undercut as not.
    pub middle: &'a [f64],
    /// Exceeded with a chance of one in ten.
    pub high: &'a [f64],
    /// With no more rain.
    pub floor: &'a [f64],
    /// What the store holds when full.
    pub capacity: f64,
    /// What is written.
    pub words: &'a FanWords,
}

/// What is written at contents to come.
#[derive(Clone, Debug, PartialEq)]
pub struct FanWords {
    /// The unit.
    pub unit: String,
    /// At the lower line, the middle, the upper, and the floor.
    pub lines: [String; 4],
    /// At the line of the capacity.
    pub capacity: String,
    /// Over the table's column of days.
    pub day: String,
    /// Short names of January to December.
    pub months: [String; 12],
}

impl Fan<'_> {
    /// Draws the chart for a width.
    pub fn drawing(&self, width: f64) -> Drawing {
        let days = self.days();
        let all = self.high.iter().copied().filter(|value| value.is_finite());
        let range = (0.0, all.fold(self.capacity, f64::max));
        let mut frame = Frame::new(&Wanted { width, range, unit: &self.words.unit, right: 10.0, strip: 0.0 });
        #[expect(clippy::cast_precision_loss, reason = "days are few")]
        let x = Scale { from: (0.0, days.max(2) as f64 - 1.0), to: (frame.left, frame.right) };
        let y = frame.y;
        #[expect(clippy::cast_precision_loss, reason = "days are few")]
        let line = |values: &[f64]| -> Vec<Point> {
            values.iter().take(days).enumerate().map(|(day, value)| (x.at(day as f64), y.at(*value))).collect()
        };
        let [low, middle, high, floor] = [self.low, self.middle, self.high, self.floor].map(line);
        self.date_ticks(&mut frame, &x);
        let band: Vec<Point> = high.iter().chain(low.iter().rev()).copied().collect();
        frame.pen.area(Ink::Band, &band);
        if days > 0 {
            let at = y.at(self.capacity);
            frame.pen.line(Ink::Capacity, &[(frame.left, at), (frame.right, at)]);
        }
        frame.pen.line(Ink::Faint, &low);
        frame.pen.line(Ink::Faint, &high);
        frame.pen.line(Ink::Loose, &floor);
        frame.pen.line(Ink::WaterLine, &middle);
        self.labels(&mut frame, [&low, &middle, &high, &floor]);
        let readings = (0..days).map(|day| Reading {
            x: middle[day].0,
            y: middle[day].1,
            label: self.date(day),
            value: self.read(day),
        });
        let readings = readings.collect();
        frame.finished(0.0, readings)
    }

    /// The words at the lines, each as near to its line as the others let it.
    fn labels(&self, frame: &mut Frame, [low, middle, high, floor]: [&[Point]; 4]) {
        let half = self.days() / 2;
        let (Some(low), Some(middle), Some(high)) = (low.get(half), middle.get(half), high.get(half)) else { return };
        let Some(floor) = floor.iter().find(|at| at.0 > frame.left + 0.06 * (frame.right - frame.left)) else { return };
        let [of_low, of_middle, of_high, of_floor] = &self.words.lines;
        let wanted: [(&str, Anchor, Point); 5] = [
            (&self.words.capacity, Anchor::End, (frame.right, frame.y.at(self.capacity) - 5.0)),
            (of_high, Anchor::Middle, (middle.0, (high.1 - 6.0).max(frame.top + 12.0))),
            (of_middle, Anchor::Middle, (middle.0, middle.1 + 5.0)),
            (of_low, Anchor::Middle, (middle.0, low.1 + 17.0)),
            (of_floor, Anchor::Start, (floor.0 - 2.0, floor.1.min(frame.bottom - 22.0) + 16.0)),
        ];
        let boxes = wanted.map(|(text, anchor, (x, y))| -> Beside {
            let wide = lettering::width(text, SMALL);
            let left = match anchor {
                Anchor::Start => x,
                Anchor::Middle => x - wide / 2.0,
                Anchor::End => x - wide,
            };
            (left - GAP, left + wide + GAP, y)
        });
        // Where no water is nor comes, all lines are the axis.
        let empty = self.high.iter().all(|content| *content <= 0.0);
        let placed = apart_beside(&boxes, (frame.top - 5.0, frame.bottom - 6.0));
        for ((text, anchor, (x, _)), y) in wanted.into_iter().zip(placed).take(if empty { 1 } else { 5 }) {
            frame.pen.text(Ink::Label, (x, y), anchor, SMALL, text);
        }
    }

    fn read(&self, day: usize) -> String {
        format!(
            "{} ({}–{}); {}: {}",
            with_unit(self.middle[day], &self.words.unit),
            significant(self.low[day], DIGITS),
            significant(self.high[day], DIGITS),
            self.words.lines[3],
            significant(self.floor[day], DIGITS)
        )
    }

    /// The numbers every ten days.
    pub fn table(&self) -> Table {
        let at = |values: &[f64], day: usize| significant(values[day], DIGITS);
        let row = |day: usize| {
            let [low, middle, high, floor] = [self.low, self.middle, self.high, self.floor].map(|line| at(line, day));
            vec![self.date(day), low, middle, high, floor]
        };
        let mut columns = vec![self.words.day.clone()];
        columns.extend(self.words.lines.iter().cloned());
        Table { columns, rows: (0..self.days()).step_by(10).map(row).collect() }.in_unit(1..5, &self.words.unit)
    }

    fn days(&self) -> usize {
        self.low.len().min(self.middle.len()).min(self.high.len()).min(self.floor.len())
    }

    fn date(&self, day: usize) -> String {
        let day = u64::try_from(day).ok().and_then(|day| self.start.checked_add_days(chrono::Days::new(day)));
        let Some(day) = day else { return String::new() };
        format!("{} {} {}", day.day(), self.words.months[day.month0() as usize], day.year())
    }

    fn date_ticks(&self, frame: &mut Frame, x: &Scale) {
        let last = u64::try_from(self.days().saturating_sub(1)).unwrap_or(0);
        let Some(end) = self.start.checked_add_days(chrono::Days::new(last)) else { return };
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "pixels are few")]
        let most = ((frame.right - frame.left) / TICK).floor() as usize;
        for tick in ticks::dates(self.start, end, &self.words.months, most) {
            #[expect(clippy::cast_precision_loss, reason = "days are few")]
            let place = x.at((tick.day - self.start).num_days() as f64);
            frame.pen.line(Ink::Grid, &[(place, frame.top), (place, frame.bottom)]);
            frame.below(place, 0.0, &tick.text);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::Mark;
    use crate::figures::sound::assert_sound;

    #[test]
    fn the_table_has_the_numbers_of_the_lines_and_no_days_make_an_empty_chart() {
        let words = FanWords {
            unit: "L".into(),
            lines: ["dry", "middle", "wet", "no rain"].map(str::to_owned),
            capacity: "full".into(),
            day: "day".into(),
            months: std::array::from_fn(|at| format!("M{}", at + 1)),
        };
        let line = |from: f64| (0..40).map(|day| from - f64::from(day)).collect::<Vec<f64>>();
        let (low, middle, high, floor) = (line(200.0), line(300.0), line(400.0), line(100.0));
        let start = NaiveDate::from_ymd_opt(2026, 12, 25).unwrap_or_default();
        let fan = Fan { start, low: &low, middle: &middle, high: &high, floor: &floor, capacity: 500.0, words: &words };
        assert_sound(&fan.drawing(358.0));
        assert_eq!(fan.table().rows[1], ["4 M1 2027", "190", "290", "390", "90"]);
        assert_eq!(fan.drawing(358.0).readings[10].value, "290\u{a0}L (190–390); no rain: 90");
        let empty = Fan { low: &[], ..fan };
        assert_sound(&empty.drawing(760.0));
        assert!(empty.table().rows.is_empty());
    }
    /// Left, top, right and bottom of every word at a line.
    fn words_at_lines(drawing: &Drawing) -> Vec<(String, [f64; 4])> {
        let boxed = |mark: &Mark| match mark {
            Mark::Text { ink: Ink::Label, x, y, anchor, text, size } => {
                let wide = lettering::width(text, *size);
                let left = match anchor {
                    Anchor::Start => *x,
                    Anchor::Middle => x - wide / 2.0,
                    Anchor::End => x - wide,
                };
                Some((text.clone(), [left, y - 0.8 * size, left + wide, y + 0.2 * size]))
            }
            _ => None,
        };
        drawing.marks.iter().filter_map(boxed).collect()
    }

    #[test]
    fn no_word_at_a_line_runs_into_another() {
        let words = |lines: [&str; 4], capacity: &str| FanWords {
            unit: "L".into(),
            lines: lines.map(str::to_owned),
            capacity: capacity.into(),
            day: "day".into(),
            months: std::array::from_fn(|at| format!("M{}", at + 1)),
        };
        let languages = [
            words(["dry (1 in 10 below)", "middle", "wet (1 in 10 above)", "no more rain"], "full: 13,400\u{a0}L"),
            words(
                ["seco (1 de 10 por debajo)", "intermedio", "húmedo (1 de 10 por encima)", "sin más lluvia"],
                "lleno: 13.400\u{a0}L",
            ),
        ];
        let start = NaiveDate::from_ymd_opt(2026, 12, 25).unwrap_or_default();
        let to =
            |from: f64, to: f64| (0..90).map(|day| from + (to - from) * f64::from(day) / 89.0).collect::<Vec<f64>>();
        // Where each of low, middle, high and floor ends, from the first day's content.
        for (from, ends) in [
            (13_400.0, [13_400.0, 13_400.0, 13_400.0, 9_000.0]),
            (12_000.0, [6_000.0, 12_900.0, 13_400.0, 5_500.0]),
            (6_000.0, [5_900.0, 6_000.0, 6_100.0, 5_800.0]),
            (6_000.0, [200.0, 6_000.0, 13_300.0, 0.0]),
            (900.0, [0.0, 0.0, 400.0, 0.0]),
            (0.0, [0.0, 0.0, 0.0, 0.0]),
        ] {
            let [low, middle, high, floor] = ends.map(|end| to(from, end));
            for words in &languages {
                let lines = (&low, &middle, &high, &floor);
                let (low, middle, high, floor) = lines;
                let fan = Fan { start, low, middle, high, floor, capacity: 13_400.0, words };
                for width in [288.0, 358.0, 760.0] {
                    let drawing = fan.drawing(width);
                    assert_sound(&drawing);
                    let told = words_at_lines(&drawing);
                    let empty = from == 0.0;
                    assert_eq!(told.len(), if empty { 1 } else { 5 }, "{ends:?}");
                    for (at, (text, one)) in told.iter().enumerate() {
                        for (other_text, other) in &told[at + 1..] {
                            let meet = one[0] < other[2] && other[0] < one[2] && one[1] < other[3] && other[1] < one[3];
                            assert!(!meet, "{text} runs into {other_text} at {width}: {one:?} {other:?}");
                        }
                    }
                }
            }
        }
    }
}

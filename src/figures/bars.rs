//! Bars side by side: rain of the months or of the years.

use super::drawing::{Anchor, Drawing, Ink, Reading};
use super::frame::{DIGITS, Frame, Wanted, with_unit};
use super::lettering::{self, SMALL};
use super::polygon;
use super::table::Table;
use crate::quantity::shown::significant;

/// Room under the plot for the marks of dry years.
const STRIP: f64 = 11.0;
const HATCH: f64 = 5.0;

/// Bars of one kind of value, in the unit that is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Bars {
    /// From left to right.
    pub bars: Vec<Bar>,
    /// What is written.
    pub words: BarsWords,
}

/// One bar.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bar {
    /// The month or year.
    pub label: String,
    /// How high it is.
    pub value: f64,
    /// A figure over the bar (rain days), written where there is room.
    pub over: String,
    /// A value to compare with, as a stroke across the bar.
    pub beside: Option<f64>,
    /// Whether days are missing in it: then it is hatched, not filled.
    pub partial: bool,
    /// Whether it is a dry one: then a hollow drop stands under it.
    pub dry: bool,
}

/// What is written at bars.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BarsWords {
    /// The unit.
    pub unit: String,
    /// What the bars stand for: month or year.
    pub label: String,
    /// What their height means.
    pub value: String,
    /// What the figures over the bars mean; empty where there are none.
    pub over: String,
    /// What the strokes across the bars mean; empty where there are none.
    pub beside: String,
    /// What hatching means.
    pub partial: String,
    /// What the mark of a dry one means.
    pub dry: String,
}

impl Bars {
    /// Draws the chart for a width.
    pub fn drawing(&self, width: f64) -> Drawing {
        let values = self.bars.iter().flat_map(|bar| [bar.value, bar.beside.unwrap_or(0.0)]);
        let greatest = values.filter(|value| value.is_finite()).fold(0.0, f64::max);
        let room_over = if self.words.over.is_empty() { 1.0 } else { 1.08 };
        let strip = if self.bars.iter().any(|bar| bar.dry) { STRIP } else { 0.0 };
        let wanted = Wanted { width, range: (0.0, greatest * room_over), unit: &self.words.unit, right: 10.0, strip };
        let mut frame = Frame::new(&wanted);
        #[expect(clippy::cast_precision_loss, reason = "bars are few")]
        let pitch = (frame.right - frame.left) / self.bars.len().max(1) as f64;
        let wide = (pitch * 0.72).min(46.0).max(pitch - 8.0).min(46.0);
        let longest = self.bars.iter().map(|bar| lettering::width(&bar.label, SMALL)).fold(1.0, f64::max);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "bars are few")]
        let every = round_step(((longest + 4.0) / pitch).ceil() as usize);
        let overs = self.bars.iter().map(|bar| lettering::width(&bar.over, SMALL)).fold(0.0, f64::max) <= pitch;
        let mut readings = Vec::new();
        for (at, bar) in self.bars.iter().enumerate() {
            #[expect(clippy::cast_precision_loss, reason = "bars are few")]
            let x = frame.left + pitch * (at as f64 + 0.5);
            let (top, base) = (frame.y.at(bar.value.max(0.0)), frame.y.at(0.0));
            let (left, right) = (x - wide / 2.0, x + wide / 2.0);
            let shape = [(left, top), (right, top), (right, base), (left, base)];
            if bar.partial {
                frame.pen.strokes(Ink::Stranded, &polygon::hatch(&shape, HATCH));
                frame.pen.path(Ink::Line, super::pen::through(&shape));
            } else {
                frame.pen.area(Ink::Rain, &shape);
            }
            if let Some(beside) = bar.beside {
                let y = frame.y.at(beside);
                frame.pen.line(Ink::Strong, &[(left - 2.0, y), (right + 2.0, y)]);
            }
            if overs {
                frame.pen.text(Ink::Label, (x, top - 4.0), Anchor::Middle, SMALL, &bar.over);
            }
            if bar.dry {
                dry_mark(&mut frame, x, base + 2.0, (pitch / 2.0).clamp(2.0, 4.0));
            }
            if is_labelled(&bar.label, at, every) {
                frame.below(x, strip, &bar.label);
            }
            readings.push(self.reading(bar, x, top));
        }
        self.keys(&mut frame);
        frame.finished(strip, readings)
    }

    /// The same numbers.
    pub fn table(&self) -> Table {
        let words = &self.words;
        let mut columns = vec![words.label.clone(), words.value.clone()];
        let with_beside = !words.beside.is_empty();
        columns.extend(with_beside.then(|| words.beside.clone()));
        let with_over = !words.over.is_empty();
        let with_notes = self.bars.iter().any(|bar| bar.partial || bar.dry);
        columns.extend(with_over.then(|| words.over.clone()));
        let partial = self.bars.iter().any(|bar| bar.partial).then_some(words.partial.as_str());
        let dry = self.bars.iter().any(|bar| bar.dry).then_some(words.dry.as_str());
        columns.extend(with_notes.then(|| partial.into_iter().chain(dry).collect::<Vec<_>>().join(", ")));
        let row = |bar: &Bar| {
            let mut row = vec![bar.label.clone(), significant(bar.value, DIGITS)];
            row.extend(with_beside.then(|| bar.beside.map_or_else(String::new, |beside| significant(beside, DIGITS))));
            row.extend(with_over.then(|| bar.over.clone()));
            row.extend(with_notes.then(|| self.notes(bar)));
            row
        };
        let numbers = 1..2 + usize::from(with_beside);
        Table { columns, rows: self.bars.iter().map(row).collect() }.in_unit(numbers, &self.words.unit)
    }

    fn notes(&self, bar: &Bar) -> String {
        let partial = bar.partial.then_some(self.words.partial.as_str());
        let dry = bar.dry.then_some(self.words.dry.as_str());
        partial.into_iter().chain(dry).collect::<Vec<_>>().join(", ")
    }

    fn reading(&self, bar: &Bar, x: f64, y: f64) -> Reading {
        let mut value = with_unit(bar.value, &self.words.unit);
        if !bar.over.is_empty() {
            value = [&value, said!(", ", "; "), &bar.over, " ", &self.words.over].concat();
        }
        if let Some(beside) = bar.beside {
            value = format!("{value}; {} {}", self.words.beside, with_unit(beside, &self.words.unit));
        }
        let notes = self.notes(bar);
        if !notes.is_empty() {
            value = format!("{value} ({notes})");
        }
        Reading { x, y, label: bar.label.clone(), value }
    }

    /// What figures, hatching and marks mean, above the plot from the right.
    fn keys(&self, frame: &mut Frame) {
        let mut right = frame.right;
        let mut write = |frame: &mut Frame, text: &str, sign: f64| {
            let left = right - lettering::width(text, SMALL);
            frame.pen.text(Ink::FaintLabel, (left, 14.0), Anchor::Start, SMALL, text);
            right = left - sign - 14.0;
            left - sign
        };
        if self.bars.iter().any(|bar| bar.dry) {
            let x = write(frame, &self.words.dry, 14.0);
            dry_mark(frame, x + 5.0, 4.0, 4.0);
        }
        if self.bars.iter().any(|bar| bar.partial) {
            let x = write(frame, &self.words.partial, 18.0);
            let swatch = [(x, 4.0), (x + 13.0, 4.0), (x + 13.0, 15.0), (x, 15.0)];
            frame.pen.strokes(Ink::Stranded, &polygon::hatch(&swatch, HATCH));
            frame.pen.outline(Ink::Line, &swatch);
        }
        if !self.words.beside.is_empty() {
            let x = write(frame, &self.words.beside, 20.0);
            frame.pen.line(Ink::Strong, &[(x, 10.0), (x + 15.0, 10.0)]);
        }
        if !self.words.over.is_empty() {
            write(frame, &self.words.over, 0.0);
        }
    }
}

/// The mark of a dry month or year: a hollow point downwards.
fn dry_mark(frame: &mut Frame, x: f64, top: f64, half: f64) {
    frame.pen.area(Ink::Caution, &[(x - half, top), (x + half, top), (x, top + 7.0)]);
}

fn round_step(least: usize) -> usize {
    [1, 2, 5, 10, 20, 50].into_iter().find(|step| *step >= least).unwrap_or(100)
}

/// Years are written at round ones, others from the first on.
fn is_labelled(label: &str, at: usize, every: usize) -> bool {
    label.parse::<usize>().map_or(at.is_multiple_of(every), |year| year.is_multiple_of(every))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::Mark;
    use crate::figures::sound::assert_sound;

    fn years() -> Bars {
        let bar = |year: u16| Bar {
            label: year.to_string(),
            value: f64::from(year % 7) * 100.0,
            partial: year == 1961,
            dry: year % 7 == 1,
            ..Bar::default()
        };
        let words = BarsWords {
            unit: "mm".into(),
            label: "Year".into(),
            value: "Rain".into(),
            partial: "days missing".into(),
            dry: "dry".into(),
            ..BarsWords::default()
        };
        Bars { bars: (1961..=2020).map(bar).collect(), words }
    }

    #[test]
    fn sixty_years_fit_a_phone_with_round_labels() {
        let drawing = years().drawing(358.0);
        assert_sound(&drawing);
        let labels: Vec<&str> = drawing
            .marks
            .iter()
            .filter_map(|mark| match mark {
                Mark::Text { text, .. } if text.len() == 4 && text.parse::<u16>().is_ok_and(|year| year > 1900) => {
                    Some(text.as_str())
                }
                _ => None,
            })
            .collect();
        assert_eq!(labels, ["1970", "1980", "1990", "2000", "2010", "2020"]);
    }

    #[test]
    fn the_table_has_a_row_for_each_bar() {
        let bars = years();
        let (table, drawing) = (bars.table(), bars.drawing(760.0));
        assert_eq!(table.rows[0], ["1961", "100", "days missing, dry"]);
        assert_eq!(table.rows.len(), drawing.readings.len());
        for (row, reading) in table.rows.iter().zip(&drawing.readings) {
            assert_eq!(row[0], reading.label);
            assert!(reading.value.starts_with(&row[1]), "{} {}", reading.value, row[1]);
        }
    }

    #[test]
    fn a_stroke_stands_where_the_value_to_compare_with_is() {
        let bar = |value: f64, beside: f64| Bar { label: "Jan".into(), value, beside: Some(beside), ..Bar::default() };
        let words = BarsWords { unit: "mm".into(), beside: "generated".into(), ..BarsWords::default() };
        let bars = Bars { bars: vec![bar(50.0, 80.0), bar(40.0, 20.0)], words };
        let drawing = bars.drawing(358.0);
        assert_sound(&drawing);
        assert_eq!(bars.table().rows[0], ["Jan", "50", "80"]);
        assert_eq!(drawing.readings[1].value, "40\u{a0}mm; generated 20\u{a0}mm");
    }

    #[test]
    fn no_bars_make_an_empty_chart() {
        let bars = Bars { bars: Vec::new(), words: BarsWords::default() };
        assert_sound(&bars.drawing(358.0));
        assert!(bars.table().rows.is_empty());
    }
}

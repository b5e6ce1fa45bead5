//! Curves of shares against one thing, with a mark where the house stands.

use super::drawing::{Anchor, Drawing, Ink, Reading};
use super::frame::{DIGITS, Frame, Wanted, apart, with_unit};
use super::lettering::SMALL;
use super::pen::Point;
use super::scale::Scale;
use super::table::Table;
use super::ticks;
use crate::quantity::shown::significant;

/// Curves over common places.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The places, rising, in the unit that is shown.
    pub places: Vec<f64>,
    /// The lines: a name, and a value in percent at each place.
    pub lines: Vec<(String, Vec<f64>)>,
    /// The place of the house.
    pub here: f64,
    /// What stands at its mark.
    pub here_is: String,
    /// The unit of the places, and what they are.
    pub unit: String,
    /// Over the column of the places.
    pub places_are: String,
}

/// Room at the right, for the names of the lines.
const NAMES: f64 = 118.0;
/// Length of a piece of a line before its name.
const PIECE: f64 = 16.0;
const INKS: [Ink; 3] = [Ink::WaterLine, Ink::Strong, Ink::Loose];

impl Curve {
    /// Draws the chart for a width.
    pub fn drawing(&self, width: f64) -> Drawing {
        let wanted = Wanted { width, range: (0.0, 100.0), unit: "%", right: NAMES, strip: 0.0 };
        let mut frame = Frame::new(&wanted);
        let x = axis(&mut frame, &self.places, &self.unit);
        let here = x.at(self.here);
        frame.pen.line(Ink::Line, &[(here, frame.top), (here, frame.bottom)]);
        let anchor = if here > f64::midpoint(frame.left, frame.right) { Anchor::End } else { Anchor::Start };
        let aside = if anchor == Anchor::End { -5.0 } else { 5.0 };
        frame.pen.text(Ink::Label, (here + aside, frame.bottom - 8.0), anchor, SMALL, &self.here_is);
        let mut ends = Vec::new();
        for ((_, values), ink) in self.lines.iter().zip(INKS) {
            let points: Vec<Point> =
                self.places.iter().zip(values).map(|(place, value)| (x.at(*place), frame.y.at(*value))).collect();
            frame.pen.line(ink, &points);
            ends.push(points.last().map_or(frame.bottom, |last| last.1));
        }
        let heights = apart(&ends, (frame.top, frame.bottom - 12.0));
        for (((name, _), ink), height) in self.lines.iter().zip(INKS).zip(heights) {
            // A piece of the line says whose name it is.
            let [from, to] = [frame.right + 4.0, frame.right + 4.0 + PIECE].map(|x| (x, height));
            frame.pen.line(ink, &[from, to]);
            frame.pen.text(Ink::Label, (to.0 + 4.0, height + 4.5), Anchor::Start, SMALL, name);
        }
        let reading = |at: usize| Reading {
            x: x.at(self.places[at]),
            y: self.lines.first().map_or(frame.bottom, |(_, values)| frame.y.at(values[at])),
            label: with_unit(self.places[at], &self.unit),
            value: self.read_off(at),
        };
        let readings = (0..self.places.len()).map(reading).collect();
        frame.finished(0.0, readings)
    }

    fn read_off(&self, at: usize) -> String {
        let one = |(name, values): &(String, Vec<f64>)| {
            let value = values.get(at).map_or_else(String::new, |value| significant(*value, DIGITS));
            [name.as_str(), " ", &value, "\u{a0}%"].concat()
        };
        self.lines.iter().map(one).collect::<Vec<_>>().join(said!(", ", "; "))
    }

    /// The same numbers.
    pub fn table(&self) -> Table {
        let mut columns = vec![self.places_are.clone()];
        columns.extend(self.lines.iter().map(|(name, _)| format!("{name}, %")));
        let row = |at: usize| {
            let mut row = vec![significant(self.places[at], DIGITS)];
            row.extend(self.lines.iter().map(|(_, values)| significant(values[at], DIGITS)));
            row
        };
        Table { columns, rows: (0..self.places.len()).map(row).collect() }
    }
}

/// An axis of places from 0 on, with round ticks and the unit at its end.
pub(super) fn axis(frame: &mut Frame, places: &[f64], unit: &str) -> Scale {
    let last = places.last().copied().filter(|last| *last > 0.0).unwrap_or(1.0);
    let x = Scale { from: (0.0, last), to: (frame.left, frame.right) };
    for tick in ticks::values(0.0, last, ((frame.right - frame.left) / 62.0).floor()) {
        if tick <= last {
            let at = x.at(tick);
            frame.pen.line(Ink::Grid, &[(at, frame.top), (at, frame.bottom)]);
            frame.below(at, 0.0, &significant(tick, DIGITS));
        }
    }
    let (right, bottom) = (frame.right, frame.bottom);
    frame.pen.text(Ink::FaintLabel, (right + 6.0, bottom + 17.0), Anchor::Start, SMALL, unit);
    x
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::sound::assert_sound;

    #[test]
    fn each_place_can_be_read_and_stands_in_the_table() {
        let curve = Curve {
            places: vec![1.0, 2.0, 4.0],
            lines: vec![("water".into(), vec![10.0, 50.0, 100.0]), ("days".into(), vec![5.0, 40.0, 99.0])],
            here: 2.0,
            here_is: "now".into(),
            unit: "m³".into(),
            places_are: "tanks".into(),
        };
        let drawing = curve.drawing(358.0);
        assert_sound(&drawing);
        assert_eq!(drawing.readings.len(), 3);
        assert_eq!(drawing.readings[1].value, "water 50\u{a0}%, days 40\u{a0}%");
        assert_eq!(curve.table().rows[2], ["4", "100", "99"]);
        assert_sound(&Curve { places: vec![], lines: vec![], ..curve }.drawing(f64::NAN));
    }
}

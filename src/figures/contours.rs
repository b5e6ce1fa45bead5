//! A surface over two things as lines of equal value, with a mark where the house stands.

use super::curve::axis;
use super::drawing::{Anchor, Drawing, Ink, Reading};
use super::frame::{DIGITS, Frame, Wanted, with_unit};
use super::lettering::SMALL;
use super::pen::{Point, Stroke};
use super::scale::Scale;
use super::table::Table;
use crate::quantity::shown::significant;

/// A surface on a grid.
#[derive(Clone, Debug, PartialEq)]
pub struct Contours {
    /// Places to the right, rising.
    pub across: Vec<f64>,
    /// Places upwards, rising.
    pub up: Vec<f64>,
    /// The value in percent at each pair: for each place to the right, those upwards.
    pub values: Vec<f64>,
    /// The levels that get a line, in percent, rising.
    pub levels: Vec<f64>,
    /// The level that gets the strongest line.
    pub wanted: f64,
    /// Where the house stands.
    pub here: (f64, f64),
    /// What stands at its mark.
    pub here_is: String,
    /// Units to the right and upwards.
    pub units: (String, String),
    /// What the places are, for the table.
    pub are: (String, String),
}

/// Rows and columns of the table at most.
const TABLE: usize = 9;
/// Labels this close to one another can't be read, in pixels.
const LABELS_APART: f64 = 15.0;
/// Within this of the wanted level a line is the wanted one.
const SAME: f64 = 1e-9;

impl Contours {
    fn value(&self, across: usize, up: usize) -> f64 {
        self.values.get(across * self.up.len() + up).copied().unwrap_or(0.0)
    }

    /// The pieces of one level's line: marching squares, straight between the corners of each cell; a saddle is
    /// cut by the mean of its corners.
    pub fn pieces(&self, level: f64) -> Vec<(Point, Point)> {
        let mut pieces = Vec::new();
        for i in 1..self.across.len() {
            for j in 1..self.up.len() {
                // Corners in a circle; an edge leads from each to the next.
                let corners = [(i - 1, j - 1), (i, j - 1), (i, j), (i - 1, j)];
                let at = corners.map(|(i, j)| (self.across[i], self.up[j], self.value(i, j)));
                let cuts: Vec<(bool, Point)> = (0..4)
                    .filter_map(|edge| {
                        let ((x0, y0, a), (x1, y1, b)) = (at[edge], at[(edge + 1) % 4]);
                        let along = (level - a) / (b - a);
                        ((a >= level) != (b >= level))
                            .then_some((a >= level, (x0 + along * (x1 - x0), y0 + along * (y1 - y0))))
                    })
                    .collect();
                match cuts.as_slice() {
                    [(_, a), (_, b)] => pieces.push((*a, *b)),
                    [(first_above, a), (_, b), (_, c), (_, d)] => {
                        let mean = at.iter().map(|corner| corner.2).sum::<f64>() / 4.0;
                        if (mean >= level) == *first_above {
                            pieces.extend([(*a, *b), (*c, *d)]);
                        } else {
                            pieces.extend([(*d, *a), (*b, *c)]);
                        }
                    }
                    _ => {}
                }
            }
        }
        pieces
    }

    /// Draws the chart for a width.
    pub fn drawing(&self, width: f64) -> Drawing {
        let top = self.up.last().copied().unwrap_or(1.0);
        let wanted = Wanted { width, range: (0.0, top), unit: &self.units.1, right: 46.0, strip: 0.0 };
        let mut frame = Frame::new(&wanted);
        let x = axis(&mut frame, &self.across, &self.units.0);
        // The wanted level first, so that its label finds room.
        let is_wanted = |level: &&f64| (**level - self.wanted).abs() < SAME;
        let others = self.levels.iter().filter(|level| !is_wanted(level));
        let mut labels: Vec<f64> = Vec::new();
        for level in self.levels.iter().filter(is_wanted).chain(others) {
            let strong = is_wanted(&level);
            let pieces = self.pieces(*level);
            let strokes: Vec<Stroke> =
                pieces.iter().map(|(a, b)| [(x.at(a.0), frame.y.at(a.1)), (x.at(b.0), frame.y.at(b.1))]).collect();
            frame.pen.strokes(if strong { Ink::WaterLine } else { Ink::Line }, &strokes);
            // A label where the line goes out at the right, if it has room there.
            let ends = pieces.iter().flat_map(|(a, b)| [*a, *b]);
            let Some(end) = ends.reduce(|best, point| if point.0 > best.0 { point } else { best }) else { continue };
            let (at, height) = (x.at(end.0), frame.y.at(end.1));
            if labels.iter().all(|other| (other - height).abs() > LABELS_APART) {
                let ink = if strong { Ink::StrongLabel } else { Ink::Label };
                let text = [significant(*level, DIGITS).as_str(), "\u{a0}%"].concat();
                frame.pen.text(ink, (at + 4.0, height + 4.5), Anchor::Start, SMALL, &text);
                labels.push(height);
            }
        }
        let here = (x.at(self.here.0), frame.y.at(self.here.1));
        frame.pen.circle(Ink::Solid, here, 5.0);
        frame.pen.text(Ink::StrongLabel, (here.0 + 9.0, here.1 - 7.0), Anchor::Start, SMALL, &self.here_is);
        let readings = self.readings(&frame, &x);
        frame.finished(0.0, readings)
    }

    /// Along the use of the house.
    fn readings(&self, frame: &Frame, x: &Scale) -> Vec<Reading> {
        let distance = |up: &f64| (up - self.here.1).abs();
        let nearest = (0..self.up.len()).min_by(|a, b| distance(&self.up[*a]).total_cmp(&distance(&self.up[*b])));
        let Some(up) = nearest else { return Vec::new() };
        let reading = |across: usize| Reading {
            x: x.at(self.across[across]),
            y: frame.y.at(self.up[up]),
            label: [with_unit(self.across[across], &self.units.0), with_unit(self.up[up], &self.units.1)]
                .join(said!(", ", "; ")),
            value: [significant(self.value(across, up), DIGITS).as_str(), "\u{a0}%"].concat(),
        };
        (0..self.across.len()).map(reading).collect()
    }

    /// The same numbers, every few places.
    pub fn table(&self) -> Table {
        let some = |length: usize| (0..length).step_by((length / TABLE).max(1));
        let mut columns = vec![[self.are.1.as_str(), " \\ ", &self.are.0].concat()];
        columns.extend(some(self.across.len()).map(|at| with_unit(self.across[at], &self.units.0)));
        let row = |up: usize| {
            let mut row = vec![with_unit(self.up[up], &self.units.1)];
            row.extend(
                some(self.across.len())
                    .map(|at| [significant(self.value(at, up), DIGITS).as_str(), "\u{a0}%"].concat()),
            );
            row
        };
        Table { columns, rows: some(self.up.len()).map(row).collect() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::sound::assert_sound;

    fn plane() -> Contours {
        let across = vec![1.0, 2.0, 3.0];
        let up = vec![1.0, 2.0, 3.0, 4.0];
        let values = across.iter().flat_map(|x| up.iter().map(move |y| 20.0 * x - 5.0 * y)).collect();
        Contours {
            across,
            up,
            values,
            levels: vec![10.0, 25.0],
            wanted: 25.0,
            here: (2.0, 2.0),
            here_is: "now".into(),
            units: ("L".into(), "L/day".into()),
            are: ("tanks".into(), "use".into()),
        }
    }

    #[test]
    fn the_lines_of_a_plane_lie_where_its_equation_says() {
        for level in [10.0, 25.0, 33.0] {
            let pieces = plane().pieces(level);
            assert!(!pieces.is_empty());
            for (x, y) in pieces.iter().flat_map(|(a, b)| [*a, *b]) {
                assert!((20.0 * x - 5.0 * y - level).abs() < 1e-9, "{level}: {x} {y}");
            }
        }
        assert!(plane().pieces(200.0).is_empty());
    }

    #[test]
    fn a_drawing_and_a_table_of_it() {
        let drawing = plane().drawing(358.0);
        assert_sound(&drawing);
        assert_eq!(drawing.readings.len(), 3);
        assert_eq!(plane().table().rows[1], ["2\u{a0}L/day", "10\u{a0}%", "30\u{a0}%", "50\u{a0}%"]);
    }
}

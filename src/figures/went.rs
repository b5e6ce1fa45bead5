//! Where the water went, month by month: what was used, spilled and lost, one on the other, and under the line what
//! was lacking.

use super::drawing::{Anchor, Drawing, Ink, Reading};
use super::frame::{DIGITS, Frame, Wanted, apart, with_unit};
use super::lettering::{self, SMALL};
use super::pen::{Pen, Point};
use super::polygon;
use super::table::Table;
use crate::quantity::shown::significant;

/// Widest a name beside the bars may be.
const WIDEST_NAME: f64 = 130.0;
/// Room for the swatch and its leader.
const SWATCH: f64 = 36.0;

/// Twelve bars of water by where it went, in the unit that is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct WhereItWent {
    /// From the line upwards.
    pub portions: Vec<Portion>,
    /// Demand not met in January to December, 0 or more.
    pub shortfall: [f64; 12],
    /// What is written.
    pub words: WhereItWentWords,
}

/// Water that went one way.
#[derive(Clone, Debug, PartialEq)]
pub struct Portion {
    /// Its name.
    pub name: String,
    /// Which way it went.
    pub way: Way,
    /// January to December, 0 or more.
    pub amounts: [f64; 12],
}

/// The ways that water goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Used.
    Used,
    /// Over the rim.
    Spilled,
    /// Diverted as first flush.
    FirstFlush,
    /// Fell on roof that is not collected.
    Uncollected,
    /// Wetted the roof, overshot gutters, leaked, evaporated.
    Lost,
}

/// What is written at where the water went.
#[derive(Clone, Debug, PartialEq)]
pub struct WhereItWentWords {
    /// The unit.
    pub unit: String,
    /// The name of demand not met.
    pub shortfall: String,
    /// Over the table's column of months.
    pub month: String,
    /// Short names of January to December.
    pub months: [String; 12],
}

impl WhereItWent {
    /// Draws the chart for a width.
    pub fn drawing(&self, width: f64) -> Drawing {
        let short = self.shortfall.iter().copied().map(sound).fold(0.0, f64::max);
        let total = |month: usize| self.portions.iter().map(|portion| sound(portion.amounts[month])).sum::<f64>();
        let greatest = (0..12).map(total).fold(0.0, f64::max);
        let names = self.portions.iter().map(|portion| &portion.name).chain([&self.words.shortfall]);
        let widest = names.map(|name| lettering::width(name, SMALL)).fold(0.0, f64::max).min(WIDEST_NAME);
        let wanted =
            Wanted { width, range: (-short, greatest), unit: &self.words.unit, right: widest + SWATCH, strip: 0.0 };
        let mut frame = Frame::new(&wanted);
        let pitch = (frame.right - frame.left) / 12.0;
        let long = self.words.months.iter().all(|month| lettering::width(month, SMALL) <= pitch + 2.0);
        // Where not even their first letters fit, every third is named.
        let letter = |month: usize| self.words.months[month].chars().take(1).collect::<String>();
        let every =
            if long || (0..12).all(|month| lettering::width(&letter(month), SMALL) + 3.0 <= pitch) { 1 } else { 3 };
        let mut readings = Vec::new();
        for month in 0..12 {
            #[expect(clippy::cast_precision_loss, reason = "twelve")]
            let left = frame.left + pitch * month as f64;
            let (from, to) = (left + pitch * 0.12, left + pitch * 0.88);
            let mut under = 0.0;
            for portion in &self.portions {
                let over = under + sound(portion.amounts[month]);
                let (top, bottom) = (frame.y.at(over), frame.y.at(under));
                filled(&mut frame.pen, portion.way, &[(from, top), (to, top), (to, bottom), (from, bottom)]);
                under = over;
            }
            let lacking = sound(self.shortfall[month]);
            if lacking > 0.0 {
                lacking_below(&mut frame.pen, (from, to), frame.y.at(0.0), frame.y.at(-lacking));
            }
            if month % every == 0 {
                let text = if long || every > 1 { self.words.months[month].clone() } else { letter(month) };
                frame.below(left + pitch / 2.0, 0.0, &text);
            }
            readings.push(self.reading(month, left + pitch / 2.0, frame.y.at(under)));
        }
        let zero = frame.y.at(0.0);
        frame.pen.line(Ink::Axis, &[(frame.left, zero), (frame.right, zero)]);
        self.names(&mut frame, pitch);
        frame.finished(0.0, readings)
    }

    /// The same numbers.
    pub fn table(&self) -> Table {
        let mut columns = vec![self.words.month.clone()];
        columns.extend(self.portions.iter().map(|portion| portion.name.clone()));
        columns.push(self.words.shortfall.clone());
        let row = |month: usize| {
            let mut row = vec![self.words.months[month].clone()];
            row.extend(self.portions.iter().map(|portion| significant(portion.amounts[month], DIGITS)));
            row.push(significant(self.shortfall[month], DIGITS));
            row
        };
        let last = columns.len();
        Table { columns, rows: (0..12).map(row).collect() }.in_unit(1..last, &self.words.unit)
    }

    fn reading(&self, month: usize, x: f64, y: f64) -> Reading {
        let mut texts = Vec::new();
        let mut tell = |name: &str, amount: f64| {
            if amount > 0.0 {
                texts.push(format!("{name} {}", with_unit(amount, &self.words.unit)));
            }
        };
        for portion in &self.portions {
            tell(&portion.name, portion.amounts[month]);
        }
        tell(&self.words.shortfall, self.shortfall[month]);
        Reading { x, y, label: self.words.months[month].clone(), value: texts.join(said!(", ", "; ")) }
    }

    /// Names beside the last bar, each with a swatch and a leader to its portion.
    fn names(&self, frame: &mut Frame, pitch: f64) {
        let edge = frame.right - pitch * 0.12;
        let mut under = 0.0;
        let mut ends = Vec::new();
        for portion in &self.portions {
            let amount = sound(portion.amounts[11]);
            ends.push(frame.y.at(under + amount / 2.0));
            under += amount;
        }
        let is_short = self.shortfall.iter().any(|lacking| *lacking > 0.0);
        if is_short {
            ends.push(f64::midpoint(frame.y.at(0.0), frame.y.at(-sound(self.shortfall[11]))));
        }
        let placed = apart(&ends, (frame.top + 4.0, frame.bottom - 4.0));
        let x = frame.right + 12.0;
        for (at, (end, y)) in ends.iter().zip(&placed).enumerate() {
            frame.pen.line(Ink::Faint, &[(edge + 1.0, *end), (x - 2.0, *y)]);
            let swatch = [(x, y - 5.0), (x + 14.0, y - 5.0), (x + 14.0, y + 5.0), (x, y + 5.0)];
            let name = if let Some(portion) = self.portions.get(at) {
                filled(&mut frame.pen, portion.way, &swatch);
                &portion.name
            } else {
                lacking_below(&mut frame.pen, (x, x + 14.0), y - 5.0, y + 5.0);
                &self.words.shortfall
            };
            for line in lettering::lines(name, frame.width - x - 18.0, SMALL, 1) {
                frame.pen.text(Ink::Label, (x + 18.0, y + 4.5), Anchor::Start, SMALL, &line);
            }
        }
    }
}

fn sound(amount: f64) -> f64 {
    if amount.is_finite() { amount.max(0.0) } else { 0.0 }
}

/// Fills an area as the way asks: each has its own hatching, so that colour is not needed.
fn filled(pen: &mut Pen, way: Way, area: &[Point; 4]) {
    if (area[2].1 - area[0].1).abs() < 0.3 {
        return;
    }
    match way {
        Way::Used => pen.area(Ink::Used, area),
        Way::Spilled => {
            pen.area(Ink::SpillArea, area);
            pen.strokes(Ink::SpillHatch, &polygon::hatch(area, 6.0));
        }
        Way::FirstFlush => {
            pen.area(Ink::FirstFlush, area);
            pen.strokes(Ink::FirstFlushHatch, &polygon::back_hatch(area, 4.0));
        }
        Way::Uncollected => {
            pen.area(Ink::Uncollected, area);
            pen.strokes(Ink::UncollectedHatch, &polygon::hatch(area, 5.0));
        }
        Way::Lost => {
            pen.area(Ink::Lost, area);
            let mut crossed = polygon::hatch(area, 6.0);
            crossed.extend(polygon::back_hatch(area, 6.0));
            pen.strokes(Ink::LostHatch, &crossed);
        }
    }
    pen.outline(Ink::Line, area);
}

/// What is lacking: a bar that hangs from the line and ends in a point.
fn lacking_below(pen: &mut Pen, (left, right): (f64, f64), top: f64, bottom: f64) {
    let point = (bottom - top).min(5.0);
    pen.area(
        Ink::Shortfall,
        &[
            (left, top),
            (right, top),
            (right, bottom - point),
            (f64::midpoint(left, right), bottom),
            (left, bottom - point),
        ],
    );
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::Mark;
    use crate::figures::sound::assert_sound;

    fn example() -> WhereItWent {
        let portion = |name: &str, way, amount: f64| Portion { name: name.into(), way, amounts: [amount; 12] };
        let mut shortfall = [0.0; 12];
        shortfall[8] = 30.0;
        WhereItWent {
            portions: vec![
                portion("Used", Way::Used, 100.0),
                portion("Spilled", Way::Spilled, 40.0),
                portion("Lost", Way::Lost, 0.0),
            ],
            shortfall,
            words: WhereItWentWords {
                unit: "L".into(),
                shortfall: "Short".into(),
                month: "Month".into(),
                months: std::array::from_fn(|at| format!("M{}", at + 1)),
            },
        }
    }

    #[test]
    fn months_that_have_no_room_are_named_every_third() {
        let named = |width: f64| {
            let mut went = example();
            const MONTHS: [&str; 12] =
                ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
            went.words.months = MONTHS.map(str::to_owned);
            let named = |text: &str| MONTHS.iter().any(|month| month.starts_with(text));
            let is_month = |mark: &&Mark| matches!(mark, Mark::Text { text, .. } if named(text));
            went.drawing(width).marks.iter().filter(is_month).count()
        };
        assert_eq!((named(700.0), named(358.0), named(200.0)), (12, 12, 4));
    }

    #[test]
    fn bars_table_and_readings_agree() {
        let went = example();
        let drawing = went.drawing(358.0);
        assert_sound(&drawing);
        assert_eq!(went.table().rows[8], ["M9", "100", "40", "0", "30"]);
        assert_eq!(drawing.readings[8].value, "Used 100\u{a0}L, Spilled 40\u{a0}L, Short 30\u{a0}L");
        assert_eq!(drawing.readings[0].value, "Used 100\u{a0}L, Spilled 40\u{a0}L");
    }

    #[test]
    fn nothing_makes_an_empty_chart() {
        let none = WhereItWent { portions: Vec::new(), shortfall: [f64::NAN; 12], ..example() };
        assert_sound(&none.drawing(358.0));
    }
}

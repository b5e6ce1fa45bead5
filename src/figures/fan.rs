//! What may be in store on the days to come: a range that widens, its middle, and the floor with no more rain.

use chrono::{Datelike, NaiveDate};

use super::drawing::{Anchor, Drawing, Ink, Reading};
use super::frame::{DIGITS, Frame, Wanted, apart, with_unit};
use super::lettering::SMALL;
use super::pen::Point;
use super::scale::Scale;
use super::table::Table;
use super::ticks;
use crate::quantity::shown::significant;

/// Width of a tick's label.
const TICK: f64 = 46.0;

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
            frame.pen.text(Ink::Label, (frame.right, at - 5.0), Anchor::End, SMALL, &self.words.capacity);
        }
        frame.pen.line(Ink::Faint, &low);
        frame.pen.line(Ink::Faint, &high);
        frame.pen.line(Ink::Loose, &floor);
        frame.pen.line(Ink::WaterLine, &middle);
        if let (Some(high), Some(middle), Some(low)) = (high.get(days / 2), middle.get(days / 2), low.get(days / 2)) {
            let wanted = [low.1 + 17.0, middle.1 + 5.0, high.1 - 6.0];
            let placed = apart(&wanted, (frame.top + 12.0, frame.bottom - 6.0));
            for (text, y) in self.words.lines.iter().zip(placed) {
                frame.pen.text(Ink::Label, (middle.0, y), Anchor::Middle, SMALL, text);
            }
        }
        if let Some(at) = floor.iter().find(|at| at.0 > frame.left + 0.06 * (frame.right - frame.left)) {
            frame.pen.text(
                Ink::Label,
                (at.0 - 2.0, at.1.min(frame.bottom - 22.0) + 16.0),
                Anchor::Start,
                SMALL,
                &self.words.lines[3],
            );
        }
        let readings = (0..days).map(|day| Reading {
            x: middle[day].0,
            y: middle[day].1,
            label: self.date(day),
            value: self.read(day),
        });
        let readings = readings.collect();
        frame.finished(0.0, readings)
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
        Table { columns, rows: (0..self.days()).step_by(10).map(row).collect() }
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
}

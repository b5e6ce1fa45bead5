//! Amounts day by day, such as rain; days of which nothing is known are told apart from those of nothing.

use chrono::NaiveDate;

use super::drawing::{Drawing, Ink, Reading};
use super::frame::{DIGITS, Frame, Wanted, with_unit};
use super::scale::Scale;
use super::table::Table;
use super::track::{day_text, day_ticks};
use crate::quantity::shown::significant;

/// Room under the plot for the marks of unknown days.
const STRIP: f64 = 12.0;
/// A bar with its gap is no narrower than this: else days are gathered.
const NARROWEST_BAR: f64 = 3.0;

/// Amounts from a day on.
#[derive(Clone, Copy, Debug)]
pub struct Daily<'a> {
    /// The first day.
    pub from: NaiveDate,
    /// The amount of each day, in the unit that is shown; none where it is not known.
    pub values: &'a [Option<f64>],
    /// What is written.
    pub words: &'a DailyWords,
}

/// What is written at amounts day by day.
#[derive(Clone, Debug, PartialEq)]
pub struct DailyWords {
    /// The unit.
    pub unit: String,
    /// Of a day that is not known.
    pub unknown: String,
    /// Short names of January to December.
    pub months: [String; 12],
    /// Over the columns of the table: days, amount, days not known.
    pub columns: [String; 3],
}

/// Days gathered to one bar.
struct Group {
    first: usize,
    last: usize,
    sum: f64,
    unknown: usize,
}

impl Daily<'_> {
    fn groups(&self, each: usize) -> Vec<Group> {
        let group = |(at, days): (usize, &[Option<f64>])| Group {
            first: at * each,
            last: at * each + days.len() - 1,
            sum: days.iter().flatten().sum(),
            unknown: days.iter().filter(|day| day.is_none()).count(),
        };
        self.values.chunks(each.max(1)).enumerate().map(group).collect()
    }

    fn day(&self, at: usize) -> NaiveDate {
        let days = u64::try_from(at).unwrap_or(0);
        self.from.checked_add_days(chrono::Days::new(days)).unwrap_or(self.from)
    }

    fn span(&self, group: &Group) -> String {
        let text = |at: usize| day_text(self.day(at), &self.words.months);
        if group.first == group.last {
            text(group.first)
        } else {
            format!("{} – {}", text(group.first), text(group.last))
        }
    }

    /// Draws the chart for a width.
    pub fn drawing(&self, width: f64) -> Drawing {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "pixels are few")]
        let most = ((width - 60.0).max(60.0) / NARROWEST_BAR) as usize;
        let groups = self.groups(self.values.len().div_ceil(most).max(1));
        let greatest = groups.iter().map(|group| group.sum).fold(0.0, f64::max);
        let wanted = Wanted { width, range: (0.0, greatest), unit: &self.words.unit, right: 10.0, strip: STRIP };
        let mut frame = Frame::new(&wanted);
        #[expect(clippy::cast_precision_loss, reason = "days are few")]
        let count = self.values.len().max(1) as f64;
        let x = Scale { from: (0.0, count), to: (frame.left, frame.right) };
        let last = self.day(self.values.len().saturating_sub(1));
        day_ticks(&mut frame, &x, (self.from, last), &self.words.months, STRIP);
        let mut readings = Vec::with_capacity(groups.len());
        for group in &groups {
            #[expect(clippy::cast_precision_loss, reason = "days are few")]
            let (left, right) = (x.at(group.first as f64), x.at((group.last + 1) as f64));
            let (middle, half) = (f64::midpoint(left, right), ((right - left) * 0.38).clamp(0.7, 12.0));
            let top = frame.y.at(group.sum);
            if group.sum > 0.0 {
                frame.pen.rectangle(Ink::Rain, (middle - half, top), 2.0 * half, frame.y.at(0.0) - top);
            }
            if group.unknown > 0 {
                let (arm, y) = (half.min(2.5), frame.bottom + 6.0);
                let crossed = [
                    [(middle - arm, y - arm), (middle + arm, y + arm)],
                    [(middle - arm, y + arm), (middle + arm, y - arm)],
                ];
                frame.pen.strokes(Ink::Faint, &crossed);
            }
            let all = group.last + 1 - group.first;
            let value = match group.unknown {
                0 => with_unit(group.sum, &self.words.unit),
                unknown if unknown == all => self.words.unknown.clone(),
                unknown => [
                    &with_unit(group.sum, &self.words.unit),
                    said!(", ", "; "),
                    &unknown.to_string(),
                    " × ",
                    &self.words.unknown,
                ]
                .concat(),
            };
            readings.push(Reading { x: middle, y: top, label: self.span(group), value });
        }
        frame.finished(STRIP, readings)
    }

    /// The amount of each day, or of ten days each where there are very many.
    pub fn table(&self) -> Table {
        let each = if self.values.len() > 400 { 10 } else { 1 };
        let row = |group: &Group| {
            let all = group.last + 1 - group.first;
            let amount = if group.unknown == all { "—".to_owned() } else { significant(group.sum, DIGITS) };
            vec![self.span(group), amount, group.unknown.to_string()]
        };
        Table { columns: self.words.columns.to_vec(), rows: self.groups(each).iter().map(row).collect() }
            .in_unit(1..2, &self.words.unit)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::sound::assert_sound;

    fn words() -> DailyWords {
        DailyWords {
            unit: "mm".into(),
            unknown: "unknown".into(),
            months: std::array::from_fn(|at| format!("M{}", at + 1)),
            columns: ["day", "rain", "unknown"].map(String::from),
        }
    }

    #[test]
    fn an_unknown_day_is_not_a_dry_one() {
        let words = words();
        let from = NaiveDate::from_ymd_opt(2026, 3, 1).unwrap_or_default();
        let values = [Some(0.0), None, Some(12.5)];
        let daily = Daily { from, values: &values, words: &words };
        let drawing = daily.drawing(358.0);
        assert_sound(&drawing);
        let read: Vec<&str> = drawing.readings.iter().map(|reading| reading.value.as_str()).collect();
        assert_eq!(read, ["0\u{a0}mm", "unknown", "12.5\u{a0}mm"]);
        assert_eq!(daily.table().rows, [["1 M3 2026", "0", "0"], ["2 M3 2026", "—", "1"], ["3 M3 2026", "12.5", "0"]]);
    }

    #[test]
    fn ten_years_fit_a_phone_and_no_millimetre_is_lost() {
        let words = words();
        let from = NaiveDate::from_ymd_opt(2016, 1, 1).unwrap_or_default();
        let values: Vec<Option<f64>> = (0..3653).map(|day| (day % 7 != 0).then_some(1.0)).collect();
        let daily = Daily { from, values: &values, words: &words };
        let drawing = daily.drawing(358.0);
        assert_sound(&drawing);
        assert!(drawing.readings.len() <= 120);
        let known = values.iter().flatten().sum::<f64>();
        assert!((daily.groups(31).iter().map(|group| group.sum).sum::<f64>() - known).abs() < 1e-9);
    }
}

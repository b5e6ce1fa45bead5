//! A share with the range that it may lie in: how reliable, and how sure that is.

use super::drawing::{Anchor, Drawing, Ink, Reading};
use super::lettering::{self, SIZE, SMALL};
use super::pen::Pen;
use super::scale::Scale;
use super::table::Table;

const NARROWEST: f64 = 200.0;
const AXIS: f64 = 44.0;

/// A share from 0 to 1 with its range.
#[derive(Clone, Debug, PartialEq)]
pub struct Interval {
    /// Lower end of the range.
    pub low: f64,
    /// The share found.
    pub share: f64,
    /// Upper end of the range.
    pub high: f64,
    /// What is written.
    pub words: IntervalWords,
}

/// What is written at a share with its range.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct IntervalWords {
    /// Over it: "15 of 20 good years".
    pub share: String,
    /// Under it: "range 53–89 %".
    pub range: String,
    /// At the left end.
    pub none: String,
    /// At the right end.
    pub all: String,
}

impl Interval {
    /// Draws the mark for a width.
    pub fn drawing(&self, width: f64) -> Drawing {
        let width = if width.is_finite() { width.max(NARROWEST) } else { NARROWEST };
        let x = Scale { from: (0.0, 1.0), to: (14.0, width - 14.0) };
        let at = |share: f64| x.at(share.clamp(0.0, 1.0));
        let (low, share, high) = (at(self.low), at(self.share), at(self.high));
        let mut pen = Pen::default();
        pen.line(Ink::Faint, &[(x.to.0, AXIS), (x.to.1, AXIS)]);
        for tenth in 0..=10 {
            let place = at(f64::from(tenth) / 10.0);
            let half = if tenth % 5 == 0 { 6.0 } else { 3.0 };
            pen.line(Ink::Faint, &[(place, AXIS - half), (place, AXIS + half)]);
        }
        pen.rectangle(Ink::Band, (low, AXIS - 8.0), high - low, 16.0);
        pen.strokes(
            Ink::Strong,
            &[
                [(low, AXIS - 8.0), (low, AXIS + 8.0)],
                [(high, AXIS - 8.0), (high, AXIS + 8.0)],
                [(low, AXIS), (high, AXIS)],
            ],
        );
        pen.circle(Ink::Solid, (share, AXIS), 6.0);
        let centred = |around: f64, text: &str, size: f64| {
            let half = (lettering::width(text, size) / 2.0).min(width / 2.0);
            around.clamp(half, width - half)
        };
        let words = &self.words;
        let over = centred(share, &words.share, SIZE);
        pen.text(Ink::StrongLabel, (over, 22.0), Anchor::Middle, SIZE, &words.share);
        // Between the words at both ends, where there is room for all three.
        let half = lettering::width(&words.range, SMALL) / 2.0 + 8.0;
        let (least, most) =
            (lettering::width(&words.none, SMALL) + half, width - lettering::width(&words.all, SMALL) - half);
        let middle = f64::midpoint(low, high);
        let under = if least < most { middle.clamp(least, most) } else { centred(middle, &words.range, SMALL) };
        pen.text(Ink::Label, (under, AXIS + 26.0), Anchor::Middle, SMALL, &words.range);
        if least < most || under - half > lettering::width(&words.none, SMALL) {
            pen.text(Ink::FaintLabel, (2.0, AXIS + 26.0), Anchor::Start, SMALL, &words.none);
        }
        if least < most || under + half < width - lettering::width(&words.all, SMALL) {
            pen.text(Ink::FaintLabel, (width - 2.0, AXIS + 26.0), Anchor::End, SMALL, &words.all);
        }
        let reading = Reading { x: share, y: AXIS, label: words.share.clone(), value: words.range.clone() };
        Drawing { width, height: AXIS + 36.0, marks: pen.marks, readings: vec![reading] }
    }

    /// The words in one row.
    pub fn table(&self) -> Table {
        Table {
            columns: vec![String::new(), String::new()],
            rows: vec![vec![self.words.share.clone(), self.words.range.clone()]],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::figures::Mark;
    use crate::figures::sound::assert_sound;

    #[test]
    fn every_share_stays_on_the_sheet() {
        for (low, share, high) in [(0.0, 0.0, 0.2), (0.53, 0.75, 0.89), (0.8, 1.0, 1.0), (f64::NAN, f64::NAN, f64::NAN)]
        {
            let words = IntervalWords {
                share: "15 of 20 good years".into(),
                range: "range 53–89 %".into(),
                none: "0 %".into(),
                all: "100 %".into(),
            };
            let drawing = Interval { low, share, high, words }.drawing(358.0);
            assert_sound(&drawing);
            let is_end = |mark: &&Mark| matches!(mark, Mark::Text { text, .. } if text == "0 %" || text == "100 %");
            assert!(!share.is_finite() || drawing.marks.iter().filter(is_end).count() == 2, "{share}");
        }
    }
}

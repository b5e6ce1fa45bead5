//! What charts have in common: the axis of values with its unit, grid lines, and labels that keep out of each
//! other's way.

use super::drawing::{Anchor, Drawing, Ink};
use super::lettering::{self, SMALL};
use super::pen::Pen;
use super::scale::Scale;
use super::ticks;
use crate::quantity::order::rising;
use crate::quantity::shown::significant;

/// Digits of the values that are read off.
pub(super) const DIGITS: usize = 3;
/// Narrowest chart.
const NARROWEST: f64 = 240.0;
/// Room above, for the unit.
const TOP: f64 = 30.0;
/// Room below, for the labels of the other axis.
const BELOW: f64 = 24.0;
/// Distance that labels keep from each other.
const APART: f64 = 16.0;

/// A chart's sheet with its axis of values.
pub(super) struct Frame {
    /// What is drawn.
    pub pen: Pen,
    /// Width of the sheet.
    pub width: f64,
    /// Left end of the plot.
    pub left: f64,
    /// Right end of the plot.
    pub right: f64,
    /// Upper end of the plot.
    pub top: f64,
    /// Lower end of the plot.
    pub bottom: f64,
    /// The axis of values.
    pub y: Scale,
}

/// What a frame is made for.
pub(super) struct Wanted<'a> {
    /// Width of the sheet.
    pub width: f64,
    /// Least value, 0 or below, and greatest.
    pub range: (f64, f64),
    /// The unit of the values.
    pub unit: &'a str,
    /// Room at the right, for labels.
    pub right: f64,
    /// Room between the plot and the labels of the other axis.
    pub strip: f64,
}

impl Frame {
    /// Draws grid, axis and unit. Below the line stand amounts that are lacking, written without a sign.
    pub fn new(wanted: &Wanted) -> Self {
        let width = if wanted.width.is_finite() { wanted.width.max(NARROWEST) } else { NARROWEST };
        let height = (0.55 * width).clamp(222.0, 330.0);
        let (top, bottom) = (TOP, height - BELOW - wanted.strip);
        let values = ticks::values(wanted.range.0, wanted.range.1, ((bottom - top) / 34.0).floor());
        let texts: Vec<String> = values.iter().map(|value| significant(value.abs(), DIGITS)).collect();
        let left = texts.iter().map(|text| lettering::width(text, SMALL)).fold(0.0, f64::max) + 10.0;
        let right = width - wanted.right.max(10.0);
        let ends = (values.first().copied().unwrap_or(0.0), values.last().copied().unwrap_or(1.0));
        let y = Scale { from: ends, to: (bottom, top) };
        let mut pen = Pen::default();
        for (value, text) in values.iter().zip(&texts) {
            let at = y.at(*value);
            pen.line(Ink::Grid, &[(left, at), (right, at)]);
            pen.text(Ink::FaintLabel, (left - 6.0, at + 4.5), Anchor::End, SMALL, text);
        }
        pen.text(Ink::FaintLabel, (2.0, 14.0), Anchor::Start, SMALL, wanted.unit);
        pen.line(Ink::Axis, &[(left, y.at(0.0)), (right, y.at(0.0))]);
        Self { pen, width, left, right, top, bottom, y }
    }

    /// A label of the other axis.
    pub fn below(&mut self, x: f64, strip: f64, text: &str) {
        let half = lettering::width(text, SMALL) / 2.0;
        let x = x.clamp(half.min(self.width / 2.0), (self.width - half).max(self.width / 2.0));
        self.pen.text(Ink::FaintLabel, (x, self.bottom + strip + 17.0), Anchor::Middle, SMALL, text);
    }

    /// The finished drawing.
    pub fn finished(self, strip: f64, readings: Vec<super::Reading>) -> Drawing {
        Drawing { width: self.width, height: self.bottom + strip + BELOW, marks: self.pen.marks, readings }
    }
}

/// Value with its unit, as it is read off.
pub(super) fn with_unit(value: f64, unit: &str) -> String {
    if unit.is_empty() { significant(value, DIGITS) } else { format!("{}\u{a0}{unit}", significant(value, DIGITS)) }
}

/// Moves heights apart so that labels there don't touch; keeps their order and the span.
pub(super) fn apart(heights: &[f64], span: (f64, f64)) -> Vec<f64> {
    let labels: Vec<Beside> = heights.iter().map(|height| (0.0, 1.0, *height)).collect();
    apart_beside(&labels, span)
}

/// A label: its left and right end, and its height.
pub(super) type Beside = (f64, f64, f64);

/// The same for labels at several places: those that stand beside each other keep their heights.
pub(super) fn apart_beside(labels: &[Beside], (top, bottom): (f64, f64)) -> Vec<f64> {
    let mut placed: Vec<f64> = labels.iter().map(|label| label.2).collect();
    let order = rising(&placed);
    let meet = |one: usize, other: usize| labels[one].0 < labels[other].1 && labels[other].0 < labels[one].1;
    for (place, &at) in order.iter().enumerate() {
        let above = order[..place].iter().filter(|above| meet(at, **above));
        let least = above.map(|above| placed[*above] + APART).fold(top, f64::max);
        placed[at] = placed[at].max(least);
    }
    for (place, &at) in order.iter().enumerate().rev() {
        let below = order[place + 1..].iter().filter(|below| meet(at, **below));
        let greatest = below.map(|below| placed[*below] - APART).fold(bottom, f64::min);
        placed[at] = placed[at].min(greatest);
    }
    placed
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_keep_their_distance_and_order() {
        let placed = apart(&[100.0, 101.0, 20.0, 102.0], (0.0, 110.0));
        let mut sorted = placed.clone();
        sorted.sort_by(f64::total_cmp);
        assert!(sorted.windows(2).all(|pair| pair[1] - pair[0] >= APART - 1e-9), "{placed:?}");
        assert!(placed[2] < placed[0] && placed[0] < placed[1] && placed[1] < placed[3]);
        assert!(placed.iter().all(|height| (0.0..=110.0).contains(height)));
        let beside = [(0.0, 40.0, 50.0), (60.0, 90.0, 50.0), (30.0, 70.0, 52.0)];
        assert_eq!(apart_beside(&beside, (0.0, 110.0)), [50.0, 50.0, 50.0 + APART], "the third meets both");
    }
}

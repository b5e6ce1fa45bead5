//! Signs on a part: something to see to, or something that keeps it from working.

use crate::figures::drawing::Ink;
use crate::figures::pen::{Pen, Point};
use crate::site::part::PartId;

/// A part with its sign.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PartMark {
    /// The part.
    pub part: PartId,
    /// The sign.
    pub sign: Sign,
}

/// The signs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sign {
    /// Rain ran through it: drawn as arrows where it ran.
    Flow,
    /// Something wants attention: a triangle with a stroke and a dot.
    Attention,
    /// It can't work so: a disc with a cross.
    Fault,
}

const RADIUS: f64 = 9.0;

/// Draws the gravest sign of some parts around a place.
pub(super) fn draw(pen: &mut Pen, marks: &[PartMark], parts: &[PartId], at: Point) {
    let gravest = marks.iter().filter(|mark| parts.contains(&mark.part)).map(|mark| mark.sign).max();
    match gravest {
        Some(Sign::Attention) => {
            pen.area_at(Ink::Caution, at, &[(0.0, -RADIUS), (RADIUS, 7.0), (-RADIUS, 7.0)]);
            pen.strokes_at(Ink::CautionSign, at, &[[(0.0, -3.0), (0.0, 1.0)], [(0.0, 4.0), (0.0, 4.2)]]);
        }
        Some(Sign::Fault) => {
            pen.circle(Ink::Fault, at, RADIUS);
            pen.strokes_at(Ink::FaultSign, at, &[[(-3.5, -3.5), (3.5, 3.5)], [(3.5, -3.5), (-3.5, 3.5)]]);
        }
        Some(Sign::Flow) | None => {}
    }
}

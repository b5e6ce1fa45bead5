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
    /// Something wants attention: a triangle with a stroke and a dot.
    Attention,
    /// It can't work so: a disc with a cross.
    Fault,
}

const RADIUS: f64 = 9.0;

/// Draws the gravest sign of some parts around a place.
pub(super) fn draw(pen: &mut Pen, marks: &[PartMark], parts: &[PartId], (x, y): Point) {
    let gravest = marks.iter().filter(|mark| parts.contains(&mark.part)).map(|mark| mark.sign).max();
    match gravest {
        Some(Sign::Attention) => {
            pen.area(Ink::Caution, &[(x, y - RADIUS), (x + RADIUS, y + 7.0), (x - RADIUS, y + 7.0)]);
            pen.strokes(Ink::CautionSign, &[[(x, y - 3.0), (x, y + 1.0)], [(x, y + 4.0), (x, y + 4.2)]]);
        }
        Some(Sign::Fault) => {
            pen.circle(Ink::Fault, (x, y), RADIUS);
            pen.strokes(
                Ink::FaultSign,
                &[[(x - 3.5, y - 3.5), (x + 3.5, y + 3.5)], [(x + 3.5, y - 3.5), (x - 3.5, y + 3.5)]],
            );
        }
        None => {}
    }
}

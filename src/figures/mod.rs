//! Charts and the house in section as plain geometry, with tables of the same numbers. Labels and numbers in the
//! unit that the person reads are handed in; what comes out is a [`Drawing`] that any page can show as SVG.
//!
//! Absent on purpose: sentences, units and colours. A mark says which [`Ink`] it is drawn in; `style/figure.css`
//! says what that ink looks like by day, at night and on paper.

pub mod drawing;
pub mod fan;
pub mod picture;
pub mod svg;
pub mod table;

pub mod band;
pub mod bars;
pub mod contours;
pub mod curve;
pub mod daily;
pub mod interval;
pub mod lines;
pub mod track;
pub mod went;

pub mod house;

mod frame;
mod lettering;
mod pen;
mod polygon;
mod scale;
mod share_out;
mod ticks;

#[cfg(test)]
mod sound;

pub use drawing::{Anchor, Drawing, Ink, Mark, Reading, Target};
pub use table::Table;

//! Charts and the house in section as plain geometry, with tables of the same numbers. Labels and numbers in the
//! unit that the person reads are handed in; what comes out is a [`Drawing`] that any page can show as SVG.
//!
//! Absent on purpose: sentences, units and colours. A mark says which [`Ink`] it is drawn in; `style/figure.css`
//! says what that ink looks like by day, at night and on paper.

pub mod drawing;
pub mod svg;

mod lettering;
mod pen;
mod polygon;
mod share_out;

pub mod house;

pub use drawing::{Anchor, Drawing, Ink, Mark, Reading, Target};

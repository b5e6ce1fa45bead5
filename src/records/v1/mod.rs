//! The shapes of version 1, as plain functions between a JSON document and the parts of `site`.
//!
//! They are frozen: whatever becomes of `site`, a document of version 1 is read by these functions as it was written.
//! A quantity is a bare number in the unit that it is kept in, a date reads 2004-07-31, and a choice is its name, or
//! an object with what it holds under that name. Keys that are not known are ignored; what is missing is an error, but
//! for what may be absent anyway.

mod feed;
mod joints;
mod part_id;
mod section;
mod system;
mod tank;
mod tank_shape;
mod uses;

pub mod index;
pub mod rain;
pub mod site;
pub mod units;

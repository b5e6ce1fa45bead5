//! What is kept of each thing, as plain functions between a JSON document and the parts of `site`.
//!
//! A quantity is a bare number in the unit that it is kept in, a date reads 2004-07-31, and a choice is its name, or
//! an object with what it holds under that name. Keys that are not known are ignored; what is missing is an error, but
//! for what may be absent anyway.
//!
//! A later version only adds: a key that came with version 2 or after is read with [`Place::at_if_any`], and its
//! absence means what the program did before it knew the key. So one function reads every version. A change that can't
//! be made so takes a step that turns the old document into the new one before it is read.
//!
//! [`Place::at_if_any`]: crate::records::place::Place::at_if_any

mod barriers;
mod details;
mod feed;
mod garden;
mod habits;
mod joints;
mod part_id;
mod section;
mod system;
mod tank;
mod tank_shape;
mod upkeep;
mod uses;

pub mod diary;
pub mod index;
pub mod rain;
pub mod site;
pub mod trial;
pub mod units;

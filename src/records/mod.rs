//! How it is kept: bytes and versions. No browser here: a [`shelf::Shelf`] is handed in.
//!
//! `envelope` guards one text with version, generation and checksum; `slots` keeps the last two generations of a
//! record on a shelf; `cupboard` knows which records there are; `exchange` is the file that leaves and comes back.
//! Version 1 of a record holds the shapes of `site` as they are: when one of them changes, its old form is frozen in
//! a file of this room first, with a step that turns it into the new one, and `tests/saved` keeps a file of each.

pub mod shelf;

pub mod envelope;
pub mod slots;

pub mod cupboard;
pub mod exchange;

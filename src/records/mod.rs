//! How it is kept: bytes and versions. No browser here: a [`shelf::Shelf`] is handed in.
//!
//! `envelope` guards one text with version, generation and checksum; `slots` keeps the last two generations of a
//! record on a shelf; `cupboard` knows which records there are; `exchange` is the file that leaves and comes back.
//! What is kept is a JSON document; `place` and `written` read and build one, and `v1` knows the shapes of version 1.
//! The shapes of a version are frozen: a new one gets a folder of its own and a step that turns the last into it, and
//! `tests/saved` keeps a file of each.

pub mod shelf;

pub mod envelope;
pub mod slots;

pub mod place;
pub mod v1;
mod written;

pub mod cupboard;
pub mod exchange;

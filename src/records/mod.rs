//! How it is kept: bytes and versions. No browser here: a [`shelf::Shelf`] is handed in.
//!
//! `envelope` guards one text with version, generation and checksum; `slots` keeps the last two generations of a
//! record on a shelf; `cupboard` knows which records there are; `exchange` is the file that leaves and comes back;
//! `undone` takes one change back and leaves what came after it.
//! What is kept is a JSON document; `json` is its text, `place` and `written` read and build one, and `shapes` knows what is kept of each
//! thing, in every version. `tests/saved` keeps a file of each version.

pub mod shelf;

pub mod envelope;
pub mod slots;

pub mod json;
pub mod place;
pub mod shapes;
mod written;

pub mod calendar;
pub mod cupboard;
pub mod exchange;
mod halves;
pub mod undone;

//! Rain: reading files, judging them, and making every day of them usable.

pub mod weather;

//! Native tests.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::cast_possible_truncation)]

mod any_system;
mod laws;
mod rain_records;

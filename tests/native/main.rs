//! Native tests.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::cast_possible_truncation)]

mod any_system;
mod independent_balance;
mod laws;
mod one_tank;
mod published_values;
mod rain_records;
mod saved;

//! The daily water balance.
//!
//! `plan` lowers a system to numbers, `run` takes it through the days with the help of `first_flush` (the diverter),
//! `level` (joined tanks) and `rule` (the order of events in a day), `ledger` says what went where and whether it adds
//! up, and `series` keeps the days. `lean`, `lanes` and `side_by_side` take many cases of one plain system through the
//! days at once, with the same results. `waters` says which stores help each other.

pub mod first_flush;
pub mod garden;
pub mod lanes;
pub mod lean;
pub mod ledger;
pub mod level;
pub mod plan;
pub mod ration;
pub mod rule;
pub mod run;
pub mod series;
pub mod side_by_side;
pub mod waters;

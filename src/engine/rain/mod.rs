//! Rain: reading files, judging them, and making every day of them usable.
//!
//! A file goes through [`import::read`] to a record and an account of it; [`picture`] shows what the record looks like;
//! [`gaps::usable`], [`normals::even_years`] or [`generated::years`] make the [`weather::Weather`] that the balance
//! takes, and [`drier::scaled`] changes it. Nothing is mended on the way that the [`report`] doesn't tell.

pub mod weather;

pub mod import;
pub mod rain_unit;
pub mod report;

mod columns;
mod gather;
mod import_csv;
mod import_ghcn;
mod lines;
mod written_date;
mod written_depth;

pub mod doubts;
pub mod spans;
pub mod unlikely_dry;

pub mod drier;
pub mod gaps;
pub mod generated;
pub mod normals;
pub mod picture;

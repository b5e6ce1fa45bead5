//! How big: the smallest system that does what is wanted, curves, the surface of storage and use, and the handbooks.
//!
//! `batch` runs many cases on the same rain, in small steps; the rest asks it. `sequent_peak` and `handbooks` need no run.

pub mod batch;
pub mod tally;

pub mod curves;
pub mod handbooks;
pub mod least_storage;
pub mod sequent_peak;
pub mod smallest;
pub mod study;
pub mod surface;

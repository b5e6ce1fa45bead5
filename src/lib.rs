//! Eavewater: the water balance of a household that lives on rain.
//!
//! Rooms in reading order; each may use only those above it (see `DEVELOPERS.md`, enforced by a test).

// First, so that its macros are known in all others.
#[macro_use]
pub mod language;

// Beside the rooms: how the program comes to the phone. The build compiles it once more by itself (`.ci/packing.mjs`).
#[cfg(not(target_arch = "wasm32"))]
extern crate alloc;
#[cfg(not(target_arch = "wasm32"))]
pub mod packing;

pub mod quantity;

pub mod site;

pub mod engine;

pub mod records;

pub mod figures;

pub mod words;

pub mod app;

#[cfg(target_arch = "wasm32")]
pub mod ui;

#[cfg(target_arch = "wasm32")]
pub mod browser;

/// The version of the program.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

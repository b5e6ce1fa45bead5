//! Eavewater: the water balance of a household that lives on rain.
//!
//! Rooms in reading order; each may use only those above it (see `DEVELOPERS.md`, enforced by a test).

pub mod app;
pub mod engine;
pub mod figures;
pub mod language;
pub mod quantity;
pub mod records;
pub mod site;
pub mod words;

#[cfg(target_arch = "wasm32")]
pub mod browser;
#[cfg(target_arch = "wasm32")]
pub mod ui;

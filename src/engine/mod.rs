//! What follows from a site: pure, deterministic, native. No clock, no chance but that of a seed, no text for people.

pub mod rain;
pub mod reference_et;

pub mod balance;
pub mod checks;
pub mod diary;
pub mod measures;
pub mod sizing;

pub mod levels;

pub mod ahead;
pub mod learning;
pub mod treatment;

pub mod question;
pub mod upgrades;

//! Fit to drink? What each barrier is worth, what is proven of a whole chain, doses, and results of water tests.

pub mod boiling;
pub mod cartridge;
pub mod contact;
pub mod dose;
pub mod targets;
pub mod ultraviolet;

pub mod limits;
pub mod results;
pub mod sources;

pub mod chain;
pub mod parts;
pub mod step;

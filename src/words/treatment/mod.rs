//! Fit to drink: barriers, the chain, roofs, doses, results of tests.

pub mod barriers;
pub mod dose;
pub mod roof;

/// The germs, in the order of [`crate::engine::treatment::targets::Germ::ALL`].
pub const GERMS: [&str; 3] = ["bacteria", "viruses", "protozoa"];

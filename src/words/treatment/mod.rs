//! Fit to drink: barriers, the chain, roofs, doses, results of tests.

pub mod barriers;
pub mod chain;
pub mod dose;
pub mod results;
pub mod roof;

use crate::language::Phrase;

/// The germs, in the order of [`crate::engine::treatment::targets::Germ::ALL`].
pub const GERMS: [Phrase; 3] =
    [phrase!("bacteria", "bacterias"), phrase!("viruses", "virus"), phrase!("protozoa", "protozoos")];

//! Fit to drink: barriers, the chain, roofs, doses, results of tests.

pub mod barriers;
pub mod chain;
pub mod dose;
pub mod results;
pub mod roof;

use crate::language::Phrase;

/// The germs, in the order of [`crate::engine::treatment::targets::Germ::ALL`].
pub const GERMS: [Phrase; 3] =
    [Phrase("bacteria", "bacterias"), Phrase("viruses", "virus"), Phrase("protozoa", "protozoos")];

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

//! What is there and what was written down: the parts of a household's system and its rain. Data and its
//! invariants; no computing, no page.

pub mod rain;

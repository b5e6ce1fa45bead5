//! What is there and what was written down: the parts of a household's system and its rain. Data, its
//! invariants, and what follows from it at once (what a tank holds, what habits come to, what a change makes of a house); no
//! weather, no page.
//!
//! What saved files look like is no matter of this room: `records` turns them into these shapes and back.

pub mod part;

pub mod barrier;
pub mod climate;

pub mod feed;
pub mod garden;
pub mod habits;
pub mod hauling;
pub mod head_figures;
pub mod pump;
pub mod rationing;
pub mod roof;
pub mod tank;
mod tank_shape;
pub mod trunk;
pub mod uses;

pub mod choices;
pub mod details;
pub mod edit;
pub mod findings;
pub mod new_part;
pub mod system;

pub mod demo;
pub mod diary;
pub mod household;
pub mod prices;
pub mod rain;
pub mod trial;
pub mod unused;
pub mod upgrade;
pub mod upkeep;
pub mod wanted;
pub mod work;

pub use tank::{Shape, ShapeKind};
pub use tank_shape::{TableRow, circle};

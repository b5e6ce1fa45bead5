//! What is drawn, place by place: plain structs with figures and words already chosen. Pure: `ui` draws them.

pub mod ahead;
pub mod charts;
pub mod checks;
pub mod climate;
pub mod diary;
pub mod document;
pub mod entry;
pub mod frame;
pub mod generated;
pub mod habits;
pub mod house;
pub mod kept;
pub mod method;
pub mod next;
pub mod rain;
pub mod report;
pub mod sheet;
pub mod size;
pub mod sizing;
pub mod sketch;
pub mod upkeep;
pub mod uses;
pub mod water;
pub mod years;

use crate::engine::question::{Answer, Refusal};

/// What the balance says of the open site, or why it says nothing.
pub type Outcome = Result<Answer, Refusal>;

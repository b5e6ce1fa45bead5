//! An entry of the diary before it is written.

use chrono::NaiveDate;

use crate::site::diary::{EntryId, Told};

/// What is to be written into the diary.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// The entry that it takes the place of; none for a new one.
    pub id: Option<EntryId>,
    /// The day that it tells of.
    pub date: NaiveDate,
    /// What it tells.
    pub told: Told,
    /// What else there is to say; may be empty.
    pub note: String,
}

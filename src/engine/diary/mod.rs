//! What follows from the diary: its rain beside the site's record, the line through its readings, what is doubtful, what upkeep is due.

pub mod doubts;
pub mod due;
pub mod joined;
pub mod track;

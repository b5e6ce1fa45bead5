//! What follows from the diary: its rain beside the site's record, the line through its readings, what is doubtful.

pub mod doubts;
pub mod joined;
pub mod track;

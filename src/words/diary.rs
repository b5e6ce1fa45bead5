//! Words of the diary.

/// An entry was written.
pub const WRITTEN: &str = "Written into the diary.";
/// An entry was taken out.
pub const REMOVED: &str = "Taken out of the diary.";
/// Nothing is in it.
pub const EMPTY: &str = "Nothing is written yet. A level now and then and the rain of each day are enough to know how \
                         long the water lasts. A day without an entry counts as unknown, never as dry.";
/// No rain fell today, and somebody looked.
pub const DRY_TODAY: &str = "No rain today";

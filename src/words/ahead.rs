//! Words of the weeks ahead.

/// What is wanted before anything can be said.
pub const WRITE_A_READING: &str =
    "Write down how full the tanks are first: the weeks ahead start from the last reading.";

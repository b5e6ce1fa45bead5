//! The least and the greatest that a value may be, written once and read by field, error and test.

/// A closed range in the unit that the quantity is kept in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The least allowed value.
    pub least: f64,
    /// The greatest allowed value.
    pub greatest: f64,
}

impl Range {
    /// A range from `least` to `greatest`, both allowed.
    pub const fn new(least: f64, greatest: f64) -> Self {
        Self { least, greatest }
    }

    /// Whether the value is a number within the range.
    pub fn holds(self, value: f64) -> bool {
        value >= self.least && value <= self.greatest
    }
}

/// Shares of a whole.
pub const SHARE: Range = Range::new(0.0, 1.0);

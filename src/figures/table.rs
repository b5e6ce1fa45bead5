//! The numbers of a figure as a table.

use std::ops::Range;

/// A table: the same numbers that a figure shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// Heads of the columns.
    pub columns: Vec<String>,
    /// Rows, each as long as the heads.
    pub rows: Vec<Vec<String>>,
}

impl Table {
    /// With the unit of the numbers behind the heads of some columns.
    #[must_use]
    pub fn in_unit(mut self, columns: Range<usize>, unit: &str) -> Self {
        for head in self.columns.get_mut(columns).into_iter().flatten() {
            *head = [head, ", ", unit].concat();
        }
        self
    }
}

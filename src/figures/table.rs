//! The numbers of a figure as a table.

/// A table: the same numbers that a figure shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// Heads of the columns.
    pub columns: Vec<String>,
    /// Rows, each as long as the heads.
    pub rows: Vec<Vec<String>>,
}

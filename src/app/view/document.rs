//! Something to read from end to end and to print: sections of blocks.

use super::charts::Chart;
use super::checks::CheckView;
use crate::figures::drawing::Drawing;
use crate::figures::table::Table;

/// A document.
#[derive(Clone, Debug, PartialEq)]
pub struct Document {
    /// Its title.
    pub title: String,
    /// What stands under the title.
    pub lead: Vec<String>,
    /// Its sections.
    pub sections: Vec<Section>,
}

/// A section with its title.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// The title.
    pub title: &'static str,
    /// What stands under it.
    pub blocks: Vec<Block>,
}

/// One piece of a section.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A heading within the section.
    Heading(String),
    /// A paragraph.
    Text(String),
    /// The sentence that matters most.
    Answer(String),
    /// What to be careful of.
    Caution(String),
    /// Lines.
    List(Vec<String>),
    /// Labels with their values.
    Values(Vec<(String, String)>),
    /// A figure.
    Figure(Figure),
    /// A table with its name.
    Table(String, Table),
    /// A check.
    Check(CheckView),
}

/// A figure, drawn once for the screen and once for paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Its title.
    pub title: &'static str,
    /// What it shows, in a line.
    pub caption: String,
    /// As wide as the screen wants it.
    pub on_screen: Drawing,
    /// As wide as a page, or half as wide.
    pub on_paper: Drawing,
}

/// Width at which a figure fits a page of A4 and of Letter with its letters as large as the text, in pixels.
pub const PAPER: f64 = 660.0;
/// Width for which one of two figures side by side on a page is drawn: its letters are a little smaller.
pub const HALF_PAPER: f64 = 400.0;
/// The same for the house, which then stands on a page with the answer.
pub const WIDE_PAPER: f64 = 860.0;

impl Section {
    /// A section that is still empty.
    pub const fn new(title: &'static str) -> Self {
        Self { title, blocks: Vec::new() }
    }

    /// Adds a heading.
    pub fn heading(&mut self, text: impl Into<String>) {
        self.blocks.push(Block::Heading(text.into()));
    }

    /// Adds a paragraph, unless it is empty.
    pub fn text(&mut self, text: impl Into<String>) {
        let text = text.into();
        if !text.is_empty() {
            self.blocks.push(Block::Text(text));
        }
    }

    /// Adds what to be careful of.
    pub fn caution(&mut self, text: impl Into<String>) {
        self.blocks.push(Block::Caution(text.into()));
    }

    /// Adds lines, if there are any.
    pub fn list(&mut self, lines: Vec<String>) {
        if !lines.is_empty() {
            self.blocks.push(Block::List(lines));
        }
    }

    /// Adds labels with values, if there are any.
    pub fn values(&mut self, values: Vec<(String, String)>) {
        if !values.is_empty() {
            self.blocks.push(Block::Values(values));
        }
    }

    /// Adds a table, unless it has no row.
    pub fn table(&mut self, name: impl Into<String>, table: Table) {
        if !table.rows.is_empty() {
            self.blocks.push(Block::Table(name.into(), table));
        }
    }

    /// Adds a check.
    pub fn check(&mut self, check: CheckView) {
        self.blocks.push(Block::Check(check));
    }

    /// Adds a figure.
    pub fn figure(&mut self, title: &'static str, caption: String, on_screen: Drawing, on_paper: Drawing) {
        self.blocks.push(Block::Figure(Figure { title, caption, on_screen, on_paper }));
    }

    /// Adds a chart as it is drawn for a width in pixels, and for a width on paper.
    pub fn chart(&mut self, chart: impl Fn(f64) -> Chart, width: f64, on_paper: f64) {
        let (screen, paper) = (chart(width), chart(on_paper));
        self.figure(screen.title, screen.caption, screen.drawing, paper.drawing);
    }
}

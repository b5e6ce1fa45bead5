//! What fills each tank: feeds side by side over it, or bundled where there are too many, and their runs under the
//! roof.

use super::layout::Cell;
use super::roof::Roof;
use super::rows::levels;
use crate::quantity::order::distinct;
use crate::site::part::PartId;

/// Width of a downspout with its screen and diverter.
pub(super) const SLOT: f64 = 48.0;
/// Width of a lone one with its name.
const LONE_SLOT: f64 = 150.0;
/// Distance of the downspouts' runs under the roof.
const RUN: f64 = 9.0;

/// What fills a tank.
pub(super) struct Inlet {
    /// The parts: several where they are bundled.
    pub parts: Vec<PartId>,
    /// Whether it is hauled water.
    pub hauled: bool,
    /// Left end.
    pub left: f64,
    /// Width.
    pub width: f64,
}

/// A downspout's run from a gutter to its feed.
pub(super) struct Run {
    /// First of the feeds.
    pub feed: PartId,
    /// Where it starts.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// Its height.
    pub y: f64,
}

impl Inlet {
    /// Where its downspout stands.
    pub fn pipe_x(&self) -> f64 {
        self.left + if self.is_wide() { 14.0 } else { self.width / 2.0 - 8.0 }
    }

    /// Whether there is room for its name beside it.
    pub fn is_wide(&self) -> bool {
        self.width >= 100.0
    }
}

/// Bundles the feeds of a cell where they have no room side by side.
pub(super) fn bundle(cell: &mut Cell) {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few dozen at most")]
    let most = (cell.width / SLOT).floor() as usize;
    if cell.inlets.len() <= most {
        return;
    }
    let mut parts = Vec::new();
    for inlet in cell.inlets.iter_mut().filter(|inlet| !inlet.hauled) {
        parts.append(&mut inlet.parts);
    }
    cell.inlets.retain(|inlet| inlet.hauled);
    if !parts.is_empty() {
        cell.inlets.insert(0, Inlet { parts, hauled: false, left: 0.0, width: 0.0 });
    }
}

/// Places the inlets of a cell over its tank, so that their pipes don't cross.
pub(super) fn place(cell: &mut Cell) {
    #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
    let count = cell.inlets.len().max(1) as f64;
    let wanted = if count > 1.0 { (cell.body_width / count).max(SLOT) } else { cell.body_width.max(LONE_SLOT) };
    let each = wanted.min(cell.width / count);
    let most_left = cell.left + cell.width - each * count;
    let mut x = (cell.middle() - each * count / 2.0).min(most_left).max(cell.left);
    for inlet in &mut cell.inlets {
        (inlet.left, inlet.width) = (x, each);
        x += each;
    }
}

/// The runs from gutters to the feeds of the first row, each at a height of its own where they would touch.
pub(super) fn runs(cells: &[Cell], roof: &Roof) -> Vec<Run> {
    let mut runs: Vec<Run> = Vec::new();
    for inlet in cells.iter().filter(|cell| cell.row == 0).flat_map(|cell| &cell.inlets) {
        let mut gutters = Vec::new();
        for feed in &inlet.parts {
            gutters.extend(roof.gutters_of(*feed));
        }
        for from in distinct(gutters) {
            runs.push(Run { feed: inlet.parts[0], from, to: inlet.pipe_x(), y: 0.0 });
        }
    }
    let ends: Vec<(f64, f64)> =
        runs.iter().map(|run| (run.from.min(run.to) - 4.0, run.from.max(run.to) + 4.0)).collect();
    for (run, level) in runs.iter_mut().zip(levels(&ends)) {
        run.y = roof.bottom + 8.0 + RUN * level;
    }
    runs
}

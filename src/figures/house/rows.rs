//! The rows of tanks, one below the other: ground, pipes in it, labels.

use super::heights::Heights;
use super::inlets::Run;
use super::layout::{Cell, Joint, span};
use super::roof::Roof;
use super::{Labels, label_of};
use crate::figures::lettering::{self, LEADING, SIZE};
use crate::site::part::PartId;
use crate::site::system::System;

/// Height of a downspout with its screen and diverter.
pub(super) const FEED_HEIGHT: f64 = 92.0;
/// Room for each level of pipes in the ground: a valve there must be hit by a thumb.
const LANE: f64 = 44.0;
/// A row of tanks with its own ground.
pub(super) struct Row {
    /// The top of the feeds.
    pub feeds: f64,
    /// The top of the highest tank, and of what runs over it.
    pub top: f64,
    /// The level 0.
    pub ground: f64,
    /// The top of the labels.
    pub labels: f64,
    /// The lower end.
    pub bottom: f64,
}

/// Stacks the rows; tells the joints their heights.
pub(super) fn rows(
    system: &System,
    labels: &Labels,
    roof: &Roof,
    cells: &[Cell],
    heights: &Heights,
    runs: &[Run],
    joints: &mut [Joint],
) -> Vec<Row> {
    let count = cells.iter().map(|cell| cell.row + 1).max().unwrap_or(1);
    let mut y = runs.iter().map(|run| run.y + 12.0).fold(roof.bottom + 10.0, f64::max);
    let mut rows = Vec::new();
    for row in 0..count {
        let own = || cells.iter().filter(|cell| cell.row == row);
        let feeds = y + if row > 0 { 14.0 } else { 0.0 };
        let fed = own().any(|cell| !cell.inlets.is_empty());
        let top = feeds + if fed { FEED_HEIGHT } else { 0.0 } + 16.0;
        let spans = || own().filter_map(|cell| cell.tank).map(|at| span(&system.tanks[at]));
        let highest = spans().map(|(_, rim)| heights.up(rim)).fold(30.0, f64::max);
        let lowest = spans().map(|(floor, _)| heights.up(floor)).fold(0.0, f64::min);
        let ground = top + highest;
        let first_lane = ground - lowest + 12.0;
        let lanes = place_lanes(cells, joints, row, first_lane);
        #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
        let label_top = first_lane + if lanes > 0 { LANE * lanes as f64 - 8.0 } else { 4.0 };
        let lines = |at: usize| {
            let (left, right) = label_room(system, cells, at);
            let Some(tank) = cells[at].tank else { return 0 };
            let id = system.tanks[tank].id;
            let detail = label_of(labels, id).map_or(1, |label| lettering::detail(&label.detail, right - left).len());
            label_lines(labels, id, right - left).len() + detail.max(1)
        };
        let lines = (0..cells.len()).filter(|at| cells[*at].row == row).map(lines).max().unwrap_or(0);
        #[expect(clippy::cast_precision_loss, reason = "four at most")]
        let bottom = label_top + LEADING * lines as f64 + 12.0;
        rows.push(Row { feeds, top, ground, labels: label_top, bottom });
        y = bottom;
    }
    rows
}

/// Gives the joints of a row their levels; returns how many levels there are.
fn place_lanes(cells: &[Cell], joints: &mut [Joint], row: usize, first: f64) -> usize {
    let ends_here = |joint: &Joint, end: usize| {
        let cell = &cells[joint.cells[end]];
        (cell.row == row).then(|| if joint.pump && end == 1 { cell.riser_x() } else { cell.drop_x() })
    };
    let stretch = |joint: &Joint| match (ends_here(joint, 0), ends_here(joint, 1), joint.margin) {
        (Some(a), Some(b), _) => Some((a.min(b), a.max(b))),
        (Some(a), None, Some(margin)) | (None, Some(a), Some(margin)) => Some((a, margin)),
        _ => None,
    };
    let here: Vec<usize> = (0..joints.len()).filter(|at| stretch(&joints[*at]).is_some()).collect();
    let stretches: Vec<(f64, f64)> = here.iter().filter_map(|at| stretch(&joints[*at])).collect();
    let mut count = 0;
    for (at, level) in here.into_iter().zip(levels(&stretches)) {
        for end in 0..2 {
            if ends_here(&joints[at], end).is_some() {
                joints[at].lanes[end] = first + 10.0 + LANE * level;
            }
        }
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few dozen at most")]
        let level = level as usize;
        count = count.max(level + 1);
    }
    count
}

/// The lines of a tank's name under it.
pub(super) fn label_lines(labels: &Labels, tank: PartId, room: f64) -> Vec<String> {
    label_of(labels, tank).map_or_else(Vec::new, |label| lettering::lines(&label.name, room, SIZE, 2))
}

/// Left end and right end of the room for a tank's label, clear of the pipes that go down beside it.
pub(super) fn label_room(system: &System, cells: &[Cell], at: usize) -> (f64, f64) {
    let cell = &cells[at];
    let pipe = |cell: &Cell| {
        let id = cell.tank.map(|at| system.tanks[at].id);
        system.uses.iter().any(|using| id.is_some() && using.tank == id).then(|| cell.drop_x())
    };
    let before = at.checked_sub(1).map(|before| &cells[before]).filter(|before| before.row == cell.row);
    let left = before.and_then(pipe).map_or(cell.left + 5.0, |x| x + 6.0);
    let right = pipe(cell).map_or(cell.left + cell.width - 5.0, |x| x - 6.0);
    (left, right)
}
/// The lowest level for each interval at which it overlaps none before it.
pub(super) fn levels(intervals: &[(f64, f64)]) -> Vec<f64> {
    let mut taken: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut levels = Vec::new();
    for &(from, to) in intervals {
        let free = |level: &Vec<(f64, f64)>| level.iter().all(|(a, b)| to <= *a || *b <= from);
        let level = taken.iter().position(free).unwrap_or(taken.len());
        if level == taken.len() {
            taken.push(Vec::new());
        }
        taken[level].push((from, to));
        #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
        levels.push(level as f64);
    }
    levels
}

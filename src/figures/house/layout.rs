//! Where the tanks stand: from left to right as their downspouts come, in as many rows as it takes.

use super::heights::Heights;
use super::inlets::{self, Inlet, Run, SLOT};
use super::roof::Roof;
use super::rows::{self, Row};
use super::{Labels, TAP, drawable};
use crate::figures::share_out::share_out;
use crate::quantity::order::rising;
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::tank::{OverflowTo, Tank};

/// Room left of a tank, for a riser that comes from below.
const LEFT: f64 = 14.0;
/// Room right of a tank, for its outlet and its overflow.
const RIGHT: f64 = 24.0;
/// Narrowest tank.
const NARROWEST: f64 = 30.0;
/// Pixels for a metre of a wide tank, at least.
const TRUE_WIDTH: f64 = 18.0;
/// A margin that no pipe takes.
const BARE_MARGIN: f64 = 4.0;
/// Distance of the pipes in a margin.
const BESIDE: f64 = 6.0;
/// Place of the last pipe between rows that has a line of its own.
const MOST_BETWEEN: f64 = 4.0;

/// Where everything stands.
pub(super) struct Layout {
    /// Width of the sheet.
    pub width: f64,
    /// Tanks with what fills them.
    pub cells: Vec<Cell>,
    /// The rows that they stand in.
    pub rows: Vec<Row>,
    /// Runs of the downspouts under the roof.
    pub runs: Vec<Run>,
    /// The pipes in the ground.
    pub joints: Vec<Joint>,
    /// Elevations on the sheet.
    pub heights: Heights,
}

/// A tank, the place of feeds that have none yet, or a place that is free for another tank.
pub(super) struct Cell {
    /// Index of the tank.
    pub tank: Option<usize>,
    /// Its row.
    pub row: usize,
    /// Left end.
    pub left: f64,
    /// Width.
    pub width: f64,
    /// Left side of the tank.
    pub body: f64,
    /// Width of the tank.
    pub body_width: f64,
    /// What fills it, from left to right.
    pub inlets: Vec<Inlet>,
}

/// A trunk line or a pump between two cells.
pub(super) struct Joint {
    /// The part.
    pub part: PartId,
    /// The cells that it joins.
    pub cells: [usize; 2],
    /// Whether it is a pump, and rises into the second.
    pub pump: bool,
    /// Its level in the ground in the rows of its ends (the same where they share a row).
    pub lanes: [f64; 2],
    /// Which of the margins it takes where its ends are in two rows.
    pub margin: Option<f64>,
}

impl Cell {
    /// Where its outlet pipe goes down.
    pub fn drop_x(&self) -> f64 {
        self.body + self.body_width + 7.0
    }

    /// Where its overflow pipe goes down.
    pub fn overflow_x(&self) -> f64 {
        self.body + self.body_width + 15.0
    }

    /// Where a pump's riser comes up.
    pub fn riser_x(&self) -> f64 {
        self.body - 7.0
    }

    /// The middle of the tank.
    pub fn middle(&self) -> f64 {
        self.body + self.body_width / 2.0
    }

    /// Whether nothing stands there.
    pub fn is_free(&self) -> bool {
        self.tank.is_none() && self.inlets.is_empty()
    }
}

impl Layout {
    /// The cell of a tank.
    pub fn cell_of(&self, system: &System, tank: Option<PartId>) -> Option<&Cell> {
        self.cells.iter().find(|cell| cell.tank.is_some_and(|at| Some(system.tanks[at].id) == tank))
    }

    /// The height on the sheet of an elevation in a row.
    pub fn y(&self, row: usize, elevation: f64) -> f64 {
        self.rows[row].ground - self.heights.up(elevation)
    }
}

/// Floor and rim of a tank, in m, as far as they can be drawn.
pub(super) fn span(tank: &Tank) -> (f64, f64) {
    let floor = drawable(tank.floor.get(), -30.0, 100.0);
    (floor, floor + drawable(tank.shape.height(), 0.05, 30.0))
}

/// Lays out a system under its roof.
pub(super) fn layout(system: &System, labels: &Labels, roof: &Roof, width: f64) -> Layout {
    let mut cells: Vec<Cell> = order(system, roof).iter().map(|tank| bare_cell(system, *tank)).collect();
    cells.push(cell(None, Vec::new()));
    // How much room the pipes between rows take is known once there are rows.
    let (mut left, mut right, mut joints) = (0.0, BARE_MARGIN, Vec::new());
    for _ in 0..2 {
        left = break_rows(system, &mut cells, width, right);
        joints = self::joints(system, &cells, width);
        let between = joints.iter().filter_map(|joint| joint.margin).fold(width, f64::min);
        right = BARE_MARGIN + width - between;
    }
    place_cells(system, &mut cells, width, (left, right));
    let spans: Vec<(f64, f64)> = system.tanks.iter().map(span).collect();
    let wide = tank_widths(system, &cells)
        .map(|(cell, metres)| (cell.width - LEFT - RIGHT) / metres)
        .fold(f64::INFINITY, f64::min);
    let heights = Heights::fitting(&spans, if wide.is_finite() { 1.2 * wide } else { 60.0 });
    let across = wide.min(heights.per_metre);
    for cell in &mut cells {
        let metres = cell.tank.map_or(0.0, |at| drawable(system.tanks[at].shape.width(), 0.05, 60.0));
        let room = (cell.width - LEFT - RIGHT).max(8.0);
        cell.body_width = (metres * across).max(NARROWEST).min(room);
        cell.body = cell.left + LEFT + (room - cell.body_width) / 2.0;
        inlets::place(cell);
    }
    let runs = inlets::runs(&cells, roof);
    let rows = rows::rows(system, labels, roof, &cells, &heights, &runs, &mut joints);
    Layout { width, cells, rows, runs, joints, heights }
}

/// Tanks as their downspouts come from the left; one without a feed stands beside the one that spills or pumps into
/// it or is joined to it. Feeds without a tank come last, as `None`.
fn order(system: &System, roof: &Roof) -> Vec<Option<usize>> {
    // The leftmost gutter of each tank; none has one beyond all.
    let mut places = vec![f64::INFINITY; system.tanks.len()];
    for (place, tank) in places.iter_mut().zip(&system.tanks) {
        for feed in system.feeds.iter().filter(|feed| feed.tank == Some(tank.id)) {
            *place = roof.gutters_of(feed.id).fold(*place, f64::min);
        }
    }
    let (mut order, mut rest) = (Vec::new(), Vec::new());
    for at in rising(&places) {
        if places[at].is_finite() { order.push(at) } else { rest.push(at) }
    }
    while !rest.is_empty() {
        let beside = |&at: &usize| order.iter().rposition(|&other| related(system, other, at)).map(|place| (at, place));
        match rest.iter().find_map(beside) {
            Some((at, place)) => {
                order.insert(place + 1, at);
                rest.retain(|other| *other != at);
            }
            None => order.push(rest.remove(0)),
        }
    }
    let mut cells: Vec<Option<usize>> = order.into_iter().map(Some).collect();
    if system.feeds.iter().any(|feed| feed.tank.is_none_or(|tank| system.tank(tank).is_none())) {
        cells.push(None);
    }
    cells
}

fn related(system: &System, a: usize, b: usize) -> bool {
    let (a, b) = (&system.tanks[a], &system.tanks[b]);
    let both =
        |x: Option<PartId>, y: Option<PartId>| [(Some(a.id), Some(b.id)), (Some(b.id), Some(a.id))].contains(&(x, y));
    a.overflow_to == OverflowTo::Tank(b.id)
        || b.overflow_to == OverflowTo::Tank(a.id)
        || system.trunk_lines.iter().any(|line| both(line.ends[0], line.ends[1]))
        || system.pumps.iter().any(|pump| both(pump.from, pump.to))
}

fn bare_cell(system: &System, tank: Option<usize>) -> Cell {
    let id = tank.map(|at| system.tanks[at].id);
    let known = |named: Option<PartId>| named.filter(|named| system.tank(*named).is_some());
    let inlet = |part: PartId, hauled| Inlet { parts: vec![part], hauled, left: 0.0, width: 0.0 };
    let mut inlets = Vec::new();
    for feed in system.feeds.iter().filter(|feed| known(feed.tank) == id) {
        inlets.push(inlet(feed.id, false));
    }
    for hauling in system.hauling.iter().filter(|hauling| id.is_some() && known(hauling.tank) == id) {
        inlets.push(inlet(hauling.id, true));
    }
    cell(tank, inlets)
}

/// A cell that has no place yet.
fn cell(tank: Option<usize>, inlets: Vec<Inlet>) -> Cell {
    Cell { tank, row: 0, left: 0.0, width: 0.0, body: 0.0, body_width: 0.0, inlets }
}

/// Room that a cell needs at least: all its feeds may be bundled.
fn least_width(system: &System, cell: &Cell) -> f64 {
    if cell.is_free() {
        return TAP;
    }
    let metres = cell.tank.map_or(0.0, |at| drawable(system.tanks[at].shape.width(), 0.05, 3.0));
    let hauled = cell.inlets.iter().filter(|inlet| inlet.hauled).count();
    let fed = usize::from(cell.inlets.len() > hauled);
    #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
    let inlets = SLOT * (fed + hauled) as f64;
    let tank = NARROWEST.max(TRUE_WIDTH * metres);
    inlets.max(LEFT + tank + RIGHT)
}

/// Tells each cell its row, beside a margin on the right; returns the margin on the left that pipes to the taps take.
fn break_rows(system: &System, cells: &mut [Cell], width: f64, right: f64) -> f64 {
    let needed: f64 = cells.iter().map(|cell| least_width(system, cell)).sum();
    if needed <= width - 2.0 * BARE_MARGIN {
        return BARE_MARGIN;
    }
    let tapped = |cell: &&Cell| {
        cell.tank.is_some_and(|at| system.uses.iter().any(|using| using.tank == Some(system.tanks[at].id)))
    };
    #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
    let left = (BARE_MARGIN + BESIDE * cells.iter().filter(tapped).count() as f64).min(28.0);
    let room = width - left - right;
    let widest = cells.iter().map(|cell| least_width(system, cell)).fold(1.0, f64::max);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few dozen at most")]
    let most = ((room / widest).floor() as usize).max(1);
    let rows = cells.len().div_ceil(most).max(1);
    let each = cells.len().div_ceil(rows).max(1);
    for (at, cell) in cells.iter_mut().enumerate() {
        cell.row = at / each;
    }
    left
}

fn tank_widths<'a>(system: &'a System, cells: &'a [Cell]) -> impl Iterator<Item = (&'a Cell, f64)> {
    cells.iter().filter_map(|cell| Some((cell, drawable(system.tanks[cell.tank?].shape.width(), 0.05, 60.0))))
}

/// Shares out the width of each row.
fn place_cells(system: &System, cells: &mut [Cell], width: f64, (left, right): (f64, f64)) {
    for row in cells.chunk_by_mut(|a, b| a.row == b.row) {
        let wanted: Vec<(f64, f64)> = row
            .iter()
            .map(|cell| {
                let metres = cell.tank.map_or(0.5, |at| drawable(system.tanks[at].shape.width(), 0.3, 6.0));
                #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
                let inlets = cell.inlets.len().min(3) as f64;
                let wanted = if cell.is_free() { 0.0 } else { (SLOT * inlets).max(LEFT + RIGHT + 40.0 * metres) };
                (least_width(system, cell), wanted)
            })
            .collect();
        let mut x = left;
        for (cell, own) in row.iter_mut().zip(share_out(width - left - right, &wanted)) {
            (cell.left, cell.width) = (x, own);
            x += own;
            inlets::bundle(cell);
        }
    }
}

/// The trunk lines and pumps both of whose ends stand somewhere.
fn joints(system: &System, cells: &[Cell], width: f64) -> Vec<Joint> {
    let at = |tank: Option<PartId>| {
        cells.iter().position(|cell| cell.tank.is_some_and(|index| Some(system.tanks[index].id) == tank))
    };
    let mut joints = Vec::new();
    let mut join = |part: PartId, ends: [Option<PartId>; 2], pump: bool| {
        let (Some(a), Some(b)) = (at(ends[0]), at(ends[1])) else { return };
        if a != b {
            joints.push(Joint { part, cells: [a, b], pump, lanes: [0.0; 2], margin: None });
        }
    };
    for line in &system.trunk_lines {
        join(line.id, line.ends, false);
    }
    for pump in &system.pumps {
        join(pump.id, [pump.from, pump.to], true);
    }
    let rows = |joint: &Joint| joint.cells.map(|cell| cells[cell].row);
    let between: Vec<usize> = (0..joints.len()).filter(|at| rows(&joints[*at])[0] != rows(&joints[*at])[1]).collect();
    // Two that end in one row may meet there.
    #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
    let span = |at: &usize| {
        let [a, b] = rows(&joints[*at]).map(|row| row as f64);
        (a.min(b), a.max(b) + 0.5)
    };
    let lines = rows::levels(&between.iter().map(span).collect::<Vec<_>>());
    for (at, line) in between.into_iter().zip(lines) {
        joints[at].margin = Some(width - 5.0 - BESIDE * line.min(MOST_BETWEEN));
    }
    joints
}

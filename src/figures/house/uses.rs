//! What draws water, below the ground: a riser from each tank that is drawn on, with its taps; and the parts that
//! are joined to nothing yet.

use super::{House, TAP, joints, symbols};
use crate::figures::drawing::{Anchor, Ink};
use crate::figures::lettering::{self, LEADING, SIZE, SMALL};
use crate::figures::pen::Pen;
use crate::site::barrier::BarrierKind;
use crate::site::part::PartId;
use crate::site::uses::Class;

/// Narrowest column of taps.
const COLUMN: f64 = 165.0;
const MOST_COLUMNS: usize = 4;
/// Distance of the barriers before a tap.
const BARRIER: f64 = 22.0;
/// Distance of the pipes that lead to the columns.
const LANE: f64 = 8.0;
/// Room for tap and sign before the words.
const SYMBOLS: f64 = 56.0;
const ROW: f64 = 50.0;

/// What hangs on one tank.
struct Block {
    cell: Option<usize>,
    entries: Vec<(PartId, Symbol)>,
}

impl Block {
    /// The most barriers before one of its taps.
    fn barriers(&self) -> usize {
        self.entries.iter().map(|(_, symbol)| symbol.barriers().len()).max().unwrap_or(0)
    }
}

#[derive(Clone)]
enum Symbol {
    Tap(Class, Vec<BarrierKind>),
    Valve(bool),
    Pump,
    Lorry,
}

impl Symbol {
    /// What the water passes before it.
    fn barriers(&self) -> &[BarrierKind] {
        if let Symbol::Tap(_, barriers) = self { barriers } else { &[] }
    }
}

/// Draws uses and loose parts; returns the height of the whole drawing.
pub(super) fn draw(house: &mut House) -> f64 {
    let layout = house.layout;
    let blocks = blocks(house);
    let top = layout.rows.last().map_or(0.0, |row| row.bottom);
    let columns = columns(&blocks, layout.width);
    let least = |column: &[Block]| COLUMN + chain(column.iter().map(Block::barriers).max().unwrap_or(0));
    let taken: f64 = columns.iter().map(|column| least(column)).sum();
    #[expect(clippy::cast_precision_loss, reason = "a few at most")]
    let more = (layout.width - 8.0 - taken) / columns.len().max(1) as f64;
    #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
    let lane_of = |at: usize| top + LANE * at as f64;
    #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
    let first = top + LANE * blocks.len() as f64 + 4.0;
    let mut lowest: f64 = top;
    let mut number = 0;
    let mut left = 4.0;
    for column in columns {
        let (mut y, column_width) = (first, least(column) + more);
        let count = column.len();
        for (place, block) in column.iter().enumerate() {
            // Deeper blocks hang further left, so that no riser crosses a tap.
            #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
            let riser = left + 8.0 + 7.0 * (count - 1 - place) as f64;
            if let Some(cell) = block.cell {
                supply(house, cell, riser, number, lane_of(number), y + ROW * last(block) + TAP / 2.0);
                let tank = layout.cells[cell].tank.map(|at| house.system.tanks[at].id);
                if tank.is_some_and(|tank| house.system.details.is_pumped(tank)) {
                    symbols::house_pump(&mut house.pen, (riser, y + 4.0));
                }
            }
            number += 1;
            for (part, symbol) in &block.entries {
                entry(house, *part, symbol, block.cell.is_some(), riser, left + column_width, y);
                y += ROW;
            }
            y += 6.0;
        }
        lowest = lowest.max(y);
        left += column_width;
    }
    lowest + 4.0
}

#[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
fn last(block: &Block) -> f64 {
    block.entries.len().saturating_sub(1) as f64
}

/// Uses by the tank that they draw on, from left to right, in their own order; then what is loose.
fn blocks(house: &House) -> Vec<Block> {
    let (system, layout) = (house.system, house.layout);
    let tap = |using: &crate::site::uses::Use| {
        (
            using.id,
            Symbol::Tap(
                using.class,
                using.barriers.iter().map(|barrier| barrier.kind).filter(|kind| is_plumbed(*kind)).collect(),
            ),
        )
    };
    let mut blocks: Vec<Block> = Vec::new();
    for (at, cell) in layout.cells.iter().enumerate() {
        let id = cell.tank.map(|at| system.tanks[at].id);
        let entries: Vec<_> = system.uses.iter().filter(|using| id.is_some() && using.tank == id).map(tap).collect();
        if !entries.is_empty() {
            blocks.push(Block { cell: Some(at), entries });
        }
    }
    let joined = |part: PartId| layout.joints.iter().any(|joint| joint.part == part);
    let hauled =
        |part: PartId| layout.cells.iter().flat_map(|cell| &cell.inlets).any(|inlet| inlet.parts.contains(&part));
    let mut loose = Vec::new();
    for using in system.uses.iter().filter(|using| layout.cell_of(system, using.tank).is_none()) {
        loose.push(tap(using));
    }
    for line in system.trunk_lines.iter().filter(|line| !joined(line.id)) {
        loose.push((line.id, Symbol::Valve(line.open)));
    }
    for pump in system.pumps.iter().filter(|pump| !joined(pump.id)) {
        loose.push((pump.id, Symbol::Pump));
    }
    for load in system.hauling.iter().filter(|load| !hauled(load.id)) {
        loose.push((load.id, Symbol::Lorry));
    }
    if !loose.is_empty() {
        blocks.push(Block { cell: None, entries: loose });
    }
    blocks
}

/// Whether a barrier stands before its tap: what is boiled was drawn there.
fn is_plumbed(kind: BarrierKind) -> bool {
    kind != BarrierKind::Boiling
}

/// Room of so many barriers.
fn chain(barriers: usize) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "a few at most")]
    let barriers = barriers as f64;
    BARRIER * barriers
}

/// Shares out the blocks to columns of about the same height.
fn columns(blocks: &[Block], width: f64) -> Vec<&[Block]> {
    let column = COLUMN + chain(blocks.iter().map(Block::barriers).max().unwrap_or(0));
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few at most")]
    let fitting = ((width / column).floor() as usize).clamp(1, MOST_COLUMNS).min(blocks.len().max(1));
    let total: usize = blocks.iter().map(|block| block.entries.len()).sum();
    let mut columns = Vec::new();
    let (mut from, mut filled) = (0, 0);
    for (at, block) in blocks.iter().enumerate() {
        filled += block.entries.len();
        let due = filled * fitting >= total * (columns.len() + 1);
        if due || blocks.len() - at <= fitting - columns.len() {
            columns.push(&blocks[from..=at]);
            from = at + 1;
        }
    }
    if from < blocks.len() {
        columns.push(&blocks[from..]);
    }
    columns
}

/// The pipe from a tank's outlet down to the last of its taps.
fn supply(house: &mut House, at: usize, riser: f64, number: usize, lane: f64, end: f64) {
    let layout = house.layout;
    let cell = &layout.cells[at];
    let mut way = joints::down(house, cell, joints::deepest(&layout.joints, at), lane);
    let row = &layout.rows[cell.row];
    if cell.row + 1 < layout.rows.len() {
        // Tanks stand below: go round them on the left, each pipe on its own line.
        way.pop();
        #[expect(clippy::cast_precision_loss, reason = "a few dozen at most")]
        let beside = 4.0 + 6.0 * (number % 4) as f64;
        let under = row.bottom - 4.0;
        way.extend([(cell.drop_x(), under), (beside, under), (beside, lane)]);
    }
    way.extend([(riser, lane), (riser, end)]);
    house.pen.pipe(Ink::Pipe, &way);
}

fn entry(house: &mut House, part: PartId, symbol: &Symbol, joined: bool, riser: f64, right: f64, top: f64) {
    let mut pen = Pen::default();
    let y = top + TAP / 2.0;
    let barriers = symbol.barriers();
    let end = riser + 10.0 + chain(barriers.len());
    if joined {
        pen.line(Ink::Pipe, &[(riser, y), (end, y)]);
        pen.circle(Ink::Solid, (riser, y), 3.5);
    } else {
        pen.line(Ink::Loose, &[(riser - 4.0, y), (end, y)]);
    }
    for (at, barrier) in barriers.iter().enumerate() {
        symbols::barrier(&mut pen, *barrier, (riser + 8.0 + chain(at) + BARRIER / 2.0, y));
    }
    match symbol {
        Symbol::Tap(class, _) => {
            symbols::tap(&mut pen, (end, y));
            symbols::class(&mut pen, *class, (end + 35.0, y));
        }
        Symbol::Valve(open) => symbols::valve(&mut pen, (riser + 24.0, y), *open),
        Symbol::Pump => symbols::pump(&mut pen, (riser + 24.0, y), true),
        Symbol::Lorry => symbols::lorry(&mut pen, (riser + 28.0, y)),
    }
    let x = end + SYMBOLS - 6.0;
    let room = right - x - 4.0;
    let detail = lettering::detail(house.detail(part), room);
    let name = lettering::lines(house.name(part), room, SIZE, 3_usize.saturating_sub(detail.len()));
    #[expect(clippy::cast_precision_loss, reason = "three at most")]
    let baseline = y + 5.0 - LEADING / 2.0 * (name.len() + detail.len()).saturating_sub(1) as f64;
    let baseline = pen.texts(Ink::StrongLabel, (x, baseline), Anchor::Start, SIZE, &name);
    pen.texts(Ink::FaintLabel, (x, baseline), Anchor::Start, SMALL, &detail);
    house.target(&[part], (riser, top), (right - riser - 2.0, TAP), (end + 38.0, top + 10.0), pen);
}

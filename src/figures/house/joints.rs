//! What joins tanks in the ground: trunk lines with their valves, and pumps.

use super::layout::{Cell, Joint, Layout, span};
use super::{House, drawable, symbols};
use crate::figures::drawing::Ink;
use crate::figures::pen::{Pen, Point};

/// Room that a valve or a pump wants to its left and right.
const CLEAR: f64 = 18.0;

/// Draws trunk lines and pumps.
pub(super) fn draw(house: &mut House) {
    let layout = house.layout;
    for (at, joint) in layout.joints.iter().enumerate() {
        let mut pen = Pen::default();
        let [a, b] = joint.cells.map(|cell| &layout.cells[cell]);
        let before = &layout.joints[..at];
        let mut way = down(house, a, deepest(before, joint.cells[0]), joint.lanes[0]);
        if let Some(margin) = joint.margin {
            way.extend([(margin, joint.lanes[0]), (margin, joint.lanes[1])]);
        }
        let lane = joint.lanes[1];
        let end =
            if joint.pump { up_into(house, b, lane) } else { down(house, b, deepest(before, joint.cells[1]), lane) };
        let end_x = end.last().map_or(0.0, |end| end.0);
        way.extend(end.into_iter().rev());
        pen.pipe(Ink::Pipe, &way);
        pen.circle(Ink::Solid, (a.drop_x(), joint.lanes[0]), 3.5);
        if !joint.pump {
            pen.circle(Ink::Solid, (b.drop_x(), lane), 3.5);
        }
        let other = joint.margin.unwrap_or(a.drop_x());
        let middle = free_place(layout, b.row, other, end_x);
        if joint.pump {
            symbols::pump(&mut pen, (middle, lane), end_x > other);
        } else {
            symbols::valve(&mut pen, (middle, lane), is_open(house, joint));
        }
        house.target(&[joint.part], (middle - 22.0, lane - 22.0), (44.0, 42.0), (middle + 18.0, lane + 10.0), pen);
    }
}

/// The deepest level at which one of some joints leaves a cell by its outlet.
pub(super) fn deepest(joints: &[Joint], cell: usize) -> Option<f64> {
    let mut deepest: Option<f64> = None;
    for joint in joints {
        let outlets = if joint.pump { 1 } else { 2 };
        for end in 0..outlets {
            if joint.cells[end] == cell {
                deepest = Some(deepest.map_or(joint.lanes[end], |deepest| deepest.max(joint.lanes[end])));
            }
        }
    }
    deepest
}

/// The place for a valve between two ends that is clear of the pipes of other tanks, near the middle.
fn free_place(layout: &Layout, row: usize, a: f64, b: f64) -> f64 {
    let (left, right) = (a.min(b), a.max(b));
    let middle = f64::midpoint(left, right);
    let mut best = (f64::NEG_INFINITY, f64::NEG_INFINITY, middle);
    for step in 0..=40 {
        let place = left + CLEAR + (right - left - 2.0 * CLEAR).max(0.0) * f64::from(step) / 40.0;
        if place > right {
            break;
        }
        let mut clear = CLEAR;
        for cell in layout.cells.iter().filter(|cell| cell.row == row) {
            for x in [cell.drop_x(), cell.riser_x()] {
                if left + 1.0 < x && x < right - 1.0 {
                    clear = clear.min((x - place).abs());
                }
            }
        }
        let near = -(place - middle).abs();
        if clear > best.0 || clear >= best.0 && near >= best.1 {
            best = (clear, near, place);
        }
    }
    best.2
}

fn is_open(house: &House, joint: &Joint) -> bool {
    house.system.trunk_lines.iter().any(|line| line.id == joint.part && line.open)
}

/// The height of a tank's outlet on the sheet.
fn outlet_y(house: &House, cell: &Cell) -> f64 {
    cell.tank.map_or(0.0, |at| {
        let tank = &house.system.tanks[at];
        let (floor, rim) = span(tank);
        house
            .layout
            .y(cell.row, floor + drawable(tank.outlet.get(), 0.0, rim - floor))
            .min(house.layout.y(cell.row, floor) - 3.0)
    })
}

/// From a tank's outlet down to a level in the ground, or on from the level down to which its pipe is there already.
pub(super) fn down(house: &House, cell: &Cell, there: Option<f64>, lane: f64) -> Vec<Point> {
    let x = cell.drop_x();
    match there {
        Some(there) if there < lane => vec![(x, there), (x, lane)],
        Some(_) => vec![(x, lane)],
        None => {
            let y = outlet_y(house, cell);
            vec![(cell.body + cell.body_width, y), (x, y), (x, lane)]
        }
    }
}

/// From over a tank's rim down to a level in the ground.
fn up_into(house: &House, cell: &Cell, lane: f64) -> Vec<Point> {
    let rim = cell.tank.map_or(0.0, |at| house.layout.y(cell.row, span(&house.system.tanks[at]).1));
    let into = cell.body + 7.0;
    vec![(into, rim + 6.0), (into, rim - 11.0), (cell.riser_x(), rim - 11.0), (cell.riser_x(), lane)]
}

//! The ground, and the house's walls behind everything.

use super::layout::{Cell, span};
use super::roof::{self, Roof};
use super::{House, TAP};
use crate::figures::drawing::{Ink, Mark, Target};
use crate::figures::pen::{Pen, Stroke};
use crate::quantity::order::sorted;

/// Distance of the strokes that mean earth.
const STROKES: f64 = 11.0;

/// Draws walls and ground.
pub(super) fn draw(house: &mut House, roof: &Roof) {
    let layout = house.layout;
    let first_ground = layout.rows.first().map_or(roof.bottom, |row| row.ground);
    if roof.cells.is_empty() {
        let (middle, left, right) = (layout.width / 2.0, 0.2 * layout.width, 0.8 * layout.width);
        house.pen.line(Ink::Loose, &[(left, roof.eave), (middle, roof.eave - 36.0), (right, roof.eave)]);
    }
    for silhouette in roof::silhouettes(roof, first_ground) {
        if let [first, second, .., before, last] = silhouette[..] {
            house.pen.strokes(Ink::Faint, &[[first, (first.0, second.1)], [(last.0, before.1), last]]);
        }
        house.pen.area(Ink::Wash, &silhouette);
    }
    for (row, place) in layout.rows.iter().enumerate() {
        let dug: Vec<&Cell> = layout.cells.iter().filter(|cell| cell.row == row && is_dug_in(house, cell)).collect();
        let open: Vec<f64> = dug.iter().filter(|cell| stands_out(house, cell)).map(|cell| cell.body).collect();
        let mut x = 0.0;
        let mut lines = Vec::new();
        for left in sorted(open) {
            lines.push([(x, place.ground), (left, place.ground)]);
            x = dug.iter().find(|cell| cell.body == left).map_or(left, |cell| cell.body + cell.body_width);
        }
        lines.push([(x, place.ground), (layout.width, place.ground)]);
        house.pen.strokes(Ink::Strong, &lines);
        let inside = |x: f64| dug.iter().any(|cell| cell.body - 4.0 < x && x < cell.body + cell.body_width + 8.0);
        let mut strokes = Vec::new();
        let mut x = 8.0;
        while x < layout.width - 2.0 {
            if !inside(x) {
                strokes.push([(x, place.ground + 2.0), (x - 6.0, place.ground + 8.0)]);
            }
            x += STROKES;
        }
        for cell in dug {
            around(house, cell, place.ground, &mut strokes);
        }
        house.pen.strokes(Ink::Earth, &strokes);
    }
}

/// Draws the place on the ground that is free for another tank.
pub(super) fn free(house: &mut House) {
    let Some(cell) = house.layout.cells.iter().find(|cell| cell.is_free()) else { return };
    let (x, y) = (cell.left, house.layout.rows[cell.row].ground - TAP);
    let mut pen = Pen::default();
    let (left, top, right, bottom) = (x + 7.0, y + 10.0, x + TAP - 7.0, y + TAP - 2.0);
    pen.line(Ink::Loose, &[(left, bottom), (left, top), (right, top), (right, bottom)]);
    let middle = (x + TAP / 2.0, f64::midpoint(top, bottom));
    pen.strokes_at(Ink::Strong, middle, &[[(-8.0, 0.0), (8.0, 0.0)], [(0.0, -8.0), (0.0, 8.0)]]);
    let (parts, name, width, height) = (Vec::new(), String::new(), TAP, TAP);
    house.pen.marks.push(Mark::Free(Target { parts, name, x, y, width, height, marks: pen.marks }));
}

fn is_dug_in(house: &House, cell: &Cell) -> bool {
    cell.tank.is_some_and(|at| span(&house.system.tanks[at]).0 < -0.02)
}

fn stands_out(house: &House, cell: &Cell) -> bool {
    cell.tank.is_some_and(|at| span(&house.system.tanks[at]).1 > 0.0)
}

/// Adds strokes of earth left, below and right of a tank in the ground.
fn around(house: &House, cell: &Cell, ground: f64, strokes: &mut Vec<Stroke>) {
    let Some(tank) = cell.tank.map(|at| &house.system.tanks[at]) else { return };
    let (floor, rim) = span(tank);
    let (top, bottom) = (house.layout.y(cell.row, rim).max(ground) + 6.0, house.layout.y(cell.row, floor));
    let (left, right) = (cell.body, cell.body + cell.body_width);
    let mut y = top;
    while y < bottom - 3.0 {
        strokes.push([(left - 2.0, y), (left - 6.0, y + 4.0)]);
        strokes.push([(right + 6.0, y), (right + 2.0, y + 4.0)]);
        y += STROKES;
    }
    let mut x = left + 6.0;
    while x < right {
        strokes.push([(x, bottom + 3.0), (x - 5.0, bottom + 8.0)]);
        x += STROKES;
    }
}

//! The ground, and the house's walls behind everything.

use super::House;
use super::layout::{Cell, span};
use super::roof::{self, Roof};
use crate::figures::drawing::Ink;
use crate::figures::pen::Point;

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
            house.pen.lines(Ink::Faint, &[vec![first, (first.0, second.1)], vec![(last.0, before.1), last]]);
        }
        house.pen.area(Ink::Wash, &silhouette);
    }
    for (row, place) in layout.rows.iter().enumerate() {
        let dug: Vec<&Cell> = layout.cells.iter().filter(|cell| cell.row == row && is_dug_in(house, cell)).collect();
        let open =
            dug.iter().filter(|cell| stands_out(house, cell)).map(|cell| (cell.body, cell.body + cell.body_width));
        let mut open: Vec<(f64, f64)> = open.collect();
        open.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut x = 0.0;
        let mut lines = Vec::new();
        for (left, right) in open.into_iter().chain([(layout.width, layout.width)]) {
            lines.push(vec![(x, place.ground), (left, place.ground)]);
            x = right;
        }
        house.pen.lines(Ink::Strong, &lines);
        let inside = |x: f64| dug.iter().any(|cell| cell.body - 4.0 < x && x < cell.body + cell.body_width + 8.0);
        let mut strokes = Vec::new();
        let mut x = 8.0;
        while x < layout.width - 2.0 {
            if !inside(x) {
                strokes.push(vec![(x, place.ground + 2.0), (x - 6.0, place.ground + 8.0)]);
            }
            x += STROKES;
        }
        for cell in dug {
            strokes.extend(around(house, cell, place.ground));
        }
        house.pen.lines(Ink::Earth, &strokes);
    }
}

fn is_dug_in(house: &House, cell: &Cell) -> bool {
    cell.tank.is_some_and(|at| span(&house.system.tanks[at]).0 < -0.02)
}

fn stands_out(house: &House, cell: &Cell) -> bool {
    cell.tank.is_some_and(|at| span(&house.system.tanks[at]).1 > 0.0)
}

/// Strokes of earth left, below and right of a tank in the ground.
fn around(house: &House, cell: &Cell, ground: f64) -> Vec<Vec<Point>> {
    let Some(tank) = cell.tank.map(|at| &house.system.tanks[at]) else { return Vec::new() };
    let (floor, rim) = span(tank);
    let (top, bottom) = (house.layout.y(cell.row, rim).max(ground) + 6.0, house.layout.y(cell.row, floor));
    let (left, right) = (cell.body, cell.body + cell.body_width);
    let mut strokes = Vec::new();
    let mut y = top;
    while y < bottom - 3.0 {
        strokes.push(vec![(left - 2.0, y), (left - 6.0, y + 4.0)]);
        strokes.push(vec![(right + 6.0, y), (right + 2.0, y + 4.0)]);
        y += STROKES;
    }
    let mut x = left + 6.0;
    while x < right {
        strokes.push(vec![(x, bottom + 3.0), (x - 5.0, bottom + 8.0)]);
        x += STROKES;
    }
    strokes
}

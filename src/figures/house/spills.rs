//! Where each tank's overflow goes: to another tank, to the garden, onto the ground.

use super::layout::{Cell, span};
use super::{House, drawable, symbols};
use crate::figures::drawing::Ink;
use crate::figures::pen::{Pen, Point};
use crate::site::tank::{OverflowTo, Tank};

/// Draws the overflows.
pub(super) fn draw(house: &mut House) {
    let layout = house.layout;
    for (at, cell) in layout.cells.iter().enumerate() {
        let Some(tank) = cell.tank.map(|at| &house.system.tanks[at]) else { continue };
        let y = overflow_y(house, cell, tank);
        let mut pen = Pen::default();
        match tank.overflow_to {
            OverflowTo::Tank(to) => {
                let next =
                    layout.cells.iter().position(|cell| cell.tank.is_some_and(|at| house.system.tanks[at].id == to));
                match next.map(|next| (next, &layout.cells[next])) {
                    Some((next, other)) if other.row == cell.row && next != at => {
                        let way = way_over(house, cell, other, y, next.abs_diff(at) == 1);
                        pen.pipe(Ink::Spill, &way);
                        if let Some(end) = way.last() {
                            symbols::arrow_down(&mut pen, Ink::Spill, *end);
                        }
                    }
                    _ => {
                        let end = (cell.overflow_x(), y + 26.0);
                        fall(&mut pen, cell, y, end);
                        symbols::broken_off(&mut pen, (end.0, end.1 + 2.0));
                    }
                }
            }
            to @ (OverflowTo::Ground | OverflowTo::Garden) => {
                let ground = layout.rows[cell.row].ground;
                let end = (cell.overflow_x(), if y < ground - 14.0 { ground - 3.0 } else { y + 16.0 });
                fall(&mut pen, cell, y, end);
                symbols::arrow_down(&mut pen, Ink::Spill, end);
                if to == OverflowTo::Garden {
                    sprout(&mut pen, (end.0 + 5.0, end.1 + 2.0));
                } else {
                    splash(&mut pen, end);
                }
            }
        }
        house.pen.marks.append(&mut pen.marks);
    }
}

fn overflow_y(house: &House, cell: &Cell, tank: &Tank) -> f64 {
    let (floor, rim) = span(tank);
    house.layout.y(cell.row, floor + drawable(tank.overflow.get(), 0.0, rim - floor))
}

/// From the right wall down to an end.
fn fall(pen: &mut Pen, cell: &Cell, y: f64, end: Point) {
    pen.pipe(Ink::Spill, &[(cell.body + cell.body_width, y), (end.0, y), end]);
}

/// The way from an overflow into another tank of the row: straight where that one is next and lower, else over all.
fn way_over(house: &House, cell: &Cell, other: &Cell, y: f64, next: bool) -> Vec<Point> {
    let rim = other.tank.map_or(0.0, |at| house.layout.y(other.row, span(&house.system.tanks[at]).1));
    let to_right = other.left > cell.left;
    let (start, aside, into) = if to_right {
        (cell.body + cell.body_width, cell.overflow_x(), other.body + 9.0)
    } else {
        (cell.body, cell.body - 11.0, other.body + other.body_width - 9.0)
    };
    let end = (into, rim + 6.0);
    if next && y < rim - 4.0 {
        return vec![(start, y), (into, y), end];
    }
    let over = house.layout.rows[cell.row].top - 15.0;
    vec![(start, y), (aside, y), (aside, over), (into, over), end]
}

fn splash(pen: &mut Pen, at: Point) {
    pen.strokes_at(Ink::Spill, at, &[[(-7.0, -1.0), (-9.0, -4.0)], [(7.0, -1.0), (9.0, -4.0)]]);
}

fn sprout(pen: &mut Pen, place: Point) {
    pen.sign(Ink::Line, place, &[((0.0, 0.0), "v-9q-5 0 -5 -5q5 0 5 5q0 -6 5 -6q0 6 -5 6")]);
}

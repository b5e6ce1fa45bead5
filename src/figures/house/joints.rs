//! What joins tanks in the ground: trunk lines with their valves, and pumps.

use super::layout::{Cell, Joint, span};
use super::{House, drawable, symbols};
use crate::figures::drawing::Ink;
use crate::figures::pen::{Pen, Point};

/// Draws trunk lines and pumps.
pub(super) fn draw(house: &mut House) {
    let layout = house.layout;
    for joint in &layout.joints {
        let mut pen = Pen::default();
        let [a, b] = joint.cells.map(|at| &layout.cells[at]);
        let mut way = out_of(house, a, joint.lanes[0]);
        if let Some(margin) = joint.margin {
            way.extend([(margin, joint.lanes[0]), (margin, joint.lanes[1])]);
        }
        let end = if joint.pump { up_into(house, b, joint.lanes[1]) } else { out_of(house, b, joint.lanes[1]) };
        let (end_x, lane) = (end.last().map_or(0.0, |end| end.0), joint.lanes[1]);
        way.extend(end.into_iter().rev());
        pen.pipe(Ink::Pipe, &way);
        pen.circle(Ink::Solid, (a.drop_x(), joint.lanes[0]), 3.5);
        if !joint.pump {
            pen.circle(Ink::Solid, (b.drop_x(), lane), 3.5);
        }
        let other = joint.margin.unwrap_or(a.drop_x());
        let middle = f64::midpoint(other, end_x);
        if joint.pump {
            symbols::pump(&mut pen, (middle, lane), end_x > other);
        } else {
            symbols::valve(&mut pen, (middle, lane), is_open(house, joint));
        }
        house.target(&[joint.part], (middle - 22.0, lane - 22.0), 44.0, 42.0, pen);
    }
}

fn is_open(house: &House, joint: &Joint) -> bool {
    house.system.trunk_lines.iter().any(|line| line.id == joint.part && line.open)
}

/// The height of a tank's outlet on the sheet.
pub(super) fn outlet_y(house: &House, cell: &Cell) -> f64 {
    cell.tank.map_or(0.0, |at| {
        let tank = &house.system.tanks[at];
        let (floor, rim) = span(tank);
        house
            .layout
            .y(cell.row, floor + drawable(tank.outlet.get(), 0.0, rim - floor))
            .min(house.layout.y(cell.row, floor) - 3.0)
    })
}

/// From a tank's outlet down to a level in the ground.
pub(super) fn out_of(house: &House, cell: &Cell, lane: f64) -> Vec<Point> {
    let y = outlet_y(house, cell);
    vec![(cell.body + cell.body_width, y), (cell.drop_x(), y), (cell.drop_x(), lane)]
}

/// From over a tank's rim down to a level in the ground.
fn up_into(house: &House, cell: &Cell, lane: f64) -> Vec<Point> {
    let rim = cell.tank.map_or(0.0, |at| house.layout.y(cell.row, span(&house.system.tanks[at]).1));
    let into = cell.body + 7.0;
    vec![(into, rim + 6.0), (into, rim - 11.0), (cell.riser_x(), rim - 11.0), (cell.riser_x(), lane)]
}

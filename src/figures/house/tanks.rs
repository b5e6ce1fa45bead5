//! Tanks with today's water, what of them can't be used, and what they stand on.

use super::layout::{Cell, span};
use super::rows;
use super::tank_outline::outline;
use super::{House, drawable};
use crate::figures::drawing::{Anchor, Ink};
use crate::figures::lettering::{SIZE, SMALL};
use crate::figures::pen::{Pen, Point};
use crate::figures::{lettering, polygon};
use crate::site::system::System;
use crate::site::tank::{Build, Shape, Tank};

/// Tallest pad of masonry under a tank, in m; above it, the tank stands on legs.
const TALLEST_PAD: f64 = 0.6;
/// Distance of the strokes that mean water or room that can't be used.
const STROKES: f64 = 7.0;

/// Draws the tanks.
pub(super) fn draw(house: &mut House) {
    let layout = house.layout;
    for (at, cell) in layout.cells.iter().enumerate() {
        let Some(tank) = cell.tank.map(|at| &house.system.tanks[at]) else { continue };
        let (floor, rim) = span(tank);
        let (top, bottom) = (layout.y(cell.row, rim), layout.y(cell.row, floor));
        let shape = outline(tank, (cell.body, top), cell.body_width, bottom - top);
        let mut pen = Pen::default();
        support(&mut pen, cell, floor, bottom, layout.rows[cell.row].ground);
        pen.area(Ink::Paper, &shape);
        let y_of = |depth: f64| layout.y(cell.row, floor + drawable(depth, 0.0, rim - floor));
        let level = house.water.iter().find(|water| water.tank == tank.id).map_or(0.0, |water| water.level_m);
        water(&mut pen, &shape, y_of(level), bottom);
        let own_overflow = tank.overflow_elevation();
        let reachable = lowest_overflow(house.system, tank);
        if reachable < own_overflow {
            let empty = polygon::between(&shape, y_of(own_overflow - floor), y_of(reachable - floor));
            pen.strokes(Ink::Stranded, &polygon::hatch(&empty, STROKES));
        }
        let dead = polygon::between(&shape, y_of(drawable(tank.outlet.get(), 0.0, 30.0)), bottom);
        pen.strokes(Ink::Stranded, &polygon::back_hatch(&dead, STROKES));
        pen.outline(Ink::Strong, &shape);
        fittings(&mut pen, tank, cell, top, bottom, layout.rows[cell.row].ground);
        label(house, &mut pen, at, tank);
        let sign = (cell.body + cell.body_width - 4.0, top + 4.0);
        house.target(&[tank.id], (cell.body, top), (cell.body_width, bottom - top), sign, pen);
    }
}

/// The lowest overflow of the tanks that share the tank's level: nothing stands above it.
fn lowest_overflow(system: &System, tank: &Tank) -> f64 {
    let store = system.stores().into_iter().find(|store| store.contains(&tank.id)).unwrap_or_default();
    store
        .iter()
        .filter_map(|member| system.tank(*member))
        .map(Tank::overflow_elevation)
        .fold(tank.overflow_elevation(), f64::min)
}

fn water(pen: &mut Pen, shape: &[Point], level: f64, bottom: f64) {
    if bottom - level < 0.5 {
        return;
    }
    let wet = polygon::between(shape, level, bottom);
    pen.area(Ink::Water, &wet);
    let surface = wet.iter().filter(|(_, y)| (y - level).abs() < 0.05).map(|(x, _)| *x);
    let (left, right) = surface.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(x), b.max(x)));
    if left >= right {
        return;
    }
    pen.line(Ink::WaterLine, &[(left, level), (right, level)]);
    // The surveyor's sign of a water level.
    let x = left + 0.7 * (right - left);
    if right - left > 28.0 && bottom - level > 10.0 {
        pen.sign(Ink::Line, (x, level), &[((-5.0, -8.0), "h10l-5 7Z")]);
        pen.strokes_at(Ink::WaterLine, (x, level), &[[(-4.0, 4.0), (4.0, 4.0)], [(-2.0, 7.5), (2.0, 7.5)]]);
    }
}

/// The pad or the legs under a tank that stands above the ground.
fn support(pen: &mut Pen, cell: &Cell, floor: f64, bottom: f64, ground: f64) {
    if floor <= 0.0 || ground - bottom < 1.0 {
        return;
    }
    let (left, width) = (cell.body - 3.0, cell.body_width + 6.0);
    if floor <= TALLEST_PAD {
        let pad = [(left, bottom), (left + width, bottom), (left + width, ground), (left, ground)];
        pen.area(Ink::Paper, &pad);
        pen.strokes(Ink::Earth, &polygon::hatch(&pad, 9.0));
        pen.outline(Ink::Line, &pad);
    } else {
        let (a, b) = (left + 6.0, left + width - 6.0);
        pen.strokes(
            Ink::Strong,
            &[[(a, bottom), (a, ground)], [(b, bottom), (b, ground)], [(left, bottom), (left + width, bottom)]],
        );
        pen.strokes(Ink::Faint, &[[(a, bottom), (b, ground)], [(b, bottom), (a, ground)]]);
    }
}

/// Lids, hoops, legs.
fn fittings(pen: &mut Pen, tank: &Tank, cell: &Cell, top: f64, bottom: f64, ground: f64) {
    let (left, right, middle) = (cell.body, cell.body + cell.body_width, cell.middle());
    match (tank.build, &tank.shape) {
        (Build::Barrel, _) => {
            let third = (bottom - top) / 3.0;
            let hoops = [top + third, top + 2.0 * third].map(|y| [(left + 1.0, y), (right - 1.0, y)]);
            pen.strokes(Ink::Line, &hoops);
        }
        (Build::Cistern, _) => {
            // A thick wall, and a neck up to the ground with a lid.
            pen.line(
                Ink::Line,
                &[
                    (left + 4.0, top + 4.0),
                    (left + 4.0, bottom - 4.0),
                    (right - 4.0, bottom - 4.0),
                    (right - 4.0, top + 4.0),
                ],
            );
            let lid = if top > ground { ground - 5.0 } else { top - 5.0 };
            pen.strokes(
                Ink::Strong,
                &[
                    [(middle - 8.0, top), (middle - 8.0, lid)],
                    [(middle + 8.0, top), (middle + 8.0, lid)],
                    [(middle - 11.0, lid), (middle + 11.0, lid)],
                ],
            );
        }
        (Build::Bladder, _) => {}
        (_, Shape::UprightCylinder { .. } | Shape::ConeBottom { .. }) => {
            let dome = [((left, top), "Q"), ((middle, top - 11.0), " "), ((right, top), "")];
            pen.sign(Ink::Line, (0.0, 0.0), &dome);
        }
        (_, Shape::LyingCylinder { .. }) => {
            pen.line(
                Ink::Line,
                &[(middle - 7.0, top), (middle - 7.0, top - 4.0), (middle + 7.0, top - 4.0), (middle + 7.0, top)],
            );
        }
        _ => {}
    }
    if let Shape::ConeBottom { .. } = tank.shape {
        pen.strokes(
            Ink::Line,
            &[
                [(left + 1.0, bottom), (left + 1.0, f64::midpoint(top, bottom))],
                [(right - 1.0, bottom), (right - 1.0, f64::midpoint(top, bottom))],
            ],
        );
    }
}

fn label(house: &House, pen: &mut Pen, at: usize, tank: &Tank) {
    let layout = house.layout;
    let cell = &layout.cells[at];
    let (left, right) = rows::label_room(house.system, &layout.cells, at);
    let name = rows::label_lines(house.labels, tank.id, right - left);
    let detail = lettering::detail(house.detail(tank.id), right - left);
    let widths = name.iter().map(|line| lettering::width(line, SIZE));
    let half = widths.chain(detail.iter().map(|line| lettering::width(line, SMALL))).fold(0.0, f64::max) / 2.0;
    // Under the middle of the tank, as far as it fits between the pipes.
    let middle = cell
        .middle()
        .clamp((left + half).min(f64::midpoint(left, right)), (right - half).max(f64::midpoint(left, right)));
    let y = layout.rows[cell.row].labels + 14.0;
    let y = pen.texts(Ink::StrongLabel, (middle, y), Anchor::Middle, SIZE, &name);
    pen.texts(Ink::Label, (middle, y), Anchor::Middle, SMALL, &detail);
}

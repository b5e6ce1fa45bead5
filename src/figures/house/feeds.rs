//! Feeds: the downspout from the gutter, its leaf screen, its first-flush diverter, and the way into the tank.

use super::inlets::Inlet;
use super::layout::{Cell, span};
use super::roof::{HALF_ROUND, Roof, drip};
use super::rows::FEED_HEIGHT;
use super::signs::{PartMark, Sign};
use super::{House, drawable, symbols};
use crate::figures::drawing::{Anchor, Ink};
use crate::figures::lettering::{self, SIZE};
use crate::figures::pen::{Pen, Point, Stroke};
use crate::figures::polygon;
use crate::site::feed::{Diverter, Drain};

/// Height of the tee at which the first flush leaves, below the top of the feed.
const TEE: f64 = 40.0;
/// Width of a standing pipe.
const CHAMBER: f64 = 10.0;

/// Draws what fills the tanks.
pub(super) fn draw(house: &mut House, roof: &Roof) {
    let layout = house.layout;
    for cell in &layout.cells {
        for inlet in &cell.inlets {
            let pen = if inlet.hauled { lorry(house, cell, inlet) } else { feed(house, roof, cell, inlet) };
            let (left, width) = if inlet.is_wide() {
                (inlet.left + 2.0, inlet.width - 4.0)
            } else {
                (inlet.pipe_x() - 14.0, inlet.width.min(46.0))
            };
            let top = layout.rows[cell.row].feeds;
            let name = inlet.parts.first().map_or("", |part| house.name(*part));
            let sign = if inlet.is_wide() {
                let end = inlet.pipe_x() + 30.0 + lettering::width(name, SIZE);
                let last = inlet.left + inlet.width - 14.0;
                // Beside the name, or below it where it takes the whole width.
                if end > last { (inlet.pipe_x() + 42.0, top + 48.0) } else { (end, top + 10.0) }
            } else {
                (inlet.pipe_x() + 16.0, top + 26.0)
            };
            house.target(&inlet.parts, (left, top), (width, FEED_HEIGHT - 2.0), sign, pen);
        }
    }
}

fn feed(house: &House, roof: &Roof, cell: &Cell, inlet: &Inlet) -> Pen {
    let mut pen = Pen::default();
    let top = house.layout.rows[cell.row].feeds;
    let x = inlet.pipe_x();
    let tee = top + TEE;
    let mut above = false;
    for run in house.layout.runs.iter().filter(|run| inlet.parts.contains(&run.feed)) {
        pen.pipe(Ink::Pipe, &[(run.from, roof.eave + 6.0), (run.from, run.y), (x, run.y), (x, top + 8.0)]);
        if (run.from - x).abs() > 2.0 && above {
            pen.circle(Ink::Solid, (x, run.y), 3.5);
        }
        above = true;
    }
    if !above {
        pen.pipe(Ink::Pipe, &[(x, top - 6.0), (x, top + 8.0)]);
        if cell.row > 0 {
            // Its gutter is above the row before.
            pen.sign(Ink::Line, (x, top - 10.0), &[HALF_ROUND]);
        }
    }
    into_tank(house, &mut pen, cell, (x, tee), 20.0);
    pen.pipe(Ink::Pipe, &[(x, top + 8.0), (x, tee)]);
    screen(&mut pen, (x, top + 8.0));
    let diverters: Vec<&Diverter> = house
        .system
        .feeds
        .iter()
        .filter(|feed| inlet.parts.contains(&feed.id))
        .filter_map(|feed| feed.diverter.as_ref())
        .collect();
    if let Some(first) = diverters.first() {
        standing_pipe(&mut pen, first, x, tee);
    }
    let ran = |mark: &PartMark| mark.sign == Sign::Flow && inlet.parts.contains(&mark.part);
    if house.signs.iter().any(ran) {
        for y in [top + 28.0, top + 36.0] {
            pen.strokes_at(Ink::WaterLine, (x - 9.0, y), &[[(-4.0, -4.0), (0.0, 0.0)], [(0.0, 0.0), (4.0, -4.0)]]);
        }
    }
    label(house, &mut pen, inlet, top);
    pen
}

/// From the tee over the rim of the tank, or into the open where there is none.
fn into_tank(house: &House, pen: &mut Pen, cell: &Cell, (x, tee): (f64, f64), aside: f64) {
    let Some(tank) = cell.tank.map(|at| &house.system.tanks[at]) else {
        pen.line(Ink::Loose, &[(x, tee), (x + 20.0, tee), (x + 20.0, tee + 12.0)]);
        drip(pen, (x + 20.0, tee + 24.0));
        return;
    };
    let rim = house.layout.y(cell.row, span(tank).1);
    let into = (x + aside).clamp(cell.body + 8.0, (cell.body + cell.body_width - 8.0).max(cell.body + 8.0));
    if aside > 14.0 && (into - x).abs() < 14.0 {
        // Too near to stand beside its own diverter: step aside within the tank's width.
        let aside = if into >= x { x + 14.0 } else { x - 14.0 };
        pen.pipe(Ink::Pipe, &[(x, tee), (aside, tee), (aside, rim - 10.0), (into, rim - 10.0), (into, rim + 5.0)]);
    } else {
        pen.pipe(Ink::Pipe, &[(x, tee), (into, tee), (into, rim + 5.0)]);
    }
}

/// The leaf screen: a small head with a slanting mesh.
fn screen(pen: &mut Pen, at: Point) {
    const HEAD: [Point; 6] = [(-9.0, 0.0), (9.0, 0.0), (9.0, 8.0), (4.0, 17.0), (-4.0, 17.0), (-9.0, 8.0)];
    const MESH: [Stroke; 4] =
        [[(-8.0, 3.0), (8.0, 10.0)], [(-4.5, 2.5), (-5.5, 6.5)], [(0.5, 4.5), (-0.5, 8.5)], [(5.0, 6.5), (4.0, 10.5)]];
    pen.area_at(Ink::Paper, at, &HEAD);
    pen.area_at(Ink::Line, at, &HEAD);
    pen.strokes_at(Ink::Line, at, &MESH);
}

/// The diverter: a standing pipe, longer where it holds more, with its ball and its slow drip.
fn standing_pipe(pen: &mut Pen, diverter: &Diverter, x: f64, tee: f64) {
    let length = 20.0 + 20.0 * (drawable(diverter.volume.get(), 0.0, 40.0) / 40.0);
    let (left, top) = (x - CHAMBER / 2.0, tee + 3.0);
    let pipe = [(left, top), (left + CHAMBER, top), (left + CHAMBER, top + length), (left, top + length)];
    pen.area(Ink::Paper, &pipe);
    let held = polygon::between(&pipe, top + 0.45 * length, top + length);
    pen.area(Ink::FirstFlush, &held);
    pen.strokes(Ink::Line, &[[pipe[0], pipe[3]], [pipe[1], pipe[2]]]);
    pen.circle(Ink::Line, (x, top + 0.45 * length - 3.5), 3.2);
    pen.line(Ink::Strong, &[(left - 2.0, top + length), (left + CHAMBER + 2.0, top + length)]);
    if let Drain::Hole { .. } = diverter.drain {
        drip(pen, (x, top + length + 7.0));
    }
}

fn label(house: &House, pen: &mut Pen, inlet: &Inlet, top: f64) {
    let x = inlet.pipe_x();
    if let [part] = inlet.parts[..] {
        if inlet.is_wide() {
            let lines = lettering::lines(house.name(part), inlet.width - 34.0, SIZE, 2);
            pen.texts(Ink::Label, (x + 16.0, top + 14.0), Anchor::Start, SIZE, &lines);
        } else if let Some(number) = lettering::number_at_end(house.name(part))
            && lettering::width(number, SIZE) <= inlet.left + inlet.width - x - 12.0
        {
            pen.text(Ink::Label, (x + 12.0, top + 14.0), Anchor::Start, SIZE, number);
        }
    } else {
        pen.text(Ink::StrongLabel, (x + 12.0, top + 14.0), Anchor::Start, SIZE, &format!("×{}", inlet.parts.len()));
    }
}

/// Hauled water: a lorry over the tank, with its hose.
fn lorry(house: &House, cell: &Cell, inlet: &Inlet) -> Pen {
    let mut pen = Pen::default();
    let top = house.layout.rows[cell.row].feeds;
    let x = inlet.pipe_x() + 4.0;
    into_tank(house, &mut pen, cell, (x - 18.0, top + 54.0), 6.0);
    symbols::lorry(&mut pen, (x, top + 48.0));
    if inlet.is_wide() {
        let name = inlet.parts.first().map_or("", |part| house.name(*part));
        let lines = lettering::lines(name, inlet.width - 34.0, SIZE, 2);
        pen.texts(Ink::Label, (inlet.left + 6.0, top + 14.0), Anchor::Start, SIZE, &lines);
    }
    pen
}

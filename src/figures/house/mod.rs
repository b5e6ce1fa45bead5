//! The household's own system in section: roofs on top, downspouts with screens and diverters, tanks at their true
//! relative heights with today's water, what joins them in the ground, and what draws on them below.
//!
//! Each kind of part has a file; `layout` says where the tanks stand, `inlets` what fills each and `rows` how rows of
//! tanks stack; the others draw around them.

mod heights;
mod inlets;
mod layout;
mod rows;

mod feeds;
mod ground;
mod joints;
mod roof;
mod signs;
mod spills;
mod symbols;
mod tank_outline;
mod tanks;
mod uses;

use super::drawing::{Drawing, Mark, Target};
use super::pen::{Pen, Point};
use crate::site::part::PartId;
use crate::site::system::System;

pub use signs::{PartMark, Sign};

/// Narrowest sheet that is drawn.
const NARROWEST: f64 = 280.0;
/// Least width and height of what can be tapped.
const TAP: f64 = 44.0;

/// Today's water in a tank.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TankWater {
    /// The tank.
    pub tank: PartId,
    /// Level over its floor, in m.
    pub level_m: f64,
}

/// What is written at a part and said of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PartLabel {
    /// Its name.
    pub name: String,
    /// A figure below the name: area, content, daily amount; may be empty.
    pub detail: String,
    /// Its accessible name: kind, name, state and what needs attention.
    pub spoken: String,
}

/// All labels, each with its part.
pub type Labels = Vec<(PartId, PartLabel)>;

/// Draws the house for a width in pixels. Parts that the system lacks or that are joined to nothing yet are drawn
/// loose; every part can be tapped.
pub fn drawing(system: &System, water: &[TankWater], marks: &[PartMark], labels: &Labels, width: f64) -> Drawing {
    let width = if width.is_finite() { width.max(NARROWEST) } else { NARROWEST };
    let roof = roof::layout(system, labels, width);
    let layout = layout::layout(system, labels, &roof, width);
    let mut house = House { system, water, signs: marks, labels, layout: &layout, pen: Pen::default() };
    ground::draw(&mut house, &roof);
    roof::draw(&mut house, &roof);
    feeds::draw(&mut house, &roof);
    tanks::draw(&mut house);
    joints::draw(&mut house);
    spills::draw(&mut house);
    ground::free(&mut house);
    let height = uses::draw(&mut house);
    Drawing { width, height, marks: house.pen.marks, readings: Vec::new() }
}

/// The house while it is being drawn.
struct House<'a> {
    system: &'a System,
    water: &'a [TankWater],
    signs: &'a [PartMark],
    labels: &'a Labels,
    layout: &'a layout::Layout,
    pen: Pen,
}

impl House<'_> {
    /// The name of a part as it is written.
    fn name(&self, part: PartId) -> &str {
        label_of(self.labels, part).map_or("", |label| &label.name)
    }

    /// The figure of a part as it is written.
    fn detail(&self, part: PartId) -> &str {
        label_of(self.labels, part).map_or("", |label| &label.detail)
    }

    /// Adds a part, or several as one, that answers to a tap in an area; the area grows to what a thumb needs and
    /// stays on the sheet. A sign stands at `sign`.
    fn target(&mut self, parts: &[PartId], (x, y): Point, (width, height): (f64, f64), sign: Point, mut own: Pen) {
        let (tap_width, tap_height) = (width.max(TAP), height.max(TAP));
        let x = (x + (width - tap_width) / 2.0).clamp(0.0, (self.layout.width - tap_width).max(0.0));
        let y = (y + (height - tap_height) / 2.0).max(0.0);
        signs::draw(&mut own, self.signs, parts, sign);
        let spoken: Vec<&str> =
            parts.iter().filter_map(|part| label_of(self.labels, *part)).map(|label| label.spoken.as_str()).collect();
        self.pen.marks.push(Mark::Part(Target {
            parts: parts.to_vec(),
            name: spoken.join("; "),
            x,
            y,
            width: tap_width,
            height: tap_height,
            marks: own.marks,
        }));
    }
}

/// The label of a part; the last one, if there are several.
fn label_of(labels: &Labels, part: PartId) -> Option<&PartLabel> {
    labels.iter().rev().find(|(of, _)| *of == part).map(|(_, label)| label)
}

/// A number of a part as far as it can be drawn.
fn drawable(value: f64, least: f64, greatest: f64) -> f64 {
    if value.is_nan() { least } else { value.clamp(least, greatest) }
}

#[cfg(test)]
mod tests;

//! Shapes of tanks, and the volume that each holds up to a depth.

use super::part::{Field, Number};
use crate::quantity::{Length, Volume};

/// Litres in a cubic metre.
const LITRES_PER_CUBIC_METRE: f64 = 1000.0;

/// The inner shape of a tank. Lengths 0.01 to 30 m.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// An upright cylinder.
    UprightCylinder {
        /// Inside diameter.
        diameter: Length,
        /// Inside height.
        height: Length,
    },
    /// A box.
    Box {
        /// Inside length.
        length: Length,
        /// Inside width.
        width: Length,
        /// Inside height.
        height: Length,
    },
    /// A cylinder that lies, with flat ends.
    LyingCylinder {
        /// Inside diameter.
        diameter: Length,
        /// Inside length.
        length: Length,
    },
    /// An upright cylinder over a cone that points down.
    ConeBottom {
        /// Inside diameter.
        diameter: Length,
        /// Height of the cone, at most the whole height.
        cone_height: Length,
        /// Inside height, cone included.
        height: Length,
    },
    /// Depths and volumes read off the tank, rising, from the first row on; straight lines between, and from empty
    /// at the floor to the first.
    Table(Vec<TableRow>),
}

/// One row of a tank's table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TableRow {
    /// Depth over the floor.
    pub depth: Length,
    /// Volume up to that depth.
    pub volume: Volume,
}

/// The kinds of shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShapeKind {
    /// An upright cylinder.
    UprightCylinder,
    /// A box.
    Box,
    /// A lying cylinder.
    LyingCylinder,
    /// A cylinder over a cone.
    ConeBottom,
    /// A table.
    Table,
}

impl ShapeKind {
    /// All kinds.
    pub const ALL: [ShapeKind; 5] =
        [ShapeKind::UprightCylinder, ShapeKind::Box, ShapeKind::LyingCylinder, ShapeKind::ConeBottom, ShapeKind::Table];
}

/// Area of a circle, in the square of what its diameter is in.
pub fn circle(diameter: f64) -> f64 {
    std::f64::consts::PI * diameter * diameter / 4.0
}

/// Proportions assumed where only the capacity is known: a tank as high as it is wide, a lying one twice as long
/// as wide, a cone of a quarter of the height.
const LYING_LENGTH_PER_DIAMETER: f64 = 2.0;
const CONE_SHARE_OF_HEIGHT: f64 = 0.25;

impl Shape {
    /// A shape of a kind that holds so much at a given height (a lying cylinder finds its own).
    pub fn usual(kind: ShapeKind, full: Volume, height: Length) -> Self {
        let cubic_metres = full.get() / LITRES_PER_CUBIC_METRE;
        let diameter_for =
            |height_m: f64| Length::metres((4.0 * cubic_metres / (std::f64::consts::PI * height_m)).sqrt());
        match kind {
            ShapeKind::UprightCylinder => Shape::UprightCylinder { diameter: diameter_for(height.get()), height },
            ShapeKind::Box => {
                let side = Length::metres((cubic_metres / height.get()).sqrt());
                Shape::Box { length: side, width: side, height }
            }
            ShapeKind::LyingCylinder => {
                let diameter =
                    libm::pow(4.0 * cubic_metres / (std::f64::consts::PI * LYING_LENGTH_PER_DIAMETER), 1.0 / 3.0);
                Shape::LyingCylinder {
                    diameter: Length::metres(diameter),
                    length: Length::metres(LYING_LENGTH_PER_DIAMETER * diameter),
                }
            }
            ShapeKind::ConeBottom => {
                let cone_height = Length::metres(CONE_SHARE_OF_HEIGHT * height.get());
                let as_cylinder = height.get() - cone_height.get() * 2.0 / 3.0;
                Shape::ConeBottom { diameter: diameter_for(as_cylinder), cone_height, height }
            }
            ShapeKind::Table => Shape::Table(vec![TableRow { depth: height, volume: full }]),
        }
    }

    /// Which kind it is.
    pub fn kind(&self) -> ShapeKind {
        match self {
            Shape::UprightCylinder { .. } => ShapeKind::UprightCylinder,
            Shape::Box { .. } => ShapeKind::Box,
            Shape::LyingCylinder { .. } => ShapeKind::LyingCylinder,
            Shape::ConeBottom { .. } => ShapeKind::ConeBottom,
            Shape::Table(_) => ShapeKind::Table,
        }
    }

    /// The numbers of the shape, with their ranges.
    pub(super) fn numbers(&mut self) -> Vec<Number<'_>> {
        let size = |field, value| Number::new(field, 0.01, 30.0, value);
        match self {
            Shape::UprightCylinder { diameter, height } => {
                vec![size(Field::Diameter, diameter), size(Field::Height, height)]
            }
            Shape::Box { length, width, height } => {
                vec![size(Field::Length, length), size(Field::Width, width), size(Field::Height, height)]
            }
            Shape::LyingCylinder { diameter, length } => {
                vec![size(Field::Diameter, diameter), size(Field::Length, length)]
            }
            Shape::ConeBottom { diameter, cone_height, height } => {
                vec![size(Field::Diameter, diameter), size(Field::ConeHeight, cone_height), size(Field::Height, height)]
            }
            Shape::Table(_) => Vec::new(),
        }
    }

    /// The height of the rim over the floor, in m.
    pub fn height(&self) -> f64 {
        match self {
            Shape::UprightCylinder { height, .. } | Shape::Box { height, .. } | Shape::ConeBottom { height, .. } => {
                height.get()
            }
            Shape::LyingCylinder { diameter, .. } => diameter.get(),
            Shape::Table(rows) => rows.last().map_or(0.0, |row| row.depth.get()),
        }
    }

    /// The greatest width seen from the side, in m: for the drawing.
    pub fn width(&self) -> f64 {
        match self {
            Shape::UprightCylinder { diameter, .. } | Shape::ConeBottom { diameter, .. } => diameter.get(),
            Shape::Box { length, .. } | Shape::LyingCylinder { length, .. } => length.get(),
            Shape::Table(_) => {
                let area = self.full_volume().get() / LITRES_PER_CUBIC_METRE / self.height();
                (4.0 * area / std::f64::consts::PI).sqrt()
            }
        }
    }

    /// The volume to the rim.
    pub fn full_volume(&self) -> Volume {
        Volume::litres(self.volume_l(self.height()))
    }

    /// Volume up to a depth: `V(z)`, in litres, for a depth over the floor in m. Depths below the floor give 0 and
    /// those above the rim the full volume, so that the function is monotone everywhere.
    ///
    /// Lying cylinder with flat ends: `V = L (R² acos((R − z)/R) − (R − z) √(2Rz − z²))`; cone-bottomed with cone
    /// height a: `V = (π/4)(D z/a)² z/3` for z < a, `(π D²/4)(z − 2a/3)` above.
    ///
    /// Source: Jones, "Calculating Tank Volume" (2004).
    pub fn volume_l(&self, depth: f64) -> f64 {
        let z = depth.clamp(0.0, self.height().max(0.0));
        let cubic_metres = match self {
            Shape::UprightCylinder { diameter, .. } => circle(diameter.get()) * z,
            Shape::Box { length, width, .. } => length.get() * width.get() * z,
            Shape::LyingCylinder { diameter, length } => {
                let r = diameter.get() / 2.0;
                let d = r - z;
                length.get() * (r * r * libm::acos(d / r) - d * (2.0 * r * z - z * z).max(0.0).sqrt())
            }
            Shape::ConeBottom { diameter, cone_height, .. } => {
                let a = cone_height.get();
                if z < a {
                    let within = z / a;
                    circle(diameter.get()) * within * within * z / 3.0
                } else {
                    circle(diameter.get()) * (z - 2.0 * a / 3.0)
                }
            }
            Shape::Table(rows) => return table_volume_l(rows, z),
        };
        cubic_metres * LITRES_PER_CUBIC_METRE
    }

    /// Area of the water surface at a depth, in m².
    pub fn surface_m2(&self, depth: f64) -> f64 {
        let z = depth.clamp(0.0, self.height().max(0.0));
        match self {
            Shape::UprightCylinder { diameter, .. } => circle(diameter.get()),
            Shape::Box { length, width, .. } => length.get() * width.get(),
            Shape::LyingCylinder { diameter, length } => {
                let r = diameter.get() / 2.0;
                2.0 * (2.0 * r * z - z * z).max(0.0).sqrt() * length.get()
            }
            Shape::ConeBottom { diameter, cone_height, .. } => {
                circle(diameter.get() * (z / cone_height.get()).min(1.0))
            }
            Shape::Table(rows) => {
                let at = rows.iter().position(|row| row.depth.get() >= z).unwrap_or(rows.len().saturating_sub(1));
                let Some(upper) = rows.get(at) else { return 0.0 };
                let lower = at.checked_sub(1).and_then(|below| rows.get(below));
                let (z0, v0) = lower.map_or((0.0, 0.0), |row| (row.depth.get(), row.volume.get()));
                (upper.volume.get() - v0) / (upper.depth.get() - z0) / LITRES_PER_CUBIC_METRE
            }
        }
    }

    /// Widens or narrows the shape so that every depth holds `ratio` (above 0) times as much.
    pub(super) fn widen(&mut self, ratio: f64) {
        let side = ratio.sqrt();
        let scale = |length: &mut Length, by: f64| *length = Length::metres(length.get() * by);
        match self {
            Shape::UprightCylinder { diameter, .. } | Shape::ConeBottom { diameter, .. } => scale(diameter, side),
            Shape::Box { length, width, .. } => {
                scale(length, side);
                scale(width, side);
            }
            Shape::LyingCylinder { length, .. } => scale(length, ratio),
            Shape::Table(rows) => {
                for row in rows {
                    row.volume = Volume::litres(row.volume.get() * ratio);
                }
            }
        }
    }
}

fn table_volume_l(rows: &[TableRow], depth: f64) -> f64 {
    let (mut z0, mut v0) = (0.0, 0.0);
    for row in rows {
        let (z1, v1) = (row.depth.get(), row.volume.get());
        if depth <= z1 {
            return if z1 > z0 { v0 + (v1 - v0) * ((depth - z0) / (z1 - z0)) } else { v1 };
        }
        (z0, v0) = (z1, v1);
    }
    v0
}

//! Tanks: any store of water, its shape, its heights and where it spills.

use super::part::{Choice, Field, Number, PartId};
use crate::quantity::{Depth, Flow, Length, Volume};

pub use super::tank_shape::{Shape, ShapeKind};

/// A barrel, tank, cistern or bladder.
#[derive(Clone, Debug, PartialEq)]
pub struct Tank {
    /// Its identity.
    pub id: PartId,
    /// What the household calls it.
    pub name: String,
    /// How it is built: for the drawing and the cautions.
    pub build: Build,
    /// Its inner shape.
    pub shape: Shape,
    /// Elevation of its floor over a level of the household's choice, −30 to 100 m.
    pub floor: Length,
    /// Height of its outlet over its floor, 0 to 30 m: below it is dead storage.
    pub outlet: Length,
    /// Height of its overflow over its floor, 0 to 30 m: its rim if it has no overflow pipe.
    pub overflow: Length,
    /// Where its overflow goes.
    pub overflow_to: OverflowTo,
    /// What it loses by a leak, 0 to 10,000 L a day.
    pub leak: Flow,
    /// Whether the sky can reach its water.
    pub cover: Cover,
}

/// How a tank is built.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Build {
    /// A barrel.
    Barrel,
    /// A tank that stands above ground.
    AboveGround,
    /// A bladder.
    Bladder,
    /// A buried or half-buried cistern.
    Cistern,
}

impl Build {
    /// All ways.
    pub const ALL: [Build; 4] = [Build::Barrel, Build::AboveGround, Build::Bladder, Build::Cistern];
}

/// Where an overflow goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OverflowTo {
    /// Onto the ground, or over the rim where there is no overflow pipe.
    Ground,
    /// To the garden.
    Garden,
    /// To another tank.
    Tank(PartId),
}

/// Whether the sky can reach a tank's water.
#[derive(Clone, Debug, PartialEq)]
pub enum Cover {
    /// Covered: no rain falls in, nothing evaporates.
    Covered,
    /// Uncovered: rain falls in, water evaporates.
    Uncovered {
        /// Depth a day in January to December, 0 to 30 mm.
        evaporation: [Depth; 12],
    },
}

/// Evaporation assumed for an uncovered tank until the household knows better: 4 mm a day the year round (common
/// practice, no source).
const USUAL_EVAPORATION: Cover = Cover::Uncovered { evaporation: [Depth::millimetres(4.0); 12] };

impl Tank {
    /// Area of the water at the overflow, in m², where rain falls into an uncovered tank; 0 under a cover.
    pub fn open_mouth_m2(&self) -> f64 {
        match self.cover {
            Cover::Covered => 0.0,
            Cover::Uncovered { .. } => self.shape.surface_m2(self.overflow.get()),
        }
    }

    /// The numbers of the tank, with their ranges.
    pub fn numbers(&mut self) -> Vec<Number<'_>> {
        let mut numbers = self.shape.numbers();
        numbers.extend([
            Number::new(Field::Floor, -30.0, 100.0, &mut self.floor),
            Number::new(Field::Outlet, 0.0, 30.0, &mut self.outlet),
            Number::new(Field::Overflow, 0.0, 30.0, &mut self.overflow),
            Number::new(Field::Leak, 0.0, 10_000.0, &mut self.leak),
        ]);
        if let Cover::Uncovered { evaporation } = &mut self.cover {
            numbers.extend(
                (0u8..).zip(evaporation).map(|(month, depth)| Number::new(Field::Evaporation(month), 0.0, 30.0, depth)),
            );
        }
        numbers
    }

    /// Takes a choice. A new shape keeps the capacity and the height as nearly as it can.
    pub(super) fn choose(&mut self, choice: Choice) {
        match choice {
            Choice::Build(build) => self.build = build,
            Choice::Shape(kind) => {
                if self.shape.full_volume().get() <= 0.0 {
                    // Of a table without rows there is nothing to keep.
                    let usual = super::new_part::usual_tank(self.id, String::new());
                    (self.shape, self.outlet, self.overflow) = (usual.shape, usual.outlet, usual.overflow);
                }
                let (capacity, height) = (self.capacity(), self.shape.height());
                let (outlet, overflow) = (self.outlet.get() / height, self.overflow.get() / height);
                self.shape = Shape::usual(kind, self.shape.full_volume(), Length::metres(height));
                let height = self.shape.height();
                self.outlet = Length::metres(outlet * height);
                self.overflow = Length::metres(overflow * height);
                self.set_capacity(capacity);
            }
            Choice::OverflowTo(to) => self.overflow_to = to,
            Choice::Covered(true) => self.cover = Cover::Covered,
            Choice::Covered(false) => self.cover = USUAL_EVAPORATION,
            _ => {}
        }
    }

    /// Volume to the overflow, in litres, dead storage included.
    pub fn capacity(&self) -> Volume {
        Volume::litres(self.shape.volume_l(self.overflow.get()))
    }

    /// Volume below the outlet, in litres.
    pub fn dead_storage(&self) -> Volume {
        Volume::litres(self.shape.volume_l(self.outlet.get()))
    }

    /// Widens or narrows the tank so that it holds so much to the overflow; its heights stay.
    /// Nothing changes where the tank holds nothing to scale from.
    pub fn set_capacity(&mut self, capacity: Volume) {
        let ratio = capacity.get() / self.capacity().get();
        if ratio.is_finite() && ratio > 0.0 {
            self.shape.widen(ratio);
        }
    }

    /// Elevation of its overflow over the household's level, in m.
    pub fn overflow_elevation(&self) -> f64 {
        self.floor.get() + self.overflow.get()
    }
}

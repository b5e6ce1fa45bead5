//! What all parts have in common: an identity, and the values in them that a person can change.

use crate::quantity::{Quantity, Range};

use super::{feed, garden, head_figures, roof, tank, uses};

/// Names a part within its system, for as long as the part lasts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PartId(pub u32);

/// A value of a part, in the order in which they are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Field {
    /// What the household calls the part.
    Name,
    /// Plan area of a roof section.
    Area,
    /// Roofing of a section.
    Material,
    /// Runoff coefficient of a section.
    RunoffCoefficient,
    /// Wetting loss of a section.
    WettingLoss,
    /// Share of a section that goes to a feed.
    ShareTo(PartId),
    /// Tank that a feed fills.
    FillsTank,
    /// Capture efficiency of a feed.
    Capture,
    /// Whether and how a feed's diverter empties.
    Drain,
    /// First-flush volume.
    FlushVolume,
    /// Inside diameter of a diverter's chamber.
    ChamberBore,
    /// Diameter of a diverter's slow-release hole.
    HoleBore,
    /// Days between emptyings by hand.
    EmptiedEvery,
    /// Hours of rain on a rain day.
    StormHours,
    /// How a tank is built.
    Build,
    /// Shape of a tank.
    Shape,
    /// Capacity of a tank, to the overflow.
    Capacity,
    /// Diameter of a tank.
    Diameter,
    /// Height of a tank's wall.
    Height,
    /// Length of a tank.
    Length,
    /// Width of a tank.
    Width,
    /// Height of a tank's cone.
    ConeHeight,
    /// Depth and volume read off a tank, row by row.
    DepthTable,
    /// Elevation of a tank's floor.
    Floor,
    /// Height of a tank's outlet over its floor.
    Outlet,
    /// Height of a tank's overflow over its floor.
    Overflow,
    /// Where a tank's overflow goes.
    OverflowTo,
    /// What a tank loses by a leak.
    Leak,
    /// Whether a tank is covered.
    Cover,
    /// Evaporation in a month (0 to 11) from an uncovered tank, a day.
    Evaporation(u8),
    /// One end of a trunk line.
    FirstTank,
    /// The other end of a trunk line.
    SecondTank,
    /// Whether a trunk line's valve is open.
    Valve,
    /// Cistern that a pump draws on.
    DrawsFrom,
    /// Tank that a pump fills.
    PumpsTo,
    /// Share of the receiving store below which a pump starts.
    StartLevel,
    /// Share of the receiving store at which a pump stops.
    StopLevel,
    /// Most that a pump moves in a day.
    DailyLimit,
    /// Kind of a use.
    Class,
    /// Tank whose store a use draws on.
    Tank,
    /// How a use's amount is given.
    AmountGiven,
    /// Daily amount of a use.
    Amount,
    /// Published figure for each head.
    PublishedFigure,
    /// Daily amount for each head.
    PerHead,
    /// How many people or animals.
    Heads,
    /// Daily amount in a month (0 to 11).
    Month(u8),
    /// Amount for each event.
    PerEvent,
    /// Events in a week.
    EventsAWeek,
    /// Watered area of a garden.
    GardenArea,
    /// What grows in a garden.
    Crop,
    /// Crop coefficient of a garden.
    CropCoefficient,
    /// Depth of a garden's roots.
    RootDepth,
    /// Share of the available water that may be gone before plants suffer.
    Depletion,
    /// First month of a garden's season.
    GrowsFrom,
    /// Last month of a garden's season.
    GrowsTo,
    /// Soil of a garden.
    Soil,
    /// Water that plants can draw from the soil.
    AvailableWater,
    /// How a garden is watered.
    Watering,
    /// Share of a garden's water that reaches the roots.
    Efficiency,
    /// Whether a use is outdoors.
    Outdoor,
    /// Tank whose store a step of rationing looks at.
    LooksAt,
    /// Share of the store below which a step of rationing is in force.
    RationBelow,
    /// Share that a use does without under a step of rationing.
    CutOf(PartId),
    /// Share of the store below which a load of water is ordered.
    Trigger,
    /// Volume of a load.
    Load,
    /// Price of a load.
    LoadPrice,
    /// Days between order and arrival.
    Notice,
}

/// A number of a part, with its range.
pub struct Number<'a> {
    /// Which.
    pub field: Field,
    /// What it may be, in the unit that it is kept in.
    pub range: Range,
    /// The value itself.
    pub value: &'a mut dyn Quantity,
}

impl<'a> Number<'a> {
    pub(super) fn new(field: Field, least: f64, greatest: f64, value: &'a mut dyn Quantity) -> Self {
        Self { field, range: Range::new(least, greatest), value }
    }
}

/// One of several possibilities for a value that is not a number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Choice {
    /// A roofing.
    Material(roof::Material),
    /// A way of emptying a diverter, or none.
    Drain(feed::DrainKind),
    /// A way of building a tank.
    Build(tank::Build),
    /// A shape of tank.
    Shape(tank::ShapeKind),
    /// Where an overflow goes.
    OverflowTo(tank::OverflowTo),
    /// A way of giving an amount.
    Amount(uses::AmountKind),
    /// A kind of use.
    Class(uses::Class),
    /// Another part.
    Part(PartId),
    /// No part yet.
    NoPart,
    /// Valve open or shut.
    Open(bool),
    /// Tank covered or not.
    Covered(bool),
    /// Use outdoors or not.
    Outdoor(bool),
    /// A published figure for each head, or the household's own.
    HeadFigure(Option<head_figures::HeadFigure>),
    /// What grows in a garden.
    Crop(garden::Crop),
    /// A soil.
    Soil(garden::Soil),
    /// A way of watering.
    Watering(garden::Watering),
    /// A month (0 to 11).
    Month(u8),
}

//! Lengths, kept in metres: those of tanks and walls (`Length`) and those of pipes and holes (`Bore`), which
//! people give in other units.

use super::newtype::quantity;
use super::unit::Unit;

quantity! {
    /// A length or height, in metres.
    Length, metres, Length
}

quantity! {
    /// A diameter of a pipe or hole, in metres.
    Bore, metres, Bore
}

/// Metres in a foot, by definition.
pub const METRES_PER_FOOT: f64 = 0.3048;
/// Metres in an inch, by definition.
pub const METRES_PER_INCH: f64 = 0.0254;

const METRE: Unit =
    Unit { symbol: "m", factor: 1.0, names: &["m", "metre", "metres", "meter", "meters", "metro", "metros"] };
const FOOT: Unit =
    Unit { symbol: "ft", factor: METRES_PER_FOOT, names: &["ft", "foot", "feet", "'", "′", "’", "pie", "pies"] };
const INCH: Unit = Unit {
    symbol: "in",
    factor: METRES_PER_INCH,
    names: &["in", "inch", "inches", "\"", "″", "”", "''", "pulgada", "pulgadas", "pulg"],
};
const CENTIMETRE: Unit = Unit {
    symbol: "cm",
    factor: 0.01,
    names: &["cm", "centimetre", "centimetres", "centimeter", "centimeters", "centímetro", "centímetros"],
};
const MILLIMETRE: Unit = Unit {
    symbol: "mm",
    factor: 0.001,
    names: &["mm", "millimetre", "millimetres", "millimeter", "millimeters", "milímetro", "milímetros"],
};

/// The units in which people give the sizes of tanks and heights.
pub const UNITS: &[Unit] = &[METRE, FOOT, INCH, CENTIMETRE, MILLIMETRE];

/// The units in which people give the diameters of pipes and holes.
pub const BORE_UNITS: &[Unit] = &[MILLIMETRE, INCH, CENTIMETRE, METRE, FOOT];

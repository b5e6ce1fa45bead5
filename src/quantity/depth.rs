//! Depth of rain, kept in millimetres: 1 mm on 1 m² is 1 L.

use super::newtype::quantity;
use super::unit::Unit;

quantity! {
    /// A depth of rain, of wetting or of evaporation, in millimetres.
    Depth, millimetres, Depth
}

/// Millimetres in an inch, by definition.
pub const MILLIMETRES_PER_INCH: f64 = 25.4;

/// The units in which people give rain.
pub const UNITS: &[Unit] = &[
    Unit {
        symbol: "mm",
        factor: 1.0,
        names: &["mm", "millimetre", "millimetres", "millimeter", "millimeters", "milímetro", "milímetros"],
    },
    Unit {
        symbol: "in",
        factor: MILLIMETRES_PER_INCH,
        names: &["in", "inch", "inches", "\"", "″", "”", "pulgada", "pulgadas"],
    },
    Unit {
        symbol: "cm",
        factor: 10.0,
        names: &["cm", "centimetre", "centimetres", "centimeter", "centimeters", "centímetro", "centímetros"],
    },
];

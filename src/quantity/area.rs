//! Area, kept in square metres.

use super::newtype::quantity;
use super::unit::Unit;

quantity! {
    /// An area, in square metres.
    Area, square_metres, Area
}

/// Square metres in a square foot: 0.3048 m squared.
pub const SQUARE_METRES_PER_SQUARE_FOOT: f64 = 0.092_903_04;

/// The units in which people give areas.
pub const UNITS: &[Unit] = &[
    Unit {
        symbol: "m²",
        factor: 1.0,
        names: &[
            "m2",
            "m²",
            "sq m",
            "sqm",
            "square metre",
            "square metres",
            "square meter",
            "square meters",
            "m",
            "metro cuadrado",
            "metros cuadrados",
        ],
    },
    Unit {
        symbol: "ft²",
        factor: SQUARE_METRES_PER_SQUARE_FOOT,
        names: &[
            "ft2",
            "ft²",
            "sq ft",
            "sqft",
            "square foot",
            "square feet",
            "sf",
            "ft",
            "pie cuadrado",
            "pies cuadrados",
            "pie²",
            "pies²",
            "pie2",
            "pies2",
        ],
    },
];

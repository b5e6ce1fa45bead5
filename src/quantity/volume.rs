//! Volume of water, kept in litres.

use super::newtype::quantity;
use super::unit::Unit;

quantity! {
    /// A volume of water, in litres.
    Volume, litres, Volume
}

/// Litres in a US gallon: 231 cubic inches of 25.4 mm each, by definition.
pub const LITRES_PER_US_GALLON: f64 = 3.785_411_784;
/// Litres in an imperial gallon, by definition (Weights and Measures Act 1985).
pub const LITRES_PER_IMPERIAL_GALLON: f64 = 4.546_09;
/// Litres in a cubic foot: 0.3048 m cubed.
pub const LITRES_PER_CUBIC_FOOT: f64 = 28.316_846_592;

/// The units in which people give volumes.
pub const UNITS: &[Unit] = &[
    Unit {
        symbol: "L",
        factor: 1.0,
        names: &["l", "litre", "litres", "liter", "liters", "ltr", "lt", "lts", "litro", "litros"],
    },
    Unit {
        symbol: "gal",
        factor: LITRES_PER_US_GALLON,
        names: &[
            "gal",
            "gals",
            "gallon",
            "gallons",
            "us gal",
            "us gallon",
            "us gallons",
            "usgal",
            "g",
            "galón",
            "galones",
        ],
    },
    Unit {
        symbol: "imp gal",
        factor: LITRES_PER_IMPERIAL_GALLON,
        names: &[
            "imp gal",
            "imperial gallon",
            "imperial gallons",
            "uk gal",
            "impgal",
            "gal",
            "gals",
            "gallon",
            "gallons",
            "gal imp",
        ],
    },
    Unit {
        symbol: "m³",
        factor: 1000.0,
        names: &[
            "m3",
            "m³",
            "cubic metre",
            "cubic metres",
            "cubic meter",
            "cubic meters",
            "kl",
            "kilolitre",
            "metro cúbico",
            "metros cúbicos",
        ],
    },
    Unit {
        symbol: "ft³",
        factor: LITRES_PER_CUBIC_FOOT,
        names: &["ft3", "ft³", "cubic foot", "cubic feet", "cu ft", "pie cúbico", "pies cúbicos"],
    },
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gallons_and_cubic_feet_follow_from_the_inch() {
        // The inch is 25.4 mm (international yard and pound agreement, 1959): factors derived, not copied.
        let inch_dm: f64 = 0.254;
        assert!((LITRES_PER_US_GALLON - 231.0 * inch_dm.powi(3)).abs() < 1e-12);
        assert!((LITRES_PER_CUBIC_FOOT - (12.0 * inch_dm).powi(3)).abs() < 1e-12);
    }
}

//! Kinds that only the checks of parts need. Nobody chooses their units one by one: each follows the unit chosen for
//! another kind (feet bring psi and mph, inches of rain bring inches an hour); any of them can be typed.

use super::depth::MILLIMETRES_PER_INCH;
use super::length::METRES_PER_FOOT;
use super::unit::{Kind, Unit, Units};
use super::volume::{LITRES_PER_IMPERIAL_GALLON, LITRES_PER_US_GALLON};

/// Kilograms in a pound, by definition (international yard and pound agreement, 1959).
pub const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;
/// Grams in an ounce: a sixteenth of a pound.
pub const GRAMS_AN_OUNCE: f64 = KILOGRAMS_PER_POUND * 1000.0 / 16.0;
/// Millilitres in a US fluid ounce: 128 to the gallon.
pub const MILLILITRES_A_FLUID_OUNCE: f64 = LITRES_PER_US_GALLON * 1000.0 / 128.0;
/// Standard gravity, m/s², by definition (3rd CGPM, 1901).
const STANDARD_GRAVITY: f64 = 9.806_65;
const KILONEWTONS_PER_POUND: f64 = KILOGRAMS_PER_POUND * STANDARD_GRAVITY / 1000.0;
/// Kilopascals in a pound on a square foot and on a square inch.
const KILOPASCALS_PER_PSF: f64 = KILONEWTONS_PER_POUND / (METRES_PER_FOOT * METRES_PER_FOOT);
const KILOPASCALS_PER_PSI: f64 = KILOPASCALS_PER_PSF * 144.0;

const fn unit(symbol: &'static str, factor: f64, names: &'static [&'static str]) -> Unit {
    Unit { symbol, factor, names }
}

/// Pressure of water, in kilopascals.
pub const PRESSURE: &[Unit] = &[
    unit("kPa", 1.0, &["kpa"]),
    unit("psi", KILOPASCALS_PER_PSI, &["psi", "lb/in2"]),
    unit("bar", 100.0, &["bar"]),
    unit("m water", STANDARD_GRAVITY, &["m water", "m", "m de agua"]),
];
/// Pressure on soil and from wind, in kilopascals.
pub const BEARING: &[Unit] = &[
    unit("kPa", 1.0, &["kpa", "kn/m2"]),
    unit("psf", KILOPASCALS_PER_PSF, &["psf", "lb/ft2"]),
    unit("Pa", 0.001, &["pa"]),
];
/// Rain in an hour, in millimetres an hour.
pub const INTENSITY: &[Unit] =
    &[unit("mm/h", 1.0, &["mm/h", "mm", "mm/hr"]), unit("in/h", MILLIMETRES_PER_INCH, &["in/h", "in", "in/hr", "\""])];
/// Water in a moment, in litres a minute.
pub const RATE: &[Unit] = &[
    unit("L/min", 1.0, &["l/min", "lpm", "l"]),
    unit("gal/min", LITRES_PER_US_GALLON, &["gal/min", "gpm", "gal"]),
    unit("imp gal/min", LITRES_PER_IMPERIAL_GALLON, &["imp gal/min", "gal/min", "gpm", "gal", "gal imp/min"]),
    unit("L/s", 60.0, &["l/s"]),
    unit("m³/h", 1000.0 / 60.0, &["m3/h", "m³/h"]),
];
/// Speed of water, in metres a second.
pub const SPEED: &[Unit] = &[unit("m/s", 1.0, &["m/s"]), unit("ft/s", METRES_PER_FOOT, &["ft/s", "fps"])];
/// Speed of wind, in metres a second.
pub const WIND: &[Unit] = &[
    unit("m/s", 1.0, &["m/s"]),
    unit("mph", METRES_PER_FOOT * 5280.0 / 3600.0, &["mph", "mi/h"]),
    unit("km/h", 1.0 / 3.6, &["km/h", "kph", "kmh"]),
    unit("kn", 1852.0 / 3600.0, &["kn", "kt", "knots"]),
];
/// Mass, in kilograms.
pub const MASS: &[Unit] =
    &[unit("kg", 1.0, &["kg"]), unit("lb", KILOGRAMS_PER_POUND, &["lb", "lbs", "pounds"]), unit("t", 1000.0, &["t"])];
/// Force, in kilonewtons.
pub const FORCE: &[Unit] = &[
    unit("kN", 1.0, &["kn"]),
    unit("lbf", KILONEWTONS_PER_POUND, &["lbf", "lb", "lbs"]),
    unit("kgf", STANDARD_GRAVITY / 1000.0, &["kgf", "kg"]),
];
/// Temperature, in degrees Celsius; see [`Unit::zero`].
pub const TEMPERATURE: &[Unit] = &[unit("°C", 1.0, &["°c", "c"]), unit(FAHRENHEIT, 5.0 / 9.0, &["°f", "f"])];
/// Power, in watts.
pub const POWER: &[Unit] = &[
    unit("W", 1.0, &["w"]),
    unit("kW", 1000.0, &["kw"]),
    unit("hp", 550.0 * METRES_PER_FOOT * KILONEWTONS_PER_POUND * 1000.0, &["hp"]),
];
/// Energy, in watt hours.
pub const ENERGY: &[Unit] = &[unit("Wh", 1.0, &["wh"]), unit("kWh", 1000.0, &["kwh"])];

const FAHRENHEIT: &str = "°F";

impl Unit {
    /// What this unit says where the kept unit says nought: 32 for degrees Fahrenheit, nought for all others.
    pub fn zero(&self) -> f64 {
        if self.symbol == FAHRENHEIT { 32.0 } else { 0.0 }
    }
}

/// The place of a kind's unit among its units, as the units chosen for others bring it.
pub(super) fn place(kind: Kind, units: &Units) -> usize {
    match kind {
        Kind::Intensity => usize::from(units.of(Kind::Depth).symbol == "in"),
        Kind::Rate => match units.of(Kind::Volume).symbol {
            "gal" => 1,
            "imp gal" => 2,
            _ => 0,
        },
        Kind::Pressure | Kind::Bearing | Kind::Speed | Kind::Wind | Kind::Mass | Kind::Force | Kind::Temperature => {
            usize::from(matches!(units.of(Kind::Length).symbol, "ft" | "in"))
        }
        _ => 0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Customary, shown, typed};

    #[test]
    fn factors_are_those_of_the_handbooks() {
        // pint 0.25: 1 psi = 6.894757293 kPa, 10 m of water = 98.0665 kPa. NIST SP 811 (2008) appendix B.8: 1 psf =
        // 47.88026 Pa, 1 lbf = 4.448222 N, 1 mph = 0.44704 m/s, 1 kn = 0.5144444 m/s, 1 hp = 745.6999 W (from memory).
        for (found, expected) in [
            (PRESSURE[1].factor, 6.894_757_293),
            (PRESSURE[3].factor, 9.806_65),
            (BEARING[1].factor, 0.047_880_26),
            (FORCE[1].factor, 0.004_448_222),
            (WIND[1].factor, 0.447_04),
            (WIND[3].factor, 0.514_444_4),
            (POWER[2].factor, 745.699_9),
        ] {
            assert!((found / expected - 1.0).abs() < 1e-6, "{found} is not {expected}");
        }
    }

    #[test]
    fn units_follow_and_come_back() {
        let us = Units::customary(Customary::Us);
        assert_eq!(shown::entered(0.0, Kind::Temperature, &us), "32\u{a0}°F");
        for kind in Kind::FOLLOWING {
            for set in Customary::ALL {
                let units = Units::customary(set);
                let text = shown::entered(37.0, kind, &units);
                let back = typed::quantity(&text, kind, &units).map(|typed| typed.si).unwrap_or_default();
                assert!((back / 37.0 - 1.0).abs() < 1e-3, "{text}: {back}");
            }
        }
        assert_eq!(us.of(Kind::Pressure).symbol, "psi");
        assert_eq!(Units::customary(Customary::Metric).of(Kind::Wind).symbol, "m/s");
    }
}

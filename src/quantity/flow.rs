//! Water used, lost or moved in a day, kept in litres a day.

use super::newtype::quantity;
use super::unit::Unit;
use super::volume::{LITRES_PER_IMPERIAL_GALLON, LITRES_PER_US_GALLON};

quantity! {
    /// A volume a day, in litres a day.
    Flow, litres_a_day, Flow
}

/// The units in which people give daily amounts; a bare volume is taken as a day's. Other ways to say it, and what is known by
/// the hour, the week or the month, are read by [`typed`](super::typed).
pub const UNITS: &[Unit] = &[
    Unit { symbol: "L/day", factor: 1.0, names: &["l/day", "l/d", "l", "litres", "liters", "l/día", "litros"] },
    Unit {
        symbol: "gal/day",
        factor: LITRES_PER_US_GALLON,
        names: &["gal/day", "gal/d", "gpd", "gal", "gallons", "us gal/day", "gal/día", "galones"],
    },
    Unit {
        symbol: "imp gal/day",
        factor: LITRES_PER_IMPERIAL_GALLON,
        names: &["imp gal/day", "imp gal/d", "imp gal", "gal/day", "gal/d", "gpd", "gal", "gallons", "gal imp/día"],
    },
    Unit {
        symbol: "m³/day",
        factor: 1000.0,
        names: &["m3/day", "m³/day", "m3/d", "m3", "m³", "kl/day", "m3/día", "m³/día"],
    },
];

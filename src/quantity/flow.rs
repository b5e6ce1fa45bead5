//! Water used, lost or moved in a day, kept in litres a day.

use super::newtype::quantity;
use super::plain::{DAYS_A_MONTH, HOURS_A_DAY};
use super::unit::Unit;
use super::volume::{LITRES_PER_IMPERIAL_GALLON, LITRES_PER_US_GALLON};

quantity! {
    /// A volume a day, in litres a day.
    Flow, litres_a_day, Flow
}

/// The units in which people give daily amounts; a bare volume is taken as a day's.
pub const UNITS: &[Unit] = &[
    Unit {
        symbol: "L/day",
        factor: 1.0,
        names: &[
            "l/day",
            "l/d",
            "l",
            "l a day",
            "l per day",
            "l al día",
            "litres a day",
            "liters a day",
            "litres per day",
            "liters per day",
            "litres",
            "liters",
            "l/día",
            "litros",
            "litros al día",
            "litros por día",
        ],
    },
    Unit {
        symbol: "gal/day",
        factor: LITRES_PER_US_GALLON,
        names: &[
            "gal/day",
            "gal/d",
            "gpd",
            "gal",
            "gal a day",
            "gal per day",
            "gallons a day",
            "gallons per day",
            "gallons",
            "us gal/day",
            "gal/día",
            "gal al día",
            "galones",
            "galones al día",
            "galones por día",
        ],
    },
    Unit {
        symbol: "imp gal/day",
        factor: LITRES_PER_IMPERIAL_GALLON,
        names: &[
            "imp gal/day",
            "imp gal/d",
            "imp gal",
            "gal/day",
            "gal/d",
            "gpd",
            "gal",
            "gal a day",
            "gal per day",
            "gallons a day",
            "gallons",
            "gal imp/día",
        ],
    },
    Unit {
        symbol: "m³/day",
        factor: 1000.0,
        names: &["m3/day", "m³/day", "m3/d", "m3", "m³", "kl/day", "m3/día", "m³/día"],
    },
];

const DAYS_A_WEEK: f64 = 7.0;

/// What people may type besides, for what is known by the hour, the week or the month; a gallon is that of `own`, the
/// person's own unit.
pub fn by_period(own: &Unit) -> impl Iterator<Item = &'static Unit> {
    let imperial = UNITS.iter().any(|unit| unit == own && unit.factor == LITRES_PER_IMPERIAL_GALLON);
    let first = if imperial { IMPERIAL_BY_PERIOD } else { &[] };
    first.iter().chain(BY_PERIOD)
}

const IMPERIAL_BY_PERIOD: &[Unit] = &[
    Unit { symbol: "imp gal/hour", factor: LITRES_PER_IMPERIAL_GALLON * HOURS_A_DAY, names: GALLONS_AN_HOUR },
    Unit { symbol: "imp gal/week", factor: LITRES_PER_IMPERIAL_GALLON / DAYS_A_WEEK, names: GALLONS_A_WEEK },
    Unit { symbol: "imp gal/month", factor: LITRES_PER_IMPERIAL_GALLON / DAYS_A_MONTH, names: GALLONS_A_MONTH },
];
const BY_PERIOD: &[Unit] = &[
    Unit { symbol: "gal/hour", factor: LITRES_PER_US_GALLON * HOURS_A_DAY, names: GALLONS_AN_HOUR },
    Unit { symbol: "gal/week", factor: LITRES_PER_US_GALLON / DAYS_A_WEEK, names: GALLONS_A_WEEK },
    Unit { symbol: "gal/month", factor: LITRES_PER_US_GALLON / DAYS_A_MONTH, names: GALLONS_A_MONTH },
    Unit {
        symbol: "m³/week",
        factor: 1000.0 / DAYS_A_WEEK,
        names: &["m3/week", "m³/week", "m3 a week", "kl/week", "m3/semana", "m³/semana", "m3 a la semana"],
    },
    Unit {
        symbol: "L/week",
        factor: 1.0 / DAYS_A_WEEK,
        names: &[
            "l/week",
            "l a week",
            "l per week",
            "litres a week",
            "liters a week",
            "litres per week",
            "liters per week",
            "l/semana",
            "litros a la semana",
            "litros por semana",
        ],
    },
    Unit {
        symbol: "L/month",
        factor: 1.0 / DAYS_A_MONTH,
        names: &[
            "l/month",
            "l a month",
            "l per month",
            "litres a month",
            "liters a month",
            "litres per month",
            "liters per month",
            "l/mes",
            "litros al mes",
            "litros por mes",
        ],
    },
    Unit {
        symbol: "m³/month",
        factor: 1000.0 / DAYS_A_MONTH,
        names: &["m3/month", "m³/month", "m3 a month", "kl/month", "m3/mes", "m³/mes", "m3 al mes"],
    },
    Unit {
        symbol: "L/hour",
        factor: HOURS_A_DAY,
        names: &[
            "l/h",
            "l/hour",
            "l/hr",
            "lph",
            "l an hour",
            "l per hour",
            "litres an hour",
            "liters an hour",
            "l/hora",
            "litros por hora",
        ],
    },
];

const GALLONS_AN_HOUR: &[&str] =
    &["gal/hour", "gal/h", "gph", "gal an hour", "gal per hour", "gallons an hour", "gal/hora", "galones por hora"];
const GALLONS_A_WEEK: &[&str] = &[
    "gal/week",
    "gal a week",
    "gal per week",
    "gallons a week",
    "gallons per week",
    "gal/semana",
    "galones a la semana",
    "galones por semana",
];
const GALLONS_A_MONTH: &[&str] = &[
    "gal/month",
    "gal a month",
    "gal per month",
    "gallons a month",
    "gallons per month",
    "gal/mes",
    "galones al mes",
    "galones por mes",
];

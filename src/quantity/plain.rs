//! Quantities with one unit only: shares, days, hours, counts.

use super::newtype::quantity;
use super::unit::Unit;

quantity! {
    /// A share of a whole: 0 to 1, shown in percent.
    Share, of_one, Share
}

quantity! {
    /// A number of days.
    Days, from_days, Days
}

quantity! {
    /// A number of hours.
    Hours, from_hours, Hours
}

quantity! {
    /// A count of people, animals or events.
    Count, number, Count
}

/// The mean length of a year in days, with a leap year every fourth.
pub const DAYS_A_YEAR: f64 = 365.25;
/// Days of a mean month, by which bills and meters go.
pub const DAYS_A_MONTH: f64 = DAYS_A_YEAR / 12.0;

/// Hours in a day.
pub const HOURS_A_DAY: f64 = 24.0;

/// Shares are given and shown in percent.
pub const SHARE_UNITS: &[Unit] =
    &[Unit { symbol: "%", factor: 0.01, names: &["%", "percent", "per cent", "por ciento"] }];
/// Days.
pub const DAY_UNITS: &[Unit] = &[Unit { symbol: "days", factor: 1.0, names: &["d", "day", "days", "día", "días"] }];
/// Hours.
pub const HOUR_UNITS: &[Unit] =
    &[Unit { symbol: "h", factor: 1.0, names: &["h", "hour", "hours", "hr", "hrs", "hora", "horas"] }];
/// Degrees of latitude: those of the south are below nought.
pub const LATITUDE_UNITS: &[Unit] = &[
    Unit { symbol: "°", factor: 1.0, names: &["°", "°n", "° n", "n", "north", "norte", "° north", "° norte"] },
    Unit { symbol: "° S", factor: -1.0, names: &["°s", "° s", "s", "south", "sur", "° south", "° sur"] },
];
/// Counts have no unit.
pub const COUNT_UNITS: &[Unit] = &[Unit { symbol: "", factor: 1.0, names: &[""] }];

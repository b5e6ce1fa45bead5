//! The units that the person wants: a symbol for each kind of quantity that has one named.

use crate::quantity::{Kind, Units};
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::object;

/// Reads units. A symbol or a kind that there isn't counts as not named.
///
/// # Errors
/// Where there is no object of symbols.
pub fn read(place: &Place<'_>) -> Read<Units> {
    let mut units = Units::default();
    for kind in Kind::SWITCHABLE {
        if let Some(symbol) = place.at_if_any(key(kind))? {
            units = units.with(kind, symbol.as_text()?);
        }
    }
    Ok(units)
}

/// Writes units.
pub fn write(units: &Units) -> Value {
    let mut named = Vec::new();
    for kind in Kind::SWITCHABLE {
        if let Some(unit) = units.named(kind) {
            named.push((key(kind), unit.symbol.into()));
        }
    }
    object(named)
}

fn key(kind: Kind) -> &'static str {
    match kind {
        Kind::Volume => "volume",
        Kind::Area => "area",
        Kind::Length => "length",
        Kind::Bore => "bore",
        Kind::Depth => "depth",
        Kind::Flow => "flow",
        _ => "",
    }
}

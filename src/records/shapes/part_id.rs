//! The names of parts.

use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::site::part::PartId;

/// The greatest number of a part in a file: new parts take greater ones.
const MOST: u32 = u32::MAX / 2;

/// The part named under a key.
pub(super) fn read(place: &Place<'_>, key: &str) -> Read<PartId> {
    one(&place.at(key)?)
}

/// The part named under a key, if one is.
pub(super) fn read_if_any(place: &Place<'_>, key: &str) -> Read<Option<PartId>> {
    match place.at_if_any(key)? {
        Some(place) => one(&place).map(Some),
        None => Ok(None),
    }
}

/// The part that this names.
pub(super) fn one(place: &Place<'_>) -> Read<PartId> {
    place.as_whole_number(MOST).map(PartId)
}

/// The part's number, or null.
pub(super) fn write_if_any(id: Option<PartId>) -> Value {
    id.map_or(Value::Null, |id| id.0.into())
}

//! The index, and the list of sites that are being taken in.

use super::units;
use crate::language::Language;
use crate::records::cupboard::{Index, SiteId};
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{list, object};

/// Reads the index.
///
/// # Errors
/// Where its shape is not that of any version.
pub fn read(place: &Place<'_>) -> Read<Index> {
    Ok(Index {
        sites: read_ids(&place.at("sites")?)?,
        open: match place.at_if_any("open")? {
            Some(open) => Some(read_id(&open)?),
            None => None,
        },
        units: units::read(&place.at("units")?)?,
        language: read_language(place)?,
        exported: match place.at_if_any("exported")? {
            Some(_) => Some(place.date("exported")?),
            None => None,
        },
    })
}

/// Reads the language that was chosen; one of a newer program is the device's own.
pub fn read_language(place: &Place<'_>) -> Read<Option<Language>> {
    Ok(match place.at_if_any("language")? {
        Some(tag) => Language::of_tag(tag.as_text()?),
        None => None,
    })
}

/// Writes the language that was chosen.
pub fn write_language(language: Option<Language>) -> Value {
    language.map_or(Value::Null, |language| language.tag().into())
}

/// Writes the index.
pub fn write(index: &Index) -> Value {
    object(vec![
        ("sites", write_ids(&index.sites)),
        ("open", index.open.map_or(Value::Null, |open| open.0.into())),
        ("units", units::write(&index.units)),
        ("language", write_language(index.language)),
        ("exported", index.exported.map_or(Value::Null, |day| day.to_string().into())),
    ])
}

/// Reads a list of sites.
///
/// # Errors
/// Where there is no list of whole numbers.
pub fn read_ids(place: &Place<'_>) -> Read<Vec<SiteId>> {
    place.as_list(read_id)
}

/// Writes a list of sites.
pub fn write_ids(ids: &[SiteId]) -> Value {
    list(ids, |id| id.0.into())
}

fn read_id(place: &Place<'_>) -> Read<SiteId> {
    place.as_whole_number(u32::MAX).map(SiteId)
}

//! Rain: a record of days, or twelve means.

use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{choice, list, number, object, twelve};
use crate::site::rain::{Normals, Rain, RainRecord};

/// The days of all years from which rain files are read, 1700 to 2200.
const MOST_DAYS: usize = 501 * 366;

/// Reads what a site knows of its rain.
///
/// # Errors
/// Where its shape is not that of any version.
pub fn read(place: &Place<'_>) -> Read<Rain> {
    let (name, held) = place.as_choice()?;
    Ok(match name {
        "record" => Rain::Record(RainRecord {
            source: held.text("source")?,
            start: held.date("start")?,
            depths_mm: held
                .at("depths_mm")?
                .as_list_of_most(MOST_DAYS, |day| if day.is_null() { Ok(None) } else { day.as_number().map(Some) })?,
        }),
        "normals" => Rain::Normals(Normals {
            source: held.text("source")?,
            totals_mm: held.twelve("totals_mm")?,
            rain_days: match held.at_if_any("rain_days")? {
                Some(days) => Some(days.as_twelve()?),
                None => None,
            },
        }),
        _ => return Err(place.unknown(name)),
    })
}

/// Writes what a site knows of its rain.
pub fn write(rain: &Rain) -> Value {
    match rain {
        Rain::Record(record) => choice(
            "record",
            object(vec![
                ("source", record.source.as_str().into()),
                ("start", record.start.to_string().into()),
                ("depths_mm", list(&record.depths_mm, |day| day.map_or(Value::Null, number))),
            ]),
        ),
        Rain::Normals(normals) => choice(
            "normals",
            object(vec![
                ("source", normals.source.as_str().into()),
                ("totals_mm", twelve(normals.totals_mm)),
                ("rain_days", normals.rain_days.map_or(Value::Null, twelve)),
            ]),
        ),
    }
}

//! Feeds and their diverters.

use super::part_id;
use crate::quantity::{Bore, Days, Hours, Share, Volume};
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{choice, number, object};
use crate::site::feed::{Diverter, Drain, Feed};

pub(super) fn read(place: &Place<'_>) -> Read<Feed> {
    Ok(Feed {
        id: part_id::read(place, "id")?,
        name: place.text("name")?,
        tank: part_id::read_if_any(place, "tank")?,
        capture: Share::of_one(place.number("capture")?),
        diverter: match place.at_if_any("diverter")? {
            Some(diverter) => Some(read_diverter(&diverter)?),
            None => None,
        },
    })
}

pub(super) fn write(feed: &Feed) -> Value {
    object(vec![
        ("id", feed.id.0.into()),
        ("name", feed.name.as_str().into()),
        ("tank", part_id::write_if_any(feed.tank)),
        ("capture", number(feed.capture.get())),
        ("diverter", feed.diverter.as_ref().map_or(Value::Null, write_diverter)),
    ])
}

fn read_diverter(place: &Place<'_>) -> Read<Diverter> {
    Ok(Diverter {
        volume: Volume::litres(place.number("volume")?),
        chamber: Bore::metres(place.number("chamber")?),
        drain: read_drain(&place.at("drain")?)?,
        storm: Hours::from_hours(place.number("storm")?),
    })
}

fn write_diverter(diverter: &Diverter) -> Value {
    object(vec![
        ("volume", number(diverter.volume.get())),
        ("chamber", number(diverter.chamber.get())),
        ("drain", write_drain(diverter.drain)),
        ("storm", number(diverter.storm.get())),
    ])
}

fn read_drain(place: &Place<'_>) -> Read<Drain> {
    let (name, held) = place.as_choice()?;
    Ok(match name {
        "hole" => Drain::Hole { diameter: Bore::metres(held.number("diameter")?) },
        "by_hand" => Drain::ByHand { every: Days::from_days(held.number("every")?) },
        "never" => Drain::Never,
        _ => return Err(place.unknown(name)),
    })
}

fn write_drain(drain: Drain) -> Value {
    match drain {
        Drain::Hole { diameter } => choice("hole", object(vec![("diameter", number(diameter.get()))])),
        Drain::ByHand { every } => choice("by_hand", object(vec![("every", number(every.get()))])),
        Drain::Never => "never".into(),
    }
}

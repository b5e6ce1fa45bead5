//! Uses.

use super::{barriers, garden, part_id};
use crate::quantity::{Count, Flow, Volume};
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{choice, list, number, object, twelve};
use crate::site::uses::{Amount, Class, Use};

pub(super) fn read(place: &Place<'_>) -> Read<Use> {
    Ok(Use {
        id: part_id::read(place, "id")?,
        name: place.text("name")?,
        class: place.at("class")?.as_one_of(&Class::ALL, class_name)?,
        tank: part_id::read_if_any(place, "tank")?,
        amount: read_amount(&place.at("amount")?)?,
        outdoor: place.truth("outdoor")?,
        barriers: barriers::read(place)?,
    })
}

pub(super) fn write(using: &Use) -> Value {
    object(vec![
        ("id", using.id.0.into()),
        ("name", using.name.as_str().into()),
        ("class", class_name(using.class).into()),
        ("tank", part_id::write_if_any(using.tank)),
        ("amount", write_amount(&using.amount)),
        ("outdoor", using.outdoor.into()),
        ("barriers", list(&using.barriers, barriers::write)),
    ])
}

fn class_name(class: Class) -> &'static str {
    match class {
        Class::Drinking => "drinking",
        Class::House => "house",
        Class::Garden => "garden",
        Class::Animals => "animals",
        Class::Travel => "travel",
    }
}

fn read_amount(place: &Place<'_>) -> Read<Amount> {
    let (name, held) = place.as_choice()?;
    Ok(match name {
        "daily" => Amount::Daily(Flow::litres_a_day(held.as_number()?)),
        "per_head" => Amount::PerHead {
            each: Flow::litres_a_day(held.number("each")?),
            heads: Count::number(held.number("heads")?),
        },
        "monthly" => Amount::Monthly(held.as_twelve()?.map(Flow::litres_a_day)),
        "per_event" => Amount::PerEvent {
            each: Volume::litres(held.number("each")?),
            a_week: Count::number(held.number("a_week")?),
        },
        "garden" => Amount::Garden(garden::read(&held)?),
        _ => return Err(place.unknown(name)),
    })
}

fn write_amount(amount: &Amount) -> Value {
    match amount {
        Amount::Daily(flow) => choice("daily", number(flow.get())),
        Amount::PerHead { each, heads } => {
            choice("per_head", object(vec![("each", number(each.get())), ("heads", number(heads.get()))]))
        }
        Amount::Monthly(flows) => choice("monthly", twelve(flows.map(Flow::get))),
        Amount::PerEvent { each, a_week } => {
            choice("per_event", object(vec![("each", number(each.get())), ("a_week", number(a_week.get()))]))
        }
        Amount::Garden(garden) => choice("garden", garden::write(garden)),
    }
}

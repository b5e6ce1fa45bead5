//! What joins tanks to each other and to the world: trunk lines, pumps, hauling, rationing.

use super::part_id;
use crate::quantity::{Days, Flow, Money, Share, Volume};
use crate::records::json::Value;
use crate::records::place::{Fault, Place, Read};
use crate::records::written::{list, number, object};
use crate::site::hauling::Hauling;
use crate::site::part::PartId;
use crate::site::pump::Pump;
use crate::site::rationing::{Cut, RationStep};
use crate::site::trunk::TrunkLine;

pub(super) fn read_trunk_line(place: &Place<'_>) -> Read<TrunkLine> {
    Ok(TrunkLine {
        id: part_id::read(place, "id")?,
        name: place.text("name")?,
        ends: read_ends(&place.at("ends")?)?,
        open: place.truth("open")?,
    })
}

pub(super) fn write_trunk_line(line: &TrunkLine) -> Value {
    object(vec![
        ("id", line.id.0.into()),
        ("name", line.name.as_str().into()),
        ("ends", list(&line.ends, |end| part_id::write_if_any(*end))),
        ("open", line.open.into()),
    ])
}

fn read_ends(place: &Place<'_>) -> Read<[Option<PartId>; 2]> {
    let ends = place.as_list(|end| if end.is_null() { Ok(None) } else { part_id::one(end).map(Some) })?;
    ends.try_into().map_err(|ends: Vec<_>| place.error(Fault::Length { wanted: 2, found: ends.len() }))
}

pub(super) fn read_pump(place: &Place<'_>) -> Read<Pump> {
    Ok(Pump {
        id: part_id::read(place, "id")?,
        name: place.text("name")?,
        from: part_id::read_if_any(place, "from")?,
        to: part_id::read_if_any(place, "to")?,
        start: Share::of_one(place.number("start")?),
        stop: Share::of_one(place.number("stop")?),
        limit: Flow::litres_a_day(place.number("limit")?),
    })
}

pub(super) fn write_pump(pump: &Pump) -> Value {
    object(vec![
        ("id", pump.id.0.into()),
        ("name", pump.name.as_str().into()),
        ("from", part_id::write_if_any(pump.from)),
        ("to", part_id::write_if_any(pump.to)),
        ("start", number(pump.start.get())),
        ("stop", number(pump.stop.get())),
        ("limit", number(pump.limit.get())),
    ])
}

pub(super) fn read_hauling(place: &Place<'_>) -> Read<Hauling> {
    Ok(Hauling {
        id: part_id::read(place, "id")?,
        name: place.text("name")?,
        tank: part_id::read_if_any(place, "tank")?,
        trigger: Share::of_one(place.number("trigger")?),
        load: Volume::litres(place.number("load")?),
        price: Money::coins(place.number("price")?),
        notice: Days::from_days(place.number("notice")?),
    })
}

pub(super) fn write_hauling(hauling: &Hauling) -> Value {
    object(vec![
        ("id", hauling.id.0.into()),
        ("name", hauling.name.as_str().into()),
        ("tank", part_id::write_if_any(hauling.tank)),
        ("trigger", number(hauling.trigger.get())),
        ("load", number(hauling.load.get())),
        ("price", number(hauling.price.get())),
        ("notice", number(hauling.notice.get())),
    ])
}

pub(super) fn read_ration(place: &Place<'_>) -> Read<RationStep> {
    Ok(RationStep {
        id: part_id::read(place, "id")?,
        name: place.text("name")?,
        tank: part_id::read_if_any(place, "tank")?,
        below: Share::of_one(place.number("below")?),
        cuts: place.list("cuts", read_cut)?,
    })
}

pub(super) fn write_ration(step: &RationStep) -> Value {
    object(vec![
        ("id", step.id.0.into()),
        ("name", step.name.as_str().into()),
        ("tank", part_id::write_if_any(step.tank)),
        ("below", number(step.below.get())),
        ("cuts", list(&step.cuts, write_cut)),
    ])
}

fn read_cut(place: &Place<'_>) -> Read<Cut> {
    Ok(Cut { using: part_id::read(place, "use")?, share: Share::of_one(place.number("share")?) })
}

fn write_cut(cut: &Cut) -> Value {
    object(vec![("use", cut.using.0.into()), ("share", number(cut.share.get()))])
}

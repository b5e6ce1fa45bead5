//! The lists of parts.

use super::{details, feed, garden, habits, joints, part_id, section, tank, uses};
use crate::records::json::Value;
use crate::records::place::{Fault, Place, Read};
use crate::records::written::{list, object};
use crate::site::system::System;

/// More parts than any house has: what runs through all of them for each stays quick.
const MOST_PARTS: usize = 1000;

pub(super) fn read(place: &Place<'_>) -> Read<System> {
    let system = read_parts(place)?;
    let lists =
        [system.sections.len(), system.feeds.len(), system.tanks.len(), system.trunk_lines.len(), system.uses.len()];
    let rest = [system.pumps.len(), system.hauling.len(), system.rationing.len()];
    if lists.iter().chain(&rest).sum::<usize>() > MOST_PARTS {
        return Err(place.error(Fault::OutOfRange));
    }
    Ok(system)
}

fn read_parts(place: &Place<'_>) -> Read<System> {
    Ok(System {
        sections: place.list("sections", section::read)?,
        feeds: place.list("feeds", feed::read)?,
        tanks: place.list("tanks", tank::read)?,
        trunk_lines: place.list("trunk_lines", joints::read_trunk_line)?,
        pumps: place.list("pumps", joints::read_pump)?,
        uses: place.list("uses", uses::read)?,
        hauling: place.list("hauling", joints::read_hauling)?,
        rationing: match place.at_if_any("rationing")? {
            Some(steps) => steps.as_list(joints::read_ration)?,
            None => Vec::new(),
        },
        climate: match place.at_if_any("climate")? {
            Some(climate) => Some(garden::read_climate(&climate)?),
            None => None,
        },
        habits: match place.at_if_any("habits")? {
            Some(habits) => Some(habits::read(&habits)?),
            None => None,
        },
        details: details::read(place)?,
        greatest_gone: match place.at_if_any("greatest_gone")? {
            Some(greatest) => part_id::one(&greatest)?.0,
            None => 0,
        },
    })
}

pub(super) fn write(system: &System) -> Value {
    object(vec![
        ("sections", list(&system.sections, section::write)),
        ("feeds", list(&system.feeds, feed::write)),
        ("tanks", list(&system.tanks, tank::write)),
        ("trunk_lines", list(&system.trunk_lines, joints::write_trunk_line)),
        ("pumps", list(&system.pumps, joints::write_pump)),
        ("uses", list(&system.uses, uses::write)),
        ("hauling", list(&system.hauling, joints::write_hauling)),
        ("rationing", list(&system.rationing, joints::write_ration)),
        ("climate", system.climate.as_ref().map_or(Value::Null, garden::write_climate)),
        ("habits", system.habits.as_ref().map_or(Value::Null, habits::write)),
        ("details", list(&system.details.0, details::write)),
        ("greatest_gone", system.greatest_gone.into()),
    ])
}

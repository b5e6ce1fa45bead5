//! The diary: a list of lines. What an entry tells stands under one key, `what`; of one that was taken out it says so.

use super::part_id;
use crate::quantity::{Depth, Hours, Length, Money, Range, Share, Volume};
use crate::records::json::Value;
use crate::records::place::{Fault, Place, Read};
use crate::records::written::{choice, list, number, object};
use crate::site::diary::{
    DAY_RAIN, DELIVERY, Entry, EntryId, FOUND, LAST_MOMENT, LEVEL_DEPTH, LEVEL_VOLUME, LONGEST_NOTE, Level, Line,
    METER, Parameter, Removed, TestResult, Told, UNDRAWN, Water, YEARS,
};
use crate::site::work::Task;

/// What a price may be.
const PRICE: Range = Range::new(0.0, 1e9);
/// A share: a gauge may read a little over its rim.
const LEVEL_SHARE: Range = Range::new(0.0, 2.0);

/// What stands under `what` in place of what an entry that was taken out told.
const REMOVED: &str = "removed";

/// Reads lines, in whatever order they stand.
///
/// # Errors
/// Where their shape is not that of any version, or a value is beyond what it may be.
pub fn read(place: &Place<'_>) -> Read<Vec<Line>> {
    place.as_list_of_most(usize::MAX, read_line)
}

/// Writes lines.
pub fn write(lines: &[Line]) -> Value {
    list(lines, write_line)
}

fn read_line(place: &Place<'_>) -> Read<Line> {
    use chrono::Datelike;
    let id = EntryId(place.large_number("id", LAST_MOMENT)?);
    let edited = place.at_if_any("edited")?.map(|_| place.large_number("edited", LAST_MOMENT)).transpose()?;
    let edited = edited.unwrap_or(id.0);
    let date = place.date("on")?;
    if !YEARS.contains(&date.year()) {
        return Err(place.at("on")?.error(Fault::OutOfRange));
    }
    let what = place.at("what")?;
    if matches!(what.as_choice(), Ok((REMOVED, _))) {
        return Ok(Line::Removed(Removed { id, edited, date }));
    }
    let note = match place.at_if_any("note")? {
        Some(note) => note.as_text()?.to_owned(),
        None => String::new(),
    };
    if note.len() > LONGEST_NOTE {
        return Err(place.at("note")?.error(Fault::OutOfRange));
    }
    Ok(Line::Entry(Entry { id, edited, date, told: read_told(&what)?, note }))
}

fn write_line(line: &Line) -> Value {
    let (id, edited) = (line.id().0, line.edited());
    let (date, what, note) = match line {
        Line::Entry(entry) => (entry.date, write_told(&entry.told), entry.note.as_str()),
        Line::Removed(removed) => (removed.date, REMOVED.into(), ""),
    };
    let mut values = vec![("id", moment(id)), ("on", date.to_string().into())];
    if edited != id {
        values.push(("edited", moment(edited)));
    }
    values.push(("what", what));
    if !note.is_empty() {
        values.push(("note", note.into()));
    }
    object(values)
}

/// A moment or an identity: whole numbers up to [`LAST_MOMENT`] are exact.
pub(super) fn moment(moment: u64) -> Value {
    #[expect(clippy::cast_precision_loss, reason = "no larger moment is taken in or made")]
    number(moment as f64)
}

fn read_told(place: &Place<'_>) -> Read<Told> {
    let (name, held) = place.as_choice()?;
    Ok(match name {
        "level" => {
            let of = match held.at_if_any("store")? {
                Some(store) => Water::Store(part_id::one(&store)?),
                None => Water::Tank(part_id::read(&held, "tank")?),
            };
            let undrawn = match held.at_if_any("undrawn_hours")? {
                Some(hours) => Some(Hours::from_hours(hours.as_number_in(UNDRAWN)?)),
                None => None,
            };
            let joined = match held.at_if_any("joined")? {
                Some(tanks) => tanks.as_list(part_id::one)?,
                None => Vec::new(),
            };
            Told::Level { of, level: read_level(&held.at("at")?)?, undrawn, joined }
        }
        "rain" => Told::Rain(Depth::millimetres(held.as_number_in(DAY_RAIN)?)),
        "meter" => Told::Meter {
            of: part_id::read_if_any(&held, "of")?,
            reading: Volume::litres(held.at("reading")?.as_number_in(METER)?),
        },
        "delivery" => Told::Delivery {
            to: part_id::read_if_any(&held, "to")?,
            volume: Volume::litres(held.at("volume")?.as_number_in(DELIVERY)?),
            price: match held.at_if_any("price")? {
                Some(price) => Some(Money::coins(price.as_number_in(PRICE)?)),
                None => None,
            },
        },
        "work" => Told::Work {
            on: part_id::read_if_any(&held, "on")?,
            task: held.at("task")?.as_one_of(&Task::ALL, task_name)?,
        },
        "test" => Told::Test {
            at: part_id::read_if_any(&held, "at")?,
            parameter: held.at("parameter")?.as_one_of(&Parameter::ALL, parameter_name)?,
            found: read_found(&held.at("found")?)?,
        },
        "note" => Told::Note,
        _ => return Err(place.unknown(name)),
    })
}

fn write_told(told: &Told) -> Value {
    let part = |id: Option<crate::site::part::PartId>| part_id::write_if_any(id);
    match told {
        Told::Level { of, level, undrawn, joined } => {
            let key = match of {
                Water::Tank(_) => "tank",
                Water::Store(_) => "store",
            };
            let mut values = vec![(key, of.tank().0.into()), ("at", write_level(*level))];
            values.extend(undrawn.map(|hours| ("undrawn_hours", number(hours.get()))));
            let tanks = || Value::List(joined.iter().map(|tank| tank.0.into()).collect());
            values.extend((!joined.is_empty()).then(|| ("joined", tanks())));
            choice("level", object(values))
        }
        Told::Rain(depth) => choice("rain", number(depth.get())),
        Told::Meter { of, reading } => {
            choice("meter", object(vec![("of", part(*of)), ("reading", number(reading.get()))]))
        }
        Told::Delivery { to, volume, price } => choice(
            "delivery",
            object(vec![
                ("to", part(*to)),
                ("volume", number(volume.get())),
                ("price", price.map_or(Value::Null, |price| number(price.get()))),
            ]),
        ),
        Told::Work { on, task } => choice("work", object(vec![("on", part(*on)), ("task", task_name(*task).into())])),
        Told::Test { at, parameter, found } => choice(
            "test",
            object(vec![
                ("at", part(*at)),
                ("parameter", parameter_name(*parameter).into()),
                ("found", write_found(*found)),
            ]),
        ),
        Told::Note => "note".into(),
    }
}

fn read_level(place: &Place<'_>) -> Read<Level> {
    let (name, held) = place.as_choice()?;
    Ok(match name {
        "depth" => Level::Depth(Length::metres(held.as_number_in(LEVEL_DEPTH)?)),
        "share" => Level::Share(Share::of_one(held.as_number_in(LEVEL_SHARE)?)),
        "volume" => Level::Volume(Volume::litres(held.as_number_in(LEVEL_VOLUME)?)),
        "full" => Level::Full,
        _ => return Err(place.unknown(name)),
    })
}

fn write_level(level: Level) -> Value {
    match level {
        Level::Depth(depth) => choice("depth", number(depth.get())),
        Level::Share(share) => choice("share", number(share.get())),
        Level::Volume(volume) => choice("volume", number(volume.get())),
        Level::Full => "full".into(),
    }
}

fn read_found(place: &Place<'_>) -> Read<TestResult> {
    let (name, held) = place.as_choice()?;
    Ok(match name {
        "value" => TestResult::Value(held.as_number_in(FOUND)?),
        "below" => TestResult::Below(held.as_number_in(FOUND)?),
        "present" => TestResult::Present,
        "absent" => TestResult::Absent,
        _ => return Err(place.unknown(name)),
    })
}

fn write_found(found: TestResult) -> Value {
    match found {
        TestResult::Value(value) => choice("value", number(value)),
        TestResult::Below(value) => choice("below", number(value)),
        TestResult::Present => "present".into(),
        TestResult::Absent => "absent".into(),
    }
}

/// What a task is called in a file.
pub(super) fn task_name(task: Task) -> &'static str {
    match task {
        Task::Roof => "roof",
        Task::Gutter => "gutter",
        Task::Screen => "screen",
        Task::Diverter => "diverter",
        Task::Hole => "hole",
        Task::InletMesh => "inlet_mesh",
        Task::TankLook => "tank_look",
        Task::Desludging => "desludging",
        Task::Disinfection => "disinfection",
        Task::Lid => "lid",
        Task::Anchors => "anchors",
        Task::PumpStrainer => "pump_strainer",
        Task::Cartridge => "cartridge",
        Task::Ceramic => "ceramic",
        Task::Lamp => "lamp",
        Task::Sleeve => "sleeve",
        Task::WaterTest => "water_test",
        Task::Joints => "joints",
        Task::Other => "other",
    }
}

fn parameter_name(parameter: Parameter) -> &'static str {
    match parameter {
        Parameter::EColi => "e_coli",
        Parameter::Coliforms => "coliforms",
        Parameter::Turbidity => "turbidity",
        Parameter::Ph => "ph",
        Parameter::FreeChlorine => "free_chlorine",
        Parameter::Lead => "lead",
        Parameter::Copper => "copper",
        Parameter::Zinc => "zinc",
        Parameter::Cadmium => "cadmium",
        Parameter::Arsenic => "arsenic",
        Parameter::Chromium => "chromium",
        Parameter::Iron => "iron",
        Parameter::Manganese => "manganese",
        Parameter::Aluminium => "aluminium",
        Parameter::Benzopyrene => "benzo_a_pyrene",
        Parameter::Asbestos => "asbestos",
        Parameter::Nitrate => "nitrate",
        Parameter::Conductivity => "conductivity",
        Parameter::Transmittance => "transmittance",
        Parameter::Other => "other",
    }
}

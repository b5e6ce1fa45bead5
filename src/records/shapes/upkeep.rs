//! Intervals of upkeep that the household chose.

use super::{diary, part_id};
use crate::quantity::Range;
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{list, number, object};
use crate::site::upkeep::{DAYS, Interval, Job, LITRES, RAIN_MM, Upkeep};
use crate::site::work::Task;

pub(super) fn read(place: &Place<'_>) -> Read<Upkeep> {
    Ok(Upkeep(place.as_list(read_one)?))
}

pub(super) fn write(upkeep: &Upkeep) -> Value {
    list(&upkeep.0, write_one)
}

fn read_one(place: &Place<'_>) -> Read<(Job, Interval)> {
    let measure = |key: &str, range: Range| match place.at_if_any(key)? {
        Some(value) => value.as_number_in(range).map(Some),
        None => Ok(None),
    };
    let job =
        Job { task: place.at("task")?.as_one_of(&Task::ALL, diary::task_name)?, part: part_id::read(place, "part")? };
    let interval = Interval {
        days: measure("days", DAYS)?,
        rain_mm: measure("rain_mm", RAIN_MM)?,
        litres: measure("litres", LITRES)?,
    };
    Ok((job, interval))
}

fn write_one((job, interval): &(Job, Interval)) -> Value {
    let mut values = vec![("task", diary::task_name(job.task).into()), ("part", job.part.0.into())];
    for (key, value) in [("days", interval.days), ("rain_mm", interval.rain_mm), ("litres", interval.litres)] {
        if let Some(value) = value {
            values.push((key, number(value)));
        }
    }
    object(values)
}

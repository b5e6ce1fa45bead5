//! Tanks.

use super::{part_id, tank_shape};
use crate::quantity::{Depth, Flow, Length};
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{choice, number, object, twelve};
use crate::site::tank::{Build, Cover, OverflowTo, Tank};

pub(super) fn read(place: &Place<'_>) -> Read<Tank> {
    Ok(Tank {
        id: part_id::read(place, "id")?,
        name: place.text("name")?,
        build: place.at("build")?.as_one_of(&Build::ALL, build_name)?,
        shape: tank_shape::read(&place.at("shape")?)?,
        floor: Length::metres(place.number("floor")?),
        outlet: Length::metres(place.number("outlet")?),
        overflow: Length::metres(place.number("overflow")?),
        overflow_to: read_overflow(&place.at("overflow_to")?)?,
        leak: Flow::litres_a_day(place.number("leak")?),
        cover: read_cover(&place.at("cover")?)?,
    })
}

pub(super) fn write(tank: &Tank) -> Value {
    object(vec![
        ("id", tank.id.0.into()),
        ("name", tank.name.as_str().into()),
        ("build", build_name(tank.build).into()),
        ("shape", tank_shape::write(&tank.shape)),
        ("floor", number(tank.floor.get())),
        ("outlet", number(tank.outlet.get())),
        ("overflow", number(tank.overflow.get())),
        ("overflow_to", write_overflow(tank.overflow_to)),
        ("leak", number(tank.leak.get())),
        ("cover", write_cover(&tank.cover)),
    ])
}

fn build_name(build: Build) -> &'static str {
    match build {
        Build::Barrel => "barrel",
        Build::AboveGround => "above_ground",
        Build::Bladder => "bladder",
        Build::Cistern => "cistern",
    }
}

fn read_overflow(place: &Place<'_>) -> Read<OverflowTo> {
    let (name, held) = place.as_choice()?;
    Ok(match name {
        "ground" => OverflowTo::Ground,
        "garden" => OverflowTo::Garden,
        "tank" => OverflowTo::Tank(part_id::one(&held)?),
        _ => return Err(place.unknown(name)),
    })
}

fn write_overflow(to: OverflowTo) -> Value {
    match to {
        OverflowTo::Ground => "ground".into(),
        OverflowTo::Garden => "garden".into(),
        OverflowTo::Tank(id) => choice("tank", id.0.into()),
    }
}

fn read_cover(place: &Place<'_>) -> Read<Cover> {
    let (name, held) = place.as_choice()?;
    Ok(match name {
        "covered" => Cover::Covered,
        "uncovered" => Cover::Uncovered { evaporation: held.twelve("evaporation")?.map(Depth::millimetres) },
        _ => return Err(place.unknown(name)),
    })
}

fn write_cover(cover: &Cover) -> Value {
    match cover {
        Cover::Covered => "covered".into(),
        Cover::Uncovered { evaporation } => {
            choice("uncovered", object(vec![("evaporation", twelve(evaporation.map(Depth::get)))]))
        }
    }
}

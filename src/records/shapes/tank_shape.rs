//! Shapes of tanks.

use crate::quantity::{Length, Volume};
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{choice, list, number, object};
use crate::site::{Shape, TableRow};

pub(super) fn read(place: &Place<'_>) -> Read<Shape> {
    let (name, held) = place.as_choice()?;
    let metres = |key| held.number(key).map(Length::metres);
    Ok(match name {
        "upright_cylinder" => Shape::UprightCylinder { diameter: metres("diameter")?, height: metres("height")? },
        "box" => Shape::Box { length: metres("length")?, width: metres("width")?, height: metres("height")? },
        "lying_cylinder" => Shape::LyingCylinder { diameter: metres("diameter")?, length: metres("length")? },
        "cone_bottom" => Shape::ConeBottom {
            diameter: metres("diameter")?,
            cone_height: metres("cone_height")?,
            height: metres("height")?,
        },
        "table" => Shape::Table(held.as_list(read_row)?),
        _ => return Err(place.unknown(name)),
    })
}

pub(super) fn write(shape: &Shape) -> Value {
    match shape {
        Shape::UprightCylinder { diameter, height } => {
            choice("upright_cylinder", lengths(&[("diameter", *diameter), ("height", *height)]))
        }
        Shape::Box { length, width, height } => {
            choice("box", lengths(&[("length", *length), ("width", *width), ("height", *height)]))
        }
        Shape::LyingCylinder { diameter, length } => {
            choice("lying_cylinder", lengths(&[("diameter", *diameter), ("length", *length)]))
        }
        Shape::ConeBottom { diameter, cone_height, height } => choice(
            "cone_bottom",
            lengths(&[("diameter", *diameter), ("cone_height", *cone_height), ("height", *height)]),
        ),
        Shape::Table(rows) => choice("table", list(rows, write_row)),
    }
}

fn lengths(lengths: &[(&'static str, Length)]) -> Value {
    object(lengths.iter().map(|(key, length)| (*key, number(length.get()))).collect())
}

fn read_row(place: &Place<'_>) -> Read<TableRow> {
    Ok(TableRow { depth: Length::metres(place.number("depth")?), volume: Volume::litres(place.number("volume")?) })
}

fn write_row(row: &TableRow) -> Value {
    object(vec![("depth", number(row.depth.get())), ("volume", number(row.volume.get()))])
}

//! Roof sections.

use super::part_id;
use crate::quantity::{Area, Depth, Share};
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{list, number, object};
use crate::site::roof::{Material, Outlet, RoofSection};

pub(super) fn read(place: &Place<'_>) -> Read<RoofSection> {
    Ok(RoofSection {
        id: part_id::read(place, "id")?,
        name: place.text("name")?,
        material: place.at("material")?.as_one_of(&Material::ALL, material_name)?,
        area: Area::square_metres(place.number("area")?),
        runoff_coefficient: Share::of_one(place.number("runoff_coefficient")?),
        wetting_loss: Depth::millimetres(place.number("wetting_loss")?),
        outlets: place.list("outlets", read_outlet)?,
    })
}

pub(super) fn write(section: &RoofSection) -> Value {
    object(vec![
        ("id", section.id.0.into()),
        ("name", section.name.as_str().into()),
        ("material", material_name(section.material).into()),
        ("area", number(section.area.get())),
        ("runoff_coefficient", number(section.runoff_coefficient.get())),
        ("wetting_loss", number(section.wetting_loss.get())),
        ("outlets", list(&section.outlets, write_outlet)),
    ])
}

fn read_outlet(place: &Place<'_>) -> Read<Outlet> {
    Ok(Outlet { feed: part_id::read(place, "feed")?, share: Share::of_one(place.number("share")?) })
}

fn write_outlet(outlet: &Outlet) -> Value {
    object(vec![("feed", outlet.feed.0.into()), ("share", number(outlet.share.get()))])
}

fn material_name(material: Material) -> &'static str {
    match material {
        Material::Metal => "metal",
        Material::Tile => "tile",
        Material::Shingle => "shingle",
        Material::Concrete => "concrete",
        Material::FlatGravel => "flat_gravel",
        Material::Planted => "planted",
        Material::Other => "other",
    }
}

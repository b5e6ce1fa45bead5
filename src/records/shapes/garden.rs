//! Gardens by the weather, and the climate that they stand in.

use crate::quantity::{Area, Count, Length, Share};
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{choice, number, object, twelve};
use crate::site::climate::Climate;
use crate::site::garden::{Crop, Garden, Soil, Watering};

pub(super) fn read(place: &Place<'_>) -> Read<Garden> {
    Ok(Garden {
        area: Area::square_metres(place.number("area")?),
        crop: place.at("crop")?.as_one_of(&Crop::ALL, crop_name)?,
        crop_coefficient: Count::number(place.number("crop_coefficient")?),
        grows_from: month(place, "grows_from")?,
        grows_to: month(place, "grows_to")?,
        soil: place.at("soil")?.as_one_of(&Soil::ALL, soil_name)?,
        available_water: Share::of_one(place.number("available_water")?),
        root_depth: Length::metres(place.number("root_depth")?),
        depletion: Share::of_one(place.number("depletion")?),
        watering: place.at("watering")?.as_one_of(&Watering::ALL, watering_name)?,
        efficiency: Share::of_one(place.number("efficiency")?),
    })
}

pub(super) fn write(garden: &Garden) -> Value {
    object(vec![
        ("area", number(garden.area.get())),
        ("crop", crop_name(garden.crop).into()),
        ("crop_coefficient", number(garden.crop_coefficient.get())),
        ("grows_from", garden.grows_from.into()),
        ("grows_to", garden.grows_to.into()),
        ("soil", soil_name(garden.soil).into()),
        ("available_water", number(garden.available_water.get())),
        ("root_depth", number(garden.root_depth.get())),
        ("depletion", number(garden.depletion.get())),
        ("watering", watering_name(garden.watering).into()),
        ("efficiency", number(garden.efficiency.get())),
    ])
}

/// A month, January being 0.
#[expect(clippy::cast_possible_truncation, reason = "no larger number is read")]
fn month(place: &Place<'_>, key: &str) -> Read<u8> {
    Ok(place.at(key)?.as_whole_number(11)? as u8)
}

pub(super) fn read_climate(place: &Place<'_>) -> Read<Climate> {
    let (name, held) = place.as_choice()?;
    let climate = match name {
        "reference_et" => Climate::ReferenceEt { mm_a_day: held.as_twelve()? },
        "temperatures" => Climate::Temperatures {
            latitude: held.number("latitude")?,
            least_c: held.twelve("least_c")?,
            greatest_c: held.twelve("greatest_c")?,
        },
        _ => return Err(place.unknown(name)),
    };
    Ok(climate.unless_all_nought())
}

pub(super) fn write_climate(climate: &Climate) -> Value {
    match climate {
        Climate::ReferenceEt { mm_a_day } => choice("reference_et", twelve(*mm_a_day)),
        Climate::Temperatures { latitude, least_c, greatest_c } => choice(
            "temperatures",
            object(vec![
                ("latitude", number(*latitude)),
                ("least_c", twelve(*least_c)),
                ("greatest_c", twelve(*greatest_c)),
            ]),
        ),
    }
}

fn crop_name(crop: Crop) -> &'static str {
    match crop {
        Crop::Vegetables => "vegetables",
        Crop::Tomatoes => "tomatoes",
        Crop::Beans => "beans",
        Crop::Squash => "squash",
        Crop::Berries => "berries",
        Crop::FruitTrees => "fruit_trees",
        Crop::CoolLawn => "cool_lawn",
        Crop::WarmLawn => "warm_lawn",
        Crop::Other => "other",
    }
}

fn soil_name(soil: Soil) -> &'static str {
    match soil {
        Soil::Sand => "sand",
        Soil::SandyLoam => "sandy_loam",
        Soil::Loam => "loam",
        Soil::SiltLoam => "silt_loam",
        Soil::Clay => "clay",
        Soil::Other => "other",
    }
}

fn watering_name(watering: Watering) -> &'static str {
    match watering {
        Watering::Drip => "drip",
        Watering::ByHand => "by_hand",
        Watering::Sprinkler => "sprinkler",
        Watering::Furrow => "furrow",
        Watering::Other => "other",
    }
}

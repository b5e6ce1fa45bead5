//! Words of gardens by the weather, their climate, and rationing.

use super::{count, number_text};
use crate::engine::balance::garden::GardenTally;
use crate::engine::balance::ration::RationTally;
use crate::quantity::{Kind, Units, shown};
use crate::site::climate::ClimateValue;
use crate::site::garden::{Crop, Soil, Watering};

/// What grows.
pub const fn crop(crop: Crop) -> &'static str {
    match crop {
        Crop::Vegetables => "Leaf and root vegetables",
        Crop::Tomatoes => "Tomatoes, peppers",
        Crop::Beans => "Beans, peas",
        Crop::Squash => "Squash, cucumbers, melons",
        Crop::Berries => "Berry bushes",
        Crop::FruitTrees => "Fruit trees",
        Crop::CoolLawn => "Lawn, cool-season grass",
        Crop::WarmLawn => "Lawn, warm-season grass",
        Crop::Other => "Something else",
    }
}

/// A soil.
pub const fn soil(soil: Soil) -> &'static str {
    match soil {
        Soil::Sand => "Sand",
        Soil::SandyLoam => "Sandy loam",
        Soil::Loam => "Loam",
        Soil::SiltLoam => "Silt loam",
        Soil::Clay => "Clay",
        Soil::Other => "Something else",
    }
}

/// A way of watering.
pub const fn watering(watering: Watering) -> &'static str {
    match watering {
        Watering::Drip => "Drip lines",
        Watering::ByHand => "By can or hose",
        Watering::Sprinkler => "Sprinkler",
        Watering::Furrow => "Furrows or basins",
        Watering::Other => "Something else",
    }
}

/// A value of the climate.
pub fn climate_value(value: ClimateValue) -> String {
    let month = |month: u8| super::months().get(usize::from(month)).copied().unwrap_or_default();
    match value {
        ClimateValue::Latitude => "Latitude, degrees (south negative)".to_owned(),
        ClimateValue::Least(at) => format!("{}, mean daily low", month(at)),
        ClimateValue::Greatest(at) => format!("{}, mean daily high", month(at)),
        ClimateValue::ReferenceEt(at) => format!("{}, a day", month(at)),
    }
}

/// Title of the climate.
pub const CLIMATE: &str = "Climate for gardens";
/// What the climate is for.
pub const CLIMATE_IS_FOR: &str = "What the air draws from plants, month by month: a garden by the weather follows it. A \
                                  weather service publishes these means for the nearest station.";
/// The climate isn't there yet.
pub const NO_CLIMATE: &str = "Not given yet. Only a garden whose amount follows the weather needs it.";
/// The two ways of giving a climate.
pub const CLIMATE_WAYS: [&str; 2] = ["Latitude and temperatures", "Reference evapotranspiration"];
/// What is made of temperatures.
pub const HARGREAVES: &str = "Reference evapotranspiration by Hargreaves from latitude and temperatures (FAO-56, \
                              equations 21 to 25 and 52). It tends to be too high where it is humid and too low where it \
                              is windy: enter published means if you have them.";
/// The climate in a line: its reference evapotranspiration in a mean year.
pub fn climate_line(et0_mm: &[f64; 12], units: &Units) -> String {
    let (mut least, mut most) = (0, 0);
    for month in 1..12 {
        if et0_mm[month] < et0_mm[least] {
            least = month;
        }
        if et0_mm[month] > et0_mm[most] {
            most = month;
        }
    }
    format!(
        "Reference evapotranspiration {} a day in {}, {} in {}.",
        shown::figure(et0_mm[least], Kind::Depth, units),
        super::months()[least],
        shown::figure(et0_mm[most], Kind::Depth, units),
        super::months()[most]
    )
}

/// How the garden is reckoned.
pub const HOW: &str = "The soil is a bucket (FAO-56, ch. 8): rain and watering fill it, the plants drink crop coefficient \
                       × reference evapotranspiration. Once it is depleted as far as plants bear, each day's watering \
                       replaces the day's use; what it missed is not asked for twice.";

/// What a garden went through, in an average year.
pub fn garden(tally: &GardenTally, days: usize, yield_l: f64, units: &Units) -> String {
    let per_year = super::per_year(days);
    let depth = |mm: f64| shown::figure(mm * per_year, Kind::Depth, units);
    format!(
        "In an average year: {} of rain stay in its soil, watering adds {}, for which {} are drawn on {}; on {} of its \
         season the plants go short.",
        depth(tally.rain_mm),
        depth(tally.watered_mm),
        shown::figure(yield_l * per_year, Kind::Volume, units),
        days_a_year(tally.watered_days, per_year),
        days_a_year(tally.thirsty_days, per_year),
    )
}

/// What a step of rationing did, in an average year.
pub fn ration(tally: &RationTally, days: usize, units: &Units) -> String {
    if tally.days == 0 {
        return "It was never in force.".to_owned();
    }
    let per_year = super::per_year(days);
    format!(
        "In force on {} ({} of the record); by it the uses went without {} a year.",
        days_a_year(tally.days, per_year),
        count(tally.days, "day", "days"),
        shown::figure(tally.cut_l * per_year, Kind::Volume, units),
    )
}

/// What a cut is and is not.
pub const CUT_IS: &str = "What is cut is wanted but not asked for: it makes no dry day, but counts against volumetric \
                          reliability. Where several steps cut one use, the deepest cut holds.";

/// So many days of a run, as days a year.
fn days_a_year(days: usize, per_year: f64) -> String {
    #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
    let a_year = days as f64 * per_year;
    let whole = a_year.round();
    if days > 0 && whole < 1.0 {
        return "less than a day a year".to_owned();
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "days of a year")]
    let whole = whole as usize;
    format!("{} a year", if whole == 1 { "1 day".to_owned() } else { format!("{} days", number_text(whole)) })
}

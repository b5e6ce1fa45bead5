//! Words of gardens by the weather, their climate, and rationing.

use super::count;
use crate::engine::balance::garden::GardenTally;
use crate::engine::balance::ration::RationTally;
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::climate::ClimateValue;
use crate::site::garden::{Crop, Soil, Watering};

/// What grows.
pub fn crop(crop: Crop) -> &'static str {
    match crop {
        Crop::Vegetables => said!("Leaf and root vegetables", "Verduras de hoja y de raíz"),
        Crop::Tomatoes => said!("Tomatoes, peppers", "Tomates, pimientos"),
        Crop::Beans => said!("Beans, peas", "Frijoles, arvejas"),
        Crop::Squash => said!("Squash, cucumbers, melons", "Calabazas, pepinos, melones"),
        Crop::Berries => said!("Berry bushes", "Arbustos de bayas"),
        Crop::FruitTrees => said!("Fruit trees", "Árboles frutales"),
        Crop::CoolLawn => said!("Lawn, cool-season grass", "Césped de clima frío"),
        Crop::WarmLawn => said!("Lawn, warm-season grass", "Césped de clima cálido"),
        Crop::Other => said!("Something else", "Otra cosa"),
    }
}

/// A soil.
pub fn soil(soil: Soil) -> &'static str {
    match soil {
        Soil::Sand => said!("Sand", "Arena"),
        Soil::SandyLoam => said!("Sandy loam", "Franco arenoso"),
        Soil::Loam => said!("Loam", "Franco"),
        Soil::SiltLoam => said!("Silt loam", "Franco limoso"),
        Soil::Clay => said!("Clay", "Arcilla"),
        Soil::Other => said!("Something else", "Otra cosa"),
    }
}

/// A way of watering.
pub fn watering(watering: Watering) -> &'static str {
    match watering {
        Watering::Drip => said!("Drip lines", "Líneas de goteo"),
        Watering::ByHand => said!("By can or hose", "Con regadera o manguera"),
        Watering::Sprinkler => said!("Sprinkler", "Aspersor"),
        Watering::Furrow => said!("Furrows or basins", "Surcos o pozas"),
        Watering::Other => said!("Something else", "Otra cosa"),
    }
}

/// A value of the climate.
pub fn climate_value(value: ClimateValue) -> String {
    let month = |month: u8| super::months().get(usize::from(month)).copied().unwrap_or_default();
    match value {
        ClimateValue::Latitude => {
            phrase!("Latitude, degrees (south: 34 S or −34)", "Latitud, grados (sur: 34 S o −34)").to_owned()
        }
        ClimateValue::Least(at) => {
            say!("{month}, mean daily low", "{month}, mínima diaria promedio", month = month(at))
        }
        ClimateValue::Greatest(at) => {
            say!("{month}, mean daily high", "{month}, máxima diaria promedio", month = month(at),)
        }
        ClimateValue::ReferenceEt(at) => say!("{month}, a day", "{month}, por día", month = month(at)),
    }
}

/// Title of the climate.
pub const CLIMATE: Phrase = phrase!("Climate for gardens", "Clima para huertos");
/// What the climate is for.
pub const CLIMATE_IS_FOR: Phrase = phrase!(
    "What the air draws from plants, month by month: a garden by the weather follows it. A weather service publishes \
     these means for the nearest station.",
    "El agua que el aire saca de las plantas, mes por mes: de ella depende un huerto según el tiempo. Un servicio \
     meteorológico publica estos promedios para la estación más cercana.",
);
/// The climate isn't there yet.
pub const NO_CLIMATE: Phrase = phrase!(
    "Not given yet. Only a garden whose amount follows the weather needs it.",
    "Todavía sin datos. Solo lo necesita un huerto cuya cantidad sigue al tiempo.",
);
/// A climate of which some values are still to be entered.
pub fn climate_lacks(lacking: usize, all: usize) -> String {
    say!(
        "Still to be entered: {lacking} of {all} values. Until then no garden by the weather can be reckoned.",
        "Por escribir todavía: {lacking} de {all} valores. Hasta entonces no se puede calcular ningún huerto según el \
         tiempo.",
        lacking = super::number_text(lacking),
        all = super::number_text(all),
    )
}
/// The two ways of giving a climate.
pub const CLIMATE_WAYS: [Phrase; 2] = [
    phrase!("Latitude and temperatures", "Latitud y temperaturas"),
    phrase!("Reference evapotranspiration", "Evapotranspiración de referencia"),
];
/// Beside a daily low.
pub const LOW_ABOVE_HIGH: Phrase = phrase!(
    "This low is above the high of its month: change one of them.",
    "Esta mínima supera la máxima de su mes: cambia una de las dos.",
);
/// What is made of temperatures.
pub const HARGREAVES: Phrase = phrase!(
    "By Hargreaves from latitude and temperatures (FAO-56, equations 21 to 25 and 52). It \
     tends to be too high where it is humid and too low where it is windy: enter published means if you have them.",
    "Según Hargreaves, con la latitud y las temperaturas (FAO-56, ecuaciones 21 a 25 \
     y 52). Suele salir demasiado alta donde es húmedo y demasiado baja donde hay viento: escribe promedios publicados \
     si los tienes.",
);
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
    say!(
        "Reference evapotranspiration {little} a day in {low}, {much} in {high}.",
        "Evapotranspiración de referencia: {little} por día en {low}, {much} en {high}.",
        little = shown::figure(et0_mm[least], Kind::Depth, units),
        low = super::months()[least],
        much = shown::figure(et0_mm[most], Kind::Depth, units),
        high = super::months()[most],
    )
}

/// How the garden is reckoned.
pub const HOW: Phrase = phrase!(
    "The soil is a bucket (FAO-56, ch. 8): rain and watering fill it, the plants drink crop coefficient × reference \
     evapotranspiration. Once it is depleted as far as plants bear, each day's watering replaces the day's use; what \
     it missed is not asked for twice.",
    "El suelo es un balde (FAO-56, cap. 8): la lluvia y el riego lo llenan, las plantas beben el coeficiente de \
     cultivo × la evapotranspiración de referencia. Una vez agotado hasta donde las plantas aguantan, el riego de cada \
     día repone el uso del día; lo que no llegó no se pide otra vez.",
);

/// What a garden went through, in an average year.
pub fn garden(tally: &GardenTally, days: usize, yield_l: f64, units: &Units) -> String {
    let per_year = super::per_year(days);
    let depth = |mm: f64| shown::figure(mm * per_year, Kind::Depth, units);
    say!(
        "In an average year: {rain} of rain stay in its soil, watering adds {watering}, for which {drawn} are drawn on \
         {watered}; on {thirsty} of its season the plants go short.",
        "En un año promedio: lluvia que queda en su suelo, {rain}; riego que se añade, {watering}, con {drawn} de agua \
         en {watered}; a las plantas les falta agua en {thirsty} de su temporada.",
        rain = depth(tally.rain_mm),
        watering = depth(tally.watered_mm),
        drawn = shown::figure(yield_l * per_year, Kind::Volume, units),
        watered = days_a_year(tally.watered_days, per_year),
        thirsty = days_a_year(tally.thirsty_days, per_year),
    )
}

/// What a step of rationing did, in an average year.
pub fn ration(tally: &RationTally, days: usize, units: &Units) -> String {
    if tally.days == 0 {
        return phrase!("It was never in force.", "Nunca estuvo en vigor.").to_owned();
    }
    let per_year = super::per_year(days);
    say!(
        "In force on {a_year} ({days} of the record); by it the uses went without {cut} a year.",
        "En vigor {a_year} ({days} del registro); por eso a los usos les faltaron {cut} al año.",
        a_year = days_a_year(tally.days, per_year),
        days = count(tally.days, phrase!("day", "día"), phrase!("days", "días")),
        cut = shown::figure(tally.cut_l * per_year, Kind::Volume, units),
    )
}

/// What a cut is and is not.
pub const CUT_IS: Phrase = phrase!(
    "What is cut is wanted but not asked for: it makes no dry day, but counts against volumetric reliability. Where \
     several steps cut one use, the deepest cut holds.",
    "Lo que se recorta se quiere pero no se pide: no hace ningún día de escasez, pero cuenta en contra de la \
     confiabilidad volumétrica. Donde varios pasos recortan un mismo uso, vale el recorte mayor.",
);

/// So many days of a run, as days a year.
fn days_a_year(days: usize, per_year: f64) -> String {
    #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
    let a_year = days as f64 * per_year;
    let whole = a_year.round();
    if days > 0 && whole < 1.0 {
        return phrase!("less than a day a year", "menos de un día al año").to_owned();
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "days of a year")]
    let whole = whole as usize;
    say!("{days} a year", "{days} al año", days = super::days(whole))
}

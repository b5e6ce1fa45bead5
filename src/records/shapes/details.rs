//! Details of parts and of the site.

use super::part_id;
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{number, object};
use crate::site::details::{Detail, Details, Entered};

/// The details of a system; none where there are none yet.
pub(super) fn read(system: &Place<'_>) -> Read<Details> {
    match system.at_if_any("details")? {
        Some(list) => list.as_list(read_one).map(Details),
        None => Ok(Details::default()),
    }
}

fn read_one(place: &Place<'_>) -> Read<Entered> {
    let detail = place.at("detail")?.as_one_of(Detail::ALL, key)?;
    let value = place.at("value")?;
    let value = match options(detail) {
        [] => value.as_number()?,
        options => {
            let name = value.as_text()?;
            let at = options.iter().position(|option| *option == name).ok_or_else(|| value.unknown(name))?;
            f64::from(u8::try_from(at).unwrap_or(u8::MAX))
        }
    };
    Ok(Entered { of: part_id::read_if_any(place, "of")?, detail, value })
}

pub(super) fn write(entered: &Entered) -> Value {
    let Entered { of, detail, value } = *entered;
    let options = options(detail);
    let written = match options.iter().enumerate().find(|(at, _)| *at as f64 == value) {
        Some((_, name)) => (*name).into(),
        None => number(value),
    };
    object(vec![("of", part_id::write_if_any(of)), ("detail", key(detail).into()), ("value", written)])
}

const fn key(detail: Detail) -> &'static str {
    match detail {
        Detail::DesignIntensity => "design_intensity",
        Detail::StormDepth => "storm_depth",
        Detail::StormDuration => "storm_duration",
        Detail::Altitude => "altitude",
        Detail::WaterTemperature => "water_temperature",
        Detail::WindSpeed => "wind_speed",
        Detail::Exposure => "exposure",
        Detail::Groundwater => "groundwater",
        Detail::Soil => "soil",
        Detail::Pitch => "pitch",
        Detail::Dirt => "dirt",
        Detail::DrainWithin => "drain_within",
        Detail::GutterShape => "gutter_shape",
        Detail::GutterWidth => "gutter_width",
        Detail::GutterDepth => "gutter_depth",
        Detail::GutterSole => "gutter_sole",
        Detail::GutterSlope => "gutter_slope",
        Detail::GutterLength => "gutter_length",
        Detail::Downspout => "downspout",
        Detail::Downspouts => "downspouts",
        Detail::Strainer => "strainer",
        Detail::ScreenBore => "screen_bore",
        Detail::ScreenOpen => "screen_open",
        Detail::ScreenBlocked => "screen_blocked",
        Detail::InletBore => "inlet_bore",
        Detail::OverflowBore => "overflow_bore",
        Detail::AirGap => "air_gap",
        Detail::EmptyMass => "empty_mass",
        Detail::PadArea => "pad_area",
        Detail::PadThickness => "pad_thickness",
        Detail::Friction => "friction",
        Detail::Anchors => "anchors",
        Detail::SoilCover => "soil_cover",
        Detail::HoldDown => "hold_down",
        Detail::PipeBore => "pipe_bore",
        Detail::PipeLength => "pipe_length",
        Detail::PipeMaterial => "pipe_material",
        Detail::Elbows => "elbows",
        Detail::Valves => "valves",
        Detail::LevelDifference => "level_difference",
        Detail::FarDraw => "far_draw",
        Detail::SuppliedBy => "supplied_by",
        Detail::PumpHeight => "pump_height",
        Detail::SuctionBore => "suction_bore",
        Detail::SuctionLength => "suction_length",
        Detail::HighestTap => "highest_tap",
        Detail::TapPressure => "tap_pressure",
        Detail::FilterClean => "filter_clean",
        Detail::FilterFouled => "filter_fouled",
        Detail::ShutHead => "shut_head",
        Detail::MidFlow => "mid_flow",
        Detail::MidHead => "mid_head",
        Detail::EndFlow => "end_flow",
        Detail::EndHead => "end_head",
        Detail::PumpEfficiency => "pump_efficiency",
        Detail::NpshRequired => "npsh_required",
        Detail::Vessel => "vessel",
        Detail::CutIn => "cut_in",
        Detail::CutOut => "cut_out",
        Detail::StartsAnHour => "starts_an_hour",
        Detail::SunHours => "sun_hours",
        Detail::Autonomy => "autonomy",
        Detail::Discharge => "discharge",
        Detail::SolarYield => "solar_yield",
        Detail::BatteryVolts => "battery_volts",
        Detail::TapHeight => "tap_height",
        Detail::TapFlow => "tap_flow",
        Detail::Toilets => "toilets",
        Detail::Basins => "basins",
        Detail::Showers => "showers",
        Detail::Baths => "baths",
        Detail::Sinks => "sinks",
        Detail::Dishwashers => "dishwashers",
        Detail::Washers => "washers",
        Detail::GardenTaps => "garden_taps",
        Detail::Proof => "proof",
        Detail::CertifiedBacteria => "certified_bacteria",
        Detail::CertifiedViruses => "certified_viruses",
        Detail::CertifiedProtozoa => "certified_protozoa",
        Detail::CertifiedMetals => "certified_metals",
        Detail::CertifiedOrganics => "certified_organics",
        Detail::RatedLitres => "rated_litres",
        Detail::FilterNow => "filter_now",
        Detail::LampClass => "lamp_class",
        Detail::LampDose => "lamp_dose",
        Detail::LampFlow => "lamp_flow",
        Detail::LampClarity => "lamp_clarity",
        Detail::WaterClarity => "water_clarity",
        Detail::BusiestFlow => "busiest_flow",
        Detail::LampPower => "lamp_power",
        Detail::DosedWhere => "dosed_where",
        Detail::Residual => "residual",
        Detail::ContactVolume => "contact_volume",
        Detail::Baffling => "baffling",
        Detail::StandsFor => "stands_for",
        Detail::WaterPh => "water_ph",
        Detail::BoilMinutes => "boil_minutes",
        Detail::DosePurpose => "dose_purpose",
        Detail::Stock => "stock",
        Detail::StockAge => "stock_age",
        Detail::StockTemperature => "stock_temperature",
        Detail::DosedWater => "dosed_water",
        Detail::LeadFlashing => "lead_flashing",
        Detail::Asbestos => "asbestos",
        Detail::TreatedTimber => "treated_timber",
        Detail::FreshPaint => "fresh_paint",
        Detail::Flue => "flue",
        Detail::Droppings => "droppings",
        Detail::Spray => "spray",
        Detail::PortableVolume => "portable_volume",
        Detail::Travellers => "travellers",
        Detail::CarriedFor => "carried_for",
        Detail::CarriedEach => "carried_each",
        Detail::TripDays => "trip_days",
        Detail::MayCarry => "may_carry",
        Detail::Building => "building",
        Detail::SharedLength => "shared_length",
        Detail::SharedBore => "shared_bore",
    }
}

const fn options(detail: Detail) -> &'static [&'static str] {
    match detail {
        Detail::Exposure => &["town_or_wood", "open_country", "flat_shore"],
        Detail::Soil => &["rock", "layered_rock", "sandy_gravel", "sand", "clay_or_silt"],
        Detail::Pitch => &["to_3_in_12", "to_5_in_12", "to_8_in_12", "to_11_in_12", "steeper"],
        Detail::Dirt => &["clean", "usual", "dirty"],
        Detail::GutterShape => &["half_round", "box", "trapezoid"],
        Detail::Strainer => &["none", "strainer"],
        Detail::PipeMaterial => &["plastic", "copper", "steel", "old_iron", "concrete"],
        Detail::SuppliedBy => &["gravity", "pump"],
        Detail::Proof => &["not_proven", "cysts", "purifier", "two_stars", "three_stars", "certificate"],
        Detail::CertifiedMetals => &["no", "yes"],
        Detail::CertifiedOrganics => &["no", "yes"],
        Detail::LampClass => &["not_known", "class_a", "class_b", "tested_dose"],
        Detail::LampPower => &["water_flows", "valve_shuts"],
        Detail::DosedWhere => &["pipe", "tank"],
        Detail::DosePurpose => &["keep", "disinfect", "shock"],
        Detail::Stock => &["bleach_5_25", "bleach_6", "bleach_8_25", "liquid_12_5", "granules_65", "granules_75"],
        Detail::CarriedFor => &["drinking", "cooking", "washing_at_least", "washing", "own"],
        Detail::Building => &["house", "outbuilding_1", "outbuilding_2", "outbuilding_3"],
        Detail::LeadFlashing
        | Detail::Asbestos
        | Detail::TreatedTimber
        | Detail::FreshPaint
        | Detail::Flue
        | Detail::Droppings
        | Detail::Spray => &["not_asked", "no", "yes"],
        _ => &[],
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::site::part::PartId;

    #[test]
    fn every_detail_comes_back() {
        for detail in Detail::ALL {
            let row = detail.row();
            assert_eq!(options(*detail).len(), row.options, "{detail:?}");
            for (of, value) in [(None, row.range.least), (Some(PartId(7)), row.range.greatest), (None, row.usual)] {
                let entered = Entered { of, detail: *detail, value };
                assert_eq!(read_one(&Place::top(&write(&entered))).unwrap(), entered);
            }
        }
        let keys: Vec<&str> = Detail::ALL.iter().map(|detail| key(*detail)).collect();
        assert!(keys.iter().all(|key| keys.iter().filter(|other| *other == key).count() == 1));
    }
}

//! Details of parts and of the site: labels, choices, and where the usual values come from.

use crate::site::details::Detail;
use crate::site::part::PartId;
use crate::site::system::System;

/// The label of a detail.
pub const fn label(detail: Detail) -> &'static str {
    match detail {
        Detail::DesignIntensity => "Design rain",
        Detail::StormDepth => "Rain of the storm",
        Detail::StormDuration => "The storm lasts",
        Detail::Altitude => "Height over the sea",
        Detail::WaterTemperature => "Temperature of the water",
        Detail::WindSpeed => "Wind, three-second gust",
        Detail::Exposure => "Surroundings",
        Detail::Groundwater => "Groundwater, below the ground",
        Detail::Soil => "Soil",
        Detail::Pitch => "Pitch",
        Detail::Dirt => "Roof is",
        Detail::DrainWithin => "Empty again within",
        Detail::GutterShape => "Gutter",
        Detail::GutterWidth => "Gutter width at the top",
        Detail::GutterDepth => "Gutter depth",
        Detail::GutterSole => "Gutter width at the bottom",
        Detail::GutterSlope => "Gutter fall",
        Detail::GutterLength => "Gutter length to one outlet",
        Detail::Downspout => "Downspout, inside diameter",
        Detail::Downspouts => "Downspouts",
        Detail::Strainer => "Strainer in the outlet",
        Detail::ScreenBore => "Screen, diameter",
        Detail::ScreenOpen => "Open share of the mesh",
        Detail::ScreenBlocked => "Share covered by leaves",
        Detail::InletBore => "Inlet, inside diameter",
        Detail::OverflowBore => "Overflow pipe, inside diameter",
        Detail::AirGap => "Air gap over the overflow",
        Detail::EmptyMass => "Weight empty",
        Detail::PadArea => "Pad area",
        Detail::PadThickness => "Pad thickness",
        Detail::Friction => "Friction on the pad",
        Detail::Anchors => "Anchors",
        Detail::SoilCover => "Soil over the top",
        Detail::HoldDown => "Concrete cast to it",
        Detail::PipeBore => "Pipe, inside diameter",
        Detail::PipeLength => "Pipe length",
        Detail::PipeMaterial => "Pipe of",
        Detail::Elbows => "Bends",
        Detail::Valves => "Valves",
        Detail::LevelDifference => "Difference of level",
        Detail::FarDraw => "Drawn at one end",
        Detail::SuppliedBy => "Water comes by",
        Detail::PumpHeight => "Pump, over ground level",
        Detail::SuctionBore => "Suction pipe, inside diameter",
        Detail::SuctionLength => "Suction pipe length",
        Detail::HighestTap => "Highest tap, over ground level",
        Detail::TapPressure => "Pressure wanted at the tap",
        Detail::FilterClean => "Lost in clean filters",
        Detail::FilterFouled => "Lost in filters due for change",
        Detail::ShutHead => "Pump head at no flow",
        Detail::MidFlow => "Flow, middle of the curve",
        Detail::MidHead => "Head there",
        Detail::EndFlow => "Flow, end of the curve",
        Detail::EndHead => "Head at the end",
        Detail::PumpEfficiency => "Electricity that reaches the water",
        Detail::NpshRequired => "NPSH that the pump requires",
        Detail::Vessel => "Pressure vessel",
        Detail::CutIn => "Pump starts at",
        Detail::CutOut => "Pump stops at",
        Detail::StartsAnHour => "Starts an hour allowed",
        Detail::SunHours => "Full sun a day, poorest month",
        Detail::Autonomy => "Battery bridges",
        Detail::Discharge => "Share of the battery to draw",
        Detail::SolarYield => "Sun's power that arrives",
        Detail::BatteryVolts => "Battery voltage",
        Detail::TapHeight => "Tap, over ground level",
        Detail::TapFlow => "Flow wanted",
        Detail::Toilets => "Toilets",
        Detail::Basins => "Wash basins",
        Detail::Showers => "Showers",
        Detail::Baths => "Baths",
        Detail::Sinks => "Kitchen sinks",
        Detail::Dishwashers => "Dishwashers",
        Detail::Washers => "Washing machines",
        Detail::GardenTaps => "Garden taps",
    }
}

/// The label of a detail on the sheet of a part: whose it is, where it is another's.
pub fn label_of(detail: Detail, of: Option<PartId>, part: PartId, system: &System) -> String {
    match of {
        None => format!("{} (for the whole site)", label(detail)),
        Some(other) if other != part => format!("{}: {}", system.name_of(other), label(detail)),
        Some(_) => label(detail).to_owned(),
    }
}

/// What there is to choose from, in order; none for a number.
pub const fn options(detail: Detail) -> &'static [&'static str] {
    match detail {
        Detail::Exposure => &["Town, suburb or wood (B)", "Open country (C)", "Flat shore (D)"],
        Detail::Soil => &["Bedrock", "Layered rock", "Sandy gravel", "Sand", "Clay or silt"],
        Detail::Pitch => &["Up to 3 in 12", "4 or 5 in 12", "6 to 8 in 12", "9 to 11 in 12", "12 in 12 and more"],
        Detail::Dirt => &["Clean: no trees, no birds", "As roofs are", "Dirty: trees, birds, dust, long dry spells"],
        Detail::GutterShape => &["Half-round", "Box", "Ogee or other trapezoid"],
        Detail::Strainer => &["None", "Yes"],
        Detail::PipeMaterial => &["Plastic", "Copper", "Steel, galvanized", "Old iron", "Concrete"],
        Detail::SuppliedBy => &["Gravity", "A pump"],
        _ => &[],
    }
}

/// Where the usual value of a detail comes from.
pub const fn usual(detail: Detail) -> &'static str {
    match detail {
        Detail::DesignIntensity => "Usual value; your code or weather service names the one for your place.",
        Detail::WindSpeed => "115 mph: ASCE 7-10 map away from hurricane coasts, from memory. Your code names yours.",
        Detail::Groundwater => "Taken at the surface, as after a flood.",
        Detail::Soil => "The poorest class of the International Building Code, Table 1806.2.",
        Detail::Friction => "0.30: low-cohesion soil, American Concrete Pipe Association Design Data 41.",
        _ => "Usual value, no source. Enter yours.",
    }
}

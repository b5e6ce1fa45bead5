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
        Detail::Groundwater => "Groundwater or flood, below the ground",
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
        Detail::Proof => "Proof against germs",
        Detail::CertifiedBacteria => "Bacteria, log",
        Detail::CertifiedViruses => "Viruses, log",
        Detail::CertifiedProtozoa => "Protozoa (cysts), log",
        Detail::CertifiedMetals => "Certified against lead and metals",
        Detail::CertifiedOrganics => "Certified against organic substances",
        Detail::RatedLitres => "Rated for",
        Detail::FilterNow => "Lost in it now",
        Detail::LampClass => "Class",
        Detail::LampDose => "Tested dose, mJ/cm²",
        Detail::LampFlow => "Tested at a flow of",
        Detail::LampClarity => "Tested with water that lets through",
        Detail::WaterClarity => "This water lets through",
        Detail::BusiestFlow => "Flow at its busiest",
        Detail::LampPower => "Without power",
        Detail::DosedWhere => "Put in",
        Detail::Residual => "Free chlorine left, mg/L",
        Detail::ContactVolume => "Contact tank and pipe hold",
        Detail::Baffling => "Baffling factor",
        Detail::StandsFor => "Stands for",
        Detail::WaterPh => "pH",
        Detail::BoilMinutes => "Rolling boil, minutes",
        Detail::DosePurpose => "For",
        Detail::Stock => "With",
        Detail::StockAge => "Its age",
        Detail::StockTemperature => "Stood at",
        Detail::DosedWater => "Water to dose",
        Detail::LeadFlashing => "Lead flashing, lead nails or solder",
        Detail::Asbestos => "Asbestos cement",
        Detail::TreatedTimber => "Treated timber, pitch or tar",
        Detail::FreshPaint => "Fresh paint, bitumen, an unknown coating",
        Detail::Flue => "A flue of a wood or coal stove",
        Detail::Droppings => "Birds, bats, overhanging branches",
        Detail::Spray => "Spray or dust that drifts over",
        Detail::PortableVolume => "Portable tank holds",
        Detail::Travellers => "People",
        Detail::CarriedFor => "Its water is for",
        Detail::CarriedEach => "Own figure, for each person",
        Detail::TripDays => "It is to last",
        Detail::MayCarry => "May be loaded or towed",
        Detail::Building => "Its taps are",
        Detail::SharedLength => "Pipe from the store that both share, length",
        Detail::SharedBore => "Pipe that both share, inside diameter",
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
        Detail::Proof => &[
            "None",
            "Certified for cysts (NSF/ANSI 53 or 58)",
            "Certified as a purifier (NSF P231, EPA 1987)",
            "Two stars of WHO",
            "Three stars of WHO",
            "Its own certificate, in log",
        ],
        Detail::CertifiedMetals => &["No, or not known", "Yes"],
        Detail::CertifiedOrganics => &["No, or not known", "Yes"],
        Detail::LampClass => {
            &["Not known", "NSF/ANSI 55 class A, 40 mJ/cm²", "NSF/ANSI 55 class B, 16 mJ/cm²", "Another tested dose"]
        }
        Detail::LampPower => &["Water flows on, untreated", "A valve shuts the water off"],
        Detail::DosedWhere => &["In the pipe, before a contact tank", "In the tank, and left to stand"],
        Detail::DosePurpose => &[
            "Keeping a residual, 1 mg/L",
            "Disinfecting after contamination, 5 mg/L",
            "Shock for pipes or a cleaned tank, 50 mg/L",
        ],
        Detail::Stock => &[
            "household bleach 5.25 %",
            "household bleach 6 %",
            "household bleach 8.25 %",
            "liquid pool chlorine 12.5 %",
            "calcium hypochlorite 65 %",
            "calcium hypochlorite 75 %",
        ],
        Detail::CarriedFor => &[
            "Drinking and food",
            "Drinking, food, cooking",
            "Drinking, cooking, washing at the least",
            "Drinking, cooking, washing",
            "A figure of our own",
        ],
        Detail::Building => &["In the house", "In an outbuilding", "In a second outbuilding", "In a third outbuilding"],
        Detail::LeadFlashing
        | Detail::Asbestos
        | Detail::TreatedTimber
        | Detail::FreshPaint
        | Detail::Flue
        | Detail::Droppings
        | Detail::Spray => &["Not answered yet", "No", "Yes"],
        _ => &[],
    }
}

/// Where the usual value of a detail comes from.
pub const fn usual(detail: Detail) -> &'static str {
    match detail {
        Detail::DesignIntensity => "Usual value; your code or weather service names the one for your place.",
        Detail::WindSpeed => "115 mph: ASCE 7-10 map away from hurricane coasts, from memory. Your code names yours.",
        Detail::Groundwater => "Taken at the surface, as after long rain. A flood over the ground is negative.",
        Detail::Soil => "The poorest class of the International Building Code, Table 1806.2.",
        Detail::Friction => "0.30: low-cohesion soil, American Concrete Pipe Association Design Data 41.",
        Detail::RatedLitres => "Not known: 0. Its leaflet names it.",
        Detail::FilterNow => "As when clean. Read the gauges before and after it with a tap open.",
        Detail::LampFlow => "Not known: 0. Its plate names the flow for its class.",
        Detail::LampClarity => "70 % of the light through 1 cm: NSF/ANSI 55, from memory.",
        Detail::WaterClarity => "70 % of the light through 1 cm, a poor value. A laboratory measures it (UVT).",
        Detail::BusiestFlow => "Usual value, no source. Time a bucket with all taps open.",
        Detail::Residual => "Not measured: 0. A water test in the diary takes its place.",
        Detail::ContactVolume => "Not known: 0.",
        Detail::Baffling => "0.1: a plain tank. 0.3 poor, 0.5 average, 0.7 good baffles, 1 a long pipe (EPA).",
        Detail::StandsFor => "Half an hour at the least.",
        Detail::WaterPh => "8, on the safe side. A water test in the diary takes its place.",
        Detail::BoilMinutes => "1 minute: EPA and CDC near sea level.",
        Detail::StockAge => "Fresh. Look for the date on the bottle.",
        Detail::StockTemperature => "25 °C (77 °F). Heat ages it faster.",
        Detail::DosedWater => "The tank full to its overflow. Enter what is in it.",
        Detail::MayCarry => "Not looked up: 0. The plate of trailer, rack or axle names it.",
        Detail::SharedLength => "None: each has its own pipe from the store.",
        Detail::Proof
        | Detail::CertifiedMetals
        | Detail::CertifiedOrganics
        | Detail::Building
        | Detail::CarriedFor
        | Detail::LampClass
        | Detail::LampPower
        | Detail::DosedWhere
        | Detail::DosePurpose
        | Detail::Stock
        | Detail::LeadFlashing
        | Detail::Asbestos
        | Detail::TreatedTimber
        | Detail::FreshPaint
        | Detail::Flue
        | Detail::Droppings
        | Detail::Spray => "Choose what holds.",
        Detail::CertifiedBacteria | Detail::CertifiedViruses | Detail::CertifiedProtozoa => "As its certificate says.",
        _ => "Usual value, no source.",
    }
}

//! Names of parts, their values and choices.

use crate::site::feed::DrainKind;
use crate::site::part::{Choice, Field};
use crate::site::roof::Material;
use crate::site::system::{PartKind, System};
use crate::site::tank::{Build, OverflowTo, ShapeKind};
use crate::site::uses::{AmountKind, Class};

use super::{garden, head_figures};

/// A kind of part, one of them.
pub const fn one(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Section => "Roof section",
        PartKind::Feed => "Feed",
        PartKind::Tank => "Tank",
        PartKind::TrunkLine => "Trunk line",
        PartKind::Pump => "Pump",
        PartKind::Use => "Use",
        PartKind::Hauling => "Hauled water",
        PartKind::Ration => "Rationing step",
    }
}

/// A kind of part, several of them.
pub const fn many(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Section => "Roof sections",
        PartKind::Feed => "Feeds",
        PartKind::Tank => "Tanks",
        PartKind::TrunkLine => "Trunk lines",
        PartKind::Pump => "Pumps",
        PartKind::Use => "Uses, first served first",
        PartKind::Hauling => "Hauled water",
        PartKind::Ration => "Rationing",
    }
}

/// What a kind of part is, in a line.
pub const fn explained(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Section => "One plane or part of the roof, measured flat on the plan.",
        PartKind::Feed => "A downspout with its leaf screen and first-flush diverter, and the tank that it fills.",
        PartKind::Tank => "Any barrel, tank, bladder or cistern.",
        PartKind::TrunkLine => "A pipe with a valve that joins two tanks at the bottom: open, they share one level.",
        PartKind::Pump => "Lifts water from one store to another, between a start and a stop level.",
        PartKind::Use => "Whatever draws water. Uses higher in the list are served first.",
        PartKind::Hauling => "A load that is ordered when the store is low.",
        PartKind::Ration => "What the household does without while its store is low.",
    }
}

/// Said of a tank that no water comes to.
pub const NOTHING_FILLS: &str =
    "Nothing fills this tank: let a feed, an overflow, a pump or a trunk line bring it water.";

/// A name for a new part that no other has.
pub fn new_name(system: &System, kind: PartKind) -> String {
    let parts = system.parts();
    super::free_name(one(kind), |name| parts.iter().any(|part| part.name() == name))
}

/// The label of a value.
pub fn label(field: Field, system: &System) -> String {
    match field {
        Field::ShareTo(feed) => format!("Share to {}", system.name_of(feed)),
        Field::CutOf(using) => format!("Cut {} by", system.name_of(using)),
        Field::Month(month) | Field::Evaporation(month) => {
            super::months().get(usize::from(month)).copied().unwrap_or_default().to_owned()
        }
        other => fixed_label(other).to_owned(),
    }
}

const fn fixed_label(field: Field) -> &'static str {
    match field {
        Field::Name => "Name",
        Field::Area => "Plan area",
        Field::Material => "Roofing",
        Field::RunoffCoefficient => "Runoff coefficient",
        Field::WettingLoss => "Wetting loss a rain day",
        Field::FillsTank => "Fills",
        Field::Capture => "Capture of gutter and screen",
        Field::Drain => "First-flush diverter",
        Field::FlushVolume => "First flush",
        Field::ChamberBore => "Inside diameter of the chamber",
        Field::HoleBore => "Slow-release hole",
        Field::EmptiedEvery => "Emptied every",
        Field::StormHours => "Rain lasts, on a rain day",
        Field::Build => "Built as",
        Field::Shape => "Shape",
        Field::Diameter => "Inside diameter",
        Field::Height => "Height to the rim",
        Field::Length => "Inside length",
        Field::Width => "Inside width",
        Field::ConeHeight => "Height of the cone",
        Field::DepthTable => "Depth and volume, a row each",
        Field::Capacity => "Capacity to the overflow",
        Field::Floor => "Floor, over ground level",
        Field::Outlet => "Outlet, over the floor",
        Field::Overflow => "Overflow, over the floor",
        Field::OverflowTo => "Overflow goes to",
        Field::Leak => "Leak",
        Field::Cover => "Cover",
        Field::FirstTank => "From",
        Field::SecondTank => "To",
        Field::Valve => "Valve",
        Field::DrawsFrom => "Draws on",
        Field::PumpsTo => "Fills",
        Field::StartLevel => "Starts below",
        Field::StopLevel => "Stops at",
        Field::DailyLimit => "Lifts at most",
        Field::Class => "Kind",
        Field::Tank => "Draws on",
        Field::AmountGiven => "Amount given",
        Field::Amount => "Amount",
        Field::PublishedFigure => "Published figure",
        Field::PerHead => "For each",
        Field::Heads => "How many",
        Field::PerEvent => "For each time",
        Field::EventsAWeek => "Times a week",
        Field::GardenArea => "Watered area",
        Field::Crop => "What grows",
        Field::CropCoefficient => "Crop coefficient",
        Field::RootDepth => "Depth of the roots",
        Field::Depletion => "Plants bear a soil emptied by",
        Field::GrowsFrom => "Watered from",
        Field::GrowsTo => "Watered to the end of",
        Field::Soil => "Soil",
        Field::AvailableWater => "Soil holds for plants",
        Field::Watering => "Watered by",
        Field::Efficiency => "Reaches the roots",
        Field::Outdoor => "Where",
        Field::LooksAt => "Looks at the store of",
        Field::RationBelow => "In force below",
        Field::Trigger => "Order when the store is below",
        Field::Load => "A load",
        Field::LoadPrice => "Price of a load",
        Field::Notice => "Comes after",
        Field::ShareTo(_) | Field::CutOf(_) | Field::Month(_) | Field::Evaporation(_) => "",
    }
}

/// A line of help under a value, where the label isn't enough.
pub const fn hint(field: Field) -> Option<&'static str> {
    match field {
        Field::Area => Some("Length × width as seen from above, not along the slope."),
        Field::RunoffCoefficient => {
            Some("Share of the rain, beyond wetting, that runs off. Set by the roofing; yours may differ.")
        }
        Field::WettingLoss => Some("Only wets the roof. 0.5 mm: common practice, no source."),
        Field::Capture => {
            Some("What gutter and leaf screen pass on. 90 % if unknown (DIN 1989-1, BS 8515, from memory).")
        }
        Field::HoleBore => Some("Too small: still full when the next storm comes. Too large: drips away good water."),
        Field::Floor => Some("Below ground is negative. Only differences between tanks matter."),
        Field::Outlet => Some("Water below it is dead storage."),
        Field::OverflowTo => Some("Never into a tank that overflows back to this one."),
        Field::DepthTable => Some("For example: 0.5 m  900 L. Rising, one row a line, the last at the rim."),
        Field::StartLevel => Some("Share of the store that it fills."),
        Field::CropCoefficient => Some("What it drinks, as a multiple of short grass. FAO-56, Table 12, from memory."),
        Field::RootDepth => Some("FAO-56, Table 22, lower end, from memory."),
        Field::Depletion => Some("Share of what the soil holds for plants. FAO-56, Table 22, from memory."),
        Field::AvailableWater => {
            Some("Of its volume, field capacity less wilting point. FAO-56, Table 19, from memory.")
        }
        Field::Efficiency => Some("The rest runs off, drifts or seeps. FAO training manual 4, from memory."),
        Field::RationBelow => Some("Share of what the store can give, as the day begins."),
        _ => None,
    }
}

/// A choice in words.
pub fn choice(choice: Choice, system: &System) -> String {
    match choice {
        Choice::Part(part) => system.name_of(part),
        Choice::OverflowTo(OverflowTo::Tank(tank)) => system.name_of(tank),
        Choice::Month(month) => super::months().get(usize::from(month)).copied().unwrap_or_default().to_owned(),
        other => fixed_choice(other).to_owned(),
    }
}

fn fixed_choice(choice: Choice) -> &'static str {
    match choice {
        Choice::Material(material) => material_name(material),
        Choice::Drain(DrainKind::NoDiverter) => "None",
        Choice::Drain(DrainKind::Hole) => "Emptied by a slow-release hole",
        Choice::Drain(DrainKind::ByHand) => "Emptied by hand",
        Choice::Drain(DrainKind::Never) => "Never emptied, or blocked",
        Choice::Build(Build::Barrel) => "Barrel",
        Choice::Build(Build::AboveGround) => "Tank above ground",
        Choice::Build(Build::Bladder) => "Bladder",
        Choice::Build(Build::Cistern) => "Cistern, buried or half-buried",
        Choice::Shape(ShapeKind::UprightCylinder) => "Upright cylinder",
        Choice::Shape(ShapeKind::Box) => "Box",
        Choice::Shape(ShapeKind::LyingCylinder) => "Lying cylinder",
        Choice::Shape(ShapeKind::ConeBottom) => "Cylinder on a cone",
        Choice::Shape(ShapeKind::Table) => "As in a table",
        Choice::OverflowTo(OverflowTo::Ground) => "The ground, or over the rim",
        Choice::OverflowTo(OverflowTo::Garden) => "The garden",
        Choice::Amount(AmountKind::Daily) => "The same every day",
        Choice::Amount(AmountKind::PerHead) => "For each person or animal",
        Choice::Amount(AmountKind::Monthly) => "Month by month",
        Choice::Amount(AmountKind::PerEvent) => "For each time",
        Choice::Amount(AmountKind::Garden) => "Garden, by the weather",
        Choice::HeadFigure(None) => head_figures::OWN,
        Choice::HeadFigure(Some(figure)) => head_figures::name(figure),
        Choice::Crop(crop) => garden::crop(crop),
        Choice::Soil(soil) => garden::soil(soil),
        Choice::Watering(watering) => garden::watering(watering),
        Choice::Class(class) => class_name(class),
        Choice::NoPart => "Not chosen",
        Choice::Open(true) => "Open",
        Choice::Open(false) => "Shut",
        Choice::Covered(true) => "Covered",
        Choice::Covered(false) => "Open to the sky",
        Choice::Outdoor(true) => "Outdoors: a day without it is no dry day",
        Choice::Outdoor(false) => "The house: a day without it is a dry day",
        Choice::OverflowTo(OverflowTo::Tank(_)) | Choice::Part(_) | Choice::Month(_) => "",
    }
}

/// A roofing.
pub const fn material_name(material: Material) -> &'static str {
    match material {
        Material::Metal => "Metal sheet",
        Material::Tile => "Clay or concrete tile",
        Material::Shingle => "Shingle",
        Material::Concrete => "Concrete or membrane, sloping",
        Material::FlatGravel => "Flat with gravel",
        Material::Planted => "Planted",
        Material::Other => "Something else",
    }
}

/// A class of use.
pub const fn class_name(class: Class) -> &'static str {
    match class {
        Class::Drinking => "Drinking and cooking",
        Class::House => "Washing, toilet, laundry",
        Class::Garden => "Garden",
        Class::Animals => "Animals",
        Class::Travel => "Portable tank",
    }
}

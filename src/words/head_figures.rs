//! Published daily amounts for one person or animal: their names, and where they are from.

use crate::site::head_figures::HeadFigure;

/// The household's own figure.
pub const OWN: &str = "Our own figure";

/// What a figure is for.
pub const fn name(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::SurvivalDrinking => "Person: drinking and food alone",
        HeadFigure::LeastAtHome => "Person: drinking, food, hygiene at the least",
        HeadFigure::RuralScheme => "Person: drinking, cooking, washing, rural scheme",
        HeadFigure::BasicNeeds => "Person: most basic needs",
        HeadFigure::BasicNeedsUpper => "Person: basic needs, upper end",
        HeadFigure::FarmPlanning => "Person: all purposes, farm planning",
        HeadFigure::IndoorOnMains => "Person: indoors, home on mains",
        HeadFigure::MilkingCowSummer => "Cow in milk, summer",
        HeadFigure::MilkingCowWinter => "Cow in milk, winter",
        HeadFigure::CowAndCalfSummer => "Cow with calf, summer",
        HeadFigure::CowAndCalfWinter => "Cow with calf, winter",
        HeadFigure::DryCowSummer => "Dry cow, bull or horse, summer",
        HeadFigure::DryCowWinter => "Dry cow, bull or horse, winter",
        HeadFigure::FinishingSummer => "Finishing steer, summer",
        HeadFigure::Horse => "Horse, average",
        HeadFigure::SheepSummer => "Sheep, summer",
        HeadFigure::SheepWinter => "Sheep, winter",
        HeadFigure::SheepOrGoat => "Sheep or goat",
        HeadFigure::HenUpper => "Hen, upper end",
        HeadFigure::HenLower => "Hen, lower end",
        HeadFigure::Pig => "Pig",
        HeadFigure::Dog => "Dog",
    }
}

/// Where a figure is from.
pub const fn source(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::SurvivalDrinking => "Sphere Handbook, survival needs, 2.5 to 3 L (from memory).",
        HeadFigure::LeastAtHome => "“Water supply and health”, 7.5 L at home for drinking, food and hygiene.",
        HeadFigure::RuralScheme => "A public rainwater training course: 15 to 25 L; the middle.",
        HeadFigure::BasicNeeds => "WHO, quoted for the human right to water: 50 to 100 L; the lower end.",
        HeadFigure::BasicNeedsUpper => "WHO, quoted for the human right to water: 50 to 100 L; the upper end.",
        HeadFigure::FarmPlanning => "Planning table, Hindawi 2017, article 8504283: 50 US gal.",
        HeadFigure::IndoorOnMains => "Water Research Foundation 4309b (2016): 58.6 US gal (from memory).",
        HeadFigure::MilkingCowSummer
        | HeadFigure::MilkingCowWinter
        | HeadFigure::CowAndCalfSummer
        | HeadFigure::CowAndCalfWinter
        | HeadFigure::DryCowSummer
        | HeadFigure::DryCowWinter
        | HeadFigure::FinishingSummer
        | HeadFigure::SheepSummer
        | HeadFigure::SheepWinter => "Agriculture and Agri-Food Canada, typical daily requirement of livestock.",
        HeadFigure::Horse => "Kansas State, Livestock Watering Handbook: 10 US gal.",
        HeadFigure::SheepOrGoat => "Planning table, Hindawi 2017, article 8504283: 2 US gal.",
        HeadFigure::HenUpper => "Planning table, Hindawi 2017, article 8504283: 12 US gal for 100.",
        HeadFigure::HenLower => "Planning table, Hindawi 2017, article 8504283: 6 US gal for 100.",
        HeadFigure::Pig => "Common practice, no source; more for a sow in milk.",
        HeadFigure::Dog => "Some 60 mL for each kg, a dog of 25 kg (common practice, no source).",
    }
}

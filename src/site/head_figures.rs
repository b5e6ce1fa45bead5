//! Published daily amounts for one person or animal, to choose from. Their names and sources are in
//! `words::head_figures`.

use super::uses::Class;
use crate::quantity::Flow;
use crate::quantity::volume::LITRES_PER_US_GALLON;

/// A published daily amount for one head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeadFigure {
    /// A person: drinking and food alone.
    SurvivalDrinking,
    /// A person: drinking, food and personal hygiene at the least.
    LeastAtHome,
    /// A person: drinking, cooking and personal hygiene, rural rainwater schemes.
    RuralScheme,
    /// A person: most basic needs, few health concerns.
    BasicNeeds,
    /// A person: the upper end of that.
    BasicNeedsUpper,
    /// A person: all purposes on a farm.
    FarmPlanning,
    /// A person: indoor use in homes on mains.
    IndoorOnMains,
    /// A cow in milk, summer.
    MilkingCowSummer,
    /// A cow in milk, winter.
    MilkingCowWinter,
    /// A cow with calf, summer.
    CowAndCalfSummer,
    /// A cow with calf, winter.
    CowAndCalfWinter,
    /// A dry cow, a bull or a horse, summer.
    DryCowSummer,
    /// A dry cow, a bull or a horse, winter.
    DryCowWinter,
    /// A finishing steer, summer.
    FinishingSummer,
    /// An average horse.
    Horse,
    /// A sheep, summer.
    SheepSummer,
    /// A sheep, winter.
    SheepWinter,
    /// A sheep or goat.
    SheepOrGoat,
    /// A hen, at the upper end.
    HenUpper,
    /// A hen, at the lower end.
    HenLower,
    /// A pig.
    Pig,
    /// A dog.
    Dog,
}

impl HeadFigure {
    /// All figures, as they are offered.
    pub const ALL: [HeadFigure; 22] = [
        HeadFigure::SurvivalDrinking,
        HeadFigure::LeastAtHome,
        HeadFigure::RuralScheme,
        HeadFigure::BasicNeeds,
        HeadFigure::BasicNeedsUpper,
        HeadFigure::FarmPlanning,
        HeadFigure::IndoorOnMains,
        HeadFigure::MilkingCowSummer,
        HeadFigure::MilkingCowWinter,
        HeadFigure::CowAndCalfSummer,
        HeadFigure::CowAndCalfWinter,
        HeadFigure::DryCowSummer,
        HeadFigure::DryCowWinter,
        HeadFigure::FinishingSummer,
        HeadFigure::Horse,
        HeadFigure::SheepSummer,
        HeadFigure::SheepWinter,
        HeadFigure::SheepOrGoat,
        HeadFigure::HenUpper,
        HeadFigure::HenLower,
        HeadFigure::Pig,
        HeadFigure::Dog,
    ];

    /// Litres a day for one, as published.
    pub const fn litres_a_day(self) -> Flow {
        const fn gallons(number: f64) -> f64 {
            number * LITRES_PER_US_GALLON
        }
        Flow::litres_a_day(match self {
            HeadFigure::SurvivalDrinking => 3.0,
            HeadFigure::LeastAtHome => 7.5,
            HeadFigure::RuralScheme => 20.0,
            HeadFigure::BasicNeeds => 50.0,
            HeadFigure::BasicNeedsUpper => 100.0,
            HeadFigure::FarmPlanning => gallons(50.0),
            HeadFigure::IndoorOnMains => gallons(58.6),
            HeadFigure::MilkingCowSummer => 95.0,
            HeadFigure::MilkingCowWinter => 77.0,
            HeadFigure::CowAndCalfSummer => 68.0,
            HeadFigure::CowAndCalfWinter => 50.0,
            HeadFigure::DryCowSummer => 55.0,
            HeadFigure::DryCowWinter => 36.0,
            HeadFigure::FinishingSummer => 86.0,
            HeadFigure::Horse => gallons(10.0),
            HeadFigure::SheepSummer => 14.0,
            HeadFigure::SheepWinter => 3.6,
            HeadFigure::SheepOrGoat => gallons(2.0),
            HeadFigure::HenUpper => gallons(0.12),
            HeadFigure::HenLower => gallons(0.06),
            HeadFigure::Pig => 10.0,
            HeadFigure::Dog => 1.5,
        })
    }

    /// Whether it is of an animal.
    pub fn is_of_an_animal(self) -> bool {
        // The people come first in the list.
        self as usize >= HeadFigure::MilkingCowSummer as usize
    }
}

/// The figures that fit a class of use: animals for animals, people for all else.
pub fn of_class(class: Class) -> impl Iterator<Item = HeadFigure> {
    HeadFigure::ALL.into_iter().filter(move |figure| figure.is_of_an_animal() == (class == Class::Animals))
}

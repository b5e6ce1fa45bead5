//! The values of a part that are not numbers, each with its possibilities.

use super::feed::DrainKind;
use super::garden::{Crop, Soil, Watering};
use super::head_figures;
use super::part::{Choice, Field, PartId};
use super::roof::Material;
use super::system::{Part, System};
use super::tank::{Build, Cover, OverflowTo, ShapeKind};
use super::uses::{Amount, AmountKind, Class, Use};

/// A value with its possibilities.
#[derive(Clone, Debug, PartialEq)]
pub struct Options {
    /// Which.
    pub field: Field,
    /// What it may be.
    pub options: Vec<Choice>,
    /// What it is, as a place among `options`.
    pub chosen: usize,
}

impl Options {
    fn new(field: Field, options: Vec<Choice>, is: Choice) -> Self {
        let chosen = options.iter().position(|option| *option == is).unwrap_or(0);
        Self { field, options, chosen }
    }
}

/// The choices of a part in a system.
pub fn choices(part: &Part, system: &System) -> Vec<Options> {
    // Without a tank chosen yet, "not chosen" is shown; once one is, only tanks are offered.
    let tank = |field, is: Option<PartId>| {
        let is = is.map_or(Choice::NoPart, Choice::Part);
        let mut options = Vec::new();
        if is == Choice::NoPart {
            options.push(Choice::NoPart);
        }
        options.extend(system.tanks.iter().map(|tank| Choice::Part(tank.id)));
        Options::new(field, options, is)
    };
    match part {
        Part::Section(section) => {
            vec![Options::new(
                Field::Material,
                each(&Material::ALL, Choice::Material),
                Choice::Material(section.material),
            )]
        }
        Part::Feed(feed) => vec![
            tank(Field::FillsTank, feed.tank),
            Options::new(Field::Drain, each(&DrainKind::ALL, Choice::Drain), Choice::Drain(feed.drain_kind())),
        ],
        Part::Tank(tank) => {
            let others = system.tanks.iter().filter(|other| other.id != tank.id);
            let mut ways = vec![OverflowTo::Ground, OverflowTo::Garden];
            ways.extend(others.map(|other| OverflowTo::Tank(other.id)));
            let covered = Choice::Covered(tank.cover == Cover::Covered);
            vec![
                Options::new(Field::Build, each(&Build::ALL, Choice::Build), Choice::Build(tank.build)),
                Options::new(Field::Shape, each(&ShapeKind::ALL, Choice::Shape), Choice::Shape(tank.shape.kind())),
                Options::new(
                    Field::OverflowTo,
                    ways.into_iter().map(Choice::OverflowTo).collect(),
                    Choice::OverflowTo(tank.overflow_to),
                ),
                Options::new(Field::Cover, vec![Choice::Covered(true), Choice::Covered(false)], covered),
            ]
        }
        Part::TrunkLine(line) => vec![
            tank(Field::FirstTank, line.ends[0]),
            tank(Field::SecondTank, line.ends[1]),
            Options::new(Field::Valve, vec![Choice::Open(true), Choice::Open(false)], Choice::Open(line.open)),
        ],
        Part::Pump(pump) => vec![tank(Field::DrawsFrom, pump.from), tank(Field::PumpsTo, pump.to)],
        Part::Use(using) => {
            let mut choices = vec![
                Options::new(Field::Class, each(&Class::ALL, Choice::Class), Choice::Class(using.class)),
                tank(Field::Tank, using.tank),
                Options::new(
                    Field::AmountGiven,
                    each(&AmountKind::ALL, Choice::Amount),
                    Choice::Amount(using.amount.kind()),
                ),
                Options::new(
                    Field::Outdoor,
                    vec![Choice::Outdoor(false), Choice::Outdoor(true)],
                    Choice::Outdoor(using.outdoor),
                ),
            ];
            amount(using, &mut choices);
            choices
        }
        Part::Hauling(hauling) => vec![tank(Field::Tank, hauling.tank)],
        Part::Ration(step) => vec![tank(Field::LooksAt, step.tank)],
    }
}

/// The choices of a use's amount: published figures for each head, what a garden is like.
fn amount(using: &Use, choices: &mut Vec<Options>) {
    match &using.amount {
        Amount::PerHead { each: now, .. } => {
            let mut figures = vec![Choice::HeadFigure(None)];
            figures.extend(head_figures::of_class(using.class).map(|figure| Choice::HeadFigure(Some(figure))));
            let holds = head_figures::of_class(using.class).find(|figure| figure.litres_a_day() == *now);
            choices.push(Options::new(Field::PublishedFigure, figures, Choice::HeadFigure(holds)));
        }
        Amount::Garden(garden) => {
            let months = || (0..12).map(Choice::Month).collect();
            choices.extend([
                Options::new(Field::Crop, each(&Crop::ALL, Choice::Crop), Choice::Crop(garden.crop)),
                Options::new(Field::GrowsFrom, months(), Choice::Month(garden.grows_from)),
                Options::new(Field::GrowsTo, months(), Choice::Month(garden.grows_to)),
                Options::new(Field::Soil, each(&Soil::ALL, Choice::Soil), Choice::Soil(garden.soil)),
                Options::new(
                    Field::Watering,
                    each(&Watering::ALL, Choice::Watering),
                    Choice::Watering(garden.watering),
                ),
            ]);
        }
        _ => {}
    }
}

/// Every possibility of one kind.
fn each<T: Copy>(all: &[T], choice: fn(T) -> Choice) -> Vec<Choice> {
    all.iter().map(|one| choice(*one)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;

    #[test]
    fn every_choice_offered_can_be_made() {
        let system = demo::site().system;
        for part in system.parts() {
            for options in choices(&part, &system) {
                for (at, option) in options.options.iter().enumerate() {
                    let mut changed = system.clone();
                    assert_eq!(changed.choose(part.id(), options.field, *option), Ok(()));
                    let after = changed.part(part.id()).map(|part| choices(&part, &changed)).unwrap_or_default();
                    let same = after.iter().find(|after| after.field == options.field);
                    // "Our own figure" leaves a published one as it is.
                    if *option == Choice::HeadFigure(None) {
                        continue;
                    }
                    assert_eq!(same.map(|same| same.options[same.chosen]), Some(*option), "{:?} {at}", options.field);
                }
            }
        }
    }
}

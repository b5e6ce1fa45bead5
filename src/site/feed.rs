//! Feeds: a downspout with its screen and first-flush diverter and the tank that it fills.

use super::part::{Choice, Field, Number, PartId};
use crate::quantity::{Bore, Days, Hours, Share, Volume};

/// A downspout and what it fills.
#[derive(Clone, Debug, PartialEq)]
pub struct Feed {
    /// Its identity.
    pub id: PartId,
    /// What the household calls it.
    pub name: String,
    /// The tank that it fills; a feed without one can't run.
    pub tank: Option<PartId>,
    /// Share of what reaches it that its gutter and leaf screen pass on, 0 to 1.
    pub capture: Share,
    /// Its first-flush diverter, if it has one.
    pub diverter: Option<Diverter>,
}

/// A standing pipe that holds the first water off the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct Diverter {
    /// What it holds, 0 to 5,000 L.
    pub volume: Volume,
    /// Inside diameter of its chamber, 20 mm to 1 m.
    pub chamber: Bore,
    /// How it is emptied.
    pub drain: Drain,
    /// How long it rains on a rain day, 0 to 24 h: the hole drips meanwhile.
    pub storm: Hours,
}

/// How a diverter is emptied.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Drain {
    /// Slowly, through a hole.
    Hole {
        /// Diameter of the hole, 0 to 50 mm.
        diameter: Bore,
    },
    /// By hand.
    ByHand {
        /// Days from one time to the next, 1 to 366.
        every: Days,
    },
    /// Not at all: the hole is blocked, or nobody does it.
    Never,
}

/// Whether there is a diverter and how it is emptied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrainKind {
    /// There is no diverter.
    NoDiverter,
    /// Through a hole.
    Hole,
    /// By hand.
    ByHand,
    /// Never.
    Never,
}

impl DrainKind {
    /// All kinds.
    pub const ALL: [DrainKind; 4] = [DrainKind::NoDiverter, DrainKind::Hole, DrainKind::ByHand, DrainKind::Never];
}

/// A diverter as commonly made: 20 L (within the 20–25 L that enHealth 2010 names for an average roof, from
/// memory) in 4 in Schedule 40 pipe (102.26 mm inside, ASTM D1785), a hole of 0.5 mm, which empties it within a
/// day and wastes about as much again in a storm, and six hours of rain on a rain day (common practice, no source).
pub const USUAL_DIVERTER: Diverter = Diverter {
    volume: Volume::litres(20.0),
    chamber: Bore::metres(0.102_26),
    drain: USUAL_HOLE,
    storm: Hours::from_hours(6.0),
};
const USUAL_HOLE: Drain = Drain::Hole { diameter: Bore::metres(0.0005) };
const MONTHLY: Drain = Drain::ByHand { every: Days::from_days(30.0) };

/// Capture efficiency of a gutter and leaf screen when the maker gives none: 0.9 (DIN 1989-1:2002 and BS
/// 8515:2009, from memory; Toronto and Region Conservation Authority's LID guide says the same).
pub const USUAL_CAPTURE: Share = Share::of_one(0.9);

impl Feed {
    /// The numbers of the feed, with their ranges.
    pub fn numbers(&mut self) -> Vec<Number<'_>> {
        let mut numbers = vec![Number::new(Field::Capture, 0.0, 1.0, &mut self.capture)];
        if let Some(diverter) = &mut self.diverter {
            numbers.push(Number::new(Field::FlushVolume, 0.0, 5_000.0, &mut diverter.volume));
            numbers.push(Number::new(Field::ChamberBore, 0.02, 1.0, &mut diverter.chamber));
            match &mut diverter.drain {
                Drain::Hole { diameter } => numbers.push(Number::new(Field::HoleBore, 0.0, 0.05, diameter)),
                Drain::ByHand { every } => numbers.push(Number::new(Field::EmptiedEvery, 1.0, 366.0, every)),
                Drain::Never => {}
            }
            numbers.push(Number::new(Field::StormHours, 0.0, 24.0, &mut diverter.storm));
        }
        numbers
    }

    /// Whether there is a diverter and how it is emptied.
    pub fn drain_kind(&self) -> DrainKind {
        match self.diverter.as_ref().map(|diverter| diverter.drain) {
            None => DrainKind::NoDiverter,
            Some(Drain::Hole { .. }) => DrainKind::Hole,
            Some(Drain::ByHand { .. }) => DrainKind::ByHand,
            Some(Drain::Never) => DrainKind::Never,
        }
    }

    /// Takes a choice.
    pub(super) fn choose(&mut self, choice: Choice) {
        match choice {
            Choice::Part(tank) => self.tank = Some(tank),
            Choice::NoPart => self.tank = None,
            Choice::Drain(kind) => {
                let drain = match kind {
                    DrainKind::NoDiverter => {
                        self.diverter = None;
                        return;
                    }
                    DrainKind::Hole => USUAL_HOLE,
                    DrainKind::ByHand => MONTHLY,
                    DrainKind::Never => Drain::Never,
                };
                self.diverter.get_or_insert(USUAL_DIVERTER).drain = drain;
            }
            _ => {}
        }
    }
}

//! Uses: whatever draws water.

use super::barrier::Barrier;
use super::garden::Garden;
use super::part::{Choice, Field, Number, PartId};
use crate::quantity::{Count, Flow, Volume};

/// Something that draws water. Uses listed earlier are served first.
#[derive(Clone, Debug, PartialEq)]
pub struct Use {
    /// Its identity.
    pub id: PartId,
    /// What the household calls it.
    pub name: String,
    /// What kind it is.
    pub class: Class,
    /// The tank whose store it draws on, once chosen.
    pub tank: Option<PartId>,
    /// How much it draws.
    pub amount: Amount,
    /// Whether it is outdoors.
    pub outdoor: bool,
    /// What its water passes between tank and tap, in order.
    pub barriers: Vec<Barrier>,
}

/// What water is used for: uses of a class need water of one quality.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    /// Drinking and cooking.
    Drinking,
    /// Washing, toilets, laundry.
    House,
    /// Garden.
    Garden,
    /// Animals.
    Animals,
    /// A portable tank.
    Travel,
}

impl Class {
    /// All classes.
    pub const ALL: [Class; 5] = [Class::Drinking, Class::House, Class::Garden, Class::Animals, Class::Travel];
}

/// How much a use draws.
#[derive(Clone, Debug, PartialEq)]
pub enum Amount {
    /// The same every day, 0 to 1,000,000 L.
    Daily(Flow),
    /// So much for each head every day.
    PerHead {
        /// Litres a day for one, 0 to 10,000.
        each: Flow,
        /// How many, 0 to 10,000.
        heads: Count,
    },
    /// A day's amount in January to December, 0 to 1,000,000 L.
    Monthly([Flow; 12]),
    /// So much for each event, spread over the days of the week.
    PerEvent {
        /// Litres for one event, 0 to 100,000.
        each: Volume,
        /// Events in a week, 0 to 1,000.
        a_week: Count,
    },
    /// What a garden needs by the weather.
    Garden(Garden),
}

/// The ways of giving an amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AmountKind {
    /// The same every day.
    Daily,
    /// For each head.
    PerHead,
    /// Month by month.
    Monthly,
    /// For each event.
    PerEvent,
    /// By the weather.
    Garden,
}

impl AmountKind {
    /// All ways.
    pub const ALL: [AmountKind; 5] =
        [AmountKind::Daily, AmountKind::PerHead, AmountKind::Monthly, AmountKind::PerEvent, AmountKind::Garden];
}

const DAYS_A_WEEK: f64 = 7.0;

impl Amount {
    /// Which way it is given.
    pub fn kind(&self) -> AmountKind {
        match self {
            Amount::Daily(_) => AmountKind::Daily,
            Amount::PerHead { .. } => AmountKind::PerHead,
            Amount::Monthly(_) => AmountKind::Monthly,
            Amount::PerEvent { .. } => AmountKind::PerEvent,
            Amount::Garden(_) => AmountKind::Garden,
        }
    }

    /// Litres a day in a month (0 to 11); none of a garden's, whose need is known day by day only.
    pub fn litres_a_day(&self, month: usize) -> f64 {
        match self {
            Amount::Daily(flow) => flow.get(),
            Amount::PerHead { each, heads } => each.get() * heads.get(),
            Amount::Monthly(flows) => flows.get(month).map_or(0.0, |flow| flow.get()),
            Amount::PerEvent { each, a_week } => each.get() * a_week.get() / DAYS_A_WEEK,
            Amount::Garden(_) => 0.0,
        }
    }

    /// The mean over the months, in litres a day.
    pub fn mean(&self) -> f64 {
        (0..12).map(|month| self.litres_a_day(month)).sum::<f64>() / 12.0
    }

    /// Whether it is as much as another amount in the mean, as far as that can be said without the weather.
    pub fn comes_to_the_same(&self, other: &Amount) -> bool {
        let weather = [self, other].iter().any(|amount| amount.kind() == AmountKind::Garden);
        weather || (self.mean() - other.mean()).abs() <= 1e-9 * self.mean()
    }

    /// The same mean amount, given another way.
    fn given_as(&self, kind: AmountKind) -> Amount {
        let mean = self.mean();
        match kind {
            _ if kind == self.kind() => self.clone(),
            AmountKind::Daily => Amount::Daily(Flow::litres_a_day(mean)),
            AmountKind::PerHead => Amount::PerHead { each: Flow::litres_a_day(mean), heads: Count::number(1.0) },
            AmountKind::Monthly => {
                Amount::Monthly(std::array::from_fn(|month| Flow::litres_a_day(self.litres_a_day(month))))
            }
            AmountKind::PerEvent => Amount::PerEvent { each: Volume::litres(mean), a_week: Count::number(DAYS_A_WEEK) },
            AmountKind::Garden => Amount::Garden(Garden::default()),
        }
    }
}

impl Use {
    /// The numbers of the use, with their ranges.
    pub fn numbers(&mut self) -> Vec<Number<'_>> {
        match &mut self.amount {
            Amount::Daily(flow) => vec![Number::new(Field::Amount, 0.0, 1_000_000.0, flow)],
            Amount::PerHead { each, heads } => {
                vec![Number::new(Field::PerHead, 0.0, 10_000.0, each), Number::new(Field::Heads, 0.0, 10_000.0, heads)]
            }
            Amount::Monthly(flows) => (0u8..)
                .zip(flows)
                .map(|(month, flow)| Number::new(Field::Month(month), 0.0, 1_000_000.0, flow))
                .collect(),
            Amount::PerEvent { each, a_week } => vec![
                Number::new(Field::PerEvent, 0.0, 100_000.0, each),
                Number::new(Field::EventsAWeek, 0.0, 1_000.0, a_week),
            ],
            Amount::Garden(garden) => garden.numbers(),
        }
    }

    /// Takes a choice.
    pub(super) fn choose(&mut self, field: Field, choice: Choice) {
        match choice {
            Choice::Class(class) => {
                self.class = class;
                self.outdoor = matches!(class, Class::Garden | Class::Animals);
            }
            Choice::Amount(kind) => {
                self.amount = self.amount.given_as(kind);
                if kind == AmountKind::Garden {
                    (self.class, self.outdoor) = (Class::Garden, true);
                }
            }
            Choice::Outdoor(outdoor) => self.outdoor = outdoor,
            Choice::Part(tank) => self.tank = Some(tank),
            Choice::NoPart => self.tank = None,
            Choice::HeadFigure(Some(figure)) => {
                if let Amount::PerHead { each, .. } = &mut self.amount {
                    *each = figure.litres_a_day();
                }
            }
            _ => {
                if let Amount::Garden(garden) = &mut self.amount {
                    garden.choose(field, choice);
                }
            }
        }
    }
}

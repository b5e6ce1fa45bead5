//! A household's habits with water, from which the amounts of its uses can be worked out.

use super::part::PartId;
use super::system::System;
use super::uses::{Amount, Class};
use crate::quantity::volume::LITRES_PER_US_GALLON;
use crate::quantity::{Count, Flow, Kind, Range, Volume};

/// What people do with water at home.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Habit {
    /// Drinking.
    Drinking,
    /// Cooking.
    Cooking,
    /// Hands, face and teeth at a running tap, by the minute.
    Taps,
    /// Showers.
    Shower,
    /// Baths.
    Bath,
    /// Flushing the toilet.
    Toilet,
    /// Laundry.
    Laundry,
    /// Dishes by hand.
    Dishes,
    /// A dishwasher.
    Dishwasher,
    /// Cleaning the house.
    Cleaning,
}

/// Who does a habit, and in what time its times are counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// Each person, a day.
    PersonDay,
    /// Each person, a week.
    PersonWeek,
    /// The household, a day.
    HouseDay,
    /// The household, a week.
    HouseWeek,
}

/// US gallons in litres.
const fn gallons(number: f64) -> f64 {
    number * LITRES_PER_US_GALLON
}

impl Habit {
    /// All habits, as they are asked for.
    pub const ALL: [Habit; 10] = [
        Habit::Drinking,
        Habit::Cooking,
        Habit::Taps,
        Habit::Shower,
        Habit::Bath,
        Habit::Toilet,
        Habit::Laundry,
        Habit::Dishes,
        Habit::Dishwasher,
        Habit::Cleaning,
    ];

    /// Whether its water is swallowed.
    pub const fn is_drunk(self) -> bool {
        matches!(self, Habit::Drinking | Habit::Cooking)
    }

    /// How its times are counted.
    pub const fn basis(self) -> Basis {
        match self {
            Habit::Drinking | Habit::Cooking | Habit::Taps | Habit::Toilet => Basis::PersonDay,
            Habit::Shower | Habit::Bath => Basis::PersonWeek,
            Habit::Dishes => Basis::HouseDay,
            Habit::Laundry | Habit::Dishwasher | Habit::Cleaning => Basis::HouseWeek,
        }
    }

    /// Published litres for one time, to choose from; the first is what it starts from. Their sources are in
    /// `words::habits::figures`, in the same order.
    pub const fn figures(self) -> &'static [f64] {
        match self {
            Habit::Drinking => &[3.0, 2.0],
            Habit::Cooking => &[6.0, 3.0],
            Habit::Taps => const { &[gallons(1.5), gallons(2.2)] },
            Habit::Shower => const { &[gallons(10.0), gallons(15.8), 15.0] },
            Habit::Bath => const { &[gallons(20.2), 100.0] },
            Habit::Toilet => const { &[gallons(1.28), gallons(1.6), gallons(3.5), 0.0] },
            Habit::Laundry => const { &[gallons(31.0), gallons(14.0), 40.0] },
            Habit::Dishes => &[15.0],
            Habit::Dishwasher => const { &[gallons(6.1), gallons(3.5)] },
            Habit::Cleaning => &[10.0],
        }
    }

    /// How often it is done, until the household says: flushes after the Water Research Foundation's 4309b (2016; 5.0
    /// a day for each person, from memory), the rest a guess to be replaced.
    const fn usual_times(self) -> f64 {
        match self {
            Habit::Drinking | Habit::Cooking => 1.0,
            Habit::Taps | Habit::Dishes => 2.0,
            Habit::Shower | Habit::Toilet => 5.0,
            Habit::Laundry | Habit::Cleaning => 3.0,
            Habit::Bath | Habit::Dishwasher => 0.0,
        }
    }
}

/// The habits of a household.
#[derive(Clone, Debug, PartialEq)]
pub struct Habits {
    /// People, 0 to 1,000.
    pub people: Count,
    /// What they do, in the order of [`Habit::ALL`].
    pub lines: Vec<HabitLine>,
}

/// One habit: how often, how much, and which use it belongs to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HabitLine {
    /// The habit.
    pub habit: Habit,
    /// Times in its basis, 0 to 1,000.
    pub times: Count,
    /// Litres for one time, 0 to 10,000.
    pub each: Volume,
    /// The use that it belongs to; `None` is water from elsewhere.
    pub to: Option<PartId>,
}

/// A number of the habits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HabitValue {
    /// The people.
    People,
    /// How often.
    Times(Habit),
    /// How much for one time.
    Each(Habit),
}

impl HabitValue {
    /// What it may be, and its kind.
    pub const fn range(self) -> (Kind, Range) {
        match self {
            HabitValue::People | HabitValue::Times(_) => (Kind::Count, Range::new(0.0, 1_000.0)),
            HabitValue::Each(_) => (Kind::Volume, Range::new(0.0, 10_000.0)),
        }
    }
}

const DAYS_A_WEEK: f64 = 7.0;

impl Habits {
    /// Habits to start from: published figures; drinking and cooking go to the first use of that class, or to water from
    /// elsewhere, all else to the first of the house, or to that for drinking.
    pub fn usual(system: &System) -> Self {
        let first = |class| system.uses.iter().find(|using| using.class == class).map(|using| using.id);
        let (drinking, house) = (first(Class::Drinking), first(Class::House));
        let heads = system.uses.iter().find_map(|using| match using.amount {
            Amount::PerHead { heads, .. } if using.class != Class::Animals => Some(heads),
            _ => None,
        });
        let line = |habit: Habit| HabitLine {
            habit,
            times: Count::number(habit.usual_times()),
            each: Volume::litres(habit.figures()[0]),
            to: if habit.is_drunk() { drinking } else { house.or(drinking) },
        };
        Self { people: heads.unwrap_or(Count::number(2.0)), lines: Habit::ALL.map(line).into() }
    }

    /// The line of a habit.
    pub fn line(&self, habit: Habit) -> Option<&HabitLine> {
        self.lines.iter().find(|line| line.habit == habit)
    }

    /// The line of a habit, to change.
    pub fn line_mut(&mut self, habit: Habit) -> Option<&mut HabitLine> {
        self.lines.iter_mut().find(|line| line.habit == habit)
    }

    /// A number of them.
    pub fn get(&self, value: HabitValue) -> f64 {
        match value {
            HabitValue::People => self.people.get(),
            HabitValue::Times(habit) => self.line(habit).map_or(0.0, |line| line.times.get()),
            HabitValue::Each(habit) => self.line(habit).map_or(0.0, |line| line.each.get()),
        }
    }

    /// Sets a number that is within its range; else nothing changes.
    pub fn set(&mut self, value: HabitValue, number: f64) {
        if !value.range().1.holds(number) {
            return;
        }
        match value {
            HabitValue::People => self.people = Count::number(number),
            HabitValue::Times(habit) => {
                if let Some(line) = self.line_mut(habit) {
                    line.times = Count::number(number);
                }
            }
            HabitValue::Each(habit) => {
                if let Some(line) = self.line_mut(habit) {
                    line.each = Volume::litres(number);
                }
            }
        }
    }

    /// What a line comes to in litres a day.
    pub fn litres_a_day(&self, line: &HabitLine) -> f64 {
        let once = line.times.get() * line.each.get();
        match line.habit.basis() {
            Basis::PersonDay => once * self.people.get(),
            Basis::PersonWeek => once * self.people.get() / DAYS_A_WEEK,
            Basis::HouseDay => once,
            Basis::HouseWeek => once / DAYS_A_WEEK,
        }
    }

    /// Each use that a habit belongs to, with what it comes to in litres a day.
    pub fn by_use(&self) -> Vec<(PartId, f64)> {
        let mut uses: Vec<(PartId, f64)> = Vec::new();
        for line in &self.lines {
            let Some(to) = line.to else { continue };
            match uses.iter_mut().find(|(using, _)| *using == to) {
                Some((_, litres)) => *litres += self.litres_a_day(line),
                None => uses.push((to, self.litres_a_day(line))),
            }
        }
        uses
    }

    /// The uses from which it is drunk though they are for something else.
    pub fn drunk_amiss(&self, system: &System) -> Vec<PartId> {
        let drunk = |using: PartId| {
            self.lines
                .iter()
                .any(|line| line.to == Some(using) && line.habit.is_drunk() && self.litres_a_day(line) > 0.0)
        };
        let others = system.uses.iter().filter(|using| using.class != Class::Drinking);
        others.map(|using| using.id).filter(|using| drunk(*using)).collect()
    }

    /// The amount of a use for so many litres a day: shared out among the people, if there are any.
    pub fn amount(&self, litres_a_day: f64) -> Amount {
        let people = self.people.get();
        if people > 0.0 {
            Amount::PerHead { each: Flow::litres_a_day(litres_a_day / people), heads: self.people }
        } else {
            Amount::Daily(Flow::litres_a_day(litres_a_day))
        }
    }
}

impl System {
    /// Its habits, or those to start from.
    pub fn habits_or_usual(&self) -> Habits {
        self.habits.clone().unwrap_or_else(|| Habits::usual(self))
    }

    /// Gives each use that a habit belongs to what its habits come to.
    pub fn put_habits(&mut self) {
        let habits = self.habits_or_usual();
        for (id, litres) in habits.by_use() {
            if let Some(using) = self.uses.iter_mut().find(|using| using.id == id) {
                using.amount = habits.amount(litres);
            }
        }
        self.habits = Some(habits);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;

    #[test]
    fn habits_are_put_into_the_uses_that_they_belong_to() {
        let mut system = demo::site().system;
        let mut habits = Habits::usual(&system);
        assert_eq!(habits.people.get(), 3.0);
        for habit in Habit::ALL {
            habits.set(HabitValue::Times(habit), 0.0);
        }
        // By hand, three people: 2 L to drink each day: 6 L; 7 showers a week of 30 L each: 90 L; 7 loads a week of 50 L: 50 L.
        for (habit, times, each) in
            [(Habit::Drinking, 1.0, 2.0), (Habit::Shower, 7.0, 30.0), (Habit::Laundry, 7.0, 50.0)]
        {
            habits.set(HabitValue::Times(habit), times);
            habits.set(HabitValue::Each(habit), each);
        }
        habits.set(HabitValue::People, -1.0);
        assert_eq!(habits.people.get(), 3.0, "a number out of range changes nothing");
        system.habits = Some(habits);
        system.put_habits();
        let daily = |at: usize| system.uses[at].amount.litres_a_day(0);
        assert!((daily(0) - 6.0).abs() < 1e-12 && (daily(1) - 140.0).abs() < 1e-12, "{} {}", daily(0), daily(1));
        // The garden and the hens are as they were.
        assert_eq!(system.uses[2..], demo::site().system.uses[2..]);
    }

    #[test]
    fn nothing_is_drunk_from_a_use_for_something_else_unless_somebody_says_so() {
        let mut system = demo::site().system;
        system.uses.retain(|using| using.class != Class::Drinking);
        let mut habits = Habits::usual(&system);
        let goes_to = |habits: &Habits, habit| habits.line(habit).and_then(|line| line.to);
        assert_eq!([Habit::Drinking, Habit::Cooking].map(|habit| goes_to(&habits, habit)), [None, None]);
        assert!(goes_to(&habits, Habit::Shower).is_some());
        assert_eq!(habits.drunk_amiss(&system), []);
        let house = goes_to(&habits, Habit::Shower);
        habits.lines[0].to = house;
        assert_eq!(habits.drunk_amiss(&system), house.into_iter().collect::<Vec<_>>());
        habits.set(HabitValue::Times(Habit::Drinking), 0.0);
        assert_eq!(habits.drunk_amiss(&system), []);
    }

    #[test]
    fn without_people_what_the_house_uses_remains() {
        let mut habits = Habits::usual(&demo::site().system);
        habits.set(HabitValue::People, 0.0);
        let total: f64 = habits.by_use().iter().map(|(_, litres)| litres).sum();
        let house: f64 = [Habit::Laundry, Habit::Dishes, Habit::Dishwasher, Habit::Cleaning]
            .iter()
            .filter_map(|habit| habits.line(*habit))
            .map(|line| habits.litres_a_day(line))
            .sum();
        assert!((total - house).abs() < 1e-12 && total > 0.0);
        assert!(matches!(habits.amount(total), Amount::Daily(_)));
    }
}

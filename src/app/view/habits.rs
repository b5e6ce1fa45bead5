//! A household's habits, as they are shown on the sheet of a use.

use crate::quantity::{Kind, Units, shown};
use crate::site::habits::{Habit, HabitValue, Habits};
use crate::site::part::PartId;
use crate::site::system::System;
use crate::words::habits as say;

/// A number of them as text.
pub fn number(habits: &Habits, value: HabitValue, units: &Units) -> String {
    shown::entered(habits.get(value), value.range().0, units)
}

/// A habit in a line: what it comes to, and where it goes.
pub fn line(habits: &Habits, habit: Habit, system: &System, units: &Units) -> String {
    let Some(line) = habits.line(habit) else { return say::name(habit).to_owned() };
    let to = line.to.map_or_else(|| say::ELSEWHERE.to_owned(), |using| system.name_of(using));
    format!("{}: {} → {to}", say::name(habit), shown::figure(habits.litres_a_day(line), Kind::Flow, units))
}

/// All of them in a sentence, and what is drunk from a use that isn't for it.
pub fn total(habits: &Habits, system: &System, units: &Units) -> String {
    let name = |(using, litres)| (system.name_of(using), litres);
    let by_use: Vec<(String, f64)> = habits.by_use().into_iter().map(name).collect();
    let mut told = vec![say::total(&by_use, habits.people.get(), units)];
    told.extend(habits.drunk_amiss(system).into_iter().map(|using| say::drunk_amiss(&system.name_of(using))));
    told.join(" ")
}

/// The published figures of a habit in words, the household's own first, and the one that holds.
pub fn figures(habits: &Habits, habit: Habit) -> (Vec<String>, usize) {
    let mut words = vec![say::OWN.to_owned()];
    words.extend(say::figures(habit).iter().map(|figure| (*figure).to_owned()));
    let each = habits.get(HabitValue::Each(habit));
    let holds = habit.figures().iter().position(|figure| (figure - each).abs() < 1e-9);
    (words, holds.map_or(0, |place| place + 1))
}

/// Where a habit may go: elsewhere, or to any use; and where it goes.
pub fn places(habits: &Habits, habit: Habit, system: &System) -> (Vec<Option<PartId>>, usize) {
    let mut places = vec![None];
    places.extend(system.uses.iter().map(|using| Some(using.id)));
    let to = habits.line(habit).and_then(|line| line.to);
    let holds = places.iter().position(|place| *place == to).unwrap_or(0);
    (places, holds)
}

//! A household's habits.

use super::part_id;
use crate::quantity::{Count, Volume};
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{list, number, object};
use crate::site::habits::{Habit, HabitLine, Habits};

pub(super) fn read(place: &Place<'_>) -> Read<Habits> {
    Ok(Habits { people: Count::number(place.number("people")?), lines: place.list("lines", read_line)? })
}

pub(super) fn write(habits: &Habits) -> Value {
    object(vec![("people", number(habits.people.get())), ("lines", list(&habits.lines, write_line))])
}

fn read_line(place: &Place<'_>) -> Read<HabitLine> {
    Ok(HabitLine {
        habit: place.at("habit")?.as_one_of(&Habit::ALL, habit_name)?,
        times: Count::number(place.number("times")?),
        each: Volume::litres(place.number("each")?),
        to: part_id::read_if_any(place, "to")?,
    })
}

fn write_line(line: &HabitLine) -> Value {
    object(vec![
        ("habit", habit_name(line.habit).into()),
        ("times", number(line.times.get())),
        ("each", number(line.each.get())),
        ("to", part_id::write_if_any(line.to)),
    ])
}

fn habit_name(habit: Habit) -> &'static str {
    match habit {
        Habit::Drinking => "drinking",
        Habit::Cooking => "cooking",
        Habit::Taps => "taps",
        Habit::Shower => "shower",
        Habit::Bath => "bath",
        Habit::Toilet => "toilet",
        Habit::Laundry => "laundry",
        Habit::Dishes => "dishes",
        Habit::Dishwasher => "dishwasher",
        Habit::Cleaning => "cleaning",
    }
}

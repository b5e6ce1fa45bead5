//! Habits from which amounts are worked out, on the sheet of a use.

use leptos::prelude::*;

use super::Desk;
use super::choose::Choose;
use super::element::{element, worded};
use super::field::QuantityField;
use crate::app::case::Case;
use crate::app::event::Event;
use crate::app::view::habits;
use crate::quantity::Units;
use crate::site::habits::{Habit, HabitValue, Habits};
use crate::site::system::System;
use crate::words::habits as say;

/// Reads something of the open site's habits.
fn read<T: Default>(case: &Case, read: impl FnOnce(&Habits, &System, &Units) -> T) -> T {
    let Some(kept) = case.shown().0 else { return T::default() };
    let system = &kept.site.system;
    read(&system.habits_or_usual(), system, &case.units)
}

/// The habits, folded.
pub(crate) fn folded(desk: Desk) -> AnyView {
    let total = move || desk.case.with(|case| read(case, habits::total));
    element("DETAILS")
        .class("habits")
        .child(worded("SUMMARY", say::TITLE))
        .child(worded("P", say::HOW).class("small"))
        .child(element("DIV").class("fields").child(number(
            phrase!("People", "Personas").to_owned(),
            HabitValue::People,
            desk,
        )))
        .children(Habit::ALL.map(|habit| line(habit, desk)))
        .child(element("P").attribute("role", "status").live_text(total))
        .child(desk.button(say::PUT, Event::HabitsPut).class("main"))
        .into()
}

fn number(label: String, value: HabitValue, desk: Desk) -> AnyView {
    let (kind, range) = value.range();
    QuantityField {
        label,
        hint: None,
        text: Box::new(move || {
            desk.case.with(|case| read(case, |habits, _, units| habits::number(habits, value, units)))
        }),
        kind,
        range,
        on_entered: Box::new(move |number| desk.send.run(Event::HabitEntered(value, number))),
    }
    .view(desk)
}

fn line(habit: Habit, desk: Desk) -> AnyView {
    let told =
        move || desk.case.with(|case| read(case, |habits, system, units| habits::line(habits, habit, system, units)));
    let figures = Choose {
        label: phrase!("Published figure", "Cifra publicada").to_owned(),
        hint: None,
        options: Box::new(move || desk.case.with(|case| read(case, |habits, _, _| habits::figures(habits, habit)))),
        on_chosen: Box::new(move |at| {
            if let Some(place) = at.checked_sub(1) {
                desk.send.run(Event::HabitFigureChosen(habit, place));
            }
        }),
    };
    let places = Choose {
        label: phrase!("Belongs to", "Pertenece a").to_owned(),
        hint: None,
        options: Box::new(move || {
            desk.case.with(|case| {
                read(case, |habits, system, _| {
                    let (places, holds) = habits::places(habits, habit, system);
                    let name =
                        |place: Option<_>| place.map_or_else(|| say::ELSEWHERE.to_owned(), |id| system.name_of(id));
                    (places.into_iter().map(name).collect(), holds)
                })
            })
        }),
        on_chosen: Box::new(move |at| {
            let to = desk.case.with_untracked(|case| {
                read(case, |habits, system, _| habits::places(habits, habit, system).0.get(at).copied())
            });
            if let Some(to) = to {
                desk.send.run(Event::HabitGoesTo(habit, to));
            }
        }),
    };
    let fields = element("DIV")
        .class("fields")
        .child(number(say::times(habit).to_owned(), HabitValue::Times(habit), desk))
        .child(number(say::each(habit).to_owned(), HabitValue::Each(habit), desk))
        .child(figures)
        .child(places);
    element("DETAILS").child(element("SUMMARY").live_text(told)).child(fields).into()
}

//! Habits and climate: entered, and put into the uses; in a trial, if one is open.

use crate::app::effect::Effect;
use crate::app::model::{Model, Notice};
use crate::quantity::Volume;
use crate::site::climate::{Climate, ClimateValue};
use crate::site::habits::{Habit, HabitValue, Habits};
use crate::site::part::PartId;

use super::house::{change_system, told};
use crate::site::system::System;

pub(super) fn climate_way(model: &mut Model, temperatures: bool) -> Vec<Effect> {
    let is_given_so = |climate: &Climate| temperatures == matches!(climate, Climate::Temperatures { .. });
    if model.shown_site().and_then(|kept| kept.site.system.climate.as_ref().map(is_given_so)) == Some(true) {
        return Vec::new();
    }
    let unknown = if temperatures { Climate::NO_TEMPERATURES } else { Climate::NO_REFERENCE_ET };
    let wanted = model.climate_before.take().filter(is_given_so).unwrap_or(unknown);
    let mut before = None;
    let effects = change_system(model, |system| before = system.climate.replace(wanted));
    model.climate_before = before;
    effects
}

pub(super) fn climate_entered(model: &mut Model, value: ClimateValue, number: f64) -> Vec<Effect> {
    change_system(model, |system| {
        if let Some(climate) = &mut system.climate {
            climate.set(value, number);
        }
    })
}

fn habits(model: &mut Model, edit: impl FnOnce(&mut Habits)) -> Vec<Effect> {
    change_system(model, |system| {
        let mut habits = system.habits_or_usual();
        edit(&mut habits);
        system.habits = Some(habits);
    })
}

pub(super) fn habit_entered(model: &mut Model, value: HabitValue, number: f64) -> Vec<Effect> {
    habits(model, |habits| habits.set(value, number))
}

pub(super) fn habit_figure(model: &mut Model, habit: Habit, place: usize) -> Vec<Effect> {
    habits(model, |habits| {
        if let (Some(line), Some(litres)) = (habits.line_mut(habit), habit.figures().get(place)) {
            line.each = Volume::litres(*litres);
        }
    })
}

pub(super) fn habit_goes(model: &mut Model, habit: Habit, to: Option<PartId>) -> Vec<Effect> {
    habits(model, |habits| {
        if let Some(line) = habits.line_mut(habit) {
            line.to = to;
        }
    })
}

pub(super) fn put_habits(model: &mut Model) -> Vec<Effect> {
    let Some(shown) = model.shown_site() else { return Vec::new() };
    told(model, shown, Notice::HabitsPut);
    model.sheet = None;
    change_system(model, System::put_habits)
}

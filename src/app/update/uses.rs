//! Habits and climate: entered, and put into the uses.

use std::sync::Arc;

use crate::app::effect::Effect;
use crate::app::model::{Model, Notice, Undo};
use crate::quantity::Volume;
use crate::site::climate::{Climate, ClimateValue};
use crate::site::habits::{Habit, HabitValue, Habits};
use crate::site::part::PartId;

use super::sites::{change, put};

pub(super) fn climate_way(model: &mut Model, temperatures: bool) -> Vec<Effect> {
    change(model, |site| {
        let climate = &mut site.system.climate;
        if climate.is_none() || temperatures != matches!(climate, Some(Climate::Temperatures { .. })) {
            *climate = Some(if temperatures { Climate::NO_TEMPERATURES } else { Climate::NO_REFERENCE_ET });
        }
    })
}

pub(super) fn climate_entered(model: &mut Model, value: ClimateValue, number: f64) -> Vec<Effect> {
    change(model, |site| {
        if let Some(climate) = &mut site.system.climate {
            climate.set(value, number);
        }
    })
}

fn habits(model: &mut Model, edit: impl FnOnce(&mut Habits)) -> Vec<Effect> {
    change(model, |site| {
        let mut habits = site.system.habits_or_usual();
        edit(&mut habits);
        site.system.habits = Some(habits);
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
    let Some(kept) = model.site_mut() else { return Vec::new() };
    let mut site = (*kept.site).clone();
    site.system.put_habits();
    let undo = Undo::Site(kept.id, Arc::clone(&kept.site));
    let effects = put(kept, site);
    model.undo = Some(undo);
    model.notice = Some(Notice::TrialKept);
    model.sheet = None;
    effects
}

//! A garden by the weather: its soil as a bucket that rain and watering fill and the plants empty.
//!
//! Source: FAO Irrigation and Drainage Paper 56 (1998), ch. 8: total and readily available water (eqs 82, 83), water
//! stress (84), the daily balance of the root zone (85). Taken as 0 there and here: runoff from the bed, capillary rise.

use chrono::{Datelike, NaiveDate};

use super::rule::Bound;
use crate::engine::reference_et;
use crate::site::garden::Garden;
use crate::site::system::System;
use crate::site::uses::{Amount, Use};

use super::plan::Plan;

const MILLIMETRES_PER_METRE: f64 = 1000.0;
/// Crop coefficient of the bed outside its season: bare soil that is wetted now and then (FAO-56, Table 12, K_c ini of
/// annual crops, 0.15 to 0.4 where it seldom rains: from memory; 0.3 is common practice).
const BARE_SOIL: f64 = 0.3;

/// A garden lowered to numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct GardenPlan {
    /// The use that it is.
    pub using: usize,
    /// What the plants would drink on a day of each month, in mm: crop coefficient times reference evapotranspiration,
    /// that of bare soil outside the season.
    pub etc_mm: [f64; 12],
    /// Whether it is watered in a month.
    pub grows: [bool; 12],
    /// Litres drawn for each mm that reaches the roots: area over efficiency.
    pub litres_per_mm: f64,
    /// Total available water of the root zone, in mm.
    pub taw_mm: f64,
    /// Readily available water, in mm: beyond it plants suffer.
    pub raw_mm: f64,
}

/// Lowers a garden that stands in a month-by-month reference evapotranspiration of `et0_mm` a day.
fn garden_plan(using: usize, garden: &Garden, et0_mm: &[f64; 12]) -> GardenPlan {
    let taw_mm = MILLIMETRES_PER_METRE * garden.available_water.get() * garden.root_depth.get();
    let grows = std::array::from_fn(|month| u8::try_from(month).is_ok_and(|month| garden.grows_in(month)));
    GardenPlan {
        using,
        etc_mm: std::array::from_fn(|month| {
            et0_mm[month] * if grows[month] { garden.crop_coefficient.get() } else { BARE_SOIL }
        }),
        grows,
        litres_per_mm: garden.area.get() / garden.efficiency.get(),
        taw_mm,
        raw_mm: garden.depletion.get() * taw_mm,
    }
}

/// The gardens of a system; none without a climate that is known, which is a finding of such a system.
pub(super) fn gardens(system: &System) -> Vec<GardenPlan> {
    let Some(climate) = system.climate.as_ref().filter(|climate| climate.is_known()) else { return Vec::new() };
    let et0_mm = reference_et::by_month(climate);
    let mut gardens = Vec::new();
    for (at, using) in system.uses.iter().enumerate() {
        if let Amount::Garden(garden) = &using.amount {
            gardens.push(garden_plan(at, garden, &et0_mm));
        }
    }
    gardens
}

/// What a garden draws in a month (0 to 11) without any rain, in litres a day: the most that it can want.
fn litres_a_day_without_rain(plan: &GardenPlan, month: usize) -> f64 {
    if plan.grows[month] { plan.etc_mm[month] * plan.litres_per_mm } else { 0.0 }
}

/// What some uses of a system draw in each month, in litres a day; of a garden by the weather what it would draw without
/// any rain.
pub fn litres_a_day_of(system: &System, counts: impl Fn(&Use) -> bool) -> [f64; 12] {
    let gardens = gardens(system);
    let mut litres = [0.0; 12];
    for (at, using) in system.uses.iter().enumerate().filter(|(_, using)| counts(using)) {
        let garden = gardens.iter().find(|garden| garden.using == at);
        for (month, litres) in litres.iter_mut().enumerate() {
            *litres += using.amount.litres_a_day(month);
            *litres += garden.map_or(0.0, |garden| litres_a_day_without_rain(garden, month));
        }
    }
    litres
}

/// The same over the days after `from` up to `to`, in litres.
pub fn litres_between(system: &System, counts: impl Fn(&Use) -> bool, from: NaiveDate, to: NaiveDate) -> f64 {
    let litres = litres_a_day_of(system, counts);
    let days = from.iter_days().skip(1).take_while(|date| *date <= to);
    days.map(|date| litres[date.month0() as usize]).sum()
}

/// What all uses draw, in litres a day in the mean of the months.
pub fn litres_a_day_of_all(system: &System) -> f64 {
    litres_a_day_of(system, |_| true).iter().sum::<f64>() / 12.0
}

/// What a garden went through over a run. Depths are over its whole area.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct GardenTally {
    /// The use that it is.
    pub using: usize,
    /// Rain that stayed in the root zone, in mm.
    pub rain_mm: f64,
    /// Rain beyond what the soil could hold, in mm.
    pub percolated_mm: f64,
    /// Watering that reached the roots, in mm.
    pub watered_mm: f64,
    /// What plants and soil gave to the air, in mm.
    pub drunk_mm: f64,
    /// What they would have given with water enough, in mm.
    pub potential_mm: f64,
    /// Days on which it was watered.
    pub watered_days: usize,
    /// Days of the season on which the plants suffered: their root zone was depleted beyond what is readily available.
    pub thirsty_days: usize,
    /// How far the root zone is below field capacity when the run ends, in mm.
    pub depletion_last_mm: f64,
}

/// The root zone of a garden between and within days.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct RootZone {
    /// How far it is below field capacity, in mm: 0 to the total available water.
    pub depletion_mm: f64,
    /// What the garden wants of its store today, in L.
    pub wanted_l: f64,
}

/// The day begins: rain fills the root zones, what is too much percolates, and each garden in its season wants what
/// keeps it from being depleted beyond the readily available water today, though no more than a day's use. So a garden
/// is watered once depletion has come so far, and what it missed yesterday is not asked for again today.
pub(super) fn wake(plan: &Plan, zones: &mut [RootZone], tallies: &mut [GardenTally], month: usize, rain_mm: f64) {
    for ((garden, zone), tally) in plan.gardens.iter().zip(zones).zip(tallies) {
        let kept_mm = rain_mm.least(zone.depletion_mm);
        zone.depletion_mm -= kept_mm;
        tally.rain_mm += kept_mm;
        tally.percolated_mm += rain_mm - kept_mm;
        let etc_mm = garden.etc_mm[month];
        let need_mm = (zone.depletion_mm + etc_mm - garden.raw_mm).most(0.0).least(etc_mm);
        zone.wanted_l = if garden.grows[month] { need_mm * garden.litres_per_mm } else { 0.0 };
    }
}

/// The day ends: watering has come, and the plants have drunk by `K_s` of what they would (eq. 84, on the depletion
/// after rain and watering).
pub(super) fn drink(plan: &Plan, zones: &mut [RootZone], tallies: &mut [GardenTally], month: usize, yield_l: &[f64]) {
    for ((garden, zone), tally) in plan.gardens.iter().zip(zones).zip(tallies) {
        let given_l = yield_l[garden.using];
        let etc_mm = garden.etc_mm[month];
        let watered_mm = if given_l > 0.0 { given_l / garden.litres_per_mm } else { 0.0 };
        let before_mm = zone.depletion_mm - watered_mm;
        let stress = if before_mm <= garden.raw_mm {
            1.0
        } else {
            (garden.taw_mm - before_mm) / (garden.taw_mm - garden.raw_mm)
        };
        let drunk_mm = (stress * etc_mm).least(garden.taw_mm - before_mm);
        // Below 0 by rounding alone: no more is watered than is drunk.
        zone.depletion_mm = (before_mm + drunk_mm).most(0.0);
        tally.watered_mm += watered_mm;
        tally.drunk_mm += drunk_mm;
        tally.potential_mm += etc_mm;
        tally.watered_days += usize::from(watered_mm > 0.0);
        tally.thirsty_days += usize::from(garden.grows[month] && drunk_mm < etc_mm * (1.0 - 1e-9));
        tally.depletion_last_mm = zone.depletion_mm;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Area, Count, Length, Share};

    /// 10 m² with K_c 1.2 in a soil of 100 mm (0.2 × 0.5 m), half of it readily available, four fifths of the water
    /// reaching the roots, where 5 mm evaporate a day: 6 mm drunk a day, 12.5 L drawn for a mm.
    fn bed() -> GardenPlan {
        let garden = Garden {
            area: Area::square_metres(10.0),
            crop_coefficient: Count::number(1.2),
            available_water: Share::of_one(0.2),
            root_depth: Length::metres(0.5),
            depletion: Share::of_one(0.5),
            efficiency: Share::of_one(0.8),
            grows_from: 4,
            grows_to: 8,
            ..Garden::default()
        };
        garden_plan(0, &garden, &[5.0; 12])
    }

    #[test]
    fn a_garden_is_lowered_by_hand() {
        let bed = bed();
        let close = |ours: f64, by_hand: f64| assert!((ours - by_hand).abs() < 1e-12, "{ours} {by_hand}");
        close(bed.taw_mm, 100.0);
        close(bed.raw_mm, 50.0);
        close(bed.litres_per_mm, 12.5);
        close(bed.etc_mm[6], 6.0);
        // Out of season: 0.3 of 5 mm.
        close(bed.etc_mm[0], 1.5);
        assert_eq!(bed.grows.iter().filter(|grows| **grows).count(), 5);
    }
}

//! How much stands in the tanks on this day of a middle year, in one place: no reading goes into it.

use super::Asked;
use crate::engine::measures::percentiles::on_day;
use crate::engine::question::Answer;
use crate::site::part::PartId;
use chrono::NaiveDate;

/// Live water in each store of the plan, in L: the middle of the record on this day of the year; empty where
/// no year of it has that day.
pub fn live_l(answer: &Answer, today: NaiveDate) -> Vec<f64> {
    let middle = |live: &Vec<f64>| Some(on_day(&answer.series.dates, live, today)?.half);
    answer.series.live_l.iter().map(middle).collect::<Option<_>>().unwrap_or_default()
}

/// What stands in a tank then, dead storage full, in L; none without an answer.
pub fn content_l(asked: &Asked<'_>, tank: PartId) -> Option<f64> {
    let answer = asked.answer?;
    let tanks = &asked.site.system.tanks;
    let at = tanks.iter().position(|other| other.id == tank)?;
    let store = answer.plan.stores.iter().position(|store| store.tanks.contains(&at))?;
    let live = *live_l(answer, asked.today).get(store)?;
    let surface_m = answer.plan.stores[store].joined.surface_m(live);
    let level = (surface_m - tanks[at].floor.get()).max(tanks[at].outlet.get());
    Some(tanks[at].shape.volume_l(level))
}

//! How much stands in the tanks today: by the readings, or where there are none as on this day of a middle year.

use super::Asked;
use crate::engine::levels::{level_in_m, store_of};
use crate::engine::measures::percentiles::on_day;
use crate::engine::question::Answer;
use crate::site::part::PartId;
use chrono::NaiveDate;

/// Live water in each store of the plan today, in L; none without an answer, or where neither is known.
pub fn live_l(asked: &Asked<'_>) -> Option<Vec<f64>> {
    let answer = asked.answer?;
    let usual = usual_l(answer, asked.today);
    let read = |store| asked.read.and_then(|read| read.read_l(store));
    (0..answer.plan.stores.len()).map(|store| read(store).or_else(|| usual.get(store).copied())).collect()
}

/// Live water in each store of the plan, in L: the middle of the record on this day of the year; empty where
/// no year of it has that day.
pub fn usual_l(answer: &Answer, today: NaiveDate) -> Vec<f64> {
    let middle = |live: &Vec<f64>| Some(on_day(&answer.series.dates, live, today)?.half);
    answer.series.live_l.iter().map(middle).collect::<Option<_>>().unwrap_or_default()
}

/// What stands in a tank today, dead storage full, in L; none without an answer.
pub fn content_l(asked: &Asked<'_>, tank: PartId) -> Option<f64> {
    in_tank_l(asked, tank, |store| live_l(asked)?.get(store).copied())
}

/// The same by the readings alone; none where nobody read it.
pub fn read_l(asked: &Asked<'_>, tank: PartId) -> Option<f64> {
    in_tank_l(asked, tank, |store| asked.read?.read_l(store))
}

fn in_tank_l(asked: &Asked<'_>, tank: PartId, live_l: impl Fn(usize) -> Option<f64>) -> Option<f64> {
    let (plan, tank) = (&asked.answer?.plan, asked.site.system.tank(tank)?);
    let store = store_of(plan, &asked.site.system, tank.id)?;
    Some(tank.shape.volume_l(level_in_m(&plan.stores[store], tank, live_l(store)?)))
}

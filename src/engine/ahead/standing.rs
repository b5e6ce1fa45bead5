//! What stands in each store today, from the last readings.

use chrono::NaiveDate;

use super::ask::known;
use super::outlook::Outlook;
use crate::engine::balance::plan::{Plan, plan};
use crate::site::diary::Diary;
use crate::site::household::Site;
use crate::site::rain::Rain;

/// What stands today.
#[derive(Clone, Debug, PartialEq)]
pub struct Stands {
    /// The day of the reading from which it was reckoned on.
    pub read_on: NaiveDate,
    /// The day of the newest reading.
    pub last_read_on: NaiveDate,
    /// Live water in each store of the plan at the end of today, in L.
    pub live_l: Vec<f64>,
    /// Stores of which nothing was read, as places in the plan.
    pub unread: Vec<usize>,
    /// Days since the reading on which nobody measured the rain: reckoned as dry.
    pub unmeasured: usize,
}

/// By how much all that stands today, dead storage with it, is more than what would stand in a changed system, in L; with the
/// place in its list of the tank over whose rim that would run. None where nothing is read or it all finds room.
pub fn finds_no_room(site: &Site, with: &Site, diary: &Diary, today: NaiveDate) -> Option<(f64, usize)> {
    /// Readings tell a hundredth of what there is at best.
    const TOLD_FROM: f64 = 0.02;
    // What was rained and drawn since is left out of both.
    let all_l = |site: &Site| {
        let plan = plan(&site.system).ok()?;
        let (known, _) = known(&plan, site, None, diary, today)?;
        let dead_l = |store: &usize| plan.stores[*store].tanks.iter().map(|at| plan.dead_l(*at)).sum::<f64>();
        let mut live_l = known.live_l;
        known.events.iter().filter(|event| !event.brought).for_each(|event| live_l[event.store] = event.litres);
        let all_l: f64 =
            (0..live_l.len()).map(|store| live_l[store] + if live_l[store] > 0.0 { dead_l(&store) } else { 0.0 }).sum();
        let full =
            (0..live_l.len()).find(|at| live_l[*at] >= plan.stores[*at].joined.live_capacity_l && live_l[*at] > 0.0);
        let rim = full.and_then(|at| plan.stores[at].tanks.get(*plan.stores[at].joined.spills_at.first()?).copied());
        Some((all_l, rim))
    };
    let ((before_l, _), (after_l, rim)) = (all_l(site)?, all_l(with)?);
    let lost_l = before_l - after_l;
    rim.filter(|_| lost_l > TOLD_FROM * before_l).map(|rim| (lost_l, rim))
}

/// What stands today by the readings of a diary, reckoned on with the rain that was measured and what was brought;
/// none without a reading.
pub fn stands(plan: &Plan, site: &Site, rain: Option<&Rain>, diary: &Diary, today: NaiveDate) -> Option<Stands> {
    let (known, unread) = known(plan, site, rain, diary, today)?;
    let (read_on, last_read_on) = (known.read_on, known.last_read_on());
    let unmeasured = known.rain_mm.iter().filter(|mm| mm.is_none()).count();
    let outlook = Outlook::new(plan.clone(), site.reckoning.inflow_first.get(), known, Vec::new());
    let live_l = outlook.standing_today(&outlook.no_more_rain()).live_l;
    Some(Stands { read_on, last_read_on, live_l, unread, unmeasured })
}

//! What stands in each store today, from the last readings.

use chrono::NaiveDate;

use super::ask::known;
use super::outlook::Outlook;
use crate::engine::balance::plan::{Plan, plan};
use crate::engine::levels::store_of;
use crate::site::diary::Diary;
use crate::site::household::Site;
use crate::site::part::PartId;
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

impl Stands {
    /// Live water in a store of the plan at the end of today, in L; none where nobody read it.
    pub fn read_l(&self, store: usize) -> Option<f64> {
        self.live_l.get(store).copied().filter(|_| !self.unread.contains(&store))
    }
}

/// By how much all that stands today, dead storage with it, is more than what would stand in a changed system, in L; with the
/// place in its list of the tank at which the store of `tank` then overflows. None where nothing is read or it all finds
/// room.
pub fn finds_no_room(site: &Site, with: &Site, diary: &Diary, today: NaiveDate, tank: PartId) -> Option<(f64, usize)> {
    /// Readings tell a hundredth of what there is at best.
    const TOLD_FROM: f64 = 0.02;
    // What was rained and drawn since is left out of both.
    let stands = |site: &Site| {
        let plan = plan(&site.system).ok()?;
        let (known, _) = known(&plan, site, None, diary, today)?;
        let mut live_l = known.live_l;
        known.events.iter().filter(|event| !event.brought).for_each(|event| live_l[event.store] = event.litres);
        let wet = plan.stores.iter().zip(&live_l).filter(|(_, live_l)| **live_l > 0.0);
        let all_l: f64 = wet.map(|(store, live_l)| live_l + plan.dead_l(&store.tanks)).sum();
        Some((all_l, plan))
    };
    let ((before_l, _), (after_l, plan)) = (stands(site)?, stands(with)?);
    let lost_l = before_l - after_l;
    let store = plan.stores.get(store_of(&plan, &with.system, tank)?)?;
    let rim = store.tanks.get(*store.joined.spills_at.first()?)?;
    (lost_l > TOLD_FROM * before_l).then_some((lost_l, *rim))
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

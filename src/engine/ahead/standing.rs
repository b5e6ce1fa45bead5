//! What stands in each store today, from the last readings.

use chrono::NaiveDate;

use super::ask::known;
use super::outlook::Outlook;
use crate::engine::balance::plan::Plan;
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

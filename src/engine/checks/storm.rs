//! A storm of a depth and a duration: what comes to each feed and tank, when each is full, what spills where.

use super::now::live_l;
use super::{Asked, Check, Figure, Subject};
use crate::engine::balance::first_flush::full_head_l_s;
use crate::engine::balance::plan::{Plan, plan};
use crate::engine::levels::store_of;
use crate::quantity::order::sorted;
use crate::site::details::Detail;
use crate::site::feed::Feed;
use crate::site::tank::{OverflowTo, Tank};

const MINUTES_AN_HOUR: f64 = 60.0;

/// Water that arrives at a steady rate from an hour on, to the end of the storm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stream {
    /// Hour of the storm at which it begins.
    pub from_h: f64,
    /// Rate, in L/h.
    pub rate_l_h: f64,
}

/// What comes of streams into a store with some headroom.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Filled {
    /// What came, in L.
    pub came_l: f64,
    /// Hour at which it was full, if it was before the end.
    pub full_h: Option<f64>,
    /// What spilled, in L.
    pub spilled_l: f64,
    /// The spill as streams, for whoever takes it.
    pub spill: Vec<Stream>,
}

impl Filled {
    /// Rate of the spill at the end of the storm, in L/h.
    pub fn spill_rate_l_h(&self) -> f64 {
        self.spill.iter().map(|stream| stream.rate_l_h).sum()
    }
}

/// Fills a store: streams come, the headroom goes, the rest spills. Exact: between the beginnings of streams the rate is
/// steady.
pub fn fill(streams: &[Stream], headroom_l: f64, hours: f64) -> Filled {
    let mut filled = Filled::default();
    let mut begins: Vec<f64> = streams.iter().map(|stream| stream.from_h).filter(|from| *from < hours).collect();
    begins.push(hours);
    let begins = sorted(begins);
    for pair in begins.windows(2) {
        let rate: f64 = streams.iter().filter(|stream| stream.from_h <= pair[0]).map(|stream| stream.rate_l_h).sum();
        let left = headroom_l - filled.came_l;
        if filled.full_h.is_none() && rate > 0.0 && rate * (pair[1] - pair[0]) > left {
            filled.full_h = Some(pair[0] + left.max(0.0) / rate);
        }
        filled.came_l += rate * (pair[1] - pair[0]);
    }
    filled.spilled_l = (filled.came_l - headroom_l.max(0.0)).max(0.0);
    if let Some(full_h) = filled.full_h {
        filled.spill = streams
            .iter()
            .map(|stream| Stream { from_h: stream.from_h.max(full_h), ..*stream })
            .filter(|stream| stream.from_h < hours)
            .collect();
    }
    filled
}

/// A storm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Storm {
    /// Rain, in mm.
    pub depth_mm: f64,
    /// Hours.
    pub hours: f64,
}

/// What a feed passes to its tank: after its roofs are wet and its diverter is full, less what its hole lets out then. The
/// diverter is taken as empty when the storm begins, unless it never empties.
pub fn feed_stream(asked: &Asked<'_>, feed: &Feed, storm: Storm) -> Stream {
    let mut litres = 0.0;
    for section in &asked.site.system.sections {
        let share: f64 =
            section.outlets.iter().filter(|outlet| outlet.feed == feed.id).map(|outlet| outlet.share.get()).sum();
        let runs = (storm.depth_mm - section.wetting_loss.get()).max(0.0);
        litres += share * section.area.get() * section.runoff_coefficient.get() * runs;
    }
    litres *= feed.capture.get();
    let diverted = match &feed.diverter {
        Some(diverter) if diverter.drain != crate::site::feed::Drain::Never => diverter.volume.get(),
        _ => 0.0,
    };
    const SECONDS_AN_HOUR: f64 = 3600.0;
    let rate_l_h = litres / storm.hours;
    let from_h = if rate_l_h > 0.0 { diverted / rate_l_h } else { storm.hours };
    let drips_l_h = feed.diverter.as_ref().map_or(0.0, full_head_l_s) * SECONDS_AN_HOUR;
    Stream { from_h: from_h.min(storm.hours), rate_l_h: (rate_l_h - drips_l_h).max(0.0) }
}

/// What each store of the plan goes through, with the room that it has now.
pub struct Stores {
    /// The plan that the stores are of.
    pub plan: Plan,
    /// Headroom of each now, in L.
    pub headroom_l: Vec<f64>,
    /// What came of the storm in each.
    pub filled: Vec<Filled>,
}

/// Takes the storm through all stores, upstream first. None where the system can't run or nothing says how much stands in
/// it now.
pub fn through(asked: &Asked<'_>, storm: Storm) -> Option<Stores> {
    let plan = plan(&asked.site.system).ok()?;
    let live = live_l(asked)?;
    let system = &asked.site.system;
    let mut streams: Vec<Vec<Stream>> = vec![Vec::new(); plan.stores.len()];
    for feed in &system.feeds {
        if let Some(store) = feed.tank.and_then(|tank| store_of(&plan, system, tank)) {
            streams[store].push(feed_stream(asked, feed, storm));
        }
    }
    // Rain that falls into an open tank, as the balance counts it.
    for tank in &system.tanks {
        if let Some(store) = store_of(&plan, system, tank.id) {
            streams[store].push(Stream { from_h: 0.0, rate_l_h: tank.open_mouth_m2() * storm.depth_mm / storm.hours });
        }
    }
    let (mut headroom_l, mut filled) = (Vec::new(), Vec::new());
    for (at, store) in plan.stores.iter().enumerate() {
        let room = (store.joined.live_capacity_l - live.get(at)?).max(0.0);
        let result = fill(&streams[at], room, storm.hours);
        let spills_at = &store.joined.spills_at;
        #[expect(clippy::cast_precision_loss, reason = "a few tanks")]
        let part = 1.0 / spills_at.len().max(1) as f64;
        for tank in spills_at.iter().filter_map(|tank| system.tanks.get(*store.tanks.get(*tank)?)) {
            if let OverflowTo::Tank(other) = tank.overflow_to
                && let Some(other) = store_of(&plan, system, other)
            {
                streams[other]
                    .extend(result.spill.iter().map(|stream| Stream { rate_l_h: stream.rate_l_h * part, ..*stream }));
            }
        }
        headroom_l.push(room);
        filled.push(result);
    }
    Some(Stores { plan, headroom_l, filled })
}

fn storm_of(asked: &Asked<'_>, check: &mut Check) -> Storm {
    Storm { depth_mm: check.of_site(asked, Detail::StormDepth), hours: check.of_site(asked, Detail::StormDuration) }
}

/// What the storm brings to a feed.
pub(super) fn of_feed(asked: &Asked<'_>, feed: &Feed, checks: &mut Vec<Check>) {
    let mut check = Check::new(feed.id, Subject::StormFeed);
    check.known(Figure::RoofArea, super::flush::roof_area_m2(&asked.site.system, feed));
    let storm = storm_of(asked, &mut check);
    let stream = feed_stream(asked, feed, storm);
    check.finds(Figure::StormLitres, (storm.hours - stream.from_h) * stream.rate_l_h);
    check.finds(Figure::StormRate, stream.rate_l_h / MINUTES_AN_HOUR);
    check.finds(Figure::FlushFull, stream.from_h);
    checks.push(check);
}

/// What the storm does to the store of a tank.
pub(super) fn of_tank(asked: &Asked<'_>, tank: &Tank, checks: &mut Vec<Check>) {
    let mut check = Check::new(tank.id, Subject::StormTank);
    let storm = storm_of(asked, &mut check);
    let stores = through(asked, storm);
    let place = asked.site.system.tanks.iter().position(|other| other.id == tank.id);
    let found = stores.zip(place).and_then(|(stores, place)| {
        let at = stores.plan.stores.iter().position(|store| store.tanks.contains(&place))?;
        let store = &stores.plan.stores[at];
        let here = store.tanks.iter().position(|tank| *tank == place)?;
        let (headroom, filled) = (stores.headroom_l[at], stores.filled[at].clone());
        let full = store.joined.live_capacity_l;
        // Joined tanks stand at one level.
        let in_it = |live: f64| store.joined.live_of_each(store.joined.surface_m(live)).nth(here).unwrap_or(0.0);
        let stays = in_it((full - headroom + filled.came_l).min(full)) - in_it(full - headroom);
        Some((headroom, filled, stays))
    });
    match found {
        Some((headroom, filled, stays)) => {
            check.known(Figure::Headroom, headroom);
            check.finds(Figure::StormLitres, filled.came_l);
            check.finds(Figure::StormHere, stays);
            check.finds(Figure::SpillLitres, filled.spilled_l);
            if let Some(full_h) = filled.full_h {
                check.finds(Figure::FullAfter, full_h);
                check.finds(Figure::SpillRate, filled.spill_rate_l_h() / MINUTES_AN_HOUR);
            }
        }
        None => check.verdict = super::Verdict::Lacks,
    }
    checks.push(check);
}

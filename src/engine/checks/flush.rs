//! First flush: how much, how long the pipe, how soon it is empty again, what it costs.

use super::{Asked, Check, Figure, Subject, Verdict, chosen};
use crate::engine::balance::first_flush::{GRAVITY, HOLE_DISCHARGE, hole_l_s};
use crate::quantity::area::SQUARE_METRES_PER_SQUARE_FOOT;
use crate::quantity::volume::LITRES_PER_US_GALLON;
use crate::site::circle;
use crate::site::details::Detail;
use crate::site::feed::{Diverter, Drain, Feed};
use crate::site::system::System;

const SECONDS_AN_HOUR: f64 = 3600.0;
/// No upright chamber finds room under the eaves of a house of two floors that is taller, in m (common practice, no source).
pub const TALLEST_M: f64 = 6.0;
const LITRES_PER_CUBIC_METRE: f64 = 1000.0;

/// Texas Manual on Rainwater Harvesting 2005, ch. 2 (from memory): 10 US gal for 1,000 ft² at the least, in L/m².
pub const TEXAS_LEAST: f64 = 10.0 * LITRES_PER_US_GALLON / (1000.0 * SQUARE_METRES_PER_SQUARE_FOOT);
/// The same: 1 to 2 US gal for 100 ft² recommended; the upper end, in L/m².
pub const TEXAS_MOST: f64 = 2.0 * LITRES_PER_US_GALLON / (100.0 * SQUARE_METRES_PER_SQUARE_FOOT);
/// Australian guidance as in HB 230 (from memory): 0.5 L/m² for little dirt.
pub const LITTLE_DIRT: f64 = 0.5;
/// The same: 2 L/m² for much dirt.
pub const MUCH_DIRT: f64 = 2.0;

/// Plan area of roof that runs to a feed, in m².
pub fn roof_area_m2(system: &System, feed: &Feed) -> f64 {
    let share = |section: &crate::site::roof::RoofSection| {
        let outlets = section.outlets.iter().filter(|outlet| outlet.feed == feed.id);
        section.area.get() * outlets.map(|outlet| outlet.share.get()).sum::<f64>()
    };
    system.sections.iter().map(share).sum()
}

/// Seconds in which an upright chamber empties from a depth through a hole: `2 a √h / (C_d o √(2g))` (Torricelli, any
/// text on hydraulics). Infinite without a hole.
pub fn drain_seconds(chamber_m: f64, depth_m: f64, hole_m: f64) -> f64 {
    2.0 * circle(chamber_m) * depth_m.sqrt() / (HOLE_DISCHARGE * circle(hole_m) * (2.0 * GRAVITY).sqrt())
}

/// The hole, in m, that empties a chamber in so many seconds: the same turned round.
pub fn hole_m(chamber_m: f64, depth_m: f64, seconds: f64) -> f64 {
    let hole_m2 = 2.0 * circle(chamber_m) * depth_m.sqrt() / (HOLE_DISCHARGE * seconds * (2.0 * GRAVITY).sqrt());
    (hole_m2 * 4.0 / std::f64::consts::PI).sqrt()
}

/// Litres that a hole passes under a full chamber in so many hours.
pub fn loss_l(depth_m: f64, hole_m: f64, hours: f64) -> f64 {
    hole_l_s(hole_m, depth_m) * hours * SECONDS_AN_HOUR
}

pub(super) fn checks(asked: &Asked<'_>, feed: &Feed, checks: &mut Vec<Check>) {
    checks.push(volume(asked, feed));
    if let Some(diverter) = &feed.diverter {
        checks.push(drain(asked, feed, diverter));
        checks.extend(loss(feed, diverter));
    }
}

/// First flush wanted for roofs so dirty, as the choice among the detail's options, in L/m².
fn depth_wanted(dirt: f64) -> f64 {
    [LITTLE_DIRT, TEXAS_MOST, MUCH_DIRT][chosen(dirt).min(2)]
}

/// First flush wanted for the roof that runs to a feed, in L.
pub fn wanted_l(system: &System, feed: &Feed) -> f64 {
    let dirt = system.details.get(Some(feed.id), Detail::Dirt).unwrap_or(Detail::Dirt.row().usual);
    depth_wanted(dirt) * roof_area_m2(system, feed)
}

fn volume(asked: &Asked<'_>, feed: &Feed) -> Check {
    let mut check = Check::new(feed.id, Subject::FlushVolume);
    let area = check.known(Figure::RoofArea, roof_area_m2(&asked.site.system, feed));
    let has = check.known(Figure::FlushVolume, feed.diverter.as_ref().map_or(0.0, |diverter| diverter.volume.get()));
    let dirt = check.detail(asked, Detail::Dirt);
    let rules = [
        (Figure::FlushTexasLeast, TEXAS_LEAST),
        (Figure::FlushTexasMost, TEXAS_MOST),
        (Figure::FlushLittleDirt, LITTLE_DIRT),
        (Figure::FlushMuchDirt, MUCH_DIRT),
    ];
    for (figure, depth) in rules {
        check.finds(figure, depth * area);
    }
    let wants = check.finds(Figure::FlushWanted, depth_wanted(dirt) * area);
    if area > 0.0 {
        check.finds(Figure::FlushDepth, has / area);
    }
    if let Some(diverter) = &feed.diverter {
        let chamber = check.known(Figure::ChamberBore, diverter.chamber.get());
        check.finds(Figure::ChamberWanted, wants / LITRES_PER_CUBIC_METRE / circle(chamber));
        check.finds(Figure::ChamberHeight, full_height_m(diverter));
    }
    check.judge(Figure::FlushVolume, has, wants);
    if check.figure(Figure::ChamberHeight) > TALLEST_M {
        check.verdict = Verdict::Fails;
    }
    check
}

/// Height of water in a full chamber, in m.
fn full_height_m(diverter: &Diverter) -> f64 {
    diverter.volume.get() / LITRES_PER_CUBIC_METRE / circle(diverter.chamber.get())
}

fn drain(asked: &Asked<'_>, feed: &Feed, diverter: &Diverter) -> Check {
    let mut check = Check::new(feed.id, Subject::FlushDrain);
    let chamber = check.known(Figure::ChamberBore, diverter.chamber.get());
    check.known(Figure::FlushVolume, diverter.volume.get());
    let height = check.finds(Figure::ChamberHeight, full_height_m(diverter));
    let within = check.detail(asked, Detail::DrainWithin);
    check.finds(Figure::HoleWanted, hole_m(chamber, height, within * SECONDS_AN_HOUR));
    match diverter.drain {
        Drain::Hole { diameter } => {
            let hole = check.known(Figure::HoleBore, diameter.get());
            let hours = drain_seconds(chamber, height, hole) / SECONDS_AN_HOUR;
            if height > 0.0 && hours.is_finite() {
                // Capacity over demand: the hours allowed against the hours needed.
                check.finds(Figure::DrainTime, hours);
                check.judge(Figure::DrainTime, within, hours);
            } else {
                check.verdict = Verdict::Fails;
            }
        }
        Drain::ByHand { every } => {
            check.known(Figure::EmptiedEvery, every.get());
        }
        Drain::Never => check.verdict = Verdict::Fails,
    }
    check
}

fn loss(feed: &Feed, diverter: &Diverter) -> Option<Check> {
    let Drain::Hole { diameter } = diverter.drain else { return None };
    let mut check = Check::new(feed.id, Subject::FlushLoss);
    let volume = check.known(Figure::FlushVolume, diverter.volume.get());
    let hole = check.known(Figure::HoleBore, diameter.get());
    let hours = check.known(Figure::StormHours, diverter.storm.get());
    let loss = check.finds(Figure::HoleLoss, loss_l(full_height_m(diverter), hole, hours));
    // What drips away should not be more than what the diverter is there to send away (common practice, no source).
    check.judge(Figure::HoleLoss, 2.0 * volume, loss);
    Some(check)
}

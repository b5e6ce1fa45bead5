//! Overflow of a tank: at least what can come in; where it goes; the air gap over it.

use super::gutter::{design_flow, leader_l_min};
use super::{Asked, Check, Figure, Subject, Verdict};
use crate::engine::balance::first_flush::GRAVITY;
use crate::site::details::Detail;
use crate::site::part::PartId;
use crate::site::tank::{OverflowTo, Tank};

const LITRES_PER_CUBIC_METRE: f64 = 1000.0;
const SECONDS_A_MINUTE: f64 = 60.0;
const MINUTES_AN_HOUR: f64 = 60.0;

/// What a level pipe through a wall lets out under water that stands so high over its invert, in L/min.
///
/// Up to the pipe's top: critical flow in the round section (specific energy = head, any text on open channels); above: the
/// orifice whose flow begins there, so that a higher rim lets out more, with the head over its centre. Its coefficient, 0.58
/// and less than the usual 0.62, is on the safe side. Friction and bends beyond take from it.
pub fn pipe_l_min(diameter_m: f64, head_m: f64) -> f64 {
    if diameter_m <= 0.0 || head_m <= 0.0 {
        return 0.0;
    }
    let deeper = (head_m.max(diameter_m) - diameter_m / 2.0) / (diameter_m / 2.0);
    let cubic_metres_a_second = critical_flow(diameter_m, head_m.min(diameter_m)) * deeper.sqrt();
    cubic_metres_a_second * LITRES_PER_CUBIC_METRE * SECONDS_A_MINUTE
}

/// Area and top width of a round section filled to a depth.
pub(super) fn segment(diameter: f64, depth: f64) -> (f64, f64) {
    let radius = diameter / 2.0;
    let half_angle = libm::acos(((radius - depth) / radius).clamp(-1.0, 1.0));
    let half_width = (depth * (diameter - depth)).max(0.0).sqrt();
    (radius * radius * half_angle - (radius - depth) * half_width, 2.0 * half_width)
}

/// Critical flow, in m³/s, for a specific energy below the diameter: the depth y at which y + A/(2T) is that energy.
fn critical_flow(diameter: f64, energy: f64) -> f64 {
    const HALVINGS: usize = 50;
    let (mut low, mut high) = (0.0, energy);
    for _ in 0..HALVINGS {
        let depth = (low + high) / 2.0;
        let (area, width) = segment(diameter, depth);
        if width > 0.0 && depth + area / (2.0 * width) < energy { low = depth } else { high = depth }
    }
    let (area, width) = segment(diameter, low);
    if width > 0.0 { area * (GRAVITY * area / width).sqrt() } else { 0.0 }
}

pub(super) fn checks(asked: &Asked<'_>, tank: &Tank, checks: &mut Vec<Check>) {
    checks.push(overflow(asked, tank));
    let system = &asked.site.system;
    let filled_from_outside = system.hauling.iter().any(|hauling| hauling.tank == Some(tank.id))
        || system.pumps.iter().any(|pump| pump.to == Some(tank.id));
    if filled_from_outside {
        checks.push(air_gap(asked, tank));
    }
}

/// Freeboard that is no overflow pipe, in m.
const NO_PIPE_M: f64 = 1e-6;

fn overflow(asked: &Asked<'_>, tank: &Tank) -> Check {
    let mut check = Check::new(tank.id, Subject::Overflow);
    let head = check.known(Figure::Freeboard, tank.shape.height() - tank.overflow.get());
    let mut inflow = Inflow { asked, check, known: Vec::new() };
    let comes = inflow.comes_in(tank, MOST_TANKS);
    let mut check = inflow.check;
    let feeds = asked.site.system.feeds.iter().filter(|feed| feed.tank == Some(tank.id));
    let entered = feeds.filter_map(|feed| asked.site.system.details.get(Some(feed.id), Detail::InletBore));
    let carried: f64 = entered.map(leader_l_min).sum();
    if carried > 0.0 {
        check.finds(Figure::InletsCarry, carried);
    }
    if head > NO_PIPE_M {
        let bore = check.detail(asked, Detail::OverflowBore);
        check.judge(Figure::OverflowFlow, pipe_l_min(bore, head), comes);
    } else if comes > 0.0 {
        check.finds(Figure::ComesIn, comes);
        check.verdict = Verdict::Fails;
    }
    check
}

/// Overflows that lead to each other are followed no further than this.
const MOST_TANKS: usize = 32;

/// Rims within so much of the lowest, in m, run over together.
const SAME_RIM_M: f64 = 0.01;

/// What design rain brings to tanks, reckoned once for each, however many overflows lead through it.
struct Inflow<'a> {
    asked: &'a Asked<'a>,
    check: Check,
    known: Vec<(PartId, f64)>,
}

impl Inflow<'_> {
    /// What design rain can bring over the rim of a tank, in L/min. Tanks that are joined run over at the lowest rim: what
    /// comes to all of them leaves there, shared by those that have it, but nowhere less than comes to the tank itself.
    fn comes_in(&mut self, tank: &Tank, depth: usize) -> f64 {
        let system = &self.asked.site.system;
        let store = system.stores().into_iter().find(|store| store.contains(&tank.id)).unwrap_or_default();
        let tanks: Vec<&Tank> = store.iter().filter_map(|id| system.tank(*id)).collect();
        let lowest_m = tanks.iter().map(|tank| tank.overflow_elevation()).fold(f64::INFINITY, f64::min);
        let is_lowest = |tank: &Tank| tank.overflow_elevation() <= lowest_m + SAME_RIM_M;
        if !is_lowest(tank) {
            return self.comes_to(tank, &store, depth);
        }
        let (mut own, mut all, mut sharing) = (0.0, 0.0, 0.0);
        for member in tanks {
            let comes = self.comes_to(member, &store, depth);
            all += comes;
            sharing += if is_lowest(member) { 1.0 } else { 0.0 };
            if member.id == tank.id {
                own = comes;
            }
        }
        (all / f64::max(sharing, 1.0)).max(own)
    }

    /// What design rain can bring to a tank of a store from outside of it, in L/min: its feeds, pumps that don't stop, and the
    /// overflows of tanks that lead to it.
    fn comes_to(&mut self, tank: &Tank, store: &[PartId], depth: usize) -> f64 {
        if let Some((_, known)) = self.known.iter().find(|(id, _)| *id == tank.id) {
            return *known;
        }
        let system = &self.asked.site.system;
        let mut comes = 0.0;
        for feed in system.feeds.iter().filter(|feed| feed.tank == Some(tank.id)) {
            comes += design_flow(self.asked, &mut self.check, feed);
        }
        let mouth_m2 = tank.open_mouth_m2();
        if mouth_m2 > 0.0 {
            comes += mouth_m2 * self.check.of_site(self.asked, Detail::DesignIntensity) / MINUTES_AN_HOUR;
        }
        // A float that sticks lets a pump go on.
        for pump in system.pumps.iter().filter(|pump| pump.to == Some(tank.id)) {
            let usual = Detail::EndFlow.row().usual;
            comes += self.check.detail_of(self.asked, Some(pump.id), Detail::EndFlow, usual);
        }
        if depth > 0 {
            let leads_here =
                |other: &&Tank| other.overflow_to == OverflowTo::Tank(tank.id) && !store.contains(&other.id);
            for other in system.tanks.iter().filter(leads_here) {
                comes += self.comes_in(other, depth - 1);
            }
        }
        self.known.push((tank.id, comes));
        comes
    }
}

/// Least air gap, in m, whatever the pipe: 1 in.
const LEAST_GAP_M: f64 = crate::quantity::length::METRES_PER_INCH;

/// Twice the bore of the filling pipe, and an inch at the least (ASME A112.1.2, from memory).
fn air_gap(asked: &Asked<'_>, tank: &Tank) -> Check {
    let mut check = Check::new(tank.id, Subject::AirGap);
    let freeboard = check.known(Figure::Freeboard, tank.shape.height() - tank.overflow.get());
    let gap = check.detail_of(asked, Some(tank.id), Detail::AirGap, freeboard.max(0.0));
    let bore = check.detail_of(asked, Some(tank.id), Detail::InletBore, HOSE_M);
    check.judge(Figure::AirGap, gap, (2.0 * bore).max(LEAST_GAP_M));
    check
}

/// Inside diameter of a filling hose, in m (common practice, no source).
const HOSE_M: f64 = 0.05;

//! A second supply off the same store: an outbuilding on a pipe of its own, and whether house and outbuilding both get
//! what they need.

use super::pipe::{Pipe, flow_for};
use super::supply::{Curve, GRAVITY_TAP_KPA, L_MIN, gravity_filters_kpa, lowest_m, peak_of};
use super::water::{density_kg_m3, pressure_kpa};
use super::{Asked, Check, Figure, Subject, Verdict, chosen};
use crate::site::details::Detail;
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::tank::Tank;
use crate::site::uses::{Class, Use};

/// The building that the taps of a use are in; 0 is the house.
pub fn building(system: &System, using: &Use) -> usize {
    chosen(system.details.get(Some(using.id), Detail::Building).unwrap_or(0.0))
}

/// The uses in the outbuilding of a use, on the same tank, in order: the first has the pipe. None in the house.
pub fn uses_with(system: &System, using: &Use) -> Vec<PartId> {
    let of = building(system, using);
    if of == 0 || using.tank.is_none() {
        return Vec::new();
    }
    let there = |other: &&Use| other.tank == using.tank && building(system, other) == of;
    system.uses.iter().filter(there).map(|other| other.id).collect()
}

/// The uses on a tank whose taps are in the house.
pub(super) fn in_house(system: &System, tank: PartId) -> impl Iterator<Item = &Use> {
    let uses = system.uses.iter();
    uses.filter(move |using| using.tank == Some(tank) && using.class != Class::Travel && building(system, using) == 0)
}

pub(super) fn checks(asked: &Asked<'_>, using: &Use, tank: &Tank, checks: &mut Vec<Check>) {
    let mut check = Check::new(using.id, Subject::Outbuilding);
    check.detail(asked, Detail::Building);
    let uses = uses_with(&asked.site.system, using);
    if uses.first() != Some(&using.id) {
        checks.push(check);
        return;
    }
    let line = Line::of(asked, &mut check, tank, &uses);
    if !line.pump_falls() {
        check.verdict = Verdict::Outside;
        checks.push(check);
        return;
    }
    let own = &line.own;
    check.finds(Figure::DarcyLoss, own.pipe.darcy_m(own.flow));
    check.finds(Figure::TapStatic, line.pressure(own, 0.0, ALONE));
    let low = line.pressure(own, own.flow, ALONE);
    if own.curve.is_none() {
        let more_m = tank.overflow_elevation() - line.level_m;
        check.finds(Figure::TapFull, low + pressure_kpa(more_m, line.density));
    }
    check.finds(Figure::OutFlow, line.most(ALONE) * L_MIN);
    check.judge(Figure::TapPressure, low, own.wanted_kpa);
    checks.push(check);
    checks.extend(both(asked, using, tank, &uses));
}

/// What else flows, in m³/s.
#[derive(Clone, Copy)]
struct Beside {
    /// Through the same pump.
    pump: f64,
    /// Through the pipe that both share.
    pipe: f64,
}

const ALONE: Beside = Beside { pump: 0.0, pipe: 0.0 };

/// One tap, or the taps of a house together, and what lies between the store and them.
struct Branch {
    /// What it draws, in m³/s.
    flow: f64,
    tap_m: f64,
    pipe: Pipe,
    /// What its filters lose at that flow, in kPa.
    filters_kpa: f64,
    wanted_kpa: f64,
    /// The tank's pump, where it hangs on it; none by gravity.
    curve: Option<Curve>,
}

/// The outbuilding's branch with what it shares with the house.
struct Line {
    own: Branch,
    shared: Pipe,
    level_m: f64,
    density: f64,
}

impl Line {
    fn of(asked: &Asked<'_>, check: &mut Check, tank: &Tank, uses: &[PartId]) -> Self {
        let of = check.part;
        let level_m = check.known(Figure::LowestLevel, lowest_m(tank));
        let density = density_kg_m3(check.of_site(asked, Detail::WaterTemperature));
        let usual = f64::from(u8::from(asked.site.system.details.is_pumped(tank.id)));
        let pumped = check.detail_of(asked, Some(of), Detail::SuppliedBy, usual) > 0.5;
        let there = asked.site.system.uses.iter().filter(|using| uses.contains(&using.id));
        let peak = peak_of(asked, check, there);
        let usual = if peak > 0.0 { peak } else { Detail::TapFlow.row().usual };
        let flow = check.detail_of(asked, Some(of), Detail::TapFlow, usual) / L_MIN;
        let tap_m = check.detail(asked, Detail::TapHeight);
        let usual = if pumped { Detail::TapPressure.row().usual } else { GRAVITY_TAP_KPA };
        let wanted_kpa = check.detail_of(asked, Some(of), Detail::TapPressure, usual);
        let pipe = Pipe::of(asked, check, of, Detail::PipeBore, Detail::PipeLength);
        let filters_kpa = check.detail_of(asked, Some(of), Detail::FilterFouled, 0.0);
        let length_m = check.detail(asked, Detail::SharedLength);
        let bore_m = if length_m > 0.0 { check.detail(asked, Detail::SharedBore) } else { pipe.bore_m };
        let curve = pumped.then(|| Curve::of(asked, check, tank.id));
        Self {
            own: Branch { flow, tap_m, pipe, filters_kpa, wanted_kpa, curve },
            shared: Pipe { bore_m, length_m, fittings: 0.0, ..pipe },
            level_m,
            density,
        }
    }

    fn pump_falls(&self) -> bool {
        self.own.curve.is_none_or(|curve| curve.falls())
    }

    /// Pressure at a branch's tap that draws a flow, in kPa.
    fn pressure(&self, branch: &Branch, flow: f64, beside: Beside) -> f64 {
        let pump_m = branch.curve.map_or(0.0, |curve| curve.head_m(flow + beside.pump));
        let lost_m = branch.pipe.darcy_m(flow) + self.shared.darcy_m(flow + beside.pipe);
        // What filters lose is told at the wanted flow and goes with its square.
        let part = if branch.flow > 0.0 { flow / branch.flow } else { 0.0 };
        pressure_kpa(self.level_m + pump_m - branch.tap_m - lost_m, self.density) - branch.filters_kpa * part * part
    }

    /// Most that the outbuilding's tap gives at the wanted pressure, in m³/s.
    fn most(&self, beside: Beside) -> f64 {
        let spare = |flow: f64| self.pressure(&self.own, flow, beside) - self.own.wanted_kpa;
        let still = spare(0.0);
        if still <= 0.0 { 0.0 } else { flow_for(still, self.own.pipe.bore_m, |flow| still - spare(flow)) }
    }
}

/// House and outbuilding draw at once: judged by the tap with less to spare. None where nobody in the house draws on the
/// tank.
fn both(asked: &Asked<'_>, using: &Use, tank: &Tank, uses: &[PartId]) -> Option<Check> {
    let mut check = Check::new(using.id, Subject::BothDraw);
    let line = Line::of(asked, &mut check, tank, uses);
    let house = house(asked, &mut check, tank);
    let flow: f64 = house.iter().map(|branch| branch.flow).sum();
    if flow <= 0.0 || !house.iter().all(|branch| branch.curve.is_none_or(|curve| curve.falls())) {
        return None;
    }
    // A pump of the tank carries both where both hang on it; the house has one branch then.
    let through_pump = |branch: &Branch, flow: f64| if branch.curve.is_some() { flow } else { 0.0 };
    let beside = Beside { pump: house.iter().map(|branch| through_pump(branch, branch.flow)).sum(), pipe: flow };
    let own = line.pressure(&line.own, line.own.flow, beside);
    check.finds(Figure::HouseFlow, flow * L_MIN);
    check.finds(Figure::OutBoth, own);
    check.finds(Figure::OutFlowBoth, line.most(beside) * L_MIN);
    let rest = |branch: &Branch| flow - branch.flow;
    let now = |branch: &Branch| {
        let beside = Beside { pump: through_pump(&line.own, line.own.flow), pipe: rest(branch) + line.own.flow };
        line.pressure(branch, branch.flow, beside)
    };
    let spare = |branch: &&Branch| now(branch) - branch.wanted_kpa;
    let worst = house.iter().min_by(|one, other| spare(one).total_cmp(&spare(other)))?;
    let alone = line.pressure(worst, worst.flow, Beside { pump: 0.0, pipe: rest(worst) });
    check.finds(Figure::HouseAlone, alone);
    let (house_now, house_wants) = (check.finds(Figure::HouseBoth, now(worst)), worst.wanted_kpa);
    if house_now - house_wants < own - line.own.wanted_kpa {
        check.judge(Figure::TapPressure, house_now, house_wants);
    } else {
        check.judge(Figure::TapPressure, own, line.own.wanted_kpa);
    }
    Some(check)
}

/// The branches of the house: one on a pump, as the check of its highest tap takes it; else one for each tap.
fn house(asked: &Asked<'_>, check: &mut Check, tank: &Tank) -> Vec<Branch> {
    let detail =
        |check: &mut Check, of: PartId, detail: Detail, usual: f64| check.detail_of(asked, Some(of), detail, usual);
    let usual = |detail: Detail| detail.row().usual;
    if asked.site.system.details.is_pumped(tank.id) {
        let flow = peak_of(asked, check, in_house(&asked.site.system, tank.id)) / L_MIN;
        return vec![Branch {
            flow,
            tap_m: detail(check, tank.id, Detail::HighestTap, usual(Detail::HighestTap)),
            pipe: Pipe::of(asked, check, tank.id, Detail::PipeBore, Detail::PipeLength),
            filters_kpa: detail(check, tank.id, Detail::FilterFouled, usual(Detail::FilterFouled)),
            wanted_kpa: detail(check, tank.id, Detail::TapPressure, usual(Detail::TapPressure)),
            curve: Some(Curve::of(asked, check, tank.id)),
        }];
    }
    let taps = in_house(&asked.site.system, tank.id).map(|using| Branch {
        flow: detail(check, using.id, Detail::TapFlow, usual(Detail::TapFlow)) / L_MIN,
        tap_m: detail(check, using.id, Detail::TapHeight, usual(Detail::TapHeight)),
        pipe: Pipe::of(asked, check, using.id, Detail::PipeBore, Detail::PipeLength),
        filters_kpa: gravity_filters_kpa(asked, check, using),
        wanted_kpa: detail(check, using.id, Detail::TapPressure, GRAVITY_TAP_KPA),
        curve: None,
    });
    taps.collect()
}

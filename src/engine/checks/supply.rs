//! From the tank to the taps: how much at once, at what pressure, with what pump, from how much power.

use super::outbuilding::{building, in_house};
use super::pipe::{Pipe, flow_for};
use super::water::{air_kpa, density_kg_m3, head_m, pressure_kpa, vapour_kpa};
use super::{Asked, Check, Figure, Subject, Verdict};
use crate::engine::question::Answer;
use crate::quantity::HOURS_A_DAY;
use crate::quantity::volume::LITRES_PER_US_GALLON;
use crate::site::details::Detail;
use crate::site::part::PartId;
use crate::site::pump::Pump;
use crate::site::tank::Tank;
use crate::site::uses::{Amount, Class, Use};
use chrono::Datelike;

/// Litres a minute in a cubic metre a second.
pub(super) const L_MIN: f64 = 60_000.0;
const MINUTES_AN_HOUR: f64 = 60.0;
const WATTS_A_KILOWATT: f64 = 1000.0;

/// Fixtures with their supply fixture units, cold and hot together, private use.
///
/// Source: National Standard Plumbing Code, Appendix B, individual dwellings (from memory): the code whose curve [`PEAK`]
/// is, since each code's units go with its own curve.
pub const FIXTURES: [(Detail, f64); 8] = [
    (Detail::Toilets, 2.5),
    (Detail::Basins, 1.0),
    (Detail::Showers, 2.0),
    (Detail::Baths, 4.0),
    (Detail::Sinks, 1.5),
    (Detail::Dishwashers, 1.5),
    (Detail::Washers, 4.0),
    (Detail::GardenTaps, 2.5),
];

/// Fixture units and peak flow in US gal/min where toilets have cisterns.
///
/// Source: National Standard Plumbing Code, Table B.5.4 (Hunter's curve); rows from 20 to 100 from memory.
pub const PEAK: [(f64, f64); 27] = [
    (0.0, 0.0),
    (3.0, 3.0),
    (4.0, 4.0),
    (5.0, 4.5),
    (6.0, 5.0),
    (7.0, 6.0),
    (8.0, 7.0),
    (9.0, 7.5),
    (10.0, 8.0),
    (11.0, 8.5),
    (12.0, 9.0),
    (13.0, 10.0),
    (14.0, 10.5),
    (20.0, 14.0),
    (25.0, 17.0),
    (30.0, 20.0),
    (40.0, 25.0),
    (50.0, 29.0),
    (60.0, 33.0),
    (80.0, 39.0),
    (100.0, 44.0),
    (120.0, 49.0),
    (160.0, 57.0),
    (200.0, 65.0),
    (300.0, 85.0),
    (500.0, 125.0),
    (1000.0, 210.0),
];

/// Peak flow in L/min for so many fixture units, straight between the rows; that of the last row beyond it.
pub fn peak_l_min(units: f64) -> f64 {
    let after = PEAK.iter().position(|(end, _)| *end >= units).unwrap_or(PEAK.len() - 1).max(1);
    let ((from, low), (to, high)) = (PEAK[after - 1], PEAK[after]);
    let part = ((units - from) / (to - from)).clamp(0.0, 1.0);
    (low + part * (high - low)) * LITRES_PER_US_GALLON
}

/// Fixtures that a use is taken to have until they are entered.
fn usual_fixtures(class: Class, fixture: Detail) -> f64 {
    let has = match class {
        Class::Drinking => fixture == Detail::Sinks,
        Class::House => {
            matches!(fixture, Detail::Toilets | Detail::Basins | Detail::Showers | Detail::Washers)
        }
        Class::Garden | Class::Animals => fixture == Detail::GardenTaps,
        Class::Travel => false,
    };
    f64::from(u8::from(has))
}

/// A curve that rises by a smaller share of its head at no flow counts as flat there (common practice, no source).
const FLAT: f64 = 0.01;

/// A pump's curve through three points: head in m over flow in m³/s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve {
    /// Flow and head, the first at no flow, flows rising.
    pub points: [(f64, f64); 3],
}

impl Curve {
    /// The curve of a part's pump.
    pub(super) fn of(asked: &Asked<'_>, check: &mut Check, of: PartId) -> Self {
        let mut detail = |detail: Detail| check.detail_of(asked, Some(of), detail, detail.row().usual);
        Self {
            points: [
                (0.0, detail(Detail::ShutHead)),
                (detail(Detail::MidFlow) / L_MIN, detail(Detail::MidHead)),
                (detail(Detail::EndFlow) / L_MIN, detail(Detail::EndHead)),
            ],
        }
    }

    /// Whether head falls as flow rises, without which there is no one duty point.
    pub fn falls(&self) -> bool {
        let [first, middle, last] = self.points;
        first.0 < middle.0 && middle.0 < last.0 && first.1 > middle.1 && middle.1 > last.1
    }

    /// Head at a flow: the parabola through the three points, or straight from point to point where that would rise on its way by
    /// more than a hundredth of the head at no flow; and nothing beyond the last.
    pub fn head_m(&self, flow: f64) -> f64 {
        let [(q0, h0), (q1, h1), (q2, h2)] = self.points;
        if flow > q2 {
            return 0.0;
        }
        // The slope of a parabola over a stretch is that at its middle, and goes on evenly.
        let [first, second] = [(h1 - h0) / (q1 - q0), (h2 - h1) / (q2 - q1)];
        let bends = (second - first) / (q2 - q0);
        let [begins, ends] = [first - bends * (q1 - q0), second + bends * (q2 - q1)];
        let rises_m = if begins > 0.0 { begins * begins / (-4.0 * bends) } else { 0.0 };
        if rises_m > FLAT * h0 || ends > 0.0 {
            return if flow < q1 { h0 + first * (flow - q0) } else { h1 + second * (flow - q1) };
        }
        let term = |h: f64, q: f64, a: f64, b: f64| h * (flow - a) * (flow - b) / ((q - a) * (q - b));
        term(h0, q0, q1, q2) + term(h1, q1, q0, q2) + term(h2, q2, q0, q1)
    }

    /// The flow, in m³/s, at which the pump makes just the head that the pipes ask for; none where it makes too little
    /// even at no flow.
    pub fn duty(&self, asks_m: impl Fn(f64) -> f64) -> Option<f64> {
        const HALVINGS: usize = 60;
        if asks_m(0.0) >= self.points[0].1 {
            return None;
        }
        let (mut low, mut high) = (0.0, self.points[2].0);
        for _ in 0..HALVINGS {
            let middle = (low + high) / 2.0;
            if asks_m(middle) < self.head_m(middle) { low = middle } else { high = middle }
        }
        Some((low + high) / 2.0)
    }
}

/// Litres that a vessel gives between two pressures, charged with air to 14 kPa (2 psi) under the lower one.
///
/// Boyle's law: `V·p₀·(1/p₁ − 1/p₂)` with absolute pressures; the charge is the makers' usual advice.
pub fn drawdown_l(vessel_l: f64, cut_in_kpa: f64, cut_out_kpa: f64, air: f64) -> f64 {
    const UNDER_KPA: f64 = 14.0;
    let charge = (cut_in_kpa - UNDER_KPA).max(0.0) + air;
    (vessel_l * charge * (1.0 / (cut_in_kpa + air) - 1.0 / (cut_out_kpa + air))).max(0.0)
}

/// Power in W that water takes at a flow in m³/s and a head in m: ρ·g·Q·H ÷ efficiency.
pub fn power_w(flow_m3_s: f64, head: f64, density: f64, efficiency: f64) -> f64 {
    pressure_kpa(head, density) * WATTS_A_KILOWATT * flow_m3_s / efficiency
}

/// Net positive suction head available, in m.
pub fn npsh_m(air: f64, vapour: f64, density: f64, lift_m: f64, friction_m: f64) -> f64 {
    head_m(air - vapour, density) - lift_m - friction_m
}

/// Peak flow of some uses together, in L/min.
pub(super) fn peak_of<'a>(asked: &Asked<'_>, check: &mut Check, uses: impl Iterator<Item = &'a Use>) -> f64 {
    let mut units = 0.0;
    for using in uses {
        for (fixture, each) in FIXTURES {
            let usual = usual_fixtures(using.class, fixture);
            let entered = asked.site.system.details.get(Some(using.id), fixture);
            if usual > 0.0 || entered.is_some() {
                units += each * check.detail_of(asked, Some(using.id), fixture, usual);
            }
        }
    }
    check.finds(Figure::FixtureUnits, units);
    peak_l_min(units)
}

/// The checks of a tank's supply: its pump, if it has one.
pub(super) fn of_tank(asked: &Asked<'_>, tank: &Tank, checks: &mut Vec<Check>) {
    if !asked.site.system.uses.iter().any(|using| using.tank == Some(tank.id)) {
        return;
    }
    let mut check = Check::new(tank.id, Subject::PeakFlow);
    let pumped = f64::from(u8::from(asked.site.system.details.is_pumped(tank.id)));
    check.detail_of(asked, Some(tank.id), Detail::SuppliedBy, pumped);
    let uses = asked.site.system.uses.iter().filter(|using| using.tank == Some(tank.id));
    let peak = peak_of(asked, &mut check, uses);
    check.finds(Figure::PeakFlow, peak);
    checks.push(check);
    if !asked.site.system.details.is_pumped(tank.id) {
        return;
    }
    checks.push(highest_tap(asked, tank));
    checks.push(suction(asked, tank.id, tank, peak));
    checks.push(vessel(asked, tank));
    checks.push(power(asked, tank));
}

/// Lowest level from which a tank can be drawn, as an elevation in m.
pub(super) fn lowest_m(tank: &Tank) -> f64 {
    tank.floor.get() + tank.outlet.get()
}

/// Pressure at the highest tap at peak flow, filters clean and fouled, and the duty point. Where a vessel lets the pump
/// rest, the pressure falls to that at which the pump starts before it helps: the lower of the two counts.
fn highest_tap(asked: &Asked<'_>, tank: &Tank) -> Check {
    let mut check = Check::new(tank.id, Subject::HighestTap);
    let lowest = check.known(Figure::LowestLevel, lowest_m(tank));
    let density = density_kg_m3(check.of_site(asked, Detail::WaterTemperature));
    let peak = peak_of(asked, &mut check, in_house(&asked.site.system, tank.id));
    check.finds(Figure::PeakFlow, peak);
    let tap = check.detail(asked, Detail::HighestTap);
    let wanted = check.detail(asked, Detail::TapPressure);
    let pipe = Pipe::of(asked, &mut check, tank.id, Detail::PipeBore, Detail::PipeLength);
    let clean = check.detail(asked, Detail::FilterClean);
    let fouled = check.detail(asked, Detail::FilterFouled);
    let curve = Curve::of(asked, &mut check, tank.id);
    let flow = peak / L_MIN;
    let (rise, friction) = (tap - lowest, pipe.darcy_m(flow));
    check.finds(Figure::StaticHead, rise);
    check.finds(Figure::DarcyLoss, friction);
    check.finds(Figure::HazenLoss, pipe.hazen_williams_m(flow));
    if !curve.falls() {
        check.verdict = Verdict::Outside;
        return check;
    }
    // What filters lose is told at peak flow and goes with its square.
    let asks = |flow: f64, filter_kpa: f64| {
        let part = if peak > 0.0 { flow * L_MIN / peak } else { 1.0 };
        rise + pipe.darcy_m(flow) + head_m(filter_kpa, density) * part * part + head_m(wanted, density)
    };
    if let Some(duty) = curve.duty(|flow| asks(flow, fouled)) {
        check.finds(Figure::DutyFlow, duty * L_MIN);
        check.finds(Figure::DutyHead, curve.head_m(duty));
    }
    let mut left = pressure_kpa(curve.head_m(flow) - rise - friction, density);
    check.finds(Figure::TapClean, left - clean);
    if check.detail(asked, Detail::Vessel) > 0.0 {
        let pump = check.detail(asked, Detail::PumpHeight);
        let starts_at = check.detail(asked, Detail::CutIn) - pressure_kpa(tap - pump + friction, density);
        left = left.min(starts_at);
        check.finds(Figure::TapStarting, starts_at - fouled);
    }
    check.judge(Figure::TapPressure, left - fouled, wanted);
    check
}

/// Margin that NPSH available should have over that required (Crane Technical Paper 410, example 7.32).
const NPSH_RATIO: f64 = 1.3;

fn suction(asked: &Asked<'_>, of: PartId, tank: &Tank, flow_l_min: f64) -> Check {
    let mut check = Check::new(of, Subject::Suction);
    let lowest = check.known(Figure::LowestLevel, lowest_m(tank));
    let pump = check.detail(asked, Detail::PumpHeight);
    let altitude = check.of_site(asked, Detail::Altitude);
    let celsius = check.of_site(asked, Detail::WaterTemperature);
    let required = check.detail(asked, Detail::NpshRequired);
    let pipe = Pipe::of(asked, &mut check, of, Detail::SuctionBore, Detail::SuctionLength);
    let flow = check.finds(Figure::PeakFlow, flow_l_min) / L_MIN;
    let lift = check.finds(Figure::SuctionLift, pump - lowest);
    let friction = check.finds(Figure::DarcyLoss, pipe.darcy_m(flow));
    let available = npsh_m(air_kpa(altitude), vapour_kpa(celsius), density_kg_m3(celsius), lift, friction);
    check.judge(Figure::Npsh, available, NPSH_RATIO * required);
    check
}

/// Whether a vessel gives enough between two starts of the pump.
///
/// A pump starts most often when half its flow is drawn: flow × cycle ÷ 4, with the mean of its flows at the two pressures
/// (any text on pressure vessels). One that never reaches the pressure at which it stops runs for ever.
fn vessel(asked: &Asked<'_>, tank: &Tank) -> Check {
    let mut check = Check::new(tank.id, Subject::Vessel);
    let volume = check.detail(asked, Detail::Vessel);
    let cut_in = check.detail(asked, Detail::CutIn);
    let cut_out = check.detail(asked, Detail::CutOut);
    let starts = check.detail(asked, Detail::StartsAnHour);
    let air = air_kpa(check.of_site(asked, Detail::Altitude));
    let density = density_kg_m3(check.of_site(asked, Detail::WaterTemperature));
    let curve = Curve::of(asked, &mut check, tank.id);
    let lift = check.detail(asked, Detail::PumpHeight) - check.known(Figure::LowestLevel, lowest_m(tank));
    if cut_out <= cut_in || !curve.falls() {
        check.verdict = Verdict::Outside;
        return check;
    }
    let flow_at = |kpa: f64| curve.duty(|_| head_m(kpa, density) + lift);
    let Some(last) = flow_at(cut_out) else {
        check.judge(Figure::DutyHead, curve.points[0].1, head_m(cut_out, density) + lift);
        check.verdict = Verdict::Fails;
        return check;
    };
    let mean = (flow_at(cut_in).unwrap_or(last) + last) / 2.0;
    let flow = check.finds(Figure::DutyFlow, mean * L_MIN);
    let wants = flow * (MINUTES_AN_HOUR / starts) / 4.0;
    check.judge(Figure::Drawdown, drawdown_l(volume, cut_in, cut_out, air), wants);
    check
}

fn power(asked: &Asked<'_>, tank: &Tank) -> Check {
    let mut check = Check::new(tank.id, Subject::Power);
    let uses = asked.site.system.uses.iter().enumerate().filter(|(_, using)| using.tank == Some(tank.id));
    let greatest = |(at, using): (usize, &Use)| match (&using.amount, asked.answer) {
        // What a garden asks for by the weather, only the balance knows.
        (Amount::Garden(_), Some(answer)) => busiest_month_l(answer, at),
        (amount, _) => (0..12).map(|month| amount.litres_a_day(month)).fold(0.0, f64::max),
    };
    let daily: f64 = uses.map(greatest).sum();
    check.known(Figure::DailyUse, daily);
    let cut_out = check.detail(asked, Detail::CutOut);
    let density = density_kg_m3(check.of_site(asked, Detail::WaterTemperature));
    let lift = check.detail(asked, Detail::PumpHeight) - check.known(Figure::LowestLevel, lowest_m(tank));
    // The pump works against the pressure at which it stops, whatever tap is open.
    energy(asked, &mut check, daily, (head_m(cut_out, density) + lift).max(0.0), density);
    check
}

/// What a use, by its place, asks for on a mean day of the month in which it asks for most, in L.
fn busiest_month_l(answer: &Answer, using: usize) -> f64 {
    let series = &answer.series;
    let (Some(got), Some(short)) = (series.yield_l.get(using), series.shortfall_l.get(using)) else { return 0.0 };
    let mut months = [(0.0, 0.0); 12];
    for (date, (got, short)) in series.dates.iter().zip(got.iter().zip(short)) {
        let month = &mut months[date.month0() as usize % 12];
        *month = (month.0 + got + short, month.1 + 1.0);
    }
    months.iter().filter(|month| month.1 > 0.0).map(|month| month.0 / month.1).fold(0.0, f64::max)
}

/// Energy for a day's water, and panel and battery for it.
fn energy(asked: &Asked<'_>, check: &mut Check, daily_l: f64, head: f64, density: f64) {
    const SECONDS_AN_HOUR: f64 = 3600.0;
    const LITRES_PER_CUBIC_METRE: f64 = 1000.0;
    let efficiency = check.detail(asked, Detail::PumpEfficiency);
    let sun = check.detail(asked, Detail::SunHours);
    let arrives = check.detail(asked, Detail::SolarYield);
    let days = check.detail(asked, Detail::Autonomy);
    let discharge = check.detail(asked, Detail::Discharge);
    let volts = check.detail(asked, Detail::BatteryVolts);
    check.finds(Figure::PumpHead, head);
    let a_day = power_w(daily_l / LITRES_PER_CUBIC_METRE, head, density, efficiency) / SECONDS_AN_HOUR;
    check.finds(Figure::EnergyADay, a_day);
    check.finds(Figure::Panel, a_day / (sun * arrives));
    let battery = check.finds(Figure::Battery, a_day * days / discharge);
    check.finds(Figure::AmpereHours, battery / volts);
}

/// A pump that makes so much more head than the pipes ask for, in m, runs beyond the end of its curve (common practice, no source).
const BEYOND_M: f64 = 0.05;

/// The checks of a pump that lifts water from one store to another.
pub(super) fn of_pump(asked: &Asked<'_>, pump: &Pump, checks: &mut Vec<Check>) {
    let tank = |id: Option<PartId>| id.and_then(|id| asked.site.system.tank(id));
    let (Some(from), Some(to)) = (tank(pump.from), tank(pump.to)) else { return };
    let mut check = Check::new(pump.id, Subject::Lift);
    let lowest = check.known(Figure::LowestLevel, lowest_m(from));
    let highest = check.known(Figure::HighestLevel, to.overflow_elevation());
    let limit = check.known(Figure::DailyUse, pump.limit.get());
    let density = density_kg_m3(check.of_site(asked, Detail::WaterTemperature));
    let pipe = Pipe::of(asked, &mut check, pump.id, Detail::PipeBore, Detail::PipeLength);
    let fouled = check.detail_of(asked, Some(pump.id), Detail::FilterFouled, 0.0);
    let curve = Curve::of(asked, &mut check, pump.id);
    let rise = check.finds(Figure::StaticHead, highest - lowest);
    let asks_m = |flow: f64| rise + pipe.darcy_m(flow) + head_m(fouled, density);
    let mut duty_l_min = 0.0;
    if !curve.falls() {
        check.verdict = Verdict::Outside;
    } else if let Some(duty) = curve.duty(asks_m) {
        duty_l_min = check.finds(Figure::DutyFlow, duty * L_MIN);
        let head = check.finds(Figure::DutyHead, curve.head_m(duty));
        // The usual curve is nobody's pump: of it nothing more is told.
        if check.was_entered(Detail::EndHead) && head > asks_m(duty) + BEYOND_M {
            check.finds(Figure::PipesAsk, asks_m(duty));
        }
        let hours = limit / duty_l_min / MINUTES_AN_HOUR;
        check.judge(Figure::PumpHours, HOURS_A_DAY, hours);
        energy(asked, &mut check, limit, head, density);
    } else {
        check.judge(Figure::DutyHead, curve.points[0].1, asks_m(0.0));
        check.verdict = Verdict::Fails;
    }
    checks.push(check);
    checks.push(suction(asked, pump.id, from, duty_l_min));
}

/// Pressure at a tap that water reaches by gravity alone: tank full and drawn down. An outbuilding's has its own check.
pub(super) fn of_use(asked: &Asked<'_>, using: &Use, tank: &Tank, checks: &mut Vec<Check>) {
    if asked.site.system.details.is_pumped(tank.id) || building(&asked.site.system, using) > 0 {
        return;
    }
    let mut check = Check::new(using.id, Subject::Gravity);
    // Joined tanks fill to the lowest of their rims.
    let stores = asked.site.system.stores();
    let joined = stores.iter().filter(|store| store.contains(&tank.id)).flatten();
    let rims = joined.filter_map(|id| asked.site.system.tank(*id)).map(Tank::overflow_elevation);
    let full = check.known(Figure::HighestLevel, rims.fold(f64::INFINITY, f64::min));
    let lowest = check.known(Figure::LowestLevel, lowest_m(tank).min(full));
    let density = density_kg_m3(check.of_site(asked, Detail::WaterTemperature));
    let fouled = gravity_filters_kpa(asked, &mut check, using);
    let tap = check.detail(asked, Detail::TapHeight);
    let flow = check.detail(asked, Detail::TapFlow) / L_MIN;
    let wanted = check.detail_of(asked, Some(using.id), Detail::TapPressure, GRAVITY_TAP_KPA);
    let pipe = Pipe::of(asked, &mut check, using.id, Detail::PipeBore, Detail::PipeLength);
    let friction = check.finds(Figure::DarcyLoss, pipe.darcy_m(flow));
    check.finds(Figure::TapFull, pressure_kpa(full - tap - friction, density) - fouled);
    check.finds(Figure::TapStatic, pressure_kpa(lowest - tap, density));
    // What filters lose is told at the wanted flow and goes with its square.
    let lost_m = |now: f64| {
        let part = if flow > 0.0 { now / flow } else { 0.0 };
        pipe.darcy_m(now) + head_m(fouled, density) * part * part
    };
    let most = flow_for((lowest - tap).max(0.0), pipe.bore_m, lost_m);
    check.finds(Figure::OpenPipe, most * L_MIN);
    check.judge(Figure::TapPressure, pressure_kpa(lowest - tap - friction, density) - fouled, wanted);
    checks.push(check);
}

/// What the filters before a tap that water reaches by gravity lose when they are due for change, in kPa.
pub(super) fn gravity_filters_kpa(asked: &Asked<'_>, check: &mut Check, using: &Use) -> f64 {
    let filtered = using.barriers.iter().any(|barrier| barrier.kind.is_filter());
    let usual = if filtered { Detail::FilterFouled.row().usual } else { 0.0 };
    check.detail_of(asked, Some(using.id), Detail::FilterFouled, usual)
}

/// Pressure that an open gravity tap is content with, in kPa: half a metre of water (common practice, no source).
pub(super) const GRAVITY_TAP_KPA: f64 = 5.0;

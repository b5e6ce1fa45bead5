//! Supply from the tank to the taps.

use super::{Text, Told};
use crate::engine::checks::{Figure, Verdict};
use crate::language::Phrase;
use crate::site::details::Detail;

const ELECTRICITY: Phrase = Phrase(
    "Electricity beside water: a licensed electrician, a residual-current device, a disconnect in reach.",
    "Electricity beside water: a licensed electrician, a residual-current device, a disconnect in reach.",
);

pub(super) const PEAK: Text = Text {
    title: Phrase("Most that is drawn at once", "Most that is drawn at once"),
    formula: Phrase(
        "Fixture units summed, then Hunter's curve for toilets with cisterns.",
        "Fixture units summed, then Hunter's curve for toilets with cisterns.",
    ),
    source: Phrase(
        "Units: International Plumbing Code Table E103.3(2) (from memory). Curve: National Standard Plumbing Code \
             Table B.5.4; rows from 20 to 100 units from memory.",
        "Units: International Plumbing Code Table E103.3(2) (from memory). Curve: National Standard Plumbing Code \
             Table B.5.4; rows from 20 to 100 units from memory.",
    ),
    assumes: Phrase(
        "A private house. Few fixtures are often all open together: the curve is rough below 6 units.",
        "A private house. Few fixtures are often all open together: the curve is rough below 6 units.",
    ),
    caution: Phrase("", ""),
};
pub(super) const TAP: Text = Text {
    title: Phrase("Pressure at the highest tap", "Pressure at the highest tap"),
    formula: Phrase(
        "ρ·g·(pump head at peak flow − rise − friction) − filters. Duty point: where the pump's curve meets the pipes'.",
        "ρ·g·(pump head at peak flow − rise − friction) − filters. Duty point: where the pump's curve meets the pipes'.",
    ),
    source: Phrase(
        "Darcy-Weisbach with Colebrook's factor; Hazen-Williams beside it.",
        "Darcy-Weisbach with Colebrook's factor; Hazen-Williams beside it.",
    ),
    assumes: Phrase(
        "The pump's curve is the parabola through its three points. Tank down to its outlet, filters due for change; \
              what they lose goes with the square of the flow.",
        "The pump's curve is the parabola through its three points. Tank down to its outlet, filters due for change; \
              what they lose goes with the square of the flow.",
    ),
    caution: ELECTRICITY,
};
pub(super) const SUCTION: Text = Text {
    title: Phrase("Suction", "Suction"),
    formula: Phrase(
        "NPSH = (air pressure − vapour pressure) ÷ ρg − lift − friction; wanted 1.3 times what the pump requires.",
        "NPSH = (air pressure − vapour pressure) ÷ ρg − lift − friction; wanted 1.3 times what the pump requires.",
    ),
    source: Phrase(
        "Any text on pumps; ratio as in Crane Technical Paper 410, example 7.32. Air and vapour: FAO-56 eq. 7 and 11.",
        "Any text on pumps; ratio as in Crane Technical Paper 410, example 7.32. Air and vapour: FAO-56 eq. 7 and 11.",
    ),
    assumes: Phrase(
        "Tank down to its outlet. The suction pipe has two bends and a foot valve.",
        "Tank down to its outlet. The suction pipe has two bends and a foot valve.",
    ),
    caution: Phrase("", ""),
};
pub(super) const VESSEL: Text = Text {
    title: Phrase("Pressure vessel", "Pressure vessel"),
    formula: Phrase(
        "Drawdown V·p₀·(1/p₁ − 1/p₂), absolute; wanted: flow × time between starts ÷ 4.",
        "Drawdown V·p₀·(1/p₁ − 1/p₂), absolute; wanted: flow × time between starts ÷ 4.",
    ),
    source: Phrase(
        "Boyle's law; the quarter from any text on pump stations.",
        "Boyle's law; the quarter from any text on pump stations.",
    ),
    assumes: Phrase(
        "Air charged to 14 kPa (2 psi) under the pressure at which the pump starts.",
        "Air charged to 14 kPa (2 psi) under the pressure at which the pump starts.",
    ),
    caution: Phrase(
        "A vessel under air pressure bursts: let the pressure off before you open it.",
        "A vessel under air pressure bursts: let the pressure off before you open it.",
    ),
};
pub(super) const POWER: Text = Text {
    title: Phrase("Power", "Power"),
    formula: Phrase(
        "ρ·g·V·H ÷ efficiency; panel = energy ÷ (sun hours × yield); battery = energy × days ÷ share drawn.",
        "ρ·g·V·H ÷ efficiency; panel = energy ÷ (sun hours × yield); battery = energy × days ÷ share drawn.",
    ),
    source: Phrase(
        "Any text; efficiencies are usual values, no source.",
        "Any text; efficiencies are usual values, no source.",
    ),
    assumes: Phrase(
        "The month of greatest use, against the pressure at which the pump stops.",
        "The month of greatest use, against the pressure at which the pump stops.",
    ),
    caution: ELECTRICITY,
};
pub(super) const LIFT: Text = Text {
    title: Phrase("Lift to the upper tank", "Lift to the upper tank"),
    formula: Phrase(
        "Duty point: where the pump's curve meets rise + friction. Hours = daily limit ÷ flow there.",
        "Duty point: where the pump's curve meets rise + friction. Hours = daily limit ÷ flow there.",
    ),
    source: Phrase(
        "Darcy-Weisbach with Colebrook's factor; power ρ·g·Q·H ÷ efficiency.",
        "Darcy-Weisbach with Colebrook's factor; power ρ·g·Q·H ÷ efficiency.",
    ),
    assumes: Phrase(
        "From the lower outlet to the upper overflow; the curve is the parabola through its three points.",
        "From the lower outlet to the upper overflow; the curve is the parabola through its three points.",
    ),
    caution: ELECTRICITY,
};
pub(super) const GRAVITY: Text = Text {
    title: Phrase("Pressure by gravity", "Pressure by gravity"),
    formula: Phrase("ρ·g·(level − tap − friction).", "ρ·g·(level − tap − friction)."),
    source: Phrase("Darcy-Weisbach with Colebrook's factor.", "Darcy-Weisbach with Colebrook's factor."),
    assumes: Phrase("Judged with the tank down to its outlet.", "Judged with the tank down to its outlet."),
    caution: Phrase("", ""),
};

pub(super) fn peak(told: &Told<'_>) -> (String, String) {
    let verdict =
        format!("{} at most: {} fixture units.", told.figure(Figure::PeakFlow), told.figure(Figure::FixtureUnits));
    (verdict, String::new())
}

pub(super) const CURVE: &str = "The three points of the pump's curve don't fall from left to right.";
pub(super) const ENTER_CURVE: &str = "Enter them from its data sheet: head must fall as flow rises.";

pub(super) fn tap(told: &Told<'_>) -> (String, String) {
    if told.check.verdict == Verdict::Outside {
        return (CURVE.to_owned(), ENTER_CURVE.to_owned());
    }
    let (has, wants, margin) = told.margin();
    let duty = if told.check.figure(Figure::DutyFlow).is_finite() {
        format!(" The pump keeps {wants} at the tap up to {}.", told.figure(Figure::DutyFlow))
    } else {
        format!(" The pump never makes {wants} there.")
    };
    let verdict = format!(
        "{margin}: {has} with fouled filters, {} with clean, {wants} wanted.{duty}",
        told.figure(Figure::TapClean)
    );
    (verdict, told.if_fails("Change filters sooner, take a wider pipe, or a pump with more head."))
}

pub(super) fn suction(told: &Told<'_>) -> (String, String) {
    let (verdict, to_do) = told.capacity(
        "available are",
        "wanted",
        "Set the pump lower or nearer, take a wider suction pipe, or a pump that stands in the water.",
    );
    let lift = told.check.figure(Figure::SuctionLift);
    let lift = if lift > 0.0 {
        format!("It lifts {}.", told.figure(Figure::SuctionLift))
    } else {
        "Water runs to it.".to_owned()
    };
    (format!("{verdict} {lift}"), to_do)
}

pub(super) fn vessel(told: &Told<'_>) -> (String, String) {
    if told.check.verdict == Verdict::Outside {
        return ("The pump stops below the pressure at which it starts.".to_owned(), "Enter both again.".to_owned());
    }
    told.capacity("it gives", "between two starts wanted", "Take a larger vessel, or set the pressures further apart.")
}

pub(super) fn power(told: &Told<'_>) -> (String, String) {
    let verdict = format!(
        "{} a day: a panel of {}, a battery of {} ({} Ah at {} V) for {}.",
        told.figure(Figure::EnergyADay),
        told.figure(Figure::Panel),
        told.figure(Figure::Battery),
        told.figure(Figure::AmpereHours),
        told.entered(Detail::BatteryVolts),
        told.entered(Detail::Autonomy),
    );
    (verdict, String::new())
}

pub(super) fn lift(told: &Told<'_>) -> (String, String) {
    if told.check.verdict == Verdict::Outside {
        return (CURVE.to_owned(), ENTER_CURVE.to_owned());
    }
    let (has, wants, margin) = told.margin();
    if !told.check.figure(Figure::DutyFlow).is_finite() {
        return (
            format!("It can't lift so high: it makes {has}, {wants} are asked."),
            "Take a pump with more head, or set it in two steps.".to_owned(),
        );
    }
    let verdict = format!(
        "{margin}: it lifts {} at {}; {} takes {wants} a day. {} a day, a panel of {}.",
        told.figure(Figure::DutyFlow),
        told.figure(Figure::DutyHead),
        told.figure(Figure::DailyUse),
        told.figure(Figure::EnergyADay),
        told.figure(Figure::Panel),
    );
    (verdict, told.if_fails("Take a stronger pump or a wider pipe, or lower the daily limit."))
}

pub(super) fn gravity(told: &Told<'_>) -> (String, String) {
    let (has, wants, margin) = told.margin();
    let verdict = format!(
        "{margin}: {has} at {} with the tank low, {} full, {wants} wanted. The open pipe gives {}.",
        told.entered(Detail::TapFlow),
        told.figure(Figure::TapFull),
        told.figure(Figure::OpenPipe),
    );
    (verdict, told.if_fails("Lower the tap, raise the tank, take a wider pipe, or a pump."))
}

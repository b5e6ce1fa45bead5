//! What the checks of parts say: the verdict with its margin, what to do, formula, source, assumptions.

pub mod details;
pub mod figures;

mod flush;
mod outbuilding;
mod portable;
mod roof_water;
mod standing;
mod supply;
mod trunk;

use super::treatment;
use crate::engine::checks::{Check, Figure, Margin, Subject, Verdict};
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::details::Detail;
use crate::site::system::System;

/// What is said of a check whatever it comes to.
pub struct Text {
    /// What is checked.
    pub title: Phrase,
    /// How it is reckoned.
    pub formula: Phrase,
    /// Where that comes from.
    pub source: Phrase,
    /// What is taken for granted.
    pub assumes: Phrase,
    /// What to be careful of, where it can hurt; may be empty.
    pub caution: Phrase,
}

/// A check in words and figures.
pub struct Said {
    /// The verdict, its margin first.
    pub verdict: String,
    /// What to do; may be empty.
    pub to_do: String,
}

/// What is said of a subject.
pub const fn text(subject: Subject) -> Text {
    match subject {
        Subject::FlushVolume => flush::VOLUME,
        Subject::FlushDrain => flush::DRAIN,
        Subject::FlushLoss => flush::LOSS,
        Subject::FlushYield => flush::YIELD,
        Subject::Gutter => roof_water::GUTTER,
        Subject::Downspout => roof_water::DOWNSPOUT,
        Subject::Screen => roof_water::SCREEN,
        Subject::Inlet => roof_water::INLET,
        Subject::Overflow => roof_water::OVERFLOW,
        Subject::AirGap => roof_water::AIR_GAP,
        Subject::TrunkFlow => trunk::FLOW,
        Subject::TrunkDraw => trunk::DRAW,
        Subject::PeakFlow => supply::PEAK,
        Subject::HighestTap => supply::TAP,
        Subject::Suction => supply::SUCTION,
        Subject::Vessel => supply::VESSEL,
        Subject::Power => supply::POWER,
        Subject::Lift => supply::LIFT,
        Subject::Gravity => supply::GRAVITY,
        Subject::PortableDays => portable::DAYS,
        Subject::PortableWeight => portable::WEIGHT,
        Subject::PortableFill => portable::FILL,
        Subject::Outbuilding => outbuilding::SUPPLY,
        Subject::BothDraw => outbuilding::BOTH,
        Subject::Burden => outbuilding::BURDEN,
        Subject::Pad => standing::PAD,
        Subject::Wind => standing::WIND,
        Subject::Uplift => standing::UPLIFT,
        Subject::StormFeed => standing::STORM_FEED,
        Subject::StormTank => standing::STORM_TANK,
        Subject::OnRoof => treatment::roof::TEXT,
        Subject::Dose => treatment::dose::TEXT,
        Subject::Barrier(kind) => treatment::barriers::text(kind),
    }
}

/// The subject under which a check stands on a sheet.
pub fn group(subject: Subject) -> &'static str {
    match subject {
        Subject::FlushVolume | Subject::FlushDrain | Subject::FlushLoss | Subject::FlushYield => {
            said!("First flush", "Primeras aguas")
        }
        Subject::Gutter | Subject::Downspout | Subject::Screen | Subject::Inlet => {
            said!("Gutter, downspout, screen, inlet", "Canaleta, bajante, malla, entrada")
        }
        Subject::Overflow | Subject::AirGap | Subject::StormFeed | Subject::StormTank => {
            said!("Storm and overflow", "Tormenta y rebosadero")
        }
        Subject::TrunkFlow | Subject::TrunkDraw => said!("Between the tanks", "Entre los tanques"),
        Subject::PeakFlow
        | Subject::HighestTap
        | Subject::Suction
        | Subject::Vessel
        | Subject::Power
        | Subject::Lift
        | Subject::Gravity => said!("Supply", "Suministro"),
        Subject::PortableDays | Subject::PortableWeight | Subject::PortableFill => {
            said!("Portable tank", "Tanque portátil")
        }
        Subject::Outbuilding | Subject::BothDraw => said!("Outbuilding", "Edificio anexo"),
        Subject::Burden => said!("Water for all", "Agua para todos"),
        Subject::Pad | Subject::Wind | Subject::Uplift => said!("Standing", "Estabilidad"),
        Subject::OnRoof | Subject::Dose | Subject::Barrier(_) => said!("Clean water", "Agua limpia"),
    }
}

/// What a check comes to.
pub fn said(check: &Check, system: &System, units: &Units) -> Said {
    let told = Told { check, units };
    let (verdict, to_do) = match check.subject {
        Subject::FlushVolume => flush::volume(&told),
        Subject::FlushDrain => flush::drain(&told),
        Subject::FlushLoss => flush::loss(&told),
        Subject::FlushYield => flush::cost(&told),
        Subject::Gutter => roof_water::gutter(&told),
        Subject::Downspout => roof_water::downspout(&told),
        Subject::Screen => roof_water::screen(&told),
        Subject::Inlet => roof_water::inlet(&told),
        Subject::Overflow => roof_water::overflow(&told, system),
        Subject::AirGap => roof_water::air_gap(&told),
        Subject::TrunkFlow => trunk::flow(&told),
        Subject::TrunkDraw => trunk::draw(&told),
        Subject::PeakFlow => supply::peak(&told),
        Subject::HighestTap => supply::tap(&told),
        Subject::Suction => supply::suction(&told),
        Subject::Vessel => supply::vessel(&told),
        Subject::Power => supply::power(&told),
        Subject::Lift => supply::lift(&told),
        Subject::Gravity => supply::gravity(&told),
        Subject::PortableDays => portable::days(&told),
        Subject::PortableWeight => portable::weight(&told),
        Subject::PortableFill => portable::fill(&told),
        Subject::Outbuilding => outbuilding::supply(&told, system),
        Subject::BothDraw => outbuilding::both(&told),
        Subject::Burden => outbuilding::burden(&told),
        Subject::Pad => standing::pad(&told),
        Subject::Wind => standing::wind(&told),
        Subject::Uplift => standing::uplift(&told),
        Subject::StormFeed => standing::storm_feed(&told),
        Subject::StormTank => standing::storm_tank(&told, system),
        Subject::OnRoof => treatment::roof::said(check),
        Subject::Dose => treatment::dose::said(check, units),
        // Its sentence needs the chain that it stands in.
        Subject::Barrier(_) => Default::default(),
    };
    Said { verdict, to_do }
}

/// Further lines of figures under a check: pipes by nominal size, one tap a line.
pub fn lines(check: &Check, units: &Units) -> Vec<(String, String)> {
    match check.subject {
        Subject::FlushVolume => flush::lengths(check, units),
        Subject::Dose => treatment::dose::lines(check),
        _ => Vec::new(),
    }
}

/// Not enough, but on sizes that nobody has entered yet.
const NOT_ENOUGH_IF: Phrase =
    phrase!("Not enough, if the usual sizes are yours", "No alcanza, si tus medidas son las usuales");

/// Enough, but on sizes that nobody has entered yet.
const ENOUGH_IF: Phrase = phrase!("Enough, if the usual sizes are yours", "Alcanza, si tus medidas son las usuales");

/// What a check comes to in a word, for whoever can't see its colour.
pub fn word(check: &Check) -> &'static str {
    match check.subject {
        Subject::OnRoof => treatment::roof::word(check.verdict),
        _ if check.fails() && check.is_guess() => NOT_ENOUGH_IF.text(),
        _ if check.verdict == Verdict::Holds && check.is_guess() => ENOUGH_IF.text(),
        _ => verdict(check.verdict),
    }
}

/// A verdict in a word.
pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => said!("Enough", "Alcanza"),
        Verdict::Fails => said!("Not enough", "No alcanza"),
        Verdict::Tells => said!("To know", "Para saber"),
        Verdict::Lacks => said!("Not known", "No se sabe"),
        Verdict::Outside => said!("Outside the formula", "Fuera de la fórmula"),
    }
}

const MINUTES_AN_HOUR: f64 = 60.0;

/// A figure with its unit; less than an hour in minutes.
pub fn figure(of: Figure, si: f64, units: &Units) -> String {
    if of.kind() == Kind::Hours && si < 1.0 {
        return format!("{}\u{a0}min", shown::significant(si * MINUTES_AN_HOUR, 3));
    }
    shown::figure(si, of.kind(), units)
}

/// A check that is being told, in the person's units.
struct Told<'a> {
    check: &'a Check,
    units: &'a Units,
}

impl Told<'_> {
    /// A figure of the check with its unit.
    fn figure(&self, of: Figure) -> String {
        figure(of, self.check.figure(of), self.units)
    }

    /// A detail that the check went in with.
    fn entered(&self, detail: Detail) -> String {
        let value = self.check.went_in(detail);
        match details::options(detail).get(crate::engine::checks::chosen(value)) {
            Some(option) => (*option).to_owned(),
            None => shown::entered(value, detail.row().kind, self.units),
        }
    }

    /// What to do, where it fails.
    fn if_fails(&self, to_do: &str) -> String {
        if self.check.fails() { to_do.to_owned() } else { String::new() }
    }

    /// The verdict of a part that can do so much and must do so much, and what to do where it fails.
    fn capacity(&self, can: &str, must: &str, to_do: &str) -> (String, String) {
        let (has, wants, margin) = self.margin();
        (format!("{margin}: {can} {has}, {must} {wants}."), self.if_fails(to_do))
    }

    /// What there is, what is wanted, and the margin: "40 % to spare", "20 % too little".
    fn margin(&self) -> (String, String, String) {
        let Some(margin) = self.check.margin else { return Default::default() };
        (figure(margin.of, margin.has, self.units), figure(margin.of, margin.wants, self.units), spare(margin))
    }
}

/// A margin in words. Above ten times it is told as times.
fn spare(margin: Margin) -> String {
    const MANY_TIMES: f64 = 9.0;
    match margin.spare() {
        spare if spare.is_infinite() => phrase!("nothing is asked of it", "no se le pide nada").to_owned(),
        spare if spare >= MANY_TIMES => say!(
            "{times} times what is wanted",
            "{times} veces lo que se pide",
            times = shown::significant(spare + 1.0, 2),
        ),
        spare if spare >= 0.0 => say!("{share} to spare", "{share} de sobra", share = super::percent(spare)),
        _ if margin.has < 0.0 => phrase!("none of what is wanted", "nada de lo que se pide").to_owned(),
        spare => say!("{share} too little", "falta {share}", share = super::percent(-spare)),
    }
}

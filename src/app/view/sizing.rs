//! Sizing: the answer in words first, then what stands behind it.

use super::charts::{self, Chart};
use super::{Outcome, sheet};
use crate::app::event::Lever;
use crate::app::model::KeptSite;
use crate::engine::question::Answer;
use crate::engine::rain::weather::Origin;
use crate::engine::sizing::smallest::Sought;
use crate::figures::drawing::Drawing;
use crate::figures::table::Table;
use crate::quantity::{Kind, Units, shown};
use crate::site::household::Site;
use crate::site::system::System;
use crate::site::trial::Trial;
use crate::words::{self, sizing as say};

/// Sizing as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct SizingView {
    /// The answer for the house as it is, or why there is none.
    pub headline: String,
    /// The answer for the trial, and how it differs.
    pub trial: Option<(String, String)>,
    /// What can be dragged.
    pub levers: Vec<LeverView>,
    /// What is thin about the answer; of the trial, if there is one.
    pub reservations: Vec<String>,
    /// Whether there is an answer that can be tried otherwise.
    pub can_try: bool,
    /// How full the tanks are on the first day, with words, and the one that holds.
    pub starts: Vec<(f64, &'static str, bool)>,
    /// The orders of events within a day, with words, and the one that holds.
    pub rules: Vec<(f64, &'static str, bool)>,
}

/// One thing that can be dragged.
#[derive(Clone, Debug, PartialEq)]
pub struct LeverView {
    /// Which.
    pub lever: Lever,
    /// Its name.
    pub label: &'static str,
    /// The factor as it stands.
    pub factor: f64,
    /// What that comes to.
    pub value: String,
}

/// What stands behind the answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Results {
    /// How sure the share of good years is, drawn.
    pub good_years: Option<Drawing>,
    /// Statistics in sentences.
    pub statistics: Vec<String>,
    /// What the parts did: diverters, stranded capacity, hauled water.
    pub parts: Vec<String>,
    /// The charts.
    pub charts: Vec<Chart>,
    /// The years.
    pub years: Table,
}

/// Sizing for a site, with the outcomes for it as it is and under the trial.
pub fn sizing(
    kept: &KeptSite,
    outcome: Option<&Outcome>,
    trial: &Trial,
    trial_outcome: Option<&Outcome>,
    units: &Units,
) -> SizingView {
    let (now, tried) = (answer_of(outcome), answer_of(trial_outcome));
    let site = trial.of(&kept.site);
    let reckoning = trial.reckoning(&kept.site.reckoning);
    let why_not = || match outcome {
        None => say::NO_RAIN.to_owned(),
        Some(Err(refusal)) => words::errors::refusal(refusal).unwrap_or_else(|| say::CANNOT_RUN.to_owned()),
        Some(Ok(_)) => String::new(),
    };
    let shown = tried.or(now);
    let is = |one: f64, other: f64| (one - other).abs() < 1e-9;
    SizingView {
        headline: now.map_or_else(why_not, say::headline),
        trial: match (now, trial_outcome) {
            (Some(now), Some(Ok(tried))) => {
                Some((say::headline(tried), words::next::difference(&now.into(), &tried.into(), units)))
            }
            (_, Some(Err(_))) => Some((say::TRIAL_CANNOT_RUN.to_owned(), String::new())),
            _ => None,
        },
        levers: levers(&site, &kept.site, trial, units),
        reservations: shown.map(say::reservations).unwrap_or_default(),
        can_try: shown.is_some(),
        starts: [
            (1.0, said!("Full", "Llenos")),
            (0.5, said!("Half full", "A la mitad")),
            (0.0, said!("Empty", "Vacíos")),
        ]
        .map(|(share, word)| (share, word, is(share, reckoning.start.get())))
        .into(),
        rules: say::RULES.map(|(theta, word)| (theta, word.text(), is(theta, reckoning.inflow_first.get()))).into(),
    }
}

fn levers(site: &Site, now: &Site, trial: &Trial, units: &Units) -> Vec<LeverView> {
    let [capacity, roof, uses] = Sought::ALL.map(|sought| sought.of(site));
    let reckoning = trial.reckoning(&now.reckoning);
    let rain = reckoning.rain_factors.iter().map(|factor| factor.get()).sum::<f64>() / 12.0 * trial.levers.rain;
    Lever::ALL
        .map(|lever| {
            let (label, factor, value) = match lever {
                Lever::Storage => {
                    (said!("Tanks", "Tanques"), trial.levers.storage, shown::figure(capacity, Kind::Volume, units))
                }
                Lever::Roof => (said!("Roof", "Techo"), trial.levers.roof, shown::figure(roof, Kind::Area, units)),
                Lever::Uses => (said!("Use", "Uso"), trial.levers.uses, shown::figure(uses, Kind::Flow, units)),
                Lever::Rain => (
                    said!("Rain", "Lluvia"),
                    trial.levers.rain,
                    say!("{share} of the record", "{share} del registro", share = words::percent(rain)),
                ),
            };
            LeverView { lever, label, factor, value }
        })
        .into()
}

fn answer_of(outcome: Option<&Outcome>) -> Option<&Answer> {
    outcome?.as_ref().ok()
}

/// How reliable the house is, in sentences.
pub fn statistics(answer: &Answer, units: &Units) -> Vec<String> {
    let mut statistics = Vec::new();
    if let Some(good) = answer.good_years.filter(|_| answer.origin != Origin::Even) {
        statistics.push(say::good_years(&good));
    }
    statistics.push(say::reliability(answer));
    statistics.extend(say::resilience(answer, units));
    statistics.push(say::accounted(answer.ledger.residual()));
    statistics
}

/// What the parts did: diverters, stranded capacity, gardens, hauled water.
pub fn what_parts_did(answer: &Answer, system: &System, units: &Units) -> Vec<String> {
    let mut parts: Vec<String> =
        (0..system.tanks.len()).filter_map(|tank| sheet::stranded(answer, tank, system, units)).collect();
    parts.extend(
        system
            .feeds
            .iter()
            .enumerate()
            .filter(|(_, feed)| feed.diverter.is_some())
            .filter_map(|(at, feed)| say::diverter(&feed.name, answer, at, units)),
    );
    parts.extend(super::uses::what_uses_did(answer, system, units));
    parts.extend(say::hauled(answer, units));
    parts
}

/// Everything behind the answer for the site as it is or, if there is one, under the trial, drawn for a width in pixels.
pub fn results(
    kept: &KeptSite,
    outcome: Option<&Outcome>,
    trial: &Trial,
    trial_outcome: Option<&Outcome>,
    units: &Units,
    width: f64,
) -> Option<Results> {
    let (now, tried) = (answer_of(outcome), answer_of(trial_outcome));
    let answer = tried.or(now)?;
    let parts = match tried {
        Some(tried) => what_parts_did(tried, &trial.system(&kept.site.system), units),
        None => what_parts_did(answer, &kept.site.system, units),
    };
    Some(Results {
        good_years: charts::good_years(answer, width.min(charts::COLUMN)),
        statistics: statistics(answer, units),
        parts,
        charts: vec![
            charts::contents(answer, units, width),
            charts::through_the_year(answer, units, charts::half(width)),
            charts::where_it_went(answer, units, charts::half(width)),
        ],
        years: super::years::years(answer, units),
    })
}

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
        (0..system.tanks.len()).filter_map(|tank| sheet::stranded(&answer.plan, tank, system, units)).collect();
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
        charts: [charts::contents(answer, units, width), charts::through_the_year(answer, units, charts::half(width))]
            .into_iter()
            .chain(answer.has_whole_year().then(|| charts::where_it_went(answer, units, charts::half(width))))
            .collect(),
        years: super::years::years(answer, units),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use std::sync::Arc;

    use super::*;
    use crate::engine::question::{Refusal, answer};
    use crate::engine::sizing::study::{Findings, Inquiry, Study};
    use crate::quantity::{Area, Customary, Flow, Volume};
    use crate::site::demo;
    use crate::site::part::PartId;
    use crate::site::rain::{Rain, RainRecord};
    use crate::site::tank::OverflowTo;
    use crate::site::uses::Amount;

    /// So many mm on every fifth day.
    fn every_fifth_day(days: usize, depth_mm: f64) -> Rain {
        let start = "2001-01-01".parse().unwrap();
        let depths_mm = (0..days).map(|day| Some(if day % 5 == 0 { depth_mm } else { 0.0 })).collect();
        Rain::Record(RainRecord { source: String::new(), start, depths_mm })
    }

    /// One roof of 50 m² on one tank of 100,000 L that begins full, and one use of 100 L a day.
    fn large_tank() -> Site {
        let mut site = demo::site();
        let system = &mut site.system;
        let tank = system.tanks[0].id;
        for other in system.tanks.clone().iter().skip(1) {
            system.remove(other.id);
        }
        system.sections.truncate(1);
        system.sections[0].area = Area::square_metres(50.0);
        system.uses.truncate(1);
        system.rationing.clear();
        system.hauling.clear();
        system.pumps.clear();
        system.trunk_lines.clear();
        (system.uses[0].tank, system.uses[0].amount) = (Some(tank), Amount::Daily(Flow::litres_a_day(100.0)));
        system.feeds.retain(|feed| feed.tank == Some(tank));
        system.tanks[0].shape = crate::site::new_part::tank(
            tank,
            String::new(),
            Volume::litres(100_000.0),
            crate::quantity::Length::metres(2.4),
        )
        .shape;
        site
    }

    #[test]
    fn less_than_a_year_gives_no_sizes() {
        let (site, rain) = (Arc::new(demo::site()), every_fifth_day(40, 6.0));
        for inquiry in Inquiry::ALL {
            let refused = Study::new(inquiry, &site, &rain).err();
            assert_eq!(refused, Some(Refusal::NoWholeYear { days: 40 }));
        }
        let answer = answer(&site, &rain).unwrap();
        assert!(say::reservations(&answer)[0].contains("no whole year"));
        assert_eq!(answer.first_fill, None, "40 days tell nothing of the long run");
        assert!(Study::new(Inquiry::Smallest, &site, &every_fifth_day(365, 6.0)).is_ok());
    }

    /// The same beside a barn whose water runs over, and never comes to the house: of it 10 L a day are used there.
    fn beside_a_barn(mut site: Site) -> Site {
        let system = &mut site.system;
        let (tank, feed, section) = (system.tanks[0].id, system.feeds[0].id, system.sections[0].id);
        let mut copy = |part: PartId| system.duplicate(part, "Barn".to_owned()).unwrap();
        let (barn, spout, roof) = (copy(tank), copy(feed), copy(section));
        let trough = system.duplicate(system.uses[0].id, "Trough".to_owned()).unwrap();
        for using in system.uses.iter_mut().filter(|using| using.id == trough) {
            (using.tank, using.amount) = (Some(barn), Amount::Daily(Flow::litres_a_day(10.0)));
        }
        system.tanks.iter_mut().filter(|tank| tank.id == barn).for_each(|tank| tank.overflow_to = OverflowTo::Ground);
        system.feeds.iter_mut().filter(|feed| feed.id == spout).for_each(|feed| feed.tank = Some(barn));
        for section in system.sections.iter_mut().filter(|section| section.id == roof) {
            section.area = Area::square_metres(2000.0);
            section.outlets.iter_mut().for_each(|outlet| outlet.feed = spout);
        }
        site
    }

    #[test]
    fn water_that_cannot_come_to_a_use_helps_it_nothing() {
        let (alone, rain) = (large_tank(), every_fifth_day(2 * 365, 4.0));
        let barn = beside_a_barn(alone.clone());
        let comes = |site: &Site| answer(site, &rain).unwrap().first_fill.unwrap();
        let spilled = answer(&barn, &rain).unwrap().total.spill_l;
        assert!(spilled > 100_000.0, "{spilled}");
        // Of the 110 L a day what comes to the house, and the 10 of the barn.
        let expected = comes(&alone).mul_add(100.0, 10.0) / 110.0;
        assert!((comes(&barn) - expected).abs() < 1e-9, "{} {expected}", comes(&barn));
        let mut study = Study::new(Inquiry::Smallest, &Arc::new(barn.clone()), &rain).unwrap();
        while study.step() {}
        let Findings::Smallest { found, .. } = study.findings() else { panic!("another question") };
        let units = Units::customary(Customary::Metric);
        let (sentences, _) = super::super::size::smallest::smallest(&barn, &found, &units);
        assert!(sentences[0].starts_with("Not even tanks of"), "{sentences:?}");
        // From empty tanks nothing hides it, and what comes to the barn is still none of the house's.
        let mut empty = barn;
        empty.reckoning.start = crate::quantity::Share::of_one(0.0);
        let short = answer(&empty, &rain).unwrap().comes_short();
        assert!(short.is_some_and(|share| (share - expected).abs() < 0.02), "{short:?}");
        // Where none is led to any of them, more of it would mend nothing.
        empty.system.sections.iter_mut().for_each(|section| section.outlets.clear());
        let dry = answer(&empty, &rain).map(|answer| say::headline(&answer));
        assert!(dry.as_ref().is_ok_and(|told| told.contains("has to lead there first")), "{dry:?}");
    }

    #[test]
    fn what_the_first_fill_carried_is_said_and_makes_no_size() {
        // 4 mm on 50 m² every fifth day is 40 L a day before any loss: under half of the 100 L that are wanted. Two years
        // want 73,000 L of the 100,000 that stand there.
        let (site, rain) = (large_tank(), every_fifth_day(2 * 365, 4.0));
        let carried = answer(&site, &rain).unwrap();
        assert_eq!(carried.longest_dry_run, None);
        assert!(carried.first_fill.is_some_and(|comes| comes <= 0.4), "{:?}", carried.first_fill);
        let told = say::headline(&carried);
        assert!(told.contains("never ran out. But") && told.contains("can't go on"), "{told}");
        let mut study = Study::new(Inquiry::Smallest, &Arc::new(site.clone()), &rain).unwrap();
        while study.step() {}
        let Findings::Smallest { found, .. } = study.findings() else { panic!("another question") };
        let units = Units::customary(Customary::Metric);
        let (sentences, _) = super::super::size::smallest::smallest(&site, &found, &units);
        assert!(sentences[0].starts_with("Not even tanks of"), "{sentences:?}");
        // Ten times the roof brings more than is wanted: then the first fill carries nothing.
        let mut enough = site;
        enough.system.sections[0].area = Area::square_metres(500.0);
        assert_eq!(answer(&enough, &rain).unwrap().first_fill, None);
    }
    #[test]
    fn what_a_garden_lacks_is_no_dry_day_and_asks_for_no_more_roof() {
        // 40 L a day fall on the roof: what is left of them is enough for 5 L in the house, not for a garden of 400 L as well.
        let (mut site, rain) = (large_tank(), every_fifth_day(2 * 365, 4.0));
        site.reckoning.start = crate::quantity::Share::of_one(0.0);
        let mut garden = site.system.uses[0].clone();
        (garden.id, garden.outdoor) = (site.system.unused_id(), true);
        site.system.uses[0].amount = Amount::Daily(Flow::litres_a_day(5.0));
        let wants = |outdoor: f64| {
            garden.amount = Amount::Daily(Flow::litres_a_day(outdoor));
            let mut site = site.clone();
            site.system.uses.push(garden.clone());
            answer(&site, &rain).unwrap()
        };
        let answered = [0.0, 400.0].map(wants);
        assert!(answered.iter().all(|answer| answer.comes_short().is_none() && answer.comes_elsewhere()));
        site.system.uses[0].amount = Amount::Daily(Flow::litres_a_day(100.0));
        assert!(answer(&site, &rain).unwrap().comes_short().is_some());
    }
}

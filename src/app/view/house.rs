//! The house: the drawing, the answer in a line, what needs attention, and the parts in lists.

use chrono::NaiveDate;

use super::{Outcome, upkeep};
use crate::app::model::KeptSite;
use crate::engine::checks::now;
use crate::engine::learning::lesson::Lesson;
use crate::engine::question::Answer;
use crate::figures::drawing::Drawing;
use crate::figures::house::{self, Labels, PartLabel, PartMark, Sign, TankWater};
use crate::quantity::{Kind, Units, shown};
use crate::site::findings::findings;
use crate::site::part::PartId;
use crate::site::system::{Part, PartKind, System};
use crate::site::uses::{Amount, Use};
use crate::words;

/// The house as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct HouseView {
    /// The answer in a line, or what is wanted for one.
    pub headline: String,
    /// What upkeep is due, in a line.
    pub due: Option<String>,
    /// What the water in the drawing is.
    pub water: Option<String>,
    /// The drawing.
    pub drawing: Drawing,
    /// What keeps the system from working.
    pub findings: Vec<FindingView>,
    /// The parts, kind by kind.
    pub lists: Vec<PartList>,
}

/// Something to mend.
#[derive(Clone, Debug, PartialEq)]
pub struct FindingView {
    /// The sentence.
    pub text: String,
    /// The part to open.
    pub part: Option<PartId>,
}

/// The parts of one kind.
#[derive(Clone, Debug, PartialEq)]
pub struct PartList {
    /// The kind.
    pub kind: PartKind,
    /// Its parts in order.
    pub rows: Vec<PartRow>,
}

/// A part in a list.
#[derive(Clone, Debug, PartialEq)]
pub struct PartRow {
    /// The part.
    pub id: PartId,
    /// Its name.
    pub name: String,
    /// Its main figure.
    pub detail: String,
}

/// The house of a site, drawn for a width in pixels.
pub fn house(
    kept: &KeptSite,
    (outcome, lesson): (Option<&Outcome>, Option<&Lesson>),
    units: &Units,
    today: NaiveDate,
    width: f64,
) -> HouseView {
    let system = &kept.site.system;
    let found = findings(system);
    let answer = outcome.and_then(|outcome| outcome.as_ref().ok());
    let water = answer.map(|answer| usual_water(answer, system, today)).unwrap_or_default();
    let faults: Vec<PartId> = found.iter().filter_map(words::findings::part).collect();
    let mut marks: Vec<PartMark> = faults.iter().map(|part| PartMark { part: *part, sign: Sign::Fault }).collect();
    let mut loose = wants_attention(system);
    loose.extend(super::checks::failing(kept, outcome, today));
    loose.extend(super::water::failing(kept, today));
    let overdue = upkeep::overdue_parts(&upkeep::standing(kept, lesson, today), kept);
    loose.extend(&overdue);
    marks.extend(
        loose.iter().filter(|part| !faults.contains(part)).map(|part| PartMark { part: *part, sign: Sign::Attention }),
    );
    HouseView {
        due: (!overdue.is_empty()).then(|| words::upkeep::due_line(overdue.len())),
        headline: headline(kept, outcome, !found.is_empty()),
        water: answer.map(|_| {
            format!("Water drawn as it stands on {} in a middle year of this rain.", words::day_of_year(today))
        }),
        drawing: house::drawing(system, &water, &marks, &labels(system, units), width),
        findings: found
            .iter()
            .map(|finding| FindingView {
                text: words::findings::sentence(finding, system, units),
                part: words::findings::part(finding),
            })
            .collect(),
        lists: lists(system, units),
    }
}

fn headline(kept: &KeptSite, outcome: Option<&Outcome>, broken: bool) -> String {
    match outcome {
        _ if broken => "This house can't run yet. Mend what is listed under the drawing.".to_owned(),
        Some(Ok(answer)) => words::sizing::headline(answer),
        Some(Err(refusal)) => words::errors::refusal(refusal).unwrap_or_default(),
        None if kept.rain.is_none() => {
            "No rain yet. Give this site its rain to see how long the water lasts.".to_owned()
        }
        None => String::new(),
    }
}

/// The level in each tank on this day of the year with the store at its middle, dead storage full.
fn usual_water(answer: &Answer, system: &System, today: NaiveDate) -> Vec<TankWater> {
    let mut water = Vec::new();
    for (store, live_l) in answer.plan.stores.iter().zip(now::live_l(answer, today)) {
        let surface_m = store.joined.surface_m(live_l);
        for tank in store.tanks.iter().filter_map(|tank| system.tanks.get(*tank)) {
            let level_m = (surface_m - tank.floor.get()).max(tank.outlet.get());
            water.push(TankWater { tank: tank.id, level_m });
        }
    }
    water
}

/// Roof sections whose water, or part of it, goes nowhere, and tanks that nothing fills.
fn wants_attention(system: &System) -> Vec<PartId> {
    const WHOLE: f64 = 1.0 - 1e-9;
    let loose = system.sections.iter().filter(|section| section.collected_share() < WHOLE).map(|section| section.id);
    let unfed = system.tanks.iter().map(|tank| tank.id).filter(|tank| !system.is_filled(*tank));
    loose.chain(unfed).collect()
}

fn labels(system: &System, units: &Units) -> Labels {
    system
        .parts()
        .iter()
        .map(|part| {
            let detail = detail(part, units);
            // What is written at the part comes first, so that it can be called by it.
            let spoken = [part.name(), " ", &detail, ", ", words::parts::one(part.kind())].concat();
            (part.id(), PartLabel { name: part.name().to_owned(), detail, spoken })
        })
        .collect()
}

fn lists(system: &System, units: &Units) -> Vec<PartList> {
    let parts = system.parts();
    let mut lists = Vec::with_capacity(PartKind::ALL.len());
    for kind in PartKind::ALL {
        let mut rows = Vec::new();
        for part in parts.iter().filter(|part| part.kind() == kind) {
            rows.push(PartRow { id: part.id(), name: part.name().to_owned(), detail: detail(part, units) });
        }
        lists.push(PartList { kind, rows });
    }
    lists
}

/// The main figure of a part.
pub(super) fn detail(part: &Part, units: &Units) -> String {
    let volume = |litres: f64| shown::figure(litres, Kind::Volume, units);
    let flow = |litres: f64| shown::figure(litres, Kind::Flow, units);
    match part {
        Part::Section(section) => shown::figure(section.area.get(), Kind::Area, units),
        Part::Feed(feed) => feed.diverter.as_ref().map_or_else(
            || "no first flush".to_owned(),
            |diverter| format!("first flush {}", volume(diverter.volume.get())),
        ),
        Part::Tank(tank) => volume(tank.capacity().get()),
        Part::TrunkLine(line) => if line.open { "valve open" } else { "valve shut" }.to_owned(),
        Part::Pump(pump) => format!("up to {}", flow(pump.limit.get())),
        Part::Use(Use { amount: Amount::Garden(garden), .. }) => {
            format!("{}, by the weather", shown::figure(garden.area.get(), Kind::Area, units))
        }
        Part::Ration(step) => format!("below {}", words::percent(step.below.get())),
        Part::Use(using) => {
            let (mut least, mut most) = (f64::INFINITY, 0.0f64);
            for month in 0..12 {
                let day = using.amount.litres_a_day(month);
                (least, most) = (least.min(day), most.max(day));
            }
            if most - least > 1e-9 * most {
                format!("{}–{}", shown::figure_number(least, Kind::Flow, units), flow(most))
            } else {
                flow(most)
            }
        }
        Part::Hauling(hauling) => format!("loads of {}", volume(hauling.load.get())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::question::answer;
    use crate::quantity::Customary;
    use crate::records::cupboard::SiteId;
    use crate::site::demo;
    use crate::site::rain::Rain;
    use std::sync::Arc;

    fn view(change: impl FnOnce(&mut crate::site::household::Site)) -> HouseView {
        let mut site = demo::site();
        change(&mut site);
        let rain = Rain::Record(demo::rain());
        let outcome = answer(&site, &rain);
        let kept = KeptSite { id: SiteId(1), site: Arc::new(site), rain: Some(Arc::new(rain)), diary: Arc::default() };
        let today = NaiveDate::from_ymd_opt(2026, 8, 30).unwrap_or_default();
        house(&kept, (Some(&outcome), None), &Units::customary(Customary::Metric), today, 358.0)
    }

    #[test]
    fn the_demo_tells_its_story() {
        let view = view(|_| ());
        assert!(view.headline.starts_with("In 12 years of rain, the water ran out in "), "{}", view.headline);
        assert!(!view.headline.contains("in every year") && !view.headline.contains("never"), "{}", view.headline);
        assert_eq!(view.findings, []);
    }

    #[test]
    fn what_is_broken_is_told_with_the_part_to_open() {
        let view = view(|site| site.system.feeds[0].tank = None);
        let feed = demo::site().system.feeds[0].id;
        assert_eq!(view.findings.len(), 1);
        assert_eq!(view.findings[0].part, Some(feed));
        assert!(view.headline.starts_with("This house can't run yet"));
    }
}

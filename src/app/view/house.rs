//! The house: the drawing, the answer in a line, what needs attention, and the parts in lists.

use chrono::NaiveDate;

use super::{Outcome, sheet, upkeep};
use crate::app::model::KeptSite;
use crate::engine::ahead::standing::Stands;
use crate::engine::balance::plan::plan;
use crate::engine::checks::now;
use crate::engine::diary::due::Standing;
use crate::engine::learning::calls::last_worked;
use crate::engine::learning::lesson::Lesson;
use crate::engine::levels::{level_in_m, store_of};
use crate::engine::question::Answer;
use crate::figures::drawing::Drawing;
use crate::figures::house::{self, Labels, PartLabel, PartMark, Sign, TankWater};
use crate::quantity::{Kind, Units, shown};
use crate::site::diary::{Entry, Told};
use crate::site::findings::findings;
use crate::site::part::PartId;
use crate::site::system::{Part, PartKind, System};
use crate::site::unused::unused;
use crate::site::uses::{Amount, Use};
use crate::words;

/// The house as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct HouseView {
    /// The answer in a line, or what is wanted for one.
    pub headline: String,
    /// Tests of water over a limit of health, with what to do.
    pub alarms: Vec<String>,
    /// What the readings show that asks for attention, in lines.
    pub warnings: Vec<String>,
    /// What upkeep is due, in a line.
    pub due: Option<String>,
    /// What the water in the drawing is.
    pub water: Option<String>,
    /// The drawing.
    pub drawing: Drawing,
    /// What keeps the system from working; where it works, what is of no use in it.
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
    let stands = kept.stands(today);
    let Today { water, told: told_of_water, read } = water_today(kept, answer, stands.as_ref(), units, today);
    let ran = ran(kept, today);
    let faults: Vec<PartId> = found.iter().filter_map(words::findings::part).collect();
    let mut marks: Vec<PartMark> = faults.iter().map(|part| PartMark { part: *part, sign: Sign::Fault }).collect();
    let unused = if found.is_empty() { unused(system) } else { Vec::new() };
    let mut loose = wants_attention(system);
    loose.extend(unused.iter().map(|unused| unused.part()));
    loose.extend(super::checks::failing(kept, outcome, stands.as_ref(), today));
    loose.extend(super::water::failing(kept, today));
    let jobs = upkeep::standing(kept, lesson, today);
    let overdue = upkeep::overdue_parts(&jobs, kept);
    let unwritten = jobs.iter().filter(|due| due.standing == Standing::NeverWritten { long: true }).count();
    loose.extend(&overdue);
    marks.extend(
        loose.iter().filter(|part| !faults.contains(part)).map(|part| PartMark { part: *part, sign: Sign::Attention }),
    );
    let mut labels = labels(system, &read, units);
    for (part, label) in &mut labels {
        let stands = water.iter().find(|water| water.tank == *part).zip(system.tank(*part));
        // What is drawn of it is said of it; what was read stands there.
        if let Some((water, tank)) = stands.filter(|_| !read.iter().any(|(tank, _)| tank == part)) {
            label.spoken.push_str(&words::house::stands_in(tank.shape.volume_l(water.level_m), units));
        }
        if marks.iter().any(|mark| mark.part == *part) {
            label.spoken.push_str(&words::house::WANTS_ATTENTION);
        }
    }
    for (_, label) in labels.iter_mut().filter(|(part, _)| ran.contains(part)) {
        label.spoken.push_str(&words::house::RAN);
    }
    marks.extend(ran.into_iter().map(|part| PartMark { part, sign: Sign::Flow }));
    HouseView {
        alarms: super::water::alarms(kept),
        warnings: lesson.map(|lesson| warnings(lesson, kept)).unwrap_or_default(),
        due: words::upkeep::due_line(overdue.len(), unwritten),
        headline: headline(kept, outcome, !found.is_empty()),
        water: told_of_water,
        drawing: house::drawing(system, &water, &marks, &labels, width),
        findings: found
            .iter()
            .map(|finding| FindingView {
                text: words::findings::sentence(finding, system, units),
                part: words::findings::part(finding),
            })
            .chain(unused.iter().map(|unused| FindingView {
                text: words::findings::unused(*unused, system),
                part: Some(unused.part()),
            }))
            .collect(),
        lists: lists(system, &read, units),
    }
}

/// The water in the tanks today.
struct Today {
    /// The level in each tank.
    water: Vec<TankWater>,
    /// What that is.
    told: Option<String>,
    /// All water in those that were read, in L.
    read: Vec<(PartId, f64)>,
}

/// What stands in a tank today by its readings, in L, if there are any.
pub(super) fn read_today(kept: &KeptSite, tank: PartId, today: NaiveDate) -> Option<f64> {
    let (system, plan) = (&kept.site.system, plan(&kept.site.system).ok()?);
    let (tank, store) = (system.tank(tank)?, store_of(&plan, system, tank)?);
    let live_l = kept.stands(today)?.read_l(store)?;
    Some(tank.shape.volume_l(level_in_m(&plan.stores[store], tank, live_l)))
}

fn warnings(lesson: &Lesson, kept: &KeptSite) -> Vec<String> {
    let mut lines = words::learning::in_lines(lesson);
    lines.extend(last_worked(lesson, &kept.diary).map(words::learning::worked));
    lines
}

fn headline(kept: &KeptSite, outcome: Option<&Outcome>, broken: bool) -> String {
    match outcome {
        _ if broken => words::house::CANNOT_RUN.to_owned(),
        Some(Ok(answer)) => words::sizing::headline(answer),
        Some(Err(refusal)) => words::errors::refusal(refusal).unwrap_or_default(),
        None if kept.rain.is_none() => words::house::NO_RAIN.to_owned(),
        None => String::new(),
    }
}

/// The level in each tank today, and what that is: as read and reckoned on where there is a reading, else as on this
/// day of the year with the store at its middle. Dead storage counts as full.
fn water_today(
    kept: &KeptSite,
    answer: Option<&Answer>,
    read: Option<&Stands>,
    units: &Units,
    today: NaiveDate,
) -> Today {
    let system = &kept.site.system;
    let Ok(plan) = plan(system) else { return Today { water: Vec::new(), told: None, read: Vec::new() } };
    let usual = answer.map(|answer| now::usual_l(answer, today)).unwrap_or_default();
    let (mut water, mut read_in) = (Vec::new(), Vec::new());
    let mut unread = Vec::new();
    for (at, store) in plan.stores.iter().enumerate() {
        let own = read.and_then(|read| read.read_l(at));
        let tanks = || store.tanks.iter().filter_map(|tank| system.tanks.get(*tank));
        if own.is_none() {
            unread.extend(tanks().map(|tank| tank.name.as_str()));
        }
        let Some(live_l) = own.or_else(|| usual.get(at).copied()) else { continue };
        for tank in tanks() {
            let level_m = level_in_m(store, tank, live_l);
            water.push(TankWater { tank: tank.id, level_m });
            read_in.extend(own.map(|_| (tank.id, tank.shape.volume_l(level_m))));
        }
    }
    let now_l: f64 = read_in.iter().map(|(_, litres)| litres).sum();
    let told = match (read, answer) {
        _ if plan.stores.is_empty() => None,
        (Some(read), answer) => {
            let dates = [read.read_on, read.last_read_on];
            let whence = words::house::water_read(dates, today, read.unmeasured, &unread, answer.is_some());
            Some(words::house::water_now(now_l, units) + &whence)
        }
        (None, Some(_)) if !usual.is_empty() => Some(words::house::water_usual(today)),
        (None, _) => Some(words::house::WATER_UNKNOWN.to_owned()),
    };
    let mut hatched = (0..system.tanks.len()).filter_map(|tank| sheet::stranded(&plan, tank, system, units));
    let told = told.into_iter().chain(hatched.next().as_deref().map(words::house::hatched));
    Today { water, told: told.reduce(|told, more| told + " " + &more), read: read_in }
}

/// Rain of a day that is seen to run off, in mm (common practice, no source).
const RUNS_OFF_MM: f64 = 1.0;

/// The downspouts through which rain ran yesterday or today, as the diary says.
fn ran(kept: &KeptSite, today: NaiveDate) -> Vec<PartId> {
    let recent = |entry: &Entry| entry.date <= today && (today - entry.date).num_days() <= 1;
    let wet = |entry: &Entry| matches!(entry.told, Told::Rain(depth) if depth.get() >= RUNS_OFF_MM);
    if !kept.diary.entries().iter().any(|entry| recent(entry) && wet(entry)) {
        return Vec::new();
    }
    let system = &kept.site.system;
    let fed = |feed: PartId| {
        system.sections.iter().any(|section| {
            section.area.get() > 0.0
                && section.outlets.iter().any(|outlet| outlet.feed == feed && outlet.share.get() > 0.0)
        })
    };
    system.feeds.iter().map(|feed| feed.id).filter(|feed| fed(*feed)).collect()
}

/// Roof sections whose water, or part of it, goes nowhere, and tanks that nothing fills.
fn wants_attention(system: &System) -> Vec<PartId> {
    const WHOLE: f64 = 1.0 - 1e-9;
    let loose = system.sections.iter().filter(|section| section.collected_share() < WHOLE).map(|section| section.id);
    let unfed = system.tanks.iter().map(|tank| tank.id).filter(|tank| !system.is_filled(*tank));
    loose.chain(unfed).collect()
}

fn labels(system: &System, read: &[(PartId, f64)], units: &Units) -> Labels {
    system
        .parts()
        .iter()
        .map(|part| {
            let detail = detail(part, units);
            // What was read stands beside what there is room for.
            let detail = match read.iter().find(|(tank, _)| *tank == part.id()) {
                Some((_, litres)) => words::house::of_room(*litres, &detail, units),
                None => detail,
            };
            // What is written at the part comes first, so that it can be called by it.
            let mut spoken = [part.name(), " ", &detail, ", ", words::parts::one(part.kind())].concat();
            if let Part::Use(using) = part {
                let pumped = using.tank.is_some_and(|tank| system.details.is_pumped(tank));
                spoken.push_str(&words::house::behind(pumped, &using.barriers));
            }
            (part.id(), PartLabel { name: part.name().to_owned(), detail, spoken })
        })
        .collect()
}

fn lists(system: &System, read: &[(PartId, f64)], units: &Units) -> Vec<PartList> {
    let parts = system.parts();
    let mut lists = Vec::with_capacity(PartKind::ALL.len());
    for kind in PartKind::ALL {
        let mut rows = Vec::new();
        for part in parts.iter().filter(|part| part.kind() == kind) {
            let stands = read.iter().find(|(tank, _)| *tank == part.id());
            let stands = stands.map(|(_, litres)| words::house::stands_in(*litres, units)).unwrap_or_default();
            rows.push(PartRow { id: part.id(), name: part.name().to_owned(), detail: detail(part, units) + &stands });
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
            || phrase!("no first flush", "sin primeras aguas").to_owned(),
            |diverter| say!("first flush {first}", "primeras aguas {first}", first = volume(diverter.volume.get())),
        ),
        Part::Tank(tank) => volume(tank.capacity().get()),
        Part::TrunkLine(line) => {
            if line.open { said!("valve open", "válvula abierta") } else { said!("valve shut", "válvula cerrada") }
                .to_owned()
        }
        Part::Pump(pump) => say!("up to {flow}", "hasta {flow}", flow = flow(pump.limit.get())),
        Part::Use(Use { amount: Amount::Garden(garden), .. }) => {
            let area = shown::figure(garden.area.get(), Kind::Area, units);
            say!("{area}, by the weather", "{area}, según el tiempo", area)
        }
        Part::Ration(step) => say!("below {share}", "bajo {share}", share = words::percent(step.below.get())),
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
        Part::Hauling(hauling) => say!("loads of {load}", "viajes de {load}", load = volume(hauling.load.get())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::question::answer;
    use crate::quantity::Customary;
    use crate::records::cupboard::{SiteFile, SiteId};
    use crate::site::demo;
    use crate::site::diary::Diary;
    use crate::site::rain::Rain;
    use crate::site::trial::Trial;

    fn view(change: impl FnOnce(&mut crate::site::household::Site)) -> HouseView {
        let mut site = demo::site();
        change(&mut site);
        let rain = Rain::Record(demo::rain());
        let outcome = answer(&site, &rain);
        let kept = KeptSite::of_file(
            SiteId(1),
            SiteFile { site, rain: Some(rain), diary: Diary::default(), trial: Trial::NONE },
        );
        let today = NaiveDate::from_ymd_opt(2026, 8, 30).unwrap_or_default();
        house(&kept, (Some(&outcome), None), &Units::customary(Customary::Metric), today, 358.0)
    }

    #[test]
    fn the_demo_tells_its_story() {
        let view = view(|_| ());
        assert!(view.headline.starts_with("In 12 years of rain, the water ran out in "), "{}", view.headline);
        assert!(view.water.is_some_and(|told| told.contains("Hatched: ") && told.contains("New tank")));
        assert!(!view.headline.contains("every year") && !view.headline.contains("never"), "{}", view.headline);
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

    #[test]
    fn a_roof_of_no_area_is_named_while_the_house_runs() {
        let view = view(|site| site.system.sections[0].area = crate::quantity::Area::square_metres(0.0));
        let section = demo::site().system.sections[0].id;
        assert_eq!(view.findings.iter().map(|found| found.part).collect::<Vec<_>>(), [Some(section)]);
        assert!(!view.headline.contains("can't run"), "{}", view.headline);
    }

    #[test]
    fn water_is_drawn_as_read_else_said_to_be_unknown() {
        let unread = view(|_| ());
        assert!(unread.water.as_deref().is_some_and(|told| told.contains("unknown until a level is read")));
        let today = NaiveDate::from_ymd_opt(2026, 8, 30).unwrap_or_default();
        let mut site = demo::site();
        site.system.trunk_lines.clear();
        let (first, second) = (site.system.tanks[0].clone(), site.system.tanks[1].clone());
        let entry = |id: u64, date: NaiveDate, told: Told| Entry {
            id: crate::site::diary::EntryId(id),
            edited: id,
            date,
            told,
            note: String::new(),
        };
        let level = Told::Level {
            of: crate::site::diary::Water::Tank(first.id),
            level: crate::site::diary::Level::Depth(crate::quantity::Length::metres(1.0)),
            undrawn: None,
            joined: Vec::new(),
        };
        let rained = Told::Rain(crate::quantity::Depth::millimetres(12.0));
        let diary = Diary::of(vec![entry(1, today, level), entry(2, today, rained)]);
        let kept = KeptSite::of_file(SiteId(1), SiteFile { site, rain: None, diary, trial: Trial::NONE });
        let stands = kept.stands(today);
        let Today { water, told, .. } =
            water_today(&kept, None, stands.as_ref(), &Units::customary(Customary::Metric), today);
        let drawn: Vec<f64> = water.iter().filter(|water| water.tank == first.id).map(|water| water.level_m).collect();
        assert!(drawn.len() == 1 && (drawn[0] - 1.0).abs() < 1e-6, "{drawn:?}");
        assert!(water.iter().all(|water| water.tank != second.id), "nobody read the second");
        let units = Units::customary(Customary::Metric);
        let litres = shown::figure(first.shape.volume_l(1.0), Kind::Volume, &units);
        assert!(told.as_ref().is_some_and(|told| told.contains(&second.name) && told.contains("unknown")));
        assert!(told.is_some_and(|told| told.starts_with(&format!("{litres} stand in the tanks."))));
        let of = |id| read_today(&kept, id, today).map(|litres| shown::figure(litres, Kind::Volume, &units));
        assert_eq!((of(first.id), of(second.id)), (Some(litres.clone()), None));
        let rows = house(&kept, (None, None), &units, today, 360.0).lists;
        let detail =
            |id| rows.iter().flat_map(|list| &list.rows).find(|row| row.id == id).map(|row| row.detail.clone());
        assert!(detail(first.id).is_some_and(|detail| detail.ends_with(&format!(", {litres} in it"))));
        assert!(detail(second.id).is_some_and(|detail| !detail.contains("in it")));
        assert!(!ran(&kept, today).is_empty(), "it rained 12 mm");
        assert!(ran(&kept, today + chrono::Days::new(2)).is_empty(), "the day before yesterday is long ago");
    }
}

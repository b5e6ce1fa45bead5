//! Looking ahead from a diary.

use chrono::{Datelike, Days, NaiveDate};

use super::futures::of_years;
use super::looking::Step;
use super::outlook::{Event, HORIZON_DAYS, Known, Outlook};
use super::resampled;
use crate::engine::balance::plan::{Plan, plan};
use crate::engine::diary::joined::Known as Rained;
use crate::engine::diary::track::{brought, levels_read};
use crate::engine::learning::lesson::Lesson;
use crate::engine::levels::{largest, store_of};
use crate::engine::question::{Refusal, generated_years, weather};
use crate::engine::rain::drier;
use crate::engine::rain::weather::Origin;
use crate::site::diary::Diary;
use crate::site::household::{GeneratedYears, Site};
use crate::site::rain::Rain;

/// Why the weeks ahead can't be told.
#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// No level was read in the last [`OLDEST_READING_DAYS`].
    NoReading,
    /// The site has no rain to take futures from.
    NoRain,
    /// The system can't run, or its rain can't be used.
    Refused(Refusal),
    /// The rain has no whole year that passes through today.
    NoFuture {
        /// How many days from tomorrow on are served if it never rains again; `None` beyond the horizon.
        floor: Option<usize>,
    },
}

/// A reading older than this says nothing of today.
pub const OLDEST_READING_DAYS: u64 = 400;
/// A reading older than this is told of before all else, in days: some weeks of use and rain, after which little is left of
/// what was read (common practice, no source).
pub const OLD_READING_DAYS: i64 = 45;
/// The most futures that are run.
const MOST_FUTURES: usize = 100;
/// The fewest years of a record that are run alone; with fewer, years are generated (a range of 80 % takes nine).
const FEWEST_YEARS: usize = super::expected::FEWEST;

/// From which years the futures are taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Years {
    /// Those of the record where there are enough, else generated ones.
    Recorded,
    /// Generated ones.
    Generated,
}

/// What the house is taken to catch and to use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// What the readings show, where they contradict what is entered.
    Readings,
    /// What is entered.
    Entered,
}

/// What was asked, with where the futures come from.
#[derive(Clone, Debug)]
pub struct Asked {
    /// The outlook.
    pub outlook: Outlook,
    /// Where the futures come from.
    pub origin: Origin,
    /// Stores of which nothing was read, as places in the plan: they count as empty.
    pub unread: Vec<usize>,
}

/// The outlook of a site from what its diary says up to today: as it is entered, or as a lesson of its readings shows it.
///
/// # Errors
/// [`Why`].
pub fn ask(
    site: &Site,
    rain: Option<&Rain>,
    diary: &Diary,
    today: NaiveDate,
    years: Years,
    lesson: Option<&Lesson>,
) -> Result<Asked, Why> {
    let mut plan = plan(&site.system).map_err(|findings| Why::Refused(Refusal::System(findings)))?;
    if let Some(lesson) = lesson {
        lesson.correct(&mut plan);
    }
    let known = known(&plan, site, rain, diary, today).ok_or(Why::NoReading)?;
    begun(plan, site, rain, known, years)
}

/// The outlook of a site from what is known, and the stores of which nothing is.
///
/// # Errors
/// [`Why`].
pub fn begun(
    plan: Plan,
    site: &Site,
    rain: Option<&Rain>,
    (known, unread): (Known, Vec<usize>),
    years: Years,
) -> Result<Asked, Why> {
    let rain = rain.ok_or(Why::NoRain)?;
    let days = known.days();
    let factors = site.reckoning.rain_factors.map(|factor| factor.get());
    let generated = || -> Option<Vec<Vec<f64>>> {
        let wanted = site.reckoning.generated.unwrap_or(GeneratedYears::CENTURY);
        if let Rain::Record(record) = rain
            && let Some(mut futures) = resampled::futures(record, &days, wanted)
        {
            for rain_mm in &mut futures {
                rain_mm.iter_mut().zip(&days).for_each(|(mm, day)| *mm *= factors[day.month0() as usize]);
            }
            return Some(futures);
        }
        Some(of_years(&drier::scaled(&generated_years(rain, wanted).ok()?, &factors), &days))
    };
    let own = if years == Years::Generated { generated() } else { None };
    let (mut futures, mut origin) = match own {
        Some(futures) => (futures, Origin::Generated),
        None => {
            // The years as they were, whatever the long run is reckoned with.
            let mut as_recorded = site.clone();
            as_recorded.reckoning.generated = None;
            let weather = weather(&as_recorded, rain).map_err(Why::Refused)?;
            // Less than a year of days lacks some of those to come.
            let whole = weather.dates.len() >= HORIZON_DAYS;
            (if whole { of_years(&weather, &days) } else { Vec::new() }, weather.origin)
        }
    };
    let thin = origin == Origin::Even || origin == Origin::Measured && futures.len() < FEWEST_YEARS;
    if let Some(drawn) = thin.then(generated).flatten() {
        (futures, origin) = (drawn, Origin::Generated);
    }
    futures.truncate(MOST_FUTURES);
    let no_future = futures.is_empty();
    let outlook = Outlook::new(plan, site.reckoning.inflow_first.get(), known, futures);
    if no_future {
        return Err(Why::NoFuture { floor: outlook.floor().lasts });
    }
    Ok(Asked { outlook, origin, unread })
}

/// What the diary says up to today, and the stores of which nothing was read; `None` without any reading.
pub(super) fn known(
    plan: &Plan,
    site: &Site,
    rain: Option<&Rain>,
    diary: &Diary,
    today: NaiveDate,
) -> Option<(Known, Vec<usize>)> {
    let oldest = today.checked_sub_days(Days::new(OLDEST_READING_DAYS))?;
    let mut last: Vec<Option<Event>> = vec![None; plan.stores.len()];
    for read in levels_read(plan, &site.system, diary) {
        let store = read.held.store;
        // One above the rim, which was questioned when it was written, is of a full store.
        if (oldest..=today).contains(&read.date) {
            last[store] = Some(Event { date: read.date, store, litres: read.end_l, brought: false });
        }
    }
    let read_on = last.iter().flatten().map(|event| event.date).min()?;
    let unread = (0..last.len()).filter(|store| last[*store].is_none()).collect();
    // A store that was read later begins with the same water: its own reading puts it right on its day.
    let live_l = last.iter().map(|event| event.map_or(0.0, |event| event.litres)).collect();
    let mut events: Vec<Event> = last.iter().flatten().filter(|event| event.date > read_on).copied().collect();
    for load in brought(plan, &site.system, diary) {
        if load.date > read_on && load.date <= today {
            events.push(Event { date: load.date, store: load.store, litres: load.litres, brought: true });
        }
    }
    let mut known = Known { read_on, live_l, today, rain_mm: Vec::new(), events };
    let days = known.since();
    let rain = Rained::of(rain, diary);
    known.rain_mm = read_on.iter_days().skip(1).take(days).map(|day| rain.mm(day)).collect();
    Some((known, unread))
}

/// What could be done today, and what that is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Help {
    /// The house uses this share (0 to 1) less.
    UseLess(f64),
    /// The step of rationing at this place of the plan is in force from tomorrow on, however full the store.
    Ration(usize),
    /// A load of so many litres comes.
    Delivery(f64),
}

/// A load where the household has named none, in L: a small tanker's (common practice, no source).
pub const USUAL_LOAD_L: f64 = 5000.0;

/// What could be done today in a system: less use by a tenth and by a quarter, each step of rationing, one load, or of it
/// what finds room.
pub fn helps(outlook: &Outlook, site: &Site) -> Vec<(Help, Step)> {
    /// A part of a load that nobody drives out for (common practice, no source).
    const LEAST_OF_A_LOAD: f64 = 0.1;
    let plan = &outlook.plan;
    let mut helps: Vec<(Help, Step)> = [0.1, 0.25].map(|less| (Help::UseLess(less), Step::UseShare(1.0 - less))).into();
    for number in 0..plan.rations.len() {
        let mut instead = plan.clone();
        instead.rations[number].below_l = f64::INFINITY;
        helps.push((Help::Ration(number), Step::Instead(Box::new(instead))));
    }
    let hauling = site.system.hauling.first();
    let load_l = hauling.map_or(USUAL_LOAD_L, |hauling| hauling.load.get());
    let store = hauling.and_then(|hauling| store_of(plan, &site.system, hauling.tank?)).unwrap_or(largest(plan));
    let standing = outlook.standing_today(&outlook.no_more_rain());
    let full_l = plan.stores.get(store).map(|store| store.joined.live_capacity_l);
    let room_l = full_l.zip(standing.live_l.get(store)).map_or(0.0, |(full_l, live_l)| full_l - live_l);
    let litres = load_l.min(room_l);
    if litres >= LEAST_OF_A_LOAD * load_l {
        helps.push((Help::Delivery(litres), Step::Delivery { store, litres }));
    }
    helps
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;
    use crate::engine::ahead::looking::{Looking, Target};
    use crate::quantity::{Flow, Share, Volume};
    use crate::site::demo;
    use crate::site::diary::{Entry, EntryId, Level, Told, Water};
    use crate::site::part::PartId;
    use crate::site::rain::RainRecord;
    use crate::site::rationing::{Cut, RationStep};
    use crate::site::uses::Amount;

    #[test]
    fn no_more_is_brought_than_finds_room() {
        let mut site = demo::site();
        site.system.hauling.clear();
        let plan = plan(&site.system).unwrap();
        let today: NaiveDate = "2026-08-30".parse().unwrap();
        let full: Vec<f64> = plan.stores.iter().map(|store| store.joined.live_capacity_l).collect();
        let brought = |room_l: f64| {
            let mut live_l = full.clone();
            live_l[largest(&plan)] -= room_l;
            let known = Known { read_on: today, live_l, today, rain_mm: Vec::new(), events: Vec::new() };
            let helps = helps(&Outlook::new(plan.clone(), 0.0, known, Vec::new()), &site);
            helps.into_iter().find_map(|(help, _)| if let Help::Delivery(litres) = help { Some(litres) } else { None })
        };
        assert_eq!(brought(0.0), None, "nobody brings water to a full tank");
        assert!(brought(2940.0).is_some_and(|litres| (litres - 2940.0).abs() < 1e-9));
        assert_eq!(brought(9000.0), Some(USUAL_LOAD_L));
    }

    #[test]
    fn a_reading_above_the_rim_is_of_a_full_store() {
        let site = demo::site();
        let plan = plan(&site.system).unwrap();
        let today: NaiveDate = "2026-08-30".parse().unwrap();
        let barrel = site.system.tanks[2].id;
        let told = Told::Level {
            of: Water::Tank(barrel),
            level: Level::Volume(Volume::litres(2_000.0)),
            undrawn: None,
            joined: Vec::new(),
        };
        let entry = Entry { id: EntryId(1), edited: 1, date: today, told, note: String::new() };
        let (known, unread) = known(&plan, &site, None, &Diary::of(vec![entry]), today).unwrap();
        let store = store_of(&plan, &site.system, barrel).unwrap();
        assert!(!unread.contains(&store));
        assert!((known.live_l[store] - plan.stores[store].joined.live_capacity_l).abs() < 1e-9);
    }

    #[test]
    fn less_than_a_year_of_rain_still_has_a_floor() {
        let mut site = demo::site();
        site.system.uses.truncate(1);
        site.system.rationing.clear();
        site.system.uses[0].amount = Amount::Daily(Flow::litres_a_day(100.0));
        site.system.tanks.iter_mut().for_each(|tank| tank.leak = Flow::litres_a_day(0.0));
        let plan = plan(&site.system).unwrap();
        let tank = site.system.tanks.iter().position(|tank| Some(tank.id) == site.system.uses[0].tank).unwrap();
        let drawn = plan.stores.iter().position(|store| store.tanks.contains(&tank)).unwrap();
        let live_l = (0..plan.stores.len()).map(|store| if store == drawn { 1050.0 } else { 0.0 }).collect();
        let today: NaiveDate = "2026-08-30".parse().unwrap();
        let known = Known { read_on: today, live_l, today, rain_mm: Vec::new(), events: Vec::new() };
        // 240 days up to today: the day is there, but no year goes on from it.
        let start = today.checked_sub_days(Days::new(239)).unwrap();
        let rain = Rain::Record(RainRecord { source: String::new(), start, depths_mm: vec![Some(6.0); 240] });
        let why = begun(plan, &site, Some(&rain), (known, Vec::new()), Years::Recorded).err();
        // 1,050 L at 100 L a day serve ten days.
        assert_eq!(why, Some(Why::NoFuture { floor: Some(10) }));
    }

    #[test]
    fn a_step_in_force_is_told_and_makes_no_more_use_safe() {
        let mut site = demo::site();
        site.system.uses.truncate(1);
        let tank = site.system.tanks[0].id;
        let using = &mut site.system.uses[0];
        (using.amount, using.tank, using.outdoor) = (Amount::Daily(Flow::litres_a_day(100.0)), Some(tank), false);
        let using = using.id;
        site.system.tanks.iter_mut().for_each(|tank| tank.leak = Flow::litres_a_day(0.0));
        let cuts = vec![Cut { using, share: Share::of_one(0.5) }];
        site.system.rationing = vec![RationStep {
            id: PartId(900),
            name: String::new(),
            tank: Some(tank),
            below: Share::of_one(1.0),
            cuts,
        }];
        let mut unrationed = site.clone();
        unrationed.system.rationing.clear();
        let today: NaiveDate = "2026-08-30".parse().unwrap();
        let ahead = |site: &Site| {
            let plan = plan(&site.system).unwrap();
            let live_l = plan.stores.iter().map(|_| 600.0).collect();
            let known = Known { read_on: today, live_l, today, rain_mm: Vec::new(), events: Vec::new() };
            let dry = vec![0.0; known.days().len()];
            let mut looking = Looking::new(Outlook::new(plan, 0.0, known, vec![dry]), Target { days: 10 }, Vec::new());
            while looking.step() {}
            looking.answer().unwrap()
        };
        let (with, without) = (ahead(&site), ahead(&unrationed));
        // 600 L last 6 days at 100 L a day, 12 at 50; 10 days bear 60 L a day, whoever cuts.
        assert_eq!((with.lasting.half, without.lasting.half), (12.0, 6.0));
        assert_eq!((with.in_force.as_slice(), without.in_force.as_slice()), ([0].as_slice(), [].as_slice()));
        for safe in [with.safe, without.safe] {
            assert!((safe.litres_a_day(0.5) - 60.0).abs() < 0.1, "{safe:?}");
        }
    }

    #[test]
    fn the_use_that_lacks_water_first_is_told() {
        let mut site = demo::site();
        site.system.uses.truncate(2);
        site.system.rationing.clear();
        let tanks = [site.system.tanks[0].id, site.system.tanks[2].id];
        for (using, tank) in site.system.uses.iter_mut().zip(tanks) {
            (using.amount, using.tank, using.outdoor) = (Amount::Daily(Flow::litres_a_day(100.0)), Some(tank), false);
        }
        site.system.tanks.iter_mut().for_each(|tank| tank.leak = Flow::litres_a_day(0.0));
        let plan = plan(&site.system).unwrap();
        let stores = tanks.map(|tank| store_of(&plan, &site.system, tank).unwrap());
        let short_with = |litres: [f64; 2]| {
            let mut live_l = vec![0.0; plan.stores.len()];
            stores.iter().zip(litres).for_each(|(store, litres)| live_l[*store] = litres);
            let today: NaiveDate = "2026-08-30".parse().unwrap();
            let known = Known { read_on: today, live_l, today, rain_mm: Vec::new(), events: Vec::new() };
            let days = known.days().len();
            let outlook = Outlook::new(plan.clone(), 0.0, known, vec![vec![0.0; days]]);
            let mut looking = Looking::new(outlook, Target { days: 30 }, Vec::new());
            while looking.step() {}
            let ahead = looking.answer().unwrap();
            assert_eq!(ahead.floor.short, ahead.short, "there is no rain in the one future either");
            (ahead.short, ahead.lasting.half)
        };
        // 150 L at 100 L a day serve one day, 250 L two.
        assert_eq!(short_with([250.0, 150.0]), (Some(1), 1.0));
        assert_eq!(short_with([150.0, 250.0]), (Some(0), 1.0));
    }
}

//! A leak told from use, tried on made diaries whose truth is known. The truth is reckoned here day by day, apart from
//! the engine.
//!
//! `cargo test --test native leaks -- --nocapture` prints the table.

use std::ops::Range;

use chrono::NaiveDate;
use eavewater::engine::balance::plan::plan;
use eavewater::engine::learning::fit::{Fit, fit};
use eavewater::engine::learning::timeline::Timeline;
use eavewater::quantity::{Depth, Hours, Volume};
use eavewater::site::demo;
use eavewater::site::diary::{Diary, Entry, EntryId, Level, Told, Water};
use eavewater::site::household::Site;

use crate::learning::{CAPACITY_L, COEFFICIENT, Chance, ROOF_M2, USE_L, WETTING_MM};
use crate::one_tank;

const DAYS: usize = 200;

/// What the household does to tell a leak from use.
pub enum Tells {
    Nothing,
    /// Reads a meter whenever it reads the level.
    Meter,
    /// Reads the level with care before and after ten dry hours in the night, this often.
    Nights(usize),
    /// Is away for these days, and reads before and after.
    Away(Range<usize>),
}

/// What a made house is.
#[derive(Clone, Copy)]
pub struct Truth {
    pub capture: f64,
    pub uses: f64,
    pub leak_l: f64,
}

/// A diary of [`DAYS`] with a level every week and the rain of every day.
fn made(chance: &mut Chance, truth: Truth, tells: &Tells) -> (Diary, NaiveDate) {
    made_by_day(chance, DAYS, |_| truth, tells)
}

/// A diary of so many days, each with its truth, and the day after them.
pub fn made_by_day(
    chance: &mut Chance,
    days: usize,
    truth: impl Fn(usize) -> Truth,
    tells: &Tells,
) -> (Diary, NaiveDate) {
    let record = demo::rain();
    let from = (chance.share() * (record.depths_mm.len() - days) as f64) as usize;
    let first = record.start + chrono::Days::new(from as u64);
    let depths: Vec<f64> = record.depths_mm[from..from + days].iter().map(|depth| depth.unwrap()).collect();
    let mut entries = Vec::new();
    let mut tell = |day: usize, told: Told| {
        let id = EntryId(entries.len() as u64 + 1);
        let date = first + chrono::Days::new(day as u64);
        entries.push(Entry { id, edited: id.0, date, told, note: String::new() });
    };
    let level = |litres: f64, undrawn: Option<f64>| Told::Level {
        of: Water::Tank(one_tank::TANK),
        level: Level::Volume(Volume::litres(litres.clamp(0.0, CAPACITY_L))),
        undrawn: undrawn.map(Hours::from_hours),
        joined: Vec::new(),
    };
    let (mut content, mut metered, mut last_night) = (CAPACITY_L / 2.0, 0.0, 0);
    let meter = 1.0 + 0.01 * chance.normal();
    for (day, depth) in depths.iter().enumerate() {
        let truth = truth(day);
        let caught = (truth.capture * (1.0 + 0.1 * chance.normal())).max(0.0);
        let inflow = caught * COEFFICIENT * ROOF_M2 * (depth - WETTING_MM).max(0.0);
        let away = matches!(tells, Tells::Away(days) if days.contains(&day));
        let wanted = (truth.uses * USE_L * (1.0 + 0.3 * chance.normal())).max(0.0);
        let drawn = if away { 0.0 } else { wanted.min(content) };
        let lost = truth.leak_l.min(content - drawn);
        // What is drawn before the rain leaves no room for it: yield after spillage.
        content = (content + inflow - drawn).min(CAPACITY_L - drawn) - lost;
        metered += drawn;
        tell(day, Told::Rain(Depth::millimetres(*depth)));
        let rough = content + 0.01 * CAPACITY_L * chance.normal();
        match tells {
            Tells::Away(days) if days.end == day + 1 => tell(day, level(rough, Some(24.0 * days.len() as f64))),
            Tells::Away(days) if days.start == day + 1 => tell(day, level(rough, None)),
            Tells::Nights(every) if day >= last_night + every && day + 1 < days && depths[day..day + 2] == [0.0; 2] => {
                last_night = day;
                let careful = |litres: f64, chance: &mut Chance| litres + 0.002 * CAPACITY_L * chance.normal();
                tell(day, level(careful(content, chance), None));
                // Ten hours later; the day that follows goes on from the evening.
                tell(day + 1, level(careful(content - truth.leak_l * 10.0 / 24.0, chance), Some(10.0)));
            }
            _ if day % 7 == 0 => {
                tell(day, level(rough, None));
                if let Tells::Meter = tells {
                    tell(day, Told::Meter { of: None, reading: Volume::litres(metered * meter) });
                }
            }
            _ => {}
        }
    }
    (Diary::of(entries), first + chrono::Days::new(days as u64))
}

/// The house of the diaries.
pub fn house() -> Site {
    let system = one_tank::system(ROOF_M2, COEFFICIENT, WETTING_MM, CAPACITY_L, USE_L);
    Site { system, ..Site::default() }
}

fn fitted(diary: &Diary, today: NaiveDate) -> Option<Fit> {
    let site = house();
    let plan = plan(&site.system).unwrap();
    let timeline = Timeline::of(&plan, &site, None, diary, today).unwrap();
    fit(&plan, &timeline, 0.0)
}

#[test]
fn leaks_are_told_from_use_with_ranges_that_hold() {
    println!("{:<26} {:>5} {:>9} {:>7} {:>8} {:>8}", "200 days", "told", "leak in", "use in", "catch in", "± L/day");
    for (title, tells) in [
        ("meter every week", Tells::Meter),
        ("ten hours every 4 days", Tells::Nights(4)),
        ("three weeks away", Tells::Away(60..81)),
    ] {
        let mut chance = Chance(29);
        let (mut told, mut hits, mut width) = (0.0, [0.0; 3], 0.0);
        for _ in 0..200 {
            let truth = Truth {
                capture: 0.6 + 0.5 * chance.share(),
                uses: 0.7 + 0.6 * chance.share(),
                leak_l: 80.0 * chance.share(),
            };
            let (diary, today) = made(&mut chance, truth, &tells);
            let Some(fit) = fitted(&diary, today) else { continue };
            let (Some(leak), Some(uses), Some(capture)) = (fit.leak_l, fit.uses, fit.capture) else { continue };
            told += 1.0;
            width += leak.half_width;
            let pairs = [(leak, truth.leak_l), (uses, truth.uses), (capture, truth.capture)];
            for (hit, (estimate, truth)) in hits.iter_mut().zip(pairs) {
                *hit += f64::from((estimate.value - truth).abs() <= estimate.half_width);
            }
        }
        let shares = hits.map(|hits| hits / told);
        let [leak, uses, capture] = shares;
        println!("{title:<26} {told:>5} {leak:>9.3} {uses:>7.3} {capture:>8.3} {:>8.1}", width / told);
        // 90 % of those told, less two standard errors of a share of so many.
        let least = 0.9 - 2.0 * (0.09_f64 / told).sqrt();
        assert!(told >= 120.0 && shares.iter().all(|share| *share >= least), "{title}: {shares:?} of {told}");
    }
}

#[test]
fn leaks_that_are_surely_there_are_told_by_a_few_nights() {
    // As much again as is used runs away: a few careful nights show it, however roughly.
    let (mut told, mut cries) = (0, 0);
    for seed in 0..20 {
        let nights = Tells::Nights(12);
        let leaking = Truth { capture: 1.0, uses: 1.0, leak_l: USE_L };
        let (diary, today) = made_by_day(&mut Chance(500 + seed), 120, |_| leaking, &nights);
        let leak = fitted(&diary, today).and_then(|fit| fit.leak_l);
        told += usize::from(leak.is_some_and(|leak| leak.value - leak.half_width > 0.0));
        let (diary, today) = made_by_day(&mut Chance(900 + seed), 120, |_| Truth { leak_l: 0.0, ..leaking }, &nights);
        let leak = fitted(&diary, today).and_then(|fit| fit.leak_l);
        cries += usize::from(leak.is_some_and(|leak| leak.value - leak.half_width > 0.1 * USE_L));
    }
    assert!(told >= 10 && cries <= 1, "{told} of 20 told, {cries} cries");
}

#[test]
fn leaks_and_use_stay_together_where_nothing_tells_them_apart() {
    let mut chance = Chance(31);
    let truth = Truth { capture: 0.9, uses: 1.0, leak_l: 52.0 };
    let mut together = 0.0;
    for _ in 0..20 {
        let (diary, today) = made(&mut chance, truth, &Tells::Nothing);
        let fit = fitted(&diary, today).unwrap();
        assert_eq!(fit.leak_l, None);
        together += fit.uses.map_or(0.0, |uses| uses.value) / 20.0;
    }
    // 52 L of leak beside 260 L of use a day look like a fifth more use.
    assert!((together - 1.2).abs() < 0.05, "{together}");
    // One night says too little: the range would be wider than a third of the use.
    let (diary, today) = made(&mut chance, truth, &Tells::Nights(150));
    assert_eq!(fitted(&diary, today).unwrap().leak_l, None);
}

#[test]
fn leaks_a_night_with_rain_or_without_a_word_of_rain_says_nothing() {
    let mut chance = Chance(37);
    let truth = Truth { capture: 0.9, uses: 1.0, leak_l: 60.0 };
    let (diary, today) = made(&mut chance, truth, &Tells::Nights(4));
    assert!(fitted(&diary, today).unwrap().apart.0 >= 10);
    for mm in [None, Some(3.0)] {
        let changed = diary.entries().iter().filter_map(|entry| match (&entry.told, mm) {
            (Told::Rain(_), None) if entry.date.format("%d").to_string().ends_with(['1', '3', '5', '7', '9']) => None,
            (Told::Rain(_), Some(mm)) => Some(Entry { told: Told::Rain(Depth::millimetres(mm)), ..entry.clone() }),
            _ => Some(entry.clone()),
        });
        let fit = fitted(&Diary::of(changed.collect()), today);
        assert_eq!(fit.map_or(0, |fit| fit.apart.0), 0, "{mm:?}");
    }
}

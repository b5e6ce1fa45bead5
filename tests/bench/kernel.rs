//! The daily balance, timed: the same cases natively and in a browser.

use std::sync::Arc;

use eavewater::engine::balance::lanes::{Eight, Lanes, Plain, WIDTH};
use eavewater::engine::balance::lean::{Calendar, Inflows, Lean};
use eavewater::engine::balance::plan::plan;
use eavewater::engine::balance::run::{Conduct, run};
use eavewater::engine::balance::series::run_and_keep;
use eavewater::engine::balance::side_by_side::{Block, CaseOf, Frame};
use eavewater::engine::rain::weather::{Origin, Weather};
use eavewater::engine::sizing::batch::Ground;
use eavewater::engine::sizing::surface::Surface;
use eavewater::quantity::{Flow, Share};
use eavewater::site::demo;
use eavewater::site::household::Site;
use eavewater::site::part::PartId;
use eavewater::site::roof::Outlet;
use eavewater::site::system::{Part, System};
use eavewater::site::tank::OverflowTo;
use eavewater::site::uses::Amount;

/// A case with its speed.
pub struct Timed {
    /// What was run.
    pub name: &'static str,
    /// Nanoseconds for a day of one tank: the median of the rounds.
    pub ns_per_tank_day: f64,
    /// Milliseconds for the whole run: the median of the rounds.
    pub ms_per_run: f64,
}

const ROUNDS: usize = 15;
const WARM_UP_MS: f64 = 300.0;
const YEARS: usize = 100;

/// Times every case by a clock in milliseconds.
pub fn time(clock: impl Fn() -> f64) -> Vec<Timed> {
    let weather = century();
    let conduct = Conduct { start_share: 1.0, inflow_first: 0.0 };
    let cases = [("one roof, one tank, one use", small()), ("4 sections, 4 feeds, 4 tanks, 6 uses", full())];
    let mut timed = Vec::new();
    for (name, system) in cases {
        let Ok(plan) = plan(&system) else { continue };
        let tank_days = system.tanks.len() as f64 * weather.dates.len() as f64;
        let mut measure = |name, rounds: usize, tank_days: f64, work: &dyn Fn() -> f64| {
            let round = || {
                let before = clock();
                std::hint::black_box(work());
                clock() - before
            };
            // A browser compiles again, beside, what runs often: until then nothing counts.
            let began = clock();
            round();
            while clock() - began < WARM_UP_MS {
                round();
            }
            let mut rounds: Vec<f64> = (0..rounds).map(|_| round()).collect();
            rounds.sort_unstable_by(f64::total_cmp);
            let ms = rounds[rounds.len() / 2];
            timed.push(Timed { name, ns_per_tank_day: ms * 1e6 / tank_days, ms_per_run: ms });
        };
        measure(name, ROUNDS, tank_days, &|| run(&plan, &weather, conduct, |_| ()).stored_last_l);
        measure("  the same, every day kept", ROUNDS, tank_days, &|| {
            run_and_keep(&plan, &weather, conduct).0.stored_last_l
        });
        let Some(lean) = Lean::of(&plan) else { continue };
        let frame = || Frame::new(lean.clone(), Inflows::of(&plan, &weather), Calendar::of(&weather.dates), conduct);
        let cases = [(&plan, &plan); WIDTH];
        measure("  gathered, then run in lanes, one case", ROUNDS, tank_days, &|| {
            let frame = frame();
            lanes::<Eight>(&frame, &cases[..1])
        });
        let frame = frame();
        let eight = tank_days * WIDTH as f64;
        measure("  eight cases in lanes", ROUNDS, eight, &|| lanes::<Eight>(&frame, &cases));
        measure("  eight cases in lanes of ordinary code", ROUNDS, eight, &|| lanes::<Plain>(&frame, &cases));
        let site = Site { system: system.clone(), ..demo::site() };
        let mut half = weather.clone();
        half.dates.truncate(YEARS / 2 * 365);
        half.depths_mm.truncate(YEARS / 2 * 365);
        let pairs = tank_days / 2.0 * 1600.0;
        measure("  40 × 40 sizes and uses over 50 years", 3, pairs, &|| {
            let mut surface = Surface::of(&site, Arc::new(Ground::new(half.clone(), conduct)), 40);
            while surface.step() {}
            surface.tallies().iter().map(|tally| tally.yield_l).sum()
        });
    }
    timed
}

fn lanes<L: Lanes>(frame: &Frame, cases: &[CaseOf]) -> f64 {
    let mut block = Block::<L>::new(frame, cases);
    while block.go_on(frame, 20_000) {}
    block.outcomes(1).first().map_or(0.0, |outcome| outcome.yield_l)
}

/// A table of what was timed.
pub fn table(timed: &[Timed]) -> String {
    let mut lines = vec![format!("{:<40} {:>14} {:>16}", "balance of 100 years", "ns / tank-day", "ms / run")];
    lines.extend(
        timed.iter().map(|case| format!("{:<40} {:>14.2} {:>16.2}", case.name, case.ns_per_tank_day, case.ms_per_run)),
    );
    lines.join("\n")
}

/// The demo's rain, over and over.
pub fn century() -> Weather {
    let rain = demo::rain();
    let days = YEARS * 365;
    Weather {
        dates: rain.start.iter_days().take(days).collect(),
        depths_mm: rain.depths_mm.iter().map(|depth| depth.unwrap_or(0.0)).cycle().take(days).collect(),
        filled_days: 0,
        left_out_years: Vec::new(),
        origin: Origin::Measured,
    }
}

pub fn small() -> System {
    let mut system = demo::site().system;
    let only = system.tanks[0].id;
    system.sections.truncate(1);
    system.feeds.truncate(1);
    system.feeds[0].diverter = None;
    system.tanks.truncate(1);
    system.trunk_lines.clear();
    system.uses.truncate(1);
    system.uses[0].tank = Some(only);
    system.uses[0].amount = Amount::Daily(Flow::litres_a_day(200.0));
    system
}

/// The size that an answer must stay quick for: a section, a feed and a use more than the demo's of each kind.
pub fn full() -> System {
    let mut system = demo::site().system;
    let copy = |system: &mut System, id: PartId| system.duplicate(id, "copy".to_owned());
    for section in [1, 2] {
        copy(&mut system, PartId(section));
    }
    system.sections.truncate(4);
    for feed in [4, 5] {
        copy(&mut system, PartId(feed));
    }
    let feeds: Vec<PartId> = system.feeds.iter().map(|feed| feed.id).collect();
    for (section, feed) in system.sections.iter_mut().zip(feeds) {
        section.outlets = vec![Outlet { feed, share: Share::of_one(1.0) }];
    }
    let tank = copy(&mut system, PartId(8));
    for using in [10, 11] {
        copy(&mut system, PartId(using));
    }
    if let Some(Part::Tank(mut tank)) = tank.and_then(|tank| system.part(tank)) {
        tank.overflow_to = OverflowTo::Ground;
        system.put(Part::Tank(tank));
    }
    system
}

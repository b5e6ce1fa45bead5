//! The daily balance, timed: the same cases natively and in a browser.

use eavewater::engine::balance::plan::plan;
use eavewater::engine::balance::run::{Conduct, run};
use eavewater::engine::balance::series::run_and_keep;
use eavewater::engine::rain::weather::{Origin, Weather};
use eavewater::quantity::{Flow, Share};
use eavewater::site::demo;
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
        let mut measure = |name, work: &dyn Fn() -> f64| {
            // The first round warms up and isn't counted.
            let mut rounds: Vec<f64> = (0..=ROUNDS)
                .map(|_| {
                    let before = clock();
                    std::hint::black_box(work());
                    clock() - before
                })
                .skip(1)
                .collect();
            rounds.sort_unstable_by(f64::total_cmp);
            let ms = rounds[ROUNDS / 2];
            timed.push(Timed { name, ns_per_tank_day: ms * 1e6 / tank_days, ms_per_run: ms });
        };
        measure(name, &|| run(&plan, &weather, conduct, |_| ()).stored_last_l);
        measure("  the same, every day kept", &|| run_and_keep(&plan, &weather, conduct).0.stored_last_l);
    }
    timed
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
fn century() -> Weather {
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

fn small() -> System {
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
fn full() -> System {
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

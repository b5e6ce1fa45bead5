//! Looking ahead, tried on the past: from many days of published records, the futures taken from the other years only,
//! the range that is promised to hold 80 of 100 outcomes holds as many, within sampling error.
//!
//! `cargo test --test native hindcast -- --nocapture` prints the table.

use chrono::{Datelike, NaiveDate};
use eavewater::engine::ahead::expected::Expected;
use eavewater::engine::ahead::futures::of_years;
use eavewater::engine::ahead::outlook::{Course, HORIZON_DAYS, Known, Outlook, lasting};
use eavewater::engine::ahead::resampled;
use eavewater::engine::balance::plan::{Plan, plan};
use eavewater::engine::rain::weather::Weather;
use eavewater::site::household::GeneratedYears;

use crate::one_tank;

/// The days of a weather in other years than those of a span.
fn other_years(weather: &Weather, first: NaiveDate, last: NaiveDate) -> Weather {
    let kept = |date: &NaiveDate| !(first.year()..=last.year()).contains(&date.year());
    let places: Vec<usize> = (0..weather.dates.len()).filter(|at| kept(&weather.dates[*at])).collect();
    Weather {
        dates: places.iter().map(|at| weather.dates[*at]).collect(),
        depths_mm: places.iter().map(|at| weather.depths_mm[*at]).collect(),
        ..weather.clone()
    }
}

/// Where an outcome lay, and the year that it began in.
struct Case {
    year: i32,
    below: bool,
    above: bool,
}

/// Shares below, within and above the range, and the sampling error of the share within, half the width of 95 %: days that
/// begin in one year share their weather, so that years are what is counted (cluster-robust standard error; Cameron & Miller,
/// Journal of Human Resources 50, 2015, eq. 11 with one mean), and of few years the error itself is roughly known: times
/// Student's t with one degree of freedom less than years (section VI of the same).
fn shares(cases: &[Case]) -> (f64, f64, f64, f64) {
    let n = cases.len() as f64;
    let below = cases.iter().filter(|case| case.below).count() as f64 / n;
    let above = cases.iter().filter(|case| case.above).count() as f64 / n;
    let within = 1.0 - below - above;
    let mut years: Vec<i32> = cases.iter().map(|case| case.year).collect();
    years.dedup();
    let of_year = |year: i32| {
        let here = cases.iter().filter(|case| case.year == year);
        here.map(|case| f64::from(!case.below && !case.above) - within).sum::<f64>()
    };
    let groups = years.len() as f64;
    let squares: f64 = years.iter().map(|year| of_year(*year).powi(2)).sum();
    (below, within, above, students_t(groups - 1.0) * (groups / (groups - 1.0) * squares).sqrt() / n)
}

/// The number that Student's t with so many degrees of freedom stays below with 97.5 %. Source: Abramowitz & Stegun 26.7.5.
fn students_t(freedom: f64) -> f64 {
    let z: f64 = 1.959_964;
    let first = (z.powi(3) + z) / 4.0;
    let second = (5.0 * z.powi(5) + 16.0 * z.powi(3) + 3.0 * z) / 96.0;
    z + first / freedom + second / (freedom * freedom)
}

#[test]
fn hindcast_students_t_is_that_of_the_tables() {
    // Any table of t: 2.228 of 10, 2.086 of 20, 2.000 of 60.
    for (freedom, t) in [(10.0, 2.228), (20.0, 2.086), (60.0, 2.000)] {
        assert!((students_t(freedom) - t).abs() < 0.003, "{freedom}: {}", students_t(freedom));
    }
}

const LEADS: [usize; 3] = [30, 90, 180];

struct Tried {
    /// Content after each of the leads.
    contents: [Vec<Case>; 3],
    /// How long the water lasted.
    lasted: Vec<Case>,
}

/// Looks ahead from the first of each month of a record, half full, and compares with what came.
fn try_all(
    plan: &Plan,
    weather: &Weather,
    futures_from: impl Fn(&Weather, NaiveDate, NaiveDate, &[NaiveDate]) -> Vec<Vec<f64>>,
) -> Tried {
    let mut tried = Tried { contents: [const { Vec::new() }; 3], lasted: Vec::new() };
    let capacity = plan.stores[0].joined.live_capacity_l;
    for (at, today) in weather.dates.iter().enumerate() {
        if today.day() != 1 || at + HORIZON_DAYS >= weather.dates.len() {
            continue;
        }
        let known =
            Known { read_on: *today, live_l: vec![capacity / 2.0], today: *today, rain_mm: vec![], events: vec![] };
        let days = known.days();
        let futures = futures_from(weather, days[0], days[HORIZON_DAYS - 1], &days);
        let outlook = Outlook::new(plan.clone(), 0.0, known, futures);
        let run = |rain: &[f64]| outlook.course(&outlook.plan, outlook.standing_today(rain), rain);
        let courses: Vec<Course> = outlook.futures.iter().map(|rain| run(rain)).collect();
        let came = run(&weather.depths_mm[at + 1..=at + HORIZON_DAYS]);
        for (lead, cases) in LEADS.into_iter().zip(&mut tried.contents) {
            let range = Expected::of(courses.iter().map(|course| course.live_l[lead]).collect());
            // Where all futures agree (a dry season, a full tank) there is nothing to promise.
            if range.ninetieth - range.tenth > 0.01 * capacity {
                let content = came.live_l[lead];
                cases.push(Case { year: today.year(), below: content < range.tenth, above: content > range.ninetieth });
            }
        }
        let range = lasting(&courses);
        if range.tenth < range.ninetieth {
            let lasts = came.lasts.map_or(f64::INFINITY, |days| days as f64);
            tried.lasted.push(Case { year: today.year(), below: lasts < range.tenth, above: lasts > range.ninetieth });
        }
    }
    tried
}

fn from_the_record(weather: &Weather, first: NaiveDate, last: NaiveDate, days: &[NaiveDate]) -> Vec<Vec<f64>> {
    of_years(&other_years(weather, first, last), days)
}

/// Sixty years, each from a model fitted to years drawn anew from those that are not looked at.
fn from_models(weather: &Weather, first: NaiveDate, last: NaiveDate, days: &[NaiveDate]) -> Vec<Vec<f64>> {
    let mut record = weather.as_record();
    for (date, depth) in weather.dates.iter().zip(&mut record.depths_mm) {
        if (first.year()..=last.year()).contains(&date.year()) {
            *depth = None;
        }
    }
    resampled::futures(&record, days, GeneratedYears::CENTURY).unwrap()
}

#[test]
fn hindcast_the_range_of_80_percent_holds_80_percent() {
    println!(
        "{:<28} {:<14} {:>5} {:>7} {:>7} {:>7} {:>9}",
        "record, futures", "of", "cases", "below", "within", "above", "± 95 %"
    );
    let mut breaches = Vec::new();
    for (name, litres, a_day, thirsty) in [("hyderabad", 90_000.0, 160.0, 320.0), ("tunis", 40_000.0, 80.0, 160.0)] {
        let weather = one_tank::weather(name);
        // A roof of 100 m² with a house that uses most of what comes, and one that uses twice as much.
        let [plan, dry] =
            [a_day, thirsty].map(|use_l| plan(&one_tank::system(100.0, 0.9, 0.5, litres, use_l)).unwrap());
        for (from, [tried, dry]) in [
            ("other years", [&plan, &dry].map(|plan| try_all(plan, &weather, from_the_record))),
            // A month's chain knows nothing of a season's luck: drawn years lie nearer together than real ones.
            ("generated years", [&plan, &dry].map(|plan| try_all(plan, &weather, from_models))),
        ] {
            let leads = LEADS.map(|lead| format!("in {lead} days"));
            for (of, cases) in leads.iter().zip(&tried.contents).chain([(&"days left".to_string(), &dry.lasted)]) {
                let (below, within, above, error) = shares(cases);
                let title = format!("{name}, {from}");
                println!(
                    "{title:<28} {of:<14} {:>5} {below:>7.3} {within:>7.3} {above:>7.3} {:>9.3}",
                    cases.len(),
                    error
                );
                // What lasts beyond the year that is looked at can't lie above any range: of days left the lower end
                // is what is promised.
                let off = if of == "days left" { (0.1 - below).abs().max(0.8 - within) } else { (within - 0.8).abs() };
                if off > error || cases.len() < 60 {
                    breaches.push(format!("{title}, {of}: {within:.3} ± {error:.3}"));
                }
            }
        }
    }
    assert!(breaches.is_empty(), "{breaches:#?}");
}

//! The weeks ahead from a day on, as JSON and in sentences.

use chrono::NaiveDate;
use eavewater::engine::ahead::ask::{Asked, Help, Years, ask, begun, helps};
use eavewater::engine::ahead::expected::Expected;
use eavewater::engine::ahead::looking::{Ahead, Looking, Target};
use eavewater::engine::ahead::outlook::Known;
use eavewater::engine::balance::plan::{Plan, plan};
use eavewater::engine::learning::lesson::learn;
use eavewater::engine::learning::spans::Factors;
use eavewater::engine::rain::weather::Origin;
use eavewater::quantity::Units;
use eavewater::records::cupboard::SiteFile;
use eavewater::words::{self, ahead as say};
use serde_json::{Value, json};

/// What the water is wanted to last for the safe use, in days, and with which chance.
const TARGET_DAYS: usize = 90;
const CHANCE: f64 = 0.9;

/// Where to start from.
#[derive(Clone, Copy, Debug)]
pub struct Start {
    /// The day at whose end the looking ahead begins.
    pub day: NaiveDate,
    /// What the tanks hold then; by the diary if not said.
    pub content: Option<Content>,
}

/// What the tanks hold over their outlets.
#[derive(Clone, Copy, Debug)]
pub enum Content {
    /// In all, in L.
    Litres(f64),
    /// A share of what they hold when full, 0 to 1.
    Share(f64),
}

/// What was found.
pub struct Found {
    ahead: Ahead,
    helps: Vec<Help>,
    origin: Origin,
    unread: Vec<String>,
    shown: Option<Factors>,
}

/// Looks ahead; futures are drawn where `generated`.
///
/// # Errors
/// A sentence, where it can't be told.
pub fn looked(file: &SiteFile, start: Start, generated: bool) -> Result<Found, String> {
    let (site, name) = (&file.site, &file.site.name);
    let years = if generated { Years::Generated } else { Years::Recorded };
    let by_diary = || learn(site, file.rain.as_ref(), &file.diary, start.day);
    let lesson = if start.content.is_none() { by_diary() } else { None };
    let asked = match start.content {
        None => ask(site, file.rain.as_ref(), &file.diary, start.day, years, lesson.as_ref()),
        Some(content) => {
            let plan = plan(&site.system).map_err(|_| format!("{name} can't run."))?;
            let known = known(&plan, name, start.day, content)?;
            begun(plan, site, file.rain.as_ref(), (known, Vec::new()), years)
        }
    };
    let Asked { outlook, origin, unread } = asked.map_err(|why| format!("{name}: {}", say::why(&why)))?;
    let (helps, steps) = helps(&outlook, site).into_iter().unzip();
    let tanks = unread.iter().flat_map(|store| &outlook.plan.stores[*store].tanks);
    let unread = tanks.map(|tank| site.system.tanks[*tank].name.clone()).collect();
    let mut looking = Looking::new(outlook, Target { days: TARGET_DAYS }, steps);
    while looking.step() {}
    let ahead = looking.answer().ok_or_else(|| format!("{name}: nothing can be told of the weeks ahead."))?;
    Ok(Found { ahead, helps, origin, unread, shown: lesson.and_then(|lesson| lesson.contradicts()) })
}

/// The content, shared out by what each store holds.
fn known(plan: &Plan, name: &str, day: NaiveDate, content: Content) -> Result<Known, String> {
    let full_l: f64 = plan.stores.iter().map(|store| store.joined.live_capacity_l).sum();
    let share = match content {
        Content::Share(share) => share,
        Content::Litres(litres) => litres / full_l,
    };
    if !(0.0..=1.0).contains(&share) {
        return Err(format!("{name} holds no more than {full_l:.0} L over its outlets: --content asks for more."));
    }
    let live_l = plan.stores.iter().map(|store| share * store.joined.live_capacity_l).collect();
    Ok(Known { read_on: day, live_l, today: day, rain_mm: Vec::new(), events: Vec::new() })
}

fn range(expected: &Expected) -> Value {
    // A number beyond the horizon is null.
    json!({ "dry_1_in_10": expected.tenth, "middle": expected.half, "wet_1_in_10": expected.ninetieth })
}

/// As JSON: litres and days, null for days beyond the year that is looked at.
pub fn json(found: &Found, file: &SiteFile, units: &Units) -> Value {
    let ahead = &found.ahead;
    let line = |pick: fn(&Expected) -> f64| ahead.fan.iter().map(pick).collect::<Vec<f64>>();
    let dry: Vec<usize> = (0..ahead.dates.len()).map(|days| ahead.dry_within(days).0).collect();
    let helps: Vec<Value> = (found.helps.iter().zip(&ahead.steps))
        .map(|(help, with)| json!({ "what": said(*help, with, found, file, units), "days": range(with) }))
        .collect();
    json!({
        "answer": say::headline(ahead),
        "read_on": ahead.read_on.to_string(),
        "from": ahead.dates.first().map(ToString::to_string),
        "futures": ahead.lasts.len(),
        "futures_from": super::report::origin(found.origin),
        "days_of_unknown_rain": ahead.unknown_days,
        "readings_show": found.shown.map(|Factors { capture, uses, leak_l }| {
            json!({ "capture": capture, "uses": uses, "leak_l_a_day": leak_l })
        }),
        "days_left": range(&ahead.lasting),
        "days_left_without_rain": ahead.floor.lasts,
        "safe_use": {
            "to": ahead.dates.get(ahead.safe.target.days).map(ToString::to_string),
            "chance": CHANCE,
            "l_a_day": ahead.safe.litres_a_day(CHANCE),
            "now_l_a_day": ahead.safe.now_l,
        },
        "helps": helps,
        "dates": ahead.dates.iter().map(ToString::to_string).collect::<Vec<_>>(),
        "dry_1_in_10_l": line(|day| day.tenth),
        "middle_l": line(|day| day.half),
        "wet_1_in_10_l": line(|day| day.ninetieth),
        "without_rain_l": ahead.floor.live_l,
        "futures_run_dry_before": dry,
    })
}

fn said(help: Help, with: &Expected, found: &Found, file: &SiteFile, units: &Units) -> String {
    let ration = |step: usize| file.site.system.rationing.get(step).map_or_else(String::new, |step| step.name.clone());
    say::help(help, with, &found.ahead.lasting, ration, units)
}

/// The same in sentences.
pub fn summary(found: &Found, file: &SiteFile, units: &Units) -> Vec<String> {
    let ahead = &found.ahead;
    let from = ahead.dates.first().copied().unwrap_or_default();
    let mut lines = vec![String::new(), format!("{}, from {}:", say::TITLE, words::date(from)), say::headline(ahead)];
    lines.extend(say::range(ahead));
    lines.push(say::safe(ahead, CHANCE, units));
    lines.extend(found.helps.iter().zip(&ahead.steps).map(|(help, with)| said(*help, with, found, file, units)));
    lines.extend(say::unread(&found.unread));
    lines.extend(found.shown.map(|shown| say::as_shown(shown, units)));
    lines.extend(say::basis(ahead, found.origin));
    lines
}

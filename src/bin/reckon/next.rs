//! What to change next, and the options that the file holds.

use eavewater::engine::question::Answer;
use eavewater::engine::upgrades::{Judged, RankBy, Tally, Upgrades};
use eavewater::quantity::Units;
use eavewater::records::cupboard::SiteFile;
use eavewater::site::rain::Rain;
use eavewater::site::system::System;
use eavewater::words::{next as say, parts};
use serde_json::{Value, json};

const LITRES_PER_CUBIC_METRE: f64 = 1000.0;

/// All changes judged and ranked; `None` where the site can't be run.
pub fn judged(file: &SiteFile, rain: &Rain, by: RankBy, units: &Units) -> Option<Upgrades> {
    let mut work = Upgrades::new(&file.site, rain, units, by, parts::new_name).ok()?;
    while work.step() {}
    Some(work)
}

/// The ranked changes and the sequence as JSON.
pub fn json(work: &Upgrades, units: &Units) -> Value {
    let system = &work.site().system;
    let ranked: Vec<Value> = work.ranked().iter().map(|judged| one(judged, system, units)).collect();
    let steps: Vec<Value> = work.steps().iter().map(|step| one(&step.judged, &step.system, units)).collect();
    json!({ "ranked_by": word(work.by()), "ranked": ranked, "one_after_another": steps })
}

fn one(judged: &Judged, system: &System, units: &Units) -> Value {
    json!({
        "change": say::title(&judged.upgrade, system, units),
        "price": judged.price,
        "price_per_m3_a_year": judged.price_per_l().map(|price| price * LITRES_PER_CUBIC_METRE),
        "water_gained_l_a_year": judged.water_l_a_year(),
        "dry_days_avoided_a_year": judged.dry_days_a_year(),
        "spill_saved_l_a_year": judged.spill_l_a_year(),
        "dry_days": judged.after.dry_days,
        "worst_year": judged.after.worst_year,
        "worst_year_dry_days": judged.after.worst_dry_days,
    })
}

/// The same in sentences.
pub fn summary(work: &Upgrades, units: &Units) -> Vec<String> {
    let system = &work.site().system;
    let mut lines = vec![String::new(), format!("What next, by {}:", word(work.by()))];
    if work.now().lacking_l_a_year() <= 0.0 {
        lines.push(say::NOTHING_LACKS.to_owned());
    }
    lines.extend(work.ranked().iter().map(|judged| format!("- {}", say::sentence(judged, system, units))));
    lines.push("One after the other:".to_owned());
    for (number, step) in (1..).zip(work.steps()) {
        let (said, left) = (say::sentence(&step.judged, &step.system, units), say::left_after(&step.judged));
        lines.push(format!("{number}. {said} {left}").trim_end().to_owned());
    }
    lines
}

/// The options beside the house, as JSON; one that can't run has no figures.
pub fn options_json(file: &SiteFile, rain: &Rain) -> Value {
    let option = |(name, tally): (String, Option<Tally>)| match tally {
        Some(tally) => json!({
            "name": name,
            "yield_l_a_year": tally.yield_l_a_year(),
            "lacking_l_a_year": tally.lacking_l_a_year(),
            "spill_l_a_year": tally.spill_l_a_year(),
            "dry_days": tally.dry_days,
            "worst_year": tally.worst_year,
            "worst_year_dry_days": tally.worst_dry_days,
        }),
        None => json!({ "name": name }),
    };
    options(file, rain).into_iter().map(option).collect()
}

/// The options beside the house, in sentences.
pub fn options_summary(file: &SiteFile, rain: &Rain, now: &Answer, units: &Units) -> Vec<String> {
    let sentence = |(name, tally): (String, Option<Tally>)| match tally {
        Some(tally) => format!("Option {name}: {}", say::difference(&now.into(), &tally, units)),
        None => format!("Option {name} can't run."),
    };
    options(file, rain).into_iter().map(sentence).collect()
}

fn options(file: &SiteFile, rain: &Rain) -> Vec<(String, Option<Tally>)> {
    let house = Some(&file.site.system);
    let run = |site| eavewater::engine::question::answer_beside(&site, house, rain).ok();
    let options = file.site.options.iter();
    options.map(|option| (option.name.clone(), run(option.of(&file.site)).map(|answer| Tally::from(&answer)))).collect()
}

/// The measure that a word stands for.
pub fn measure(word_given: &str) -> Option<RankBy> {
    RankBy::ALL.into_iter().find(|by| word(*by) == word_given)
}

fn word(by: RankBy) -> &'static str {
    match by {
        RankBy::Price => "price",
        RankBy::DryDays => "dry-days",
        RankBy::Water => "water",
        RankBy::Spill => "spill",
        RankBy::WorstYear => "worst-year",
    }
}

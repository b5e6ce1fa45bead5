//! The results as JSON and as a summary.

use eavewater::app::view::uses::what_uses_did;
use eavewater::engine::balance::garden::GardenTally;
use eavewater::engine::balance::ledger::Flows;
use eavewater::engine::balance::run::Conduct;
use eavewater::engine::balance::series::Inside;
use eavewater::engine::measures::dry_runs::DryRun;
use eavewater::engine::question::Answer;
use eavewater::engine::rain::generated::likeness::{Likeness, likeness};
use eavewater::engine::rain::generated::{RainModel, years};
use eavewater::engine::rain::weather::Origin;
use eavewater::engine::reference_et::by_month;
use eavewater::quantity::{Kind, Share, Units, shown};
use eavewater::records::cupboard::SiteFile;
use eavewater::site::rain::Rain;
use eavewater::words::{self, sizing as say};
use serde_json::{Value, json};

/// The model that generated years were drawn from, what it makes of the rain, and what the rain was.
fn model(file: &SiteFile) -> Value {
    let (Some(wanted), Some(rain)) = (file.site.reckoning.generated, &file.rain) else { return Value::Null };
    let Ok(model) = RainModel::of(rain, wanted.spread.map(Share::get)) else { return Value::Null };
    let drawn = years::years(&model, wanted.years, wanted.seed.into()).as_record();
    let recorded = match rain {
        Rain::Record(record) => like(&likeness(record, model.first_month)),
        Rain::Normals(_) => Value::Null,
    };
    let months: Vec<Value> = model
        .months
        .iter()
        .map(|month| {
            json!({
                "wet_after_dry": month.wet_after_dry,
                "wet_after_wet": month.wet_after_wet,
                "shape": month.shape,
                "scale_mm": month.scale_mm,
            })
        })
        .collect();
    json!({
        "years": wanted.years,
        "draw": wanted.seed,
        "months": months,
        "rain_year_begins": model.first_month + 1,
        "multiplier_cv": model.multiplier_cv,
        "generated": like(&likeness(&drawn, model.first_month)),
        "recorded": recorded,
    })
}

fn like(like: &Likeness) -> Value {
    json!({
        "monthly_mm": like.monthly_mm,
        "wet_days": like.wet_days,
        "rain_years": like.rain_years,
        "annual_mm": like.annual_mm,
        "annual_cv": like.annual_cv,
        "driest_and_wettest_mm": like.extremes_mm.map(|(driest, wettest)| [driest, wettest]),
        "longest_spell_days": like.longest_spell.map(|(middle, tenth)| [middle, tenth]),
        "record_spell_days": like.record_spell,
    })
}

pub fn origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Measured => "measured",
        Origin::Generated => "generated",
        Origin::Even => "even",
    }
}

/// Everything as one JSON object; volumes in L, rain in mm, shares 0 to 1.
pub fn json(file: &SiteFile, answer: &Answer, further: Vec<(&str, Value)>, days: bool) -> String {
    let system = &file.site.system;
    let stores: Vec<Value> = answer
        .plan
        .stores
        .iter()
        .map(|store| {
            let tanks: Vec<&str> = store.tanks.iter().map(|tank| system.tanks[*tank].name.as_str()).collect();
            json!({
                "tanks": tanks,
                "live_capacity_l": store.joined.live_capacity_l,
                "stranded_l": store.joined.stranded_l,
            })
        })
        .collect();
    let uses: Vec<Value> = system
        .uses
        .iter()
        .enumerate()
        .map(|(at, using)| {
            json!({
                "name": using.name,
                "yield_l": answer.series.yield_l[at].iter().sum::<f64>(),
                "shortfall_l": answer.series.shortfall_l[at].iter().sum::<f64>(),
            })
        })
        .collect();
    let diverters: Vec<Value> = system
        .feeds
        .iter()
        .zip(&answer.ledger.flushes)
        .filter(|(feed, _)| feed.diverter.is_some())
        .map(|(feed, tally)| {
            json!({
                "name": feed.name,
                "storms": tally.storms,
                "found_full": tally.found_full,
                "diverted_l": tally.diverted_l,
                "dripped_l": tally.dripped_l,
            })
        })
        .collect();
    let years: Vec<Value> = answer
        .years
        .iter()
        .map(|year| {
            json!({
                "year": year.year,
                "complete": year.complete,
                "rain_mm": year.rain_mm,
                "dry_days": year.dry_days,
                "longest_dry_run": run(year.longest_dry_run.as_ref()),
                "yield_l": year.yield_l,
                "shortfall_l": year.shortfall_l,
                "spill_l": year.spill_l,
                "hauled_l": year.hauled_l,
                "loads": year.loads,
                "hauling_cost": year.hauling_cost,
                "rationed_days": year.rationed_days,
                "cut_l": year.cut_l,
                "least_in_store_l": year.least_l,
            })
        })
        .collect();
    let mut report = json!({
        "site": file.site.name,
        "answer": say::headline(answer),
        "rain": {
            "origin": origin(answer.origin),
            "days": answer.series.dates.len(),
            "first": answer.series.dates.first().map(ToString::to_string),
            "last": answer.series.dates.last().map(ToString::to_string),
            "filled_days": answer.filled_days,
            "left_out_years": answer.left_out_years,
        },
        "rain_model": model(file),
        "volumetric_reliability": answer.reliability.volumetric,
        "time_reliability": answer.reliability.time,
        "dry_days": answer.series.dry_days().filter(|dry| *dry).count(),
        "longest_dry_run": run(answer.longest_dry_run.as_ref()),
        "good_years": answer.good_years.map(|good| json!({
            "good": good.good, "all": good.all, "wilson_95": [good.range.0, good.range.1],
        })),
        "resilience": answer.resilience.map(|both| both.resilience),
        "vulnerability_l": answer.resilience.map(|both| both.vulnerability_l),
        "total": flows(&answer.total),
        "by_month": answer.ledger.by_month.iter().map(flows).collect::<Vec<_>>(),
        "stored_first_l": answer.ledger.stored_first_l,
        "stored_last_l": answer.ledger.stored_last_l,
        "residual": answer.ledger.residual(),
        "loads": answer.ledger.loads,
        "hauling_cost": answer.ledger.hauling_cost,
        "stores": stores,
        "uses": uses,
        "gardens": gardens(file, answer),
        "rationing": rationing(file, answer),
        "diverters": diverters,
        "years": years,
    });
    report["water"] = super::water::json(file, answer);
    for (key, value) in further {
        report[key] = value;
    }
    if days {
        report["series"] = series(answer, Conduct::from(&file.site.reckoning));
    }
    report.to_string()
}

/// Gardens by the weather: the climate's reference evapotranspiration, and what each went through.
fn gardens(file: &SiteFile, answer: &Answer) -> Value {
    let system = &file.site.system;
    let each = |tally: &GardenTally| {
        json!({
            "name": system.uses.get(tally.using).map(|using| &using.name),
            "rain_kept_mm": tally.rain_mm,
            "percolated_mm": tally.percolated_mm,
            "watered_mm": tally.watered_mm,
            "drunk_mm": tally.drunk_mm,
            "potential_mm": tally.potential_mm,
            "watered_days": tally.watered_days,
            "thirsty_days": tally.thirsty_days,
            "depletion_last_mm": tally.depletion_last_mm,
        })
    };
    json!({
        "reference_et_mm_a_day": system.climate.as_ref().map(by_month),
        "each": answer.ledger.gardens.iter().map(each).collect::<Vec<_>>(),
    })
}

fn rationing(file: &SiteFile, answer: &Answer) -> Value {
    let steps = file.site.system.rationing.iter().zip(&answer.ledger.rations);
    steps.map(|(step, tally)| json!({ "name": step.name, "days_in_force": tally.days, "cut_l": tally.cut_l })).collect()
}

fn flows(flows: &Flows) -> Value {
    json!({
        "roof_rain_l": flows.roof_rain_l,
        "wetting_l": flows.wetting_l,
        "not_run_off_l": flows.not_run_off_l,
        "uncollected_l": flows.uncollected_l,
        "escaped_l": flows.escaped_l,
        "first_flush_l": flows.first_flush_l,
        "inflow_l": flows.inflow_l,
        "open_rain_l": flows.open_rain_l,
        "hauled_l": flows.hauled_l,
        "demand_l": flows.demand_l,
        "cut_l": flows.cut_l,
        "yield_l": flows.yield_l,
        "shortfall_l": flows.shortfall_l(),
        "spill_l": flows.spill_l,
        "spill_to_garden_l": flows.spill_to_garden_l,
        "leak_l": flows.leak_l,
        "evaporation_l": flows.evaporation_l,
        "pumped_l": flows.pumped_l,
    })
}

fn run(run: Option<&DryRun>) -> Value {
    run.map_or(
        Value::Null,
        |run| json!({ "first": run.start.to_string(), "days": run.days, "shortfall_l": run.shortfall_l }),
    )
}

fn series(answer: &Answer, conduct: Conduct) -> Value {
    let series = &answer.series;
    let inside = Inside::of(&answer.plan, series, conduct);
    json!({
        "dates": series.dates.iter().map(ToString::to_string).collect::<Vec<_>>(),
        "rain_mm": series.rain_mm,
        "live_l_by_store": series.live_l,
        "spill_l_by_store": series.spill_l,
        "hauled_l_by_store": series.hauled_l,
        "cut_l_by_use": series.cut_l,
        "rationed_by_step": series.rationed,
        "dead_l_by_tank": inside.dead_l,
        "inflow_l_by_tank": inside.inflow_l,
        "first_flush_l_by_feed": inside.first_flush_l,
        "yield_l_by_use": series.yield_l,
        "shortfall_l_by_use": series.shortfall_l,
    })
}

/// The same in sentences and a table.
pub fn summary(file: &SiteFile, answer: &Answer, further: Vec<String>, units: &Units) -> String {
    let system = &file.site.system;
    let mut lines = vec![file.site.name.clone(), say::headline(answer), String::new()];
    lines.extend(say::reservations(answer));
    lines.extend(answer.good_years.filter(|_| answer.origin != Origin::Even).map(|good| say::good_years(&good)));
    lines.push(say::reliability(answer));
    lines.extend(say::resilience(answer, units));
    let diverters = system.feeds.iter().enumerate().filter(|(_, feed)| feed.diverter.is_some());
    lines.extend(diverters.filter_map(|(at, feed)| say::diverter(&feed.name, answer, at, units)));
    lines.extend(what_uses_did(answer, system, units));
    lines.extend(say::hauled(answer, units));
    let volume = units.of(Kind::Volume).sign();
    lines.push(String::new());
    lines.push(format!(
        "{:>6} {:>10} {:>8} {:>12} {:>12} {:>12}",
        "year",
        format!("rain, {}", units.of(Kind::Depth).sign()),
        "dry days",
        format!("used, {volume}"),
        format!("lacking, {volume}"),
        format!("spilled, {volume}"),
    ));
    lines.extend(answer.years.iter().map(|year| {
        format!(
            "{:>6} {:>10} {:>8} {:>12} {:>12} {:>12}{}",
            year.year,
            shown::figure_number(year.rain_mm, Kind::Depth, units),
            year.dry_days,
            shown::figure_number(year.yield_l, Kind::Volume, units),
            shown::figure_number(year.shortfall_l, Kind::Volume, units),
            shown::figure_number(year.spill_l, Kind::Volume, units),
            if year.complete { "" } else { "  (in part)" },
        )
    }));
    lines.extend(further);
    lines.push(String::new());
    lines.extend(super::water::summary(file, answer, units));
    lines.push(words::cautions::NOT_DRINKING_WATER.to_owned());
    lines.join("\n").replace('\u{a0}', " ")
}

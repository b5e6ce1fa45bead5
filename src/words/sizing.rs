//! Words of the sizing place: the answer first.

use chrono::Datelike;

use super::{count, day_of_year, number_text, percent, years};
use crate::engine::measures::dry_runs::DryRun;
use crate::engine::measures::years::GoodYears;
use crate::engine::question::Answer;
use crate::engine::rain::weather::Origin;
use crate::quantity::{Kind, Units, shown};

/// The answer: "In 11 years of rain, the water ran out in 4; the longest dry stretch was 37 days, in 2002."
pub fn headline(answer: &Answer) -> String {
    let complete: Vec<_> = answer.years.iter().filter(|year| year.complete).collect();
    if answer.origin == Origin::Even {
        return match answer.longest_dry_run {
            None => "With rain as even as the monthly means, the water never ran out.".to_owned(),
            Some(run) => format!(
                "Even with rain as even as the monthly means, the water ran out: {} at a stretch, from {} on.",
                count(run.days, "dry day", "dry days"),
                day_of_year(run.start)
            ),
        };
    }
    let Some(longest) = answer.longest_dry_run else {
        return format!("In {}, the water never ran out.", spell(answer, complete.len()));
    };
    let failed = complete.iter().filter(|year| year.dry_days > 0).count();
    if complete.is_empty() {
        return format!("In {}, the water ran out: {}.", spell(answer, 0), stretch(answer, &longest));
    }
    if failed == 0 {
        return format!(
            "In {}, the water ran out in none of the whole years, but {}.",
            spell(answer, complete.len()),
            stretch(answer, &longest)
        );
    }
    let in_years =
        if failed == complete.len() { "in every year".to_owned() } else { format!("in {}", number_text(failed)) };
    format!("In {}, the water ran out {in_years}; {}.", spell(answer, complete.len()), stretch(answer, &longest))
}

fn spell(answer: &Answer, complete: usize) -> String {
    if complete == 0 {
        format!("{} of rain", count(answer.series.dates.len(), "day", "days"))
    } else if answer.origin == Origin::Generated {
        count(complete, "generated year", "generated years")
    } else {
        format!("{} of rain", count(complete, "year", "years"))
    }
}

fn stretch(answer: &Answer, run: &DryRun) -> String {
    let year = run.start.year();
    let year = if answer.origin == Origin::Generated { format!("year {year} of them") } else { year.to_string() };
    format!("the longest dry stretch was {}, in {year}", count(run.days, "day", "days"))
}

/// How sure the share of good years is.
pub fn good_years(good: &GoodYears) -> String {
    format!(
        "{} of {} without a dry day. If these years are a fair sample, the chance of a good year is between {} and {} \
         (95\u{a0}% Wilson interval).",
        number_text(good.good),
        count(good.all, "whole year", "whole years"),
        percent(good.range.0),
        percent(good.range.1)
    )
}

/// What is thin about the answer, if anything.
pub fn reservations(answer: &Answer) -> Vec<String> {
    let mut said = Vec::new();
    let complete = answer.years.iter().filter(|year| year.complete).count();
    if answer.origin == Origin::Even {
        said.push(super::rain::EVEN_RAIN.to_owned());
    } else if complete < 10 {
        said.push(format!(
            "{} of rain is short: ten or more make a better judge. Generated years stand beside it below.",
            if complete == 0 { "Less than a year".to_owned() } else { count(complete, "year", "years") }
        ));
    }
    if !answer.left_out_years.is_empty() {
        said.push(format!(
            "{} left out for missing days: {}. The years on either side are run as if they followed one another.",
            count(answer.left_out_years.len(), "year was", "years were"),
            years(&answer.left_out_years)
        ));
    }
    if answer.filled_days > 0 {
        said.push(format!(
            "{} filled from other years.",
            count(answer.filled_days, "missing day was", "missing days were")
        ));
    }
    said
}

/// Reliability in volume and time.
pub fn reliability(answer: &Answer) -> String {
    format!(
        "{} of the water wanted was there (volumetric reliability); {} of days were not dry (time reliability).",
        percent(answer.reliability.volumetric),
        percent(answer.reliability.time)
    )
}

/// Resilience and vulnerability.
pub fn resilience(answer: &Answer, units: &Units) -> Option<String> {
    let both = answer.resilience?;
    Some(format!(
        "Once dry, the next day is a good one with a chance of {} (resilience); the worst day of a dry stretch lacks {} on \
         average (vulnerability). Both after Hashimoto and others, 1982.",
        percent(both.resilience),
        shown::figure(both.vulnerability_l, Kind::Volume, units)
    ))
}

/// What a diverter did.
pub fn diverter(name: &str, answer: &Answer, feed: usize, units: &Units) -> Option<String> {
    let tally = answer.ledger.flushes.get(feed)?;
    if tally.storms == 0 {
        return Some(format!("{name}: no water reached its diverter."));
    }
    #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
    let full = tally.found_full as f64 / tally.storms as f64;
    let per_year = super::per_year(answer.series.dates.len());
    let mut text = format!(
        "{name}: its diverter kept back {} a year, {} of it dripping away while it rained",
        shown::figure(tally.diverted_l * per_year, Kind::Volume, units),
        shown::figure(tally.dripped_l * per_year, Kind::Volume, units)
    );
    text.push_str(&if tally.found_full == 0 {
        "; it had drained before every storm.".to_owned()
    } else {
        format!("; {} of storms found it still full, so that dirty water went to the tank.", percent(full))
    });
    Some(text)
}

/// Hauled water over the run.
pub fn hauled(answer: &Answer, units: &Units) -> Option<String> {
    if answer.ledger.loads == 0 {
        return None;
    }
    let per_year = super::per_year(answer.series.dates.len());
    #[expect(clippy::cast_precision_loss, reason = "loads of a few centuries")]
    let loads = answer.ledger.loads as f64 * per_year;
    Some(format!(
        "Hauled water: {} loads a year, {}, at a price of {} a year.",
        shown::significant(loads, 2),
        shown::figure(answer.total.hauled_l * per_year, Kind::Volume, units),
        shown::figure(answer.ledger.hauling_cost * per_year, Kind::Money, units)
    ))
}

/// Capacity that can't be filled because a joined tank spills first.
pub fn stranded(name: &str, litres: f64, lowest: &str, units: &Units) -> String {
    format!(
        "{} of {name} can never fill: joined by the trunk line, the store spills at the rim of {lowest} first.",
        shown::figure(litres, Kind::Volume, units)
    )
}

/// Title of the rule for the order of events in a day.
pub const RULE: &str = "Order within a day";
/// The two published rules, by θ = 0 and θ = 1.
pub const RULES: [(f64, &str); 2] = [(0.0, "Yield after spillage (cautious)"), (1.0, "Yield before spillage")];

/// A dry stretch, for a table.
pub fn dry_stretch(run: Option<&DryRun>) -> String {
    run.map_or_else(
        || "—".to_owned(),
        |run| format!("{}, from {}", count(run.days, "day", "days"), day_of_year(run.start)),
    )
}

/// How the balance is reckoned, with its sources.
pub const HOW: &str = "Day by day through the whole record: rain less wetting, times area and runoff coefficient; gutters \
                       and screens; first flush, draining by Torricelli; tanks joined at one level; uses in their order. \
                       The order within a day follows Jenkins and others 1978 and Fewkes & Butler 2000. A dry day is one \
                       on which a demand of the house is not met in full.";

/// Whether all water is accounted for, by the share of what flowed that is left over.
pub fn accounted(residual: f64) -> String {
    const CLOSES: f64 = 1e-9;
    let left_over = if residual.abs() <= CLOSES {
        "less than a billionth of what flowed".to_owned()
    } else {
        format!("{} of what flowed, which is a fault of the program: please tell", percent(residual.abs()))
    };
    ["All water is accounted for: what came in, less what went out, less the change in store leaves ", &left_over, "."]
        .concat()
}

//! The smallest sizes, the curves, the surface and the handbooks, as JSON; the smallest and the handbooks as sentences.

use std::sync::Arc;

use eavewater::engine::sizing::curves::Point;
use eavewater::engine::sizing::handbooks::Said;
use eavewater::engine::sizing::sequent_peak::SequentPeak;
use eavewater::engine::sizing::smallest::{Found, Sought};
use eavewater::engine::sizing::study::{Findings, Inquiry, Study};
use eavewater::engine::sizing::tally::Tally;
use eavewater::quantity::Units;
use eavewater::records::cupboard::SiteFile;
use eavewater::words::{errors, size as say};
use serde_json::{Value, json};

/// What every question about size finds for a site with rain.
///
/// # Errors
/// A sentence that says why there are none.
pub fn studied(file: &SiteFile) -> Result<Vec<Findings>, String> {
    let (site, Some(rain)) = (Arc::new(file.site.clone()), &file.rain) else { return Ok(Vec::new()) };
    let study = |inquiry| {
        let mut study = Study::new(inquiry, &site, rain)
            .map_err(|refusal| format!("{}: {}", file.site.name, errors::refusal(&refusal).unwrap_or_default()))?;
        while study.step() {}
        Ok(study.findings())
    };
    Inquiry::ALL.into_iter().map(study).collect()
}

fn tally(tally: &Tally) -> Value {
    json!({
        "volumetric_reliability": tally.volumetric(),
        "time_reliability": tally.time(),
        "good_years": tally.good_years,
        "whole_years": tally.whole_years,
        "dry_parts_of_years": tally.dry_parts,
    })
}

fn found(found: Found, now: f64) -> Value {
    let (outcome, factor, came_to) = match found {
        Found::Enough { factor, tally } => ("enough", factor, tally),
        Found::NotEvenAt { factor, tally } => ("not_even_at", factor, tally),
        Found::EvenAt { factor, tally } => ("even_at", factor, tally),
        Found::CannotRun => return json!({ "outcome": "cannot_run" }),
    };
    json!({ "outcome": outcome, "size": now * factor, "comes_to": tally(&came_to) })
}

fn unit_of(sought: Sought) -> &'static str {
    match sought {
        Sought::Storage => "storage_l",
        Sought::Roof => "roof_m2",
        Sought::Uses => "use_l_a_day",
    }
}

/// As JSON: L, m² and L a day; the two orders within a day in turn, yield after spillage first.
pub fn json(file: &SiteFile, studied: &[Findings]) -> Option<Value> {
    let mut sizes = json!({ "wanted": say::wanted(file.site.reckoning.wanted) });
    for findings in studied {
        match findings {
            Findings::Smallest { house, found: all, peak } => {
                sizes["house_under_both_rules"] = house.iter().map(tally).collect();
                for (sought, both) in all {
                    let now = sought.of(&file.site);
                    let key = match sought {
                        Sought::Storage => "smallest_storage_l",
                        Sought::Roof => "smallest_roof_m2",
                        Sought::Uses => "largest_use_l_a_day",
                    };
                    sizes[key] = json!({ "now": now, "under_both_rules": both.map(|one| found(one, now)) });
                }
                sizes["sequent_peak"] = match *peak {
                    Some(SequentPeak::Enough { before_spillage_l, after_spillage_l }) => {
                        json!({ "before_spillage_l": before_spillage_l, "after_spillage_l": after_spillage_l })
                    }
                    Some(SequentPeak::Impossible { mean_inflow_l, mean_demand_l }) => json!({
                        "impossible": { "mean_inflow_l_a_day": mean_inflow_l, "mean_demand_l_a_day": mean_demand_l },
                    }),
                    None => Value::Null,
                };
            }
            Findings::Handbooks { methods, .. } => {
                let method = |(method, said, came_to): &(_, Said, Option<Tally>)| {
                    let tank = if let Said::Tank(litres) = said { Some(*litres) } else { None };
                    json!({
                        "method": say::method(*method).replace('\u{a0}', " "),
                        "tank_l": tank,
                        "comes_to": came_to.as_ref().map(tally),
                    })
                };
                sizes["handbooks"] = methods.iter().map(method).collect();
            }
            Findings::Curves(curves) => {
                for (sought, points) in curves {
                    let now = sought.of(&file.site);
                    let point = |(factor, came_to): &Point| json!({ "size": now * factor, "comes_to": tally(came_to) });
                    sizes["curves"][unit_of(*sought)] = points.iter().map(point).collect();
                }
            }
            Findings::Surface { storage, uses, tallies } => {
                let of = |sought: Sought, factors: &[f64]| {
                    let now = sought.of(&file.site);
                    factors.iter().map(|factor| now * factor).collect::<Value>()
                };
                let rows = |read: fn(&Tally) -> f64| {
                    let row = |row: &[Tally]| row.iter().map(read).collect::<Value>();
                    tallies.chunks(uses.len().max(1)).map(row).collect::<Value>()
                };
                sizes["surface"] = json!({
                    "storage_l": of(Sought::Storage, storage),
                    "use_l_a_day": of(Sought::Uses, uses),
                    "volumetric_reliability": rows(Tally::volumetric),
                    "time_reliability": rows(Tally::time),
                    "share_of_good_years": rows(Tally::good_share),
                });
            }
        }
    }
    (!studied.is_empty()).then_some(sizes)
}

/// As sentences, in the person's units.
pub fn summary(file: &SiteFile, studied: &[Findings], units: &Units) -> Vec<String> {
    let (site, mut lines) = (&file.site, Vec::new());
    let rule = usize::from(site.reckoning.inflow_first.get() > 0.5);
    for findings in studied {
        match findings {
            Findings::Smallest { house, found, peak } => {
                lines.extend([String::new(), [&*say::WANTED, ": ", &say::wanted(site.reckoning.wanted)].concat()]);
                let answer = |(sought, both): &(Sought, [Found; 2])| {
                    say::answer(both[rule], sought.of(site), *sought, site.reckoning.wanted, units)
                };
                lines.extend(found.iter().map(answer));
                lines.push(say::bracket(*house));
                lines.extend(peak.map(|peak| say::peak(peak, units)));
            }
            Findings::Handbooks { basis, methods, .. } => {
                for (method, said, _) in methods {
                    lines.push([say::method(*method), ": ", &say::says(*said, units)].concat());
                    lines.push(["  ", &say::difference(*method, basis, units)].concat());
                }
            }
            Findings::Curves(_) | Findings::Surface { .. } => {}
        }
    }
    lines.into_iter().map(|line| line.replace('\u{a0}', " ")).collect()
}

//! `reckon`: the water balance of a site from files, beside the app. It reads a file that the app exported and a rain
//! record, and prints the results as JSON, or as a readable summary.

mod ahead;
mod checks;
mod next;
mod order;
mod report;
mod sizes;
mod water;

use std::process::ExitCode;

use eavewater::engine::question::{Answer, Refusal, answer};
use eavewater::engine::rain::import;
use eavewater::quantity::Units;
use eavewater::records::cupboard::SiteFile;
use eavewater::records::exchange::{self, Export};
use eavewater::site::rain::Rain;
use eavewater::words;

use order::{Order, Wish};

/// Bad input of any kind.
const BAD_INPUT: u8 = 2;

fn main() -> ExitCode {
    let result = match order::read(std::env::args_os()) {
        Ok(Wish::Help) => Ok(order::HELP.to_owned()),
        Ok(Wish::Reckon(order)) => reckon(&order),
        Err(error) => Err(error),
    };
    match result {
        Ok(text) => {
            println!("{text}");
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("reckon: {error}");
            ExitCode::from(BAD_INPUT)
        }
    }
}

fn reckon(order: &Order) -> Result<String, String> {
    let export = exchange::import(&read(&order.site_file)?)
        .map_err(|error| format!("{}: {}", order.site_file.display(), words::errors::file(&error)))?;
    let Export { units, sites, .. } = export;
    let units = order.units.clone().unwrap_or(units);
    let mut chosen = choose(sites, order.site.as_deref())?;
    if let Some(rain_file) = &order.rain_file {
        let name = rain_file.display().to_string();
        let import = import::read(&read(rain_file)?, order.rain_unit, &name)
            .map_err(|error| format!("{name}: {}", words::errors::rain(&error)))?;
        for notice in &import.report.notices {
            eprintln!("{name}: {}", words::rain_report::sentence(notice, &units));
        }
        for file in &mut chosen {
            file.rain = Some(Rain::Record(import.record.clone()));
        }
    }
    if order.generated.is_some() {
        for file in &mut chosen {
            file.site.reckoning.generated = order.generated;
        }
    }
    let reports = chosen
        .iter()
        .map(|file| {
            let (answer, rain) = answered(file, &units)?;
            let next = order.next.and_then(|by| next::judged(file, rain, by, &units));
            let ahead = order.from.map(|start| ahead::looked(file, start, order.generated.is_some())).transpose()?;
            let studied = if order.sizes { sizes::studied(file)? } else { Vec::new() };
            Ok(if order.summary {
                let mut further = next::options_summary(file, rain, &answer, &units);
                further.extend(next.iter().flat_map(|work| next::summary(work, &units)));
                further.extend(ahead.iter().flat_map(|found| ahead::summary(found, file, &units)));
                further.extend(sizes::summary(file, &studied, &units));
                further.extend(checks::summary(file, rain, &answer, &units));
                report::summary(file, &answer, further, &units)
            } else {
                let mut further = vec![
                    ("options", next::options_json(file, rain)),
                    ("checks", checks::json(file, rain, &answer, &units)),
                ];
                further.extend(next.iter().map(|work| ("next", next::json(work, &units))));
                further.extend(ahead.iter().map(|found| ("ahead", ahead::json(found, file, &units))));
                further.extend(sizes::json(file, &studied).map(|sizes| ("sizes", sizes)));
                report::json(file, &answer, further, order.days)
            })
        })
        .collect::<Result<Vec<String>, String>>()?;
    Ok(if order.summary { reports.join("\n\n") } else { format!("[{}]", reports.join(",\n")) })
}

fn answered<'a>(file: &'a SiteFile, units: &Units) -> Result<(Answer, &'a Rain), String> {
    let name = &file.site.name;
    let Some(rain) = &file.rain else {
        return Err(format!("{name} has no rain of its own. Name a rain record after the site file."));
    };
    let answer = answer(&file.site, rain).map_err(|refusal| match &refusal {
        Refusal::System(findings) => {
            let sentences: Vec<String> =
                findings.iter().map(|finding| words::findings::sentence(finding, &file.site.system, units)).collect();
            format!("{name} can't run. {}", sentences.join(" "))
        }
        other => format!("{name}: {}", words::errors::refusal(other).unwrap_or_default()),
    })?;
    Ok((answer, rain))
}

/// The sites asked for: the one of that name, or all.
fn choose(sites: Vec<SiteFile>, name: Option<&str>) -> Result<Vec<SiteFile>, String> {
    let names: Vec<String> = sites.iter().map(|file| file.site.name.clone()).collect();
    let chosen: Vec<SiteFile> =
        sites.into_iter().filter(|file| name.is_none_or(|name| file.site.name == name)).collect();
    match name {
        _ if names.is_empty() => Err("The file holds no site.".to_owned()),
        Some(name) if chosen.is_empty() => {
            Err(format!("No site is called “{name}”. There is {}.", words::list(&names)))
        }
        _ => Ok(chosen),
    }
}

fn read(path: &std::path::Path) -> Result<Vec<u8>, String> {
    std::fs::read(path).map_err(|error| format!("{} can't be read: {error}.", path.display()))
}

//! What is asked for on the command line.

use std::ffi::OsString;
use std::path::PathBuf;

use chrono::{Datelike, NaiveDate};
use eavewater::engine::rain::rain_unit::RainUnit;
use eavewater::engine::upgrades::RankBy;
use eavewater::quantity::{Customary, Units};
use eavewater::site::diary::YEARS;
use eavewater::site::household::{GENERATED_YEARS, GeneratedYears};
use lexopt::prelude::*;

use super::ahead::{Content, Start};

/// How to use it.
pub const HELP: &str = "\
reckon SITES.json [RAIN.csv] [options]

Reads a file that Eavewater exported and prints the water balance of its sites and the checks of
their parts as JSON.
RAIN.csv: a daily record to use in the place of the sites' own rain (date and depth, or a GHCN-Daily station file).

  --site NAME       only the site of that name
  --rain-unit UNIT  what RAIN.csv counts in: mm, tenths-mm, cm, in, hundredths-in
  --units SET       units of the summary: metric, us, imperial (those of the file if not said)
  --generated N     N years (10 to 400) drawn from a model of the rain, in the place of the rain itself
  --draw N          which draw of generated years: the same number gives the same years everywhere (1 if not said)
  --summary         a readable summary instead of JSON
  --next MEASURE    what to change next, ranked by price, dry-days, water, spill or worst-year
  --from DATE       the weeks ahead from the end of that day (2026-07-31), by the file's diary
  --content HOW     with --from: what the tanks hold then over their outlets, in place of the diary: 3500 (L) or 40%
  --days            every day as well, in the JSON
  --sizes           the smallest sizes that do what the site wants, curves, a surface and the handbooks, as well
  --help            this

Volumes in the JSON are litres, rain is millimetres. What is odd about RAIN.csv is told on standard error.
A file that can't be used: a sentence on standard error, exit status 2, nothing on standard output.";

/// What the person wants.
pub enum Wish {
    /// To know how to use it.
    Help,
    /// A reckoning.
    Reckon(Order),
}

/// A reckoning as it was ordered.
pub struct Order {
    /// The exported file.
    pub site_file: PathBuf,
    /// Rain in the place of the sites' own.
    pub rain_file: Option<PathBuf>,
    /// Only the site of this name.
    pub site: Option<String>,
    /// What the rain file counts in.
    pub rain_unit: Option<RainUnit>,
    /// So many generated years in the place of the rain, of this draw.
    pub generated: Option<GeneratedYears>,
    /// Units of the summary.
    pub units: Option<Units>,
    /// A summary instead of JSON.
    pub summary: bool,
    /// What to change next, ranked by this.
    pub next: Option<RankBy>,
    /// The weeks ahead as well, from here.
    pub from: Option<Start>,
    /// Every day as well.
    pub days: bool,
    /// Sizes as well.
    pub sizes: bool,
}

/// Reads the command line; its first word is the program's own name.
///
/// # Errors
/// A sentence that says which word is wrong.
pub fn read(words: impl IntoIterator<Item = OsString>) -> Result<Wish, String> {
    let mut parser = lexopt::Parser::from_iter(words);
    let (mut files, mut site, mut rain_unit, mut units) = (Vec::new(), None, None, None);
    let (mut summary, mut days, mut sizes, mut next) = (false, false, false, None);
    let (mut years, mut draw) = (None, None);
    let (mut from, mut content) = (None, None);
    let told = |error: lexopt::Error| format!("{error}. `reckon --help` says how.");
    while let Some(word) = parser.next().map_err(told)? {
        match word {
            Short('h') | Long("help") => return Ok(Wish::Help),
            Long("site") => site = Some(parser.value().and_then(|value| value.string()).map_err(told)?),
            Long("rain-unit") => rain_unit = Some(rain_unit_of(&parser.value().map_err(told)?)?),
            Long("units") => units = Some(units_of(&parser.value().map_err(told)?)?),
            Long("next") => next = Some(measure_of(&parser.value().map_err(told)?)?),
            Long("generated") => years = Some(years_of(&parser.value().map_err(told)?)?),
            Long("draw") => draw = Some(draw_of(&parser.value().map_err(told)?)?),
            Long("from") => from = Some(day_of(&parser.value().map_err(told)?)?),
            Long("content") => content = Some(content_of(&parser.value().map_err(told)?)?),
            Long("summary") => summary = true,
            Long("days") => days = true,
            Long("sizes") => sizes = true,
            Value(file) if files.len() < 2 => files.push(PathBuf::from(file)),
            other => return Err(told(other.unexpected())),
        }
    }
    let mut files = files.into_iter();
    let Some(site_file) = files.next() else {
        return Err("Name a file that Eavewater exported. `reckon --help` says how.".to_owned());
    };
    let generated = match (years, draw) {
        (Some(years), draw) => Some(GeneratedYears { years, seed: draw.unwrap_or(1), ..GeneratedYears::CENTURY }),
        (None, Some(_)) => return Err("--draw goes with --generated: say how many years.".to_owned()),
        (None, None) => None,
    };
    let from = match (from, content) {
        (Some(day), content) => Some(Start { day, content }),
        (None, Some(_)) => return Err("--content goes with --from: say which day.".to_owned()),
        (None, None) => None,
    };
    let rain_file = files.next();
    Ok(Wish::Reckon(Order {
        site_file,
        rain_file,
        site,
        rain_unit,
        generated,
        units,
        summary,
        next,
        from,
        days,
        sizes,
    }))
}

fn day_of(word: &OsString) -> Result<NaiveDate, String> {
    let day: Option<NaiveDate> = word.to_str().and_then(|word| word.parse().ok());
    day.filter(|day| YEARS.contains(&day.year()))
        .ok_or_else(|| format!("{} is no date such as 2026-07-31.", word.display()))
}

fn content_of(word: &OsString) -> Result<Content, String> {
    let text = word.to_str().unwrap_or("");
    let number = |text: &str| text.trim().parse().ok().filter(|number: &f64| number.is_finite() && *number >= 0.0);
    let content = match text.strip_suffix('%') {
        Some(text) => number(text).filter(|number| *number <= 100.0).map(|number| Content::Share(number / 100.0)),
        None => number(text.strip_suffix('L').unwrap_or(text)).map(Content::Litres),
    };
    content.ok_or_else(|| format!("{} is no content: litres such as 3500, or a share such as 40%.", word.display()))
}

fn years_of(word: &OsString) -> Result<u16, String> {
    let years = word.to_str().and_then(|word| word.parse().ok());
    years
        .filter(|years| GENERATED_YEARS.holds(f64::from(*years)))
        .ok_or_else(|| format!("{} is no number of years: 10 to 400.", word.display()))
}

fn draw_of(word: &OsString) -> Result<u32, String> {
    let draw = word.to_str().and_then(|word| word.parse().ok());
    draw.ok_or_else(|| format!("{} is no draw: a whole number from 0 on.", word.display()))
}

fn rain_unit_of(word: &OsString) -> Result<RainUnit, String> {
    Ok(match word.to_str() {
        Some("mm") => RainUnit::Millimetres,
        Some("tenths-mm") => RainUnit::TenthsOfMillimetre,
        Some("cm") => RainUnit::Centimetres,
        Some("in") => RainUnit::Inches,
        Some("hundredths-in") => RainUnit::HundredthsOfInch,
        _ => return Err(format!("{} is no unit of rain: mm, tenths-mm, cm, in or hundredths-in.", word.display())),
    })
}

fn measure_of(word: &OsString) -> Result<RankBy, String> {
    let measure = word.to_str().and_then(super::next::measure);
    measure.ok_or_else(|| format!("{} is no measure: price, dry-days, water, spill or worst-year.", word.display()))
}

fn units_of(word: &OsString) -> Result<Units, String> {
    Ok(Units::customary(match word.to_str() {
        Some("metric") => Customary::Metric,
        Some("us") => Customary::Us,
        Some("imperial") => Customary::Imperial,
        _ => return Err(format!("{} is no set of units: metric, us or imperial.", word.display())),
    }))
}

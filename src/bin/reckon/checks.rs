//! The checks of all parts, as JSON and in sentences.

use eavewater::engine::checks::{Asked, Check, Source, Verdict, chosen, of_all};
use eavewater::engine::question::Answer;
use eavewater::language::capital;
use eavewater::quantity::{Kind, Units};
use eavewater::records::cupboard::SiteFile;
use eavewater::site::rain::Rain;
use eavewater::words::checks as say;
use serde_json::{Value, json};

/// The checks, with the water of the last day's place in a middle year.
fn checks(file: &SiteFile, rain: &Rain, answer: &Answer) -> Vec<Check> {
    let today = answer.series.dates.last().copied().unwrap_or_default();
    of_all(&Asked { site: &file.site, rain: Some(rain), answer: Some(answer), read: None, today })
}

/// One object for each check; values in the unit that is named with each.
pub fn json(file: &SiteFile, rain: &Rain, answer: &Answer, units: &Units) -> Value {
    checks(file, rain, answer).iter().map(|check| one(file, check, units)).collect()
}

fn one(file: &SiteFile, check: &Check, units: &Units) -> Value {
    let system = &file.site.system;
    let (said, text) = (say::said(check, system, units), say::text(check.subject));
    let inputs: Vec<Value> = check
        .inputs
        .iter()
        .map(|input| match input.source {
            Source::Known(figure) => json!({
                "what": say::figures::label(figure),
                "value": input.value,
                "unit": unit(figure.kind()),
                "from": "system",
            }),
            Source::Detail { of, detail, entered } => {
                let choice = say::details::options(detail).get(chosen(input.value));
                json!({
                    "what": say::details::label_of(detail, of, check.part, system),
                    "value": choice.map_or_else(|| json!(input.value), |choice| json!(choice.text())),
                    "unit": unit(detail.row().kind),
                    "from": if entered { "entered" } else { "usual" },
                })
            }
        })
        .collect();
    let found: Vec<Value> = check
        .found
        .iter()
        .map(|(figure, value)| {
            json!({ "what": say::figures::label(*figure), "value": value, "unit": unit(figure.kind()) })
        })
        .collect();
    let margin = check.margin.map(|margin| {
        json!({
            "what": say::figures::label(margin.of),
            "has": margin.has,
            "wants": margin.wants,
            "unit": unit(margin.of.kind()),
            "spare": margin.spare(),
        })
    });
    json!({
        "part": system.name_of(check.part),
        "check": text.title.text(),
        "verdict": match check.verdict {
            Verdict::Holds => "holds",
            Verdict::Fails => "fails",
            Verdict::Tells => "tells",
            Verdict::Lacks => "lacks",
            Verdict::Outside => "outside",
        },
        "on_usual_sizes": check.is_guess(),
        "sentence": capital(&said.verdict),
        "to_do": said.to_do,
        "margin": margin,
        "inputs": inputs,
        "found": found,
        "formula": text.formula.text(),
        "source": text.source.text(),
        "assumes": text.assumes.text(),
        "caution": text.caution.text(),
    })
}

/// The symbol of the unit that a kind is kept in; shares are of one.
fn unit(kind: Kind) -> &'static str {
    if kind == Kind::Share { "" } else { kind.units()[0].symbol }
}

/// A line for each check, what to do after it.
pub fn summary(file: &SiteFile, rain: &Rain, answer: &Answer, units: &Units) -> Vec<String> {
    let system = &file.site.system;
    let mut lines = vec![String::new(), "Checks".to_owned()];
    for check in checks(file, rain, answer) {
        let said = say::said(&check, system, units);
        let word = say::word(&check);
        let (part, title) = (system.name_of(check.part), say::text(check.subject).title);
        let line = format!("{part}, {title}. {word}: {} {}", capital(&said.verdict), said.to_do);
        lines.push(line.trim_end().to_owned());
    }
    lines
}

//! Fit to drink: what is proven at each tap, and the water tests.

use chrono::NaiveDate;
use eavewater::app::view::water::{Seen, sentences, taps};
use eavewater::engine::checks::Asked;
use eavewater::engine::question::Answer;
use eavewater::engine::treatment::chain::{chain, has_chain};
use eavewater::engine::treatment::limits::judge;
use eavewater::quantity::Units;
use eavewater::records::cupboard::SiteFile;
use eavewater::words::{self, cautions, treatment};
use serde_json::{Value, json};

/// The day that counts as today: that of the last entry of the diary.
fn last_day(file: &SiteFile) -> NaiveDate {
    file.diary.entries().last().map(|entry| entry.date).unwrap_or_default()
}

/// Each tap that people may drink from: logs of bacteria, viruses and protozoa that are proven, stars of WHO, barriers,
/// tests.
pub fn json(file: &SiteFile, answer: &Answer) -> Value {
    let asked = Asked { site: &file.site, rain: None, answer: Some(answer), read: None, today: last_day(file) };
    let uses = file.site.system.uses.iter().filter(|using| has_chain(using.class));
    let taps = uses.map(|using| {
        let chain = chain(&asked, &file.diary, using);
        let chlorinated = chain.is_chlorinated();
        json!({
            "tap": using.name,
            "proven_log": chain.logs,
            "stars": chain.stars,
            "weakest": chain.weakest.map(|(germ, lacks)| json!({
                "germ": treatment::GERMS[germ as usize].text(), "lacks_log": lacks,
            })),
            "barriers": chain.steps.iter().map(|step| json!({
                "kind": treatment::barriers::name(step.barrier.kind).text(), "proven_log": step.logs,
            })).collect::<Vec<_>>(),
            "tests": chain.results.iter().map(|result| json!({
                "parameter": words::diary::parameter_name(result.of),
                "found": words::diary::found(result.of, result.found),
                "date": result.date.to_string(),
                "judgement": treatment::results::word(judge(result.of, result.found, chlorinated).0),
            })).collect::<Vec<_>>(),
        })
    });
    taps.collect()
}

/// The same in sentences.
pub fn summary(file: &SiteFile, answer: &Answer, units: &Units) -> Vec<String> {
    let seen = Seen { site: &file.site, diary: &file.diary, answer: Some(answer), today: last_day(file), units };
    let mut lines: Vec<String> = taps(&seen).iter().flat_map(sentences).collect();
    if !lines.is_empty() {
        lines.push(cautions::WHO_DECIDES.to_owned());
        lines.push(String::new());
    }
    lines
}

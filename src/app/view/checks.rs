//! The checks of a part as they stand on its sheet.

use super::Outcome;
use crate::app::model::KeptSite;
use crate::engine::ahead::standing::Stands;
use crate::engine::checks::{Asked, Check, Input, Source, Subject, Verdict, again, of_all, of_part, storm_in_tanks};
use crate::language::{Phrase, capital};
use crate::quantity::{Kind, Range, Units, shown};
use crate::site::details::Detail;
use crate::site::household::Site;
use crate::site::part::PartId;
use crate::site::system::System;
use crate::words::checks as say;
use chrono::NaiveDate;

/// One check.
#[derive(Clone, Debug, PartialEq)]
pub struct CheckView {
    /// What is checked.
    pub title: &'static str,
    /// The subject under which it stands.
    pub group: &'static str,
    /// Whether it asks for attention.
    pub attention: bool,
    /// Whether it does so on usual sizes only.
    pub unsure: bool,
    /// The first words of the sentence, for where it is folded.
    pub short: String,
    /// The class that colours it.
    pub class: &'static str,
    /// What it comes to, in a word.
    pub word: &'static str,
    /// The same in words, margin first.
    pub sentence: String,
    /// What to do; may be empty.
    pub to_do: String,
    /// What went in.
    pub inputs: Vec<InputView>,
    /// What came out: label and figure.
    pub figures: Vec<(String, String)>,
    /// Formula, source, assumptions, each with its heading; empty ones left out.
    pub behind: Vec<(&'static str, &'static str)>,
    /// What to be careful of; may be empty.
    pub caution: &'static str,
}

impl CheckView {
    /// One of which nothing is said.
    pub const BLANK: Self = Self {
        title: "",
        group: "",
        attention: false,
        unsure: false,
        short: String::new(),
        class: "check",
        word: "",
        sentence: String::new(),
        to_do: String::new(),
        inputs: Vec::new(),
        figures: Vec::new(),
        behind: Vec::new(),
        caution: "",
    };
}

/// A value that went in.
#[derive(Clone, Debug, PartialEq)]
pub struct InputView {
    /// Its label.
    pub label: String,
    /// Its value as text, in the person's unit.
    pub text: String,
    /// How it can be changed here; none for what the system knows.
    pub entry: Option<Entry>,
}

/// A detail that can be entered.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// The part that it belongs to; none for the site.
    pub of: Option<PartId>,
    /// Which.
    pub detail: Detail,
    /// Its kind.
    pub kind: Kind,
    /// What it may be.
    pub range: Range,
    /// What there is to choose from, and what is chosen; none for a number.
    pub options: (&'static [Phrase], usize),
    /// Where the value comes from while it was not entered; none once it was.
    pub usual: Option<&'static str>,
}

/// The checks of a part, always in the same order, so that what is open stays open; those that run the balance anew
/// are handed in.
pub fn checks(
    kept: &KeptSite,
    part: PartId,
    outcome: Option<&Outcome>,
    again: &[Check],
    today: NaiveDate,
    units: &Units,
) -> Vec<CheckView> {
    let read = kept.stands(today);
    let found = of_part(&asked(kept, outcome, read.as_ref(), today), part);
    found.iter().chain(again).map(|check| view(check, &kept.site.system, units)).collect()
}

/// The checks of a part that run the balance anew: only when the site, its rain or the part have changed.
pub fn checked_again(kept: &KeptSite, part: PartId, outcome: Option<&Outcome>) -> Vec<Check> {
    // They don't ask for the day, nor for what was read.
    let asked = asked(kept, outcome, None, NaiveDate::default());
    again::of_part(&Asked { rain: kept.rain.as_deref(), ..asked }, part)
}

/// The parts with a check that fails on what is known of them, not on usual sizes, by what was read of the tanks.
pub fn failing(kept: &KeptSite, outcome: Option<&Outcome>, read: Option<&Stands>, today: NaiveDate) -> Vec<PartId> {
    let found = of_all(&asked(kept, outcome, read, today));
    found.iter().filter(|check| check.fails() && !check.is_guess()).map(|check| check.part).collect()
}

/// A storm that is announced: how much it rains, in mm, and for how many hours, where that is said.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Announced {
    /// Rain, in mm.
    pub depth_mm: Option<f64>,
    /// How long it lasts, in hours.
    pub hours: Option<f64>,
}

impl Announced {
    /// What is said, as details of the site.
    fn details(self) -> [(Detail, Option<f64>); 2] {
        [(Detail::StormDepth, self.depth_mm), (Detail::StormDuration, self.hours)]
    }
}

/// What a storm is taken to be where nothing is announced: what is entered for the checks, or else the usual.
pub fn of_checks(kept: &KeptSite, detail: Detail) -> f64 {
    kept.site.system.details.get(None, detail).unwrap_or(detail.row().usual)
}

/// What a storm would do in each tank as it stands today: the one that is announced, or that of the checks.
pub fn storm(
    kept: &KeptSite,
    announced: Announced,
    outcome: Option<&Outcome>,
    today: NaiveDate,
    units: &Units,
) -> Vec<String> {
    let mut site = Site::clone(&kept.site);
    for (detail, value) in announced.details().into_iter().filter(|(_, value)| value.is_some()) {
        // Out of its range it is refused where it is typed.
        let _refused = site.system.details.set(None, detail, value);
    }
    let (read, system) = (kept.stands(today), &site.system);
    let found = storm_in_tanks(&Asked { site: &site, ..asked(kept, outcome, read.as_ref(), today) });
    let told = |check: &Check| format!("{}: {}", system.name_of(check.part), view(check, system, units).sentence);
    found.iter().map(told).collect()
}

fn asked<'a>(
    kept: &'a KeptSite,
    outcome: Option<&'a Outcome>,
    read: Option<&'a Stands>,
    today: NaiveDate,
) -> Asked<'a> {
    let answer = outcome.and_then(|outcome| outcome.as_ref().ok());
    Asked { site: &kept.site, rain: None, answer, read, today }
}

pub(super) fn view(check: &Check, system: &System, units: &Units) -> CheckView {
    let told = say::said(check, system, units);
    let text = say::text(check.subject);
    let mut figures: Vec<(String, String)> = Vec::new();
    for (figure, si) in &check.found {
        figures.push((say::figures::label(*figure).to_owned(), say::figure(*figure, *si, units)));
    }
    figures.extend(say::lines(check, units));
    let mut behind = vec![
        (said!("Formula", "Fórmula"), text.formula.text()),
        (said!("Source", "Fuente"), text.source.text()),
        (said!("Takes for granted", "Da por supuesto"), text.assumes.text()),
    ];
    behind.retain(|(_, words)| !words.is_empty());
    let sentence = capital(&told.verdict);
    CheckView {
        title: text.title.text(),
        group: say::group(check.subject),
        // Questions that nobody has answered ask for it too.
        attention: check.fails() || check.subject == Subject::OnRoof,
        unsure: check.is_guess(),
        short: first_words(&sentence).to_owned(),
        class: if check.fails() && check.is_guess() { class(Verdict::Lacks) } else { class(check.verdict) },
        word: say::word(check),
        sentence,
        to_do: told.to_do,
        inputs: check.inputs.iter().map(|each| input(each, check.part, system, units)).collect(),
        figures,
        behind,
        caution: text.caution.text(),
    }
}

/// The class that colours a verdict.
pub(super) const fn class(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => "check holds",
        Verdict::Fails => "check fails",
        Verdict::Tells => "check",
        Verdict::Lacks | Verdict::Outside => "check unsure",
    }
}

fn input(input: &Input, part: PartId, system: &System, units: &Units) -> InputView {
    match input.source {
        Source::Known(figure) => InputView {
            label: say::figures::label(figure).to_owned(),
            text: say::figure(figure, input.value, units),
            entry: None,
        },
        Source::Detail { of, detail, entered } => {
            let row = detail.row();
            let options = say::details::options(detail);
            let chosen = crate::engine::checks::chosen(input.value);
            let entry = Entry {
                of,
                detail,
                kind: row.kind,
                range: row.range,
                options: (options, chosen),
                usual: (!entered).then(|| say::details::usual(detail)),
            };
            let text = match options.get(chosen) {
                Some(option) => (*option).to_owned(),
                None if entered => shown::entered(input.value, row.kind, units),
                // A usual value is no more exact in another unit.
                None => shown::figure(input.value, row.kind, units),
            };
            InputView { label: say::details::label_of(detail, of, part, system), text, entry: Some(entry) }
        }
    }
}

/// What a sentence says first.
fn first_words(sentence: &str) -> &str {
    let end = [": ", "; ", ". "].iter().filter_map(|stop| sentence.find(stop)).min().unwrap_or(sentence.len());
    sentence[..end].trim_end_matches('.')
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::question::answer;
    use crate::language::{Language, speak};
    use crate::quantity::{Customary, typed};
    use crate::records::cupboard::{SiteFile, SiteId};
    use crate::site::demo;
    use crate::site::diary::Diary;
    use crate::site::rain::Rain;
    use crate::site::trial::Trial;
    use crate::site::uses::Class;

    #[test]
    fn every_check_of_the_demo_is_told_in_words_and_its_values_can_be_typed_back() {
        let rain = Rain::Record(demo::rain());
        // With an outbuilding and a portable tank, as the demo has none.
        let mut site = demo::site();
        let mut portable = site.system.uses[1].clone();
        (portable.id, portable.class) = (site.system.unused_id(), Class::Travel);
        site.system.uses.push(portable);
        assert_eq!(site.system.details.set(Some(site.system.uses[1].id), Detail::Building, Some(1.0)), Ok(()));
        let outcome = answer(&site, &rain);
        let kept = KeptSite::of_file(
            SiteId(1),
            SiteFile { site, rain: Some(rain), diary: Diary::default(), trial: Trial::NONE },
        );
        let languages = Language::ALL.into_iter().flat_map(|language| Customary::ALL.map(|set| (language, set)));
        for (language, set) in languages {
            speak(language);
            let units = Units::customary(set);
            for part in kept.site.system.parts() {
                let again = checked_again(&kept, part.id(), Some(&outcome));
                for view in checks(&kept, part.id(), Some(&outcome), &again, NaiveDate::default(), &units) {
                    let told = [&view.sentence, &view.to_do].map(String::as_str).join(" ");
                    assert!(
                        !view.sentence.is_empty() && !told.contains("NaN") && !told.contains('—'),
                        "{}: {told}",
                        view.title
                    );
                    for (label, text) in &view.figures {
                        assert!(!label.is_empty() && text != "—", "{}: {label} {text}", view.title);
                    }
                    for input in &view.inputs {
                        assert!(!input.label.is_empty() && input.text != "—", "{}: {}", view.title, input.label);
                        if let Some(Entry { kind, range, options: ([], _), .. }) = &input.entry {
                            let typed = typed::quantity(&input.text, *kind, &units).map(|typed| typed.si);
                            assert!(typed.is_ok_and(|si| range.holds(si)), "{}: {}", view.title, input.text);
                        }
                    }
                }
            }
        }
        speak(Language::English);
    }
}

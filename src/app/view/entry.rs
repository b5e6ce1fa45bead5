//! The form of an entry: what it asks for, what was written last, what is doubtful.

use chrono::NaiveDate;

use crate::app::form::{Form, FoundBy, LevelBy};
use crate::app::model::KeptSite;
use crate::engine::balance::plan::plan;
use crate::engine::diary::doubts::doubts;
use crate::engine::diary::joined::Known;
use crate::language::spoken;
use crate::quantity::Units;
use crate::site::diary::{Entry, Subject, Told};
use crate::site::part::PartId;
use crate::site::rain::Rain;
use crate::site::system::{Part, PartKind};
use crate::words;

/// The form as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct FormView {
    /// The title.
    pub title: String,
    /// The unit that a bare number is taken in, where a number is asked for.
    pub unit: Option<String>,
    /// What was written last, with its day.
    pub last: Option<String>,
    /// What would be written, as it was understood; none while something is lacking.
    pub understood: Option<String>,
    /// What a depth too large may have been meant as.
    pub meant: Option<String>,
    /// What is lacking or wrong.
    pub lacking: Option<String>,
    /// What is doubtful.
    pub doubts: Vec<String>,
    /// What is written on the button.
    pub write: &'static str,
    /// For the rain: the first day of the stretch up to the form's day of which nobody wrote any, and the words to write
    /// that all of it was dry.
    pub dry_spell: Option<(NaiveDate, String)>,
}

/// The form of a site's diary.
pub fn form(kept: &KeptSite, form: &Form, units: &Units, today: NaiveDate) -> FormView {
    let system = &kept.site.system;
    let draft = form.draft(units, kept);
    let known = Known::of(kept.rain.as_deref(), &kept.diary);
    let doubts: Vec<String> = match &draft {
        Ok(draft) => {
            let plan = plan(system).ok();
            let about = (form.id, draft.date, &draft.told);
            let found = doubts(system, plan.as_ref(), &kept.diary, &known, greatest_mm(kept), today, about);
            found.iter().map(|doubt| words::diary::doubt(doubt, units)).collect()
        }
        Err(_) => Vec::new(),
    };
    let untouched = form.text.trim().is_empty() && form.number().is_some();
    FormView {
        title: title(form),
        unit: form.number().map(|(kind, _)| match form.subject {
            Subject::Test => words::treatment::results::unit(form.parameter).to_owned(),
            _ => units.of(kind).sign().to_owned(),
        }),
        last: last(kept, form)
            .map(|entry| format!("{}: {}", words::date(entry.date), words::diary::told(&entry.told, system, units))),
        understood: draft.as_ref().ok().map(|draft| words::diary::told(&draft.told, system, units)),
        meant: form.meant(units, kept),
        lacking: draft.err().filter(|_| !untouched),
        write: if doubts.is_empty() { words::diary::WRITE } else { words::diary::WRITE_ALL_THE_SAME }.text(),
        doubts,
        dry_spell: dry_spell(&known, form),
    }
}

fn dry_spell(known: &Known<'_>, form: &Form) -> Option<(NaiveDate, String)> {
    let first = known.unknown_since(form.date).filter(|_| form.subject == Subject::Rain && form.id.is_none())?;
    Some((first, words::diary::dry_spell(first, form.date))).filter(|_| first < form.date)
}

fn title(form: &Form) -> String {
    let subject = words::diary::subject(form.subject);
    if form.id.is_some() { say!("Change: {subject}", "Cambiar: {subject}", subject) } else { subject.to_owned() }
}

fn greatest_mm(kept: &KeptSite) -> Option<f64> {
    match kept.rain.as_deref()? {
        Rain::Record(record) => {
            let greatest = record.depths_mm.iter().flatten().copied().fold(0.0, f64::max);
            (greatest > 0.0).then_some(greatest)
        }
        Rain::Normals(_) => None,
    }
}

/// The last entry of the same kind (of the same part, where one is named) before the form's day or on it.
fn last<'a>(kept: &'a KeptSite, form: &Form) -> Option<&'a Entry> {
    let same = |entry: &&Entry| {
        let alike = match &entry.told {
            Told::Level { of, .. } => Some(of.tank()) == form.part,
            Told::Meter { of, .. } => *of == form.part,
            Told::Work { on, task } => *task == form.task && *on == form.part,
            Told::Test { parameter, .. } => *parameter == form.parameter,
            Told::Rain(_) | Told::Delivery { .. } => true,
            Told::Note => false,
        };
        Some(entry.id) != form.id && entry.told.subject() == form.subject && entry.date <= form.date && alike
    };
    kept.diary.entries().iter().rfind(same)
}

/// The parts that an entry can be about, with words; none first, where it may be about the whole house.
pub fn parts(kept: &KeptSite, subject: Subject) -> Vec<(Option<PartId>, String)> {
    let system = &kept.site.system;
    let fits = |part: &Part| match subject {
        Subject::Level | Subject::Delivery => part.kind() == PartKind::Tank,
        Subject::Meter => matches!(part.kind(), PartKind::Use | PartKind::Pump),
        Subject::Test => matches!(part.kind(), PartKind::Use | PartKind::Tank),
        Subject::Work => true,
        Subject::Rain | Subject::Note => false,
    };
    let mut parts: Vec<(Option<PartId>, String)> = system
        .parts()
        .iter()
        .filter(|part| fits(part))
        .map(|part| (Some(part.id()), words::diary::part_choice(part.id(), system)))
        .collect();
    if subject == Subject::Work {
        let barriers = system.uses.iter().flat_map(|using| &using.barriers);
        parts.extend(barriers.map(|barrier| (Some(barrier.id), words::diary::part_name(barrier.id, system))));
    }
    if subject != Subject::Level && !parts.is_empty() {
        parts.insert(0, (None, words::diary::no_part(subject).to_owned()));
    }
    parts
}

/// How a level can be read, with words.
pub fn level_ways() -> [(LevelBy, &'static str); 4] {
    let names = words::diary::LEVEL_WAYS;
    std::array::from_fn(|at| (LevelBy::ALL[at], names[at].text()))
}

/// How a result can be given, with words.
pub fn found_ways() -> [(FoundBy, &'static str); 4] {
    let names = words::diary::FOUND_WAYS;
    std::array::from_fn(|at| (FoundBy::ALL[at], names[at].text()))
}

/// A number as it is typed key by key on the pad of the form: `⌫` takes the last one away.
pub fn typed_key(text: &str, key: &str) -> String {
    const MOST: usize = 24;
    let mut text = text.to_owned();
    if key == BACK {
        text.pop();
    } else if text.len() < MOST && !(key == decimal_mark() && text.contains(key)) {
        text.push_str(key);
    }
    text
}

/// The key that takes the last one away.
pub const BACK: &str = "⌫";

/// The key of the mark before the decimals, as the language writes numbers and [`typed`](crate::quantity::typed) reads them.
fn decimal_mark() -> &'static str {
    if spoken().decimal_mark() == ',' { "," } else { "." }
}

/// The keys of the pad, row by row.
pub fn keys() -> [&'static str; 12] {
    ["1", "2", "3", "4", "5", "6", "7", "8", "9", decimal_mark(), "0", BACK]
}

/// The label of the number.
pub fn label(form: &Form) -> &'static str {
    match (form.subject, form.by) {
        (Subject::Level, LevelBy::Depth) => words::diary::DEPTH,
        (Subject::Level, LevelBy::Share) => words::diary::SHARE,
        (Subject::Level, _) => words::diary::VOLUME,
        (Subject::Rain, _) => words::diary::RAIN,
        (Subject::Meter, _) => words::diary::METER,
        (Subject::Delivery, _) => words::diary::BROUGHT,
        _ => words::diary::FOUND,
    }
    .text()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pad_types_as_a_keyboard_does() {
        let typed = |keys: &[&str]| keys.iter().fold(String::new(), |text, key| typed_key(&text, key));
        assert_eq!(typed(&["1", ".", "4", ".", "2"]), "1.42");
        assert_eq!(typed(&["1", "2", BACK, "3"]), "13");
        assert_eq!(typed(&[BACK]), "");
    }

    #[test]
    fn in_spanish_the_pad_writes_a_comma_and_it_is_read_as_one() {
        use crate::language::{Language, speak};
        use crate::quantity::{Customary, Kind, typed};
        speak(Language::Spanish);
        let [one, .., mark, _, _] = keys();
        let text = [one, mark, "2", mark, "5", "0"].into_iter().fold(String::new(), |text, key| typed_key(&text, key));
        assert_eq!(text, "1,250");
        let read = typed::quantity(&text, Kind::Length, &Units::customary(Customary::Metric));
        assert_eq!(read.map(|typed| typed.si), Ok(1.25));
        speak(Language::English);
    }
}

//! Fit to drink: the chain of a tap with its gap, barrier by barrier, and the results of water tests.

use chrono::NaiveDate;

use super::checks::{CheckView, class, view};
use crate::app::model::{KeptSite, Model};
use crate::engine::checks::{Asked, Verdict};
use crate::engine::question::Answer;
use crate::engine::treatment::boiling;
use crate::engine::treatment::chain::{Chain, chain, has_chain};
use crate::engine::treatment::limits::{Judgement, judge};
use crate::engine::treatment::results::{Result, is_chlorinated, is_over_limit, newest, over_limit, stays_when_boiled};
use crate::engine::treatment::step::Step;
use crate::language::small;
use crate::quantity::Units;
use crate::site::details::Detail;
use crate::site::diary::{Diary, Entry, Parameter, Told};
use crate::site::household::Site;
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::uses::Use;
use crate::site::work::Task;
use crate::words::{self, treatment as say};

/// The chain of a tap.
#[derive(Clone, Debug, PartialEq)]
pub struct TapView {
    /// The use at whose tap it ends.
    pub tap: PartId,
    /// Its name.
    pub name: String,
    /// The class that colours the verdict.
    pub class: &'static str,
    /// The verdict in a word.
    pub word: &'static str,
    /// The verdict in a sentence.
    pub verdict: String,
    /// The weakest gap.
    pub weakest: Option<String>,
    /// Whether a test is over a limit of health, so that the tests come first.
    pub urgent: bool,
    /// What is wrong with order or roofs.
    pub wrong: Vec<String>,
    /// What lies before the barriers.
    pub upstream: String,
    /// The barriers.
    pub steps: Vec<StepView>,
    /// The table of what is proven and wanted.
    pub rows: Vec<[String; 4]>,
    /// What else is to be known.
    pub notes: Vec<String>,
    /// The newest tests.
    pub tests: Vec<TestView>,
    /// What to be careful of.
    pub caution: &'static str,
}

/// One barrier.
#[derive(Clone, Debug, PartialEq)]
pub struct StepView {
    /// The barrier.
    pub id: PartId,
    /// What went in, what it is worth, and why.
    pub check: CheckView,
}

/// One result.
#[derive(Clone, Debug, PartialEq)]
pub struct TestView {
    /// What was tested for.
    pub title: &'static str,
    /// The class that colours the judgement.
    pub class: &'static str,
    /// The judgement in a word.
    pub word: &'static str,
    /// What was found, where and when.
    pub found: String,
    /// What it means, against whose limits.
    pub meaning: String,
    /// What to do next; may be empty.
    pub next: String,
}

/// What the case knows of the open site.
#[derive(Clone, Copy)]
pub struct Seen<'a> {
    /// The site.
    pub site: &'a Site,
    /// Its diary.
    pub diary: &'a Diary,
    /// What the balance says, if it runs.
    pub answer: Option<&'a Answer>,
    /// The day.
    pub today: NaiveDate,
    /// The person's units.
    pub units: &'a Units,
}

impl<'a> Seen<'a> {
    fn asked(&self) -> Asked<'a> {
        Asked { site: self.site, rain: None, answer: self.answer, read: None, today: self.today }
    }
}

/// What to drink while these are the results that stand.
fn drink(system: &System, results: &[Result]) -> String {
    say::results::drink(system.details.get(None, Detail::Altitude).map(boiling::minutes), stays_when_boiled(results))
}

/// What is said of a test over a limit of health.
pub fn alarm(kept: &KeptSite, result: &Result) -> String {
    alarm_among(kept, result, &over_limit(&kept.diary, &kept.site.system))
}

fn alarm_among(kept: &KeptSite, result: &Result, all: &[Result]) -> String {
    let system = &kept.site.system;
    let place = result.at.map(|at| system.name_of(at)).filter(|name| !name.is_empty());
    let disinfections =
        kept.diary.entries().iter().filter(|entry| matches!(entry.told, Told::Work { task: Task::Disinfection, .. }));
    let disinfected = disinfections.map(|entry| entry.date).filter(|date| *date >= result.date).max();
    say::results::over_limit(result, place.as_deref(), disinfected, &drink(system, all))
}

/// What is said of each newest test over a limit of health, of water that people may come to drink.
pub fn alarms(kept: &KeptSite) -> Vec<String> {
    let over = over_limit(&kept.diary, &kept.site.system);
    over.iter().map(|result| alarm_among(kept, result, &over)).collect()
}

/// The chain of a use; `None` where nobody could come to drink from it.
pub fn tap(seen: &Seen<'_>, part: PartId) -> Option<TapView> {
    let using = seen.site.system.uses.iter().find(|using| using.id == part && has_chain(using.class))?;
    Some(tap_of(seen, using))
}

/// The chains of all taps.
pub fn taps(seen: &Seen<'_>) -> Vec<TapView> {
    let uses = seen.site.system.uses.iter();
    uses.filter(|using| has_chain(using.class)).map(|using| tap_of(seen, using)).collect()
}

/// Taps for drinking whose chain is not enough, for the drawing.
pub fn failing(kept: &KeptSite, today: NaiveDate) -> Vec<PartId> {
    let asked = Asked { site: &kept.site, rain: None, answer: None, read: None, today };
    let uses = kept.site.system.uses.iter().filter(|using| has_chain(using.class));
    let chains = uses.map(|using| chain(&asked, &kept.diary, using));
    chains
        .filter(|chain| chain.verdict() == Verdict::Fails || failed_tests(chain).next().is_some())
        .map(|chain| chain.tap)
        .collect()
}

fn failed_tests(chain: &Chain) -> impl Iterator<Item = &Result> {
    let chlorinated = chain.is_chlorinated();
    chain.results.iter().filter(move |result| is_over_limit(result, chlorinated))
}

fn tap_of(seen: &Seen<'_>, using: &Use) -> TapView {
    let system = &seen.site.system;
    let chain = chain(&seen.asked(), seen.diary, using);
    let failed: Vec<String> = failed_tests(&chain).map(|result| words::diary::parameter_inside(result.of)).collect();
    let doubts: Vec<String> = chain.doubts().map(|result| words::diary::parameter_inside(result.of)).collect();
    let (class, word) = match chain.verdict() {
        _ if !failed.is_empty() => ("check fails", say::results::word(Judgement::Fails)),
        Verdict::Holds if !doubts.is_empty() => (class(Verdict::Lacks), said!("In doubt", "En duda")),
        Verdict::Holds => (class(Verdict::Holds), said!("Enough against germs", "Suficiente contra gérmenes")),
        Verdict::Lacks => (class(Verdict::Lacks), said!("In part", "En parte")),
        Verdict::Tells => (class(Verdict::Tells), said!("Not proven", "Sin demostrar")),
        verdict => (class(verdict), said!("Not proven", "Sin demostrar")),
    };
    let mut wrong: Vec<String> = chain.disorders.iter().map(|each| say::chain::disorder(*each).to_owned()).collect();
    wrong.extend(say::chain::unguarded(&chain, system));
    let chlorinated = chain.is_chlorinated();
    TapView {
        tap: using.id,
        name: using.name.clone(),
        class,
        word,
        verdict: if failed.is_empty() { say::chain::verdict(&chain, &doubts) } else { say::chain::test_fails(&failed) },
        // Where nobody is meant to drink and nothing was entered, the gap goes without saying.
        weakest: say::chain::weakest(&chain).filter(|_| chain.verdict() != Verdict::Tells),
        urgent: !failed.is_empty(),
        wrong,
        upstream: say::chain::upstream(&chain),
        steps: chain.steps.iter().map(|step| step_view(step, system, seen.units)).collect(),
        rows: say::chain::rows(&chain),
        notes: say::chain::also_on_roof(&chain, system),
        tests: tests(seen, &chain.results, chlorinated),
        caution: say::chain::caution(using.class),
    }
}

fn step_view(step: &Step, system: &System, units: &Units) -> StepView {
    let mut check = view(&step.check, system, units);
    let life = say::barriers::life(step, units);
    check.word = match step.check.verdict {
        Verdict::Holds => said!("Proven", "Probado"),
        Verdict::Tells => said!("Not against germs", "No contra gérmenes"),
        Verdict::Outside => said!("Outside the tables", "Fuera de las tablas"),
        Verdict::Lacks | Verdict::Fails => said!("Not proven", "Sin demostrar"),
    };
    check.sentence = say::barriers::sentence(step, units);
    check.to_do = life.join(" ");
    StepView { id: step.barrier.id, check }
}

/// All tests of the site: the newest of each parameter, wherever it was taken; what fails comes first.
pub fn all_tests(seen: &Seen<'_>) -> Vec<TestView> {
    let chlorinated = seen.site.system.uses.iter().any(is_chlorinated);
    tests(seen, &newest(seen.diary, None, |_| true), chlorinated)
}

fn tests(seen: &Seen<'_>, results: &[Result], chlorinated: bool) -> Vec<TestView> {
    let drink = drink(&seen.site.system, results);
    let mut judged: Vec<(Judgement, TestView)> =
        results.iter().map(|result| test(seen, result, chlorinated, &drink)).collect();
    judged.sort_by_key(|(judgement, _)| std::cmp::Reverse(*judgement));
    judged.into_iter().map(|(_, view)| view).collect()
}

fn test(seen: &Seen<'_>, result: &Result, chlorinated: bool, drink: &str) -> (Judgement, TestView) {
    let (judgement, _) = judge(result.of, result.found, chlorinated);
    let place = result.at.map(|at| seen.site.system.name_of(at)).filter(|name| !name.is_empty());
    let place = place.map(|name| format!(", {name}")).unwrap_or_default();
    let found = words::diary::found(result.of, result.found);
    // Which laboratory, say.
    let is_of = |entry: &&Entry| {
        entry.date == result.date
            && matches!(entry.told, Told::Test { at, parameter, .. } if at == result.at && parameter == result.of)
    };
    let note = seen.diary.entries().iter().rfind(is_of).map_or("", |entry| entry.note.as_str());
    let meaning = [say::results::meaning(result.of), &say::results::limits_of(result.of, chlorinated)].join(" ");
    let view = TestView {
        title: words::diary::parameter_name(result.of),
        class: match judgement {
            Judgement::Within => class(Verdict::Holds),
            Judgement::Fails => class(Verdict::Fails),
            Judgement::Watch | Judgement::CannotTell => class(Verdict::Lacks),
            Judgement::NoLimit => class(Verdict::Tells),
        },
        word: say::results::word(judgement),
        found: format!("{found}, {}{place}. {note}", words::date(result.date)).trim_end().to_owned(),
        meaning,
        next: say::results::once_more(result, drink)
            .unwrap_or_else(|| say::results::next_step(result.of, judgement, drink)),
    };
    (judgement, view)
}

/// The chain in plain sentences, for whoever reads without a screen.
pub fn sentences(view: &TapView) -> Vec<String> {
    let mut told = vec![format!("{}: {}", view.name, view.verdict)];
    told.extend(view.weakest.clone());
    told.extend(view.wrong.iter().cloned());
    told.extend(view.steps.iter().map(|step| format!("{}: {}", step.check.title, step.check.sentence)));
    told.extend(view.notes.iter().cloned());
    told.extend(view.tests.iter().map(|test| format!("{}: {} {} {}", test.title, test.word, test.found, test.next)));
    told
}

/// The test of a part that was written down last: its place among the parameters, and what was written.
pub fn last_test(model: &Model, at: PartId) -> Option<(usize, String)> {
    let entries = model.site()?.diary.entries().iter();
    let tests = entries.filter_map(|entry| match entry.told {
        Told::Test { at: Some(part), parameter, found } if part == at => Some((entry, parameter, found)),
        _ => None,
    });
    let (entry, parameter, found) = tests.max_by_key(|(entry, ..)| entry.edited)?;
    let place = Parameter::ALL.iter().position(|of| *of == parameter)?;
    Some((place, say::results::written(parameter, found, entry.date)))
}

/// What a person types as the result of a test: a number, "<" and a number, or that it is there or not; whatever the
/// language, what is written in either is read.
pub fn read_result(text: &str, of: Parameter) -> Option<crate::site::diary::TestResult> {
    use crate::quantity::{Kind, concentration, typed};
    use crate::site::diary::{FOUND, TestResult};
    let (text, factor) = concentration::split(text, of.unit());
    let factor = factor?;
    let text = text.trim_end_matches(say::results::unit(of)).trim();
    let text: String = text.chars().map(small).collect();
    let number = |text: &str| {
        let read = typed::quantity(text.trim(), Kind::Count, &Units::default()).ok()?;
        (read.parts.len() == 1).then_some(read.si * factor).filter(|value| FOUND.holds(*value))
    };
    match text.as_str() {
        "none" | "absent" | "not found" | "not detected" | "nd" | "negative" | "no" => Some(TestResult::Absent),
        "ninguno" | "ninguna" | "nada" | "ausente" | "ausencia" | "no hay" | "negativo" | "negativa" => {
            Some(TestResult::Absent)
        }
        "no hallado" | "no hallada" | "no encontrado" | "no encontrada" | "no detectado" | "no detectada"
        | "no se halló" | "no se encontró" | "no se detectó" => Some(TestResult::Absent),
        "present" | "found" | "detected" | "positive" | "yes" => Some(TestResult::Present),
        "presente" | "presencia" | "hallado" | "hallada" | "encontrado" | "encontrada" | "detectado" | "detectada"
        | "positivo" | "positiva" | "hay" | "sí" | "si" => Some(TestResult::Present),
        _ => {
            let below = ["<", "under", "less than", "menos de", "menor que", "menor de", "bajo"];
            match below.iter().find_map(|word| text.strip_prefix(word)) {
                Some(limit) => number(limit).map(TestResult::Below),
                None => number(&text).map(TestResult::Value),
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::records::cupboard::{SiteFile, SiteId};
    use crate::site::barrier::BarrierKind;
    use crate::site::demo;
    use crate::site::diary::{Entry, EntryId, Line, TestResult};
    use crate::site::trial::Trial;

    fn told(site: &Site, diary: &Diary) -> Vec<TapView> {
        let seen = Seen { site, diary, answer: None, today: NaiveDate::default(), units: &Units::default() };
        let views = taps(&seen);
        for said in views.iter().flat_map(sentences) {
            assert!(!said.contains("NaN") && !said.contains('—') && !said.contains("  "), "{said}");
        }
        views
    }

    /// A diary with one test of a tap.
    fn tested(at: PartId, parameter: Parameter, found: TestResult) -> Diary {
        let told = Told::Test { at: Some(at), parameter, found };
        Diary::of(vec![Entry { id: EntryId(1), edited: 1, date: NaiveDate::default(), told, note: String::new() }])
    }

    #[test]
    fn every_barrier_and_result_is_told_in_words() {
        let mut site = demo::site();
        let tap = site.system.uses[0].id;
        for kind in BarrierKind::ALL {
            site.system.add_barrier(tap, kind);
        }
        for proof in 0..6u8 {
            let filters = site.system.uses[0].barriers.clone();
            for barrier in filters.iter().filter(|barrier| barrier.kind.is_filter()) {
                let of = Some(barrier.id);
                for (detail, value) in [
                    (Detail::Proof, f64::from(proof)),
                    (Detail::CertifiedMetals, f64::from(proof % 2)),
                    (Detail::FilterNow, 20.0 * f64::from(proof)),
                ] {
                    assert_eq!(site.system.details.set(of, detail, Some(value)), Ok(()));
                }
            }
            assert_eq!(told(&site, &Diary::default())[0].steps.len(), BarrierKind::ALL.len() + 3);
        }
        for parameter in Parameter::ALL {
            for found in [
                TestResult::Value(9e4),
                TestResult::Value(0.0),
                TestResult::Below(1e3),
                TestResult::Present,
                TestResult::Absent,
            ] {
                let views = told(&site, &tested(tap, parameter, found));
                assert_eq!(views[0].tests.len(), 1, "{parameter:?}");
                assert_eq!(views[0].urgent, views[0].class.contains("fails"), "{parameter:?} {found:?}");
            }
        }
    }

    #[test]
    fn a_failing_test_comes_before_what_is_proven() {
        let site = demo::site();
        let tap = site.system.uses[0].id;
        let views = told(&site, &tested(tap, Parameter::EColi, TestResult::Present));
        assert!(views[0].verdict.contains("E.\u{a0}coli") && views[0].urgent, "{}", views[0].verdict);
        assert!(views[0].tests[0].next.contains("Boil every glass for 1 min"), "{}", views[0].tests[0].next);
        // The other tap is another water only if it hangs on another store: here nobody sampled it.
        assert!(!views[1].urgent);
    }

    #[test]
    fn what_was_done_about_germs_is_not_asked_for_again() {
        let mut diary = tested(demo::site().system.uses[0].id, Parameter::EColi, TestResult::Present);
        let sample = diary.entries()[0].date;
        let alarm = |diary: &Diary| {
            let file = SiteFile { site: demo::site(), rain: None, diary: diary.clone(), trial: Trial::NONE };
            alarms(&KeptSite::of_file(SiteId(1), file)).join(" ")
        };
        assert!(alarm(&diary).contains("disinfect the tank"));
        for (days, done) in [(-1, false), (1, true)] {
            diary.put(Line::Entry(Entry {
                id: EntryId(9),
                edited: 9,
                date: sample + chrono::Duration::days(days),
                told: Told::Work { on: None, task: Task::Disinfection },
                note: String::new(),
            }));
            let told = alarm(&diary);
            assert!(told.contains("Boil every glass"), "{told}");
            assert_eq!(told.contains("It was disinfected on"), done, "{told}");
            assert_eq!(told.contains("disinfect the tank"), !done, "{told}");
        }
    }

    fn with(tests: &[(u64, Parameter, TestResult)]) -> Diary {
        let entry = |(id, &(day, parameter, found)): (u64, &(u64, Parameter, TestResult))| Entry {
            id: EntryId(id),
            edited: id,
            date: NaiveDate::default() + chrono::Days::new(day),
            told: Told::Test { at: None, parameter, found },
            note: String::new(),
        };
        Diary::of((1..).zip(tests).map(entry).collect())
    }

    #[test]
    fn a_residual_counts_for_a_week() {
        let mut site = demo::site();
        let tap = site.system.uses[0].id;
        site.system.uses[0].barriers.clear();
        site.system.add_barrier(tap, BarrierKind::Chlorine);
        let of = Some(site.system.uses[0].barriers[0].id);
        for (detail, value) in [(Detail::DosedWhere, 1.0), (Detail::StandsFor, 0.5)] {
            assert_eq!(site.system.details.set(of, detail, Some(value)), Ok(()));
        }
        let diary = with(&[(0, Parameter::FreeChlorine, TestResult::Value(0.8))]);
        let counted = |days| {
            let today = NaiveDate::default() + chrono::Days::new(days);
            let seen = Seen { site: &site, diary: &diary, answer: None, today, units: &Units::default() };
            !taps(&seen)[0].steps[0].check.sentence.contains("Nothing is counted")
        };
        assert!(counted(0) && counted(7) && !counted(8) && !counted(2000));
    }

    #[test]
    fn nobody_is_told_to_boil_what_boiling_makes_worse() {
        let site = demo::site();
        let (germs, lead) = (TestResult::Present, TestResult::Value(400.0));
        let boil = "Boil every glass";
        let told_of = |tests: &[_]| sentences(&told(&site, &with(tests))[0]).join(" ");
        assert!(told_of(&[(1, Parameter::EColi, germs)]).contains(boil));
        // What was noted with a test is told with it.
        let mut noted = with(&[(1, Parameter::EColi, germs)]).entries().to_vec();
        noted[0].note = "By the town's laboratory".to_owned();
        assert!(sentences(&told(&site, &Diary::of(noted))[0]).join(" ").contains(" By the town's laboratory "));
        let both = told_of(&[(1, Parameter::EColi, germs), (2, Parameter::Lead, lead)]);
        assert!(!both.contains(boil) && both.contains("with other water: boiling doesn't make this fit"), "{both}");
        // Also while a first clean sample is waiting for the second.
        let clean = TestResult::Absent;
        let waiting = [(1, Parameter::EColi, germs), (2, Parameter::Lead, lead), (3, Parameter::EColi, clean)];
        assert!(!told_of(&waiting).contains(boil));
        // Nor where other germs, or the dirt that they hide in, were found.
        for other in [(1, Parameter::Coliforms, germs), (1, Parameter::Turbidity, TestResult::Value(7.0))] {
            assert!(told_of(&[other]).contains(boil));
            assert!(!told_of(&[other, (2, Parameter::Lead, lead)]).contains(boil), "{other:?}");
        }
        for parameter in Parameter::ALL.into_iter().filter(|of| of.stays_when_boiled()) {
            let view = &told(&site, &with(&[(1, parameter, TestResult::Value(9e5))]))[0].tests[0];
            let over = view.class.contains("fails");
            assert_eq!(view.next.starts_with("Drink and cook with other water"), over, "{parameter:?}: {}", view.next);
        }
    }

    #[test]
    fn too_much_chlorine_asks_for_no_more() {
        let mut site = demo::site();
        let tap = site.system.uses[0].id;
        site.system.add_barrier(tap, BarrierKind::Chlorine);
        let next = |found| {
            told(&site, &with(&[(0, Parameter::FreeChlorine, TestResult::Value(found))]))[0].tests[0].next.clone()
        };
        assert!(next(12.0).contains("add no more") && !next(12.0).contains("dose again"));
        assert!(next(0.1).contains("dose again"));
    }

    #[test]
    fn what_grew_behind_the_barriers_leaves_them_in_doubt() {
        let mut site = demo::site();
        let tap = site.system.uses[0].id;
        site.system.add_barrier(tap, BarrierKind::Boiling);
        let word = |tests: &[_]| told(&site, &with(tests))[0].word;
        assert_eq!(word(&[]), "Enough against germs");
        assert_eq!(word(&[(1, Parameter::Coliforms, TestResult::Present)]), "In doubt");
        assert_eq!(word(&[(1, Parameter::EColi, TestResult::Below(10.0))]), "In doubt");
        assert_eq!(word(&[(1, Parameter::EColi, TestResult::Absent)]), "Enough against germs");
        // Metals are another matter, and said until one was tested for.
        let verdict = |tests: &[_]| told(&site, &with(tests))[0].verdict.clone();
        assert!(verdict(&[]).contains("nothing of metals"));
        assert!(!verdict(&[(1, Parameter::Lead, TestResult::Below(2.0))]).contains("metals"));
    }

    #[test]
    fn results_are_read_as_people_write_them() {
        for (text, of, expected) in [
            ("none", Parameter::EColi, Some(TestResult::Absent)),
            ("Present", Parameter::EColi, Some(TestResult::Present)),
            ("<1", Parameter::EColi, Some(TestResult::Below(1.0))),
            ("12 µg/L", Parameter::Lead, Some(TestResult::Value(12.0))),
            // A sheet in mg/L: 0.025 mg/L are 25 µg/L.
            ("0.025 mg/L", Parameter::Lead, Some(TestResult::Value(25.0))),
            ("<2 ppb", Parameter::Lead, Some(TestResult::Below(2.0))),
            ("500 ug/l", Parameter::FreeChlorine, Some(TestResult::Value(0.5))),
            ("7 mg/L", Parameter::Turbidity, None),
            ("under 0.5", Parameter::FreeChlorine, Some(TestResult::Below(0.5))),
            ("Ausente", Parameter::EColi, Some(TestResult::Absent)),
            ("ninguna", Parameter::EColi, Some(TestResult::Absent)),
            ("Sí", Parameter::EColi, Some(TestResult::Present)),
            ("menos de 0,5", Parameter::FreeChlorine, Some(TestResult::Below(0.5))),
            ("7.2", Parameter::Ph, Some(TestResult::Value(7.2))),
            ("-3", Parameter::Lead, None),
            ("blue", Parameter::Lead, None),
            ("", Parameter::Lead, None),
        ] {
            assert_eq!(read_result(text, of), expected, "{text}");
        }
    }
}

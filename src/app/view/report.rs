//! The report of a site: everything that the places say, in one document to print.

mod behind;
mod drunk;
mod sizes;

use behind::{cautions, granted, sources};
use drunk::drunk;

use super::checks::{self, CheckView};
use super::document::{Document, HALF_PAPER, PAPER, Section, WIDE_PAPER};
use super::water::{Seen, taps};
use super::{ahead, charts, climate, generated, habits, house, next, rain, sheet, sizing, upkeep, years};
use crate::app::case::Case;
use crate::app::model::{KeptSite, Model};
use crate::engine::checks::{Asked, Check, Verdict, of_all};
use crate::engine::question::Answer;
use crate::figures::table::Table;
use crate::quantity::{Kind, Units, shown};
use crate::site::details::Entered;
use crate::site::part::{Field, PartId};
use crate::site::rain::{MissingDays, Rain};
use crate::words::{self, report as say};

/// What every section may look at.
struct About<'a> {
    kept: &'a KeptSite,
    case: &'a Case,
    answer: Option<&'a Answer>,
    units: &'a Units,
    /// Width of figures on the screen.
    width: f64,
}

impl About<'_> {
    fn seen(&self) -> Seen<'_> {
        let About { kept, case, answer, units, .. } = self;
        Seen { site: &kept.site, diary: &kept.diary, answer: *answer, today: case.today, units }
    }
}

/// How much of the report is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extent {
    /// Everything that is known.
    Whole,
    /// A few pages: the answer, the house, the weeks ahead, what next, what is not enough, how the drinking water stands,
    /// cautions.
    Short,
}

/// The report of the open site as it is; none without a site.
pub fn report(model: &Model, case: &Case, extent: Extent) -> Option<Document> {
    let kept = case.site.as_ref()?;
    let answer = case.outcome.as_deref().and_then(|outcome| outcome.as_ref().ok());
    let about = About { kept, case, answer, units: &case.units, width: case.width.min(charts::COLUMN) };
    let mut lead = vec![say::made_on(case.today)];
    if !case.trial.is_none() {
        lead.push(say::WITHOUT_TRIAL.to_owned());
    }
    lead.push(words::cautions::NOT_DRINKING_WATER.to_owned());
    lead.push(words::cautions::WHO_DECIDES.to_owned());
    let read = kept.stands(case.today);
    let found = of_all(&Asked { site: &kept.site, rain: None, answer, read: read.as_ref(), today: case.today });
    let mut sections = vec![answered(&about, extent)];
    sections.extend(answer.map(|_| sizes::sizes(model, case, extent)));
    sections.push(drawn(&about));
    if extent == Extent::Short {
        let wanting: Vec<Check> =
            found.into_iter().filter(|check| !matches!(check.verdict, Verdict::Holds | Verdict::Tells)).collect();
        let mut checked = checked(&wanting, &about);
        checked.title = say::NOT_ENOUGH.text();
        if wanting.is_empty() {
            checked.blocks.clear();
            checked.text(say::ALL_ENOUGH);
        }
        sections.extend(from_today(&about));
        sections.extend([changes(model, &about), checked]);
        sections.extend(drunk(&about, extent));
        sections.push(cautions(kept));
        return Some(Document { title: say::title(&kept.site.name), lead, sections });
    }
    sections.extend([inputs(&about), rained(&about)]);
    sections.extend(answer.map(|answer| results(&about, answer)));
    sections.extend(from_today(&about));
    sections.push(changes(model, &about));
    sections.push(checked(&found, &about));
    sections.extend(drunk(&about, extent));
    sections.push(kept_up(&about));
    sections.extend([granted(&found, &about), sources(&found), cautions(kept)]);
    Some(Document { title: say::title(&kept.site.name), lead, sections })
}

fn answered(about: &About, extent: Extent) -> Section {
    let About { kept, case, units, .. } = about;
    let mut section = Section::new(say::ANSWER.text());
    let view = sizing::sizing(kept, case.outcome.as_deref(), &crate::site::trial::Trial::NONE, None, units);
    // Who reads no further reads that nobody is to drink.
    for tap in taps(&about.seen()).into_iter().filter(|tap| tap.urgent) {
        section.heading(tap.name.as_str());
        // What fails comes first.
        let to_do = tap.tests.into_iter().next().map(|test| test.next).unwrap_or_default();
        section.check(CheckView { class: tap.class, word: tap.word, sentence: tap.verdict, to_do, ..CheckView::BLANK });
    }
    section.blocks.push(super::document::Block::Answer(view.headline));
    section.list(view.reservations);
    if let Some(answer) = about.answer {
        let of = |width| charts::good_years(answer, width);
        if let (Some(on_screen), Some(on_paper)) = (of(about.width), of(PAPER)) {
            section.figure(say::GOOD_YEARS.text(), String::new(), on_screen, on_paper);
        }
        // The whole report has them among the results.
        if extent == Extent::Short {
            section.list(sizing::statistics(answer, units));
        }
    }
    if let (Extent::Short, Some(own)) = (extent, kept.rain.as_deref()) {
        let (kind, source, summary) = rain::told(own, units);
        section.values(vec![(kind.to_owned(), source)]);
        section.text(summary);
    }
    if let Some((text, false)) = generated::beside(kept, &kept.site.reckoning) {
        section.text(text);
    }
    section
}

fn drawn(about: &About) -> Section {
    let About { kept, case, units, .. } = about;
    let mut section = Section::new(say::DRAWING.text());
    let of = |width| house::house(kept, (case.outcome.as_deref(), case.lesson.as_deref()), units, case.today, width);
    let screen = of(about.width);
    section.list(screen.findings.iter().map(|finding| finding.text.clone()).collect());
    section.figure(say::HEIGHTS.text(), screen.water.unwrap_or_default(), screen.drawing, of(WIDE_PAPER).drawing);
    section
}

/// Labels with their values as text, those that say nothing left out, months in one line.
fn values_of(kept: &KeptSite, part: &crate::site::system::Part, units: &Units) -> Vec<(String, String)> {
    let mut values: Vec<(String, String)> = Vec::new();
    let mut months: Vec<String> = Vec::new();
    let nothing = shown::entered(0.0, Kind::Share, units);
    for field in sheet::fields(part.clone(), &kept.site.system, units) {
        let text = match field.control {
            sheet::Control::Number { text, .. } => text,
            sheet::Control::Table { text } => text.replace('\n', "; "),
            sheet::Control::Choice { options, chosen } => {
                options.into_iter().nth(chosen).map(|(_, words)| words).unwrap_or_default()
            }
        };
        match field.field {
            Field::ShareTo(_) | Field::CutOf(_) if text == nothing => {}
            Field::Month(_) | Field::Evaporation(_) => months.push(text),
            _ => values.push((field.label, text)),
        }
    }
    if !months.is_empty() {
        values.push((say::BY_MONTH.to_owned(), months.join(said!(", ", "; "))));
    }
    values.extend(entered(kept, Some(part.id()), units));
    values
}

/// The details that somebody entered.
fn entered(kept: &KeptSite, wanted: Option<PartId>, units: &Units) -> Vec<(String, String)> {
    let mut values = Vec::new();
    for Entered { of, detail, value } in &kept.site.system.details.0 {
        if *of == wanted {
            let options = words::checks::details::options(*detail);
            let text = match options.get(crate::engine::checks::chosen(*value)) {
                Some(option) => (*option).to_owned(),
                None => shown::entered(*value, detail.row().kind, units),
            };
            values.push((words::checks::details::label(*detail).to_owned(), text));
        }
    }
    values
}

fn inputs(about: &About) -> Section {
    let About { kept, units, .. } = about;
    let system = &kept.site.system;
    let mut section = Section::new(say::INPUTS.text());
    for part in system.parts() {
        section.heading(format!("{} ({})", part.name(), words::parts::one(part.kind())));
        section.values(values_of(kept, &part, units));
    }
    let mut whole = vec![
        (say::START.to_owned(), words::percent(kept.site.reckoning.start.get())),
        (words::size::WANTED.to_owned(), words::size::wanted(kept.site.reckoning.wanted)),
    ];
    let theta = kept.site.reckoning.inflow_first.get();
    let rule = words::sizing::RULES.iter().find(|(value, _)| (value - theta).abs() < 1e-9);
    whole.push((
        words::sizing::RULE.to_owned(),
        rule.map_or_else(|| shown::significant(theta, 2), |(_, rule)| (*rule).to_owned()),
    ));
    if system.climate.is_some() {
        whole.push((words::garden::CLIMATE.to_owned(), climate::told(kept, units)));
    }
    if let Some(own) = &system.habits {
        whole.push((words::habits::TITLE.to_owned(), habits::total(own, system, units)));
    }
    whole.extend(entered(kept, None, units));
    section.heading(say::WHOLE_SITE);
    section.values(whole);
    section
}

fn rained(about: &About) -> Section {
    let About { kept, units, .. } = about;
    let mut section = Section::new(say::RAIN.text());
    let (Some(own), Some(view)) =
        (kept.rain.as_deref(), rain::rain(kept, &kept.site.reckoning, None, units, about.width).kept)
    else {
        section.text(words::rain::NONE);
        return section;
    };
    section.values(vec![(view.kind.to_owned(), view.source)]);
    section.text(view.summary);
    if let Some(caution) = view.caution {
        section.caution(caution);
    }
    let reckoning = &kept.site.reckoning;
    match own {
        Rain::Record(record) => {
            if view.doubts.is_empty() {
                section.text(say::NO_DOUBT);
            } else {
                section.heading(say::DOUBTS);
                section.list(view.doubts);
            }
            if record.depths_mm.iter().any(Option::is_none) {
                let way: MissingDays = reckoning.missing_days;
                section.values(vec![(words::rain::MISSING_DAYS.to_owned(), words::rain::missing_days(way))]);
            }
            section.chart(|width| charts::monthly_rain(record, units, width), about.width, HALF_PAPER);
            section.chart(|width| charts::yearly_rain(record, units, width), about.width, HALF_PAPER);
        }
        Rain::Normals(means) => {
            let of = |width| charts::normals(&means.totals_mm, means.rain_days.as_ref(), units, width);
            section.chart(of, about.width, HALF_PAPER);
            let of_month = |mm| shown::figure_number(mm, Kind::Depth, units);
            section.values(vec![(
                [say::BY_MONTH.text(), ", ", units.of(Kind::Depth).sign()].concat(),
                means.totals_mm.map(of_month).join(said!(", ", "; ")),
            )]);
        }
    }
    if !view.dry_spells.is_empty() {
        section.heading(say::DRY_SPELLS);
        section.values(view.dry_spells);
    }
    section.text(view.generated.which.unwrap_or_default());
    if reckoning.rain_factors.iter().any(|factor| (factor.get() - 1.0).abs() > 1e-9) {
        let factors = reckoning.rain_factors.map(|factor| words::percent(factor.get()));
        section.values(vec![(say::RAIN_FACTORS.to_owned(), factors.join(said!(", ", "; ")))]);
    }
    section
}

fn results(about: &About, answer: &Answer) -> Section {
    let About { kept, units, .. } = about;
    let mut section = Section::new(say::RESULTS.text());
    section.list(sizing::statistics(answer, units));
    section.heading(say::YEARS);
    section.table(say::YEARS, years::years(answer, units));
    section.chart(|width| charts::contents(answer, units, width), about.width, PAPER);
    if answer.has_whole_year() {
        section.chart(|width| charts::where_it_went(answer, units, width), about.width, HALF_PAPER);
    }
    section.chart(|width| charts::through_the_year(answer, units, width), about.width, HALF_PAPER);
    let parts = sizing::what_parts_did(answer, &kept.site.system, units);
    if !parts.is_empty() {
        section.heading(say::PARTS_DID);
        section.list(parts);
    }
    section
}

fn from_today(about: &About) -> Option<Section> {
    let About { kept, case, units, .. } = about;
    let view = |width| ahead::ahead(kept, &case.ahead, case.lesson.as_deref(), units, width);
    let seen = view(about.width);
    let found = seen.found?;
    let mut section = Section::new(say::AHEAD.text());
    section.text(seen.headline);
    section.list(seen.alarms);
    section.list(found.range);
    let on_paper = view(PAPER).found?.fan;
    section.figure(found.fan.title, found.fan.caption, found.fan.drawing, on_paper.drawing);
    section.text(found.safe);
    section.list(found.helps);
    section.list(found.basis);
    if let Some((odd, told)) = seen.learnt {
        section.heading(words::learning::TITLE);
        section.list(odd);
        section.list(told);
    }
    Some(section)
}

fn changes(model: &Model, about: &About) -> Section {
    let mut section = Section::new(say::NEXT.text());
    match next::next(model) {
        Some(view) if view.judged => {
            section.text(view.remark.unwrap_or_default());
            let mut lines = Vec::new();
            for change in view.best {
                lines.push(format!("{}: {} {}", change.title, change.brings, change.caution.unwrap_or_default()));
            }
            section.list(lines);
            if !view.steps.is_empty() {
                section.heading(words::next::ONE_AFTER_ANOTHER);
                section.text(words::next::SEQUENCE);
                section.list(view.steps.into_iter().map(|(title, brings)| format!("{title}: {brings}")).collect());
            }
            section.heading(words::next::PRICES_TITLE);
            section.values(view.prices.into_iter().map(|(_, what, price)| (what, price)).collect());
        }
        Some(_) if about.answer.is_some() => section.text(say::NOT_JUDGED),
        _ => section.text(say::NO_RAIN),
    }
    if let Some(table) = next::options(model).and_then(|view| view.table) {
        section.heading(words::next::OPTIONS);
        section.table(words::next::OPTIONS, table);
    }
    section
}

fn checked(found: &[Check], about: &About) -> Section {
    let system = &about.kept.site.system;
    let mut section = Section::new(say::CHECKS.text());
    if found.is_empty() {
        section.text(say::NO_CHECKS);
    }
    let mut part = None;
    let mut told = Vec::new();
    for check in found {
        if part != Some(check.part) {
            part = Some(check.part);
            section.heading(system.name_of(check.part));
        }
        let mut view = checks::view(check, system, about.units);
        // Each caution is told once, where it is first asked for.
        if told.contains(&view.caution) {
            view.caution = "";
        }
        told.push(view.caution);
        // A dose or a thing to know has its figures; of what is judged the sentence has them.
        let figures = if check.verdict == Verdict::Tells { view.figures } else { Vec::new() };
        section.check(CheckView { figures, behind: Vec::new(), ..view });
    }
    section
}

fn kept_up(about: &About) -> Section {
    let mut section = Section::new(say::UPKEEP.text());
    let view = upkeep::upkeep(about.kept, about.case.lesson.as_deref(), about.units, about.case.today);
    section.text(view.empty.unwrap_or_default());
    let mut rows = Vec::new();
    for (title, jobs) in view.groups.into_iter().chain([("", view.not_written)]) {
        rows.extend(jobs.into_iter().map(|job| {
            let standing = if title.is_empty() { job.standing } else { [title, ": ", &job.standing].concat() };
            vec![job.name, say::interval(&job.interval), standing]
        }));
    }
    section.table(say::UPKEEP, Table { columns: say::UPKEEP_COLUMNS.map(String::from).into(), rows });
    section.list(view.before_storm);
    section.text(words::upkeep::USUAL);
    section.caution(words::upkeep::CAUTION);
    section
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::panic)]
    use super::*;
    use crate::app::draft::Draft;
    use crate::app::event::Event;
    use crate::app::update::update;
    use crate::app::view::document::Block;
    use crate::engine::treatment::chain::has_chain;
    use crate::records::cupboard::{Index, Opened};
    use crate::site::diary::{Parameter, TestResult, Told};

    fn opened() -> Model {
        let mut model = Model::default();
        let nothing = Opened { index: Index::default(), ..Opened::default() };
        update(&mut model, Event::Started(chrono::NaiveDate::from_ymd_opt(2026, 8, 30).unwrap(), Ok(nothing)));
        update(&mut model, Event::DemoWanted);
        model
    }

    fn written(document: &Document) -> String {
        let mut text = document.lead.join("\n");
        for section in &document.sections {
            text.push_str(section.title);
            for block in &section.blocks {
                text.push('\n');
                text.push_str(&match block {
                    Block::Heading(said) | Block::Text(said) | Block::Answer(said) | Block::Caution(said) => {
                        said.clone()
                    }
                    Block::List(lines) => lines.join("\n"),
                    Block::Values(values) => {
                        values.iter().map(|(label, value)| format!("{label}: {value}\n")).collect()
                    }
                    Block::Figure(figure) => figure.title.to_owned(),
                    Block::Table(name, table) => format!("{name}: {} rows", table.rows.len()),
                    Block::Check(view) => format!("{} {} {}", view.title, view.word, view.sentence),
                });
            }
        }
        text
    }

    #[test]
    fn it_holds_everything_that_is_known_of_the_site() {
        let mut model = opened();
        update(&mut model, Event::NoticeDismissed);
        let case = Case::of(&model, 358.0, None);
        let document = report(&model, &case, Extent::Whole).unwrap();
        let titles: Vec<&str> = document.sections.iter().map(|section| section.title).collect();
        for title in [
            say::ANSWER,
            say::SIZES,
            say::DRAWING,
            say::INPUTS,
            say::RAIN,
            say::RESULTS,
            say::NEXT,
            say::CHECKS,
            say::WATER,
            say::UPKEEP,
            say::ASSUMPTIONS,
            say::SOURCES,
            say::CAUTIONS,
        ] {
            assert!(titles.contains(&title.text()), "{title} is missing from {titles:?}");
        }
        let text = written(&document);
        let kept = model.site().unwrap();
        for part in kept.site.system.parts() {
            assert!(text.contains(part.name()), "{}", part.name());
            for (label, value) in values_of(kept, &part, &model.units) {
                assert!(text.contains(&format!("{label}: {value}")), "{label}");
            }
        }
        for wanted in [
            "Runoff coefficient",
            "30\u{a0}August 2026",
            "Wilson",
            "Jenkins",
            "Where the water went",
            "Content, day by day",
            &words::cautions::WHO_DECIDES,
            &words::rain::DAILY_RECORD,
            "Year by year: 1",
        ] {
            assert!(text.contains(wanted), "{wanted}");
        }
        let checks = document.sections.iter().flat_map(|section| &section.blocks);
        assert!(checks.filter(|block| matches!(block, Block::Check(_))).count() > 20);
    }

    #[test]
    fn in_short_it_says_what_is_wrong_and_what_to_do() {
        let model = opened();
        let case = Case::of(&model, 358.0, None);
        let (short, whole) = (report(&model, &case, Extent::Short), report(&model, &case, Extent::Whole));
        let (short, whole) = (short.unwrap(), whole.unwrap());
        assert_eq!((&short.title, &short.lead), (&whole.title, &whole.lead));
        assert!(written(&short).len() * 3 < written(&whole).len(), "it is short");
        let checks = |document: &Document| -> Vec<Block> {
            let sections = document.sections.iter().filter(|section| section.title != say::WATER.text());
            let blocks = sections.flat_map(|section| section.blocks.clone());
            blocks.filter(|block| matches!(block, Block::Check(_))).collect()
        };
        let (told, all) = (checks(&short), checks(&whole));
        assert!(!told.is_empty() && told.len() < all.len());
        let of = found_wanting(&model, &case);
        assert_eq!(told.len(), of, "what is not enough, all of it, and nothing else");
        // How each tap stands that is drunk from, in a sentence.
        let drunk = short.sections.iter().find(|section| section.title == say::WATER.text()).unwrap();
        let of_taps = drunk.blocks.iter().filter(|block| matches!(block, Block::Check(_))).count();
        let uses = &model.site().unwrap().site.system.uses;
        assert_eq!(of_taps, uses.iter().filter(|using| has_chain(using.class)).count());
        let cautions = |document: &Document| document.sections.last().cloned();
        assert_eq!(cautions(&short), cautions(&whole));
    }

    fn found_wanting(model: &Model, case: &Case) -> usize {
        let kept = model.site().unwrap();
        let answer = case.outcome.as_deref().and_then(|outcome| outcome.as_ref().ok());
        let found = of_all(&Asked { site: &kept.site, rain: None, answer, read: None, today: case.today });
        found.iter().filter(|check| matches!(check.verdict, Verdict::Fails | Verdict::Lacks | Verdict::Outside)).count()
    }

    #[test]
    fn a_site_without_rain_has_a_report_too() {
        let mut model = opened();
        update(&mut model, Event::RainRemoved);
        let case = Case::of(&model, 358.0, None);
        let text = written(&report(&model, &case, Extent::Whole).unwrap());
        assert!(text.contains("No rain yet") && text.contains(&*words::rain::NONE));
        assert_eq!(report(&Model::default(), &Case::of(&Model::default(), 358.0, None), Extent::Whole), None);
    }

    #[test]
    fn what_is_next_is_judged_for_it() {
        let mut model = opened();
        update(&mut model, Event::PlaceOpened(crate::app::model::Place::Report));
        let mut rounds = 0;
        while next::next(&model).is_none_or(|view| !view.judged) && rounds < 5000 {
            update(&mut model, Event::Next(crate::app::next::NextEvent::GoOn));
            rounds += 1;
        }
        let case = Case::of(&model, 358.0, None);
        let text = written(&report(&model, &case, Extent::Whole).unwrap());
        assert!(!text.contains(&*say::NOT_JUDGED) && text.contains(&*words::next::PRICES_TITLE));
    }

    #[test]
    fn in_spanish_nothing_of_it_stays_in_english() {
        use crate::language::{Language, speak};
        speak(Language::Spanish);
        let model = opened();
        let case = Case::of(&model, 358.0, None);
        let mut document = report(&model, &case, Extent::Whole).unwrap();
        // Publications keep their titles.
        document.sections.retain(|section| section.title != say::SOURCES.text());
        let text = written(&document);
        for word in text.split(|letter: char| !letter.is_alphabetic()) {
            let english =
                ["the", "and", "is", "are", "with", "from", "to", "not", "year", "years", "day", "days", "tank"];
            assert!(!english.contains(&word.to_lowercase().as_str()), "{word} in {text}");
        }
        assert!(text.contains("30\u{a0}de agosto de 2026") && text.contains("Adónde fue el agua"));
        speak(Language::English);
    }
    #[test]
    fn what_must_not_be_drunk_stands_first_in_either_report_with_what_to_do() {
        let mut model = opened();
        let tap = model.site().unwrap().site.system.uses[0].clone();
        let (at, parameter) = (Some(tap.id), Parameter::EColi);
        let told = Told::Test { at, parameter, found: TestResult::Present };
        let draft = Draft { id: None, date: model.today, told, note: String::new() };
        update(&mut model, Event::EntryWritten(draft, 1_795_000_000_000));
        let case = Case::of(&model, 358.0, None);
        for extent in [Extent::Short, Extent::Whole] {
            let document = report(&model, &case, extent).unwrap();
            let [Block::Heading(name), Block::Check(first), ..] = document.sections[0].blocks.as_slice() else {
                panic!("{:?}", document.sections[0].blocks)
            };
            assert!(*name == tap.name && first.class == "check fails", "{name} {first:?}");
            assert!(first.to_do.contains("Boil every glass"), "{first:?}");
            // And again among the tests to which the verdict points.
            let blocks = document.sections.iter().skip(1).flat_map(|section| &section.blocks);
            let told = blocks.filter(|block| matches!(block, Block::Check(view) if view.to_do == first.to_do)).count();
            assert_eq!(told, 1, "{extent:?}");
        }
        let plain = opened();
        let case = Case::of(&plain, 358.0, None);
        let document = report(&plain, &case, Extent::Short).unwrap();
        assert!(matches!(document.sections[0].blocks[0], Block::Answer(_)));
    }
}

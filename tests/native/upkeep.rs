//! Upkeep as a person meets it: done in a tap, how often as they please, marked in the drawing, in their calendar.

use eavewater::app::draft::Draft;
use eavewater::app::effect::Effect;
use eavewater::app::event::Event;
use eavewater::app::model::{Model, Place};
use eavewater::app::next::NextEvent;
use eavewater::app::sketch::Sketch;
use eavewater::app::update::update;
use eavewater::app::view::upkeep::CareView;
use eavewater::app::view::{ahead, frame, house, upkeep};
use eavewater::engine::learning::calls::{calls, last_worked};
use eavewater::engine::learning::lesson::Lesson;
use eavewater::engine::learning::watch::Alarm;
use eavewater::figures::drawing::Mark;
use eavewater::quantity::Units;
use eavewater::records::cupboard::{Index, Opened, SiteFile, SiteId};
use eavewater::site::diary::{Diary, Entry, EntryId, Told};
use eavewater::site::trial::Trial;
use eavewater::site::upkeep::Job;
use eavewater::site::work::Task;
use eavewater::words;
use ical::property::Property;

use crate::diary::{TODAY, with_demo};
use crate::leaks::{self, Tells, Truth};
use crate::learning::Chance;

const NOW: u64 = 1_795_604_299_000;

fn gutter(model: &Model) -> Job {
    Job { task: Task::Gutter, part: model.site().unwrap().site.system.feeds[0].id }
}

fn done(model: &mut Model, job: Job, days_ago: u64) {
    let told = Told::Work { on: Some(job.part), task: job.task };
    let date = TODAY - chrono::Days::new(days_ago);
    update(model, Event::EntryWritten(Draft { id: None, date, told, note: String::new() }, NOW));
}

fn group_of(model: &Model, job: Job) -> &'static str {
    let view = upkeep::upkeep(model.site().unwrap(), None, &Units::default(), TODAY);
    let listed = view.groups.iter().find(|(_, jobs)| jobs.iter().any(|view| view.job == job));
    listed.map_or("Not written down yet", |(title, _)| title)
}

#[test]
fn a_job_is_done_with_one_event_and_comes_due_again_on_its_part() {
    let mut model = with_demo();
    // The feeds of the demo house are marked for other things already.
    let job = Job { task: Task::Roof, part: model.site().unwrap().site.system.sections[0].id };
    assert_eq!(group_of(&model, job), "Not written down yet");
    done(&mut model, job, 200);
    assert_eq!(group_of(&model, job), "Due");
    let view = house::house(model.site().unwrap(), (None, None), &Units::default(), TODAY, 358.0);
    assert_eq!(view.due.as_deref(), Some("1 job is due."));
    let plain = house::house(with_demo().site().unwrap(), (None, None), &Units::default(), TODAY, 358.0);
    let marks = |view: &house::HouseView| view.drawing.marks.iter().map(marks_in).sum::<usize>();
    assert!(marks(&view) > marks(&plain), "what is overdue is marked in the drawing");
    // Its sheet has its jobs and its past, and no other part's.
    let on_sheet = |id| upkeep::of_part(model.site().unwrap(), id, None, &Units::default(), TODAY);
    let CareView { title, jobs, past } = on_sheet(job.part);
    assert_eq!(title, "Upkeep: 1 job is due.");
    assert!(jobs.iter().all(|view| view.job.part == job.part) && jobs.iter().any(|view| view.job == job));
    let told = Told::Work { on: Some(job.part), task: job.task };
    let told = words::diary::told(&told, &model.site().unwrap().site.system, &Units::default());
    assert_eq!(past, [format!("{}: {told}", words::date(TODAY - chrono::Days::new(200)))]);
    assert_eq!(on_sheet(gutter(&model).part).past, Vec::<String>::new());
    done(&mut model, job, 0);
    assert_eq!(group_of(&model, job), "In good time");
    update(&mut model, Event::UndoWanted);
    assert_eq!(group_of(&model, job), "Due");
}

#[test]
fn jobs_of_which_nothing_is_written_are_said_to_be_done_together_and_that_is_undone_together() {
    let mut model = with_demo();
    let view = |model: &Model| upkeep::upkeep(model.site().unwrap(), None, &Units::default(), TODAY);
    let jobs: Vec<Job> = view(&model).not_written.iter().map(|view| view.job).collect();
    assert!(jobs.len() > 10 && view(&model).groups.is_empty(), "{}", jobs.len());
    let effects = update(&mut model, Event::JobsWritten(jobs.clone(), TODAY - chrono::Days::new(91), NOW));
    let saved = effects.iter().filter(|effect| matches!(effect, Effect::SaveLine(..))).count();
    assert_eq!((saved, model.site().unwrap().diary.entries().len()), (jobs.len(), jobs.len()));
    let after = view(&model);
    assert!(after.not_written.is_empty());
    // Usual intervals: every three months for screens, every six for gutters.
    assert_eq!(group_of(&model, gutter(&model)), "In good time");
    let screen = Job { task: Task::Screen, ..gutter(&model) };
    assert_eq!(group_of(&model, screen), "Due");
    update(&mut model, Event::UndoWanted);
    assert!(model.site().unwrap().diary.is_empty() && view(&model).not_written.len() == jobs.len());
}

fn marks_in(mark: &Mark) -> usize {
    match mark {
        Mark::Part(target) => 1 + target.marks.len(),
        _ => 1,
    }
}

#[test]
fn how_often_is_the_households_own_and_a_text_that_is_no_number_changes_nothing() {
    let mut model = with_demo();
    let job = gutter(&model);
    done(&mut model, job, 40);
    assert_eq!(group_of(&model, job), "In good time");
    let texts = |days: &str| Some([days.to_owned(), String::new(), String::new()]);
    let effects = update(&mut model, Event::IntervalEntered(job, texts("30")));
    assert!(matches!(effects.as_slice(), [Effect::SaveSite(..)]));
    assert_eq!(group_of(&model, job), "Due");
    for wrong in ["often", "0", "99999"] {
        assert_eq!(update(&mut model, Event::IntervalEntered(job, texts(wrong))), []);
        assert!(frame::notice(&model).unwrap().warning, "{wrong}");
        assert_eq!(group_of(&model, job), "Due");
    }
    update(&mut model, Event::IntervalEntered(job, None));
    assert_eq!(group_of(&model, job), "In good time");
}

/// The calendar as the `ical` crate 0.11 reads it.
#[test]
fn the_calendar_is_read_by_another_program() {
    let mut model = with_demo();
    let job = gutter(&model);
    done(&mut model, job, 100);
    let roof = Job { task: Task::Roof, part: model.site().unwrap().site.system.sections[0].id };
    done(&mut model, roof, 400);
    let effects = update(&mut model, Event::CalendarWanted(NOW));
    let [Effect::Download { name, media_type, text }] = effects.as_slice() else { panic!("{effects:?}") };
    assert_eq!((name.as_str(), *media_type), ("upkeep-2026-11-25.ics", "text/calendar"));
    let calendar = ical::IcalParser::new(text.as_bytes()).next().unwrap().unwrap();
    assert_eq!(calendar.events.len(), 2, "jobs that were never written down don't come in");
    let of = |properties: &[Property], name: &str| {
        properties.iter().find(|property| property.name == name).and_then(|property| property.value.clone()).unwrap()
    };
    let starts: Vec<String> = calendar.events.iter().map(|event| of(&event.properties, "DTSTART")).collect();
    // The roof is overdue: today. The gutter 182 days after 17 August 2026: 15 February 2027.
    assert_eq!(starts, ["20261125", "20270215"]);
    assert_eq!(of(&calendar.events[1].properties, "RRULE"), "FREQ=DAILY;INTERVAL=182");
    assert_eq!(of(&calendar.events[1].properties, "DTSTAMP"), "20261125T105819Z");
    // What was true on the day of the file says so.
    let told = of(&calendar.events[1].properties, "DESCRIPTION");
    assert!(told.starts_with("On 25\u{a0}November 2026: last on "), "{told}");
    for event in &calendar.events {
        assert!(!of(&event.properties, "UID").is_empty() && !of(&event.properties, "SUMMARY").is_empty());
    }
}

#[test]
fn a_calendar_knows_its_events_again_and_tells_those_of_two_houses_apart() {
    let uids = |model: &mut Model| -> Vec<String> {
        let effects = update(model, Event::CalendarWanted(NOW));
        let [Effect::Download { text, .. }] = effects.as_slice() else { panic!("{effects:?}") };
        text.lines().filter(|line| line.starts_with("UID:")).map(str::to_owned).collect()
    };
    let begun_at = |begun| {
        let mut model = with_demo();
        let sketch = Sketch { begun, ..Sketch::first("My house".to_owned(), &model) };
        update(&mut model, Event::SketchDrawn(sketch));
        let job = Job { task: Task::Roof, part: model.site().unwrap().site.system.sections[0].id };
        done(&mut model, job, 400);
        model
    };
    let (mut mine, mut other) = (begun_at(Some(1_000)), begun_at(Some(2_000)));
    let before = uids(&mut mine);
    assert!(before.len() == 1 && before != uids(&mut other));
    update(&mut mine, Event::SiteNamed("Mill".to_owned()));
    assert_eq!(uids(&mut mine), before, "under another name too");
    assert_eq!(uids(&mut begun_at(None)), uids(&mut begun_at(None)));
}

/// The house of made diaries with one of them, everything worked out that its readings say.
fn with_readings(days: usize, tells: &Tells, truth: impl Fn(usize) -> Truth) -> Model {
    let (diary, today) = leaks::made_by_day(&mut Chance(41), days, truth, tells);
    let file = SiteFile { site: leaks::house(), rain: None, diary, trial: Trial::NONE };
    let index = Index { sites: vec![SiteId(1)], open: Some(SiteId(1)), ..Index::default() };
    let opened = Opened { sites: vec![(SiteId(1), file)], index, ..Opened::default() };
    let mut model = Model::default();
    update(&mut model, Event::Started(today, Ok(opened)));
    work(&mut model);
    model
}

fn work(model: &mut Model) {
    update(model, Event::PlaceOpened(Place::Upkeep));
    for _ in 0..10_000 {
        if !model.ahead.is_going() {
            return;
        }
        update(model, Event::Next(NextEvent::GoOn));
    }
    panic!("never ends");
}

/// What is said of each job of a kind, with its group.
fn said_of(model: &Model, tasks: &[Task]) -> Vec<(&'static str, String)> {
    let lesson = model.ahead.lesson.as_deref();
    let view = upkeep::upkeep(model.site().unwrap(), lesson, &Units::default(), model.today);
    let mut said = Vec::new();
    for (title, jobs) in view.groups.into_iter().chain([("Not written down yet", view.not_written)]) {
        let jobs = jobs.into_iter().filter(|view| tasks.contains(&view.job.task));
        said.extend(jobs.map(|view| (title, view.standing)));
    }
    said
}

#[test]
fn falling_capture_calls_for_gutters_and_screens_until_they_are_cleaned() {
    const CAUGHT_BY: [Task; 2] = [Task::Gutter, Task::Screen];
    let truth = |capture| Truth { capture, uses: 0.6, leak_l: 0.0 };
    let same = with_readings(560, &Tells::Nothing, |_| truth(1.0));
    assert!(said_of(&same, &CAUGHT_BY).iter().all(|(group, _)| *group == "Not written down yet"));
    let mut model = with_readings(560, &Tells::Nothing, |day| truth(if day < 440 { 1.0 } else { 0.4 }));
    for (group, said) in said_of(&model, &CAUGHT_BY) {
        assert_eq!(group, "Due");
        assert!(said.ends_with("the readings call for it: less of the rain comes than before"), "{said}");
    }
    assert!(said_of(&model, &[Task::Joints]).iter().all(|(group, _)| *group != "Due"));
    let lesson = model.ahead.lesson.clone();
    let view = house::house(model.site().unwrap(), (None, lesson.as_deref()), &Units::default(), model.today, 358.0);
    assert_eq!(view.due.as_deref(), Some("2 jobs are due."));
    // Told on the house and at the top of the weeks ahead, whatever can be said of these.
    assert_eq!(view.warnings, ["The readings warn: less of the rain comes than before."]);
    let seen = (model.ahead.wishes, model.ahead.sight.clone());
    let weeks = ahead::ahead(model.site().unwrap(), &seen, lesson.as_deref(), &Units::default(), 358.0);
    let [alarm] = weeks.alarms.try_into().unwrap();
    assert!(alarm.contains("less of the rain comes than before"), "{alarm}");
    // The ranges are of the days since, and nobody vouches for them.
    let learnt = lesson.as_deref().unwrap();
    let said = words::learning::sentences(learnt, &Units::default()).join("\n");
    assert!(
        learnt.since.is_some() && said.contains("when something changed") && !said.contains("nine times"),
        "{said}"
    );
    // Done: answered, though the readings have not changed yet.
    let part = model.site().unwrap().site.system.feeds[0].id;
    for (task, moment) in CAUGHT_BY.into_iter().zip([NOW, NOW + 1]) {
        let told = Told::Work { on: Some(part), task };
        let draft = Draft { id: None, date: model.today, told, note: String::new() };
        update(&mut model, Event::EntryWritten(draft, moment));
    }
    work(&mut model);
    assert!(said_of(&model, &CAUGHT_BY).iter().all(|(group, _)| *group == "In good time"));
}

#[test]
fn a_leak_and_a_rise_in_use_call_for_a_look_at_the_joints() {
    let truth = |uses, leak_l| Truth { capture: 1.0, uses, leak_l };
    for (title, model) in [
        ("water goes that nobody draws", with_readings(200, &Tells::Meter, |_| truth(0.6, 70.0))),
        ("more water goes than before", {
            with_readings(560, &Tells::Nothing, |day| truth(if day < 440 { 0.5 } else { 1.0 }, 0.0))
        }),
    ] {
        let [(group, said)] = said_of(&model, &[Task::Joints]).try_into().unwrap();
        assert!(group == "Due" && said.contains(title), "{title}: {group}, {said}");
    }
    let sound = with_readings(200, &Tells::Meter, |_| truth(0.6, 0.0));
    assert!(said_of(&sound, &[Task::Joints]).iter().all(|(group, _)| *group != "Due"));
}

#[test]
fn a_newest_level_far_too_low_is_asked_for_again_and_may_be_a_leak() {
    // The last of weekly levels, after a week in which 900 L a day went.
    let model = with_readings(197, &Tells::Nothing, |day| Truth {
        capture: 1.0,
        uses: 0.6,
        leak_l: if day < 190 { 0.0 } else { 900.0 },
    });
    let lesson = model.ahead.lesson.as_deref().unwrap();
    assert_eq!(lesson.newest_low, Some(lesson.last));
    let odd = words::learning::odd(lesson).join("\n");
    assert!(odd.contains("mistyped, or water is going: read it again"), "{odd}");
}

#[test]
fn nobody_is_sent_to_a_gutter_on_a_suspicion() {
    let system = leaks::house().system;
    let tasks = |alarm| {
        let lesson = Lesson { alarms: Some(vec![alarm]), ..Lesson::default() };
        calls(&lesson, &system).into_iter().map(|call| call.job.task).collect::<Vec<_>>()
    };
    let either = tasks(Alarm::Either { missing: 0.5, more: 0.6, since: 0 });
    assert!(either.contains(&Task::Joints) && either.contains(&Task::Screen) && !either.contains(&Task::Gutter));
    assert_eq!(tasks(Alarm::UseRisen { by: 0.8, since: 0 }), [Task::Joints]);
    assert!(tasks(Alarm::CaptureFallen { by: 0.9, since: 0 }).contains(&Task::Gutter));
}

#[test]
fn work_that_may_have_mended_what_is_shown_is_told_with_it() {
    let fallen = Alarm::CaptureFallen { by: 0.9, since: 10 };
    let lesson = Lesson { alarms: Some(vec![fallen]), ..Lesson::default() };
    let day = |days| lesson.first + chrono::Days::new(days);
    let work = |id, days, task| {
        let told = Told::Work { on: None, task };
        Entry { id: EntryId(id), edited: id, date: day(days), told, note: String::new() }
    };
    let worked = |entries| last_worked(&lesson, &Diary::of(entries));
    assert_eq!(worked(vec![work(1, 9, Task::Screen)]), None, "before it showed");
    assert_eq!(worked(vec![work(1, 12, Task::Joints)]), None, "joints catch no rain");
    assert_eq!(worked(vec![work(1, 12, Task::Screen), work(2, 15, Task::Gutter)]), Some(day(15)));
}

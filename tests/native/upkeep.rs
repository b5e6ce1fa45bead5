//! Upkeep as a person meets it: done in a tap, how often as they please, marked in the drawing, in their calendar.

use eavewater::app::draft::Draft;
use eavewater::app::effect::Effect;
use eavewater::app::event::Event;
use eavewater::app::model::Model;
use eavewater::app::update::update;
use eavewater::app::view::{frame, house, upkeep};
use eavewater::figures::drawing::Mark;
use eavewater::quantity::Units;
use eavewater::site::diary::Told;
use eavewater::site::upkeep::Job;
use eavewater::site::work::Task;
use ical::property::Property;

use crate::diary::{TODAY, with_demo};

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
    let view = upkeep::upkeep(model.site().unwrap(), &Units::default(), TODAY);
    view.groups.iter().find(|(_, jobs)| jobs.iter().any(|view| view.job == job)).unwrap().0
}

#[test]
fn a_job_is_done_with_one_event_and_comes_due_again_on_its_part() {
    let mut model = with_demo();
    // The feeds of the demo house are marked for other things already.
    let job = Job { task: Task::Roof, part: model.site().unwrap().site.system.sections[0].id };
    assert_eq!(group_of(&model, job), "Not written down yet");
    done(&mut model, job, 200);
    assert_eq!(group_of(&model, job), "Due");
    let view = house::house(model.site().unwrap(), None, &Units::default(), TODAY, 358.0);
    assert_eq!(view.due.as_deref(), Some("1 job is due."));
    let plain = house::house(with_demo().site().unwrap(), None, &Units::default(), TODAY, 358.0);
    let marks = |view: &house::HouseView| view.drawing.marks.iter().map(marks_in).sum::<usize>();
    assert!(marks(&view) > marks(&plain), "what is overdue is marked in the drawing");
    done(&mut model, job, 0);
    assert_eq!(group_of(&model, job), "In good time");
    update(&mut model, Event::UndoWanted);
    assert_eq!(group_of(&model, job), "Due");
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
    for event in &calendar.events {
        assert!(!of(&event.properties, "UID").is_empty() && !of(&event.properties, "SUMMARY").is_empty());
    }
}

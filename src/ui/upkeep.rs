//! Upkeep.

use super::follow::{Held, derived};
use chrono::Days;
use leptos::prelude::*;

use super::element::{Element, element, is_open, list, live, nothing, worded};
use super::field::typed_field;
use super::{Desk, water};
use crate::app::draft::Draft;
use crate::app::event::Event;
use crate::app::view::upkeep::{self, CareView, JobView, UpkeepView};
use crate::site::diary::Told;
use crate::site::part::PartId;
use crate::site::upkeep::Job;
use crate::words::upkeep as say;

/// Upkeep.
pub(crate) fn upkeep(desk: Desk) -> AnyView {
    let shown = derived(move || {
        desk.case.with(|case| {
            case.site.as_ref().map(|site| upkeep::upkeep(site, case.lesson.as_deref(), &case.units, case.today))
        })
    });
    // Stays open while its jobs are done one by one.
    let open = Held::new(false);
    let save = element("BUTTON")
        .attribute("type", "button")
        .on("click", move |_| desk.send.run(Event::CalendarWanted((desk.moment)())))
        .text(say::CALENDAR);
    let work = element("DIV")
        .child(live(move || shown.get().map_or_else(nothing, |view| jobs(view, open, desk))))
        .child(worded("P", say::CAUTION).class("small caution"))
        .child(element("DIV").class("row").child(save))
        .child(worded("P", say::USUAL).class("small"));
    element("SECTION")
        .class("upkeep")
        .child(worded("H1", say::TITLE))
        .child(element("DIV").class("columns even").child(work).child(water::of_site(desk)))
        .into()
}

fn jobs(view: UpkeepView, open: Held<bool>, desk: Desk) -> AnyView {
    let UpkeepView { empty, not_written, groups, mut before_storm } = view;
    let group = |(title, jobs): (&'static str, Vec<JobView>)| {
        element("DIV").class("parts").child(worded("H2", title)).child(jobs_of(jobs, desk)).into()
    };
    let occasions = say::OCCASIONS.iter().map(|occasion| {
        let mut steps: Vec<String> = occasion.steps.iter().map(|step| (*step).to_owned()).collect();
        // The first list is the one before a storm.
        steps.append(&mut before_storm);
        element("DETAILS").child(worded("SUMMARY", occasion.title.text())).child(list("notes", steps)).into()
    });
    let occasions: Vec<AnyView> = occasions.collect();
    element("DIV")
        .children(empty.map(|empty| worded("P", empty).into()))
        .children(groups.into_iter().map(group))
        .children((!not_written.is_empty()).then(|| unwritten(not_written, open, desk)))
        .child(worded("H2", phrase!("Storms and trouble", "Tormentas y problemas")))
        .children(occasions)
        .into()
}

/// What is to be done on a part, and its past, on its sheet; nothing where there is neither.
pub(super) fn of_part(part: PartId, desk: Desk) -> AnyView {
    let shown = derived(move || {
        desk.case.with(|case| {
            let site = case.site.as_ref()?;
            Some(upkeep::of_part(site, part, case.lesson.as_deref(), &case.units, case.today))
        })
    });
    let open = Held::new(false);
    live(move || {
        let CareView { title, jobs, past } = shown.get().unwrap_or_default();
        let to_do = (!jobs.is_empty()).then(|| folded(title, open).child(jobs_of(jobs, desk)).into());
        let past = (!past.is_empty()).then(|| {
            let head = worded("H3", phrase!("Last in the diary", "Lo último en el diario"));
            element("DIV").child(head).child(list("notes", past)).into()
        });
        element("DIV").children(to_do).children(past).into()
    })
}

/// Jobs of which nothing is written: all at once, or one by one.
fn unwritten(views: Vec<JobView>, open: Held<bool>, desk: Desk) -> AnyView {
    let jobs: Vec<Job> = views.iter().map(|view| view.job).collect();
    let ago = say::AGO.iter().map(|(days, words)| {
        let jobs = jobs.clone();
        let written = move |_| {
            let today = desk.model.with_untracked(|model| model.today);
            let date = today.checked_sub_days(Days::new(*days)).unwrap_or(today);
            desk.send.run(Event::JobsWritten(jobs.clone(), date, (desk.moment)()));
        };
        worded("BUTTON", words.text()).attribute("type", "button").on("click", written).into()
    });
    let row =
        element("DIV").class("row").attribute("role", "group").attribute("aria-label", say::ALL_DONE).children(ago);
    folded(say::not_written(views.len()), open)
        .child(worded("P", format!("{}:", say::ALL_DONE)))
        .child(row)
        .child(jobs_of(views, desk))
        .into()
}

/// A fold of jobs that stays open while they are done one by one.
fn folded(title: String, open: Held<bool>) -> Element {
    element("DETAILS")
        .class("parts")
        .opened(open.get_untracked())
        .on("toggle", move |event| open.set(is_open(&event)))
        .child(worded("SUMMARY", title))
}

fn jobs_of(views: Vec<JobView>, desk: Desk) -> Element {
    element("UL").children(views.into_iter().map(|view| job(view, desk)))
}

fn job(view: JobView, desk: Desk) -> AnyView {
    let JobView { job, name, standing, interval } = view;
    let done = move |_| {
        let date = desk.model.with_untracked(|model| model.today);
        let told = Told::Work { on: Some(job.part), task: job.task };
        desk.send.run(Event::EntryWritten(Draft { id: None, date, told, note: String::new() }, (desk.moment)()));
    };
    let button = worded("BUTTON", say::DONE)
        .attribute("type", "button")
        .attribute("aria-label", format!("{}: {name}", say::DONE))
        .on("click", done);
    let texts = Held::new(interval);
    let measures = say::INTERVAL.into_iter().enumerate().map(|(at, label)| {
        typed_field(
            label.text(),
            move || texts.with(|texts| texts[at].clone()),
            move |text| texts.update(|texts| texts[at] = text),
        )
    });
    let keep = worded("BUTTON", phrase!("Keep", "Guardar")).attribute("type", "button").on("click", move |_| {
        desk.send.run(Event::IntervalEntered(job, Some(texts.get_untracked())));
    });
    let usual = desk.button(say::BACK_TO_USUAL, Event::IntervalEntered(job, None)).class("plain");
    let often = element("DETAILS")
        .child(
            worded("SUMMARY", phrase!("How often", "Cada cuánto"))
                .attribute("aria-label", say!("How often: {name}", "Cada cuánto: {name}", name)),
        )
        .child(element("DIV").class("fields").children(measures))
        .child(worded("P", say::BLANK).class("small"))
        .child(element("DIV").class("row").child(keep).child(usual));
    let told =
        element("DIV").class("said").child(worded("STRONG", name)).child(worded("SPAN", standing).class("small"));
    element("LI").class("job").child(told).child(button).child(often).into()
}

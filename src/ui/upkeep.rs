//! Upkeep.

use leptos::prelude::*;

use super::element::{element, list, live, nothing, worded};
use super::field::typed_field;
use super::{Desk, water};
use crate::app::draft::Draft;
use crate::app::event::Event;
use crate::app::view::upkeep::{self, JobView, UpkeepView};
use crate::site::diary::Told;
use crate::words::upkeep as say;

/// Upkeep.
pub(crate) fn upkeep(desk: Desk) -> AnyView {
    let shown = Memo::new(move |_| {
        desk.case.with(|case| {
            case.site.as_ref().map(|site| upkeep::upkeep(site, case.lesson.as_deref(), &case.units, case.today))
        })
    });
    let save = element("BUTTON")
        .attribute("type", "button")
        .on("click", move |_| desk.send.run(Event::CalendarWanted((desk.moment)())))
        .text(say::CALENDAR);
    element("SECTION")
        .class("upkeep")
        .child(worded("H1", "Upkeep"))
        .child(live(move || shown.get().map_or_else(nothing, |view| jobs(view, desk))))
        .child(worded("P", say::CAUTION).class("small caution"))
        .child(element("DIV").class("row").child(save))
        .child(worded("P", say::USUAL).class("small"))
        .child(water::of_site(desk))
        .into()
}

fn jobs(view: UpkeepView, desk: Desk) -> AnyView {
    let UpkeepView { empty, groups, mut before_storm } = view;
    let group = |(title, jobs): (&'static str, Vec<JobView>)| {
        element("DIV")
            .class("parts")
            .child(worded("H2", title))
            .child(element("UL").children(jobs.into_iter().map(|view| job(view, desk))))
            .into()
    };
    let occasions = say::OCCASIONS.iter().map(|occasion| {
        let mut steps: Vec<String> = occasion.steps.iter().map(|step| (*step).to_owned()).collect();
        // The first list is the one before a storm.
        steps.append(&mut before_storm);
        element("DETAILS").child(worded("SUMMARY", occasion.title)).child(list("notes", steps)).into()
    });
    let occasions: Vec<AnyView> = occasions.collect();
    element("DIV")
        .children(empty.map(|empty| worded("P", empty).into()))
        .children(groups.into_iter().map(group))
        .child(worded("H2", "Storms and trouble"))
        .children(occasions)
        .into()
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
    let texts = RwSignal::new(interval);
    let measures = say::INTERVAL.into_iter().enumerate().map(|(at, label)| {
        typed_field(
            label,
            move || texts.with(|texts| texts[at].clone()),
            move |text| texts.update(|texts| texts[at] = text),
        )
    });
    let keep = worded("BUTTON", "Keep").attribute("type", "button").on("click", move |_| {
        desk.send.run(Event::IntervalEntered(job, Some(texts.get_untracked())));
    });
    let usual = desk.button(say::BACK_TO_USUAL, Event::IntervalEntered(job, None)).class("plain");
    let often = element("DETAILS")
        .child(worded("SUMMARY", "How often").attribute("aria-label", format!("How often: {name}")))
        .child(element("DIV").class("fields").children(measures))
        .child(worded("P", say::BLANK).class("small"))
        .child(element("DIV").class("row").child(keep).child(usual));
    let said =
        element("DIV").class("said").child(worded("STRONG", name)).child(worded("SPAN", standing).class("small"));
    element("LI").class("job").child(said).child(button).child(often).into()
}

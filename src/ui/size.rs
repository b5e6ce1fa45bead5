//! Questions about size: a section each, reckoned while it is open.

use super::follow::derived;
use leptos::prelude::*;

use super::choose::Choose;
use super::element::{element, is_open, list, live, nothing, worded};
use super::{Desk, figure};
use crate::app::event::Event;
use crate::app::study::Inquiry;
use crate::app::view::size::{self, SizeView};
use crate::site::wanted::Wanted;
use crate::words::size as say;

/// What is wanted, and the four sections.
pub(crate) fn sections(desk: Desk) -> AnyView {
    element("DIV")
        .class("sizes")
        .child(worded("H2", phrase!("How big", "De qué tamaño")))
        .child(element("DIV").class("fields").child(wanted(desk)))
        .children(Inquiry::ALL.map(|inquiry| section(inquiry, desk)))
        .into()
}

fn wanted(desk: Desk) -> Choose {
    let now =
        move || desk.case.with(|case| case.site.as_ref().map(|kept| kept.site.reckoning.wanted)).unwrap_or_default();
    let options = move || {
        let place = Wanted::CHOICES.iter().position(|choice| *choice == now()).unwrap_or(0);
        (Wanted::CHOICES.map(say::wanted).to_vec(), place)
    };
    let pick = move |at: usize| {
        if let Some(wanted) = Wanted::CHOICES.get(at) {
            desk.send.run(Event::WantedChosen(*wanted));
        }
    };
    Choose { label: say::WANTED.to_owned(), hint: None, options: Box::new(options), on_chosen: Box::new(pick) }
}

fn section(inquiry: Inquiry, desk: Desk) -> AnyView {
    let asked = derived(move || desk.model.with(|model| model.studies.of(inquiry).clone()));
    let shown = derived(move || asked.with(|asked| desk.case.with(|case| size::size(inquiry, asked, case))));
    let running = derived(move || shown.with(|view| view.running));
    let runs = derived(move || running.get().is_some());
    // The mark keeps its node while it goes on, and with it the focus on the button.
    let mark = move || {
        if !runs.get() {
            return nothing();
        }
        let progress = element("PROGRESS")
            .attribute("max", "1")
            .attribute("aria-label", say::title(inquiry))
            .live_attribute("value", move || running.get().map(|share| share.to_string()));
        element("DIV")
            .class("under-way")
            .child(element("SPAN").live_text(move || running.get().map(say::running).unwrap_or_default()))
            .child(progress)
            .child(desk.button(say::CANCEL, Event::InquiryCancelled(inquiry)))
            .into()
    };
    let answer = derived(move || shown.with(|view| SizeView { running: None, ..view.clone() }));
    let body = move || if runs.get() { nothing() } else { answer.with(|view| answered(inquiry, view, desk)) };
    let open = desk.model.with_untracked(|model| model.studies.of(inquiry).open);
    let toggled = move |event: web_sys::Event| {
        let open = is_open(&event);
        if desk.model.with_untracked(|model| model.studies.of(inquiry).open) != open {
            desk.send.run(Event::InquiryOpened(inquiry, open));
        }
    };
    let about = worded("P", say::about(inquiry)).class("small").into();
    // What charts show is said over them; a size is told before how it was found.
    let (over, under) = if inquiry == Inquiry::Smallest { (None, Some(about)) } else { (Some(about), None) };
    element("DETAILS")
        .class("size")
        .opened(open)
        .on("toggle", toggled)
        .child(worded("SUMMARY", say::title(inquiry)))
        .children(over)
        .child(live(mark))
        .child(live(body))
        .children(under)
        .into()
}

fn answered(inquiry: Inquiry, view: &SizeView, desk: Desk) -> AnyView {
    let SizeView { why_not, cancelled, sentences, tables, charts, notes, .. } = view.clone();
    let mut views: Vec<AnyView> = Vec::new();
    if let Some(why_not) = why_not {
        views.push(worded("P", why_not).into());
        if cancelled {
            views.push(desk.button(say::AGAIN, Event::InquiryWanted(inquiry)).into());
        }
    }
    if !sentences.is_empty() {
        views.push(list("answers", sentences).into());
    }
    views.extend(tables.into_iter().map(|(name, table)| figure::table_of(table, name)));
    views.extend(charts.into_iter().map(|chart| figure::chart(chart, desk)));
    if !notes.is_empty() {
        views.push(list("notes", notes).into());
    }
    views.into_any()
}

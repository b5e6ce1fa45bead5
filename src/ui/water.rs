//! Fit to drink: the chain of a tap on its sheet, and all taps and water tests on one page.

use super::follow::{Held, derived};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::Desk;
use super::checks::check;
use super::choose::Choose;
use super::element::{element, focus_along, list, live, nothing, worded};
use super::water_test;
use crate::app::case::Case;
use crate::app::event::{Event, Shift};
use crate::app::view::water::{Seen, StepView, TapView, TestView, all_tests, tap, taps};
use crate::site::barrier::BarrierKind;
use crate::site::diary::Subject;
use crate::site::part::PartId;
use crate::words::treatment::{barriers, chain, results};

fn seen(case: &Case) -> Option<Seen<'_>> {
    let (kept, outcome) = case.shown();
    let (kept, answer) = (kept?, outcome.and_then(|outcome| outcome.as_ref().ok()));
    Some(Seen { site: &kept.site, diary: &kept.diary, answer, today: case.today, units: &case.units })
}

/// The chain of a tap, on the sheet of its use; nothing for other parts.
pub(crate) fn of_tap(part: PartId, desk: Desk) -> AnyView {
    let view = derived(move || desk.case.with(|case| tap(&seen(case)?, part)));
    live(move || view.get().map_or_else(nothing, |view| whole(view, desk)))
}

fn whole(view: TapView, desk: Desk) -> AnyView {
    let TapView {
        tap, class, word, verdict, weakest, urgent, wrong, upstream, steps, rows, notes, tests, caution, ..
    } = view;
    let last = steps.len().saturating_sub(1);
    let steps = if steps.is_empty() {
        vec![worded("P", chain::NO_BARRIERS).into()]
    } else {
        steps.into_iter().enumerate().map(|(at, view)| step(view, at, last, desk)).collect()
    };
    element("SECTION")
        .class("checks water")
        .child(worded("H3", chain::TITLE))
        .child(
            element("DIV")
                .class(class)
                .child(element("P").class("verdict").child(worded("STRONG", word)).text(": ").text(verdict))
                .children(weakest.map(|text| worded("P", text).class("to-do").into()))
                .child(worded("P", caution).class("small caution")),
        )
        .child(list("findings", wrong))
        .children(urgent.then(|| results_of(tests.clone())))
        .child(worded("H4", chain::BARRIERS))
        .child(worded("P", upstream).class("small"))
        .children(steps)
        .child(add(tap, desk))
        .child(list("notes", notes))
        .child(table(rows))
        .children((!urgent).then(|| results_of(tests)))
        .child(water_test::form(tap, desk))
        .into()
}

fn step(view: StepView, at: usize, last: usize, desk: Desk) -> AnyView {
    let StepView { id, check: view } = view;
    let (first, last) = (at == 0, at == last);
    let name = view.title;
    let button = |sign: &'static str, what: String, event: Event, off: bool| {
        let goes_along = what.clone();
        let follow = move || focus_along(".barrier button.square", goes_along.clone());
        let button = desk.button_then(sign, event, follow).class("plain square").attribute("aria-label", what);
        if off { button.attribute("disabled", "") } else { button }.into()
    };
    let alone = first && last;
    // Once what is left has been drawn.
    let focus = move || request_animation_frame(move || focus_barrier(at));
    let movers = [
        button("↑", say!("Move {name} up", "Subir {name}", name), Event::BarrierShifted(id, Shift::Up), first),
        button("↓", say!("Move {name} down", "Bajar {name}", name), Event::BarrierShifted(id, Shift::Down), last),
    ];
    element("DIV")
        .class("barrier")
        .child(check(view, desk))
        .child(
            element("DIV").class("row").children(movers.into_iter().filter(|_| !alone)).child(
                desk.button_then(phrase!("Take out", "Quitar"), Event::BarrierRemoved(id), focus)
                    .class("plain away")
                    .attribute("aria-label", say!("Take out {name}", "Quitar {name}", name)),
            ),
        )
        .into()
}

/// Puts the focus on the barrier that took the place of the one taken out, else on the one before, else on adding one.
fn focus_barrier(at: usize) {
    let Ok(barriers) = document().query_selector_all("dialog.sheet .barrier .away, dialog.sheet .add-barrier select")
    else {
        return;
    };
    let left = barriers.length().saturating_sub(1);
    let wanted = u32::try_from(at).unwrap_or(u32::MAX).min(left.saturating_sub(1));
    if let Some(found) = barriers.item(wanted) {
        // Fails only for what is not on the page any more.
        let _ = found.unchecked_into::<web_sys::HtmlElement>().focus();
    }
}

fn add(tap: PartId, desk: Desk) -> AnyView {
    let kind = Held::new(0);
    let options = move || {
        let kinds = BarrierKind::ALL.into_iter().map(|kind| barriers::name(kind).to_owned());
        (kinds.collect(), kind.get())
    };
    let choose = Choose {
        label: phrase!("Another barrier", "Otra barrera").to_owned(),
        hint: Some(chain::GOES_LAST.text()),
        options: Box::new(options),
        on_chosen: Box::new(move |at| kind.set(at)),
    };
    let add = worded("BUTTON", phrase!("Add it", "Añadirla")).attribute("type", "button").on("click", move |_| {
        if let Some(kind) = BarrierKind::ALL.get(kind.get_untracked()) {
            desk.send.run(Event::BarrierAdded(tap, *kind));
            request_animation_frame(|| focus_barrier(usize::MAX));
        }
    });
    element("DIV").class("add-barrier").child(choose).child(add).into()
}

fn table(rows: Vec<[String; 4]>) -> AnyView {
    let head = chain::COLUMNS.into_iter().map(|name| worded("TH", name).attribute("scope", "col").into());
    let rows = rows.into_iter().map(|[what, cells @ ..]| {
        let cells = cells.into_iter().map(|cell| worded("TD", cell).into());
        element("TR").child(worded("TH", what).attribute("scope", "row")).children(cells).into()
    });
    let table = element("TABLE")
        .child(element("THEAD").child(element("TR").children(head)))
        .child(element("TBODY").children(rows));
    element("DETAILS")
        .child(worded("SUMMARY", phrase!("What is proven, what is wanted", "Lo probado y lo que hace falta")))
        .child(element("DIV").class("table").attribute("tabindex", "0").child(table))
        .child(worded("P", chain::ABOUT).class("small"))
        .into()
}

fn results_of(tests: Vec<TestView>) -> AnyView {
    element("DIV").child(worded("H4", results::TITLE)).children(tests_of(tests, "H5")).into()
}

fn tests_of(tests: Vec<TestView>, heading: &'static str) -> Vec<AnyView> {
    if tests.is_empty() {
        return vec![worded("P", results::NONE).into()];
    }
    let mut views: Vec<AnyView> = tests.into_iter().map(|view| test(view, heading)).collect();
    views.push(worded("P", results::ABOUT).class("small").into());
    views
}

fn test(view: TestView, heading: &'static str) -> AnyView {
    let TestView { title, class, word, found, meaning, next } = view;
    element("DIV")
        .class(class)
        .child(worded(heading, title))
        .child(element("P").class("verdict").child(worded("STRONG", word)).text(": ").text(found))
        .children((!next.is_empty()).then(|| worded("P", next).class("to-do").into()))
        .child(worded("P", meaning).class("small"))
        .into()
}

/// All taps with their verdicts, and all water tests.
pub(crate) fn of_site(desk: Desk) -> AnyView {
    let view = derived(move || {
        desk.case.with(|case| {
            seen(case).map(|seen| {
                let tanks = seen.site.system.tanks.iter().map(|tank| (tank.id, tank.name.clone()));
                (taps(&seen), all_tests(&seen), tanks.collect::<Vec<_>>())
            })
        })
    });
    live(move || {
        let Some((taps, tests, tanks)) = view.get() else { return nothing() };
        let doses = tanks.into_iter().map(|(id, name)| {
            let doses = say!("Dose for {name}", "Dosis para {name}", name);
            desk.button(doses, Event::PartOpened(id)).into()
        });
        let taps = taps.into_iter().map(|view| {
            let open = desk.button(chain::OPEN, Event::PartOpened(view.tap));
            element("DIV")
                .class(view.class)
                .child(worded("H3", view.name.clone()))
                .child(element("P").class("verdict").child(worded("STRONG", view.word)).text(": ").text(view.verdict))
                .children(view.weakest.map(|text| worded("P", text).class("to-do").into()))
                .child(list("findings", view.wrong))
                .child(open.attribute("aria-label", format!("{}: {}", chain::OPEN, view.name)))
                .into()
        });
        element("SECTION")
            .class("checks water")
            .child(worded("H2", chain::TITLE))
            .children(taps)
            .child(worded("P", chain::CAUTION).class("small caution"))
            .child(worded("H2", results::TITLE))
            .children(tests_of(tests, "H3"))
            .child(desk.button(results::WRITE_A_TEST, Event::FormWanted(Subject::Test)))
            .child(worded("H2", chain::DOSES))
            .child(worded("P", chain::DOSES_ABOUT))
            .child(element("DIV").class("row").children(doses))
            .into()
    })
}

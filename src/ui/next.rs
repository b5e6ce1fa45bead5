//! What to change next, and options side by side.

use leptos::prelude::*;

use super::Desk;
use super::choose::Choose;
use super::element::{Element, element, focus_on, live, nothing, worded};
use super::field::{QuantityField, text_field};
use super::figure::table_of;
use super::follow::{Derived, derived};
use crate::app::event::Event;
use crate::app::next::NextEvent;
use crate::app::view::next::{self, ChangeView, NextView, OptionView, OptionsView};

use crate::quantity::Kind;
use crate::site::prices::{PRICE, Priced};
use crate::words::{cautions, next as say};

type Shown = Derived<Option<NextView>>;

fn sends(desk: Desk, text: &str, event: NextEvent) -> Element {
    desk.button(text, Event::Next(event))
}

/// What next.
pub(crate) fn next(desk: Desk) -> AnyView {
    let shown: Shown = derived(move || desk.model.with(next::next));
    let can = derived(move || shown.with(Option::is_some));
    let judged = derived(move || shown.with(|view| view.as_ref().is_some_and(|view| view.judged)));
    // Drawn anew when a change or step has come, not for every slice of the work.
    let found = derived(move || shown.with(|view| Some(NextView { progress: None, ..view.clone()? })));
    let results = move || {
        if !judged.get() {
            return nothing();
        }
        let lists = live(move || found.with(|view| view.as_ref().map_or_else(nothing, |view| changes(view, desk))));
        vec![measure(shown, desk).into(), lists, prices(shown, desk)].into_any()
    };
    let content = move || {
        if !can.get() {
            return nothing();
        }
        element("DIV")
            .class("next")
            .child(worded("H2", say::WHAT_NEXT))
            .child(worded("P", say::HOW).class("small"))
            .child(work(shown, desk))
            .child(live(results))
            .into()
    };
    live(content)
}

/// The button that begins, and how far the work is.
fn work(shown: Shown, desk: Desk) -> AnyView {
    let progress = derived(move || shown.with(|view| view.as_ref()?.progress));
    let working = derived(move || progress.get().is_some());
    let told = derived(move || shown.with(|view| view.as_ref().map(next::told).unwrap_or_default()));
    let buttons = live(move || {
        if !working.get() {
            return sends(desk, &say::JUDGE, NextEvent::Wanted).class("main").into();
        }
        let share = move || progress.get().unwrap_or(1.0).to_string();
        let bar = element("PROGRESS")
            .attribute("max", "1")
            .attribute("aria-label", say::JUDGING)
            .live_attribute("value", move || Some(share()));
        let stop: AnyView = sends(desk, said!("Stop", "Parar"), NextEvent::Stopped).into();
        vec![bar.into(), stop].into_any()
    });
    element("DIV")
        .child(element("DIV").class("row working").child(buttons))
        .child(element("P").class("small").attribute("role", "status").live_text(move || told.get()))
        .into()
}

fn measure(shown: Shown, desk: Desk) -> Choose {
    let options = move || {
        shown.with(|view| {
            let Some(NextView { measures: (words, chosen), .. }) = view else { return (Vec::new(), 0) };
            (words.iter().map(|(_, word)| (*word).to_owned()).collect(), *chosen)
        })
    };
    let pick = move |at: usize| {
        let by = shown.with_untracked(|view| view.as_ref().and_then(|view| view.measures.0.get(at).copied()));
        if let Some((by, _)) = by {
            desk.send.run(Event::Next(NextEvent::RankedBy(by)));
        }
    };
    Choose { label: say::RANKED_BY.to_owned(), hint: None, options: Box::new(options), on_chosen: Box::new(pick) }
}

fn changes(view: &NextView, desk: Desk) -> AnyView {
    // The numbers go on where the best end.
    let ordered = |changes: &[ChangeView], after: usize| {
        element("OL")
            .class("changes")
            .attribute("start", (after + 1).to_string())
            .attribute("style", format!("counter-reset: change {after}"))
            .children(changes.iter().map(|one| change(one, desk)))
    };
    let mut views: Vec<AnyView> = Vec::new();
    views.extend(view.remark.map(|remark| worded("P", remark).class("caution").into()));
    views.push(ordered(&view.best, 0).into());
    if !view.others.is_empty() {
        let fold = element("DETAILS").child(worded("SUMMARY", say::others(view.others.len())));
        views.push(fold.child(ordered(&view.others, view.best.len())).into());
    }
    if !view.steps.is_empty() {
        views.push(worded("H3", say::ONE_AFTER_ANOTHER).into());
        views.push(worded("P", say::SEQUENCE).class("small").into());
        let steps = view.steps.iter().zip(1..).map(|(told, number)| step(told, number, desk));
        views.push(element("OL").class("changes").children(steps).into());
    }
    views.push(worded("P", cautions::WHO_DECIDES).class("small caution").into());
    views.into_any()
}

fn change(view: &ChangeView, desk: Desk) -> AnyView {
    let ChangeView { upgrade, title, brings, caution } = view;
    element("LI")
        .child(told(title, brings))
        .children(caution.map(|caution| worded("P", caution).class("small caution").into()))
        .child(tries(desk, said!("Try it", "Probarlo"), title, NextEvent::Tried(upgrade.clone())))
        .into()
}

fn step((title, brings): &(String, String), number: usize, desk: Desk) -> AnyView {
    let up_to_here = tries(desk, say::up_to_here(number), title, NextEvent::StepsTried(number));
    element("LI").child(told(title, brings)).child(up_to_here).into()
}

fn told(title: &str, brings: &str) -> Element {
    element("P").child(worded("STRONG", title)).text(format!(": {brings}"))
}

/// A button that opens a trial; what is told of it stands at the top.
fn tries(desk: Desk, text: &str, of: &str, event: NextEvent) -> Element {
    let label = if of.is_empty() { text.to_owned() } else { format!("{text}: {of}") };
    desk.button_then(text, Event::Next(event), to_the_trial).attribute("aria-label", label)
}

/// Shows the page from its top.
pub(super) fn to_the_top() {
    window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// The same, with the focus on what is told of the trial there.
fn to_the_trial() {
    to_the_top();
    request_animation_frame(|| focus_on("main > .trial-open"));
}

fn prices(shown: Shown, desk: Desk) -> AnyView {
    let field = |priced: Priced| {
        let read = move |read: fn(&(Priced, String, String)) -> String| {
            shown.with(|view| {
                let mut prices = view.iter().flat_map(|view| &view.prices);
                prices.find(|price| price.0 == priced).map(read).unwrap_or_default()
            })
        };
        QuantityField {
            label: untrack(|| read(|price| price.1.clone())),
            hint: None,
            text: Box::new(move || read(|price| price.2.clone())),
            kind: Kind::Money,
            range: PRICE,
            on_entered: Box::new(move |price| {
                let amount = desk.model.with_untracked(|model| next::priced_amount(priced, &model.units));
                desk.send.run(Event::Next(NextEvent::Priced(priced, price / amount)));
            }),
        }
        .view(desk)
    };
    element("DETAILS")
        .child(worded("SUMMARY", say::PRICES_TITLE))
        .child(worded("P", say::PRICES).class("small"))
        .child(element("DIV").class("fields").children(Priced::ALL.map(field)))
        .into()
}

/// Options side by side; nothing while there is none.
pub(crate) fn options(desk: Desk) -> AnyView {
    let shown = derived(move || desk.model.with(next::options));
    let count = derived(move || shown.with(|view| view.as_ref().map_or(0, |view| view.options.len())));
    live(move || {
        let count = count.get();
        if count == 0 {
            return nothing();
        }
        let table = live(move || {
            let table = shown.with(|view| view.as_ref()?.table.clone());
            table.map_or_else(nothing, |table| table_of(table, &say::OPTIONS))
        });
        let one = |at: usize| option(at, shown, desk);
        element("DIV")
            .class("options")
            .child(worded("H2", say::OPTIONS))
            .child(worded("P", say::SIDE_BY_SIDE).class("small"))
            .child(table)
            .child(element("UL").class("changes").children((0..count).map(one)))
            .into()
    })
}

fn option(at: usize, shown: Derived<Option<OptionsView>>, desk: Desk) -> AnyView {
    let read = move |read: fn(&OptionView) -> String| {
        shown.with(|view| view.as_ref().and_then(|view| view.options.get(at)).map(read).unwrap_or_default())
    };
    let name = move || read(|option| option.name.clone());
    let renamed = move |name| desk.send.run(Event::Next(NextEvent::OptionNamed(at, name)));
    let named = |button: Element, text: &'static str| {
        button.live_attribute("aria-label", move || Some(format!("{text} {}", name())))
    };
    let (open, remove) = (said!("Open", "Abrir"), said!("Remove", "Quitar"));
    let opens = desk.button_then(open, Event::Next(NextEvent::OptionOpened(at)), to_the_trial);
    let removes = sends(desk, remove, NextEvent::OptionRemoved(at)).class("plain away");
    let buttons = element("DIV").class("row").child(named(opens, open)).child(named(removes, remove));
    element("LI")
        .child(text_field(say::OPTION_NAME.text(), name, renamed))
        .child(element("P").live_text(move || read(|option| option.difference.clone())))
        .child(buttons)
        .into()
}

/// Keeps the trial as an option, where there is one and room for it.
pub(crate) fn keep_option(desk: Desk) -> Element {
    let can = derived(move || desk.model.with(|model| next::options(model).is_some_and(|view| view.can_keep)));
    sends(desk, &say::KEEP_OPTION, NextEvent::OptionKept).disabled(move || !can.get())
}

/// That a trial is open, and what can be done with it: over the place.
pub(crate) fn trial_banner(desk: Desk) -> AnyView {
    let told = derived(move || desk.case.with(next::trial));
    let no_room = derived(move || desk.model.with(|model| next::options(model)?.no_room));
    live(move || {
        let Some(told) = told.get() else { return nothing() };
        let buttons = element("DIV")
            .class("row")
            .child(desk.button(say::MAKE_REAL, Event::TrialKept))
            .child(keep_option(desk))
            .child(desk.button(say::THROW_AWAY, Event::TrialDropped));
        element("DIV")
            .class("notice trial-open")
            .attribute("role", "group")
            .attribute("tabindex", "-1")
            .attribute("aria-label", phrase!("Trial", "Prueba"))
            .child(worded("P", told))
            .child(buttons)
            .child(live(move || no_room.get().map_or_else(nothing, |text| worded("P", text).class("small").into())))
            .into()
    })
}

/// Where something is changed: that a trial takes it, or the way to open one.
pub(crate) fn trial_here(desk: Desk) -> AnyView {
    let open = derived(move || desk.model.with(|model| model.trial().system.is_some()));
    live(move || {
        if open.get() {
            worded("P", say::SHEET_OF_TRIAL).class("trial-open small").attribute("role", "status").into()
        } else {
            sends(desk, &say::OPEN_TRIAL, NextEvent::TrialOpened).class("plain").into()
        }
    })
}

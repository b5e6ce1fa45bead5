//! The checks on the sheet of a part: verdict, what to do; behind a disclosure what went in, what came out, and why.

use leptos::prelude::*;

use super::Desk;
use super::choose::Choose;
use super::element::{element, live, nothing, worded};
use super::field::QuantityField;
use crate::app::event::Event;
use crate::app::view::checks::{CheckView, Entry, InputView, checks};
use crate::site::part::PartId;

/// The checks of a part, drawn again when anything changes.
pub(crate) fn of_part(part: PartId, desk: Desk) -> AnyView {
    let views = Memo::new(move |_| {
        desk.case.with(|case| {
            let (Some(site), outcome) = case.shown() else { return Vec::new() };
            checks(site, part, outcome, case.today, &case.units)
        })
    });
    live(move || {
        let views = views.get();
        if views.is_empty() {
            return nothing();
        }
        element("SECTION")
            .class("checks")
            .child(worded("H3", "Checks"))
            .children(views.into_iter().map(|view| check(view, desk)))
            .into()
    })
}

pub(crate) fn check(view: CheckView, desk: Desk) -> AnyView {
    let CheckView { title, class, word, sentence, to_do, inputs, figures, behind, caution } = view;
    let lines = figures.into_iter().map(|(label, figure)| line(&label, &figure));
    let inputs = inputs.into_iter().map(|view| input(view, desk));
    let behind = behind
        .into_iter()
        .map(|(head, text)| element("P").class("small").child(worded("STRONG", head)).text(" ").text(text).into());
    let more = element("DETAILS")
        .child(worded("SUMMARY", "How it is reckoned").attribute("aria-label", format!("How it is reckoned: {title}")))
        .child(element("DIV").class("fields").children(inputs))
        .child(element("DL").class("figures").children(lines))
        .children(behind);
    element("DIV")
        .class(class)
        .child(worded("H4", title))
        .child(element("P").class("verdict").child(worded("STRONG", word)).text(": ").text(sentence))
        // Drawn even where they are empty: what is drawn in the same place stays open and keeps the focus.
        .child(worded("P", to_do).class("to-do"))
        .child(worded("P", caution).class("small caution"))
        .child(more)
        .into()
}

fn line(label: &str, figure: &str) -> AnyView {
    element("DIV").child(worded("DT", label)).child(worded("DD", figure)).into()
}

fn input(view: InputView, desk: Desk) -> AnyView {
    let InputView { label, text, entry } = view;
    let Some(Entry { of, detail, kind, range, options: (options, chosen), usual }) = entry else {
        return element("DIV").class("field known").child(worded("SPAN", label).class("label")).text(text).into();
    };
    let field = if options.is_empty() {
        QuantityField {
            label: label.clone(),
            hint: usual,
            text: Box::new(move || text.clone()),
            kind,
            range,
            on_entered: Box::new(move |si| desk.send.run(Event::DetailEntered(of, detail, Some(si)))),
        }
        .view(desk)
    } else {
        Choose {
            label: label.clone(),
            hint: usual,
            options: Box::new(move || (options.iter().map(|option| (*option).to_owned()).collect(), chosen)),
            #[expect(clippy::cast_precision_loss, reason = "a handful of options")]
            on_chosen: Box::new(move |at| desk.send.run(Event::DetailEntered(of, detail, Some(at as f64)))),
        }
        .into()
    };
    let back = usual.is_none().then(|| {
        desk.button("Back to the usual value", Event::DetailEntered(of, detail, None))
            .class("plain small")
            .attribute("aria-label", format!("Back to the usual value: {label}"))
            .into()
    });
    element("DIV").child(field).children(back).into()
}

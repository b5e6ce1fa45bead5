//! Writing the result of a water test into the diary.

use leptos::prelude::*;

use super::Desk;
use super::choose::Choose;
use super::element::{element, worded};
use super::field::labelled;
use super::follow::Held;
use crate::app::draft::Draft;
use crate::app::event::Event;
use crate::app::view::water::{last_test, read_result};
use crate::quantity::day;
use crate::site::diary::{Parameter, Told};
use crate::site::part::PartId;
use crate::words::diary::parameter_name;
use crate::words::treatment::results;

/// A form for one result, taken at this part.
pub(crate) fn form(at: PartId, desk: Desk) -> AnyView {
    // The form is drawn anew when a result was written: the next one is likely of the same kind, and what was written is said.
    let last = desk.model.with_untracked(|model| last_test(model, at));
    let parameter = Held::new(last.as_ref().map_or(0, |(parameter, _)| *parameter));
    let text = Held::new(String::new());
    let date = Held::new(None::<String>);
    let refused = Held::new(false);
    let of = move || Parameter::ALL[parameter.get().min(Parameter::ALL.len() - 1)];
    let today = move || desk.model.with(|model| model.today.to_string());
    let write = move |_| {
        let of = of();
        let day =
            date.with(|date| date.as_deref().map_or_else(|| desk.model.with(|model| Some(model.today)), day::read));
        let found = text.with(|text| read_result(text, of));
        refused.set(found.is_none() || day.is_none());
        if let (Some(found), Some(date)) = (found, day) {
            let told = Told::Test { at: Some(at), parameter: of, found };
            text.set(String::new());
            desk.send.run(Event::EntryWritten(Draft { id: None, date, told, note: String::new() }, (desk.moment)()));
        }
    };
    let choose = Choose {
        label: results::TESTED_FOR.to_owned(),
        hint: None,
        options: Box::new(move || {
            let names = Parameter::ALL.into_iter().map(|of| parameter_name(of).to_owned());
            (names.collect(), parameter.get_untracked())
        }),
        on_chosen: Box::new(move |at| parameter.set(at)),
    };
    let result = element("INPUT")
        .attribute("type", "text")
        .attribute("autocomplete", "off")
        .attribute("enterkeyhint", "done")
        .value(move || text.get())
        .on("input", move |event| text.set(event_target_value(&event)));
    let remark = move || if refused.get() { results::NOT_A_RESULT.to_owned() } else { String::new() };
    let found = labelled(results::FOUND, move || refused.get(), result, remark)
        .child(element("SPAN").class("hint").live_text(move || results::hint(of())));
    let day = element("LABEL").class("field").child(worded("SPAN", results::SAMPLED).class("label")).child(
        element("INPUT")
            .attribute("type", "date")
            .value(move || date.get().unwrap_or_else(today))
            .on("input", move |event| date.set(Some(event_target_value(&event)))),
    );
    let button = element("BUTTON").attribute("type", "button").on("click", write).text(results::WRITE);
    let written = last.map(|(_, said)| worded("P", said).class("small").into());
    element("DIV").class("fields").child(choose).child(found).child(day).child(button).children(written).into()
}

//! A field for a quantity: the half-typed text stays in it; only what was understood goes out.

use std::rc::Rc;

use super::follow::{Held, derived};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::Desk;
use super::element::{Element, element, worded};
use crate::quantity::{Kind, Range, Units, typed};
use crate::words::errors;

/// What a text in a field amounts to.
fn understood(text: &str, kind: Kind, range: Range, units: &Units) -> Result<(f64, Option<String>), String> {
    let typed = typed::quantity(text, kind, units).map_err(|error| errors::typed(&error))?;
    if range.holds(typed.si) {
        Ok((typed.si, errors::understood(text, &typed, kind, units)))
    } else {
        Err(errors::out_of_range(kind, range, units))
    }
}

/// A labelled field for a quantity, typed with or without a unit.
pub(crate) struct QuantityField {
    /// Its label.
    pub label: String,
    /// A line of help.
    pub hint: Option<&'static str>,
    /// The value as text, in the person's unit.
    pub text: Box<dyn Fn() -> String + Send>,
    /// Its kind.
    pub kind: Kind,
    /// What it may be.
    pub range: Range,
    /// Gets a value that was understood, in the unit that its kind is kept in, when it is done.
    pub on_entered: Box<dyn Fn(f64)>,
}

impl QuantityField {
    /// The field on the page.
    pub fn view(self, desk: Desk) -> AnyView {
        self.taken(false, desk)
    }

    /// The same; its value may be handed on at every key that leaves one that is understood.
    pub fn taken(self, at_once: bool, desk: Desk) -> AnyView {
        let Self { label, hint, text, kind, range, on_entered } = self;
        // While something is typed and not yet taken, it stands here.
        let draft = Held::new(None::<String>);
        let read = move || {
            let text = draft.get()?;
            Some(desk.model.with(|model| understood(&text, kind, range, &model.units)))
        };
        let wrong = move || read().is_some_and(|read| read.is_err());
        let remark = move || match read() {
            Some(Err(error)) => error,
            Some(Ok((_, note))) => note.unwrap_or_default(),
            None => String::new(),
        };
        let take = Rc::new(move || read().and_then(Result::ok).map(|(si, _)| on_entered(si)).is_some());
        let typed = {
            let take = Rc::clone(&take);
            move |event| {
                draft.set(Some(event_target_value(&event)));
                let _taken = at_once && take();
            }
        };
        let done = move |_| {
            if draft.is_there() && take() {
                draft.set(None);
            }
        };
        let input = element("INPUT")
            .attribute("type", "text")
            .attribute("inputmode", "text")
            .attribute("autocomplete", "off")
            .attribute("enterkeyhint", "done")
            .live_attribute("aria-invalid", move || wrong().then(|| "true".to_owned()))
            .value(move || draft.get().unwrap_or_else(&text))
            .on("focus", select_all)
            .on("input", typed)
            .on("change", done);
        labelled(label, wrong, input, remark)
            .children(hint.map(|hint| worded("SPAN", hint).class("hint").into()))
            .into()
    }
}

/// What is typed into under its label, over a remark; marked while it is wrong.
pub(crate) fn labelled(
    label: impl Into<String>,
    wrong: impl Fn() -> bool + Send + 'static,
    typed_into: Element,
    remark: impl Fn() -> String + Send + 'static,
) -> Element {
    element("LABEL")
        .live_attribute("class", move || Some(if wrong() { "field wrong" } else { "field" }.to_owned()))
        .child(worded("SPAN", label).class("label"))
        .child(typed_into)
        .child(element("SPAN").class("remark").attribute("role", "status").live_text(remark))
}

/// Selects all that stands in a field: what is typed takes its place.
pub(crate) fn select_all(event: web_sys::Event) {
    if let Some(Ok(input)) = event.target().map(|target| target.dyn_into::<web_sys::HtmlInputElement>()) {
        input.select();
    }
}

/// A labelled field for a name.
pub(crate) fn text_field(
    label: &'static str,
    text: impl Fn() -> String + Send + Sync + 'static,
    on_entered: impl Fn(String) + 'static,
) -> AnyView {
    // What is half typed stays while other things change.
    let text = derived(text);
    // Only what can't be taken stands here.
    let long = Held::new(None::<String>);
    let wrong = move || long.with(Option::is_some);
    let entered = move |event| {
        let typed = event_target_value(&event);
        if typed.trim().is_empty() || errors::is_long_name(&typed) {
            long.set(Some(typed));
        } else {
            long.set(None);
            on_entered(typed);
        }
    };
    let input = element("INPUT")
        .attribute("type", "text")
        .attribute("autocomplete", "off")
        .live_attribute("aria-invalid", move || wrong().then(|| "true".to_owned()))
        .value(move || long.get().unwrap_or_else(|| text.get()))
        .on("change", entered);
    let remark = move || long.with(|long| long.as_deref().map(errors::name).unwrap_or_default());
    labelled(label, wrong, input, remark).into()
}

/// A labelled field whose text goes out with every key.
pub(crate) fn typed_field(
    label: &'static str,
    text: impl Fn() -> String + Send + 'static,
    on_typed: impl Fn(String) + 'static,
) -> AnyView {
    let input = element("INPUT")
        .attribute("type", "text")
        .attribute("autocomplete", "off")
        .value(text)
        .on("input", move |event| on_typed(event_target_value(&event)));
    element("LABEL").class("field").child(worded("SPAN", label).class("label")).child(input).into()
}

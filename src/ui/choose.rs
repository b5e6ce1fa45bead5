//! One of several to choose: from a labelled list, or by buttons.

use leptos::prelude::*;

use super::element::{Element, element, live, worded};

/// A choice among words.
pub(crate) struct Choose {
    /// Its label.
    pub label: String,
    /// A line of help.
    pub hint: Option<&'static str>,
    /// The possibilities, and the place of the one that holds.
    pub options: Box<dyn Fn() -> (Vec<String>, usize) + Send>,
    /// Gets the place of the one that is wanted.
    pub on_chosen: Box<dyn Fn(usize)>,
}

impl From<Choose> for AnyView {
    fn from(Choose { label, hint, options, on_chosen }: Choose) -> Self {
        let option = |at: usize, words: String, chosen: usize| {
            let option = worded("OPTION", words).attribute("value", at.to_string());
            if at == chosen { option.attribute("selected", "") } else { option }
        };
        let options = live(move || {
            let (options, chosen) = options();
            let options: Vec<AnyView> =
                options.into_iter().enumerate().map(|(at, words)| option(at, words, chosen).into()).collect();
            options.into_any()
        });
        let select = element("SELECT").child(options).on("change", move |event| {
            if let Ok(at) = event_target_value(&event).parse() {
                on_chosen(at);
            }
        });
        element("LABEL")
            .class("field")
            .child(worded("SPAN", label).class("label"))
            .child(select)
            .children(hint.map(|hint| worded("SPAN", hint).class("hint").into()))
            .into()
    }
}

/// One of several ways, as a button; the one that holds is pressed.
pub(crate) fn pressed(
    text: impl Into<String>,
    holds: impl Fn() -> bool + Send + 'static,
    press: impl Fn() + 'static,
) -> Element {
    worded("BUTTON", text)
        .attribute("type", "button")
        .live_attribute("aria-pressed", move || Some(holds().to_string()))
        .on("click", move |_| press())
}

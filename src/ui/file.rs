//! A button that lets the person choose a file.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

use super::Desk;
use super::element::{element, worded};
use crate::app::event::Event;

/// A file input that looks like a button.
pub(crate) struct FileButton {
    /// What it says.
    pub label: &'static str,
    /// A second line; it may be empty.
    pub detail: &'static str,
    /// Which files it offers.
    pub accept: &'static str,
    /// Its classes.
    pub class: &'static str,
    /// What the file's bytes and name make happen.
    pub event: fn(Vec<u8>, String) -> Event,
}

impl FileButton {
    /// The button on the page.
    pub fn view(self, desk: Desk) -> AnyView {
        let Self { label, detail, accept, class, event: read } = self;
        let chosen = move |event: web_sys::Event| {
            let input: Option<HtmlInputElement> = event.target().and_then(|target| target.dyn_into().ok());
            let Some(input) = input else { return };
            if let Some(file) = input.files().and_then(|files| files.get(0)) {
                (desk.read)(file, Box::new(move |bytes, name| desk.send.run(read(bytes, name))));
            }
            // The same file may be chosen again.
            input.set_value("");
        };
        let detail = (!detail.is_empty()).then(|| worded("SPAN", detail).into());
        element("LABEL")
            .class(class)
            .child(element("INPUT").attribute("type", "file").attribute("accept", accept).on("change", chosen))
            .child(worded("STRONG", label))
            .children(detail)
            .into()
    }
}

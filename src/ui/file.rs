//! A button that lets the person choose a file.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

use super::desk;

/// A file input that looks like a button.
#[component]
pub fn FileButton(
    /// What it says.
    label: &'static str,
    /// A second line.
    #[prop(default = "")]
    detail: &'static str,
    /// Which files it offers.
    accept: &'static str,
    /// Class of the button.
    #[prop(default = "button")]
    class: &'static str,
    /// Gets the file's bytes and name.
    on_read: impl Fn(Vec<u8>, String) + Copy + 'static,
) -> impl IntoView {
    let read = desk().read;
    let chosen = move |event: leptos::ev::Event| {
        let input: Option<HtmlInputElement> = event.target().and_then(|target| target.dyn_into().ok());
        let Some(input) = input else { return };
        if let Some(file) = input.files().and_then(|files| files.get(0)) {
            read(file, Box::new(on_read));
        }
        // The same file may be chosen again.
        input.set_value("");
    };
    view! {
        <label class=format!("file {class}")>
            <input type="file" accept=accept on:change=chosen/>
            <strong>{label}</strong>
            {(!detail.is_empty()).then(|| view! { <span>{detail}</span> })}
        </label>
    }
}

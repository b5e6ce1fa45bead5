//! The diary.

use leptos::prelude::*;

use super::Desk;
use super::element::{element, worded};
use crate::app::draft::Draft;
use crate::app::event::Event;
use crate::quantity::Depth;
use crate::site::diary::Told;
use crate::words;

/// The diary.
pub(crate) fn diary(desk: Desk) -> AnyView {
    let dry = move |_| {
        let date = desk.model.with_untracked(|model| model.today);
        let draft = Draft { id: None, date, told: Told::Rain(Depth::default()), note: String::new() };
        desk.send.run(Event::EntryWritten(draft, (desk.moment)()));
    };
    let button = element("BUTTON").attribute("type", "button").on("click", dry).text(words::diary::DRY_TODAY);
    element("SECTION")
        .class("diary")
        .child(worded("H1", "Diary"))
        .child(worded("P", words::diary::EMPTY))
        .child(button)
        .into()
}

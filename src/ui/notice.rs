//! What is told, at the top of the place.

use leptos::prelude::*;

use super::Desk;
use super::element::{element, focus_on, live, nothing, worded};
use super::follow::derived;
use crate::app::event::Event;
use crate::app::model::Model;
use crate::app::view::frame::{self, NoticeView, Offer};

/// The notice, announced to those who can't see it: on the sheet while one is open, else on the page. Behind a sheet
/// nothing is heard or reached.
pub(crate) fn notices(on_sheet: bool, desk: Desk) -> AnyView {
    let here = move |model: &Model| model.sheet.is_some() == on_sheet;
    let notice = derived(move || desk.model.with(|model| frame::notice(model).filter(|_| here(model))));
    element("DIV")
        .class("notices")
        .attribute("role", "status")
        .attribute("aria-live", "polite")
        .child(live(move || notice.get().map_or_else(nothing, |notice| told(notice, on_sheet, desk))))
        .into()
}

fn told(notice: NoticeView, on_sheet: bool, desk: Desk) -> AnyView {
    // The button goes with the notice.
    let rest = if on_sheet { "#sheet-name" } else { "#place" };
    let focus = move || request_animation_frame(move || focus_on(rest));
    let offer = notice.offer.map(|offer| match offer {
        Offer::Undo => desk.button_then(phrase!("Undo", "Deshacer"), Event::UndoWanted, focus).into(),
        Offer::Switch => {
            desk.button(phrase!("Take the new version", "Usar la versión nueva"), Event::UpdateAccepted).into()
        }
        Offer::Export => desk.button(phrase!("Export a file", "Exportar un archivo"), Event::ExportWanted).into(),
    });
    let buttons = element("DIV")
        .class("row")
        .children(offer)
        .child(desk.button(phrase!("Dismiss", "Cerrar"), Event::NoticeDismissed).class("plain"));
    element("DIV")
        .class(match (notice.warning, notice.unasked) {
            (false, false) => "notice",
            (true, false) => "notice warning",
            (false, true) => "notice aside",
            (true, true) => "notice aside warning",
        })
        .child(worded("P", notice.text))
        .child(buttons)
        .into()
}

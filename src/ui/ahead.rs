//! The weeks ahead.

use leptos::prelude::*;

use super::Desk;
use super::element::{element, live, nothing, worded};
use crate::app::event::Event;
use crate::app::model::Place;
use crate::app::view::ahead;

/// The weeks ahead.
pub(crate) fn ahead(desk: Desk) -> AnyView {
    live(move || {
        desk.case.with(|case| {
            let Some(site) = &case.site else { return nothing() };
            let view = ahead::ahead(site);
            element("SECTION")
                .class("ahead")
                .child(worded("H1", "The weeks ahead"))
                .children(view.wanted.map(|wanted| worded("P", wanted).into()))
                .child(desk.button("Open the diary", Event::PlaceOpened(Place::Diary)).class("main"))
                .into()
        })
    })
}

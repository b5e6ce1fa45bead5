//! The bar with the places: at the bottom of a phone, at the side of a wide screen.

use leptos::prelude::*;

use super::Desk;
use super::element::{attribute, element, worded};
use super::figure::{group, svg};
use crate::app::event::Event;
use crate::app::model::Place;
use crate::app::view::frame;

/// The name of the site over the place: tapped, it opens sites, units and files.
pub(crate) fn head(desk: Desk) -> AnyView {
    let name = move || {
        desk.model.with(|model| model.site().map_or_else(|| "Eavewater".to_owned(), |kept| kept.site.name.clone()))
    };
    let here = move || desk.model.with(|model| !model.sketching && model.place == Place::Kept);
    let open = desk
        .sends(Event::PlaceOpened(Place::Kept))
        .class("plain site-name")
        .live_attribute("aria-current", move || here().then(|| "page".to_owned()))
        .child(element("SPAN").live_text(name))
        .child(worded("SPAN", frame::place(Place::Kept)).class("more"));
    element("HEADER").class("head").child(open).into()
}

/// The bar.
pub(crate) fn bar(desk: Desk) -> AnyView {
    let to = |place: Place| {
        let here = move || desk.model.with(|model| !model.sketching && model.place == place);
        element("BUTTON")
            .attribute("type", "button")
            .live_attribute("aria-current", move || here().then(|| "page".to_owned()))
            .on("click", move |_| desk.send.run(Event::PlaceOpened(place)))
            .child(symbol(place))
            .child(worded("SPAN", frame::place(place)))
            .into()
    };
    element("NAV")
        .class("bar")
        .attribute("aria-label", phrase!("Places", "Lugares"))
        .children(Place::BAR.map(to))
        .into()
}

/// A line drawing for each place.
fn symbol(place: Place) -> AnyView {
    let line = match place {
        Place::House => "M3 11 L12 4 L21 11 M6 9.5 V20 H18 V9.5 M10 20 V14 H14 V20",
        Place::Diary => "M6 3 H19 V21 H6 Z M6 3 V21 M9 3 V21 M12 8 H16 M12 12 H16",
        Place::Ahead => "M3 6 H9 M9 6 L21 4 M9 6 L21 12 M9 6 L16 20 M3 20 H21",
        Place::Upkeep => "M14 7 A4.5 4.5 0 0 1 20 4 L17.5 7.5 L20 9.5 A4.5 4.5 0 0 1 14.5 11 L7 20 L4 17 L12.5 10 Z",
        Place::Rain => "M12 3 C8 8 6 11 6 14 A6 6 0 0 0 18 14 C18 11 16 8 12 3 Z",
        Place::Sizing => "M4 20 H20 M4 20 V4 M6 8 L10 8 L13 17 L16 12 L20 6",
        Place::Kept | Place::Report | Place::Method => "M4 7 H20 V20 H4 Z M4 7 L7 3 H17 L20 7 M9 12 H15",
    };
    let attributes = [("class", "symbol"), ("viewBox", "0 0 24 24"), ("aria-hidden", "true")];
    let attributes = attributes.map(|(name, value)| attribute(name, value.to_owned())).to_vec();
    svg(attributes, vec![group(Vec::new(), format!("<path d=\"{line}\"/>"))])
}

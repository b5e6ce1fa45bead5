//! The climate that gardens follow, on the sheet of a garden.

use leptos::prelude::*;

use super::Desk;
use super::choose::Choose;
use super::element::{element, live, worded};
use super::field::QuantityField;
use super::follow::derived;
use crate::app::event::Event;
use crate::app::model::KeptSite;
use crate::app::view::climate;
use crate::quantity::Units;
use crate::site::climate::ClimateValue;
use crate::words::garden as say;

/// Reads something of the open site's climate.
fn read<T: Default>(desk: Desk, read: impl FnOnce(&KeptSite, &Units) -> T) -> T {
    desk.case.with(|case| case.shown().0.map(|site| read(site, &case.units)).unwrap_or_default())
}

/// The climate; folded once it is given.
pub(crate) fn folded(desk: Desk) -> AnyView {
    // The fields stay while their numbers change.
    let way = derived(move || read(desk, |site, _| climate::way(site)));
    let ways = Choose {
        label: phrase!("Given as", "Se da como").to_owned(),
        hint: None,
        options: Box::new(move || {
            let mut words: Vec<String> = say::CLIMATE_WAYS.map(String::from).into();
            if way.get().is_none() {
                words.push(phrase!("Not given", "Sin datos").to_owned());
            }
            (words, way.get().unwrap_or(2))
        }),
        on_chosen: Box::new(move |at| {
            if at < 2 {
                desk.send.run(Event::ClimateWayChosen { temperatures: at == 0 });
            }
        }),
    };
    let fields = move || {
        way.track();
        let values = untrack(|| read(desk, |site, _| climate::values(site)));
        let explained = (way.get() == Some(0)).then(|| worded("P", say::HARGREAVES).class("small").into());
        element("DIV")
            .class("fields months")
            .children(values.into_iter().map(|value| match value {
                // Alone on its line, so that low and high stand side by side.
                ClimateValue::Latitude => element("DIV").class("row").child(number(value, desk)).into(),
                _ => number(value, desk),
            }))
            .children(explained)
            .into()
    };
    let details = element("DETAILS")
        .child(worded("SUMMARY", say::CLIMATE))
        .child(worded("P", say::CLIMATE_IS_FOR).class("small"))
        .child(element("P").attribute("role", "status").live_text(move || read(desk, climate::told)))
        .child(ways)
        .child(live(fields));
    let known = untrack(|| read(desk, |site, _| climate::is_known(site)));
    details.opened(!known).into()
}

fn number(value: ClimateValue, desk: Desk) -> AnyView {
    let (kind, range) = climate::kind(value);
    let field = QuantityField {
        label: say::climate_value(value),
        hint: None,
        text: Box::new(move || read(desk, |site, units| climate::number(site, value, units))),
        kind,
        range,
        on_entered: Box::new(move |number| desk.send.run(Event::ClimateEntered(value, number))),
    }
    .view(desk);
    let doubt = move || read(desk, |site, _| climate::doubt(site, value));
    element("DIV").child(field).child(element("P").class("doubt").attribute("role", "status").live_text(doubt)).into()
}

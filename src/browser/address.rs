//! The place in the page's address: a reload finds it there, and the browser's own way back goes through it.

use super::hear;
use crate::app::event::Event;
use crate::app::model::Place;

/// The name behind the sign `#`.
fn named() -> Option<String> {
    let hash = web_sys::window()?.location().hash().ok()?;
    Some(hash.trim_start_matches('#').to_owned())
}

/// Names a place in the address, which the browser remembers as a step of the way.
pub(super) fn show(place: Place) {
    let name = place.address();
    if let Some(window) = web_sys::window().filter(|_| named().is_some_and(|now| now != name)) {
        // Fails only where the address may not be written; the place is open all the same.
        let _ = window.location().set_hash(name);
    }
}

/// Tells the place that the address names, now and whenever it changes.
pub(super) fn listen(send: impl Fn(Event) + Copy + 'static) {
    let called = move || {
        if let Some(place) = named().as_deref().and_then(Place::of_address) {
            send(Event::PlaceCalled(place));
        }
    };
    called();
    hear("hashchange", move |_| called());
}

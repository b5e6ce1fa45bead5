//! What other windows write.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::StorageEvent;

use super::{BrowserShelf, Keeper};
use crate::app::event::Event;
use crate::records::cupboard::Cupboard;

/// Reads what another window has changed again: half a year of a diary where it is one, else everything.
pub(super) fn listen(keeper: Keeper, send: impl Fn(Event) + Copy + 'static) {
    let changed = Closure::<dyn FnMut(StorageEvent)>::new(move |event: StorageEvent| {
        // What found no room is nowhere but here.
        if !keeper.has_kept_all() {
            return;
        }
        if let Some(again) = event.key().and_then(|key| keeper.half_again(&key)) {
            return send(again);
        }
        let ours = event.key().is_none_or(|key| Cupboard::<BrowserShelf>::is_ours(&key));
        if ours && let Ok(opened) = keeper.open() {
            send(Event::ReadAgain(opened));
        }
    });
    if let Some(window) = web_sys::window() {
        // Fails only for a listener that isn't a function.
        let _ = window.add_event_listener_with_callback("storage", changed.as_ref().unchecked_ref());
    }
    // Listens for as long as the page lives.
    changed.forget();
}

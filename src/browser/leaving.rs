//! The page is about to go.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::Event;

use super::Keeper;

/// Has the browser ask before the page goes while something of it is not kept.
pub(super) fn listen(keeper: Keeper) {
    let going = Closure::<dyn FnMut(Event)>::new(move |event: Event| {
        if !keeper.has_kept_all() {
            event.prevent_default();
        }
    });
    if let Some(window) = web_sys::window() {
        // Fails only for a listener that isn't a function.
        let _ = window.add_event_listener_with_callback("beforeunload", going.as_ref().unchecked_ref());
    }
    // Listens for as long as the page lives.
    going.forget();
}

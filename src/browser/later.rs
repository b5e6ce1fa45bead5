//! What is done once the page is free: slices of long work.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

use super::Keeper;
use crate::app::event::Event;
use crate::app::next::NextEvent;

/// Does something when the page has drawn and heard what waited.
pub(super) fn soon(slice: impl FnOnce() + 'static) {
    let slice = Closure::once_into_js(slice);
    if let Some(window) = web_sys::window() {
        // Fails only for a callback that isn't a function.
        let _ = window.set_timeout_with_callback(slice.unchecked_ref());
    }
}

/// Asks for the next slice of what the model has in hand.
pub(super) fn go_on(keeper: &Keeper) {
    let keeper = keeper.clone();
    soon(move || keeper.send(Event::Next(NextEvent::GoOn)));
}

//! What other windows write.

use wasm_bindgen::JsCast;
use web_sys::StorageEvent;

use super::{BrowserShelf, Keeper, hear};
use crate::app::event::Event;
use crate::records::cupboard::Cupboard;

/// Reads what another window has changed again: half a year of a diary where it is one, else everything.
pub(super) fn listen(keeper: Keeper, send: impl Fn(Event) + Copy + 'static) {
    hear("storage", move |event| {
        let event: StorageEvent = event.unchecked_into();
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
}

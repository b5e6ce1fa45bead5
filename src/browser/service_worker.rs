//! What the service worker tells, through `public/register.js`.

use wasm_bindgen::JsValue;
use web_sys::CustomEvent;

use super::hear;
use crate::app::event::Event;

const READY: &str = "eavewater-offline-ready";
const FAILED: &str = "eavewater-offline-failed";
const UPDATE: &str = "eavewater-update-ready";
const PERSISTS: &str = "eavewater-persists";
const MAY_GO: &str = "eavewater-may-go";
const PERSIST: &str = "eavewater-persist-wanted";
const ACCEPTED: &str = "eavewater-update-accepted";

/// Turns the worker's words to events; what was said before the page listened is asked for.
pub(super) fn listen(send: impl Fn(Event) + Copy + 'static) {
    let Some(window) = web_sys::window() else { return };
    hear(READY, move |_| send(Event::Offline(true)));
    hear(FAILED, move |_| send(Event::Offline(false)));
    hear(UPDATE, move |_| send(Event::UpdateReady));
    hear(PERSISTS, move |_| send(Event::Persists(true)));
    hear(MAY_GO, move |_| send(Event::Persists(false)));
    let persists = js_sys::Reflect::get(&window, &JsValue::from_str("eavewaterPersists")).ok();
    if let Some(persists) = persists.and_then(|persists| persists.as_bool()) {
        send(Event::Persists(persists));
    }
    let said = js_sys::Reflect::get(&window, &JsValue::from_str("eavewaterOffline")).ok();
    match said.and_then(|said| said.as_string()).as_deref() {
        Some("failed") => send(Event::Offline(false)),
        Some("waiting") => send(Event::UpdateReady),
        _ => {}
    }
}

/// Lets the waiting version take over.
pub(super) fn switch() {
    tell(ACCEPTED);
}

/// Asks the browser not to throw away what is kept.
pub(super) fn ask_to_persist() {
    tell(PERSIST);
}

fn tell(name: &str) {
    if let (Some(window), Ok(event)) = (web_sys::window(), CustomEvent::new(name)) {
        // Its answer says whether a listener objected; none does.
        let _ = window.dispatch_event(&event);
    }
}

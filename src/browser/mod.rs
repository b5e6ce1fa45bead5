//! The machine's side of the page: storage, files, other windows, the service worker, the clock. One file for each.
//! No decisions: effects come in, events go out.

mod address;
mod clock;
mod files;
mod later;
mod leaving;
mod local_storage;
mod perform;
mod service_worker;
mod studies;
mod tabs;

pub use clock::moment;
pub use files::read;
pub use local_storage::BrowserShelf;
pub use perform::Keeper;

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

use crate::app::event::Event;

/// Starts listening to what comes from outside the page, for as long as the page lives.
pub fn listen(keeper: &Keeper, send: impl Fn(Event) + Copy + 'static) {
    keeper.studies.listen(send);
    keeper.sends_by(send);
    address::listen(send);
    leaving::listen(keeper.clone());
    tabs::listen(keeper.clone(), send);
    service_worker::listen(send);
    clock::listen(send);
}

/// Has something done whenever the window hears of an event, for as long as the page lives.
fn hear(name: &str, tell: impl FnMut(web_sys::Event) + 'static) {
    let heard = Closure::<dyn FnMut(web_sys::Event)>::new(tell);
    if let Some(window) = web_sys::window() {
        // Fails only for a listener that isn't a function.
        let _ = window.add_event_listener_with_callback(name, heard.as_ref().unchecked_ref());
    }
    heard.forget();
}

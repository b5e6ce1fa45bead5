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

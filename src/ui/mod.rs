//! Components: they draw views and send events. No arithmetic, no storage; one file for each place.

mod app;

mod bar;
mod notice;

mod house;
mod kept;
mod rain;
mod sizing;
mod sketch;
mod start;

mod sheet;

mod choose;
mod field;
mod figure;
mod file;

pub use app::App;

use leptos::prelude::*;

use crate::app::effect::Effect;
use crate::app::event::Event;
use crate::app::model::Model;

/// What the page needs from outside: handed in, so that it knows no storage and no files.
#[derive(Clone, Copy)]
pub struct Outside {
    /// Carries out an effect; what comes of it is an event.
    pub perform: Callback<Effect, Option<Event>>,
    /// Reads a chosen file; then its bytes and name.
    pub read: ReadFile,
}

/// Reads a file and gives its bytes and name.
pub type ReadFile = fn(web_sys::File, Box<dyn FnOnce(Vec<u8>, String)>);

/// What every component may reach.
#[derive(Clone, Copy)]
pub(crate) struct Desk {
    /// The model.
    pub model: RwSignal<Model>,
    /// Sends an event.
    pub send: Callback<Event>,
    /// Reads a chosen file.
    pub read: ReadFile,
    /// Width for figures, in pixels.
    pub width: Signal<f64>,
}

/// The desk of this page.
pub(crate) fn desk() -> Desk {
    expect_context()
}

//! What is on the page: it draws views and sends events. No arithmetic, no storage; one file for each place.

mod page;

mod bar;
mod notice;

mod ahead;
mod diary;
mod document;
mod entry;
mod generated;
mod house;
mod kept;
mod next;
mod rain;
mod size;
mod sizing;
mod sketch;
mod start;
mod upkeep;

mod checks;
mod climate;
mod habits;
mod sheet;
mod water;
mod water_test;
mod zoom;

mod choose;
mod element;
mod field;
mod figure;
mod file;
mod follow;
mod term;

pub use page::page;

use leptos::prelude::*;

use self::element::{Element, element, worded};
use self::follow::{Derived, Held};
use crate::app::case::Case;
use crate::app::effect::Effect;
use crate::app::event::Event;
use crate::app::model::{Model, Place};
use crate::app::sketch::Sketch;
use crate::words::{self, cautions};

/// What the page needs from outside: handed in, so that it knows no storage and no files.
#[derive(Clone, Copy)]
pub struct Outside {
    /// Carries out an effect; what comes of it is an event.
    pub perform: Callback<Effect, Option<Event>>,
    /// Reads a chosen file; then its bytes and name.
    pub read: ReadFile,
    /// The moment, in milliseconds since 1970 (UTC).
    pub moment: fn() -> u64,
}

/// Reads a file and gives its bytes and name.
pub type ReadFile = fn(web_sys::File, Box<dyn FnOnce(Vec<u8>, String)>);

/// What every part of the page may reach.
#[derive(Clone, Copy)]
pub(crate) struct Desk {
    /// The model.
    pub model: Held<Model>,
    /// The open site with its outcomes.
    pub case: Derived<Case>,
    /// Sends an event.
    pub send: Callback<Event>,
    /// The sketch as it was left; none before it is touched and after it is kept.
    pub sketch: Held<Option<Sketch>>,
    /// Monthly means as they were left.
    pub means: Held<rain::Means>,
    /// Reads a chosen file.
    pub read: ReadFile,
    /// The moment, in milliseconds since 1970 (UTC).
    pub moment: fn() -> u64,
}

impl Desk {
    /// A button, still blank, that sends an event.
    pub fn sends(self, event: Event) -> Element {
        element("BUTTON").attribute("type", "button").on("click", move |_| self.send.run(event.clone()))
    }

    /// A button that sends an event and then does something more, in the same breath: where the event has the button drawn
    /// anew, a second listener of it is not heard any more.
    pub fn button_then(self, text: impl Into<String>, event: Event, then: impl Fn() + 'static) -> Element {
        let pressed = move |_| {
            self.send.run(event.clone());
            then();
        };
        worded("BUTTON", text).attribute("type", "button").on("click", pressed)
    }

    /// A button that sends an event.
    pub fn button(self, text: impl Into<String>, event: Event) -> Element {
        self.sends(event).text(text)
    }
}

/// What the water isn't for, and who decides: at the foot of a place.
fn who_decides() -> Element {
    worded("P", format!("{} {}", cautions::NOT_DRINKING_WATER, cautions::WHO_DECIDES)).class("small caution")
}

/// The same, with what leads to the report and to all formulas.
fn foot(desk: Desk) -> Element {
    let to = |place: Place, text: &str| desk.button(text, Event::PlaceOpened(place)).into();
    let row = element("DIV").class("row");
    let row = row.children([to(Place::Report, &words::report::TITLE), to(Place::Method, &words::method::OPEN)]);
    element("FOOTER").class("foot").child(row).child(who_decides())
}

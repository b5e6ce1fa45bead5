//! First start: sketch, demo, or a file.

use leptos::prelude::*;

use super::element::{element, worded};
use super::file::FileButton;
use super::{Desk, who_decides};
use crate::app::event::Event;
use crate::words::kept;

/// The three ways to begin.
pub(crate) fn start(desk: Desk) -> AnyView {
    let way = |class, label, detail, event| {
        desk.sends(event).class(class).child(worded("STRONG", label)).child(worded("SPAN", detail))
    };
    let sketch = way("way main", "Sketch my house", "Roof, people, tank: five facts.", Event::SketchWanted);
    let demo =
        way("way", "Look at the demo house", "An invented household with its own invented rain.", Event::DemoWanted);
    let load = FileButton {
        label: "Load a file",
        detail: "Sites that Eavewater exported, on this device or another.",
        accept: ".json,application/json",
        class: "file way",
        event: |bytes, _| Event::FileRead(bytes),
    };
    element("SECTION")
        .class("start")
        .child(worded("H1", "Eavewater"))
        .child(worded("P", kept::WELCOME).class("lead"))
        .child(element("DIV").class("ways").child(sketch).child(demo).child(load.view(desk)))
        .child(worded("P", kept::STAYS_HERE).class("small"))
        .child(who_decides())
        .into()
}

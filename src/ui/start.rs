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
    let sketch = way(
        "way main",
        said!("Sketch my house", "Bosquejar mi casa"),
        said!("Roof, people, tank, rain: a few facts.", "Techo, personas, tanque, lluvia: unos pocos datos."),
        Event::SketchWanted,
    );
    let demo = way(
        "way",
        said!("Look at the demo house", "Mirar la casa de ejemplo"),
        said!(
            "An invented household with its own invented rain.",
            "Un hogar inventado, con su propia lluvia inventada.",
        ),
        Event::DemoWanted,
    );
    let load = FileButton {
        label: said!("Load a file", "Cargar un archivo"),
        detail: said!(
            "Sites that Eavewater exported, on this device or another.",
            "Sitios que Eavewater exportó, en este dispositivo o en otro.",
        ),
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
        .child(super::kept::languages(desk))
        .child(super::kept::sets(desk))
        .child(who_decides())
        .into()
}

//! First start: sketch, demo, or a file.

use leptos::prelude::*;

use super::{desk, file};
use crate::app::event::Event;
use crate::words::{cautions, kept};

/// The three ways to begin.
#[component]
pub fn Start() -> impl IntoView {
    let desk = desk();
    view! {
        <section class="start">
            <h1>"Eavewater"</h1>
            <p class="lead">{kept::WELCOME}</p>
            <div class="ways">
                <button type="button" class="way main" on:click=move |_| desk.send.run(Event::SketchWanted)>
                    <strong>"Sketch my house"</strong>
                    <span>"Roof, people, tank: five facts."</span>
                </button>
                <button type="button" class="way" on:click=move |_| desk.send.run(Event::DemoWanted)>
                    <strong>"Look at the demo house"</strong>
                    <span>"An invented household with its own invented rain."</span>
                </button>
                <file::FileButton
                    label="Load a file"
                    detail="Sites that Eavewater exported, on this device or another."
                    accept=".json,application/json"
                    class="way"
                    on_read=move |bytes, _| desk.send.run(Event::FileRead(bytes))
                />
            </div>
            <p class="small">{kept::STAYS_HERE}</p>
            <p class="small caution">{cautions::NOT_DRINKING_WATER} " " {cautions::WHO_DECIDES}</p>
        </section>
    }
}

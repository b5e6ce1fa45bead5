//! Sites, units, files.

use leptos::prelude::*;

use super::choose::Choose;
use super::field::TextField;
use super::{desk, file};
use crate::app::event::Event;
use crate::app::view::kept::{self, KeptView, SiteRow};
use crate::words;

/// Sites, units, files.
#[component]
pub fn Kept() -> impl IntoView {
    let desk = desk();
    let shown = Memo::new(move |_| desk.model.with(kept::kept));
    let name = Memo::new(move |_| {
        desk.model.with(|model| model.site().map(|kept| kept.site.name.clone()).unwrap_or_default())
    });
    let any = Memo::new(move |_| shown.with(|view| !view.sites.is_empty()));
    view! {
        <section class="kept">
            <h1>"Sites"</h1>
            {move || view! { <SitesOf view=shown.get()/> }}
            {move || any.get().then(|| view! {
                <TextField label="Name of the open site" text=name on_entered=move |name| desk.send.run(Event::SiteNamed(name))/>
            })}
            <div class="row">
                <button type="button" on:click=move |_| desk.send.run(Event::SketchWanted)>"Sketch another house"</button>
                <button type="button" on:click=move |_| desk.send.run(Event::DemoWanted)>"Add the demo house"</button>
            </div>
            <h2>"Units"</h2>
            {move || view! { <UnitsOf view=shown.get()/> }}
            <h2>"Files"</h2>
            <p class="small">{words::kept::STAYS_HERE} " A phone may drown: keep a file elsewhere."</p>
            <div class="row">
                <button type="button" disabled=move || !any.get() on:click=move |_| desk.send.run(Event::ExportWanted)>
                    "Export everything"
                </button>
                <file::FileButton
                    label="Import a file"
                    accept=".json,application/json"
                    on_read=move |bytes, _| desk.send.run(Event::FileRead(bytes))
                />
            </div>
            {move || {
                shown.get().file.map(|holds| {
                    let accept = move |replace| desk.send.run(Event::FileAccepted { replace });
                    view! {
                        <div class="report" role="group" aria-label="Import">
                            <p>{holds}</p>
                            <div class="row">
                                <button type="button" class="main" on:click=move |_| accept(false)>"Add"</button>
                                <button type="button" class="away" on:click=move |_| accept(true)>"Replace all"</button>
                                <button type="button" on:click=move |_| desk.send.run(Event::FileDiscarded)>"Leave it"</button>
                            </div>
                        </div>
                    }
                })
            }}
        </section>
    }
}

#[component]
fn SitesOf(
    /// The place as it is shown.
    view: KeptView,
) -> impl IntoView {
    view! {
        <ul class="sites">
            {view.sites.into_iter().map(|row| view! { <SiteOf row/> }).collect_view()}
        </ul>
    }
}

#[component]
fn SiteOf(
    /// The site.
    row: SiteRow,
) -> impl IntoView {
    let desk = desk();
    let SiteRow { id, name, detail, open } = row;
    let (copy, remove) = (format!("Duplicate {name}"), format!("Remove {name}"));
    view! {
        <li>
            <button type="button" class="part-name" aria-current=open.then_some("true") on:click=move |_| desk.send.run(Event::SiteOpened(id))>
                <strong>{name}</strong>
                <span>{detail} {open.then_some("; open")}</span>
            </button>
            <button type="button" class="plain" aria-label=copy on:click=move |_| desk.send.run(Event::SiteDuplicated(id))>
                "Duplicate"
            </button>
            <button type="button" class="plain away" aria-label=remove on:click=move |_| desk.send.run(Event::SiteRemoved(id))>
                "Remove"
            </button>
        </li>
    }
}

#[component]
fn UnitsOf(
    /// The place as it is shown.
    view: KeptView,
) -> impl IntoView {
    let desk = desk();
    let KeptView { sets, kinds, .. } = view;
    view! {
        <div class="row" role="group" aria-label="Sets of units">
            {sets
                .into_iter()
                .map(|(set, name, holds)| {
                    view! {
                        <button type="button" aria-pressed=holds.to_string() on:click=move |_| desk.send.run(Event::UnitsChosen(set))>
                            {name}
                        </button>
                    }
                })
                .collect_view()}
        </div>
        <div class="fields units">
            {kinds
                .into_iter()
                .map(|(kind, name, symbols, wanted)| {
                    let chosen = symbols.iter().position(|symbol| *symbol == wanted).unwrap_or(0);
                    let words: Vec<String> = symbols.iter().map(|symbol| (*symbol).to_owned()).collect();
                    let symbols = StoredValue::new(symbols);
                    let pick = move |at: usize| {
                        if let Some(symbol) = symbols.with_value(|symbols| symbols.get(at).copied()) {
                            desk.send.run(Event::UnitChosen(kind, symbol));
                        }
                    };
                    view! { <Choose label=name.to_owned() options=words chosen=chosen on_chosen=pick/> }
                })
                .collect_view()}
        </div>
    }
}

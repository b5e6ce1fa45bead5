//! The sheet of one part.

use leptos::html::Dialog;
use leptos::prelude::*;

use super::app::Reckoned;
use super::choose::Choose;
use super::desk;
use super::field::{QuantityField, TextField};
use crate::app::event::{Event, Shift};
use crate::app::model::KeptSite;
use crate::app::view::sheet::{self, Control, FieldView, SheetView, table_rows};
use crate::site::part::{Field, PartId};
use crate::words;

/// The sheet, over the place; nothing while no part is open.
#[component]
pub fn Sheet(
    /// The open site.
    site: Memo<Option<KeptSite>>,
    /// Its outcome.
    reckoned: Memo<Option<Reckoned>>,
) -> impl IntoView {
    let desk = desk();
    let part = Memo::new(move |_| desk.model.with(|model| model.sheet));
    let shown = Memo::new(move |_| {
        let units = desk.model.with(|model| model.units.clone());
        let reckoned = reckoned.get();
        let outcome = reckoned.as_ref().map(Reckoned::outcome);
        site.with(|site| sheet::sheet(site.as_ref()?, part.get()?, outcome, &units))
    });
    let dialog = NodeRef::<Dialog>::new();
    // The browser's own modal dialog: it keeps the focus inside, gives it back, and closes on Escape.
    Effect::new(move |_| {
        let wanted = shown.with(Option::is_some);
        let Some(dialog) = dialog.get() else { return };
        if wanted && !dialog.open() {
            // Fails only for a dialog that is not on the page or open already.
            let _ = dialog.show_modal();
        } else if !wanted && dialog.open() {
            dialog.close();
        }
    });
    let id = Memo::new(move |_| shown.with(|view| view.as_ref().map(|view| view.id)));
    view! {
        <dialog class="sheet" node_ref=dialog on:close=move |_| {
            if desk.model.with_untracked(|model| model.sheet.is_some()) {
                desk.send.run(Event::SheetClosed);
            }
        }>
            {move || id.get().map(|id| view! { <SheetOf id shown/> })}
        </dialog>
    }
}

#[component]
fn SheetOf(
    /// The part.
    id: PartId,
    /// Its sheet.
    shown: Memo<Option<SheetView>>,
) -> impl IntoView {
    let desk = desk();
    let get = move |read: fn(&SheetView) -> Vec<String>| {
        move || {
            let lines = shown.with(|view| view.as_ref().map(read)).unwrap_or_default();
            lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()
        }
    };
    let kind = move || shown.with(|view| view.as_ref().map(|view| words::parts::one(view.kind)));
    let name = Memo::new(move |_| shown.with(|view| view.as_ref().map(|view| view.name.clone()).unwrap_or_default()));
    let moves = Memo::new(move |_| shown.with(|view| view.as_ref().map_or((false, false), |view| view.moves)));
    // A field keeps its node as long as it is there and of the same make, so that typing on isn't disturbed.
    let keys = Memo::new(move |_| {
        shown.with(|view| {
            let fields = view.iter().flat_map(|view| &view.fields);
            fields.map(|field| (field.field, std::mem::discriminant(&field.control))).collect::<Vec<_>>()
        })
    });
    let cautions = shown.with_untracked(|view| view.as_ref().map(|view| view.cautions.clone()).unwrap_or_default());
    let shift = move |shift| desk.send.run(Event::PartShifted(id, shift));
    view! {
        <div class="sheet-head">
            <h2>{kind} ": " {move || name.get()}</h2>
            <button type="button" class="plain" on:click=move |_| desk.send.run(Event::SheetClosed)>"Close"</button>
        </div>
        <ul class="findings">{get(|view| view.findings.clone())}</ul>
        <ul class="state">{get(|view| view.state.clone())}</ul>
        <div class="fields">
            <TextField label="Name" text=name on_entered=move |name| desk.send.run(Event::PartNamed(id, name))/>
            <For each=move || keys.get() key=|key| *key let((field, _))>
                <FieldOf part=id field shown/>
            </For>
        </div>
        <ul class="cautions">{cautions.into_iter().map(|caution| view! { <li>{caution}</li> }).collect_view()}</ul>
        <p class="small">{words::cautions::WHO_DECIDES}</p>
        <div class="row">
            <button type="button" on:click=move |_| desk.send.run(Event::PartDuplicated(id))>"Duplicate"</button>
            <button type="button" disabled=move || !moves.get().0 on:click=move |_| shift(Shift::Up)>"Move up"</button>
            <button type="button" disabled=move || !moves.get().1 on:click=move |_| shift(Shift::Down)>"Move down"</button>
            <button type="button" class="away" on:click=move |_| desk.send.run(Event::PartRemoved(id))>"Remove"</button>
        </div>
    }
}

#[component]
fn FieldOf(
    /// The part.
    part: PartId,
    /// The value.
    field: Field,
    /// The sheet that it is on.
    shown: Memo<Option<SheetView>>,
) -> impl IntoView {
    let desk = desk();
    let view = Memo::new(move |_| {
        shown.with(|sheet| sheet.as_ref()?.fields.iter().find(|other| other.field == field).cloned())
    });
    let units = Memo::new(move |_| desk.model.with(|model| model.units.clone()));
    let label = Signal::derive(move || view.with(|view| view.as_ref().map(|view| view.label.clone()).unwrap_or_default()));
    let FieldView { hint, control, .. } = view.get_untracked()?;
    Some(match control {
        Control::Number { kind, range, .. } => {
            let text = Signal::derive(move || match view.get().map(|view| view.control) {
                Some(Control::Number { text, .. }) => text,
                _ => String::new(),
            });
            let entered = move |si| desk.send.run(Event::NumberEntered(part, field, si));
            view! { <QuantityField label hint text kind range units on_entered=entered/> }.into_any()
        }
        Control::Choice { .. } => {
            let options = Memo::new(move |_| match view.get().map(|view| view.control) {
                Some(Control::Choice { options, chosen }) => (options, chosen),
                _ => (Vec::new(), 0),
            });
            let words = Signal::derive(move || options.get().0.into_iter().map(|(_, words)| words).collect::<Vec<_>>());
            let chosen = Signal::derive(move || options.get().1);
            let pick = move |at: usize| {
                if let Some(choice) = options.with_untracked(|(options, _)| options.get(at).map(|(choice, _)| *choice)) {
                    desk.send.run(Event::ChoiceMade(part, field, choice));
                }
            };
            view! { <Choose label hint options=words chosen on_chosen=pick/> }.into_any()
        }
        Control::Table { .. } => {
            let text = move || match view.get().map(|view| view.control) {
                Some(Control::Table { text }) => text,
                _ => String::new(),
            };
            view! { <TableField part label hint text=Signal::derive(text)/> }.into_any()
        }
    })
}

/// Depths and volumes, a row a line.
#[component]
fn TableField(
    /// The tank.
    part: PartId,
    /// Its label.
    label: Signal<String>,
    /// A line of help.
    hint: Option<&'static str>,
    /// The rows as they are.
    text: Signal<String>,
) -> impl IntoView {
    let desk = desk();
    let draft = RwSignal::new(None::<String>);
    let read = move || {
        let units = desk.model.with(|model| model.units.clone());
        draft.get().map(|text| table_rows(&text, &units))
    };
    let wrong = move || match read() {
        Some(Err((line, text))) => Some(words::errors::table_row(line, &text)),
        _ => None,
    };
    let done = move || {
        if let Some(Ok(rows)) = read() {
            desk.send.run(Event::TableEntered(part, rows));
            draft.set(None);
        }
    };
    view! {
        <label class="field" class:wrong=move || wrong().is_some()>
            <span class="label">{move || label.get()}</span>
            <textarea
                rows="5"
                prop:value=move || draft.get().unwrap_or_else(|| text.get())
                on:input=move |event| draft.set(Some(event_target_value(&event)))
                on:change=move |_| done()
            ></textarea>
            <span class="remark" role="status">{wrong}</span>
            {hint.map(|hint| view! { <span class="hint">{hint}</span> })}
        </label>
    }
}

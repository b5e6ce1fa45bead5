//! A field for a quantity: the half-typed text stays in it; only what was understood goes out.

use leptos::prelude::*;

use crate::quantity::{Kind, Range, Units, typed};
use crate::words::errors;

/// What a text in a field amounts to.
fn understood(text: &str, kind: Kind, range: Range, units: &Units) -> Result<(f64, Option<String>), String> {
    let typed = typed::quantity(text, kind, units).map_err(|error| errors::typed(&error))?;
    if range.holds(typed.si) {
        Ok((typed.si, errors::understood(&typed, kind, units)))
    } else {
        Err(errors::out_of_range(kind, range, units))
    }
}

/// A labelled field for a quantity, typed with or without a unit.
#[component]
pub fn QuantityField(
    /// Its label.
    #[prop(into)]
    label: Signal<String>,
    /// A line of help.
    #[prop(default = None)]
    hint: Option<&'static str>,
    /// The value as text, in the person's unit.
    #[prop(into)]
    text: Signal<String>,
    /// Its kind.
    kind: Kind,
    /// What it may be.
    range: Range,
    /// The person's units.
    #[prop(into)]
    units: Signal<Units>,
    /// Gets a value that was understood, in the unit that its kind is kept in, when it is done.
    on_entered: impl Fn(f64) + Copy + 'static,
) -> impl IntoView {
    // While something is typed and not yet taken, it stands here.
    let draft = RwSignal::new(None::<String>);
    let read = move || draft.get().map(|text| units.with(|units| understood(&text, kind, range, units)));
    let wrong = move || read().is_some_and(|read| read.is_err());
    let remark = move || match read() {
        Some(Err(error)) => Some(error),
        Some(Ok((_, note))) => note,
        None => None,
    };
    let done = move || {
        if let Some(Ok((si, _))) = read() {
            on_entered(si);
            draft.set(None);
        }
    };
    let select_all = |event: leptos::ev::FocusEvent| event_target::<web_sys::HtmlInputElement>(&event).select();
    view! {
        <label class="field" class:wrong=wrong>
            <span class="label">{move || label.get()}</span>
            <input
                type="text"
                inputmode="text"
                autocomplete="off"
                enterkeyhint="done"
                aria-invalid=move || wrong().then_some("true")
                prop:value=move || draft.get().unwrap_or_else(|| text.get())
                on:focus=select_all
                on:input=move |event| draft.set(Some(event_target_value(&event)))
                on:change=move |_| done()
            />
            <span class="remark" role="status">{remark}</span>
            {hint.map(|hint| view! { <span class="hint">{hint}</span> })}
        </label>
    }
}

/// A labelled field for plain text.
#[component]
pub fn TextField(
    /// Its label.
    label: &'static str,
    /// The text.
    #[prop(into)]
    text: Signal<String>,
    /// Gets the text when it is done.
    on_entered: impl Fn(String) + Copy + 'static,
) -> impl IntoView {
    view! {
        <label class="field">
            <span class="label">{label}</span>
            <input
                type="text"
                autocomplete="off"
                maxlength="80"
                prop:value=move || text.get()
                on:change=move |event| on_entered(event_target_value(&event))
            />
        </label>
    }
}

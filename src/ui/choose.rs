//! A labelled list to choose one from.

use leptos::prelude::*;

/// A choice among words.
#[component]
pub fn Choose(
    /// Its label.
    #[prop(into)]
    label: Signal<String>,
    /// A line of help.
    #[prop(default = None)]
    hint: Option<&'static str>,
    /// The possibilities.
    #[prop(into)]
    options: Signal<Vec<String>>,
    /// The place of the one that holds.
    #[prop(into)]
    chosen: Signal<usize>,
    /// Gets the place of the one that is wanted.
    on_chosen: impl Fn(usize) + Copy + 'static,
) -> impl IntoView {
    let selected = move |event: leptos::ev::Event| {
        if let Ok(at) = event_target_value(&event).parse() {
            on_chosen(at);
        }
    };
    view! {
        <label class="field">
            <span class="label">{move || label.get()}</span>
            <select on:change=selected>
                {move || {
                    let chosen = chosen.get();
                    options
                        .get()
                        .into_iter()
                        .enumerate()
                        .map(|(at, words)| {
                            view! { <option value=at.to_string() selected=at == chosen>{words}</option> }
                        })
                        .collect_view()
                }}
            </select>
            {hint.map(|hint| view! { <span class="hint">{hint}</span> })}
        </label>
    }
}

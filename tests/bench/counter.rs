//! The least that Leptos does: a button that counts. What the start of the app is measured against (`start.mjs`).

#[cfg(target_arch = "wasm32")]
fn main() {
    use leptos::prelude::*;
    leptos::mount::mount_to_body(|| {
        let count = RwSignal::new(0);
        view! { <main><button on:click=move |_| count.update(|count| *count += 1)>"Count: " {count}</button></main> }
    });
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {}

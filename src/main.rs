//! Mounts the page.

fn main() {
    #[cfg(target_arch = "wasm32")]
    leptos::mount::mount_to_body(|| leptos::prelude::view! { <h1>"Eavewater"</h1> });
}

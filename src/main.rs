//! Joins the page with the machine and mounts it.

#[cfg(target_arch = "wasm32")]
fn main() {
    use eavewater::browser::{self, Keeper};
    use eavewater::ui::{App, Outside};
    use leptos::prelude::*;

    let (keeper, started) = Keeper::start();
    leptos::mount::mount_to_body(move || {
        let hands = StoredValue::new_local(keeper.clone());
        let perform = Callback::new(move |effect| hands.with_value(|keeper| keeper.perform(effect)));
        let listen = Box::new(move |send: Callback<_>| browser::listen(&keeper, move |event| send.run(event)));
        view! { <App outside=Outside { perform, read: |file, then| browser::read(file, then) } started listen/> }
    });
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    eprintln!("This program is a page: build it with `make build` and open it in a browser, or run `reckon`.");
}

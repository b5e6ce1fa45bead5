//! Joins the page with the machine and mounts it.

#[cfg(target_arch = "wasm32")]
fn main() {
    use eavewater::browser::{self, Keeper};
    use eavewater::ui::{Outside, page};
    use leptos::prelude::*;

    let (keeper, started) = Keeper::start();
    leptos::mount::mount_to_body(move || {
        let hands = StoredValue::new_local(keeper.clone());
        let perform = Callback::new(move |effect| hands.with_value(|keeper| keeper.perform(effect)));
        let listen = move |send: Callback<_>| browser::listen(&keeper, move |event| send.run(event));
        page(Outside { perform, read: browser::read, moment: browser::moment }, started, listen)
    });
    // What public/index.html says until the program is there.
    if let Ok(Some(words)) = document().query_selector(".coming") {
        words.remove();
    }
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    eprintln!("This program is a page: build it with `make build` and open it in a browser, or run `reckon`.");
}

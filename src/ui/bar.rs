//! The bar with the places: at the bottom of a phone, at the side of a wide screen.

use leptos::prelude::*;

use super::desk;
use crate::app::event::Event;
use crate::app::model::Place;
use crate::app::view::frame;

/// The bar; nothing while there is no site.
#[component]
pub fn Bar() -> impl IntoView {
    let desk = desk();
    let place = Memo::new(move |_| desk.model.with(|model| (!model.sketching).then_some(model.place)));
    let name = Memo::new(move |_| desk.model.with(|model| model.site().map(|kept| kept.site.name.clone())));
    view! {
        <header class="head">
            <p class="site-name">{move || name.get().unwrap_or_else(|| "Eavewater".to_owned())}</p>
        </header>
        <nav class="bar" aria-label="Places">
            {Place::ALL
                .map(|to| {
                    view! {
                        <button
                            type="button"
                            aria-current=move || (place.get() == Some(to)).then_some("page")
                            on:click=move |_| desk.send.run(Event::PlaceOpened(to))
                        >
                            <svg class="symbol" viewBox="0 0 24 24" aria-hidden="true">
                                <path d=symbol(to)/>
                            </svg>
                            <span>{frame::place(to)}</span>
                        </button>
                    }
                })
                .collect_view()}
        </nav>
    }
}

/// A line drawing for each place.
const fn symbol(place: Place) -> &'static str {
    match place {
        Place::House => "M3 11 L12 4 L21 11 M6 9.5 V20 H18 V9.5 M10 20 V14 H14 V20",
        Place::Rain => "M12 3 C8 8 6 11 6 14 A6 6 0 0 0 18 14 C18 11 16 8 12 3 Z",
        Place::Sizing => "M4 20 H20 M4 20 V4 M6 8 L10 8 L13 17 L16 12 L20 6",
        Place::Kept => "M4 7 H20 V20 H4 Z M4 7 L7 3 H17 L20 7 M9 12 H15",
    }
}

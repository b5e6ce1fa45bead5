//! What is told, at the top of the place.

use leptos::prelude::*;

use super::desk;
use crate::app::event::Event;
use crate::app::view::frame::{self, Offer};

/// The notice, announced to those who can't see it.
#[component]
pub fn NoticeStrip() -> impl IntoView {
    let desk = desk();
    let notice = Memo::new(move |_| desk.model.with(frame::notice));
    view! {
        <div class="notices" role="status" aria-live="polite">
            {move || {
                notice
                    .get()
                    .map(|notice| {
                        let offer = notice.offer.map(|offer| offer_button(offer, desk.send));
                        view! {
                            <div class="notice" class:warning=notice.warning>
                                <p>{notice.text}</p>
                                <div class="row">
                                    {offer}
                                    <button type="button" class="plain" on:click=move |_| desk.send.run(Event::NoticeDismissed)>
                                        "Dismiss"
                                    </button>
                                </div>
                            </div>
                        }
                    })
            }}
        </div>
    }
}

fn offer_button(offer: Offer, send: Callback<Event>) -> impl IntoView {
    let (text, event) = match offer {
        Offer::Undo => ("Undo", Event::UndoWanted),
        Offer::Switch => ("Take the new version", Event::UpdateAccepted),
        Offer::Export => ("Export a file", Event::ExportWanted),
    };
    view! { <button type="button" on:click=move |_| send.run(event.clone())>{text}</button> }
}

//! The whole page.

use std::cell::Cell;
use std::time::Duration;

use leptos::prelude::*;

use super::element::{element, focus_on, live, worded};
use super::follow::{Held, derived, derived_from, whenever};
use super::{
    Desk, Outside, ahead, bar, diary, document, entry, house, kept, next, notice, rain, sheet, sizing, sketch, start,
    upkeep,
};
use crate::app::case::Case;
use crate::app::effect::Effect;
use crate::app::event::Event;
use crate::app::model::{Model, Place};
use crate::app::update::update;
use crate::app::view::{charts, frame};
use crate::{language, words};

/// Widest that a figure is drawn.
const WIDEST: f64 = 1300.0;
/// Width of the side rail and the margins on a wide screen, and of the margins on a phone.
const BESIDE_WIDE: f64 = 176.0;
const BESIDE_NARROW: f64 = 32.0;
/// From this width on the bar stands at the side.
const WIDE: f64 = 900.0;

fn figure_width() -> f64 {
    let window = window().inner_width().ok().and_then(|width| width.as_f64()).unwrap_or(390.0);
    let room = (window - if window >= WIDE { BESIDE_WIDE } else { BESIDE_NARROW }).clamp(280.0, WIDEST);
    charts::fitting(room)
}

/// The page: the bar, the notice, the place, the sheet. It begins with the event `started`; `listen` is called once
/// with the sender, to bring in what comes from outside.
pub fn page(outside: Outside, started: Event, listen: impl FnOnce(Callback<Event>)) -> AnyView {
    let model = Held::new(Model::default());
    let devices_own = language::spoken();
    let own_title = document().title();
    let send = Callback::new(move |event: Event| {
        let mut events = vec![event];
        while let Some(event) = events.pop() {
            let happened = |model: &mut Model| {
                let effects = update(model, event);
                // Whoever hears of the change finds the language changed.
                language::speak(model.language.unwrap_or(devices_own));
                effects
            };
            let effects: Vec<Effect> = model.change(happened).unwrap_or_default();
            // In their order, so that a page killed in between leaves nothing named that isn't there.
            let come: Vec<Event> = effects.into_iter().filter_map(|effect| outside.perform.run(effect)).collect();
            events.extend(come.into_iter().rev());
        }
    });
    let sketch = Held::new(None);
    let means = Held::new(super::rain::Means::default());
    let width = Held::new(figure_width());
    window_event_listener(leptos::ev::resize, move |_| {
        let now = figure_width();
        if width.get_untracked() != now {
            width.set(now);
        }
    });
    send.run(started);
    listen(send);
    let language = derived(move || model.with(|model| model.language.unwrap_or(devices_own)));
    // All of it anew in another language.
    live(move || {
        let root = document().document_element();
        let _no_root = root.map(|root| root.set_attribute("lang", language.get().tag()));
        let case = derived_from(move |before| model.with(|model| Case::of(model, width.get(), before)));
        untrack(|| {
            all(
                Desk { model, case, send, sketch, means, read: outside.read, moment: outside.moment },
                own_title.clone(),
            )
        })
    })
}

/// All of it, in the language that is spoken.
fn all(desk: Desk, own_title: String) -> AnyView {
    let showing = derived(move || desk.model.with(Showing::of));
    // A place begins at its top, and with its number or heading where what had the focus is gone.
    let last = Cell::new(None);
    whenever(move |_| {
        // What is printed is named after it.
        let now = showing.get();
        let title = match now {
            Showing::Place(Place::Report) => {
                desk.model.with_untracked(|model| model.site().map(|kept| words::report::title_of(&kept.site.name)))
            }
            Showing::Place(place) => Some([frame::place(place), " · ", &own_title].concat()),
            _ => None,
        };
        document().set_title(title.as_ref().unwrap_or(&own_title));
        next::to_the_top();
        let before = last.replace(Some(now));
        if before.is_some() {
            request_animation_frame(place_focus);
        }
        if before == Some(Showing::Sketch) {
            arrive();
        }
    });
    let place = live(move || match showing.get() {
        Showing::Sketch => sketch::sketch(desk),
        Showing::Form => entry::entry(desk),
        Showing::Start => start::start(desk),
        Showing::Place(Place::House) => house::house(desk),
        Showing::Place(Place::Diary) => diary::diary(desk),
        Showing::Place(Place::Ahead) => ahead::ahead(desk),
        Showing::Place(Place::Upkeep) => upkeep::upkeep(desk),
        Showing::Place(Place::Rain) => rain::rain(desk),
        Showing::Place(Place::Sizing) => sizing::sizing(desk),
        Showing::Place(Place::Kept) => kept::kept(desk),
        Showing::Place(Place::Report) => document::report(desk),
        Showing::Place(Place::Method) => document::method(desk),
    });
    // The address keeps the name of the place.
    let skip = worded("A", phrase!("Skip to the content", "Ir al contenido")).on("click", |event| {
        event.prevent_default();
        focus_on("#place");
    });
    let main = element("MAIN").attribute("id", "place").attribute("tabindex", "-1");
    vec![
        skip.class("skip").attribute("href", "#place").into(),
        bar::head(desk),
        bar::bar(desk),
        main.child(notice::notices(false, desk)).child(next::trial_banner(desk)).child(place).into(),
        sheet::sheet(desk),
    ]
    .into_any()
}

/// The place where a kept sketch leads is deaf for a moment: a second tap on the button that kept it is meant for nothing there.
fn arrive() {
    const DEAF: Duration = Duration::from_millis(350);
    let hears = |hears: bool| {
        let place = document().get_element_by_id("place");
        let _gone = place.map(|place| place.set_attribute("class", if hears { "" } else { "arriving" }));
    };
    hears(false);
    set_timeout(move || hears(true), DEAF);
}

/// Puts the focus on the number that a form asks for, else on the heading where it stands on nothing.
fn place_focus() {
    let document = document();
    if matches!(document.query_selector("#entry-number"), Ok(Some(_))) {
        focus_on("#entry-number");
    } else if document.active_element().is_none_or(|on| on.tag_name() == "BODY")
        && let Ok(Some(heading)) = document.query_selector("#place h1")
    {
        // Fails never for such a name.
        let _ = heading.set_attribute("tabindex", "-1");
        focus_on("#place h1");
    }
}

/// What the page shows.
#[derive(Clone, Copy, PartialEq)]
enum Showing {
    Start,
    Sketch,
    Form,
    Place(Place),
}

impl Showing {
    fn of(model: &Model) -> Self {
        match model.site() {
            _ if model.sketching => Showing::Sketch,
            Some(_) if model.form.is_some() => Showing::Form,
            None if !matches!(model.place, Place::Kept | Place::Method) => Showing::Start,
            _ => Showing::Place(model.place),
        }
    }
}

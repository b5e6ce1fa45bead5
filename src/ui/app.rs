//! The whole page.

use std::sync::Arc;

use leptos::prelude::*;

use super::{Desk, Outside, bar, house, kept, notice, rain, sheet, sizing, sketch, start};
use crate::app::effect::Effect;
use crate::app::event::Event;
use crate::app::model::{KeptSite, Model, Place};
use crate::app::update::update;
use crate::app::view::Outcome;
use crate::engine::question::answer;
use crate::site::trial::Trial;

/// An outcome that counts as changed when it was reckoned anew.
#[derive(Clone)]
pub(crate) struct Reckoned(Arc<Outcome>);

impl Reckoned {
    /// The outcome.
    pub fn outcome(&self) -> &Outcome {
        &self.0
    }
}

impl PartialEq for Reckoned {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

fn reckon(kept: &KeptSite, trial: Trial) -> Option<Reckoned> {
    let rain = kept.rain.as_deref()?;
    Some(Reckoned(Arc::new(answer(&trial.of(&kept.site), rain))))
}

/// Widest that a figure is drawn.
const WIDEST: f64 = 760.0;
/// Width of the side rail and the margins on a wide screen, and of the margins on a phone.
const BESIDE_WIDE: f64 = 176.0;
const BESIDE_NARROW: f64 = 32.0;
/// From this width on the bar stands at the side.
const WIDE: f64 = 900.0;

fn figure_width() -> f64 {
    let window = window().inner_width().ok().and_then(|width| width.as_f64()).unwrap_or(390.0);
    (window - if window >= WIDE { BESIDE_WIDE } else { BESIDE_NARROW }).clamp(280.0, WIDEST)
}

/// The page: the bar, the notice, the place, the sheet.
#[component]
pub fn App(
    /// What it needs from outside.
    outside: Outside,
    /// What it starts with.
    started: Event,
    /// Called once with the sender, to bring in what comes from outside.
    listen: Box<dyn FnOnce(Callback<Event>)>,
) -> impl IntoView {
    let model = RwSignal::new(Model::default());
    let send = Callback::new(move |event: Event| {
        let mut events = vec![event];
        while let Some(event) = events.pop() {
            let effects: Vec<Effect> = model.try_update(|model| update(model, event)).unwrap_or_default();
            events.extend(effects.into_iter().rev().filter_map(|effect| outside.perform.run(effect)));
        }
    });
    let width = RwSignal::new(figure_width());
    window_event_listener(leptos::ev::resize, move |_| {
        let now = figure_width();
        if width.get_untracked() != now {
            width.set(now);
        }
    });
    provide_context(Desk { model, send, read: outside.read, width: width.into() });
    send.run(started);
    listen(send);

    let site = Memo::new(move |_| model.with(|model| model.site().cloned()));
    let reckoned = Memo::new(move |_| site.with(|site| reckon(site.as_ref()?, Trial::NONE)));
    let trial = Memo::new(move |_| model.with(|model| model.trial));
    let tried = Memo::new(move |_| {
        let trial = trial.get();
        if trial == Trial::NONE { None } else { site.with(|site| reckon(site.as_ref()?, trial)) }
    });
    let showing = Memo::new(move |_| {
        model.with(|model| match model.site() {
            _ if model.sketching => Showing::Sketch,
            None if model.place != Place::Kept => Showing::Start,
            _ => Showing::Place(model.place),
        })
    });
    view! {
        <a class="skip" href="#place">"Skip to the content"</a>
        <bar::Bar/>
        <main id="place" tabindex="-1">
            <notice::NoticeStrip/>
            {move || match showing.get() {
                Showing::Sketch => view! { <sketch::SketchForm/> }.into_any(),
                Showing::Start => view! { <start::Start/> }.into_any(),
                Showing::Place(Place::House) => view! { <house::House site reckoned/> }.into_any(),
                Showing::Place(Place::Rain) => view! { <rain::RainPlace site/> }.into_any(),
                Showing::Place(Place::Sizing) => view! { <sizing::Sizing site reckoned tried/> }.into_any(),
                Showing::Place(Place::Kept) => view! { <kept::Kept/> }.into_any(),
            }}
        </main>
        <sheet::Sheet site reckoned/>
    }
}

/// What the page shows.
#[derive(Clone, Copy, PartialEq)]
enum Showing {
    Start,
    Sketch,
    Place(Place),
}

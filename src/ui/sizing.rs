//! Sizing: the answer in words first, what can be dragged, then what stands behind it.

use leptos::prelude::*;

use super::app::Reckoned;
use super::choose::Choose;
use super::desk;
use super::figure::{ChartFigure, Picture, TableOf};
use crate::app::event::{Event, Lever};
use crate::app::model::KeptSite;
use crate::app::view::sizing::{self, Results, SizingView};
use crate::site::trial::Trial;
use crate::words;

/// Sizing of the open site.
#[component]
pub fn Sizing(
    /// The open site.
    site: Memo<Option<KeptSite>>,
    /// Its outcome.
    reckoned: Memo<Option<Reckoned>>,
    /// The outcome of the trial.
    tried: Memo<Option<Reckoned>>,
) -> impl IntoView {
    let desk = desk();
    let shown = Memo::new(move |_| {
        let (units, trial) = desk.model.with(|model| (model.units.clone(), model.trial));
        let (reckoned, tried) = (reckoned.get(), tried.get());
        let (now, tried) = (reckoned.as_ref().map(Reckoned::outcome), tried.as_ref().map(Reckoned::outcome));
        site.with(|site| Some(sizing::sizing(site.as_ref()?, now, trial, tried, &units, desk.width.get())))
    });
    let headline = Memo::new(move |_| shown.with(|view| view.as_ref().map(|view| view.headline.clone())));
    let trial = Memo::new(move |_| shown.with(|view| view.as_ref().and_then(|view| view.trial.clone())));
    let results = Memo::new(move |_| shown.with(|view| view.as_ref().and_then(|view| view.results.clone())));
    let is_trial = Memo::new(move |_| desk.model.with(|model| model.trial != Trial::NONE));
    view! {
        <section class="sizing">
            <h1 class="headline">{headline}</h1>
            {move || {
                results.with(|results| results.is_some()).then(|| {
                    view! {
                        <div class="levers" role="group" aria-label="What if">
                            <h2>"What if"</h2>
                            {Lever::ALL.map(|lever| view! { <LeverOf lever shown/> }).collect_view()}
                            <p class="trial" role="status">
                                {move || trial.get().map(|(headline, compared)| {
                                    view! { <strong>{headline}</strong> " " {compared} }
                                })}
                            </p>
                            <div class="row">
                                <button type="button" disabled=move || !is_trial.get() on:click=move |_| desk.send.run(Event::TrialKept)>
                                    "Keep as the house"
                                </button>
                                <button type="button" disabled=move || !is_trial.get() on:click=move |_| desk.send.run(Event::TrialDropped)>
                                    "Back to the house"
                                </button>
                            </div>
                        </div>
                    }
                })
            }}
            {move || results.get().map(|results| view! { <ResultsOf results/> })}
            <Reckoning shown/>
            <p class="small caution">{words::cautions::NOT_DRINKING_WATER} " " {words::cautions::WHO_DECIDES}</p>
        </section>
    }
}

/// One lever: doubled or halved twice over, in even steps of the finger.
#[component]
fn LeverOf(
    /// Which.
    lever: Lever,
    /// The place as it is shown.
    shown: Memo<Option<SizingView>>,
) -> impl IntoView {
    let desk = desk();
    let view = Memo::new(move |_| {
        shown.with(|view| view.as_ref()?.levers.iter().find(|other| other.lever == lever).cloned())
    });
    let label = move || view.get().map(|view| view.label);
    let value = move || view.get().map(|view| view.value).unwrap_or_default();
    let place = move || view.get().map_or(0.0, |view| view.factor.log2());
    view! {
        <label class="lever">
            <span class="label">{label}</span>
            <output>{value}</output>
            <input
                type="range"
                min="-2"
                max="2"
                step="0.05"
                aria-valuetext=value
                prop:value=move || place().to_string()
                on:input=move |event| {
                    if let Ok(place) = event_target_value(&event).parse::<f64>() {
                        desk.send.run(Event::LeverDragged(lever, place.exp2()));
                    }
                }
            />
        </label>
    }
}

/// What stands behind the answer.
#[component]
fn ResultsOf(
    /// It all.
    results: Results,
) -> impl IntoView {
    let Results { reservations, good_years, statistics, parts, charts, years } = results;
    let list = |lines: Vec<String>| lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view();
    view! {
        <ul class="reservations">{list(reservations)}</ul>
        {good_years.map(|drawing| view! { <Picture drawing name="Share of good years, with the range that it may lie in"/> })}
        {charts.into_iter().map(|chart| view! { <ChartFigure chart/> }).collect_view()}
        <h3>"Year by year"</h3>
        <TableOf table=years name="Year by year"/>
        <h3>"What the parts did"</h3>
        <ul class="notes">{list(parts)}</ul>
        <h3>"Figures"</h3>
        <ul class="notes">{list(statistics)}</ul>
    }
}

/// How it is reckoned.
#[component]
fn Reckoning(
    /// The place as it is shown.
    shown: Memo<Option<SizingView>>,
) -> impl IntoView {
    let desk = desk();
    let choice = move |read: fn(&SizingView) -> &Vec<(f64, &'static str, bool)>| {
        Memo::new(move |_| shown.with(|view| view.as_ref().map(|view| read(view).clone()).unwrap_or_default()))
    };
    let (starts, rules) = (choice(|view| &view.starts), choice(|view| &view.rules));
    let words = |options: Memo<Vec<(f64, &'static str, bool)>>| {
        Signal::derive(move || options.get().into_iter().map(|(_, words, _)| words.to_owned()).collect::<Vec<_>>())
    };
    let chosen = |options: Memo<Vec<(f64, &'static str, bool)>>| {
        Signal::derive(move || options.with(|options| options.iter().position(|(_, _, holds)| *holds).unwrap_or(0)))
    };
    let at = |options: Memo<Vec<(f64, &'static str, bool)>>, at: usize| {
        options.with_untracked(|options| options.get(at).map(|(value, _, _)| *value))
    };
    let start = move |place| {
        if let Some(share) = at(starts, place) {
            desk.send.run(Event::StartChosen(share));
        }
    };
    let rule = move |place| {
        if let Some(inflow_first) = at(rules, place) {
            desk.send.run(Event::RuleChosen(inflow_first));
        }
    };
    view! {
        <details>
            <summary>"How it is reckoned"</summary>
            <div class="fields">
                <Choose label="Tanks on the first day".to_owned() options=words(starts) chosen=chosen(starts) on_chosen=start/>
                <Choose label=words::sizing::RULE.to_owned() options=words(rules) chosen=chosen(rules) on_chosen=rule/>
            </div>
            <p class="small">{words::sizing::HOW}</p>
        </details>
    }
}

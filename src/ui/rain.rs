//! The rain: read, judged, kept, looked at.

use leptos::prelude::*;

use super::choose::Choose;
use super::field::{QuantityField, TextField};
use super::figure::ChartFigure;
use super::{desk, file};
use crate::app::event::Event;
use crate::app::model::KeptSite;
use crate::app::view::rain::{self, KeptRainView, RainView, WaitingView};
use crate::quantity::{Kind, Range, shown};
use crate::site::rain::Normals;
use crate::words;

/// The rain of the open site.
#[component]
pub fn RainPlace(
    /// The open site.
    site: Memo<Option<KeptSite>>,
) -> impl IntoView {
    let desk = desk();
    let shown = Memo::new(move |_| {
        let (waiting, units) = desk.model.with(|model| (model.read_rain.clone(), model.units.clone()));
        site.with(|site| Some(rain::rain(site.as_ref()?, waiting.as_ref(), &units, desk.width.get())))
    });
    view! {
        <section class="rain">
            <h1>{words::rain::TITLE}</h1>
            {move || {
                shown.get().map(|RainView { waiting, kept }| match (waiting, kept) {
                    (Some(waiting), _) => view! { <Waiting waiting/> }.into_any(),
                    (None, Some(kept)) => view! { <KeptRain kept/> }.into_any(),
                    (None, None) => view! { <p class="lead">{words::rain::NONE}</p> <Sources/> }.into_any(),
                })
            }}
        </section>
    }
}

/// The ways to give rain.
#[component]
fn Sources() -> impl IntoView {
    let desk = desk();
    let pasted = RwSignal::new(String::new());
    view! {
        <div class="sources">
            <file::FileButton
                label="Load a rain record"
                detail="CSV with a date and a depth in each row, or a GHCN-Daily station file."
                accept=".csv,.txt,.tsv,text/csv,text/plain"
                class="way main"
                on_read=move |bytes, name| desk.send.run(Event::RainRead(bytes, name))
            />
            <details>
                <summary>"Paste a record"</summary>
                <label class="field">
                    <span class="label">"Date and depth, a day a line"</span>
                    <textarea
                        rows="6"
                        placeholder="2004-07-30, 12.5"
                        prop:value=move || pasted.get()
                        on:input=move |event| pasted.set(event_target_value(&event))
                    ></textarea>
                </label>
                <button
                    type="button"
                    on:click=move |_| {
                        desk.send.run(Event::RainRead(pasted.get_untracked().into_bytes(), "Pasted text".to_owned()));
                    }
                >
                    "Read it"
                </button>
            </details>
            <details>
                <summary>"Enter twelve monthly means"</summary>
                <NormalsForm/>
            </details>
        </div>
    }
}

/// What a month's mean may be, in mm.
const MONTHLY: Range = Range::new(0.0, 5_000.0);
/// What its rain days may be.
const RAIN_DAYS: Range = Range::new(0.0, 28.0);

#[component]
fn NormalsForm() -> impl IntoView {
    let desk = desk();
    let units = Memo::new(move |_| desk.model.with(|model| model.units.clone()));
    let totals = RwSignal::new([None::<f64>; 12]);
    let days = RwSignal::new([None::<f64>; 12]);
    let source = RwSignal::new("Monthly means, as entered".to_owned());
    let whole = move || totals.with(|totals| totals.iter().all(Option::is_some));
    let keep = move |_| {
        let all = |values: [Option<f64>; 12]| values.iter().all(Option::is_some).then(|| values.map(Option::unwrap_or_default));
        if let Some(totals_mm) = all(totals.get_untracked()) {
            let rain_days = all(days.get_untracked());
            desk.send.run(Event::NormalsEntered(Normals { source: source.get_untracked(), totals_mm, rain_days }));
        }
    };
    view! {
        <p class="small">{words::rain::EVEN_RAIN}</p>
        <p class="small">"Rain days may stay empty; fill in all twelve or none."</p>
        <TextField label="Where they come from" text=source on_entered=move |text| source.set(text)/>
        <div class="months">
            {(0..12)
                .map(|month| {
                    let name = words::MONTHS[month];
                    let total = Signal::derive(move || {
                        let value = totals.with(|totals| totals[month]);
                        value.map(|mm| units.with(|units| shown::entered(mm, Kind::Depth, units))).unwrap_or_default()
                    });
                    let rainy = Signal::derive(move || {
                        let value = days.with(|days| days[month]);
                        value.map(|number| shown::significant(number, 3)).unwrap_or_default()
                    });
                    view! {
                        <QuantityField
                            label=name.to_owned()
                            text=total
                            kind=Kind::Depth
                            range=MONTHLY
                            units
                            on_entered=move |mm| totals.update(|totals| totals[month] = Some(mm))
                        />
                        <QuantityField
                            label=format!("{name}, rain days")
                            text=rainy
                            kind=Kind::Count
                            range=RAIN_DAYS
                            units
                            on_entered=move |number| days.update(|days| days[month] = Some(number))
                        />
                    }
                })
                .collect_view()}
        </div>
        <button type="button" disabled=move || !whole() on:click=keep>"Keep these means"</button>
    }
}

/// Rain that was read, with its report, before anything is kept.
#[component]
fn Waiting(
    /// What was read.
    waiting: WaitingView,
) -> impl IntoView {
    let desk = desk();
    let WaitingView { source, summary, mean_year, doubts, notes, units, unit } = waiting;
    let chosen = units.iter().position(|(other, _)| *other == unit).unwrap_or(0);
    let words: Vec<String> = units.iter().map(|(_, words)| (*words).to_owned()).collect();
    let units = StoredValue::new(units);
    let pick = move |at: usize| {
        if let Some((unit, _)) = units.with_value(|units| units.get(at).copied()) {
            desk.send.run(Event::RainUnitChosen(unit));
        }
    };
    let list = |lines: Vec<String>| lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view();
    let clean = doubts.is_empty() && notes.is_empty();
    view! {
        <div class="report">
            <h2>{source}</h2>
            <p>{summary} " " {mean_year}</p>
            {clean.then(|| view! { <p>"Nothing odd was found."</p> })}
            <ul class="findings">{list(doubts)}</ul>
            <ul class="notes">{list(notes)}</ul>
            <Choose label="The file counts in".to_owned() options=words chosen=chosen on_chosen=pick/>
            <div class="row">
                <button type="button" class="main" on:click=move |_| desk.send.run(Event::RainKept)>"Keep this record"</button>
                <button type="button" on:click=move |_| desk.send.run(Event::RainDiscarded)>"Discard it"</button>
            </div>
            <p class="small">"Nothing is kept until you say so."</p>
        </div>
    }
}

/// The rain that the site has.
#[component]
fn KeptRain(
    /// What it looks like.
    kept: KeptRainView,
) -> impl IntoView {
    let desk = desk();
    let KeptRainView { kind, source, summary, caution, charts, dry_spells, treatments } = kept;
    let changing = RwSignal::new(false);
    view! {
        <p class="lead">{kind} ": " {source}</p>
        <p>{summary}</p>
        {caution.map(|caution| view! { <p class="caution">{caution}</p> })}
        {(!treatments.is_empty()).then(|| {
            let chosen = treatments.iter().position(|(_, _, holds)| *holds).unwrap_or(0);
            let words: Vec<String> = treatments.iter().map(|(_, words, _)| words.clone()).collect();
            let ways = StoredValue::new(treatments);
            let pick = move |at: usize| {
                if let Some(treatment) = ways.with_value(|ways| ways.get(at).map(|(treatment, _, _)| *treatment)) {
                    desk.send.run(Event::MissingDaysChosen(treatment));
                }
            };
            view! { <Choose label=words::rain::MISSING_DAYS.to_owned() options=words chosen=chosen on_chosen=pick/> }
        })}
        {charts.into_iter().map(|chart| view! { <ChartFigure chart/> }).collect_view()}
        {(!dry_spells.is_empty()).then(|| {
            view! {
                <h3>"Longest dry spells"</h3>
                <p class="small">"Days in a row with less than 1 mm."</p>
                <ol class="spells">
                    {dry_spells.into_iter().map(|(days, when)| view! { <li><strong>{days}</strong> " " {when}</li> }).collect_view()}
                </ol>
            }
        })}
        <div class="row">
            <button type="button" aria-expanded=move || changing.get().to_string() on:click=move |_| changing.update(|changing| *changing = !*changing)>
                "Give other rain"
            </button>
            <button type="button" class="away" on:click=move |_| desk.send.run(Event::RainRemoved)>"Remove this rain"</button>
        </div>
        {move || changing.get().then(|| view! { <Sources/> })}
    }
}

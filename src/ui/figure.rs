//! Draws a figure, with the value under the finger and the table of the same numbers one tap away.

use leptos::prelude::*;

use crate::app::view::charts::Chart;
use crate::figures::{Drawing, Mark, Reading, Table};
use crate::site::part::PartId;

/// Marks as SVG; parts answer to taps and to Enter.
fn marks(marks: Vec<Mark>, on_part: Option<Callback<Vec<PartId>>>) -> AnyView {
    marks
        .into_iter()
        .map(|mark| match mark {
            Mark::Path { d, ink } => view! { <path class=ink.class() d=d/> }.into_any(),
            Mark::Text { x, y, anchor, text, ink, size } => {
                view! {
                    <text class=ink.class() x=x y=y text-anchor=anchor.attribute() font-size=size>
                        {text}
                    </text>
                }
                .into_any()
            }
            Mark::Part(target) => {
                let parts = StoredValue::new(target.parts);
                let tapped = move || {
                    if let Some(on_part) = on_part {
                        on_part.run(parts.get_value());
                    }
                };
                view! {
                    <g
                        class="part"
                        role="button"
                        tabindex="0"
                        aria-label=target.name
                        on:click=move |_| tapped()
                        on:keydown=move |event| {
                            if matches!(event.key().as_str(), "Enter" | " ") {
                                event.prevent_default();
                                tapped();
                            }
                        }
                    >
                        <rect class="tap" x=target.x y=target.y width=target.width height=target.height rx="6"/>
                        {self::marks(target.marks, on_part)}
                    </g>
                }
                .into_any()
            }
        })
        .collect_view()
        .into_any()
}

/// A drawing whose parts can be tapped.
#[component]
pub fn Picture(
    /// The drawing.
    drawing: Drawing,
    /// What it is, for those who can't see it.
    name: &'static str,
    /// Gets the parts that were tapped.
    #[prop(optional)]
    on_part: Option<Callback<Vec<PartId>>>,
) -> impl IntoView {
    view! {
        <svg
            class="figure"
            role=if on_part.is_some() { "group" } else { "img" }
            aria-label=name
            viewBox=format!("0 0 {} {}", drawing.width, drawing.height)
            width=drawing.width
            height=drawing.height
        >
            {marks(drawing.marks, on_part)}
        </svg>
    }
}

/// A chart with its title, the value under the finger, and its table.
#[component]
pub fn ChartFigure(
    /// The chart.
    chart: Chart,
) -> impl IntoView {
    let Chart { title, caption, drawing, table } = chart;
    let (width, readings) = (drawing.width, StoredValue::new(drawing.readings.clone()));
    let under = RwSignal::new(None::<Reading>);
    let moved = move |event: leptos::ev::PointerEvent| {
        let Some(target) = event.current_target() else { return };
        let target: web_sys::Element = wasm_bindgen::JsCast::unchecked_into(target);
        let shown = f64::from(target.client_width());
        let x = f64::from(event.offset_x()) * if shown > 0.0 { width / shown } else { 1.0 };
        under.set(readings.with_value(|readings| nearest(readings, x)));
    };
    view! {
        <figure>
            <figcaption>
                <h3>{title}</h3>
                <p class="small">{caption}</p>
            </figcaption>
            <div class="under-finger" on:pointermove=moved on:pointerdown=moved on:pointerleave=move |_| under.set(None)>
                <Picture drawing name=title/>
                {move || {
                    under.get().map(|reading| {
                        let left = format!("left: {}%", 100.0 * reading.x / width);
                        view! { <span class="hair" style=left></span> }
                    })
                }}
            </div>
            <p class="reading">
                {move || match under.get() {
                    Some(reading) => format!("{}: {}", reading.label, reading.value),
                    None => "Touch the chart to read it.".to_owned(),
                }}
            </p>
            <details>
                <summary>"The same as a table"</summary>
                <TableOf table name=title/>
            </details>
        </figure>
    }
}

fn nearest(readings: &[Reading], x: f64) -> Option<Reading> {
    let distance = |reading: &&Reading| (reading.x - x).abs();
    readings.iter().min_by(|a, b| distance(a).total_cmp(&distance(b))).cloned()
}

/// A table that scrolls within itself where it is wider than the page.
#[component]
pub fn TableOf(
    /// The table.
    table: Table,
    /// What it is.
    name: &'static str,
) -> impl IntoView {
    view! {
        <div class="table" role="region" aria-label=name tabindex="0">
            <table>
                <thead>
                    <tr>{table.columns.into_iter().map(|column| view! { <th scope="col">{column}</th> }).collect_view()}</tr>
                </thead>
                <tbody>
                    {table
                        .rows
                        .into_iter()
                        .map(|row| {
                            let mut cells = row.into_iter();
                            let head = cells.next().map(|cell| view! { <th scope="row">{cell}</th> });
                            view! { <tr>{head} {cells.map(|cell| view! { <td>{cell}</td> }).collect_view()}</tr> }
                        })
                        .collect_view()}
                </tbody>
            </table>
        </div>
    }
}

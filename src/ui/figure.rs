//! Draws a figure, with the value under the finger and the table of the same numbers one tap away.

use leptos::attr::any_attribute::{AnyAttribute, IntoAnyAttribute};
use leptos::html::inner_html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::Desk;
use super::element::{Element, attribute, element, key_of, listener, live, nothing, worded};
use super::follow::Held;
use crate::app::event::Event;
use crate::app::view::charts::Chart;
use crate::figures::drawing::{Target, apart, nearest_reading};
use crate::figures::svg::write_marks;
use crate::figures::{Drawing, Mark, Reading, Table};
use crate::quantity::decimal::tenths;
use crate::site::part::PartId;
use crate::words;

/// An SVG image: its attributes and the groups that it holds.
pub(crate) fn svg(attributes: Vec<AnyAttribute>, groups: Vec<AnyView>) -> AnyView {
    leptos::svg::svg().add_any_attr(attributes).child(groups).into_any()
}

/// A group in an SVG image: its attributes and its content, which must be escaped.
pub(crate) fn group(mut attributes: Vec<AnyAttribute>, content: String) -> AnyView {
    attributes.push(inner_html(content).into_any_attr());
    leptos::svg::g().add_any_attr(attributes).into_any()
}

/// Marks that only are seen.
fn seen(marks: &[Mark]) -> AnyView {
    let mut content = String::new();
    write_marks(&mut content, marks);
    group(Vec::new(), content)
}

/// What comes of the parts of a drawing when they are touched.
#[derive(Clone)]
pub(crate) struct Touched {
    /// What the place for another part is called.
    pub free: &'static str,
    /// They were tapped, or Enter was pressed on them; none is the place for another.
    pub on_part: Callback<Vec<PartId>>,
    /// The parts that can be pulled as a valve's lever is.
    pub levers: Vec<PartId>,
    /// One of those was pulled.
    pub on_pulled: Callback<PartId>,
}

/// How far a finger goes, in pixels, until it pulls.
const PULL: f64 = 14.0;

/// Listens to a lever being pulled; its tap must ask `pulled` first, and take it back.
fn lever(attributes: &mut Vec<AnyAttribute>, pulled: StoredValue<bool>, on_pulled: impl Fn() + 'static) {
    let place = |event: &web_sys::Event| {
        let event = event.dyn_ref::<web_sys::PointerEvent>()?;
        Some((f64::from(event.client_x()), f64::from(event.client_y())))
    };
    let from = StoredValue::new(None::<(f64, f64)>);
    attributes.push(listener("pointerdown", move |event| {
        from.set_value(place(&event));
        pulled.set_value(false);
        let holder = event.current_target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
        if let (Some(holder), Some(pointer)) = (holder, event.dyn_ref::<web_sys::PointerEvent>()) {
            // Fails only for a pointer that is gone.
            let _ = holder.set_pointer_capture(pointer.pointer_id());
        }
    }));
    // A finger that pulls does not pan; two fingers make the drawing larger, and pull nothing.
    attributes.push(listener("touchmove", move |event| {
        event.prevent_default();
        if event.dyn_ref::<web_sys::TouchEvent>().is_some_and(|event| event.touches().length() > 1) {
            from.set_value(None);
        }
    }));
    attributes.push(listener("pointerup", move |event| {
        if let (Some((x, y)), Some((to_x, to_y))) = (from.get_value(), place(&event))
            && apart((x, y), (to_x, to_y)) >= PULL
        {
            pulled.set_value(true);
            on_pulled();
        }
        from.set_value(None);
    }));
}

/// A part, or a place for another, which answers to taps and to Enter.
fn part(target: &Target, (class, name): (&str, &str), touched: &Touched) -> AnyView {
    let Target { parts, x, y, width, height, marks, .. } = target;
    let [left, top, wide, high] = [x, y, width, height].map(|each| tenths(*each));
    let mut content =
        format!("<rect class=\"tap\" x=\"{left}\" y=\"{top}\" width=\"{wide}\" height=\"{high}\" rx=\"6\"/>");
    write_marks(&mut content, marks);
    let (by_finger, by_key) = (parts.clone(), parts.clone());
    let Touched { on_part, on_pulled, .. } = *touched;
    let pulled = StoredValue::new(false);
    let of_lever = parts.first().copied().filter(|part| parts.len() == 1 && touched.levers.contains(part));
    let mut attributes = vec![
        attribute("class", class.to_owned()),
        attribute("role", "button".to_owned()),
        attribute("tabindex", "0".to_owned()),
        attribute("aria-label", name.to_owned()),
        attribute("data-part", parts.first().map_or_else(String::new, |part| part.0.to_string())),
        listener("click", move |_| {
            if !pulled.get_value() {
                on_part.run(by_finger.clone());
            }
        }),
        listener("keydown", move |event| {
            let key = key_of(&event);
            if matches!(key.as_str(), "Enter" | " ") {
                event.prevent_default();
                on_part.run(by_key.clone());
            }
        }),
    ];
    if let Some(of_lever) = of_lever {
        lever(&mut attributes, pulled, move || on_pulled.run(of_lever));
    }
    group(attributes, content)
}

/// A drawing: what it is, for those who can't see it, and what comes of its parts being touched.
pub(crate) fn picture(drawing: &Drawing, name: &str, touched: Option<&Touched>) -> AnyView {
    let Drawing { width, height, marks, .. } = drawing;
    let is_part = |mark: &Mark| touched.is_some() && matches!(mark, Mark::Part(_) | Mark::Free(_));
    let groups = marks.chunk_by(|one, next| !is_part(one) && !is_part(next)).map(|marks| match (marks, touched) {
        ([Mark::Part(target)], Some(touched)) => part(target, ("part", &target.name), touched),
        ([Mark::Free(target)], Some(touched)) => part(target, ("free", touched.free), touched),
        _ => seen(marks),
    });
    let attributes = vec![
        attribute("class", "figure".to_owned()),
        attribute("role", if touched.is_some() { "group" } else { "img" }.to_owned()),
        attribute("aria-label", name.to_owned()),
        attribute("viewBox", format!("0 0 {width} {height}")),
        attribute("width", width.to_string()),
        attribute("height", height.to_string()),
    ];
    svg(attributes, groups.collect())
}

/// A chart with its title, the value under the finger, and its table.
pub(crate) fn chart(chart: Chart, desk: Desk) -> AnyView {
    let Chart { title, caption, drawing, table } = chart;
    let save = saves(title, &caption, &drawing, desk);
    let image = picture(&drawing, title, None);
    let Drawing { width, readings, .. } = drawing;
    let readings = std::sync::Arc::<[Reading]>::from(readings);
    // The place of the reading under the finger.
    let under = Held::new(None::<usize>);
    let moved = {
        let readings = readings.clone();
        move |event: web_sys::Event| {
            let Some(event) = event.dyn_ref::<web_sys::PointerEvent>() else { return };
            let Some(target) = event.current_target() else { return };
            let shown = f64::from(target.unchecked_ref::<web_sys::Element>().client_width());
            let x = f64::from(event.offset_x()) * if shown > 0.0 { width / shown } else { 1.0 };
            under.set(nearest_reading(&readings, x));
        }
    };
    let hair = {
        let readings = readings.clone();
        live(move || {
            under.get().and_then(|at| readings.get(at)).map_or_else(nothing, |reading| {
                let left = format!("left: {}%", 100.0 * reading.x / width);
                element("SPAN").class("hair").attribute("style", left).into()
            })
        })
    };
    let most = readings.len().saturating_sub(1);
    let by_key = move |event: web_sys::Event| {
        let key = key_of(&event);
        let to = reading_by_key(&key, under.get_untracked(), most);
        if let Some(to) = to {
            event.prevent_default();
            under.set(Some(to));
        }
    };
    let reading = move || match under.get().and_then(|at| readings.get(at)) {
        Some(Reading { label, value, .. }) => format!("{label}: {value}"),
        None => phrase!("Touch the chart to read it.", "Toca el gráfico para leerlo.").to_owned(),
    };
    let spoken = reading.clone();
    let by_keys = said!("Arrow keys read the chart.", "Las flechas leen el gráfico.");
    let reading = element("P")
        .class("reading")
        .attribute("role", "slider")
        .attribute("tabindex", "0")
        .attribute("aria-label", title)
        .attribute("aria-valuemin", "0")
        .attribute("aria-valuemax", most.to_string())
        .live_attribute("aria-valuenow", move || Some(under.get().unwrap_or(0).to_string()))
        .live_attribute("aria-valuetext", move || Some(under.get().map_or_else(|| by_keys.to_owned(), |_| spoken())))
        .on("keydown", by_key)
        .live_text(reading);
    let finger = element("DIV")
        .class("under-finger")
        .on("pointermove", moved.clone())
        .on("pointerdown", moved)
        // A finger that is lifted leaves its value to be read.
        .on("pointerleave", move |event| {
            if event.dyn_ref::<web_sys::PointerEvent>().is_some_and(|event| event.pointer_type() == "mouse") {
                under.set(None);
            }
        })
        .child(image)
        .child(hair);
    element("FIGURE")
        .child(element("FIGCAPTION").child(worded("H2", title)).child(worded("P", caption).class("small")))
        .child(finger)
        .child(reading)
        .child(table_on_wish(table, title))
        .child(save)
        .into()
}

/// The reading to which a key leads from one or none, of those up to a last: the next, a tenth further, an end.
fn reading_by_key(key: &str, from: Option<usize>, last: usize) -> Option<usize> {
    let Some(from) = from else {
        return match key {
            "ArrowLeft" | "ArrowRight" | "ArrowUp" | "ArrowDown" | "Home" => Some(0),
            _ => None,
        };
    };
    let far = last / 10;
    Some(match key {
        "ArrowRight" | "ArrowUp" => from.saturating_add(1),
        "ArrowLeft" | "ArrowDown" => from.saturating_sub(1),
        "PageUp" => from.saturating_add(far),
        "PageDown" => from.saturating_sub(far),
        "Home" => 0,
        "End" => last,
        _ => return None,
    })
    .map(|to| to.min(last))
}

/// Charts that stand side by side where there is room.
pub(crate) fn pair(charts: impl IntoIterator<Item = Chart>, desk: Desk) -> AnyView {
    element("DIV").class("pair").children(charts.into_iter().map(|one| chart(one, desk))).into()
}

/// The buttons that save a figure as a file.
pub(crate) fn saves(title: &'static str, caption: &str, drawing: &Drawing, desk: Desk) -> Element {
    let drawing = std::sync::Arc::new(drawing.clone());
    let button = |kind: &'static str, bitmap: bool| {
        let (caption, drawing) = (caption.to_owned(), drawing.clone());
        desk.button(kind, Event::PictureWanted { title, caption, drawing, bitmap })
            .class("plain small")
            .attribute("aria-label", [kind, ": ", title].concat())
            .into()
    };
    let [svg, png] = words::SAVE_AS.map(|kind| kind.text());
    element("DIV").class("row saves").children([button(svg, false), button(png, true)])
}

/// The numbers of a chart, put on the page when they are asked for: a long run has thousands of them.
fn table_on_wish(table: Table, name: &'static str) -> AnyView {
    let wanted = Held::new(false);
    let table = StoredValue::new(table);
    let body = live(move || if wanted.get() { table_of(table.get_value(), name) } else { nothing() });
    element("DETAILS")
        .on("toggle", move |_| {
            if !wanted.get_untracked() {
                wanted.set(true);
            }
        })
        .child(worded("SUMMARY", phrase!("The same as a table", "Lo mismo en una tabla")))
        .child(body)
        .into()
}

/// A table that scrolls within itself where it is wider than the page.
pub(crate) fn table_of(table: Table, name: &str) -> AnyView {
    let head = |text: String, scope: &str| worded("TH", text).attribute("scope", scope).into();
    let columns = table.columns.into_iter().map(|column| head(column, "col"));
    let row = |cells: Vec<String>| {
        let cells = cells.into_iter().enumerate();
        let cells = cells.map(|(at, cell)| if at == 0 { head(cell, "row") } else { worded("TD", cell).into() });
        element("TR").children(cells).into()
    };
    let body = element("TBODY").children(table.rows.into_iter().map(row));
    let inner = element("TABLE").child(element("THEAD").child(element("TR").children(columns))).child(body);
    element("DIV")
        .class("table")
        .attribute("role", "region")
        .attribute("aria-label", name)
        .attribute("tabindex", "0")
        .child(inner)
        .into()
}

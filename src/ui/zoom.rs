//! A picture that can be made larger: by two fingers, by two taps beside its parts, or by buttons. What is larger than
//! its frame scrolls in it, as everything on a page does: with a finger, a wheel, or the focus that wanders to a part.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use super::element::{element, worded};
use crate::figures::drawing::apart;
use crate::words::house as say;

/// How much larger it can be made.
const MOST: f64 = 5.0;
/// How much larger a tap on a button makes it.
const STEP: f64 = 1.5;

/// How large a picture is shown: 1 is the whole. Kept by whoever draws the picture anew.
pub(crate) type Zoom = StoredValue<f64>;

fn style(zoom: f64) -> String {
    if zoom > 1.0 { format!("--zoom: {zoom}; max-height: 75vh") } else { String::new() }
}

/// Shows so many times the whole, with what lies at a point of the window still there.
fn show(frame: &web_sys::Element, zoom: Zoom, to: f64, (x, y): (f64, f64)) {
    let before = zoom.get_value();
    let to = to.clamp(1.0, MOST);
    if to.is_nan() || (to - before).abs() < 1e-3 {
        return;
    }
    zoom.set_value(to);
    let rect = frame.get_bounding_client_rect();
    let (x, y) = (x - rect.left(), y - rect.top());
    let (left, top) = (f64::from(frame.scroll_left()) + x, f64::from(frame.scroll_top()) + y);
    // Fails only for a name that is none.
    let _ = frame.set_attribute("style", &style(to));
    let y = y.min(f64::from(frame.client_height()) / 2.0);
    #[expect(clippy::cast_possible_truncation, reason = "pixels")]
    let scroll = |content: f64, at: f64| (content * to / before - at) as i32;
    frame.set_scroll_left(scroll(left, x));
    frame.set_scroll_top(scroll(top, y));
    if frame.get_bounding_client_rect().top() < 0.0 {
        frame.scroll_into_view();
    }
}

fn middle(frame: &web_sys::Element) -> (f64, f64) {
    let rect = frame.get_bounding_client_rect();
    (f64::midpoint(rect.left(), rect.right()), f64::midpoint(rect.top(), rect.bottom()))
}

/// The distance of two fingers and the point between them; none unless there are two.
fn fingers(event: &web_sys::Event) -> Option<(f64, (f64, f64))> {
    let touches = event.dyn_ref::<web_sys::TouchEvent>()?.touches();
    let (a, b) = (touches.get(0)?, touches.get(1)?);
    let at = |touch: &web_sys::Touch| (f64::from(touch.client_x()), f64::from(touch.client_y()));
    let ((ax, ay), (bx, by)) = (at(&a), at(&b));
    Some((apart((ax, ay), (bx, by)), (f64::midpoint(ax, bx), f64::midpoint(ay, by))))
}

fn frame_of(event: &web_sys::Event) -> Option<web_sys::Element> {
    event.current_target()?.dyn_into().ok()
}

/// A picture in its frame, under the buttons that make it larger and others of its own.
pub(crate) fn zoomed(zoom: Zoom, picture: AnyView, others: Vec<AnyView>) -> AnyView {
    // The distance of the fingers a moment ago.
    let apart = StoredValue::new(None::<f64>);
    let pinched = move |event: web_sys::Event| {
        let now = fingers(&event);
        if let (Some((distance, at)), Some(frame)) = (now, frame_of(&event)) {
            event.prevent_default();
            if let Some(before) = apart.get_value() {
                show(&frame, zoom, zoom.get_value() * distance / before.max(1.0), at);
            }
        }
        apart.set_value(now.map(|(distance, _)| distance));
    };
    let tapped_twice = move |event: web_sys::Event| {
        let at = event.dyn_ref::<web_sys::MouseEvent>().map(|event| (event.client_x().into(), event.client_y().into()));
        if let (Some(at), Some(frame)) = (at, frame_of(&event)) {
            show(&frame, zoom, if zoom.get_value() > 1.0 { 1.0 } else { 2.5 }, at);
        }
    };
    let button = |sign: &'static str, name: &'static str, by: f64| {
        element("BUTTON")
            .attribute("type", "button")
            .class("plain")
            .attribute("aria-label", name)
            .on("click", move |_| {
                if let Ok(Some(frame)) = document().query_selector(".zoom") {
                    show(&frame, zoom, zoom.get_value() * by, middle(&frame));
                }
            })
            .text(sign)
            .into()
    };
    let tools = element("DIV").class("row tools").children(others).children([
        button("+", say::LARGER.text(), STEP),
        button("−", say::SMALLER.text(), 1.0 / STEP),
        button(say::WHOLE.text(), say::WHOLE_NAME.text(), 0.0),
    ]);
    let frame = element("DIV")
        .class("zoom")
        .attribute("style", style(zoom.get_value()))
        .on("touchstart", pinched)
        .on("touchmove", pinched)
        .on("touchend", pinched)
        .on("dblclick", tapped_twice)
        .child(picture);
    element("DIV").child(tools).child(frame).child(worded("P", say::HOW_LARGER).class("small on-screen")).into()
}

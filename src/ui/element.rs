//! Elements of the page: all are of this one make, with attributes, listeners and children of a few fixed types.
//! Leptos brings a copy of its machinery for every shape of every element that it draws, and that is what a phone has
//! to load.

use std::sync::{Arc, Mutex};

use leptos::attr::any_attribute::{AnyAttribute, IntoAnyAttribute};
use leptos::attr::custom::custom_attribute;
use leptos::html::custom;
use leptos::prelude::*;
use leptos::tachys::html::property::prop;
use leptos::tachys::reactive_graph::SharedReactiveFunction;
use wasm_bindgen::JsCast;

/// An element that is being put together. It is handed on by its address: views are long chains of these.
pub(crate) struct Element(Box<Parts>);

struct Parts {
    tag: &'static str,
    attributes: Vec<AnyAttribute>,
    children: Vec<AnyView>,
}

/// An element. Its name is written in capitals, as a page tells it back: where the same name is drawn in the same
/// place again, the node stays, and with it the focus.
pub(crate) fn element(tag: &'static str) -> Element {
    Element(Box::new(Parts { tag, attributes: Vec::new(), children: Vec::new() }))
}

/// A view that is drawn again whenever a signal that it read has changed.
pub(crate) fn live(view: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    drawn_again(Arc::new(Mutex::new(view)))
}

#[inline(never)]
fn drawn_again(view: SharedReactiveFunction<AnyView>) -> AnyView {
    view.into_any()
}

/// Nothing, where there may be something.
pub(crate) fn nothing() -> AnyView {
    ().into_any()
}

/// A listener.
pub(crate) fn listener(event: &'static str, heard: impl Fn(web_sys::Event) + 'static) -> AnyAttribute {
    listening(event, Box::new(heard))
}

#[inline(never)]
fn listening(event: &'static str, heard: Box<dyn FnMut(web_sys::Event)>) -> AnyAttribute {
    leptos::ev::on(leptos::ev::Custom::new(event), heard).into_any_attr()
}

/// An attribute.
pub(crate) fn attribute(name: &'static str, value: String) -> AnyAttribute {
    custom_attribute(name, value).into_any_attr()
}

/// The key that an event of the keyboard tells of; empty for another.
pub(crate) fn key_of(event: &web_sys::Event) -> String {
    event.dyn_ref::<web_sys::KeyboardEvent>().map(web_sys::KeyboardEvent::key).unwrap_or_default()
}

/// Whether the fold that an event came from stands open.
pub(crate) fn is_open(event: &web_sys::Event) -> bool {
    let fold = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    fold.is_some_and(|fold| fold.has_attribute("open"))
}

impl Element {
    /// With an attribute.
    pub fn attribute(self, name: &'static str, value: impl Into<String>) -> Self {
        self.having(attribute(name, value.into()))
    }

    #[inline(never)]
    fn having(mut self, attribute: AnyAttribute) -> Self {
        self.0.attributes.push(attribute);
        self
    }

    /// With an attribute of the value that holds at the time; none is no attribute.
    pub fn live_attribute(self, name: &'static str, value: impl Fn() -> Option<String> + Send + 'static) -> Self {
        self.following(name, Arc::new(Mutex::new(value)))
    }

    #[inline(never)]
    fn following(self, name: &'static str, value: SharedReactiveFunction<Option<String>>) -> Self {
        self.having(custom_attribute(name, value).into_any_attr())
    }

    /// With a class.
    pub fn class(self, class: &'static str) -> Self {
        self.attribute("class", class)
    }

    /// A fold that stands open, or not, to begin with.
    pub fn opened(self, open: bool) -> Self {
        if open { self.attribute("open", "") } else { self }
    }

    /// Greyed out while this is so.
    pub fn disabled(self, disabled: impl Fn() -> bool + Send + 'static) -> Self {
        self.live_attribute("disabled", move || disabled().then(String::new))
    }

    /// A field that holds this text.
    pub fn value(self, text: impl Fn() -> String + Send + 'static) -> Self {
        self.holding(Arc::new(Mutex::new(text)))
    }

    #[inline(never)]
    fn holding(self, text: SharedReactiveFunction<String>) -> Self {
        self.having(prop("value", text).into_any_attr())
    }

    /// With a listener.
    pub fn on(self, event: &'static str, heard: impl Fn(web_sys::Event) + 'static) -> Self {
        self.having(listener(event, heard))
    }

    /// With a further child.
    pub fn child(self, child: impl Into<AnyView>) -> Self {
        self.with(child.into())
    }

    #[inline(never)]
    fn with(mut self, child: AnyView) -> Self {
        self.0.children.push(child);
        self
    }

    /// With further children.
    pub fn children(mut self, children: impl IntoIterator<Item = AnyView>) -> Self {
        for child in children {
            self.0.children.push(child);
        }
        self
    }

    /// With a text.
    pub fn text(self, text: impl Into<String>) -> Self {
        self.with(text.into().into_any())
    }

    /// With a text that follows what it reads.
    pub fn live_text(self, text: impl Fn() -> String + Send + 'static) -> Self {
        self.child(live(move || text().into_any()))
    }
}

impl From<Element> for AnyView {
    fn from(element: Element) -> Self {
        let Parts { tag, attributes, children } = *element.0;
        custom(tag).add_any_attr(attributes).child(children).into_any()
    }
}

/// Puts the focus on the first element of a selector, if it is drawn.
pub(crate) fn focus_on(selector: &str) {
    if let Ok(Some(found)) = document().query_selector(selector) {
        // A part of a drawing is no HTML element, but takes the focus by the same name. Fails never for what is drawn.
        let _ = found.unchecked_into::<web_sys::HtmlElement>().focus();
    }
}

/// Once a list is drawn anew the focus goes along with what was moved: to the button of that label among those of a
/// selector.
pub(crate) fn focus_along(selector: &'static str, label: String) {
    request_animation_frame(move || {
        let Ok(buttons) = document().query_selector_all(selector) else { return };
        let mut all = (0..buttons.length()).filter_map(|at| buttons.item(at)?.dyn_into::<web_sys::HtmlElement>().ok());
        let Some(button) = all.find(|button| button.get_attribute("aria-label").as_ref() == Some(&label)) else {
            return;
        };
        // At the end of the list only the way back is left.
        let way_back = button.parent_element().and_then(|row| row.query_selector("button.square:enabled").ok()?);
        let button = if button.has_attribute("disabled") {
            way_back.and_then(|button| button.dyn_into().ok()).unwrap_or(button)
        } else {
            button
        };
        // Fails only for what is not on the page any more.
        let _ = button.focus();
    });
}

/// An element with a text in it.
pub(crate) fn worded(tag: &'static str, text: impl Into<String>) -> Element {
    element(tag).text(text)
}

/// A list, a line an item.
pub(crate) fn list(class: &'static str, lines: impl IntoIterator<Item = impl Into<String>>) -> Element {
    let lines: Vec<AnyView> = lines
        .into_iter()
        .map(|line| element("LI").child(element("SPAN").children(super::term::told(&line.into()))).into())
        .collect();
    element("UL").class(class).children(lines)
}

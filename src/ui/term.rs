//! Terms in a text: each opens the sentence that explains it, where it stands.

use leptos::prelude::*;

use super::element::{element, live, nothing, worded};
use super::follow::Held;
use crate::words::terms::{TERMS, first_in};

/// A text whose terms, each where it comes first, open their sentences.
pub(crate) fn told(text: &str) -> Vec<AnyView> {
    let mut views: Vec<AnyView> = Vec::new();
    // What explains stands under the sentence, in the order of its terms.
    let mut under: Vec<AnyView> = Vec::new();
    let mut known: Vec<usize> = Vec::new();
    let (mut rest, mut plain) = (text, 0);
    while let Some((from, to, at)) = rest.get(plain..).and_then(first_in) {
        let (from, to) = (plain + from, plain + to);
        if known.contains(&at) {
            plain = to;
            continue;
        }
        known.push(at);
        let (button, explained) = term(&rest[from..to], TERMS[at].1.text());
        under.push(explained);
        // A bracket or a stop beside the term stays in its line.
        let before = rest[..from].trim_end_matches(|letter: char| !letter.is_whitespace());
        let after = rest[to..].trim_start_matches(|letter: char| !letter.is_whitespace() && !letter.is_alphanumeric());
        let (opens, closes) = (&rest[before.len()..from], &rest[to..rest.len() - after.len()]);
        views.push(before.to_owned().into_any());
        views.push(if opens.is_empty() && closes.is_empty() {
            button
        } else {
            element("SPAN").class("held").text(opens).child(button).text(closes).into()
        });
        (rest, plain) = (after, 0);
    }
    views.push(rest.to_owned().into_any());
    views.extend(under);
    views
}

fn term(word: &str, sentence: &'static str) -> (AnyView, AnyView) {
    let open = Held::new(false);
    let button = worded("BUTTON", word)
        .attribute("type", "button")
        .class("term")
        .live_attribute("aria-expanded", move || Some(open.get().to_string()))
        .on("click", move |_| open.update(|open| *open = !*open));
    let explained = move || {
        if open.get() {
            worded("SPAN", sentence).class("explained").attribute("role", "note").into()
        } else {
            nothing()
        }
    };
    (button.into(), live(explained))
}

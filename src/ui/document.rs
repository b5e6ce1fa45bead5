//! Documents: the report of a site, and the page of all formulas.

use leptos::prelude::*;

use super::Desk;
use super::choose::pressed;
use super::element::{element, live, nothing, worded};
use super::figure::{picture, table_of};
use super::follow::{Held, derived};
use crate::app::event::Event;
use crate::app::model::Place;
use crate::app::view::checks::{CheckView, InputView};
use crate::app::view::document::{Block, Document, Figure, HALF_PAPER, Section};
use crate::app::view::report::Extent;
use crate::app::view::{method as formulas, report as view};
use crate::language::Phrase;
use crate::words::{method as all, report as say};

/// The report of the open site.
pub(crate) fn report(desk: Desk) -> AnyView {
    let extent = Held::new(Extent::Whole);
    let shown =
        derived(move || desk.case.with(|case| desk.model.with(|model| view::report(model, case, extent.get()))));
    let choose = |(text, offered): (Phrase, Extent)| {
        pressed(text, move || extent.get() == offered, move || extent.set(offered)).into()
    };
    let extents = say::EXTENTS.into_iter().zip([Extent::Whole, Extent::Short]).map(choose);
    let extents =
        element("DIV").class("row").attribute("role", "group").attribute("aria-label", say::EXTENT).children(extents);
    element("DIV")
        .class("document")
        .child(buttons(desk).child(desk.button(all::OPEN, Event::PlaceOpened(Place::Method)).class("plain")))
        .child(extents)
        .child(live(move || shown.with(|shown| shown.as_ref().map_or_else(nothing, drawn))))
        .into()
}

/// All formulas with their sources, and the words.
pub(crate) fn method(desk: Desk) -> AnyView {
    element("DIV").class("document").child(buttons(desk)).child(drawn(&formulas::method())).into()
}

fn buttons(desk: Desk) -> super::element::Element {
    let print = worded("BUTTON", say::PRINT).attribute("type", "button").class("main").on("click", |_| {
        // A browser that can't print has a menu that says so.
        let _ = window().print();
    });
    element("DIV")
        .class("row")
        .child(print)
        .child(desk.button(say::BACK, Event::PlaceOpened(Place::House)).class("plain"))
}

fn drawn(document: &Document) -> AnyView {
    let lead = document.lead.iter().map(|line| worded("P", line.as_str()).into());
    let sections = document.sections.iter().map(section);
    element("ARTICLE").child(worded("H1", document.title.as_str())).children(lead).children(sections).into()
}

fn section(section: &Section) -> AnyView {
    let blocks = section.blocks.iter().map(block);
    element("SECTION").child(worded("H2", section.title)).children(blocks).into()
}

fn block(block: &Block) -> AnyView {
    match block {
        Block::Heading(text) => worded("H3", text.as_str()).into(),
        Block::Text(text) => worded("P", text.as_str()).into(),
        Block::Answer(text) => worded("P", text.as_str()).class("lead headline").into(),
        Block::Caution(text) => worded("P", text.as_str()).class("caution").into(),
        Block::List(lines) => {
            element("UL").class("notes").children(lines.iter().map(|line| worded("LI", line.as_str()).into())).into()
        }
        Block::Values(values) => {
            // Sentences stand below one another, short values side by side.
            let line = |(label, value): &(String, String)| {
                let class = if value.len() > 60 { "long" } else { "short" };
                let value = worded("DD", value.as_str());
                element("DIV").class(class).child(worded("DT", label.as_str())).child(value).into()
            };
            element("DL").class("values").children(values.iter().map(line)).into()
        }
        Block::Figure(figure) => drawing(figure),
        Block::Table(name, table) => table_of(table.clone(), name),
        Block::Check(view) => check(view),
    }
}

fn drawing(figure: &Figure) -> AnyView {
    let Figure { title, caption, on_screen, on_paper } = figure;
    element("FIGURE")
        .class(if on_paper.width > HALF_PAPER { "" } else { "half" })
        .child(element("FIGCAPTION").child(worded("H3", *title)).child(worded("P", caption.as_str()).class("small")))
        .child(element("DIV").class("on-screen").child(picture(on_screen, title, None)))
        .child(element("DIV").class("on-paper").child(picture(on_paper, title, None)))
        .into()
}

fn check(view: &CheckView) -> AnyView {
    let CheckView { title, class, word, sentence, to_do, inputs, figures, caution, .. } = view;
    let mut verdict = element("P").class("verdict");
    if !title.is_empty() {
        verdict = verdict.child(worded("STRONG", [title, ". "].concat()));
    }
    verdict = verdict.child(worded("STRONG", *word)).text(": ").text(sentence.as_str());
    let mut went_in = Vec::new();
    for InputView { label, text, entry } in inputs {
        let usual = entry.as_ref().and_then(|entry| entry.usual);
        went_in.push(match usual {
            // The 0 that stands for it would be taken for what there is.
            Some(whence) if whence.starts_with(say::UNKNOWN.text()) => {
                [label.as_str(), " ", say::UNKNOWN.text()].concat()
            }
            Some(_) => [label.as_str(), " ", text, say::USUAL_MARK.text()].concat(),
            None => [label.as_str(), " ", text].concat(),
        });
    }
    for (label, figure) in figures {
        went_in.push([label.as_str(), ": ", figure].concat());
    }
    element("DIV")
        .class(class)
        .child(verdict)
        .child(worded("P", to_do.as_str()).class("to-do"))
        .child(worded("P", went_in.join("; ")).class("small"))
        .child(worded("P", *caution).class("small caution"))
        .into()
}

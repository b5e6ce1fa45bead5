//! The house: its drawing is the menu.

use leptos::prelude::*;

use super::element::{element, live, nothing, worded};
use super::{Desk, figure, foot};
use crate::app::event::{Event, Shift};
use crate::app::model::Place;
use crate::app::view::ahead;
use crate::app::view::house::{self, FindingView, HouseView, PartList, PartRow};
use crate::site::diary::Subject;
use crate::site::part::PartId;
use crate::site::system::PartKind;
use crate::words;

/// The house.
pub(crate) fn house(desk: Desk) -> AnyView {
    live(move || {
        desk.case.with(|case| {
            let (Some(site), outcome) = case.shown() else { return nothing() };
            let ahead = ahead::in_a_line(&case.ahead.1);
            drawn(
                house::house(site, (outcome, case.lesson.as_deref()), &case.units, case.today, case.width),
                ahead,
                desk,
            )
        })
    })
}

fn drawn(view: HouseView, ahead: Option<String>, desk: Desk) -> AnyView {
    let HouseView { due, headline, water, drawing, findings, lists } = view;
    let names: Vec<(PartId, String)> =
        lists.iter().flat_map(|list| list.rows.iter().map(|row| (row.id, row.name.clone()))).collect();
    let bundle = RwSignal::new(Vec::<PartId>::new());
    let on_part = Callback::new(move |parts: Vec<PartId>| match parts.as_slice() {
        [one] => desk.send.run(Event::PartOpened(*one)),
        _ => bundle.set(parts),
    });
    let bundled = live(move || {
        let parts = bundle.get();
        if parts.is_empty() {
            return nothing();
        }
        let buttons = parts.iter().map(|part| {
            let name = names.iter().find(|(id, _)| id == part).map_or("", |(_, name)| name);
            desk.button(name, Event::PartOpened(*part)).into()
        });
        let row = element("DIV").class("row bundle").attribute("role", "group");
        row.attribute("aria-label", "Parts drawn as one").children(buttons).into()
    });
    element("SECTION")
        .class("house")
        .child(worded("H1", headline).class("headline"))
        .children(
            ahead.map(|line| desk.button(&line, Event::PlaceOpened(Place::Ahead)).class("plain ahead-line").into()),
        )
        .child(live(move || {
            let reminder = desk.model.with(crate::app::view::kept::reminder);
            reminder
                .map_or_else(nothing, |text| desk.button(&text, Event::PlaceOpened(Place::Kept)).class("plain").into())
        }))
        .child(super::diary::writes(desk, &[Subject::Level, Subject::Rain]))
        .children(due.map(|due| desk.button(&due, Event::PlaceOpened(Place::Upkeep)).class("plain").into()))
        .child(element("UL").class("findings").children(findings.into_iter().map(|found| finding(found, desk))))
        .child(figure::picture(&drawing, "The house in section; each part opens its sheet", Some(on_part)))
        .child(bundled)
        .children(water.map(|water| worded("P", water).class("small").into()))
        .child(desk.button(words::report::TITLE, Event::PlaceOpened(Place::Report)))
        .child(worded("H2", "Parts"))
        .children(lists.into_iter().map(|list| parts_of(list, desk)))
        .child(foot(desk))
        .into()
}

fn finding(finding: FindingView, desk: Desk) -> AnyView {
    let mend = finding.part.map(|part| desk.button("Open", Event::PartOpened(part)).into());
    element("LI").child(worded("SPAN", finding.text)).children(mend).into()
}

fn parts_of(list: PartList, desk: Desk) -> AnyView {
    let PartList { kind, rows } = list;
    let last = rows.len().saturating_sub(1);
    let add = desk
        .button("Add", Event::PartAdded(kind))
        .class("plain")
        .attribute("aria-label", format!("Add: {}", words::parts::one(kind)))
        .attribute("title", words::parts::explained(kind));
    let explained = rows.is_empty().then(|| worded("P", words::parts::explained(kind)).class("small").into());
    let rows = rows.into_iter().enumerate().map(|(at, row)| part_row(row, kind, at == 0, at == last, desk));
    element("DIV")
        .class("parts")
        .child(element("DIV").class("parts-head").child(worded("H3", words::parts::many(kind))).child(add))
        .children(explained)
        .child(element("UL").children(rows))
        .into()
}

fn part_row(row: PartRow, kind: PartKind, first: bool, last: bool, desk: Desk) -> AnyView {
    let PartRow { id, name, detail } = row;
    let mover = |sign: &str, direction: &str, shift: Shift, at_end: bool| {
        let button = desk
            .button(sign, Event::PartShifted(id, shift))
            .class("plain square")
            .attribute("aria-label", format!("Move {name} {direction}"));
        // Only the order of uses means something; that of the rest is for the eye.
        let button = if kind == PartKind::Use { button.attribute("title", "served in this order") } else { button };
        if at_end { button.attribute("disabled", "") } else { button }.into()
    };
    let movers = [mover("↑", "up", Shift::Up, first), mover("↓", "down", Shift::Down, last)];
    let open = desk.sends(Event::PartOpened(id)).class("part-name");
    element("LI")
        .child(open.child(worded("STRONG", name)).child(worded("SPAN", detail)))
        .children(movers.into_iter().filter(|_| !(first && last)))
        .into()
}

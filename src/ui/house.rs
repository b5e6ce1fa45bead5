//! The house: its drawing is the menu.

use leptos::prelude::*;

use super::element::{Element, element, focus_along, focus_on, is_open, key_of, list, live, nothing, worded};
use super::follow::Held;
use super::zoom::{Zoom, zoomed};
use super::{Desk, figure, foot};
use crate::app::event::{Event, Shift};
use crate::app::model::Place;
use crate::app::view::ahead::{self, Lasts};
use crate::app::view::charts;
use crate::app::view::frame;
use crate::app::view::house::{self, FindingView, HouseView, PartList, PartRow};
use crate::site::diary::Subject;
use crate::site::part::PartId;
use crate::site::system::{PartKind, System};
use crate::words::{self, house as say};

/// What was begun on the drawing: it stays while the house is drawn anew.
#[derive(Clone, Copy)]
struct Begun {
    /// The parts that were tapped and are yet to choose from; a lone one is a valve.
    tapped: Held<Vec<PartId>>,
    /// Whether the next tap says where a tank is to stand.
    adding: Held<bool>,
    /// The long lists of parts that were opened.
    unfolded: Held<Vec<PartKind>>,
    zoom: Zoom,
}

/// The house.
pub(crate) fn house(desk: Desk) -> AnyView {
    let begun = Begun {
        tapped: Held::new(Vec::new()),
        adding: Held::new(false),
        unfolded: Held::new(Vec::new()),
        zoom: StoredValue::new(1.0),
    };
    live(move || {
        desk.case.with(|case| {
            let (Some(site), outcome) = case.shown() else { return nothing() };
            let ahead = ahead::in_a_line(&case.ahead.1, case.lesson.as_deref(), &case.units);
            let width = charts::beside_lists(case.width);
            let view = house::house(site, (outcome, case.lesson.as_deref()), &case.units, case.today, width);
            let presses = ahead::presses(&case.ahead.1);
            drawn(view, &site.site.system, (ahead, presses), begun, desk)
        })
    })
}

/// What is to be done with the parts that were tapped.
fn tapped(names: &[(PartId, String)], valves: &[(PartId, bool)], begun: Begun, desk: Desk) -> AnyView {
    let parts = begun.tapped.get();
    let first = parts.first().copied();
    // Whoever came by the keyboard is back where the row was opened.
    let shut = move || {
        begun.tapped.set(Vec::new());
        if let Some(PartId(part)) = first {
            focus_on(&format!(".figure [data-part=\"{part}\"]"));
        }
    };
    let close = element("BUTTON").attribute("type", "button").class("plain").text(say::CLOSE);
    let close = close.on("click", move |_| shut());
    let on_key = move |event: web_sys::Event| {
        match key_of(&event).as_str() {
            "Escape" => shut(),
            // Whoever goes on by keys leaves it behind.
            "Tab" => request_animation_frame(move || {
                if matches!(document().query_selector(".bundle:focus-within"), Ok(None)) {
                    begun.tapped.set(Vec::new());
                }
            }),
            _ => {}
        }
    };
    let valve = valves.iter().find(|(line, _)| parts == [*line]);
    // The row is drawn anew with the house.
    let focus = || request_animation_frame(|| focus_on(".bundle button"));
    let turn = valve.map(|(line, open)| desk.button_then(say::turn(*open), Event::ValveTurned(*line), focus).into());
    let buttons: Vec<AnyView> = parts
        .iter()
        .filter_map(|part| names.iter().find(|(id, _)| id == part))
        .map(|(part, name)| desk.button(name, Event::PartOpened(*part)).into())
        .collect();
    if buttons.is_empty() {
        return nothing();
    }
    let row = element("DIV").class("row bundle").attribute("role", "group").on("keydown", on_key);
    let row = row.attribute(
        "aria-label",
        if turn.is_some() {
            said!("Valve", "Válvula")
        } else {
            said!("Parts drawn as one", "Partes dibujadas como una")
        },
    );
    row.children(turn).children(buttons).child(close).into()
}

/// Puts the focus on the tank that was added, once it is drawn.
fn to_newest_tank(desk: Desk) {
    let newest = desk.case.with_untracked(|case| case.shown().0?.site.system.tanks.last().map(|tank| tank.id));
    if let Some(PartId(part)) = newest {
        request_animation_frame(move || focus_on(&format!(".figure [data-part=\"{part}\"]")));
    }
}

/// The button that adds a tank, with what to do after it.
fn adds_tank(first: bool, begun: Begun, desk: Desk) -> Vec<AnyView> {
    if first {
        return vec![desk.button(say::ADD_TANK, Event::PartAdded(PartKind::Tank)).class("plain").into()];
    }
    let button = element("BUTTON").attribute("type", "button").class("plain");
    let text = move || if begun.adding.get() { say::NO_TANK } else { say::ADD_TANK }.to_owned();
    let hint = move || if begun.adding.get() { say::WHERE_TANK.text() } else { "" }.to_owned();
    vec![
        button.on("click", move |_| begun.adding.update(|adding| *adding = !*adding)).live_text(text).into(),
        element("SPAN").class("small").attribute("role", "status").live_text(hint).into(),
    ]
}

fn drawn(
    view: HouseView,
    system: &System,
    (ahead, presses): (Option<Lasts>, bool),
    begun: Begun,
    desk: Desk,
) -> AnyView {
    let HouseView { alarms, warnings, due, headline, water, drawing, findings, lists } = view;
    let names: Vec<(PartId, String)> =
        lists.iter().flat_map(|list| list.rows.iter().map(|row| (row.id, row.name.clone()))).collect();
    let valves: Vec<(PartId, bool)> = system.trunk_lines.iter().map(|line| (line.id, line.open)).collect();
    let tanks: Vec<PartId> = system.tanks.iter().map(|tank| tank.id).collect();
    let is_valve: Vec<PartId> = valves.iter().map(|(line, _)| *line).collect();
    let levers = is_valve.clone();
    let first = tanks.is_empty();
    let on_part = Callback::new(move |parts: Vec<PartId>| match parts.as_slice() {
        [one] if begun.adding.get_untracked() && tanks.contains(one) => {
            begun.adding.set(false);
            desk.send.run(Event::TankWanted(*one));
            to_newest_tank(desk);
        }
        [one] if !is_valve.contains(one) => desk.send.run(Event::PartOpened(*one)),
        [] => {
            begun.adding.set(false);
            desk.send.run(Event::FreeTankWanted);
            to_newest_tank(desk);
        }
        _ => {
            begun.tapped.set(parts);
            // Once it is there: whoever came by the keyboard goes on in the row.
            request_animation_frame(|| focus_on(".bundle button"));
        }
    });
    let bundled = live(move || tapped(&names, &valves, begun, desk));
    let on_pulled = Callback::new(move |line| desk.send.run(Event::ValveTurned(line)));
    let touched = figure::Touched { free: say::FREE_PLACE.text(), on_part, levers, on_pulled };
    let picture = figure::picture(&drawing, &say::PICTURE, Some(&touched));
    let save = figure::saves(say::IN_SECTION.text(), water.as_deref().unwrap_or_default(), &drawing, desk);
    let on_key = move |event: web_sys::Event| {
        let key = key_of(&event);
        if key == "Escape" && begun.adding.get_untracked() {
            begun.adding.set(false);
        }
    };
    let drawn = element("DIV")
        .on("keydown", on_key)
        .child(zoomed(begun.zoom, picture, adds_tank(first, begun, desk)))
        .child(bundled)
        .children(water.map(|water| worded("P", water).class("small").into()))
        .child(save)
        .child(desk.button(words::report::TITLE, Event::PlaceOpened(Place::Report)));
    let lists = element("DIV")
        .child(worded("H2", phrase!("Parts", "Partes")))
        .children(lists.into_iter().map(|list| parts_of(list, begun, desk)));
    // What the water of today does comes before what the long run did.
    let top: Vec<AnyView> = match ahead {
        Some(Lasts { line, beside, leads }) => {
            let line = worded("H1", line).class(if presses { "headline pressing" } else { "headline" });
            let lead = desk.button(frame::place(leads), Event::PlaceOpened(leads)).class("plain ahead-line");
            vec![line.into(), list("notes small", beside).into(), worded("P", headline).into(), lead.into()]
        }
        None => vec![worded("H1", headline).class("headline").into()],
    };
    element("SECTION")
        .class("house")
        .children(top)
        .child(live(move || {
            // While the notice says it, once is enough.
            let told = desk.model.with(frame::notice).map(|notice| notice.text).unwrap_or_default();
            let alarms = alarms.iter().filter(|alarm| !told.starts_with(alarm.as_str()));
            element("UL").class("findings").children(alarms.map(|alarm| leading(alarm, Place::Upkeep, desk))).into()
        }))
        .child(element("UL").class("findings").children(warnings.iter().map(|line| leading(line, Place::Ahead, desk))))
        .child(live(move || {
            let reminder = desk.model.with(crate::app::view::kept::reminder_at_house);
            reminder.map_or_else(nothing, |text| {
                desk.button(&text, Event::PlaceOpened(Place::Kept)).class("plain ahead-line").into()
            })
        }))
        .child(super::rain::wanted(desk))
        .children((!first).then(|| super::diary::writes(desk, &[Subject::Level, Subject::Rain])))
        .children(due.map(|due| desk.button(&due, Event::PlaceOpened(Place::Upkeep)).class("plain ahead-line").into()))
        .child(element("UL").class("findings").children(findings.into_iter().map(|found| finding(found, desk))))
        .child(element("DIV").class("columns").child(drawn).child(lists))
        .child(foot(desk))
        .into()
}

/// What asks for attention, with the way to the place that says more.
fn leading(line: &str, place: Place, desk: Desk) -> AnyView {
    let lead = desk.button(frame::place(place), Event::PlaceOpened(place));
    element("LI").child(worded("SPAN", line)).child(lead).into()
}

fn finding(finding: FindingView, desk: Desk) -> AnyView {
    let open = said!("Open", "Abrir");
    let mend = finding.part.map(|part| {
        let button = desk.button(open, Event::PartOpened(part));
        button.attribute("aria-label", [open, ": ", &finding.text].concat()).into()
    });
    element("LI").child(worded("SPAN", finding.text)).children(mend).into()
}

/// More parts of a kind than this are folded.
const MANY: usize = 12;

fn parts_of(list: PartList, begun: Begun, desk: Desk) -> AnyView {
    let PartList { kind, rows } = list;
    let count = rows.len();
    let last = count.saturating_sub(1);
    let add = desk
        .button(phrase!("Add", "Añadir"), Event::PartAdded(kind))
        .class("plain")
        .attribute("aria-label", say!("Add: {part}", "Añadir: {part}", part = words::parts::one(kind)))
        .attribute("title", words::parts::explained(kind));
    let explained = rows.is_empty().then(|| worded("P", words::parts::explained(kind)).class("small").into());
    let rows = rows.into_iter().enumerate().map(|(at, row)| part_row(row, kind, at == 0, at == last, desk));
    element("DIV")
        .class("parts")
        .child(element("DIV").class("parts-head").child(worded("H3", words::parts::many(kind))).child(add))
        .children(explained)
        .child(if count > MANY {
            folded(kind, count, element("UL").children(rows), begun)
        } else {
            element("UL").children(rows)
        })
        .into()
}

/// A long list behind its number; it stays open while its parts are changed.
fn folded(kind: PartKind, count: usize, list: Element, begun: Begun) -> Element {
    let toggled = move |event: web_sys::Event| {
        begun.unfolded.update(|unfolded| {
            unfolded.retain(|other| *other != kind);
            unfolded.extend(is_open(&event).then_some(kind));
        });
    };
    let summary = say!("Show all {count}", "Mostrar todo: {count}", count = words::number_text(count));
    let open = begun.unfolded.get_untracked().contains(&kind);
    element("DETAILS").opened(open).on("toggle", toggled).child(worded("SUMMARY", summary)).child(list)
}

fn part_row(row: PartRow, kind: PartKind, first: bool, last: bool, desk: Desk) -> AnyView {
    let PartRow { id, name, detail } = row;
    let mover = |sign: &str, label: String, shift: Shift, at_end: bool| {
        let goes_along = label.clone();
        let button = desk
            .button_then(sign, Event::PartShifted(id, shift), move || {
                focus_along(".parts button.square", goes_along.clone())
            })
            .class("plain square")
            .attribute("aria-label", label);
        // Only the order of uses means something; that of the rest is for the eye.
        let button = if kind == PartKind::Use {
            button.attribute("title", phrase!("served in this order", "se atienden en este orden"))
        } else {
            button
        };
        if at_end { button.attribute("disabled", "") } else { button }.into()
    };
    let movers = [
        mover("↑", say!("Move {name} up", "Subir {name}", name), Shift::Up, first),
        mover("↓", say!("Move {name} down", "Bajar {name}", name), Shift::Down, last),
    ];
    let open = desk.sends(Event::PartOpened(id)).class("part-name");
    element("LI")
        .child(open.child(worded("STRONG", name)).child(worded("SPAN", detail)))
        .children(movers.into_iter().filter(|_| !(first && last)))
        .into()
}

//! The form of an entry: a number pad for wet hands, and what the number belongs to.

use super::follow::{Derived, Held, derived};
use crate::quantity::day;
use chrono::{Days, NaiveDate};
use leptos::prelude::*;

use super::Desk;
use super::choose::Choose;
use super::choose::pressed;
use super::element::{element, focus_on, key_of, live, nothing, worded};
use super::field::{select_all, typed_field};
use crate::app::draft::Draft;
use crate::app::event::Event;
use crate::app::form::Form;
use crate::app::view::entry::{self, BACK, FormView};
use crate::site::diary::{Parameter, Subject};
use crate::site::work::Task;
use crate::words;

/// The form as it was opened, until it is written or left.
pub(crate) fn entry(desk: Desk) -> AnyView {
    let Some(opened) = desk.model.with_untracked(|model| model.form.clone()) else { return nothing() };
    let form = Held::new(opened.clone());
    let shown = derived(move || {
        desk.case.with(|case| {
            let site = case.site.as_ref()?;
            Some(form.with(|form| entry::form(site, form, &case.units, case.today)))
        })
    });
    let read =
        move |read: fn(&FormView) -> String| move || shown.with(|view| view.as_ref().map_or_else(String::new, read));
    let write_as = move |event: fn(Draft, u64) -> Event| {
        let draft = desk.model.with_untracked(|model| {
            let kept = model.site()?;
            form.with_untracked(|form| form.draft(&model.units, kept)).ok()
        });
        if let Some(draft) = draft {
            desk.send.run(event(draft, (desk.moment)()));
        }
    };
    let write = move || write_as(Event::EntryWritten);
    // The rain of many days is written in a row.
    let today = desk.model.with_untracked(|model| model.today);
    let write_and_next = move |_| {
        write_as(Event::EntryWrittenAndNext);
        if let Some(next) = desk.model.with_untracked(|model| model.form.clone()) {
            form.set(next);
        }
        focus_on("#entry-number");
    };
    let lacking = move || shown.with(|view| view.as_ref().is_none_or(|view| view.understood.is_none()));
    let button = element("BUTTON")
        .attribute("type", "button")
        .class("main")
        .disabled(lacking)
        .on("click", move |_| write())
        .live_text(read(|view| view.write.to_owned()));
    let asks_number = derived(move || shown.with(|view| view.as_ref().is_some_and(|view| view.unit.is_some())));
    let number = live(move || if asks_number.get() { number(form, shown, write) } else { nothing() });
    let doubts = live(move || {
        let doubts = shown.with(|view| view.as_ref().map_or_else(Vec::new, |view| view.doubts.clone()));
        super::element::list("reservations", doubts).into()
    });
    let next = (opened.subject == Subject::Rain && opened.id.is_none()).then(|| {
        let next = live(move || {
            if form.with(|form| form.date >= today) {
                return nothing();
            }
            let button = worded("BUTTON", words::diary::WRITE_AND_NEXT).attribute("type", "button");
            button.disabled(lacking).on("click", write_and_next).into()
        });
        element("DIV").child(next).into()
    });
    let spell = derived(move || shown.with(|view| view.as_ref().and_then(|view| view.dry_spell.clone())));
    let dry = live(move || {
        let Some((first, text)) = spell.get() else { return nothing() };
        let write = move |_| {
            let last = form.with_untracked(|form| form.date);
            desk.send.run(Event::DrySpellWritten([first, last], (desk.moment)()));
        };
        worded("BUTTON", text).attribute("type", "button").class("small").on("click", write).into()
    });
    // A note is nothing but its text: that stands where others have their number.
    let is_note = opened.subject == Subject::Note;
    element("SECTION")
        .class("entry")
        .child(element("H1").attribute("id", "entry-title").live_text(read(|view| view.title.clone())))
        .child(days(desk, form))
        .children(about(desk, form, &opened))
        .child(dry)
        .child(
            element("P")
                .class("small last")
                .live_text(read(|view| view.last.clone().unwrap_or_else(|| words::diary::NOTHING_BEFORE.to_owned()))),
        )
        .child(number)
        .children(is_note.then(|| note_field(form)))
        .child(
            element("DIV")
                .class("writes")
                .child(
                    element("P")
                        .class("understood")
                        .attribute("role", "status")
                        .live_text(read(|view| view.understood.clone().or(view.lacking.clone()).unwrap_or_default())),
                )
                .child(doubts)
                .child(
                    element("DIV")
                        .class("row")
                        .child(button)
                        .children(next)
                        .child(desk.button(phrase!("Leave it", "Cancelar"), Event::FormLeft).class("plain")),
                ),
        )
        .children((opened.subject == Subject::Level).then(|| undrawn(form, !opened.undrawn.is_empty())))
        .children((!is_note).then(|| note(form, !opened.note.is_empty())))
        .into()
}

/// The day: today, yesterday, or another.
fn days(desk: Desk, form: Held<Form>) -> AnyView {
    let today = desk.model.with_untracked(|model| model.today);
    let yesterday = today.checked_sub_days(Days::new(1)).unwrap_or(today);
    let day = move |text: &str, date: NaiveDate| {
        pressed(text, move || form.with(|form| form.date == date), move || form.update(|form| form.date = date)).into()
    };
    let other = date_input(
        said!("Day", "Día"),
        move || form.with(|form| form.date),
        move |date| form.update(|form| form.date = date),
    );
    element("DIV")
        .class("row days")
        .children([day(said!("Today", "Hoy"), today), day(said!("Yesterday", "Ayer"), yesterday), other])
        .into()
}

/// A date to choose.
pub(super) fn date_input(
    label: &'static str,
    date: impl Fn() -> NaiveDate + Send + 'static,
    on_chosen: impl Fn(NaiveDate) + 'static,
) -> AnyView {
    let chosen = move |event: web_sys::Event| {
        if let Some(date) = day::read(&event_target_value(&event)) {
            on_chosen(date);
        }
    };
    element("INPUT")
        .attribute("type", "date")
        .attribute("aria-label", label)
        .value(move || date().to_string())
        .on("change", chosen)
        .into()
}

/// What the entry is about: the part, and how it is told.
fn about(desk: Desk, form: Held<Form>, opened: &Form) -> Vec<AnyView> {
    let subject = opened.subject;
    let mut views: Vec<AnyView> = Vec::new();
    let parts = desk.case.with_untracked(|case| case.site.as_ref().map(|site| entry::parts(site, subject)));
    let parts = parts.unwrap_or_default();
    let choose = |label: &str, names: Vec<String>, chosen: usize, on_chosen: Box<dyn Fn(usize)>| {
        let options = Box::new(move || (names.clone(), chosen));
        AnyView::from(Choose { label: label.to_owned(), hint: None, options, on_chosen })
    };
    match subject {
        Subject::Work => {
            let tasks = Task::ALL.map(|task| words::diary::done(task).to_owned()).to_vec();
            let at = Task::ALL.iter().position(|task| *task == opened.task).unwrap_or(0);
            let pick = move |at: usize| form.update(|form| form.task = Task::ALL.get(at).copied().unwrap_or(form.task));
            views.push(choose(said!("What was done", "Qué se hizo"), tasks, at, Box::new(pick)));
        }
        Subject::Test => {
            let names = Parameter::ALL.map(|parameter| words::diary::parameter_name(parameter).to_owned()).to_vec();
            let at = Parameter::ALL.iter().position(|parameter| *parameter == opened.parameter).unwrap_or(0);
            let pick = move |at: usize| {
                form.update(|form| form.parameter = Parameter::ALL.get(at).copied().unwrap_or(form.parameter));
            };
            views.push(choose(said!("Tested for", "Análisis de"), names, at, Box::new(pick)));
        }
        _ => {}
    }
    if parts.len() > 1 {
        let at = parts.iter().position(|(part, _)| *part == opened.part).unwrap_or(0);
        let names = parts.iter().map(|(_, name)| name.clone()).collect();
        let pick = move |at: usize| {
            if let Some((part, _)) = parts.get(at) {
                let diary = desk.model.with_untracked(|model| model.site().map(|kept| kept.diary.clone()));
                form.update(|form| form.turn_to(*part, &diary.unwrap_or_default()));
            }
        };
        let label = if subject == Subject::Level { said!("Tank", "Tanque") } else { said!("Where", "Dónde") };
        views.push(choose(label, names, at, Box::new(pick)));
    }
    match subject {
        Subject::Level => {
            let ways = entry::level_ways().map(|(by, text)| {
                pressed(text, move || form.with(|form| form.by == by), move || form.update(|form| form.by = by)).into()
            });
            views.push(group(said!("How it was read", "Cómo se leyó"), ways));
            views.push(whole_store(desk, form));
        }
        Subject::Test => {
            let ways = entry::found_ways().map(|(by, text)| {
                let holds = move || form.with(|form| form.found_by() == by);
                let offered = derived(move || form.with(|form| by.fits(form.parameter)));
                let way = pressed(text, holds, move || form.update(|form| form.found = by));
                way.live_attribute("hidden", move || (!offered.get()).then(String::new)).into()
            });
            views.push(group(said!("Result", "Resultado"), ways));
        }
        Subject::Rain => {
            views.push(
                pressed(words::diary::DRY.text(), || false, move || form.update(|form| form.text = "0".to_owned()))
                    .into(),
            );
        }
        Subject::Delivery => {
            let text = move || form.with(|form| form.price.clone());
            views.push(typed_field(
                said!("Price of it all, if you want to keep it", "Precio de todo, si quieres guardarlo"),
                text,
                move |text| {
                    form.update(|form| form.price = text);
                },
            ));
        }
        _ => {}
    }
    views
}

fn group(label: &'static str, ways: [AnyView; 4]) -> AnyView {
    element("DIV").class("row ways-row").attribute("role", "group").attribute("aria-label", label).children(ways).into()
}

/// Whether a level is of all tanks that are joined with the one named, where some are.
fn whole_store(desk: Desk, form: Held<Form>) -> AnyView {
    live(move || {
        let joined = desk
            .case
            .with_untracked(|case| case.site.as_ref().is_some_and(|site| form.with(|form| form.is_joined(site))));
        if !joined {
            return nothing();
        }
        let all = move || form.with(|form| form.whole_store);
        pressed(words::diary::WITH_JOINED.text(), all, move || form.update(|form| form.whole_store = !form.whole_store))
            .into()
    })
}

/// The number with its pad.
fn number(form: Held<Form>, shown: Derived<Option<FormView>>, write: impl Fn() + Copy + 'static) -> AnyView {
    let input = element("INPUT")
        .attribute("type", "text")
        .attribute("id", "entry-number")
        // The pad below types; a keyboard that is there types too, but none slides over the page.
        .attribute("inputmode", "none")
        .attribute("autocomplete", "off")
        .attribute("aria-describedby", "entry-title entry-unit")
        .class("digits")
        .value(move || form.with(|form| form.text.clone()))
        .live_attribute("aria-invalid", move || {
            let lacks = shown.with(|view| view.as_ref().is_some_and(|view| view.lacking.is_some()));
            lacks.then(|| "true".to_owned())
        })
        .on("focus", select_all)
        .on("input", move |event| form.update(|form| form.text = event_target_value(&event)))
        .on("keydown", move |event| {
            let key = key_of(&event);
            if key == "Enter" {
                write();
            }
        });
    let unit = move || shown.with(|view| view.as_ref().and_then(|view| view.unit.clone()).unwrap_or_default());
    let meant = derived(move || shown.with(|view| view.as_ref().and_then(|view| view.meant.clone())));
    let take = live(move || {
        let Some(text) = meant.get() else { return nothing() };
        worded("BUTTON", text.clone())
            .attribute("type", "button")
            .attribute("aria-label", words::diary::take_as(&text))
            .on("click", move |_| form.update(|form| form.text.clone_from(&text)))
            .into()
    });
    let label = element("LABEL")
        .attribute("for", "entry-number")
        .class("label")
        .live_text(move || form.with(|form| entry::label(form).to_owned()));
    // What stands there of an entry that is changed is selected: the first digit takes its place, by a key and on the pad.
    let selected = form.with_untracked(|form| form.text.clone());
    let keys = entry::keys().map(|key| {
        let selected = selected.clone();
        let press = move |form: &mut Form| {
            let kept = if form.text == selected && key != BACK { "" } else { &form.text };
            form.text = entry::typed_key(kept, key);
        };
        let button =
            worded("BUTTON", key).attribute("type", "button").on("click", move |_| form.update(|form| press(form)));
        if key == BACK {
            button.attribute("aria-label", phrase!("Take the last digit away", "Borrar la última cifra"))
        } else {
            button
        }
        .into()
    });
    element("DIV")
        .class("number")
        .child(label)
        .child(
            element("DIV")
                .class("digits-row")
                .child(input)
                .child(element("SPAN").class("unit").attribute("id", "entry-unit").live_text(unit))
                .child(take),
        )
        .child(
            element("DIV")
                .class("pad")
                .attribute("role", "group")
                .attribute("aria-label", phrase!("Digits", "Cifras"))
                .children(keys),
        )
        .into()
}

/// Hours without any draw, of a level that is read to find a leak.
fn undrawn(form: Held<Form>, open: bool) -> AnyView {
    let text = move || form.with(|form| form.undrawn.clone());
    let field = typed_field(words::diary::UNDRAWN.text(), text, move |text| form.update(|form| form.undrawn = text));
    element("DETAILS")
        .opened(open)
        .child(worded("SUMMARY", words::diary::LEAK_TEST))
        .child(worded("P", words::diary::LEAK_TEST_HOW).class("small"))
        .child(field)
        .into()
}

/// The text of the note.
fn note_field(form: Held<Form>) -> AnyView {
    let area = element("TEXTAREA")
        .attribute("rows", "3")
        .value(move || form.with(|form| form.note.clone()))
        .on("input", move |event| form.update(|form| form.note = event_target_value(&event)));
    element("LABEL").class("field").child(worded("SPAN", phrase!("Note", "Nota")).class("label")).child(area).into()
}

/// The note of another entry, behind a word: it is seldom wanted.
fn note(form: Held<Form>, open: bool) -> AnyView {
    let summary = worded("SUMMARY", phrase!("Add a note", "Añadir una nota"));
    element("DETAILS").opened(open).child(summary).child(note_field(form)).into()
}

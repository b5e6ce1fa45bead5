//! The weeks ahead.

use chrono::Days;
use leptos::prelude::*;

use super::choose::Choose;
use super::element::{element, list, live, nothing, worded};
use super::entry::date_input;
use super::field::QuantityField;
use super::follow::{Derived, Held, derived};
use super::{Desk, figure, foot};
use crate::app::ahead::{AheadEvent, Wishes};
use crate::app::event::Event;
use crate::app::model::Place;
use crate::app::view::ahead::{self, AheadView, FoundView, Wanted};
use crate::app::view::checks::{self, Announced};
use crate::language::Phrase;
use crate::quantity::shown;
use crate::site::details::{Detail, Row};
use crate::site::diary::Subject;
use crate::words::{ahead as say, learning};

/// What is shown, and what is wished.
type Shown = Derived<Option<AheadView>>;

/// The weeks ahead.
pub(crate) fn ahead(desk: Desk) -> AnyView {
    let shown: Shown = derived(move || {
        desk.case.with(|case| {
            Some(ahead::ahead(case.site.as_ref()?, &case.ahead, case.lesson.as_deref(), &case.units, case.width))
        })
    });
    let headline = move || shown.with(|view| view.as_ref().map(|view| view.headline.clone()).unwrap_or_default());
    let found = move |draw: fn(&FoundView, Desk) -> AnyView| {
        live(move || shown.with(|view| Some(draw(view.as_ref()?.found.as_ref()?, desk))).unwrap_or_else(nothing))
    };
    let beside = move || {
        list("notes small", shown.with(|view| view.as_ref().map(|view| view.beside.clone()).unwrap_or_default())).into()
    };
    let alarms = move || {
        let told = shown.with(|view| view.as_ref().map(|view| view.alarms.clone()).unwrap_or_default());
        list("reservations", told).into()
    };
    let wanted = move || {
        let (text, opened) = match shown.with(|view| view.as_ref()?.wanted) {
            Some(Wanted::Reading) => (say::OPEN_DIARY, Event::FormWanted(Subject::Level)),
            Some(Wanted::Rain) => (say::OPEN_RAIN, Event::PlaceOpened(Place::Rain)),
            None => return nothing(),
        };
        desk.button(text, opened).class("main").into()
    };
    // The choices keep their nodes while the answer changes.
    let can_choose = derived(move || shown.with(|view| view.as_ref().is_some_and(|view| view.found.is_some())));
    element("SECTION")
        .class("ahead")
        .child(element("H1").class("headline").live_text(headline))
        .child(live(beside))
        .child(live(alarms))
        .child(live(wanted))
        .child(found(|view, _| list("range", view.range.clone()).into()))
        .child(found(|view, desk| figure::chart(view.fan.clone(), desk)))
        .child(live(move || if can_choose.get() { choices(desk, shown) } else { nothing() }))
        .child(found(|view, _| rest(view)))
        .child(live(move || if can_choose.get() { storm(desk) } else { nothing() }))
        .child(live(move || shown.with(|view| view.as_ref()?.learnt.as_ref().map(learnt)).unwrap_or_else(nothing)))
        .child(foot(desk))
        .into()
}

fn choices(desk: Desk, shown: Shown) -> AnyView {
    let wishes = move || desk.case.with(|case| case.ahead.0);
    let choose = move |label: Phrase, options: fn(&Wishes) -> (Vec<String>, usize), event: fn(usize) -> AheadEvent| {
        let options = Box::new(move || options(&wishes()));
        let on_chosen = Box::new(move |at| desk.send.run(Event::Ahead(event(at))));
        AnyView::from(Choose { label: label.to_owned(), hint: None, options, on_chosen })
    };
    let until = date_input(
        say::UNTIL.text(),
        move || {
            let today = desk.model.with(|model| model.today);
            today.checked_add_days(Days::new(wishes().days as u64)).unwrap_or(today)
        },
        move |until| {
            let days = (until - desk.model.with_untracked(|model| model.today)).num_days();
            desk.send.run(Event::Ahead(AheadEvent::TargetChosen(usize::try_from(days).unwrap_or(0))));
        },
    );
    let differs = derived(move || shown.with(|view| view.as_ref().is_some_and(|view| view.differs)));
    let by = move || {
        let bases = |wishes: &Wishes| {
            let chosen = say::BASES.iter().position(|(by, _)| *by == wishes.by);
            (say::BASES.map(|(_, words)| words.to_owned()).into(), chosen.unwrap_or(0))
        };
        choose(say::RECKONED_BY, bases, |at| AheadEvent::BasisChosen(say::BASES[at.min(say::BASES.len() - 1)].0))
    };
    let safe = move || shown.with(|view| Some(view.as_ref()?.found.as_ref()?.safe.clone())).unwrap_or_default();
    element("DIV")
        .class("safe")
        .attribute("role", "group")
        .attribute("aria-label", say::SAFE)
        .child(worded("H2", say::SAFE))
        .child(element("P").attribute("role", "status").live_text(safe))
        .child(choose(
            say::TO_LAST,
            |wishes| {
                let mut words: Vec<String> = say::TARGETS.iter().map(|(_, words)| words.to_owned()).collect();
                let named = say::TARGETS.iter().position(|(days, _)| *days == wishes.days);
                // Another day was chosen.
                words.extend(named.is_none().then(|| crate::words::days(wishes.days)));
                let chosen = named.unwrap_or(say::TARGETS.len());
                (words, chosen)
            },
            |at| AheadEvent::TargetChosen(say::TARGETS[at.min(say::TARGETS.len() - 1)].0),
        ))
        .child(element("DIV").class("field").child(worded("SPAN", say::UNTIL).class("label")).child(until))
        .child(choose(
            say::CHANCE,
            |wishes| {
                let chosen = say::CHANCES_WANTED.iter().position(|(chance, _)| *chance == wishes.chance);
                (say::CHANCES_WANTED.map(|(_, words)| words.to_owned()).into(), chosen.unwrap_or(0))
            },
            |at| AheadEvent::ChanceChosen(say::CHANCES_WANTED[at.min(say::CHANCES_WANTED.len() - 1)].0),
        ))
        .child(choose(
            say::YEARS,
            |wishes| {
                let chosen = say::YEARS_WANTED.iter().position(|(years, _)| *years == wishes.years);
                (say::YEARS_WANTED.map(|(_, words)| words.to_owned()).into(), chosen.unwrap_or(0))
            },
            |at| AheadEvent::YearsChosen(say::YEARS_WANTED[at.min(say::YEARS_WANTED.len() - 1)].0),
        ))
        .child(live(move || if differs.get() { by() } else { nothing() }))
        .into()
}

/// What the readings say.
fn learnt((odd, sentences): &(Vec<String>, Vec<String>)) -> AnyView {
    let views: Vec<AnyView> = vec![
        worded("H2", learning::TITLE).into(),
        list("reservations", odd.clone()).into(),
        list("notes", sentences.clone()).into(),
    ];
    views.into_any()
}

fn storm(desk: Desk) -> AnyView {
    let announced = Held::new(Announced::default());
    let told = derived(move || {
        desk.case.with(|case| {
            let site = case.site.as_ref()?;
            Some(checks::storm(site, announced.get(), case.outcome.as_deref(), case.today, &case.units))
        })
    });
    let field = |label: Phrase, detail: Detail, of: fn(&mut Announced) -> &mut Option<f64>| {
        let Row { kind, range, .. } = detail.row();
        let text = move || {
            let said = *of(&mut announced.get());
            let taken = || desk.case.with(|case| case.site.as_ref().map(|site| checks::of_checks(site, detail)));
            let entered = |si| desk.model.with(|model| shown::entered(si, kind, &model.units));
            said.or_else(taken).map(entered).unwrap_or_default()
        };
        QuantityField {
            label: label.to_owned(),
            hint: None,
            text: Box::new(text),
            kind,
            range,
            on_entered: Box::new(move |si| announced.update(|announced| *of(announced) = Some(si))),
        }
        .taken(true, desk)
    };
    let depth = field(say::ANNOUNCED, Detail::StormDepth, |announced| &mut announced.depth_mm);
    let hours = field(say::LASTS, Detail::StormDuration, |announced| &mut announced.hours);
    let views: Vec<AnyView> = vec![
        worded("H2", say::STORM).into(),
        element("DIV").class("fields").child(depth).child(hours).into(),
        live(move || list("notes", told.get().unwrap_or_default()).into()),
        worded("P", say::STORM_LISTS).class("small").into(),
    ];
    views.into_any()
}

fn rest(view: &FoundView) -> AnyView {
    vec![
        worded("H2", say::HELPS).into(),
        list("notes", view.helps.clone()).into(),
        worded("H2", say::CHANCES).into(),
        figure::table_of(view.chances.clone(), &say::CHANCES),
        worded("H2", say::BASIS).into(),
        list("notes", view.basis.clone()).into(),
    ]
    .into_any()
}

//! Generated years on the rain place: beside the site's rain, to be reckoned with or not.

use leptos::prelude::*;

use super::choose::Choose;
use super::element::{element, worded};
use super::field::QuantityField;
use super::{Desk, figure};
use crate::app::event::Event;
use crate::app::view::generated::GeneratedView;
use crate::quantity::{Kind, Share, shown};
use crate::site::household::{ANNUAL_SPREAD, GENERATED_YEARS, GeneratedYears, RAIN_FACTOR};
use crate::words::{generated as say, months};

/// The section.
pub(crate) fn generated(view: GeneratedView, desk: Desk) -> AnyView {
    let GeneratedView { which, from, spread_note, charts, table, spells, refused } = view;
    let mut views: Vec<AnyView> = vec![worded("H2", say::TITLE).into(), worded("P", say::WHAT).class("small").into()];
    views.extend(refused.map(|refused| worded("P", refused).class("caution").into()));
    let Some(from) = from else { return element("SECTION").children(views).into() };
    let in_use = which.is_some();
    views.extend(which.map(|which| worded("P", which).class("lead").into()));
    let choose = |label, generated, class| desk.button(label, Event::GeneratedChosen(generated)).class(class).into();
    let another = GeneratedYears { seed: from.seed.wrapping_add(1), ..from };
    let buttons: Vec<AnyView> = if in_use {
        vec![choose(say::ANOTHER_DRAW, Some(another), ""), choose(say::BACK, None, "")]
    } else {
        vec![choose(say::RECKON_WITH_THEM, Some(from), "main")]
    };
    views.push(element("DIV").class("row").children(buttons).into());
    views.extend(table.map(|table| figure::table_of(table, &say::TITLE)));
    views.extend(spells.map(|spells| worded("P", spells).into()));
    views.push(figure::pair(charts, desk));
    if in_use {
        views.push(settings(from, spread_note, desk));
    }
    views.push(
        element("DETAILS")
            .child(worded("SUMMARY", phrase!("How years are generated", "Cómo se generan los años")))
            .child(worded("P", say::HOW).class("small"))
            .into(),
    );
    element("SECTION").class("likeness").children(views).into()
}

/// How many years, and how much they differ.
fn settings(from: GeneratedYears, spread_note: String, desk: Desk) -> AnyView {
    let text = move |value: f64, kind| desk.model.with(|model| shown::entered(value, kind, &model.units));
    let how_many = QuantityField {
        label: say::HOW_MANY.to_owned(),
        hint: None,
        text: Box::new(move || text(f64::from(from.years), Kind::Count)),
        kind: Kind::Count,
        range: GENERATED_YEARS,
        on_entered: Box::new(move |years| {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "10 to 400")]
            let years = years.round() as u16;
            desk.send.run(Event::GeneratedChosen(Some(GeneratedYears { years, ..from })));
        }),
    };
    let spread = QuantityField {
        label: say::SPREAD.to_owned(),
        hint: None,
        text: Box::new(move || from.spread.map_or_else(String::new, |spread| text(spread.get(), Kind::Share))),
        kind: Kind::Share,
        range: ANNUAL_SPREAD,
        on_entered: Box::new(move |spread| {
            let spread = Some(Share::of_one(spread));
            desk.send.run(Event::GeneratedChosen(Some(GeneratedYears { spread, ..from })));
        }),
    };
    element("DIV")
        .class("fields")
        .child(how_many.view(desk))
        .child(spread.view(desk))
        .child(worded("P", spread_note).class("small"))
        .into()
}

/// Factors for a drier future.
pub(crate) fn future(factors: [f64; 12], desk: Desk) -> AnyView {
    let shift = say::SHIFTS.iter().position(|(factor, _)| factors.iter().all(|of_month| of_month == factor));
    let words = move || {
        let mut words: Vec<String> = say::SHIFTS.iter().map(|(_, words)| (*words).to_owned()).collect();
        if shift.is_none() {
            words.push(say::BY_MONTH.to_owned());
        }
        (words, shift.unwrap_or(say::SHIFTS.len()))
    };
    let pick = move |at: usize| {
        if let Some((factor, _)) = say::SHIFTS.get(at) {
            desk.send.run(Event::RainFactorsEntered([*factor; 12]));
        }
    };
    let whole =
        Choose { label: say::WHOLE_YEAR.to_owned(), hint: None, options: Box::new(words), on_chosen: Box::new(pick) };
    let month = |number: usize| {
        QuantityField {
            label: months()[number].to_owned(),
            hint: None,
            text: Box::new(move || desk.model.with(|model| shown::entered(factors[number], Kind::Share, &model.units))),
            kind: Kind::Share,
            range: RAIN_FACTOR,
            on_entered: Box::new(move |factor| {
                let mut factors = factors;
                factors[number] = factor;
                desk.send.run(Event::RainFactorsEntered(factors));
            }),
        }
        .view(desk)
    };
    element("DETAILS")
        .child(worded("SUMMARY", say::FUTURE))
        .child(worded("P", say::FUTURE_WHAT).class("small"))
        .child(whole)
        .child(element("DIV").class("months").children((0..12).map(month)))
        .into()
}

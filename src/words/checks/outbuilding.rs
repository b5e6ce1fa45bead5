//! A second supply off the same store.

use super::{Text, Told};
use crate::engine::checks::outbuilding::uses_with;
use crate::engine::checks::{Figure, Verdict};
use crate::language::Phrase;
use crate::site::details::Detail;
use crate::site::system::System;

const JOINED: Phrase = Phrase(
    "A pipe to another building is a second chance for backflow: a valve that shuts it off, no joint with \
                      the mains, taps marked. Keep it below the frost. Guests or tenants may make you a water supplier.",
    "A pipe to another building is a second chance for backflow: a valve that shuts it off, no joint with \
                      the mains, taps marked. Keep it below the frost. Guests or tenants may make you a water supplier.",
);

pub(super) const SUPPLY: Text = Text {
    title: Phrase("Outbuilding on this store", "Outbuilding on this store"),
    formula: Phrase(
        "ρ·g·(level + pump head − tap − friction) − filters, through the outbuilding's own pipe and what it shares.",
        "ρ·g·(level + pump head − tap − friction) − filters, through the outbuilding's own pipe and what it shares.",
    ),
    source: Phrase(
        "Darcy-Weisbach with Colebrook's factor; peak flow from fixture units (IPC Table E103.3(2), Hunter's curve).",
        "Darcy-Weisbach with Colebrook's factor; peak flow from fixture units (IPC Table E103.3(2), Hunter's curve).",
    ),
    assumes: Phrase(
        "Tank down to its outlet. The pipe branches off at the store, or at the end of what is shared, before the \
              house's filters. A pump is the tank's. Uses in one outbuilding share the first one's pipe.",
        "Tank down to its outlet. The pipe branches off at the store, or at the end of what is shared, before the \
              house's filters. A pump is the tank's. Uses in one outbuilding share the first one's pipe.",
    ),
    caution: JOINED,
};
pub(super) const BOTH: Text = Text {
    title: Phrase("House and outbuilding at once", "House and outbuilding at once"),
    formula: Phrase(
        "Each draws its peak; pump and shared pipe carry both. Judged by the tap with less to spare.",
        "Each draws its peak; pump and shared pipe carry both. Judged by the tap with less to spare.",
    ),
    source: Phrase("As the checks of each alone.", "As the checks of each alone."),
    assumes: Phrase(
        "Both peaks fall together, which is seldom. Filters due for change.",
        "Both peaks fall together, which is seldom. Filters due for change.",
    ),
    caution: Phrase("", ""),
};
pub(super) const BURDEN: Text = Text {
    title: Phrase("What it takes from the others", "What it takes from the others"),
    formula: Phrase(
        "The whole balance with it and without it, under the same rain.",
        "The whole balance with it and without it, under the same rain.",
    ),
    source: Phrase("The balance.", "The balance."),
    assumes: Phrase(
        "Uses higher in the list are served first. Dry days with it count its own too, unless it is outdoors.",
        "Uses higher in the list are served first. Dry days with it count its own too, unless it is outdoors.",
    ),
    caution: Phrase("", ""),
};

pub(super) fn supply(told: &Told<'_>, system: &System) -> (String, String) {
    match told.check.verdict {
        Verdict::Tells => {
            let using = system.uses.iter().find(|using| using.id == told.check.part);
            let first = using.and_then(|using| uses_with(system, using).first().copied());
            let verdict = match first {
                Some(first) => format!("on the pipe of {}: see there.", system.name_of(first)),
                None => "its taps are in the house. For a shed, cabin or barn choose so below.".to_owned(),
            };
            return (verdict, String::new());
        }
        Verdict::Outside => return (super::supply::CURVE.to_owned(), super::supply::ENTER_CURVE.to_owned()),
        _ => {}
    }
    let (has, wants, margin) = told.margin();
    let full = if told.check.figure(Figure::TapFull).is_finite() {
        format!(" with the tank low, {} full", told.figure(Figure::TapFull))
    } else {
        String::new()
    };
    let verdict = format!(
        "{margin}: {has} at {}{full}, {wants} wanted. At that pressure it gives up to {}.",
        told.entered(Detail::TapFlow),
        told.figure(Figure::OutFlow),
    );
    (verdict, told.if_fails("Take a wider pipe, lower the tap, or a stronger pump."))
}

pub(super) fn both(told: &Told<'_>) -> (String, String) {
    let (_, wants, margin) = told.margin();
    let verdict = format!(
        "{margin}, at the tap with less ({wants} wanted there): the house has {} ({} alone), the outbuilding {} and up to {}.",
        told.figure(Figure::HouseBoth),
        told.figure(Figure::HouseAlone),
        told.figure(Figure::OutBoth),
        told.figure(Figure::OutFlowBoth),
    );
    (verdict, told.if_fails("Take a wider shared pipe, a pipe for each, a stronger pump, or draw in turn."))
}

pub(super) fn burden(told: &Told<'_>) -> (String, String) {
    let mut verdict = format!("it asks for {}", told.figure(Figure::LitresADay));
    if told.check.figure(Figure::GetsShare).is_finite() {
        verdict += &format!(" and gets {} of it", told.figure(Figure::GetsShare));
    }
    if told.check.figure(Figure::OthersWith).is_finite() {
        verdict += &format!(
            ". The others get {} of theirs, {} without it; dry days a year {}, without it {}",
            told.figure(Figure::OthersWith),
            told.figure(Figure::OthersWithout),
            told.figure(Figure::DryDaysWith),
            told.figure(Figure::DryDaysWithout),
        );
    }
    (verdict + ".", String::new())
}

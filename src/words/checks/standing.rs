//! Whether a tank stands, and what a storm brings.

use super::{Text, Told};
use crate::engine::checks::{Figure, Verdict};
use crate::language::Phrase;
use crate::site::details::Detail;
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::tank::OverflowTo;

pub(super) const PAD: Text = Text {
    title: Phrase("Weight and soil", "Weight and soil"),
    formula: Phrase("(water full + tank + pad) · g ÷ pad area.", "(water full + tank + pad) · g ÷ pad area."),
    source: Phrase(
        "Allowable: International Building Code Table 1806.2.",
        "Allowable: International Building Code Table 1806.2.",
    ),
    assumes: Phrase(
        "An even pad on undisturbed ground, concrete of 2,400 kg/m³, water to the rim.",
        "An even pad on undisturbed ground, concrete of 2,400 kg/m³, water to the rim.",
    ),
    caution: Phrase(
        "A full tank that slips crushes: fill, slopes and retaining walls need an engineer.",
        "A full tank that slips crushes: fill, slopes and retaining walls need an engineer.",
    ),
};
pub(super) const WIND: Text = Text {
    title: Phrase("Wind on the empty tank", "Wind on the empty tank"),
    formula: Phrase(
        "q = 0.613·Kz·Kd·V²; force = q·0.85·Cf·face. Slides below force ÷ friction, tips below force × height ÷ foot; \
              1.5 times that is wanted.",
        "q = 0.613·Kz·Kd·V²; force = q·0.85·Cf·face. Slides below force ÷ friction, tips below force × height ÷ foot; \
              1.5 times that is wanted.",
    ),
    source: Phrase(
        "ASCE 7-10: Kz = 2.01·(z/zg)^(2/α) from 15 ft up, Kd 0.95, Cf by Figure 29.5-1 (from memory).",
        "ASCE 7-10: Kz = 2.01·(z/zg)^(2/α) from 15 ft up, Kd 0.95, Cf by Figure 29.5-1 (from memory).",
    ),
    assumes: Phrase(
        "Level open ground without a hill, a closed lid, the force at half the height, Cf of a rigid smooth body.",
        "Level open ground without a hill, a closed lid, the force at half the height, Cf of a rigid smooth body.",
    ),
    caution: Phrase(
        "Not for tornadoes. An empty tank flies: fill or tie it before the storm, never during it.",
        "Not for tornadoes. An empty tank flies: fill or tie it before the storm, never during it.",
    ),
};
pub(super) const UPLIFT: Text = Text {
    title: Phrase("Flotation in wet ground or a flood", "Flotation in wet ground or a flood"),
    formula: Phrase(
        "Uplift = displaced water; held by tank, soil cover and concrete, less what these displace; 1.3 times wanted.",
        "Uplift = displaced water; held by tank, soil cover and concrete, less what these displace; 1.3 times wanted.",
    ),
    source: Phrase(
        "FEMA 259, Example C7 (factor 1.3); concrete 150, backfill 120 lb/ft³.",
        "FEMA 259, Example C7 (factor 1.3); concrete 150, backfill 120 lb/ft³.",
    ),
    assumes: Phrase(
        "Empty tank, soil just over its plan, no friction at its walls.",
        "Empty tank, soil just over its plan, no friction at its walls.",
    ),
    caution: Phrase(
        "Never empty a buried tank in wet ground, nor any before a flood: it floats and tears its pipes.",
        "Never empty a buried tank in wet ground, nor any before a flood: it floats and tears its pipes.",
    ),
};
pub(super) const STORM_FEED: Text = Text {
    title: Phrase("The storm at this feed", "The storm at this feed"),
    formula: Phrase(
        "Area × runoff × (rain − wetting) × capture, after the first flush.",
        "Area × runoff × (rain − wetting) × capture, after the first flush.",
    ),
    source: Phrase("The same rules as the daily balance.", "The same rules as the daily balance."),
    assumes: Phrase("Even rain; a diverter that was empty before.", "Even rain; a diverter that was empty before."),
    caution: Phrase("", ""),
};
pub(super) const STORM_TANK: Text = Text {
    title: Phrase("The storm in this tank", "The storm in this tank"),
    formula: Phrase(
        "Inflow against the room that there is; beyond it all spills.",
        "Inflow against the room that there is; beyond it all spills.",
    ),
    source: Phrase("The same rules as the daily balance.", "The same rules as the daily balance."),
    assumes: Phrase(
        "Even rain, no use meanwhile; today's water as the drawing of the house has it.",
        "Even rain, no use meanwhile; today's water as the drawing of the house has it.",
    ),
    caution: Phrase("", ""),
};

pub(super) fn pad(told: &Told<'_>) -> (String, String) {
    let (has, wants, margin) = told.margin();
    let verdict = format!(
        "{margin}: full it weighs {} and presses {wants}; the soil bears {has}.",
        told.figure(Figure::FullMass)
    );
    (verdict, told.if_fails("Make the pad larger, or have the soil judged."))
}

pub(super) fn wind(told: &Told<'_>) -> (String, String) {
    let check = told.check;
    let litres = told.figure(Figure::HoldingLitres);
    let wind = told.entered(Detail::WindSpeed);
    if check.went_in(Detail::Anchors) >= 1.0 {
        let verdict = format!(
            "In a wind of {wind} each anchor must hold {} upwards (windward half) and {} sideways, the tank empty; \
             {litres} in it hold it without.",
            told.figure(Figure::AnchorPull),
            told.figure(Figure::AnchorShear)
        );
        return (verdict, String::new());
    }
    let to_do = format!("Leave {litres} in it before a storm, or anchor it.");
    match check.margin {
        None => (format!("In a wind of {wind} it stands with {litres} in it."), to_do),
        Some(margin) if margin.wants <= 0.0 => (format!("In a wind of {wind} it stands even empty."), String::new()),
        Some(margin) if check.figure(Figure::ContentNow).is_nan() => (
            format!(
                "In a wind of {wind} it would not stand even full: {litres} wanted, {} hold.",
                super::figure(margin.of, margin.has, told.units)
            ),
            "Anchor it.".to_owned(),
        ),
        Some(_) => {
            let (has, _, margin) = told.margin();
            let verdict = format!("{margin}: in a wind of {wind} it stands with {litres} in it; today {has}.");
            (verdict, if check.verdict == Verdict::Fails { to_do } else { String::new() })
        }
    }
}

pub(super) fn uplift(told: &Told<'_>) -> (String, String) {
    if told.check.figure(Figure::Uplift) == 0.0 {
        return ("The water doesn't reach it. Enter a flood to see what it does.".to_owned(), String::new());
    }
    let (has, wants, margin) = told.margin();
    let verdict =
        format!("{margin}: {has} hold it down, {wants} wanted against an uplift of {}.", told.figure(Figure::Uplift));
    let to_do = format!(
        "Keep at least {} in it, or cast {} of concrete to it, strap it down, or drain the ground.",
        told.figure(Figure::UpliftLitres),
        told.figure(Figure::ConcreteWanted)
    );
    (verdict, told.if_fails(&to_do))
}

pub(super) fn storm_feed(told: &Told<'_>) -> (String, String) {
    let verdict = format!(
        "{} in {} bring {} to the tank, {} at a time, once the first flush is taken.",
        told.entered(Detail::StormDepth),
        told.entered(Detail::StormDuration),
        told.figure(Figure::StormLitres),
        told.figure(Figure::StormRate)
    );
    (verdict, String::new())
}

pub(super) fn storm_tank(told: &Told<'_>, system: &System) -> (String, String) {
    let check = told.check;
    if check.verdict == Verdict::Lacks {
        return (
            "Nothing says how much stands in it today.".to_owned(),
            "Give the site its rain, and mend what keeps it from running.".to_owned(),
        );
    }
    let came = told.figure(Figure::StormLitres);
    let room = told.figure(Figure::Headroom);
    let stores = system.stores();
    let joined = stores.iter().any(|store| store.len() > 1 && store.contains(&check.part));
    let room = if joined { format!("{room} in the joined tanks") } else { room };
    let mut verdict = if check.figure(Figure::FullAfter).is_finite() {
        format!(
            "{came} come, there is room for {room}: full after {}, then {} spill{}, {} in all.",
            told.figure(Figure::FullAfter),
            told.figure(Figure::SpillRate),
            spills(check.part, system),
            told.figure(Figure::SpillLitres)
        )
    } else {
        format!("{came} come, there is room for {room}: nothing spills.")
    };
    if joined {
        verdict += &format!(" {} stay in this one.", told.figure(Figure::StormHere));
    }
    (verdict, String::new())
}

/// Over which rim the store of a tank spills, and where to.
fn spills(tank: PartId, system: &System) -> String {
    let stores = system.stores();
    let store = stores.iter().find(|store| store.contains(&tank));
    let tanks = system.tanks.iter().filter(|other| store.is_some_and(|store| store.contains(&other.id)));
    let lowest =
        tanks.reduce(|one, other| if other.overflow_elevation() < one.overflow_elevation() { other } else { one });
    let Some(lowest) = lowest else { return String::new() };
    let at = if lowest.id == tank { String::new() } else { format!(" at {}", lowest.name) };
    match lowest.overflow_to {
        OverflowTo::Tank(other) => format!("{at} to {}", system.name_of(other)),
        OverflowTo::Garden => format!("{at} to the garden"),
        OverflowTo::Ground => format!("{at} to the ground"),
    }
}

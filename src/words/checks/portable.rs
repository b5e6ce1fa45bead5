//! A portable tank filled from the store.

use super::{Text, Told};
use crate::engine::checks::portable::ONE_LIFTS_KG;
use crate::engine::checks::{Figure, Verdict};
use crate::language::Phrase;
use crate::site::details::Detail;

pub(super) const DAYS: Text = Text {
    title: Phrase("How long it lasts", "How long it lasts"),
    formula: Phrase(
        "Litres ÷ people ÷ litres for each a day. Drinking and food 3 L, with cooking 9 L, with washing 15 L; all \
              three at the least 7.5 L.",
        "Litres ÷ people ÷ litres for each a day. Drinking and food 3 L, with cooking 9 L, with washing 15 L; all \
              three at the least 7.5 L.",
    ),
    source: Phrase(
        "Sphere Handbook 2018, basic survival water needs (from memory): 2.5 to 3 L drinking and food, 3 to 6 L \
             cooking, 2 to 6 L washing.",
        "Sphere Handbook 2018, basic survival water needs (from memory): 2.5 to 3 L drinking and food, 3 to 6 L \
             cooking, 2 to 6 L washing.",
    ),
    assumes: Phrase(
        "It starts full and nothing is spilled. Heat, work, illness and small children want more; pets want theirs.",
        "It starts full and nothing is spilled. Heat, work, illness and small children want more; pets want theirs.",
    ),
    caution: Phrase(
        "As safe as the tap that filled it, and less so every day: a clean closed tank, out of the sun. After days, or \
              when in doubt, treat it again as at that tap.",
        "As safe as the tap that filled it, and less so every day: a clean closed tank, out of the sun. After days, or \
              when in doubt, treat it again as at that tap.",
    ),
};
pub(super) const WEIGHT: Text = Text {
    title: Phrase("What it weighs full", "What it weighs full"),
    formula: Phrase("1 kg a litre, and the empty tank.", "1 kg a litre, and the empty tank."),
    source: Phrase(
        "Density of water. Empty: 1.2 kg for a can of 20 L (common practice, no source). One person lifts 23 kg \
             (51 lb) at most: NIOSH lifting equation, 1994.",
        "Density of water. Empty: 1.2 kg for a can of 20 L (common practice, no source). One person lifts 23 kg \
             (51 lb) at most: NIOSH lifting equation, 1994.",
    ),
    assumes: Phrase("Full to the cap.", "Full to the cap."),
    caution: Phrase(
        "Strap it low, over or ahead of the axle; half full it surges. Brakes, hitch, axle and tyres have limits of \
              their own: don't tow or load on a guess. Not loose in a cabin, not left in the sun.",
        "Strap it low, over or ahead of the axle; half full it surges. Brakes, hitch, axle and tyres have limits of \
              their own: don't tow or load on a guess. Not loose in a cabin, not left in the sun.",
    ),
};
pub(super) const FILL: Text = Text {
    title: Phrase("What a filling takes", "What a filling takes"),
    formula: Phrase(
        "One filling against what the store can give today.",
        "One filling against what the store can give today.",
    ),
    source: Phrase("The balance.", "The balance."),
    assumes: Phrase(
        "Today's water: the middle of the record on this day of the year.",
        "Today's water: the middle of the record on this day of the year.",
    ),
    caution: Phrase(
        "Fill through an air gap or a hose for drinking water; never leave the hose in the tank.",
        "Fill through an air gap or a hose for drinking water; never leave the hose in the tank.",
    ),
};

pub(super) fn days(told: &Told<'_>) -> (String, String) {
    let (has, wants, margin) = told.margin();
    let people = told.entered(Detail::Travellers);
    let heads = if told.check.went_in(Detail::Travellers) > 1.0 { "people" } else { "person" };
    let verdict = format!(
        "{margin}: it lasts {has}, {wants} wanted, for {people} {heads} at {} each. Over {wants} each has {}.",
        told.figure(Figure::PortableNeed),
        told.figure(Figure::PortableEach),
    );
    let to_do = format!("Carry {}, refill on the way, or use less.", told.figure(Figure::PortableWanted));
    (verdict, told.if_fails(&to_do))
}

pub(super) fn weight(told: &Told<'_>) -> (String, String) {
    let full = told.figure(Figure::FullMass);
    let verdict = if told.check.margin.is_some() {
        let (has, _, margin) = told.margin();
        format!("{margin}: {full} full, {has} may be loaded.")
    } else {
        format!("{full} full.")
    };
    let to_do = if told.check.fails() {
        "Take a smaller tank, fill it less, or carry it another way."
    } else if told.check.figure(Figure::FullMass) > ONE_LIFTS_KG {
        "Too heavy for one to lift: fill it where it travels, or carry it in smaller cans."
    } else {
        ""
    };
    (verdict, to_do.to_owned())
}

pub(super) fn fill(told: &Told<'_>) -> (String, String) {
    if told.check.verdict == Verdict::Lacks {
        let verdict = "What stands in the store isn't known: without rain, or while the system can't run.";
        return (verdict.to_owned(), "Choose the tank that it draws on, and rain.".to_owned());
    }
    let mut verdict = format!("the store can give {} today", told.figure(Figure::LiveNow));
    if told.check.figure(Figure::FillShare).is_finite() {
        verdict += &format!("; a filling takes {}", told.figure(Figure::FillShare));
    }
    if told.check.figure(Figure::FillDays).is_finite() {
        verdict += &format!(", what the other uses draw in {}", told.figure(Figure::FillDays));
    }
    (verdict + ".", told.if_fails("Fill it when more has come, or fill it in part."))
}

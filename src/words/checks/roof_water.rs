//! Gutter, downspout, screen, overflow.

use super::{Text, Told};
use crate::engine::checks::{Figure, Verdict};
use crate::language::Phrase;
use crate::site::details::Detail;
use crate::site::system::System;
use crate::site::tank::OverflowTo;

pub(super) const GUTTER: Text = Text {
    title: Phrase("Gutter", "Gutter"),
    formula: Phrase(
        "0.9 · 2.78e-5 · A^1.25 L/s for a half-round gutter, A its area in mm²; 3.48e-5 and (depth ÷ width)^¼ for \
              others; times a factor for length and fall.",
        "0.9 · 2.78e-5 · A^1.25 L/s for a half-round gutter, A its area in mm²; 3.48e-5 and (depth ÷ width)^¼ for \
              others; times a factor for length and fall.",
    ),
    source: Phrase(
        "EN 12056-3:2000 clause 5 and Table 6 (table and box gutters from memory). Beside it, for half-round ones: \
             International Plumbing Code Table 1106.6 (from memory).",
        "EN 12056-3:2000 clause 5 and Table 6 (table and box gutters from memory). Beside it, for half-round ones: \
             International Plumbing Code Table 1106.6 (from memory).",
    ),
    assumes: Phrase(
        "A free outlet at one end, no bends, no leaves. All that falls on the roof runs off at once; pitch counted.",
        "A free outlet at one end, no bends, no leaves. All that falls on the roof runs off at once; pitch counted.",
    ),
    caution: Phrase(
        "Work from the ground where you can: ladders and wet roofs kill.",
        "Work from the ground where you can: ladders and wet roofs kill.",
    ),
};
pub(super) const DOWNSPOUT: Text = Text {
    title: Phrase("Downspout and its outlet", "Downspout and its outlet"),
    formula: Phrase(
        "Outlet: k·D·h^1.5/7500, above D/2 k·D²·√h/15000 (mm, L/s). Upright pipe 7/24 full: 27.8·r^(5/3)·d^(8/3) \
              (gal/min, in). The smaller counts.",
        "Outlet: k·D·h^1.5/7500, above D/2 k·D²·√h/15000 (mm, L/s). Upright pipe 7/24 full: 27.8·r^(5/3)·d^(8/3) \
              (gal/min, in). The smaller counts.",
    ),
    source: Phrase(
        "EN 12056-3:2000 Table 7 (from memory); National Standard Plumbing Code 2006, Table 13.6.1. Beside it: \
             International Plumbing Code 2015 Table 1106.3, and 1 in² for 100 ft² of roof.",
        "EN 12056-3:2000 Table 7 (from memory); National Standard Plumbing Code 2006, Table 13.6.1. Beside it: \
             International Plumbing Code 2015 Table 1106.3, and 1 in² for 100 ft² of roof.",
    ),
    assumes: Phrase(
        "A round, sharp-edged outlet under 0.47 of the gutter's depth.",
        "A round, sharp-edged outlet under 0.47 of the gutter's depth.",
    ),
    caution: Phrase("", ""),
};
pub(super) const SCREEN: Text = Text {
    title: Phrase("Leaf screen", "Leaf screen"),
    formula: Phrase(
        "C · open area · √(2·g·h), C = 0.62, h = 20 mm of water standing on it.",
        "C · open area · √(2·g·h), C = 0.62, h = 20 mm of water standing on it.",
    ),
    source: Phrase(
        "An orifice, any text on hydraulics; the 20 mm are common practice, no source.",
        "An orifice, any text on hydraulics; the 20 mm are common practice, no source.",
    ),
    assumes: Phrase("Leaves cover the share that is named.", "Leaves cover the share that is named."),
    caution: Phrase("", ""),
};
pub(super) const INLET: Text = Text {
    title: Phrase("Inlet into the tank", "Inlet into the tank"),
    formula: Phrase(
        "An upright pipe 7/24 full: 27.8·r^(5/3)·d^(8/3) (gal/min, in).",
        "An upright pipe 7/24 full: 27.8·r^(5/3)·d^(8/3) (gal/min, in).",
    ),
    source: Phrase(
        "National Standard Plumbing Code 2006, Table 13.6.1.",
        "National Standard Plumbing Code 2006, Table 13.6.1.",
    ),
    assumes: Phrase(
        "One pipe for all downspouts of this feed, ending downwards in the tank. A level one carries less.",
        "One pipe for all downspouts of this feed, ending downwards in the tank. A level one carries less.",
    ),
    caution: Phrase(
        "Mesh against mosquitoes, and turned so that it doesn't stir up the sludge.",
        "Mesh against mosquitoes, and turned so that it doesn't stir up the sludge.",
    ),
};
pub(super) const OVERFLOW: Text = Text {
    title: Phrase("Overflow", "Overflow"),
    formula: Phrase(
        "Critical flow in a round pipe up to its top; above, C·a·√(2·g·h), C = 0.62.",
        "Critical flow in a round pipe up to its top; above, C·a·√(2·g·h), C = 0.62.",
    ),
    source: Phrase(
        "Any text on open channels and hydraulics. At least what can come in: every code.",
        "Any text on open channels and hydraulics. At least what can come in: every code.",
    ),
    assumes: Phrase(
        "A short level pipe, no screen in it, falling freely beyond. All feeds and all overflows that lead here at once.",
        "A short level pipe, no screen in it, falling freely beyond. All feeds and all overflows that lead here at once.",
    ),
    caution: Phrase(
        "An overflow needs a flap or mesh against animals and mosquitoes, and must not reach a drain or mains pipe.",
        "An overflow needs a flap or mesh against animals and mosquitoes, and must not reach a drain or mains pipe.",
    ),
};
pub(super) const AIR_GAP: Text = Text {
    title: Phrase("Air gap", "Air gap"),
    formula: Phrase(
        "Twice the inside diameter of the filling pipe, 1 in at the least.",
        "Twice the inside diameter of the filling pipe, 1 in at the least.",
    ),
    source: Phrase("ASME A112.1.2, from memory.", "ASME A112.1.2, from memory."),
    assumes: Phrase(
        "The gap is measured from the end of the filling pipe to the level at which the tank overflows.",
        "The gap is measured from the end of the filling pipe to the level at which the tank overflows.",
    ),
    caution: Phrase(
        "No pipe may join this water with the mains: backflow makes neighbours ill.",
        "No pipe may join this water with the mains: backflow makes neighbours ill.",
    ),
};

pub(super) fn gutter(told: &Told<'_>) -> (String, String) {
    let to_do = "Widen it, give it more fall, or add a downspout: each then drains less of it.";
    told.capacity("it carries", "the design rain brings", to_do)
}

pub(super) fn downspout(told: &Told<'_>) -> (String, String) {
    let (verdict, _) = told.capacity("all downspouts carry", "the design rain brings", "");
    let wanted = told.check.figure(Figure::DownspoutsWanted);
    let has = told.check.went_in(Detail::Downspouts);
    let to_do = if told.check.fails() && wanted > has {
        format!("Have {} of this size, or wider ones.", told.figure(Figure::DownspoutsWanted))
    } else {
        String::new()
    };
    (verdict, to_do)
}

pub(super) fn screen(told: &Told<'_>) -> (String, String) {
    told.capacity("it passes", "the design rain brings", "Take a larger screen, or clean it before the storm.")
}

pub(super) fn inlet(told: &Told<'_>) -> (String, String) {
    told.capacity("it carries", "the design rain brings", "Widen it, or give the tank a second inlet.")
}

pub(super) fn overflow(told: &Told<'_>, system: &System) -> (String, String) {
    let tank = system.tank(told.check.part);
    let whither = match tank.map(|tank| tank.overflow_to) {
        Some(OverflowTo::Tank(other)) => format!("It runs to {}.", system.name_of(other)),
        Some(OverflowTo::Garden) => "It runs to the garden.".to_owned(),
        _ => "It runs to the ground: lead it away from walls and from the tank's own pad.".to_owned(),
    };
    if told.check.margin.is_none() {
        return match told.check.verdict {
            Verdict::Fails => (
                format!("There is no overflow pipe: {} can run over the rim.", told.figure(Figure::ComesIn)),
                "Fit an overflow pipe below the rim, and enter its height.".to_owned(),
            ),
            _ => (format!("No roof runs to it, and it has no overflow pipe. {whither}"), String::new()),
        };
    }
    let (verdict, to_do) =
        told.capacity("it lets out", "design rain can bring", "Fit a wider overflow, a second one, or more freeboard.");
    (format!("{verdict} {whither}"), to_do)
}

pub(super) fn air_gap(told: &Told<'_>) -> (String, String) {
    told.capacity("the gap is", "wanted are", "End the filling pipe higher over the overflow.")
}

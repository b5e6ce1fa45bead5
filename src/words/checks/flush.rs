//! First flush.

use super::{Text, Told};
use crate::engine::checks::pipe_sizes::{METRIC_DRAIN, SCHEDULE_40, circle};
use crate::engine::checks::{Check, Figure, Verdict};
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::details::Detail;

pub(super) const VOLUME: Text = Text {
    title: Phrase("First flush for this roof", "First flush for this roof"),
    formula: Phrase(
        "Volume = depth on the roof × plan area; pipe length = volume ÷ inside area.",
        "Volume = depth on the roof × plan area; pipe length = volume ÷ inside area.",
    ),
    source: Phrase(
        "Texas Manual on Rainwater Harvesting 2005 ch. 2, HB 230 (both from memory); enHealth 2010 names 20–25 L \
             for an average roof. Inside diameters: ASTM D1785; EN 1329-1 series B (from memory).",
        "Texas Manual on Rainwater Harvesting 2005 ch. 2, HB 230 (both from memory); enHealth 2010 names 20–25 L \
             for an average roof. Inside diameters: ASTM D1785; EN 1329-1 series B (from memory).",
    ),
    assumes: Phrase(
        "Each further millimetre about halves what the rain still carries (Thomas & Martinson 2007, from memory): \
              no volume takes all.",
        "Each further millimetre about halves what the rain still carries (Thomas & Martinson 2007, from memory): \
              no volume takes all.",
    ),
    caution: Phrase(
        "A diverter sends dirt aside; it does not make water safe to drink.",
        "A diverter sends dirt aside; it does not make water safe to drink.",
    ),
};
pub(super) const DRAIN: Text = Text {
    title: Phrase("Empty again before the next storm", "Empty again before the next storm"),
    formula: Phrase(
        "t = 2·a·√h ÷ (C·o·√(2g)): a inside area, h height of water, o hole, C = 0.62.",
        "t = 2·a·√h ÷ (C·o·√(2g)): a inside area, h height of water, o hole, C = 0.62.",
    ),
    source: Phrase("Torricelli, any text on hydraulics.", "Torricelli, any text on hydraulics."),
    assumes: Phrase(
        "An upright pipe of one diameter, a clean sharp-edged hole.",
        "An upright pipe of one diameter, a clean sharp-edged hole.",
    ),
    caution: Phrase("", ""),
};
pub(super) const LOSS: Text = Text {
    title: Phrase("Lost through the hole in a storm", "Lost through the hole in a storm"),
    formula: Phrase(
        "C·o·√(2·g·h) for as long as it rains, C = 0.62.",
        "C·o·√(2·g·h) for as long as it rains, C = 0.62.",
    ),
    source: Phrase(
        "Torricelli. Called too much when it is more than twice the first flush itself: common practice, no source.",
        "Torricelli. Called too much when it is more than twice the first flush itself: common practice, no source.",
    ),
    assumes: Phrase("The chamber stays full while it rains.", "The chamber stays full while it rains."),
    caution: Phrase("", ""),
};
pub(super) const YIELD: Text = Text {
    title: Phrase("What the diverter costs", "What the diverter costs"),
    formula: Phrase(
        "The daily balance with this diverter and without it, on the same rain.",
        "The daily balance with this diverter and without it, on the same rain.",
    ),
    source: Phrase("The same balance as in Sizing.", "The same balance as in Sizing."),
    assumes: Phrase("All else stays.", "All else stays."),
    caution: Phrase("", ""),
};

pub(super) fn volume(told: &Told<'_>) -> (String, String) {
    let (has, wants, margin) = told.margin();
    let verdict = format!("{margin}: the first flush is {has}, wanted {wants} for this roof.");
    let to_do = match told.check.verdict {
        Verdict::Fails if told.check.figure(Figure::ChamberBore).is_finite() => {
            format!(
                "Make the chamber {} long at this diameter, or wider (lengths below).",
                told.figure(Figure::ChamberWanted)
            )
        }
        Verdict::Fails => format!("Fit a diverter of {wants}."),
        _ => String::new(),
    };
    (verdict, to_do)
}

/// The length of pipe for the wanted volume, by nominal size.
pub(super) fn lengths(check: &Check, units: &Units) -> Vec<(String, String)> {
    const NARROWEST_M: f64 = 0.06;
    let cubic_metres = check.figure(Figure::FlushWanted) / 1000.0;
    let sizes = SCHEDULE_40.iter().chain(&METRIC_DRAIN).filter(|size| size.bore_m > NARROWEST_M);
    sizes
        .map(|size| {
            (
                format!("Length of {} pipe", size.name),
                shown::figure(cubic_metres / circle(size.bore_m), Kind::Length, units),
            )
        })
        .collect()
}

pub(super) fn drain(told: &Told<'_>) -> (String, String) {
    let check = told.check;
    let hole = told.figure(Figure::HoleWanted);
    let within = shown::figure(check.went_in(Detail::DrainWithin), Kind::Hours, told.units);
    let every = check.figure(Figure::EmptiedEvery);
    if every.is_finite() {
        return (
            format!("Emptied by hand every {}: storms in between find it full.", told.figure(Figure::EmptiedEvery)),
            format!("Empty it after each storm, or drill a hole of {hole}."),
        );
    }
    match check.margin {
        None => (
            "It never empties: after its first storm it flushes nothing, and dirt goes to the tank.".to_owned(),
            format!("Clear the hole, or drill one of {hole}: empty within {within}."),
        ),
        Some(_) => {
            let (_, hours, margin) = told.margin();
            let to_do = if check.fails() {
                format!("Widen the hole to {hole}. A hole under 1 mm blocks easily: keep a screen over it.")
            } else {
                String::new()
            };
            (format!("{margin}: empty after {hours}, wanted within {within}."), to_do)
        }
    }
}

pub(super) fn loss(told: &Told<'_>) -> (String, String) {
    let (_, loss, _) = told.margin();
    let verdict = format!(
        "The hole loses {loss} in a storm of {}; the first flush itself is {}.",
        told.figure(Figure::StormHours),
        told.figure(Figure::FlushVolume)
    );
    let to_do = if told.check.fails() { "Make the hole smaller, or lead what drips to the garden." } else { "" };
    (verdict, to_do.to_owned())
}

pub(super) fn cost(told: &Told<'_>) -> (String, String) {
    let verdict = format!(
        "It sends {} aside in a year. With it the house uses {} a year and has {} dry; without it {} and {}.",
        told.figure(Figure::DivertedAYear),
        told.figure(Figure::UsedWith),
        told.figure(Figure::DryDaysWith),
        told.figure(Figure::UsedWithout),
        told.figure(Figure::DryDaysWithout)
    );
    (verdict, String::new())
}

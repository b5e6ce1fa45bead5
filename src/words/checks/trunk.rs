//! Trunk lines.

use super::{Text, Told};
use crate::engine::checks::Figure;
use crate::language::Phrase;
use crate::site::details::Detail;

pub(super) const FLOW: Text = Text {
    title: Phrase("Flow between the tanks", "Flow between the tanks"),
    formula: Phrase(
        "h = (f·L/D + ΣK)·v²/2g with Colebrook's f (Darcy-Weisbach); beside it 10.67·L·Q^1.852/(C^1.852·D^4.871) \
              (Hazen-Williams). Time: ∫ A₁A₂/(A₁+A₂) dh ÷ Q(h), to 10 mm apart.",
        "h = (f·L/D + ΣK)·v²/2g with Colebrook's f (Darcy-Weisbach); beside it 10.67·L·Q^1.852/(C^1.852·D^4.871) \
              (Hazen-Williams). Time: ∫ A₁A₂/(A₁+A₂) dh ÷ Q(h), to 10 mm apart.",
    ),
    source: Phrase(
        "Colebrook 1939, Swamee & Jain 1976; any text on hydraulics. Slower than 5 ft/s: usual advice for plastic pipe.",
        "Colebrook 1939, Swamee & Jain 1976; any text on hydraulics. Slower than 5 ft/s: usual advice for plastic pipe.",
    ),
    assumes: Phrase(
        "Full pipe without air pockets, walls of both tanks upright. Hazen-Williams is meant for pipes over 50 mm.",
        "Full pipe without air pockets, walls of both tanks upright. Hazen-Williams is meant for pipes over 50 mm.",
    ),
    caution: Phrase(
        "Shut the valve before you open the pipe: a full tank pushes hard.",
        "Shut the valve before you open the pipe: a full tank pushes hard.",
    ),
};
pub(super) const DRAW: Text = Text {
    title: Phrase("Levels while water is drawn", "Levels while water is drawn"),
    formula: Phrase(
        "The far tank sends its share of surface: Q·A₂/(A₁+A₂); the loss of that flow is the difference of level.",
        "The far tank sends its share of surface: Q·A₂/(A₁+A₂); the loss of that flow is the difference of level.",
    ),
    source: Phrase(
        "Darcy-Weisbach with Colebrook's friction factor. 100 mm apart at most: common practice, no source.",
        "Darcy-Weisbach with Colebrook's friction factor. 100 mm apart at most: common practice, no source.",
    ),
    assumes: Phrase(
        "Drawn from the first tank for so long that both fall alike.",
        "Drawn from the first tank for so long that both fall alike.",
    ),
    caution: Phrase("", ""),
};

pub(super) fn flow(told: &Told<'_>) -> (String, String) {
    let (_, speed, margin) = told.margin();
    let verdict = format!(
        "{} flow at {} apart; even after {}. The water runs at {speed} ({margin}).",
        told.figure(Figure::TrunkFlow),
        told.entered(Detail::LevelDifference),
        told.figure(Figure::LevelTime)
    );
    (verdict, told.if_fails("Take a wider pipe, or open the valve slowly."))
}

pub(super) fn draw(told: &Told<'_>) -> (String, String) {
    let (_, apart, margin) = told.margin();
    let verdict = format!(
        "{margin}: the tanks stand {apart} apart while {} are drawn from the first.",
        told.entered(Detail::FarDraw)
    );
    (verdict, told.if_fails("Take a wider or shorter pipe, or draw in the middle."))
}

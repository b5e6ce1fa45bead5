//! First flush.

use super::{Text, Told};
use crate::engine::checks::flush::TALLEST_M;
use crate::engine::checks::pipe_sizes::{METRIC_DRAIN, SCHEDULE_40};
use crate::engine::checks::{Check, Figure, Verdict};
use crate::quantity::{Kind, Units, shown};
use crate::site::circle;
use crate::site::details::Detail;

pub(super) const VOLUME: Text = Text {
    title: phrase!("First flush for this roof", "Primeras aguas de este techo"),
    formula: phrase!(
        "Volume = depth on the roof × plan area; pipe length = volume ÷ inside area.",
        "Volumen = lámina sobre el techo × área en planta; largo del tubo = volumen ÷ área interior.",
    ),
    source: phrase!(
        "Texas Manual on Rainwater Harvesting 2005 ch. 2, HB 230 (both from memory); enHealth 2010 names 20–25\u{a0}L for \
         an average roof. Inside diameters: ASTM D1785; EN 1329-1 series B (from memory).",
        "Texas Manual on Rainwater Harvesting 2005 cap. 2, HB 230 (ambos de memoria); enHealth 2010 dice de 20 a 25 \
         L para un techo medio. Diámetros interiores: ASTM D1785; EN 1329-1 serie B (de memoria).",
    ),
    assumes: phrase!(
        "Each further millimetre about halves what the rain still carries (Thomas & Martinson 2007, from memory): no \
         volume takes all.",
        "Cada milímetro más reduce más o menos a la mitad lo que la lluvia todavía arrastra (Thomas y Martinson 2007, \
         de memoria): ningún volumen se lo lleva todo.",
    ),
    caution: phrase!(
        "A diverter sends dirt aside; it does not make water safe to drink.",
        "Un desviador aparta la suciedad; no hace que el agua sea apta para beber.",
    ),
};
pub(super) const DRAIN: Text = Text {
    title: phrase!("Empty again before the next storm", "Vacío otra vez antes de la próxima tormenta"),
    formula: phrase!(
        "t = 2·a·√h ÷ (C·o·√(2g)): a inside area, h height of water, o hole, C = 0.62.",
        "t = 2·a·√h ÷ (C·o·√(2g)): a área interior, h altura del agua, o orificio, C = 0,62.",
    ),
    source: phrase!("Torricelli, any text on hydraulics.", "Torricelli, cualquier texto de hidráulica."),
    assumes: phrase!(
        "An upright pipe of one diameter, a clean sharp-edged hole.",
        "Un tubo vertical de un solo diámetro, un orificio limpio de canto vivo.",
    ),
    caution: phrase!("", ""),
};
pub(super) const LOSS: Text = Text {
    title: phrase!("Lost through the hole in a storm", "Lo que se pierde por el orificio en una tormenta"),
    formula: phrase!("C·o·√(2·g·h) for as long as it rains, C = 0.62.", "C·o·√(2·g·h) mientras llueve, C = 0,62."),
    source: phrase!(
        "Torricelli. Called too much when it is more than twice the first flush itself: common practice, no source.",
        "Torricelli. Se considera demasiado cuando pasa del doble de las propias primeras aguas: práctica común, sin \
         fuente.",
    ),
    assumes: phrase!("The chamber stays full while it rains.", "La cámara sigue llena mientras llueve."),
    caution: phrase!("", ""),
};
pub(super) const YIELD: Text = Text {
    title: phrase!("What the diverter costs", "Lo que cuesta el desviador"),
    formula: phrase!(
        "The daily balance with this diverter and without it, on the same rain.",
        "El balance diario con este desviador y sin él, con la misma lluvia.",
    ),
    source: phrase!("The same balance as in Sizing.", "El mismo balance que en «Tamaño»."),
    assumes: phrase!("All else stays.", "Todo lo demás queda igual."),
    caution: phrase!("", ""),
};

/// A longer chamber does not stand under the eave of a house of one floor, in m (common practice, no source).
const LONGEST_CHAMBER_M: f64 = 2.5;

pub(super) fn volume(told: &Told<'_>) -> (String, String) {
    let (has, wants, margin) = told.margin();
    if told.check.figure(Figure::ChamberHeight) > TALLEST_M {
        let too_tall = say!(
            "Filled with {has}, a chamber of {bore} stands {height} tall: no house has room for that.",
            "Llena con {has}, una cámara de {bore} mide {height} de alto: en ninguna casa cabe.",
            has,
            bore = told.figure(Figure::ChamberBore),
            height = told.figure(Figure::ChamberHeight),
        );
        return (
            too_tall,
            phrase!("Fit a wider chamber, or several side by side.", "Pon una cámara más ancha, o varias juntas.")
                .to_owned(),
        );
    }
    let verdict = say!(
        "{margin}: the first flush is {has}, wanted {wants} for this roof.",
        "{margin}: las primeras aguas son {has}; para este techo se piden {wants}.",
        margin,
        has,
        wants
    );
    let to_do = match told.check.verdict {
        Verdict::Fails if told.check.figure(Figure::ChamberWanted) > LONGEST_CHAMBER_M => say!(
            "Fit a wider chamber, or several side by side: at this diameter it takes {wanted} in all.",
            "Pon una cámara más ancha, o varias juntas: con este diámetro hacen falta {wanted} en total.",
            wanted = told.figure(Figure::ChamberWanted),
        ),
        Verdict::Fails if told.check.figure(Figure::ChamberBore).is_finite() => {
            say!(
                "Make the chamber {wanted} long at this diameter, or wider.",
                "Haz la cámara de {wanted} de largo con este diámetro, o más ancha.",
                wanted = told.figure(Figure::ChamberWanted),
            )
        }
        Verdict::Fails => say!("Fit a diverter of {wants}.", "Pon un desviador de {wants}.", wants),
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
                say!("Length of {name} pipe", "Largo de tubo de {name}", name = size.name),
                shown::figure(cubic_metres / circle(size.bore_m), Kind::Length, units),
            )
        })
        .collect()
}

pub(super) fn drain(told: &Told<'_>) -> (String, String) {
    let check = told.check;
    let hole = told.figure(Figure::HoleWanted);
    let within = shown::figure(check.went_in(Detail::DrainWithin), Kind::Hours, told.units);
    let blocks = said!(
        "A hole under 1\u{a0}mm blocks easily: keep a screen over it.",
        "Uno de menos de 1\u{a0}mm se tapa con facilidad: protégelo siempre con una malla.",
    );
    let every = check.figure(Figure::EmptiedEvery);
    if every.is_finite() {
        return (
            say!(
                "Emptied by hand every {every}: storms in between find it full.",
                "Se vacía a mano cada {every}: las tormentas entremedias lo encuentran lleno.",
                every = told.figure(Figure::EmptiedEvery),
            ),
            say!(
                "Empty it after each storm, or drill a hole of {hole}. {blocks}",
                "Vacíalo después de cada tormenta, o perfora un orificio de {hole}. {blocks}",
                hole,
                blocks
            ),
        );
    }
    match check.margin {
        None => (
            phrase!(
                "It never empties: after its first storm it flushes nothing, and dirt goes to the tank.",
                "Nunca se vacía: después de su primera tormenta ya no aparta nada, y la suciedad va al tanque.",
            )
            .to_owned(),
            say!(
                "Clear the hole, or drill one of {hole}: empty within {within}. {blocks}",
                "Destapa el orificio, o perfora uno de {hole}: vacío en {within}. {blocks}",
                hole,
                within,
                blocks
            ),
        ),
        Some(_) => {
            let (_, hours, margin) = told.margin();
            let to_do = if check.fails() {
                say!("Widen the hole to {hole}. {blocks}", "Agranda el orificio a {hole}. {blocks}", hole, blocks)
            } else {
                String::new()
            };
            let verdict = say!(
                "{margin}: empty after {hours}, wanted within {within}.",
                "{margin}: vacío después de {hours}; se pide en {within}.",
                margin,
                hours,
                within
            );
            (verdict, to_do)
        }
    }
}

pub(super) fn loss(told: &Told<'_>) -> (String, String) {
    let (_, loss, _) = told.margin();
    let verdict = say!(
        "The hole loses {loss} in a storm of {storm}; the first flush itself is {flush}.",
        "El orificio pierde {loss} en una tormenta de {storm}; las propias primeras aguas son {flush}.",
        storm = told.figure(Figure::StormHours),
        flush = told.figure(Figure::FlushVolume),
        loss
    );
    let to_do = said!(
        "Make the hole smaller, or lead what drips to the garden.",
        "Haz el orificio más pequeño, o lleva al huerto lo que gotea.",
    );
    (verdict, told.if_fails(to_do))
}

pub(super) fn cost(told: &Told<'_>) -> (String, String) {
    let verdict = say!(
        "It sends {aside} aside in a year. With it the house uses {used} a year and has {dry} dry; without it {more} \
         and {less}.",
        "Aparta {aside} en un año. Con él la casa usa {used} al año y tiene {dry} de escasez; sin él, {more} y {less}.",
        aside = told.figure(Figure::DivertedAYear),
        used = told.figure(Figure::UsedWith),
        dry = told.figure(Figure::DryDaysWith),
        more = told.figure(Figure::UsedWithout),
        less = told.figure(Figure::DryDaysWithout),
    );
    (verdict, String::new())
}

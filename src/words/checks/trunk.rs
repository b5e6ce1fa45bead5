//! Trunk lines.

use super::{Text, Told};
use crate::engine::checks::Figure;
use crate::site::details::Detail;

pub(super) const FLOW: Text = Text {
    title: phrase!("Flow between the tanks", "Caudal entre los tanques"),
    formula: phrase!(
        "h = (f·L/D + ΣK)·v²/2g with Colebrook's f (Darcy-Weisbach); beside it 10.67·L·Q^1.852/(C^1.852·D^4.871) \
         (Hazen-Williams). Time: ∫ A₁A₂/(A₁+A₂) dh ÷ Q(h), to 10\u{a0}mm apart.",
        "h = (f·L/D + ΣK)·v²/2g con el f de Colebrook (Darcy-Weisbach); al lado 10,67·L·Q^1,852/(C^1,852·D^4,871) \
         (Hazen-Williams). Tiempo: ∫ A₁A₂/(A₁+A₂) dh ÷ Q(h), hasta 10\u{a0}mm de diferencia.",
    ),
    source: phrase!(
        "Colebrook 1939, Swamee & Jain 1976; any text on hydraulics. Slower than 5\u{a0}ft/s: usual advice for plastic \
         pipe.",
        "Colebrook 1939, Swamee y Jain 1976; cualquier texto de hidráulica. A menos de 5\u{a0}ft/s: consejo usual para \
         tubos de plástico.",
    ),
    assumes: phrase!(
        "Full pipe without air pockets, walls of both tanks upright. Hazen-Williams is meant for pipes over 50\u{a0}mm.",
        "Tubo lleno sin bolsas de aire, paredes verticales en ambos tanques. Hazen-Williams es para tubos de más de \
         50\u{a0}mm.",
    ),
    caution: phrase!(
        "Shut the valve before you open the pipe: a full tank pushes hard.",
        "Cierra la válvula antes de abrir el tubo: un tanque lleno empuja con fuerza.",
    ),
};
pub(super) const DRAW: Text = Text {
    title: phrase!("Levels while water is drawn", "Niveles mientras se saca agua"),
    formula: phrase!(
        "The far tank sends its share of surface: Q·A₂/(A₁+A₂); the loss of that flow is the difference of level.",
        "El tanque lejano manda según su parte de la superficie: Q·A₂/(A₁+A₂); la pérdida de ese caudal es la \
         diferencia de nivel.",
    ),
    source: phrase!(
        "Darcy-Weisbach with Colebrook's friction factor. 100\u{a0}mm apart at most: common practice, no source.",
        "Darcy-Weisbach con el factor de fricción de Colebrook. Como máximo 100\u{a0}mm de diferencia: práctica común, \
         sin fuente.",
    ),
    assumes: phrase!(
        "Drawn from the first tank for so long that both fall alike.",
        "Se saca del primer tanque durante tanto tiempo que ambos bajan por igual.",
    ),
    caution: phrase!("", ""),
};

pub(super) fn flow(told: &Told<'_>) -> (String, String) {
    let (_, speed, margin) = told.margin();
    let verdict = say!(
        "With levels {apart} apart {flow} flow; they are level after {even}. The water runs at {speed} ({margin}).",
        "Con niveles a {apart} de diferencia pasan {flow}; se igualan después de {even}. El agua corre a {speed}; \
         margen: {margin}.",
        flow = told.figure(Figure::TrunkFlow),
        apart = told.entered(Detail::LevelDifference),
        even = told.figure(Figure::LevelTime),
        speed,
        margin
    );
    let to_do =
        said!("Take a wider pipe, or open the valve slowly.", "Pon un tubo más ancho, o abre la válvula despacio.");
    (verdict, told.if_fails(to_do))
}

pub(super) fn draw(told: &Told<'_>) -> (String, String) {
    let (_, apart, margin) = told.margin();
    let verdict = say!(
        "{margin}: the levels differ by {apart} while {draw} are drawn from the first.",
        "{margin}: los niveles difieren {apart} mientras se sacan {draw} del primero.",
        draw = told.entered(Detail::FarDraw),
        margin,
        apart
    );
    let to_do = said!(
        "Take a wider or shorter pipe, or draw in the middle.",
        "Pon un tubo más ancho o más corto, o saca el agua a mitad del tubo.",
    );
    (verdict, told.if_fails(to_do))
}

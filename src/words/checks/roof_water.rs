//! Gutter, downspout, screen, overflow.

use super::{Text, Told};
use crate::engine::checks::{Figure, Verdict};
use crate::site::details::Detail;
use crate::site::system::System;
use crate::site::tank::OverflowTo;

pub(super) const GUTTER: Text = Text {
    title: phrase!("Gutter", "Canaleta"),
    formula: phrase!(
        "0.9 · 2.78e-5 · A^1.25\u{a0}L/s for a half-round gutter, A its area in mm²; 3.48e-5 and (depth ÷ width)^¼ for \
         others; times a factor for length and fall.",
        "0,9 · 2,78e-5 · A^1,25\u{a0}L/s para una canaleta semicircular, A su área en mm²; 3,48e-5 y (profundidad ÷ \
         ancho)^¼ para las demás; por un factor de longitud y pendiente.",
    ),
    source: phrase!(
        "EN 12056-3:2000 clause 5 and Table 6 (table and box gutters from memory). Beside it, for half-round ones: \
         International Plumbing Code Table 1106.6 (from memory).",
        "EN 12056-3:2000, apartado 5 y tabla 6 (la tabla y las canaletas de cajón, de memoria). Al lado, para las \
         semicirculares: International Plumbing Code, tabla 1106.6 (de memoria).",
    ),
    assumes: phrase!(
        "A free outlet at one end, no bends, no leaves. All that falls on the roof runs off at once; pitch counted.",
        "Una salida libre en un extremo, sin curvas, sin hojas. Todo lo que cae en el techo escurre de inmediato; se \
         cuenta la inclinación.",
    ),
    caution: phrase!(
        "Work from the ground where you can: ladders and wet roofs kill.",
        "Trabaja desde el suelo siempre que puedas: las escaleras y los techos mojados matan.",
    ),
};
pub(super) const DOWNSPOUT: Text = Text {
    title: phrase!("Downspout and its outlet", "Bajante y su salida"),
    formula: phrase!(
        "Outlet: k·D·h^1.5/7500, above D/2 k·D²·√h/15000 (mm, L/s). Upright pipe 7/24 full: 27.8·r^(5/3)·d^(8/3) \
         (gal/min, in). The smaller counts.",
        "Salida: k·D·h^1,5/7500, por encima de D/2 k·D²·√h/15000 (mm, L/s). Tubo vertical lleno a 7/24: \
         27,8·r^(5/3)·d^(8/3) (gal/min, in). Cuenta el menor.",
    ),
    source: phrase!(
        "EN 12056-3:2000 Table 7 (from memory); National Standard Plumbing Code 2006, Table 13.6.1. Beside it: \
         International Plumbing Code 2015 Table 1106.3, and 1 in² for 100 ft² of roof.",
        "EN 12056-3:2000, tabla 7 (de memoria); National Standard Plumbing Code 2006, tabla 13.6.1. Al lado: \
         International Plumbing Code 2015, tabla 1106.3, y 1 in² por cada 100 ft² de techo.",
    ),
    assumes: phrase!(
        "A round, sharp-edged outlet under 0.47 of the gutter's depth.",
        "Una salida redonda de canto vivo, a menos de 0,47 de la profundidad de la canaleta.",
    ),
    caution: phrase!("", ""),
};
pub(super) const SCREEN: Text = Text {
    title: phrase!("Leaf screen", "Malla para hojas"),
    formula: phrase!(
        "C · open area · √(2·g·h), C = 0.62, h = 20\u{a0}mm of water standing on it.",
        "C · área abierta · √(2·g·h), C = 0,62, h = 20\u{a0}mm de agua encima.",
    ),
    source: phrase!(
        "An orifice, any text on hydraulics; the 20\u{a0}mm are common practice, no source.",
        "Un orificio, cualquier texto de hidráulica; los 20\u{a0}mm son práctica común, sin fuente.",
    ),
    assumes: phrase!("Leaves cover the share that is named.", "Las hojas cubren la parte que se indica."),
    caution: phrase!("", ""),
};
pub(super) const INLET: Text = Text {
    title: phrase!("Inlet into the tank", "Entrada al tanque"),
    formula: phrase!(
        "An upright pipe 7/24 full: 27.8·r^(5/3)·d^(8/3) (gal/min, in).",
        "Un tubo vertical lleno a 7/24: 27,8·r^(5/3)·d^(8/3) (gal/min, in).",
    ),
    source: phrase!(
        "National Standard Plumbing Code 2006, Table 13.6.1.",
        "National Standard Plumbing Code 2006, tabla 13.6.1.",
    ),
    assumes: phrase!(
        "One pipe for all downspouts of this feed, ending downwards in the tank. A level one carries less.",
        "Un solo tubo para todas las bajantes de esta alimentación, que termina hacia abajo en el tanque. Uno \
         horizontal lleva menos.",
    ),
    caution: phrase!(
        "Mesh against mosquitoes, and turned so that it doesn't stir up the sludge.",
        "Con malla contra mosquitos, y orientada para que no remueva los lodos.",
    ),
};
pub(super) const OVERFLOW: Text = Text {
    title: phrase!("Overflow", "Rebosadero"),
    formula: phrase!(
        "Critical flow in a round pipe up to its top; above, C·a·√(2·g·h) that begins there, C = 0.58, h over its middle.",
        "Flujo crítico en un tubo redondo hasta su parte alta; por encima, C·a·√(2·g·h) que empieza ahí, C = 0,58, h sobre su centro.",
    ),
    source: phrase!(
        "Any text on open channels and hydraulics. At least what can come in: every code.",
        "Cualquier texto de canales abiertos e hidráulica. Al menos lo que puede entrar: todas las normas.",
    ),
    assumes: phrase!(
        "A short level pipe, no screen in it, falling freely beyond. All feeds and all overflows that lead here at \
         once; of joined tanks the lowest rim takes what comes to all.",
        "Un tubo corto y horizontal, sin malla, con caída libre después. Todas las alimentaciones y todos los \
         rebosaderos que llegan aquí, a la vez; de los tanques unidos, el borde más bajo recibe lo que llega a todos.",
    ),
    caution: phrase!(
        "An overflow needs a flap or mesh against animals and mosquitoes, and must not reach a drain or mains pipe.",
        "Un rebosadero necesita una clapeta o malla contra animales y mosquitos, y no debe llegar a un desagüe ni a \
         una tubería de la red pública.",
    ),
};
pub(super) const AIR_GAP: Text = Text {
    title: phrase!("Air gap", "Separación de aire"),
    formula: phrase!(
        "Twice the inside diameter of the filling pipe, 1\u{a0}in at the least.",
        "El doble del diámetro interior del tubo de llenado, 1\u{a0}in como mínimo.",
    ),
    source: phrase!("ASME A112.1.2, from memory.", "ASME A112.1.2, de memoria."),
    assumes: phrase!(
        "The gap is measured from the end of the filling pipe to the level at which the tank overflows.",
        "La separación se mide desde el extremo del tubo de llenado hasta el nivel en que el tanque rebosa.",
    ),
    caution: phrase!(
        "No pipe may join this water with the mains: backflow makes neighbours ill.",
        "Ninguna tubería puede unir esta agua con la red pública: el reflujo enferma a los vecinos.",
    ),
};

pub(super) fn gutter(told: &Told<'_>) -> (String, String) {
    told.capacity(
        said!("it carries", "lleva"),
        design_rain(),
        said!(
            "Widen it, give it more fall, or add a downspout: each then drains less of it.",
            "Ensánchala, dale más pendiente o añade una bajante: así cada una desagua menos canaleta.",
        ),
    )
}

/// What must be carried.
fn design_rain() -> &'static str {
    said!("the design rain brings", "la lluvia de diseño trae")
}

pub(super) fn downspout(told: &Told<'_>) -> (String, String) {
    let (verdict, _) = told.capacity(said!("all downspouts carry", "todas las bajantes llevan"), design_rain(), "");
    let wanted = told.check.figure(Figure::DownspoutsWanted);
    let has = told.check.went_in(Detail::Downspouts);
    let to_do = if told.check.fails() && wanted > has {
        say!(
            "Have {number} of this size, or wider ones.",
            "Pon {number} de este tamaño, o más anchas.",
            number = told.figure(Figure::DownspoutsWanted),
        )
    } else {
        String::new()
    };
    (verdict, to_do)
}

pub(super) fn screen(told: &Told<'_>) -> (String, String) {
    told.capacity(
        said!("it passes", "deja pasar"),
        design_rain(),
        said!(
            "Take a larger screen, or clean it before the storm.",
            "Pon una malla más grande, o límpiala antes de la tormenta.",
        ),
    )
}

pub(super) fn inlet(told: &Told<'_>) -> (String, String) {
    told.capacity(
        said!("it carries", "lleva"),
        design_rain(),
        said!("Widen it, or give the tank a second inlet.", "Ensánchala, o ponle al tanque una segunda entrada."),
    )
}

pub(super) fn overflow(told: &Told<'_>, system: &System) -> (String, String) {
    let tank = system.tank(told.check.part);
    let whither = match tank.map(|tank| tank.overflow_to) {
        Some(OverflowTo::Tank(other)) => {
            say!("It runs to {tank}.", "Va a dar a {tank}.", tank = system.name_of(other))
        }
        Some(OverflowTo::Garden) => phrase!("It runs to the garden.", "Va a dar al huerto.").to_owned(),
        Some(OverflowTo::Ground) if tank.is_some_and(|tank| tank.overflow_elevation() < 0.0) => phrase!(
            "It runs out below the ground: it needs lower ground to run to, a soakaway or a pump, with a valve against water \
             that comes back.",
            "Sale por debajo del suelo: necesita un terreno más bajo adonde correr, un pozo de absorción o una bomba, con una \
             válvula contra el agua que regresa.",
        )
        .to_owned(),
        _ => phrase!(
            "It runs to the ground: lead it away from walls and from the tank's own pad.",
            "Va a dar al suelo: llévalo lejos de las paredes y de la base del propio tanque.",
        )
        .to_owned(),
    };
    if told.check.margin.is_none() {
        return match told.check.verdict {
            Verdict::Fails => (
                say!(
                    "There is no overflow pipe: {flow} can run over the rim.",
                    "No hay rebosadero: pueden salir {flow} por encima del borde.",
                    flow = told.figure(Figure::ComesIn),
                ),
                phrase!(
                    "Fit an overflow pipe below the rim, and enter its height.",
                    "Instala un rebosadero por debajo del borde y anota su altura.",
                )
                .to_owned(),
            ),
            _ => (
                say!(
                    "No roof runs to it, and it has no overflow pipe. {whither}",
                    "Ningún techo le da agua y no tiene rebosadero. {whither}",
                    whither
                ),
                String::new(),
            ),
        };
    }
    let (verdict, to_do) = told.capacity(
        said!("it lets out", "deja salir"),
        said!("design rain can bring", "la lluvia de diseño puede traer"),
        said!(
            "Fit a wider overflow, a second one, or more freeboard.",
            "Instala un rebosadero más ancho, otro más, o deja más borde libre.",
        ),
    );
    // Every code wants it to let out what the inlets carry; design rain is what is judged, for a leader is often far wider.
    let lets_out = told.check.margin.map_or(f64::NAN, |margin| margin.has);
    let harder = if told.check.figure(Figure::InletsCarry) > lets_out && !told.check.fails() {
        say!(
            " Those of its inlets that are known can carry {carried}: a rain harder than the design rain may run over the rim.",
            " Las entradas que se conocen pueden traer {carried}: una lluvia más fuerte que la de diseño puede salirse por el borde.",
            carried = told.figure(Figure::InletsCarry)
        )
    } else {
        String::new()
    };
    (format!("{verdict}{harder} {whither}"), to_do)
}

pub(super) fn air_gap(told: &Told<'_>) -> (String, String) {
    told.capacity(
        said!("the gap is", "la separación es de"),
        said!("wanted are", "se piden"),
        said!(
            "End the filling pipe higher over the overflow.",
            "Haz que el tubo de llenado termine más alto sobre el rebosadero.",
        ),
    )
}

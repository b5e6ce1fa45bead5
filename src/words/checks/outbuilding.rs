//! A second supply off the same store.

use super::{Text, Told};
use crate::engine::checks::outbuilding::uses_with;
use crate::engine::checks::{Figure, Verdict};
use crate::language::Phrase;
use crate::site::details::Detail;
use crate::site::system::System;

const JOINED: Phrase = phrase!(
    "A pipe to another building is a second chance for backflow: a valve that shuts it off, no joint with the \
     mains, taps marked. Keep it below the frost. Guests or tenants may make you a water supplier.",
    "Un tubo a otro edificio es otra ocasión para el reflujo: una válvula que lo cierre, ninguna unión con la \
     red pública, grifos señalados. Ponlo por debajo de donde hiela. Con huéspedes o inquilinos puedes pasar a \
     ser proveedor de agua.",
);

pub(super) const SUPPLY: Text = Text {
    title: phrase!("Outbuilding on this store", "Edificio anexo en este depósito"),
    formula: phrase!(
        "ρ·g·(level + pump head − tap − friction) − filters, through the outbuilding's own pipe and what it shares.",
        "ρ·g·(nivel + carga de la bomba − grifo − fricción) − filtros, por el tubo propio del edificio anexo y lo \
         que comparte.",
    ),
    source: phrase!(
        "Darcy-Weisbach with Colebrook's factor; peak flow from fixture units (National Standard Plumbing Code, Hunter's curve).",
        "Darcy-Weisbach con el factor de Colebrook; caudal máximo según unidades de consumo (National Standard Plumbing Code, \
         curva de Hunter).",
    ),
    assumes: phrase!(
        "Tank down to its outlet. The pipe branches off at the store, or at the end of what is shared, before the \
         house's filters. A pump is the tank's. Uses in one outbuilding share the first one's pipe.",
        "Tanque bajo hasta su salida. El tubo se separa en el depósito, o al final de lo compartido, antes de los \
         filtros de la casa. La bomba es la del tanque. Los usos en un mismo edificio anexo comparten el tubo del \
         primero.",
    ),
    caution: JOINED,
};
pub(super) const BOTH: Text = Text {
    title: phrase!("House and outbuilding at once", "Casa y edificio anexo a la vez"),
    formula: phrase!(
        "Each draws its peak; pump and shared pipe carry both. Judged by the tap with less to spare.",
        "Cada uno toma su caudal máximo; la bomba y el tubo compartido llevan ambos. Se juzga por el grifo con menos \
         margen.",
    ),
    source: phrase!("As the checks of each alone.", "Como las comprobaciones de cada uno por separado."),
    assumes: phrase!(
        "Both peaks fall together, which is seldom. Filters due for change.",
        "Los dos máximos coinciden, lo que es raro. Filtros por cambiar.",
    ),
    caution: phrase!("", ""),
};
pub(super) const BURDEN: Text = Text {
    title: phrase!("What it takes from the others", "Lo que quita a los demás"),
    formula: phrase!(
        "The whole balance with it and without it, under the same rain.",
        "Todo el balance con él y sin él, con la misma lluvia.",
    ),
    source: phrase!("The balance.", "El balance."),
    assumes: phrase!(
        "Uses higher in the list are served first. Dry days with it count its own too, unless it is outdoors.",
        "Los usos de más arriba en la lista se sirven primero. Los días de escasez con él cuentan también los suyos, \
         salvo que sea al aire libre.",
    ),
    caution: phrase!("", ""),
};

pub(super) fn supply(told: &Told<'_>, system: &System) -> (String, String) {
    match told.check.verdict {
        Verdict::Tells => {
            let using = system.uses.iter().find(|using| using.id == told.check.part);
            let first = using.and_then(|using| uses_with(system, using).first().copied());
            let verdict = match first {
                Some(first) => say!(
                    "on the pipe of {first}: see there.",
                    "en el tubo de {first}: míralo allí.",
                    first = system.name_of(first),
                ),
                None => phrase!(
                    "its taps are in the house. For a shed, cabin or barn say so at the use.",
                    "sus grifos están en la casa. Si es un cobertizo, una cabaña o un establo, dilo en el uso.",
                )
                .to_owned(),
            };
            return (verdict, String::new());
        }
        Verdict::Outside => return (super::supply::CURVE.to_owned(), super::supply::ENTER_CURVE.to_owned()),
        _ => {}
    }
    let (has, wants, margin) = told.margin();
    let full = if told.check.figure(Figure::TapFull).is_finite() {
        say!(
            " with the tank low, {full} full",
            " con el tanque bajo, {full} con el tanque lleno",
            full = told.figure(Figure::TapFull),
        )
    } else {
        String::new()
    };
    let verdict = say!(
        "{margin}: {has} at {flow}{full}, {wants} wanted. At that pressure it gives up to {most}.",
        "{margin}: {has} a {flow}{full}; se piden {wants}. Con esa presión da hasta {most}.",
        flow = told.entered(Detail::TapFlow),
        most = told.figure(Figure::OutFlow),
        margin,
        has,
        full,
        wants
    );
    let to_do = said!(
        "Take a wider pipe, lower the tap, or a stronger pump.",
        "Pon un tubo más ancho, baja el grifo o pon una bomba más fuerte.",
    );
    (verdict, told.if_fails(to_do))
}

pub(super) fn both(told: &Told<'_>) -> (String, String) {
    let (_, wants, margin) = told.margin();
    let verdict = say!(
        "{margin}, at the tap with less ({wants} wanted there): the house has {house} ({alone} alone), the outbuilding \
         {out} and up to {most}.",
        "{margin}, en el grifo con menos (allí se piden {wants}): la casa tiene {house} (sola, {alone}); el edificio \
         anexo, {out} y hasta {most}.",
        house = told.figure(Figure::HouseBoth),
        alone = told.figure(Figure::HouseAlone),
        out = told.figure(Figure::OutBoth),
        most = told.figure(Figure::OutFlowBoth),
        margin,
        wants
    );
    let to_do = said!(
        "Take a wider shared pipe, a pipe for each, a stronger pump, or draw in turn.",
        "Pon un tubo compartido más ancho, un tubo para cada uno o una bomba más fuerte, o saca el agua por turnos.",
    );
    (verdict, told.if_fails(to_do))
}

pub(super) fn burden(told: &Told<'_>) -> (String, String) {
    let mut verdict = say!("it asks for {asked}", "pide {asked}", asked = told.figure(Figure::LitresADay));
    if told.check.figure(Figure::GetsShare).is_finite() {
        verdict += &say!(" and gets {share} of it", " y recibe {share} de eso", share = told.figure(Figure::GetsShare));
    }
    if told.check.figure(Figure::OthersWith).is_finite() {
        verdict += &say!(
            ". The others get {others} of theirs, {more} without it; dry days a year {dry}, without it {less}",
            ". Los demás reciben {others} de lo que piden, sin él {more}; escasez al año: {dry}, sin él {less}",
            others = told.figure(Figure::OthersWith),
            more = told.figure(Figure::OthersWithout),
            dry = told.figure(Figure::DryDaysWith),
            less = told.figure(Figure::DryDaysWithout),
        );
    }
    (verdict + ".", String::new())
}

//! A portable tank filled from the store.

use super::{Text, Told};
use crate::engine::checks::portable::ONE_LIFTS_KG;
use crate::engine::checks::{Figure, Verdict};
use crate::site::details::Detail;

pub(super) const DAYS: Text = Text {
    title: phrase!("How long it lasts", "Cuánto dura"),
    formula: phrase!(
        "Litres ÷ people ÷ litres for each a day. Drinking and food 3\u{a0}L, with cooking 9\u{a0}L, with washing 15\u{a0}L; all \
         three at the least 7.5\u{a0}L.",
        "Litros ÷ personas ÷ litros para cada una al día. Para beber y comer 3\u{a0}L, si además se cocina 9\u{a0}L, si además \
         se lava 15\u{a0}L; las tres cosas, como mínimo, 7,5\u{a0}L.",
    ),
    source: phrase!(
        "Sphere Handbook 2018, basic survival water needs (from memory): 2.5 to 3\u{a0}L drinking and food, 3 to 6\u{a0}L \
         cooking, 2 to 6\u{a0}L washing.",
        "Sphere Handbook 2018, necesidades básicas de agua para sobrevivir (de memoria): de 2,5 a 3\u{a0}L para beber y \
         comer, de 3 a 6\u{a0}L para cocinar, de 2 a 6\u{a0}L para lavar.",
    ),
    assumes: phrase!(
        "It starts full and nothing is spilled. Heat, work, illness and small children want more; pets want theirs.",
        "Empieza lleno y no se derrama nada. El calor, el trabajo, la enfermedad y los niños pequeños piden más; las \
         mascotas piden lo suyo.",
    ),
    caution: phrase!(
        "As safe as the tap that filled it, and less so every day: a clean closed tank, out of the sun. After days, \
         or when in doubt, treat it again as at that tap.",
        "El agua es tan segura como el grifo del que salió, y cada día menos: un tanque limpio y cerrado, fuera del \
         sol. Pasados unos días, o si hay dudas, trátala otra vez como en ese grifo.",
    ),
};
pub(super) const WEIGHT: Text = Text {
    title: phrase!("What it weighs full", "Lo que pesa lleno"),
    formula: phrase!("1\u{a0}kg a litre, and the empty tank.", "1\u{a0}kg por litro, más el tanque vacío."),
    source: phrase!(
        "Density of water. Empty: 1.2\u{a0}kg for a can of 20\u{a0}L (common practice, no source). One person lifts 23\u{a0}kg (51 \
         lb) at most: NIOSH lifting equation, 1994.",
        "Densidad del agua. Vacío: 1,2\u{a0}kg un bidón de 20\u{a0}L (práctica común, sin fuente). Una persona levanta 23\u{a0}kg \
         (51\u{a0}lb) como máximo: ecuación de levantamiento de NIOSH, 1994.",
    ),
    assumes: phrase!("Full to the cap.", "Lleno hasta la tapa."),
    caution: phrase!(
        "Strap it low, over or ahead of the axle; half full it surges. Brakes, hitch, axle and tyres have limits of \
         their own: don't tow or load on a guess. Not loose in a cabin, not left in the sun.",
        "Sujétalo abajo, sobre el eje o delante de él; a medio llenar da bandazos. Los frenos, el enganche, el eje y \
         los neumáticos tienen sus propios límites: no remolques ni cargues a ojo. No lo lleves suelto en la cabina \
         ni lo dejes al sol.",
    ),
};
pub(super) const FILL: Text = Text {
    title: phrase!("What a filling takes", "Lo que toma un llenado"),
    formula: phrase!(
        "One filling against what the store can give today.",
        "Un llenado frente a lo que el depósito puede dar hoy.",
    ),
    source: phrase!("The balance.", "El balance."),
    assumes: phrase!(
        "Today's water: by the readings, or else the middle of the record on this day of the year.",
        "El agua de hoy: según las lecturas o, si no las hay, el valor central del registro para este día del año.",
    ),
    caution: phrase!(
        "Fill through an air gap or a hose for drinking water; never leave the hose in the tank.",
        "Llena con una separación de aire o con una manguera para agua potable; nunca dejes la manguera dentro del \
         tanque.",
    ),
};

pub(super) fn days(told: &Told<'_>) -> (String, String) {
    let (has, wants, margin) = told.margin();
    let people = told.entered(Detail::Travellers);
    let heads = if told.check.went_in(Detail::Travellers) > 1.0 {
        said!("people", "personas")
    } else {
        said!("person", "persona")
    };
    let verdict = say!(
        "{margin}: it lasts {has}, {wants} wanted, for {people} {heads} at {need} each. Over {wants} each has {each}.",
        "{margin}: dura {has}, se piden {wants}, para {people} {heads} a {need} cada una. En {wants} cada una \
         tiene {each}.",
        need = told.figure(Figure::PortableNeed),
        each = told.figure(Figure::PortableEach),
        margin,
        has,
        wants,
        people,
        heads
    );
    let to_do = say!(
        "Carry {wanted}, refill on the way, or use less.",
        "Lleva {wanted}, rellena en el camino o usa menos.",
        wanted = told.figure(Figure::PortableWanted),
    );
    (verdict, told.if_fails(&to_do))
}

pub(super) fn weight(told: &Told<'_>) -> (String, String) {
    let full = told.figure(Figure::FullMass);
    let verdict = if told.check.margin.is_some() {
        let (has, _, margin) = told.margin();
        say!(
            "{margin}: {full} full, {has} may be loaded.",
            "{margin}: {full} lleno, se pueden cargar {has}.",
            margin,
            full,
            has
        )
    } else {
        say!("{full} full.", "{full} lleno.", full)
    };
    let to_do = if told.check.fails() {
        said!(
            "Take a smaller tank, fill it less, or carry it another way.",
            "Toma un tanque más pequeño, llénalo menos o llévalo de otro modo.",
        )
    } else if told.check.figure(Figure::FullMass) > ONE_LIFTS_KG {
        said!(
            "Too heavy for one to lift: fill it where it travels, or carry it in smaller cans.",
            "Pesa demasiado para que lo levante una sola persona: llénalo donde va a viajar, o lleva el agua en \
             bidones más pequeños.",
        )
    } else {
        ""
    };
    (verdict, to_do.to_owned())
}

pub(super) fn fill(told: &Told<'_>) -> (String, String) {
    if told.check.verdict == Verdict::Lacks {
        let verdict = said!(
            "What stands in the store isn't known: without rain, or while the system can't run.",
            "No se sabe cuánto hay en el depósito: falta la lluvia, o el sistema no puede funcionar.",
        );
        let to_do = said!("Choose the tank that it draws on, and rain.", "Elige el tanque del que toma, y la lluvia.");
        return (verdict.to_owned(), to_do.to_owned());
    }
    let mut verdict = say!(
        "by the readings, or else as in a middle year, the store can give {now} today",
        "según las lecturas o, si no las hay, como en un año intermedio, el depósito puede dar hoy {now}",
        now = told.figure(Figure::LiveNow)
    );
    if told.check.figure(Figure::FillShare).is_finite() {
        verdict +=
            &say!("; a filling takes {share}", "; un llenado toma {share}", share = told.figure(Figure::FillShare));
    }
    if told.check.figure(Figure::FillDays).is_finite() {
        verdict += &say!(
            ", what the other uses draw in {days}",
            ", lo que los demás usos sacan en {days}",
            days = told.figure(Figure::FillDays)
        );
    }
    let to_do = said!(
        "Fill it when more has come, or fill it in part.",
        "Llénalo cuando haya llegado más, o llénalo solo en parte.",
    );
    (verdict + ".", told.if_fails(to_do))
}

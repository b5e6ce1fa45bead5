//! What is on a roof and gets into its water.

use crate::engine::checks::{Check, Verdict};
use crate::engine::treatment::sources::{ROOF_QUESTIONS, YES};
use crate::site::details::Detail;
use crate::words::checks::Text;

pub(in crate::words) const TEXT: Text = Text {
    title: phrase!("What gets into its water", "Qué llega a su agua"),
    formula: phrase!("", ""),
    source: phrase!(
        "enHealth Guidance on use of rainwater tanks (2011) and WHO on lead, copper and asbestos: from memory.",
        "enHealth Guidance on use of rainwater tanks (2011) y la OMS sobre plomo, cobre y asbesto: de memoria.",
    ),
    assumes: phrase!(
        "Sediment, carbon, light, chlorine and boiling take none of the metals out, but for cartridges certified for \
         them.",
        "Ni los cartuchos de sedimentos ni el carbón, la luz, el cloro o el hervor quitan los metales, salvo los \
         cartuchos certificados para ellos.",
    ),
    caution: phrase!(
        "Never drill, saw, brush or pressure-wash asbestos: leave it to licensed people. Ladders and wet roofs kill.",
        "Nunca taladres, sierres, cepilles ni laves a presión el asbesto: déjalo a gente con licencia. Las \
         escaleras y los techos mojados matan.",
    ),
};

/// What is there.
pub fn found(question: Detail) -> &'static str {
    match question {
        Detail::LeadFlashing => said!("lead flashing or lead solder", "tapajuntas o soldadura de plomo"),
        Detail::Asbestos => said!("asbestos cement", "asbesto-cemento"),
        Detail::TreatedTimber => said!("treated timber", "madera tratada"),
        Detail::FreshPaint => said!(
            "fresh paint, bitumen or a coating not meant for drinking water",
            "pintura fresca, asfalto o un revestimiento no apto para agua potable",
        ),
        Detail::Flue => said!("a flue that drops soot", "una chimenea que suelta hollín"),
        Detail::Droppings => {
            said!("birds, bats or overhanging branches", "aves, murciélagos o ramas que cuelgan encima")
        }
        Detail::Spray => {
            said!("farm spray or dust that drifts over", "fumigación agrícola o polvo que trae el viento")
        }
        _ => "",
    }
}

/// What to do about it.
pub fn to_do(question: Detail) -> &'static str {
    match question {
        Detail::LeadFlashing => said!(
            "Paint it over with a coating for drinking water or replace it, and test for lead.",
            "Cúbrelo con un revestimiento para agua potable o cámbialo, y analiza el plomo.",
        ),
        Detail::Asbestos => said!(
            "Leave it unbroken; when it must go, licensed people take it. Not a roof to add to.",
            "No lo rompas; cuando haya que quitarlo, que se lo lleve gente con licencia. No es un techo para \
             ampliar.",
        ),
        Detail::TreatedTimber => said!(
            "Keep its water from drinking taps: copper, chromium, arsenic. Test for arsenic.",
            "Aparta su agua de los grifos de beber: cobre, cromo, arsénico. Analiza el arsénico.",
        ),
        Detail::FreshPaint => said!(
            "Let the first rains run off; use coatings certified for drinking water; no lead paint.",
            "Deja escurrir fuera las primeras lluvias; usa revestimientos certificados para agua potable; nada de \
             pintura con plomo.",
        ),
        Detail::Flue => said!(
            "Keep the part around the flue off the tank; burn dry wood only; test for benzo(a)pyrene.",
            "Deja fuera del tanque la parte del techo alrededor de la chimenea; quema solo leña seca; analiza el \
             benzo(a)pireno.",
        ),
        Detail::Droppings => said!(
            "Cut branches back, keep birds off, flush first: droppings carry Campylobacter and Salmonella.",
            "Poda las ramas, aleja las aves, desvía las primeras aguas: los excrementos traen Campylobacter y \
             Salmonella.",
        ),
        Detail::Spray => said!(
            "Turn the downspouts off the tank when spraying is announced, until rain has rinsed the roof.",
            "Desvía del tanque las bajantes cuando se anuncie fumigación, hasta que la lluvia haya lavado el techo.",
        ),
        _ => "",
    }
}

pub(in crate::words) fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => said!("Nothing found", "No se halló nada"),
        Verdict::Fails => said!("Take care", "Ten cuidado"),
        _ => said!("Not known", "No se sabe"),
    }
}

pub(in crate::words) fn said(check: &Check) -> (String, String) {
    let yes: Vec<Detail> = ROOF_QUESTIONS.into_iter().filter(|question| check.went_in(*question) == YES).collect();
    let open = ROOF_QUESTIONS.into_iter().filter(|question| check.went_in(*question) == 0.0).count();
    let verdict = match check.verdict {
        Verdict::Holds => {
            phrase!("nothing of what is asked is on this roof", "en este techo no hay nada de lo que se pregunta",)
                .to_owned()
        }
        Verdict::Fails => {
            let found: Vec<String> = yes.iter().map(|question| found(*question).to_owned()).collect();
            say!("on this roof: {found}", "en este techo: {found}", found = crate::words::list(&found))
        }
        _ => {
            say!(
                "{questions} not answered yet",
                "{questions} sin responder todavía",
                questions =
                    crate::words::count(open, phrase!("question", "pregunta"), phrase!("questions", "preguntas"))
            )
        }
    };
    let to_do = yes.iter().map(|question| to_do(*question)).collect::<Vec<_>>().join(" ");
    (format!("{verdict}."), to_do)
}

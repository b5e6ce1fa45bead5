//! The chain of barriers as a whole.

use crate::engine::treatment::chain::{Chain, Disorder};
use crate::engine::treatment::step::Effect;
use crate::engine::treatment::targets::{Germ, THREE_STARS, TWO_STARS};
use crate::language::{Phrase, capital};
use crate::quantity::shown;
use crate::site::system::System;
use crate::site::uses::Class;

/// The head of the section.
pub const TITLE: Phrase = phrase!("Fit to drink?", "¿Apta para beber?");
/// The lists under it.
pub const BARRIERS: Phrase = phrase!("Barriers, in the way of the water", "Barreras, en el orden en que pasa el agua");
/// Where nothing stands between tank and tap.
pub const NO_BARRIERS: Phrase =
    phrase!("No barrier stands between the tank and this tap.", "No hay ninguna barrera entre el tanque y este grifo.");
/// What stars mean, and whose they are.
pub const ABOUT: Phrase = phrase!(
    "Wanted: WHO's classes for household treatment (2011, from memory), three stars and two. They are set for water \
     that people's own waste may have reached, which is the safe side for a roof. Only what is proven counts; leaf \
     screens, first flush and settling count for nothing.",
    "Se pide: las clases de la OMS para el tratamiento en el hogar (2011, de memoria), tres estrellas y dos. Están \
     fijadas para agua a la que pueden haber llegado desechos humanos, lo que para un techo queda del lado seguro. \
     Solo cuenta lo probado; las mallas para hojas, el desvío de primeras aguas y el asentamiento no cuentan nada.",
);
/// Said where nothing is known of what fits.
pub const CAUTION: Phrase = phrase!(
    "Untreated roof water isn't drinking water. A figure here is no permit to drink: test, and let local codes and a \
     licensed practitioner decide. Cautious people boil for babies and the sick.",
    "El agua del techo sin tratar no es agua potable. Una cifra de aquí no es un permiso para beber: haz un análisis, \
     y que decidan las normas locales y un profesional con licencia. La gente prudente hierve el agua para bebés y \
     enfermos.",
);
/// The caution of taps that nobody is meant to drink from.
pub const HOUSE: Phrase = phrase!(
    "Nobody is meant to drink here: mark these taps, or choose drinking as their kind of use. Brushing teeth and rinsing salad \
     is drinking.",
    "Aquí nadie debe beber: marca estos grifos, o elige beber como su tipo de uso. Cepillarse los dientes y enjuagar la ensalada \
     es beber.",
);

/// The button to a tap's own chain.
pub const OPEN: Phrase = phrase!("Open its barriers", "Abrir sus barreras");
/// The head of the buttons to each tank's dose, and what stands there.
pub const DOSES: Phrase = phrase!("Chlorine doses", "Dosis de cloro");
/// What a dose is for.
pub const DOSES_ABOUT: Phrase = phrase!(
    "To disinfect after contamination, to keep a residual, or to shock pipes: the sheet of each tank reckons it for your \
     bleach and its age.",
    "Para desinfectar tras una contaminación, mantener cloro residual o hacer una cloración de choque en las tuberías: \
     la hoja de cada tanque la calcula según tu cloro doméstico (blanqueador) y el tiempo que lleva guardado.",
);

/// The verdict where the last test of something is over a limit of health.
pub fn test_fails(parameters: &[String]) -> String {
    if parameters.len() > 1 {
        return say!(
            "Tests of {what} are over the limit and not cleared yet. What to do stands under water tests.",
            "Unos análisis dan más {what} que el límite, y ninguno posterior lo ha aclarado. Qué hacer está en los análisis \
             de agua.",
            what = crate::words::list(parameters),
        );
    }
    say!(
        "A test of {what} is over the limit and not cleared yet. What to do stands under water tests.",
        "Un análisis da más {what} que el límite, y ninguno posterior lo ha aclarado. Qué hacer está en los análisis de agua.",
        what = crate::words::list(parameters),
    )
}

/// The verdict in a sentence: what is entered against germs, which of these tests leave it in doubt, and that it is silent
/// about metals where none was tested for.
pub fn verdict(chain: &Chain, doubts: &[String]) -> String {
    let mut sentences = vec![stars(chain).to_owned()];
    if !doubts.is_empty() {
        sentences.push(say!(
            "The last test of {what} leaves that in doubt: see water tests.",
            "El último análisis de {what} lo deja en duda: mira los análisis de agua.",
            what = crate::words::list(doubts),
        ));
    }
    if chain.stars > 0 && chain.no_metal_tested() {
        sentences.push(
            phrase!(
                "That says nothing of metals: none was tested for.",
                "Eso no dice nada de los metales: no se ha analizado ninguno.",
            )
            .to_owned(),
        );
    }
    sentences.join(" ")
}

fn stars(chain: &Chain) -> &'static str {
    match chain.stars {
        3 => said!(
            "What is entered reaches WHO's highest class, three stars, for all three kinds of germ.",
            "Lo anotado alcanza la clase más alta de la OMS, tres estrellas, para las tres clases de gérmenes.",
        ),
        2 => said!(
            "What is entered reaches two stars of WHO for all three kinds of germ.",
            "Lo anotado alcanza dos estrellas de la OMS para las tres clases de gérmenes.",
        ),
        1 => said!(
            "What is entered reaches one star of WHO: two of the three kinds of germ.",
            "Lo anotado alcanza una estrella de la OMS: dos de las tres clases de gérmenes.",
        ),
        _ if chain.logs == [0.0; 3] => {
            said!("Nothing here is proven to stop any germ.", "No está probado que algo de aquí detenga ningún germen.")
        }
        _ => said!("What is entered reaches no class of WHO.", "Lo anotado no alcanza ninguna clase de la OMS."),
    }
}

/// The weakest gap and what would close it.
pub fn weakest(chain: &Chain) -> Option<String> {
    let (germ, lacks) = chain.weakest?;
    let at = germ as usize;
    Some(say!(
        "Weakest: {germs}. {proven} of the {wanted} log needed are proven (1 log stops nine of ten, 2 log 99 of 100); \
         {lacks} are lacking. {way}",
        "Lo más débil: {germs}. Están demostrados {proven} de los {wanted} log que se piden (1 log detiene nueve de cada \
         diez, 2 log 99 de cada 100); faltan {lacks}. {way}",
        germs = super::GERMS[at],
        proven = shown::significant(chain.logs[at], 2),
        wanted = shown::significant(THREE_STARS[at], 2),
        lacks = shown::significant(lacks, 2),
        way = match germ {
            Germ::Bacteria | Germ::Viruses => said!(
                "Boiling, chlorine with enough contact time, or a filter certified as a purifier closes it.",
                "Lo resuelve hervir, cloro con suficiente tiempo de contacto o un filtro certificado como purificador.",
            ),
            Germ::Protozoa => said!(
                "Boiling, a class A ultraviolet lamp, or a filter certified for cysts closes it; chlorine does not.",
                "Lo resuelve hervir, una lámpara UV de clase A o un filtro certificado para quistes; el cloro no.",
            ),
        },
    ))
}

/// What is upstream of the barriers.
pub fn upstream(chain: &Chain) -> String {
    let (feeds, flushing) = chain.feeds;
    let first_flush = match (feeds, flushing) {
        (0, _) => return phrase!("No feed brings it rain.", "Ninguna alimentación le trae lluvia.").to_owned(),
        (1, 1) => phrase!(
            "Its feed has a first flush that works",
            "Su alimentación tiene un desviador de primeras aguas que funciona",
        )
        .to_owned(),
        (1, _) => phrase!(
            "Its feed has no first flush that works",
            "Su alimentación no tiene ningún desviador de primeras aguas que funcione",
        )
        .to_owned(),
        (feeds, flushing) if feeds == flushing => say!(
            "Its {feeds} feeds have a first flush that works",
            "Sus {feeds} alimentaciones tienen un desviador de primeras aguas que funciona",
            feeds
        ),
        (feeds, 0) => say!(
            "Of its {feeds} feeds 0 have a first flush that works",
            "Ninguna de sus {feeds} alimentaciones tiene un desviador de primeras aguas que funcione",
            feeds
        ),
        (feeds, flushing) => say!(
            "Of its {feeds} feeds {flushing} have a first flush that works",
            "De sus {feeds} alimentaciones, {flushing} {have} un desviador de primeras aguas que funciona",
            have = if flushing == 1 { "tiene" } else { "tienen" },
            feeds,
            flushing
        ),
    };
    say!(
        "{first_flush}; in the tank dirt settles. Both make the water cleaner; neither counts against germs.",
        "{first_flush}; en el tanque la suciedad se asienta. Las dos cosas dejan el agua más limpia; ninguna cuenta \
         contra los gérmenes.",
        first_flush
    )
}

/// The table: heads.
pub const COLUMNS: [Phrase; 4] = [
    phrase!("Against", "Contra"),
    phrase!("Proven", "Probado"),
    phrase!("Two stars", "Dos estrellas"),
    phrase!("Three stars", "Tres estrellas"),
];

/// The table: a row each.
pub fn rows(chain: &Chain) -> Vec<[String; 4]> {
    let logs = |logs: f64| format!("{} log", shown::significant(logs, 2));
    let mut rows: Vec<[String; 4]> = Germ::ALL
        .into_iter()
        .map(|germ| {
            let at = germ as usize;
            [capital(&super::GERMS[at]), logs(chain.logs[at]), logs(TWO_STARS[at]), logs(THREE_STARS[at])]
        })
        .collect();
    for (what, effect) in [
        (said!("Dirt", "Suciedad"), chain.sediment),
        (said!("Metals", "Metales"), chain.metals),
        (said!("Organics", "Orgánicos"), chain.organics),
    ] {
        let proven = match effect {
            Effect::Nothing => "no",
            Effect::Usually => said!("unproven", "sin probar"),
            Effect::Certified => said!("certified", "certificado"),
        };
        rows.push([what.to_owned(), proven.to_owned(), String::new(), String::new()]);
    }
    rows
}

/// Something in the wrong order.
pub fn disorder(disorder: Disorder) -> &'static str {
    match disorder {
        Disorder::LampInDirtyWater => said!(
            "Put a sediment cartridge (5 µm is usual) before the lamp: dirt shades germs.",
            "Pon un cartucho de sedimentos (lo usual es 5 µm) antes de la lámpara: la suciedad protege a los gérmenes \
             de la luz.",
        ),
        Disorder::CarbonLast => said!(
            "Germs grow on carbon and nothing after it disinfects: put it before the lamp or chlorine.",
            "En el carbón crecen gérmenes y nada desinfecta después: ponlo antes de la lámpara o del cloro.",
        ),
        Disorder::Hazy => said!(
            "The last test found over 1 NTU: filter finer, or light and chlorine may miss germs in the dirt.",
            "El último análisis halló más de 1 NTU: filtra más fino, o a la luz y al cloro se les pueden escapar \
             gérmenes en la suciedad.",
        ),
    }
}

/// What is on a roof that its water comes from, and no barrier is certified against.
pub fn unguarded(chain: &Chain, system: &System) -> Vec<String> {
    chain
        .unguarded()
        .map(|(section, question)| {
            say!(
                "{roof}: {found}. No barrier here is certified against it; boiling, light and chlorine do nothing. Take \
                 it off the roof, or keep this roof's water from this tap until a laboratory has tested it.",
                "{roof}: {found}. Ninguna barrera de aquí está certificada contra esto; hervir, la luz y el cloro no \
                 hacen nada. Quítalo del techo, o no dejes llegar el agua de este techo a este grifo hasta que un \
                 laboratorio la haya analizado.",
                roof = system.name_of(section),
                found = super::roof::found(question),
            )
        })
        .collect()
}

/// What else is on its roofs.
pub fn also_on_roof(chain: &Chain, system: &System) -> Vec<String> {
    let unguarded: Vec<_> = chain.unguarded().collect();
    let others = chain.on_roofs.iter().filter(|found| !unguarded.contains(found));
    let mut sentences: Vec<String> = others
        .map(|(section, question)| {
            format!(
                "{}: {}. {}",
                system.name_of(*section),
                super::roof::found(*question),
                super::roof::to_do(*question)
            )
        })
        .collect();
    if let [first, rest @ ..] = chain.not_asked.as_slice() {
        let more = if rest.is_empty() {
            String::new()
        } else {
            say!(" and {number} more", " y {number} más", number = rest.len())
        };
        sentences.push(say!(
            "Nobody has answered yet what is on {roof}{more}: lead, asbestos, timber, paint, flue. The roof section has the questions.",
            "Nadie ha contestado todavía qué hay en {roof}{more}: plomo, asbesto, madera, pintura, chimenea. Abre la \
             sección de techo.",
            roof = system.name_of(*first), more
        ));
    }
    sentences
}

/// What to be careful of at a tap of this class.
pub fn caution(class: Class) -> &'static str {
    match class {
        Class::House => HOUSE.text(),
        _ => CAUTION.text(),
    }
}

/// Where a new barrier goes.
pub const GOES_LAST: Phrase = phrase!(
    "It goes to the end of the chain; move it up if water meets it earlier.",
    "Va al final de la cadena; súbela si el agua pasa antes por ella.",
);

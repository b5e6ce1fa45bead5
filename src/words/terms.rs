//! The trade's terms, each in a sentence, one tap away from where it is written.

use crate::language::{Phrase, small};

/// Term and sentence; a term's forms stand with a bar between, the one that names it first.
pub static TERMS: [(Phrase, Phrase); 36] = [
    (
        phrase!("roof section", "sección de techo"),
        phrase!(
            "One plane or part of the roof with its plan area, as seen from above, and its roofing.",
            "Un plano o una parte del techo con su área en planta, vista desde arriba, y su material.",
        ),
    ),
    (
        phrase!("plan area", "área en planta"),
        phrase!(
            "Area of the roof as seen from straight above, not along the slope: rain falls on that.",
            "Área del techo vista desde arriba, no a lo largo de la pendiente: sobre ella cae la lluvia.",
        ),
    ),
    (
        phrase!("runoff coefficient", "coeficiente de escorrentía"),
        phrase!(
            "Share of the rain on a roof, beyond wetting, that runs off it: 0.9 for metal, far less for a planted \
             roof.",
            "Parte de la lluvia sobre un techo, pasado el mojado inicial, que escurre: 0,9 en metal, mucho menos con \
             plantas.",
        ),
    ),
    (
        phrase!("wetting loss", "mojado inicial"),
        phrase!(
            "Rain that only wets the roof on each rain day and dries there.",
            "Lluvia que cada día de lluvia solo moja el techo y ahí se seca.",
        ),
    ),
    (
        phrase!("feed", "alimentación"),
        phrase!(
            "A downspout with its leaf screen and first-flush diverter, and the tank that it fills.",
            "Una bajante con su malla para hojas y su desviador de primeras aguas, y el tanque que llena.",
        ),
    ),
    (
        phrase!("first-flush diverter", "desviador de primeras aguas"),
        phrase!(
            "The chamber that keeps the first, dirtiest water of a storm out of the tank.",
            "La cámara que deja fuera del tanque la primera agua de una tormenta, la más sucia.",
        ),
    ),
    (
        phrase!("first flush", "primeras aguas"),
        phrase!(
            "The first water off a roof in a storm, led aside because it carries most of the dirt.",
            "La primera agua que baja de un techo en una tormenta; se aparta porque lleva la mayor parte de la \
             suciedad.",
        ),
    ),
    (
        phrase!("diverter", "desviador"),
        phrase!(
            "The chamber that keeps the first, dirtiest water of a storm out of the tank.",
            "La cámara que deja fuera del tanque la primera agua de una tormenta, la más sucia.",
        ),
    ),
    (
        phrase!("dead storage", "volumen muerto"),
        phrase!(
            "Water below a tank's outlet: it is there, but no tap gets it.",
            "Agua por debajo de la salida de un tanque: está ahí, pero ningún grifo la alcanza.",
        ),
    ),
    (
        phrase!("stranded capacity", "capacidad atrapada"),
        phrase!(
            "Room in a joined tank above the lowest rim of its store: it can never fill, because the other tank \
             spills first.",
            "Espacio de un tanque unido, sobre el borde más bajo de su depósito: nunca se llena, porque el otro \
             tanque rebosa antes.",
        ),
    ),
    (
        phrase!("trunk line", "tubería de unión"),
        phrase!(
            "The pipe that joins tanks at the bottom; with its valve open they share one water level.",
            "El tubo que une tanques por abajo; con su válvula abierta comparten un mismo nivel de agua.",
        ),
    ),
    (
        phrase!("store", "depósito"),
        phrase!(
            "Tanks joined through open valves: one water level, drawn down together.",
            "Tanques unidos con las válvulas abiertas: un solo nivel de agua, que baja en todos a la vez.",
        ),
    ),
    (
        phrase!("yield after spillage", "uso después del rebose"),
        phrase!(
            "The day's rain may spill before the day's use is drawn, and serves from the next day on: the cautious order of counting.",
            "La lluvia del día puede rebosar antes de que se tome el uso del día, y sirve desde el día siguiente: el orden prudente \
             de contar.",
        ),
    ),
    (
        phrase!("yield before spillage", "uso antes del rebose"),
        phrase!(
            "The day's use is drawn before anything spills: the hopeful order of counting.",
            "El uso del día se toma antes de que algo rebose: el orden optimista de contar.",
        ),
    ),
    (phrase!("yield", "agua captada"), phrase!("Water that the uses got.", "Agua de lluvia que llegó a los usos.")),
    (
        phrase!("spilled", "rebosado|rebosada"),
        phrase!(
            "Water over the rim or out of the overflow.",
            "Agua que pasó por encima del borde o salió por el rebosadero.",
        ),
    ),
    (
        phrase!("shortfall", "faltante"),
        phrase!("Water that was wanted and not there.", "Agua que se quería y no había."),
    ),
    (
        phrase!("dry days", "días de escasez"),
        phrase!(
            "Days on which a use of the house is not met in full; a garden that goes without makes none.",
            "Días en que un uso de la casa no se cubre del todo; un huerto que se queda sin agua no cuenta.",
        ),
    ),
    (
        phrase!("dry day", "día de escasez"),
        phrase!(
            "A day on which a use of the house is not met in full; a garden that goes without makes none.",
            "Un día en que un uso de la casa no se cubre del todo; un huerto que se queda sin agua no cuenta.",
        ),
    ),
    (
        phrase!("dry stretch", "racha de escasez|rachas de escasez"),
        phrase!("Dry days one after the other.", "Días de escasez, uno tras otro."),
    ),
    (
        phrase!("volumetric reliability", "confiabilidad volumétrica|confiabilidad en volumen"),
        phrase!(
            "Share of the water wanted that was there, over all days.",
            "Parte del agua que se quería y que sí había, entre todos los días.",
        ),
    ),
    (
        phrase!("time reliability", "confiabilidad temporal|confiabilidad en el tiempo"),
        phrase!("Share of the days that were not dry.", "Parte de los días que no fueron de escasez."),
    ),
    (
        phrase!("Wilson interval", "intervalo de Wilson"),
        phrase!(
            "Range in which the true chance of a good year lies, 95 times in 100, judged from so few years.",
            "Entre qué valores está la verdadera probabilidad de un año bueno, 95 veces de cada 100, con tan pocos \
             años.",
        ),
    ),
    (
        phrase!("resilience", "resiliencia"),
        phrase!(
            "Chance that a dry day is followed by one that is not: how soon the house recovers.",
            "Probabilidad de que a un día de escasez siga uno que no lo es: cuán pronto se recupera la casa.",
        ),
    ),
    (
        phrase!("vulnerability", "vulnerabilidad"),
        phrase!(
            "How much lacks on the worst day of a dry stretch, on average.",
            "Cuánto falta en el peor día de una racha de escasez, en promedio.",
        ),
    ),
    (
        phrase!("safe daily use", "uso diario seguro"),
        phrase!(
            "The most that can be drawn each day so that the water lasts to a date, with a chance that you name.",
            "Lo más que se puede tomar cada día para que el agua dure hasta una fecha, con la probabilidad que tú \
             digas.",
        ),
    ),
    (
        phrase!("generated years", "años generados"),
        phrase!(
            "Years drawn by a model of this place's rain: they never happened, but could have.",
            "Años sorteados con un modelo de la lluvia de este lugar: nunca ocurrieron, pero pudieron ocurrir.",
        ),
    ),
    (
        phrase!("percentiles", "percentiles|percentil"),
        phrase!(
            "The value below which so many of a hundred years lie.",
            "El valor por debajo del cual quedan tantos de cada cien años.",
        ),
    ),
    (
        phrase!("uncollected", "sin recoger|sin captar|no captada"),
        phrase!("Rain on the roof that no feed takes.", "Lluvia sobre el techo que ninguna alimentación recoge."),
    ),
    (
        phrase!("reference evapotranspiration", "evapotranspiración de referencia"),
        phrase!(
            "What a meadow of short grass with water enough gives to the air on a day.",
            "Lo que un prado de pasto corto, con agua suficiente, entrega al aire en un día.",
        ),
    ),
    (
        phrase!("crop coefficient", "coeficiente de cultivo|coeficiente del cultivo"),
        phrase!(
            "What a plant drinks, as a multiple of short grass.",
            "Lo que bebe una planta, como múltiplo del pasto corto.",
        ),
    ),
    (
        phrase!("rationing", "racionamiento"),
        phrase!(
            "Uses that the household does without, in part, while its store is low.",
            "Usos de los que el hogar prescinde, en parte, mientras su depósito está bajo.",
        ),
    ),
    (
        phrase!("hauled", "acarreada|agua acarreada|acarreado"),
        phrase!("Brought by truck, at a price.", "Traída en camión, por un precio."),
    ),
    (
        phrase!("log", "log"),
        phrase!(
            "1 log stops nine germs of ten, 2 log 99 of 100, 3 log 999 of 1,000.",
            "1 log detiene nueve de cada diez gérmenes; 2 log, 99 de 100; 3 log, 999 de 1000.",
        ),
    ),
    (
        phrase!("residual", "residual"),
        phrase!(
            "Chlorine that is still free in the water after it has acted.",
            "Cloro que sigue libre en el agua después de haber actuado.",
        ),
    ),
    (phrase!("upkeep", "cuidados"), phrase!("Cleaning, changing and checking.", "Limpiar, cambiar y comprobar.")),
];

/// The form of a term that names it.
pub fn name(term: &Phrase) -> &'static str {
    forms(term).next().unwrap_or_default()
}

fn forms(term: &Phrase) -> core::str::Split<'static, char> {
    term.text().split('|')
}

/// The first term in a text from a place in it on, the longest of those that begin there: where it begins and ends, and
/// which it is. Terms are found as whole words, with a small or a large first letter.
pub fn first_in(text: &str) -> Option<(usize, usize, usize)> {
    let mut found: Option<(usize, usize, usize)> = None;
    for (at, (term, _)) in TERMS.iter().enumerate() {
        for form in forms(term) {
            let Some(start) = place_of(text, form) else { continue };
            let end = start + form.len();
            if found.is_none_or(|(from, to, _)| start < from || (start == from && end > to)) {
                found = Some((start, end, at));
            }
        }
    }
    found
}

/// Where a term stands in a text as whole words.
fn place_of(text: &str, term: &str) -> Option<usize> {
    let mut letters = term.chars();
    let (first, rest) = (letters.next()?, letters.as_str());
    let mut before = None;
    for (start, letter) in text.char_indices() {
        let after = text[start + letter.len_utf8()..].strip_prefix(rest);
        let ends = after.is_some_and(|after| !is_letter(after.chars().next()));
        if ends && !is_letter(before) && small(letter) == small(first) {
            return Some(start);
        }
        before = Some(letter);
    }
    None
}

/// Whether a character goes on with a word; a space that does not break and a dash do.
fn is_letter(letter: Option<char>) -> bool {
    letter.is_some_and(|letter| {
        letter.is_ascii_alphanumeric() || letter == '-' || !(letter.is_ascii() || "¿¡«»".contains(letter))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::language::{Language, speak};

    #[test]
    fn terms_are_found_as_whole_words_the_first_and_longest_of_them() {
        let found = |text: &'static str| first_in(text).map(|(from, to, _)| &text[from..to]);
        assert_eq!(found("Yield after spillage (cautious)"), Some("Yield after spillage"));
        assert_eq!(found("The first-flush diverter of the feed"), Some("first-flush diverter"));
        assert_eq!(found("37 dry days, in 2002"), Some("dry days"));
        assert_eq!(found("restored, feeder, logbook; 50 % — unfed"), None);
        assert_eq!(found(""), None);
    }

    #[test]
    fn spanish_terms_are_found_with_their_accents_and_in_each_of_their_forms() {
        let found = |text: &'static str| first_in(text).map(|(from, to, at)| (&text[from..to], name(&TERMS[at].0)));
        speak(Language::Spanish);
        assert_eq!(found("Área en planta: 64 m²"), Some(("Área en planta", "área en planta")));
        assert_eq!(found("¿Cuidados o nada?"), Some(("Cuidados", "cuidados")));
        assert_eq!(found("El «depósito», lleno"), Some(("depósito", "depósito")));
        assert_eq!(
            found("El desviador de primeras aguas"),
            Some(("desviador de primeras aguas", "desviador de primeras aguas"))
        );
        assert_eq!(found("300 L de agua rebosada en 2002"), Some(("rebosada", "rebosado")));
        assert_eq!(found("depósitos, logró, diálogo, residuales"), None);
        speak(Language::English);
    }

    #[test]
    fn every_term_is_told_in_one_sentence_and_none_twice() {
        for language in Language::ALL {
            speak(language);
            for (at, (term, sentence)) in TERMS.iter().enumerate() {
                assert!(sentence.ends_with('.') && sentence.chars().count() < 160, "{term}");
                for form in forms(term) {
                    assert_eq!(first_in(form), Some((0, form.len(), at)), "{form} is found as itself");
                    let others = TERMS.iter().enumerate().filter(|(other, _)| *other != at);
                    assert!(others.flat_map(|(_, (other, _))| forms(other)).all(|other| other != form), "{form}");
                }
            }
        }
        speak(Language::English);
    }
}

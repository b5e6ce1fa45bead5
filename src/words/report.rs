//! Words of the report.

use chrono::NaiveDate;

use crate::language::Phrase;

/// The button that opens it, and its name.
pub const TITLE: Phrase = phrase!("Report", "Informe");
/// What the report of a site is called: browsers name the file of a print by it.
pub fn title_of(name: &str) -> String {
    format!("{TITLE} – {name}")
}

/// The button that prints it.
pub const PRINT: Phrase = phrase!("Print, or save as PDF", "Imprimir o guardar como PDF");
/// The buttons that say how much of it is wanted: everything, or a few pages.
pub const EXTENTS: [Phrase; 2] = [phrase!("Everything", "Todo"), phrase!("In short", "En breve")];
/// What the buttons choose.
pub const EXTENT: Phrase = phrase!("How much", "Cuánto");
/// In short: what is not enough or lacks a value.
pub const NOT_ENOUGH: Phrase =
    phrase!("Parts that are not enough, or not known to be", "Partes que no alcanzan, o de las que no se sabe");
/// In short, where there is nothing such.
pub const ALL_ENOUGH: Phrase = phrase!(
    "Every part that could be checked is enough. The whole report lists the checks.",
    "Todas las partes que se pudieron comprobar alcanzan. El informe completo enumera las comprobaciones.",
);
/// The button that leaves it.
pub const BACK: Phrase = phrase!("Back to the house", "Volver a la casa");

/// Over the whole.
pub fn title(site: &str) -> String {
    say!("Rainwater supply: {site}", "Suministro de agua de lluvia: {site}", site)
}

/// The day on which it was made.
pub fn made_on(day: NaiveDate) -> String {
    say!(
        "As of {date}, by Eavewater {version}.",
        "Al {date}, según Eavewater {version}.",
        date = super::date(day),
        version = crate::VERSION
    )
}

/// A trial is open, which the report leaves aside.
pub const WITHOUT_TRIAL: Phrase = phrase!(
    "Of the house as it is: the trial that is open is not in it.",
    "De la casa como está: la prueba que está abierta no entra.",
);

/// The sections.
pub const ANSWER: Phrase = phrase!("Does the water last?", "¿Alcanza el agua?");
/// How big it would have to be.
pub const SIZES: Phrase = phrase!("How big?", "¿De qué tamaño?");
/// While that is searched for.
pub const SIZES_RUN: Phrase = phrase!(
    "Not found yet: the sizes are still being reckoned. Wait for them before this is printed.",
    "Aún sin hallar: los tamaños se están calculando. Espera a que estén antes de imprimir.",
);
/// How sure the share of good years is.
pub const GOOD_YEARS: Phrase = phrase!(
    "Share of good years, with the range that it may lie in",
    "Proporción de años buenos, con el intervalo en que puede estar",
);
/// The drawing.
pub const DRAWING: Phrase = phrase!("The house in section", "La casa en corte");
/// Title of the drawing itself.
pub const HEIGHTS: Phrase = phrase!(
    "Tanks at their true heights to one another; a long stretch with no tank in it is shortened",
    "Los tanques a sus alturas reales entre sí; un tramo largo sin ningún tanque va acortado",
);
/// What each part is.
pub const INPUTS: Phrase = phrase!("Parts and values", "Partes y valores");
/// Values of no single part.
pub const WHOLE_SITE: Phrase = phrase!("The whole site", "Todo el sitio");
/// The rain.
pub const RAIN: Phrase = phrase!("Rain", "Lluvia");
/// What the days came to.
pub const RESULTS: Phrase = phrase!("Results", "Resultados");
/// The years.
pub const YEARS: Phrase = phrase!("Year by year", "Año por año");
/// What the parts did.
pub const PARTS_DID: Phrase = phrase!("What the parts did", "Lo que hicieron las partes");
/// The weeks to come.
pub const AHEAD: Phrase = phrase!("From today", "Desde hoy");
/// What to change.
pub const NEXT: Phrase = phrase!("What next", "Qué sigue");
/// The checks.
pub const CHECKS: Phrase = phrase!("Checks of parts", "Comprobaciones de las partes");
/// Where no part has anything to check.
pub const NO_CHECKS: Phrase =
    phrase!("No part here has anything to check.", "Aquí ninguna parte tiene algo que comprobar.");
/// Water that is drunk.
pub const WATER: Phrase = phrase!("Fit to drink?", "¿Apta para beber?");
/// Upkeep.
pub const UPKEEP: Phrase = phrase!("Upkeep", "Cuidados");
/// Columns of the upkeep.
pub const UPKEEP_COLUMNS: [Phrase; 3] =
    [phrase!("what", "qué"), phrase!("how often", "cada cuánto"), phrase!("how it stands", "cómo está")];
/// What was taken for granted.
pub const ASSUMPTIONS: Phrase = phrase!("Taken for granted", "Lo que se da por supuesto");
/// Where formulas come from.
pub const SOURCES: Phrase = phrase!("Sources", "Fuentes");
/// What to be careful of.
pub const CAUTIONS: Phrase = phrase!("Cautions", "Precauciones");

/// Which rain days were looked at, where nothing doubtful was found.
pub const NO_DOUBT: Phrase = phrase!(
    "The record as a whole was looked over for a wrong unit, for gaps written as zero and for a model's drizzle: \
     nothing doubtful was found. Single rows were judged when it was read in.",
    "Se revisó el registro entero en busca de una unidad equivocada, de huecos escritos como cero y de la llovizna de \
     un modelo: no se halló nada dudoso. Cada fila se juzgó al leerla.",
);
/// What was found doubtful.
pub const DOUBTS: Phrase = phrase!("Doubts about the record", "Dudas sobre el registro");
/// The longest dry spells.
pub const DRY_SPELLS: Phrase = phrase!("Longest dry spells", "Las rachas sin lluvia más largas");
/// Nothing has been judged yet.
pub const NOT_JUDGED: Phrase = phrase!(
    "The changes that this house could make are being run beside it; they stand here once that is done.",
    "Los cambios que esta casa podría hacer se están calculando a su lado; estarán aquí cuando terminen.",
);
/// Nothing can be judged.
pub const NO_RAIN: Phrase =
    phrase!("Without rain nothing can be told of it.", "Sin lluvia no se puede decir nada de esto.");
/// How values are marked that nobody entered.
pub const USUAL_MARK: Phrase = phrase!(" (usual)", " (usual)");
/// What stands for a value that nobody entered and that nothing is common for, as `words::checks::details` begins to say it.
pub const UNKNOWN: Phrase = phrase!("Not known", "No se sabe");
/// What that means.
pub const USUAL: Phrase = phrase!(
    "Values marked “usual” were not entered by anybody: they are what is common for such parts. A check that rests on \
     them says so.",
    "Los valores marcados «usual» no los escribió nadie: son los comunes en esas partes. Una comprobación que se \
     apoya en ellos lo dice.",
);
/// Months of a value.
pub const BY_MONTH: Phrase = phrase!("January to December", "De enero a diciembre");
/// By how much each month's rain is multiplied.
pub const RAIN_FACTORS: Phrase = phrase!("Rain of each month multiplied by", "Lluvia de cada mes multiplicada por");
/// What fills the tanks on the first day.
pub const START: Phrase = phrase!("Tanks on the first day", "Tanques el primer día");

/// An interval: "every 180 days or after 500 mm".
pub fn interval([days, rain, litres]: &[String; 3]) -> String {
    let mut ways = Vec::new();
    if !days.is_empty() {
        ways.push(say!("every {days}", "cada {days}", days));
    }
    if !rain.is_empty() {
        ways.push(say!("after {rain} of rain", "tras {rain} de lluvia", rain));
    }
    if !litres.is_empty() {
        ways.push(say!("after {litres} through it", "tras el paso de {litres}", litres));
    }
    if ways.is_empty() { phrase!("as needed", "según haga falta").to_owned() } else { ways.join(said!(" or ", " o ")) }
}

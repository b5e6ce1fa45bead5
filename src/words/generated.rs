//! Words about generated years.

use super::{count, number_text, percent};
use crate::engine::question::Answer;
use crate::engine::rain::generated::ModelError;
use crate::engine::rain::generated::likeness::Likeness;
use crate::language::Phrase;
use crate::site::household::USUAL_MISSING_DAYS;

/// Title of the section.
pub const TITLE: Phrase = phrase!("Years that haven't happened yet", "Años que aún no han ocurrido");

/// What they are.
pub const WHAT: Phrase = phrase!(
    "A short record has not seen the worst. From how often rain follows rain here, and how much falls, month by month, \
     a model draws as many years as are wanted. It knows nothing of a changing climate, and its long dry spells tend \
     to be somewhat short: compare them with the record, where there is one.",
    "Un registro corto no ha visto lo peor. Según con qué frecuencia la lluvia sigue a la lluvia aquí, y cuánta cae, \
     mes por mes, un modelo sortea tantos años como se quieran. No sabe nada de un clima que cambia, y sus rachas \
     largas sin lluvia suelen ser algo cortas: compáralas con el registro, donde lo haya.",
);

/// How the model works, with its sources.
pub const HOW: Phrase = phrase!(
    "Wet and dry days follow a chain of two states, the depth of a wet day a gamma distribution, with parameters for \
     each month (Richardson 1981), by maximum likelihood; from monthly means by the relations of Geng, Penning de \
     Vries & Supit 1986. Such chains make years too much alike, so each rain year is multiplied by a number of its own \
     until the years differ as widely as they should. Of monthly means, a draw as a whole has just these. The same draw \
     gives the same years on every phone.",
    "Los días con lluvia y sin lluvia siguen una cadena de dos estados y la cantidad de un día de lluvia una \
     distribución gamma, con parámetros para cada mes (Richardson 1981), por máxima verosimilitud; con promedios \
     mensuales, por las relaciones de Geng, Penning de Vries y Supit 1986. Esas cadenas hacen los años demasiado \
     parecidos, así que cada año de lluvia se multiplica por un número propio hasta que los años difieran tanto como \
     deben. Si hay promedios mensuales, el sorteo en conjunto tiene exactamente esos. El mismo sorteo da los mismos años en todos los teléfonos.",
);

/// Button to reckon with them.
pub const RECKON_WITH_THEM: Phrase = phrase!("Reckon with 100 such years", "Calcular con 100 años así");
/// Button for other years of the same model.
pub const ANOTHER_DRAW: Phrase = phrase!("Draw other years", "Sortear otros años");
/// Button to go back to the site's own rain.
pub const BACK: Phrase = phrase!("Back to the rain as it was", "Volver a la lluvia tal como está");
/// Label of the number of years.
pub const HOW_MANY: Phrase = phrase!("How many years", "Cuántos años");
/// Label of the spread.
pub const SPREAD: Phrase =
    phrase!("How much years differ (coefficient of variation)", "Cuánto difieren los años (coeficiente de variación)");

/// What stands in the columns of the comparison.
pub const COLUMNS: [Phrase; 3] =
    [phrase!("of the years", "de los años"), phrase!("recorded", "registrados"), phrase!("generated", "generados")];

/// How many years, which draw.
pub fn which(years: u16, seed: u32) -> String {
    say!(
        "Reckoned with {years} generated years, draw {seed}.",
        "Calculado con {years} años generados, sorteo {seed}.",
        years,
        seed
    )
}

/// Where the spread of the years comes from.
pub fn spread_note(entered: bool, recorded_years: usize, least: usize) -> String {
    if entered {
        phrase!("As entered.", "Según lo que escribiste.").to_owned()
    } else if recorded_years >= least {
        say!(
            "Taken from the record's {years}, with {most} days missing in each at most.",
            "Tomado de lo que hay en el registro: {years}, con {most} días sin medir en cada uno como mucho.",
            years =
                count(recorded_years, phrase!("rain year", "año de lluvia"), phrase!("rain years", "años de lluvia")),
            most = USUAL_MISSING_DAYS
        )
    } else {
        phrase!(
            "No record of five years, the least, tells it, so 25\u{a0}% is taken: common practice, \
             no source. Humid places have about 15\u{a0}%, semi-arid ones 40\u{a0}%.",
            "Ningún registro de al menos cinco años lo dice, así que se toma \
             25\u{a0}%: práctica común, sin fuente. Los lugares húmedos tienen cerca de 15\u{a0}%, los semiáridos \
             40\u{a0}%.",
        )
        .to_owned()
    }
}

/// Title, meaning and caption of the months' rain.
pub const RAIN_BY_MONTH: [Phrase; 3] = [
    phrase!("Rain by month, beside generated", "Lluvia por mes, junto a la generada"),
    phrase!("mean rain", "lluvia promedio"),
    phrase!(
        "Bars: the rain of this site. Strokes: the generated years.",
        "Barras: la lluvia de este sitio. Trazos: los años generados.",
    ),
];
/// Title, meaning and caption of the months' wet days.
pub const WET_DAYS_BY_MONTH: [Phrase; 3] = [
    phrase!("Wet days by month, beside generated", "Días de lluvia por mes, junto a los generados"),
    phrase!("wet days", "días de lluvia"),
    phrase!(
        "Days with 1\u{a0}mm or more; of monthly means, rain days as entered.",
        "Días con 1\u{a0}mm o más; en promedios mensuales, los días de lluvia que se escribieron.",
    ),
];

/// Title of the factors for a drier future.
pub const FUTURE: Phrase = phrase!("A drier or wetter future", "Un futuro más seco o más lluvioso");
/// What they do.
pub const FUTURE_WHAT: Phrase = phrase!(
    "Each month's rain, recorded or generated, is multiplied by this. 100\u{a0}% leaves it as it is.",
    "La lluvia de cada mes, registrada o generada, se multiplica por esto. 100\u{a0}% la deja como está.",
);
/// Shifts of the whole year: what each does.
pub const SHIFTS: [(f64, Phrase); 5] = [
    (1.0, phrase!("As it was", "Como fue")),
    (0.9, phrase!("10\u{a0}% less all year", "10\u{a0}% menos todo el año")),
    (0.8, phrase!("20\u{a0}% less all year", "20\u{a0}% menos todo el año")),
    (0.7, phrase!("30\u{a0}% less all year", "30\u{a0}% menos todo el año")),
    (1.1, phrase!("10\u{a0}% more all year", "10\u{a0}% más todo el año")),
];
/// What is said where the months differ.
pub const BY_MONTH: Phrase = phrase!("Month by month", "Mes por mes");
/// Label of the shifts.
pub const WHOLE_YEAR: Phrase = phrase!("The whole year", "Todo el año");

/// The rows of the comparison that are not months: what they are called.
pub const ROWS: [Phrase; 7] = [
    phrase!("mean rain year", "año de lluvia promedio"),
    phrase!("spread of years", "variación entre años"),
    phrase!("driest rain year", "año de lluvia más seco"),
    phrase!("wettest rain year", "año de lluvia más húmedo"),
    phrase!("dry spell, middle year", "racha sin lluvia, año intermedio"),
    phrase!("dry spell, 1 year in 10", "racha sin lluvia, 1 año de cada 10"),
    phrase!("longest dry spell", "racha sin lluvia más larga"),
];

/// Days of a dry spell.
pub fn spell(days: usize) -> String {
    count(days, phrase!("day", "día"), phrase!("days", "días"))
}

/// Whether the generated dry spells are as long as the recorded.
pub fn spells_compared(recorded: &Likeness, generated: &Likeness) -> Option<String> {
    let ((_, recorded), (_, generated)) = (recorded.longest_spell?, generated.longest_spell?);
    #[expect(clippy::cast_precision_loss, reason = "days of a year")]
    let ratio = generated as f64 / recorded.max(1) as f64;
    Some(if ratio < 0.8 {
        phrase!(
            "The generated dry spells are shorter than the recorded: expect less than generated years say.",
            "Las rachas sin lluvia generadas son más cortas que las registradas: espera menos de lo que dicen los años \
             generados.",
        )
        .to_owned()
    } else if ratio > 1.25 {
        phrase!(
            "The generated dry spells are longer than the recorded: generated years are on the careful side.",
            "Las rachas sin lluvia generadas son más largas que las registradas: los años generados son más bien \
             prudentes.",
        )
        .to_owned()
    } else {
        phrase!(
            "The generated dry spells are about as long as the recorded.",
            "Las rachas sin lluvia generadas son más o menos tan largas como las registradas.",
        )
        .to_owned()
    })
}

/// What generated years say beside the site's own rain.
pub fn beside(answer: &Answer) -> String {
    let Some(good) = answer.good_years else { return super::sizing::headline(answer) };
    let mut told = say!(
        "Over {years} drawn from this rain, {well} had no dry day: a chance of a good year between {least} and {most}, as \
         far as the model is right.",
        "De {years} simulados con esta lluvia, {well} no tuvieron días de escasez: la probabilidad de un año bueno está entre \
         {least} y {most}, si el modelo acierta.",
        years = count(good.all, phrase!("year", "año"), phrase!("years", "años")),
        well = number_text(good.good),
        least = percent(good.range.0),
        most = percent(good.range.1),
    );
    let worst = answer.years.iter().map(|year| year.dry_days).max().unwrap_or(0);
    if worst > 0 {
        told.push_str(&say!(
            " The worst of them had {worst}.",
            " En el peor de ellos hubo {worst}.",
            worst = count(worst, phrase!("dry day", "día de escasez"), phrase!("dry days", "días de escasez"))
        ));
    }
    told
}

/// Why there is no model.
pub fn no_model(error: &ModelError) -> String {
    match error {
        ModelError::MonthUnmeasured { month } => say!(
            "No years can be generated: the record has no two measured days in a row in any {month}. Load a longer \
             record.",
            "No se pueden generar años: el registro no tiene dos días medidos seguidos en ningún mes de {month}. Carga \
             un registro más largo.",
            month = super::MONTH_NAMES.get(month.wrapping_sub(1)).map(|month| month.text()).unwrap_or_default(),
        ),
        ModelError::NotADepth { date, depth_mm } => super::errors::not_a_depth(*date, *depth_mm),
        ModelError::Normals(error) => super::errors::normals(error),
    }
}

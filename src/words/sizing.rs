//! Words of the sizing place: the answer first.

use chrono::{Datelike, Days};

use super::{count, day_of_year, number_text, percent, years};
use crate::engine::measures::dry_runs::DryRun;
use crate::engine::measures::years::GoodYears;
use crate::engine::question::Answer;
use crate::engine::rain::weather::Origin;
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};

/// The answer: "In 11 years of rain, the water ran out in 4; the longest dry stretch was 37 days, in 2002." Where only the
/// first fill or hauled water made it so, or where no tank would be enough, that is said with it.
pub fn headline(answer: &Answer) -> String {
    let mut told = ran_out(answer);
    if answer.ledger.loads > 0 {
        told.push_str(&say!(
            " It takes {loads} loads of hauled water a year, {worst} in the worst one.",
            " Hacen falta {loads} viajes de agua acarreada al año, y {worst} en el peor.",
            loads = loads_a_year(answer),
            worst = number_text(answer.years.iter().map(|year| year.loads).max().unwrap_or(0)),
        ));
    }
    if let Some(comes) = answer.first_fill {
        told.push_str(&say!(
            " But what the tanks held on the first day carried it: only {share} of the water wanted comes, so this can't \
             go on.",
            " Pero fue gracias a lo que los tanques tenían el primer día: solo llega el {share} del agua que se necesita, \
             así que esto no puede seguir así.",
            share = percent(comes)
        ));
    } else if answer.comes_short().is_some() && answer.comes_elsewhere() {
        told.push_str(said!(
            " Enough comes in all, but not where it is used: what one tank spills another lacks. An open valve, a trunk line or \
             a pump between them comes first, or a roof that fills the other tank.",
            " En total llega bastante, pero no adonde se usa: lo que un tanque rebosa le falta a otro. Antes hace falta una \
             válvula abierta, una tubería o una bomba entre ellos, o un techo que llene el otro tanque.",
        ));
    } else if answer.comes_short() == Some(0.0) {
        told.push_str(said!(
            " No water comes to any tank that is drawn on: a downspout, an overflow or a pump has to lead there first.",
            " No llega agua a ningún tanque del que se saque: antes tiene que llevar hasta allí una bajante, un rebose o una \
             bomba.",
        ));
    } else if let Some(comes) = answer.comes_short() {
        told.push_str(&say!(
            " No tank alone would be enough: only {share} of the water wanted comes. More roof or less use has to come first.",
            " Ningún tanque bastaría por sí solo: llega solo el {share} del agua que se necesita. Antes hace falta más techo o \
             menos uso.",
            share = percent(comes)
        ));
    }
    told
}

fn ran_out(answer: &Answer) -> String {
    let complete: Vec<_> = answer.years.iter().filter(|year| year.complete).collect();
    if answer.origin == Origin::Even {
        return match answer.longest_dry_run {
            None => phrase!(
                "With rain as even as the monthly means, the water never ran out.",
                "Con una lluvia tan pareja como los promedios mensuales, el agua nunca se acabó.",
            )
            .to_owned(),
            Some(run) => say!(
                "Even with rain as even as the monthly means, the water ran out: {days} at a stretch, from {start} on.",
                "Incluso con una lluvia tan pareja como los promedios mensuales, el agua se acabó: una racha de \
                 {days}, a partir del {start}.",
                days = count(run.days, phrase!("dry day", "día de escasez"), phrase!("dry days", "días de escasez")),
                start = day_of_year(run.start),
            ),
        };
    }
    let Some(longest) = answer.longest_dry_run else {
        return say!(
            "In {spell}, the water never ran out.",
            "En {spell}, el agua nunca se acabó.",
            spell = spell(answer, complete.len()),
        );
    };
    let failed = complete.iter().filter(|year| year.dry_days > 0).count();
    if complete.is_empty() {
        return say!(
            "In {spell}, the water ran out: {stretch}.",
            "En {spell}, el agua se acabó: {stretch}.",
            spell = spell(answer, 0),
            stretch = stretch(answer, &longest),
        );
    }
    if failed == 0 {
        return say!(
            "In {spell}, the water ran out in none of the whole years, but {stretch}.",
            "En {spell}, el agua no se acabó en ninguno de los años completos, pero {stretch}.",
            spell = spell(answer, complete.len()),
            stretch = stretch(answer, &longest),
        );
    }
    let in_years = if failed == complete.len() {
        phrase!("every year", "todos los años").to_owned()
    } else {
        say!("in {failed}", "en {failed}", failed = number_text(failed),)
    };
    say!(
        "In {spell}, the water ran out {in_years}; {stretch}.",
        "En {spell}, el agua se acabó {in_years}; {stretch}.",
        spell = spell(answer, complete.len()),
        stretch = stretch(answer, &longest),
        in_years
    )
}

fn spell(answer: &Answer, complete: usize) -> String {
    if complete == 0 {
        say!("{days} of rain", "{days} de lluvia", days = super::days(answer.series.dates.len()))
    } else if answer.origin == Origin::Generated {
        count(complete, phrase!("generated year", "año generado"), phrase!("generated years", "años generados"))
    } else {
        say!(
            "{years} of rain",
            "{years} de lluvia",
            years = count(complete, phrase!("year", "año"), phrase!("years", "años"))
        )
    }
}

fn stretch(answer: &Answer, run: &DryRun) -> String {
    if run.days >= answer.series.dates.len() {
        return phrase!("no day had all the water wanted", "ningún día hubo toda el agua que se necesita").to_owned();
    }
    let year = run.start.year();
    let last =
        run.start.checked_add_days(Days::new(run.days.saturating_sub(1) as u64)).map_or(year, |last| last.year());
    if last > year && answer.origin == Origin::Generated {
        return say!(
            "the longest dry stretch was {days}, from year {year} of them to year {last}",
            "la racha de escasez más larga fue de {days}, del año {year} al año {last}",
            days = super::days(run.days),
            year,
            last
        );
    }
    if last > year {
        return say!(
            "the longest dry stretch was {days}, from {year} to {last}",
            "la racha de escasez más larga fue de {days}, de {year} a {last}",
            days = super::days(run.days),
            year = year.to_string(),
            last = last.to_string()
        );
    }
    let year = if answer.origin == Origin::Generated {
        say!("year {year} of them", "el año {year}", year)
    } else {
        year.to_string()
    };
    say!(
        "the longest dry stretch was {days}, in {year}",
        "la racha de escasez más larga fue de {days}, en {year}",
        days = super::days(run.days),
        year
    )
}

/// How sure the share of good years is.
pub fn good_years(good: &GoodYears) -> String {
    say!(
        "{well} of {all} without a dry day. If these years are a fair sample, the chance of a good year is between \
         {least} and {most} (95\u{a0}% Wilson interval).",
        "{well} de {all} sin ningún día de escasez. Si estos años son una muestra fiel, la probabilidad de un año \
         bueno está entre {least} y {most} (intervalo de Wilson del 95\u{a0}%).",
        well = number_text(good.good),
        all = count(good.all, phrase!("whole year", "año completo"), phrase!("whole years", "años completos")),
        least = percent(good.range.0),
        most = percent(good.range.1),
    )
}

/// What is thin about the answer, if anything.
pub fn reservations(answer: &Answer) -> Vec<String> {
    let mut doubts = Vec::new();
    let complete = answer.years.iter().filter(|year| year.complete).count();
    if answer.origin == Origin::Even {
        doubts.push(super::rain::EVEN_RAIN.to_owned());
    } else if complete == 0 {
        doubts.push(
            phrase!(
                "This rain has no whole year: it says nothing of the seasons that it hasn't seen, so take no size from \
                 it. Load a longer record, or enter the twelve monthly means of the place.",
                "Esta lluvia no tiene ningún año completo: no dice nada de las estaciones que no ha visto, así que no \
                 saques de ella ningún tamaño. Carga un registro más largo, o escribe los doce promedios mensuales del \
                 lugar.",
            )
            .to_owned(),
        );
    } else if complete < 10 {
        doubts.push(say!(
            "{years} of rain is short: ten or more make a better judge. Look at what generated years say beside it.",
            "{years} de lluvia es poco: con diez o más se juzga mejor. Mira también lo que dicen los años generados.",
            years = count(complete, phrase!("year", "año"), phrase!("years", "años")),
        ));
    }
    if !answer.left_out_years.is_empty() {
        doubts.push(say!(
            "{years_were} left out for missing days: {which}. The years on either side are run as if they followed one \
             another.",
            "{years_were} por días que faltan: {which}. Los años a cada lado se calculan como si fueran seguidos.",
            years_were = count(
                answer.left_out_years.len(),
                phrase!("year was", "año quedó fuera"),
                phrase!("years were", "años quedaron fuera",)
            ),
            which = years(&answer.left_out_years),
        ));
    }
    if answer.filled_days > 0 {
        doubts.push(say!(
            "{days_were} filled from other years.",
            "{days_were} con otros años.",
            days_were = count(
                answer.filled_days,
                phrase!("missing day was", "día que falta se completó"),
                phrase!("missing days were", "días que faltan se completaron",)
            ),
        ));
    }
    if answer.origin == Origin::Generated {
        doubts.push(
            phrase!(
                "The range of good years is that of the draw alone: so many years are drawn from few that were measured, or from \
                 means, and can all be wrong in the same way.",
                "El rango de años buenos es solo el del sorteo: tantos años salen de unos pocos medidos, o de promedios, y pueden \
                 estar todos equivocados del mismo modo.",
            )
            .to_owned(),
        );
    }
    doubts
}

/// Reliability in volume and time.
pub fn reliability(answer: &Answer) -> String {
    say!(
        "{water} of the water wanted was there (volumetric reliability); {days} of days were not dry (time \
         reliability).",
        "Hubo {water} del agua que se necesitaba (confiabilidad volumétrica); no hubo escasez en {days} de los días \
         (confiabilidad temporal).",
        water = percent(answer.reliability.volumetric),
        days = percent(answer.reliability.time),
    )
}

/// Resilience and vulnerability.
pub fn resilience(answer: &Answer, units: &Units) -> Option<String> {
    let both = answer.resilience?;
    Some(say!(
        "Once dry, the next day is a good one with a chance of {resilience} (resilience); the worst day of a dry \
         stretch lacks {vulnerability} on average (vulnerability). Both after Hashimoto and others, 1982.",
        "Tras un día de escasez, el siguiente es bueno con una probabilidad de {resilience} (resiliencia); en el peor \
         día de una racha de escasez faltan {vulnerability} en promedio (vulnerabilidad). Ambas según Hashimoto y \
         otros, 1982.",
        resilience = percent(both.resilience),
        vulnerability = shown::figure(both.vulnerability_l, Kind::Volume, units),
    ))
}

/// What a diverter did.
pub fn diverter(name: &str, answer: &Answer, feed: usize, units: &Units) -> Option<String> {
    let tally = answer.ledger.flushes.get(feed)?;
    if tally.storms == 0 {
        return Some(say!("{name}: no water reached its diverter.", "{name}: no llegó agua a su desviador.", name));
    }
    #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
    let full = tally.found_full as f64 / tally.storms as f64;
    let per_year = super::per_year(answer.series.dates.len());
    let mut text = say!(
        "{name}: its diverter kept back {kept} a year, {dripped} of it dripping away while it rained",
        "{name}: su desviador retuvo {kept} al año; de eso, {dripped} por goteo mientras llovía",
        kept = shown::figure(tally.diverted_l * per_year, Kind::Volume, units),
        dripped = shown::figure(tally.dripped_l * per_year, Kind::Volume, units),
        name
    );
    text.push_str(&if tally.found_full == 0 {
        phrase!("; no storm found it more than half full.", "; ninguna tormenta lo encontró más que medio lleno.")
            .to_owned()
    } else {
        say!(
            "; {share} of storms found it still more than half full, so that dirty water went to the tank.",
            "; en {share} de las tormentas seguía más que medio lleno, así que el agua sucia pasó al tanque.",
            share = percent(full),
        )
    });
    Some(text)
}

/// Loads of an average year.
fn loads_a_year(answer: &Answer) -> String {
    #[expect(clippy::cast_precision_loss, reason = "loads of a few centuries")]
    let loads = answer.ledger.loads as f64 * super::per_year(answer.series.dates.len());
    shown::significant(loads, 2)
}

/// Hauled water over the run.
pub fn hauled(answer: &Answer, units: &Units) -> Option<String> {
    if answer.ledger.loads == 0 {
        return None;
    }
    let per_year = super::per_year(answer.series.dates.len());
    Some(say!(
        "Hauled water: {loads} loads a year, {volume}; at your price for a load, {cost} a year.",
        "Agua acarreada: {loads} viajes al año, {volume}; a tu precio por viaje, {cost} al año.",
        loads = loads_a_year(answer),
        volume = shown::figure(answer.total.hauled_l * per_year, Kind::Volume, units),
        cost = shown::figure(answer.ledger.hauling_cost * per_year, Kind::Money, units),
    ))
}

/// Capacity that can't be filled because a joined tank spills first.
pub fn stranded(name: &str, litres: f64, lowest: &str, units: &Units) -> String {
    say!(
        "{volume} of {name} can never fill: joined by the trunk line, the store overflows at {lowest} first.",
        "Nunca se pueden llenar {volume} de {name}: con la tubería de unión, el depósito rebosa antes por \
         {lowest}.",
        volume = shown::figure(litres, Kind::Volume, units),
        name,
        lowest
    )
}

/// Title of the rule for the order of events in a day.
pub const RULE: Phrase = phrase!("Order within a day", "Orden dentro de un día");
/// The two published rules, by θ = 0 and θ = 1.
pub const RULES: [(f64, Phrase); 2] = [
    (0.0, phrase!("Yield after spillage (cautious)", "Uso después del rebose (prudente)")),
    (1.0, phrase!("Yield before spillage", "Uso antes del rebose")),
];

/// A dry stretch, for a table.
pub fn dry_stretch(run: Option<&DryRun>, year: i32) -> String {
    let Some(run) = run else { return "—".to_owned() };
    let (days, start) = (super::days(run.days), day_of_year(run.start));
    if run.start.year() < year {
        say!("{days}, from the {start} before", "{days}, desde el {start} anterior", days, start)
    } else {
        say!("{days}, from {start}", "{days}, desde el {start}", days, start)
    }
}

/// How the balance is reckoned, with its sources.
pub const HOW: Phrase = phrase!(
    "Day by day through the whole record: rain less wetting, times area and runoff coefficient; gutters and screens; \
     first flush, draining by Torricelli; tanks joined at one level; uses in their order. The order within a day \
     follows Jenkins and others 1978 and Fewkes & Butler 2000. A dry day is one on which a demand of the house is not \
     met in full. What is tried begins with the water that the house has on the first day, so that a larger tank \
     gains nothing by having been full then.",
    "Día por día por todo el registro: lluvia menos mojado inicial, por área y por coeficiente de escorrentía; \
     canaletas y mallas; primeras aguas, que se vacían según Torricelli; tanques unidos a un mismo nivel; usos en su \
     orden. El orden dentro de un día sigue a Jenkins y otros 1978 y a Fewkes y Butler 2000. Un día de escasez es uno \
     en que una demanda de la casa no se cubre por completo. Lo que se prueba empieza con el agua que la casa tiene el \
     primer día; así un tanque más grande no gana nada por haber estado lleno entonces.",
);

/// Whether all water is accounted for, by the share of what flowed that is left over.
pub fn accounted(residual: f64) -> String {
    const CLOSES: f64 = 1e-9;
    let left_over = if residual.abs() <= CLOSES {
        phrase!("less than a billionth of what flowed", "menos de una milmillonésima de lo que fluyó").to_owned()
    } else {
        say!(
            "{share} of what flowed, which is a fault of the program: please tell",
            "{share} de lo que fluyó, lo cual es un error del programa: avísanos, por favor",
            share = percent(residual.abs()),
        )
    };
    say!(
        "All water is accounted for: what came in, less what went out, less the change in store leaves {left_over}.",
        "Toda el agua está contada: lo que entró, menos lo que salió, menos el cambio de lo almacenado, deja {left_over}.",
        left_over
    )
}

/// In the place of an answer, without rain.
pub const NO_RAIN: Phrase =
    phrase!("No rain yet. Give this site its rain first.", "Aún no hay lluvia. Dale primero su lluvia a este sitio.");
/// In the place of an answer, of a house with findings.
pub const CANNOT_RUN: Phrase = phrase!(
    "This house can't run yet. What is missing is listed at the top of House.",
    "Esta casa aún no puede funcionar. Lo que falta se lista al principio de «Casa».",
);
/// In the place of an answer, of a trial with findings.
pub const TRIAL_CANNOT_RUN: Phrase =
    phrase!("With these changes the house can't run.", "Con estos cambios la casa no puede funcionar.");

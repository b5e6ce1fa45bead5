//! Words of what the readings say.

use chrono::{Days, NaiveDate};

use super::{count, date, number_text, percent};
use crate::engine::learning::calls::{Shows, shown_now};
use crate::engine::learning::fit::{Estimate, FEWEST_SPANS};
use crate::engine::learning::lesson::{Lesson, MORE_THAN_ALL};
use crate::engine::learning::watch::{Alarm, NORMAL_SPANS};
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};

/// The part's heading.
pub const TITLE: Phrase = phrase!("What the readings say", "Lo que dicen las lecturas");

/// What would tell a leak from use.
const APART: Phrase = phrase!(
    "A leak can't be told from use yet. What would tell: a meter of all that is drawn, read whenever the level is; or the \
     level before and after dry nights in which nobody draws water; or before and after days away.",
    "Todavía no se puede distinguir una fuga del uso. Lo que lo diría: un medidor de toda el agua que se saca, leído \
     cada vez que se lee el nivel; o el nivel antes y después de noches sin lluvia en que nadie saca agua; o antes y \
     después de días fuera de casa.",
);

fn ranged(value: &str, low: &str, high: &str) -> String {
    say!("{value} ({low} to {high})", "{value} (de {low} a {high})", value, low, high)
}

/// Factors, which may be a little less or more than 1: "100 % (86 % to 114 %)".
fn range(estimate: &Estimate) -> String {
    let percent = |factor: f64| format!("{}\u{a0}%", (factor.max(0.0) * 100.0).round());
    let (low, high) = (estimate.value - estimate.half_width, estimate.value + estimate.half_width);
    ranged(&percent(estimate.value), &percent(low), &percent(high))
}

fn litres(estimate: &Estimate, units: &Units) -> String {
    let flow = |litres: f64| shown::figure(litres.max(0.0), Kind::Flow, units);
    let (low, high) = (estimate.value - estimate.half_width, estimate.value + estimate.half_width);
    ranged(&flow(estimate.value), &flow(low), &flow(high))
}

fn on(first: NaiveDate, day: usize) -> String {
    u64::try_from(day).ok().and_then(|day| first.checked_add_days(Days::new(day))).map(date).unwrap_or_default()
}

/// What readings show, as part of a sentence.
pub fn shown_by(shows: Shows) -> &'static str {
    match shows {
        Shows::LessCaught => said!("less of the rain comes than before", "llega menos de la lluvia que antes"),
        Shows::MoreUsed => said!("more water goes than before", "se va más agua que antes"),
        Shows::Either => said!(
            "less of the rain comes than before, or more water goes",
            "llega menos de la lluvia que antes, o se va más agua"
        ),
        Shows::Leak => said!("water goes that nobody draws", "se va agua que nadie saca"),
    }
}

/// Where there is no normal yet.
const UNACCOUNTED: Phrase = phrase!(
    "Rain fell in the last four weeks and the level didn't rise as it should: look at leaf screens and diverters, or \
     something draws more than is entered.",
    "En las últimas cuatro semanas llovió y el nivel no subió como debía: mira las mallas para hojas y los desviadores, \
     o algo gasta más de lo que se indicó.",
);

/// That work was done which may have mended what the readings show.
pub fn worked(day: NaiveDate) -> String {
    say!(
        "Work that may have mended it was written down on {day}: the next readings show whether it did.",
        "El {day} se anotó un trabajo que puede haberlo remediado: las próximas lecturas dirán si fue así.",
        day = super::date(day)
    )
}

/// What asks for attention, in lines for the house.
pub fn in_lines(lesson: &Lesson) -> Vec<String> {
    let line = |(shows, _): (Shows, NaiveDate)| {
        say!("The readings warn: {shown}.", "Las lecturas avisan: {shown}.", shown = shown_by(shows))
    };
    let mut lines: Vec<String> = shown_now(lesson).into_iter().map(line).collect();
    lines.extend(lesson.unaccounted.then(|| UNACCOUNTED.to_owned()));
    // The weeks ahead begin with the last reading; what is told already may be why it lies so low.
    if lines.is_empty() {
        let last = odd(lesson).into_iter().zip(&lesson.odd).filter(|(_, day)| **day == lesson.last);
        lines.extend(last.map(|(line, _)| line));
    }
    lines
}

/// What asks for attention: capture that fell, use that rose, a leak.
pub fn alarms(lesson: &Lesson, units: &Units) -> Vec<String> {
    let alarm = |alarm: &Alarm| match alarm {
        Alarm::CaptureFallen { by, since } => say!(
            "Since {since} less of the rain comes than before: about {by} is missing. Look at leaf screens and gutters, and \
             whether a diverter is stuck open.",
            "Desde el {since} llega menos de la lluvia que antes: falta cerca de {by}. Mira las mallas para hojas y \
             las canaletas, y si algún desviador se quedó abierto.",
            since = on(lesson.first, *since),
            by = percent(*by)
        ),
        Alarm::UseRisen { by, since } => say!(
            "Since {since} more water goes than before: about {by} more. If nobody uses more, look for a leak: read the \
             level at night and again in the morning, with nobody drawing water in between.",
            "Desde el {since} se va más agua que antes: cerca de {by} más. Si nadie usa más, busca una fuga: lee el \
             nivel de noche y otra vez por la mañana, sin que nadie saque agua entre tanto.",
            since = on(lesson.first, *since),
            by = percent(*by)
        ),
        Alarm::Either { missing, more, since } => say!(
            "Since {since} either less of the rain comes than before (about {missing} less) or more water goes (about \
             {more} more): the readings can't tell which yet. To tell: the level before and after the next rain shows \
             what comes; the level through dry days shows what goes.",
            "Desde el {since}, o llega menos de la lluvia que antes (falta cerca de {missing}) o se va más agua (cerca \
             de {more} más): las lecturas todavía no dicen cuál. Para saberlo: el nivel antes y después de la próxima \
             lluvia muestra lo que llega; el nivel durante días secos muestra lo que se va.",
            since = on(lesson.first, *since),
            missing = percent(*missing),
            more = percent(*more)
        ),
    };
    let mut lines: Vec<String> = lesson.alarms.iter().flatten().map(alarm).collect();
    lines.extend(lesson.unaccounted.then(|| UNACCOUNTED.to_owned()));
    lines.extend(lesson.leak().map(|leak| {
        say!(
            "Water goes that nobody draws: {leak}. Look for drips at joints, valves and taps, and at the toilet.",
            "Se va agua que nadie saca: {leak}. Busca goteos en uniones, válvulas y grifos, y en el inodoro.",
            leak = litres(&leak, units)
        )
    }));
    lines
}

/// Readings that can't be right.
pub fn odd(lesson: &Lesson) -> Vec<String> {
    let odd = |day: &NaiveDate| {
        if lesson.newest_low == Some(*day) {
            return say!(
                "The level of {day} lies far below what the days before it lead to. Either it was mistyped, or water is \
                 going: read it again.",
                "El nivel del {day} está muy por debajo de lo que anuncian los días anteriores. O se escribió mal, o se \
                 está yendo agua: léelo otra vez.",
                day = date(*day)
            );
        }
        say!(
            "The level of {day} doesn't fit the days around it. Was it mistyped?",
            "El nivel del {day} no encaja con los días de alrededor. ¿Se escribió mal?",
            day = date(*day)
        )
    };
    lesson.odd.iter().map(odd).collect()
}

fn tests_of(number: usize) -> String {
    count(number, phrase!("test", "prueba"), phrase!("tests", "pruebas"))
}

fn known_stretches(number: usize) -> String {
    say!("{stretches} whose draw is known", "{stretches} con consumo conocido", stretches = stretches(number))
}

fn stretches(number: usize) -> String {
    count(number, phrase!("stretch", "tramo"), phrase!("stretches", "tramos"))
}

/// What the readings say of capture and use.
pub fn sentences(lesson: &Lesson, units: &Units) -> Vec<String> {
    let Some(fit) = &lesson.fit else {
        return vec![say!(
            "Too few readings yet: it takes {levels} levels of one tank, with the rain of every day between them and the \
             tank neither full nor empty.",
            "Todavía hay muy pocas lecturas: hacen falta {levels} niveles de un mismo tanque, con la lluvia de cada día \
             entre ellos y el tanque ni lleno ni vacío.",
            levels = number_text(FEWEST_SPANS + 1)
        )];
    };
    let mut lines = vec![
        match &fit.capture {
            Some(capture) if capture.value - capture.half_width > MORE_THAN_ALL => say!(
                "By the readings more comes than the roof as entered can give: {share} of it. Was a tank, a roof or the gauge \
                 changed, or did water come that wasn't written down?",
                "Según las lecturas llega más de lo que puede dar el techo indicado: {share}. ¿Se cambió un tanque, un techo o \
                 el pluviómetro, o llegó agua que no se anotó?",
                share = range(capture)
            ),
            Some(capture) => say!(
                "Gutters and screens bring {share} of what is entered for them.",
                "Las canaletas y mallas traen {share} de lo que se indicó para ellas.",
                share = range(capture)
            ),
            None if fit.scattered[0] => phrase!(
                "How much of the rain is caught can't be told yet: there are readings enough, but they don't agree with \
                 each other. Look for levels or rain that were mistyped, rain that wasn't measured at the house, or water \
                 that came or went without being written down.",
                "Todavía no se puede decir cuánta de la lluvia se capta: hay lecturas suficientes, pero no concuerdan \
                 entre sí. Busca niveles o lluvias mal escritos, lluvia que no se midió en la casa, o agua que entró o \
                 salió sin anotarse.",
            )
            .to_owned(),
            None => phrase!(
                "How much of the rain is caught can't be told yet: it takes levels before and after rain, with room left in \
                 the tank.",
                "Todavía no se puede decir cuánta de la lluvia se capta: hacen falta niveles antes y después de \
                 llover, con espacio libre en el tanque.",
            )
            .to_owned(),
        },
        match &fit.uses {
            Some(uses) if fit.leak_l.is_some() => say!(
                "The house uses {share} of what is entered.",
                "La casa usa {share} de lo que se indicó.",
                share = range(uses)
            ),
            Some(uses) => say!(
                "The house uses {share} of what is entered, leaks included.",
                "La casa usa {share} de lo que se indicó, fugas incluidas.",
                share = range(uses)
            ),
            None if fit.scattered[1] => phrase!(
                "How much is used can't be told yet: there are readings enough, but they don't agree with each other. \
                 Something may have changed: guests, a leak, a clogged screen.",
                "Todavía no se puede decir cuánta se usa: hay lecturas suficientes, pero no concuerdan entre sí. Puede que \
                 algo haya cambiado: visitas, una fuga, una malla tapada.",
            )
            .to_owned(),
            None => phrase!(
                "How much is used can't be told yet: it takes levels through dry weeks.",
                "Todavía no se puede decir cuánta se usa: hacen falta niveles durante semanas sin lluvia.",
            )
            .to_owned(),
        },
    ];
    lines.push(match &fit.leak_l {
        Some(leak) => say!(
            "Leaks take {leak}, by {what}.",
            "Las fugas se llevan {leak}, según {what}.",
            leak = litres(leak, units),
            what = match fit.apart {
                (tests, 0) => tests_of(tests),
                (0, known) => known_stretches(known),
                (tests, known) => say!(
                    "{tests} and {known}",
                    "{tests} y {known}",
                    tests = tests_of(tests),
                    known = known_stretches(known)
                ),
            }
        ),
        None if fit.apart.0 > 0 => say!(
            "By {tests} a leak can't be told from use yet: after three or more that agree it can.",
            "Con {tests} todavía no se puede distinguir una fuga del uso: tras tres o más que concuerden, sí.",
            tests = tests_of(fit.apart.0)
        ),
        None => APART.to_owned(),
    });
    let (stretches, last) = (stretches(fit.spans), date(lesson.last));
    let anything_told = fit.capture.is_some() || fit.uses.is_some() || fit.leak_l.is_some();
    let rests = match lesson.since {
        Some(since) => say!(
            "By {stretches} from one reading to the next since {since}, when something changed, up to {last}",
            "Según {stretches} de una lectura a la siguiente desde el {since}, cuando algo cambió, hasta el {last}",
            stretches,
            since = date(since),
            last
        ),
        None => say!(
            "By {stretches} from one reading to the next, up to {last}",
            "Según {stretches} de una lectura a la siguiente, hasta el {last}",
            stretches,
            last
        ),
    };
    // A change within the days makes one number of two.
    let vouched = match (&lesson.alarms, lesson.since) {
        _ if !anything_told => "",
        (_, Some(_)) => said!(
            "; how often ranges of so few days hold the truth isn't known",
            "; no se sabe cuántas veces aciertan rangos de tan pocos días"
        ),
        (None, _) => said!(
            "; the ranges hold the truth nine times in ten if nothing changed meanwhile, which can't be told yet",
            "; los rangos aciertan nueve veces de cada diez si nada cambió entre tanto, lo que todavía no se puede decir"
        ),
        (Some(alarms), None) if alarms.is_empty() => {
            said!("; the ranges hold the truth nine times in ten", "; los rangos aciertan nueve veces de cada diez")
        }
        _ => said!(
            "; something changed meanwhile, so that what holds today may lie outside the ranges",
            "; algo cambió entre tanto, así que lo que vale hoy puede quedar fuera de los rangos"
        ),
    };
    lines.push(format!("{rests}{vouched}."));
    if fit.at_least > 0 {
        let ended = count(
            fit.at_least,
            phrase!("more stretch", "tramo más terminó con el tanque lleno hasta el borde y solo cuenta"),
            phrase!("more stretches", "tramos más terminaron con el tanque lleno hasta el borde y solo cuentan"),
        );
        lines.push(say!("{ended} ended brim-full and count as “at least” only.", "{ended} como «al menos».", ended));
    }
    lines.push(match &lesson.alarms {
        None => say!(
            "Whether the last weeks are unlike the weeks before can be told once the earlier half of the diary holds \
                 {needed} with the tank neither full nor empty: after some five months of weekly levels.",
            "Si las últimas semanas son distintas de las de antes se podrá decir cuando la primera mitad del diario \
                 tenga {needed} con el tanque ni lleno ni vacío: tras unos cinco meses de niveles semanales.",
            needed = self::stretches(NORMAL_SPANS)
        ),
        Some(alarms) if alarms.is_empty() => phrase!(
            "The readings of the last weeks tell of no change yet; a screen that clogs shows only after a few rains.",
            "Las lecturas de las últimas semanas no indican ningún cambio todavía; una malla que se tapa solo se nota \
                 tras unas cuantas lluvias.",
        )
        .to_owned(),
        Some(_) => phrase!(
            "The last weeks are compared with the time before them.",
            "Las últimas semanas se comparan con el tiempo anterior.",
        )
        .to_owned(),
    });
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::learning::fit::Fit;
    use crate::engine::learning::spans::Factors;

    fn told(scattered: [bool; 2], capture: Option<Estimate>) -> String {
        let fit = Fit {
            capture,
            uses: None,
            scattered,
            leak_l: None,
            apart: (0, 0),
            factors: Factors::ENTERED,
            spans: 9,
            at_least: 0,
            errors: [0.0; 2],
            spread: 1.0,
            odd: Vec::new(),
        };
        sentences(&Lesson { fit: Some(fit), alarms: Some(Vec::new()), ..Lesson::default() }, &Units::default())
            .join("\n")
    }

    #[test]
    fn ranges_are_vouched_for_only_where_one_is_told() {
        const NINE: &str = "nine times in ten";
        assert!(!told([false; 2], None).contains(NINE));
        assert!(told([false; 2], Some(Estimate { value: 0.9, half_width: 0.1 })).contains(NINE));
    }

    #[test]
    fn a_factor_beside_one_is_told_as_a_number() {
        let near = range(&Estimate { value: 0.998, half_width: 0.14 });
        assert_eq!(near, "100\u{a0}% (86\u{a0}% to 114\u{a0}%)");
        assert!(range(&Estimate { value: 0.1, half_width: 0.2 }).contains("(0\u{a0}% to 30"));
    }

    #[test]
    fn the_reason_given_is_the_one_that_holds() {
        const LACKING: [&str; 2] = ["levels before and after rain", "levels through dry weeks"];
        let lacking = told([false; 2], None);
        assert!(LACKING.iter().all(|reason| lacking.contains(reason)) && !lacking.contains("agree"), "{lacking}");
        let scattered = told([true; 2], None);
        assert!(!LACKING.iter().any(|reason| scattered.contains(reason)), "{scattered}");
        assert_eq!(scattered.matches("they don't agree with each other").count(), 2, "{scattered}");
    }
}

//! Words of the rain place.

use super::count;
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::household::USUAL_MISSING_DAYS;
use crate::site::rain::MissingDays;
use chrono::NaiveDate;

/// Title.
pub const TITLE: Phrase = phrase!("Rain", "Lluvia");
/// What to do when there is none.
pub const NONE: Phrase = phrase!(
    "This site has no rain yet. Give it the longest daily record of a gauge nearby, or twelve monthly means if that is \
     all there is.",
    "Este sitio todavía no tiene lluvia. Dale el registro diario más largo de un pluviómetro cercano, o doce promedios \
     mensuales si no hay más que eso.",
);
/// Why even rain is not like real rain.
pub const EVEN_RAIN: Phrase = phrase!(
    "Twelve means make every year alike, with equal rain days evenly spaced. Real years are rougher: dry spells are \
     longer and bad years come. Expect less than this says.",
    "Con doce promedios todos los años salen iguales, con días de lluvia iguales y a espacios iguales. Los años de \
     verdad son más duros: las rachas sin lluvia son más largas y llegan años malos. Espera menos de lo que dice esto.",
);
/// How missing days are treated.
pub const MISSING_DAYS: Phrase = phrase!("Days that were not measured", "Días que no se midieron");

/// A treatment of missing days.
pub fn missing_days(treatment: MissingDays) -> String {
    match treatment {
        MissingDays::LeaveOutYears { with_more_than } => {
            say!(
                "Leave out years that lack more than {with_more_than} days; fill the rest",
                "Dejar fuera los años en que faltan más de {with_more_than} días; completar el resto",
                with_more_than
            )
        }
        MissingDays::Fill => {
            phrase!("Fill all from the same days of other years", "Completar todos con los mismos días de otros años")
                .to_owned()
        }
    }
}

/// Rain measured day by day.
pub const DAILY_RECORD: Phrase = phrase!("Daily record", "Registro diario");
/// Twelve means.
pub const MONTHLY_MEANS: Phrase = phrase!("Monthly means", "Promedios mensuales");

/// That the site has it now.
pub const KEPT: Phrase = phrase!("The rain is kept with this site.", "La lluvia queda guardada con este sitio.");
/// The same, where the record takes the place of years that were generated for want of one.
pub const KEPT_INSTEAD: Phrase = phrase!(
    "The record is kept with this site, and the house is reckoned with it now, no longer with generated years.",
    "El registro queda guardado con este sitio, y la casa se calcula ahora con él, ya no con años generados.",
);
/// That the site has none any more.
pub const REMOVED: Phrase = phrase!("The rain of this site is removed.", "Se quitó la lluvia de este sitio.");
/// Which files can be read.
pub const WHICH_FILES: Phrase = phrase!(
    "CSV with a date and a depth in each row, or a GHCN-Daily station file.",
    "CSV con una fecha y una cantidad de lluvia en cada fila, o un archivo de estación GHCN-Daily.",
);
/// What may be left out beside monthly means.
pub const RAIN_DAYS_MAY_LACK: Phrase = phrase!(
    "Rain days may stay empty; fill in all twelve or none.",
    "Los días de lluvia pueden quedar vacíos; llena los doce o ninguno.",
);
/// The months whose mean is still empty, where some are and some not.
pub fn months_lack(totals_mm: &[Option<f64>; 12]) -> String {
    let names = super::months().into_iter().zip(totals_mm);
    let lacking: Vec<String> = names.filter(|(_, mm)| mm.is_none()).map(|(name, _)| (*name).to_owned()).collect();
    if matches!(lacking.len(), 0 | 12) {
        return String::new();
    }
    say!("Still empty: {months}.", "Aún vacíos: {months}.", months = super::list(&lacking))
}

/// Of a record that waits.
pub const NOT_KEPT_YET: Phrase = phrase!("Nothing is kept until you say so.", "Nada se guarda hasta que tú lo digas.");
/// What a dry spell is.
pub const DRY_SPELL_IS: Phrase =
    phrase!("Days in a row with less than 1\u{a0}mm.", "Días seguidos con menos de 1\u{a0}mm.");

/// The rain of a mean year in mm, and of how many calendar years; none where each lacks too many days.
pub fn mean_year(mean: Option<(f64, usize)>, units: &Units) -> String {
    match mean {
        Some((mm, years)) => say!(
            "A mean year has {depth} of rain, by {years} with {most} days missing in each at most.",
            "Un año promedio tiene {depth} de lluvia, según {years} con {most} días sin medir en cada uno como mucho.",
            depth = shown::figure(mm, Kind::Depth, units),
            years = super::count(
                years,
                phrase!("calendar year", "año calendario"),
                phrase!("calendar years", "años calendario")
            ),
            most = USUAL_MISSING_DAYS
        ),
        None => say!(
            "Every calendar year lacks more than {most} days.",
            "A todos los años calendario les faltan más de {most} días.",
            most = USUAL_MISSING_DAYS
        ),
    }
}

/// What twelve monthly means come to in a year, in mm.
pub fn means_come_to(mm: f64, units: &Units) -> String {
    say!(
        "These means come to {depth} of rain a year.",
        "Estos promedios suman {depth} al año.",
        depth = shown::figure(mm, Kind::Depth, units)
    )
}

/// The doubt about means of a year, in mm, that hardly any place has: most likely they were typed in the other unit. Beyond
/// 60 and 4,000 mm a year lie true deserts and a few wet coasts (common practice, no source).
pub fn means_doubt(mm: f64, units: &Units) -> Option<String> {
    let usual = (60.0..=4_000.0).contains(&mm);
    (!usual).then(|| {
        say!(
            "{year} Few places on earth have such a year: were they in another unit? Then write mm or in behind each.",
            "{year} Pocos lugares de la Tierra tienen un año así: ¿estaban en otra unidad? Entonces escribe mm o in detrás de \
             cada uno.",
            year = means_come_to(mm, units)
        )
    })
}

/// The wettest day, with its rain in mm; to go after another sentence.
pub fn wettest(date: NaiveDate, mm: f64, units: &Units) -> String {
    say!(
        " The wettest day had {depth}, on {date}.",
        " El día más lluvioso tuvo {depth}, el {date}.",
        depth = shown::figure(mm, Kind::Depth, units),
        date = super::date(date)
    )
}

/// A record from its first day to its last, with so many days missing, and sentences about it.
pub fn record((first, last): (NaiveDate, Option<NaiveDate>), missing: usize, more: &str) -> String {
    let missing = match missing {
        0 => phrase!("no day missing", "sin días faltantes").to_owned(),
        _ => count(missing, phrase!("day missing", "día faltante"), phrase!("days missing", "días faltantes")),
    };
    say!(
        "{first} to {last}, {missing}. {more}",
        "Del {first} al {last}, {missing}. {more}",
        first = super::date(first),
        last = last.map(super::date).unwrap_or_default(),
        missing,
        more
    )
}

/// A span of days.
pub fn span(first: NaiveDate, last: NaiveDate) -> String {
    say!("{first} to {last}", "del {first} al {last}", first = super::date(first), last = super::date(last))
}

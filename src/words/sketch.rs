//! Words of the sketch.

use super::{count, percent};
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::feed::Feed;
use crate::site::rain::YearTotal;
use crate::site::roof::RoofSection;
use crate::site::wanted::Wanted;

/// Title.
pub const TITLE: Phrase = phrase!("Sketch a house", "Bosquejar una casa");
/// How to.
pub const LEAD: Phrase = phrase!(
    "Drag, or type with or without a unit: 15\u{a0}m, 1,600 sq ft, 5000\u{a0}gal. Everything can be refined later.",
    "Arrastra, o escribe con o sin unidad: 15\u{a0}m, 1600 ft², 5000\u{a0}gal. Después se puede afinar todo.",
);
/// Where twelve typed means come from.
pub const MEANS_SOURCE: Phrase = phrase!("entered by hand", "escritos a mano");
/// Label of the rain.
pub const RAIN: Phrase = phrase!("Rain of the place", "Lluvia del lugar");
/// No rain yet.
pub const NO_RAIN: Phrase = phrase!("Choose the rain", "Elige la lluvia");
/// Twelve means.
pub const TWELVE: Phrase = phrase!("Twelve monthly means", "Doce promedios mensuales");
/// A year's total.
pub const YEAR: Phrase = phrase!("A year's total", "El total de un año");
/// Label of the total.
pub const YEAR_TOTAL: Phrase = phrase!("Rain in a year", "Lluvia en un año");
/// Labels of the first and the last month in which most of it falls.
pub const MOST_FALLS: [Phrase; 2] =
    [phrase!("Most of it falls from", "La mayor parte cae desde"), phrase!("until", "hasta")];
/// No month is chosen yet.
pub const NO_MONTH: Phrase = phrase!("Choose", "Elegir");
/// What to choose where there is no dry season.
pub const ALL_MONTHS: Phrase = phrase!(
    "January to December where all months are alike.",
    "De enero a diciembre donde todos los meses son parecidos."
);
/// A file.
pub const RECORD: Phrase = phrase!("A daily record from a file", "Un registro diario de un archivo");
/// What is wanted before there is an answer.
pub const NO_ANSWER: Phrase = phrase!(
    "Give the place's rain below, and the answer stands here.",
    "Indica abajo la lluvia del lugar, y la respuesta aparece aquí.",
);
/// How the run begins.
pub const BEGINS_FULL: Phrase = phrase!(
    "Counted from a full tank on the first day: where the rain is short, a larger tank looks better by that water.",
    "Contado desde un tanque lleno el primer día: con pocos años de lluvia, un tanque más grande parece mejor por esa agua.",
);
/// How the size is found.
pub const SIZE: Phrase = phrase!(
    "The size is told from yield before spillage to yield after; each begins with what twenty years of this rain leave in \
     it. Few years, or generated ones, can be out by half or twice: where water matters, take the larger.",
    "El tamaño se dice entre el uso antes del rebose y el uso después; cada uno empieza con lo que le dejan veinte años de \
     esta lluvia. Con pocos años, o generados, puede salir la mitad o el doble: donde el agua importa, toma el mayor.",
);
/// While it is sought.
pub const SIZE_SOUGHT: Phrase = phrase!("The size that does it: reckoning.", "El tamaño que basta: calculando.");
/// Takes the tank that was found.
pub const TAKE_SIZE: Phrase = phrase!("Take the size that does it", "Usar el tamaño que basta");
/// How twelve means are run.
pub const GENERATED: Phrase = phrase!(
    "Fifty years drawn from these means, with usual numbers of rain days and a usual spread of years: a rough guide \
     until there is a daily record.",
    "Cincuenta años sorteados de estos promedios, con los días de lluvia y la variación entre años usuales: una guía \
     aproximada hasta que haya un registro diario.",
);

/// What a sketch takes for granted of its roof and downspout.
pub fn taken_for_granted(section: &RoofSection, feed: &Feed, units: &Units) -> Option<String> {
    Some(say!(
        "Taken for granted: each day of rain wets the roof with {wets}, {runs} of the rest runs off, gutters catch {share} of \
         that, and a diverter keeps a first flush of {volume} and lets more drip away while it rains. The house can be kept and each of \
         them changed.",
        "Se da por supuesto: cada día de lluvia moja el techo con {wets}, del resto escurre el {runs}, las canaletas captan de \
         eso el {share}, y un desviador se queda con {volume} de primeras aguas y deja gotear más mientras llueve. Puedes guardar la \
         casa y cambiar cada cosa.",
        wets = shown::figure(section.wetting_loss.get(), Kind::Depth, units),
        runs = percent(section.runoff_coefficient.get()),
        share = percent(feed.capture.get()),
        volume = shown::figure(feed.diverter.as_ref()?.volume.get(), Kind::Volume, units)
    ))
}

/// What falls on the roof and what of it comes to the tank, both in L over so many days, under so many mm of rain in all.
pub fn reaches_tank([falls_l, came_l]: [f64; 2], rain_mm: f64, days: usize, units: &Units) -> String {
    let a_year = |litres: f64| shown::figure(litres * super::per_year(days), Kind::Volume, units);
    say!(
        "Of {falls} that fall on the roof a year ({rain} of rain in the mean of these years), {came} comes to the tank. The \
         rest wets the roof, runs past the gutters or goes with the first flush.",
        "De {falls} que caen sobre el techo al año ({rain} de lluvia en el promedio de estos años), al tanque llegan {came}. \
         Lo demás moja el techo, se escapa de las canaletas o se va con las primeras aguas.",
        falls = a_year(falls_l),
        came = a_year(came_l),
        rain = shown::figure(rain_mm * super::per_year(days), Kind::Depth, units),
    )
}

/// The range of the answer, in short.
pub fn chance(range: (f64, f64)) -> String {
    say!(
        "Chance of a year without a dry day: {least} to {most}.",
        "Probabilidad de un año sin días de escasez: de {least} a {most}.",
        least = percent(range.0),
        most = percent(range.1),
    )
}

/// The least tank, from one order within a day to the other, both in L, to two digits.
pub fn tank_wanted(least_l: f64, most_l: f64, wanted: Wanted, units: &Units) -> String {
    let size = |litres: f64| shown::figure(litres, Kind::Volume, units);
    let sizes = super::size::between(size(least_l), size(most_l));
    say!(
        "{wanted}: a tank of about {sizes}.",
        "{wanted}: un tanque de unos {sizes}.",
        wanted = super::size::wanted(wanted),
        sizes
    )
}

/// No tank does it.
pub fn no_tank(wanted: Wanted) -> String {
    say!(
        "{wanted}: no tank does it with this roof and this use.",
        "{wanted}: ningún tanque lo logra con este techo y este uso.",
        wanted = super::size::wanted(wanted)
    )
}

/// The rain of another site.
pub fn same_as(name: &str) -> String {
    say!("The same as {name}", "La misma que en {name}", name)
}

/// Label of the twelve means.
pub fn twelve(units: &Units) -> String {
    say!("January to December ({unit})", "De enero a diciembre ({unit})", unit = units.of(Kind::Depth).sign())
}

/// Fewer or more than twelve.
pub fn not_twelve(found: usize) -> String {
    say!(
        "Twelve numbers with spaces between; {numbers} so far.",
        "Doce números separados por espacios; hasta ahora {numbers}.",
        numbers = count(found, phrase!("number", "número"), phrase!("numbers", "números")),
    )
}

/// Where the means of a year's total come from.
pub fn year_source(total: &YearTotal, units: &Units) -> String {
    let months = super::months();
    let month = |at: usize| months.get(at).copied().unwrap_or_default();
    say!(
        "{depth} of rain a year, most of it from {first} to {last}, entered by hand",
        "{depth} al año, la mayor parte de {first} a {last}, escrito a mano",
        depth = shown::figure(total.mm, Kind::Depth, units),
        first = month(total.first),
        last = month(total.last),
    )
}

/// How a year's total is spread over its months.
pub fn spread(total: &YearTotal) -> String {
    let (months, share) = total.wet();
    if months == 12 {
        return phrase!(
            "The year's total is spread evenly over the year. Twelve means of the nearest station tell it better.",
            "El total del año se reparte por igual entre los doce meses. Doce promedios de la estación más cercana lo dicen mejor.",
        )
        .to_owned();
    }
    say!(
        "{share} of the year's total is spread evenly over the months you named, the rest over the others. Twelve means of the \
         nearest station tell it better.",
        "El {share} del total del año se reparte por igual entre los meses que indicaste, lo demás entre los otros. Doce promedios \
         de la estación más cercana lo dicen mejor.",
        share = percent(share)
    )
}

/// What is no depth.
pub fn not_a_depth(text: &str) -> String {
    say!("“{text}” is no depth of rain for a month.", "«{text}» no es una cantidad de lluvia para un mes.", text)
}

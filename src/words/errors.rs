//! What went wrong with something that was typed, changed, read or saved: what, where, what to do.

use crate::engine::question::Refusal;
use crate::engine::rain::gaps::GapError;
use crate::engine::rain::import::ImportError as RainError;
use crate::engine::rain::normals::NormalsError;
use crate::language::spoken;
use crate::quantity::typed::{Typed, TypedError, perhaps_thousands};
use crate::quantity::{Kind, Range, Units, shown};
use crate::records::exchange::ImportError as FileError;
use crate::records::json::{SyntaxError, SyntaxFault};
use crate::records::place::{Fault, ShapeError, Wanted};
use crate::records::shelf::ShelfError;
use crate::records::slots::PutError;
use crate::site::edit::EditError;
use crate::site::system::System;

use super::rain_report::unreadable_row;

/// A text that is not a quantity.
pub fn typed(error: &TypedError) -> String {
    match error {
        TypedError::Empty => phrase!("Type a number.", "Escribe un número.").to_owned(),
        TypedError::NotANumber { text } => say!(
            "“{text}” is not a number. Type one, such as 1,700 or 2 1/2.",
            "«{text}» no es un número. Escribe uno, como 1700, 1,5 o 2 1/2.",
            text
        ),
        TypedError::BareBehindUnit { text, unit } => say!(
            "“{text}” stands alone behind {unit}. Write its unit too, or one number only.",
            "«{text}» está solo después de {unit}. Escribe también su unidad, o un solo número.",
            text,
            unit = unit.sign()
        ),
        TypedError::UnknownUnit { text, kind } => {
            let symbols: Vec<String> =
                kind.units().iter().map(|unit| unit.sign().to_owned()).filter(|symbol| !symbol.is_empty()).collect();
            match symbols.as_slice() {
                [] => say!(
                    "“{text}” is not needed here. Type the number alone.",
                    "«{text}» sobra aquí. Escribe solo el número.",
                    text
                ),
                _ => say!(
                    "“{text}” is not a unit for this. Use {units}.",
                    "«{text}» no es una unidad para esto. Usa {units}.",
                    units = super::either(&symbols),
                    text
                ),
            }
        }
    }
}

/// Most letters of a name: what a line on a phone can still be read of.
const LONGEST_NAME: usize = 80;

/// Whether a name has more letters than are taken.
pub fn is_long_name(name: &str) -> bool {
    name.trim().chars().count() > LONGEST_NAME
}

/// A name that can't be taken: there is none, or it is too long.
pub fn name(name: &str) -> String {
    if name.trim().is_empty() {
        return phrase!(
            "A name is wanted. Until then the old one stays.",
            "Falta un nombre. Hasta entonces se queda el anterior."
        )
        .to_owned();
    }
    say!(
        "This has {letters} characters; {most} at most are taken. Until it is shorter the old one stays.",
        "Esto tiene {letters} caracteres; se admiten {most} como máximo. Hasta que lo acortes se queda el anterior.",
        letters = super::number_text(name.trim().chars().count()),
        most = super::number_text(LONGEST_NAME),
    )
}

/// A number outside its range.
pub fn out_of_range(kind: Kind, range: Range, units: &Units) -> String {
    say!(
        "It must be between {least} and {greatest}. Until then the old value stands.",
        "Debe estar entre {least} y {greatest}. Hasta entonces vale el valor anterior.",
        least = shown::entered(range.least, kind, units),
        greatest = shown::entered(range.greatest, kind, units)
    )
}

/// How a typed text was understood, in the person's unit, and how to write what it may have been meant for; `None` where
/// that is plain from what was typed.
pub fn understood(text: &str, typed: &Typed, kind: Kind, units: &Units) -> Option<String> {
    let own = units.of(kind);
    let thousands = perhaps_thousands(text);
    let plain = matches!(typed.parts.as_slice(), [(_, unit)] if unit.symbol == own.symbol);
    (!plain || thousands.is_some()).then(|| {
        let value = shown::entered(typed.si, kind, units);
        let mut told = say!("Understood as {value}.", "Se entendió como {value}.", value);
        if let Some(thousands) = thousands {
            told.push_str(&say!(
                " If you mean {number}, write it without “{mark}”.",
                " Si son {number}, escríbelo sin «{mark}».",
                mark = spoken().decimal_mark(),
                number = shown::significant(thousands, 6)
            ));
        }
        told
    })
}

/// A change that was refused.
pub fn edit(error: &EditError, system: &System, units: &Units) -> String {
    match error {
        EditError::OutOfRange { field, kind, range, .. } => {
            format!("{}: {}", super::parts::label(*field, system), out_of_range(*kind, *range, units))
        }
        EditError::NoSuchValue => {
            phrase!("That part is no longer there. Nothing was changed.", "Esa parte ya no está. No se cambió nada.")
                .to_owned()
        }
        EditError::DetailOutOfRange(detail) => {
            let row = detail.row();
            format!("{}: {}", super::checks::details::label(*detail), out_of_range(row.kind, row.range, units))
        }
        EditError::NamelessPart => {
            phrase!("A part needs a name. The old one stays.", "Una parte necesita un nombre. Se queda el anterior.")
                .to_owned()
        }
    }
}

/// A write that failed.
pub fn put(error: PutError) -> String {
    match error {
        PutError::Shelf(ShelfError::Denied) => said!(
            "Not saved: this browser does not let the app keep anything. What you see stays until you close it; export a \
             file to keep it.",
            "No se guardó: este navegador no deja que la aplicación guarde nada. Lo que ves se queda hasta que la \
             cierres; exporta un archivo para conservarlo.",
        ),
        PutError::Shelf(ShelfError::Full) => said!(
            "Not saved: the browser's storage is full. What you see stays until you close it; export a file, then remove a \
             site that you no longer need.",
            "No se guardó: el espacio del navegador está lleno. Lo que ves se queda hasta que cierres la aplicación; \
             exporta un archivo y luego quita un sitio que ya no necesites.",
        ),
        PutError::ChangedElsewhere => said!(
            "Not saved: another window changed this site meanwhile. Export a file if you want to keep what you see, then \
             load the page again.",
            "No se guardó: otra ventana cambió este sitio entre tanto. Exporta un archivo si quieres conservar lo que \
             ves, y luego carga la página otra vez.",
        ),
        PutError::Newer => said!(
            "Not saved: a newer Eavewater wrote this record. Load the page again to get the newer version.",
            "No se guardó: un Eavewater más nuevo escribió este registro. Carga la página otra vez para tener la \
             versión más nueva.",
        ),
    }
    .to_owned()
}

/// A file that can't be taken in.
pub fn file(error: &FileError) -> String {
    match error {
        FileError::NotText => phrase!(
            "This is not a text file. Choose a file that Eavewater exported.",
            "Este no es un archivo de texto. Elige un archivo que Eavewater haya exportado.",
        )
        .to_owned(),
        FileError::OtherText => phrase!(
            "This is not a file that Eavewater exported. Nothing was changed. A rain record is loaded in Rain, or while \
             a house is sketched.",
            "Este no es un archivo que Eavewater haya exportado. No se cambió nada. Un registro de lluvia se carga en \
             Lluvia, o al bosquejar una casa.",
        )
        .to_owned(),
        FileError::NotJson(SyntaxError { line, column, fault }) => say!(
            "This is not a file that Eavewater exported, or it is damaged: line {line}, column {column}: {fault}. Nothing \
             was changed.",
            "Este no es un archivo que Eavewater haya exportado, o está dañado: línea {line}, columna {column}: \
             {fault}. No se cambió nada.",
            fault = match fault {
                SyntaxFault::Ends => said!("it ends before it is complete", "termina antes de estar completo"),
                SyntaxFault::Misplaced => said!("what stands there does not belong there", "lo que hay ahí no va ahí",),
                SyntaxFault::TooDeep =>
                    said!("too many lists stand within each other", "hay demasiadas listas unas dentro de otras",),
            }, line, column
        ),
        FileError::OtherFormat { format } => say!(
            "This is not a file that Eavewater exported: it says that its format is “{format}”. Nothing was changed.",
            "Este no es un archivo que Eavewater haya exportado: dice que su formato es «{format}». No se cambió nada.", format
        ),
        FileError::WrongShape(error) => say!(
            "This is not a file that Eavewater exported, or it is damaged: {fault}. Nothing was changed.",
            "Este no es un archivo que Eavewater haya exportado, o está dañado: {fault}. No se cambió nada.",
            fault = wrong_shape(error)
        ),
        FileError::TooLarge => phrase!(
            "This file is larger than any that Eavewater exports.",
            "Este archivo es más grande que cualquiera que Eavewater exporte.",
        )
        .to_owned(),
        FileError::Newer { version } => say!(
            "A newer Eavewater wrote this file (version {version}). Load the page again while online to get the newer \
             version, then import it.",
            "Un Eavewater más nuevo escribió este archivo (versión {version}). Carga la página otra vez con conexión \
             para tener la versión más nueva, y luego impórtalo.", version
        ),
    }
}

/// A value in a file that does not have the shape it must have.
fn wrong_shape(error: &ShapeError) -> String {
    let place = if error.path.is_empty() { said!("the whole", "el conjunto") } else { &error.path };
    let must_be = match &error.fault {
        Fault::Missing => return say!("{place} is missing", "falta {place}", place),
        Fault::Length { wanted, found } => {
            return say!(
                "{place} has {found} values instead of {wanted}",
                "en {place}, el número de valores es {found} en vez de {wanted}",
                place,
                found,
                wanted
            );
        }
        Fault::Unknown { name } => {
            return say!("{place}: “{name}” is not known", "{place}: no se conoce «{name}»", place, name);
        }
        Fault::OutOfRange => {
            return say!("{place} is beyond what it may be", "{place} se sale de lo que puede ser", place);
        }
        Fault::NotA(Wanted::WholeNumber { most }) => {
            &say!("a whole number from 0 to {most}", "un número entero de 0 a {most}", most)
        }
        Fault::NotA(Wanted::Number) => said!("a number", "un número"),
        Fault::NotA(Wanted::Text) => said!("text", "texto"),
        Fault::NotA(Wanted::Truth) => said!("true or false", "verdadero o falso (true o false)"),
        Fault::NotA(Wanted::Date) => said!("a date such as 2004-07-31", "una fecha como 2004-07-31"),
        Fault::NotA(Wanted::List) => said!("a list", "una lista"),
        Fault::NotA(Wanted::Object) => said!("an object", "un objeto"),
        Fault::NotA(Wanted::Choice) => said!("the name of a choice", "el nombre de una opción"),
    };
    say!("{place} must be {must_be}", "{place} debe ser {must_be}", place, must_be)
}

/// A rain file of which no record can be made.
pub fn rain(error: &RainError) -> String {
    match error {
        RainError::Empty => phrase!(
            "There is nothing in it. Choose a file with a date and a rain depth in each row.",
            "No hay nada dentro. Elige un archivo con una fecha y una cantidad de lluvia en cada fila.",
        )
        .to_owned(),
        RainError::TooManyBytes { bytes, most } => say!(
            "The file is too large: {megabytes} MB; at most {most} MB are read. Cut it to one station.",
            "El archivo es demasiado grande: {megabytes} MB; se leen {most} MB como mucho. Recórtalo a una sola estación.",
            megabytes = bytes / 1_000_000,
            most = most / 1_000_000
        ),
        RainError::TooManyLines { most } => say!(
            "The file has more than {lines} lines. Cut it to one station.",
            "El archivo tiene más de {lines} líneas. Recórtalo a una sola estación.",
            lines = super::number_text(*most)
        ),
        RainError::NotText => phrase!(
            "This is not plain text; a spreadsheet must be saved as CSV first. Nothing was changed.",
            "Esto no es texto sin formato; una hoja de cálculo hay que guardarla antes como CSV. No se cambió nada.",
        )
        .to_owned(),
        RainError::NoDates => phrase!(
            "No dates were found. Each row needs a date with a year of four digits, such as 2004-07-31, and a rain depth, with a \
             comma, a semicolon or a tab between.",
            "No se encontraron fechas. Cada fila necesita una fecha con un año de cuatro cifras, como 2004-07-31, y una cantidad de \
             lluvia, con una coma, un punto y coma o un tabulador entre ellas.",
        )
        .to_owned(),
        RainError::NoRainColumn { header } if header.is_empty() => phrase!(
            "No column holds rain depths. Each row needs a date and a number.",
            "Ninguna columna tiene cantidades de lluvia. Cada fila necesita una fecha y un número.",
        )
        .to_owned(),
        RainError::NoRainColumn { header } => say!(
            "No column holds rain depths. The columns are {columns}. Name the right one “rain”.",
            "Ninguna columna tiene cantidades de lluvia. Las columnas son {columns}. Ponle «lluvia» de nombre a la \
             correcta.",
            columns = super::list(header)
        ),
        RainError::SeveralRainColumns { columns } => {
            let names: Vec<String> = columns
                .iter()
                .map(|column| {
                    column
                        .name
                        .clone()
                        .unwrap_or_else(|| say!("number {place}", "la número {place}", place = column.place))
                })
                .collect();
            say!(
                "Several columns could be the rain: {names}. Name the right one “rain”.",
                "Varias columnas podrían ser la lluvia: {names}. Ponle «lluvia» de nombre a la correcta.",
                names = super::list(&names)
            )
        }
        RainError::SeveralStations { first, second, line } => say!(
            "There are several stations in it: {first}, and {second} from line {line} on. Keep one of them.",
            "Hay varias estaciones dentro: {first}, y {second} desde la línea {line}. Deja una sola.",
            first,
            second,
            line
        ),
        RainError::ManyRowsADay { rows } => say!(
            "Each day has some {rows} rows: put date and time into one column, so that they can be added up, or load a daily record.",
            "Cada día tiene unas {rows} filas: pon fecha y hora en una sola columna, para que se puedan sumar, o carga un registro diario.",
            rows = super::number_text(*rows)
        ),
        RainError::Monthly { rows } => say!(
            "The {rows} rows lie a month apart: these are totals of months, not days. Enter the twelve monthly means instead, or load \
             a daily record.",
            "Las {rows} filas están a un mes una de otra: son totales de meses, no de días. Escribe los doce promedios mensuales, o \
             carga un registro diario.",
            rows = super::number_text(*rows)
        ),
        RainError::MostlyUnreadable { rows_read, unreadable } => say!(
            "Only {rows} could be read and {unread} could not. {first}",
            "Solo {rows} y {unread} no. {first}",
            rows = super::count(
                *rows_read,
                phrase!("row", "fila se pudo leer"),
                phrase!("rows", "filas se pudieron leer")
            ),
            unread = super::number_text(unreadable.count),
            first = unreadable.first.iter().map(unreadable_row).collect::<Vec<_>>().join(" ")
        ),
        RainError::NothingMeasured => {
            phrase!("No row holds a measured depth.", "Ninguna fila tiene una cantidad medida.").to_owned()
        }
    }
}

/// Why there is no answer, but for the findings of the system, which are told one by one.
pub fn refusal(refusal: &Refusal) -> Option<String> {
    Some(match refusal {
        Refusal::System(_) => return None,
        Refusal::Gaps(GapError::NothingMeasured) => phrase!(
            "The rain record holds no measured day. Load another.",
            "El registro de lluvia no tiene ningún día medido. Carga otro.",
        )
        .to_owned(),
        Refusal::Gaps(GapError::NoYearLeft { with_more_than, best_year, lacking }) => say!(
            "Every year lacks more than {with_more_than} days; {best_year} lacks the fewest, {lacking}. Allow more missing \
             days, or fill them from other years.",
            "A cada año le faltan más de {most_days}; al que menos, {best_year}, le faltan {lacking}. Permite más días \
             sin dato, o complétalos con otros años.",
            most_days = super::days(usize::from(*with_more_than)),
            with_more_than,
            best_year,
            lacking
        ),
        Refusal::Gaps(GapError::NoYearHasDay { month, day }) => say!(
            "No year of the record has a depth for {day} {month}, so that day can't be filled. Leave out years with missing \
             days instead, or load a longer record.",
            "Ningún año del registro tiene dato para el {day} de {month}, así que ese día no se puede completar. Deja \
             fuera los años con días sin dato, o carga un registro más largo.",
            month = month_name(*month as usize),
            day
        ),
        Refusal::Gaps(GapError::NotADepth { date, depth_mm }) => not_a_depth(*date, *depth_mm),
        Refusal::Normals(error) => normals(error),
        Refusal::Model(error) => super::generated::no_model(error),
        Refusal::NoWholeYear { days } => say!(
            "Sizes take at least one whole calendar year of rain, January to December: these {days} say nothing of the \
             other seasons. Load a longer record, or enter the twelve monthly means of the place.",
            "Para hablar de tamaños hace falta al menos un año calendario completo de lluvia, de enero a diciembre: \
             estos {days} no dicen nada de las demás estaciones. Carga un registro más largo, o escribe los doce \
             promedios mensuales del lugar.",
            days = super::days(*days)
        ),
    })
}

/// A depth in a record that is none.
pub fn not_a_depth(date: chrono::NaiveDate, depth_mm: f64) -> String {
    say!(
        "The record holds {depth_mm} mm for {date}, which is no depth. Load it anew.",
        "El registro tiene {depth} mm para el {date}, y eso no es una cantidad de lluvia. Cárgalo de nuevo.",
        depth = shown::significant(depth_mm, 9),
        date = super::date(date),
        depth_mm
    )
}

/// Why monthly means can't be used.
pub fn normals(error: &NormalsError) -> String {
    match error {
        NormalsError::Years { .. } => phrase!(
            "No year of rain could be made of the means.",
            "No se pudo hacer ningún año de lluvia con los promedios.",
        )
        .to_owned(),
        NormalsError::Total { month, total_mm } => say!(
            "{month}: {total_mm} mm is no monthly total. Enter it anew.",
            "{month}: {total} mm no es un total mensual. Escríbelo de nuevo.",
            total = shown::significant(*total_mm, 9),
            month = month_name(*month),
            total_mm
        ),
        NormalsError::RainDays { month, rain_days, most } => say!(
            "{month}: {rain_days} rain days; the month has {most}. Enter them anew.",
            "{month}: {number} días de lluvia; el mes tiene {most}. Escríbelos de nuevo.",
            number = shown::significant(*rain_days, 9),
            month = month_name(*month),
            rain_days,
            most
        ),
    }
}

fn month_name(month: usize) -> &'static str {
    super::months().get(month.wrapping_sub(1)).copied().unwrap_or_default()
}

/// A line of a tank's table that can't be read.
pub fn table_row(line: usize, text: &str) -> String {
    say!(
        "Line {line}, “{text}”, is not a depth and a volume. Write, for example: 0.5\u{a0}m  900\u{a0}L.",
        "La línea {line}, «{text}», no es una profundidad y un volumen. Escribe, por ejemplo: 0,5\u{a0}m  900\u{a0}L.",
        line,
        text
    )
}

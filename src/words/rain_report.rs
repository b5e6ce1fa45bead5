//! What was found in a rain file, before anything is kept.

use chrono::NaiveDate;

use super::{count, date, number_text, percent};
use crate::engine::rain::rain_unit::RainUnit;
use crate::engine::rain::report::{DateOrder, DaySpan, Notice, Occasions, OrderBasis, Report, RowFault, UnreadableRow};
use crate::quantity::{Kind, Units, shown};

/// A unit of a rain file.
pub fn unit(unit: RainUnit) -> &'static str {
    match unit {
        RainUnit::Millimetres => said!("Millimetres", "Milímetros"),
        RainUnit::TenthsOfMillimetre => said!("Tenths of a millimetre", "Décimas de milímetro"),
        RainUnit::Centimetres => said!("Centimetres", "Centímetros"),
        RainUnit::Inches => said!("Inches", "Pulgadas"),
        RainUnit::HundredthsOfInch => said!("Hundredths of an inch", "Centésimas de pulgada"),
    }
}

/// The whole of the record in a sentence.
pub fn summary(report: &Report) -> String {
    say!(
        "{rows} read: {first} to {last}, {days} with a depth and {missing} without.",
        "{rows}: del {first} al {last}, {days} con medición y {missing} sin ella.",
        rows = count(report.rows_read, phrase!("row", "fila leída"), phrase!("rows", "filas leídas")),
        first = date(report.span.first),
        last = date(report.span.last),
        days = super::days(report.measured_days),
        missing = number_text(report.missing_days),
    )
}

/// Whether a notice is a doubt about the record as a whole, rather than an account of single rows.
pub fn is_doubt(notice: &Notice) -> bool {
    matches!(
        notice,
        Notice::AnnualTotalUnlikely { .. }
            | Notice::UnlikelyDryRun { .. }
            | Notice::Drizzle { .. }
            | Notice::UnitAssumed { .. }
            | Notice::DateOrderAssumed { .. }
            | Notice::BeyondWorldRecord(_)
            | Notice::FarAboveOthers { .. }
            | Notice::ConflictingDates(_)
    )
}

/// A notice as a sentence.
pub fn sentence(notice: &Notice, units: &Units) -> String {
    let depth = |mm: f64| shown::figure(mm, Kind::Depth, units);
    match notice {
        Notice::LinesAboveTable { lines } => say!(
            "{lines} above the table passed over.",
            "{lines}.",
            lines = count(
                *lines,
                phrase!("line", "línea por encima de la tabla se pasó por alto"),
                phrase!("lines", "líneas por encima de la tabla se pasaron por alto",)
            ),
        ),
        Notice::RowsUnreadable(rows) => say!(
            "{left_out} could not be read and left out: {some}",
            "{left_out}: {some}",
            left_out = count(
                rows.count,
                phrase!("row", "fila no se pudo leer y quedó fuera"),
                phrase!("rows", "filas no se pudieron leer y quedaron fuera")
            ),
            some = some(rows, unreadable_row),
        ),
        Notice::DateOrderAssumed { order, basis } => say!(
            "Dates were read with the {first} first{why}",
            "Las fechas se leyeron con el {first} primero{why}",
            first = match order {
                DateOrder::DayFirst => said!("day", "día"),
                DateOrder::MonthFirst => said!("month", "mes"),
            },
            why = match basis {
                OrderBasis::Dates =>
                    said!(", as some of them can only be read.", ", pues algunas solo se pueden leer así.",),
                OrderBasis::Succession =>
                    said!(", since the days follow one another so.", ", pues así los días se siguen unos a otros.",),
                OrderBasis::Assumed => said!(
                    ". The file does not decide it: check a date that you know.",
                    ". El archivo no lo decide: comprueba una fecha que conozcas.",
                ),
            },
        ),
        Notice::UnitAssumed { unit: assumed, mean_rain_day } => say!(
            "The file does not say its unit. {unit} were assumed, a mean rain day being {mean} in the file's own \
             numbers. Choose another unit below if that is wrong.",
            "El archivo no dice su unidad. Se supuso: {unit}, pues un día de lluvia promedio es {mean} en los \
             números del propio archivo. Elige otra unidad abajo si no es la correcta.",
            unit = unit(*assumed),
            mean = shown::significant(*mean_rain_day, 3),
        ),
        Notice::MarkedMissing(dates) => {
            say!(
                "{days} marked as not measured: {some}",
                "{days}: {some}",
                days = count(
                    dates.count,
                    phrase!("day", "día marcado como no medido"),
                    phrase!("days", "días marcados como no medidos")
                ),
                some = some(dates, |day| date(*day)),
            )
        }
        Notice::Gaps { gaps, days: missing, longest } => say!(
            "{days} missing in {gaps}, the longest {longest}. They count as unknown, never as dry.",
            "{days} en {gaps}; el más largo, {longest}. Cuentan como desconocidos, nunca como días sin lluvia.",
            days = count(*missing, phrase!("day", "día falta"), phrase!("days", "días faltan")),
            gaps = count(*gaps, phrase!("gap", "hueco"), phrase!("gaps", "huecos")),
            longest = span(longest),
        ),
        Notice::AddedUp { rows } => say!(
            "{rows} rows tell of times within a day: their depths were added up to days, from midnight to midnight.",
            "{rows} filas son de horas del día: sus cantidades se sumaron por días, de medianoche a medianoche.",
            rows = super::number_text(*rows)
        ),
        Notice::RepeatedDates(dates) => {
            say!(
                "{days} given more than once, with the same depth; taken once: {some}",
                "{days}, con la misma cantidad; se tomó una sola vez: {some}",
                days = count(
                    dates.count,
                    phrase!("day", "día dado más de una vez"),
                    phrase!("days", "días dados más de una vez")
                ),
                some = some(dates, |day| date(*day)),
            )
        }
        Notice::ConflictingDates(conflicts) => say!(
            "{days} given again with another depth; the first was kept. Where a file holds two stations, take one of them out \
             first. {some}",
            "{days} con otra cantidad; se conservó la primera. Si el archivo trae dos estaciones, quita antes una. {some}",
            days = count(conflicts.count, phrase!("day", "día dado otra vez"), phrase!("days", "días dados otra vez")),
            some = some(conflicts, |conflict| say!(
                "{day} ({kept} kept, {refused} not)",
                "{day} (queda {kept}, no {refused})",
                day = date(conflict.date),
                kept = depth(conflict.kept_mm),
                refused =
                    conflict.refused_mm.map_or_else(|| phrase!("“not measured”", "«no medido»").to_owned(), depth),
            )),
        ),
        Notice::Traces(dates) => say!(
            "{days} with a trace of rain, counted as none.",
            "{days} con trazas de lluvia, que se cuentan como nada.",
            days = super::days(dates.count),
        ),
        Notice::PresumedZero(dates) => {
            say!(
                "{days} where the publisher presumed none because nothing was reported; kept so.",
                "{days} en que quien publica el registro supuso que no llovió porque no se informó nada; se deja así.",
                days = super::days(dates.count),
            )
        }
        Notice::Negative(rows) => say!(
            "{days} with a depth below zero, treated as missing: {some}",
            "{days} con una cantidad menor que cero, que se toma como faltante: {some}",
            days = super::days(rows.count),
            some = some(rows, |row| date(row.date)),
        ),
        Notice::QualityFlagged(rows) => say!(
            "{days} failed the publisher's quality checks and count as missing: {some}",
            "{days}: {some}",
            days = count(
                rows.count,
                phrase!("day", "día no pasó los controles de calidad de quien lo publica y cuenta como faltante"),
                phrase!(
                    "days",
                    "días no pasaron los controles de calidad de quien los publica y cuentan como faltantes"
                )
            ),
            some = some(rows, |row| say!(
                "{day} (flag {flag})",
                "{day} (marca {flag})",
                day = date(row.date),
                flag = row.flag,
            )),
        ),
        Notice::MultiDayTotals(totals) => say!(
            "{sums} over several days, whose rain can't be told apart; days without a depth stay missing: {some}",
            "{sums} de varios días, cuya lluvia no se puede separar; los días sin cantidad siguen faltando: {some}",
            sums = count(totals.count, phrase!("total", "total"), phrase!("totals", "totales")),
            some = some(totals, |total| say!(
                "{depth} by {day}",
                "{depth} hasta el {day}",
                depth = depth(total.total_mm),
                day = date(total.read_on),
            )),
        ),
        Notice::BeyondWorldRecord(rows) => say!(
            "{days} above {record}, the most ever measured in a day (WMO: Foc-Foc, La Réunion, January 1966); treated \
             as missing: {some}",
            "{days} por encima de {record}, lo más que se ha medido en un día (OMM: Foc-Foc, La Reunión, enero de \
             1966); se toma como faltante: {some}",
            days = super::days(rows.count),
            record = shown::entered(1825.0, Kind::Depth, units),
            some = some(rows, |row| date(row.date)),
        ),
        Notice::FarAboveOthers { days, next_mm } => say!(
            "{number} with over twice the rain of the wettest other day ({next}): {some} Look whether that is right. Kept \
             as written.",
            "{number} con más del doble de lluvia que el más lluvioso de los demás ({next}): {some} Mira si es correcto. \
             Se deja como está escrito.",
            number = super::days(days.count),
            next = depth(*next_mm),
            some = some(days, |row| format!("{} ({})", date(row.date), depth(row.depth_mm))),
        ),
        Notice::AnnualTotalUnlikely { mean_mm } => say!(
            "A mean year comes to {depth}, which is found nowhere on Earth (10 to 13,000\u{a0}mm). The unit looks wrong.",
            "Un año promedio da {depth}, lo que no se encuentra en ningún lugar de la Tierra (de 10 a 13\u{a0}000\u{a0}mm). \
             La unidad parece equivocada.",
            depth = depth(*mean_mm),
        ),
        Notice::UnlikelyDryRun { span: dry, .. } => say!(
            "No rain at all {span}, which the other years make very unlikely: perhaps nobody measured and zeros were \
             written. Kept as written.",
            "Nada de lluvia {span}, lo que los demás años hacen muy improbable: quizá nadie midió y se escribieron \
             ceros. Se deja como está escrito.",
            span = span(dry),
        ),
        Notice::Drizzle { rain_days, under_1_mm } => say!(
            "Rain on {wet} of days, {drizzle} of them under 1\u{a0}mm: more like a computed series than a gauge's. Kept as \
             written.",
            "Lluvia en {wet} de los días, y en {drizzle} de ellos menos de 1\u{a0}mm: se parece más a una serie calculada \
             que a la de un pluviómetro. Se deja como está escrito.",
            wet = percent(*rain_days),
            drizzle = percent(*under_1_mm),
        ),
    }
}

/// A row that could not be read, with its line.
pub fn unreadable_row(row: &UnreadableRow) -> String {
    let fault = match &row.fault {
        RowFault::NotADate { text } => say!("“{text}” is not a date", "«{text}» no es una fecha", text),
        RowFault::NoSuchDay { text } => {
            say!("“{text}” is not a day of the calendar", "«{text}» no es un día del calendario", text)
        }
        RowFault::YearOutOfRange { text } => {
            say!("“{text}” is not between 1700 and 2200", "«{text}» no está entre 1700 y 2200", text)
        }
        RowFault::NotANumber { text } => say!("“{text}” is not a depth", "«{text}» no es una cantidad de lluvia", text),
        RowFault::TooFewCells { cells } => say!(
            "it has only {cells}",
            "tiene solo {cells}",
            cells = count(*cells, phrase!("cell", "celda"), phrase!("cells", "celdas")),
        ),
    };
    say!("line {line}: {fault}.", "línea {line}: {fault}.", line = row.line, fault)
}

fn some<T>(occasions: &Occasions<T>, each: impl Fn(&T) -> String) -> String {
    let mut first = Vec::with_capacity(occasions.first.len());
    for occasion in &occasions.first {
        first.push(each(occasion));
    }
    among(&first, occasions.count)
}

/// The first of so many occasions.
fn among(first: &[String], count: usize) -> String {
    let more = count.saturating_sub(first.len());
    let first = first.join("; ");
    match more {
        0 if first.ends_with('.') => first,
        0 => format!("{first}."),
        _ => say!("{first}; and {more} more.", "{first}; y {more} más.", more = number_text(more), first),
    }
}

fn span(span: &DaySpan) -> String {
    let whole = |day: NaiveDate| date(day);
    if span.first == span.last {
        say!("on {day}", "el {day}", day = whole(span.first))
    } else {
        say!("from {first} to {last}", "del {first} al {last}", first = whole(span.first), last = whole(span.last))
    }
}

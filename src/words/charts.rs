//! Captions of the charts.

use crate::language::Phrase;

/// The content over the whole run.
pub const CONTENTS: Phrase = phrase!(
    "Water over the outlets of all tanks at the end of each day.",
    "Agua por encima de las salidas de todos los tanques al final de cada día.",
);
/// The same where years were left out.
pub const CONTENTS_WITHOUT_YEARS: Phrase = phrase!(
    "Water over the outlets of all tanks at the end of each day; years that were left out are drawn level.",
    "Agua por encima de las salidas de todos los tanques al final de cada día; los años que se dejaron fuera se dibujan \
     como una línea plana.",
);
/// The content through the year.
pub const THROUGH_THE_YEAR: Phrase = phrase!(
    "Eight years in ten lie within the band (percentiles by day of the year).",
    "Ocho de cada diez años quedan dentro de la banda (percentiles por día del año).",
);
/// Where the water went.
pub const WHERE_IT_WENT: Phrase = phrase!(
    "An average year of this rain, month by month. Lost on the way: wetting, roofing, gutters and screens, leaks, \
     evaporation.",
    "Un año promedio de esta lluvia, mes a mes. Pérdidas: mojado inicial, material del techo, \
     canaletas y mallas, fugas, evaporación.",
);
/// The months of a record.
pub const MONTHS: Phrase = phrase!(
    "Mean of each month; the small figures are wet days (1\u{a0}mm or more).",
    "Promedio de cada mes; las cifras pequeñas son días de lluvia (1\u{a0}mm o más).",
);
/// Months that were entered.
pub const MEANS: Phrase = phrase!("Monthly means as entered.", "Promedios mensuales como se escribieron.");
/// The years of a record.
pub const YEARS: Phrase = phrase!(
    "Whole calendar years are filled; years with missing days are hatched.",
    "Los años completos van en color; los años con días faltantes, rayados.",
);

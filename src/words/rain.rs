//! Words of the rain place.

use crate::language::{Phrase, said};
use crate::say;
use crate::site::rain::MissingDays;

/// Title.
pub const TITLE: Phrase = Phrase("Rain", "Lluvia");
/// What to do when there is none.
pub const NONE: Phrase = Phrase(
    "This site has no rain yet. Give it the longest daily record of a gauge nearby, or twelve monthly means if that is \
     all there is.",
    "Este sitio todavía no tiene lluvia. Dale el registro diario más largo de un pluviómetro cercano, o doce promedios \
     mensuales si no hay más que eso.",
);
/// Why even rain is not like real rain.
pub const EVEN_RAIN: Phrase = Phrase(
    "Twelve means make every year alike, with equal rain days evenly spaced. Real years are rougher: dry spells are \
     longer and bad years come. Expect less than this says.",
    "Con doce promedios todos los años salen iguales, con días de lluvia iguales y a espacios iguales. Los años de \
     verdad son más duros: las rachas sin lluvia son más largas y llegan años malos. Espera menos de lo que dice esto.",
);
/// How missing days are treated.
pub const MISSING_DAYS: Phrase = Phrase("Days that were not measured", "Días que no se midieron");

/// A treatment of missing days.
pub fn missing_days(treatment: MissingDays) -> String {
    match treatment {
        MissingDays::LeaveOutYears { with_more_than } => {
            say!(
                "Leave out years that lack more than {with_more_than} days; fill the rest",
                "Dejar fuera los años en que faltan más de {with_more_than} días; completar el resto",
            )
        }
        MissingDays::Fill => {
            said("Fill all from the same days of other years", "Completar todos con los mismos días de otros años")
                .to_owned()
        }
    }
}

/// Rain measured day by day.
pub const DAILY_RECORD: Phrase = Phrase("Daily record", "Registro diario");
/// Twelve means.
pub const MONTHLY_MEANS: Phrase = Phrase("Monthly means", "Promedios mensuales");

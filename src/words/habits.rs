//! Words of the habits from which amounts are worked out, and where their figures are from.

use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::habits::{Basis, Habit};

/// Opens the habits.
pub const TITLE: Phrase = phrase!("Work it out from habits", "Calcularlo a partir de los hábitos");
/// What to do.
pub const HOW: Phrase = phrase!(
    "Say how often and how much; replace any figure by your own. Each habit belongs to one use, or to water from \
     elsewhere.",
    "Di con qué frecuencia y cuánto; cambia cualquier cifra por la tuya. Cada hábito corresponde a un uso, o a agua de \
     otra parte.",
);
/// Puts the amounts into the uses.
pub const PUT: Phrase = phrase!("Put these amounts into the uses", "Poner estas cantidades en los usos");
/// They are put.
pub const ARE_PUT: Phrase = phrase!("The amounts stand in the uses now.", "Las cantidades ya están en los usos.");
/// A habit that no use of this system serves.
pub const ELSEWHERE: Phrase = phrase!("Water from elsewhere", "Agua de otra parte");
/// A figure of the household's own.
pub const OWN: Phrase = phrase!("Our own figure", "Tu propia cifra");

/// A habit.
pub fn name(habit: Habit) -> &'static str {
    match habit {
        Habit::Drinking => said!("Drinking", "Beber"),
        Habit::Cooking => said!("Cooking", "Cocinar"),
        Habit::Taps => said!("Hands, face, teeth at the tap", "Manos, cara y dientes en el grifo"),
        Habit::Shower => said!("Showers", "Duchas"),
        Habit::Bath => said!("Baths", "Baños de tina"),
        Habit::Toilet => said!("Toilet", "Inodoro"),
        Habit::Laundry => said!("Laundry", "Lavar ropa"),
        Habit::Dishes => said!("Dishes by hand", "Platos a mano"),
        Habit::Dishwasher => said!("Dishwasher", "Lavavajillas"),
        Habit::Cleaning => said!("Cleaning the house", "Limpieza de la casa"),
    }
}

/// What its times count.
pub fn times(habit: Habit) -> &'static str {
    match (habit, habit.basis()) {
        (Habit::Drinking | Habit::Cooking, _) => {
            said!("Share of the figure, each person (1 is all)", "Parte de la cifra, cada persona (1 es toda)")
        }
        (Habit::Taps, _) => said!("Minutes a day, each person", "Minutos al día, cada persona"),
        (Habit::Toilet, _) => said!("Flushes a day, each person", "Descargas al día, cada persona"),
        (_, Basis::PersonDay) => said!("Times a day, each person", "Veces al día, cada persona"),
        (_, Basis::PersonWeek) => said!("Times a week, each person", "Veces a la semana, cada persona"),
        (_, Basis::HouseDay) => said!("Times a day, all together", "Veces al día, entre todos"),
        (_, Basis::HouseWeek) => said!("Times a week, all together", "Veces a la semana, entre todos"),
    }
}

/// What its amount is for.
pub fn each(habit: Habit) -> &'static str {
    match habit {
        Habit::Drinking | Habit::Cooking => said!("Water a day, each person", "Agua al día, cada persona"),
        Habit::Taps => said!("Water a minute", "Agua por minuto"),
        Habit::Toilet => said!("Water a flush", "Agua por descarga"),
        Habit::Laundry | Habit::Dishwasher => said!("Water a load", "Agua por carga"),
        _ => said!("Water each time", "Agua cada vez"),
    }
}

/// The published figures of a habit with their sources, in the order of `Habit::figures`.
pub const fn figures(habit: Habit) -> &'static [Phrase] {
    match habit {
        Habit::Drinking => &[
            phrase!("Sphere Handbook, 2.5 to 3\u{a0}L (from memory)", "Sphere Handbook, 2,5 a 3\u{a0}L (de memoria)"),
            phrase!(
                "2\u{a0}L, WHO's assumption for adults (from memory)",
                "2\u{a0}L, lo que supone la OMS para adultos (de memoria)",
            ),
        ],
        Habit::Cooking => &[
            phrase!(
                "Sphere Handbook, upper end, 6\u{a0}L (from memory)",
                "Sphere Handbook, extremo superior, 6\u{a0}L (de memoria)",
            ),
            phrase!(
                "Sphere Handbook, lower end, 3\u{a0}L (from memory)",
                "Sphere Handbook, extremo inferior, 3\u{a0}L (de memoria)",
            ),
        ],
        Habit::Taps => &[
            phrase!(
                "WaterSense faucet, 1.5 US gal/min (from memory)",
                "Grifo WaterSense, 1,5\u{a0}gal de EE.\u{a0}UU./min (de memoria)",
            ),
            phrase!(
                "US federal maximum, 2.2 US gal/min (from memory)",
                "Máximo federal de EE.\u{a0}UU., 2,2\u{a0}gal de EE.\u{a0}UU./min (de memoria)",
            ),
        ],
        Habit::Shower => &[
            phrase!(
                "5 minutes at WaterSense's 2.0 US gal/min (from memory)",
                "5 minutos a los 2,0\u{a0}gal de EE.\u{a0}UU./min de WaterSense (de memoria)",
            ),
            phrase!(
                "Mean of WRF 4309b, 2016, 15.8 US gal (from memory)",
                "Promedio de WRF 4309b, 2016, 15,8\u{a0}gal de EE.\u{a0}UU. (de memoria)",
            ),
            phrase!(
                "From a bucket, 15\u{a0}L (common practice, no source)",
                "Con un balde, 15\u{a0}L (práctica común, sin fuente)",
            ),
        ],
        Habit::Bath => &[
            phrase!(
                "Mean of WRF 4309b, 2016, 20.2 US gal (from memory)",
                "Promedio de WRF 4309b, 2016, 20,2\u{a0}gal de EE.\u{a0}UU. (de memoria)",
            ),
            phrase!(
                "Half a tub, 100\u{a0}L (common practice, no source)",
                "Media tina, 100\u{a0}L (práctica común, sin fuente)"
            ),
        ],
        Habit::Toilet => &[
            phrase!("WaterSense, 1.28 US gal (from memory)", "WaterSense, 1,28\u{a0}gal de EE.\u{a0}UU. (de memoria)"),
            phrase!(
                "US federal maximum, 1.6 US gal (from memory)",
                "Máximo federal de EE.\u{a0}UU., 1,6\u{a0}gal de EE.\u{a0}UU. (de memoria)",
            ),
            phrase!(
                "US toilet from before 1994, 3.5 US gal (from memory)",
                "Inodoro de EE.\u{a0}UU. de antes de 1994, 3,5\u{a0}gal de EE.\u{a0}UU. (de memoria)",
            ),
            phrase!("Dry toilet, none", "Inodoro seco, nada"),
        ],
        Habit::Laundry => &[
            phrase!(
                "Mean of WRF 4309b, 2016, 31 US gal (from memory)",
                "Promedio de WRF 4309b, 2016, 31\u{a0}gal de EE.\u{a0}UU. (de memoria)",
            ),
            phrase!(
                "ENERGY STAR washer, 14 US gal (from memory)",
                "Lavadora ENERGY STAR, 14\u{a0}gal de EE.\u{a0}UU. (de memoria)",
            ),
            phrase!(
                "By hand, 40\u{a0}L (common practice, no source)",
                "A mano, 40\u{a0}L (práctica común, sin fuente)"
            ),
        ],
        Habit::Dishes => &[phrase!(
            "Two basins, 15\u{a0}L (common practice, no source)",
            "Dos palanganas, 15\u{a0}L (práctica común, sin fuente)",
        )],
        Habit::Dishwasher => &[
            phrase!("WRF 4309b, 2016, 6.1 US gal", "WRF 4309b, 2016, 6,1\u{a0}gal de EE.\u{a0}UU."),
            phrase!(
                "ENERGY STAR limit, 3.5 US gal (from memory)",
                "Límite de ENERGY STAR, 3,5\u{a0}gal de EE.\u{a0}UU. (de memoria)",
            ),
        ],
        Habit::Cleaning => &[phrase!(
            "A bucket, 10\u{a0}L (common practice, no source)",
            "Un balde, 10\u{a0}L (práctica común, sin fuente)"
        )],
    }
}

/// What they come to in L a day in all, for so many people, and by the names of the uses that they belong to.
pub fn total(by_use: &[(String, f64)], people: f64, units: &Units) -> String {
    if by_use.is_empty() {
        return phrase!("No habit belongs to a use yet.", "Ningún hábito pertenece todavía a un uso.").to_owned();
    }
    let flow = |litres: f64| shown::figure(litres, Kind::Flow, units);
    let total: f64 = by_use.iter().map(|(_, litres)| litres).sum();
    let part =
        |(name, litres): &(String, f64)| say!("{flow} to {name}", "{flow} para {name}", flow = flow(*litres), name);
    let each = if people > 0.0 {
        say!(", {flow} each person", ", {flow} por persona", flow = flow(total / people))
    } else {
        String::new()
    };
    say!(
        "{total} in all{each}: {parts}.",
        "{total} en total{each}: {parts}.",
        total = flow(total),
        parts = super::list(&by_use.iter().map(part).collect::<Vec<_>>()),
        each
    )
}

/// It is drunk from a use that isn't for drinking.
pub fn drunk_amiss(using: &str) -> String {
    say!(
        "{using} isn't a use for drinking, so nothing here asks whether its water is fit to drink: say on its sheet that \
         it is for drinking, or take that water from elsewhere.",
        "{using} no es un uso para beber, así que aquí nada pregunta si su agua es potable: indica en su hoja que es \
         para beber, o toma esa agua de otra parte.",
        using
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_figure_names_where_it_is_from() {
        for habit in Habit::ALL {
            assert_eq!(figures(habit).len(), habit.figures().len(), "{habit:?}");
        }
    }
}

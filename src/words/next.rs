//! Words of what to change next, and of options side by side.

use super::{count, list, number_text, percent};
use crate::engine::sizing::smallest::Sought;
use crate::engine::upgrades::{Judged, RankBy, Tally};
use crate::language::{Phrase, capital};
use crate::quantity::{Kind, Units, shown};
use crate::site::part::PartId;
use crate::site::prices::Priced;
use crate::site::system::System;
use crate::site::upgrade::{Into, Upgrade};

/// What a change is, as one would tell somebody to make it: "Collect Porch into Kitchen corner".
pub fn title(upgrade: &Upgrade, system: &System, units: &Units) -> String {
    let name = |id: PartId| system.name_of(id);
    let feed = |id: PartId| system.feeds.iter().find(|feed| feed.id == id);
    let diverter = |id: PartId| feed(id).and_then(|feed| feed.diverter.as_ref());
    match upgrade {
        Upgrade::AddTank { beside, capacity } => {
            say!(
                "Put a tank of {size} beside {name}",
                "Pon un tanque de {size} junto a {name}",
                size = shown::entered(capacity.get(), Kind::Volume, units),
                name = name(*beside),
            )
        }
        Upgrade::AddRoof { like, area } => say!(
            "Add {area} of roof like {name} (a carport, a veranda) to the same downspout",
            "Añade {area} de techo como {name} (una cochera, un corredor) a la misma bajante",
            area = shown::entered(area.get(), Kind::Area, units),
            name = name(*like),
        ),
        Upgrade::Collect { section, into } => {
            let left = system
                .sections
                .iter()
                .find(|other| other.id == *section)
                .map_or(1.0, |section| 1.0 - section.collected_share());
            let what = if left < 1.0 {
                say!(
                    "the other {share} of {name}",
                    "el resto del agua de {name} ({share})",
                    share = percent(left),
                    name = name(*section),
                )
            } else {
                say!("{name}", "el agua de {name}", name = name(*section))
            };
            match into {
                Into::Feed(feed) => {
                    say!("Collect {what} into {place}", "Recoge {what} en {place}", place = name(*feed), what)
                }
                Into::NewFeed(tank) => say!(
                    "Collect {what} by a new downspout to {place}",
                    "Recoge {what} con una bajante nueva hasta {place}",
                    place = name(*tank),
                    what
                ),
            }
        }
        Upgrade::Join([one, other]) => say!(
            "Join {a} and {b} by a trunk line",
            "Une {both} con una tubería de unión",
            a = name(*one),
            b = name(*other),
            both = list(&[name(*one), name(*other)]),
        ),
        Upgrade::OpenValve(line) => say!("Open the valve of {line}", "Abre la válvula de {line}", line = name(*line)),
        Upgrade::Level { tanks, rim } => {
            let moved = |id: &PartId| {
                let by = rim.get() - system.tank(*id).map_or(0.0, crate::site::tank::Tank::overflow_elevation);
                let way = if by < 0.0 { said!("lower", "baja") } else { said!("raise", "sube") };
                say!(
                    "{way} {name} by {by}",
                    "{way} {name} {by}",
                    name = name(*id),
                    by = shown::figure(by.abs(), Kind::Length, units),
                    way
                )
            };
            say!(
                "{moves} so that the rims stand level",
                "{moves} para que los bordes queden al mismo nivel",
                moves = capital(&list(&tanks.iter().map(moved).collect::<Vec<_>>()))
            )
        }
        Upgrade::FlushVolume { feed, volume } => say!(
            "Let the diverter of {its} hold {volume} instead of {now}",
            "Haz que el desviador de {its} retenga {volume} en vez de {now}",
            its = name(*feed),
            volume = shown::entered(volume.get(), Kind::Volume, units),
            now = shown::figure(diverter(*feed).map_or(0.0, |diverter| diverter.volume.get()), Kind::Volume, units),
        ),
        Upgrade::HoleBore { feed, diameter } => say!(
            "Give the diverter of {feed} a hole of {bore}",
            "Ponle al desviador de {feed} un orificio de {bore}",
            feed = name(*feed),
            bore = shown::figure(diameter.get(), Kind::Bore, units),
        ),
        Upgrade::MendScreen { feed: id, capture } => say!(
            "Mend gutter and screen of {its} so that they pass on {share} instead of {now}",
            "Repara la canaleta y la malla de {its} para que dejen pasar {share} en vez de {now}",
            its = name(*id),
            share = percent(capture.get()),
            now = percent(feed(*id).map_or(0.0, |feed| feed.capture.get())),
        ),
        Upgrade::OverflowInto { tank, into } => say!(
            "Lead the overflow of {tank} into {into}",
            "Lleva el rebosadero de {tank} a {into}",
            tank = name(*tank),
            into = name(*into),
        ),
        Upgrade::CutUse { using, to } => say!(
            "Use {share} less for {using}",
            "Usa {share} menos para {using}",
            share = percent(1.0 - to.get()),
            using = name(*using),
        ),
        Upgrade::MendLeak(tank) => say!("Mend the leak of {tank}", "Repara la fuga de {tank}", tank = name(*tank)),
        Upgrade::Cover(tank) => say!("Cover {tank}", "Cubre {tank}", tank = name(*tank)),
    }
}

/// A change with what it comes to, in one sentence.
pub fn sentence(judged: &Judged, system: &System, units: &Units) -> String {
    format!("{}: {}", title(&judged.upgrade, system, units), brings(judged, units))
}

/// What a change comes to and costs: the sentence after its title.
pub fn brings(judged: &Judged, units: &Units) -> String {
    let mut gains = gains(&judged.before, &judged.after, units);
    // That more comes and so more spills is no reason for or against.
    if judged.spill_l_a_year() < 0.0 {
        gains.truncate(gains.len() - usize::from(is_told(judged.spill_l_a_year())));
    }
    if gains.is_empty() {
        gains.push(phrase!("nothing gained", "no se gana nada").to_owned());
    }
    format!("{}; {}.", list(&gains), price(judged, units))
}

fn price(judged: &Judged, units: &Units) -> String {
    /// Below this, in the household's currency, it is free.
    const FREE: f64 = 0.005;
    if judged.price < FREE {
        return phrase!("it costs nothing", "no cuesta nada").to_owned();
    }
    let price = say!(
        "it costs {price} {whose}",
        "cuesta {price} {whose}",
        price = shown::figure(judged.price, Kind::Money, units),
        whose = if judged.own_price {
            said!("at your prices", "a tus precios")
        } else {
            said!("at assumed prices", "a precios supuestos")
        },
    );
    match judged.price_per_l() {
        Some(per_l) => {
            let (litres, amount) = shown::thousand(units);
            say!(
                "{price}, that is {each} for each {amount} a year",
                "{price}, es decir, {each} por cada {amount} al año",
                each = shown::figure(per_l * litres, Kind::Money, units),
                price,
                amount
            )
        }
        None => price,
    }
}

/// What differs between two runs on the same rain, item by item: "11 fewer dry days in the worst year (51 instead of
/// 62)". Empty where nothing does.
fn gains(before: &Tally, after: &Tally, units: &Units) -> Vec<String> {
    let mut told = Vec::new();
    if before.worst_dry_days != after.worst_dry_days {
        told.push(say!(
            "{fewer} in the worst year ({days} instead of {before})",
            "{fewer} en el peor año ({days} en vez de {before})",
            fewer = fewer(before.worst_dry_days, after.worst_dry_days),
            days = number_text(after.worst_dry_days),
            before = number_text(before.worst_dry_days),
        ));
    }
    if before.dry_days != after.dry_days {
        // The days were named just before.
        let fewer = if told.is_empty() {
            fewer(before.dry_days, after.dry_days)
        } else {
            only_fewer(before.dry_days, after.dry_days)
        };
        told.push(say!("{fewer} over the whole record", "{fewer} en todo el registro", fewer));
    }
    let volume = |litres: f64| shown::figure(litres.abs(), Kind::Volume, units);
    let gained = before.lacking_l_a_year() - after.lacking_l_a_year();
    let wanted = |tally: &Tally| tally.yield_l_a_year() + tally.lacking_l_a_year();
    let wants_as_much = !is_told(wanted(before) - wanted(after));
    if is_told(gained) {
        told.push(if !wants_as_much {
            // Some of it is water that nobody wants any more, or that somebody does now.
            let way = if gained > 0.0 { said!("less", "menos") } else { said!("more", "más") };
            say!("{water} a year {way} lacking", "faltan {water} {way} al año", water = volume(gained), way)
        } else if gained > 0.0 {
            say!("{water} a year gained", "{water} de agua ganada al año", water = volume(gained))
        } else {
            say!("{water} a year lost", "{water} de agua perdida al año", water = volume(gained))
        });
    }
    let saved = before.spill_l_a_year() - after.spill_l_a_year();
    if is_told(saved) {
        told.push(if saved > 0.0 {
            say!("{water} a year less spilled", "{water} menos de rebose al año", water = volume(saved))
        } else {
            say!("{water} a year more spilled", "{water} más de rebose al año", water = volume(saved))
        });
    }
    told
}

/// Differences smaller than half a litre a year aren't told.
fn is_told(litres: f64) -> bool {
    litres.abs() >= 0.5
}

fn fewer(before: usize, after: usize) -> String {
    if after < before {
        count(
            before - after,
            phrase!("fewer dry day", "día de escasez menos"),
            phrase!("fewer dry days", "días de escasez menos"),
        )
    } else {
        count(
            after - before,
            phrase!("more dry day", "día de escasez más"),
            phrase!("more dry days", "días de escasez más"),
        )
    }
}

/// The same where the days were named before.
fn only_fewer(before: usize, after: usize) -> String {
    let way = if after < before { said!("fewer", "menos") } else { said!("more", "más") };
    [&number_text(before.abs_diff(after)), " ", way].concat()
}

/// How a trial or option differs from the house as it is.
pub fn difference(now: &Tally, other: &Tally, units: &Units) -> String {
    let gains = gains(now, other, units);
    if gains.is_empty() {
        return phrase!("No difference on this rain.", "Ninguna diferencia con esta lluvia.").to_owned();
    }
    capital(&list(&gains)) + "."
}

/// What is left after a step of the sequence; nothing is said of a house that wasn't dry before.
pub fn left_after(judged: &Judged) -> String {
    let after = &judged.after;
    match after.dry_days {
        0 if judged.before.dry_days == 0 => String::new(),
        0 => phrase!("Then the water never runs out on this rain.", "Con eso el agua nunca se acaba con esta lluvia.")
            .to_owned(),
        _ => say!(
            "Then {days} are left in the worst year.",
            "Con eso quedan {days} en el peor año.",
            days = count(
                after.worst_dry_days,
                phrase!("dry day", "día de escasez"),
                phrase!("dry days", "días de escasez")
            ),
        ),
    }
}

/// Where a change asks for care.
pub fn caution(upgrade: &Upgrade) -> Option<&'static str> {
    match upgrade {
        Upgrade::AddTank { .. } => Some(said!(
            "Every cubic metre weighs a tonne (each US gallon 8.3\u{a0}lb): a level base must carry it full.",
            "Cada metro cúbico pesa una tonelada (cada galón de EE.\u{a0}UU., 8,3\u{a0}lb): una base nivelada tiene que \
             soportar el tanque lleno.",
        )),
        Upgrade::AddRoof { .. } => Some(said!(
            "A roof is a building: local codes and a licensed builder say what holds it in wind. Look then whether the \
             checks of its downspout still pass: gutter, pipe and first flush carry more.",
            "Un techo es una construcción: las normas locales y un constructor autorizado dicen qué lo sostiene con \
             viento. Mira después si las comprobaciones de su bajante siguen bien: canaleta, tubo y primeras aguas \
             llevan más.",
        )),
        Upgrade::Level { .. } => Some(said!(
            "Only an empty tank can be moved, and its new base must bear it full. Pipes move with it.",
            "Solo se puede mover un tanque vacío, y su nueva base tiene que soportarlo lleno. Los tubos se mueven con \
             él.",
        )),
        Upgrade::Collect { .. } => Some(said!(
            "Work at the eaves is work at a height. Look what the roofing, flashing and paint shed before drinking \
             from it.",
            "Trabajar en el alero es trabajar en altura. Mira qué sueltan el material del techo, los tapajuntas y la \
             pintura antes de beber de ahí.",
        )),
        Upgrade::FlushVolume { .. } | Upgrade::HoleBore { .. } => Some(said!(
            "A smaller first flush or hole keeps less dirt back and clogs sooner: what reaches the tank is dirtier. Look \
             first whether the check on its downspout still says that it is enough.",
            "Menos primeras aguas o un orificio más pequeño retienen menos suciedad y se tapan antes: lo que llega al \
             tanque está más sucio. Mira antes si la comprobación de su bajante todavía dice que alcanza.",
        )),
        Upgrade::Join(_) | Upgrade::OpenValve(_) | Upgrade::OverflowInto { .. } => Some(said!(
            "Joined tanks share one contamination too: look at the water of both first.",
            "Los tanques unidos comparten también la contaminación: mira primero el agua de los dos.",
        )),
        Upgrade::MendLeak(_) => Some(said!(
            "Never enter a tank to mend it: bad air kills.",
            "Nunca entres en un tanque para repararlo: el aire viciado mata.",
        )),
        _ => None,
    }
}

/// A measure by which changes are ranked.
pub fn rank_by(by: RankBy) -> &'static str {
    match by {
        RankBy::Price => said!("Price of what it gains", "Costo de lo que gana"),
        RankBy::DryDays => said!("Dry days avoided", "Días de escasez evitados"),
        RankBy::Water => said!("Water gained", "Agua ganada"),
        RankBy::Spill => said!("Spill saved", "Rebose evitado"),
        RankBy::WorstYear => said!("The worst year", "El peor año"),
    }
}

/// What has a price.
pub fn priced(priced: Priced, units: &Units) -> String {
    match priced {
        Priced::Tank => said!("A tank: base, fittings, delivery", "Un tanque: base, accesorios, entrega"),
        Priced::TankLitre => {
            return say!(
                "and for each {amount} of it",
                "y por cada {amount} de capacidad",
                amount = shown::thousand(units).1,
            );
        }
        Priced::Gutter => said!("A gutter with downspout", "Una canaleta con bajante"),
        Priced::RoofArea => {
            return say!(
                "{amount} more of roof",
                "{amount} más de techo",
                amount = shown::entered(units.of(Kind::Area).factor, Kind::Area, units),
            );
        }
        Priced::TrunkLine => said!("A pipe with valve between tanks", "Un tubo con válvula entre tanques"),
        Priced::Levelling => said!("Raising or lowering a tank", "Subir o bajar un tanque"),
        Priced::Diverter => said!("A diverter", "Un desviador"),
        Priced::Hole => said!("A hole in a diverter", "Un orificio en un desviador"),
        Priced::Screen => said!("A mended gutter and screen", "Una canaleta y una malla reparadas"),
        Priced::OverflowPipe => said!("A pipe from an overflow", "Un tubo desde un rebosadero"),
        Priced::Leak => said!("A mended leak", "Una fuga reparada"),
        Priced::Lid => said!("A lid", "Una tapa"),
    }
    .to_owned()
}

/// What the ranking is.
pub const HOW: Phrase = phrase!(
    "Every change that makes sense for this house, each run beside it on the same rain from the same water on the first \
     day: another tank begins empty. Water gained is what no longer lacks or need be hauled; what rationing \
     cuts lacks.",
    "Cada cambio que tiene sentido para esta casa, calculado al lado de ella con la misma lluvia y desde la misma \
     agua el primer día: un tanque nuevo empieza vacío. Agua ganada es la que ya no falta ni hay que acarrear; la que \
     el racionamiento quita, falta.",
);
/// Where the prices come from.
pub const PRICES: Phrase = phrase!(
    "Round figures without a source, in no currency: put your own in their place.",
    "Cifras redondas sin fuente, en ninguna moneda: pon las tuyas en su lugar.",
);
/// When nothing can be gained.
pub const NOTHING_LACKS: Phrase = phrase!(
    "On this rain nothing lacks and nothing is hauled: there is nothing to gain.",
    "Con esta lluvia no falta nada ni se acarrea nada: no hay nada que ganar.",
);
/// When there is something to gain, but no change brings it.
pub const NOTHING_HELPS: Phrase = phrase!(
    "None of the changes that were tried brings anything by this measure.",
    "Ninguno de los cambios que se probaron aporta algo según esta medida.",
);

/// Why a trial can't be kept beside six options.
pub const NO_ROOM: Phrase = phrase!(
    "Six options are kept: take one out to keep this trial as another.",
    "Ya hay seis opciones guardadas: quita una para guardar esta prueba como otra.",
);
/// Title of the changes.
pub const WHAT_NEXT: Phrase = phrase!("What next", "Qué sigue");
/// Begins the work.
pub const JUDGE: Phrase = phrase!("Find what helps most", "Buscar lo que más ayuda");
/// While it goes on.
pub const JUDGING: Phrase = phrase!("Running every change", "Calculando cada cambio");
/// So many changes were run.
pub fn judged(changes: usize) -> String {
    let changes = super::count(
        changes,
        phrase!("change was run", "cambio calculado"),
        phrase!("changes were run", "cambios calculados"),
    );
    say!("{changes}, the best first.", "{changes}, el mejor primero.", changes)
}

/// Label of the measures.
pub const RANKED_BY: Phrase = phrase!("Ranked by", "Ordenado por");
/// Title of the sequence.
pub const ONE_AFTER_ANOTHER: Phrase = phrase!("One after the other", "Uno tras otro");
/// What the sequence is.
pub const SEQUENCE: Phrase = phrase!(
    "Each step is the best by then: what it brings depends on those before.",
    "Cada paso es el mejor en ese momento: lo que aporta depende de los anteriores.",
);
/// Title of the prices.
pub const PRICES_TITLE: Phrase = phrase!("Prices", "Precios");
/// When the house is no longer the one that was judged.
pub const STALE: Phrase = phrase!(
    "The house has changed since: find anew what helps most.",
    "La casa cambió desde entonces: busca de nuevo lo que más ayuda.",
);
/// Title of the options.
pub const OPTIONS: Phrase = phrase!("Options", "Opciones");
/// What they are.
pub const SIDE_BY_SIDE: Phrase = phrase!(
    "Kept beside the house, up to six, and run on the same rain from the water that the house has on the first day. What was \
     changed in the house since isn't in them.",
    "Guardadas al lado de la casa, hasta seis, y calculadas con la misma lluvia desde el agua que la casa tiene el \
     primer día. Lo que cambió después en la casa no está en ellas.",
);
/// The house among its options.
pub const THE_HOUSE: Phrase = phrase!("House as it is", "La casa como está");
/// An option without figures.
pub const CANNOT_RUN: Phrase = phrase!(
    "This can't run: open it and mend what is missing.",
    "Esto no puede funcionar: ábrelo y corrige lo que falta.",
);
/// A trial that can't run, where it is open.
pub const TRIAL_CANNOT_RUN: Phrase =
    phrase!("It can't run as it is: House says what is missing.", "Así no puede funcionar: en Casa dice qué falta.");
/// A trial that can't run is not made real.
pub const TRIAL_WOULD_NOT_RUN: Phrase = phrase!(
    "This trial can't run, and your house can, so the house stays as it is. House says what the trial is missing; or throw \
     it away.",
    "Esta prueba no puede funcionar y tu casa sí, así que la casa se queda como está. En Casa dice qué le falta a la \
     prueba; o descártala.",
);
/// An option without a better name.
pub const OPTION: Phrase = phrase!("Option", "Opción");
/// A name for an option that has none: the sizes by which it differs from the house, and the share of the rain that it is run
/// on.
pub fn option_name(house: &System, option: &System, rain: f64, units: &Units) -> String {
    let mut sizes = Vec::new();
    for sought in Sought::ALL {
        let size = |system| shown::figure(sought.of_system(system), super::size::kind(sought), units);
        let (now, then) = (size(house), size(option));
        if now != then {
            sizes.push([super::size::name(sought), &then].join(" "));
        }
    }
    if rain != 1.0 {
        sizes.push(say!("Rain {share}", "Lluvia {share}", share = percent(rain)));
    }
    if sizes.is_empty() { OPTION.to_owned() } else { sizes.join(", ") }
}

/// Label of its name.
pub const OPTION_NAME: Phrase = phrase!("Name of the option", "Nombre de la opción");
/// Keeps a trial as an option.
pub const KEEP_OPTION: Phrase = phrase!("Keep as an option", "Guardar como opción");
/// Makes a trial the house.
pub const MAKE_REAL: Phrase = phrase!("Make it real", "Hacerla real");
/// Gives a trial up.
pub const THROW_AWAY: Phrase = phrase!("Throw it away", "Descartarla");
/// On the sheet of a part of a trial.
pub const SHEET_OF_TRIAL: Phrase = phrase!(
    "This is a trial: what you change here leaves the house as it is.",
    "Esto es una prueba: lo que cambies aquí deja la casa como está.",
);
/// Opens a trial from a sheet.
pub const OPEN_TRIAL: Phrase = phrase!("Try changes beside the house", "Probar cambios al lado de la casa");
/// A trial took the place of another one.
pub const TRIAL_OPENED: Phrase =
    phrase!("This trial took the place of the one before.", "Esta prueba tomó el lugar de la anterior.");
/// A trial was given up.
pub const TRIAL_DROPPED: Phrase =
    phrase!("The trial is gone; the house is as it was.", "La prueba se descartó; la casa está como antes.");

/// An option was kept.
pub fn option_kept(name: &str) -> String {
    say!("“{name}” is kept as an option.", "«{name}» se guardó como opción.", name)
}

/// That a trial is open.
pub fn trial_open(name: &str, difference: &str) -> String {
    let name = if name.is_empty() { String::new() } else { say!(" “{name}”", " «{name}»", name) };
    say!(
        "Trial{name}. {difference} What you change goes to it; the house stays as it is.",
        "Prueba{name}. {difference} Lo que cambies va a ella; la casa queda como está.",
        name,
        difference
    )
}

/// The name of a trial of so many steps.
pub fn steps_name(steps: usize) -> String {
    say!(
        "{steps} of the sequence",
        "{steps} de la secuencia",
        steps = count(steps, phrase!("step", "paso"), phrase!("steps", "pasos"))
    )
}

/// Tries the sequence up to a step.
pub fn up_to_here(step: usize) -> &'static str {
    if step == 1 { said!("Try it", "Probarlo") } else { said!("Try all up to here", "Probar todo hasta aquí") }
}

/// So many changes are folded away.
pub fn others(number: usize) -> String {
    count(number, phrase!("other change", "cambio más"), phrase!("other changes", "cambios más"))
}

/// That an option has other rain or is reckoned otherwise; nothing for neither.
pub fn apart(rain: f64, reckoned_otherwise: bool) -> String {
    let mut text = String::new();
    if (rain - 1.0).abs() >= 1e-9 {
        text = say!(" With {share} of the rain.", " Con {share} de la lluvia.", share = percent(rain));
    }
    if reckoned_otherwise {
        text.push_str(said!(" Reckoned in its own way.", " Calculada a su propia manera."));
    }
    text
}

/// Of a trial that a house can't be made of.
pub const TRIAL_TOO_LARGE: Phrase = phrase!(
    "This can't be kept as it is: a tank or a roof would be larger than any that can be entered.",
    "Esto no se puede guardar como está: un tanque o un techo sería más grande que cualquiera que se pueda escribir.",
);
/// That a trial is the house now.
pub fn trial_kept(reckoning: bool) -> &'static str {
    if reckoning {
        said!(
            "The change is now part of the house, and so is the way in which the trial was reckoned.",
            "El cambio ya es parte de la casa, y también la manera en que se calculó la prueba.",
        )
    } else {
        said!("The change is now part of the house.", "El cambio ya es parte de la casa.")
    }
}
/// With a trial that can't run in sizing: what is whose.
pub const WHOSE_WITHOUT: Phrase = phrase!(
    "With these changes the house can't run: this is the house as it is.",
    "Con estos cambios la casa no puede funcionar: esto es de la casa como está.",
);
/// With a trial in sizing: what is whose.
pub const WHOSE: Phrase = phrase!(
    "This is the house as it is, and so are “How big” and “What next”. “What if”, the charts and the figures are of the trial.",
    "Esto es de la casa como está, y también «De qué tamaño» y «Qué sigue». «¿Y si…?», los gráficos y las cifras son de la prueba.",
);

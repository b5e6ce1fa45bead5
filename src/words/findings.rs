//! What keeps a system from working, and what to do about it.

use super::parts;
use crate::quantity::{Units, shown};
use crate::site::climate::ClimateValue;
use crate::site::findings::Finding;
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::tank::OverflowTo;
use crate::site::unused::Unused;

/// The finding as a sentence: what, where, what to do.
pub fn sentence(finding: &Finding, system: &System, units: &Units) -> String {
    let name = |part: &PartId| match system.name_of(*part) {
        name if name.is_empty() => say!("part {number}", "parte {number}", number = part.0),
        name => name,
    };
    match finding {
        Finding::NoTank => phrase!("There is no tank. Add one.", "No hay ningún tanque. Añade uno.").to_owned(),
        Finding::NoUse => phrase!("Nothing draws water. Add a use.", "Nada saca agua. Añade un uso.").to_owned(),
        Finding::OutOfRange { part, field, kind, value, range } => {
            let label = parts::label(*field, system);
            say!(
                "{name}: {lower} is {value}; it must be between {least} and {greatest}. Change it.",
                "{name}: «{label}» es {value}; debe estar entre {least} y {greatest}. Cámbialo.",
                name = name(part),
                lower = label.to_ascii_lowercase(),
                value = shown::entered(*value, *kind, units),
                least = shown::entered(range.least, *kind, units),
                greatest = shown::entered(range.greatest, *kind, units),
                label
            )
        }
        Finding::SharesAboveOne { section, total } => say!(
            "{name} gives away {total} of its water. Lower its shares until they come to 100\u{a0}% at most.",
            "{name} reparte {total} de su agua. Baja sus porcentajes hasta que sumen 100\u{a0}% como mucho.",
            name = name(section),
            total = super::percent(*total)
        ),
        Finding::FeedWithoutTank(feed) => say!(
            "{name} fills no tank. Choose the tank that it fills.",
            "{name} no llena ningún tanque. Elige el tanque que llena.",
            name = name(feed)
        ),
        Finding::UseWithoutTank(using) => say!(
            "{name} draws on no tank. Choose one.",
            "{name} no saca agua de ningún tanque. Elige uno.",
            name = name(using)
        ),
        Finding::HaulingWithoutTank(hauling) => say!(
            "{name} goes to no tank. Choose one.",
            "{name} no va a ningún tanque. Elige uno.",
            name = name(hauling)
        ),
        Finding::GardenWithoutClimate(garden) => say!(
            "{name} follows the weather, but not all of the climate is known. Fill in “Climate for gardens” among its \
             values.",
            "{name} depende del tiempo, pero no se conoce todo el clima. Completa «Clima para huertos» entre sus valores.",
            name = name(garden)
        ),
        Finding::ClimateFault(_, value) => {
            let climate = super::garden::climate_value(*value);
            match value {
                ClimateValue::Least(_) => say!(
                    "Climate: {climate} is above the daily high of the month, or no temperature at all. Change one of them.",
                    "Clima: «{climate}» supera la máxima diaria del mes, o no es una temperatura. Cambia una de las dos.",
                    climate
                ),
                _ => say!(
                    "Climate: {climate} can't be. Change it.",
                    "Clima: «{climate}» no es posible. Cámbialo.",
                    climate
                ),
            }
        }
        Finding::RationWithoutTank(step) => say!(
            "{name} looks at no tank's store. Choose a tank.",
            "{name} no mira el depósito de ningún tanque. Elige un tanque.",
            name = name(step)
        ),
        Finding::TrunkLineOpenEnded(line) => say!(
            "{name} lacks an end. Choose both tanks.",
            "A {name} le falta un extremo. Elige los dos tanques.",
            name = name(line)
        ),
        Finding::TrunkLineToItself(line) => say!(
            "{name} begins and ends at one tank. Choose another for one end.",
            "{name} empieza y termina en un mismo tanque. Elige otro para un extremo.",
            name = name(line)
        ),
        Finding::PumpOpenEnded(pump) => say!(
            "{name} lacks a tank. Choose the one that it draws on and the one that it fills.",
            "A {name} le falta un tanque. Elige el tanque del que saca agua y el que llena.",
            name = name(pump)
        ),
        Finding::PumpToItself(pump) => say!(
            "{name} fills the store that it draws on. Choose another tank, or shut the valve between them.",
            "{name} llena el mismo depósito del que saca agua. Elige otro tanque, o cierra la válvula entre ellos.",
            name = name(pump)
        ),
        Finding::PumpStopsBelowStart(pump) => say!(
            "{name} stops below the level at which it starts. Raise the stop level.",
            "{name} se detiene por debajo del nivel en que arranca. Sube el nivel de parada.",
            name = name(pump)
        ),
        Finding::OutletAboveOverflow(tank) => say!(
            "{name}: the outlet is above the overflow. Lower the outlet or raise the overflow.",
            "{name}: la salida está por encima del rebosadero. Baja la salida o sube el rebosadero.",
            name = name(tank)
        ),
        Finding::OverflowAboveRim(tank) => say!(
            "{name}: the overflow is above the rim. Lower it, or make the tank higher.",
            "{name}: el rebosadero está por encima del borde. Bájalo, o haz más alto el tanque.",
            name = name(tank)
        ),
        Finding::ConeAboveRim(tank) => say!(
            "{name}: the cone is higher than the tank. Make one of them fit.",
            "{name}: el cono es más alto que el tanque. Ajusta uno de los dos.",
            name = name(tank)
        ),
        Finding::TableNotRising { tank, row: 0 } => say!(
            "{name} has no rows in its table. Give at least one depth with its volume.",
            "{name} no tiene filas en su tabla. Da al menos una profundidad con su volumen.",
            name = name(tank)
        ),
        Finding::TableNotRising { tank, row } => say!(
            "{name}: row {row} of the table is not above the one before. Depths (to 30\u{a0}m) and volumes must both rise.",
            "{name}: la fila {row} de la tabla no supera a la anterior. Tanto las profundidades (hasta 30\u{a0}m) como los \
             volúmenes deben subir.",
            name = name(tank),
            row
        ),
        Finding::SpillLoop(tanks) => {
            let names: Vec<String> = tanks.iter().map(name).collect();
            if let [tank] = names.as_slice() {
                say!(
                    "{tank} overflows into its own store. Send the overflow elsewhere.",
                    "{tank} rebosa en su propio depósito. Lleva el rebose a otra parte.",
                    tank
                )
            } else {
                say!(
                    "The overflows of {tanks} lead in a circle. Send one of them elsewhere.",
                    "Los rebosaderos de {tanks} forman un círculo. Lleva uno de ellos a otra parte.",
                    tanks = super::list(&names)
                )
            }
        }
        Finding::HauledTwice(hauling) => say!(
            "{name} fills a store that other hauled water fills already. Remove one of them.",
            "{name} llena un depósito que ya llena otra agua acarreada. Quita una de las dos.",
            name = name(hauling)
        ),
        Finding::Orphan { part, names } => say!(
            "{name} names part {number}, which is not there. Choose another.",
            "{name} apunta a la parte {number}, que no está. Elige otra.",
            name = name(part),
            number = names.0
        ),
        Finding::SharedIdentity(part) => say!(
            "Two parts have the identity {number}, {name} among them. Remove one and add it anew.",
            "Dos partes tienen la identidad {number}, entre ellas {name}. Quita una y añádela de nuevo.",
            number = part.0,
            name = name(part)
        ),
    }
}

/// What does nothing for the house, as a sentence.
pub fn unused(unused: Unused, system: &System) -> String {
    let name = system.name_of(unused.part());
    match unused {
        Unused::NoArea(_) => say!(
            "{name} has an area of 0, so no rain is caught there. Enter its area.",
            "{name} tiene un área de 0, así que ahí no se capta lluvia. Escribe su área.",
            name
        ),
        Unused::NoRoof(_) => say!(
            "No roof gives {name} any water: open a roof and give it a share.",
            "Ningún techo le da agua a {name}: abre un techo y dale una parte.",
            name
        ),
        Unused::Undrawn(_) => say!(
            "Water comes to {name}, but no use can reach it: choose for a use to draw on it, or lead it on to a tank that \
             is drawn on.",
            "A {name} le llega agua, pero ningún uso la alcanza: haz que un uso saque de ahí, o llévala a un tanque del \
             que se saca.",
            name
        ),
        Unused::TooHigh(_) => say!(
            "{name} stands too high for the tanks that it is joined with: they run over before water reaches its outlet, so \
             nothing can be drawn from it. Shut its valve or take the pipe away, and lift water to it with a pump. Until then the \
             answer counts on water that won't come.",
            "{name} está demasiado alto para los tanques con los que está unido: se desbordan antes de que el agua llegue a \
             su salida, así que no se puede sacar nada de ahí. Cierra su válvula o quita la tubería, y sube el agua con una \
             bomba. Hasta entonces la respuesta cuenta con agua que no llegará.",
            name
        ),
        Unused::Uphill(tank) => say!(
            "The overflow of {name} is lower than the level to which {to} fills: water doesn't run up. Lead it somewhere lower, \
             or lift the water with a pump. Until then the answer counts on water that won't come.",
            "El rebose de {name} está más bajo que el nivel al que se llena {to}: el agua no sube. Llévalo a un lugar más \
             bajo, o sube el agua con una bomba. Hasta entonces la respuesta cuenta con agua que no llegará.",
            name,
            to = match system.tank(tank).map(|tank| tank.overflow_to) {
                Some(OverflowTo::Tank(to)) => system.name_of(to),
                _ => String::new(),
            }
        ),
        Unused::Unreached(_) => say!(
            "{name} is drawn on, but neither rain nor other water comes to it: lead a downspout there, or draw on another \
             tank.",
            "De {name} se saca agua, pero no le llega ni lluvia ni otra agua: lleva ahí una bajante, o saca de otro \
             tanque.",
            name
        ),
    }
}

/// The part to open to mend it, where there is one.
pub fn part(finding: &Finding) -> Option<PartId> {
    match finding {
        Finding::NoTank | Finding::NoUse => None,
        Finding::OutOfRange { part, .. }
        | Finding::SharesAboveOne { section: part, .. }
        | Finding::FeedWithoutTank(part)
        | Finding::UseWithoutTank(part)
        | Finding::HaulingWithoutTank(part)
        | Finding::GardenWithoutClimate(part)
        | Finding::ClimateFault(part, _)
        | Finding::RationWithoutTank(part)
        | Finding::TrunkLineOpenEnded(part)
        | Finding::TrunkLineToItself(part)
        | Finding::PumpOpenEnded(part)
        | Finding::PumpToItself(part)
        | Finding::PumpStopsBelowStart(part)
        | Finding::OutletAboveOverflow(part)
        | Finding::OverflowAboveRim(part)
        | Finding::ConeAboveRim(part)
        | Finding::TableNotRising { tank: part, .. }
        | Finding::HauledTwice(part)
        | Finding::Orphan { part, .. }
        | Finding::SharedIdentity(part) => Some(*part),
        Finding::SpillLoop(tanks) => tanks.first().copied(),
    }
}

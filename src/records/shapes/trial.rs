//! A trial beside a system, or kept as an option, and what changes cost.

use super::{site, system};
use crate::quantity::Money;
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{number, object};
use crate::site::prices::{Priced, Prices};
use crate::site::trial::{FACTOR, Levers, Trial};

/// Reads a trial.
///
/// # Errors
/// Where its shape is not that of any version.
pub fn read_trial(place: &Place<'_>) -> Read<Trial> {
    // Options were kept without those that are in their system.
    let factor = |key| place.at_if_any(key)?.map_or(Ok(1.0), |factor| factor.as_number_in(FACTOR));
    Ok(Trial {
        name: place.text("name")?,
        system: match place.at_if_any("system")? {
            Some(system) => Some(Box::new(system::read(&system)?)),
            None => None,
        },
        reckoning: match place.at_if_any("reckoning")? {
            Some(reckoning) => Some(Box::new(site::read_reckoning(&reckoning)?)),
            None => None,
        },
        levers: Levers {
            storage: factor("storage")?,
            roof: factor("roof")?,
            uses: factor("uses")?,
            rain: factor("rain")?,
        },
    })
}

/// Writes a trial.
pub fn write_trial(trial: &Trial) -> Value {
    let Levers { storage, roof, uses, rain } = trial.levers;
    object(vec![
        ("name", trial.name.as_str().into()),
        ("system", trial.system.as_deref().map_or(Value::Null, system::write)),
        ("reckoning", trial.reckoning.as_deref().map_or(Value::Null, site::write_reckoning)),
        ("storage", number(storage)),
        ("roof", number(roof)),
        ("uses", number(uses)),
        ("rain", number(rain)),
    ])
}

/// A price that is not there is the one to begin with.
pub(super) fn read_prices(place: &Place<'_>) -> Read<Prices> {
    let mut prices = Prices::default();
    for priced in Priced::ALL {
        if let Some(price) = place.at_if_any(name(priced))? {
            prices.set(priced, Money::coins(price.as_number()?));
        }
    }
    Ok(prices)
}

pub(super) fn write_prices(prices: &Prices) -> Value {
    object(Priced::ALL.map(|priced| (name(priced), number(prices.of(priced).get()))).into())
}

fn name(priced: Priced) -> &'static str {
    match priced {
        Priced::Tank => "tank",
        Priced::TankLitre => "tank_litre",
        Priced::Gutter => "gutter",
        Priced::RoofArea => "roof_area",
        Priced::TrunkLine => "trunk_line",
        Priced::Levelling => "levelling",
        Priced::Diverter => "diverter",
        Priced::Hole => "hole",
        Priced::Screen => "screen",
        Priced::OverflowPipe => "overflow_pipe",
        Priced::Leak => "leak",
        Priced::Lid => "lid",
    }
}

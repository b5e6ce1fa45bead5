//! Options beside a system, and what changes cost.

use super::system;
use crate::quantity::{Money, Share};
use crate::records::json::Value;
use crate::records::place::{Place, Read};
use crate::records::written::{number, object};
use crate::site::kept_option::KeptOption;
use crate::site::prices::{Priced, Prices};

pub(super) fn read(place: &Place<'_>) -> Read<KeptOption> {
    Ok(KeptOption {
        name: place.text("name")?,
        system: system::read(&place.at("system")?)?,
        rain: Share::of_one(place.number("rain")?),
    })
}

pub(super) fn write(option: &KeptOption) -> Value {
    object(vec![
        ("name", option.name.as_str().into()),
        ("system", system::write(&option.system)),
        ("rain", number(option.rain.get())),
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

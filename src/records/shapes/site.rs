//! A site, and how it is reckoned.

use super::diary::moment;
use super::{system, trial, upkeep};
use crate::quantity::Share;
use crate::quantity::range::SHARE;
use crate::records::json::Value;
use crate::records::place::{Place, Read, ShapeError};
use crate::records::written::{choice, list, number, object, twelve};
use crate::site::diary::LAST_MOMENT;
use crate::site::household::{ANNUAL_SPREAD, GENERATED_YEARS, GeneratedYears, RAIN_FACTOR, Reckoning, Site};
use crate::site::prices::Prices;
use crate::site::rain::MissingDays;
use crate::site::trial::MOST_OPTIONS;
use crate::site::upkeep::Upkeep;
use crate::site::wanted::Wanted;

/// Reads a site.
///
/// # Errors
/// Where its shape is not that of any version.
pub fn read(place: &Place<'_>) -> Read<Site> {
    Ok(Site {
        name: place.text("name")?,
        begun: place.at_if_any("begun")?.map(|_| place.large_number("begun", LAST_MOMENT)).transpose()?,
        system: system::read(&place.at("system")?)?,
        reckoning: read_reckoning(&place.at("reckoning")?)?,
        options: match place.at_if_any("options")? {
            Some(options) => options.as_list_of_most(MOST_OPTIONS, trial::read_trial)?,
            None => Vec::new(),
        },
        prices: match place.at_if_any("prices")? {
            Some(prices) => trial::read_prices(&prices)?,
            None => Prices::default(),
        },
        upkeep: match place.at_if_any("upkeep")? {
            Some(upkeep) => upkeep::read(&upkeep)?,
            None => Upkeep::default(),
        },
    })
}

/// Writes a site.
pub fn write(site: &Site) -> Value {
    let mut values = vec![("name", site.name.as_str().into())];
    values.extend(site.begun.map(|begun| ("begun", moment(begun))));
    values.extend([
        ("system", system::write(&site.system)),
        ("reckoning", write_reckoning(&site.reckoning)),
        ("options", list(&site.options, trial::write_trial)),
        ("prices", trial::write_prices(&site.prices)),
        ("upkeep", upkeep::write(&site.upkeep)),
    ]);
    object(values)
}

pub(super) fn read_reckoning(place: &Place<'_>) -> Read<Reckoning> {
    let share = |key| Ok::<_, Box<ShapeError>>(Share::of_one(place.at(key)?.as_number_in(SHARE)?));
    Ok(Reckoning {
        start: share("start")?,
        inflow_first: share("inflow_first")?,
        missing_days: read_missing_days(&place.at("missing_days")?)?,
        rain_factors: place.at("rain_factors")?.as_twelve_in(RAIN_FACTOR)?.map(Share::of_one),
        generated: match place.at_if_any("generated")? {
            Some(generated) => Some(read_generated(&generated)?),
            None => None,
        },
        wanted: match place.at_if_any("wanted")? {
            Some(wanted) => read_wanted(&wanted)?,
            None => Wanted::default(),
        },
    })
}

fn read_wanted(place: &Place<'_>) -> Read<Wanted> {
    let (name, held) = place.as_choice()?;
    Ok(match name {
        #[expect(clippy::cast_possible_truncation, reason = "no larger number is read")]
        "good_years_in_ten" => Wanted::GoodYears(held.as_whole_number(10)? as u8),
        "days" => Wanted::Days(Share::of_one(held.as_number_in(SHARE)?)),
        "water" => Wanted::Water(Share::of_one(held.as_number_in(SHARE)?)),
        _ => return Err(place.unknown(name)),
    })
}

fn write_wanted(wanted: Wanted) -> Value {
    match wanted {
        Wanted::GoodYears(tenths) => choice("good_years_in_ten", tenths.into()),
        Wanted::Days(share) => choice("days", number(share.get())),
        Wanted::Water(share) => choice("water", number(share.get())),
    }
}

fn read_generated(place: &Place<'_>) -> Read<GeneratedYears> {
    let years = place.at("years")?;
    years.as_number_in(GENERATED_YEARS)?;
    #[expect(clippy::cast_possible_truncation, reason = "no larger number is read")]
    let years = years.as_whole_number(u16::MAX.into())? as u16;
    Ok(GeneratedYears {
        years,
        seed: place.at("seed")?.as_whole_number(u32::MAX)?,
        spread: match place.at_if_any("spread")? {
            Some(spread) => Some(Share::of_one(spread.as_number_in(ANNUAL_SPREAD)?)),
            None => None,
        },
    })
}

fn write_generated(generated: GeneratedYears) -> Value {
    object(vec![
        ("years", generated.years.into()),
        ("seed", generated.seed.into()),
        ("spread", generated.spread.map_or(Value::Null, |spread| number(spread.get()))),
    ])
}

pub(super) fn write_reckoning(reckoning: &Reckoning) -> Value {
    object(vec![
        ("start", number(reckoning.start.get())),
        ("inflow_first", number(reckoning.inflow_first.get())),
        ("missing_days", write_missing_days(reckoning.missing_days)),
        ("rain_factors", twelve(reckoning.rain_factors.map(Share::get))),
        ("generated", reckoning.generated.map_or(Value::Null, write_generated)),
        ("wanted", write_wanted(reckoning.wanted)),
    ])
}

fn read_missing_days(place: &Place<'_>) -> Read<MissingDays> {
    let (name, held) = place.as_choice()?;
    Ok(match name {
        "leave_out_years" => {
            #[expect(clippy::cast_possible_truncation, reason = "no larger number is read")]
            let with_more_than = held.at("with_more_than")?.as_whole_number(u16::MAX.into())? as u16;
            MissingDays::LeaveOutYears { with_more_than }
        }
        "fill" => MissingDays::Fill,
        _ => return Err(place.unknown(name)),
    })
}

fn write_missing_days(missing: MissingDays) -> Value {
    match missing {
        MissingDays::LeaveOutYears { with_more_than } => {
            choice("leave_out_years", object(vec![("with_more_than", with_more_than.into())]))
        }
        MissingDays::Fill => "fill".into(),
    }
}

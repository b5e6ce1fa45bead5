//! What keeps a system from working, and what to do about it.

use super::parts;
use crate::quantity::{Units, shown};
use crate::site::climate::ClimateValue;
use crate::site::findings::Finding;
use crate::site::part::PartId;
use crate::site::system::System;

/// The finding as a sentence: what, where, what to do.
pub fn sentence(finding: &Finding, system: &System, units: &Units) -> String {
    let name = |part: &PartId| match system.name_of(*part) {
        name if name.is_empty() => format!("part {}", part.0),
        name => name,
    };
    match finding {
        Finding::NoTank => "There is no tank. Add one.".to_owned(),
        Finding::NoUse => "Nothing draws water. Add a use.".to_owned(),
        Finding::OutOfRange { part, field, kind, value, range } => format!(
            "{}: {} is {}; it must be between {} and {}. Change it.",
            name(part),
            parts::label(*field, system).to_ascii_lowercase(),
            shown::entered(*value, *kind, units),
            shown::entered(range.least, *kind, units),
            shown::entered(range.greatest, *kind, units),
        ),
        Finding::SharesAboveOne { section, total } => format!(
            "{} gives away {} of its water. Lower its shares until they come to 100\u{a0}% at most.",
            name(section),
            super::percent(*total)
        ),
        Finding::FeedWithoutTank(feed) => format!("{} fills no tank. Choose the tank that it fills.", name(feed)),
        Finding::UseWithoutTank(using) => format!("{} draws on no tank. Choose one.", name(using)),
        Finding::HaulingWithoutTank(hauling) => format!("{} goes to no tank. Choose one.", name(hauling)),
        Finding::GardenWithoutClimate(garden) => {
            format!("{} follows the weather, but the climate isn't known. Give the climate on its sheet.", name(garden))
        }
        Finding::ClimateFault(_, value) => match value {
            ClimateValue::Least(_) => format!(
                "Climate: {} is above the daily high of the month, or no temperature at all. Change one of them.",
                super::garden::climate_value(*value)
            ),
            _ => format!("Climate: {} can't be. Change it.", super::garden::climate_value(*value)),
        },
        Finding::RationWithoutTank(step) => format!("{} looks at no tank's store. Choose a tank.", name(step)),
        Finding::TrunkLineOpenEnded(line) => format!("{} lacks an end. Choose both tanks.", name(line)),
        Finding::TrunkLineToItself(line) => {
            format!("{} begins and ends at one tank. Choose another for one end.", name(line))
        }
        Finding::PumpOpenEnded(pump) => {
            format!("{} lacks a tank. Choose the one that it draws on and the one that it fills.", name(pump))
        }
        Finding::PumpToItself(pump) => format!(
            "{} fills the store that it draws on. Choose another tank, or shut the valve between them.",
            name(pump)
        ),
        Finding::PumpStopsBelowStart(pump) => {
            format!("{} stops below the level at which it starts. Raise the stop level.", name(pump))
        }
        Finding::OutletAboveOverflow(tank) => {
            format!("{}: the outlet is above the overflow. Lower the outlet or raise the overflow.", name(tank))
        }
        Finding::OverflowAboveRim(tank) => {
            format!("{}: the overflow is above the rim. Lower it, or make the tank higher.", name(tank))
        }
        Finding::ConeAboveRim(tank) => {
            format!("{}: the cone is higher than the tank. Make one of them fit.", name(tank))
        }
        Finding::TableNotRising { tank, row: 0 } => {
            format!("{} has no rows in its table. Give at least one depth with its volume.", name(tank))
        }
        Finding::TableNotRising { tank, row } => format!(
            "{}: row {row} of the table is not above the one before. Depths (to 30 m) and volumes must both rise.",
            name(tank)
        ),
        Finding::SpillLoop(tanks) => {
            let names: Vec<String> = tanks.iter().map(name).collect();
            if names.len() == 1 {
                format!("{} overflows into its own store. Send the overflow elsewhere.", names[0])
            } else {
                format!("The overflows of {} lead in a circle. Send one of them elsewhere.", super::list(&names))
            }
        }
        Finding::HauledTwice(hauling) => {
            format!("{} fills a store that other hauled water fills already. Remove one of them.", name(hauling))
        }
        Finding::Orphan { part, names } => {
            format!("{} names part {}, which is not there. Choose another.", name(part), names.0)
        }
        Finding::SharedIdentity(part) => {
            format!("Two parts have the identity {}, {} among them. Remove one and add it anew.", part.0, name(part))
        }
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

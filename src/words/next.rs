//! Words of what to change next, and of options side by side.

use super::{count, list, number_text, percent};
use crate::engine::upgrades::{Judged, RankBy, Tally};
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
            format!("Put a tank of {} beside {}", shown::entered(capacity.get(), Kind::Volume, units), name(*beside))
        }
        Upgrade::Collect { section, into } => {
            let left = system
                .sections
                .iter()
                .find(|other| other.id == *section)
                .map_or(1.0, |section| 1.0 - section.collected_share());
            let what =
                if left < 1.0 { format!("the other {} of {}", percent(left), name(*section)) } else { name(*section) };
            match into {
                Into::Feed(feed) => format!("Collect {what} into {}", name(*feed)),
                Into::NewFeed(tank) => format!("Collect {what} by a new downspout to {}", name(*tank)),
            }
        }
        Upgrade::Join([one, other]) => format!("Join {} and {} by a trunk line", name(*one), name(*other)),
        Upgrade::OpenValve(line) => format!("Open the valve of {}", name(*line)),
        Upgrade::Level { tanks, rim } => {
            let moved = |id: &PartId| {
                let by = rim.get() - system.tank(*id).map_or(0.0, crate::site::tank::Tank::overflow_elevation);
                let way = if by < 0.0 { "lower" } else { "raise" };
                format!("{way} {} by {}", name(*id), shown::figure(by.abs(), Kind::Length, units))
            };
            capital(&list(&tanks.iter().map(moved).collect::<Vec<_>>())) + " so that the rims stand level"
        }
        Upgrade::FlushVolume { feed, volume } => format!(
            "Let the diverter of {} hold {} instead of {}",
            name(*feed),
            shown::entered(volume.get(), Kind::Volume, units),
            shown::figure(diverter(*feed).map_or(0.0, |diverter| diverter.volume.get()), Kind::Volume, units)
        ),
        Upgrade::HoleBore { feed, diameter } => format!(
            "Give the diverter of {} a hole of {}",
            name(*feed),
            shown::figure(diameter.get(), Kind::Bore, units)
        ),
        Upgrade::MendScreen { feed: id, capture } => format!(
            "Mend gutter and screen of {} so that they pass on {} instead of {}",
            name(*id),
            percent(capture.get()),
            percent(feed(*id).map_or(0.0, |feed| feed.capture.get()))
        ),
        Upgrade::OverflowInto { tank, into } => format!("Lead the overflow of {} into {}", name(*tank), name(*into)),
        Upgrade::CutUse { using, to } => format!("Use {} less for {}", percent(1.0 - to.get()), name(*using)),
        Upgrade::MendLeak(tank) => format!("Mend the leak of {}", name(*tank)),
        Upgrade::Cover(tank) => format!("Cover {}", name(*tank)),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().to_string() + letters.as_str()).unwrap_or_default()
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
        gains.push("nothing gained".to_owned());
    }
    format!("{}; {}.", list(&gains), price(judged, units))
}

fn price(judged: &Judged, units: &Units) -> String {
    /// Below this, in the household's currency, it is free.
    const FREE: f64 = 0.005;
    if judged.price < FREE {
        return "it costs nothing".to_owned();
    }
    let price = format!("it costs {}", shown::figure(judged.price, Kind::Money, units));
    match judged.price_per_l() {
        Some(per_l) => {
            let (litres, amount) = shown::thousand(units);
            format!("{price}, that is {} for each {amount} a year", shown::figure(per_l * litres, Kind::Money, units))
        }
        None => price,
    }
}

/// What differs between two runs on the same rain, item by item: "11 fewer dry days in the worst year (51 instead of
/// 62)". Empty where nothing does.
fn gains(before: &Tally, after: &Tally, units: &Units) -> Vec<String> {
    let mut said = Vec::new();
    if before.worst_dry_days != after.worst_dry_days {
        said.push(format!(
            "{} in the worst year ({} instead of {})",
            fewer(before.worst_dry_days, after.worst_dry_days),
            number_text(after.worst_dry_days),
            number_text(before.worst_dry_days)
        ));
    }
    if before.dry_days != after.dry_days {
        let fewer = fewer(before.dry_days, after.dry_days);
        // The days were named just before.
        let fewer = if said.is_empty() { fewer } else { fewer.replace(" dry days", "").replace(" dry day", "") };
        said.push(format!("{fewer} over the whole record"));
    }
    let volume = |litres: f64| shown::figure(litres.abs(), Kind::Volume, units);
    let gained = before.lacking_l_a_year() - after.lacking_l_a_year();
    if is_told(gained) {
        said.push(format!("{} a year {}", volume(gained), if gained > 0.0 { "gained" } else { "lost" }));
    }
    let saved = before.spill_l_a_year() - after.spill_l_a_year();
    if is_told(saved) {
        said.push(format!("{} a year {} spilled", volume(saved), if saved > 0.0 { "less" } else { "more" }));
    }
    said
}

/// Differences smaller than half a litre a year aren't told.
fn is_told(litres: f64) -> bool {
    litres.abs() >= 0.5
}

fn fewer(before: usize, after: usize) -> String {
    if after < before {
        count(before - after, "fewer dry day", "fewer dry days")
    } else {
        count(after - before, "more dry day", "more dry days")
    }
}

/// How a trial or option differs from the house as it is.
pub fn difference(now: &Tally, other: &Tally, units: &Units) -> String {
    let gains = gains(now, other, units);
    if gains.is_empty() {
        return "No difference on this rain.".to_owned();
    }
    capital(&list(&gains)) + "."
}

/// What is left after a step of the sequence; nothing is said of a house that wasn't dry before.
pub fn left_after(judged: &Judged) -> String {
    let after = &judged.after;
    match after.dry_days {
        0 if judged.before.dry_days == 0 => String::new(),
        0 => "Then the water never runs out on this rain.".to_owned(),
        _ => format!("Then {} are left in the worst year.", count(after.worst_dry_days, "dry day", "dry days")),
    }
}

/// Where a change asks for care.
pub const fn caution(upgrade: &Upgrade) -> Option<&'static str> {
    match upgrade {
        Upgrade::AddTank { .. } => {
            Some("Every cubic metre weighs a tonne (each US gallon 8.3 lb): a level base must carry it full.")
        }
        Upgrade::Level { .. } => {
            Some("Only an empty tank can be moved, and its new base must bear it full. Pipes move with it.")
        }
        Upgrade::Collect { .. } => Some(
            "Work at the eaves is work at a height. Look what the roofing, flashing and paint shed before drinking from it.",
        ),
        Upgrade::FlushVolume { .. } | Upgrade::HoleBore { .. } => Some(
            "A smaller first flush or hole keeps less dirt back and clogs sooner: what reaches the tank is dirtier.",
        ),
        Upgrade::Join(_) | Upgrade::OpenValve(_) | Upgrade::OverflowInto { .. } => {
            Some("Joined tanks share one contamination too: look at the water of both first.")
        }
        Upgrade::MendLeak(_) => Some("Never enter a tank to mend it: bad air kills."),
        _ => None,
    }
}

/// A measure by which changes are ranked.
pub const fn rank_by(by: RankBy) -> &'static str {
    match by {
        RankBy::Price => "Price of what it gains",
        RankBy::DryDays => "Dry days avoided",
        RankBy::Water => "Water gained",
        RankBy::Spill => "Spill saved",
        RankBy::WorstYear => "The worst year",
    }
}

/// What has a price.
pub fn priced(priced: Priced, units: &Units) -> String {
    match priced {
        Priced::Tank => "A tank: base, fittings, delivery",
        Priced::TankLitre => return format!("and for each {} of it", shown::thousand(units).1),
        Priced::Gutter => "A gutter with downspout",
        Priced::TrunkLine => "A pipe with valve between tanks",
        Priced::Levelling => "Raising or lowering a tank",
        Priced::Diverter => "A diverter",
        Priced::Hole => "A hole in a diverter",
        Priced::Screen => "A mended gutter and screen",
        Priced::OverflowPipe => "A pipe from an overflow",
        Priced::Leak => "A mended leak",
        Priced::Lid => "A lid",
    }
    .to_owned()
}

/// What the ranking is.
pub const HOW: &str = "Every change that makes sense for this house, each run beside it on the same rain. Water gained is what \
                       no longer lacks or need be hauled.";
/// Where the prices come from.
pub const PRICES: &str = "Round figures without a source, in no currency: put your own in their place.";
/// When nothing can be gained.
pub const NOTHING_LACKS: &str = "On this rain nothing lacks and nothing is hauled: there is nothing to gain.";
/// When there is something to gain, but no change brings it.
pub const NOTHING_HELPS: &str = "None of the changes that were tried brings anything by this measure.";

/// Title of the changes.
pub const WHAT_NEXT: &str = "What next";
/// Begins the work.
pub const JUDGE: &str = "Find what helps most";
/// While it goes on.
pub const JUDGING: &str = "Running every change";
/// Label of the measures.
pub const RANKED_BY: &str = "Ranked by";
/// Title of the sequence.
pub const ONE_AFTER_ANOTHER: &str = "One after the other";
/// What the sequence is.
pub const SEQUENCE: &str = "Each step is the best by then: what it brings depends on those before.";
/// Title of the prices.
pub const PRICES_TITLE: &str = "Prices";
/// When the house is no longer the one that was judged.
pub const STALE: &str = "The house has changed since: find anew what helps most.";
/// Title of the options.
pub const OPTIONS: &str = "Options";
/// What they are.
pub const SIDE_BY_SIDE: &str = "Kept beside the house, up to six, and run on the same rain.";
/// The house among its options.
pub const THE_HOUSE: &str = "House as it is";
/// An option without figures.
pub const CANNOT_RUN: &str = "This can't run: open it and mend what is missing.";
/// An option without a better name.
pub const OPTION: &str = "Option";
/// Label of its name.
pub const OPTION_NAME: &str = "Name of the option";
/// Keeps a trial as an option.
pub const KEEP_OPTION: &str = "Keep as an option";
/// Makes a trial the house.
pub const MAKE_REAL: &str = "Make it real";
/// Gives a trial up.
pub const THROW_AWAY: &str = "Throw it away";
/// On the sheet of a part of a trial.
pub const SHEET_OF_TRIAL: &str = "This is a trial: what you change here leaves the house as it is.";
/// Opens a trial from a sheet.
pub const OPEN_TRIAL: &str = "Try changes beside the house";
/// A trial took the place of another one.
pub const TRIAL_OPENED: &str = "This trial took the place of the one before.";
/// A trial was given up.
pub const TRIAL_DROPPED: &str = "The trial is gone; the house is as it was.";

/// An option was kept.
pub fn option_kept(name: &str) -> String {
    format!("“{name}” is kept as an option.")
}

/// That a trial is open.
pub fn trial_open(name: &str, difference: &str) -> String {
    let name = if name.is_empty() { String::new() } else { format!(" “{name}”") };
    format!("Trial{name}. {difference} What you change goes to it; the house stays as it is.")
}

/// The name of a trial of so many steps.
pub fn steps_name(steps: usize) -> String {
    count(steps, "step", "steps").to_owned() + " of the sequence"
}

/// Tries the sequence up to a step.
pub fn up_to_here(step: usize) -> &'static str {
    if step == 1 { "Try it" } else { "Try all up to here" }
}

/// So many changes are folded away.
pub fn others(number: usize) -> String {
    count(number, "other change", "other changes")
}

/// That an option has other rain; nothing for the rain as it is.
pub fn with_rain(factor: f64) -> String {
    if (factor - 1.0).abs() < 1e-9 { String::new() } else { format!(" With {} of the rain.", percent(factor)) }
}

//! Words of the diary.

use super::{date, parts, percent};
use crate::engine::diary::doubts::Doubt;
use crate::quantity::{Kind, Range, Units, shown};
use crate::site::diary::{Level, Parameter, Subject, TestResult, Told, Water};
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::work::Task;

/// An entry was written.
pub const WRITTEN: &str = "Written into the diary.";
/// An entry was taken out.
pub const REMOVED: &str = "Taken out of the diary.";
/// Nothing is in it.
pub const EMPTY: &str = "Nothing is written yet. A level now and then and the rain of each day are enough to know how \
                         long the water lasts. A day without an entry counts as unknown, never as dry.";
/// Nothing in the span.
pub const EMPTY_SPAN: &str = "Nothing is written in these days.";
/// No tank.
pub const NO_TANK: &str = "There is no tank yet. Add one to the house first.";
/// An empty note.
pub const EMPTY_NOTE: &str = "Write a word or two.";
/// Over the charts.
pub const LINE: &str = "Dots are readings; a hollow one says full, so it may have been more. The line is what the balance makes of the \
                        rain from each reading on; it ends where the rain of a day is not known.";
/// Under the chart of rain.
pub const RAIN_CAPTION: &str = "Rain as it was written down or measured. Small crosses: days nobody looked at.";

/// A number outside what may be written.
pub fn out_of_range(kind: Kind, range: Range, units: &Units) -> String {
    format!(
        "It can be written from {} to {}.",
        shown::entered(range.least, kind, units),
        shown::figure(range.greatest, kind, units)
    )
}

/// A part by its name; one that is gone is said to be.
pub fn part_name(id: PartId, system: &System) -> String {
    let name = system.name_of(id);
    if !name.is_empty() {
        return name;
    }
    let barriers = system.uses.iter().flat_map(|using| using.barriers.iter().map(move |barrier| (using, barrier)));
    let barrier = barriers.into_iter().find(|(_, barrier)| barrier.id == id);
    barrier.map_or_else(
        || "a part that is gone".to_owned(),
        |(using, barrier)| format!("{} of {}", super::treatment::barriers::name(barrier.kind), using.name),
    )
}

/// Where a level was read.
pub fn water(of: Water, system: &System) -> String {
    let tank = part_name(of.tank(), system);
    match of {
        Water::Tank(_) => tank,
        Water::Store(_) => format!("{tank} and all joined with it"),
    }
}

/// A level.
pub fn level(level: Level, units: &Units) -> String {
    match level {
        Level::Depth(depth) => format!("{} deep", shown::entered(depth.get(), Kind::Length, units)),
        Level::Share(share) => format!("{} full", percent(share.get())),
        Level::Volume(volume) => shown::entered(volume.get(), Kind::Volume, units),
        Level::Full => "full".to_owned(),
    }
}

/// That nobody drew water for so many hours before a reading.
pub fn undrawn(hours: f64) -> String {
    format!("nobody drew water for {} before", shown::entered(hours, Kind::Hours, &Units::default()))
}

/// What an entry tells, without its note.
pub fn told(told: &Told, system: &System, units: &Units) -> String {
    let at = |id: &Option<PartId>| id.map_or_else(String::new, |id| format!(", {}", part_name(id, system)));
    match told {
        Told::Level { of, level: how, undrawn: hours } => {
            let hours = hours.map_or_else(String::new, |hours| format!("; {}", undrawn(hours.get())));
            format!("{}: {}{hours}", water(*of, system), level(*how, units))
        }
        Told::Rain(depth) if depth.get() == 0.0 => "No rain".to_owned(),
        Told::Rain(depth) => format!("Rain: {}", shown::entered(depth.get(), Kind::Depth, units)),
        Told::Meter { of, reading } => {
            format!("Meter{}: {}", at(of), shown::entered(reading.get(), Kind::Volume, units))
        }
        Told::Delivery { to, volume, price } => {
            let price = price
                .map_or_else(String::new, |price| format!(", for {}", shown::entered(price.get(), Kind::Money, units)));
            format!("Brought{}: {}{price}", at(to), shown::entered(volume.get(), Kind::Volume, units))
        }
        Told::Work { on, task } => format!("{}{}", done(*task), at(on)),
        Told::Test { at: part, parameter, found } => {
            format!("Test{}: {} {}", at(part), parameter_name(*parameter), self::found(*parameter, *found))
        }
        Told::Note => String::new(),
    }
}

/// What a test found.
pub fn found(parameter: Parameter, found: TestResult) -> String {
    let unit = match super::treatment::results::unit(parameter) {
        "" => String::new(),
        unit => format!("\u{a0}{unit}"),
    };
    match found {
        TestResult::Value(value) => format!("{}{unit}", shown::significant(value, 4)),
        TestResult::Below(value) => format!("under {}{unit}", shown::significant(value, 4)),
        TestResult::Present => "present".to_owned(),
        TestResult::Absent => "absent".to_owned(),
    }
}

/// What is tested for.
pub const fn parameter_name(parameter: Parameter) -> &'static str {
    match parameter {
        Parameter::EColi => "E. coli",
        Parameter::Coliforms => "Coliforms",
        Parameter::Turbidity => "Turbidity",
        Parameter::Ph => "pH",
        Parameter::FreeChlorine => "Free chlorine",
        Parameter::Lead => "Lead",
        Parameter::Copper => "Copper",
        Parameter::Zinc => "Zinc",
        Parameter::Cadmium => "Cadmium",
        Parameter::Arsenic => "Arsenic",
        Parameter::Chromium => "Chromium",
        Parameter::Iron => "Iron",
        Parameter::Manganese => "Manganese",
        Parameter::Aluminium => "Aluminium",
        Parameter::Benzopyrene => "Benzo(a)pyrene",
        Parameter::Asbestos => "Asbestos fibres",
        Parameter::Nitrate => "Nitrate, as nitrate",
        Parameter::Conductivity => "Conductivity",
        Parameter::Transmittance => "UV transmittance",
        Parameter::Other => "Something else (say in the note)",
    }
}

/// Work as it is told once done.
pub const fn done(task: Task) -> &'static str {
    match task {
        Task::Roof => "Roof looked over",
        Task::Gutter => "Gutter cleaned",
        Task::Screen => "Leaf screen cleaned",
        Task::Diverter => "First flush emptied and rinsed, ball checked",
        Task::Hole => "Slow-release hole cleared",
        Task::InletMesh => "Inlet mesh checked",
        Task::TankLook => "Tank looked into",
        Task::Desludging => "Sludge taken out",
        Task::Lid => "Lid and lock checked",
        Task::Anchors => "Anchors checked",
        Task::PumpStrainer => "Pump strainer cleaned",
        Task::Cartridge => "Cartridge changed",
        Task::Ceramic => "Ceramic candle scrubbed",
        Task::Lamp => "Lamp changed",
        Task::Sleeve => "Lamp sleeve wiped",
        Task::WaterTest => "Water tested",
        Task::Joints => "Joints, valves and taps checked",
        Task::Other => "Work done",
    }
}

/// A doubt about what is to be written.
pub fn doubt(doubt: &Doubt, units: &Units) -> String {
    let volume = |litres: f64| shown::figure(litres, Kind::Volume, units);
    let depth = |mm: f64| shown::figure(mm, Kind::Depth, units);
    match doubt {
        Doubt::InTheFuture => "That day is still to come.".to_owned(),
        Doubt::AboveTheRim => "That is above the overflow.".to_owned(),
        Doubt::RoseWithoutRain { by_l, since } => format!(
            "That is {} more than on {}, and no rain or delivery is written since. Is it right, or is some rain \
             missing?",
            volume(*by_l),
            date(*since)
        ),
        Doubt::RoseMoreThanRain { by_l, most_l, since } => format!(
            "That is {} more than on {}; rain and deliveries since can have brought {} at most.",
            volume(*by_l),
            date(*since),
            volume(*most_l)
        ),
        Doubt::FellFast { by_l, drawn_l, since } => format!(
            "That is {} less than on {}; the uses would draw {}. If it is right, look for a leak or an open tap.",
            volume(*by_l),
            date(*since),
            volume(*drawn_l)
        ),
        Doubt::MoreThanEver { most_mm } => {
            format!("That is more than on any day of this site's rain record ({}).", depth(*most_mm))
        }
        Doubt::RainTwice { there_mm } => {
            format!("Rain of {} is already written on this day; both will count together.", depth(*there_mm))
        }
        Doubt::MeterWentBack { before_l, on } => {
            format!("The meter stood at {} on {}.", volume(*before_l), date(*on))
        }
    }
}

/// What joins the rain of the site.
pub fn rain_joined(days: usize) -> String {
    format!("{} of this rain are from your diary.", super::count(days, "day", "days"))
}

/// What an entry is about.
pub const fn subject(subject: Subject) -> &'static str {
    match subject {
        Subject::Level => "Level",
        Subject::Rain => "Rain",
        Subject::Meter => "Meter",
        Subject::Delivery => "Delivery",
        Subject::Work => "Work",
        Subject::Test => "Water test",
        Subject::Note => "Note",
    }
}

/// No part in particular.
pub const fn no_part(subject: Subject) -> &'static str {
    match subject {
        Subject::Delivery => "the tanks",
        Subject::Meter => "all that is drawn",
        Subject::Test => "not written down",
        _ => "the whole house",
    }
}

/// How a level is read: depth, share, volume, full.
pub const LEVEL_WAYS: [&str; 4] = ["Depth", "Share", "Volume", "Full"];
/// How a result is given: value, below, absent, present.
pub const FOUND_WAYS: [&str; 4] = ["Value", "Less than", "Absent", "Present"];
/// Labels of the number that is asked for.
pub const DEPTH: &str = "Depth of water over the tank's floor";
/// A share.
pub const SHARE: &str = "Share of what it holds";
/// A volume.
pub const VOLUME: &str = "Water in it";
/// What reading a level to find a leak is called.
pub const LEAK_TEST: &str = "A test for leaks";
/// How that is done.
pub const LEAK_TEST_HOW: &str = "Read the level with care to a few millimetres, let nobody draw water for a night or for days away, read \
                                 again, and write here how many hours that was. Only dry hours count: write down days \
                                 without rain too.";
/// Its field.
pub const UNDRAWN: &str = "Hours since the reading before in which nobody drew water";
/// Rain.
pub const RAIN: &str = "Rain of the day";
/// A meter.
pub const METER: &str = "Reading of the meter";
/// Water that was brought.
pub const BROUGHT: &str = "How much was brought";
/// A test.
pub const FOUND: &str = "What was found";
/// The button that writes.
pub const WRITE: &str = "Write it down";
/// The button that writes what was questioned.
pub const WRITE_ALL_THE_SAME: &str = "It is right: write it down";
/// Under the number when nothing was written before.
pub const NOTHING_BEFORE: &str = "Nothing written before.";

/// A part in a list to choose from.
pub fn part_choice(id: PartId, system: &System) -> String {
    system.part(id).map_or_else(String::new, |part| format!("{} ({})", part.name(), parts::one(part.kind())))
}

/// The button that opens the form of a subject.
pub const fn write(subject: Subject) -> &'static str {
    match subject {
        Subject::Level => "Write the level",
        Subject::Rain => "Write the rain",
        other => self::subject(other),
    }
}

/// What the buttons that open forms are for.
pub const WRITE_GROUP: &str = "Write into the diary";
/// No rain.
pub const DRY: &str = "No rain: 0";
/// A level of all tanks that are joined.
pub const WITH_JOINED: &str = "With all tanks joined to it";

/// More days can be listed.
pub fn further(days: usize) -> String {
    format!("Show more ({})", super::count(days, "further day", "further days"))
}

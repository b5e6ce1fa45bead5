//! Words of upkeep.

use super::{count, date, diary};
use crate::engine::diary::due::{Because, Due, Standing};
use crate::engine::learning::calls::Shows;
use crate::quantity::{Kind, Units, shown};
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::work::Task;

/// Nothing to do.
pub const NO_PARTS: &str = "The house has no parts yet that want upkeep.";
/// Where the intervals come from.
pub const USUAL: &str = "Usual intervals: at least every six months for roof, gutters, inlets and tanks (enHealth, Guidance on use of \
                         rainwater tanks, 2011); the rest as makers and councils advise or as is common practice. Change \
                         them to suit your trees, birds and rain.";
/// Caution of all upkeep.
pub const CAUTION: &str = "Ladders and wet roofs kill more people than bad water: have somebody hold the ladder, or hire \
                           help. Never enter a tank: bad air kills. Switch the pump's power off before you open it.";
/// The button that says a job is done.
pub const DONE: &str = "Done today";
/// The button that writes the calendar.
pub const CALENDAR: &str = "Save as a calendar file";
/// Under the fields of an interval.
pub const BLANK: &str = "Leave a field blank if it doesn't count. Whichever comes first makes it due.";
/// The button that goes back to the usual interval.
pub const BACK_TO_USUAL: &str = "As usual";

/// Groups of jobs: overdue, soon, later.
pub const GROUPS: [&str; 3] = ["Due", "Soon", "In good time"];
/// Over the choice of when all jobs that were never written down were done.
pub const ALL_DONE: &str = "All of them were done about";
/// When that may have been, in days ago, with words.
pub const AGO: [(u64, &str); 5] =
    [(0, "today"), (30, "a month ago"), (91, "3 months ago"), (182, "half a year ago"), (365, "a year ago")];

/// The line behind which they are, one by one.
pub fn not_written(jobs: usize) -> String {
    format!("{} not written down yet", count(jobs, "job", "jobs"))
}

/// What a job is that was never written down.
pub const NEVER: &str = "never written down";
/// Labels of an interval: days, rain, litres.
pub const INTERVAL: [&str; 3] = ["Every so many days", "After so much rain", "After so much water through it"];

/// A job: "Gutter: Kitchen corner".
pub fn job(task: Task, part: PartId, system: &System) -> String {
    format!("{}: {}", to_do(task), diary::part_name(part, system))
}

/// Work as it is to be done.
pub const fn to_do(task: Task) -> &'static str {
    match task {
        Task::Roof => "Look over the roof",
        Task::Gutter => "Clean the gutter",
        Task::Screen => "Clean the leaf screen",
        Task::Diverter => "Empty and rinse the first flush, check its ball",
        Task::Hole => "Clear the slow-release hole",
        Task::InletMesh => "Check the mesh at inlet and overflow",
        Task::TankLook => "Look into the tank from outside",
        Task::Desludging => "Take the sludge out",
        Task::Lid => "Check lid and lock",
        Task::Anchors => "Check anchors and straps",
        Task::PumpStrainer => "Clean the pump's strainer",
        Task::Cartridge => "Change the cartridge",
        Task::Ceramic => "Scrub the ceramic candle",
        Task::Lamp => "Change the lamp",
        Task::Sleeve => "Wipe the lamp's sleeve",
        Task::WaterTest => "Test the water",
        Task::Joints => "Look for drips at joints, valves and taps",
        Task::Other => "Other work",
    }
}

/// How a job stands.
pub fn standing(due: &Due, units: &Units) -> String {
    let last = due.last.map_or_else(|| NEVER.to_owned(), |last| format!("last on {}", date(last)));
    let because = |because: Because| match because {
        Because::Days(days) => format!("{} ago", count(usize::try_from(days).unwrap_or(0), "day", "days")),
        Because::Rain(mm) => format!("{} of rain since", shown::figure(mm, Kind::Depth, units)),
        Because::Litres(litres) => format!("{} through it since", shown::figure(litres, Kind::Volume, units)),
        Because::Readings(shows) => {
            let shown = match shows {
                Shows::LessCaught => "less of the rain comes than before",
                Shows::MoreUsed => "more water goes than before",
                Shows::Leak => "water goes that nobody draws",
            };
            format!("the readings call for it: {shown}")
        }
    };
    match due.standing {
        Standing::Overdue(why) | Standing::Soon(why) => format!("{last}; {}", because(why)),
        Standing::Later => {
            let on = due.on.map_or_else(String::new, |on| format!("; due by {}", date(on)));
            format!("{last}{on}")
        }
        Standing::NeverWritten => last,
    }
}

/// What is due, in a line for the house.
pub fn due_line(overdue: usize) -> String {
    format!("{} due.", count(overdue, "job is", "jobs are"))
}

/// A list for an occasion.
pub struct Occasion {
    /// Its title.
    pub title: &'static str,
    /// What is to be done, in order.
    pub steps: &'static [&'static str],
}

/// Lists for before and after.
pub const OCCASIONS: [Occasion; 5] = [
    Occasion {
        title: "Before a storm",
        steps: &[
            "Clean gutters, screens and diverters while it is still dry and calm.",
            "Leave water in light tanks, or tie them down: an empty tank flies, and an empty buried one floats.",
            "Shut and lock lids; take in or tie down whatever can fly against a tank or pipe.",
            "See that every overflow is free and leads away from the house.",
            "Fill clean containers with drinking water for three days: 4 L (a gallon) a head and day is common advice.",
            "Unplug the pump if lightning or a flood may come, and know how to shut the tank's outlet by hand.",
        ],
    },
    Occasion {
        title: "After a storm",
        steps: &[
            "Stay away from fallen lines, and from tanks that lean or have moved.",
            "Empty the first-flush diverters; clean screens, gutters and mesh.",
            "Look for cracks, lifted pipes and mud around buried tanks: flood water may have come in.",
            "If flood water came in, or a lid was off: don't drink it; empty, clean and disinfect first.",
            "Write down the level and the rain.",
        ],
    },
    Occasion {
        title: "After smoke or ash",
        steps: &[
            "Take the downpipes off the tank before the next rain, so that ash doesn't wash in.",
            "Let rain or a hose wash roof and gutters to the ground; empty the diverters; then join the pipes again.",
            "If ash or foam is in the tank already, or the water smells or tastes: don't drink it; have it tested or \
             emptied. Fire-fighting foam wants the tank emptied.",
            "Change cartridges that clogged.",
        ],
    },
    Occasion {
        title: "After overhead spray",
        steps: &[
            "Take the downpipes off the tank before the next rain; wash roof and gutters to the ground.",
            "Empty the diverters twice before you join the pipes again.",
            "If spray may have come in, don't drink the water and don't water animals: ask the sprayer what it was, and \
             the health office.",
        ],
    },
    Occasion {
        title: "A dead animal in the tank",
        steps: &[
            "Don't drink the water; boiling alone doesn't take away what has dissolved.",
            "Take the animal out from outside with gloves and a net. Never enter the tank: bad air kills.",
            "Empty and clean the tank if you can; else disinfect it with the dose worked out for it.",
            "Find the hole it came in by, and close it with mesh.",
            "Have the water tested before anyone drinks it.",
        ],
    },
];

/// The water that keeps a tank where it is in a wind, before a storm.
pub fn holding(tank: &str, held_by_l: f64, capacity_l: f64, units: &Units) -> String {
    let held_by = shown::figure(held_by_l, Kind::Volume, units);
    if held_by_l > capacity_l {
        format!("{tank}: not even full would it stand in the wind of its check. Have it tied down.")
    } else {
        format!(
            "{tank}: with {held_by} in it, it stands in the wind of its check, which its sheet names. Less, and tie it down."
        )
    }
}

/// How much more the tanks can take, before a storm.
pub fn room(room_l: f64, read_on: chrono::NaiveDate, units: &Units) -> String {
    format!(
        "By the reading of {}, the tanks have room for {} more.",
        date(read_on),
        shown::figure(room_l, Kind::Volume, units)
    )
}

/// The name of the calendar.
pub fn calendar_name(site: &str) -> String {
    format!("Upkeep of {site}")
}

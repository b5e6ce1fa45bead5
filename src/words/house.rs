//! What is said on the house's place.

use chrono::NaiveDate;

/// Names of the buttons that make the drawing larger and smaller.
pub const LARGER: &str = "Larger drawing";
/// See [`LARGER`].
pub const SMALLER: &str = "Smaller drawing";
/// The button that shows all of it.
pub const WHOLE: &str = "Whole";
/// What that is called.
pub const WHOLE_NAME: &str = "Whole drawing";
/// How else it is made larger.
pub const HOW_LARGER: &str = "Tap a part to open it. Two fingers make the drawing larger.";
/// The button that adds a tank.
pub const ADD_TANK: &str = "Add a tank";
/// What to do then.
pub const WHERE_TANK: &str =
    "Tap the tank beside which it will stand: on the same level, joined by a pipe with an open valve.";
/// Gives it up.
pub const NO_TANK: &str = "No tank";
/// Closes the row of what was tapped.
pub const CLOSE: &str = "Close";

/// The button that turns a valve.
pub const fn turn(open: bool) -> &'static str {
    if open { "Shut the valve" } else { "Open the valve" }
}

/// A valve was turned.
pub fn turned(name: &str, open: bool) -> String {
    let now = if open { "open: the tanks share one level" } else { "shut: each side keeps its own level" };
    format!("{name} is {now}.")
}

/// A tank was put beside another.
pub fn stands(name: &str, beside: &str) -> String {
    format!("{name} stands beside {beside}. Give it its size on its sheet.")
}

/// What the water in the drawing is: as read on a day and reckoned on, save where nobody read.
pub fn water_read(read_on: NaiveDate, today: NaiveDate, unmeasured: usize, unread: &[&str], usual: bool) -> String {
    let mut text = format!("Water drawn as read on {}", super::date(read_on));
    if read_on < today {
        text.push_str(" and reckoned on to today");
        if unmeasured > 0 {
            text.push_str(&format!(
                ", as if it had not rained on the {} without a reading of the rain",
                super::count(unmeasured, "day", "days")
            ));
        }
    }
    text.push('.');
    if !unread.is_empty() {
        let drawn = if usual { "drawn as in a middle year" } else { "what stands there is unknown" };
        text.push_str(&format!(" Nobody read {}: {drawn}.", unread.join(", ")));
    }
    text
}

/// What it is where nobody read.
pub fn water_usual(today: NaiveDate) -> String {
    format!(
        "Today's water is unknown until a level is read; drawn as it stands on {} in a middle year of this rain.",
        super::day_of_year(today)
    )
}

/// What it is without rain and readings.
pub const WATER_UNKNOWN: &str = "Today's water is unknown: no level was read, and there is no rain to reckon with.";

/// Added to what is said of a downspout through which rain went.
pub const RAN: &str = ", rain ran through it since yesterday";

//! Words of the weeks ahead: sentences that a child can repeat.

use chrono::{Days, NaiveDate};

use super::{count, date, day_of_year, number_text};
use crate::engine::ahead::ask::{Help, Why, Years};
use crate::engine::ahead::expected::{Expected, FEWEST};
use crate::engine::ahead::looking::{Ahead, MOST_FACTOR};
use crate::engine::rain::weather::Origin;
use crate::quantity::{Kind, Units, shown};

/// The name of the place, as its heading.
pub const TITLE: &str = "The weeks ahead";
/// While it is being looked at.
pub const LOOKING: &str = "Looking ahead…";
/// On the button that leads to the diary.
pub const OPEN_DIARY: &str = "Write down a level";
/// On the button that leads to the rain.
pub const OPEN_RAIN: &str = "Give this site its rain";
/// Over what could be done.
pub const HELPS: &str = "What would help";
/// Over the safe use.
pub const SAFE: &str = "How much is safe";
/// Over the chances.
pub const CHANCES: &str = "When it may run out";
/// Over what it rests on.
pub const BASIS: &str = "What this rests on";
/// Over the choice of days.
pub const TO_LAST: &str = "To last";
/// Over the choice of chance.
pub const CHANCE: &str = "With a chance of";
/// Over the choice of years.
pub const YEARS: &str = "Rain to come";
/// The fan's title.
pub const FAN: &str = "Water to come";
/// What the fan shows.
pub const FAN_CAPTION: &str = "Water over the outlets of all tanks. Eight futures in ten lie within the band; the broken \
                               line is the floor: no more rain.";
/// At the fan's lines.
pub const FAN_LINES: [&str; 4] = ["dry (1 in 10 below)", "middle", "wet (1 in 10 above)", "no more rain"];
/// Over the columns of the chances.
pub const CHANCE_COLUMNS: [&str; 3] = ["before", "run dry", "of"];

/// How many days the water may be wanted to last, with words.
pub const TARGETS: [(usize, &str); 5] =
    [(30, "1 month"), (60, "2 months"), (90, "3 months"), (180, "6 months"), (365, "a year")];
/// Chances with words.
pub const CHANCES_WANTED: [(f64, &str); 3] = [(0.9, "9 in 10"), (0.8, "8 in 10"), (0.5, "5 in 10")];
/// Years with words.
pub const YEARS_WANTED: [(Years, &str); 2] =
    [(Years::Recorded, "as the years on record"), (Years::Generated, "as generated years")];

/// Why nothing can be told.
pub fn why(why: &Why) -> String {
    match why {
        Why::NoReading => "Write down how full the tanks are: the weeks ahead start from the last reading.".to_owned(),
        Why::NoRain => {
            "Give this site its rain: the weeks ahead are looked at under the rain of other years.".to_owned()
        }
        Why::Refused(refusal) => super::errors::refusal(refusal)
            .unwrap_or_else(|| "This house can't run yet. What is missing is listed under its drawing.".to_owned()),
        Why::NoFuture => "The rain of this site has no year that passes through today.".to_owned(),
    }
}

/// So many whole days, the next smaller: what is promised is kept.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most a year")]
fn whole(days: f64) -> Option<usize> {
    days.is_finite().then(|| days.floor().max(0.0) as usize)
}

fn days_or_more(days: f64) -> String {
    whole(days).map_or_else(|| "more than a year".to_owned(), |days| count(days, "day", "days"))
}

fn days_until(days: f64, today: NaiveDate) -> String {
    match whole(days).and_then(|days| Some((days, today.checked_add_days(Days::new(u64::try_from(days).ok()?))?))) {
        Some((0, _)) => "not even tomorrow".to_owned(),
        Some((days, until)) => format!("{}, until {}", count(days, "day", "days"), day_of_year(until)),
        None => "more than a year".to_owned(),
    }
}

/// The answer: "The water will most likely last 74 days, until 7 February."
pub fn headline(ahead: &Ahead) -> String {
    if whole(ahead.lasting.half) == Some(0) {
        return "The water runs short tomorrow.".to_owned();
    }
    format!("The water will most likely last {}.", days_until(ahead.lasting.half, today(ahead)))
}

/// The same in a line for the house.
pub fn in_a_line(ahead: &Ahead) -> String {
    format!(
        "Water from today: most likely {}. In a dry year {}; if it never rains again, {}.",
        days_or_more(ahead.lasting.half),
        days_or_more(ahead.lasting.tenth),
        days_or_more(floor_days(ahead))
    )
}

fn today(ahead: &Ahead) -> NaiveDate {
    ahead.dates.first().copied().unwrap_or_default()
}

fn floor_days(ahead: &Ahead) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "at most a year")]
    ahead.floor.lasts.map_or(f64::INFINITY, |days| days as f64)
}

/// The range, and the floor.
pub fn range(ahead: &Ahead) -> Vec<String> {
    let today = today(ahead);
    vec![
        format!("In a dry year (1 in 10): {}.", days_until(ahead.lasting.tenth, today)),
        format!("In a wet year (1 in 10): {}.", days_until(ahead.lasting.ninetieth, today)),
        format!("If it never rains again: {}.", days_until(floor_days(ahead), today)),
    ]
}

/// How much is safe.
pub fn safe(ahead: &Ahead, chance: f64, units: &Units) -> String {
    let safe = &ahead.safe;
    let until = ahead.dates.get(safe.target.days).copied().unwrap_or_default();
    let flow = |litres: f64| shown::figure(litres, Kind::Flow, units);
    let odds = CHANCES_WANTED.iter().find(|(value, _)| *value == chance).map_or("", |(_, words)| words);
    let goal = format!("For the water to last until {} with a chance of {odds}", date(until));
    if safe.now_l <= 0.0 {
        return "The house uses nothing, so nothing runs out.".to_owned();
    }
    let factor = safe.factor(chance);
    if factor >= MOST_FACTOR {
        return format!("{goal}, the house can use as much as it does, {} on average, and far more.", flow(safe.now_l));
    }
    let change = if factor >= 1.0 {
        format!("It uses {} now: that is safe.", flow(safe.now_l))
    } else {
        format!("It uses {} now: {} too much.", flow(safe.now_l), flow(safe.now_l * (1.0 - factor)))
    };
    format!("{goal}, the house can use {}. {change}", flow(safe.litres_a_day(chance)))
}

/// What one help would make of it.
pub fn help(help: Help, with: &Expected, now: &Expected, ration: impl Fn(usize) -> String, units: &Units) -> String {
    let what = match help {
        Help::UseLess(share) if share <= 0.15 => "Use a tenth less".to_owned(),
        Help::UseLess(_) => "Use a quarter less".to_owned(),
        Help::Ration(step) => format!("Begin “{}” tomorrow", ration(step)),
        Help::Delivery(litres) => format!("Have {} brought", shown::figure(litres, Kind::Volume, units)),
    };
    let gained = |with: f64, now: f64| match (whole(with), whole(now)) {
        (Some(with), Some(now)) if with > now => format!("{} more", count(with - now, "day", "days")),
        (Some(with), Some(now)) if with < now => format!("{} fewer", count(now - with, "day", "days")),
        (None, Some(_)) => "more than a year".to_owned(),
        (Some(_), None) => "less than before".to_owned(),
        (None, None) => "more than a year, as without".to_owned(),
        (Some(_), Some(_)) => "no day more".to_owned(),
    };
    format!("{what}: most likely {}; in a dry year {}.", gained(with.half, now.half), gained(with.tenth, now.tenth))
}

/// In how many years the water runs out before a day.
pub fn chance(dry: usize, of: usize) -> [String; 2] {
    [count(dry, "year", "years"), number_text(of)]
}

/// Where the futures come from, and how far to trust them.
pub fn basis(ahead: &Ahead, origin: Origin, unread: &[String]) -> Vec<String> {
    let (today, years) = (today(ahead), ahead.lasts.len());
    let mut said = vec![if ahead.read_on == today {
        "The water in store is today's reading.".to_owned()
    } else {
        format!(
            "The water in store was read on {} and carried on to today through the rain since.",
            date(ahead.read_on)
        )
    }];
    if ahead.unknown_days > 0 {
        said.push(format!(
            "On {} since then nobody measured the rain: each future has its own on them, and the floor none.",
            count(ahead.unknown_days, "day", "days")
        ));
    }
    if !unread.is_empty() {
        let verb = if unread.len() == 1 { "counts" } else { "count" };
        said.push(format!("Nothing was read of {}, which {verb} as empty.", super::list(unread)));
    }
    said.push(match origin {
        Origin::Generated => format!(
            "{} drawn from the place's rain, as unsure as its record is short. Tried on two published records, the band held \
             74 to 81 of 100 outcomes instead of 80.",
            count(years, "year was", "years were")
        ),
        _ => format!(
            "The rain of {}, each from this day of the calendar on.",
            count(years, "year on record", "years on record")
        ),
    });
    if years < FEWEST {
        said.push(format!(
            "{} are few: the range is just from the driest to the wettest of them.",
            count(years, "year", "years")
        ));
    }
    said.push(
        "Loads of hauled water are not counted on. Uses are as they are entered, with their rationing.".to_owned(),
    );
    said
}

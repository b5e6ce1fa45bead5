//! Words about generated years.

use super::{count, number_text, percent};
use crate::engine::question::Answer;
use crate::engine::rain::generated::ModelError;
use crate::engine::rain::generated::likeness::Likeness;

/// Title of the section.
pub const TITLE: &str = "Years that haven't happened yet";

/// What they are.
pub const WHAT: &str = "A short record has not seen the worst. From how often rain follows rain here, and how much falls, month \
                        by month, a model draws as many years as are wanted. It knows nothing of a changing climate, and its \
                        long dry spells tend to be somewhat short: compare them with the record below.";

/// How the model works, with its sources.
pub const HOW: &str = "Wet and dry days follow a chain of two states, the depth of a wet day a gamma distribution, with parameters \
                       for each month (Richardson 1981), by maximum likelihood; from monthly means by the relations of Geng, \
                       Penning de Vries & Supit 1986. Such chains make years too much alike, so each rain year is multiplied by a \
                       number of its own until the years differ as widely as they should. The same draw gives the same years on \
                       every phone.";

/// Button to reckon with them.
pub const RECKON_WITH_THEM: &str = "Reckon with 100 such years";
/// Button for other years of the same model.
pub const ANOTHER_DRAW: &str = "Draw other years";
/// Button to go back to the site's own rain.
pub const BACK: &str = "Back to the rain as it was";
/// Label of the number of years.
pub const HOW_MANY: &str = "How many years";
/// Label of the spread.
pub const SPREAD: &str = "How much years differ (coefficient of variation)";

/// What stands in the columns of the comparison.
pub const COLUMNS: [&str; 3] = ["of the years", "recorded", "generated"];

/// How many years, which draw.
pub fn which(years: u16, seed: u32) -> String {
    format!("Reckoned with {years} generated years, draw {seed}.")
}

/// Where the spread of the years comes from.
pub fn spread_note(entered: bool, recorded_years: usize, least: usize) -> String {
    if entered {
        "As entered.".to_owned()
    } else if recorded_years >= least {
        format!("Taken from the record's {}.", count(recorded_years, "whole rain year", "whole rain years"))
    } else {
        "The record is too short to tell (five whole years are the least), so 25\u{a0}% is taken: common practice, no source. \
         Humid places have about 15\u{a0}%, semi-arid ones 40\u{a0}%."
            .to_owned()
    }
}

/// Title, meaning and caption of the months' rain.
pub const RAIN_BY_MONTH: [&str; 3] =
    ["Rain by month, beside generated", "mean rain", "Bars: the rain of this site. Strokes: the generated years."];
/// Title, meaning and caption of the months' wet days.
pub const WET_DAYS_BY_MONTH: [&str; 3] = [
    "Wet days by month, beside generated",
    "wet days",
    "Days with 1 mm or more; of monthly means, rain days as entered.",
];

/// Title of the factors for a drier future.
pub const FUTURE: &str = "A drier or wetter future";
/// What they do.
pub const FUTURE_WHAT: &str =
    "Each month's rain, recorded or generated, is multiplied by this. 100\u{a0}% leaves it as it is.";
/// Shifts of the whole year: what each does.
pub const SHIFTS: [(f64, &str); 5] = [
    (1.0, "As it was"),
    (0.9, "10\u{a0}% less all year"),
    (0.8, "20\u{a0}% less all year"),
    (0.7, "30\u{a0}% less all year"),
    (1.1, "10\u{a0}% more all year"),
];
/// What is said where the months differ.
pub const BY_MONTH: &str = "Month by month";
/// Label of the shifts.
pub const WHOLE_YEAR: &str = "The whole year";

/// The rows of the comparison that are not months: what they are called.
pub const ROWS: [&str; 7] = [
    "mean year",
    "spread of years",
    "driest year",
    "wettest year",
    "dry spell, middle year",
    "dry spell, 1 year in 10",
    "longest dry spell",
];

/// Days of a dry spell.
pub fn spell(days: usize) -> String {
    count(days, "day", "days")
}

/// Whether the generated dry spells are as long as the recorded.
pub fn spells_compared(recorded: &Likeness, generated: &Likeness) -> Option<String> {
    let ((_, recorded), (_, generated)) = (recorded.longest_spell?, generated.longest_spell?);
    #[expect(clippy::cast_precision_loss, reason = "days of a year")]
    let ratio = generated as f64 / recorded.max(1) as f64;
    Some(if ratio < 0.8 {
        "The generated dry spells are shorter than the recorded: expect less than generated years say.".to_owned()
    } else if ratio > 1.25 {
        "The generated dry spells are longer than the recorded: generated years are on the careful side.".to_owned()
    } else {
        "The generated dry spells are about as long as the recorded.".to_owned()
    })
}

/// What generated years say beside the site's own rain.
pub fn beside(answer: &Answer) -> String {
    match answer.good_years {
        None => super::sizing::headline(answer),
        Some(good) => format!(
            "Over {} drawn from this rain, {} had no dry day: a chance of a good year between {} and {}, as far as the model \
             is right. The worst of them had {}.",
            count(good.all, "year", "years"),
            number_text(good.good),
            percent(good.range.0),
            percent(good.range.1),
            count(answer.years.iter().map(|year| year.dry_days).max().unwrap_or(0), "dry day", "dry days"),
        ),
    }
}

/// Why there is no model.
pub fn no_model(error: &ModelError) -> String {
    match error {
        ModelError::MonthUnmeasured { month } => format!(
            "No years can be generated: the record has no two measured days in a row in any {}. Load a longer record.",
            super::months().get(month.wrapping_sub(1)).copied().unwrap_or_default()
        ),
        ModelError::NotADepth { date, depth_mm } => super::errors::not_a_depth(*date, *depth_mm),
        ModelError::Normals(error) => super::errors::normals(error),
    }
}

//! Words of the report.

use chrono::NaiveDate;

/// The button that opens it, and its name.
pub const TITLE: &str = "Report";
/// The button that prints it.
pub const PRINT: &str = "Print, or save as PDF";
/// The button that leaves it.
pub const BACK: &str = "Back to the house";

/// Over the whole.
pub fn title(site: &str) -> String {
    format!("Rainwater supply: {site}")
}

/// The day on which it was made.
pub fn made_on(day: NaiveDate) -> String {
    format!("As of {}.", super::date(day))
}

/// A trial is open, which the report leaves aside.
pub const WITHOUT_TRIAL: &str = "Of the house as it is: the trial that is open is not in it.";

/// The sections.
pub const ANSWER: &str = "Does the water last?";
/// How sure the share of good years is.
pub const GOOD_YEARS: &str = "Share of good years, with the range that it may lie in";
/// The drawing.
pub const DRAWING: &str = "The house in section";
/// Title of the drawing itself.
pub const HEIGHTS: &str = "Tanks at their true heights to one another";
/// What each part is.
pub const INPUTS: &str = "Parts and values";
/// Values of no single part.
pub const WHOLE_SITE: &str = "The whole site";
/// The rain.
pub const RAIN: &str = "Rain";
/// What the days came to.
pub const RESULTS: &str = "Results";
/// The years.
pub const YEARS: &str = "Year by year";
/// What the parts did.
pub const PARTS_DID: &str = "What the parts did";
/// The weeks to come.
pub const AHEAD: &str = "From today";
/// What to change.
pub const NEXT: &str = "What next";
/// The checks.
pub const CHECKS: &str = "Checks of parts";
/// Where no part has anything to check.
pub const NO_CHECKS: &str = "No part here has anything to check.";
/// Water that is drunk.
pub const WATER: &str = "Fit to drink?";
/// Upkeep.
pub const UPKEEP: &str = "Upkeep";
/// Columns of the upkeep.
pub const UPKEEP_COLUMNS: [&str; 3] = ["what", "how often", "how it stands"];
/// What was taken for granted.
pub const ASSUMPTIONS: &str = "Taken for granted";
/// Where formulas come from.
pub const SOURCES: &str = "Sources";
/// What to be careful of.
pub const CAUTIONS: &str = "Cautions";

/// Which rain days were looked at, where nothing doubtful was found.
pub const NO_DOUBT: &str = "The record as a whole was looked over for a wrong unit, for gaps written as zero and for a model's \
                            drizzle: nothing doubtful was found. Single rows were judged when it was read in.";
/// What was found doubtful.
pub const DOUBTS: &str = "Doubts about the record";
/// The longest dry spells.
pub const DRY_SPELLS: &str = "Longest dry spells";
/// Nothing has been judged yet.
pub const NOT_JUDGED: &str =
    "The changes that this house could make are being run beside it; they stand here once that is done.";
/// Nothing can be judged.
pub const NO_RAIN: &str = "Without rain nothing can be told of it.";
/// How values are marked that nobody entered.
pub const USUAL_MARK: &str = " (usual)";
/// What that means.
pub const USUAL: &str = "Values marked “usual” were not entered by anybody: they are what is common for such parts. A check that \
                         rests on them says so.";
/// Months of a value.
pub const BY_MONTH: &str = "January to December";
/// By how much each month's rain is multiplied.
pub const RAIN_FACTORS: &str = "Rain of each month multiplied by";
/// What fills the tanks on the first day.
pub const START: &str = "Tanks on the first day";

/// An interval: "every 180 days or after 500 mm".
pub fn interval([days, rain, litres]: &[String; 3]) -> String {
    let mut said = Vec::new();
    if !days.is_empty() {
        said.push(format!("every {days}"));
    }
    for (amount, what) in [(rain, "of rain"), (litres, "through it")] {
        if !amount.is_empty() {
            said.push(format!("after {amount} {what}"));
        }
    }
    if said.is_empty() { "as needed".to_owned() } else { said.join(" or ") }
}

//! Words of the rain place.

use crate::site::rain::MissingDays;

/// Title.
pub const TITLE: &str = "Rain";
/// What to do when there is none.
pub const NONE: &str = "This site has no rain yet. Give it the longest daily record of a gauge nearby, or twelve monthly \
                        means if that is all there is.";
/// Why even rain is not like real rain.
pub const EVEN_RAIN: &str = "Twelve means make every year alike, with equal rain days evenly spaced. Real years are \
                             rougher: dry spells are longer and bad years come. Expect less than this says.";
/// How missing days are treated.
pub const MISSING_DAYS: &str = "Days that were not measured";

/// A treatment of missing days.
pub fn missing_days(treatment: MissingDays) -> String {
    match treatment {
        MissingDays::LeaveOutYears { with_more_than } => {
            format!("Leave out years that lack more than {with_more_than} days; fill the rest")
        }
        MissingDays::Fill => "Fill all from the same days of other years".to_owned(),
    }
}

/// Rain measured day by day.
pub const DAILY_RECORD: &str = "Daily record";
/// Twelve means.
pub const MONTHLY_MEANS: &str = "Monthly means";

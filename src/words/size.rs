//! Words of the questions about size.

use super::{count, number_text, percent};
use crate::engine::sizing::handbooks::{Basis, Method, Said};
use crate::engine::sizing::sequent_peak::SequentPeak;
use crate::engine::sizing::smallest::{Found, Sought};
use crate::engine::sizing::study::Inquiry;
use crate::engine::sizing::tally::Tally;
use crate::quantity::{Kind, Units, shown};
use crate::site::wanted::Wanted;

/// Title of a question.
pub const fn title(inquiry: Inquiry) -> &'static str {
    match inquiry {
        Inquiry::Smallest => "Smallest that does it",
        Inquiry::Curves => "Curves",
        Inquiry::Surface => "Storage and use together",
        Inquiry::Handbooks => "By the handbooks",
    }
}

/// What it is about, in a line.
pub const fn about(inquiry: Inquiry) -> &'static str {
    match inquiry {
        Inquiry::Smallest => {
            "The whole house is run again and again on this rain, with all tanks (or all roofs, or all uses) larger or \
             smaller alike and everything else as it is, until the size that just does it is found, to within 0.2\u{a0}%."
        }
        Inquiry::Curves => {
            "What other sizes would come to on this rain: from a quarter of what there is to four times as much, \
             everything else as it is. The upright line is the house as it stands."
        }
        Inquiry::Surface => {
            "Lines of equal reliability over all pairs of storage (a quarter of what there is to four times as much) and \
             use (0.4 to 2.5 times). The dot is the house as it stands; the strong line is what you want."
        }
        Inquiry::Handbooks => {
            "Rules of thumb for the same house. They look at totals, months or one dry spell, never at the order of \
             days; the last column says what a tank of that size would have come to on this rain."
        }
    }
}

/// Label of the choice of what is wanted.
pub const WANTED: &str = "What is wanted";

/// What is wanted, as a choice.
pub fn wanted(wanted: Wanted) -> String {
    match wanted {
        Wanted::GoodYears(10) => "No dry day in any year".to_owned(),
        Wanted::GoodYears(tenths) => format!("No dry day in {tenths} years of 10"),
        Wanted::Days(share) => format!("{} of days not dry", percent(share.get())),
        Wanted::Water(share) => format!("{} of the water wanted", percent(share.get())),
    }
}

/// What a measure counts, over a column or at a line.
pub const fn measured(wanted: Wanted) -> &'static str {
    match wanted {
        Wanted::GoodYears(_) => "good years",
        Wanted::Days(_) => "days not dry",
        Wanted::Water(_) => "water there",
    }
}

/// The kind that a size is of.
pub const fn kind(sought: Sought) -> Kind {
    match sought {
        Sought::Storage => Kind::Volume,
        Sought::Roof => Kind::Area,
        Sought::Uses => Kind::Flow,
    }
}

/// The name of what is sought.
pub const fn name(sought: Sought) -> &'static str {
    match sought {
        Sought::Storage => "Tanks",
        Sought::Roof => "Roof",
        Sought::Uses => "Use",
    }
}

/// One search's result as it stands in the table.
pub fn found(found: Found, now: f64, sought: Sought, units: &Units) -> String {
    let size = |factor: f64| shown::figure(now * factor, kind(sought), units);
    match (found, sought) {
        (Found::Enough { factor, .. }, _) => size(factor),
        (Found::NotEvenAt { factor, .. }, _) => ["not even ", &size(factor)].concat(),
        (Found::EvenAt { factor, .. }, Sought::Uses) => [&size(factor), " or more"].concat(),
        (Found::EvenAt { factor, .. }, _) => [&size(factor), " or less"].concat(),
        (Found::CannotRun, _) => "—".to_owned(),
    }
}

/// What was found of one thing, as a sentence, under the rule that the household reckons by.
pub fn answer(found: Found, now: f64, sought: Sought, wanted: Wanted, units: &Units) -> String {
    let size = |factor: f64| shown::figure(now * factor, kind(sought), units);
    let of_now = size(1.0);
    let reached = |tally: &Tally| format!("{} {}", percent(tally.by(wanted)), measured(wanted));
    match (found, sought) {
        (Found::Enough { factor, .. }, Sought::Storage) => {
            format!("Tanks of {} in all would do; there are {of_now}.", size(factor))
        }
        (Found::Enough { factor, .. }, Sought::Roof) => {
            format!("A roof of {} would do; there are {of_now}.", size(factor))
        }
        (Found::Enough { factor, .. }, Sought::Uses) => {
            format!("A use of {} could be met; {of_now} is wanted.", size(factor))
        }
        (Found::NotEvenAt { factor, tally }, Sought::Storage) => format!(
            "No storage does it with this roof and use: tanks of {} would still come to {} only.",
            size(factor),
            reached(&tally)
        ),
        (Found::NotEvenAt { factor, tally }, Sought::Roof) => format!(
            "No roof does it with these tanks and use: {} would still come to {} only.",
            size(factor),
            reached(&tally)
        ),
        (Found::NotEvenAt { factor, tally }, Sought::Uses) => {
            format!("Not even a use of {} could be met: it comes to {}.", size(factor), reached(&tally))
        }
        (Found::EvenAt { factor, .. }, Sought::Uses) => format!("Even a use of {} could be met.", size(factor)),
        (Found::EvenAt { factor, .. }, _) => {
            format!("{}: even {} would do; there are {of_now}.", name(sought), size(factor))
        }
        (Found::CannotRun, _) => format!("{}: the house can't run with other sizes.", name(sought)),
    }
}

/// From one to the other, or just the one where they are written alike.
fn between(one: String, other: String) -> String {
    if one == other { one } else { [&one, " to ", &other].concat() }
}

/// The house under both rules: the bracket within which the truth lies.
pub fn bracket([after, before]: [Tally; 2]) -> String {
    let share = |of: fn(&Tally) -> f64| {
        let (one, other) = (of(&after), of(&before));
        between(percent(one.min(other)), percent(one.max(other)))
    };
    let (least, most) = (after.good_years.min(before.good_years), after.good_years.max(before.good_years));
    format!(
        "The house as it is, between the two orders within a day, where the truth lies: {} of the water is there, {} of \
         days are not dry, and {} of {} are without a dry day.",
        share(Tally::volumetric),
        share(Tally::time),
        between(number_text(least), number_text(most)),
        count(after.whole_years, "whole year", "whole years"),
    )
}

/// The sequent peak.
pub fn peak(peak: SequentPeak, units: &Units) -> String {
    match peak {
        SequentPeak::Enough { before_spillage_l, after_spillage_l } => format!(
            "Never short at all on this rain, if all water stood in one full tank at first: {} (yield before spillage) to \
             {} (after), by the sequent peak of Thomas & Fiering, 1963.",
            shown::figure(before_spillage_l, Kind::Volume, units),
            shown::figure(after_spillage_l, Kind::Volume, units)
        ),
        SequentPeak::Impossible { mean_inflow_l, mean_demand_l } => format!(
            "Never short at all is impossible, whatever the tank: {} comes to the tanks on average and {} is wanted. More \
             roof, less lost on the way, or less use would mend it.",
            shown::figure(mean_inflow_l, Kind::Flow, units),
            shown::figure(mean_demand_l, Kind::Flow, units)
        ),
    }
}

/// Heads of the table of the smallest.
pub const SMALLEST_COLUMNS: [&str; 4] = ["what", "now", "yield after spillage", "yield before spillage"];

/// The name of a handbook's method.
pub const fn method(method: Method) -> &'static str {
    match method {
        Method::MonthlyBalance => "Monthly balance",
        Method::DrySeason => "Dry-season demand",
        Method::FivePercent => "5\u{a0}% rule",
        Method::SixPercent => "6\u{a0}% rule",
    }
}

/// What a method looks at, and so why it says something else.
pub fn difference(method: Method, basis: &Basis, units: &Units) -> String {
    match method {
        Method::MonthlyBalance => {
            "Monthly balance: twelve mean months in a row, twice; dry years and dry weeks are averaged away, so it tends \
             to say too little."
                .to_owned()
        }
        Method::DrySeason => format!(
            "Dry-season demand: the use through the longest spell of days under {} on this rain, {}; it takes the tank \
             as full when the spell begins, and showers between dry spells as enough to fill it again.",
            shown::figure(1.0, Kind::Depth, units),
            count(basis.dry_spell_days, "day", "days")
        ),
        Method::FivePercent => format!(
            "5\u{a0}% rule of BS 8515 and BS EN 16941-1: the lesser of 5\u{a0}% of a year's yield ({}) and of a year's use ({}), some 18 days of it; made \
             for houses where the mains make up the rest, so far too little where nothing does.",
            shown::figure(basis.yield_l(), Kind::Volume, units),
            shown::figure(basis.demand_l(), Kind::Volume, units)
        ),
        Method::SixPercent => {
            "6\u{a0}% rule of DIN 1989-1: the same with 6\u{a0}%, some 22 days of it, and made for the same houses with mains beside."
                .to_owned()
        }
    }
}

/// What a method says, as it stands in the table.
pub fn said(said: Said, units: &Units) -> String {
    match said {
        Said::Tank(litres) => shown::figure(litres, Kind::Volume, units),
        Said::Impossible { yield_l, demand_l } => format!(
            "none: {} a year comes, {} is wanted",
            shown::figure(yield_l, Kind::Volume, units),
            shown::figure(demand_l, Kind::Volume, units)
        ),
    }
}

/// How ours differs from all of them.
pub const OURS: &str =
    "This house, day by day: the whole record, with the house's own tanks, diverters and order of uses.";

/// The name of our own result.
pub const OUR_NAME: &str = "This house, day by day";

/// While it runs: how far it is.
pub fn running(progress: f64) -> String {
    format!("Reckoning: {}", percent(progress))
}

/// When it was cancelled.
pub const CANCELLED: &str = "Cancelled before it was done.";
/// Why nothing can be asked yet.
pub const NO_ANSWER: &str = "This needs a house that can run, and its rain.";
/// The button that cancels.
pub const CANCEL: &str = "Cancel";
/// The button that asks again.
pub const AGAIN: &str = "Reckon it";

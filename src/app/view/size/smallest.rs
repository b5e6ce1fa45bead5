//! The smallest that does what is wanted.

use crate::engine::sizing::sequent_peak::SequentPeak;
use crate::engine::sizing::smallest::{Found, Sought};
use crate::engine::sizing::tally::Tally;
use crate::figures::table::Table;
use crate::quantity::{Units, shown};
use crate::site::household::Site;
use crate::site::unused::{Unused, unused};
use crate::words::{self, size as say};

/// Sentences, under the rule that the household reckons by, and a table under both.
pub fn smallest(
    site: &Site,
    found: &[(Sought, [Found; 2])],
    units: &Units,
) -> (Vec<String>, Vec<(&'static str, Table)>) {
    let rule = usize::from(site.reckoning.inflow_first.get() > 0.5);
    let unused = unused(&site.system);
    // Where water and uses don't meet no size helps, and none is to blame.
    let apart = unused.iter().any(|unused| !matches!(unused, Unused::NoArea(_)));
    let mut sentences: Vec<String> = unused.iter().map(|it| words::findings::unused(*it, &site.system)).collect();
    let mut rows = Vec::new();
    for (sought, both) in found {
        let now = sought.of(site);
        if !(apart && matches!(both[rule], Found::NotEvenAt { .. })) {
            sentences.push(say::answer(both[rule], now, *sought, site.reckoning.wanted, units));
        }
        rows.push(vec![
            say::name(*sought).to_owned(),
            shown::figure(now, say::kind(*sought), units),
            say::found(both[0], now, *sought, units),
            say::found(both[1], now, *sought, units),
        ]);
    }
    let table = Table { columns: say::SMALLEST_COLUMNS.map(String::from).to_vec(), rows };
    (
        sentences,
        vec![(said!("Sizes under both orders within a day", "Tamaños con los dos órdenes dentro del día"), table)],
    )
}

/// The bracket between the two rules, and the sequent peak.
pub fn notes(house: [Tally; 2], peak: Option<SequentPeak>, units: &Units) -> Vec<String> {
    let mut notes = vec![say::bracket(house)];
    notes.extend(peak.map(|peak| say::peak(peak, units)));
    notes
}

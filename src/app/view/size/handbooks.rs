//! What handbooks say of the same house.

use crate::engine::sizing::handbooks::{Basis, Method, Said};
use crate::engine::sizing::smallest::{Found, Sought};
use crate::engine::sizing::tally::Tally;
use crate::figures::table::Table;
use crate::quantity::Units;
use crate::site::household::Site;
use crate::words::{self, size as say};

/// Each method with its tank and what that would have come to here; ours at the foot.
pub fn table(site: &Site, methods: &[(Method, Said, Option<Tally>)], ours: Found, units: &Units) -> Table {
    let wanted = site.reckoning.wanted;
    let came_to = |tally: Option<Tally>| tally.map_or_else(|| "—".to_owned(), |tally| words::percent(tally.by(wanted)));
    let mut rows: Vec<Vec<String>> = Vec::with_capacity(methods.len() + 1);
    for (method, size, tally) in methods {
        rows.push(vec![say::method(*method).to_owned(), say::says(*size, units), came_to(*tally)]);
    }
    let tally = match ours {
        Found::Enough { tally, .. } | Found::NotEvenAt { tally, .. } | Found::EvenAt { tally, .. } => Some(tally),
        Found::CannotRun => None,
    };
    let now = Sought::Storage.of(site);
    rows.push(vec![say::OUR_NAME.to_owned(), say::found(ours, now, Sought::Storage, units), came_to(tally)]);
    let with_it = say!("{share} with it", "{share} con él", share = say::measured(wanted));
    Table {
        columns: vec![phrase!("method", "método").to_owned(), phrase!("tank", "tanque").to_owned(), with_it], rows
    }
}

/// The differences, a sentence each.
pub fn notes(basis: &Basis, units: &Units) -> Vec<String> {
    let mut notes: Vec<String> = Method::ALL.map(|method| say::difference(method, basis, units)).to_vec();
    notes.push(say::OURS.to_owned());
    notes
}

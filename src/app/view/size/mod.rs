//! Questions about size as they are shown: one file for each, each the same plain struct.

pub mod curves;
pub mod handbooks;
pub mod smallest;
pub mod surface;

use super::charts::{COLUMN, Chart};
use crate::app::case::Case;
use crate::app::study::{Asked, Findings, Inquiry, Standing};
use crate::figures::table::Table;
use crate::site::uses::Amount;
use crate::words::{errors, size as say};

/// A question as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct SizeView {
    /// How far it is, where it runs.
    pub running: Option<f64>,
    /// Why there is no answer, if it doesn't run.
    pub why_not: Option<String>,
    /// Whether that is because the person left it, and may ask again.
    pub cancelled: bool,
    /// The answer in sentences.
    pub sentences: Vec<String>,
    /// Its tables, with their names.
    pub tables: Vec<(&'static str, Table)>,
    /// Its charts.
    pub charts: Vec<Chart>,
    /// What explains it, in sentences.
    pub notes: Vec<String>,
}

/// A question as it stands for a case.
pub fn size(inquiry: Inquiry, asked: &Asked, case: &Case) -> SizeView {
    let mut view = SizeView {
        running: None,
        why_not: None,
        cancelled: false,
        sentences: Vec::new(),
        tables: Vec::new(),
        charts: Vec::new(),
        notes: Vec::new(),
    };
    let (Standing::Done(answered), Some(kept)) = (&asked.standing, &case.site) else {
        match asked.standing {
            Standing::Running(progress) => view.running = Some(progress),
            Standing::Cancelled => (view.why_not, view.cancelled) = (Some(say::CANCELLED.to_owned()), true),
            _ => view.why_not = Some(say::NO_ANSWER.to_owned()),
        }
        return view;
    };
    let findings = match answered.0.as_ref() {
        Ok(findings) => findings,
        Err(refusal) => {
            view.why_not = Some(errors::refusal(refusal).unwrap_or_else(|| say::NO_ANSWER.to_owned()));
            return view;
        }
    };
    let (site, units, width) = (&*kept.site, &case.units, case.width.min(COLUMN));
    let system = &site.system;
    if !system.hauling.is_empty() {
        view.sentences.push(say::WITHOUT_HAULING.to_owned());
    }
    match (inquiry, findings) {
        (_, Findings::Smallest { house, found, peak }) => {
            let (sentences, tables) = smallest::smallest(site, found, units);
            view.sentences.extend(sentences);
            let trust = say::trust(house[0].whole_years, site.reckoning.generated.is_some());
            view.sentences.extend(trust.map(str::to_owned));
            view.tables = tables;
            view.notes = smallest::notes(*house, *peak, units);
            if system.uses.iter().any(|using| matches!(using.amount, Amount::Garden(_))) {
                view.notes.push(say::GARDENS_AS_DRY.to_owned());
            }
        }
        (_, Findings::Curves(curves)) => view.charts = curves::curves(site, curves, units, width),
        (_, Findings::Surface { storage, uses, tallies }) => {
            view.charts = vec![surface::surface(site, (storage, uses), tallies, units, width)];
        }
        (_, Findings::Handbooks { basis, methods, ours }) => {
            view.tables = vec![(say::title(inquiry), handbooks::table(site, methods, *ours, units))];
            view.notes = handbooks::notes(basis, units);
        }
    }
    view
}

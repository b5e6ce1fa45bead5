//! Reliability: how much of the demand, and how much of the time.

use crate::engine::balance::ledger::Flows;
use crate::engine::balance::series::Series;

/// Reliability of a run. Both are 1 where nothing was wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reliability {
    /// Yield over what was wanted, rationed or not, 0 to 1, of all uses together.
    pub volumetric: f64,
    /// Share of days that were not dry days, 0 to 1.
    pub time: f64,
}

/// Volumetric reliability `Σ Y / Σ D`, where D has what rationing cut, and time reliability `1 − dry days / days`.
///
/// Source: McMahon & Mein, River and Reservoir Yield (1986), there as volumetric and time-based reliability (from
/// memory).
pub fn reliability(total: &Flows, series: &Series) -> Reliability {
    let days = series.dates.len();
    let dry = series.dry_days().filter(|dry| *dry).count();
    #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
    let dry_share = if days == 0 { 0.0 } else { dry as f64 / days as f64 };
    let wanted_l = total.wanted_l();
    Reliability { volumetric: if wanted_l > 0.0 { total.yield_l / wanted_l } else { 1.0 }, time: 1.0 - dry_share }
}

//! Where the water went, month by month of an average year.

use crate::engine::balance::ledger::{Flows, Ledger};

/// Average flows of one calendar month, in L a month, each drop of rain on the roof counted once:
/// `rain = wetting + roofing + uncollected + escaped + first flush + inflow`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Month {
    /// Only wetted the roof, or was lost by the roofing.
    pub roof_loss_l: f64,
    /// Ran off but no feed takes it.
    pub uncollected_l: f64,
    /// Lost at gutters and leaf screens.
    pub escaped_l: f64,
    /// Diverted as first flush.
    pub first_flush_l: f64,
    /// Spilled over the last rim.
    pub spill_l: f64,
    /// Leaked or evaporated.
    pub tank_loss_l: f64,
    /// Used.
    pub yield_l: f64,
    /// Asked for but not there.
    pub shortfall_l: f64,
    /// Hauled.
    pub hauled_l: f64,
}

/// Average months of a ledger over so many years (more than 0).
pub fn budget(ledger: &Ledger, years: f64) -> [Month; 12] {
    ledger.by_month.map(|flows: Flows| Month {
        roof_loss_l: (flows.wetting_l + flows.not_run_off_l) / years,
        uncollected_l: flows.uncollected_l / years,
        escaped_l: flows.escaped_l / years,
        first_flush_l: flows.first_flush_l / years,
        spill_l: flows.spill_l / years,
        tank_loss_l: (flows.leak_l + flows.evaporation_l) / years,
        yield_l: flows.yield_l / years,
        shortfall_l: flows.shortfall_l() / years,
        hauled_l: flows.hauled_l / years,
    })
}

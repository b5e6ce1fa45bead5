//! What went where, and whether it adds up.

use super::garden::GardenTally;
use super::ration::RationTally;

/// Water that came and went over some days, in L.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Flows {
    /// Rain on the roof sections.
    pub roof_rain_l: f64,
    /// Of that, what only wetted the roof.
    pub wetting_l: f64,
    /// What the roofing did not pass on (splash, absorption, wind: one less the runoff coefficient).
    pub not_run_off_l: f64,
    /// Runoff that no feed takes.
    pub uncollected_l: f64,
    /// Runoff lost at gutters and leaf screens.
    pub escaped_l: f64,
    /// Runoff that the diverters kept from the tanks; it goes to the garden.
    pub first_flush_l: f64,
    /// Runoff that reached the tanks.
    pub inflow_l: f64,
    /// Rain that fell straight into uncovered tanks.
    pub open_rain_l: f64,
    /// Hauled water.
    pub hauled_l: f64,
    /// What the uses asked for, after rationing.
    pub demand_l: f64,
    /// What rationing kept them from asking for.
    pub cut_l: f64,
    /// What they got.
    pub yield_l: f64,
    /// Spill that left the system, to the ground or the garden.
    pub spill_l: f64,
    /// Of that, spill to the garden.
    pub spill_to_garden_l: f64,
    /// Lost by leaks.
    pub leak_l: f64,
    /// Evaporated from uncovered tanks.
    pub evaporation_l: f64,
    /// Lifted by pumps from one store to another.
    pub pumped_l: f64,
}

impl Flows {
    /// Water that entered the system.
    pub fn entered_l(&self) -> f64 {
        self.roof_rain_l + self.open_rain_l + self.hauled_l
    }

    /// Water that left it.
    pub fn left_l(&self) -> f64 {
        self.wetting_l
            + self.not_run_off_l
            + self.uncollected_l
            + self.escaped_l
            + self.first_flush_l
            + self.yield_l
            + self.spill_l
            + self.leak_l
            + self.evaporation_l
    }

    /// What the uses wanted, rationed or not.
    pub fn wanted_l(&self) -> f64 {
        self.demand_l + self.cut_l
    }

    /// What the uses wanted and did not get: rationing saves water, it makes none.
    pub fn lacked_l(&self) -> f64 {
        self.wanted_l() - self.yield_l
    }

    /// What the uses asked for and did not get.
    pub fn shortfall_l(&self) -> f64 {
        self.demand_l - self.yield_l
    }

    /// The sum of both.
    pub fn plus(&self, other: &Flows) -> Flows {
        Flows {
            roof_rain_l: self.roof_rain_l + other.roof_rain_l,
            wetting_l: self.wetting_l + other.wetting_l,
            not_run_off_l: self.not_run_off_l + other.not_run_off_l,
            uncollected_l: self.uncollected_l + other.uncollected_l,
            escaped_l: self.escaped_l + other.escaped_l,
            first_flush_l: self.first_flush_l + other.first_flush_l,
            inflow_l: self.inflow_l + other.inflow_l,
            open_rain_l: self.open_rain_l + other.open_rain_l,
            hauled_l: self.hauled_l + other.hauled_l,
            demand_l: self.demand_l + other.demand_l,
            cut_l: self.cut_l + other.cut_l,
            yield_l: self.yield_l + other.yield_l,
            spill_l: self.spill_l + other.spill_l,
            spill_to_garden_l: self.spill_to_garden_l + other.spill_to_garden_l,
            leak_l: self.leak_l + other.leak_l,
            evaporation_l: self.evaporation_l + other.evaporation_l,
            pumped_l: self.pumped_l + other.pumped_l,
        }
    }
}

/// What one diverter did over a run.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FlushTally {
    /// Days on which water reached it.
    pub storms: usize,
    /// Of those, days on which it was still more than half full from before, so that dirty water went to the tank.
    pub found_full: usize,
    /// Water that it kept from the tank, in L.
    pub diverted_l: f64,
    /// Of that, what ran out of its hole while it rained, in L.
    pub dripped_l: f64,
}

/// The ledger of a run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ledger {
    /// Flows by calendar month, January to December, summed over the run.
    pub by_month: [Flows; 12],
    /// What each feed's diverter did, in the order of the feeds.
    pub flushes: Vec<FlushTally>,
    /// What each garden by the weather went through, in the order of the plan.
    pub gardens: Vec<GardenTally>,
    /// What each step of rationing did, in the order of the plan.
    pub rations: Vec<RationTally>,
    /// Loads of hauled water that came.
    pub loads: usize,
    /// What they cost, in the household's currency.
    pub hauling_cost: f64,
    /// Water in the tanks before the first day, dead storage included, in L.
    pub stored_first_l: f64,
    /// Water in the tanks after the last day, dead storage included, in L.
    pub stored_last_l: f64,
}

impl Ledger {
    /// Flows over the whole run.
    pub fn total(&self) -> Flows {
        self.by_month.iter().fold(Flows::default(), |sum, month| sum.plus(month))
    }

    /// In less out less the change in store, as a share of what flowed; 0 for a run without water.
    pub fn residual(&self) -> f64 {
        let total = self.total();
        let flowed = total.entered_l() + self.stored_first_l;
        let left_over = total.entered_l() - total.left_l() - (self.stored_last_l - self.stored_first_l);
        if flowed > 0.0 { left_over / flowed } else { left_over }
    }
}

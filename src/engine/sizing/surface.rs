//! Storage and use together: what each pair of them comes to.

use std::sync::Arc;

use crate::engine::balance::lean::Lean;
use crate::engine::balance::plan::Plan;
use crate::site::household::Site;

use super::batch::{Batch, Case, Ground};
use super::curves::factors;
use super::smallest::{Sought, planned};
use super::tally::Tally;

/// Steps each way where cases run side by side, and where they run one by one.
const FINE: usize = 41;
const COARSE: usize = 13;
const WIDEST_STORAGE: f64 = 4.0;
const WIDEST_USES: f64 = 2.5;

/// A surface on its way.
pub struct Surface {
    batch: Batch,
    /// Factors of the storage, from little to much.
    pub storage: Vec<f64>,
    /// Factors of the use, from little to much.
    pub uses: Vec<f64>,
}

impl Surface {
    /// Before the first step, with as many steps each way as the system allows.
    pub fn new(site: &Site, ground: Arc<Ground>) -> Self {
        let plain = planned(site, &Sought::Storage.times(1.0)).is_some_and(|plan| Lean::of(&plan).is_some());
        Self::of(site, ground, if plain { FINE } else { COARSE })
    }

    /// With so many steps each way. Sizes at which the system can't run are left out.
    pub fn of(site: &Site, ground: Arc<Ground>, steps: usize) -> Self {
        let plans = |sought: Sought, widest: f64| {
            let (mut kept, mut plans): (Vec<f64>, Vec<Arc<Plan>>) = (Vec::new(), Vec::new());
            for factor in factors(steps, widest) {
                if let Some(plan) = planned(site, &sought.times(factor)) {
                    kept.push(factor);
                    plans.push(plan);
                }
            }
            (kept, plans)
        };
        let ((storage, sizes), (uses, wants)) =
            (plans(Sought::Storage, WIDEST_STORAGE), plans(Sought::Uses, WIDEST_USES));
        let mut cases = Vec::with_capacity(sizes.len() * wants.len());
        for tanks in &sizes {
            cases.extend(wants.iter().map(|uses| Case { tanks: Arc::clone(tanks), uses: Arc::clone(uses) }));
        }
        Self { batch: Batch::new(ground, cases), storage, uses }
    }

    /// Does a small piece of the work; whether some is left.
    pub fn step(&mut self) -> bool {
        self.batch.step()
    }

    /// How far it is, 0 to 1.
    pub fn progress(&self) -> f64 {
        self.batch.progress()
    }

    /// What each pair comes to: storage by storage, and within it use by use.
    pub fn tallies(&self) -> &[Tally] {
        self.batch.tallies()
    }
}

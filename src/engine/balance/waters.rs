//! The waters of a house: its stores, those together between which water goes. What one has left helps no other.

use super::plan::{Plan, SpillTo};
use super::run::Standing;

/// What one water came to over a run, in L.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Water {
    /// What its uses wanted, rationed or not.
    pub wanted_l: f64,
    /// Of that, what uses wanted whose lack makes a dry day.
    pub counting_l: f64,
    /// What they got.
    pub yield_l: f64,
    /// What left it over rims.
    pub spill_l: f64,
    /// What was hauled to it.
    pub hauled_l: f64,
    /// By how much it ends lower than it began; less than 0 where it ends higher.
    pub drop_l: f64,
}

impl Water {
    /// What came, by the balance of the stores: what left them, less what they lost. With what was hauled.
    pub fn came_l(&self) -> f64 {
        self.yield_l + self.spill_l - self.drop_l
    }

    /// Of what the uses got, what only the water of the first day gave: where less comes than is wanted, that by which the
    /// stores end lower than they began. Where enough comes they are low for a season, and fill again.
    pub fn first_fill_l(&self) -> f64 {
        if self.came_l() < self.wanted_l { self.drop_l.max(0.0) } else { 0.0 }
    }

    /// Of what is wanted by uses whose lack makes a dry day, what comes by itself: more than is wanted here is of no use
    /// elsewhere.
    pub fn serves_l(&self) -> f64 {
        (self.came_l() - self.hauled_l).min(self.counting_l)
    }
}

/// Which store belongs to which water.
#[derive(Clone, Debug, PartialEq)]
pub struct Waters {
    of_store: Vec<usize>,
    count: usize,
}

impl Waters {
    /// Those of a plan: joined by overflows that lead to another tank, and by pumps.
    pub fn of(plan: &Plan) -> Self {
        let mut of_store: Vec<usize> = (0..plan.stores.len()).collect();
        let mut join = |one: usize, other: usize| {
            let (from, to) = (of_store[one], of_store[other]);
            of_store.iter_mut().filter(|water| **water == from).for_each(|water| *water = to);
        };
        for (at, store) in plan.stores.iter().enumerate() {
            for to in &store.spills_to {
                if let SpillTo::Tank(tank) = to {
                    join(at, plan.tanks[*tank].store);
                }
            }
        }
        for pump in &plan.pumps {
            join(pump.from_store, plan.tanks[pump.to_tank].store);
        }
        let mut firsts: Vec<usize> = of_store.clone();
        firsts.sort_unstable();
        firsts.dedup();
        for water in &mut of_store {
            *water = firsts.iter().position(|first| first == water).unwrap_or_default();
        }
        Self { of_store, count: firsts.len() }
    }

    /// What each came to: from sums over the run of what each use wanted and got, and of what each store spilled, wherever
    /// that went, and was brought; and from what stood in the plan before it and after.
    pub fn came_to(
        &self,
        plan: &Plan,
        uses: &[[f64; 2]],
        stores: &[[f64; 2]],
        [before, after]: [&Standing; 2],
    ) -> Vec<Water> {
        let mut waters = vec![Water::default(); self.count];
        for ((at, store), [spill_l, hauled_l]) in plan.stores.iter().enumerate().zip(stores) {
            let water = &mut waters[self.of_store[at]];
            for at in &store.uses {
                let (Some([wanted_l, yield_l]), Some(using)) = (uses.get(*at), plan.uses.get(*at)) else { continue };
                water.wanted_l += wanted_l;
                water.counting_l += if using.counts { *wanted_l } else { 0.0 };
                water.yield_l += yield_l;
            }
            water.spill_l += spill_l * store.spill_that_leaves();
            water.hauled_l += hauled_l;
            water.drop_l += before.live_l[at] - after.live_l[at];
        }
        for (at, tank) in plan.tanks.iter().enumerate() {
            waters[self.of_store[tank.store]].drop_l += before.dead_l[at] - after.dead_l[at];
        }
        waters
    }
}

//! Rationing: which steps are in force today, and what each use does without.
//!
//! A cut is water that the household chose not to ask for: it is told apart from what was asked for and not there, and
//! a day of cuts alone is no dry day. Volumetric reliability counts it as wanted all the same, so that cutting doesn't
//! pass for water.

use crate::site::system::System;

use super::plan::Plan;
use super::run::Day;

/// A step lowered to numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct RationPlan {
    /// The store that is looked at.
    pub store: usize,
    /// In force below this content, in L.
    pub below_l: f64,
    /// Use and share that it does without.
    pub cuts: Vec<(usize, f64)>,
}

impl RationPlan {
    /// Whether it is, with so much live water in each store, in L.
    pub fn is_in_force(&self, live_l: &[f64]) -> bool {
        live_l[self.store] < self.below_l
    }
}

/// The steps of a system without findings, given the store of each tank and the live capacity of each store.
pub(super) fn rations(system: &System, store_of: &[usize], capacity_l: impl Fn(usize) -> f64) -> Vec<RationPlan> {
    let mut rations = Vec::with_capacity(system.rationing.len());
    for step in &system.rationing {
        let store = step
            .tank
            .and_then(|id| system.tanks.iter().position(|tank| tank.id == id))
            .and_then(|tank| store_of.get(tank).copied());
        let Some(store) = store else { continue };
        let place = |id| system.uses.iter().position(|using| using.id == id);
        let cuts = step.cuts.iter().filter_map(|cut| Some((place(cut.using)?, cut.share.get())));
        rations.push(RationPlan { store, below_l: step.below.get() * capacity_l(store), cuts: cuts.collect() });
    }
    rations
}

/// What one step did over a run.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RationTally {
    /// Days on which it was in force.
    pub days: usize,
    /// What the uses did without by it, in L; where several steps cut a use it counts at the deepest cut.
    pub cut_l: f64,
}

/// What each use does without today: a share, and the step that says so.
#[derive(Clone, Debug)]
pub(super) struct Cuts(Box<[(f64, usize)]>);

impl Cuts {
    /// Nothing is cut.
    pub fn none(plan: &Plan) -> Self {
        Self(vec![(0.0, 0); plan.uses.len()].into())
    }

    /// The day begins: each step looks at its store.
    pub fn look(&mut self, plan: &Plan, day: &mut Day, tallies: &mut [RationTally]) {
        self.0.fill((0.0, 0));
        for (number, step) in plan.rations.iter().enumerate() {
            let in_force = step.is_in_force(&day.live_l);
            day.rationed[number] = in_force;
            if !in_force {
                continue;
            }
            tallies[number].days += 1;
            for (using, share) in &step.cuts {
                if *share > self.0[*using].0 {
                    self.0[*using] = (*share, number);
                }
            }
        }
    }

    /// What a use does without of what it wants today, in L; the step that says so counts it.
    #[inline(always)]
    pub fn cut_l(&self, using: usize, wanted_l: f64, tallies: &mut [RationTally]) -> f64 {
        let (share, step) = self.0[using];
        let cut_l = share * wanted_l;
        if cut_l > 0.0 {
            tallies[step].cut_l += cut_l;
        }
        cut_l
    }
}

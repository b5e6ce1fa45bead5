//! Reliability and yield against storage, roof and use.

use std::sync::Arc;

use crate::site::household::Site;

use super::batch::{Batch, Case, Ground};
use super::smallest::{Sought, planned};
use super::tally::Tally;

/// A point of a curve: the factor of what the house has, and what that comes to.
pub type Point = (f64, Tally);

/// Points of each curve: from a quarter to four times what the house has, at equal ratios; the middle one is the house.
pub const POINTS: usize = 33;
const WIDEST: f64 = 4.0;

/// Factors at equal ratios from 1/widest to widest; the middle one of an odd number is just 1.
pub(super) fn factors(points: usize, widest: f64) -> Vec<f64> {
    #[expect(clippy::cast_precision_loss, reason = "points are few")]
    let place = |at: usize| 2.0 * at as f64 / (points - 1) as f64 - 1.0;
    (0..points).map(|at| if 2 * at + 1 == points { 1.0 } else { libm::exp(place(at) * libm::log(widest)) }).collect()
}

/// Three curves on their way.
pub struct Curves {
    batch: Batch,
    /// What each case is a point of.
    places: Vec<(Sought, f64)>,
}

impl Curves {
    /// Before the first step. A size at which the system can't run has no point.
    pub fn new(site: &Site, ground: Arc<Ground>) -> Self {
        let (mut cases, mut places) = (Vec::new(), Vec::new());
        for sought in Sought::ALL {
            for factor in factors(POINTS, WIDEST) {
                if let Some(plan) = planned(site, &sought.times(factor)) {
                    cases.push(Case::of(plan));
                    places.push((sought, factor));
                }
            }
        }
        Self { batch: Batch::new(ground, cases), places }
    }

    /// Does a small piece of the work; whether some is left.
    pub fn step(&mut self) -> bool {
        self.batch.step()
    }

    /// How far it is, 0 to 1.
    pub fn progress(&self) -> f64 {
        self.batch.progress()
    }

    /// The points against one thing, from little to much.
    pub fn against(&self, sought: Sought) -> Vec<Point> {
        let points = self.places.iter().zip(self.batch.tallies());
        points.filter(|((of, _), _)| *of == sought).map(|((_, factor), tally)| (*factor, *tally)).collect()
    }
}

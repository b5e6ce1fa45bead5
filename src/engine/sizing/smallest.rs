//! The smallest storage or roof, or the largest use, that does what is wanted: found on the whole system as it stands, by
//! halving (or cutting into nine, where eight cases run at once) the span between what does and what doesn't.

use std::sync::Arc;

use crate::engine::balance::garden::litres_a_day_of_all;
use crate::engine::balance::lanes::WIDTH;
use crate::engine::balance::plan::{Plan, plan};
use crate::site::household::Site;
use crate::site::system::System;
use crate::site::trial::{FACTOR, Levers, Trial};
use crate::site::wanted::Wanted;

use super::batch::{Batch, Case, Ground};
use super::tally::Tally;

/// What is sought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sought {
    /// The least storage, all tanks larger or smaller alike.
    Storage,
    /// The least roof, all sections larger or smaller alike.
    Roof,
    /// The most use, all uses larger or smaller alike.
    Uses,
}

impl Sought {
    /// All.
    pub const ALL: [Sought; 3] = [Sought::Storage, Sought::Roof, Sought::Uses];

    /// The trial that multiplies it by a factor.
    pub fn times(self, factor: f64) -> Trial {
        let levers = match self {
            Sought::Storage => Levers { storage: factor, ..Levers::NONE },
            Sought::Roof => Levers { roof: factor, ..Levers::NONE },
            Sought::Uses => Levers { uses: factor, ..Levers::NONE },
        };
        Trial { levers, ..Trial::NONE }
    }

    /// How much of it the house has: capacity in L, area in m², mean use in L a day (of a garden by the weather what it
    /// would draw without rain).
    pub fn of(self, site: &Site) -> f64 {
        self.of_system(&site.system)
    }

    /// The same of a system.
    pub fn of_system(self, system: &System) -> f64 {
        match self {
            Sought::Storage => system.tanks.iter().map(|tank| tank.capacity().get()).sum(),
            Sought::Roof => system.sections.iter().map(|section| section.area.get()).sum(),
            Sought::Uses => litres_a_day_of_all(system),
        }
    }
}

/// What the search came to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Found {
    /// So much does it (and was run), to within the closeness of the search: a factor of what the house has.
    Enough {
        /// The factor.
        factor: f64,
        /// What it came to.
        tally: Tally,
    },
    /// Even the end of the span doesn't do it: a thousand times as much storage or roof (less, where a part can't be that
    /// large), a tenth of the use.
    NotEvenAt {
        /// The factor at the end.
        factor: f64,
        /// What that came to.
        tally: Tally,
    },
    /// Even the other end does it: a tenth of the storage or roof, ten times the use.
    EvenAt {
        /// The factor at that end.
        factor: f64,
        /// What that came to.
        tally: Tally,
    },
    /// The system can't run with other sizes.
    CannotRun,
}

/// How close the search comes, as a ratio of what does to what doesn't.
pub const CLOSENESS: f64 = 1.002;

/// Where the span may end, the widest first.
const LARGE_ENDS: [f64; 6] = [FACTOR.greatest, 7.0, 5.0, 3.0, 2.0, 1.4];
/// The same of storage and roof upwards: a house that begins with a barrel may want a hundred of them.
const LARGEST_ENDS: [f64; 5] = [1000.0, 300.0, 100.0, 50.0, 20.0];

/// A search on its way.
pub struct Search {
    site: Arc<Site>,
    ground: Arc<Ground>,
    sought: Sought,
    wanted: Wanted,
    /// The factor that is known not to do, and the one known to.
    span: Option<(f64, (f64, Tally))>,
    factors: Vec<f64>,
    batch: Option<Batch>,
    found: Option<Found>,
}

impl Search {
    /// A search before its first step.
    pub fn new(site: Arc<Site>, ground: Arc<Ground>, sought: Sought, wanted: Wanted) -> Self {
        Self { site, ground, sought, wanted, span: None, factors: Vec::new(), batch: None, found: None }
    }

    /// What was found, once nothing is left to do.
    pub fn found(&self) -> Option<Found> {
        self.found
    }

    /// How far it is, 0 to 1.
    pub fn progress(&self) -> f64 {
        let within = self.batch.as_ref().map_or(0.0, Batch::progress);
        match (self.found, self.span) {
            (Some(_), _) => 1.0,
            (None, None) => 0.1 * within,
            (None, Some((short, (enough, _)))) => {
                let width = |a: f64, b: f64| libm::log(a / b).abs();
                let rest = width(enough, short) / width(FACTOR.greatest, FACTOR.least);
                let narrowed = libm::log(rest) / libm::log(libm::log(CLOSENESS) / width(FACTOR.greatest, FACTOR.least));
                (0.1 + 0.9 * narrowed).clamp(0.1, 0.99)
            }
        }
    }

    /// Does a small piece of the work; whether some is left.
    pub fn step(&mut self) -> bool {
        if self.found.is_some() {
            return false;
        }
        match &mut self.batch {
            Some(batch) => {
                if !batch.step() {
                    let tallies = batch.tallies().to_vec();
                    self.batch = None;
                    self.narrow(&tallies);
                }
            }
            None => self.begin(),
        }
        self.found.is_none()
    }

    /// The ends of the span, the one that should not do first: as far apart as the ranges of the parts allow.
    fn ends(&self) -> (f64, f64) {
        let runs = |factor: &f64| planned(&self.site, &self.sought.times(*factor)).is_some();
        let larger = if self.sought == Sought::Uses { [].iter() } else { LARGEST_ENDS.iter() };
        let large = larger.chain(&LARGE_ENDS).copied().find(runs).unwrap_or(1.0);
        let small = LARGE_ENDS.map(|factor| 1.0 / factor).into_iter().find(runs).unwrap_or(1.0);
        match self.sought {
            Sought::Storage | Sought::Roof => (small, large),
            Sought::Uses => (large, small),
        }
    }

    /// Sets out the next cases: first the ends, then cuts at equal ratios between what doesn't do and what does.
    fn begin(&mut self) {
        self.factors = match self.span {
            None => {
                let (short, enough) = self.ends();
                vec![short, enough]
            }
            Some((short, (enough, _))) => {
                // Another roof gathers other water: cases then don't run side by side.
                let cuts = if self.sought == Sought::Roof { 1 } else { WIDTH };
                let ratio = libm::log(enough / short);
                #[expect(clippy::cast_precision_loss, reason = "eight at most")]
                let cut = |at: usize| short * libm::exp(ratio * at as f64 / (cuts + 1) as f64);
                (1..=cuts).map(cut).collect()
            }
        };
        let cases: Option<Vec<Case>> =
            self.factors.iter().map(|factor| planned(&self.site, &self.sought.times(*factor)).map(Case::of)).collect();
        match cases {
            Some(cases) => self.batch = Some(Batch::new(Arc::clone(&self.ground), cases)),
            None => self.found = Some(Found::CannotRun),
        }
    }

    fn narrow(&mut self, tallies: &[Tally]) {
        let does = |at: &usize| tallies.get(*at).is_some_and(|tally| tally.meets(self.wanted));
        let at = |place: usize| (self.factors[place], tallies[place]);
        match self.span {
            None if does(&0) => {
                let (factor, tally) = at(0);
                self.found = Some(Found::EvenAt { factor, tally });
            }
            None if !does(&1) => {
                let (factor, tally) = at(1);
                self.found = Some(Found::NotEvenAt { factor, tally });
            }
            None => self.span = Some((self.factors[0], at(1))),
            Some((short, enough)) => {
                let first = (0..self.factors.len()).find(does);
                let enough = first.map_or(enough, at);
                // Where nothing does, the last of the cuts is the nearest that doesn't.
                let below = first.unwrap_or(self.factors.len()).checked_sub(1);
                let short = below.map_or(short, |place| self.factors[place]);
                let ratio = (enough.0 / short).max(short / enough.0);
                if ratio <= CLOSENESS {
                    self.found = Some(Found::Enough { factor: enough.0, tally: enough.1 });
                }
                self.span = Some((short, enough));
            }
        }
    }
}

/// The plan of a site under a trial; `None` where it can't run.
pub(super) fn planned(site: &Site, trial: &Trial) -> Option<Arc<Plan>> {
    plan(&trial.system(&site.system)).ok().map(Arc::new)
}

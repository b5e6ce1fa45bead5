//! Options: trials that the household kept beside the real system, to compare them.

use super::household::{Reckoning, Site};
use super::system::System;
use super::trial::Trial;
use crate::quantity::Share;

/// A trial that was kept under a name.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptOption {
    /// What the household calls it.
    pub name: String,
    /// Its system.
    pub system: System,
    /// What the rain is multiplied by beside the site's own factors, 0.1 to 10; 1 is the rain as it is.
    pub rain: Share,
    /// How it is reckoned, where that isn't as the house is.
    pub reckoning: Option<Reckoning>,
}

/// Most options of a site: so many fit side by side.
pub const MOST_OPTIONS: usize = 6;

impl KeptOption {
    /// A trial beside a system, under the trial's name.
    pub fn of_trial(trial: &Trial, real: &System) -> Self {
        Self {
            name: trial.name.clone(),
            system: trial.system(real),
            rain: Share::of_one(trial.levers.rain),
            reckoning: trial.reckoning.as_deref().cloned(),
        }
    }

    /// Whether this is another option under another name.
    pub fn is_the_same(&self, other: &KeptOption) -> bool {
        self.system == other.system && self.rain == other.rain && self.reckoning == other.reckoning
    }

    /// The site as it would be with this option.
    pub fn of(&self, site: &Site) -> Site {
        let reckoning = self.reckoning.as_ref().unwrap_or(&site.reckoning).clone();
        let mut site = Site { system: self.system.clone(), reckoning, ..site.clone() };
        for factor in &mut site.reckoning.rain_factors {
            *factor = Share::of_one(factor.get() * self.rain.get());
        }
        site
    }
}

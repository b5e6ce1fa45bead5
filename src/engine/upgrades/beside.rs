//! The options of a site beside the house as it is, on the same rain unless an option says otherwise.

use super::tally::{Tally, tally};
use crate::engine::balance::plan::{Plan, plan};
use crate::engine::balance::run::Conduct;
use crate::engine::question::{Refusal, weather};
use crate::engine::rain::drier;
use crate::engine::rain::weather::Weather;
use crate::site::household::Site;
use crate::site::rain::Rain;

/// The work of running a house and its options, one run a step.
#[derive(Clone, Debug)]
pub struct Beside {
    site: Site,
    /// The house, if it can run: every option begins with its water.
    house: Option<Plan>,
    weather: Weather,
    /// That of each option which is reckoned otherwise.
    weathers: Vec<Option<Weather>>,
    tallies: Vec<Option<Tally>>,
}

impl Beside {
    /// Prepares it.
    ///
    /// # Errors
    /// See [`Refusal`]; whether a system can run is found when its turn comes.
    pub fn new(site: &Site, rain: &Rain) -> Result<Self, Refusal> {
        let mut weathers = Vec::new();
        for option in &site.options {
            weathers.push(option.reckoning.is_some().then(|| weather(&option.of(site), rain)).transpose()?);
        }
        let house = plan(&site.system).ok();
        Ok(Self { site: site.clone(), house, weather: weather(site, rain)?, weathers, tallies: Vec::new() })
    }

    /// Does one run. Whether there is more to do.
    pub fn step(&mut self) -> bool {
        let (conduct, house) = (Conduct::from(&self.site.reckoning), self.house.as_ref());
        let option = self.tallies.len().checked_sub(1);
        let next = match option.map(|at| self.site.options.get(at).zip(self.weathers.get(at))) {
            None => tally(&self.site.system, &self.weather, conduct, None),
            Some(None) => return false,
            Some(Some((option, Some(weather)))) => {
                let conduct = Conduct::from(option.reckoning(&self.site.reckoning));
                tally(&option.system(&self.site.system), weather, conduct, house)
            }
            Some(Some((option, None))) => {
                let factor = option.levers.rain;
                let scaled = (factor.total_cmp(&1.0).is_ne()).then(|| drier::scaled(&self.weather, &[factor; 12]));
                tally(&option.system(&self.site.system), scaled.as_ref().unwrap_or(&self.weather), conduct, house)
            }
        };
        self.tallies.push(next.ok());
        !self.is_done()
    }

    /// Whether all is done.
    pub fn is_done(&self) -> bool {
        self.tallies.len() > self.site.options.len()
    }

    /// Days of the run just done.
    pub fn days(&self) -> usize {
        let last = self.tallies.len().checked_sub(2).and_then(|at| self.weathers.get(at)?.as_ref());
        last.unwrap_or(&self.weather).dates.len()
    }

    /// What the house and then each option come to, as far as they are run; `None` for one that can't run.
    pub fn tallies(&self) -> &[Option<Tally>] {
        &self.tallies
    }
}

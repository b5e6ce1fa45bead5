//! The least storage of a site under both orders within a day, for an answer with its range.

use std::sync::Arc;

use crate::engine::balance::run::Conduct;
use crate::engine::rain::weather::Weather;
use crate::site::household::Site;

use super::batch::Ground;
use super::smallest::{Found, Search, Sought};
use super::study::BOTH_RULES;

/// The two searches on their way.
pub struct LeastStorage([Search; 2]);

impl LeastStorage {
    /// The searches before their first step; none where the days hold no whole year.
    pub fn new(site: Site, weather: &Weather) -> Option<Self> {
        let wanted = site.reckoning.wanted;
        let ground = Ground::new(weather.clone(), Conduct::from(&site.reckoning));
        if ground.calendar.whole_years == 0 {
            return None;
        }
        let site = Arc::new(site);
        let search = |theta| Search::new(Arc::clone(&site), Arc::new(ground.under(theta)), Sought::Storage, wanted);
        Some(Self(BOTH_RULES.map(search)))
    }

    /// Does a small piece of the work; whether some is left.
    pub fn step(&mut self) -> bool {
        let [after, before] = &mut self.0;
        after.step() || before.step()
    }

    /// What was found under yield after spillage and under yield before it, once nothing is left to do.
    pub fn found(&self) -> Option<[Found; 2]> {
        let [after, before] = &self.0;
        Some([after.found()?, before.found()?])
    }
}

//! A what-if: another system beside the real one, perhaps reckoned otherwise, with some things larger or smaller on top.

use super::household::{Reckoning, Site};
use super::system::System;
use super::uses::Amount;
use crate::quantity::{Area, Count, Flow, Range, Share, Volume};

/// What is tried beside the real system. Nothing of it touches the site until it is kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Trial {
    /// What it is called; empty until something gave it a name.
    pub name: String,
    /// The system that is tried; `None` is the real one.
    pub system: Option<Box<System>>,
    /// How it is reckoned; `None` is as the house is.
    pub reckoning: Option<Box<Reckoning>>,
    /// By how much things are multiplied on top of that.
    pub levers: Levers,
}

/// By how much to multiply each thing; 1 is as it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Levers {
    /// Capacity of every tank.
    pub storage: f64,
    /// Area of every roof section.
    pub roof: f64,
    /// Amount of every use.
    pub uses: f64,
    /// Rain of every month.
    pub rain: f64,
}

/// Most trials that a site keeps as options: so many fit side by side.
pub const MOST_OPTIONS: usize = 6;
/// What a factor may be.
pub const FACTOR: Range = Range::new(0.1, 10.0);

impl Levers {
    /// Everything as it is.
    pub const NONE: Levers = Levers { storage: 1.0, roof: 1.0, uses: 1.0, rain: 1.0 };
}

impl Trial {
    /// Everything as it is.
    pub const NONE: Trial = Trial { name: String::new(), system: None, reckoning: None, levers: Levers::NONE };

    /// Whether there is nothing to try.
    pub fn is_none(&self) -> bool {
        self.system.is_none() && self.reckoning.is_none() && self.levers == Levers::NONE
    }

    /// A trial of another system, under a name.
    pub fn of_system(name: String, system: System) -> Self {
        Trial { name, system: Some(Box::new(system)), ..Trial::NONE }
    }

    /// The same with all in its system that can be, to be kept beside a real one as an option.
    pub fn settled(&self, real: &System) -> Self {
        self.with_system(self.system(real))
    }

    /// Whether another tries the same, whatever it is called.
    pub fn is_the_same(&self, other: &Trial) -> bool {
        self.system == other.system && self.levers == other.levers && self.reckoning == other.reckoning
    }

    /// The same trial of another system, which has in it what the levers did but for the rain.
    pub fn with_system(&self, system: System) -> Self {
        let levers = Levers { rain: self.levers.rain, ..Levers::NONE };
        Trial { name: self.name.clone(), system: Some(Box::new(system)), reckoning: self.reckoning.clone(), levers }
    }

    /// The system under this trial. A part may leave its range by it: then the findings say so.
    pub fn system(&self, real: &System) -> System {
        let mut system = self.system.as_deref().unwrap_or(real).clone();
        for tank in &mut system.tanks {
            tank.set_capacity(Volume::litres(tank.capacity().get() * self.levers.storage));
        }
        for section in &mut system.sections {
            section.area = Area::square_metres(section.area.get() * self.levers.roof);
        }
        for using in &mut system.uses {
            using.amount = scaled(&using.amount, self.levers.uses);
        }
        system
    }

    /// How it is reckoned under this trial, but for the lever on the rain.
    pub fn reckoning<'a>(&'a self, real: &'a Reckoning) -> &'a Reckoning {
        self.reckoning.as_deref().unwrap_or(real)
    }

    /// The site under this trial.
    pub fn of(&self, site: &Site) -> Site {
        let reckoning = self.reckoning(&site.reckoning).clone();
        let mut site = Site { system: self.system(&site.system), reckoning, ..site.clone() };
        for factor in &mut site.reckoning.rain_factors {
            *factor = Share::of_one(factor.get() * self.levers.rain);
        }
        site
    }
}

/// An amount made so many times as large.
pub fn scaled(amount: &Amount, by: f64) -> Amount {
    let mut amount = amount.clone();
    let scale = |flow: &mut Flow| *flow = Flow::litres_a_day(flow.get() * by);
    match &mut amount {
        Amount::Daily(flow) | Amount::PerHead { each: flow, .. } => scale(flow),
        Amount::Monthly(flows) => flows.iter_mut().for_each(scale),
        Amount::PerEvent { a_week, .. } => *a_week = Count::number(a_week.get() * by),
        Amount::Garden(garden) => garden.area = Area::square_metres(garden.area.get() * by),
    }
    amount
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;

    #[test]
    fn a_trial_scales_what_it_says_and_nothing_else() {
        let site = demo::site();
        assert_eq!(Trial::NONE.of(&site).system.uses, site.system.uses);
        let levers = Levers { storage: 2.0, uses: 0.5, ..Levers::NONE };
        let doubled = Trial { levers, ..Trial::NONE }.of(&site);
        for (before, after) in site.system.tanks.iter().zip(&doubled.system.tanks) {
            assert!((after.capacity().get() / before.capacity().get() - 2.0).abs() < 1e-12);
            assert_eq!(after.overflow, before.overflow);
        }
        for (before, after) in site.system.uses.iter().zip(&doubled.system.uses) {
            assert!((after.amount.litres_a_day(6) - before.amount.litres_a_day(6) / 2.0).abs() < 1e-12);
        }
        assert_eq!(doubled.system.sections, site.system.sections);
    }

    #[test]
    fn a_trial_may_be_reckoned_otherwise() {
        let site = demo::site();
        let reckoning = Reckoning { start: Share::of_one(0.25), ..site.reckoning.clone() };
        let trial = Trial { reckoning: Some(Box::new(reckoning.clone())), ..Trial::NONE };
        assert!(!trial.is_none());
        assert_eq!(trial.of(&site), Site { reckoning, ..site });
    }

    #[test]
    fn levers_work_on_the_system_that_is_tried() {
        let site = demo::site();
        let mut other = site.system.clone();
        other.sections.truncate(1);
        let levers = Levers { roof: 3.0, ..Levers::NONE };
        let tried = Trial { levers, ..Trial::of_system("One roof".to_owned(), other) }.of(&site);
        assert_eq!(tried.system.sections.len(), 1);
        assert!((tried.system.sections[0].area.get() - 3.0 * site.system.sections[0].area.get()).abs() < 1e-9);
        assert_eq!(tried.name, site.name);
    }
}

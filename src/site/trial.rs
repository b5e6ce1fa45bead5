//! A what-if: the system with some things larger or smaller.

use super::household::Site;
use super::uses::Amount;
use crate::quantity::{Area, Count, Flow, Range, Share, Volume};

/// By how much to multiply each thing; 1 is as it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trial {
    /// Capacity of every tank.
    pub storage: f64,
    /// Area of every roof section.
    pub roof: f64,
    /// Amount of every use.
    pub uses: f64,
    /// Rain of every month.
    pub rain: f64,
}

/// What a factor may be.
pub const FACTOR: Range = Range::new(0.1, 10.0);

impl Trial {
    /// Everything as it is.
    pub const NONE: Trial = Trial { storage: 1.0, roof: 1.0, uses: 1.0, rain: 1.0 };

    /// The site under this trial. A part may leave its range by it: then the findings say so.
    pub fn of(&self, site: &Site) -> Site {
        let mut site = site.clone();
        for tank in &mut site.system.tanks {
            tank.set_capacity(Volume::litres(tank.capacity().get() * self.storage));
        }
        for section in &mut site.system.sections {
            section.area = Area::square_metres(section.area.get() * self.roof);
        }
        for using in &mut site.system.uses {
            let scale = |flow: &mut Flow| *flow = Flow::litres_a_day(flow.get() * self.uses);
            match &mut using.amount {
                Amount::Daily(flow) | Amount::PerHead { each: flow, .. } => scale(flow),
                Amount::Monthly(flows) => flows.iter_mut().for_each(scale),
                Amount::PerEvent { a_week, .. } => *a_week = Count::number(a_week.get() * self.uses),
                Amount::Garden(garden) => garden.area = Area::square_metres(garden.area.get() * self.uses),
            }
        }
        for factor in &mut site.reckoning.rain_factors {
            *factor = Share::of_one(factor.get() * self.rain);
        }
        site
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::site::demo;

    #[test]
    fn a_trial_scales_what_it_says_and_nothing_else() {
        let site = demo::site();
        assert_eq!(Trial::NONE.of(&site).system.uses, site.system.uses);
        let doubled = Trial { storage: 2.0, uses: 0.5, ..Trial::NONE }.of(&site);
        for (before, after) in site.system.tanks.iter().zip(&doubled.system.tanks) {
            assert!((after.capacity().get() / before.capacity().get() - 2.0).abs() < 1e-12);
            assert_eq!(after.overflow, before.overflow);
        }
        for (before, after) in site.system.uses.iter().zip(&doubled.system.uses) {
            assert!((after.amount.litres_a_day(6) - before.amount.litres_a_day(6) / 2.0).abs() < 1e-12);
        }
        assert_eq!(doubled.system.sections, site.system.sections);
    }
}

//! What handbooks would say for the same house: rules that look at totals, months or one dry spell, not at the days.

use chrono::Datelike;

use crate::engine::rain::picture::WET_DAY_MM;
use crate::engine::rain::weather::Weather;
use crate::site::system::System;

use super::sequent_peak::deficits;

/// Methods of handbooks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Twelve mean months: the greatest deficit that runs up between supply and demand.
    MonthlyBalance,
    /// 5 % of the lesser of a year's yield and a year's demand.
    FivePercent,
    /// 6 % of the lesser of a year's yield and a year's demand.
    SixPercent,
    /// The demand of the longest dry spell.
    DrySeason,
}

impl Method {
    /// All, in the order in which they are shown.
    pub const ALL: [Method; 4] = [Method::MonthlyBalance, Method::DrySeason, Method::FivePercent, Method::SixPercent];
}

/// What handbooks look at: totals of the house, without wetting, first flush or the order of days.
#[derive(Clone, Debug, PartialEq)]
pub struct Basis {
    /// What a mean January to December yields: `A c η P`, in L.
    pub monthly_yield_l: [f64; 12],
    /// What the uses want in January to December, in L.
    pub monthly_demand_l: [f64; 12],
    /// The longest run of days under 1 mm in the record.
    pub dry_spell_days: usize,
    /// What the uses want in that time, in L.
    pub dry_spell_demand_l: f64,
}

/// What a method says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Said {
    /// A tank of so many litres.
    Tank(f64),
    /// No tank is large enough: a year wants more than it yields, both in L.
    Impossible {
        /// What a mean year yields.
        yield_l: f64,
        /// What a year wants.
        demand_l: f64,
    },
}

/// 5 % rule, the "intermediate approach": `0.05 · min(A e P η, 365 n d)`.
///
/// Source: BS 8515:2009+A1:2013 cl. 4, kept as the basic approach of BS EN 16941-1:2018 (from memory).
const FIVE_PERCENT: f64 = 0.05;
/// 6 % rule, about 22 days of a year: `0.06 · min(yearly yield, yearly demand)`.
///
/// Source: DIN 1989-1:2002 (from memory).
const SIX_PERCENT: f64 = 0.06;

impl Basis {
    /// From yearly totals alone, spread evenly, for those rules that ask for no more.
    pub fn of_year(yield_l: f64, demand_l: f64) -> Self {
        Self {
            monthly_yield_l: [yield_l / 12.0; 12],
            monthly_demand_l: [demand_l / 12.0; 12],
            dry_spell_days: 0,
            dry_spell_demand_l: 0.0,
        }
    }

    /// What handbooks see of a house and its days: area times runoff coefficient times what screens pass, for what is
    /// collected at all; the mean months of the rain; the uses as they are entered.
    pub fn of(system: &System, weather: &Weather) -> Self {
        let collects_l_per_mm: f64 = system
            .sections
            .iter()
            .map(|section| {
                let passed = section.outlets.iter().map(|outlet| {
                    let feed = system.feeds.iter().find(|feed| feed.id == outlet.feed);
                    outlet.share.get() * feed.map_or(0.0, |feed| feed.capture.get())
                });
                section.area.get() * section.runoff_coefficient.get() * passed.sum::<f64>()
            })
            .sum();
        let daily = |month: usize| -> f64 { system.uses.iter().map(|using| using.amount.litres_a_day(month)).sum() };
        let daily: [f64; 12] = std::array::from_fn(daily);
        let (mut rain_mm, mut days) = ([0.0; 12], [0.0; 12]);
        let (mut spell, mut spell_l) = (0, 0.0);
        let (mut dry_spell_days, mut dry_spell_demand_l) = (0, 0.0);
        for (date, depth_mm) in weather.dates.iter().zip(&weather.depths_mm) {
            let month = date.month0() as usize;
            rain_mm[month] += depth_mm;
            days[month] += 1.0;
            if *depth_mm < WET_DAY_MM {
                spell += 1;
                spell_l += daily[month];
            } else {
                (spell, spell_l) = (0, 0.0);
            }
            if spell > dry_spell_days {
                (dry_spell_days, dry_spell_demand_l) = (spell, spell_l);
            }
        }
        // A mean month: the mean day of that month times its mean length.
        const LENGTHS: [f64; 12] = [31.0, 28.25, 31.0, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 30.0, 31.0];
        let mean = |month: usize| if days[month] > 0.0 { rain_mm[month] / days[month] } else { 0.0 };
        Self {
            monthly_yield_l: std::array::from_fn(|month| collects_l_per_mm * mean(month) * LENGTHS[month]),
            monthly_demand_l: std::array::from_fn(|month| daily[month] * LENGTHS[month]),
            dry_spell_days,
            dry_spell_demand_l,
        }
    }

    /// What a mean year yields, in L.
    pub fn yield_l(&self) -> f64 {
        self.monthly_yield_l.iter().sum()
    }

    /// What a year wants, in L.
    pub fn demand_l(&self) -> f64 {
        self.monthly_demand_l.iter().sum()
    }

    /// What a method says of it.
    ///
    /// Monthly balance: the greatest deficit of mean months taken twice (Gould & Nissen-Petersen 1999 and others, as
    /// mass curve; Thomas & Fiering's recursion gives the same). Dry season: demand times days without rain, "demand
    /// side" (University of Warwick Development Technology Unit, "Sizing the DRWH system", method 1), here with the
    /// longest spell of days under 1 mm.
    pub fn says(&self, method: Method) -> Said {
        let (yield_l, demand_l) = (self.yield_l(), self.demand_l());
        match method {
            Method::MonthlyBalance if demand_l > yield_l => Said::Impossible { yield_l, demand_l },
            Method::MonthlyBalance => {
                let (supply, demand) = (&self.monthly_yield_l, &self.monthly_demand_l);
                let steps = deficits(supply.iter().chain(supply), demand.iter().chain(demand));
                Said::Tank(steps.fold(0.0, f64::max))
            }
            Method::FivePercent => Said::Tank(FIVE_PERCENT * yield_l.min(demand_l)),
            Method::SixPercent => Said::Tank(SIX_PERCENT * yield_l.min(demand_l)),
            Method::DrySeason => Said::Tank(self.dry_spell_demand_l),
        }
    }
}

//! What a case came to, in a few numbers: what tells one size from another.

use std::ops::Range;

use crate::engine::balance::lean::Calendar;
use crate::engine::balance::plan::Plan;
use crate::engine::balance::run::{Conduct, Day, Standing, run_from};
use crate::engine::balance::series::SHORT_BY;
use crate::engine::balance::side_by_side::Outcome;
use crate::engine::rain::weather::Weather;
use crate::quantity::DAYS_A_YEAR;
use crate::site::wanted::Wanted;

/// The sums of one run.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Tally {
    /// Days of the run.
    pub days: usize,
    /// Days on which a demand of the house was not met in full.
    pub dry_days: usize,
    /// Calendar years of which the run has all days.
    pub whole_years: usize,
    /// Of those, years without a dry day.
    pub good_years: usize,
    /// Calendar years of which the run has a part, with a dry day: no good years either.
    pub dry_parts: usize,
    /// Dry days in the worst calendar year.
    pub worst_year: usize,
    /// What the uses wanted, rationed or not, in L.
    pub demand_l: f64,
    /// What they got, in L.
    pub yield_l: f64,
    /// What left the system over rims, in L.
    pub spill_l: f64,
    /// Hauled water, in L.
    pub hauled_l: f64,
    /// What it cost.
    pub hauling_cost: f64,
}

#[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
impl Tally {
    /// Volumetric reliability, 0 to 1; 1 where nothing was wanted.
    pub fn volumetric(&self) -> f64 {
        if self.demand_l > 0.0 { self.yield_l / self.demand_l } else { 1.0 }
    }

    /// Time reliability, 0 to 1.
    pub fn time(&self) -> f64 {
        if self.days == 0 { 1.0 } else { 1.0 - self.dry_days as f64 / self.days as f64 }
    }

    /// Years of which it is known whether they were good: those that are whole, and parts with a dry day.
    pub fn judged_years(&self) -> usize {
        self.whole_years + self.dry_parts
    }

    /// Share of the years without a dry day, of those of which that is known; of the days, where there is none.
    pub fn good_share(&self) -> f64 {
        if self.judged_years() == 0 { self.time() } else { self.good_years as f64 / self.judged_years() as f64 }
    }

    /// What it comes to by the measure that is wanted, 0 to 1.
    pub fn by(&self, wanted: Wanted) -> f64 {
        match wanted {
            Wanted::GoodYears(_) => self.good_share(),
            Wanted::Days(_) => self.time(),
            Wanted::Water(_) => self.volumetric(),
        }
    }

    /// Whether that is enough. Rounding alone fails nothing.
    pub fn meets(&self, wanted: Wanted) -> bool {
        self.by(wanted) >= wanted.share() - 1e-12
    }

    /// Yield in a year of 365.25 days, in L.
    pub fn yield_a_year_l(&self) -> f64 {
        self.yield_l / self.years()
    }

    /// Years of 365.25 days, at least a day.
    pub fn years(&self) -> f64 {
        self.days.max(1) as f64 / DAYS_A_YEAR
    }

    /// From what a lane came to. What is not reckoned there follows: the demand from the months, the spill from the
    /// balance (a lean system has no other losses).
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "counts of days and years")]
    pub(super) fn of_lane(outcome: &Outcome, inflow_l: f64, calendar: &Calendar, demand_l: f64) -> Self {
        let spill = outcome.stored_first_l + inflow_l - outcome.yield_l - outcome.stored_last_l;
        Self {
            days: calendar.months.last().map_or(0, |last| last.to),
            dry_days: outcome.dry_days as usize,
            whole_years: calendar.whole_years,
            good_years: outcome.good_years as usize,
            worst_year: outcome.worst_year as usize,
            dry_parts: outcome.dry_parts as usize,
            demand_l,
            yield_l: outcome.yield_l,
            spill_l: spill.max(0.0),
            ..Self::default()
        }
    }
}

/// A tally that is made day by day, from the general run.
pub struct Tallying {
    standing: Standing,
    inflow_first: f64,
    /// Days of the run-in that are left, and how many times it is still gone through.
    run_in: Range<usize>,
    run_ins: usize,
    month: usize,
    dry_before_year: usize,
    tally: Tally,
}

impl Tallying {
    /// Before the first day, that of the run-in where there is one.
    pub fn before_first_day(plan: &Plan, calendar: &Calendar, conduct: Conduct) -> Self {
        let Conduct { inflow_first, start_share } = conduct;
        let run_in = calendar.run_in_days();
        let mut standing = Standing::first(plan, if run_in.is_empty() { start_share } else { 1.0 });
        if !run_in.is_empty() {
            // Dead storage is filled once; a larger one is no worse for it.
            standing.live_l.fill(0.0);
        }
        Self {
            standing,
            inflow_first,
            run_in,
            run_ins: calendar.run_ins,
            month: 0,
            dry_before_year: 0,
            tally: Tally::default(),
        }
    }

    /// Goes on for at most so many days; whether days are left.
    pub fn go_on(&mut self, plan: &Plan, weather: &Weather, calendar: &Calendar, most_days: usize) -> bool {
        let Self { standing, inflow_first, run_in, run_ins, month, dry_before_year, tally } = self;
        let some = |from: usize, end: usize| {
            let to = (from + most_days).min(end);
            (to, &weather.dates[from..to], &weather.depths_mm[from..to])
        };
        if run_in.start < run_in.end {
            let (to, dates, depths_mm) = some(run_in.start, run_in.end);
            run_from(plan, dates, depths_mm, standing, *inflow_first, |_| true);
            run_in.start = to;
            if to == run_in.end && *run_ins > 1 {
                (*run_in, *run_ins) = (calendar.run_in_days(), *run_ins - 1);
            }
            return true;
        }
        let (to, dates, depths_mm) = some(tally.days, weather.dates.len());
        let ledger = run_from(plan, dates, depths_mm, standing, *inflow_first, |today: &Day| {
            tally.dry_days += usize::from(today.house_shortfall_l(plan) > SHORT_BY);
            tally.days += 1;
            if let Some(of) = calendar.months.get(*month).filter(|of| of.to == tally.days) {
                *month += 1;
                if of.ends_year {
                    let dry = tally.dry_days - *dry_before_year;
                    tally.good_years += usize::from(of.whole_year && dry == 0);
                    tally.dry_parts += usize::from(!of.whole_year && dry > 0);
                    tally.worst_year = tally.worst_year.max(dry);
                    *dry_before_year = tally.dry_days;
                }
            }
            true
        });
        let total = ledger.total();
        tally.demand_l += total.wanted_l();
        tally.yield_l += total.yield_l;
        tally.spill_l += total.spill_l;
        tally.hauled_l += total.hauled_l;
        tally.hauling_cost += ledger.hauling_cost;
        to < weather.dates.len()
    }

    /// The tally of the days so far.
    pub fn tally(self, calendar: &Calendar) -> Tally {
        Tally { whole_years: calendar.whole_years, ..self.tally }
    }
}

//! What a case came to, in a few numbers: what tells one size from another.

use crate::engine::balance::lean::Calendar;
use crate::engine::balance::plan::Plan;
use crate::engine::balance::run::{Conduct, Day, Standing, run_from};
use crate::engine::balance::series::SHORT_BY;
use crate::engine::balance::side_by_side::Outcome;
use crate::engine::balance::waters::{Water, Waters};
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
    /// Dry days in the worst calendar year.
    pub worst_year: usize,
    /// What the uses wanted, rationed or not, in L.
    pub demand_l: f64,
    /// What they got, in L.
    pub yield_l: f64,
    /// What left the system over rims, in L.
    pub spill_l: f64,
    /// By how much the stores end lower than they began, in L; less than 0 where they end higher.
    pub drop_l: f64,
    /// Of what the uses got, what only the water of the first day gave, in L: see [`Water::first_fill_l`].
    pub first_fill_l: f64,
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

    /// Share of the whole years without a dry day; of the days, where there is no whole year.
    pub fn good_share(&self) -> f64 {
        if self.whole_years == 0 { self.time() } else { self.good_years as f64 / self.whole_years as f64 }
    }

    /// Whether the first fill hides more than half of what is lacking in the long run.
    pub fn rests_on_first_fill(&self) -> bool {
        self.first_fill_l > self.demand_l - self.yield_l
    }

    /// The same without what only the first fill gave: it lacks, on as many days as it would have lasted; where it hides
    /// most of what is lacking, no year is good that comes after it.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "days of a few centuries")]
    pub fn lasting(self) -> Self {
        let given_l = self.first_fill_l;
        if given_l <= 0.0 {
            return self;
        }
        let served = (given_l / self.demand_l * self.days as f64).ceil() as usize;
        Self {
            yield_l: self.yield_l - given_l,
            first_fill_l: 0.0,
            dry_days: (self.dry_days + served).min(self.days),
            good_years: if self.rests_on_first_fill() { 0 } else { self.good_years },
            ..self
        }
    }

    /// What it comes to in the long run by the measure that is wanted, 0 to 1: see [`Tally::lasting`].
    pub fn by(&self, wanted: Wanted) -> f64 {
        let lasting = self.lasting();
        match wanted {
            Wanted::GoodYears(_) => lasting.good_share(),
            Wanted::Days(_) => lasting.time(),
            Wanted::Water(_) => lasting.volumetric(),
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
            demand_l,
            yield_l: outcome.yield_l,
            spill_l: spill.max(0.0),
            drop_l: outcome.stored_first_l - outcome.stored_last_l,
            ..Self::default()
        }
        .of_one_water()
    }

    /// With what the first fill gave, where all stores are one water.
    fn of_one_water(self) -> Self {
        let Self { demand_l: wanted_l, yield_l, spill_l, drop_l, hauled_l, .. } = self;
        Self { first_fill_l: Water { wanted_l, yield_l, spill_l, hauled_l, drop_l }.first_fill_l(), ..self }
    }
}

/// A tally that is made day by day, from the general run.
pub struct Tallying {
    standing: Standing,
    inflow_first: f64,
    month: usize,
    dry_before_year: usize,
    stored_first_l: f64,
    before: Standing,
    /// What each use wanted and got, in L.
    uses: Vec<[f64; 2]>,
    /// What each store spilled and was brought, in L.
    stores: Vec<[f64; 2]>,
    tally: Tally,
}

impl Tallying {
    /// Before the first day.
    pub fn before_first_day(plan: &Plan, conduct: Conduct) -> Self {
        let standing = Standing::share(plan, conduct.start_share);
        let Conduct { inflow_first, .. } = conduct;
        let nothing = Tally::default();
        let (before, uses, stores) =
            (standing.clone(), vec![[0.0; 2]; plan.uses.len()], vec![[0.0; 2]; plan.stores.len()]);
        let (month, dry_before_year, stored_first_l) = (0, 0, 0.0);
        Self { standing, inflow_first, month, dry_before_year, stored_first_l, before, uses, stores, tally: nothing }
    }

    /// Goes on for at most so many days; whether days are left.
    pub fn go_on(&mut self, plan: &Plan, weather: &Weather, calendar: &Calendar, most_days: usize) -> bool {
        let Self { standing, inflow_first, month, dry_before_year, stored_first_l, before: _, uses, stores, tally } =
            self;
        let from = tally.days;
        let to = (from + most_days).min(weather.dates.len());
        let (dates, depths_mm) = (&weather.dates[from..to], &weather.depths_mm[from..to]);
        let ledger = run_from(plan, dates, depths_mm, standing, *inflow_first, |today: &Day| {
            tally.dry_days += usize::from(today.house_shortfall_l(plan) > SHORT_BY);
            for (sum, day) in uses.iter_mut().zip(today.demand_l.iter().zip(&today.cut_l).zip(&today.yield_l)) {
                let ((asked, cut), got) = day;
                *sum = [sum[0] + asked + cut, sum[1] + got];
            }
            for (sum, (spilled, brought)) in stores.iter_mut().zip(today.spill_l.iter().zip(&today.hauled_l)) {
                *sum = [sum[0] + spilled, sum[1] + brought];
            }
            tally.days += 1;
            if let Some(of) = calendar.months.get(*month).filter(|of| of.to == tally.days) {
                *month += 1;
                if of.ends_year {
                    let dry = tally.dry_days - *dry_before_year;
                    tally.good_years += usize::from(of.whole_year && dry == 0);
                    tally.worst_year = tally.worst_year.max(dry);
                    *dry_before_year = tally.dry_days;
                }
            }
            true
        });
        if from == 0 {
            *stored_first_l = ledger.stored_first_l;
        }
        tally.drop_l = *stored_first_l - ledger.stored_last_l;
        let total = ledger.total();
        tally.demand_l += total.wanted_l();
        tally.yield_l += total.yield_l;
        tally.spill_l += total.spill_l;
        tally.hauled_l += total.hauled_l;
        tally.hauling_cost += ledger.hauling_cost;
        to < weather.dates.len()
    }

    /// The tally of the days so far.
    pub fn tally(self, plan: &Plan, calendar: &Calendar) -> Tally {
        let stood = [&self.before, &self.standing];
        let waters = Waters::of(plan).came_to(plan, &self.uses, &self.stores, stood);
        let first_fill_l = waters.iter().map(Water::first_fill_l).sum();
        Tally { whole_years: calendar.whole_years, first_fill_l, ..self.tally }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Share;

    /// Ten years of 365 days with 100 L a day wanted: 365,000 L.
    fn ten_years(yield_l: f64, spill_l: f64, drop_l: f64) -> Tally {
        let dry_days = 0;
        Tally {
            days: 3650,
            whole_years: 10,
            good_years: 10,
            demand_l: 365_000.0,
            dry_days,
            yield_l,
            spill_l,
            drop_l,
            ..Tally::default()
        }
        .of_one_water()
    }

    #[test]
    fn a_size_that_drains_its_first_fill_does_not_do() {
        // 275,000 L came: 90,000 L of what was used stood in the tanks on the first day, as much as 900 days want.
        let drained = ten_years(365_000.0, 0.0, 90_000.0);
        let share = Share::of_one(0.9);
        assert_eq!(drained.by(Wanted::GoodYears(10)), 0.0);
        assert!((drained.by(Wanted::Days(share)) - 2750.0 / 3650.0).abs() < 1e-12);
        assert!((drained.by(Wanted::Water(share)) - 275.0 / 365.0).abs() < 1e-12);
        // 375,000 L came, 50,000 of them spilled, and the record ends in a dry season: it fills again.
        let seasonal = ten_years(365_000.0, 50_000.0, 40_000.0);
        assert_eq!(seasonal.by(Wanted::GoodYears(10)), 1.0);
        assert_eq!(seasonal.lasting(), seasonal);
    }

    #[test]
    fn a_dry_year_that_is_told_is_no_fault_of_the_first_fill() {
        // 40,000 L lacked in one year; 5,000 L less stand there at the end.
        let told = Tally { good_years: 9, dry_days: 400, ..ten_years(325_000.0, 0.0, 5_000.0) };
        assert!(told.meets(Wanted::GoodYears(9)));
        assert_eq!(told.lasting().dry_days, 450);
    }
}

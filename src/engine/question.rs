//! The long-run question: what happens to this house under this rain? One pure function, wherever it runs.

use crate::quantity::Share;
use crate::site::findings::Finding;
use crate::site::household::{GeneratedYears, Site};
use crate::site::rain::Rain;
use crate::site::system::System;

use super::balance::ledger::{Flows, Ledger};
use super::balance::plan::{Plan, plan};
use super::balance::run::Standing;
use super::balance::series::{Series, run_and_keep_from};
use super::balance::waters::{Water, Waters};
use super::measures::budget::{Month, budget};
use super::measures::dry_runs::{DryRun, dry_runs, longest};
use super::measures::percentiles::{DayOfYear, by_day_of_year};
use super::measures::reliability::{Reliability, reliability};
use super::measures::resilience::{Resilience, resilience};
use super::measures::years::{GoodYears, Year, good_years, years};
use super::rain::drier;
use super::rain::gaps::{self, GapError};
use super::rain::generated::{ModelError, RainModel, years};
use super::rain::normals::{self, NormalsError};
use super::rain::weather::{Origin, Weather};

/// Everything that the balance says of a house.
#[derive(Clone, Debug)]
pub struct Answer {
    /// The system as it was run.
    pub plan: Plan,
    /// Where the days of rain come from.
    pub origin: Origin,
    /// Days filled from other years.
    pub filled_days: usize,
    /// Years left out for their missing days.
    pub left_out_years: Vec<i32>,
    /// The days.
    pub series: Series,
    /// What went where.
    pub ledger: Ledger,
    /// The same over the whole run.
    pub total: Flows,
    /// What each water of the house came to.
    pub waters: Vec<Water>,
    /// Reliability in volume and time.
    pub reliability: Reliability,
    /// Stretches of dry days.
    pub dry_runs: Vec<DryRun>,
    /// The longest of them.
    pub longest_dry_run: Option<DryRun>,
    /// Recovery and severity; `None` without dry days.
    pub resilience: Option<Resilience>,
    /// Year by year.
    pub years: Vec<Year>,
    /// Good years among the complete ones.
    pub good_years: Option<GoodYears>,
    /// Percentiles of the live water by day of the year, in L.
    pub percentiles: Vec<DayOfYear>,
    /// Where what the tanks held on the first day hides most of what lacks in the long run: the share of the water wanted
    /// that comes, 0 to 1.
    pub first_fill: Option<f64>,
    /// Where the water went in an average year.
    pub budget: [Month; 12],
}

/// Why there is no answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Refusal {
    /// The system can't run.
    System(Vec<Finding>),
    /// The record can't be made whole.
    Gaps(GapError),
    /// The monthly means can't be used.
    Normals(NormalsError),
    /// The place's rain has no model to draw years from.
    Model(ModelError),
    /// No calendar year of the rain has all its days, so that nothing can be told of sizes.
    NoWholeYear {
        /// How many days there are.
        days: usize,
    },
}

/// The first fill is told of where it gave at least this share of what was wanted over the run: a week of each year
/// (common practice, no source).
const FIRST_FILL_SHARE: f64 = 0.02;

/// Less than this share of the water wanted is told as such: more is all of it, in whole percent.
const ALL_BUT: f64 = 0.995;

/// See [`Answer::first_fill`].
fn first_fill(total: &Flows, waters: &[Water], years: &[Year]) -> Option<f64> {
    let given_l: f64 = waters.iter().map(Water::first_fill_l).sum();
    let hides = given_l > total.lacked_l() && given_l >= FIRST_FILL_SHARE * total.wanted_l();
    let comes_l: f64 = waters.iter().map(|water| water.came_l().min(water.wanted_l)).sum();
    let share = comes_l / total.wanted_l();
    (hides && share < ALL_BUT && years.iter().any(|year| year.complete)).then_some(share)
}

/// What each water of a plan came to over a run whose days were kept.
fn waters(plan: &Plan, series: &Series, stood: [&Standing; 2]) -> Vec<Water> {
    let sum = |columns: &[Vec<f64>], at: usize| columns.get(at).map_or(0.0, |column| column.iter().sum::<f64>());
    let uses: Vec<[f64; 2]> = (0..plan.uses.len())
        .map(|at| {
            let got = sum(&series.yield_l, at);
            [got + sum(&series.shortfall_l, at) + sum(&series.cut_l, at), got]
        })
        .collect();
    let stores: Vec<[f64; 2]> =
        (0..plan.stores.len()).map(|at| [sum(&series.spill_l, at), sum(&series.hauled_l, at)]).collect();
    Waters::of(plan).came_to(plan, &uses, &stores, stood)
}

impl Answer {
    /// Whether all times of the year are in it: without a whole year no yearly figure says anything.
    pub fn has_whole_year(&self) -> bool {
        self.years.iter().any(|year| year.complete)
    }

    /// What came to the stores over the run and was not lost there, in L, with what was hauled.
    pub fn came_l(&self) -> f64 {
        self.waters.iter().map(Water::came_l).sum()
    }

    /// The share (0 to 1) of the water wanted that comes by itself, where that is not all of it over whole years, in whole
    /// percent: then no tank is enough. Without uses whose lack makes no dry day.
    pub fn comes_short(&self) -> Option<f64> {
        let serves_l: f64 = self.waters.iter().map(Water::serves_l).sum();
        let share = serves_l / self.counting_l();
        (self.has_whole_year() && share < ALL_BUT).then_some(share)
    }

    /// Whether as much comes by itself in all as is wanted, were it used where it comes.
    pub fn comes_elsewhere(&self) -> bool {
        let hauled_l: f64 = self.waters.iter().map(|water| water.hauled_l).sum();
        self.came_l() - hauled_l >= self.counting_l()
    }

    fn counting_l(&self) -> f64 {
        self.waters.iter().map(|water| water.counting_l).sum()
    }
}

/// Years of even rain that are run from monthly means: the first shows where it leads from the start, the second is
/// what every further one looks like.
const EVEN_YEARS: u16 = 2;

/// The weather that a site's rain amounts to: missing days treated, months scaled, as its reckoning says.
///
/// # Errors
/// [`Refusal::Gaps`], [`Refusal::Normals`] or [`Refusal::Model`].
pub fn weather(site: &Site, rain: &Rain) -> Result<Weather, Refusal> {
    let reckoning = &site.reckoning;
    let weather = match (rain, reckoning.generated) {
        (_, Some(wanted)) => generated_years(rain, wanted).map_err(Refusal::Model)?,
        (Rain::Record(record), None) => gaps::usable(record, reckoning.missing_days).map_err(Refusal::Gaps)?,
        (Rain::Normals(means), None) => normals::even_years(means, EVEN_YEARS).map_err(Refusal::Normals)?,
    };
    Ok(drier::scaled(&weather, &reckoning.rain_factors.map(|factor| factor.get())))
}

/// Years drawn from the model of a site's rain.
///
/// # Errors
/// See [`ModelError`].
pub fn generated_years(rain: &Rain, wanted: GeneratedYears) -> Result<Weather, ModelError> {
    let model = RainModel::of(rain, wanted.spread.map(Share::get))?;
    Ok(years::years(&model, wanted.years, wanted.seed.into()))
}

/// Runs a site through its rain and draws all conclusions.
///
/// # Errors
/// See [`Refusal`]; all findings of the system at once.
pub fn answer(site: &Site, rain: &Rain) -> Result<Answer, Refusal> {
    answer_beside(site, None, rain)
}

/// The same of a trial: beside a house that can run it begins with the water of that house, so that what a larger tank
/// gains isn't the water in it on the first day.
///
/// # Errors
/// See [`Refusal`]; all findings of the system at once.
pub fn answer_beside(site: &Site, house: Option<&System>, rain: &Rain) -> Result<Answer, Refusal> {
    let tried = plan(&site.system).map_err(Refusal::System)?;
    let house = house.and_then(|house| plan(house).ok());
    let mut answer = conclude(tried, &weather(site, rain)?, site, house.as_ref());
    answer.percentiles = by_day_of_year(&answer.series.dates, &answer.series.total_live_l());
    Ok(answer)
}

/// Runs a site through days of weather that are at hand already, and draws all conclusions but the percentiles by date,
/// which take the longest.
///
/// # Errors
/// [`Refusal::System`].
pub fn answer_under(site: &Site, weather: &Weather) -> Result<Answer, Refusal> {
    let plan = plan(&site.system).map_err(Refusal::System)?;
    Ok(conclude(plan, weather, site, None))
}

fn conclude(plan: Plan, weather: &Weather, site: &Site, house: Option<&Plan>) -> Answer {
    let before = Standing::beside(&plan, house, site.reckoning.start.get());
    let mut standing = before.clone();
    let (ledger, series) = run_and_keep_from(&plan, weather, &mut standing, site.reckoning.inflow_first.get());
    let waters = waters(&plan, &series, [&before, &standing]);
    let total = ledger.total();
    let dry_runs = dry_runs(&series.dates, &series.house_shortfall_l);
    let years = years(&plan, &series, &dry_runs);
    let span_years = series.years();
    Answer {
        origin: weather.origin,
        filled_days: weather.filled_days,
        left_out_years: weather.left_out_years.clone(),
        reliability: reliability(&total, &series),
        longest_dry_run: longest(&dry_runs),
        resilience: resilience(&dry_runs, &series.dates),
        good_years: good_years(&years),
        percentiles: Vec::new(),
        first_fill: first_fill(&total, &waters, &years),
        waters,
        budget: budget(&ledger, span_years),
        years,
        dry_runs,
        total,
        ledger,
        series,
        plan,
    }
}

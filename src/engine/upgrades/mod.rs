//! What to change next: every change that makes sense, run beside the house as it is on the same rain, ranked, and
//! then one after the other, since what the second gains depends on the first.
//!
//! The work goes step by step, one run a step, so that whoever waits can do something else between.

mod beside;
mod candidates;
mod tally;

pub use beside::Beside;
pub use candidates::candidates;
pub use tally::{Tally, tally};

use crate::engine::balance::lean::Calendar;
use crate::engine::balance::plan::{Plan, plan};
use crate::engine::balance::run::Conduct;
use crate::engine::question::{Refusal, weather};
use crate::engine::rain::weather::Weather;
use crate::quantity::Units;
use crate::site::household::Site;
use crate::site::prices::Prices;
use crate::site::rain::Rain;
use crate::site::system::System;
use crate::site::upgrade::{NameFor, Upgrade};

/// By what changes are ranked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RankBy {
    /// The price of what it gains.
    Price,
    /// Dry days avoided.
    DryDays,
    /// Water gained.
    Water,
    /// Spill saved.
    Spill,
    /// Dry days avoided in the worst year.
    WorstYear,
}

impl RankBy {
    /// All of them.
    pub const ALL: [RankBy; 5] = [RankBy::Price, RankBy::DryDays, RankBy::Water, RankBy::Spill, RankBy::WorstYear];
}

/// A change with what it comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// The change.
    pub upgrade: Upgrade,
    /// The system before it, run on the rain.
    pub before: Tally,
    /// The system with it, run on the same rain.
    pub after: Tally,
    /// What it costs.
    pub price: f64,
    /// Whether that is by the household's own prices, not by those that are assumed.
    pub own_price: bool,
}

/// Gains smaller than this, in L a year or days, are rounding.
const ROUNDING: f64 = 1e-6;
/// A gain below this share of what lacks is not worth a price.
const WORTH_A_PRICE: f64 = 0.01;

impl Judged {
    /// Water gained: how much less lacks or has to be hauled, in L a year.
    pub fn water_l_a_year(&self) -> f64 {
        self.before.lacking_l_a_year() - self.after.lacking_l_a_year()
    }

    /// Dry days avoided a year.
    pub fn dry_days_a_year(&self) -> f64 {
        self.before.dry_days_a_year() - self.after.dry_days_a_year()
    }

    /// Spill saved, in L a year.
    pub fn spill_l_a_year(&self) -> f64 {
        self.before.spill_l_a_year() - self.after.spill_l_a_year()
    }

    /// Dry days of the worst year before, less those of the worst year after.
    pub fn worst_year_days(&self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "days of a year")]
        let days = |tally: &Tally| tally.worst_dry_days as f64;
        days(&self.before) - days(&self.after)
    }

    /// Price for each litre a year that it gains; `None` where it gains none worth a price (1 % of what lacks).
    pub fn price_per_l(&self) -> Option<f64> {
        let gained = self.water_l_a_year();
        (gained > ROUNDING && gained >= WORTH_A_PRICE * self.before.lacking_l_a_year()).then(|| self.price / gained)
    }

    fn price_by(&mut self, prices: &Prices) {
        self.price = self.upgrade.price(prices);
        self.own_price = self.upgrade.is_priced_by_household(prices);
    }

    /// How good it is by a measure, larger is better; `None` where it brings nothing by that measure.
    fn worth(&self, by: RankBy) -> Option<f64> {
        let gain = match by {
            RankBy::Price => return self.price_per_l().map(|price| -price),
            RankBy::DryDays => self.dry_days_a_year(),
            RankBy::Water => self.water_l_a_year(),
            RankBy::Spill => self.spill_l_a_year(),
            RankBy::WorstYear => self.worst_year_days(),
        };
        (gain > ROUNDING).then_some(gain)
    }

    /// Whether it would make more days dry than there were.
    fn makes_drier(&self) -> bool {
        self.after.dry_days > self.before.dry_days
    }
}

/// Changes in the order of a measure, the best first; those that bring nothing by it or more dry days are left out, and tanks
/// and roofs that bring no more water than a smaller one in the same place. Of equals the one
/// that gains more water is first, then the cheaper one, then the one that was listed first.
pub fn ranked(judged: &[Judged], by: RankBy) -> Vec<Judged> {
    let mut order: Vec<(f64, &Judged)> = Vec::with_capacity(judged.len());
    for one in judged {
        let Some(worth) = one.worth(by).filter(|_| !one.makes_drier() && !is_too_large(one, judged)) else { continue };
        let is_better = |other: &(f64, &Judged)| {
            let by_worth = other.0.total_cmp(&worth);
            let by_water = other.1.water_l_a_year().total_cmp(&one.water_l_a_year());
            let by_price = one.price.total_cmp(&other.1.price);
            by_worth.then(by_water).then(by_price).is_ge()
        };
        let place = order.iter().take_while(|other| is_better(other)).count();
        order.insert(place, (worth, one));
    }
    order.into_iter().map(|(_, one)| one.clone()).collect()
}

/// Whether a smaller tank or roof in the same place gains as much water.
fn is_too_large(one: &Judged, judged: &[Judged]) -> bool {
    judged.iter().any(|other| {
        let smaller = match (&other.upgrade, &one.upgrade) {
            (Upgrade::AddTank { beside: at, capacity: less }, Upgrade::AddTank { beside, capacity }) => {
                at == beside && less < capacity
            }
            (Upgrade::AddRoof { like: at, area: less }, Upgrade::AddRoof { like, area }) => at == like && less < area,
            _ => false,
        };
        smaller
            && other.water_l_a_year() >= one.water_l_a_year() - ROUNDING
            && other.after.dry_days <= one.after.dry_days
    })
}

/// A change in the sequence.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The system that it is made to.
    pub system: System,
    /// The change, judged against that system.
    pub judged: Judged,
}

/// Most steps of a sequence.
pub const MOST_STEPS: usize = 4;

/// The work of judging all changes.
#[derive(Clone, Debug)]
pub struct Upgrades {
    site: Site,
    weather: Weather,
    conduct: Conduct,
    /// The house as it is: every change begins with its water.
    house: Plan,
    units: Units,
    by: RankBy,
    name_for: NameFor,
    now: Tally,
    /// Changes to the house as it is.
    first: Option<Vec<Judged>>,
    steps: Vec<Step>,
    round: Option<Round>,
    runs: usize,
}

impl PartialEq for Upgrades {
    /// All else follows from these.
    fn eq(&self, other: &Self) -> bool {
        (self.runs, self.steps.len(), self.by, self.is_done())
            == (other.runs, other.steps.len(), other.by, other.is_done())
            && self.site == other.site
    }
}

/// All changes to one system.
#[derive(Clone, Debug)]
struct Round {
    system: System,
    before: Tally,
    /// Still to be run, the last first.
    waiting: Vec<Upgrade>,
    judged: Vec<Judged>,
}

impl Upgrades {
    /// Prepares the work for a site and its rain; the house as it is has been run then.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn new(site: &Site, rain: &Rain, units: &Units, by: RankBy, name_for: NameFor) -> Result<Self, Refusal> {
        let weather = weather(site, rain)?;
        let conduct = Conduct::from(&site.reckoning);
        let house = plan(&site.system).map_err(Refusal::System)?;
        let now = tally(&site.system, &weather, conduct, None).map_err(Refusal::System)?;
        let mut work = Self {
            site: site.clone(),
            weather,
            conduct,
            house,
            units: units.clone(),
            by,
            name_for,
            now,
            first: None,
            steps: Vec::new(),
            round: None,
            runs: 0,
        };
        work.round = Some(work.round(site.system.clone(), now));
        Ok(work)
    }

    /// Whether the rain has a whole calendar year: what a change brings is told by the year.
    ///
    /// # Errors
    /// [`Refusal::NoWholeYear`].
    pub fn of_whole_years(self) -> Result<Self, Refusal> {
        let days = self.weather.dates.len();
        if Calendar::of(&self.weather.dates).whole_years == 0 { Err(Refusal::NoWholeYear { days }) } else { Ok(self) }
    }

    /// Does one run, or picks the next change of the sequence. Whether there is more to do.
    pub fn step(&mut self) -> bool {
        let Some(round) = &mut self.round else { return false };
        if let Some(upgrade) = round.waiting.pop() {
            let system = upgrade.made(&round.system, self.name_for);
            if let Ok(after) = tally(&system, &self.weather, self.conduct, Some(&self.house)) {
                let mut judged = Judged { upgrade, before: round.before, after, price: 0.0, own_price: false };
                judged.price_by(&self.site.prices);
                round.judged.push(judged);
            }
            self.runs += 1;
            return true;
        }
        let Some(round) = self.round.take() else { return false };
        let best = ranked(&round.judged, self.by).into_iter().next();
        self.first.get_or_insert(round.judged);
        let Some(judged) = best else { return false };
        let next = judged.upgrade.made(&round.system, self.name_for);
        let after = judged.after;
        self.steps.push(Step { system: round.system, judged });
        if self.steps.len() >= MOST_STEPS {
            return false;
        }
        self.round = Some(self.round(next, after));
        true
    }

    fn round(&self, system: System, before: Tally) -> Round {
        let mut waiting = candidates(&system, &self.units, self.name_for);
        // A use is cut once, not again and again.
        let done: Vec<&Upgrade> = self.steps.iter().map(|step| &step.judged.upgrade).collect();
        waiting.retain(|upgrade| !matches!(upgrade, Upgrade::CutUse { .. }) || !done.contains(&upgrade));
        waiting.reverse();
        Round { system, before, waiting, judged: Vec::new() }
    }

    /// Ranks by another measure; the sequence begins again, the first changes stay judged.
    pub fn rank_by(&mut self, by: RankBy) {
        self.by = by;
        let Some(first) = self.first.clone() else { return };
        self.steps.clear();
        self.runs = first.len();
        let (system, before) = (self.site.system.clone(), self.now);
        self.round = Some(Round { system, before, waiting: Vec::new(), judged: first });
    }

    /// Takes other prices; the sequence begins again, the first changes stay run.
    pub fn reprice(&mut self, prices: &Prices) {
        self.site.prices = prices.clone();
        self.first.iter_mut().flatten().for_each(|judged| judged.price_by(prices));
        self.round.iter_mut().flat_map(|round| &mut round.judged).for_each(|judged| judged.price_by(prices));
        self.rank_by(self.by);
    }

    /// Whether all is done.
    pub fn is_done(&self) -> bool {
        self.round.is_none()
    }

    /// How far it is, 0 to 1: a guess, since later systems have more or fewer changes.
    pub fn progress(&self) -> f64 {
        let waiting = self.round.as_ref().map_or(0, |round| round.waiting.len());
        let in_first = self.first.as_ref().map_or(self.runs + waiting, Vec::len);
        #[expect(clippy::cast_precision_loss, reason = "a few hundred runs")]
        let share = self.runs as f64 / (in_first * MOST_STEPS).max(1) as f64;
        if self.is_done() { 1.0 } else { share.min(0.99) }
    }

    /// Whether all changes to the house as it is are judged.
    pub fn is_judged(&self) -> bool {
        self.first.is_some()
    }

    /// Days of a run.
    pub fn days(&self) -> usize {
        self.weather.dates.len()
    }

    /// The measure by which it ranks.
    pub fn by(&self) -> RankBy {
        self.by
    }

    /// The house as it is.
    pub fn now(&self) -> &Tally {
        &self.now
    }

    /// The site whose changes these are.
    pub fn site(&self) -> &Site {
        &self.site
    }

    /// Changes to the house as it is, all of them, ranked; empty until they are judged.
    pub fn ranked(&self) -> Vec<Judged> {
        self.first.as_deref().map(|first| ranked(first, self.by)).unwrap_or_default()
    }

    /// Changes one after the other, each the best by then; grows as the work goes on.
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }
}

//! What the diary says of water drawn, apart from levels: meters, and hours in which nobody drew any. It tells a leak
//! from use.

use std::ops::Range;

use chrono::NaiveDate;

use super::timeline::Timeline;
use crate::engine::balance::plan::Plan;
use crate::engine::balance::run::{Standing, run_from};
use crate::engine::diary::joined::Known;
use crate::engine::levels::held;
use crate::quantity::HOURS_A_DAY;
use crate::site::diary::{Diary, Told};
use crate::site::system::System;

/// A level read again after hours in which nobody drew water and no rain fell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeakTest {
    /// The day of the second reading.
    pub day: usize,
    /// The store.
    pub store: usize,
    /// How much less it held, in L.
    pub fell_l: f64,
    /// Days between, at most one.
    pub days: f64,
}

/// What is known of water drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Draws {
    /// For each day what was drawn, as a factor on what the uses are entered to want, where it is known.
    pub factors: Vec<Option<f64>>,
    /// Days at whose end it was known how much had been drawn in all.
    pub marks: Vec<usize>,
    /// What a meter counted from one reading to the next, beginning with enough water not to run out: how much, how much was wanted, and the sum of its days' squares.
    pub metered: Vec<[f64; 3]>,
    /// The tests of a night, and others of less than a day.
    pub tests: Vec<LeakTest>,
}

/// Water that is more than a household draws by so much doesn't run out: three spreads of a week's use and more.
const ENOUGH: f64 = 1.5;
/// A store that holds less than this share has little left to leak.
const TOO_LITTLE: f64 = 0.03;
/// A factor on uses that no household reaches: a meter in another unit.
const MOST: f64 = 20.0;

impl Draws {
    /// Whether anything tells a leak from use.
    pub fn tell(&self) -> bool {
        !self.tests.is_empty() || self.factors.iter().any(Option::is_some)
    }

    /// What is known of a day.
    pub fn factor(&self, day: usize) -> Option<f64> {
        self.factors.get(day).copied().flatten()
    }

    /// What was known of some days, without meters: use and leak together are looked at.
    pub fn undrawn_within(&self, days: Range<usize>) -> Self {
        let factors = self.factors.iter().skip(days.start).take(days.len());
        Self { factors: factors.map(|factor| factor.filter(|factor| *factor == 0.0)).collect(), ..Self::default() }
    }

    /// What a diary says, along the days of a timeline.
    pub(super) fn of(plan: &Plan, system: &System, diary: &Diary, known: &Known<'_>, timeline: &Timeline) -> Self {
        let dates = &timeline.dates;
        let Some(first) = dates.first().copied() else { return Self::default() };
        let day = |date: NaiveDate| usize::try_from((date - first).num_days()).ok().filter(|day| *day < dates.len());
        let mut draws = Self { factors: vec![None; dates.len()], ..Self::default() };
        // Hours without a draw, each with the reading before it.
        let mut last: Vec<Option<(NaiveDate, f64)>> = vec![None; plan.stores.len()];
        for entry in diary.entries() {
            let Told::Level { of, level, undrawn, joined } = &entry.told else { continue };
            let Some(now) = held(plan, system, *of, *level, joined).filter(|held| held.store < last.len()) else {
                continue;
            };
            let before = last[now.store].replace((entry.date, now.live_l));
            let (Some(hours), Some((since, held_l)), Some(to)) = (undrawn, before, day(entry.date)) else { continue };
            let days = hours.get() / HOURS_A_DAY;
            if days >= 1.0 {
                #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within a range")]
                let whole = (days as usize).min(to);
                draws.factors[to + 1 - whole..=to].fill(Some(0.0));
                draws.marks.extend([to - whole, to]);
            } else if known.sum(since.pred_opt().unwrap_or(since), entry.date) == (0.0, 0)
                && !now.above_rim
                && now.live_l > TOO_LITTLE * plan.stores[now.store].joined.live_capacity_l
            {
                draws.tests.push(LeakTest { day: to, store: now.store, fell_l: held_l - now.live_l, days });
            }
        }
        draws.meter(plan, system, diary, timeline, day);
        draws
    }

    /// What a meter of all that is drawn says: one of the whole house, or that of the only use.
    fn meter(
        &mut self,
        plan: &Plan,
        system: &System,
        diary: &Diary,
        timeline: &Timeline,
        day: impl Fn(NaiveDate) -> Option<usize>,
    ) {
        let only = if let [using] = system.uses.as_slice() { Some(using.id) } else { None };
        let mut read: Vec<(usize, f64)> = Vec::new();
        for entry in diary.entries() {
            if let Told::Meter { of, reading } = entry.told
                && (of.is_none() || of == only)
                && let Some(day) = day(entry.date)
            {
                read.retain(|(other, _)| *other != day);
                read.push((day, reading.get()));
            }
        }
        if read.len() < 2 {
            return;
        }
        let mut wanted = Vec::with_capacity(timeline.dates.len());
        let rain: Vec<f64> = timeline.rain_mm.iter().map(|mm| mm.unwrap_or(0.0)).collect();
        run_from(plan, &timeline.dates, &rain, &mut Standing::share(plan, 0.5), 0.0, |today| {
            wanted.push(today.demand_l.iter().sum::<f64>());
            true
        });
        for pair in read.windows(2) {
            let ((from, before), (to, after)) = (pair[0], pair[1]);
            let open = |day: &usize| self.factors[*day].is_none();
            let days = || (from + 1..=to).filter(open).map(|day| wanted[day]);
            let wanted_l: f64 = days().sum();
            let factor = (after - before) / wanted_l;
            // Water that runs out is drawn as it comes, not evenly: such days say little.
            let held_l: f64 = timeline.readings.iter().filter(|read| read.day == from).map(|read| read.live_l).sum();
            if (0.0..MOST).contains(&factor) && held_l > ENOUGH * wanted_l {
                self.metered.push([after - before, wanted_l, days().map(|litres| litres * litres).sum()]);
                self.factors[from + 1..=to].iter_mut().for_each(|known| *known = known.or(Some(factor)));
                self.marks.extend([from, to]);
            }
        }
    }
}

//! Readings and rain along the days.

use std::ops::Range;

use chrono::NaiveDate;

use super::draws::Draws;
use crate::engine::balance::plan::Plan;
use crate::engine::diary::joined::Known;
use crate::engine::diary::track::{brought, levels_read};
use crate::quantity::HOURS_A_DAY;
use crate::site::diary::{Diary, EntryId, Told};
use crate::site::household::Site;
use crate::site::rain::Rain;

/// A level that was read, at the end of its day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// The day, counted from the timeline's first.
    pub day: usize,
    /// The store, as its place in the plan.
    pub store: usize,
    /// Live water, in L.
    pub live_l: f64,
    /// Whether it is more than the store can hold.
    pub above_rim: bool,
}

/// Days in a row with what is known of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Timeline {
    /// The dates.
    pub dates: Vec<NaiveDate>,
    /// The rain of each, in mm; `None` where nobody measured.
    pub rain_mm: Vec<Option<f64>>,
    /// The readings by day.
    pub readings: Vec<Reading>,
    /// Water brought: day, store and L.
    pub brought: Vec<(usize, usize, f64)>,
    /// What is known of water drawn.
    pub draws: Draws,
}

/// Readings older than this before the last one are not looked at: roofs, gutters and households change.
const LONGEST_DAYS: i64 = 3 * 365;

impl Timeline {
    /// The store whose leak is looked for: the one that is read most.
    pub fn leak_store(&self) -> usize {
        let read = |store: usize| self.readings.iter().filter(|reading| reading.store == store).count();
        let stores = self.readings.iter().map(|reading| reading.store).max().unwrap_or(0);
        (0..=stores).rev().max_by_key(|store| read(*store)).unwrap_or(0)
    }

    /// Some of the days, without meters.
    pub fn within(&self, days: Range<usize>) -> Self {
        let first = days.start;
        let readings = self.readings.iter().filter(|reading| days.contains(&reading.day));
        let brought = self.brought.iter().filter(|brought| days.contains(&brought.0));
        Self {
            dates: self.dates[days.clone()].to_vec(),
            rain_mm: self.rain_mm[days.clone()].to_vec(),
            readings: readings.map(|reading| Reading { day: reading.day - first, ..*reading }).collect(),
            brought: brought.map(|(day, store, litres)| (day - first, *store, *litres)).collect(),
            draws: self.draws.undrawn_within(days.clone()),
        }
    }

    /// What a diary says, up to today, of the tanks as they are joined now; `None` where there are not two readings.
    pub fn of(plan: &Plan, site: &Site, rain: Option<&Rain>, diary: &Diary, today: NaiveDate) -> Option<Self> {
        let mut read = levels_read(plan, &site.system, diary);
        // What was read while other tanks were joined tells of another system.
        read.retain(|read| read.date <= today && read.as_now);
        let last = read.last()?.date;
        read.retain(|read| (last - read.date).num_days() <= LONGEST_DAYS);
        let first = read.first()?.date;
        let day = |date: NaiveDate| usize::try_from((date - first).num_days()).ok();
        let length = day(last).filter(|length| *length > 0)? + 1;
        let known = Known::of(rain, diary);
        let dates: Vec<NaiveDate> = first.iter_days().take(length).collect();
        // The second reading of a night's test is no end of a day.
        let by_night = |id: EntryId| {
            let entry = diary.entry(id);
            entry.is_some_and(
                |entry| matches!(entry.told, Told::Level { undrawn: Some(hours), .. } if hours.get() < HOURS_A_DAY),
            )
        };
        read.retain(|read| !by_night(read.id));
        let mut readings = Vec::with_capacity(read.len());
        for read in read {
            let Some(day) = day(read.date) else { continue };
            let reading = Reading { day, store: read.held.store, live_l: read.end_l, above_rim: read.held.above_rim };
            // Of several readings of a store on one day the last counts.
            readings.retain(|other: &Reading| (other.day, other.store) != (day, reading.store));
            readings.push(reading);
        }
        let brought = brought(plan, &site.system, diary).into_iter();
        let brought = brought
            .filter_map(|load| Some((day(load.date).filter(|day| *day < length)?, load.store, load.litres)))
            .collect();
        let rain_mm = dates.iter().map(|date| known.mm(*date)).collect();
        let mut timeline = Self { rain_mm, dates, readings, brought, draws: Draws::default() };
        timeline.draws = Draws::of(plan, &site.system, diary, &known, &timeline);
        Some(timeline)
    }
}

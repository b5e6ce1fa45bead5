//! What is doubtful about an entry: it is questioned, never refused.

use chrono::NaiveDate;

use super::joined::Known;
use super::track::levels_read;
use crate::engine::balance::garden::litres_between;
use crate::engine::balance::plan::Plan;
use crate::engine::levels::{held, store_of};
use crate::site::diary::{Diary, Entry, EntryId, Told};
use crate::site::part::PartId;
use crate::site::system::System;

/// Something doubtful.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Doubt {
    /// The day lies ahead.
    InTheFuture,
    /// More was brought than all tanks hold, in L.
    MoreThanFits {
        /// What they hold.
        hold_l: f64,
    },
    /// A level of the day of a delivery is written down: the delivery counts as brought after it.
    LevelThatDay,
    /// The level is above the rim of what was read.
    AboveTheRim,
    /// The store rose, in L, since the last reading, while no rain fell and none was brought.
    RoseWithoutRain {
        /// By how much, in L.
        by_l: f64,
        /// Since when.
        since: NaiveDate,
    },
    /// The store rose, in L, by more than all rain on the roof and all that was brought.
    RoseMoreThanRain {
        /// By how much, in L.
        by_l: f64,
        /// The most that can have come, in L.
        most_l: f64,
        /// Since when.
        since: NaiveDate,
    },
    /// The store fell much faster than its uses draw.
    FellFast {
        /// By how much, in L.
        by_l: f64,
        /// What the store's uses would have drawn, in L.
        drawn_l: f64,
        /// Since when.
        since: NaiveDate,
    },
    /// More rain than on any day of the record.
    MoreThanEver {
        /// The greatest of the record, in mm.
        most_mm: f64,
    },
    /// Rain of this day is already written; both count together.
    RainTwice {
        /// What is written, in mm.
        there_mm: f64,
    },
    /// The meter stood higher before.
    MeterWentBack {
        /// Its reading then, in L.
        before_l: f64,
        /// When.
        on: NaiveDate,
    },
}

/// Changes of less than this share of what the store holds are within what a dipstick can tell.
const READING_ERROR: f64 = 0.03;
/// The fall is questioned from this many times the uses on (common practice, no source).
const FAST: f64 = 2.0;
/// Readings further apart than this, in days, are not compared.
const COMPARED_WITHIN: i64 = 31;
/// Litres of water that a millimetre brings on a square metre.
const LITRES_A_MM_M2: f64 = 1.0;

/// What is doubtful about an entry that is to be written (`id` where it takes the place of one). `greatest_mm` is the
/// most rain of a day in the site's record.
pub fn doubts(
    system: &System,
    plan: Option<&Plan>,
    diary: &Diary,
    known: &Known<'_>,
    greatest_mm: Option<f64>,
    today: NaiveDate,
    (id, date, told): (Option<EntryId>, NaiveDate, &Told),
) -> Vec<Doubt> {
    let mut doubts = Vec::new();
    if date > today {
        doubts.push(Doubt::InTheFuture);
    }
    match told {
        Told::Level { of, level, joined, .. } => {
            let Some(plan) = plan else { return doubts };
            let Some(now) = held(plan, system, *of, *level, joined) else { return doubts };
            if now.above_rim {
                doubts.push(Doubt::AboveTheRim);
            }
            let before = levels_read(plan, system, diary)
                .into_iter()
                .rfind(|read| read.held.store == now.store && read.as_now && Some(read.id) != id && read.date < date);
            let Some(before) = before.filter(|before| (date - before.date).num_days() <= COMPARED_WITHIN) else {
                return doubts;
            };
            let capacity_l = plan.stores[now.store].joined.live_capacity_l;
            let rose_l = now.live_l - before.end_l;
            let (rain_mm, unknown) = known.sum(before.date, date);
            let brought_l: f64 = diary
                .entries()
                .iter()
                .filter(|entry| entry.date > before.date && entry.date <= date)
                .map(|entry| if let Told::Delivery { volume, .. } = &entry.told { volume.get() } else { 0.0 })
                .sum();
            // A second store or a pump may have poured in: only a house of one store is certain.
            let alone = plan.stores.len() == 1;
            let roof_m2: f64 = system.sections.iter().map(|section| section.area.get()).sum();
            let most_l = brought_l + rain_mm * roof_m2 * LITRES_A_MM_M2;
            if rose_l > READING_ERROR * capacity_l && unknown == 0 && alone {
                if most_l == 0.0 {
                    doubts.push(Doubt::RoseWithoutRain { by_l: rose_l, since: before.date });
                } else if rose_l > most_l + READING_ERROR * capacity_l {
                    doubts.push(Doubt::RoseMoreThanRain { by_l: rose_l, most_l, since: before.date });
                }
            }
            let here = |tank: Option<PartId>| tank.and_then(|tank| store_of(plan, system, tank)) == Some(now.store);
            let drawn_l = litres_between(system, |using| here(using.tank), before.date, date);
            let lifted = system.pumps.iter().any(|pump| here(pump.from));
            if -rose_l > FAST * drawn_l + 2.0 * READING_ERROR * capacity_l && !lifted {
                doubts.push(Doubt::FellFast { by_l: -rose_l, drawn_l, since: before.date });
            }
        }
        Told::Rain(depth) => {
            if let Some(most_mm) = greatest_mm.filter(|most| depth.get() > *most) {
                doubts.push(Doubt::MoreThanEver { most_mm });
            }
            let same_day = diary.entries().iter().filter(|entry| entry.date == date && Some(entry.id) != id);
            let there: Vec<f64> = same_day
                .filter_map(|entry| if let Told::Rain(mm) = entry.told { Some(mm.get()) } else { None })
                .collect();
            if !there.is_empty() {
                doubts.push(Doubt::RainTwice { there_mm: there.iter().sum() });
            }
        }
        Told::Meter { of, reading } => {
            let before = diary.entries().iter().rfind(|entry| {
                Some(entry.id) != id
                    && entry.date < date
                    && matches!(&entry.told, Told::Meter { of: other, .. } if other == of)
            });
            if let Some(before) = before
                && let Told::Meter { reading: stood, .. } = &before.told
                && stood.get() > reading.get()
            {
                doubts.push(Doubt::MeterWentBack { before_l: stood.get(), on: before.date });
            }
        }
        Told::Delivery { volume, .. } => {
            let hold_l: f64 = system.tanks.iter().map(|tank| tank.capacity().get()).sum();
            if volume.get() > hold_l {
                doubts.push(Doubt::MoreThanFits { hold_l });
            }
            let of_the_day = |entry: &&Entry| entry.date == date && matches!(entry.told, Told::Level { .. });
            if diary.entries().iter().find(of_the_day).is_some_and(|level| id.is_none_or(|id| id > level.id)) {
                doubts.push(Doubt::LevelThatDay);
            }
        }
        Told::Work { .. } | Told::Test { .. } | Told::Note => {}
    }
    doubts
}

//! The rain of a diary together with the rain that a site has.

use chrono::{Days, NaiveDate};

use crate::site::diary::{Diary, Told};
use crate::site::rain::{MissingDays, Rain, RainRecord};

/// From so many days on, the rain of a diary makes a record by itself.
const A_YEAR: u64 = 365;
/// A longer gap than this between record and diary is not filled from other years: that would be inventing years.
const LONGEST_FILLED_GAP: u64 = 366;

/// Rain of each day on which some was written down, by day, in mm. Several entries of one day are showers that add up.
pub fn written_mm(diary: &Diary) -> Vec<(NaiveDate, f64)> {
    let mut days: Vec<(NaiveDate, f64)> = Vec::new();
    for entry in diary.entries() {
        if let Told::Rain(depth) = entry.told {
            match days.last_mut() {
                Some((date, sum)) if *date == entry.date => *sum += depth.get(),
                _ => days.push((entry.date, depth.get())),
            }
        }
    }
    days
}

/// The site's rain with that of its diary: a day that the record lacks, or that lies before or after it, takes what was
/// written down; a day that it has stays as it is; a day that neither has is missing. `None` where nothing would change:
/// no rain in the diary, monthly means, or a gap so long that the treatment of missing days would invent years, or that
/// less than a year of diary is not worth it.
pub fn joined(rain: Option<&Rain>, diary: &Diary, treatment: MissingDays) -> Option<Rain> {
    let written = written_mm(diary);
    let (first, last) = (written.first()?.0, written.last()?.0);
    let days_between = |from: NaiveDate, to: NaiveDate| u64::try_from((to - from).num_days()).unwrap_or(0);
    let record = match rain {
        Some(Rain::Normals(_)) => return None,
        Some(Rain::Record(record)) => record.clone(),
        None if days_between(first, last) >= A_YEAR => {
            RainRecord { source: String::new(), start: first, depths_mm: Vec::new() }
        }
        None => return None,
    };
    let record_last = record.end().unwrap_or(record.start);
    let gap = days_between(record_last, first).max(days_between(last, record.start));
    // Years between that nobody looked at are not worth a few days behind them.
    let is_short = days_between(first, last) < A_YEAR;
    if gap > LONGEST_FILLED_GAP && (treatment == MissingDays::Fill || is_short) {
        return None;
    }
    let start = record.start.min(first);
    let mut depths_mm = vec![None; usize::try_from(days_between(start, record.start)).ok()?];
    depths_mm.extend(record.depths_mm);
    for (date, depth_mm) in written {
        let at = usize::try_from(days_between(start, date)).ok()?;
        if at >= depths_mm.len() {
            depths_mm.resize(at + 1, None);
        }
        if depths_mm[at].is_none() {
            depths_mm[at] = Some(depth_mm);
        }
    }
    Some(Rain::Record(RainRecord { source: record.source, start, depths_mm }))
}

/// The rain of a day as it is known: what was written down, or else what the record has. `None` where nobody looked.
pub struct Known<'a> {
    record: Option<&'a RainRecord>,
    written: Vec<(NaiveDate, f64)>,
}

/// The most days of one dry spell that are written down together: who forgot the gauge for longer doesn't know.
pub const LONGEST_DRY_SPELL: usize = 92;

impl<'a> Known<'a> {
    /// What is known of the rain of a site.
    pub fn of(rain: Option<&'a Rain>, diary: &Diary) -> Self {
        let record = match rain {
            Some(Rain::Record(record)) => Some(record),
            _ => None,
        };
        Self { record, written: written_mm(diary) }
    }

    /// The rain of a day, in mm.
    pub fn mm(&self, date: NaiveDate) -> Option<f64> {
        // The household's own gauge stands nearer to its roof than that of the record.
        if let Ok(at) = self.written.binary_search_by(|(other, _)| other.cmp(&date)) {
            return Some(self.written[at].1);
        }
        let record = self.record?;
        let at = usize::try_from((date - record.start).num_days()).ok()?;
        record.depths_mm.get(at).copied().flatten()
    }

    /// The first day of the stretch that ends with a day and of which nothing is known; `None` where something is known of
    /// that day, or of nothing within [`LONGEST_DRY_SPELL`] before it.
    pub fn unknown_since(&self, day: NaiveDate) -> Option<NaiveDate> {
        let mut first = None;
        for before in (0..=LONGEST_DRY_SPELL as u64).map_while(|days| day.checked_sub_days(Days::new(days))) {
            if self.mm(before).is_some() {
                return first;
            }
            first = Some(before);
        }
        None
    }

    /// The sum over the days from the one after `from` to `to`, in mm, with the number of days not known.
    pub fn sum(&self, from: NaiveDate, to: NaiveDate) -> (f64, usize) {
        let mut sum = (0.0, 0);
        let mut date = from;
        while date < to {
            let Some(next) = date.checked_add_days(Days::new(1)) else { break };
            date = next;
            match self.mm(date) {
                Some(mm) => sum.0 += mm,
                None => sum.1 += 1,
            }
        }
        sum
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Depth;
    use crate::site::diary::{Entry, EntryId};

    fn day(month: u32, day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, month, day).unwrap_or_default()
    }

    fn diary(days: &[(NaiveDate, f64)]) -> Diary {
        let entry = |(id, (date, mm)): (u64, &(NaiveDate, f64))| Entry {
            id: EntryId(id),
            edited: id,
            date: *date,
            told: Told::Rain(Depth::millimetres(*mm)),
            note: String::new(),
        };
        Diary::of((1..).zip(days).map(entry).collect())
    }

    fn record() -> Rain {
        Rain::Record(RainRecord {
            source: "gauge".to_owned(),
            start: day(3, 1),
            depths_mm: vec![Some(1.0), None, Some(3.0)],
        })
    }

    fn depths(rain: Option<Rain>) -> Vec<Option<f64>> {
        match rain {
            Some(Rain::Record(record)) => record.depths_mm,
            _ => Vec::new(),
        }
    }

    #[test]
    fn a_stretch_that_nobody_wrote_of_begins_after_the_last_day_that_somebody_did() {
        let written = diary(&[(day(8, 3), 4.0)]);
        let known = Known::of(None, &written);
        assert_eq!(known.unknown_since(day(8, 20)), Some(day(8, 4)));
        assert_eq!(known.unknown_since(day(8, 4)), Some(day(8, 4)));
        assert_eq!(known.unknown_since(day(8, 3)), None, "that day is known");
        assert_eq!(known.unknown_since(day(8, 2)), None, "nothing before it is");
        assert_eq!(known.unknown_since(day(12, 24)), None, "four months are no dry spell that somebody remembers");
    }

    #[test]
    fn a_written_day_fills_a_gap_and_goes_on_and_the_rest_stays_unknown() {
        let leave_out = MissingDays::LeaveOutYears { with_more_than: 30 };
        let written = diary(&[(day(3, 2), 2.5), (day(3, 3), 99.0), (day(3, 6), 0.0), (day(3, 6), 4.0)]);
        let joined_depths = depths(joined(Some(&record()), &written, leave_out));
        assert_eq!(joined_depths, [Some(1.0), Some(2.5), Some(3.0), None, None, Some(4.0)]);
        let before = diary(&[(day(2, 27), 7.0)]);
        let joined_depths = depths(joined(Some(&record()), &before, leave_out));
        assert_eq!(joined_depths, [Some(7.0), None, Some(1.0), None, Some(3.0)]);
        assert_eq!(joined(Some(&record()), &diary(&[]), leave_out), None);
    }

    #[test]
    fn no_years_are_invented_and_a_few_days_are_no_record() {
        let late = diary(&[(NaiveDate::from_ymd_opt(2030, 1, 1).unwrap_or_default(), 7.0)]);
        assert_eq!(joined(Some(&record()), &late, MissingDays::Fill), None);
        let leave_out = MissingDays::LeaveOutYears { with_more_than: 30 };
        assert_eq!(joined(Some(&record()), &late, leave_out), None, "four years for a day");
        let year =
            |from: i32| [from, from + 1].map(|year| (NaiveDate::from_ymd_opt(year, 1, 1).unwrap_or_default(), 7.0));
        assert!(joined(Some(&record()), &diary(&year(2030)), leave_out).is_some());
        assert_eq!(joined(None, &diary(&[(day(3, 2), 2.5), (day(3, 9), 2.5)]), MissingDays::Fill), None);
    }

    #[test]
    fn what_nobody_looked_at_is_unknown() {
        let (rain, written) = (record(), diary(&[(day(3, 2), 2.5), (day(3, 3), 9.0)]));
        let known = Known::of(Some(&rain), &written);
        assert_eq!([1, 2, 3, 4].map(|date| known.mm(day(3, date))), [Some(1.0), Some(2.5), Some(9.0), None]);
        assert_eq!(known.sum(day(3, 1), day(3, 5)), (11.5, 2));
    }
}

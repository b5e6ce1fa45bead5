//! What upkeep is due: by days, by rain, by litres that have passed, or because readings say so.

use chrono::{Days, NaiveDate};

use super::joined::Known;
use crate::engine::balance::garden::litres_between;
use crate::engine::learning::calls::{Call, Shows};
use crate::engine::treatment::results::asks_to_repeat;
use crate::site::diary::{Diary, Entry, Parameter, Told};
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::upkeep::{Interval, Job, Upkeep, jobs, use_of};
use crate::site::uses::Use;
use crate::site::work::Task;

/// A job with how it stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Due {
    /// The job.
    pub job: Job,
    /// How often it is due.
    pub interval: Interval,
    /// When it was last done, if that is written.
    pub last: Option<NaiveDate>,
    /// When its days are over, if it goes by days and was ever done.
    pub on: Option<NaiveDate>,
    /// How it stands.
    pub standing: Standing,
}

/// How a job stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Standing {
    /// It is due.
    Overdue(Because),
    /// It is due within two weeks, or more than nine tenths of its rain or litres have passed.
    Soon(Because),
    /// It has time.
    Later,
    /// It was never written down: nobody knows.
    NeverWritten {
        /// Whether it would have been due in the days that the diary tells of.
        long: bool,
    },
}

/// What a job is due by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Because {
    /// Days that have passed since.
    Days(i64),
    /// Rain since, in mm; more may have fallen on days nobody looked at.
    Rain(f64),
    /// Litres that have passed since.
    Litres(f64),
    /// Readings show this.
    Readings(Shows),
}

/// Soon is within so many days.
const SOON_DAYS: f64 = 14.0;
/// Or from this share of the rain or litres on.
const SOON_SHARE: f64 = 0.9;

/// Where a test is over a limit of health, or found coliforms, the next one is due after so many days: when the water was
/// made good, and once more a week later. Common practice, no source.
const DAYS_TO_REPEAT: f64 = 7.0;

/// How every job of a system stands on a day. `called` names jobs that readings call for; they are due until they are done.
pub fn due(
    system: &System,
    upkeep: &Upkeep,
    diary: &Diary,
    known: &Known<'_>,
    called: &[Call],
    today: NaiveDate,
) -> Vec<Due> {
    let began = diary.entries().first().map(|entry| entry.date).filter(|began| *began <= today);
    let stand = |job: Job| {
        let mut interval = upkeep.interval(job);
        let asks = |tap: &Use| tap.id == job.part && asks_to_repeat(diary, system, tap);
        if job.task == Task::WaterTest && system.uses.iter().any(asks) {
            interval.days = Some(DAYS_TO_REPEAT);
        }
        let last = diary.entries().iter().filter(|entry| entry.date <= today).rfind(|entry| does(entry, job));
        let last = last.map(|entry| entry.date);
        let call = called.iter().find(|call| call.job == job && last.is_none_or(|last| last < call.since));
        let standing = match (call, last) {
            (Some(call), _) => Standing::Overdue(Because::Readings(call.shows)),
            (None, Some(last)) => standing(system, diary, known, job, interval, (last, today)),
            (None, None) => {
                let since = |began| standing(system, diary, known, job, interval, (began, today));
                Standing::NeverWritten { long: matches!(began.map(since), Some(Standing::Overdue(_))) }
            }
        };
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "days within a range")]
        let on = last.zip(interval.days).and_then(|(last, days)| last.checked_add_days(Days::new(days as u64)));
        Due { job, interval, last, on, standing }
    };
    jobs(system).into_iter().map(stand).collect()
}

/// Whether an entry says that a job was done: on its part, or on the whole house.
fn does(entry: &Entry, job: Job) -> bool {
    match &entry.told {
        Told::Work { on, task } => *task == job.task && on.is_none_or(|on| on == job.part),
        // Germs are what the job is about: a pH says nothing of them.
        Told::Test { at, parameter: Parameter::EColi | Parameter::Coliforms, .. } => {
            job.task == Task::WaterTest && at.is_none_or(|at| at == job.part)
        }
        _ => false,
    }
}

fn standing(
    system: &System,
    diary: &Diary,
    known: &Known<'_>,
    job: Job,
    interval: Interval,
    (last, today): (NaiveDate, NaiveDate),
) -> Standing {
    #[expect(clippy::cast_precision_loss, reason = "days are few")]
    let days = (today - last).num_days() as f64;
    let mut soon = None;
    if let Some(every) = interval.days {
        let because = Because::Days((today - last).num_days());
        if days >= every {
            return Standing::Overdue(because);
        }
        if days >= every - SOON_DAYS.min(every / 2.0) {
            soon = Some(because);
        }
    }
    if let Some(every) = interval.rain_mm {
        let (fell, _) = known.sum(last, today);
        if fell >= every {
            return Standing::Overdue(Because::Rain(fell));
        }
        if fell >= SOON_SHARE * every {
            soon = soon.or(Some(Because::Rain(fell)));
        }
    }
    if let Some(every) = interval.litres {
        let passed = passed_l(system, diary, job.part, last, today);
        if passed >= every {
            return Standing::Overdue(Because::Litres(passed));
        }
        if passed >= SOON_SHARE * every {
            soon = soon.or(Some(Because::Litres(passed)));
        }
    }
    soon.map_or(Standing::Later, Standing::Soon)
}

/// Litres that passed a part on the days after `from` up to `to`: by the meter of its use, where that was read on or
/// before the first day and after it; beyond that, and without a meter, what the use is written to draw a day (a garden by
/// the weather as without any rain).
fn passed_l(system: &System, diary: &Diary, part: PartId, from: NaiveDate, to: NaiveDate) -> f64 {
    let using = use_of(system, part).unwrap_or(part);
    let meter: Vec<(NaiveDate, f64)> = diary
        .entries()
        .iter()
        .filter_map(|entry| match &entry.told {
            Told::Meter { of: Some(of), reading } if *of == using => Some((entry.date, reading.get())),
            _ => None,
        })
        .collect();
    let before = meter.iter().rfind(|(date, _)| *date <= from);
    let after = meter.iter().rfind(|(date, _)| *date > from && *date <= to);
    let (metered, from) = match (before, after) {
        (Some((_, first)), Some((date, last))) if last >= first => (last - first, *date),
        _ => (0.0, from),
    };
    metered + litres_between(system, |other| other.id == using, from, to)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Depth, Flow, Volume};
    use crate::site::barrier::BarrierKind;
    use crate::site::demo;
    use crate::site::diary::EntryId;
    use crate::site::diary::{Parameter, TestResult};
    use crate::site::uses::Amount;

    fn day(month: u32, day: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, month, day).unwrap_or_default()
    }

    fn told(id: u64, date: NaiveDate, told: Told) -> Entry {
        Entry { id: EntryId(id), edited: id, date, told, note: String::new() }
    }

    fn stands(system: &System, upkeep: &Upkeep, entries: Vec<Entry>, job: Job, today: NaiveDate) -> Standing {
        let diary = Diary::of(entries);
        let known = Known::of(None, &diary);
        let found = due(system, upkeep, &diary, &known, &[], today).into_iter().find(|due| due.job == job);
        found.map_or(Standing::NeverWritten { long: false }, |due| due.standing)
    }

    #[test]
    fn a_gutter_is_due_after_its_days_and_a_screen_after_its_rain() {
        let system = demo::site().system;
        let upkeep = Upkeep::default();
        let feed = system.feeds[0].id;
        let gutter = Job { task: Task::Gutter, part: feed };
        let done = |task, on| told(1, day(1, 1), Told::Work { on, task });
        let on_feed = vec![done(Task::Gutter, Some(feed))];
        assert_eq!(stands(&system, &upkeep, vec![], gutter, day(7, 3)), Standing::NeverWritten { long: false });
        assert_eq!(stands(&system, &upkeep, on_feed.clone(), gutter, day(6, 1)), Standing::Later);
        // 182 days after 1 January is 2 July; two weeks before is 18 June.
        assert_eq!(stands(&system, &upkeep, on_feed.clone(), gutter, day(6, 18)), Standing::Soon(Because::Days(168)));
        assert_eq!(stands(&system, &upkeep, on_feed.clone(), gutter, day(7, 1)), Standing::Soon(Because::Days(181)));
        assert_eq!(stands(&system, &upkeep, on_feed, gutter, day(7, 2)), Standing::Overdue(Because::Days(182)));
        // What was done on the whole house counts for every part.
        let whole = vec![done(Task::Gutter, None)];
        assert_eq!(stands(&system, &upkeep, whole, gutter, day(2, 1)), Standing::Later);
        let screen = Job { task: Task::Screen, part: feed };
        let rain = |id, date, mm| told(id, date, Told::Rain(Depth::millimetres(mm)));
        let wet = vec![done(Task::Screen, None), rain(2, day(1, 9), 180.0), rain(3, day(2, 1), 130.0)];
        assert_eq!(stands(&system, &upkeep, wet.clone(), screen, day(1, 20)), Standing::Later);
        assert_eq!(stands(&system, &upkeep, wet, screen, day(2, 2)), Standing::Overdue(Because::Rain(310.0)));
    }

    #[test]
    fn what_was_never_written_may_be_due_once_the_diary_is_old_enough() {
        let system = demo::site().system;
        let gutter = Job { task: Task::Gutter, part: system.feeds[0].id };
        let begun = vec![told(1, day(1, 1), Told::Note)];
        let stands = |on| stands(&system, &Upkeep::default(), begun.clone(), gutter, on);
        // 182 days after 1 January is 2 July.
        assert_eq!(stands(day(7, 1)), Standing::NeverWritten { long: false });
        assert_eq!(stands(day(7, 2)), Standing::NeverWritten { long: true });
    }

    #[test]
    fn a_cartridge_is_due_by_litres_metered_then_reckoned() {
        let mut system = demo::site().system;
        let using = system.uses[0].id;
        system.uses[0].amount = Amount::Daily(Flow::litres_a_day(10.0));
        system.add_barrier(using, BarrierKind::Carbon);
        let part = system.uses[0].barriers[0].id;
        let job = Job { task: Task::Cartridge, part };
        let mut upkeep = Upkeep::default();
        upkeep.choose(job, Some(Interval { litres: Some(1000.0), ..Interval::default() }));
        let changed = told(1, day(1, 1), Told::Work { on: Some(part), task: Task::Cartridge });
        let meter = |id, date, litres| told(id, date, Told::Meter { of: Some(using), reading: Volume::litres(litres) });
        // Without a meter 10 L a day: 100 days make a thousand.
        assert_eq!(stands(&system, &upkeep, vec![changed.clone()], job, day(3, 1)), Standing::Later);
        let reckoned = Standing::Overdue(Because::Litres(1000.0));
        assert_eq!(stands(&system, &upkeep, vec![changed.clone()], job, day(4, 11)), reckoned);
        // By the meter 800 L on 1 February, then 10 days of 10 L.
        let metered = vec![changed, meter(2, day(1, 1), 5000.0), meter(3, day(2, 1), 5800.0)];
        assert_eq!(stands(&system, &upkeep, metered, job, day(2, 11)), Standing::Soon(Because::Litres(900.0)));
    }

    #[test]
    fn water_over_a_limit_of_health_is_tested_again_in_a_week() {
        let system = demo::site().system;
        let job = Job { task: Task::WaterTest, part: system.uses[0].id };
        let test = |found| Told::Test { at: Some(job.part), parameter: Parameter::EColi, found };
        let stand = |found, on| {
            let entries = vec![told(1, day(1, 4), test(found))];
            stands(&system, &Upkeep::default(), entries, job, on)
        };
        assert_eq!(stand(TestResult::Absent, day(1, 11)), Standing::Later);
        let ph = Told::Test { at: Some(job.part), parameter: Parameter::Ph, found: TestResult::Value(7.0) };
        let after_ph = stands(&system, &Upkeep::default(), vec![told(1, day(1, 4), ph)], job, day(1, 11));
        assert_eq!(after_ph, Standing::NeverWritten { long: false }, "germs were not tested for");
        assert_eq!(stand(TestResult::Present, day(1, 11)), Standing::Overdue(Because::Days(7)));
        let coliforms = |found| Told::Test { at: Some(job.part), parameter: Parameter::Coliforms, found };
        let after = |found| {
            let entries = vec![told(1, day(1, 4), test(TestResult::Absent)), told(2, day(1, 4), coliforms(found))];
            stands(&system, &Upkeep::default(), entries, job, day(1, 11))
        };
        assert_eq!(after(TestResult::Present), Standing::Overdue(Because::Days(7)));
        assert_eq!(after(TestResult::Absent), Standing::Later);
    }

    #[test]
    fn what_readings_call_for_is_due_at_once() {
        let system = demo::site().system;
        let job = Job { task: Task::Screen, part: system.feeds[0].id };
        let diary = Diary::default();
        let known = Known::of(None, &diary);
        let call = Call { job, shows: Shows::LessCaught, since: day(1, 5) };
        let stands = |diary: &Diary, on| {
            let due = due(&system, &Upkeep::default(), diary, &known, &[call], on);
            due.iter().find(|due| due.job == job).map(|due| due.standing)
        };
        let called = Some(Standing::Overdue(Because::Readings(Shows::LessCaught)));
        assert_eq!(stands(&diary, day(1, 9)), called);
        let done = |on| Diary::of(vec![told(1, on, Told::Work { on: None, task: Task::Screen })]);
        assert_eq!(stands(&done(day(1, 4)), day(1, 9)), called, "done before the readings showed it");
        assert_eq!(stands(&done(day(1, 8)), day(1, 9)), Some(Standing::Later));
    }
}

//! Work that the readings call for.

use chrono::{Days, NaiveDate};

use super::lesson::Lesson;
use super::watch::{Alarm, WATCHED_DAYS};
use crate::site::diary::{Diary, Told};
use crate::site::system::System;
use crate::site::upkeep::{Job, jobs};
use crate::site::work::Task;

/// What readings show that calls for work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shows {
    /// Less rain comes than before.
    LessCaught,
    /// More water goes than before.
    MoreUsed,
    /// One of the two.
    Either,
    /// Water goes that nobody draws.
    Leak,
}

/// A job that readings call for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Call {
    /// The job.
    pub job: Job,
    /// What they show.
    pub shows: Shows,
    /// Since when; once the job is done on that day or later, it is answered.
    pub since: NaiveDate,
}

/// What readings show now that calls for work, and since when.
pub fn shown_now(lesson: &Lesson) -> Vec<(Shows, NaiveDate)> {
    let on = |day: usize| lesson.first.checked_add_days(Days::new(day as u64)).unwrap_or(lesson.first);
    let mut shown: Vec<(Shows, NaiveDate)> = Vec::new();
    if lesson.leak().is_some() {
        let half_year_before = lesson.last.checked_sub_days(Days::new(WATCHED_DAYS as u64)).unwrap_or(lesson.first);
        shown.push((Shows::Leak, half_year_before.max(lesson.first)));
    }
    for alarm in lesson.alarms.iter().flatten() {
        shown.push(match alarm {
            Alarm::CaptureFallen { since, .. } => (Shows::LessCaught, on(*since)),
            Alarm::UseRisen { since, .. } => (Shows::MoreUsed, on(*since)),
            Alarm::Either { since, .. } => (Shows::Either, on(*since)),
        });
    }
    shown
}

/// Whether a work may mend what the readings show.
fn may_mend(task: Task, shows: Shows) -> bool {
    match shows {
        Shows::LessCaught => matches!(task, Task::Gutter | Task::Screen | Task::Diverter),
        // Nobody climbs to a gutter on a suspicion.
        Shows::Either => matches!(task, Task::Screen | Task::Diverter | Task::Joints),
        Shows::MoreUsed | Shows::Leak => task == Task::Joints,
    }
}

/// The last day on which work was done that may have mended what the readings show now.
pub fn last_worked(lesson: &Lesson, diary: &Diary) -> Option<NaiveDate> {
    let shown = shown_now(lesson);
    let worked = diary.entries().iter().filter(|entry| {
        let Told::Work { task, .. } = entry.told else { return false };
        shown.iter().any(|(shows, since)| entry.date >= *since && may_mend(task, *shows))
    });
    worked.map(|entry| entry.date).next_back()
}

/// The work that a system's readings call for.
pub fn calls(lesson: &Lesson, system: &System) -> Vec<Call> {
    let mut calls: Vec<Call> = Vec::new();
    for (shows, since) in shown_now(lesson) {
        for job in jobs(system) {
            if may_mend(job.task, shows) && !calls.iter().any(|call| call.job == job) {
                calls.push(Call { job, shows, since });
            }
        }
    }
    calls
}

//! Work that the readings call for.

use chrono::{Days, NaiveDate};

use super::lesson::Lesson;
use super::watch::{Alarm, WATCHED_DAYS};
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

/// The work that a system's readings call for.
pub fn calls(lesson: &Lesson, system: &System) -> Vec<Call> {
    let mut calls: Vec<Call> = Vec::new();
    for (shows, since) in shown_now(lesson) {
        for job in jobs(system) {
            let wanted = match shows {
                Shows::LessCaught => matches!(job.task, Task::Gutter | Task::Screen | Task::Diverter),
                // Nobody climbs to a gutter on a suspicion.
                Shows::Either => matches!(job.task, Task::Screen | Task::Diverter | Task::Joints),
                Shows::MoreUsed | Shows::Leak => job.task == Task::Joints,
            };
            if wanted && !calls.iter().any(|call| call.job == job) {
                calls.push(Call { job, shows, since });
            }
        }
    }
    calls
}

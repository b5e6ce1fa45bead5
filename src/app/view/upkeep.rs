//! Upkeep: what is due, how often, and the lists for storms and other trouble.

use chrono::NaiveDate;

use crate::app::effect::Effect;
use crate::app::model::KeptSite;
use crate::engine::balance::plan::{Store, plan};
use crate::engine::checks::Asked;
use crate::engine::checks::standing::holding_l;
use crate::engine::diary::due::{Due, Standing, due};
use crate::engine::diary::joined::Known;
use crate::engine::learning::calls::calls;
use crate::engine::learning::lesson::Lesson;
use crate::quantity::{Kind, Range, Units, shown};
use crate::records::calendar::{DayEvent, calendar};
use crate::records::envelope::crc_32;
use crate::site::part::PartId;
use crate::site::tank::Build;
use crate::site::upkeep::{DAYS, Job, LITRES, RAIN_MM, use_of};
use crate::words::{self, upkeep as say};

/// Upkeep as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct UpkeepView {
    /// What is said where there is nothing to do.
    pub empty: Option<&'static str>,
    /// Jobs of which nothing is written, in the way of the water.
    pub not_written: Vec<JobView>,
    /// Jobs: due, soon, later; groups without jobs are left out.
    pub groups: Vec<(&'static str, Vec<JobView>)>,
    /// For the list before a storm: the room in the tanks, from the last readings, and the water that holds each.
    pub before_storm: Vec<String>,
}

/// A job in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct JobView {
    /// The job.
    pub job: Job,
    /// What is to be done to which part.
    pub name: String,
    /// How it stands.
    pub standing: String,
    /// Its interval as text that can be typed again: days, rain, litres; blank where it doesn't count.
    pub interval: [String; 3],
}

/// Kinds and ranges of the three measures of an interval.
pub const MEASURES: [(Kind, Range); 3] = [(Kind::Days, DAYS), (Kind::Depth, RAIN_MM), (Kind::Volume, LITRES)];

/// How every job of a site stands.
pub fn standing(kept: &KeptSite, lesson: Option<&Lesson>, today: NaiveDate) -> Vec<Due> {
    let known = Known::of(kept.rain.as_deref(), &kept.diary);
    let called = lesson.map_or_else(Vec::new, |lesson| calls(lesson, &kept.site.system));
    due(&kept.site.system, &kept.site.upkeep, &kept.diary, &known, &called, today)
}

/// The parts on which something is overdue; of a barrier, the use whose chain it is in.
pub fn overdue_parts(dues: &[Due], kept: &KeptSite) -> Vec<PartId> {
    let overdue = dues.iter().filter(|due| matches!(due.standing, Standing::Overdue(_)));
    overdue.map(|due| use_of(&kept.site.system, due.job.part).unwrap_or(due.job.part)).collect()
}

/// The upkeep of a site.
pub fn upkeep(kept: &KeptSite, lesson: Option<&Lesson>, units: &Units, today: NaiveDate) -> UpkeepView {
    let dues = standing(kept, lesson, today);
    let group = |due: &Due| match due.standing {
        Standing::Overdue(_) => 0,
        Standing::Soon(_) => 1,
        Standing::Later => 2,
        Standing::NeverWritten { .. } => say::GROUPS.len(),
    };
    let jobs_of = |at: usize| -> Vec<JobView> {
        let mut dues: Vec<&Due> = dues.iter().filter(|due| group(due) == at).collect();
        // What is perhaps due comes first.
        dues.sort_by_key(|due| due.standing == Standing::NeverWritten { long: false });
        dues.into_iter().map(|due| job_view(due, kept, units)).collect()
    };
    let mut groups = Vec::new();
    for (at, title) in say::GROUPS.into_iter().enumerate() {
        let jobs = jobs_of(at);
        if !jobs.is_empty() {
            groups.push((title.text(), jobs));
        }
    }
    let mut before_storm = holding(kept, units, today);
    before_storm.extend(room(kept, units, today));
    UpkeepView {
        empty: dues.is_empty().then(|| say::NO_PARTS.text()),
        not_written: jobs_of(say::GROUPS.len()),
        groups,
        before_storm,
    }
}

/// So many entries of a part's past are listed.
const PAST: usize = 5;

/// What is to be done on one part.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CareView {
    /// Over the jobs: whether any is due.
    pub title: String,
    /// Its jobs.
    pub jobs: Vec<JobView>,
    /// What the diary tells of it, the newest first.
    pub past: Vec<String>,
}

/// What is to be done on one part, and was. A use has its barriers with it.
pub fn of_part(kept: &KeptSite, id: PartId, lesson: Option<&Lesson>, units: &Units, today: NaiveDate) -> CareView {
    let system = &kept.site.system;
    let is_here = |part: PartId| part == id || use_of(system, part) == Some(id);
    let mut dues = standing(kept, lesson, today);
    dues.retain(|due| is_here(due.job.part));
    let jobs = dues.iter().map(|due| job_view(due, kept, units)).collect();
    let here = kept.diary.entries().iter().rev().filter(|entry| entry.told.part().is_some_and(is_here)).take(PAST);
    let past =
        here.map(|entry| format!("{}: {}", words::date(entry.date), words::diary::told(&entry.told, system, units)));
    let due = dues.iter().filter(|due| matches!(due.standing, Standing::Overdue(_))).count();
    let due = words::upkeep::due_line(due, 0).map_or_else(String::new, |due| [": ", &due].concat());
    CareView { title: [words::upkeep::TITLE.text(), &due].concat(), jobs, past: past.collect() }
}

fn job_view(due: &Due, kept: &KeptSite, units: &Units) -> JobView {
    let interval = [due.interval.days, due.interval.rain_mm, due.interval.litres];
    JobView {
        job: due.job,
        name: say::job(due.job.task, due.job.part, &kept.site.system),
        standing: say::standing(due, units),
        interval: std::array::from_fn(|at| {
            interval[at].map_or_else(String::new, |si| shown::entered(si, MEASURES[at].0, units))
        }),
    }
}

/// The water that keeps each tank above the ground where it is in the wind of its check.
fn holding(kept: &KeptSite, units: &Units, today: NaiveDate) -> Vec<String> {
    let asked = Asked { site: &kept.site, rain: None, answer: None, read: None, today };
    let above_ground =
        kept.site.system.tanks.iter().filter(|tank| matches!(tank.build, Build::Barrel | Build::AboveGround));
    let mut said = Vec::new();
    for tank in above_ground {
        let held_by = holding_l(&asked, tank);
        if held_by > 0.0 {
            said.push(say::holding(&tank.name, held_by, tank.capacity().get(), units));
        }
    }
    said
}

/// The room in the tanks that were read, reckoned on to today.
fn room(kept: &KeptSite, units: &Units, today: NaiveDate) -> Option<String> {
    let (plan, stands) = (plan(&kept.site.system).ok()?, kept.stands(today)?);
    let room = |(at, store): (usize, &Store)| Some(store.joined.live_capacity_l - stands.read_l(at)?);
    let room_l = plan.stores.iter().enumerate().filter_map(room).sum();
    Some(say::room(room_l, stands.read_on, today, units))
}

/// The upkeep of a site as a calendar file: each job on the day on which its days are over, or today if it is overdue;
/// jobs that were never written down don't come in.
pub fn calendar_file(kept: &KeptSite, lesson: Option<&Lesson>, units: &Units, today: NaiveDate, moment: u64) -> Effect {
    // What a calendar took in before is known again, whatever file the site has come through since.
    let house = kept.site.begun.unwrap_or_else(|| crc_32(kept.site.name.bytes()).into());
    let events: Vec<DayEvent> = standing(kept, lesson, today)
        .iter()
        .filter_map(|due| {
            let on = match due.standing {
                Standing::NeverWritten { .. } => return None,
                Standing::Overdue(_) => today,
                _ => due.on?,
            };
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "days within a range")]
            // A test that is to be repeated soon is to be repeated once.
            let again = kept.site.upkeep.interval(due.job).days.map(|days| days as u32);
            Some(DayEvent {
                uid: format!("{house:08x}-{}-{}@eavewater", due.job.part.0, due.job.task as u8),
                date: on,
                summary: say::job(due.job.task, due.job.part, &kept.site.system),
                description: say::on_day(today, &say::standing(due, units)),
                again,
            })
        })
        .collect();
    Effect::Download {
        name: say!("upkeep-{today}.ics", "cuidados-{today}.ics", today),
        media_type: "text/calendar",
        text: calendar(&words::upkeep::calendar_name(&kept.site.name), &events, moment),
    }
}

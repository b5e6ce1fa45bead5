//! Upkeep: how often work is done, and the calendar of it.

use crate::app::effect::Effect;
use crate::app::model::{Model, Notice};
use crate::app::view::upkeep::{MEASURES, calendar_file};
use crate::quantity::typed;
use crate::site::upkeep::{Interval, Job};

use super::sites::change;

/// Keeps how often a job is done; a text that can't be understood changes nothing and is told.
pub(super) fn interval(model: &mut Model, job: Job, texts: Option<[String; 3]>) -> Vec<Effect> {
    let mut chosen = None;
    if let Some(texts) = texts {
        let mut values = [None; 3];
        for ((text, (kind, range)), value) in texts.iter().zip(MEASURES).zip(&mut values) {
            if text.trim().is_empty() {
                continue;
            }
            match typed::quantity(text, kind, &model.units) {
                Ok(typed) if range.holds(typed.si) => *value = Some(typed.si),
                Ok(_) => {
                    model.notice = Some(Notice::IntervalRefused(kind, range));
                    return Vec::new();
                }
                Err(error) => {
                    model.notice = Some(Notice::NotUnderstood(error));
                    return Vec::new();
                }
            }
        }
        let [days, rain_mm, litres] = values;
        chosen = Some(Interval { days, rain_mm, litres });
    }
    model.notice = None;
    change(model, |site| site.upkeep.choose(job, chosen))
}

/// Hands out the calendar of the open site.
pub(super) fn calendar(model: &Model, moment: u64) -> Vec<Effect> {
    let Some(kept) = model.site() else { return Vec::new() };
    let kept = kept.clone().with_written_rain();
    vec![calendar_file(&kept, model.ahead.lesson.as_deref(), &model.units, model.today, moment)]
}

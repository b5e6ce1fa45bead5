//! Words of what the readings say.

use chrono::{Days, NaiveDate};

use super::{count, date, number_text, percent};
use crate::engine::learning::fit::{Estimate, FEWEST_SPANS};
use crate::engine::learning::lesson::Lesson;
use crate::engine::learning::watch::Alarm;
use crate::quantity::{Kind, Units, shown};

/// The part's heading.
pub const TITLE: &str = "What the readings say";

/// What would tell a leak from use.
const APART: &str = "A leak can't be told from use yet. What would tell: a meter of all that is drawn, read whenever the level is; \
                     or the level before and after dry nights in which nobody draws water; or before and after days away.";

fn range(estimate: &Estimate) -> String {
    let least = (estimate.value - estimate.half_width).max(0.0);
    format!("{} ({} to {})", percent(estimate.value), percent(least), percent(estimate.value + estimate.half_width))
}

fn litres(estimate: &Estimate, units: &Units) -> String {
    let flow = |litres: f64| shown::figure(litres.max(0.0), Kind::Flow, units);
    let (low, high) = (estimate.value - estimate.half_width, estimate.value + estimate.half_width);
    format!("{} ({} to {})", flow(estimate.value), flow(low), flow(high))
}

fn on(first: NaiveDate, day: usize) -> String {
    u64::try_from(day).ok().and_then(|day| first.checked_add_days(Days::new(day))).map(date).unwrap_or_default()
}

/// What asks for attention.
pub fn alarms(lesson: &Lesson, units: &Units) -> Vec<String> {
    let alarm = |alarm: &Alarm| match alarm {
        Alarm::CaptureFallen { by, since } => format!(
            "Since {} less of the rain comes than before: about {} is missing. Look at leaf screens and gutters, and whether \
             a diverter is stuck open.",
            on(lesson.first, *since),
            percent(*by)
        ),
        Alarm::UseRisen { by, since } => format!(
            "Since {} more water goes than before: about {} more. If nobody uses more, look for a leak: read the level at \
             night and again in the morning, with nobody drawing water in between.",
            on(lesson.first, *since),
            percent(*by)
        ),
    };
    let mut said: Vec<String> = lesson.alarms.iter().flatten().map(alarm).collect();
    said.extend(lesson.leak().map(|leak| {
        format!(
            "Water goes that nobody draws: {}. Look for drips at joints, valves and taps, and at the toilet.",
            litres(&leak, units)
        )
    }));
    said.extend(
        lesson
            .odd
            .iter()
            .map(|day| format!("The level of {} doesn't fit the days around it. Was it mistyped?", date(*day))),
    );
    said
}

/// What the readings say of capture and use.
pub fn sentences(lesson: &Lesson, units: &Units) -> Vec<String> {
    let Some(fit) = &lesson.fit else {
        return vec![format!(
            "Too few readings yet: it takes {} levels of one tank, with the rain of every day between them and the tank \
             neither full nor empty.",
            number_text(FEWEST_SPANS + 1)
        )];
    };
    let mut said = vec![
        match &fit.capture {
            Some(capture) => format!("Gutters and screens bring {} of what is entered for them.", range(capture)),
            None => {
                "How much of the rain is caught can't be told yet: it takes levels before and after rain, with room \
                     left in the tank."
                    .to_owned()
            }
        },
        match &fit.uses {
            Some(uses) if fit.leak_l.is_some() => format!("The house uses {} of what is entered.", range(uses)),
            Some(uses) => format!("The house uses {} of what is entered, leaks included.", range(uses)),
            None => "How much is used can't be told yet: it takes levels through dry weeks.".to_owned(),
        },
    ];
    said.push(match &fit.leak_l {
        Some(leak) => format!(
            "Leaks take {}, by {}.",
            litres(leak, units),
            match fit.apart {
                (tests, 0) => count(tests, "test", "tests"),
                (0, known) => format!("{} whose draw is known", count(known, "stretch", "stretches")),
                (tests, known) => format!(
                    "{} and {} whose draw is known",
                    count(tests, "test", "tests"),
                    count(known, "stretch", "stretches")
                ),
            }
        ),
        None => APART.to_owned(),
    });
    let rests = format!(
        "By {} from one reading to the next, up to {}; the ranges hold the truth nine times in ten.",
        count(fit.spans, "stretch", "stretches"),
        date(lesson.last)
    );
    said.push(rests);
    if fit.at_least > 0 {
        let ended = count(fit.at_least, "more stretch", "more stretches");
        said.push(format!("{ended} ended brim-full and count as “at least” only."));
    }
    said.push(match &lesson.alarms {
        None => {
            "Whether the last weeks are unlike the weeks before can be told after half a year of readings and more."
                .to_owned()
        }
        Some(alarms) if alarms.is_empty() => "The last half year is like the time before it.".to_owned(),
        Some(_) => "The last half year is compared with the time before it.".to_owned(),
    });
    said
}

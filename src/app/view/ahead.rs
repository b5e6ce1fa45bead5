//! The weeks ahead, from today's water.

use super::charts::Chart;
use crate::app::ahead::{Found, Sight, Wishes};
use crate::app::model::KeptSite;
use crate::engine::ahead::ask::Why;
use crate::engine::ahead::expected::Expected;
use crate::engine::learning::lesson::Lesson;
use crate::figures::fan::{Fan, FanWords};
use crate::figures::table::Table;
use crate::quantity::{Kind, Units, shown};
use crate::words::{self, ahead as say, learning};

/// The weeks ahead as they are shown.
#[derive(Clone, Debug, PartialEq)]
pub struct AheadView {
    /// The answer in a line, or what is wanted for one.
    pub headline: String,
    /// What the readings show that asks for attention.
    pub alarms: Vec<String>,
    /// What is wanted first.
    pub wanted: Option<Wanted>,
    /// What was found.
    pub found: Option<FoundView>,
    /// What the readings say: those that can't be right, and the rest.
    pub learnt: Option<(Vec<String>, Vec<String>)>,
}

/// What is wanted before anything can be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// A reading of the level.
    Reading,
    /// Rain.
    Rain,
}

/// What was found.
#[derive(Clone, Debug, PartialEq)]
pub struct FoundView {
    /// The range and the floor.
    pub range: Vec<String>,
    /// The fan.
    pub fan: Chart,
    /// When it may run out.
    pub chances: Table,
    /// How much is safe.
    pub safe: String,
    /// What would help.
    pub helps: Vec<String>,
    /// What it rests on.
    pub basis: Vec<String>,
}

/// The weeks ahead of a site, drawn for a width in pixels.
pub fn ahead(
    kept: &KeptSite,
    (wishes, sight): &(Wishes, Sight),
    lesson: Option<&Lesson>,
    units: &Units,
    width: f64,
) -> AheadView {
    let learnt = lesson.map(|lesson| (learning::odd(lesson), learning::sentences(lesson, units)));
    let alarms = lesson.map(|lesson| learning::alarms(lesson, units)).unwrap_or_default();
    match sight {
        Sight::Looking => AheadView { headline: say::LOOKING.to_owned(), alarms, wanted: None, found: None, learnt },
        Sight::Refused(why) => {
            let wanted = match why {
                Why::NoReading => Some(Wanted::Reading),
                Why::NoRain => Some(Wanted::Rain),
                Why::Refused(_) | Why::NoFuture => None,
            };
            AheadView { headline: say::why(why), alarms, wanted, found: None, learnt }
        }
        Sight::Clear(found) => AheadView {
            headline: say::headline(&found.ahead),
            alarms,
            wanted: None,
            found: Some(found_view(kept, found, wishes, units, width)),
            learnt,
        },
    }
}

/// How long the water lasts from today, in a line for the house; none where that isn't known.
pub fn in_a_line(sight: &Sight) -> Option<String> {
    match sight {
        Sight::Clear(found) => Some(say::in_a_line(&found.ahead)),
        Sight::Looking | Sight::Refused(_) => None,
    }
}

fn found_view(kept: &KeptSite, found: &Found, wishes: &Wishes, units: &Units, width: f64) -> FoundView {
    let Found { ahead, helps, origin, unread, capacity_l } = found;
    let ration = |step: usize| kept.site.system.rationing.get(step).map(|step| step.name.clone()).unwrap_or_default();
    let help = |(help, with): (&_, &Expected)| say::help(*help, with, &ahead.lasting, ration, units);
    FoundView {
        range: say::range(ahead),
        fan: fan(found, *capacity_l, units, width),
        chances: chances(found),
        safe: say::safe(ahead, wishes.chance, units),
        helps: helps.iter().zip(&ahead.steps).map(help).collect(),
        basis: say::basis(ahead, *origin, unread),
    }
}

fn fan(found: &Found, capacity_l: f64, units: &Units, width: f64) -> Chart {
    let ahead = &found.ahead;
    let volume = |litres: f64| shown::in_unit(litres, Kind::Volume, units);
    let line = |pick: fn(&Expected) -> f64| ahead.fan.iter().map(|day| volume(pick(day))).collect::<Vec<f64>>();
    let (low, middle, high) = (line(|day| day.tenth), line(|day| day.half), line(|day| day.ninetieth));
    let floor: Vec<f64> = ahead.floor.live_l.iter().map(|litres| volume(*litres)).collect();
    let words = FanWords {
        unit: units.of(Kind::Volume).sign().to_owned(),
        lines: say::FAN_LINES.map(String::from),
        capacity: say!("full: {volume}", "lleno: {volume}", volume = shown::figure(capacity_l, Kind::Volume, units)),
        day: said!("day", "día").to_owned(),
        months: words::months().map(str::to_owned),
    };
    let fan = Fan {
        start: ahead.dates.first().copied().unwrap_or_default(),
        low: &low,
        middle: &middle,
        high: &high,
        floor: &floor,
        capacity: volume(capacity_l),
        words: &words,
    };
    Chart {
        title: say::FAN.text(),
        caption: say::FAN_CAPTION.to_owned(),
        drawing: fan.drawing(width),
        table: fan.table(),
    }
}

/// In how many futures the water runs out before the first of each month to come.
fn chances(found: &Found) -> Table {
    let ahead = &found.ahead;
    let first = |day: &(usize, &chrono::NaiveDate)| chrono::Datelike::day(day.1) == 1 && day.0 > 0;
    let rows = ahead.dates.iter().enumerate().filter(first).map(|(day, date)| {
        let (dry, of) = ahead.dry_within(day - 1);
        let [dry, of] = say::chance(dry, of);
        vec![words::date(*date), dry, of]
    });
    Table { columns: say::CHANCE_COLUMNS.map(String::from).into(), rows: rows.collect() }
}

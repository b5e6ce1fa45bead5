//! The weeks ahead, from today's water.

use super::charts::Chart;
use crate::app::ahead::{Found, Sight, Wishes};
use crate::app::model::{KeptSite, Place};
use crate::engine::ahead::ask::{Help, Why};
use crate::engine::ahead::expected::Expected;
use crate::engine::learning::calls::{last_worked, shown_now};
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
    /// What to know beside it: what shakes it, and what it takes for granted.
    pub beside: Vec<String>,
    /// What the readings show that asks for attention.
    pub alarms: Vec<String>,
    /// What is wanted first.
    pub wanted: Option<Wanted>,
    /// What was found.
    pub found: Option<FoundView>,
    /// Whether what the readings show is other than what is entered, and one of them can be chosen.
    pub differs: bool,
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
    let differs = lesson.is_some_and(|lesson| lesson.contradicts().is_some());
    let mut alarms = lesson.map(|lesson| learning::alarms(lesson, units)).unwrap_or_default();
    alarms.extend(lesson.and_then(|lesson| last_worked(lesson, &kept.diary)).map(learning::worked));
    match sight {
        Sight::Looking => AheadView {
            headline: say::LOOKING.to_owned(),
            beside: Vec::new(),
            alarms,
            wanted: None,
            found: None,
            differs,
            learnt,
        },
        Sight::Refused(why) => {
            let wanted = match why {
                Why::NoReading => Some(Wanted::Reading),
                Why::NoRain | Why::NoFuture { .. } => Some(Wanted::Rain),
                Why::Refused(_) => None,
            };
            AheadView { headline: say::why(why), beside: Vec::new(), alarms, wanted, found: None, differs, learnt }
        }
        Sight::Clear(found) => AheadView {
            headline: say::headline(&found.ahead),
            beside: beside(found, lesson, units),
            alarms,
            wanted: (say::old_reading(&found.ahead).is_some() || !found.unread.is_empty()).then_some(Wanted::Reading),
            found: Some(found_view(kept, found, (wishes, lesson), units, width)),
            differs,
            learnt,
        },
    }
}

/// Whether the water may run out so soon that it comes before all else: in a dry year within a month, while there is time to
/// order a load or to use less (common practice, no source).
pub fn presses(sight: &Sight) -> bool {
    const SOON_DAYS: f64 = 30.0;
    matches!(sight, Sight::Clear(found) if found.ahead.lasting.tenth < SOON_DAYS)
}

/// How long the water lasts from today, for the house.
#[derive(Clone, Debug, PartialEq)]
pub struct Lasts {
    /// In a line.
    pub line: String,
    /// What to know beside it.
    pub beside: Vec<String>,
    /// Where it leads.
    pub leads: Place,
}

/// How long the water lasts from today, for the house; none where that isn't known.
pub fn in_a_line(sight: &Sight, lesson: Option<&Lesson>, units: &Units) -> Option<Lasts> {
    match sight {
        Sight::Clear(found) => {
            let (line, beside) = (say::in_a_line(&found.ahead), beside(found, lesson, units));
            Some(Lasts { line, beside, leads: Place::Ahead })
        }
        Sight::Refused(why @ Why::NoFuture { .. }) => {
            Some(Lasts { line: say::why(why), beside: Vec::new(), leads: Place::Rain })
        }
        Sight::Looking | Sight::Refused(_) => None,
    }
}

/// What to know beside an answer.
fn beside(found: &Found, lesson: Option<&Lesson>, units: &Units) -> Vec<String> {
    let contradicted = || lesson.and_then(Lesson::contradicts).map(|_| say::AS_ENTERED.to_owned());
    let shown = found.shown.map(|shown| say::as_shown(shown, units)).or_else(contradicted);
    let known = [say::old_reading(&found.ahead), say::unread(&found.unread), shown];
    known.into_iter().flatten().chain(mended(found, lesson)).collect()
}

/// That a fault which the readings show is left out, unless it was reckoned with what they show since it began; where there is no
/// normal they tell of nothing but it.
fn mended(found: &Found, lesson: Option<&Lesson>) -> Option<String> {
    let counted = found
        .shown
        .zip(lesson)
        .is_some_and(|(shown, lesson)| lesson.since.is_some() || lesson.alarms.is_none() && shown.capture < 1.0);
    (warns(lesson) && !counted).then(|| say::AS_MENDED.to_owned())
}

/// Whether the readings show a fault.
fn warns(lesson: Option<&Lesson>) -> bool {
    lesson.is_some_and(|lesson| lesson.unaccounted || !shown_now(lesson).is_empty())
}

fn found_view(
    kept: &KeptSite,
    found: &Found,
    (wishes, lesson): (&Wishes, Option<&Lesson>),
    units: &Units,
    width: f64,
) -> FoundView {
    let Found { ahead, helps, origin, capacity_l, .. } = found;
    let ration = |step: usize| kept.site.system.rationing.get(step).map(|step| step.name.clone()).unwrap_or_default();
    let begun = |help: &Help| matches!(help, Help::Ration(step) if ahead.in_force.contains(step));
    // Who has enough for the driest year needs none.
    let wants_help = ahead.lasting.tenth.is_finite();
    let helps = helps.iter().zip(&ahead.steps).filter(|(help, _)| wants_help && !begun(help));
    let help = |(help, with): (&_, &Expected)| say::help(*help, with, &ahead.lasting, ration, units);
    let mut range = say::range(ahead);
    range.extend(ahead.in_force.iter().map(|step| say::in_force(&ration(*step))));
    let mut safe = say::safe(ahead, wishes.chance, units);
    if !kept.site.system.rationing.is_empty() {
        safe = [safe.as_str(), say::SAFE_UNRATIONED.text()].join(" ");
    }
    let lines = kept.site.system.trunk_lines.iter();
    let shut = lines.filter(|line| !line.open).map(|line| say::shut(&line.name));
    let mut basis = say::basis(ahead, *origin);
    let uses = &kept.site.system.uses;
    let short = ahead.short.filter(|_| uses.len() > 1).and_then(|at| uses.get(at));
    basis.extend(mended(found, lesson));
    FoundView {
        range: range.into_iter().chain(short.map(|using| say::short(&using.name))).collect(),
        fan: fan(found, *capacity_l, units, width),
        chances: chances(found),
        safe,
        helps: shut.chain(helps.map(help)).collect(),
        basis,
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
        day: phrase!("day", "día").to_owned(),
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
        let (dry, _) = ahead.dry_within(day - 1);
        vec![words::date(*date), say::years_text(dry)]
    });
    Table { columns: say::chance_columns(ahead.lasts.len()), rows: rows.collect() }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use std::sync::Arc;

    use super::*;
    use crate::engine::ahead::looking::Ahead;
    use crate::engine::learning::spans::Factors;
    use crate::engine::learning::watch::Alarm;
    use crate::engine::rain::weather::Origin;
    use crate::records::cupboard::{SiteFile, SiteId};
    use crate::site::demo;
    use crate::site::diary::Diary;
    use crate::site::trial::Trial;

    fn nothing_found() -> Found {
        Found {
            ahead: Ahead::default(),
            helps: Vec::new(),
            origin: Origin::Measured,
            unread: Vec::new(),
            capacity_l: 1.0,
            shown: None,
        }
    }

    #[test]
    fn a_fault_that_the_readings_show_is_said_to_be_left_out() {
        let lasting = Expected { tenth: 200.0, half: f64::INFINITY, ninetieth: f64::INFINITY };
        let ahead = Ahead { lasting, ..Ahead::default() };
        let found = Found { ahead, ..nothing_found() };
        let sight = Sight::Clear(Arc::new(found));
        let fallen = Lesson { alarms: Some(vec![Alarm::CaptureFallen { by: 0.4, since: 0 }]), ..Lesson::default() };
        let units = Units::default();
        let lasts = |lesson: Option<&Lesson>| in_a_line(&sight, lesson, &units).unwrap();
        assert_eq!(lasts(Some(&fallen)).beside, [say::AS_MENDED.text()]);
        assert!(lasts(Some(&Lesson::default())).beside.is_empty());
        assert!(lasts(None).line.contains("more than a year"));
        // Reckoned with what the readings show since it began, it isn't left out.
        let shown = Some(Factors { capture: 0.6, uses: 1.25, leak_l: 12.0 });
        let found = Found { shown, ..nothing_found() };
        let sight = Sight::Clear(Arc::new(found));
        let told = |lesson: &Lesson| in_a_line(&sight, Some(lesson), &units).unwrap().beside.join(" ");
        let since = Lesson { since: Some(chrono::NaiveDate::default()), ..fallen.clone() };
        assert!(!told(&since).contains(say::AS_MENDED.text()) && told(&fallen).contains(say::AS_MENDED.text()));
        for part in ["60\u{a0}%", "125\u{a0}%", "12\u{a0}L/day"] {
            assert!(told(&since).contains(part), "{part}: {}", told(&since));
        }
    }

    #[test]
    fn a_tank_that_nobody_read_is_named_beside_the_answer_that_counts_it_as_empty() {
        let found = |unread| Found { unread, ..nothing_found() };
        let line = |unread: &[&str]| {
            let unread = unread.iter().map(ToString::to_string).collect();
            in_a_line(&Sight::Clear(Arc::new(found(unread))), None, &Units::default()).unwrap().beside
        };
        assert_eq!(line(&["Tower"]), ["No reading of Tower: it counts as empty."]);
        assert_eq!(line(&["Tower", "Barrel"]), ["No reading of Tower and Barrel: they count as empty."]);
        assert!(line(&[]).is_empty());
    }

    #[test]
    fn without_a_year_of_rain_the_floor_is_told_and_the_way_to_the_rain() {
        let refused = Sight::Refused(Why::NoFuture { floor: Some(50) });
        let told = in_a_line(&refused, None, &Units::default()).unwrap();
        assert!(told.line.contains("lasts 50 days") && told.leads == Place::Rain);
    }

    #[test]
    fn the_use_that_lacks_water_first_is_named_where_there_are_several() {
        let file = SiteFile { site: demo::site(), rain: None, diary: Diary::default(), trial: Trial::NONE };
        let mut kept = KeptSite::of_file(SiteId(1), file);
        let ahead = Ahead { short: Some(1), ..Ahead::default() };
        let found = Found { ahead, ..nothing_found() };
        let sight = (Wishes::USUAL, Sight::Clear(Arc::new(found)));
        let told = |kept: &KeptSite| {
            let view = super::ahead(kept, &sight, None, &Units::customary(crate::quantity::Customary::Metric), 300.0);
            view.found.map(|found| found.range.concat()).unwrap_or_default()
        };
        let name = kept.site.system.uses[1].name.clone();
        assert!(told(&kept).ends_with(&say::short(&name)), "{}", told(&kept));
        Arc::make_mut(&mut kept.site).system.uses.truncate(1);
        assert!(!told(&kept).contains(&name));
    }
}

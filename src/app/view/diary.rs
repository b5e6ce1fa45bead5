//! The diary: charts of what was read, and the entries of some days.

use chrono::{Days, NaiveDate};

use super::charts::Chart;
use crate::app::model::KeptSite;
use crate::engine::balance::plan::{Plan, plan};
use crate::engine::diary::joined::Known;
use crate::engine::diary::track::{LevelRead, levels_read, track};
use crate::figures::daily::{Daily, DailyWords};
use crate::figures::track::{Read, Track, TrackWords};
use crate::quantity::{Kind, Units, shown};
use crate::site::diary::{Entry, EntryId, Told};
use crate::words;

/// The diary as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct DiaryView {
    /// What is said where nothing is written.
    pub empty: Option<&'static str>,
    /// The charts of the span.
    pub charts: Vec<Chart>,
    /// The days of the span on which something is written, the latest first.
    pub days: Vec<DayView>,
    /// So many days more are in the span than are listed.
    pub further: usize,
}

/// A day with its entries.
#[derive(Clone, Debug, PartialEq)]
pub struct DayView {
    /// The date in words.
    pub title: String,
    /// Its entries.
    pub entries: Vec<EntryRow>,
}

/// An entry in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct EntryRow {
    /// The entry.
    pub id: EntryId,
    /// What it tells.
    pub text: String,
    /// What else is said.
    pub note: String,
}

/// A span of days, both ends in it.
pub type Span = (NaiveDate, NaiveDate);

/// The longest span that is drawn, in days.
const LONGEST: u64 = 36_600;

/// The spans that are offered, with words: the last so many days, and all that is written.
pub fn spans(kept: &KeptSite, today: NaiveDate) -> Vec<(&'static str, Span)> {
    let back = |days| today.checked_sub_days(Days::new(days)).unwrap_or(today);
    let mut spans = vec![
        (said!("30 days", "30 días"), (back(29), today)),
        (said!("3 months", "3 meses"), (back(90), today)),
        (said!("A year", "Un año"), (back(365), today)),
    ];
    if let (Some(first), Some(last)) = (kept.diary.entries().first(), kept.diary.entries().last()) {
        spans.push((said!("All", "Todo"), (first.date.max(back(LONGEST)), last.date.max(today))));
    }
    spans
}

/// The diary of a site in a span, so many days of it listed, drawn for a width in pixels.
pub fn diary(kept: &KeptSite, units: &Units, (from, to): Span, listed: usize, width: f64) -> DiaryView {
    let entries: Vec<&Entry> =
        kept.diary.entries().iter().filter(|entry| from <= entry.date && entry.date <= to).collect();
    let mut days: Vec<DayView> = Vec::new();
    let mut date = None;
    for entry in entries.iter().rev() {
        if date != Some(entry.date) {
            days.push(DayView { title: words::date(entry.date), entries: Vec::new() });
            date = Some(entry.date);
        }
        if let Some(day) = days.last_mut() {
            day.entries.push(row(entry, kept, units));
        }
    }
    let further = days.len().saturating_sub(listed);
    days.truncate(listed);
    let empty = if kept.diary.is_empty() {
        Some(words::diary::EMPTY.text())
    } else {
        entries.is_empty().then(|| words::diary::EMPTY_SPAN.text())
    };
    DiaryView { empty, charts: charts(kept, units, (from, to), width), days, further }
}

fn row(entry: &Entry, kept: &KeptSite, units: &Units) -> EntryRow {
    let told = words::diary::told(&entry.told, &kept.site.system, units);
    let (text, note) = match entry.told {
        Told::Note => (entry.note.clone(), String::new()),
        _ => (told, entry.note.clone()),
    };
    EntryRow { id: entry.id, text, note }
}

fn charts(kept: &KeptSite, units: &Units, (from, to): Span, width: f64) -> Vec<Chart> {
    let mut charts = Vec::new();
    let days = usize::try_from((to - from).num_days() + 1).unwrap_or(0);
    if days == 0 || u64::try_from(days).is_ok_and(|days| days > LONGEST) || kept.diary.is_empty() {
        return charts;
    }
    let known = Known::of(kept.rain.as_deref(), &kept.diary);
    if let Ok(plan) = plan(&kept.site.system) {
        let read = levels_read(&plan, &kept.site.system, &kept.diary);
        for store in 0..plan.stores.len() {
            if read.iter().any(|read| read.held.store == store && from <= read.date && read.date <= to) {
                charts.push(level_chart(kept, &plan, &read, &known, (store, from, to), units, width));
            }
        }
    }
    let values: Vec<Option<f64>> = from
        .iter_days()
        .take(days)
        .map(|date| known.mm(date).map(|mm| shown::in_unit(mm, Kind::Depth, units)))
        .collect();
    if values.iter().any(Option::is_some) {
        let words = DailyWords {
            unit: units.of(Kind::Depth).sign().to_owned(),
            unknown: phrase!("not known", "sin dato").to_owned(),
            months: words::months().map(str::to_owned),
            columns: [said!("day", "día"), said!("rain", "lluvia"), said!("days not known", "días sin dato")]
                .map(str::to_owned),
        };
        let daily = Daily { from, values: &values, words: &words };
        charts.push(Chart {
            title: said!("Rain", "Lluvia"),
            caption: words::diary::RAIN_CAPTION.to_owned(),
            drawing: daily.drawing(width),
            table: daily.table(),
        });
    }
    charts
}

fn level_chart(
    kept: &KeptSite,
    plan: &Plan,
    read: &[LevelRead],
    known: &Known<'_>,
    (store, from, to): (usize, NaiveDate, NaiveDate),
    units: &Units,
    width: f64,
) -> Chart {
    let system = &kept.site.system;
    let volume = |litres: f64| shown::in_unit(litres, Kind::Volume, units);
    let own: Vec<&LevelRead> = read.iter().filter(|read| read.held.store == store).collect();
    let reads: Vec<Read> = own
        .iter()
        .map(|read| Read { date: read.date, value: volume(read.held.live_l), at_least: read.held.full })
        .collect();
    let inflow_first = kept.site.reckoning.inflow_first.get();
    let lines: Vec<(NaiveDate, Vec<f64>)> = track(plan, system, &kept.diary, known, (store, from, to), inflow_first)
        .into_iter()
        .map(|stretch| (stretch.start, stretch.live_l.into_iter().map(volume).collect()))
        .collect();
    let capacity_l = plan.stores[store].joined.live_capacity_l;
    let (read_as, reckoned) = (said!("read", "leído"), said!("reckoned", "calculado"));
    let words = TrackWords {
        unit: units.of(Kind::Volume).sign().to_owned(),
        capacity: say!("full: {volume}", "lleno: {volume}", volume = shown::figure(capacity_l, Kind::Volume, units)),
        kinds: [read_as, reckoned].map(str::to_owned),
        months: words::months().map(str::to_owned),
        columns: [said!("day", "día"), read_as, reckoned, said!("read less reckoned", "leído menos calculado")]
            .map(str::to_owned),
    };
    let track = Track { from, to, capacity: volume(capacity_l), reads: &reads, lines: &lines, words: &words };
    let tanks: Vec<String> = plan.stores[store]
        .tanks
        .iter()
        .filter_map(|tank| system.tanks.get(*tank))
        .map(|tank| tank.name.clone())
        .collect();
    let mut caption = say!(
        "{tanks}, over the outlets. {line}",
        "{tanks}, por encima de las salidas. {line}",
        tanks = words::list(&tanks),
        line = words::diary::LINE
    );
    if own.iter().any(|read| !read.as_now && from <= read.date && read.date <= to) {
        caption.push_str(words::diary::JOINED_OTHERWISE.text());
    }
    Chart {
        title: said!("Water, as read and as reckoned", "Agua, según lo leído y lo calculado"),
        caption,
        drawing: track.drawing(width),
        table: track.table(),
    }
}

//! The rain: what the site has, and what was read and waits to be kept.

use super::charts::{self, Chart};
use super::generated::{self, GeneratedView};
use crate::app::model::{KeptSite, ReadRain};
use crate::engine::rain::doubts::doubts;
use crate::engine::rain::picture;
use crate::engine::rain::rain_unit::RainUnit;
use crate::quantity::{Share, Units};
use crate::site::household::{Reckoning, USUAL_MISSING_DAYS};
use crate::site::rain::{MissingDays, Normals, Rain, RainRecord};
use crate::words::{self, rain_report};

/// The rain as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct RainView {
    /// What waits to be kept.
    pub waiting: Option<WaitingView>,
    /// What the site has.
    pub kept: Option<KeptRainView>,
}

/// Rain that was read, with its report.
#[derive(Clone, Debug, PartialEq)]
pub struct WaitingView {
    /// Where it came from.
    pub source: String,
    /// The whole of it in a sentence.
    pub summary: String,
    /// The mean year, as a check on the unit.
    pub mean_year: String,
    /// Doubts about the record as a whole.
    pub doubts: Vec<String>,
    /// What was done with single rows.
    pub notes: Vec<String>,
    /// The units that it could be in, with words.
    pub units: Vec<(RainUnit, &'static str)>,
    /// The unit that it was read in.
    pub unit: RainUnit,
}

/// The units that a file could be in, with words, and the one that it was read in.
pub type UnitChoice = (Vec<(RainUnit, &'static str)>, RainUnit);

/// The rain that a site has.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptRainView {
    /// Daily record or monthly means.
    pub kind: &'static str,
    /// Where it came from.
    pub source: String,
    /// The whole of it in a sentence.
    pub summary: String,
    /// What to mind about it.
    pub caution: Option<&'static str>,
    /// Doubts about the record as a whole, as when it was read.
    pub doubts: Vec<String>,
    /// Years that haven't happened, beside it.
    pub generated: GeneratedView,
    /// By how much each month's rain is multiplied.
    pub factors: [f64; 12],
    /// What it looks like.
    pub charts: Vec<Chart>,
    /// The longest dry spells: when, and how long.
    pub dry_spells: Vec<(String, String)>,
    /// The treatments of missing days with words, and the one that holds; empty where nothing is missing.
    pub treatments: Vec<(MissingDays, String, bool)>,
}

/// How many dry spells are listed.
const DRY_SPELLS: usize = 5;

/// The rain place for a site that is reckoned so, drawn for a width in pixels.
pub fn rain(kept: &KeptSite, reckoning: &Reckoning, waiting: Option<&ReadRain>, units: &Units, width: f64) -> RainView {
    let width = charts::half(width);
    RainView {
        waiting: waiting.map(|waiting| waiting_view(waiting, units)),
        kept: kept.rain.as_deref().map(|rain| {
            let seen = match rain {
                Rain::Record(record) => record_view(record, reckoning.missing_days, units, width),
                Rain::Normals(normals) => normals_view(normals, reckoning.generated.is_none(), units, width),
            };
            let factors = reckoning.rain_factors.map(Share::get);
            let (kind, source, summary) = told(rain, units);
            let generated = generated::generated(rain, reckoning.generated, units, width);
            KeptRainView { kind, source, summary, generated, factors, ..seen }
        }),
    }
}

pub(super) fn waiting_view(waiting: &ReadRain, units: &Units) -> WaitingView {
    let import = &waiting.import;
    let sentences = |doubts: bool| {
        let notices = import.report.notices.iter().filter(|notice| rain_report::is_doubt(notice) == doubts);
        notices.map(|notice| rain_report::sentence(notice, units)).collect()
    };
    WaitingView {
        source: waiting.source.clone(),
        summary: rain_report::summary(&import.report),
        mean_year: mean_year(&import.record, units),
        doubts: sentences(true),
        notes: sentences(false),
        units: RainUnit::ALL.map(|unit| (unit, rain_report::unit(unit))).into(),
        unit: import.unit,
    }
}

fn mean_year(record: &RainRecord, units: &Units) -> String {
    words::rain::mean_year(picture::annual_mean_mm(record), units)
}

/// Of some rain its kind, where it came from, and the whole of it in a sentence.
pub(super) fn told(rain: &Rain, units: &Units) -> (&'static str, String, String) {
    match rain {
        Rain::Record(record) => {
            let missing = record.depths_mm.iter().filter(|depth| depth.is_none()).count();
            let wettest = picture::wettest_day(record)
                .map_or_else(String::new, |day| words::rain::wettest(day.date, day.depth_mm, units));
            let year = mean_year(record, units) + &wettest;
            let summary = words::rain::record((record.start, record.end()), missing, &year);
            (words::rain::DAILY_RECORD.text(), record.source.clone(), summary)
        }
        Rain::Normals(normals) => {
            let year = normals.totals_mm.iter().sum();
            let doubt = words::rain::means_doubt(year, units);
            let summary = doubt.unwrap_or_else(|| words::rain::means_come_to(year, units));
            (words::rain::MONTHLY_MEANS.text(), normals.source.clone(), summary)
        }
    }
}

/// What only a record has; the rest is filled in by [`rain`].
fn record_view(record: &RainRecord, treatment: MissingDays, units: &Units, width: f64) -> KeptRainView {
    let ways = [
        MissingDays::LeaveOutYears { with_more_than: USUAL_MISSING_DAYS },
        MissingDays::LeaveOutYears { with_more_than: 0 },
        MissingDays::Fill,
    ];
    KeptRainView {
        kind: "",
        source: String::new(),
        summary: String::new(),
        caution: None,
        doubts: doubts(record).iter().map(|doubt| rain_report::sentence(doubt, units)).collect(),
        generated: GeneratedView::default(),
        factors: [1.0; 12],
        charts: vec![charts::monthly_rain(record, units, width), charts::yearly_rain(record, units, width)],
        dry_spells: picture::longest_dry_spells(record, DRY_SPELLS)
            .iter()
            .map(|span| {
                let days = usize::try_from(span.days()).unwrap_or(0);
                (words::days(days), words::rain::span(span.first, span.last))
            })
            .collect(),
        treatments: if record.depths_mm.iter().all(Option::is_some) {
            Vec::new()
        } else {
            ways.map(|way| (way, words::rain::missing_days(way), way == treatment)).into()
        },
    }
}

/// What only means have; the rest is filled in by [`rain`].
fn normals_view(normals: &Normals, run_even: bool, units: &Units, width: f64) -> KeptRainView {
    KeptRainView {
        kind: "",
        source: String::new(),
        summary: String::new(),
        caution: run_even.then(|| words::rain::EVEN_RAIN.text()),
        doubts: Vec::new(),
        generated: GeneratedView::default(),
        factors: [1.0; 12],
        charts: vec![charts::normals(&normals.totals_mm, normals.rain_days.as_ref(), units, width)],
        dry_spells: Vec::new(),
        treatments: Vec::new(),
    }
}

//! Years that haven't happened, beside the rain that they are drawn from.

use super::charts::{self, Chart};
use crate::app::model::KeptSite;
use crate::engine::question;
use crate::engine::rain::generated::likeness::{Likeness, likeness};
use crate::engine::rain::generated::{LEAST_YEARS_FOR_SPREAD, RainModel, years};
use crate::engine::rain::normals::MEAN_RAIN_DAY_MM;
use crate::figures::table::Table;
use crate::language::Phrase;
use crate::quantity::{Kind, Share, Units, shown};
use crate::site::household::{GeneratedYears, Reckoning, Site};
use crate::site::rain::Rain;
use crate::words::{self, generated as say};

/// Generated years as they are shown on the rain place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct GeneratedView {
    /// Those that the site is reckoned with, in words.
    pub which: Option<String>,
    /// Those that the choices here start from: the ones in use, or a first draw.
    pub from: Option<GeneratedYears>,
    /// Where that comes from.
    pub spread_note: String,
    /// Months of both.
    pub charts: Vec<Chart>,
    /// Years and dry spells of both, or of the generated ones alone where nothing was recorded.
    pub table: Option<Table>,
    /// What to mind about the dry spells.
    pub spells: Option<String>,
    /// Why there are none.
    pub refused: Option<String>,
}

/// Generated years for some rain, drawn for a width in pixels.
pub fn generated(rain: &Rain, chosen: Option<GeneratedYears>, units: &Units, width: f64) -> GeneratedView {
    let from = chosen.unwrap_or(GeneratedYears::CENTURY);
    let model = match RainModel::of(rain, from.spread.map(Share::get)) {
        Ok(model) => model,
        Err(error) => return GeneratedView { refused: Some(say::no_model(&error)), ..GeneratedView::default() },
    };
    let drawn = likeness(&years::years(&model, from.years, from.seed.into()).as_record(), model.first_month);
    let which = chosen.map(|chosen| say::which(chosen.years, chosen.seed));
    let entered = from.spread.is_some();
    let compared = |own: [f64; 12], of: [f64; 12], kind, words: &[Phrase; 3]| {
        charts::months_compared([own, of], kind, words.each_ref().map(Phrase::text), units, width)
    };
    let (own, rain_years, table, spells) = match rain {
        Rain::Record(record) => {
            let recorded = likeness(record, model.first_month);
            let table = table(Some(&recorded), &drawn, units);
            let spells = say::spells_compared(&recorded, &drawn);
            ((recorded.monthly_mm, recorded.wet_days), recorded.rain_years, table, spells)
        }
        Rain::Normals(means) => {
            let rain_days = means.rain_days.unwrap_or_else(|| means.totals_mm.map(|total| total / MEAN_RAIN_DAY_MM));
            ((means.totals_mm, rain_days), 0, table(None, &drawn, units), None)
        }
    };
    GeneratedView {
        which,
        from: Some(from),
        spread_note: say::spread_note(entered, rain_years, LEAST_YEARS_FOR_SPREAD),
        charts: vec![
            compared(own.0, drawn.monthly_mm, Kind::Depth, &say::RAIN_BY_MONTH),
            compared(own.1, drawn.wet_days, Kind::Days, &say::WET_DAYS_BY_MONTH),
        ],
        table: Some(table),
        spells,
        refused: None,
    }
}

fn table(recorded: Option<&Likeness>, generated: &Likeness, units: &Units) -> Table {
    let depth = |mm: f64| shown::figure(mm, Kind::Depth, units);
    let row = |name: &str, value: &dyn Fn(&Likeness) -> Option<String>| {
        let or_none = |like| value(like).unwrap_or_else(|| "—".to_owned());
        let mut cells = vec![name.to_owned()];
        cells.extend(recorded.map(or_none));
        cells.push(or_none(generated));
        cells
    };
    // A single year is neither.
    let extremes = |like: &Likeness| like.extremes_mm.filter(|_| like.rain_years > 1);
    let mut columns: Vec<String> = say::COLUMNS.map(String::from).into();
    if recorded.is_none() {
        columns.remove(1);
    }
    let [mean, spread, driest, wettest, middle, tenth, longest] = say::ROWS;
    Table {
        columns,
        rows: vec![
            row(&mean, &|like| (like.rain_years > 0).then(|| depth(like.annual_mm))),
            row(&spread, &|like| like.annual_cv.map(words::percent)),
            row(&driest, &|like| extremes(like).map(|(driest, _)| depth(driest))),
            row(&wettest, &|like| extremes(like).map(|(_, wettest)| depth(wettest))),
            row(&middle, &|like| like.longest_spell.map(|(middle, _)| say::spell(middle))),
            row(&tenth, &|like| like.longest_spell.map(|(_, tenth)| say::spell(tenth))),
            row(&longest, &|like| Some(say::spell(like.record_spell))),
        ],
    }
}

/// What a century of generated years says of a site that is reckoned with its own rain (`false`), or which generated
/// years it is reckoned with (`true`).
pub fn beside(kept: &KeptSite, reckoning: &Reckoning) -> Option<(String, bool)> {
    let rain = kept.rain.as_deref()?;
    if let Some(chosen) = reckoning.generated {
        return Some((say::which(chosen.years, chosen.seed), true));
    }
    let mut site = Site { reckoning: reckoning.clone(), ..Site::clone(&kept.site) };
    site.reckoning.generated = Some(GeneratedYears::CENTURY);
    question::answer(&site, rain).ok().map(|answer| (say::beside(&answer), false))
}

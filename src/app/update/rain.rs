//! Rain: read, judged, kept or not.

use std::sync::Arc;

use crate::app::effect::Effect;
use crate::app::model::{KeptSite, Model, Notice, ReadRain, Undo};
use crate::engine::balance::lean::Calendar;
use crate::engine::rain::gaps;
use crate::engine::rain::import;
use crate::engine::rain::rain_unit::RainUnit;
use crate::quantity::Share;
use crate::site::household::{ANNUAL_SPREAD, GENERATED_YEARS, GeneratedYears, RAIN_FACTOR};
use crate::site::rain::{Normals, Rain};

pub(super) fn read(model: &mut Model, bytes: Vec<u8>, source: String) -> Vec<Effect> {
    // What was read before answers no longer, be the new file readable or not.
    model.read_rain = None;
    look(model, Arc::new(bytes), source, None);
    Vec::new()
}

pub(super) fn unit_chosen(model: &mut Model, unit: RainUnit) -> Vec<Effect> {
    if let Some(waiting) = model.read_rain.take() {
        look(model, waiting.bytes, waiting.source, Some(unit));
    }
    Vec::new()
}

fn look(model: &mut Model, bytes: Arc<Vec<u8>>, source: String, unit: Option<RainUnit>) {
    match import::read(&bytes, unit, &source) {
        Ok(import) => {
            model.notice = None;
            model.read_rain = Some(ReadRain { bytes, source, unit, import: Arc::new(import) });
        }
        Err(error) => model.notice = Some(Notice::RainRefused(error)),
    }
}

pub(super) fn keep(model: &mut Model) -> Vec<Effect> {
    let Some(waiting) = model.read_rain.take() else { return Vec::new() };
    put(model, Some(Rain::Record(waiting.import.record.clone())))
}

pub(super) fn normals(model: &mut Model, normals: Normals) -> Vec<Effect> {
    let first = model.site().is_some_and(|kept| !matches!(kept.rain.as_deref(), Some(Rain::Normals(_))));
    let mut effects = put(model, Some(Rain::Normals(normals)));
    // Even years tell too little: whoever wants them all the same chooses them.
    if let Some(kept) = model.site_mut().filter(|kept| first && kept.site.reckoning.generated.is_none()) {
        effects.extend(with_generated(kept, Some(GeneratedYears::OF_MEANS)));
    }
    effects
}

pub(super) fn remove(model: &mut Model) -> Vec<Effect> {
    put(model, None)
}

/// Generated years in the place of the site's rain, if their number and spread are in range.
pub(super) fn generated(model: &mut Model, generated: Option<GeneratedYears>) -> Vec<Effect> {
    let in_range = generated.is_none_or(|generated| {
        GENERATED_YEARS.holds(f64::from(generated.years))
            && generated.spread.is_none_or(|spread| ANNUAL_SPREAD.holds(spread.get()))
    });
    if !in_range {
        return Vec::new();
    }
    super::sizing::reckon_otherwise(model, |reckoning| reckoning.generated = generated)
}

pub(super) fn factors(model: &mut Model, factors: [f64; 12]) -> Vec<Effect> {
    if !factors.iter().all(|factor| RAIN_FACTOR.holds(*factor)) {
        return Vec::new();
    }
    super::sizing::reckon_otherwise(model, |reckoning| reckoning.rain_factors = factors.map(Share::of_one))
}

fn put(model: &mut Model, rain: Option<Rain>) -> Vec<Effect> {
    let Some(kept) = model.site_mut() else { return Vec::new() };
    let (id, generated, before) = (kept.id, kept.site.reckoning.generated, kept.rain.take());
    kept.rain = rain.map(Arc::new);
    let has_rain = kept.rain.is_some();
    let mut effects = vec![Effect::SaveRain(id, kept.rain.clone())];
    let instead = generated.is_some() && ends_guessing(before.as_deref(), kept);
    if instead {
        effects.extend(with_generated(kept, None));
    }
    super::next::forget(model);
    model.notice = Some(if has_rain { Notice::RainKept { instead } } else { Notice::RainRemoved });
    model.undo = before.map(|before| Undo::Rain(id, generated, before));
    effects
}

pub(super) fn with_generated(kept: &mut KeptSite, generated: Option<GeneratedYears>) -> Vec<Effect> {
    let mut site = (*kept.site).clone();
    site.reckoning.generated = generated;
    super::sites::put(kept, site)
}

/// Whether years that were drawn for want of a daily record have found one: of a whole year at least, where there was none.
fn ends_guessing(before: Option<&Rain>, kept: &KeptSite) -> bool {
    let Some(Rain::Record(record)) = kept.rain.as_deref() else { return false };
    let days = gaps::usable(record, kept.site.reckoning.missing_days);
    !matches!(before, Some(Rain::Record(_))) && days.is_ok_and(|days| Calendar::of(&days.dates).whole_years > 0)
}

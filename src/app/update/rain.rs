//! Rain: read, judged, kept or not.

use std::sync::Arc;

use crate::app::effect::Effect;
use crate::app::model::{Model, Notice, ReadRain, Undo};
use crate::engine::rain::import;
use crate::engine::rain::rain_unit::RainUnit;
use crate::site::rain::{Normals, Rain};

pub(super) fn read(model: &mut Model, bytes: Vec<u8>, source: String) -> Vec<Effect> {
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
    put(model, Some(Rain::Normals(normals)))
}

pub(super) fn remove(model: &mut Model) -> Vec<Effect> {
    put(model, None)
}

fn put(model: &mut Model, rain: Option<Rain>) -> Vec<Effect> {
    let Some(kept) = model.site_mut() else { return Vec::new() };
    let (id, before) = (kept.id, kept.rain.take());
    kept.rain = rain.map(Arc::new);
    let has_rain = kept.rain.is_some();
    let effects = vec![Effect::SaveRain(id, kept.rain.clone())];
    super::next::forget(model);
    model.notice = Some(if has_rain { Notice::RainKept } else { Notice::RainRemoved });
    model.undo = before.map(|before| Undo::Rain(id, before));
    effects
}

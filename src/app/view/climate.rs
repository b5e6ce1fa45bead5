//! The climate that gardens follow, as it is shown on the sheet of a garden.

use crate::app::model::KeptSite;
use crate::engine::reference_et::by_month;
use crate::quantity::{Kind, Range, Units, shown};
use crate::site::climate::{Climate, ClimateValue};
use crate::words::garden as say;

/// Kind and range of a value.
pub fn kind(value: ClimateValue) -> (Kind, Range) {
    let kind = match value {
        ClimateValue::Latitude => Kind::Latitude,
        ClimateValue::Least(_) | ClimateValue::Greatest(_) => Kind::Temperature,
        ClimateValue::ReferenceEt(_) => Kind::Depth,
    };
    (kind, value.range())
}

/// A value as text; nothing where it was not entered.
pub fn number(kept: &KeptSite, value: ClimateValue, units: &Units) -> String {
    let number = kept.site.system.climate.as_ref().and_then(|climate| climate.get(value));
    number.map_or_else(String::new, |number| shown::entered(number, kind(value).0, units))
}

/// What is said beside a value that can't be with another one.
pub fn doubt(kept: &KeptSite, value: ClimateValue) -> String {
    match (&kept.site.system.climate, value) {
        (Some(climate), ClimateValue::Least(month)) if climate.is_low_above_high(month) => {
            say::LOW_ABOVE_HIGH.to_owned()
        }
        _ => String::new(),
    }
}

/// Which of [`say::CLIMATE_WAYS`] it is given in.
pub fn way(kept: &KeptSite) -> Option<usize> {
    kept.site.system.climate.as_ref().map(|climate| usize::from(matches!(climate, Climate::ReferenceEt { .. })))
}

/// Whether all of it was entered.
pub fn is_known(kept: &KeptSite) -> bool {
    kept.site.system.climate.as_ref().is_some_and(Climate::is_known)
}

/// The values to ask for.
pub fn values(kept: &KeptSite) -> Vec<ClimateValue> {
    kept.site.system.climate.as_ref().map(Climate::values).unwrap_or_default()
}

/// The climate in a line.
pub fn told(kept: &KeptSite, units: &Units) -> String {
    match &kept.site.system.climate {
        None => say::NO_CLIMATE.to_owned(),
        Some(climate) if !climate.is_known() => say::climate_lacks(climate.lacking(), climate.values().len()),
        Some(climate) => say::climate_line(&by_month(climate), units),
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::records::cupboard::{SiteFile, SiteId};
    use crate::site::demo;
    use crate::site::diary::Diary;
    use crate::site::trial::Trial;

    #[test]
    fn a_low_above_its_high_is_doubted_beside_it_alone() {
        let file = SiteFile { site: demo::site(), rain: None, diary: Diary::default(), trial: Trial::NONE };
        let mut kept = KeptSite::of_file(SiteId(1), file);
        let mut climate = Climate::NO_TEMPERATURES;
        for (value, number) in [(6, 30.0), (7, 20.0)]
            .map(|(month, low)| [(ClimateValue::Least(month), low), (ClimateValue::Greatest(month), 25.0)])
            .as_flattened()
        {
            climate.set(*value, *number);
        }
        Arc::make_mut(&mut kept.site).system.climate = Some(climate);
        let doubted = |value| !doubt(&kept, value).is_empty();
        assert!(doubted(ClimateValue::Least(6)));
        let others =
            [ClimateValue::Latitude, ClimateValue::Greatest(6), ClimateValue::Least(7), ClimateValue::Least(8)];
        assert!(!others.into_iter().any(doubted));
    }
}

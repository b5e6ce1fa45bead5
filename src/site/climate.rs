//! The climate of a place, as far as gardens need it: what the air asks of plants, month by month.

use crate::quantity::Range;

/// What is known of a place's climate; months from January to December. Plain numbers, as they were published, or
/// [`NOT_ENTERED`].
#[derive(Clone, Debug, PartialEq)]
pub enum Climate {
    /// Reference evapotranspiration as published or measured.
    ReferenceEt {
        /// Mean of each month in mm a day, 0 to 20.
        mm_a_day: [f64; 12],
    },
    /// Temperatures, from which the reference evapotranspiration is estimated.
    Temperatures {
        /// Latitude in degrees, north positive, −90 to 90.
        latitude: f64,
        /// Mean daily minimum of each month in °C, −60 to 60.
        least_c: [f64; 12],
        /// Mean daily maximum of each month in °C, −60 to 60, not below the minimum.
        greatest_c: [f64; 12],
    },
}

/// Stands for a number that nobody entered yet: out of every range, and equal to itself, which NaN is not.
pub const NOT_ENTERED: f64 = -9999.0;

/// Degrees of latitude.
pub const LATITUDE: Range = Range::new(-90.0, 90.0);
/// Monthly means of temperature, in °C.
pub const TEMPERATURE_C: Range = Range::new(-60.0, 60.0);
/// Monthly means of reference evapotranspiration, in mm a day.
pub const REFERENCE_ET_MM: Range = Range::new(0.0, 20.0);

/// One number of a climate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClimateValue {
    /// The latitude.
    Latitude,
    /// The mean minimum of a month (0 to 11).
    Least(u8),
    /// The mean maximum of a month (0 to 11).
    Greatest(u8),
    /// The reference evapotranspiration of a month (0 to 11).
    ReferenceEt(u8),
}

impl ClimateValue {
    /// What it may be.
    pub const fn range(self) -> Range {
        match self {
            ClimateValue::Latitude => LATITUDE,
            ClimateValue::Least(_) | ClimateValue::Greatest(_) => TEMPERATURE_C,
            ClimateValue::ReferenceEt(_) => REFERENCE_ET_MM,
        }
    }
}

impl Climate {
    /// A climate of temperatures to start from: nothing known.
    pub const NO_TEMPERATURES: Climate =
        Climate::Temperatures { latitude: NOT_ENTERED, least_c: [NOT_ENTERED; 12], greatest_c: [NOT_ENTERED; 12] };
    /// A climate of reference evapotranspiration to start from: nothing known.
    pub const NO_REFERENCE_ET: Climate = Climate::ReferenceEt { mm_a_day: [NOT_ENTERED; 12] };

    /// Its values, in the order in which they are asked for.
    pub fn values(&self) -> Vec<ClimateValue> {
        match self {
            Climate::ReferenceEt { .. } => (0..12).map(ClimateValue::ReferenceEt).collect(),
            Climate::Temperatures { .. } => {
                let months = (0..12).flat_map(|month| [ClimateValue::Least(month), ClimateValue::Greatest(month)]);
                std::iter::once(ClimateValue::Latitude).chain(months).collect()
            }
        }
    }

    fn value_mut(&mut self, value: ClimateValue) -> Option<&mut f64> {
        match (self, value) {
            (Climate::ReferenceEt { mm_a_day }, ClimateValue::ReferenceEt(month)) => {
                mm_a_day.get_mut(usize::from(month))
            }
            (Climate::Temperatures { latitude, .. }, ClimateValue::Latitude) => Some(latitude),
            (Climate::Temperatures { least_c, .. }, ClimateValue::Least(month)) => least_c.get_mut(usize::from(month)),
            (Climate::Temperatures { greatest_c, .. }, ClimateValue::Greatest(month)) => {
                greatest_c.get_mut(usize::from(month))
            }
            _ => None,
        }
    }

    /// A number of it; `None` where it has no such value or it was not entered.
    pub fn get(&self, value: ClimateValue) -> Option<f64> {
        self.clone().value_mut(value).copied().filter(|number| *number != NOT_ENTERED)
    }

    /// How many of its values were not entered yet.
    pub fn lacking(&self) -> usize {
        self.values().into_iter().filter(|value| self.get(*value).is_none()).count()
    }

    /// Whether all its values were entered.
    pub fn is_known(&self) -> bool {
        self.lacking() == 0
    }

    /// This climate, or one of which nothing is known where all its numbers are nought: as older records have it where
    /// the way of giving it was chosen and nothing entered.
    pub fn unless_all_nought(self) -> Climate {
        let nought = self.values().into_iter().all(|value| self.get(value) == Some(0.0));
        match self {
            Climate::ReferenceEt { .. } if nought => Self::NO_REFERENCE_ET,
            Climate::Temperatures { .. } if nought => Self::NO_TEMPERATURES,
            _ => self,
        }
    }

    /// Sets a number; false where it has no such value or the number is out of range: nothing is changed then.
    pub fn set(&mut self, value: ClimateValue, number: f64) -> bool {
        match self.value_mut(value) {
            Some(place) if value.range().holds(number) => {
                *place = number;
                true
            }
            _ => false,
        }
    }

    /// The first value that can't be: out of its range, or a minimum above the month's maximum.
    pub fn fault(&self) -> Option<ClimateValue> {
        let out = |value: &ClimateValue| self.get(*value).is_none_or(|number| !value.range().holds(number));
        let low = || (0..12).find(|month| self.is_low_above_high(*month)).map(ClimateValue::Least);
        self.values().into_iter().find(out).or_else(low)
    }

    /// Whether the daily minimum of a month, 0 to 11, is above its maximum; not where one of them was not entered.
    pub fn is_low_above_high(&self, month: u8) -> bool {
        let both = self.get(ClimateValue::Least(month)).zip(self.get(ClimateValue::Greatest(month)));
        both.is_some_and(|(low, high)| low > high)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_refused_number_changes_nothing_and_faults_are_found() {
        let mut climate = Climate::NO_TEMPERATURES;
        for bad in [91.0, f64::NAN] {
            assert!(!climate.set(ClimateValue::Latitude, bad));
        }
        assert!(!climate.set(ClimateValue::ReferenceEt(0), 1.0));
        assert!(!climate.set(ClimateValue::Least(12), 1.0));
        assert_eq!(climate, Climate::NO_TEMPERATURES);
        assert_eq!(climate.lacking(), 25, "a latitude, 12 lows, 12 highs");
        for value in climate.values() {
            assert!(!climate.is_known());
            assert!(climate.set(value, 0.0));
        }
        assert!(climate.is_known(), "a nought that was entered is a number");
        assert_eq!(climate.clone().unless_all_nought(), Climate::NO_TEMPERATURES);
        assert_eq!(climate.fault(), None);
        assert!(climate.set(ClimateValue::Least(4), 9.5));
        assert_eq!(climate.clone().unless_all_nought(), climate);
        assert_eq!(climate.get(ClimateValue::Least(4)), Some(9.5));
        assert_eq!(climate.fault(), Some(ClimateValue::Least(4)));
        assert!(climate.set(ClimateValue::Greatest(4), 21.0));
        assert_eq!(climate.fault(), None);
        let wild = Climate::ReferenceEt { mm_a_day: [f64::NAN; 12] };
        assert_eq!(wild.fault(), Some(ClimateValue::ReferenceEt(0)));
    }
}

//! The units in which files give rain.

use crate::quantity::depth::MILLIMETRES_PER_INCH;

/// What a number in a rain file counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RainUnit {
    /// Millimetres.
    Millimetres,
    /// Tenths of a millimetre, as GHCN-Daily publishes them.
    TenthsOfMillimetre,
    /// Centimetres.
    Centimetres,
    /// Inches.
    Inches,
    /// Hundredths of an inch, as older United States records give them.
    HundredthsOfInch,
}

impl RainUnit {
    /// All of them, the likeliest first.
    pub const ALL: [RainUnit; 5] = [
        RainUnit::Millimetres,
        RainUnit::Inches,
        RainUnit::TenthsOfMillimetre,
        RainUnit::HundredthsOfInch,
        RainUnit::Centimetres,
    ];

    /// The depth in mm of a number in this unit.
    pub fn to_mm(self, number: f64) -> f64 {
        match self {
            RainUnit::Millimetres => number,
            RainUnit::TenthsOfMillimetre => number / 10.0,
            RainUnit::Centimetres => number * 10.0,
            RainUnit::Inches => number * MILLIMETRES_PER_INCH,
            RainUnit::HundredthsOfInch => number / 100.0 * MILLIMETRES_PER_INCH,
        }
    }
}

/// The unit that a column's name tells, as in `rain_mm`, `Precip (in)` or `RR 0.1 mm`.
pub fn unit_in_name(name: &str) -> Option<RainUnit> {
    let name = name.to_ascii_lowercase();
    let has = |words: &[&str]| {
        name.split(|c: char| !c.is_alphabetic()).any(|word| words.contains(&word)) // "0.1mm" splits into "mm"
    };
    let tenths = name.contains("0.1") || name.contains("1/10") || has(&["tenth", "tenths"]);
    let hundredths = name.contains("0.01") || name.contains("1/100") || has(&["hundredth", "hundredths"]);
    let inches = has(&["in", "inch", "inches"]) || name.contains('"');
    let millimetres = has(&["mm", "millimetre", "millimetres", "millimeter", "millimeters"]);
    match () {
        () if inches && hundredths => Some(RainUnit::HundredthsOfInch),
        () if inches => Some(RainUnit::Inches),
        () if millimetres && tenths && !hundredths => Some(RainUnit::TenthsOfMillimetre),
        () if millimetres => Some(RainUnit::Millimetres),
        () if has(&["cm", "centimetre", "centimetres", "centimeter", "centimeters"]) => Some(RainUnit::Centimetres),
        () => None,
    }
}

/// The likeliest unit of a column that doesn't tell it, from the mean of its rain days (numbers above 0, as written).
///
/// A mean under 1.2 is read as inches: as millimetres it would be drizzle on every rain day. Whole numbers with a mean
/// of 40 or more are read as tenths of a millimetre: as millimetres every rain day would be a cloudburst. Anything else
/// is read as millimetres. Own criterion, after rain-day means of some 4–15 mm at gauges (common practice, no source).
pub fn unit_from_rain_days(mean: f64, all_whole: bool) -> RainUnit {
    if mean < 1.2 {
        RainUnit::Inches
    } else if all_whole && mean >= 40.0 {
        RainUnit::TenthsOfMillimetre
    } else {
        RainUnit::Millimetres
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_tell_their_unit() {
        for (name, unit) in [
            ("rain_mm", Some(RainUnit::Millimetres)),
            ("Precip (in)", Some(RainUnit::Inches)),
            ("Rainfall [inches]", Some(RainUnit::Inches)),
            ("RR 0.1 mm", Some(RainUnit::TenthsOfMillimetre)),
            ("tenths of mm", Some(RainUnit::TenthsOfMillimetre)),
            ("hundredths of inch", Some(RainUnit::HundredthsOfInch)),
            ("precip 0.01in", Some(RainUnit::HundredthsOfInch)),
            ("rain_cm", Some(RainUnit::Centimetres)),
            ("rain", None),
            ("PRCP", None),
        ] {
            assert_eq!(unit_in_name(name), unit, "{name}");
        }
    }

    #[test]
    fn an_inch_is_25_4_mm_however_it_is_counted() {
        assert_eq!(RainUnit::Inches.to_mm(1.0), 25.4);
        assert_eq!(RainUnit::HundredthsOfInch.to_mm(100.0), 25.4);
        assert_eq!(RainUnit::Centimetres.to_mm(2.54), 25.4);
        assert_eq!(RainUnit::TenthsOfMillimetre.to_mm(254.0), 25.4);
    }
}

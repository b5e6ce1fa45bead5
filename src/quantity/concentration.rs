//! How much is dissolved, as laboratories write it.

/// Micrograms in a milligram.
const MICROGRAMS_A_MILLIGRAM: f64 = 1000.0;

/// A result with the unit that may stand behind it, and the factor by which its number comes into `unit`, which is `mg/L`,
/// `µg/L` or another; no factor where the unit behind it is not one that can be told in that one. Small letters are taken too.
///
/// # Example
/// ```
/// use eavewater::quantity::concentration::split;
/// assert_eq!(split("0.025 mg/l", "µg/L"), ("0.025", Some(1000.0)));
/// assert_eq!(split("25", "µg/L"), ("25", Some(1.0)));
/// assert_eq!(split("7 mg/L", "NTU"), ("7", None));
/// ```
pub fn split<'a>(text: &'a str, unit: &str) -> (&'a str, Option<f64>) {
    let milligrams = ["mg/l", "mg/L", "ppm"].as_slice();
    let micrograms = ["µg/l", "µg/L", "μg/l", "μg/L", "ug/l", "ug/L", "ppb"].as_slice();
    let text = text.trim();
    let behind = |units: &[&str]| units.iter().find_map(|unit| text.strip_suffix(unit)).map(str::trim_end);
    let factor = |own: &str, other: &str, factor: f64| match unit {
        _ if unit == own => Some(1.0),
        _ if unit == other => Some(factor),
        _ => None,
    };
    if let Some(number) = behind(milligrams) {
        (number, factor("mg/L", "µg/L", MICROGRAMS_A_MILLIGRAM))
    } else if let Some(number) = behind(micrograms) {
        (number, factor("µg/L", "mg/L", MICROGRAMS_A_MILLIGRAM.recip()))
    } else {
        (text, Some(1.0))
    }
}

//! A depth as files write it: a number, a trace, or a mark that nothing was measured.

use super::report::RowFault;
use crate::quantity::decimal;

/// What a cell of the rain column says, in the file's unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum WrittenDepth {
    /// A finite number, perhaps negative.
    Number(f64),
    /// Rain too small to measure.
    Trace,
    /// Nothing was measured.
    Missing,
}

/// Numbers which stand for a missing day in published files; those above 0 are depths of no day in any unit.
const MISSING_NUMBERS: [f64; 12] =
    [-99.0, -99.9, -99.99, -999.0, -999.9, -999.99, -9999.0, -9999.9, -8888.0, 999.9, 9999.0, 9999.9];

/// Words which stand for a missing day.
const MISSING_WORDS: [&str; 12] = ["", "-", "--", ".", "m", "na", "n/a", "nan", "null", "none", "missing", "#n/a"];

/// Reads a cell. With `decimal_comma`, `5,3` is five and three tenths.
pub(super) fn read(text: &str, decimal_comma: bool) -> Result<WrittenDepth, RowFault> {
    let trimmed = text.trim();
    if trimmed.len() <= 7 {
        let word = trimmed.to_ascii_lowercase();
        if MISSING_WORDS.contains(&word.as_str()) {
            return Ok(WrittenDepth::Missing);
        }
        if ["t", "tr", "trace"].contains(&word.as_str()) {
            return Ok(WrittenDepth::Trace);
        }
    }
    let number =
        number(trimmed, decimal_comma).ok_or_else(|| RowFault::NotANumber { text: RowFault::excerpt(text) })?;
    Ok(if MISSING_NUMBERS.contains(&number) { WrittenDepth::Missing } else { WrittenDepth::Number(number) })
}

/// A finite number in plain or exponent notation.
fn number(text: &str, decimal_comma: bool) -> Option<f64> {
    let with_comma = decimal_comma && text.matches(',').count() == 1 && !text.contains('.');
    if with_comma { decimal::read(&text.replace(',', ".")) } else { decimal::read(text) }
}

/// How many digits a cell gives after its decimal sign.
pub(super) fn decimals(text: &str) -> usize {
    text.trim().rsplit_once(['.', ',']).map_or(0, |(_, after)| after.len())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_with_point_or_comma() {
        assert_eq!(read(" 5.3 ", false), Ok(WrittenDepth::Number(5.3)));
        assert_eq!(read("5,3", true), Ok(WrittenDepth::Number(5.3)));
        assert_eq!(read("5.3", true), Ok(WrittenDepth::Number(5.3)));
        assert_eq!(read("-0.5", false), Ok(WrittenDepth::Number(-0.5)));
        assert_eq!(read("1e1", false), Ok(WrittenDepth::Number(10.0)));
    }

    #[test]
    fn marks_of_missing_days_are_missing_and_never_zero() {
        for text in [
            "", " ", "-", "NA", "n/a", "NaN", "M", "null", "-99", "-99.9", "-999", "-9999", "-9999.0", "-9999.9",
            "999.9", "9999",
        ] {
            assert_eq!(read(text, false), Ok(WrittenDepth::Missing), "{text}");
        }
    }

    #[test]
    fn a_trace_is_a_trace() {
        for text in ["T", "t", "Trace", "TRACE"] {
            assert_eq!(read(text, false), Ok(WrittenDepth::Trace), "{text}");
        }
    }

    #[test]
    fn what_is_no_finite_number_is_refused() {
        for text in ["inf", "-inf", "infinity", "1e999", "5,3", "1,234.5", "5 mm", "0x10", "é", "1.2.3", "İİ"] {
            assert!(read(text, false).is_err(), "{text}");
        }
        assert!(read("1,234.5", true).is_err());
    }
}

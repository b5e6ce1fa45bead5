//! Numbers in decimal digits, read and written without loss: the one place, since the tables that the standard
//! library reads numbers with weigh ten kilobytes on their way to the phone.

use std::fmt::{self, Display, Formatter};

use lexical_parse_float::FromLexical;

/// The number nearest to the decimal digits of a text, such as `12.5` or `3e-4`. `None` for anything else,
/// and for what is too large to be told from infinity.
///
/// # Example
/// ```
/// use eavewater::quantity::decimal;
/// assert_eq!(decimal::read("0.1"), Some(0.1));
/// assert_eq!(decimal::read("1,5"), None);
/// ```
pub fn read(text: &str) -> Option<f64> {
    // Words for what is no number are not read as one.
    let plain = text.bytes().all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b'-' | b'+' | b'e' | b'E'));
    let number = if plain { f64::from_lexical(text.as_bytes()).ok() } else { None };
    number.filter(|number| number.is_finite())
}

/// A number as it is written with so many digits behind its point, 0 to 12, rounded to the nearest; what lies between two to
/// the even one. The standard library's own way goes by the exact digits of any number, and weighs as much as all else here.
#[derive(Clone, Copy, Debug)]
pub struct Fixed(pub f64, pub u8);

/// With a digit behind the point: for what is drawn.
pub fn tenths(number: f64) -> Fixed {
    Fixed(number, 1)
}

impl Display for Fixed {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        /// Up to here every whole number is one.
        const WHOLE: f64 = 9e15;
        let Fixed(number, places) = *self;
        let step = 10_u64.pow(places.min(12).into());
        #[expect(clippy::cast_precision_loss, reason = "at most 10 to the 12th")]
        let scaled = (number * step as f64).round_ties_even();
        if scaled.is_nan() || scaled.abs() >= WHOLE {
            return write!(f, "{number}");
        }
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and not negative")]
        let digits = scaled.abs() as u64;
        let sign = if scaled < 0.0 { "-" } else { "" };
        write!(f, "{sign}{}", digits / step)?;
        if step == 1 {
            return Ok(());
        }
        write!(f, ".{:0>1$}", digits % step, usize::from(places))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_fixed_number_of_digits_is_written() {
        for (number, places, text) in [
            (0.0, 1, "0.0"),
            (-0.04, 1, "0.0"),
            (-0.06, 1, "-0.1"),
            (12.345, 2, "12.34"),
            (0.05, 3, "0.050"),
            (1234.5, 0, "1234"),
            (1e20, 1, "100000000000000000000"),
            (f64::NAN, 1, "NaN"),
        ] {
            assert_eq!(Fixed(number, places).to_string(), text);
        }
    }

    #[test]
    fn what_is_no_number_is_refused() {
        for text in ["", ".", "-", "e5", "1.2.3", "inf", "NaN", "1 2", "0x1p3", "１", "1e999"] {
            assert_eq!(read(text), None, "{text}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn fixed_digits_are_those_of_the_standard_library_but_for_ties(number in -1e6_f64..1e6, places in 0_u8..6) {
            let ours: f64 = Fixed(number, places).to_string().parse().unwrap();
            let theirs: f64 = format!("{number:.*}", usize::from(places)).parse().unwrap();
            prop_assert!((ours - theirs).abs() <= 1.001 * 0.1_f64.powi(places.into()), "{ours} {theirs}");
            prop_assert!((ours - number).abs() <= 0.501 * 0.1_f64.powi(places.into()), "{ours} {number}");
        }

        #[test]
        fn digits_are_read_as_the_standard_library_reads_them(number in any::<f64>(), places in 0usize..20) {
            prop_assume!(number.is_finite());
            for text in [format!("{number}"), format!("{number:e}"), format!("{number:.places$}")] {
                prop_assert_eq!(read(&text).map(f64::to_bits), text.parse().ok().map(f64::to_bits), "{}", text);
            }
        }
    }
}

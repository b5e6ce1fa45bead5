//! Numbers in decimal digits, read and written without loss: the one place, since the tables that the standard
//! library reads numbers with weigh ten kilobytes on their way to the phone.

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

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_is_no_number_is_refused() {
        for text in ["", ".", "-", "e5", "1.2.3", "inf", "NaN", "1 2", "0x1p3", "１", "1e999"] {
            assert_eq!(read(text), None, "{text}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn digits_are_read_as_the_standard_library_reads_them(number in any::<f64>(), places in 0usize..20) {
            prop_assume!(number.is_finite());
            for text in [format!("{number}"), format!("{number:e}"), format!("{number:.places$}")] {
                prop_assert_eq!(read(&text).map(f64::to_bits), text.parse().ok().map(f64::to_bits), "{}", text);
            }
        }
    }
}

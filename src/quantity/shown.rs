//! Quantities as text, in the person's unit, with the digits that they deserve.

use super::decimal::Fixed;
use super::unit::{Kind, Units};
use crate::language;

/// A result: three significant digits at most, none after the point from 100 on; with its unit.
///
/// # Example
/// ```
/// use eavewater::quantity::{Customary, Kind, Units, shown};
/// let units = Units::customary(Customary::Us);
/// assert_eq!(shown::figure(6435.2, Kind::Volume, &units), "1,700\u{a0}gal");
/// ```
pub fn figure(si: f64, kind: Kind, units: &Units) -> String {
    with_unit(&figure_number(si, kind, units), kind, units)
}

/// The number alone of a result, for axes and tables.
pub fn figure_number(si: f64, kind: Kind, units: &Units) -> String {
    significant(in_unit(si, kind, units), 3)
}

/// A value as it was entered, to six significant digits where those are the whole of it; where it was entered in other
/// units and they are not, to four. With its unit.
pub fn entered(si: f64, kind: Kind, units: &Units) -> String {
    entered_to(6, si, kind, units)
}

/// What a meter shows (L), with its unit: [`entered`], but to nine digits, as many as a meter has.
pub fn metered(litres: f64, units: &Units) -> String {
    entered_to(9, litres, Kind::Volume, units)
}

fn entered_to(digits: u8, si: f64, kind: Kind, units: &Units) -> String {
    let value = in_unit(si, kind, units);
    let digits = if is_whole_in(value, digits.into()) { digits } else { 4 };
    if digits == 4
        && let Some(text) = feet_and_inches(value, units.of(kind).symbol)
    {
        return text;
    }
    with_unit(&significant(value, digits.into()), kind, units)
}

/// Feet as a rule shows them, "6 ft 2 in", where it has a mark for them: sixteenths of an inch.
fn feet_and_inches(value: f64, symbol: &str) -> Option<String> {
    const MARKS: f64 = 12.0 * 16.0;
    const OFF: f64 = 1e-6;
    let marks = (value * MARKS).round();
    if symbol != "ft" || (value * MARKS - marks).abs() > OFF * MARKS {
        return None;
    }
    let feet = (marks / MARKS).trunc();
    let inches = significant((marks - feet * MARKS).abs() / 16.0, 6) + "\u{a0}in";
    let sign = if marks < 0.0 { "−" } else { "" };
    Some(if feet == 0.0 { sign.to_owned() + &inches } else { significant(feet, 6) + "\u{a0}ft\u{a0}" + &inches })
}

/// Whether so many significant digits are the whole of a number, but for rounding.
fn is_whole_in(value: f64, digits: i32) -> bool {
    const ROUNDING: f64 = 1e-12;
    let steps = value / 10f64.powi(magnitude(value) + 1 - digits);
    (steps - steps.round()).abs() <= ROUNDING * steps.abs()
}

/// The nearest round number in the person's unit, as tanks and prices are named: 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6 or 8 times a
/// power of ten; in the unit that the kind is kept in. 0 and less stay as they are.
///
/// # Example
/// ```
/// use eavewater::quantity::{Customary, Kind, Units, shown};
/// let litres = shown::round(20_000.0, Kind::Volume, &Units::customary(Customary::Us));
/// assert_eq!(shown::figure(litres, Kind::Volume, &Units::customary(Customary::Us)), "5,000\u{a0}gal");
/// ```
pub fn round(si: f64, kind: Kind, units: &Units) -> f64 {
    const STEPS: [f64; 11] = [1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0];
    let value = in_unit(si, kind, units);
    if !value.is_finite() || value <= 0.0 {
        return si;
    }
    let power = 10f64.powi(magnitude(value));
    let nearest = STEPS.iter().fold(STEPS[0], |best, step| {
        if (step - value / power).abs() < (best - value / power).abs() { *step } else { best }
    });
    nearest * power * units.of(kind).factor
}

/// The nearest number of two significant digits in the person's unit, as a finger sets it; in the unit that the kind is
/// kept in.
pub fn in_two_digits(si: f64, kind: Kind, units: &Units) -> f64 {
    let value = in_unit(si, kind, units);
    let step = 10f64.powi(magnitude(value) - 1);
    let steps = (value / step).round();
    if steps.is_finite() { steps * step * units.of(kind).factor } else { si }
}

/// The same, or the next one where that is less: no less than the value.
pub fn up_in_two_digits(si: f64, kind: Kind, units: &Units) -> f64 {
    let nearest = in_two_digits(si, kind, units);
    // What is no less but for the last bits is the value.
    if nearest >= si * (1.0 - 1e-12) {
        return nearest;
    }
    let step = 10f64.powi(magnitude(in_unit(si, kind, units)) - 1);
    nearest + step * units.of(kind).factor
}

/// The volume for which prices are told: a thousand of the person's unit, or one of it where that is large; in L, and in
/// words.
pub fn thousand(units: &Units) -> (f64, String) {
    const LARGE_L: f64 = 500.0;
    let unit = units.of(Kind::Volume).factor;
    let litres = if unit >= LARGE_L { unit } else { 1000.0 * unit };
    (litres, entered(litres, Kind::Volume, units))
}

/// The number in the person's unit.
pub fn in_unit(si: f64, kind: Kind, units: &Units) -> f64 {
    let unit = units.of(kind);
    si / unit.factor + unit.zero()
}

/// A number with at most so many significant digits, thousands grouped, no trailing zeros: as the language writes it.
/// With a decimal comma go spaces between the groups of five digits and more (Ortografía de la lengua española,
/// 2010, and the SI brochure of BIPM, 9th edition, 5.4.4).
pub fn significant(value: f64, digits: usize) -> String {
    if !value.is_finite() {
        return "—".to_owned();
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_possible_wrap, reason = "digits are few")]
    let places = digits as i32 - 1 - magnitude(value);
    let rounded = if places >= 0 {
        value
    } else {
        let step = 10f64.powi(-places);
        (value / step).round() * step
    };
    let text = Fixed(rounded, u8::try_from(places.clamp(0, 12)).unwrap_or(0)).to_string();
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    grouped(text)
}

/// The power of ten of the first digit of a finite number; 0 of zero.
pub fn magnitude(value: f64) -> i32 {
    #[expect(clippy::cast_possible_truncation, reason = "the magnitude of a finite number is within ±324")]
    if value == 0.0 { 0 } else { libm::log10(value.abs()).floor() as i32 }
}

fn grouped(text: &str) -> String {
    let mark = language::spoken().decimal_mark();
    let (group, shortest) = if mark == ',' { ('\u{a0}', 5) } else { (',', 4) };
    let (sign, unsigned) = text.strip_prefix('-').map_or(("", text), |unsigned| ("−", unsigned));
    let (whole, fraction) =
        unsigned.split_once('.').map_or((unsigned, None), |(whole, fraction)| (whole, Some(fraction)));
    if whole == "0" && fraction.is_none() {
        return "0".to_owned();
    }
    let mut out = sign.to_owned();
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && (whole.len() - at) % 3 == 0 && whole.len() >= shortest {
            out.push(group);
        }
        out.push(digit);
    }
    if let Some(fraction) = fraction {
        out.push(mark);
        out.push_str(fraction);
    }
    out
}

fn with_unit(number: &str, kind: Kind, units: &Units) -> String {
    match units.of(kind).sign() {
        "" => number.to_owned(),
        // A no-break space keeps the number and its unit on one line.
        symbol => format!("{number}\u{a0}{symbol}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::language::Language;
    use crate::quantity::Customary;

    #[test]
    fn two_digits_up_are_the_next_ones() {
        let (metric, us) = (Units::customary(Customary::Metric), Units::customary(Customary::Us));
        let up = |litres: f64| up_in_two_digits(litres, Kind::Volume, &metric);
        for (litres, wanted) in [
            (2_049.0, 2_100.0),
            (2_051.0, 2_100.0),
            (2_100.0, 2_100.0),
            (2_101.0, 2_200.0),
            (9_901.0, 10_000.0),
            (99.5, 100.0),
        ] {
            assert!((up(litres) - wanted).abs() < 1e-9, "{litres}: {}", up(litres));
        }
        assert_eq!(up(0.0), 0.0);
        let gallons = up_in_two_digits(541.0 * 3.785_411_784, Kind::Volume, &us) / 3.785_411_784;
        assert!((gallons - 550.0).abs() < 1e-9, "{gallons}");
    }

    #[test]
    fn results_show_no_more_digits_than_they_deserve() {
        for (value, text) in [
            (0.0, "0"),
            (0.000_123_45, "0.000123"),
            (0.5, "0.5"),
            (12.345, "12.3"),
            (99.96, "100"),
            (1234.5, "1,230"),
            (1_234_567.0, "1,230,000"),
            (-42.0, "−42"),
            (-0.000_000_000_000_1, "0"),
            (f64::NAN, "—"),
        ] {
            assert_eq!(significant(value, 3), text);
        }
    }

    #[test]
    fn spanish_has_a_decimal_comma_and_spaces() {
        language::speak(Language::Spanish);
        let metric = Units::customary(Customary::Metric);
        for (value, text) in [(12.345, "12,3"), (1234.0, "1230"), (12_345.0, "12\u{a0}300"), (-0.5, "−0,5")] {
            assert_eq!(significant(value, 3), text);
        }
        assert_eq!(entered(0.3, Kind::Length, &metric), "0,3\u{a0}m");
        assert_eq!(metered(1_234_567.0, &metric), "1\u{a0}234\u{a0}567\u{a0}L");
        assert_eq!(figure(3.0, Kind::Days, &metric), "3\u{a0}días");
        for text in ["1234,5\u{a0}L", "12\u{a0}300\u{a0}L", "1,125\u{a0}L"] {
            let typed = crate::quantity::typed::quantity(text, Kind::Volume, &metric);
            assert_eq!(typed.map(|typed| entered(typed.si, Kind::Volume, &metric)), Ok(text.to_owned()));
        }
        language::speak(Language::English);
    }

    #[test]
    fn spanish_with_a_decimal_point_writes_numbers_as_english_and_words_as_spanish() {
        language::speak(Language::SpanishWithPoint);
        let metric = Units::customary(Customary::Metric);
        for (value, text) in [(12.345, "12.3"), (1234.0, "1,230"), (12_345.0, "12,300"), (-0.5, "−0.5")] {
            assert_eq!(significant(value, 3), text);
        }
        assert_eq!(figure(3.0, Kind::Days, &metric), "3\u{a0}días");
        language::speak(Language::English);
    }

    #[test]
    fn what_was_entered_in_other_units_shows_four_digits() {
        let metric = Units::customary(Customary::Metric);
        let us = Units::customary(Customary::Us);
        assert_eq!(entered(1600.0 * 0.092_903_04, Kind::Area, &metric), "148.6\u{a0}m²");
        assert_eq!(entered(1600.0 * 0.092_903_04, Kind::Area, &us), "1,600\u{a0}ft²");
        assert_eq!(entered(0.1, Kind::Length, &us), "0.3281\u{a0}ft");
        // What a rule has a mark for is told as it shows it, and is read again as the same.
        for (typed, shown) in [
            ("6 ft 2", "6\u{a0}ft\u{a0}2\u{a0}in"),
            ("-1'4\"", "−1\u{a0}ft\u{a0}4\u{a0}in"),
            ("4 in", "4\u{a0}in"),
            ("7 1/16 in", "7.0625\u{a0}in"),
            ("6.5 ft", "6.5\u{a0}ft"),
        ] {
            let read = |text: &str| crate::quantity::typed::quantity(text, Kind::Length, &us).map(|typed| typed.si);
            let text = read(typed).map(|si| entered(si, Kind::Length, &us));
            assert_eq!(text.as_deref(), Ok(shown));
            let off = read(shown).and_then(|again| Ok((again - read(typed)?).abs()));
            assert!(off.is_ok_and(|off| off < 1e-12), "{shown}");
        }
    }

    #[test]
    fn what_was_entered_shows_again_as_entered() {
        let us = Units::customary(Customary::Us);
        for text in ["1,700\u{a0}gal", "1,234.56\u{a0}gal", "0.25\u{a0}gal"] {
            let typed = crate::quantity::typed::quantity(text, Kind::Volume, &us);
            assert_eq!(typed.map(|typed| entered(typed.si, Kind::Volume, &us)), Ok(text.to_owned()));
        }
    }
}

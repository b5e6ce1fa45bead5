//! What people type, read as a quantity: `1,700 gal`, `6.4 m3`, `5'6"`, `2 1/2 in`, `18mm`, or a bare number in
//! the unit that the person sees.

use super::decimal;
use super::plain::{DAYS_A_MONTH, DAYS_A_YEAR, HOURS_A_DAY};
use super::unit::{Kind, Unit, Units};
use crate::language;

/// A quantity as it was understood.
#[derive(Clone, Debug, PartialEq)]
pub struct Typed {
    /// The value in the unit that the kind is kept in.
    pub si: f64,
    /// Each number typed, with the unit that it was taken in.
    pub parts: Vec<(f64, &'static Unit)>,
}

/// What joins two numbers as well as a space.
const DASHES: [char; 3] = ['-', '–', '−'];

/// Why a text is not a quantity.
#[derive(Clone, Debug, PartialEq)]
pub enum TypedError {
    /// Nothing was typed.
    Empty,
    /// No number where one is needed.
    NotANumber {
        /// What stands there.
        text: String,
    },
    /// A unit that this kind of quantity does not have.
    UnknownUnit {
        /// The unit as typed.
        text: String,
        /// The kind asked for.
        kind: Kind,
    },
    /// A number alone behind one with a unit, where no custom says what it is.
    BareBehindUnit {
        /// The number as typed.
        text: String,
        /// The unit before it.
        unit: &'static Unit,
    },
}

/// Reads a quantity of a kind. A number without a unit is in the person's own; a unit that stands for several
/// (`gal`) is the person's own where that fits, else the first of its name. Several numbers add up (`5 ft 6 in`), with the
/// sign of the first. The last may stand alone where custom says what it is: inches behind feet (`5'6`), two
/// digits of centimetres behind metres (`14 m 50`). An area may be typed as two sides, and as a sum of several:
/// `12 x 5`, `40 × 20 ft`, `14 x 9 + 24`.
///
/// A comma before exactly three digits groups thousands; any other comma is a decimal comma. Where the language has a
/// decimal comma it is the point that groups, and a comma is always decimal.
///
/// # Errors
/// See [`TypedError`]. The range is not judged here: that belongs to the field.
///
/// # Example
/// ```
/// use eavewater::quantity::{Customary, Kind, Units, typed};
/// let units = Units::customary(Customary::Us);
/// assert_eq!(typed::quantity("5'6\"", Kind::Length, &units).unwrap().si, 5.5 * 0.3048);
/// assert!(typed::quantity("5 furlongs", Kind::Length, &units).is_err());
/// ```
pub fn quantity(text: &str, kind: Kind, units: &Units) -> Result<Typed, TypedError> {
    if kind == Kind::Area && text.contains('+') {
        let mut sum = Typed { si: 0.0, parts: Vec::new() };
        for part in text.split('+') {
            let part = quantity(part, kind, units)?;
            sum.si += part.si;
            sum.parts.extend(part.parts);
        }
        return Ok(sum);
    }
    if kind == Kind::Area
        && let Some((long, wide)) = text.split_once(['x', 'X', '×', '*'])
    {
        return rectangle(long, wide, units);
    }
    let mut rest = text.trim();
    if kind == Kind::Money {
        // Whatever the currency is, it is the household's own.
        rest = rest.trim_start_matches(['$', '€', '£', '¥']).trim_start();
    }
    if rest.is_empty() {
        return Err(TypedError::Empty);
    }
    let mut parts: Vec<(f64, &'static Unit)> = Vec::new();
    while !rest.is_empty() {
        // The dash of 6'-2" joins: nobody takes inches from feet.
        rest = if parts.is_empty() { rest } else { rest.trim_start_matches(DASHES).trim_start() };
        let (number, after) = leading_number(rest).ok_or_else(|| TypedError::NotANumber { text: rest.to_owned() })?;
        let (number, after) = thousands(number, after.trim_start());
        if let Some((a_day, unit)) = of_period(after, kind, units) {
            parts.push((number * a_day, unit));
            break;
        }
        let (unit, after) = match parts.last() {
            Some((whole, unit)) if after.is_empty() => {
                let small = smaller(*whole, unit, rest, number, kind);
                (small.ok_or_else(|| TypedError::BareBehindUnit { text: rest.to_owned(), unit })?, after)
            }
            _ => leading_unit(after, kind, units)?,
        };
        // "-34 S" is no more in the north than "34 S".
        let number = if unit.factor < 0.0 { number.abs() } else { number };
        let below = parts.first().is_some_and(|(first, _)| first.is_sign_negative());
        parts.push((if below { -number } else { number }, unit));
        rest = after.trim_start();
    }
    let si = parts.iter().map(|(number, unit)| (number - unit.zero()) * unit.factor).sum();
    Ok(Typed { si, parts })
}

/// An area of two sides. A side without a unit is in that of the other, and both are in that whose square is the person's own.
fn rectangle(long: &str, wide: &str, units: &Units) -> Result<Typed, TypedError> {
    let own = units.of(Kind::Area);
    let side = if own.factor < 1.0 { "ft" } else { "m" };
    let units = units.clone().with(Kind::Length, side);
    let wide = quantity(wide, Kind::Length, &units)?;
    let units = wide.parts.first().map_or(units.clone(), |(_, unit)| units.with(Kind::Length, unit.symbol));
    let long = quantity(long, Kind::Length, &units)?;
    Ok(Typed { si: long.si * wide.si, parts: long.parts.into_iter().chain(wide.parts).collect() })
}

/// The unit that custom gives to a number alone behind a whole number of another unit, if there is such a custom.
fn smaller(whole: f64, unit: &Unit, text: &str, number: f64, kind: Kind) -> Option<&'static Unit> {
    let (symbol, fits) = match unit.symbol {
        "ft" => ("in", (0.0..12.0).contains(&number)),
        "m" => ("cm", text.len() == 2 && text.bytes().all(|b| b.is_ascii_digit())),
        _ => return None,
    };
    let unit = kind.units().iter().find(|unit| unit.symbol == symbol);
    unit.filter(|_| fits && whole.fract() == 0.0)
}

/// The whole number that was perhaps meant where the first number of a text is one to three digits, the mark that is
/// decimal in the person's language, and just three digits: 5000 of `5.000` in English and of `5,000` where the comma is decimal.
pub fn perhaps_thousands(text: &str) -> Option<f64> {
    let (digits, _) = digits_and_rest(text.trim().trim_start_matches(['-', '−', '+']));
    let (head, tail) = digits.split_once(language::spoken().decimal_mark())?;
    let all_digits = |part: &str| part.bytes().all(|b| b.is_ascii_digit());
    let grouped = (1..=3).contains(&head.len()) && !head.starts_with('0') && tail.len() == 3;
    (grouped && all_digits(head) && all_digits(tail)).then(|| decimal::read(&format!("{head}{tail}")))?
}

/// A number and what follows it; in Spanish, "3 mil" is 3,000.
fn thousands(number: f64, after: &str) -> (f64, &str) {
    let behind = after.strip_prefix("mil").filter(|behind| !behind.starts_with(char::is_alphabetic));
    match behind.filter(|_| language::spoken() != language::Language::English) {
        Some(behind) => (number * 1000.0, behind.trim_start()),
        None => (number, after),
    }
}

/// The number at the start of the text and what follows it: a decimal number, a fraction, or both (`2 1/2`, `2½`).
fn leading_number(text: &str) -> Option<(f64, &str)> {
    let unsigned = text.strip_prefix(['-', '−', '+']).unwrap_or(text);
    if let Some((value, after)) = leading_fraction(unsigned) {
        return Some((if text.starts_with(['-', '−']) { -value } else { value }, after));
    }
    let (first, after) = leading_decimal(text)?;
    if let Some((value, after)) = fraction_of(first, after) {
        return Some((value, after));
    }
    // A sign belongs to the whole of "-2 1/2", and the dash of "2-1/2" joins.
    let tail = after.trim_start();
    let tail = tail.strip_prefix(DASHES).unwrap_or(tail);
    let mixed = leading_fraction(tail)
        .or_else(|| leading_decimal(tail).and_then(|(numerator, after)| fraction_of(numerator, after)));
    match mixed {
        Some((fraction, after)) if first.fract() == 0.0 && fraction >= 0.0 => {
            Some((first + fraction.copysign(first), after))
        }
        _ => Some((first, after)),
    }
}

/// Fractions that are one character, with numerator and denominator.
const FRACTIONS: [(char, f64, f64); 9] = [
    ('½', 1.0, 2.0),
    ('¼', 1.0, 4.0),
    ('¾', 3.0, 4.0),
    ('⅓', 1.0, 3.0),
    ('⅔', 2.0, 3.0),
    ('⅛', 1.0, 8.0),
    ('⅜', 3.0, 8.0),
    ('⅝', 5.0, 8.0),
    ('⅞', 7.0, 8.0),
];

/// The fraction in one character at the start of a text and what follows it.
fn leading_fraction(text: &str) -> Option<(f64, &str)> {
    FRACTIONS
        .iter()
        .find_map(|(sign, numerator, denominator)| Some((numerator / denominator, text.strip_prefix(*sign)?)))
}

fn fraction_of(numerator: f64, after: &str) -> Option<(f64, &str)> {
    let (denominator, after) = leading_decimal(after.trim_start().strip_prefix('/')?.trim_start())?;
    (denominator > 0.0).then_some((numerator / denominator, after))
}

fn leading_decimal(text: &str) -> Option<(f64, &str)> {
    let unsigned = text.strip_prefix(['-', '−', '+']).unwrap_or(text);
    let negative = text.starts_with(['-', '−']);
    let (mut digits, mut after) = digits_and_rest(unsigned);
    // Spaces may group thousands: "1 700", but not in "1 1/2".
    let mut grouped = digits.to_owned();
    while let Some(group) = after.strip_prefix([' ', '\u{a0}', '\u{202f}']) {
        let is_group = group.len() >= 3
            && group.bytes().take(3).all(|b| b.is_ascii_digit())
            && !group[3..].starts_with(|c: char| c.is_ascii_digit() || c == '/')
            && !grouped.contains(['.', ',']);
        if !is_group {
            break;
        }
        // The last group may have a fraction behind it.
        let (group, rest) = digits_and_rest(group);
        grouped.push_str(group);
        after = rest;
    }
    digits = &grouped;
    let value = decimal::read(&match language::spoken().decimal_mark() {
        ',' => plain_decimal(&swapped(digits))?,
        _ => plain_decimal(digits)?,
    })?;
    Some((if negative { -value } else { value }, after))
}

/// The digits at the start of a text, with points and commas, and what follows them.
fn digits_and_rest(text: &str) -> (&str, &str) {
    text.split_at(text.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(text.len()))
}

/// Points for commas and commas for points.
fn swapped(digits: &str) -> String {
    let swap = |mark| match mark {
        '.' => ',',
        ',' => '.',
        digit => digit,
    };
    digits.chars().map(swap).collect()
}

/// Commas resolved: grouped thousands dropped, a decimal comma made a point.
fn plain_decimal(digits: &str) -> Option<String> {
    if !digits.bytes().any(|b| b.is_ascii_digit()) {
        return None;
    }
    let mut groups = digits.split(',');
    let head = groups.next()?;
    let tail: Vec<&str> = groups.collect();
    let whole = |group: &str| group.split('.').next().map_or(0, str::len);
    let grouping = !tail.is_empty()
        && (1..=3).contains(&head.len())
        && head != "0"
        && !head.contains('.')
        && tail.iter().all(|group| whole(group) == 3)
        && tail.iter().rev().skip(1).all(|group| !group.contains('.'));
    match tail.as_slice() {
        [] => Some(digits.to_owned()),
        _ if grouping => Some(digits.replace(',', "")),
        [one] if !digits.contains('.') => Some(format!("{head}.{one}")),
        _ => None,
    }
}

/// The unit at the start of the text and what follows it: the longest name that fits.
fn leading_unit<'a>(text: &'a str, kind: Kind, units: &Units) -> Result<(&'static Unit, &'a str), TypedError> {
    let own = units.of(kind);
    if text.is_empty() {
        return Ok((own, text));
    }
    // As in "a 4-in pipe".
    let text = text.strip_prefix(DASHES).filter(|after| after.starts_with(char::is_alphabetic)).unwrap_or(text);
    let candidates = || std::iter::once(own).chain(kind.units());
    let lower = text.to_ascii_lowercase();
    let longest = candidates()
        .flat_map(|unit| unit.names.iter().map(move |name| (unit, *name)))
        .filter(|(_, name)| !name.is_empty() && ends_there(&lower, name))
        .reduce(|best, next| if next.1.len() > best.1.len() { next } else { best });
    match longest {
        // Lower-casing keeps the byte length of every name, so the same cut holds in the text itself.
        Some((unit, name)) if text.is_char_boundary(name.len()) => {
            let after = &text[name.len()..];
            Ok((unit, after.strip_prefix('.').unwrap_or(after)))
        }
        _ => Err(TypedError::UnknownUnit { text: text.trim_end().to_owned(), kind }),
    }
}

/// How often a day the volume comes that is named by the day, the hour, the week or the month, as bills and meters tell a flow, and the
/// volume's unit: "L/week", "gallons a month", "litros por hora".
fn of_period(text: &str, kind: Kind, units: &Units) -> Option<(f64, &'static Unit)> {
    const BETWEEN: [&str; 7] = ["/", " a la ", " al ", " an ", " a ", " per ", " por "];
    const A_DAY: [(&str, f64); 13] = [
        ("day", 1.0),
        ("día", 1.0),
        ("h", HOURS_A_DAY),
        ("hr", HOURS_A_DAY),
        ("hour", HOURS_A_DAY),
        ("hora", HOURS_A_DAY),
        ("week", 1.0 / 7.0),
        ("wk", 1.0 / 7.0),
        ("semana", 1.0 / 7.0),
        ("month", 1.0 / DAYS_A_MONTH),
        ("mes", 1.0 / DAYS_A_MONTH),
        ("year", 1.0 / DAYS_A_YEAR),
        ("año", 1.0 / DAYS_A_YEAR),
    ];
    if kind != Kind::Flow {
        return None;
    }
    let (volume, period) = BETWEEN.iter().find_map(|between| text.split_once(between))?;
    let (_, a_day) = A_DAY.iter().find(|(name, _)| period.trim().eq_ignore_ascii_case(name))?;
    let (unit, rest) = leading_unit(volume, Kind::Volume, units).ok()?;
    rest.trim().is_empty().then_some((*a_day, unit))
}

/// Whether the text starts with the name and the word ends with it.
fn ends_there(text: &str, name: &str) -> bool {
    text.strip_prefix(name).is_some_and(|after| {
        let quote = name.ends_with(['\'', '"', '′', '″', '’', '”']);
        quote || !after.starts_with(|c: char| c.is_alphabetic() || matches!(c, '²' | '³' | '/'))
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::language::Language;
    use crate::quantity::Customary;

    #[track_caller]
    fn check(text: &str, kind: Kind, set: Customary, si: f64) {
        let typed = quantity(text, kind, &Units::customary(set)).unwrap();
        assert!((typed.si - si).abs() <= 1e-12 * si.abs().max(1.0), "{text}: {} is not {si}", typed.si);
    }

    #[test]
    fn a_sign_of_currency_before_a_price_is_no_part_of_it() {
        let read = |text: &str, kind| quantity(text, kind, &Units::customary(Customary::Us)).map(|read| read.si);
        assert_eq!(read("$350", Kind::Money), Ok(350.0));
        assert_eq!(read("€ 12.50", Kind::Money), Ok(12.5));
        assert!(read("$", Kind::Money).is_err() && read("$350", Kind::Volume).is_err());
    }

    #[test]
    fn an_area_may_be_typed_as_two_sides() {
        let read = |text: &str, set| quantity(text, Kind::Area, &Units::customary(set)).map(|read| read.si);
        let foot = 0.3048;
        for (text, set, square_metres) in [
            ("12 x 5", Customary::Metric, 60.0),
            ("12,5×4 m", Customary::Metric, 50.0),
            ("12 m x 500 cm", Customary::Metric, 60.0),
            ("40 x 20", Customary::Us, 800.0 * foot * foot),
            ("40 * 20 ft", Customary::Metric, 800.0 * foot * foot),
            ("12 x 5 m", Customary::Us, 60.0),
        ] {
            let found = read(text, set);
            assert!(found.as_ref().is_ok_and(|found| (found - square_metres).abs() < 1e-9), "{text}: {found:?}");
        }
        assert!(read("12 x", Customary::Metric).is_err() && read("12 x 5 x 3", Customary::Metric).is_err());
        // Several roofs add up.
        assert_eq!(read("14 x 9 + 4x6", Customary::Metric), Ok(150.0));
        assert_eq!(read("126 + 24 m2 + 10", Customary::Metric), Ok(160.0));
        assert!(read("126 +", Customary::Metric).is_err() && read("+ 24", Customary::Metric).is_err());
    }

    #[test]
    fn people_type_numbers_in_many_ways() {
        use Customary::*;
        check("1,700 gal", Kind::Volume, Metric, 1700.0 * 3.785_411_784);
        check("1 700", Kind::Volume, Metric, 1700.0);
        check("1 234 567.5", Kind::Volume, Metric, 1_234_567.5);
        check("6.4 m3", Kind::Volume, Us, 6400.0);
        check("6,4 m³", Kind::Volume, Us, 6400.0);
        check("5'6\"", Kind::Length, Metric, 66.0 * 0.0254);
        check("5 ft 6 1/2 in", Kind::Length, Metric, 66.5 * 0.0254);
        check("2 1/2 in", Kind::Bore, Metric, 2.5 * 0.0254);
        check("3/4\"", Kind::Bore, Metric, 0.75 * 0.0254);
        check("½", Kind::Bore, Us, 0.5 * 0.0254);
        check("2½ in", Kind::Bore, Metric, 2.5 * 0.0254);
        check("-1 ⅞ ft", Kind::Length, Metric, -1.875 * 0.3048);
        check("-⅔ ft", Kind::Length, Metric, -0.2032);
        check("18mm", Kind::Bore, Us, 0.018);
        // As American drawings and shop shelves write them.
        check("6'-2\"", Kind::Length, Metric, 74.0 * 0.0254);
        check("6' - 2 1/2\"", Kind::Length, Us, 74.5 * 0.0254);
        check("6'-2", Kind::Length, Us, 74.0 * 0.0254);
        check("1-1/2\"", Kind::Bore, Metric, 1.5 * 0.0254);
        check("-1-1/2 ft", Kind::Length, Metric, -1.5 * 0.3048);
        check("4-in", Kind::Bore, Metric, 4.0 * 0.0254);
        check("6 ft. 2 in.", Kind::Length, Metric, 74.0 * 0.0254);
        check("2500 gal.", Kind::Volume, Us, 2500.0 * 3.785_411_784);
        check("12 gal a day", Kind::Flow, Us, 12.0 * 3.785_411_784);
        check("-0.5", Kind::Length, Metric, -0.5);
        check("-1 1/2 ft", Kind::Length, Metric, -1.5 * 0.3048);
        check("85 %", Kind::Share, Us, 0.85);
        check("85", Kind::Share, Us, 0.85);
        check("1,234,567.5", Kind::Volume, Metric, 1_234_567.5);
        check("0,125", Kind::Depth, Metric, 0.125);
        check("40 gallons a day", Kind::Flow, Us, 40.0 * 3.785_411_784);
        check("1500 sq ft", Kind::Area, Metric, 1500.0 * 0.092_903_04);
        check("3 GAL", Kind::Volume, Us, 3.0 * 3.785_411_784);
    }

    #[test]
    fn in_spanish_the_comma_is_decimal_and_the_point_groups() {
        use Customary::*;
        language::speak(Language::Spanish);
        check("1.700 litros", Kind::Volume, Us, 1700.0);
        check("12.345,6 L", Kind::Volume, Us, 12_345.6);
        check("12 345,6 L", Kind::Volume, Us, 12_345.6);
        check("1,125 m", Kind::Length, Us, 1.125);
        check("1.5 m", Kind::Length, Us, 1.5);
        check("0.125 m", Kind::Length, Us, 0.125);
        check("5 pies 6 pulgadas", Kind::Length, Metric, 66.0 * 0.0254);
        check("1500 pies cuadrados", Kind::Area, Metric, 1500.0 * 0.092_903_04);
        check("40 galones al día", Kind::Flow, Us, 40.0 * 3.785_411_784);
        check("3 días", Kind::Days, Us, 3.0);
        check("85 por ciento", Kind::Share, Us, 0.85);
        check("3 mil L", Kind::Volume, Us, 3000.0);
        check("2,5 mil", Kind::Volume, Metric, 2500.0);
        language::speak(Language::English);
    }

    #[test]
    fn in_spanish_with_a_decimal_point_the_comma_groups() {
        use Customary::*;
        language::speak(Language::SpanishWithPoint);
        check("1,700 litros", Kind::Volume, Us, 1700.0);
        check("12,345.6 L", Kind::Volume, Us, 12_345.6);
        check("1.125 m", Kind::Length, Us, 1.125);
        check("1,5 m", Kind::Length, Us, 1.5);
        check("5 pies 6 pulgadas", Kind::Length, Metric, 66.0 * 0.0254);
        language::speak(Language::English);
    }

    #[test]
    fn a_number_that_may_be_thousands_is_known() {
        for (text, meant) in [("5.000", Some(5000.0)), ("12.500 L", Some(12_500.0)), ("-5.000", Some(5000.0))] {
            assert_eq!(perhaps_thousands(text), meant, "{text}");
        }
        for plain in ["5,000", "5.0", "5.0000", "0.125", "5000.125", "1.234.567", "lots", ""] {
            assert_eq!(perhaps_thousands(plain), None, "{plain}");
        }
        language::speak(Language::Spanish);
        assert_eq!((perhaps_thousands("5,000 L"), perhaps_thousands("5.000 L")), (Some(5000.0), None));
        language::speak(Language::English);
    }

    #[test]
    fn a_number_alone_behind_a_unit_is_what_custom_says_or_refused() {
        use Customary::*;
        for set in Customary::ALL {
            check("3 ft 4", Kind::Length, set, 40.0 * 0.0254);
            check("3'4", Kind::Length, set, 40.0 * 0.0254);
            check("40 ft 6", Kind::Length, set, 486.0 * 0.0254);
            check("5' 6 1/2", Kind::Bore, set, 66.5 * 0.0254);
            check("-5 ft 6 in", Kind::Length, set, -66.0 * 0.0254);
            check("14 m 50", Kind::Length, set, 14.5);
            check("2 m 05", Kind::Length, set, 2.05);
            let refuse = |text: &str, kind| quantity(text, kind, &Units::customary(set)).unwrap_err();
            for text in ["2.3 m 4", "2.3 m 40", "14 m 5", "14 m 500", "3 ft 12", "3.5 ft 4", "3 in 4", "50 cm 5"] {
                let error = refuse(text, Kind::Length);
                assert!(matches!(error, TypedError::BareBehindUnit { .. }), "{text}: {error:?}");
            }
            assert!(matches!(refuse("5 gal 3", Kind::Volume), TypedError::BareBehindUnit { .. }));
        }
        check("3 ft 4 in", Kind::Length, Us, 40.0 * 0.0254);
        check("2.3 m 4 cm", Kind::Length, Metric, 2.34);
    }

    #[test]
    fn a_use_may_be_typed_by_the_hour_the_week_or_the_month() {
        use Customary::*;
        check("700 L/week", Kind::Flow, Us, 100.0);
        check("70 litres a week", Kind::Flow, Metric, 10.0);
        check("7 gal/week", Kind::Flow, Metric, 3.785_411_784);
        check("7 gal a week", Kind::Flow, Imperial, 4.546_09);
        check("12 m3/month", Kind::Flow, Metric, 144_000.0 / 365.25);
        check("2 L/h", Kind::Flow, Metric, 48.0);
        check("1 gal/hour", Kind::Flow, Us, 24.0 * 3.785_411_784);
        check("1 gallon per hour", Kind::Flow, Imperial, 24.0 * 4.546_09);
        check("7 m3/week", Kind::Flow, Metric, 1000.0);
        check("140 litros a la semana", Kind::Flow, Metric, 20.0);
        check("12 L", Kind::Flow, Metric, 12.0);
        check("365.25 L a year", Kind::Flow, Metric, 1.0);
        check("7 L / wk", Kind::Flow, Metric, 1.0);
        assert!(quantity("3 L/fortnight", Kind::Flow, &Units::default()).is_err());
        assert!(quantity("3 L/week", Kind::Volume, &Units::default()).is_err());
    }

    #[test]
    fn a_latitude_is_north_or_south() {
        for (text, degrees) in
            [("34 S", -34.0), ("34°S", -34.0), ("-34", -34.0), ("-34 s", -34.0), ("34.5 N", 34.5), ("34° norte", 34.0)]
        {
            check(text, Kind::Latitude, Customary::Us, degrees);
        }
        check("34 sur", Kind::Latitude, Customary::Metric, -34.0);
        assert!(quantity("34 E", Kind::Latitude, &Units::default()).is_err());
    }

    #[test]
    fn a_gallon_is_the_persons_own() {
        check("10 gal", Kind::Volume, Customary::Us, 37.854_117_84);
        check("10 gal", Kind::Volume, Customary::Imperial, 45.4609);
        check("10 gal", Kind::Volume, Customary::Metric, 37.854_117_84);
        check("10 imp gal", Kind::Volume, Customary::Us, 45.4609);
    }

    #[test]
    fn what_is_not_a_quantity_is_refused() {
        let units = Units::customary(Customary::Metric);
        let refuse = |text: &str| quantity(text, Kind::Volume, &units).unwrap_err();
        assert_eq!(refuse("  "), TypedError::Empty);
        assert_eq!(refuse("lots"), TypedError::NotANumber { text: "lots".to_owned() });
        assert_eq!(refuse("5 feet"), TypedError::UnknownUnit { text: "feet".to_owned(), kind: Kind::Volume });
        for text in ["1.2.3", "1,2,3", "1/0", ",", ".", "5 L L", "NaN", "inf", "1e400", "12 ＬL", "½½", "1½/2"] {
            assert!(quantity(text, Kind::Volume, &units).is_err(), "{text}");
        }
    }
}

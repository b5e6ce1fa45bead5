//! A date as files write it, and which of two numbers is the day.

use chrono::NaiveDate;

use super::report::{DateOrder, OrderBasis, RowFault};

/// The first year that a file may speak of.
pub const FIRST_YEAR: i32 = 1700;
/// The last year that a file may speak of.
pub const LAST_YEAR: i32 = 2200;

/// A date whose order may still be open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum WrittenDate {
    /// One day only.
    Exact(NaiveDate),
    /// Two numbers and a year: day and month, or month and day.
    Either { first: u32, second: u32, year: i32 },
}

/// Reads `2001-03-05`, `2001/3/5`, `20010305`, `5/3/2001`, `5.3.2001`, `5 Mar 2001`, `March 5, 2001`; a time of day
/// after it is ignored. Years need four digits and lie in 1700–2200.
pub(super) fn read(text: &str) -> Result<WrittenDate, RowFault> {
    let date = without_time(text.trim());
    let not_a_date = || RowFault::NotADate { text: RowFault::excerpt(text) };
    if date.len() == 8 && is_number(date) {
        return exact(&date[..4], &date[4..6], &date[6..], text);
    }
    let mut parts = date.split(['-', '/', '.', ' ', ',']).filter(|part| !part.is_empty());
    let (Some(a), Some(b), Some(c), None) = (parts.next(), parts.next(), parts.next(), parts.next()) else {
        return Err(not_a_date());
    };
    let [a, b, c] = [a, b, c].map(str::trim);
    if let Some(month) = month_named(b) {
        return if is_year(a) { exact(a, month, c, text) } else { exact(c, month, a, text) };
    }
    if let Some(month) = month_named(a) {
        return exact(c, month, b, text);
    }
    if is_year(a) {
        return exact(a, b, c, text);
    }
    if !(is_year(c) && is_short(a) && is_short(b)) {
        return Err(not_a_date());
    }
    let (Ok(first), Ok(second), Ok(year)) = (a.parse(), b.parse(), c.parse()) else { return Err(not_a_date()) };
    check_year(year, text)?;
    let open = WrittenDate::Either { first, second, year };
    if open.on(DateOrder::DayFirst).is_none() && open.on(DateOrder::MonthFirst).is_none() {
        return Err(RowFault::NoSuchDay { text: RowFault::excerpt(text) });
    }
    Ok(open)
}

/// Reads a date from its year, month and day, each in a cell of its own.
pub(super) fn read_split(year: &str, month: &str, day: &str) -> Result<WrittenDate, RowFault> {
    let text = format!("{year} {month} {day}");
    exact(year.trim(), month_named(month.trim()).unwrap_or(month.trim()), day.trim(), &text)
}

impl WrittenDate {
    /// The day, if the order makes one of it.
    pub(super) fn on(self, order: DateOrder) -> Option<NaiveDate> {
        match (self, order) {
            (WrittenDate::Exact(date), _) => Some(date),
            (WrittenDate::Either { first, second, year }, DateOrder::DayFirst) => {
                NaiveDate::from_ymd_opt(year, second, first)
            }
            (WrittenDate::Either { first, second, year }, DateOrder::MonthFirst) => {
                NaiveDate::from_ymd_opt(year, first, second)
            }
        }
    }
}

/// Which number is the day, over a whole file (`None` if no date leaves it open): the order that more of the dates
/// allow; then the order in which more rows follow the day before; else day first, assumed.
pub(super) fn order_of(dates: impl Iterator<Item = WrittenDate> + Clone) -> Option<(DateOrder, OrderBasis)> {
    if !dates.clone().any(|date| matches!(date, WrittenDate::Either { .. })) {
        return None;
    }
    let possible = |order| dates.clone().filter(|date| date.on(order).is_some()).count();
    let next_days = |order| {
        let days = dates.clone().map(|date| date.on(order));
        days.clone().zip(days.skip(1)).filter(|(a, b)| a.and_then(|day| day.succ_opt()) == *b && b.is_some()).count()
    };
    let by = |count: &dyn Fn(DateOrder) -> usize, basis| match count(DateOrder::DayFirst)
        .cmp(&count(DateOrder::MonthFirst))
    {
        std::cmp::Ordering::Greater => Some((DateOrder::DayFirst, basis)),
        std::cmp::Ordering::Less => Some((DateOrder::MonthFirst, basis)),
        std::cmp::Ordering::Equal => None,
    };
    by(&possible, OrderBasis::Dates)
        .or_else(|| by(&next_days, OrderBasis::Succession))
        .or(Some((DateOrder::DayFirst, OrderBasis::Assumed)))
}

fn exact(year: &str, month: &str, day: &str, text: &str) -> Result<WrittenDate, RowFault> {
    let not_a_date = || RowFault::NotADate { text: RowFault::excerpt(text) };
    if !(is_year(year) && is_short(month) && is_short(day)) {
        return Err(not_a_date());
    }
    let (Ok(y), Ok(m), Ok(d)) = (year.parse(), month.parse(), day.parse()) else { return Err(not_a_date()) };
    check_year(y, text)?;
    let date = NaiveDate::from_ymd_opt(y, m, d).ok_or_else(|| RowFault::NoSuchDay { text: RowFault::excerpt(text) })?;
    Ok(WrittenDate::Exact(date))
}

fn check_year(year: i32, text: &str) -> Result<(), RowFault> {
    if (FIRST_YEAR..=LAST_YEAR).contains(&year) {
        Ok(())
    } else {
        Err(RowFault::YearOutOfRange { text: RowFault::excerpt(text) })
    }
}

/// The minute of the day that is named behind a date, if one is: 0 to 1439.
pub(super) fn minute(text: &str) -> Option<u16> {
    let (before, after) = text.split_once(':')?;
    let is_digit = |letter: char| letter.is_ascii_digit();
    let hours = &before[before.trim_end_matches(is_digit).len()..];
    let minutes = &after[..after.len() - after.trim_start_matches(is_digit).len()];
    let (hours, minutes): (u16, u16) = (hours.parse().ok()?, minutes.parse().ok()?);
    let half = after.to_ascii_lowercase();
    let hours = match hours {
        12 if half.contains('a') => 0,
        1..=11 if half.contains('p') => hours + 12,
        hours => hours,
    };
    (hours < 24 && minutes < 60).then_some(hours * 60 + minutes)
}

fn without_time(text: &str) -> &str {
    let end = text.find(':').map_or(text.len(), |colon| text[..colon].rfind([' ', 'T']).unwrap_or(text.len()));
    text[..end].trim()
}

fn is_number(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit())
}

fn is_year(text: &str) -> bool {
    text.len() == 4 && is_number(text)
}

fn is_short(text: &str) -> bool {
    text.len() <= 2 && is_number(text)
}

fn month_named(text: &str) -> Option<&'static str> {
    const MONTHS: [(&str, &str); 12] = [
        ("january", "1"),
        ("february", "2"),
        ("march", "3"),
        ("april", "4"),
        ("may", "5"),
        ("june", "6"),
        ("july", "7"),
        ("august", "8"),
        ("september", "9"),
        ("october", "10"),
        ("november", "11"),
        ("december", "12"),
    ];
    let text = text.to_ascii_lowercase();
    let named = |name: &str| text.len() >= 3 && name.starts_with(&text);
    MONTHS.iter().find(|(name, _)| named(name)).map(|&(_, number)| number)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    fn day(y: i32, m: u32, d: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(y, m, d).unwrap()
    }

    #[test]
    fn usual_ways_to_write_the_fifth_of_march_are_one_day() {
        for text in [
            "2001-03-05",
            "2001/3/5",
            "2001.03.05",
            "20010305",
            " 2001-03-05 ",
            "2001-03-05T00:00:00Z",
            "2001-03-05 07:00",
            "5 Mar 2001",
            "05-MAR-2001",
            "March 5, 2001",
            "2001 march 5",
            "March 5, 2001 07:00",
        ] {
            assert_eq!(read(text), Ok(WrittenDate::Exact(day(2001, 3, 5))), "{text}");
        }
        assert_eq!(read_split("2001", "3", "05"), Ok(WrittenDate::Exact(day(2001, 3, 5))));
    }

    #[test]
    fn the_time_of_a_day_is_told_by_its_minute() {
        for (text, wanted) in [
            ("2001-03-05 07:30", Some(450)),
            ("2001-03-05T23:59:00Z", Some(1439)),
            ("3/5/2001 12:05 AM", Some(5)),
            ("3/5/2001 1:00 PM", Some(780)),
            ("3/5/2001 12:00 pm", Some(720)),
            ("2001-03-05", None),
            ("2001-03-05 25:00", None),
            ("é:é", None),
        ] {
            assert_eq!(minute(text), wanted, "{text}");
        }
    }

    #[test]
    fn numbers_and_words_are_no_dates() {
        for text in ["", "5.3", "-9999", "2001", "rain", "1.2.3", "5/3/82", "99999999999", "12:30", "T", ":", "é:é T"]
        {
            assert!(read(text).is_err(), "{text}");
        }
        assert!(matches!(read("2001-02-29"), Err(RowFault::NoSuchDay { .. })));
        assert!(matches!(read("1699-12-31"), Err(RowFault::YearOutOfRange { .. })));
        assert!(matches!(read("13/13/2001"), Err(RowFault::NoSuchDay { .. })));
    }

    #[track_caller]
    fn check_order(texts: &[&str], expected: Option<(DateOrder, OrderBasis)>) {
        let dates: Vec<WrittenDate> = texts.iter().map(|text| read(text).unwrap()).collect();
        assert_eq!(order_of(dates.iter().copied()), expected);
    }

    #[test]
    fn a_day_above_twelve_decides_the_order() {
        check_order(&["1/2/2001", "13/2/2001"], Some((DateOrder::DayFirst, OrderBasis::Dates)));
        check_order(&["1/2/2001", "2/13/2001"], Some((DateOrder::MonthFirst, OrderBasis::Dates)));
    }

    #[test]
    fn days_that_follow_one_another_decide_where_the_numbers_do_not() {
        check_order(&["1/2/2001", "2/2/2001", "3/2/2001"], Some((DateOrder::DayFirst, OrderBasis::Succession)));
        check_order(&["1/2/2001", "1/3/2001", "1/4/2001"], Some((DateOrder::MonthFirst, OrderBasis::Succession)));
    }

    #[test]
    fn an_open_order_is_assumed_and_says_so() {
        check_order(&["1/2/2001"], Some((DateOrder::DayFirst, OrderBasis::Assumed)));
        check_order(&["2001-02-01"], None);
    }
}

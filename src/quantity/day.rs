//! A day of the calendar.

use chrono::NaiveDate;

/// A day as records and date fields write it: year, month and day of ISO 8601, the year with a sign where it has not four
/// figures. What chrono reads itself weighs 5 kB, as it knows every other way too.
///
/// # Example
/// ```
/// use eavewater::quantity::day;
/// assert_eq!(day::read("2026-03-04").map(|day| day.to_string()).as_deref(), Some("2026-03-04"));
/// assert_eq!(day::read("2026-02-30"), None);
/// assert_eq!(day::read("4.3.2026"), None);
/// ```
pub fn read(text: &str) -> Option<NaiveDate> {
    let mut parts = text.rsplitn(3, '-');
    let day = parts.next()?.parse().ok()?;
    let month = parts.next()?.parse().ok()?;
    let year = parts.next()?.parse().ok()?;
    NaiveDate::from_ymd_opt(year, month, day)
}

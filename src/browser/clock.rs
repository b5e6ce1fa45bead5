//! The day, where the person is.

use chrono::NaiveDate;

/// Today by the device's own calendar.
pub(super) fn today() -> NaiveDate {
    let now = js_sys::Date::new_0();
    let year = i32::try_from(now.get_full_year()).unwrap_or_default();
    NaiveDate::from_ymd_opt(year, now.get_month() + 1, now.get_date()).unwrap_or_default()
}

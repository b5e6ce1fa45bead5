//! The day and the language, where the person is.

use std::cell::Cell;
use std::rc::Rc;

use chrono::NaiveDate;

use super::hear;
use crate::app::event::Event;
use crate::language::Language;

/// Milliseconds since 1970 (UTC) by the device's own clock.
pub fn moment() -> u64 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole and after 1970")]
    let moment = js_sys::Date::now() as u64;
    moment
}

/// Today by the device's own calendar.
pub(super) fn today() -> NaiveDate {
    let now = js_sys::Date::new_0();
    let year = i32::try_from(now.get_full_year()).unwrap_or_default();
    NaiveDate::from_ymd_opt(year, now.get_month() + 1, now.get_date()).unwrap_or_default()
}

/// The languages that the device asks for, as tags: the one that is wanted most first.
fn asked_for() -> Vec<String> {
    let wanted = web_sys::window().map(|window| window.navigator().languages());
    wanted.iter().flat_map(js_sys::Array::iter).filter_map(|tag| tag.as_string()).collect()
}

/// The first language that the device asks for and that we speak.
pub(super) fn devices_language() -> Language {
    asked_for().iter().find_map(|tag| Language::of_tag(tag)).unwrap_or_default()
}

/// The tag of the language that the device wants most, and the minutes that universal time is ahead of its clock.
pub(super) fn devices_own() -> (String, f64) {
    let tag = asked_for().into_iter().next().unwrap_or_default();
    (tag, js_sys::Date::new_0().get_timezone_offset())
}

/// Tells the day when another has come, as soon as the page is looked at or touched again: it may have lain open overnight.
pub(super) fn listen(send: impl Fn(Event) + Copy + 'static) {
    let known = Rc::new(Cell::new(today()));
    for touched in ["visibilitychange", "pointerdown", "keydown"] {
        let known = known.clone();
        hear(touched, move |_| {
            let day = today();
            if known.replace(day) != day {
                send(Event::DayCame(day));
            }
        });
    }
}

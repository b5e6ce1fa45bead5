//! A calendar file: all-day events as iCalendar, RFC 5545.

use std::fmt::Write;

use chrono::{Datelike, NaiveDate};

/// One event of a whole day.
#[derive(Clone, Debug, PartialEq)]
pub struct DayEvent {
    /// Names it for as long as it lasts: a later file with the same name takes its place (section 3.8.4.7).
    pub uid: String,
    /// The day.
    pub date: NaiveDate,
    /// In a line.
    pub summary: String,
    /// More; may be empty.
    pub description: String,
    /// Days until it comes again, if it does.
    pub again: Option<u32>,
}

/// The text of a calendar, made at a moment (milliseconds since 1970, UTC). Lines end with CR and LF and are folded at
/// 75 bytes (section 3.1); texts are escaped (section 3.3.11).
pub fn calendar(name: &str, events: &[DayEvent], moment: u64) -> String {
    let mut text = String::new();
    line(&mut text, "BEGIN:VCALENDAR");
    line(&mut text, "VERSION:2.0");
    line(&mut text, "PRODID:-//Eavewater//Upkeep//EN");
    line(&mut text, "CALSCALE:GREGORIAN");
    line(&mut text, &format!("X-WR-CALNAME:{}", escaped(name)));
    let stamp = stamp(moment);
    for event in events {
        line(&mut text, "BEGIN:VEVENT");
        line(&mut text, &format!("UID:{}", escaped(&event.uid)));
        line(&mut text, &format!("DTSTAMP:{stamp}"));
        line(&mut text, &format!("DTSTART;VALUE=DATE:{}", day(event.date)));
        line(&mut text, &format!("SUMMARY:{}", escaped(&event.summary)));
        if !event.description.is_empty() {
            line(&mut text, &format!("DESCRIPTION:{}", escaped(&event.description)));
        }
        if let Some(days) = event.again.filter(|days| *days > 0) {
            line(&mut text, &format!("RRULE:FREQ=DAILY;INTERVAL={days}"));
        }
        line(&mut text, "TRANSP:TRANSPARENT");
        line(&mut text, "END:VEVENT");
    }
    line(&mut text, "END:VCALENDAR");
    text
}

/// The most bytes of a line, its end not counted.
const LONGEST_LINE: usize = 75;

fn line(text: &mut String, content: &str) {
    let mut width = 0;
    for letter in content.chars() {
        if width + letter.len_utf8() > LONGEST_LINE {
            text.push_str("\r\n ");
            width = 1;
        }
        text.push(letter);
        width += letter.len_utf8();
    }
    text.push_str("\r\n");
}

fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '\\' | ';' | ',' => {
                out.push('\\');
                out.push(letter);
            }
            '\n' => out.push_str("\\n"),
            control if control.is_control() => {}
            other => out.push(other),
        }
    }
    out
}

fn day(date: NaiveDate) -> String {
    format!("{:04}{:02}{:02}", date.year(), date.month(), date.day())
}

fn stamp(moment: u64) -> String {
    const A_DAY: u64 = 86_400;
    let seconds = moment / 1000;
    let days = chrono::Days::new(seconds / A_DAY);
    let date = NaiveDate::from_ymd_opt(1970, 1, 1).and_then(|epoch| epoch.checked_add_days(days)).unwrap_or_default();
    let of_day = seconds % A_DAY;
    let mut text = day(date);
    // Writing to a String can't fail.
    let _ = write!(text, "T{:02}{:02}{:02}Z", of_day / 3600, of_day / 60 % 60, of_day % 60);
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_are_folded_within_75_bytes_and_between_letters() {
        let event = DayEvent {
            uid: "gutter-4@eavewater".to_owned(),
            date: NaiveDate::from_ymd_opt(2026, 7, 2).unwrap_or_default(),
            summary: "Dachrinne säubern, ".repeat(9),
            description: "a;b\\c\nd\r\u{7}".to_owned(),
            again: Some(182),
        };
        // 2026-11-25 10:58:19 UTC.
        let text = calendar("Hill, house", &[event], 1_795_604_299_000);
        assert!(text.split("\r\n").all(|line| line.len() <= 75 && !line.contains(['\r', '\n'])));
        assert!(text.contains("\r\nDESCRIPTION:a\\;b\\\\c\\nd\r\n"));
        assert!(text.contains("X-WR-CALNAME:Hill\\, house") && text.contains("DTSTAMP:20261125T105819Z"));
        let unfolded = text.replace("\r\n ", "");
        assert!(unfolded.contains(&format!("SUMMARY:{}", "Dachrinne säubern\\, ".repeat(9))));
    }
}

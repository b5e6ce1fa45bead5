//! Runs of days in a record that have something in common.

use chrono::NaiveDate;

use super::report::DaySpan;
use crate::site::rain::RainRecord;

/// The longest possible runs of days of which `belongs` holds, in order. It is given a day's depth in mm, `None`
/// where it is missing.
pub fn spans(record: &RainRecord, belongs: fn(Option<f64>) -> bool) -> Vec<DaySpan> {
    let mut spans: Vec<DaySpan> = Vec::new();
    let mut before: Option<NaiveDate> = None;
    for (date, depth) in record.days() {
        let belongs = belongs(depth);
        match (spans.last_mut(), before) {
            (Some(span), Some(before)) if belongs && span.last == before => span.last = date,
            _ if belongs => spans.push(DaySpan { first: date, last: date }),
            _ => {}
        }
        before = Some(date);
    }
    spans
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::*;

    #[test]
    fn a_day_that_does_not_belong_ends_a_run() {
        let start: NaiveDate = "2001-01-01".parse().unwrap();
        let depths_mm = vec![Some(0.0), Some(0.0), None, Some(0.0), Some(3.0)];
        let record = RainRecord { source: String::new(), start, depths_mm };
        let lengths: Vec<i64> = spans(&record, |depth| depth == Some(0.0)).iter().map(DaySpan::days).collect();
        assert_eq!(lengths, [2, 1]);
        assert_eq!(spans(&record, |depth| depth.is_none())[0].first.to_string(), "2001-01-03");
    }
}

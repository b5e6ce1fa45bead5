//! Where an axis gets its ticks: round values, first days of months and years.

use chrono::{Datelike, NaiveDate};

use crate::quantity::shown::magnitude;

/// Round values from `least` (0 or below) to `greatest`, at most about so many steps; the first lies at or below
/// the least value and the last at or above the greatest.
pub(super) fn values(least: f64, greatest: f64, steps: f64) -> Vec<f64> {
    let sound = |value: f64| if value.is_finite() { value } else { 0.0 };
    let (least, greatest) = (sound(least).min(0.0), sound(greatest).max(0.0));
    let span = greatest - least;
    if span <= 0.0 {
        return vec![0.0, 1.0];
    }
    let rough = span / steps.max(1.0);
    let power = 10f64.powi(magnitude(rough).max(-300));
    let step = [1.0, 2.0, 5.0, 10.0].map(|digit| digit * power).into_iter().find(|step| *step >= rough * 0.999_999);
    let step = step.unwrap_or(10.0 * power);
    let (first, last) = ((least / step + 1e-9).floor(), (greatest / step - 1e-9).ceil());
    let mut ticks = Vec::new();
    let mut at = first;
    while at <= last {
        ticks.push(at * step);
        at += 1.0;
    }
    ticks
}

/// A tick on an axis of dates.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct DateTick {
    /// The first day of a year or month.
    pub day: NaiveDate,
    /// What is written there.
    pub text: String,
}

/// Years, or months where fewer than three years are shown; at most `most` ticks, at round distances.
pub(super) fn dates(start: NaiveDate, end: NaiveDate, months: &[String; 12], most: usize) -> Vec<DateTick> {
    let most = i32::try_from(most.max(1)).unwrap_or(1);
    let in_months = |day: NaiveDate| day.year() * 12 + day.month0().cast_signed();
    let (first, last) = (in_months(start), in_months(end));
    let apart = last - first;
    let step = if apart < 36 {
        [1, 2, 3, 6, 12].into_iter().find(|step| apart / step < most).unwrap_or(12)
    } else {
        [1, 2, 5, 10, 20, 50, 100].into_iter().map(|years| 12 * years).find(|step| apart / step < most).unwrap_or(2400)
    };
    let mut ticks = Vec::new();
    let mut at = first.div_euclid(step) * step;
    while at <= last {
        let month = at.rem_euclid(12);
        let day = NaiveDate::from_ymd_opt(at.div_euclid(12), month.cast_unsigned() + 1, 1);
        if let Some(day) = day.filter(|day| start <= *day && *day <= end) {
            let name = usize::try_from(month).ok().and_then(|month| months.get(month));
            let text = if month == 0 { day.year().to_string() } else { name.cloned().unwrap_or_default() };
            ticks.push(DateTick { day, text });
        }
        at += step;
    }
    ticks
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_are_round_and_cover() {
        for (least, greatest) in [(0.0, 1.0), (0.0, 7.3), (0.0, 9_999.0), (-12.0, 130.0), (0.0, 0.000_4), (0.0, 5e8)] {
            let ticks = values(least, greatest, 5.0);
            assert!((2..=8).contains(&ticks.len()), "{ticks:?}");
            assert!(ticks[0] <= least && greatest <= ticks[ticks.len() - 1] * (1.0 + 1e-9), "{ticks:?}");
            let step = ticks[1] - ticks[0];
            assert!(
                ticks[0] > least - step && greatest > ticks[ticks.len() - 1] - step * 1.000_001,
                "no idle step: {ticks:?}"
            );
            let digit = step / 10f64.powf((step * 1.000_001).log10().floor());
            assert!([1.0, 2.0, 5.0].iter().any(|round| (digit - round).abs() < 1e-6), "{step} is round");
        }
        assert_eq!(values(0.0, f64::NAN, 5.0), [0.0, 1.0]);
    }

    #[test]
    fn dates_are_firsts_within_the_span() {
        let day = |year, month, day| NaiveDate::from_ymd_opt(year, month, day).unwrap_or_default();
        let months: [String; 12] = std::array::from_fn(|at| format!("M{}", at + 1));
        let texts =
            |from, to, most| dates(from, to, &months, most).into_iter().map(|tick| tick.text).collect::<Vec<_>>();
        assert_eq!(texts(day(2001, 3, 5), day(2001, 7, 1), 9), ["M4", "M5", "M6", "M7"]);
        assert_eq!(texts(day(2001, 11, 1), day(2002, 3, 1), 3), ["M11", "2002", "M3"]);
        assert_eq!(texts(day(1961, 1, 1), day(2020, 12, 31), 6), ["1970", "1980", "1990", "2000", "2010", "2020"]);
        assert_eq!(texts(day(2001, 3, 5), day(2001, 3, 20), 9), Vec::<String>::new());
    }
}

//! A drier (or wetter) future: the same days, with their depths changed by month.

use chrono::Datelike;

use super::weather::Weather;

/// The same days with each depth times the factor of its month (January to December, 0 or more; 1 leaves it as it is).
pub fn scaled(weather: &Weather, by_month: &[f64; 12]) -> Weather {
    let factors = weather.dates.iter().map(|date| by_month[date.month0() as usize]);
    let depths_mm = weather.depths_mm.iter().zip(factors).map(|(depth_mm, factor)| depth_mm * factor).collect();
    Weather { depths_mm, ..weather.clone() }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]
    use super::super::weather::Origin;
    use super::*;

    #[test]
    fn only_the_months_named_change() {
        let weather = Weather {
            dates: ["2001-01-31", "2001-02-01"].map(|date| date.parse().unwrap()).to_vec(),
            depths_mm: vec![10.0, 10.0],
            filled_days: 3,
            left_out_years: vec![2000],
            origin: Origin::Measured,
        };
        let mut by_month = [1.0; 12];
        by_month[1] = 0.8;
        let drier = scaled(&weather, &by_month);
        assert_eq!(drier.depths_mm, [10.0, 8.0]);
        assert_eq!(Weather { depths_mm: weather.depths_mm.clone(), ..drier }, weather);
    }
}

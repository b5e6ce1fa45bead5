//! How sure a share of years is.

/// The 97.5 % point of the standard normal distribution: for intervals that hold 95 of 100.
const NORMAL_97_5: f64 = 1.959_963_984_540_054;

/// The Wilson score interval at 95 % for a chance of which `good` cases were seen in `all`:
/// `(p + z²/2n ± z √(p(1 − p)/n + z²/4n²)) / (1 + z²/n)`. `None` without cases; years are taken as independent.
///
/// Source: Wilson, Journal of the American Statistical Association 22, 1927.
///
/// # Example
/// ```
/// use eavewater::engine::measures::interval::wilson;
/// let (low, high) = wilson(20, 20).unwrap();
/// assert!(low < 0.84 && high == 1.0, "20 good years of 20 are not 100 %");
/// ```
#[expect(clippy::cast_precision_loss, reason = "years of a few centuries")]
pub fn wilson(good: usize, all: usize) -> Option<(f64, f64)> {
    if all == 0 || good > all {
        return None;
    }
    let n = all as f64;
    let p = good as f64 / n;
    let z2 = NORMAL_97_5 * NORMAL_97_5;
    let centre = p + z2 / (2.0 * n);
    let half = NORMAL_97_5 * (p * (1.0 - p) / n + z2 / (4.0 * n * n)).sqrt();
    let scale = 1.0 + z2 / n;
    let low = if good == 0 { 0.0 } else { (centre - half) / scale };
    let high = if good == all { 1.0 } else { (centre + half) / scale };
    Some((low, high))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn agrees_with_a_statistics_library() {
        // statsmodels 0.15.0, proportion_confint(count, nobs, method="wilson").
        for (good, all, low, high) in [
            (7, 11, 0.353_801_174_507_848_87, 0.848_335_289_046_324_3),
            (20, 20, 0.838_874_841_947_180_4, 1.0),
            (0, 11, 0.0, 0.258_832_966_968_031_8),
            (15, 20, 0.531_299_122_381_255_9, 0.888_138_298_592_334_4),
        ] {
            let interval = wilson(good, all);
            assert!(interval.is_some_and(|(a, b)| (a - low).abs() < 1e-12 && (b - high).abs() < 1e-12), "{interval:?}");
        }
        assert_eq!(wilson(0, 0), None);
    }
}

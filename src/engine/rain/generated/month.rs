//! The rain of one month in the model.

/// Mean length of the months in days, January to December, with a leap year every fourth year.
pub const MEAN_DAYS: [f64; 12] = [31.0, 28.25, 31.0, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 30.0, 31.0];

/// Parameters of a month. Chances are 0 to 1; a month that never rains has chances and scale of 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MonthRain {
    /// Chance that the day after a dry day is wet, P(W|D).
    pub wet_after_dry: f64,
    /// Chance that the day after a wet day is wet, P(W|W).
    pub wet_after_wet: f64,
    /// Shape α of the gamma distribution of a wet day's depth, above 0.
    pub shape: f64,
    /// Its scale β in mm, 0 or more.
    pub scale_mm: f64,
}

impl MonthRain {
    /// A month in which it never rains.
    pub const NEVER: MonthRain = MonthRain { wet_after_dry: 0.0, wet_after_wet: 0.0, shape: 1.0, scale_mm: 0.0 };

    /// Share of days that are wet in the long run: π = P(W|D) / (1 + P(W|D) − P(W|W)), the stationary law of the chain.
    pub fn wet_share(&self) -> f64 {
        let leaves = 1.0 + self.wet_after_dry - self.wet_after_wet;
        // A chain that never leaves either state stays dry, as it was before the first day.
        if leaves > 0.0 { self.wet_after_dry / leaves } else { 0.0 }
    }

    /// Mean depth of a wet day in mm, αβ.
    pub fn mean_depth_mm(&self) -> f64 {
        self.shape * self.scale_mm
    }

    /// Mean total of a month of so many days in mm.
    pub fn mean_total_mm(&self, days: f64) -> f64 {
        days * self.wet_share() * self.mean_depth_mm()
    }

    /// Variance of the total of a month of n days, in mm²: `n π αβ² + (αβ)² π (1 − π) (n + 2 Σ (n − k) ρᵏ)`, where
    /// ρ = P(W|W) − P(W|D) is the correlation of one day's wetness with the next day's and k runs from 1 to n − 1. The variance
    /// of a sum of chain-dependent amounts, as in Katz 1977 (from memory); for a chain that is in its long-run state.
    pub fn total_variance(&self, days: f64) -> f64 {
        let (share, mean, correlation) =
            (self.wet_share(), self.mean_depth_mm(), self.wet_after_wet - self.wet_after_dry);
        let (mut pairs, mut power, mut left) = (days, 1.0, days - 1.0);
        while left > 0.0 {
            power *= correlation;
            pairs += 2.0 * left * power;
            left -= 1.0;
        }
        days * share * mean * self.scale_mm + mean * mean * share * (1.0 - share) * pairs
    }
}

/// The driest month, 0 to 11, the earliest of equals.
pub fn driest(months: &[MonthRain; 12]) -> usize {
    let mut driest = (0, f64::INFINITY);
    for (number, (month, days)) in months.iter().zip(MEAN_DAYS).enumerate() {
        let total_mm = month.mean_total_mm(days);
        if total_mm < driest.1 {
            driest = (number, total_mm);
        }
    }
    driest.0
}

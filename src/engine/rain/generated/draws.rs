//! Random numbers, the same for the same seed everywhere.

use rand_pcg::Pcg32;
use rand_pcg::rand_core::{Rng, SeedableRng};

/// A stream of random numbers.
pub struct Draws(Pcg32);

impl Draws {
    /// The stream of a seed.
    pub fn of_seed(seed: u64) -> Self {
        Self(Pcg32::seed_from_u64(seed))
    }

    /// A number of 0 to below 1, any as likely as any other.
    pub fn uniform(&mut self) -> f64 {
        /// A number of 53 bits, as many as the number has, is as far from the next.
        const STEP: f64 = 1.0 / (1_u64 << 53) as f64;
        (self.0.next_u64() >> 11) as f64 * STEP
    }

    /// A number of the normal distribution with mean 0 and standard deviation 1, by the polar method.
    /// Source: G. Marsaglia and T. A. Bray, A convenient method for generating normal variables, SIAM Review 6 (1964).
    fn normal(&mut self) -> f64 {
        loop {
            let [x, y] = [(); 2].map(|()| 2.0 * self.uniform() - 1.0);
            let square = x * x + y * y;
            if square > 0.0 && square < 1.0 {
                return x * (-2.0 * libm::log(square) / square).sqrt();
            }
        }
    }

    /// A number of the gamma distribution; none where shape and scale aren't above 0 and finite.
    /// Source: G. Marsaglia and W. W. Tsang, A simple method for generating gamma variables, ACM Transactions on
    /// Mathematical Software 26 (2000): for a shape below 1, that of a shape one greater times a power of a uniform number.
    pub fn gamma(&mut self, shape: f64, scale: f64) -> Option<f64> {
        if ![shape, scale].iter().all(|one| *one > 0.0 && one.is_finite()) {
            return None;
        }
        let boosted = if shape < 1.0 { shape + 1.0 } else { shape };
        let d = boosted - 1.0 / 3.0;
        let c = 1.0 / (9.0 * d).sqrt();
        let drawn = loop {
            let normal = self.normal();
            let root = 1.0 + c * normal;
            let v = root * root * root;
            // Above 0, so that its logarithm is there.
            let uniform = 1.0 - self.uniform();
            if v > 0.0 && libm::log(uniform) < 0.5 * normal * normal + d * (1.0 - v + libm::log(v)) {
                break d * v;
            }
        };
        let boost = if shape < 1.0 { libm::pow(1.0 - self.uniform(), 1.0 / shape) } else { 1.0 };
        Some(drawn * boost * scale)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop")]
    use rand_distr::{Distribution, Gamma, StandardUniform};

    use super::*;
    use crate::quantity::order::sorted;

    const MANY: usize = 20_000;

    /// The greatest distance of two samples of as many numbers each, by their shares up to any number (Kolmogorov, Smirnov).
    fn distance(one: Vec<f64>, other: Vec<f64>) -> f64 {
        let (one, other) = (sorted(one), sorted(other));
        let below = |sample: &[f64], number: f64| sample.partition_point(|drawn| *drawn <= number) as f64;
        let far = |number: &f64| (below(&one, *number) - below(&other, *number)).abs() / MANY as f64;
        one.iter().chain(&other).map(far).fold(0.0, f64::max)
    }

    #[test]
    fn uniform_numbers_are_those_of_the_reference_library() {
        let (mut draws, mut theirs) = (Draws::of_seed(7), Pcg32::seed_from_u64(7));
        for _ in 0..1_000 {
            let wanted: f64 = StandardUniform.sample(&mut theirs);
            assert_eq!(draws.uniform(), wanted);
        }
    }

    #[test]
    fn gamma_numbers_spread_as_those_of_the_reference_library() {
        // Two samples of n numbers of one distribution lie farther apart than 1.95 √(2 / n) once in a thousand pairs
        // (tables of the two-sample test of Kolmogorov and Smirnov).
        let least_odd = 1.95 * (2.0 / MANY as f64).sqrt();
        let mut draws = Draws::of_seed(3);
        let mut theirs = Pcg32::seed_from_u64(4);
        for (shape, scale) in [(0.2, 3.0), (0.7, 12.0), (1.0, 5.0), (1.8, 9.0), (25.0, 0.04), (400.0, 0.0025)] {
            let ours: Vec<f64> = (0..MANY).map(|_| draws.gamma(shape, scale).unwrap()).collect();
            let reference = Gamma::new(shape, scale).unwrap();
            let wanted = (0..MANY).map(|_| reference.sample(&mut theirs)).collect();
            let mean = ours.iter().sum::<f64>() / MANY as f64;
            // Mean shape × scale, within five of its standard errors.
            assert!((mean / (shape * scale) - 1.0).abs() < 5.0 / (shape * MANY as f64).sqrt(), "{shape}: {mean}");
            let found = distance(ours, wanted);
            assert!(found < least_odd, "{shape}: {found} apart");
        }
    }

    #[test]
    fn what_is_no_distribution_gives_no_number() {
        let mut draws = Draws::of_seed(1);
        for (shape, scale) in
            [(0.0, 1.0), (-1.0, 1.0), (1.0, 0.0), (f64::NAN, 1.0), (1.0, f64::INFINITY), (f64::INFINITY, 1.0)]
        {
            assert_eq!(draws.gamma(shape, scale), None);
        }
        assert_eq!(draws.gamma(1e300, 1e-300), Some(1.0));
    }
}

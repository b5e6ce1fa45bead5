//! The gamma distribution's shape by maximum likelihood.

/// Shapes that are fitted lie between these; what would be more even counts as the latter.
const SHAPES: (f64, f64) = (1e-3, 1e3);

/// The shape α that maximises the likelihood of amounts whose ln(mean) − mean(ln) is `log_gap`: the root of
/// ln α − ψ(α) = `log_gap` (Thom 1958, as in any textbook of statistics). The left side falls with α, so halving an
/// interval finds it. The scale is the mean over α.
pub fn shape(log_gap: f64) -> f64 {
    let (mut low, mut high) = (libm::log(SHAPES.0), libm::log(SHAPES.1));
    for _ in 0..64 {
        let middle = 0.5 * (low + high);
        if middle - digamma(libm::exp(middle)) > log_gap {
            low = middle;
        } else {
            high = middle;
        }
    }
    libm::exp(0.5 * (low + high))
}

/// ψ(x), the derivative of ln Γ(x), for x above 0: the recurrence ψ(x) = ψ(x + 1) − 1/x up to 10, then the asymptotic
/// series (Abramowitz & Stegun 6.3.5 and 6.3.18). Good to about 1e-13.
pub fn digamma(x: f64) -> f64 {
    const SERIES: [f64; 6] = [1.0 / 12.0, -1.0 / 120.0, 1.0 / 252.0, -1.0 / 240.0, 1.0 / 132.0, -691.0 / 32_760.0];
    let (mut x, mut sum) = (x, 0.0);
    while x < 10.0 {
        sum -= 1.0 / x;
        x += 1.0;
    }
    let inverse_square = 1.0 / (x * x);
    let mut power = 1.0;
    let mut tail = 0.0;
    for coefficient in SERIES {
        power *= inverse_square;
        tail += coefficient * power;
    }
    sum + libm::log(x) - 0.5 / x - tail
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digamma_is_as_in_tables() {
        // scipy 1.17.1, scipy.special.digamma.
        for (x, psi) in [
            (0.1, -10.423_754_940_411_076),
            (0.5, -1.963_510_026_021_423_3),
            (1.0, -0.577_215_664_901_532_9),
            (2.5, 0.703_156_640_645_243_2),
            (30.0, 3.384_438_132_685_525),
        ] {
            assert!((digamma(x) - psi).abs() < 1e-12, "ψ({x}) = {}", digamma(x));
        }
    }

    #[test]
    fn the_shape_found_has_the_gap_that_was_given() {
        for shape_wanted in [0.01, 0.3, 0.998, 1.0, 4.0, 250.0] {
            let found = shape(libm::log(shape_wanted) - digamma(shape_wanted));
            assert!((found / shape_wanted - 1.0).abs() < 1e-8, "{found} for {shape_wanted}");
        }
        assert!((shape(0.0) / SHAPES.1 - 1.0).abs() < 1e-9, "equal amounts have the greatest shape");
    }
}

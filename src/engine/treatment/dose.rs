//! How much chlorine to put in.

/// A chlorine product: what share of it is available chlorine, and whether it is measured as a liquid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stock {
    /// Household bleach, thin: 5.25 %, the strength of the older rules.
    ThinBleach,
    /// Household bleach, 6 %.
    Bleach,
    /// Household bleach, concentrated: 8.25 %.
    StrongBleach,
    /// Liquid pool chlorine: 12.5 %.
    PoolLiquid,
    /// Granular calcium hypochlorite, 65 %.
    Granules65,
    /// Granular calcium hypochlorite, 75 %.
    Granules75,
}

impl Stock {
    /// All of them.
    pub const ALL: [Stock; 6] = [
        Stock::ThinBleach,
        Stock::Bleach,
        Stock::StrongBleach,
        Stock::PoolLiquid,
        Stock::Granules65,
        Stock::Granules75,
    ];

    /// Available chlorine when fresh, as a share: of weight for granules, grams in a millilitre for liquids.
    pub const fn strength(self) -> f64 {
        match self {
            Stock::ThinBleach => 0.0525,
            Stock::Bleach => 0.06,
            Stock::StrongBleach => 0.0825,
            Stock::PoolLiquid => 0.125,
            Stock::Granules65 => 0.65,
            Stock::Granules75 => 0.75,
        }
    }

    /// Whether it is a liquid.
    pub const fn is_liquid(self) -> bool {
        !matches!(self, Stock::Granules65 | Stock::Granules75)
    }
}

/// What a dose is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// Keeping a residual in stored water.
    Keep,
    /// Disinfecting stored water after contamination.
    Disinfect,
    /// Disinfecting pipes, or a tank that was cleaned out.
    Shock,
}

impl Purpose {
    /// All of them.
    pub const ALL: [Purpose; 3] = [Purpose::Keep, Purpose::Disinfect, Purpose::Shock];

    /// Chlorine to put in, in mg/L.
    ///
    /// Sources: to keep 1 mg/L, the University of Hawaii's guidance on rainwater catchment (from memory); to disinfect
    /// 5 mg/L, enHealth Guidance on use of rainwater tanks (2011) section 5.2; to shock 50 mg/L, ANSI/AWWA C652 (from
    /// memory).
    pub const fn milligrams_a_litre(self) -> f64 {
        match self {
            Purpose::Keep => 1.0,
            Purpose::Disinfect => 5.0,
            Purpose::Shock => 50.0,
        }
    }
}

/// Stock that brings a volume of water to a concentration: mL of a liquid, g of granules.
///
/// amount = mg/L × L / 1000 / strength; `strength` as a share, above 0 (a strength of nothing gives `None`).
pub fn amount(milligrams_a_litre: f64, litres: f64, strength: f64) -> Option<f64> {
    const MILLIGRAMS_IN_A_GRAM: f64 = 1000.0;
    (strength > 0.0).then(|| milligrams_a_litre * litres / MILLIGRAMS_IN_A_GRAM / strength)
}

/// Share of its chlorine that a liquid has left after some days at a temperature in °C.
///
/// Hypochlorite decays against itself (second order): left = 1 / (1 + days / half-life). Half-life: 220 days for 10 % and
/// 790 days for 5 % at 25 °C, between and beyond them by the power that joins them, and 3.5 times shorter for each 10 °C
/// more. Source: White's Handbook of Chlorination, table of half-lives, and Gordon, Adam and Bubnis (1995) for the step
/// with temperature (both from memory): good to a factor of two in time, so a warning, not a measurement.
pub fn left_after(days: f64, strength: f64, temperature: f64) -> f64 {
    const TENTH_LASTS: f64 = 220.0;
    const TWENTIETH_LASTS: f64 = 790.0;
    const TEN_DEGREES: f64 = 3.5;
    if days.is_nan() || days <= 0.0 || strength <= 0.0 {
        return 1.0;
    }
    let power = libm::log(TWENTIETH_LASTS / TENTH_LASTS) / std::f64::consts::LN_2;
    let half_life =
        TENTH_LASTS * libm::pow(0.1 / strength, power) * libm::pow(TEN_DEGREES, (25.0 - temperature) / 10.0);
    1.0 / (1.0 + days / half_life)
}

/// Drops of household bleach for a jug, for each litre and for each US gallon: of clear water 2, and 8 of 5–6 % (or 6 of
/// 8.25 %); twice as many for cloudy water; more as less of its strength is `left` (a share, above 0); then wait half an
/// hour. Source: CDC, Make water safe during an emergency; that old bleach wants more drops in proportion is ours.
pub fn drops(stock: Stock, cloudy: bool, left: f64) -> Option<(f64, f64)> {
    const GALLON_OF_LITRES: f64 = 4.0;
    let clear = match stock {
        Stock::ThinBleach | Stock::Bleach => 8.0,
        Stock::StrongBleach => 6.0,
        Stock::PoolLiquid | Stock::Granules65 | Stock::Granules75 => return None,
    };
    let gallon = libm::ceil(if cloudy { 2.0 * clear } else { clear } / left);
    Some((libm::ceil(gallon / GALLON_OF_LITRES), gallon))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn doses_as_published() {
        let disinfect = Purpose::Disinfect.milligrams_a_litre();
        // enHealth 2011 section 5.2: 40 mL of 12.5 % or 7 g of 75 % for 1,000 L, about 5 mg/L.
        assert!((amount(disinfect, 1000.0, Stock::PoolLiquid.strength()).unwrap() - 40.0).abs() < 1e-9);
        assert!((amount(disinfect, 1000.0, Stock::Granules75.strength()).unwrap() - 7.0).abs() < 0.5);
        // University of Hawaii (from memory, 75 %): 2.3 fl oz (68 mL) of 5.25 % for 1,000 gal (3,785 L), about 1 mg/L.
        let keep = amount(Purpose::Keep.milligrams_a_litre(), 3785.0, Stock::ThinBleach.strength()).unwrap();
        assert!((keep / 68.0 - 1.0).abs() < 0.07, "{keep}");
        assert_eq!(amount(5.0, 1000.0, 0.0), None);
    }

    #[test]
    fn drops_bring_about_what_they_should() {
        // CDC: 8 drops of 5–6 %, 6 of 8.25 %; 16 and 12 in cloudy water; a drop of 0.05 mL makes that 6.3 and 6.5 mg/L.
        assert_eq!(drops(Stock::Bleach, false, 1.0), Some((2.0, 8.0)));
        assert_eq!(drops(Stock::StrongBleach, true, 1.0).map(|(_, gallon)| gallon), Some(12.0));
        // Of half the strength, twice as many; 8 over 0.61 is 13.1.
        assert_eq!(drops(Stock::Bleach, false, 0.5), Some((4.0, 16.0)));
        assert_eq!(drops(Stock::Bleach, false, 0.61).map(|(_, gallon)| gallon), Some(14.0));
        for (stock, published) in [(Stock::Bleach, 6.3), (Stock::StrongBleach, 6.5)] {
            let millilitres = drops(stock, false, 1.0).unwrap().1 * 0.05;
            let gallon = amount(published, 3.785, stock.strength()).unwrap();
            assert!((millilitres / gallon - 1.0).abs() < 0.01, "{stock:?}");
        }
        assert_eq!(drops(Stock::Granules65, false, 1.0), None);
    }

    #[test]
    fn old_bleach_is_weaker_and_heat_hastens_it() {
        // White's Handbook (from memory, 80 %): half is left after 220 days for 10 % and 790 days for 5 % at 25 °C; 800
        // days for 10 % at 15 °C.
        assert!((left_after(220.0, 0.10, 25.0) - 0.5).abs() < 1e-12);
        assert!((left_after(790.0, 0.05, 25.0) - 0.5).abs() < 1e-12);
        assert!((left_after(800.0, 0.10, 15.0) - 0.5).abs() < 0.02);
        assert_eq!(left_after(0.0, 0.1, 25.0), 1.0);
        for days in 1..400 {
            let days = f64::from(days);
            assert!(left_after(days, 0.125, 30.0) < left_after(days, 0.125, 20.0));
            assert!(left_after(days, 0.125, 20.0) < left_after(days - 1.0, 0.125, 20.0));
        }
    }
}

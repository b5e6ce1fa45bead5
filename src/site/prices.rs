//! What changes to a system cost: figures to replace by one's own.

use crate::quantity::{Money, Range};

/// What has a price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Priced {
    /// One more tank, whatever its size: its base, fittings and delivery.
    Tank,
    /// One litre of such a tank.
    TankLitre,
    /// A gutter with its downspout.
    Gutter,
    /// One square metre of another roof: posts, sheets and their fixing.
    RoofArea,
    /// A pipe with a valve between two tanks.
    TrunkLine,
    /// Raising or lowering a tank.
    Levelling,
    /// Another diverter.
    Diverter,
    /// Another hole in a diverter.
    Hole,
    /// A mended gutter and screen.
    Screen,
    /// A pipe from an overflow to another tank.
    OverflowPipe,
    /// A mended leak.
    Leak,
    /// A lid.
    Lid,
}

impl Priced {
    /// All of them.
    pub const ALL: [Priced; 12] = [
        Priced::Tank,
        Priced::TankLitre,
        Priced::Gutter,
        Priced::RoofArea,
        Priced::TrunkLine,
        Priced::Levelling,
        Priced::Diverter,
        Priced::Hole,
        Priced::Screen,
        Priced::OverflowPipe,
        Priced::Leak,
        Priced::Lid,
    ];
}

/// What a price may be.
pub const PRICE: Range = Range::new(0.0, 1_000_000.0);

/// A household's prices.
#[derive(Clone, Debug, PartialEq)]
pub struct Prices([Money; Priced::ALL.len()]);

impl Prices {
    /// The price of a thing.
    pub fn of(&self, priced: Priced) -> Money {
        self.0[priced as usize]
    }

    /// Sets the price of a thing; one out of [`PRICE`] changes nothing.
    pub fn set(&mut self, priced: Priced, price: Money) {
        if PRICE.holds(price.get()) {
            self.0[priced as usize] = price;
        }
    }
}

impl Default for Prices {
    /// Round figures to begin with, in a currency like the dollar or euro (no source: each is to be replaced by one's
    /// own).
    fn default() -> Self {
        Self(Priced::ALL.map(|priced| {
            Money::coins(match priced {
                Priced::Tank => 250.0,
                Priced::TankLitre => 0.2,
                Priced::Gutter => 150.0,
                Priced::TrunkLine => 120.0,
                Priced::Levelling => 200.0,
                Priced::Diverter | Priced::Screen => 40.0,
                Priced::Hole => 5.0,
                Priced::OverflowPipe => 50.0,
                Priced::Leak => 80.0,
                Priced::RoofArea | Priced::Lid => 60.0,
            })
        }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_price_out_of_range_changes_nothing() {
        let mut prices = Prices::default();
        prices.set(Priced::Lid, Money::coins(12.5));
        for bad in [-1.0, f64::NAN, 1e9] {
            prices.set(Priced::Lid, Money::coins(bad));
        }
        assert_eq!(prices.of(Priced::Lid), Money::coins(12.5));
        assert_eq!(prices.of(Priced::Leak), Prices::default().of(Priced::Leak));
    }
}

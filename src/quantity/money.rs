//! Money, in whatever currency the household counts.

use super::newtype::quantity;
use super::unit::Unit;

quantity! {
    /// A price, in the household's own currency.
    Money, coins, Money
}

/// One unit: the household's currency, without a sign so that none is assumed.
pub const UNITS: &[Unit] = &[Unit { symbol: "", factor: 1.0, names: &["", "$", "€", "£"] }];

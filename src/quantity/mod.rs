//! Numbers with a unit and a range. SI inside; a unit occurs only where a number enters (`typed`) or leaves
//! (`shown`). A conversion factor outside this room is a defect.
//!
//! Absent on purpose: arithmetic between quantities. The engine lowers them once to bare numbers whose names
//! carry the unit (`content_l`), since the water balance adds litres to litres and little else.

mod newtype;

pub mod area;
pub mod concentration;
pub mod depth;
pub mod flow;
pub mod following;
pub mod length;
pub mod money;
pub mod plain;
pub mod volume;

pub mod day;
pub mod decimal;
pub mod order;
pub mod range;
pub mod shown;
pub mod typed;
pub mod unit;

pub use area::Area;
pub use depth::Depth;
pub use flow::Flow;
pub use length::{Bore, Length};
pub use money::Money;
pub use plain::{Count, DAYS_A_MONTH, DAYS_A_YEAR, Days, HOURS_A_DAY, Hours, Share};
pub use range::Range;
pub use unit::{Customary, Kind, Unit, Units};
pub use volume::Volume;

/// What every quantity can do: say its kind, give its SI value and take one.
pub trait Quantity {
    /// Which kind of quantity it is.
    fn kind(&self) -> Kind;
    /// The value in the unit that it is kept in.
    fn si(&self) -> f64;
    /// Takes a value in the unit that it is kept in.
    fn set_si(&mut self, si: f64);
}

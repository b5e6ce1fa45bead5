//! Changing one value of one part.

use super::details::Detail;
use super::part::{Choice, Field, PartId};
use super::rationing::CUT;
use super::roof::Outlet;
use super::system::{Part, System};
use super::tank_shape::{Shape, TableRow};
use crate::quantity::{Kind, Range, Share, Volume};

/// Why a change was refused; the system is as it was.
#[derive(Clone, Debug, PartialEq)]
pub enum EditError {
    /// The number is outside what the value may be.
    OutOfRange {
        /// The value.
        field: Field,
        /// Its kind.
        kind: Kind,
        /// What was wanted, in the unit that the kind is kept in.
        value: f64,
        /// What is allowed.
        range: Range,
    },
    /// The part has no such value (or is no longer there).
    NoSuchValue,
    /// A name without a letter or figure.
    NamelessPart,
    /// A detail is outside what it may be.
    DetailOutOfRange(Detail),
}

/// What a tank may hold, in litres.
pub const CAPACITY: Range = Range::new(1.0, 10_000_000.0);

impl System {
    /// Sets a number of a part, in the unit that its kind is kept in.
    ///
    /// # Errors
    /// [`EditError::OutOfRange`] and [`EditError::NoSuchValue`]; nothing is changed then.
    pub fn set_number(&mut self, id: PartId, field: Field, value: f64) -> Result<(), EditError> {
        let mut part = self.part(id).ok_or(EditError::NoSuchValue)?;
        let value = as_meant(field, value);
        if let (Part::Tank(tank), Field::Capacity) = (&mut part, field) {
            within(field, Kind::Volume, value, CAPACITY)?;
            tank.set_capacity(Volume::litres(value));
        } else if let (Part::Section(section), Field::ShareTo(feed)) = (&mut part, field) {
            within(field, Kind::Share, value, crate::quantity::range::SHARE)?;
            section.outlets.retain(|outlet| outlet.feed != feed);
            if value > 0.0 {
                section.outlets.push(Outlet { feed, share: Share::of_one(value) });
            }
        } else if let (Part::Ration(step), Field::CutOf(using)) = (&mut part, field) {
            within(field, Kind::Share, value, CUT)?;
            step.cut(using, value);
        } else {
            let mut numbers = part.numbers();
            let number = numbers.iter_mut().find(|number| number.field == field).ok_or(EditError::NoSuchValue)?;
            within(field, number.value.kind(), value, number.range)?;
            // The balance knows whole days only.
            let whole = number.value.kind() == Kind::Days;
            number.value.set_si(if whole { value.round() } else { value });
        }
        self.put(part);
        Ok(())
    }

    /// Names a part.
    ///
    /// # Errors
    /// [`EditError::NamelessPart`] for a name of spaces, [`EditError::NoSuchValue`] where the part is gone.
    pub fn set_name(&mut self, id: PartId, name: &str) -> Result<(), EditError> {
        let name = name.trim();
        if name.is_empty() {
            return Err(EditError::NamelessPart);
        }
        let part = self.part(id).ok_or(EditError::NoSuchValue)?;
        self.put(part.renamed(id, name.to_owned()));
        Ok(())
    }

    /// Replaces the table of a tank whose shape is a table; whether it rises is a finding, not an error.
    ///
    /// # Errors
    /// [`EditError::NoSuchValue`] where the tank is gone or of another shape.
    pub fn set_table(&mut self, id: PartId, rows: Vec<TableRow>) -> Result<(), EditError> {
        let tank = self.tanks.iter_mut().find(|tank| tank.id == id).ok_or(EditError::NoSuchValue)?;
        let Shape::Table(table) = &mut tank.shape else { return Err(EditError::NoSuchValue) };
        let was_full = tank.overflow.get() >= table.last().map_or(0.0, |row| row.depth.get());
        *table = rows;
        if was_full {
            tank.overflow = crate::quantity::Length::metres(tank.shape.height());
        }
        Ok(())
    }

    /// Makes a choice for a part.
    ///
    /// # Errors
    /// [`EditError::NoSuchValue`] where the part is gone.
    pub fn choose(&mut self, id: PartId, field: Field, choice: Choice) -> Result<(), EditError> {
        let mut part = self.part(id).ok_or(EditError::NoSuchValue)?;
        match &mut part {
            Part::Section(section) => section.choose(choice),
            Part::Feed(feed) => feed.choose(choice),
            Part::Tank(tank) => tank.choose(choice),
            Part::TrunkLine(line) => line.choose(field, choice),
            Part::Pump(pump) => pump.choose(field, choice),
            Part::Use(using) => using.choose(field, choice),
            Part::Hauling(hauling) => hauling.choose(choice),
            Part::Ration(step) => step.choose(choice),
        }
        self.put(part);
        Ok(())
    }
}

/// A share of the rain that was typed as handbooks write it, 0.85 for 85 %: nobody means a hundredth of that.
fn as_meant(field: Field, value: f64) -> f64 {
    const HUNDREDTH: f64 = 0.01;
    let of_rain = matches!(field, Field::RunoffCoefficient | Field::Capture | Field::ShareTo(_));
    if of_rain && value <= HUNDREDTH { value / HUNDREDTH } else { value }
}

fn within(field: Field, kind: Kind, value: f64, range: Range) -> Result<(), EditError> {
    if range.holds(value) { Ok(()) } else { Err(EditError::OutOfRange { field, kind, value, range }) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Length;
    use crate::site::demo;
    use crate::site::tank_shape::ShapeKind;

    #[test]
    fn a_refused_value_changes_nothing() {
        let mut system = demo::site().system;
        let before = system.clone();
        let section = system.sections[0].id;
        for bad in [-1.0, f64::NAN, 1e9] {
            assert!(system.set_number(section, Field::Area, bad).is_err());
        }
        assert_eq!(system.set_number(section, Field::Leak, 1.0), Err(EditError::NoSuchValue));
        assert_eq!(system.set_name(section, " "), Err(EditError::NamelessPart));
        assert_eq!(system, before);
    }

    #[test]
    fn a_tank_of_any_shape_takes_a_capacity() {
        let mut system = demo::site().system;
        let tank = system.tanks[0].id;
        for kind in ShapeKind::ALL {
            assert_eq!(system.choose(tank, Field::Shape, Choice::Shape(kind)), Ok(()));
            assert_eq!(system.set_number(tank, Field::Capacity, 4321.0), Ok(()));
            let capacity = system.tanks[0].capacity().get();
            assert!((capacity - 4321.0).abs() < 1e-6, "{kind:?}: {capacity}");
        }
    }

    #[test]
    fn a_runoff_coefficient_can_be_typed_as_handbooks_write_it() {
        let mut system = demo::site().system;
        let section = system.sections[0].id;
        // A bare number is taken as per cent.
        for (typed, meant) in [(0.85, 0.85), (85.0, 0.85), (1.0, 1.0), (0.0, 0.0)] {
            assert_eq!(system.set_number(section, Field::RunoffCoefficient, typed / 100.0), Ok(()));
            assert!((system.sections[0].runoff_coefficient.get() - meant).abs() < 1e-12, "{typed}");
        }
        assert!(system.set_number(section, Field::RunoffCoefficient, -0.001).is_err());
    }

    #[test]
    fn from_an_empty_table_a_usual_tank_comes_and_days_are_whole() {
        let mut system = demo::site().system;
        let tank = system.tanks[0].id;
        for rows in [Vec::new(), vec![TableRow { depth: Length::metres(0.0), volume: Volume::litres(0.0) }]] {
            for kind in ShapeKind::ALL {
                assert_eq!(system.choose(tank, Field::Shape, Choice::Shape(ShapeKind::Table)), Ok(()));
                assert_eq!(system.set_table(tank, rows.clone()), Ok(()));
                assert_eq!(system.choose(tank, Field::Shape, Choice::Shape(kind)), Ok(()));
                assert_eq!(crate::site::findings::findings(&system), [], "{kind:?}");
                assert!(system.tanks[0].capacity().get() > 1000.0, "{kind:?}");
            }
        }
        let feed = system.feeds[0].id;
        let by_hand = Choice::Drain(crate::site::feed::DrainKind::ByHand);
        assert_eq!(system.choose(feed, Field::Drain, by_hand), Ok(()));
        assert_eq!(system.set_number(feed, Field::EmptiedEvery, 1.9), Ok(()));
        let drained = system.part(feed).and_then(|mut part| {
            let numbers = part.numbers();
            numbers.iter().find(|number| number.field == Field::EmptiedEvery).map(|number| number.value.si())
        });
        assert_eq!(drained, Some(2.0));
    }

    #[test]
    fn a_changed_shape_holds_the_same() {
        let mut system = demo::site().system;
        let tank = system.tanks[0].id;
        let before = system.tanks[0].capacity().get();
        for kind in ShapeKind::ALL {
            assert_eq!(system.choose(tank, Field::Shape, Choice::Shape(kind)), Ok(()));
            assert!((system.tanks[0].capacity().get() - before).abs() < 1e-6 * before, "{kind:?}");
            assert_eq!(crate::site::findings::findings(&system), [], "{kind:?}");
        }
    }
}

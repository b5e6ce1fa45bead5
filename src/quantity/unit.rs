//! Kinds of quantity, the units of each, and which of them a person wants to see.

use super::{area, depth, flow, following, length, money, plain, volume};

/// A unit: its symbol on the screen, what people type for it (lower case), and how much of the kept unit it is.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// How it is shown.
    pub symbol: &'static str,
    /// How many of the kept unit one of it is.
    pub factor: f64,
    /// What people type for it, in lower case.
    pub names: &'static [&'static str],
}

impl Unit {
    /// How it is shown in the language that is spoken; the symbol stays its name in records.
    pub fn sign(&self) -> &'static str {
        match self.symbol {
            "days" => said!("days", "días"),
            "L/day" => said!("L/day", "L/día"),
            "gal/day" => said!("gal/day", "gal/día"),
            "imp gal" => said!("imp gal", "gal imp"),
            "imp gal/min" => said!("imp gal/min", "gal imp/min"),
            "m water" => said!("m water", "m de agua"),
            "imp gal/day" => said!("imp gal/day", "gal imp/día"),
            "m³/day" => said!("m³/day", "m³/día"),
            symbol => symbol,
        }
    }
}

/// The kinds of quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Litres inside.
    Volume,
    /// Square metres inside.
    Area,
    /// Metres inside.
    Length,
    /// Metres inside; pipes and holes.
    Bore,
    /// Millimetres inside.
    Depth,
    /// Litres a day inside.
    Flow,
    /// The household's currency.
    Money,
    /// 0 to 1 inside.
    Share,
    /// Days.
    Days,
    /// Hours.
    Hours,
    /// A plain number.
    Count,
    /// Kilopascals inside; of water.
    Pressure,
    /// Kilopascals inside; on soil and from wind.
    Bearing,
    /// Millimetres of rain an hour inside.
    Intensity,
    /// Litres a minute inside.
    Rate,
    /// Metres a second inside; of water.
    Speed,
    /// Metres a second inside; of wind.
    Wind,
    /// Kilograms inside.
    Mass,
    /// Kilonewtons inside.
    Force,
    /// Degrees Celsius inside.
    Temperature,
    /// Watts inside.
    Power,
    /// Watt hours inside.
    Energy,
    /// Degrees inside, north positive.
    Latitude,
}

impl Kind {
    /// The kinds whose unit a person can choose.
    pub const SWITCHABLE: [Kind; 6] = [Kind::Depth, Kind::Area, Kind::Volume, Kind::Flow, Kind::Length, Kind::Bore];

    /// The kinds whose unit follows that of another kind.
    pub const FOLLOWING: [Kind; 11] = [
        Kind::Pressure,
        Kind::Bearing,
        Kind::Intensity,
        Kind::Rate,
        Kind::Speed,
        Kind::Wind,
        Kind::Mass,
        Kind::Force,
        Kind::Temperature,
        Kind::Power,
        Kind::Energy,
    ];

    /// The units of this kind; the first is the one that values are kept in, but for shares.
    pub const fn units(self) -> &'static [Unit] {
        match self {
            Kind::Volume => volume::UNITS,
            Kind::Area => area::UNITS,
            Kind::Length => length::UNITS,
            Kind::Bore => length::BORE_UNITS,
            Kind::Depth => depth::UNITS,
            Kind::Flow => flow::UNITS,
            Kind::Money => money::UNITS,
            Kind::Share => plain::SHARE_UNITS,
            Kind::Days => plain::DAY_UNITS,
            Kind::Hours => plain::HOUR_UNITS,
            Kind::Count => plain::COUNT_UNITS,
            Kind::Pressure => following::PRESSURE,
            Kind::Bearing => following::BEARING,
            Kind::Intensity => following::INTENSITY,
            Kind::Rate => following::RATE,
            Kind::Speed => following::SPEED,
            Kind::Wind => following::WIND,
            Kind::Mass => following::MASS,
            Kind::Force => following::FORCE,
            Kind::Temperature => following::TEMPERATURE,
            Kind::Power => following::POWER,
            Kind::Energy => following::ENERGY,
            Kind::Latitude => plain::LATITUDE_UNITS,
        }
    }
}

/// A whole set of customary units.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Customary {
    /// Inches of rain, square feet, US gallons.
    Us,
    /// Millimetres, square metres, litres.
    Metric,
    /// Inches of rain, square feet, imperial gallons.
    Imperial,
}

impl Customary {
    /// All sets.
    pub const ALL: [Customary; 3] = [Customary::Us, Customary::Metric, Customary::Imperial];

    /// The set that the owner of a device most likely knows, by the tag of the language that it asks for first and the minutes that
    /// universal time is ahead of its clock: that of the United States where both are theirs, for many a phone elsewhere is left
    /// at that language; metric for all others.
    pub fn of_device(tag: &str, minutes_behind: f64) -> Self {
        /// From Puerto Rico to Hawaii.
        const HOURS: std::ops::RangeInclusive<f64> = 4.0..=10.0;
        let language = ["-US", "-PR"].iter().any(|region| tag.ends_with(region));
        if language && HOURS.contains(&(minutes_behind / 60.0)) { Customary::Us } else { Customary::Metric }
    }
}

/// The unit that a person wants for each of [`Kind::SWITCHABLE`]; kinds not named have their first unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Units([Option<&'static Unit>; Kind::SWITCHABLE.len()]);

impl Units {
    /// The units of a customary set.
    pub fn customary(set: Customary) -> Self {
        let (depth, area, volume, flow, length, bore) = match set {
            Customary::Us => ("in", "ft²", "gal", "gal/day", "ft", "in"),
            Customary::Metric => ("mm", "m²", "L", "L/day", "m", "mm"),
            Customary::Imperial => ("in", "ft²", "imp gal", "imp gal/day", "ft", "in"),
        };
        let mut units = Self::default();
        for (kind, symbol) in Kind::SWITCHABLE.into_iter().zip([depth, area, volume, flow, length, bore]) {
            units = units.with(kind, symbol);
        }
        units
    }

    /// The unit named for a kind.
    pub fn named(&self, kind: Kind) -> Option<&'static Unit> {
        Kind::SWITCHABLE.iter().position(|other| *other == kind).and_then(|place| self.0[place])
    }

    /// The unit wanted for a kind.
    pub fn of(&self, kind: Kind) -> &'static Unit {
        self.named(kind).unwrap_or_else(|| &kind.units()[following::place(kind, self)])
    }

    /// These units with another one for one kind; nothing changes if the kind has no such unit (a newer file may name
    /// one) or no choice of units.
    pub fn with(mut self, kind: Kind, symbol: &str) -> Self {
        let unit = kind.units().iter().find(|unit| unit.symbol == symbol);
        let place = Kind::SWITCHABLE.iter().position(|other| *other == kind);
        if let (Some(unit), Some(place)) = (unit, place) {
            self.0[place] = Some(unit);
        }
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_customary_set_names_units_that_exist() {
        for set in Customary::ALL {
            let units = Units::customary(set);
            for kind in Kind::SWITCHABLE {
                assert_eq!(units.named(kind), Some(units.of(kind)), "{kind:?}");
            }
        }
    }

    #[test]
    fn a_device_of_the_united_states_begins_in_its_units() {
        for (tag, minutes, set) in [
            ("en-US", 300.0, Customary::Us),
            ("es-US", 480.0, Customary::Us),
            ("es-PR", 240.0, Customary::Us),
            ("en-US", 600.0, Customary::Us),
            ("en-US", 0.0, Customary::Metric),
            ("en-US", -330.0, Customary::Metric),
            ("es-MX", 360.0, Customary::Metric),
            ("en", 300.0, Customary::Metric),
            ("", f64::NAN, Customary::Metric),
        ] {
            assert_eq!(Customary::of_device(tag, minutes), set, "{tag} {minutes}");
        }
    }

    #[test]
    fn one_kind_can_be_switched_alone() {
        let units = Units::customary(Customary::Metric).with(Kind::Depth, "in").with(Kind::Volume, "hogshead");
        assert_eq!(units.of(Kind::Depth).symbol, "in");
        assert_eq!(units.of(Kind::Volume).symbol, "L");
    }
}

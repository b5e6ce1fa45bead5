//! Details of parts and of the site that only checks ask for: each may be absent, and then has a usual value.
//!
//! One table of rows instead of a field for each: kind, range and usual value stand together, and most houses keep
//! few of them.

use super::edit::EditError;
use super::part::PartId;
use crate::quantity::{Kind, Range};

/// Makes the enum and its table from one list.
macro_rules! details {
    ($($(#[$doc:meta])* $name:ident($kind:ident, $least:expr, $greatest:expr, $usual:expr);)*) => {
        /// A detail that may be entered.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Detail { $($(#[$doc])* $name),* }

        impl Detail {
            /// All details.
            pub const ALL: &'static [Detail] = &[$(Detail::$name),*];

            /// Whether it is something wanted rather than something built.
            pub const fn is_wish(self) -> bool {
                matches!(
                    self,
                    Detail::Dirt
                        | Detail::DrainWithin
                        | Detail::Pitch
                        | Detail::ScreenBlocked
                        | Detail::LevelDifference
                        | Detail::FarDraw
                        | Detail::TapPressure
                        | Detail::TapFlow
                        | Detail::Autonomy
                        | Detail::Travellers
                        | Detail::CarriedFor
                        | Detail::CarriedEach
                        | Detail::TripDays
                )
            }

            /// Its row.
            pub const fn row(self) -> Row {
                ROWS[self as usize]
            }
        }

        const ROWS: &[Row] = &[$(Row { kind: kind!($kind), range: Range::new($least, $greatest), usual: $usual, options: options!($kind, $greatest) }),*];
    };
}
macro_rules! kind {
    (Choice) => {
        Kind::Count
    };
    ($kind:ident) => {
        Kind::$kind
    };
}
macro_rules! options {
    (Choice, $greatest:expr) => {
        ($greatest as usize) + 1
    };
    ($kind:ident, $greatest:expr) => {
        0
    };
}

/// What a detail may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Its kind; a choice is kept as its place, from 0.
    pub kind: Kind,
    /// What it may be.
    pub range: Range,
    /// What is taken where it is absent. Some checks know better and say so.
    pub usual: f64,
    /// How many there are to choose from; 0 for a number.
    pub options: usize,
}

details! {
    /// Rain for which gutters and pipes are laid out.
    DesignIntensity(Intensity, 1.0, 1000.0, 150.0);
    /// Rain of a storm to prepare for.
    StormDepth(Depth, 0.0, 2000.0, 100.0);
    /// How long that storm lasts.
    StormDuration(Hours, 0.1, 240.0, 6.0);
    /// Height of the site over the sea.
    Altitude(Length, -430.0, 6000.0, 0.0);
    /// Temperature of the water.
    WaterTemperature(Temperature, 0.0, 60.0, 20.0);
    /// Basic wind speed, a gust of three seconds at 10 m over open ground.
    WindSpeed(Wind, 0.0, 150.0, 51.4);
    /// Surroundings: town or wood, open country, flat shore.
    Exposure(Choice, 0.0, 2.0, 1.0);
    /// Depth of the groundwater below the ground; a flood stands above it, so below 0.
    Groundwater(Length, -20.0, 100.0, 0.0);
    /// What the tanks stand on: rock, layered rock, sandy gravel, sand, clay or silt.
    Soil(Choice, 0.0, 4.0, 4.0);

    /// How steep a roof section is: flat to 3 in 12, to 5, to 8, to 11, 12 in 12 and more.
    Pitch(Choice, 0.0, 4.0, 0.0);

    /// How dirty the roof of a feed is: clean, usual, dirty.
    Dirt(Choice, 0.0, 2.0, 1.0);
    /// Hours in which a diverter is to be empty again.
    DrainWithin(Hours, 0.1, 240.0, 24.0);
    /// Shape of a gutter: half-round, box, ogee or other trapezoid.
    GutterShape(Choice, 0.0, 2.0, 0.0);
    /// Width of a gutter at the top; a half-round one's diameter.
    GutterWidth(Bore, 0.03, 1.0, 0.125);
    /// Depth of a gutter to its spilling edge.
    GutterDepth(Bore, 0.02, 1.0, 0.09);
    /// Width of a gutter at the bottom.
    GutterSole(Bore, 0.02, 1.0, 0.08);
    /// Fall of a gutter towards its outlet.
    GutterSlope(Share, 0.0, 0.2, 0.002);
    /// Length of gutter that runs to one outlet.
    GutterLength(Length, 0.3, 100.0, 10.0);
    /// Inside diameter of a downspout.
    Downspout(Bore, 0.02, 0.5, 0.075);
    /// Downspouts that a feed has, side by side.
    Downspouts(Count, 1.0, 50.0, 1.0);
    /// Whether a strainer sits in the gutter outlet.
    Strainer(Choice, 0.0, 1.0, 0.0);
    /// Diameter of a screen.
    ScreenBore(Bore, 0.02, 2.0, 0.3);
    /// Share of a screen that is open.
    ScreenOpen(Share, 0.01, 1.0, 0.4);
    /// Share of a screen that leaves cover.
    ScreenBlocked(Share, 0.0, 0.99, 0.5);
    /// Inside diameter of the pipe into the tank.
    InletBore(Bore, 0.02, 0.5, 0.075);

    /// Inside diameter of a tank's overflow pipe.
    OverflowBore(Bore, 0.01, 1.0, 0.1);
    /// Air between the end of a filling pipe and the overflow.
    AirGap(Bore, 0.0, 2.0, 0.05);
    /// What an empty tank weighs.
    EmptyMass(Mass, 0.0, 1_000_000.0, 100.0);
    /// Area of the pad under a tank.
    PadArea(Area, 0.01, 10_000.0, 4.0);
    /// Thickness of the pad, of concrete.
    PadThickness(Length, 0.0, 3.0, 0.1);
    /// Friction between a tank and its pad.
    Friction(Count, 0.0, 1.5, 0.3);
    /// Anchors that hold a tank down.
    Anchors(Count, 0.0, 100.0, 0.0);
    /// Soil over the top of a buried tank.
    SoilCover(Length, 0.0, 10.0, 0.0);
    /// Concrete cast to a tank that holds it down.
    HoldDown(Mass, 0.0, 1_000_000.0, 0.0);

    /// Inside diameter of a pipe.
    PipeBore(Bore, 0.005, 1.0, 0.025);
    /// Length of a pipe.
    PipeLength(Length, 0.1, 5000.0, 10.0);
    /// What a pipe is made of: plastic, copper, steel, old iron, concrete.
    PipeMaterial(Choice, 0.0, 4.0, 0.0);
    /// Bends of a quarter turn in a pipe.
    Elbows(Count, 0.0, 500.0, 4.0);
    /// Open full-bore valves in a pipe.
    Valves(Count, 0.0, 100.0, 2.0);
    /// Difference of level to be evened out.
    LevelDifference(Length, 0.01, 30.0, 0.5);
    /// What a pump draws from one end of a trunk line.
    FarDraw(Rate, 0.0, 10_000.0, 20.0);

    /// How water comes from a tank to its taps: by gravity, by a pump. What a pump is asked for stands from
    /// [`Detail::PumpHeight`] to [`Detail::BatteryVolts`].
    SuppliedBy(Choice, 0.0, 1.0, 0.0);
    /// Elevation of a pump over ground level.
    PumpHeight(Length, -30.0, 100.0, 0.0);
    /// Inside diameter of a suction pipe.
    SuctionBore(Bore, 0.005, 1.0, 0.032);
    /// Length of a suction pipe.
    SuctionLength(Length, 0.1, 1000.0, 3.0);
    /// Elevation of the highest tap over ground level.
    HighestTap(Length, -30.0, 100.0, 3.0);
    /// Pressure wanted at a tap.
    TapPressure(Pressure, 0.0, 1000.0, 100.0);
    /// Pressure lost in clean filters.
    FilterClean(Pressure, 0.0, 1000.0, 15.0);
    /// Pressure lost in filters that are due to be changed.
    FilterFouled(Pressure, 0.0, 1000.0, 70.0);
    /// Head of a pump that delivers nothing.
    ShutHead(Length, 0.1, 500.0, 42.0);
    /// Flow at a point in the middle of a pump's curve.
    MidFlow(Rate, 0.1, 10_000.0, 35.0);
    /// Head there.
    MidHead(Length, 0.0, 500.0, 32.0);
    /// Flow at the end of a pump's curve.
    EndFlow(Rate, 0.1, 10_000.0, 60.0);
    /// Head there.
    EndHead(Length, 0.0, 500.0, 12.0);
    /// Share of the electricity that reaches the water.
    PumpEfficiency(Share, 0.01, 1.0, 0.3);
    /// Net positive suction head that a pump requires.
    NpshRequired(Length, 0.0, 30.0, 3.0);
    /// Volume of a pressure vessel.
    Vessel(Volume, 0.0, 100_000.0, 24.0);
    /// Pressure at which a pump starts.
    CutIn(Pressure, 10.0, 1000.0, 200.0);
    /// Pressure at which a pump stops.
    CutOut(Pressure, 10.0, 1500.0, 340.0);
    /// Pump starts in an hour that its maker allows.
    StartsAnHour(Count, 1.0, 200.0, 20.0);
    /// Hours of full sun on a day of the poorest month.
    SunHours(Hours, 0.1, 12.0, 3.0);
    /// Days that a battery is to bridge.
    Autonomy(Days, 0.1, 60.0, 2.0);
    /// Share of a battery that may be drawn.
    Discharge(Share, 0.05, 1.0, 0.5);
    /// Share of the sun's electricity that reaches the pump.
    SolarYield(Share, 0.05, 1.0, 0.7);
    /// Voltage of a battery.
    BatteryVolts(Count, 1.0, 1000.0, 12.0);

    /// Elevation of a tap over ground level.
    TapHeight(Length, -30.0, 100.0, 1.0);
    /// Flow wanted at a tap.
    TapFlow(Rate, 0.1, 1000.0, 6.0);
    /// Toilets with a cistern.
    Toilets(Count, 0.0, 100.0, 0.0);
    /// Wash basins.
    Basins(Count, 0.0, 100.0, 0.0);
    /// Showers.
    Showers(Count, 0.0, 100.0, 0.0);
    /// Baths.
    Baths(Count, 0.0, 100.0, 0.0);
    /// Kitchen sinks.
    Sinks(Count, 0.0, 100.0, 0.0);
    /// Dishwashers.
    Dishwashers(Count, 0.0, 100.0, 0.0);
    /// Washing machines.
    Washers(Count, 0.0, 100.0, 0.0);
    /// Garden taps.
    GardenTaps(Count, 0.0, 100.0, 0.0);

    /// What proves that a filter stops germs.
    Proof(Choice, 0.0, 5.0, 0.0);
    /// Logs of bacteria that a certificate says.
    CertifiedBacteria(Count, 0.0, 9.0, 0.0);
    /// Logs of viruses that a certificate says.
    CertifiedViruses(Count, 0.0, 9.0, 0.0);
    /// Logs of protozoa that a certificate says.
    CertifiedProtozoa(Count, 0.0, 9.0, 0.0);
    /// Whether a filter is certified against metals.
    CertifiedMetals(Choice, 0.0, 1.0, 0.0);
    /// Whether a filter is certified against organic substances.
    CertifiedOrganics(Choice, 0.0, 1.0, 0.0);
    /// Water that a filter is rated for.
    RatedLitres(Volume, 0.0, 10_000_000.0, 0.0);
    /// Pressure lost in a filter now.
    FilterNow(Pressure, 0.0, 1000.0, 15.0);
    /// Class of a lamp.
    LampClass(Choice, 0.0, 3.0, 0.0);
    /// Dose that a lamp was tested to give, in mJ/cm².
    LampDose(Count, 0.0, 1000.0, 40.0);
    /// Flow at which a lamp was tested.
    LampFlow(Rate, 0.0, 10_000.0, 0.0);
    /// Transmittance of the water with which a lamp was tested.
    LampClarity(Share, 0.01, 1.0, 0.7);
    /// Transmittance of the water at a lamp.
    WaterClarity(Share, 0.01, 1.0, 0.7);
    /// Most water that flows through the barriers of a tap at once.
    BusiestFlow(Rate, 0.1, 10_000.0, 30.0);
    /// What happens when a lamp has no power.
    LampPower(Choice, 0.0, 1.0, 0.0);
    /// Where chlorine is put in.
    DosedWhere(Choice, 0.0, 1.0, 0.0);
    /// Free chlorine that is left, in mg/L.
    Residual(Count, 0.0, 20.0, 0.0);
    /// Volume in which chlorine acts.
    ContactVolume(Volume, 0.0, 1_000_000.0, 0.0);
    /// Baffling factor of a contact tank.
    Baffling(Count, 0.05, 1.0, 0.1);
    /// Hours that dosed water stands before use.
    StandsFor(Hours, 0.0, 240.0, 0.5);
    /// Acidity of the water.
    WaterPh(Count, 0.0, 14.0, 8.0);
    /// Minutes that water is boiled.
    BoilMinutes(Count, 0.0, 120.0, 1.0);
    /// What chlorine is put in for.
    DosePurpose(Choice, 0.0, 2.0, 1.0);
    /// Which chlorine there is.
    Stock(Choice, 0.0, 5.0, 1.0);
    /// How old it is.
    StockAge(Days, 0.0, 3650.0, 0.0);
    /// Temperature at which it stood.
    StockTemperature(Temperature, -20.0, 60.0, 25.0);
    /// Water that is dosed.
    DosedWater(Volume, 0.0, 10_000_000.0, 0.0);
    /// Whether lead is on a roof.
    LeadFlashing(Choice, 0.0, 2.0, 0.0);
    /// Whether a roof is of asbestos cement.
    Asbestos(Choice, 0.0, 2.0, 0.0);
    /// Whether treated timber is on a roof.
    TreatedTimber(Choice, 0.0, 2.0, 0.0);
    /// Whether a roof has fresh or unfit paint.
    FreshPaint(Choice, 0.0, 2.0, 0.0);
    /// Whether a flue stands on a roof.
    Flue(Choice, 0.0, 2.0, 0.0);
    /// Whether birds, bats or branches are over a roof.
    Droppings(Choice, 0.0, 2.0, 0.0);
    /// Whether spray drifts over a roof.
    Spray(Choice, 0.0, 2.0, 0.0);

    /// What a portable tank holds.
    PortableVolume(Volume, 0.1, 100_000.0, 100.0);
    /// People who live on a portable tank.
    Travellers(Count, 1.0, 1000.0, 2.0);
    /// What they do with its water: drink, cook, wash at the least, wash, a figure of their own.
    CarriedFor(Choice, 0.0, 4.0, 3.0);
    /// Water for each of them, if the figure is their own.
    CarriedEach(Flow, 0.1, 1000.0, 15.0);
    /// Days that it is to last.
    TripDays(Days, 0.1, 365.0, 3.0);
    /// What may be loaded or towed; 0 where nobody looked it up.
    MayCarry(Mass, 0.0, 1_000_000.0, 0.0);
    /// Where a use's taps are: in the house, in one of three outbuildings.
    Building(Choice, 0.0, 3.0, 0.0);
    /// Length of pipe from the store that house and outbuilding share.
    SharedLength(Length, 0.0, 5000.0, 0.0);
    /// Its inside diameter.
    SharedBore(Bore, 0.005, 1.0, 0.05);
}

/// A detail that was entered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Entered {
    /// The part that it belongs to; none for the site.
    pub of: Option<PartId>,
    /// Which.
    pub detail: Detail,
    /// Its value, in the unit that its kind is kept in.
    pub value: f64,
}

/// The details that were entered.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Details(pub Vec<Entered>);

impl Details {
    /// What was entered, if it was and is within its range.
    pub fn get(&self, of: Option<PartId>, detail: Detail) -> Option<f64> {
        let entered = self.0.iter().find(|entered| entered.of == of && entered.detail == detail)?;
        detail.row().range.holds(entered.value).then_some(entered.value)
    }

    /// Whether a tank's taps are supplied by a pump: where it was said so, or something of its pump was entered.
    pub fn is_pumped(&self, tank: PartId) -> bool {
        let of_pump = Detail::PumpHeight as usize..=Detail::BatteryVolts as usize;
        let is_of_pump = |entered: &Entered| entered.of == Some(tank) && of_pump.contains(&(entered.detail as usize));
        let said = self.get(Some(tank), Detail::SuppliedBy);
        said.map_or_else(|| self.0.iter().any(is_of_pump), |by| by > 0.5)
    }

    /// Enters a value; none goes back to the usual one.
    ///
    /// # Errors
    /// [`EditError::DetailOutOfRange`]; nothing is changed then.
    pub fn set(&mut self, of: Option<PartId>, detail: Detail, value: Option<f64>) -> Result<(), EditError> {
        if value.is_some_and(|value| !detail.row().range.holds(value)) {
            return Err(EditError::DetailOutOfRange(detail));
        }
        self.0.retain(|entered| entered.of != of || entered.detail != detail);
        self.0.extend(value.map(|value| Entered { of, detail, value }));
        Ok(())
    }

    /// Forgets a part that is gone.
    pub(super) fn forget(&mut self, part: PartId) {
        self.0.retain(|entered| entered.of != Some(part));
    }

    /// Gives a copy of a part the details of the part.
    pub(super) fn copy(&mut self, part: PartId, copy: PartId) {
        let own: Vec<Entered> = self.0.iter().filter(|entered| entered.of == Some(part)).copied().collect();
        self.0.extend(own.into_iter().map(|entered| Entered { of: Some(copy), ..entered }));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn usual_values_are_within_their_ranges() {
        for detail in Detail::ALL {
            let row = detail.row();
            assert!(row.range.holds(row.usual), "{detail:?}");
            assert_eq!(ROWS[*detail as usize], row);
        }
    }

    #[test]
    fn a_refused_value_changes_nothing_and_none_goes_back() {
        let mut details = Details::default();
        let of = Some(PartId(4));
        assert_eq!(details.set(of, Detail::Downspout, Some(0.1)), Ok(()));
        let before = details.clone();
        for bad in [f64::NAN, -1.0, 9.0] {
            assert_eq!(
                details.set(of, Detail::Downspout, Some(bad)),
                Err(EditError::DetailOutOfRange(Detail::Downspout))
            );
        }
        assert_eq!(details, before);
        details.copy(PartId(4), PartId(5));
        details.forget(PartId(4));
        assert_eq!(details.get(of, Detail::Downspout), None);
        assert_eq!(details.get(Some(PartId(5)), Detail::Downspout), Some(0.1));
        assert_eq!(details.set(Some(PartId(5)), Detail::Downspout, None), Ok(()));
        assert_eq!(details, Details::default());
    }
}

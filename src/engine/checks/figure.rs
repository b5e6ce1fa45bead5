//! What checks know and find, each with its kind.

use crate::quantity::Kind;

/// Makes the enum with the kind of each.
macro_rules! figures {
    ($($(#[$doc:meta])* $name:ident: $kind:ident;)*) => {
        /// A quantity that a check knows or finds.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Figure { $($(#[$doc])* $name),* }

        impl Figure {
            /// Its kind.
            pub const fn kind(self) -> Kind {
                match self { $(Figure::$name => Kind::$kind),* }
            }
        }
    };
}

figures! {
    /// Plan area of roof that runs to a feed.
    RoofArea: Area;
    /// First-flush volume.
    FlushVolume: Volume;
    /// Volume wanted for the dirt of the roof.
    FlushWanted: Volume;
    /// By the least that the Texas manual names.
    FlushTexasLeast: Volume;
    /// By the most that the Texas manual recommends.
    FlushTexasMost: Volume;
    /// For a roof with little dirt.
    FlushLittleDirt: Volume;
    /// For a roof with much dirt.
    FlushMuchDirt: Volume;
    /// Depth on the roof that the diverter takes.
    FlushDepth: Depth;
    /// Inside diameter of a chamber.
    ChamberBore: Bore;
    /// Height of a chamber as it is.
    ChamberHeight: Length;
    /// Length of chamber wanted.
    ChamberWanted: Length;
    /// Diameter of the slow-release hole.
    HoleBore: Bore;
    /// Hole that empties in the wanted time.
    HoleWanted: Bore;
    /// Time in which a diverter empties.
    DrainTime: Hours;
    /// Time wanted.
    DrainWanted: Hours;
    /// Days between emptyings by hand.
    EmptiedEvery: Days;
    /// How long it rains on a rain day.
    StormHours: Hours;
    /// Water lost through the hole in a storm.
    HoleLoss: Volume;
    /// Water kept from the tank in a year.
    DivertedAYear: Volume;
    /// Water used in a year with the diverter.
    UsedWith: Volume;
    /// Water used in a year without.
    UsedWithout: Volume;
    /// Dry days in a year with the diverter.
    DryDaysWith: Days;
    /// Dry days in a year without.
    DryDaysWithout: Days;
    /// What a gutter carries to an outlet.
    GutterFlow: Rate;
    /// What it would carry short and level.
    GutterLevel: Rate;
    /// By how much length and fall change that.
    GutterFactor: Count;
    /// What the code's table gives a half-round gutter.
    GutterTable: Rate;
    /// What one gutter outlet passes.
    OutletFlow: Rate;
    /// What one upright pipe carries.
    LeaderFlow: Rate;
    /// What the code's table gives an upright pipe.
    LeaderTable: Rate;
    /// What all downspouts carry.
    DownspoutFlow: Rate;
    /// How many downspouts are wanted.
    DownspoutsWanted: Count;
    /// Bore by the rule of a square inch for a hundred square feet.
    RuleBore: Bore;
    /// What a screen passes.
    ScreenFlow: Rate;
    /// Height of a tank's rim over its overflow.
    Freeboard: Length;
    /// What an overflow lets out.
    OverflowFlow: Rate;
    /// What can come into a tank.
    ComesIn: Rate;
    /// Air between the filling pipe and the overflow.
    AirGap: Bore;
    /// Water surface of the first tank.
    FirstSurface: Area;
    /// Water surface of the second tank.
    SecondSurface: Area;
    /// Flow through a trunk line.
    TrunkFlow: Rate;
    /// Head lost by Darcy-Weisbach.
    DarcyLoss: Length;
    /// Head lost by Hazen-Williams.
    HazenLoss: Length;
    /// Time in which two tanks even out.
    LevelTime: Hours;
    /// Speed of the water.
    WaterSpeed: Speed;
    /// Difference of level that drawing makes.
    LevelsApart: Bore;
    /// Fixture units.
    FixtureUnits: Count;
    /// Most that is drawn at once.
    PeakFlow: Rate;
    /// Elevation of a tank's outlet.
    LowestLevel: Length;
    /// Elevation of a tank's overflow.
    HighestLevel: Length;
    /// Height that water is lifted.
    StaticHead: Length;
    /// Flow at the duty point.
    DutyFlow: Rate;
    /// Head at the duty point.
    DutyHead: Length;
    /// Pressure at a tap.
    TapPressure: Pressure;
    /// Pressure at a tap with clean filters.
    TapClean: Pressure;
    /// Pressure at a tap just before the pump starts.
    TapStarting: Pressure;
    /// Pressure at a tap with the tank full.
    TapFull: Pressure;
    /// Pressure at a tap that is shut.
    TapStatic: Pressure;
    /// Flow of a pipe with nothing at its end.
    OpenPipe: Rate;
    /// Height of a pump over the water.
    SuctionLift: Length;
    /// Net positive suction head.
    Npsh: Length;
    /// What a vessel gives between two starts.
    Drawdown: Volume;
    /// Water in a day.
    DailyUse: Flow;
    /// Head that a pump works against.
    PumpHead: Length;
    /// Energy for a day's water.
    EnergyADay: Energy;
    /// Panel for that.
    Panel: Power;
    /// Battery for the wanted days.
    Battery: Energy;
    /// The same in ampere hours.
    AmpereHours: Count;
    /// Hours that a day's water takes.
    PumpHours: Hours;
    /// What a tank holds to its rim.
    Capacity: Volume;
    /// Weight of a full tank.
    FullMass: Mass;
    /// Weight of the pad.
    PadMass: Mass;
    /// Pressure on the soil.
    SoilPressure: Bearing;
    /// Velocity pressure of the wind.
    WindPressure: Bearing;
    /// Force of the wind.
    WindForce: Force;
    /// Head that the pipes ask for where a pump runs beyond its curve.
    PipesAsk: Length;
    /// What the inlets of a tank carry.
    InletsCarry: Rate;
    /// Suction of the wind on a lid.
    WindLift: Force;
    /// Weight under which a tank slides.
    SlidesUnder: Mass;
    /// Weight under which a tank tips.
    TipsUnder: Mass;
    /// Water that holds an empty tank in the wind.
    HoldingLitres: Volume;
    /// Upward pull on one anchor.
    AnchorPull: Force;
    /// Sideways load of one anchor.
    AnchorShear: Force;
    /// What stands in a tank today.
    ContentNow: Volume;
    /// Depth of a tank's floor below the ground.
    FloorBelow: Length;
    /// Floor of a tank over the ground.
    FloorAbove: Length;
    /// Uplift of groundwater.
    Uplift: Force;
    /// What holds a tank down.
    HeldDown: Force;
    /// Water that holds a buried tank down.
    UpliftLitres: Volume;
    /// Concrete that holds a buried tank down.
    ConcreteWanted: Mass;
    /// What a storm brings.
    StormLitres: Volume;
    /// At what rate.
    StormRate: Rate;
    /// When a diverter is full.
    FlushFull: Hours;
    /// Room in a store today.
    Headroom: Volume;
    /// When a store is full.
    FullAfter: Hours;
    /// What of a storm stays in a tank.
    StormHere: Volume;
    /// What spills in a storm.
    SpillLitres: Volume;
    /// At what rate.
    SpillRate: Rate;
    /// Bacteria, log that are proven.
    LogBacteria: Count;
    /// Viruses, log that are proven.
    LogViruses: Count;
    /// Protozoa, log that are proven.
    LogProtozoa: Count;
    /// What a tap draws in a mean day.
    LitresADay: Flow;
    /// Lasts.
    CartridgeLasts: Days;
    /// Pressure allowance used up.
    Clogged: Share;
    /// Turbidity by the last test, NTU.
    Turbidity: Count;
    /// Lets through, by the last test.
    Clarity: Share;
    /// pH by the last test.
    Ph: Count;
    /// Free chlorine by the last test, mg/L.
    Residual: Count;
    /// Lamp changed, by the diary, ago.
    LampAge: Days;
    /// Dose that reaches the water, mJ/cm².
    LampDose: Count;
    /// Flow to hold it to at most.
    LampFlowAtMost: Rate;
    /// Chlorine acts for, minutes.
    ContactMinutes: Count;
    /// CT reached, mg·min/L.
    Ct: Count;
    /// CT for 4 log of viruses, mg·min/L.
    CtForViruses: Count;
    /// CT for 3 log of Giardia, mg·min/L.
    CtForGiardia: Count;
    /// Giardia, log.
    LogGiardia: Count;
    /// Rolling boil wanted, minutes.
    BoilWanted: Count;
    /// Strength that is left.
    StrengthLeft: Share;
    /// Stock to put in: millilitres of a liquid, grams of granules.
    StockAmount: Count;
    /// Chlorine to reach, mg/L.
    DoseOfStock: Count;
    /// What a portable tank holds.
    PortableVolume: Volume;
    /// Water for each person a day.
    PortableNeed: Flow;
    /// What each has a day, for the wanted days.
    PortableEach: Flow;
    /// Water for all of them, all days.
    PortableWanted: Volume;
    /// Days that a portable tank lasts.
    PortableDays: Days;
    /// What a store can give today.
    LiveNow: Volume;
    /// Share of that which one filling takes.
    FillShare: Share;
    /// Days on which the other uses draw as much.
    FillDays: Days;
    /// Share of what a use asks that it gets.
    GetsShare: Share;
    /// Share of what the other uses ask that they get, with it.
    OthersWith: Share;
    /// The same without it.
    OthersWithout: Share;
    /// Flow at the wanted pressure, nothing else drawing.
    OutFlow: Rate;
    /// The same while the house draws.
    OutFlowBoth: Rate;
    /// What the house draws.
    HouseFlow: Rate;
    /// Pressure at the house's tap, nothing else drawing.
    HouseAlone: Pressure;
    /// Pressure at the house's tap while the outbuilding draws.
    HouseBoth: Pressure;
    /// Pressure at the outbuilding's tap while the house draws.
    OutBoth: Pressure;
}

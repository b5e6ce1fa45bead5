//! What checks know and find, named.

use crate::engine::checks::Figure;

/// The label of a figure.
pub fn label(figure: Figure) -> &'static str {
    match figure {
        Figure::RoofArea => said!("Roof that runs here, in plan", "Techo que llega aquí, en planta"),
        Figure::FlushVolume => said!("First flush", "Primeras aguas"),
        Figure::FlushWanted => said!("First flush wanted", "Primeras aguas que se piden"),
        Figure::FlushTexasLeast => {
            said!(
                "10\u{a0}gal for 1,000 ft² (Texas manual, the least)",
                "10\u{a0}gal por 1000 ft² (manual de Texas, lo mínimo)"
            )
        }
        Figure::FlushTexasMost => {
            said!(
                "2\u{a0}gal for 100 ft² (Texas manual, the most)",
                "2\u{a0}gal por 100 ft² (manual de Texas, lo máximo)"
            )
        }
        Figure::FlushLittleDirt => said!("0.5\u{a0}mm (HB 230, little dirt)", "0,5\u{a0}mm (HB 230, poca suciedad)"),
        Figure::FlushMuchDirt => said!("2\u{a0}mm (HB 230, much dirt)", "2\u{a0}mm (HB 230, mucha suciedad)"),
        Figure::FlushDepth => said!("Depth taken off the roof", "Lámina que se quita del techo"),
        Figure::ChamberBore => said!("Inside diameter of the chamber", "Diámetro interior de la cámara"),
        Figure::ChamberHeight => said!("Height of the full chamber", "Altura de la cámara llena"),
        Figure::ChamberWanted => {
            said!("Chamber of this diameter, length wanted", "Cámara de este diámetro, largo que se pide")
        }
        Figure::HoleBore => said!("Slow-release hole", "Orificio de vaciado lento"),
        Figure::HoleWanted => said!("Hole for the wanted time", "Orificio para el tiempo que se pide"),
        Figure::DrainTime => said!("Empty after", "Vacío después de"),
        Figure::DrainWanted => said!("Wanted within", "Se pide en"),
        Figure::EmptiedEvery => said!("Emptied by hand every", "Se vacía a mano cada"),
        Figure::StormHours => said!("Rain lasts, on a rain day", "La lluvia dura, en un día de lluvia"),
        Figure::HoleLoss => said!("Lost through the hole in a storm", "Se pierde por el orificio en una tormenta"),
        Figure::DivertedAYear => said!("Sent aside in a year", "Se aparta en un año"),
        Figure::UsedWith => said!("Used in a year, with it", "Se usa en un año, con él"),
        Figure::UsedWithout => said!("Used in a year, without it", "Se usa en un año, sin él"),
        Figure::DryDaysWith => said!("Dry days in a year, with it", "Días de escasez en un año, con él"),
        Figure::DryDaysWithout => said!("Dry days in a year, without it", "Días de escasez en un año, sin él"),
        Figure::FixtureUnits => said!("Fixture units", "Unidades de consumo"),
        Figure::PeakFlow => said!("Peak flow", "Caudal máximo"),
        Figure::LowestLevel => said!("Lowest level", "Nivel más bajo"),
        Figure::HighestLevel => said!("Highest level", "Nivel más alto"),
        Figure::StaticHead => said!("Rise", "Subida"),
        Figure::DutyFlow => said!("Duty point, flow", "Punto de trabajo, caudal"),
        Figure::DutyHead => said!("Duty point, head", "Punto de trabajo, carga"),
        Figure::TapPressure => said!("Pressure at the tap", "Presión en el grifo"),
        Figure::TapClean => said!("With clean filters", "Con filtros limpios"),
        Figure::TapStarting => said!("Just before the pump starts", "Justo antes de arrancar la bomba"),
        Figure::TapFull => said!("Tank full", "Tanque lleno"),
        Figure::TapStatic => said!("Tap shut, tank low", "Grifo cerrado, tanque bajo"),
        Figure::OpenPipe => said!("Open pipe, tank low", "Tubo abierto, tanque bajo"),
        Figure::SuctionLift => said!("Suction lift", "Altura de succión"),
        Figure::Npsh => said!("NPSH available", "NPSH disponible"),
        Figure::Drawdown => said!("Drawdown", "Volumen útil"),
        Figure::DailyUse => said!("Water a day", "Agua al día"),
        Figure::PumpHead => said!("Head", "Carga"),
        Figure::EnergyADay => said!("Energy a day", "Energía al día"),
        Figure::Panel => said!("Panel", "Panel"),
        Figure::Battery => said!("Battery", "Batería"),
        Figure::AmpereHours => said!("Battery, Ah", "Batería, Ah"),
        Figure::PumpHours => said!("Hours a day", "Horas al día"),
        Figure::Capacity => said!("Holds to the rim", "Capacidad hasta el borde"),
        Figure::FullMass => said!("Weight full", "Peso lleno"),
        Figure::PadMass => said!("Weight of the pad", "Peso de la base"),
        Figure::SoilPressure => said!("Pressure on the soil", "Presión sobre el suelo"),
        Figure::WindPressure => said!("Velocity pressure", "Presión dinámica"),
        Figure::WindForce => said!("Force of the wind", "Fuerza del viento"),
        Figure::SlidesUnder => said!("Slides if lighter than", "Se desliza si pesa menos de"),
        Figure::TipsUnder => said!("Tips if lighter than", "Vuelca si pesa menos de"),
        Figure::HoldingLitres => said!("Water that holds it", "Agua que lo sujeta"),
        Figure::AnchorPull => said!("Pull on an anchor, upwards", "Tirón de un anclaje, hacia arriba"),
        Figure::AnchorShear => said!("Load of an anchor, sideways", "Carga de un anclaje, de lado"),
        Figure::ContentNow => {
            said!("On this day of a middle year it holds", "En esta fecha de un año intermedio tiene")
        }
        Figure::FloorAbove => said!("Floor over the ground", "Fondo sobre el nivel del suelo"),
        Figure::FloorBelow => said!("Floor below the ground", "Fondo bajo el nivel del suelo"),
        Figure::Uplift => said!("Uplift", "Empuje hacia arriba"),
        Figure::HeldDown => said!("Holds it down", "Lo sujeta abajo"),
        Figure::UpliftLitres => said!("Water that holds it down", "Agua que lo sujeta abajo"),
        Figure::ConcreteWanted => said!("Concrete that holds it down", "Concreto que lo sujeta abajo"),
        Figure::StormLitres => said!("The storm brings", "La tormenta trae"),
        Figure::StormRate => said!("Rate", "Caudal"),
        Figure::FlushFull => said!("First flush is taken after", "Primeras aguas apartadas después de"),
        Figure::Headroom => {
            said!("Room on this day of a middle year", "Espacio libre en esta fecha de un año intermedio")
        }
        Figure::FullAfter => said!("Full after", "Lleno después de"),
        Figure::StormHere => said!("Of that stays in this tank", "De eso queda en este tanque"),
        Figure::SpillLitres => said!("Spills", "Rebosan"),
        Figure::SpillRate => said!("Spills at", "Rebosa a"),
        Figure::GutterFlow => said!("Gutter carries", "La canaleta lleva"),
        Figure::GutterLevel => said!("Short and level it would carry", "Corta y a nivel llevaría"),
        Figure::GutterFactor => said!("Factor for length and fall", "Factor por largo y pendiente"),
        Figure::GutterTable => said!("Code table, half-round", "Tabla de la norma, semicircular"),
        Figure::OutletFlow => said!("One outlet passes", "Una salida deja pasar"),
        Figure::LeaderFlow => said!("One upright pipe carries", "Un tubo vertical lleva"),
        Figure::LeaderTable => said!("Code table, upright pipe", "Tabla de la norma, tubo vertical"),
        Figure::DownspoutFlow => said!("All downspouts carry", "Todas las bajantes llevan"),
        Figure::DownspoutsWanted => said!("Downspouts wanted", "Bajantes que se piden"),
        Figure::RuleBore => said!("Bore by 1 in² for 100 ft²", "Diámetro según 1 in² por 100 ft²"),
        Figure::ScreenFlow => said!("Screen passes", "La malla deja pasar"),
        Figure::Freeboard => said!("Rim over the overflow", "Borde sobre el rebosadero"),
        Figure::OverflowFlow => said!("Overflow lets out", "El rebosadero deja salir"),
        Figure::ComesIn => said!("Can come in", "Puede entrar"),
        Figure::AirGap => said!("Air gap", "Separación de aire"),
        Figure::FirstSurface => said!("Surface of the first tank", "Superficie del primer tanque"),
        Figure::SecondSurface => said!("Surface of the second tank", "Superficie del segundo tanque"),
        Figure::TrunkFlow => said!("Flow through the line", "Caudal por la tubería"),
        Figure::DarcyLoss => said!("Head lost, Darcy-Weisbach", "Carga perdida, Darcy-Weisbach"),
        Figure::HazenLoss => said!("Head lost, Hazen-Williams", "Carga perdida, Hazen-Williams"),
        Figure::LevelTime => said!("Even after", "Niveles iguales después de"),
        Figure::WaterSpeed => said!("Speed of the water", "Velocidad del agua"),
        Figure::LevelsApart => said!("Levels apart", "Diferencia de niveles"),
        Figure::LogBacteria => said!("Bacteria, log that are proven", "Bacterias, log probados"),
        Figure::LogViruses => said!("Viruses, log that are proven", "Virus, log probados"),
        Figure::LogProtozoa => said!("Protozoa, log that are proven", "Protozoos, log probados"),
        Figure::LitresADay => said!("Drawn by this tap in a mean day", "Lo que toma este grifo en un día promedio"),
        Figure::CartridgeLasts => said!("Lasts", "Dura"),
        Figure::Clogged => said!("Pressure allowance used up", "Margen de presión gastado"),
        Figure::Turbidity => said!("Turbidity by the last test, NTU", "Turbidez según el último análisis, NTU"),
        Figure::Clarity => said!("Lets through, by the last test", "Deja pasar, según el último análisis"),
        Figure::Ph => said!("pH by the last test", "pH según el último análisis"),
        Figure::Residual => said!("Free chlorine by the last test, mg/L", "Cloro libre según el último análisis, mg/L"),
        Figure::LampAge => said!("Lamp changed, by the diary, ago", "Lámpara cambiada, según el diario, hace"),
        Figure::LampDose => said!("Dose that reaches the water, mJ/cm²", "Dosis que llega al agua, mJ/cm²"),
        Figure::LampFlowAtMost => said!("Flow to hold it to at most", "Caudal al que limitarla, como máximo"),
        Figure::ContactMinutes => said!("Chlorine acts for, minutes", "El cloro actúa durante, minutos"),
        Figure::Ct => said!("CT reached, mg·min/L", "CT alcanzado, mg·min/L"),
        Figure::CtForViruses => said!("CT for 4 log of viruses, mg·min/L", "CT para 4 log de virus, mg·min/L"),
        Figure::CtForGiardia => said!("CT for 3 log of Giardia, mg·min/L", "CT para 3 log de Giardia, mg·min/L"),
        Figure::LogGiardia => said!("Giardia, log", "Giardia, log"),
        Figure::BoilWanted => said!("Rolling boil wanted, minutes", "Hervor fuerte que se pide, minutos"),
        Figure::StrengthLeft => said!("Strength that is left", "Concentración que queda"),
        Figure::StockAmount => said!("Stock to put in, mL or g", "Producto que se pone, mL o g"),
        Figure::DoseOfStock => said!("Chlorine to reach, mg/L", "Cloro que se busca, mg/L"),
        Figure::PortableVolume => said!("Portable tank holds", "Capacidad del tanque portátil"),
        Figure::PortableNeed => said!("Wanted for each, a day", "Se pide para cada persona, al día"),
        Figure::PortableEach => said!("Each has, on so many days", "Cada persona tiene, en esos días"),
        Figure::PortableWanted => said!("Wanted for all", "Se pide para todas"),
        Figure::PortableDays => said!("Lasts", "Dura"),
        Figure::LiveNow => said!(
            "On this day of a middle year the store can give",
            "En esta fecha de un año intermedio el depósito puede dar",
        ),
        Figure::FillShare => said!("One filling takes of it", "Un llenado toma de ello"),
        Figure::FillDays => said!("The other uses draw as much in", "Los demás usos sacan otro tanto en"),
        Figure::GetsShare => said!("It gets, of what it asks", "Recibe, de lo que pide"),
        Figure::OthersWith => said!("The others get of theirs, with it", "Los demás reciben de lo que piden, con él"),
        Figure::OthersWithout => {
            said!("The others get of theirs, without it", "Los demás reciben de lo que piden, sin él")
        }
        Figure::OutFlow => said!("Flow at the wanted pressure, alone", "Caudal con la presión que se pide, solo"),
        Figure::OutFlowBoth => said!("The same while the house draws", "Lo mismo mientras la casa toma agua"),
        Figure::HouseFlow => said!("The house draws", "La casa toma"),
        Figure::HouseAlone => said!("Tap of the house, alone", "Grifo de la casa, solo"),
        Figure::HouseBoth => said!("Tap of the house, both drawing", "Grifo de la casa, ambos en uso"),
        Figure::OutBoth => said!("Its tap, both drawing", "Su grifo, ambos en uso"),
    }
}

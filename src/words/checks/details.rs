//! Details of parts and of the site: labels, choices, and where the usual values come from.

use crate::language::Phrase;
use crate::site::details::Detail;
use crate::site::part::PartId;
use crate::site::system::System;

/// The label of a detail.
pub fn label(detail: Detail) -> &'static str {
    match detail {
        Detail::DesignIntensity => said!("Design rain", "Lluvia de diseño"),
        Detail::StormDepth => said!("Rain of the storm", "Lluvia de la tormenta"),
        Detail::StormDuration => said!("The storm lasts", "La tormenta dura"),
        Detail::Altitude => said!("Height over the sea", "Altura sobre el mar"),
        Detail::WaterTemperature => said!("Temperature of the water", "Temperatura del agua"),
        Detail::WindSpeed => said!("Wind, three-second gust", "Viento, ráfaga de tres segundos"),
        Detail::Exposure => said!("Surroundings", "Entorno"),
        Detail::Groundwater => {
            said!("Groundwater or flood, below the ground", "Agua subterránea o inundación, bajo el suelo")
        }
        Detail::Soil => said!("Soil", "Suelo"),
        Detail::Pitch => said!("Pitch", "Inclinación"),
        Detail::Dirt => said!("Roof is", "El techo está"),
        Detail::DrainWithin => said!("Empty again within", "Vacío otra vez en"),
        Detail::GutterShape => said!("Gutter", "Canaleta"),
        Detail::GutterWidth => said!("Gutter width at the top", "Ancho de la canaleta arriba"),
        Detail::GutterDepth => said!("Gutter depth", "Profundidad de la canaleta"),
        Detail::GutterSole => said!("Gutter width at the bottom", "Ancho de la canaleta en el fondo"),
        Detail::GutterSlope => said!("Gutter fall", "Pendiente de la canaleta"),
        Detail::GutterLength => said!("Gutter length to one outlet", "Largo de la canaleta hasta una salida"),
        Detail::Downspout => said!("Downspout, inside diameter", "Bajante, diámetro interior"),
        Detail::Downspouts => said!("Downspouts", "Bajantes"),
        Detail::Strainer => said!("Strainer in the outlet", "Colador en la salida"),
        Detail::ScreenBore => said!("Screen, diameter", "Malla, diámetro"),
        Detail::ScreenOpen => said!("Open share of the mesh", "Parte abierta de la malla"),
        Detail::ScreenBlocked => said!("Share covered by leaves", "Parte cubierta por hojas"),
        Detail::InletBore => said!("Inlet, inside diameter", "Entrada, diámetro interior"),
        Detail::OverflowBore => said!("Overflow pipe, inside diameter", "Rebosadero, diámetro interior"),
        Detail::AirGap => said!("Air gap over the overflow", "Separación de aire sobre el rebosadero"),
        Detail::EmptyMass => said!("Weight empty", "Peso vacío"),
        Detail::PadArea => said!("Pad area", "Área de la base"),
        Detail::PadThickness => said!("Pad thickness", "Espesor de la base"),
        Detail::Friction => said!("Friction on the pad", "Fricción sobre la base"),
        Detail::Anchors => said!("Anchors", "Anclajes"),
        Detail::SoilCover => said!("Soil over the top", "Tierra encima"),
        Detail::HoldDown => said!("Concrete cast to it", "Concreto unido a él"),
        Detail::PipeBore => said!("Pipe, inside diameter", "Tubo, diámetro interior"),
        Detail::PipeLength => said!("Pipe length", "Largo del tubo"),
        Detail::PipeMaterial => said!("Pipe of", "Tubo de"),
        Detail::Elbows => said!("Bends", "Codos"),
        Detail::Valves => said!("Valves", "Válvulas"),
        Detail::LevelDifference => said!("Difference of level", "Diferencia de nivel"),
        Detail::FarDraw => said!("Drawn at one end", "Se saca en un extremo"),
        Detail::SuppliedBy => said!("Water comes by", "El agua llega por"),
        Detail::PumpHeight => said!("Pump, over ground level", "Bomba, sobre el nivel del suelo"),
        Detail::SuctionBore => said!("Suction pipe, inside diameter", "Tubo de succión, diámetro interior"),
        Detail::SuctionLength => said!("Suction pipe length", "Largo del tubo de succión"),
        Detail::HighestTap => said!("Highest tap, over ground level", "Grifo más alto, sobre el nivel del suelo"),
        Detail::TapPressure => said!("Pressure wanted at the tap", "Presión que se pide en el grifo"),
        Detail::FilterClean => said!("Lost in clean filters", "Se pierde en filtros limpios"),
        Detail::FilterFouled => said!("Lost in filters due for change", "Se pierde en filtros por cambiar"),
        Detail::ShutHead => said!("Pump head at no flow", "Carga de la bomba sin caudal"),
        Detail::MidFlow => said!("Flow, middle of the curve", "Caudal, mitad de la curva"),
        Detail::MidHead => said!("Head there", "Carga allí"),
        Detail::EndFlow => said!("Flow, end of the curve", "Caudal, final de la curva"),
        Detail::EndHead => said!("Head at the end", "Carga al final"),
        Detail::PumpEfficiency => said!("Electricity that reaches the water", "Electricidad que llega al agua"),
        Detail::NpshRequired => said!("NPSH that the pump requires", "NPSH que requiere la bomba"),
        Detail::Vessel => said!("Pressure vessel", "Tanque de presión"),
        Detail::CutIn => said!("Pump starts at", "La bomba arranca a"),
        Detail::CutOut => said!("Pump stops at", "La bomba para a"),
        Detail::StartsAnHour => said!("Starts an hour allowed", "Arranques por hora permitidos"),
        Detail::SunHours => said!("Full sun a day, poorest month", "Sol pleno al día, el mes con menos sol"),
        Detail::Autonomy => said!("Battery bridges", "La batería cubre"),
        Detail::Discharge => said!("Share of the battery to draw", "Parte de la batería que se gasta"),
        Detail::SolarYield => said!("Sun's power that arrives", "Parte de la potencia del sol que llega"),
        Detail::BatteryVolts => said!("Battery voltage", "Voltaje de la batería"),
        Detail::TapHeight => said!("Tap, over ground level", "Grifo, sobre el nivel del suelo"),
        Detail::TapFlow => said!("Flow wanted", "Caudal que se pide"),
        Detail::Toilets => said!("Toilets", "Inodoros"),
        Detail::Basins => said!("Wash basins", "Lavamanos"),
        Detail::Showers => said!("Showers", "Duchas"),
        Detail::Baths => said!("Baths", "Tinas de baño"),
        Detail::Sinks => said!("Kitchen sinks", "Fregaderos de cocina"),
        Detail::Dishwashers => said!("Dishwashers", "Lavavajillas"),
        Detail::Washers => said!("Washing machines", "Lavadoras"),
        Detail::GardenTaps => said!("Garden taps", "Grifos del huerto"),
        Detail::Proof => said!("Proof against germs", "Certificado contra gérmenes"),
        Detail::CertifiedBacteria => said!("Bacteria, log", "Bacterias, log"),
        Detail::CertifiedViruses => said!("Viruses, log", "Virus, log"),
        Detail::CertifiedProtozoa => said!("Protozoa (cysts), log", "Protozoos (quistes), log"),
        Detail::CertifiedMetals => said!("Certified against lead and metals", "Certificado contra plomo y metales"),
        Detail::CertifiedOrganics => {
            said!("Certified against organic substances", "Certificado contra sustancias orgánicas")
        }
        Detail::RatedLitres => said!("Rated for", "Capacidad nominal"),
        Detail::FilterNow => said!("Lost in it now", "Se pierde en él ahora"),
        Detail::LampClass => said!("Class", "Clase"),
        Detail::LampDose => said!("Tested dose, mJ/cm²", "Dosis ensayada, mJ/cm²"),
        Detail::LampFlow => said!("Tested at a flow of", "Ensayada con un caudal de"),
        Detail::LampClarity => said!("Tested with water that lets through", "Ensayada con agua que deja pasar"),
        Detail::WaterClarity => said!("This water lets through", "Esta agua deja pasar"),
        Detail::BusiestFlow => said!("Flow at its busiest", "Caudal en el momento de más uso"),
        Detail::LampPower => said!("Without power", "Sin corriente"),
        Detail::DosedWhere => said!("Put in", "Se pone"),
        Detail::Residual => said!("Free chlorine left, mg/L", "Cloro libre que queda, mg/L"),
        Detail::ContactVolume => said!("Contact tank and pipe hold", "Capacidad del tanque de contacto y el tubo"),
        Detail::Baffling => said!("Baffling factor", "Factor de deflectores"),
        Detail::StandsFor => said!("Stands for", "Reposa"),
        Detail::WaterPh => said!("pH", "pH"),
        Detail::BoilMinutes => said!("Rolling boil, minutes", "Hervor fuerte, minutos"),
        Detail::DosePurpose => said!("For", "Para"),
        Detail::Stock => said!("With", "Con"),
        Detail::StockAge => said!("Its age", "Su antigüedad"),
        Detail::StockTemperature => said!("Stood at", "Guardado a"),
        Detail::DosedWater => said!("Water to dose", "Agua que se dosifica"),
        Detail::LeadFlashing => said!("Lead flashing, lead nails or solder", "Tapajuntas, clavos o soldadura de plomo"),
        Detail::Asbestos => said!("Asbestos cement", "Asbesto-cemento"),
        Detail::TreatedTimber => said!("Treated timber, pitch or tar", "Madera tratada, brea o alquitrán"),
        Detail::FreshPaint => {
            said!("Fresh paint, bitumen, an unknown coating", "Pintura fresca, asfalto, un revestimiento desconocido")
        }
        Detail::Flue => said!("A flue of a wood or coal stove", "Chimenea de una estufa de leña o carbón"),
        Detail::Droppings => said!("Birds, bats, overhanging branches", "Aves, murciélagos, ramas encima"),
        Detail::Spray => said!("Spray or dust that drifts over", "Fumigación o polvo que trae el viento"),
        Detail::PortableVolume => said!("Portable tank holds", "Capacidad del tanque portátil"),
        Detail::Travellers => said!("People", "Personas"),
        Detail::CarriedFor => said!("Its water is for", "Su agua es para"),
        Detail::CarriedEach => said!("Own figure, for each person", "Cifra propia, para cada persona"),
        Detail::TripDays => said!("It is to last", "Debe durar"),
        Detail::MayCarry => said!("May be loaded or towed", "Se puede cargar o remolcar"),
        Detail::Building => said!("Its taps are", "Sus grifos están"),
        Detail::SharedLength => {
            said!("Pipe from the store that both share, length", "Tubo desde el depósito que ambos comparten, largo")
        }
        Detail::SharedBore => {
            said!("Pipe that both share, inside diameter", "Tubo que ambos comparten, diámetro interior")
        }
    }
}

/// The label of a detail on the sheet of a part: whose it is, where it is another's.
pub fn label_of(detail: Detail, of: Option<PartId>, part: PartId, system: &System) -> String {
    match of {
        None => say!("{label} (for the whole site)", "{label} (para todo el sitio)", label = label(detail)),
        Some(other) if other != part => format!("{}: {}", system.name_of(other), label(detail)),
        Some(_) => label(detail).to_owned(),
    }
}

/// What there is to choose from, in order; none for a number.
pub const fn options(detail: Detail) -> &'static [Phrase] {
    match detail {
        Detail::Exposure => &[
            phrase!("Town, suburb or wood (B)", "Ciudad, suburbio o bosque (B)"),
            phrase!("Open country (C)", "Campo abierto (C)"),
            phrase!("Flat shore (D)", "Costa llana (D)"),
        ],
        Detail::Soil => &[
            phrase!("Bedrock", "Roca firme"),
            phrase!("Layered rock", "Roca en capas"),
            phrase!("Sandy gravel", "Grava arenosa"),
            phrase!("Sand", "Arena"),
            phrase!("Clay or silt", "Arcilla o limo"),
        ],
        Detail::Pitch => &[
            phrase!("Up to 3 in 12", "Hasta 3 en 12"),
            phrase!("4 or 5 in 12", "4 o 5 en 12"),
            phrase!("6 to 8 in 12", "De 6 a 8 en 12"),
            phrase!("9 to 11 in 12", "De 9 a 11 en 12"),
            phrase!("12 in 12 and more", "12 en 12 y más"),
        ],
        Detail::Dirt => &[
            phrase!("Clean: no trees, no birds", "Limpio: sin árboles ni aves"),
            phrase!("As roofs are", "Como suelen estar los techos"),
            phrase!(
                "Dirty: trees, birds, dust, long dry spells",
                "Sucio: árboles, aves, polvo, largas rachas sin lluvia",
            ),
        ],
        Detail::GutterShape => &[
            phrase!("Half-round", "Semicircular"),
            phrase!("Box", "De cajón"),
            phrase!("Ogee or other trapezoid", "De gola u otro trapecio"),
        ],
        Detail::Strainer => &[phrase!("None", "Ninguno"), phrase!("Yes", "Sí")],
        Detail::PipeMaterial => &[
            phrase!("Plastic", "Plástico"),
            phrase!("Copper", "Cobre"),
            phrase!("Steel, galvanized", "Acero galvanizado"),
            phrase!("Old iron", "Hierro viejo"),
            phrase!("Concrete", "Concreto"),
        ],
        Detail::SuppliedBy => &[phrase!("Gravity", "Gravedad"), phrase!("A pump", "Una bomba")],
        Detail::Proof => &[
            phrase!("None", "Ninguno"),
            phrase!("Certified for cysts (NSF/ANSI 53 or 58)", "Certificado para quistes (NSF/ANSI 53 o 58)"),
            phrase!(
                "Certified as a purifier (NSF P231, EPA 1987)",
                "Certificado como purificador (NSF P231, EPA 1987)"
            ),
            phrase!("Two stars of WHO", "Dos estrellas de la OMS"),
            phrase!("Three stars of WHO", "Tres estrellas de la OMS"),
            phrase!("Its own certificate, in log", "Su propio certificado, en log"),
        ],
        Detail::CertifiedMetals => &[phrase!("No, or not known", "No, o no se sabe"), phrase!("Yes", "Sí")],
        Detail::CertifiedOrganics => &[phrase!("No, or not known", "No, o no se sabe"), phrase!("Yes", "Sí")],
        Detail::LampClass => &[
            phrase!("Not known", "No se sabe"),
            phrase!("NSF/ANSI 55 class A, 40 mJ/cm²", "NSF/ANSI 55 clase A, 40 mJ/cm²"),
            phrase!("NSF/ANSI 55 class B, 16 mJ/cm²", "NSF/ANSI 55 clase B, 16 mJ/cm²"),
            phrase!("Another tested dose", "Otra dosis ensayada"),
        ],
        Detail::LampPower => &[
            phrase!("Water flows on, untreated", "El agua sigue pasando, sin tratar"),
            phrase!("A valve shuts the water off", "Una válvula corta el agua"),
        ],
        Detail::DosedWhere => &[
            phrase!("In the pipe, before a contact tank", "En el tubo, antes de un tanque de contacto"),
            phrase!("In the tank, and left to stand", "En el tanque, y se deja reposar"),
        ],
        Detail::DosePurpose => &[
            phrase!("Keeping a residual, 1\u{a0}mg/L", "Mantener cloro residual, 1\u{a0}mg/L"),
            phrase!("Disinfecting after contamination, 5\u{a0}mg/L", "Desinfectar tras una contaminación, 5\u{a0}mg/L"),
            phrase!(
                "Shock for pipes or a cleaned tank, 50\u{a0}mg/L",
                "Choque en tubos o en un tanque ya lavado, 50\u{a0}mg/L"
            ),
        ],
        Detail::Stock => &[
            phrase!("household bleach 5.25\u{a0}%", "cloro doméstico (blanqueador) 5,25\u{a0}%"),
            phrase!("household bleach 6\u{a0}%", "cloro doméstico (blanqueador) 6\u{a0}%"),
            phrase!("household bleach 8.25\u{a0}%", "cloro doméstico (blanqueador) 8,25\u{a0}%"),
            phrase!("liquid pool chlorine 12.5\u{a0}%", "cloro líquido para piscinas 12,5\u{a0}%"),
            phrase!("calcium hypochlorite 65\u{a0}%", "hipoclorito de calcio 65\u{a0}%"),
            phrase!("calcium hypochlorite 75\u{a0}%", "hipoclorito de calcio 75\u{a0}%"),
        ],
        Detail::CarriedFor => &[
            phrase!("Drinking and food", "Beber y comer"),
            phrase!("Drinking, food, cooking", "Beber, comer, cocinar"),
            phrase!("Drinking, cooking, washing at the least", "Beber, cocinar y lavar lo mínimo"),
            phrase!("Drinking, cooking, washing", "Beber, cocinar, lavar"),
            phrase!("A figure of our own", "Una cifra propia"),
        ],
        Detail::Building => &[
            phrase!("In the house", "En la casa"),
            phrase!("In an outbuilding", "En un edificio anexo"),
            phrase!("In a second outbuilding", "En un segundo anexo"),
            phrase!("In a third outbuilding", "En un tercer anexo"),
        ],
        Detail::LeadFlashing
        | Detail::Asbestos
        | Detail::TreatedTimber
        | Detail::FreshPaint
        | Detail::Flue
        | Detail::Droppings
        | Detail::Spray => {
            &[phrase!("Not answered yet", "Sin responder aún"), phrase!("No", "No"), phrase!("Yes", "Sí")]
        }
        _ => &[],
    }
}

/// Where the usual value of a detail comes from.
pub fn usual(detail: Detail) -> &'static str {
    match detail {
        Detail::DesignIntensity => said!(
            "Usual value; your code or weather service names the one for your place.",
            "Valor usual; tu norma o tu servicio meteorológico dice el de tu lugar.",
        ),
        Detail::SuppliedBy => {
            said!("Gravity until you say that there is a pump.", "Gravedad, mientras no digas que hay una bomba.")
        }
        Detail::WindSpeed => said!(
            "115 mph: ASCE 7-10 map away from hurricane coasts, from memory. Your code names yours.",
            "115 mph: mapa de ASCE 7-10 lejos de costas con huracanes, de memoria. Tu norma dice el tuyo.",
        ),
        Detail::Groundwater => said!(
            "Taken at the surface, as after long rain. A flood over the ground is negative.",
            "Se toma en la superficie, como después de mucha lluvia. Una inundación sobre el suelo es negativa.",
        ),
        Detail::Soil => said!(
            "The poorest class of the International Building Code, Table 1806.2.",
            "La clase más débil del International Building Code, tabla 1806.2.",
        ),
        Detail::Friction => said!(
            "0.30: low-cohesion soil, American Concrete Pipe Association Design Data 41.",
            "0,30: suelo de poca cohesión, American Concrete Pipe Association Design Data 41.",
        ),
        Detail::RatedLitres => said!("Not known: 0. Its leaflet names it.", "No se sabe: 0. Lo dice su folleto."),
        Detail::FilterNow => said!(
            "As when clean. Read the gauges before and after it with a tap open.",
            "Como limpio. Lee los manómetros antes y después de él con un grifo abierto.",
        ),
        Detail::LampFlow => said!(
            "Not known: 0. Its plate names the flow for its class.",
            "No se sabe: 0. Su placa dice el caudal para su clase.",
        ),
        Detail::LampClarity => said!(
            "70\u{a0}% of the light through 1\u{a0}cm: NSF/ANSI 55, from memory.",
            "70\u{a0}% de la luz a través de 1\u{a0}cm: NSF/ANSI 55, de memoria.",
        ),
        Detail::WaterClarity => said!(
            "70\u{a0}% of the light through 1\u{a0}cm, a poor value. A laboratory measures it (UVT).",
            "70\u{a0}% de la luz a través de 1\u{a0}cm, un valor bajo. Un laboratorio lo mide (UVT).",
        ),
        Detail::BusiestFlow => said!(
            "Usual value, no source. Time a bucket with all taps open.",
            "Valor usual, sin fuente. Cronometra un balde con todos los grifos abiertos.",
        ),
        Detail::Residual => said!(
            "Not measured: 0. A water test in the diary takes its place.",
            "Sin medir: 0. Un análisis de agua en el diario toma su lugar.",
        ),
        Detail::ContactVolume => said!("Not known: 0.", "No se sabe: 0."),
        Detail::Baffling => said!(
            "0.1: a plain tank. 0.3 poor, 0.5 average, 0.7 good baffles, 1 a long pipe (EPA).",
            "0,1: un tanque sencillo. Deflectores: 0,3 pobres, 0,5 medianos, 0,7 buenos. 1: un tubo largo (EPA).",
        ),
        Detail::StandsFor => said!("Half an hour at the least.", "Media hora como mínimo."),
        Detail::WaterPh => said!(
            "8, on the safe side. A water test in the diary takes its place.",
            "8, del lado seguro. Un análisis de agua en el diario toma su lugar.",
        ),
        Detail::BoilMinutes => {
            said!("1 minute: EPA and CDC near sea level.", "1 minuto: EPA y CDC cerca del nivel del mar.")
        }
        Detail::StockAge => said!("Fresh. Look for the date on the bottle.", "Fresco. Busca la fecha en la botella."),
        Detail::StockTemperature => {
            said!("25 °C (77 °F). Heat ages it faster.", "25 °C (77 °F). El calor lo envejece más rápido.")
        }
        Detail::DosedWater => said!(
            "What was read, or as full as it can get, joined as it is. Enter what is in it.",
            "Lo que se leyó, o lo más lleno que puede estar con sus uniones. Escribe lo que hay en él.",
        ),
        Detail::MayCarry => said!(
            "Not looked up: 0. The plate of trailer, rack or axle names it.",
            "Sin consultar: 0. Lo dice la placa del remolque, del portaequipaje o del eje.",
        ),
        Detail::SharedLength => said!(
            "None: each has its own pipe from the store.",
            "Ninguno: cada uno tiene su propio tubo desde el depósito.",
        ),
        Detail::Proof
        | Detail::CertifiedMetals
        | Detail::CertifiedOrganics
        | Detail::Building
        | Detail::CarriedFor
        | Detail::LampClass
        | Detail::LampPower
        | Detail::DosedWhere
        | Detail::DosePurpose
        | Detail::Stock
        | Detail::LeadFlashing
        | Detail::Asbestos
        | Detail::TreatedTimber
        | Detail::FreshPaint
        | Detail::Flue
        | Detail::Droppings
        | Detail::Spray => "",
        Detail::CertifiedBacteria | Detail::CertifiedViruses | Detail::CertifiedProtozoa => {
            said!("As its certificate says.", "Como dice su certificado.")
        }
        _ => said!("Usual value, no source.", "Valor usual, sin fuente."),
    }
}

//! Names of parts, their values and choices.

use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::feed::DrainKind;
use crate::site::part::{Choice, Field};
use crate::site::roof::Material;
use crate::site::system::{PartKind, System};
use crate::site::tank::{Build, OverflowTo, ShapeKind, Tank};
use crate::site::uses::{AmountKind, Class};

use super::{garden, head_figures};

/// A kind of part, one of them.
pub fn one(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Section => said!("Roof section", "Sección de techo"),
        PartKind::Feed => said!("Feed", "Alimentación"),
        PartKind::Tank => said!("Tank", "Tanque"),
        PartKind::TrunkLine => said!("Trunk line", "Tubería de unión"),
        PartKind::Pump => said!("Pump", "Bomba"),
        PartKind::Use => said!("Use", "Uso"),
        PartKind::Hauling => said!("Hauled water", "Agua acarreada"),
        PartKind::Ration => said!("Rationing step", "Paso de racionamiento"),
    }
}

/// A kind of part, several of them.
pub fn many(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Section => said!("Roof sections", "Secciones de techo"),
        PartKind::Feed => said!("Feeds", "Alimentaciones"),
        PartKind::Tank => said!("Tanks", "Tanques"),
        PartKind::TrunkLine => said!("Trunk lines", "Tuberías de unión"),
        PartKind::Pump => said!("Pumps", "Bombas"),
        PartKind::Use => said!("Uses, first served first", "Usos, en el orden en que se atienden"),
        PartKind::Hauling => said!("Hauled water", "Agua acarreada"),
        PartKind::Ration => said!("Rationing", "Racionamiento"),
    }
}

/// What a kind of part is, in a line.
pub fn explained(kind: PartKind) -> &'static str {
    match kind {
        PartKind::Section => said!(
            "One plane or part of the roof, measured flat on the plan.",
            "Un plano o una parte del techo, medido en planta.",
        ),
        PartKind::Feed => said!(
            "A downspout with its leaf screen and first-flush diverter, and the tank that it fills.",
            "Una bajante con su malla para hojas y su desviador de primeras aguas, y el tanque que llena.",
        ),
        PartKind::Tank => said!("Any barrel, tank, bladder or cistern.", "Cualquier barril, tanque, bolsa o cisterna."),
        PartKind::TrunkLine => said!(
            "A pipe with a valve that joins two tanks at the bottom: open, they share one level.",
            "Un tubo con válvula que une dos tanques por abajo: con la válvula abierta, comparten un mismo nivel.",
        ),
        PartKind::Pump => said!(
            "Lifts water from one store to another, between a start and a stop level. One that only brings it to the taps is \
             entered on its tank's sheet, under Supply.",
            "Sube agua de un depósito a otro, entre un nivel de arranque y uno de parada. La que solo la lleva a los grifos se \
             anota en la hoja de su tanque, en Suministro.",
        ),
        PartKind::Use => said!(
            "Whatever draws water. Uses higher in the list are served first.",
            "Todo lo que toma agua. Los usos más altos en la lista se sirven primero.",
        ),
        PartKind::Hauling => said!(
            "A load that is ordered when the store is low. A top-up from the mains is entered the same way, coming after 0 days: \
             it falls in through an air gap, made by whoever is licensed for it.",
            "Un viaje que se pide cuando el depósito está bajo. Un relleno desde la red pública se anota igual, llegando después \
             de 0 días: cae por una separación de aire, hecha por quien tenga licencia para ello.",
        ),
        PartKind::Ration => said!(
            "What the household does without while its store is low.",
            "Aquello de lo que el hogar prescinde mientras su depósito está bajo.",
        ),
    }
}

/// Said of a tank that no water comes to.
pub const NOTHING_FILLS: Phrase = phrase!(
    "Nothing fills this tank: let a feed, an overflow, a pump or a trunk line bring it water.",
    "Nada llena este tanque: haz que le traiga agua una alimentación, un rebosadero, una bomba o una tubería de unión.",
);

/// That a tank's levels in the diary go by the size that is entered now.
pub fn levels_by_size(count: usize) -> Option<String> {
    (count > 0).then(|| {
        say!(
            "Levels of this tank in the diary: {count}. They are all reckoned with the size and heights entered here.",
            "Niveles de este tanque en el diario: {count}. Todos se calculan con el tamaño y las alturas de esta hoja.",
            count
        )
    })
}

/// What stands in a tank today, as it was read and reckoned on.
pub fn stands(litres: f64, units: &Units) -> String {
    say!(
        "Today {water} stand in it, by the readings.",
        "Hoy hay {water} en él, según las lecturas.",
        water = shown::figure(litres, Kind::Volume, units)
    )
}

/// A name for a new part that no other has.
pub fn new_name(system: &System, kind: PartKind) -> String {
    let parts = system.parts();
    super::free_name(one(kind), |name| parts.iter().any(|part| part.name() == name))
}

/// The label of a value.
pub fn label(field: Field, system: &System) -> String {
    match field {
        Field::ShareTo(feed) => say!("Share to {feed}", "Parte que va a {feed}", feed = system.name_of(feed)),
        Field::CutOf(using) => say!("Cut {using} by", "Recortar {using} en", using = system.name_of(using)),
        Field::Month(month) | Field::Evaporation(month) => {
            super::months().get(usize::from(month)).copied().unwrap_or_default().to_owned()
        }
        other => fixed_label(other).to_owned(),
    }
}

fn fixed_label(field: Field) -> &'static str {
    match field {
        Field::Name => said!("Name", "Nombre"),
        Field::Area => said!("Plan area", "Área en planta"),
        Field::Material => said!("Roofing", "Material del techo"),
        Field::RunoffCoefficient => said!("Runoff coefficient", "Coeficiente de escorrentía"),
        Field::WettingLoss => said!("Wetting loss a rain day", "Mojado inicial, por día de lluvia"),
        Field::FillsTank => said!("Fills", "Llena"),
        Field::Capture => said!("Capture of gutter and screen", "Lo que dejan pasar canaleta y malla"),
        Field::Drain => said!("First-flush diverter", "Desviador de primeras aguas"),
        Field::FlushVolume => said!("First flush", "Primeras aguas"),
        Field::ChamberBore => said!("Inside diameter of the chamber", "Diámetro interior de la cámara"),
        Field::HoleBore => said!("Slow-release hole", "Orificio de vaciado lento"),
        Field::EmptiedEvery => said!("Emptied every", "Se vacía cada"),
        Field::StormHours => said!("Rain lasts, on a rain day", "Cuánto dura la lluvia, en un día de lluvia"),
        Field::Build => said!("Built as", "Construido como"),
        Field::Shape => said!("Shape", "Forma"),
        Field::Diameter => said!("Inside diameter", "Diámetro interior"),
        Field::Height => said!("Height to the rim", "Altura hasta el borde"),
        Field::Length => said!("Inside length", "Largo interior"),
        Field::Width => said!("Inside width", "Ancho interior"),
        Field::ConeHeight => said!("Height of the cone", "Altura del cono"),
        Field::DepthTable => said!("Depth and volume, a row each", "Profundidad y volumen, uno por línea"),
        Field::Capacity => said!("Capacity to the overflow", "Capacidad hasta el rebosadero"),
        Field::Floor => said!("Floor, over ground level", "Fondo, sobre el nivel del suelo"),
        Field::Outlet => said!("Outlet, over the floor", "Salida, sobre el fondo"),
        Field::Overflow => said!("Overflow, over the floor", "Rebosadero, sobre el fondo"),
        Field::OverflowTo => said!("Overflow goes to", "El rebose va a"),
        Field::Leak => said!("Leak", "Fuga"),
        Field::Cover => said!("Cover", "Tapa"),
        Field::FirstTank => said!("From", "De"),
        Field::SecondTank => said!("To", "A"),
        Field::Valve => said!("Valve", "Válvula"),
        Field::DrawsFrom => said!("Draws on", "Toma agua de"),
        Field::PumpsTo => said!("Fills", "Llena"),
        Field::StartLevel => said!("Starts below", "Arranca por debajo de"),
        Field::StopLevel => said!("Stops at", "Se detiene en"),
        Field::DailyLimit => said!("Lifts at most", "Sube como máximo"),
        Field::Class => said!("Kind", "Tipo"),
        Field::Tank => said!("Draws on", "Toma agua de"),
        Field::AmountGiven => said!("Amount given", "Cantidad dada"),
        Field::Amount => said!("Amount", "Cantidad"),
        Field::PublishedFigure => said!("Published figure", "Cifra publicada"),
        Field::PerHead => said!("For each", "Por cada uno"),
        Field::Heads => said!("How many", "Cuántos"),
        Field::PerEvent => said!("For each time", "Por cada vez"),
        Field::EventsAWeek => said!("Times a week", "Veces por semana"),
        Field::GardenArea => said!("Watered area", "Área regada"),
        Field::Crop => said!("What grows", "Qué crece"),
        Field::CropCoefficient => said!("Crop coefficient", "Coeficiente de cultivo"),
        Field::RootDepth => said!("Depth of the roots", "Profundidad de las raíces"),
        Field::Depletion => said!("Plants bear a soil emptied by", "Las plantas aguantan un suelo vaciado en"),
        Field::GrowsFrom => said!("Watered from", "Se riega desde"),
        Field::GrowsTo => said!("Watered to the end of", "Se riega hasta el fin de"),
        Field::Soil => said!("Soil", "Suelo"),
        Field::AvailableWater => said!("Soil holds for plants", "El suelo guarda para las plantas"),
        Field::Watering => said!("Watered by", "Se riega con"),
        Field::Efficiency => said!("Reaches the roots", "Llega a las raíces"),
        Field::Outdoor => said!("Where", "Dónde"),
        Field::LooksAt => said!("Looks at the store of", "Mira el depósito de"),
        Field::RationBelow => said!("In force below", "En vigor por debajo de"),
        Field::Trigger => said!("Order when the store is below", "Pedir cuando el depósito está por debajo de"),
        Field::Load => said!("A load", "Un viaje"),
        Field::LoadPrice => said!("Price of a load", "Precio de un viaje"),
        Field::Notice => said!("Comes after", "Llega después de"),
        Field::ShareTo(_) | Field::CutOf(_) | Field::Month(_) | Field::Evaporation(_) => "",
    }
}

/// A line of help under a value, where the label isn't enough.
pub fn hint(field: Field) -> Option<&'static str> {
    match field {
        Field::Area => Some(said!(
            "Length × width as seen from above, not along the slope.",
            "Largo × ancho visto desde arriba, no a lo largo de la pendiente.",
        )),
        Field::Outdoor => Some(said!(
            "A day without water in the house is a dry day. Outdoor uses don't count, unless there are no others.",
            "Un día sin agua en la casa es día de escasez. Los usos de afuera no cuentan, salvo que no haya otros.",
        )),
        Field::RunoffCoefficient => Some(said!(
            "Share of the rain, beyond wetting, that runs off. Set by the roofing; yours may differ.",
            "Parte de la lluvia, pasado el mojado inicial, que escurre. La fija el material del techo; la \
             tuya puede ser distinta.",
        )),
        Field::WettingLoss => Some(said!(
            "Only wets the roof. 0.5\u{a0}mm: common practice, no source.",
            "Solo moja el techo. 0,5\u{a0}mm: práctica común, sin fuente.",
        )),
        Field::Capture => Some(said!(
            "What gutter and leaf screen pass on. 90\u{a0}% if unknown (DIN 1989-1, BS 8515, from memory).",
            "Lo que dejan pasar la canaleta y la malla para hojas. 90\u{a0}% si no se sabe (DIN 1989-1, BS 8515, de \
             memoria).",
        )),
        Field::HoleBore => Some(said!(
            "Too small: still full when the next storm comes. Too large: drips away good water.",
            "Muy pequeño: la cámara sigue llena cuando llega la próxima tormenta. Muy grande: deja escapar agua buena.",
        )),
        Field::Capacity => Some(said!(
            "Change this and the width follows; change a width or height below and this follows.",
            "Si cambias esta, el ancho se ajusta; si cambias abajo un ancho o una altura, se ajusta esta.",
        )),
        Field::Floor => Some(said!(
            "Below ground is negative. Only differences between tanks matter.",
            "Bajo el suelo es negativo. Solo importan las diferencias entre tanques.",
        )),
        Field::Outlet => Some(said!("Water below it is dead storage.", "El agua por debajo es volumen muerto.")),
        Field::OverflowTo => Some(said!(
            "Never into a tank that overflows back to this one.",
            "Nunca a un tanque que rebosa de vuelta a este.",
        )),
        Field::DepthTable => Some(said!(
            "For example: 0.5\u{a0}m  900\u{a0}L. Rising, one row a line, the last at the rim.",
            "Por ejemplo: 0,5\u{a0}m  900\u{a0}L. De menos a más, un par por línea, el último en el borde.",
        )),
        Field::StartLevel => Some(said!("Share of the store that it fills.", "Parte del depósito que llena.")),
        Field::CropCoefficient => Some(said!(
            "What it drinks, as a multiple of short grass. FAO-56, Table 12, from memory.",
            "Lo que bebe, como múltiplo del pasto corto. FAO-56, tabla 12, citado de memoria.",
        )),
        Field::RootDepth => Some(said!(
            "FAO-56, Table 22, lower end, from memory.",
            "FAO-56, tabla 22, extremo inferior, citado de memoria."
        )),
        Field::Depletion => Some(said!(
            "Share of what the soil holds for plants. FAO-56, Table 22, from memory.",
            "Parte de lo que el suelo guarda para las plantas. FAO-56, tabla 22, citado de memoria.",
        )),
        Field::AvailableWater => Some(said!(
            "Of its volume, field capacity less wilting point. FAO-56, Table 19, from memory.",
            "De su volumen, capacidad de campo menos punto de marchitez. FAO-56, tabla 19, citado de memoria.",
        )),
        Field::Efficiency => Some(said!(
            "The rest runs off, drifts or seeps. FAO training manual 4, from memory.",
            "El resto escurre, se lo lleva el viento o se filtra. FAO training manual 4, citado de memoria.",
        )),
        Field::RationBelow => Some(said!(
            "Share of what the store can give, as the day begins.",
            "Parte de lo que el depósito puede dar, al comenzar el día.",
        )),
        _ => None,
    }
}

/// A choice in words.
pub fn choice(choice: Choice, system: &System) -> String {
    match choice {
        Choice::Part(part) => system.name_of(part),
        Choice::OverflowTo(OverflowTo::Tank(tank)) => system.name_of(tank),
        Choice::Month(month) => super::months().get(usize::from(month)).copied().unwrap_or_default().to_owned(),
        other => fixed_choice(other).to_owned(),
    }
}

fn fixed_choice(choice: Choice) -> &'static str {
    match choice {
        Choice::Material(material) => material_name(material),
        Choice::Drain(DrainKind::NoDiverter) => said!("None", "Ninguno"),
        Choice::Drain(DrainKind::Hole) => said!("Emptied by a slow hole", "Se vacía por un orificio"),
        Choice::Drain(DrainKind::ByHand) => said!("Emptied by hand", "Se vacía a mano"),
        Choice::Drain(DrainKind::Never) => said!("Never emptied, or blocked", "Nunca se vacía, o está tapado"),
        Choice::Build(Build::Barrel) => said!("Barrel", "Barril"),
        Choice::Build(Build::AboveGround) => said!("Tank above ground", "Tanque sobre el suelo"),
        Choice::Build(Build::Bladder) => said!("Bladder", "Bolsa flexible"),
        Choice::Build(Build::Cistern) => said!("Cistern, buried or half-buried", "Cisterna, enterrada o semienterrada"),
        Choice::Shape(ShapeKind::UprightCylinder) => said!("Upright cylinder", "Cilindro vertical"),
        Choice::Shape(ShapeKind::Box) => said!("Box", "Caja"),
        Choice::Shape(ShapeKind::LyingCylinder) => said!("Lying cylinder", "Cilindro acostado"),
        Choice::Shape(ShapeKind::ConeBottom) => said!("Cylinder on a cone", "Cilindro sobre un cono"),
        Choice::Shape(ShapeKind::Table) => said!("As in a table", "Según una tabla"),
        Choice::OverflowTo(OverflowTo::Ground) => {
            said!("The ground, or over the rim", "El suelo, o por encima del borde")
        }
        Choice::OverflowTo(OverflowTo::Garden) => said!("The garden", "El huerto"),
        Choice::Amount(AmountKind::Daily) => said!("The same every day", "Lo mismo cada día"),
        Choice::Amount(AmountKind::PerHead) => said!("For each person or animal", "Por cada persona o animal"),
        Choice::Amount(AmountKind::Monthly) => said!("Month by month", "Mes por mes"),
        Choice::Amount(AmountKind::PerEvent) => said!("For each time", "Por cada vez"),
        Choice::Amount(AmountKind::Garden) => said!("Garden, by the weather", "Huerto, según el tiempo"),
        Choice::HeadFigure(None) => head_figures::OWN.text(),
        Choice::HeadFigure(Some(figure)) => head_figures::name(figure),
        Choice::Crop(crop) => garden::crop(crop),
        Choice::Soil(soil) => garden::soil(soil),
        Choice::Watering(watering) => garden::watering(watering),
        Choice::Class(class) => class_name(class),
        Choice::NoPart => said!("Not chosen", "Sin elegir"),
        Choice::Open(true) => said!("Open", "Abierta"),
        Choice::Open(false) => said!("Shut", "Cerrada"),
        Choice::Covered(true) => said!("Covered", "Cubierto"),
        Choice::Covered(false) => said!("Open to the sky", "Abierto al cielo"),
        Choice::Outdoor(true) => said!("Outdoors", "Afuera"),
        Choice::Outdoor(false) => said!("In the house", "En la casa"),
        Choice::OverflowTo(OverflowTo::Tank(_)) | Choice::Part(_) | Choice::Month(_) => "",
    }
}

/// A roofing.
pub fn material_name(material: Material) -> &'static str {
    match material {
        Material::Metal => said!("Metal sheet", "Lámina metálica"),
        Material::Tile => said!("Clay or concrete tile", "Teja de barro o de concreto"),
        Material::Shingle => said!("Shingle", "Teja asfáltica"),
        Material::Concrete => said!("Concrete or membrane, sloping", "Concreto o membrana, con pendiente"),
        Material::FlatGravel => said!("Flat with gravel", "Plano con grava"),
        Material::Planted => said!("Planted", "Con plantas"),
        Material::Other => said!("Something else", "Otra cosa"),
    }
}

/// A class of use.
pub fn class_name(class: Class) -> &'static str {
    match class {
        Class::Drinking => said!("Drinking and cooking", "Beber y cocinar"),
        Class::House => said!("Washing, toilet, laundry", "Aseo, inodoro, lavado de ropa"),
        Class::Garden => said!("Garden", "Huerto"),
        Class::Animals => said!("Animals", "Animales"),
        Class::Travel => said!("Portable tank", "Tanque portátil"),
    }
}

/// Of a roof section of whose water this share goes nowhere.
pub fn uncollected(share: f64) -> String {
    say!("{share} of its water is not collected.", "Sin recoger: {share} de su agua.", share = super::percent(share))
}

/// What a tank holds, and what that weighs.
pub fn holds(tank: &Tank, units: &Units) -> String {
    let volume = |litres: f64| shown::figure(litres, Kind::Volume, units);
    let whole = tank.capacity().get();
    say!(
        "Holds {whole} to the overflow, {dead} of it dead storage below the outlet. Full, the water alone weighs {weight}.",
        "Caben {whole} hasta el rebosadero; de ellos, {dead} son volumen muerto bajo la salida. Lleno, solo el agua \
         pesa {weight}.",
        dead = volume(tank.dead_storage().get().min(whole)),
        whole = volume(whole),
        // A litre of water weighs a kilogram.
        weight = shown::figure(whole, Kind::Mass, units)
    )
}

//! Supply from the tank to the taps.

use super::{Text, Told};
use crate::engine::checks::{Figure, Verdict};
use crate::language::Phrase;
use crate::site::details::Detail;

const ELECTRICITY: Phrase = phrase!(
    "Electricity beside water: a licensed electrician, a residual-current device, a disconnect in reach.",
    "Electricidad junto al agua: un electricista con licencia, un interruptor de falla a tierra (diferencial) y un interruptor de corte \
     al alcance.",
);

pub(super) const PEAK: Text = Text {
    title: phrase!("Most that is drawn at once", "Lo más que se saca a la vez"),
    formula: phrase!(
        "Fixture units summed, then Hunter's curve for toilets with cisterns.",
        "Suma de unidades de consumo, luego la curva de Hunter para inodoros con tanque.",
    ),
    source: phrase!(
        "National Standard Plumbing Code, Appendix B: units of individual dwellings (from memory); curve of Table B.5.4, \
         rows from 20 to 100 units from memory. Other codes' curves go up to twice as high for few fixtures.",
        "National Standard Plumbing Code, apéndice B: unidades de viviendas (de memoria); curva de la tabla B.5.4, filas \
         de 20 a 100 unidades de memoria. Con pocos aparatos, las curvas de otros códigos dan hasta el doble.",
    ),
    assumes: phrase!(
        "A private house. Few fixtures are often all open together: the curve is rough below 6 units.",
        "Una casa particular. Si hay pocos aparatos, a menudo están todos abiertos a la vez: por debajo de 6 unidades \
         la curva es aproximada.",
    ),
    caution: phrase!("", ""),
};
pub(super) const TAP: Text = Text {
    title: phrase!("Pressure at the highest tap", "Presión en el grifo más alto"),
    formula: phrase!(
        "ρ·g·(pump head at peak flow − rise − friction) − filters; with a vessel, no more than the pressure at which the \
         pump starts less the rise from it, friction and filters. Duty point: where the pump's curve meets the \
         pipes'.",
        "ρ·g·(carga de la bomba al caudal máximo − subida − fricción) − filtros; con tanque de presión, no más que la \
         presión a la que arranca la bomba menos la subida desde ella, fricción y filtros. Punto de trabajo: donde la curva \
         de la bomba cruza la de las tuberías.",
    ),
    source: phrase!(
        "Darcy-Weisbach with Colebrook's factor; Hazen-Williams beside it.",
        "Darcy-Weisbach con el factor de Colebrook; Hazen-Williams al lado.",
    ),
    assumes: phrase!(
        "The pump's curve is the parabola through its three points, or straight between them where that would rise. Tank down to its outlet, filters due for change; \
         what they lose goes with the square of the flow.",
        "La curva de la bomba es la parábola por sus tres puntos, o recta entre ellos donde esa subiría. Tanque bajo hasta su salida, filtros a los que ya \
         les toca cambio; lo que pierden crece con el cuadrado del caudal.",
    ),
    caution: ELECTRICITY,
};
pub(super) const SUCTION: Text = Text {
    title: phrase!("Suction", "Succión"),
    formula: phrase!(
        "NPSH = (air pressure − vapour pressure) ÷ ρg − lift − friction; wanted 1.3 times what the pump requires.",
        "NPSH = (presión del aire − presión de vapor) ÷ ρg − altura de succión − fricción; se pide 1,3 veces lo que \
         la bomba requiere.",
    ),
    source: phrase!(
        "Any text on pumps; ratio as in Crane Technical Paper 410, example 7.32. Air and vapour: FAO-56 eq. 7 and 11.",
        "Cualquier texto de bombas; la proporción, como en Crane Technical Paper 410, ejemplo 7.32. Aire y vapor: \
         FAO-56, ec. 7 y 11.",
    ),
    assumes: phrase!(
        "Tank down to its outlet. The suction pipe has two bends and a foot valve.",
        "Tanque bajo hasta su salida. El tubo de succión tiene dos codos y una válvula de pie.",
    ),
    caution: phrase!("", ""),
};
pub(super) const VESSEL: Text = Text {
    title: phrase!("Pressure vessel", "Tanque de presión"),
    formula: phrase!(
        "Drawdown V·p₀·(1/p₁ − 1/p₂), absolute; wanted: the pump's mean flow between both pressures × time between \
         starts ÷ 4.",
        "Volumen útil V·p₀·(1/p₁ − 1/p₂), absolutas; se pide: caudal medio de la bomba entre ambas presiones × tiempo \
         entre arranques ÷ 4.",
    ),
    source: phrase!(
        "Boyle's law; the quarter from any text on pump stations.",
        "Ley de Boyle; el cuarto, de cualquier texto de estaciones de bombeo.",
    ),
    assumes: phrase!(
        "Air charged to 14\u{a0}kPa (2\u{a0}psi) under the pressure at which the pump starts.",
        "Aire cargado a 14\u{a0}kPa (2\u{a0}psi) por debajo de la presión a la que arranca la bomba.",
    ),
    caution: phrase!(
        "A vessel under air pressure bursts: let the pressure off before you open it.",
        "Un tanque con aire a presión revienta: suelta la presión antes de abrirlo.",
    ),
};
pub(super) const POWER: Text = Text {
    title: phrase!("Power", "Energía"),
    formula: phrase!(
        "ρ·g·V·H ÷ efficiency; panel = energy ÷ (sun hours × yield); battery = energy × days ÷ share drawn.",
        "ρ·g·V·H ÷ eficiencia; panel = energía ÷ (horas de sol × rendimiento); batería = energía × días ÷ parte que \
         se saca.",
    ),
    source: phrase!(
        "Any text; efficiencies are usual values, no source.",
        "Cualquier texto; las eficiencias son valores usuales, sin fuente.",
    ),
    assumes: phrase!(
        "The month of greatest use, against the pressure at which the pump stops and the rise to it from the lowest water.",
        "El mes de mayor uso, contra la presión a la que se detiene la bomba y la subida hasta ella desde el nivel más \
         bajo.",
    ),
    caution: ELECTRICITY,
};
pub(super) const LIFT: Text = Text {
    title: phrase!("Lift to the upper tank", "Subida al tanque de arriba"),
    formula: phrase!(
        "Duty point: where the pump's curve meets rise + friction. Hours = daily limit ÷ flow there.",
        "Punto de trabajo: donde la curva de la bomba cruza subida + fricción. Horas = límite diario ÷ caudal allí.",
    ),
    source: phrase!(
        "Darcy-Weisbach with Colebrook's factor; power ρ·g·Q·H ÷ efficiency.",
        "Darcy-Weisbach con el factor de Colebrook; potencia ρ·g·Q·H ÷ eficiencia.",
    ),
    assumes: phrase!(
        "From the lower outlet to the upper overflow; the curve is the parabola through its three points, or straight between them where \
         that would rise.",
        "De la salida de abajo al rebosadero de arriba; la curva es la parábola por sus tres puntos, o recta entre ellos donde esa \
         subiría.",
    ),
    caution: ELECTRICITY,
};
pub(super) const GRAVITY: Text = Text {
    title: phrase!("Pressure by gravity", "Presión por gravedad"),
    formula: phrase!("ρ·g·(level − tap − friction) − filters.", "ρ·g·(nivel − grifo − fricción) − filtros."),
    source: phrase!("Darcy-Weisbach with Colebrook's factor.", "Darcy-Weisbach con el factor de Colebrook."),
    assumes: phrase!(
        "Judged with the tank down to its outlet and the filters on the way fouled.",
        "Se juzga con el tanque bajo hasta su salida y los filtros del camino sucios.",
    ),
    caution: phrase!("", ""),
};

pub(super) fn peak(told: &Told<'_>) -> (String, String) {
    let verdict = say!(
        "{flow} at most: {units} fixture units.",
        "{flow} como máximo: {units} unidades de consumo.",
        flow = told.figure(Figure::PeakFlow),
        units = told.figure(Figure::FixtureUnits),
    );
    (verdict, String::new())
}

pub(super) const CURVE: Phrase = phrase!(
    "The three points of the pump's curve don't fall from left to right.",
    "Los tres puntos de la curva de la bomba no bajan de izquierda a derecha.",
);
pub(super) const ENTER_CURVE: Phrase = phrase!(
    "Enter them from its data sheet: head must fall as flow rises.",
    "Anótalos de su hoja de datos: la carga debe bajar cuando sube el caudal.",
);

pub(super) fn tap(told: &Told<'_>) -> (String, String) {
    if told.check.verdict == Verdict::Outside {
        return (CURVE.to_owned(), ENTER_CURVE.to_owned());
    }
    let (has, wants, margin) = told.margin();
    let duty = if told.check.figure(Figure::DutyFlow).is_finite() {
        say!(
            " The pump keeps {wants} at the tap up to {flow}.",
            " La bomba mantiene {wants} en el grifo hasta {flow}.",
            flow = told.figure(Figure::DutyFlow),
            wants
        )
    } else {
        say!(" The pump never makes {wants} there.", " La bomba nunca llega a {wants} allí.", wants)
    };
    let verdict = say!(
        "{margin}: {has} with fouled filters{starting}, {wants} wanted; {clean} with clean ones while the pump runs.{duty}",
        "{margin}: {has} con los filtros sucios{starting}, se piden {wants}; {clean} con limpios mientras anda la bomba.{duty}",
        starting = if told.check.figure(Figure::TapStarting) <= told.check.margin.map_or(f64::NAN, |margin| margin.has)
        {
            said!(" just before the pump starts", " justo antes de que arranque la bomba")
        } else {
            ""
        },
        clean = told.figure(Figure::TapClean),
        margin,
        has,
        wants,
        duty
    );
    let to_do = said!(
        "Let the pump start at a higher pressure, change filters sooner, take a wider pipe, or a pump with more head.",
        "Haz que la bomba arranque a más presión, cambia antes los filtros, pon una tubería más ancha o una bomba con más \
         carga.",
    );
    (verdict, told.if_fails(to_do))
}

pub(super) fn suction(told: &Told<'_>) -> (String, String) {
    let (verdict, to_do) = told.capacity(
        said!("there are", "hay"),
        said!("wanted", "se piden"),
        said!(
            "Set the pump lower or nearer, take a wider suction pipe, or a pump that stands in the water.",
            "Pon la bomba más abajo o más cerca, un tubo de succión más ancho o una bomba que esté dentro del agua.",
        ),
    );
    let lift = told.check.figure(Figure::SuctionLift);
    let lift = if lift > 0.0 {
        say!("It lifts {lift}.", "Sube el agua {lift}.", lift = told.figure(Figure::SuctionLift))
    } else {
        phrase!("Water runs to it.", "El agua le llega sola.").to_owned()
    };
    (format!("{verdict} {lift}"), to_do)
}

pub(super) fn vessel(told: &Told<'_>) -> (String, String) {
    if told.check.margin.is_some_and(|margin| margin.of == Figure::DutyHead) {
        let (has, wants, _) = told.margin();
        return (
            say!(
                "The pump never stops: it makes {has} of head, the pressure at which it stops asks for {wants}.",
                "La bomba no se detiene nunca: da {has} de carga, y la presión a la que se detiene pide {wants}.",
                has,
                wants
            ),
            phrase!(
                "Set that pressure lower, or take a pump with more head.",
                "Baja esa presión, o pon una bomba con más carga.",
            )
            .to_owned(),
        );
    }
    if told.check.verdict == Verdict::Outside && told.check.went_in(Detail::CutOut) > told.check.went_in(Detail::CutIn)
    {
        return (CURVE.to_owned(), ENTER_CURVE.to_owned());
    }
    if told.check.verdict == Verdict::Outside {
        return (
            phrase!(
                "The pump stops below the pressure at which it starts.",
                "La bomba se detiene por debajo de la presión a la que arranca.",
            )
            .to_owned(),
            phrase!("Enter both again.", "Anota las dos de nuevo.").to_owned(),
        );
    }
    told.capacity(
        said!("it gives", "da"),
        said!("between two starts wanted", "entre dos arranques se piden"),
        said!(
            "Take a larger vessel, or set the pressures further apart.",
            "Pon un tanque de presión más grande, o separa más las presiones.",
        ),
    )
}

pub(super) fn power(told: &Told<'_>) -> (String, String) {
    let verdict = say!(
        "{energy} a day: a panel of {panel}, a battery of {battery} ({charge} Ah at {volts} V) for {time}.",
        "{energy} al día: un panel de {panel}, una batería de {battery} ({charge} Ah a {volts} V) para {time}.",
        energy = told.figure(Figure::EnergyADay),
        panel = told.figure(Figure::Panel),
        battery = told.figure(Figure::Battery),
        charge = told.figure(Figure::AmpereHours),
        volts = told.entered(Detail::BatteryVolts),
        time = told.entered(Detail::Autonomy),
    );
    (verdict, String::new())
}

pub(super) fn lift(told: &Told<'_>) -> (String, String) {
    if told.check.verdict == Verdict::Outside {
        return (CURVE.to_owned(), ENTER_CURVE.to_owned());
    }
    let (has, wants, margin) = told.margin();
    if !told.check.figure(Figure::DutyFlow).is_finite() {
        return (
            say!(
                "It can't lift so high: it makes {has}, {wants} are asked.",
                "No puede subirla tan alto: llega a {has}, se piden {wants}.",
                has,
                wants
            ),
            phrase!(
                "Take a pump with more head, or set it in two steps.",
                "Pon una bomba con más carga, o súbela en dos pasos.",
            )
            .to_owned(),
        );
    }
    let verdict = say!(
        "{margin}: it lifts {flow} at {head}; {daily} takes {wants} a day. {energy} a day, a panel of {panel}.",
        "{margin}: sube {flow} a {head}; {daily} piden {wants} al día. {energy} al día, un panel de {panel}.",
        flow = told.figure(Figure::DutyFlow),
        head = told.figure(Figure::DutyHead),
        daily = told.figure(Figure::DailyUse),
        energy = told.figure(Figure::EnergyADay),
        panel = told.figure(Figure::Panel),
        margin,
        wants
    );
    if told.check.figure(Figure::PipesAsk).is_finite() && !told.check.fails() {
        let beyond = say!(
            "At the last point of its curve the pipes ask for only {asks}: it runs beyond it, draws more power and may be harmed. \
             Throttle it, or take one with less head.",
            "En el último punto de su curva las tuberías piden solo {asks}: trabaja más allá, gasta más y se puede dañar. \
             Estrangúlala, o pon una con menos carga.",
            asks = told.figure(Figure::PipesAsk)
        );
        return (verdict, beyond);
    }
    let to_do = said!(
        "Take a stronger pump or a wider pipe, or lower the daily limit.",
        "Pon una bomba más fuerte o una tubería más ancha, o baja el límite diario.",
    );
    (verdict, told.if_fails(to_do))
}

pub(super) fn gravity(told: &Told<'_>) -> (String, String) {
    let (has, wants, margin) = told.margin();
    let verdict = say!(
        "{margin}: {has} at {flow} with the tank low, {full} full, {wants} wanted. The open pipe gives {open}.",
        "{margin}: {has} a {flow} con el tanque bajo, {full} lleno, se piden {wants}. La tubería abierta da {open}.",
        flow = told.entered(Detail::TapFlow),
        full = told.figure(Figure::TapFull),
        open = told.figure(Figure::OpenPipe),
        margin,
        has,
        wants
    );
    let to_do = said!(
        "Lower the tap, raise the tank, take a wider pipe, or a pump. If there is a pump, say so with the tank, under \
         “Most that is drawn at once”.",
        "Baja el grifo, sube el tanque, pon una tubería más ancha o una bomba. Si ya hay una bomba, dilo en el tanque, en \
         «Lo más que se saca a la vez».",
    );
    (verdict, told.if_fails(to_do))
}

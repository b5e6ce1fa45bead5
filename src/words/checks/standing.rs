//! Whether a tank stands, and what a storm brings.

use super::{Text, Told};
use crate::engine::checks::standing::LEAST_ANCHORS;
use crate::engine::checks::{Figure, Verdict};
use crate::site::details::Detail;
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::tank::OverflowTo;

pub(super) const PAD: Text = Text {
    title: phrase!("Weight and soil", "Peso y suelo"),
    formula: phrase!(
        "(water full + tank + pad) · g ÷ pad area.",
        "(agua del tanque lleno + tanque + base) · g ÷ área \
    de la base.",
    ),
    source: phrase!(
        "Allowable: International Building Code Table 1806.2.",
        "Admisible: International Building Code, tabla 1806.2.",
    ),
    assumes: phrase!(
        "An even pad on undisturbed ground, concrete of 2,400\u{a0}kg/m³, water to the rim.",
        "Una base pareja sobre suelo sin remover, concreto de 2400\u{a0}kg/m³, agua hasta el borde.",
    ),
    caution: phrase!(
        "A full tank that slips crushes: fill, slopes and retaining walls need an engineer.",
        "Un tanque lleno que se desliza aplasta: los rellenos, las laderas y los muros de contención necesitan un \
         ingeniero.",
    ),
};
pub(super) const WIND: Text = Text {
    title: phrase!("Wind on the empty tank", "Viento sobre el tanque vacío"),
    formula: phrase!(
        "q = 0.613·Kz·Kd·V²; force = q·0.85·Cf·face; lift = q·0.85·0.8·lid. Slides below force ÷ friction + lift, tips below force × \
         height ÷ foot + lift; 1.5 times that is wanted. Each of N anchors: 4·M ÷ (N·foot) − weight ÷ N.",
        "q = 0,613·Kz·Kd·V²; fuerza = q·0,85·Cf·cara; succión = q·0,85·0,8·tapa. Se desliza por debajo de fuerza ÷ fricción + succión, \
         vuelca por debajo de fuerza × altura ÷ pie + succión; se pide 1,5 veces eso. Cada uno de N anclajes: 4·M ÷ (N·pie) − peso ÷ N.",
    ),
    source: phrase!(
        "ASCE 7-16: Kz = 2.01·(z/zg)^(2/α) from 15\u{a0}ft up; Kd 1.0, Cf 0.63 of round tanks, the lid's suction (from memory); Cf of \
         square ones by ASCE 7-10 Figure 29.5-1, anchors by API 650 section 5.12 (from memory).",
        "ASCE 7-16: Kz = 2,01·(z/zg)^(2/α) desde 15\u{a0}ft; Kd 1,0, Cf 0,63 de tanques redondos, la succión de la tapa (de memoria); Cf \
         de los cuadrados según ASCE 7-10, figura 29.5-1, anclajes según API 650, sección 5.12 (de memoria).",
    ),
    assumes: phrase!(
        "Level open ground without a hill, a closed lid, the force at half the height, Cf of a rigid smooth body; the \
         water of today by the readings, or else of this day in a middle year of the record.",
        "Terreno llano y abierto sin lomas, tapa cerrada, la fuerza a media altura, Cf de un cuerpo rígido y liso; el \
         agua de hoy según las lecturas o, si no las hay, la de esta fecha en un año intermedio del registro.",
    ),
    caution: phrase!(
        "Not for tornadoes. An empty tank flies: fill or tie it before the storm, never during it.",
        "No sirve para tornados. Un tanque vacío vuela: llénalo o amárralo antes de la tormenta, nunca durante ella.",
    ),
};
pub(super) const UPLIFT: Text = Text {
    title: phrase!("Flotation in wet ground or a flood", "Flotación en suelo mojado o inundación"),
    formula: phrase!(
        "Uplift = displaced water; held by tank, soil cover and concrete, less what these displace; 1.3 times wanted.",
        "Empuje = agua desplazada; lo sujetan el tanque, la tierra encima y el concreto, menos lo que estos \
         desplazan; se pide 1,3 veces.",
    ),
    source: phrase!(
        "FEMA 259, Example C7 (factor 1.3); concrete 150, backfill 120\u{a0}lb/ft³.",
        "FEMA 259, ejemplo C7 (factor 1,3); concreto 150, relleno 120\u{a0}lb/ft³.",
    ),
    assumes: phrase!(
        "Empty tank, soil just over its plan, no friction at its walls.",
        "Tanque vacío, tierra solo sobre su planta, sin fricción en sus paredes.",
    ),
    caution: phrase!(
        "Never empty a buried tank in wet ground, nor any before a flood: it floats and tears its pipes.",
        "Nunca vacíes un tanque enterrado en suelo mojado, ni ningún tanque antes de una inundación: flota y arranca \
         sus tuberías.",
    ),
};
pub(super) const STORM_FEED: Text = Text {
    title: phrase!("The storm at this feed", "La tormenta en esta alimentación"),
    formula: phrase!(
        "Area × runoff × (rain − wetting) × capture, after the first flush.",
        "Área × escorrentía × (lluvia − mojado inicial) × captación, después de las primeras aguas.",
    ),
    source: phrase!("The same rules as the daily balance.", "Las mismas reglas que el balance diario."),
    assumes: phrase!(
        "Even rain; a diverter that was empty before.",
        "Lluvia pareja; un desviador que antes estaba vacío.",
    ),
    caution: phrase!("", ""),
};
pub(super) const STORM_TANK: Text = Text {
    title: phrase!("The storm in this tank", "La tormenta en este tanque"),
    formula: phrase!(
        "Inflow against the room that there is; beyond it all spills.",
        "Lo que entra contra el espacio que hay; más allá todo rebosa.",
    ),
    source: phrase!("The same rules as the daily balance.", "Las mismas reglas que el balance diario."),
    assumes: phrase!(
        "Even rain, no use meanwhile; the water of today by the readings, or else of this day in a middle year of the record.",
        "Lluvia pareja, sin uso mientras tanto; el agua de hoy según las lecturas o, si no las hay, la de esta fecha en un \
         año intermedio del registro.",
    ),
    caution: phrase!("", ""),
};

pub(super) fn pad(told: &Told<'_>) -> (String, String) {
    if told.check.margin.is_none() {
        let verdict = say!(
            "Full it weighs {mass}, and it stands on something, not on soil: {floor} over the ground.",
            "Lleno pesa {mass}, y no está sobre el suelo, sino sobre algo: a {floor} del terreno.",
            mass = told.figure(Figure::FullMass),
            floor = told.figure(Figure::FloorAbove)
        );
        let to_do = said!(
            "Have an engineer say whether the roof, slab or tower under it bears that, in wind and earthquake too.",
            "Que un ingeniero diga si el techo, la losa o la torre de debajo lo aguanta, también con viento y sismo.",
        );
        return (verdict, to_do.to_owned());
    }
    let (has, wants, margin) = told.margin();
    let verdict = say!(
        "{margin}: full it weighs {mass} and presses {wants}; the soil bears {has}.",
        "{margin}: lleno pesa {mass} y presiona {wants}; el suelo aguanta {has}.",
        mass = told.figure(Figure::FullMass),
        margin,
        wants,
        has
    );
    let to_do =
        said!("Make the pad larger, or have the soil judged.", "Haz más grande la base, o pide que evalúen el suelo.");
    (verdict, told.if_fails(to_do))
}

pub(super) fn wind(told: &Told<'_>) -> (String, String) {
    let check = told.check;
    let litres = told.figure(Figure::HoldingLitres);
    let wind = told.entered(Detail::WindSpeed);
    let anchors = check.went_in(Detail::Anchors);
    if anchors >= LEAST_ANCHORS {
        let verdict = say!(
            "In a wind of {wind} each anchor must hold {pull} upwards and {shear} sideways, the tank empty; {litres} in it hold it \
             without.",
            "Con un viento de {wind}, cada anclaje debe aguantar {pull} hacia arriba y {shear} de lado, con el tanque vacío; con \
             {litres} dentro se sostiene sin ellos.",
            pull = told.figure(Figure::AnchorPull),
            shear = told.figure(Figure::AnchorShear),
            wind,
            litres
        );
        return (verdict, String::new());
    }
    let too_few = if anchors > 0.0 {
        said!(
            " Fewer than three anchors don't hold it from every side: they aren't counted.",
            " Menos de tres anclajes no lo sujetan por todos los lados: no se cuentan."
        )
    } else {
        ""
    };
    let to_do = say!(
        "Leave {litres} in it before a storm, or anchor it.",
        "Déjale {litres} dentro antes de una tormenta, o ánclalo.",
        litres
    );
    let (verdict, to_do) = match check.margin {
        None => {
            let verdict = say!(
                "In a wind of {wind} it stands with {litres} in it.",
                "Con un viento de {wind} se sostiene si tiene {litres} dentro.",
                wind,
                litres
            );
            (verdict, to_do)
        }
        Some(margin) if margin.wants <= 0.0 => {
            let verdict = say!(
                "In a wind of {wind} it stands even empty.",
                "Con un viento de {wind} se sostiene aun vacío.",
                wind
            );
            (verdict, String::new())
        }
        Some(margin) if check.figure(Figure::ContentNow).is_nan() => (
            say!(
                "In a wind of {wind} it would not stand even full: {litres} wanted, {holds} hold.",
                "Con un viento de {wind} no se sostendría ni lleno: se piden {litres}, caben {holds}.",
                holds = super::figure(margin.of, margin.has, told.units),
                wind,
                litres
            ),
            phrase!("Anchor it.", "Ánclalo.").to_owned(),
        ),
        Some(_) => {
            let (has, _, _) = told.margin();
            let verdict = say!(
                "In a wind of {wind} it stands only with {litres} in it; by the readings, or else as in a middle year, it holds {has}. \
                 Look how much there is.",
                "Con un viento de {wind} se sostiene solo si tiene {litres} dentro; según las lecturas o, si no las hay, como en un año intermedio, tiene {has}. \
                 Mira cuánta hay.",
                wind,
                litres,
                has
            );
            (verdict, if check.verdict == Verdict::Fails { to_do } else { String::new() })
        }
    };
    (verdict + too_few, to_do)
}

pub(super) fn uplift(told: &Told<'_>) -> (String, String) {
    if told.check.figure(Figure::Uplift) == 0.0 {
        let verdict = said!(
            "The water doesn't reach it. With a flood entered its check says what that does.",
            "El agua no lo alcanza. Anota una inundación para ver qué hace.",
        );
        return (verdict.to_owned(), String::new());
    }
    let (has, wants, margin) = told.margin();
    let verdict = say!(
        "{margin}: {has} hold it down, {wants} wanted against an uplift of {uplift}.",
        "{margin}: lo sujetan {has}, se piden {wants} contra un empuje de {uplift}.",
        uplift = told.figure(Figure::Uplift),
        margin,
        has,
        wants
    );
    let concrete = told.figure(Figure::ConcreteWanted);
    let to_do = if told.check.figure(Figure::UpliftLitres) > told.check.figure(Figure::Capacity) {
        say!(
            "Not even full does it stay down: cast {concrete} of concrete to it, strap it down, or drain the ground.",
            "Ni lleno se queda en su sitio: únele {concrete} de concreto colado, sujétalo con cinchos o drena el suelo.",
            concrete
        )
    } else {
        say!(
            "Keep at least {litres} in it, or cast {concrete} of concrete to it, strap it down, or drain the ground.",
            "Mantén al menos {litres} dentro, o únele {concrete} de concreto colado, sujétalo con cinchos o drena el suelo.",
            litres = told.figure(Figure::UpliftLitres),
            concrete
        )
    };
    (verdict, told.if_fails(&to_do))
}

pub(super) fn storm_feed(told: &Told<'_>) -> (String, String) {
    let verdict = say!(
        "{depth} in {duration} bring {litres} to the tank, {rate} at a time, once the first flush is taken.",
        "{depth} en {duration} traen {litres} al tanque, a razón de {rate}, una vez desviadas las primeras aguas.",
        depth = told.entered(Detail::StormDepth),
        duration = told.entered(Detail::StormDuration),
        litres = told.figure(Figure::StormLitres),
        rate = told.figure(Figure::StormRate),
    );
    (verdict, String::new())
}

pub(super) fn storm_tank(told: &Told<'_>, system: &System) -> (String, String) {
    let check = told.check;
    if check.verdict == Verdict::Lacks {
        return (
            phrase!(
                "Nothing says how much stands in it on this day of a year.",
                "Nada dice cuánta agua tiene en esta fecha del año.",
            )
            .to_owned(),
            phrase!(
                "Give the site its rain, and mend what keeps it from running.",
                "Dale al sitio su lluvia, y corrige lo que impide el cálculo.",
            )
            .to_owned(),
        );
    }
    let came = told.figure(Figure::StormLitres);
    let room = told.figure(Figure::Headroom);
    let stores = system.stores();
    let joined = stores.iter().any(|store| store.len() > 1 && store.contains(&check.part));
    let room = if joined { say!("{room} in the joined tanks", "{room} en los tanques unidos", room) } else { room };
    let mut verdict = if check.figure(Figure::FullAfter).is_finite() {
        say!(
            "{came} come, there is room for {room}: full after {time}, then {rate} spill{whither}, {spilled} in all.",
            "llegan {came}, hay espacio para {room}: se llena en {time}, luego rebosan {rate}{whither}, {spilled} en total.",
            time = told.figure(Figure::FullAfter),
            rate = told.figure(Figure::SpillRate),
            whither = spills(check.part, system),
            spilled = told.figure(Figure::SpillLitres),
            came,
            room
        )
    } else {
        say!(
            "{came} come, there is room for {room}: nothing spills.",
            "llegan {came}, hay espacio para {room}: no rebosa nada.",
            came,
            room
        )
    };
    if joined {
        verdict +=
            &say!(" {here} stay in this one.", " En este quedan {here}.", here = told.figure(Figure::StormHere),);
    }
    (verdict, String::new())
}

/// Over which rim the store of a tank spills, and where to.
fn spills(tank: PartId, system: &System) -> String {
    let stores = system.stores();
    let store = stores.iter().find(|store| store.contains(&tank));
    let tanks = system.tanks.iter().filter(|other| store.is_some_and(|store| store.contains(&other.id)));
    let lowest =
        tanks.reduce(|one, other| if other.overflow_elevation() < one.overflow_elevation() { other } else { one });
    let Some(lowest) = lowest else { return String::new() };
    let at = if lowest.id == tank { String::new() } else { say!(" at {tank}", " en {tank}", tank = lowest.name) };
    match lowest.overflow_to {
        OverflowTo::Tank(other) => {
            say!("{at} to {other}", "{at} hacia {other}", other = system.name_of(other), at)
        }
        OverflowTo::Garden => say!("{at} to the garden", "{at} hacia el huerto", at),
        OverflowTo::Ground => say!("{at} to the ground", "{at} hacia el suelo", at),
    }
}

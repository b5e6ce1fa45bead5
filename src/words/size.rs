//! Words of the questions about size.

use super::{count, number_text, percent};
use crate::engine::sizing::handbooks::{Basis, Method, Said};
use crate::engine::sizing::sequent_peak::SequentPeak;
use crate::engine::sizing::smallest::{Found, Sought};
use crate::engine::sizing::study::Inquiry;
use crate::engine::sizing::tally::Tally;
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::wanted::Wanted;

/// Title of a question.
pub fn title(inquiry: Inquiry) -> &'static str {
    match inquiry {
        Inquiry::Smallest => said!("Smallest that does it", "El mínimo que alcanza"),
        Inquiry::Curves => said!("Curves", "Curvas"),
        Inquiry::Surface => said!("Storage and use together", "Almacenamiento y uso juntos"),
        Inquiry::Handbooks => said!("By the handbooks", "Según los manuales"),
    }
}

/// How far a size is to be trusted: what so few whole years, or one draw of years, can't tell; nothing of a longer record.
pub fn trust(whole_years: usize, drawn: bool) -> Option<&'static str> {
    /// With fewer years one bad year more or less is a tenth and more (common practice, no source).
    const FEW: usize = 10;
    if drawn {
        return Some(said!(
            "This is one draw of years. Under Rain draw others and look again: the size can come out half as large or twice; \
             take the largest.",
            "Esta es una sola serie de años. En Lluvia saca otras y vuelve a mirar: el tamaño puede salir la mitad o el \
             doble; toma el mayor.",
        ));
    }
    (whole_years < FEW).then_some(said!(
        "So few years don't know the bad ones: reckon with generated years too, and take the larger size.",
        "Tan pocos años no conocen los malos: calcula también con años generados y toma el tamaño mayor.",
    ))
}

/// What it is about, in a line.
pub fn about(inquiry: Inquiry) -> &'static str {
    match inquiry {
        Inquiry::Smallest => said!(
            "The whole house is run again and again on this rain, with all tanks (or all roofs, or all uses) larger or \
             smaller alike and everything else as it is, until the size that just does it is found, to within \
             0.2\u{a0}%. Each size begins with what twenty years of this rain (the last, or a shorter record again and again) \
             leave in it when it begins them empty: so no first fill makes a size do that doesn't last.",
            "Toda la casa se calcula una y otra vez con esta lluvia, con todos los tanques (o todos los techos, o \
             todos los usos) más grandes o más pequeños por igual y lo demás como está, hasta dar con el tamaño que \
             apenas alcanza, con un margen del 0,2\u{a0}%. Cada tamaño empieza con lo que le dejan veinte años de esta \
             lluvia (los últimos, o un registro más corto repetido) si los empieza vacío: así ningún tamaño parece bastar por haber estado lleno el primer \
             día.",
        ),
        Inquiry::Curves => said!(
            "What other sizes would come to on this rain: from a quarter of what there is to four times as much, \
             everything else as it is. Each begins with what earlier years leave in it, not full; so the figures at the \
             upright line, which is the house as it stands, can differ a little from those of the house above.",
            "Qué resultaría con otros tamaños con esta lluvia: desde la cuarta parte de lo que hay hasta el cuádruple, \
             con lo demás como está. Cada uno empieza con lo que le dejan los años anteriores, no lleno; por eso las cifras \
             en la línea vertical, que es la casa tal como está, pueden diferir un poco de las de arriba.",
        ),
        Inquiry::Surface => said!(
            "Lines of equal reliability over all pairs of storage (a quarter of what there is to four times as much) \
             and use (0.4 to 2.5 times). The dot is the house as it stands; the strong line is what you want.",
            "Líneas de igual confiabilidad sobre todos los pares de almacenamiento (de la cuarta parte de lo que hay \
             al cuádruple) y uso (de 0,4 a 2,5 veces). El punto es la casa tal como está; la línea gruesa es lo que \
             quieres.",
        ),
        Inquiry::Handbooks => said!(
            "Rules of thumb for the same house. They look at totals, months or one dry spell, never at the order of \
             days, and count neither wetting nor first flush nor gardens by the weather; the last column says what a \
             tank of that size would have come to on this rain.",
            "Reglas prácticas para la misma casa. Miran totales, meses o una racha sin lluvia, nunca el orden de los \
             días, y no cuentan el mojado inicial, las primeras aguas ni los huertos según el tiempo; la última \
             columna dice qué habría resultado con un tanque de ese tamaño con esta lluvia.",
        ),
    }
}

/// Label of the choice of what is wanted.
pub const WANTED: Phrase = phrase!("What is wanted", "Tu meta");

/// What is wanted, as a choice.
pub fn wanted(wanted: Wanted) -> String {
    match wanted {
        Wanted::GoodYears(10) => phrase!("No dry day in any year", "Ningún año con escasez").to_owned(),
        Wanted::GoodYears(tenths) => {
            say!("No dry day in {tenths} years of 10", "{tenths} de cada 10 años sin escasez", tenths)
        }
        Wanted::Days(share) => {
            say!("{share} of days not dry", "{share} de los días sin escasez", share = percent(share.get()),)
        }
        Wanted::Water(share) => {
            say!("{share} of the water wanted", "{share} del agua que se necesita", share = percent(share.get()),)
        }
    }
}

/// What a measure counts, over a column or at a line.
pub fn measured(wanted: Wanted) -> &'static str {
    match wanted {
        Wanted::GoodYears(_) => said!("good years", "años buenos"),
        Wanted::Days(_) => said!("days not dry", "días sin escasez"),
        Wanted::Water(_) => said!("water there", "agua disponible"),
    }
}

/// The kind that a size is of.
pub const fn kind(sought: Sought) -> Kind {
    match sought {
        Sought::Storage => Kind::Volume,
        Sought::Roof => Kind::Area,
        Sought::Uses => Kind::Flow,
    }
}

/// The name of what is sought.
pub fn name(sought: Sought) -> &'static str {
    match sought {
        Sought::Storage => said!("Tanks", "Tanques"),
        Sought::Roof => said!("Roof", "Techo"),
        Sought::Uses => said!("Use", "Uso"),
    }
}

/// One search's result as it stands in the table.
pub fn found(found: Found, now: f64, sought: Sought, units: &Units) -> String {
    let size = |factor: f64| shown::figure(now * factor, kind(sought), units);
    match (found, sought) {
        (_, Sought::Roof) if now <= 0.0 => "—".to_owned(),
        (Found::Enough { factor, .. }, _) => size(factor),
        (Found::NotEvenAt { factor, .. }, _) => say!("not even {size}", "ni con {size}", size = size(factor)),
        (Found::EvenAt { factor, .. }, Sought::Uses) => say!("{size} or more", "{size} o más", size = size(factor)),
        (Found::EvenAt { factor, .. }, _) => say!("{size} or less", "{size} o menos", size = size(factor)),
        (Found::CannotRun, _) => "—".to_owned(),
    }
}

/// What was found of one thing, as a sentence, under the rule that the household reckons by.
pub fn answer(found: Found, now: f64, sought: Sought, wanted: Wanted, units: &Units) -> String {
    let size = |factor: f64| shown::figure(now * factor, kind(sought), units);
    let of_now = size(1.0);
    let reached = |tally: &Tally| {
        say!("{share} {what}", "{share} de {what}", share = percent(tally.by(wanted)), what = measured(wanted))
    };
    match (found, sought) {
        (_, Sought::Roof) if now <= 0.0 => phrase!(
            "Roof: there is no roof area to enlarge. Enter the area of the roof first.",
            "Techo: no hay área de techo que agrandar. Escribe primero el área del techo.",
        )
        .to_owned(),
        (Found::Enough { factor, .. }, Sought::Storage) => {
            say!(
                "Tanks of {size} in all would do; you have {of_now}.",
                "Bastaría con tanques de {size} en total; ahora hay {of_now}.",
                size = size(factor),
                of_now
            )
        }
        (Found::Enough { factor, .. }, Sought::Roof) => {
            say!(
                "A roof of {size} would do; you have {of_now}.",
                "Bastaría con un techo de {size}; ahora hay {of_now}.",
                size = size(factor),
                of_now
            )
        }
        (Found::Enough { factor, .. }, Sought::Uses) => {
            say!(
                "It would do for a use of {size}; {of_now} is wanted.",
                "Alcanzaría para un uso de {size}; lo que se necesita es {of_now}.",
                size = size(factor),
                of_now
            )
        }
        (Found::NotEvenAt { factor, tally }, Sought::Storage) => say!(
            "Not even tanks of {size} do it with this roof and use: they would come to {reached} only.",
            "Ni con tanques de {size} alcanza con este techo y este uso: se llegaría solo a {reached}.",
            size = size(factor),
            reached = reached(&tally),
        ),
        (Found::NotEvenAt { factor, tally }, Sought::Roof) => say!(
            "Not even a roof of {size} does it with these tanks and use: it would come to {reached} only.",
            "Ni con un techo de {size} alcanza con estos tanques y este uso: se llegaría solo a {reached}.",
            size = size(factor),
            reached = reached(&tally),
        ),
        (Found::NotEvenAt { factor, tally }, Sought::Uses) => {
            say!(
                "It would not even do for a use of {size}: it comes to {reached}.",
                "Ni siquiera alcanzaría para un uso de {size}: se llega a {reached}.",
                size = size(factor),
                reached = reached(&tally),
            )
        }
        (Found::EvenAt { factor, .. }, Sought::Uses) => say!(
            "It would do even for a use of {size}.",
            "Alcanzaría incluso para un uso de {size}.",
            size = size(factor),
        ),
        (Found::EvenAt { factor, .. }, _) => {
            say!(
                "{what}: even {size} would do; there are {of_now}.",
                "{what}: bastaría incluso con {size}; ahora hay {of_now}.",
                what = name(sought),
                size = size(factor),
                of_now
            )
        }
        (Found::CannotRun, _) => say!(
            "{what}: the house can't run with other sizes.",
            "{what}: la casa no puede funcionar con otros tamaños.",
            what = name(sought),
        ),
    }
}

/// What the sizes leave out of a house with hauled water.
pub const WITHOUT_HAULING: Phrase =
    phrase!("Without the hauled water: what the rain alone does.", "Sin el agua acarreada: lo que da la lluvia sola.",);
/// How the use of gardens by the weather is told.
pub const GARDENS_AS_DRY: Phrase = phrase!(
    "A garden by the weather is told here with what it would draw if it never rained.",
    "De un huerto según el tiempo se dice aquí lo que tomaría si no lloviera nunca.",
);

/// From one to the other, or just the one where they are written alike.
pub fn between(one: String, other: String) -> String {
    if one == other { one } else { say!("{one} to {other}", "{one} a {other}", one, other) }
}

/// The house under both rules: the bracket within which the truth lies.
pub fn bracket([after, before]: [Tally; 2]) -> String {
    let share = |of: fn(&Tally) -> f64| {
        let (one, other) = (of(&after), of(&before));
        between(percent(one.min(other)), percent(one.max(other)))
    };
    let (least, most) = (after.good_years.min(before.good_years), after.good_years.max(before.good_years));
    say!(
        "The house as it is, between the two orders within a day, where the truth lies: {water} of the water is there, \
         {days} of days are not dry, and {good} of {years} are without a dry day.",
        "La casa tal como está, entre los dos órdenes posibles dentro de un día, que es donde está la verdad: agua \
         disponible, {water}; días sin escasez, {days}; años sin ningún día de escasez, {good} de {years}.",
        water = share(Tally::volumetric),
        days = share(Tally::time),
        good = between(number_text(least), number_text(most)),
        years = count(after.judged_years(), phrase!("year", "año"), phrase!("years", "años")),
    )
}

/// The sequent peak.
pub fn peak(peak: SequentPeak, units: &Units) -> String {
    match peak {
        SequentPeak::Enough { before_spillage_l, after_spillage_l } => say!(
            "Never short at all on this rain, if all water stood in one full tank at first: {least} (yield before \
             spillage) to {most} (after) above its outlet, by the sequent peak of Thomas & Fiering, 1963.",
            "Para que nunca falte agua con esta lluvia, si al principio toda estuviera en un solo tanque lleno: de \
             {least} (uso antes del rebose) a {most} (después) por encima de la salida, por el algoritmo del pico \
             secuente de Thomas y Fiering, 1963.",
            least = shown::figure(before_spillage_l, Kind::Volume, units),
            most = shown::figure(after_spillage_l, Kind::Volume, units),
        ),
        SequentPeak::Impossible { mean_inflow_l, mean_demand_l } => say!(
            "Never short at all is impossible, whatever the tank: {comes} comes to all tanks together on average and {wanted} \
             is wanted. More roof, less lost on the way, or less use would mend it.",
            "Que nunca falte agua es imposible, sea cual sea el tanque: a los tanques llegan {comes} en promedio y se \
             necesitan {wanted}. Más techo, menos pérdidas en el camino o menos uso lo remediarían.",
            comes = shown::figure(mean_inflow_l, Kind::Flow, units),
            wanted = shown::figure(mean_demand_l, Kind::Flow, units),
        ),
    }
}

/// Heads of the table of the smallest.
pub const SMALLEST_COLUMNS: [Phrase; 4] = [
    phrase!("what", "qué"),
    phrase!("now", "ahora"),
    phrase!("yield after spillage", "uso después del rebose"),
    phrase!("yield before spillage", "uso antes del rebose"),
];

/// The name of a handbook's method.
pub fn method(method: Method) -> &'static str {
    match method {
        Method::MonthlyBalance => said!("Monthly balance", "Balance mensual"),
        Method::DrySeason => said!("Dry-season demand", "Demanda de la estación seca"),
        Method::FivePercent => said!("5\u{a0}% rule", "Regla del 5\u{a0}%"),
        Method::SixPercent => said!("6\u{a0}% rule", "Regla del 6\u{a0}%"),
    }
}

/// What a method looks at, and so why it says something else.
pub fn difference(method: Method, basis: &Basis, units: &Units) -> String {
    match method {
        Method::MonthlyBalance => phrase!(
            "Monthly balance: twelve mean months in a row, twice; dry years and dry weeks are averaged away, so it \
             tends to say too little.",
            "Balance mensual: doce meses promedio seguidos, dos veces; los años secos y las semanas secas se pierden \
             en el promedio, así que suele quedarse corto.",
        )
        .to_owned(),
        Method::DrySeason => say!(
            "Dry-season demand: the use through the longest spell of days under {depth} on this rain, {days}; it takes \
             the tank as full when the spell begins, and showers between dry spells as enough to fill it again.",
            "Demanda de la estación seca: el uso durante la racha más larga de días con menos de {depth} con esta \
             lluvia, {days}; da por lleno el tanque cuando empieza la racha, y por suficientes para llenarlo de nuevo \
             los chubascos entre rachas sin lluvia.",
            depth = shown::figure(1.0, Kind::Depth, units),
            days = count(basis.dry_spell_days, phrase!("day", "día"), phrase!("days", "días")),
        ),
        Method::FivePercent => say!(
            "5\u{a0}% rule of BS 8515 and BS EN 16941-1: the lesser of 5\u{a0}% of a year's yield ({comes}) and of a \
             year's use ({used}), some 18 days of it; made for houses where the mains make up the rest, so far too \
             little where nothing does.",
            "Regla del 5\u{a0}% de BS 8515 y BS EN 16941-1: lo menor entre el 5\u{a0}% del agua captada en un año \
             ({comes}) y el 5\u{a0}% del uso de un año ({used}), unos 18 días de uso; hecha para casas donde la red \
             pública pone el resto, así que es demasiado poco donde nada lo pone.",
            comes = shown::figure(basis.yield_l(), Kind::Volume, units),
            used = shown::figure(basis.demand_l(), Kind::Volume, units),
        ),
        Method::SixPercent => phrase!(
            "6\u{a0}% rule of DIN 1989-1: the same with 6\u{a0}%, some 22 days of it, and made for the same houses \
             with mains beside.",
            "Regla del 6\u{a0}% de DIN 1989-1: lo mismo con 6\u{a0}%, unos 22 días de uso, y hecha para las mismas \
             casas con red pública al lado.",
        )
        .to_owned(),
    }
}

/// What a method says, as it stands in the table.
pub fn says(says: Said, units: &Units) -> String {
    match says {
        Said::Tank(litres) => shown::figure(litres, Kind::Volume, units),
        Said::Impossible { yield_l, demand_l } => say!(
            "none: {comes} a year comes, {wanted} is wanted",
            "ninguno: llegan {comes} al año y se necesitan {wanted}",
            comes = shown::figure(yield_l, Kind::Volume, units),
            wanted = shown::figure(demand_l, Kind::Volume, units),
        ),
    }
}

/// How ours differs from all of them.
pub const OURS: Phrase = phrase!(
    "This house, day by day: the whole record, with the house's own tanks, diverters and order of uses.",
    "Esta casa, día por día: todo el registro, con los tanques, desviadores y orden de usos de la propia casa.",
);

/// The name of our own result.
pub const OUR_NAME: Phrase = phrase!("This house, day by day", "Esta casa, día por día");

/// While it runs: how far it is.
pub fn running(progress: f64) -> String {
    say!("Reckoning: {done}", "Calculando: {done}", done = percent(progress))
}

/// When it was cancelled.
pub const CANCELLED: Phrase = phrase!("Cancelled before it was done.", "Se canceló antes de terminar.");
/// Why nothing can be asked yet.
pub const NO_ANSWER: Phrase = phrase!(
    "This needs a house that can run, and its rain.",
    "Esto necesita una casa que pueda funcionar, y su lluvia.",
);
/// The button that cancels.
pub const CANCEL: Phrase = phrase!("Cancel", "Cancelar");
/// The button that asks again.
pub const AGAIN: Phrase = phrase!("Reckon it", "Calcularlo");

/// Under a curve: what is used a year in L now, and at its ends.
pub fn yield_along([now, left, right]: [f64; 3], units: &Units) -> String {
    let litres = |litres: f64| shown::figure(litres, Kind::Volume, units);
    say!(
        "Yield a year: {now} now; from {left} at the left end to {right} at the right.",
        "Agua usada al año: {now} ahora; de {left} en el extremo izquierdo a {right} en el derecho.",
        now = litres(now),
        left = litres(left),
        right = litres(right)
    )
}

/// Under the surface.
pub fn surface_caption(wanted: Wanted) -> String {
    say!(
        "Lines of equal reliability, by {measure}. Storage to the right, use upwards.",
        "Líneas de igual confiabilidad, por {measure}. Almacenamiento hacia la derecha, uso hacia arriba.",
        measure = measured(wanted)
    )
}

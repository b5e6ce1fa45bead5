//! Words of the weeks ahead: sentences that a child can repeat.

use chrono::{Days, NaiveDate};

use super::{count, date, day_of_year, days as days_text, number_text, percent};
use crate::engine::ahead::ask::{By, Help, OLD_READING_DAYS, Why, Years};
use crate::engine::ahead::expected::{Expected, FEWEST};
use crate::engine::ahead::looking::{Ahead, MOST_FACTOR};
use crate::engine::learning::spans::Factors;
use crate::engine::rain::weather::Origin;
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};

/// The name of the place, as its heading.
pub const TITLE: Phrase = phrase!("The weeks ahead", "Las semanas que vienen");
/// While it is being looked at.
pub const LOOKING: Phrase = phrase!("Looking ahead…", "Mirando lo que viene…");
/// On the button that leads to the diary.
pub const OPEN_DIARY: Phrase = phrase!("Write down a level", "Anotar un nivel");
/// On the button that leads to the rain.
pub const OPEN_RAIN: Phrase = phrase!("Give this site its rain", "Darle su lluvia a este sitio");
/// Over what could be done.
pub const HELPS: Phrase = phrase!("What would help", "Lo que ayudaría");
/// Over the safe use.
pub const SAFE: Phrase = phrase!("How much is safe", "Cuánto es seguro");
/// Over the chances.
pub const CHANCES: Phrase = phrase!("When it may run out", "Cuándo se puede acabar");
/// Over what a storm would find and do.
pub const STORM: Phrase = phrase!("If a storm comes", "Si viene una tormenta");
/// Label of the rain that is announced.
pub const ANNOUNCED: Phrase = phrase!("Rain announced", "Lluvia anunciada");
/// Label of how long it lasts.
pub const LASTS: Phrase = phrase!("It lasts", "Dura");
/// Under it.
pub const STORM_LISTS: Phrase = phrase!(
    "Until you say what is announced, the storm is that of the sheets' checks. What to do before one and after it stands under Upkeep.",
    "Mientras no digas qué se anuncia, la tormenta es la de las comprobaciones de las hojas. Qué hacer antes y después está en \
     Cuidados.",
);
/// Over what it rests on.
pub const BASIS: Phrase = phrase!("What this rests on", "En qué se basa esto");
/// Over the choice of days.
pub const TO_LAST: Phrase = phrase!("To last", "Que dure");
/// Over the day to which it is to last.
pub const UNTIL: Phrase = phrase!("Until", "Hasta el");
/// Over the choice of chance.
pub const CHANCE: Phrase = phrase!("With a chance of", "Con una probabilidad de");
/// Over the choice of years.
pub const YEARS: Phrase = phrase!("Rain to come", "Lluvia que vendrá");
/// The fan's title.
pub const FAN: Phrase = phrase!("Water to come", "El agua que vendrá");
/// What the fan shows.
pub const FAN_CAPTION: Phrase = phrase!(
    "Water over the outlets of all tanks. Each day by itself, eight futures in ten lie within the band: its edges are \
     not single years. The broken line is the floor: no more rain.",
    "Agua por encima de las salidas de todos los tanques. Día por día, ocho de cada diez futuros quedan dentro de la \
     banda: sus bordes no son un solo año. La línea discontinua es el mínimo: sin más lluvia.",
);
/// At the fan's lines.
pub const FAN_LINES: [Phrase; 4] = [
    phrase!("dry (1 in 10 below)", "seco (1 de 10 por debajo)"),
    phrase!("middle", "intermedio"),
    phrase!("wet (1 in 10 above)", "húmedo (1 de 10 por encima)"),
    phrase!("no more rain", "sin más lluvia"),
];

/// How many days the water may be wanted to last, with words.
pub const TARGETS: [(usize, Phrase); 5] = [
    (30, phrase!("1 month", "1 mes")),
    (60, phrase!("2 months", "2 meses")),
    (90, phrase!("3 months", "3 meses")),
    (180, phrase!("6 months", "6 meses")),
    (365, phrase!("a year", "un año")),
];
/// Chances with words.
pub const CHANCES_WANTED: [(f64, Phrase); 3] =
    [(0.9, phrase!("9 in 10", "9 de 10")), (0.8, phrase!("8 in 10", "8 de 10")), (0.5, phrase!("5 in 10", "5 de 10"))];
/// Years with words.
pub const YEARS_WANTED: [(Years, Phrase); 2] = [
    (Years::Recorded, phrase!("as the years on record", "como los años del registro")),
    (Years::Generated, phrase!("as generated years", "como años generados")),
];

/// Why nothing can be told.
pub fn why(why: &Why) -> String {
    match why {
        Why::NoReading => phrase!(
            "Write down how full the tanks are: the weeks ahead start from the last reading.",
            "Anota cuánta agua hay en los tanques: las semanas que vienen parten de la última lectura.",
        )
        .to_owned(),
        Why::NoRain => phrase!(
            "Give this site its rain: the weeks ahead are looked at under the rain of other years.",
            "Dale su lluvia a este sitio: las semanas que vienen se miran bajo la lluvia de otros años.",
        )
        .to_owned(),
        Why::Refused(refusal) => super::errors::refusal(refusal).unwrap_or_else(|| {
            phrase!(
                "This house can't run yet. What is missing is listed beside its drawing.",
                "Esta casa todavía no puede funcionar. Lo que falta está en la lista junto a su dibujo.",
            )
            .to_owned()
        }),
        Why::NoFuture { floor } => say!(
            "If it never rains again, the water lasts {floor}. More can't be told: the rain of this site has no whole year \
             to look ahead under. Load a longer record, or enter the twelve monthly means of the place.",
            "Si no vuelve a llover, el agua dura {floor}. No se puede decir más: la lluvia de este sitio no tiene ningún \
             año completo con que mirar lo que viene. Carga un registro más largo, o escribe los doce promedios mensuales \
             del lugar.",
            floor = floor.map_or_else(more_than_a_year, days_text)
        ),
    }
}

/// What is said first where the last reading is old.
pub fn old_reading(ahead: &Ahead) -> Option<String> {
    let age = (today(ahead) - ahead.last_read_on).num_days();
    let age = usize::try_from(age).ok().filter(|_| age > OLD_READING_DAYS)?;
    Some(say!(
        "The last reading is {days} old: read the level.",
        "La última lectura es de hace {days}: lee el nivel.",
        days = days_text(age)
    ))
}

/// What the weeks ahead leave out where the readings warn.
pub const AS_MENDED: Phrase = phrase!(
    "This takes what the readings warn of as mended: until then the water lasts less.",
    "Esto da por arreglado lo que avisan las lecturas: hasta entonces el agua dura menos.",
);
/// That it was reckoned by what is entered though the readings show something else.
pub const AS_ENTERED: Phrase = phrase!(
    "Reckoned by what is entered: the readings contradict it.",
    "Calculado según lo indicado: las lecturas lo contradicen.",
);
/// Label of the choice between what the readings show and what is entered.
pub const RECKONED_BY: Phrase = phrase!("Reckoned by", "Calculado según");
/// What can be chosen there.
pub const BASES: [(By, Phrase); 2] = [
    (By::Readings, phrase!("what the readings show", "lo que muestran las lecturas")),
    (By::Entered, phrase!("what is entered", "lo indicado")),
];

/// That it was reckoned with what the readings show instead of what is entered.
pub fn as_shown(shown: Factors, units: &Units) -> String {
    let Factors { capture, uses, leak_l } = shown;
    let caught = (capture != 1.0).then(|| {
        say!(
            "gutters and screens bring {share} of what is entered for them",
            "las canaletas y mallas traen {share} de lo indicado",
            share = percent(capture)
        )
    });
    let used = (uses != 1.0).then(|| {
        say!("the house uses {share} of what is entered", "la casa usa {share} de lo indicado", share = percent(uses))
    });
    let leaks = (leak_l > 0.0).then(|| {
        say!("leaks take {leak}", "las fugas se llevan {leak}", leak = shown::figure(leak_l, Kind::Flow, units))
    });
    let parts: Vec<String> = [caught, used, leaks].into_iter().flatten().collect();
    say!("Reckoned by the readings: {parts}.", "Calculado según las lecturas: {parts}.", parts = super::list(&parts))
}

/// Whether nothing stands in the stores and nothing lasts.
fn is_empty(ahead: &Ahead) -> bool {
    /// Less than this is nothing, in L.
    const NOTHING_L: f64 = 1.0;
    ahead.floor.live_l.first().is_some_and(|litres| *litres < NOTHING_L)
}

/// So many whole days, the next smaller: what is promised is kept.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most a year")]
fn whole(days: f64) -> Option<usize> {
    days.is_finite().then(|| days.floor().max(0.0) as usize)
}

fn more_than_a_year() -> String {
    phrase!("more than a year", "más de un año").to_owned()
}

fn days_or_more(days: f64) -> String {
    whole(days).map_or_else(more_than_a_year, days_text)
}

fn days_until(days: f64, today: NaiveDate) -> String {
    match whole(days).and_then(|days| Some((days, today.checked_add_days(Days::new(u64::try_from(days).ok()?))?))) {
        Some((0, _)) => phrase!("not even tomorrow", "ni siquiera hasta mañana").to_owned(),
        Some((days, until)) => say!(
            "{days}, until {until}",
            "{days}, hasta el {until}",
            days = days_text(days),
            until = day_of_year(until)
        ),
        None => more_than_a_year(),
    }
}

/// The answer: "In a middle year (1 in 2) the water lasts 74 days, until 7 February."
pub fn headline(ahead: &Ahead) -> String {
    if whole(ahead.lasting.half) == Some(0) {
        if is_empty(ahead) {
            return phrase!(
                "The tanks are empty: nothing can be drawn until it rains or water is brought.",
                "Los tanques están vacíos: no se puede sacar agua hasta que llueva o se traiga.",
            )
            .to_owned();
        }
        return phrase!("The water runs short tomorrow.", "Mañana faltará agua.").to_owned();
    }
    say!(
        "In a middle year (1 in 2) the water lasts {days}.",
        "En un año intermedio (1 de cada 2), el agua dura {days}.",
        days = days_until(ahead.lasting.half, today(ahead))
    )
}

/// The same in a line for the house.
pub fn in_a_line(ahead: &Ahead) -> String {
    if whole(ahead.lasting.half) == Some(0) {
        return headline(ahead);
    }
    say!(
        "Water from today: in a middle year (1 in 2) {half}. In a dry year (1 in 10) {tenth}; if it never rains again, {floor}.",
        "Agua desde hoy: en un año intermedio (1 de cada 2), {half}. En un año seco (1 de cada 10), {tenth}; si no vuelve a llover, {floor}.",
        half = days_or_more(ahead.lasting.half),
        tenth = days_or_more(ahead.lasting.tenth),
        floor = days_or_more(floor_days(ahead))
    )
}

fn today(ahead: &Ahead) -> NaiveDate {
    ahead.dates.first().copied().unwrap_or_default()
}

fn floor_days(ahead: &Ahead) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "at most a year")]
    ahead.floor.lasts.map_or(f64::INFINITY, |days| days as f64)
}

/// The range, and the floor; none where nothing lasts to begin with.
pub fn range(ahead: &Ahead) -> Vec<String> {
    if [ahead.lasting.ninetieth, floor_days(ahead)].iter().all(|days| whole(*days) == Some(0)) {
        return Vec::new();
    }
    let last = |days: f64| days_until(days, today(ahead));
    vec![
        say!(
            "In a dry year (1 in 10): {days}.",
            "En un año seco (1 de cada 10): {days}.",
            days = last(ahead.lasting.tenth)
        ),
        say!(
            "In a wet year (1 in 10): {days}.",
            "En un año húmedo (1 de cada 10): {days}.",
            days = last(ahead.lasting.ninetieth)
        ),
        say!("If it never rains again: {days}.", "Si no vuelve a llover: {days}.", days = last(floor_days(ahead))),
    ]
}

/// Which of several uses lacks water first.
pub fn short(using: &str) -> String {
    say!("{using} would most likely run short first.", "Lo más probable es que primero le falte agua a {using}.", using)
}

/// A step of rationing that is in force today.
pub fn in_force(step: &str) -> String {
    say!("“{step}” is in force today.", "«{step}» está en vigor hoy.", step)
}

/// Behind the safe use of a house with steps of rationing.
pub const SAFE_UNRATIONED: Phrase = phrase!(
    "That is what may be drawn, and the use as it is entered: no rationing is taken off.",
    "Es lo que se puede sacar, y el uso tal como está escrito: sin descontar ningún racionamiento.",
);

/// How much is safe.
pub fn safe(ahead: &Ahead, chance: f64, units: &Units) -> String {
    let safe = &ahead.safe;
    let until = ahead.dates.get(safe.target.days).copied().unwrap_or_default();
    let flow = |litres: f64| shown::figure(litres, Kind::Flow, units);
    let odds = CHANCES_WANTED.iter().find(|(value, _)| *value == chance).map_or("", |(_, words)| words.text());
    let goal = say!(
        "For the water to last until {until} with a chance of {odds}",
        "Para que el agua dure hasta el {until} con una probabilidad de {odds}",
        until = date(until),
        odds
    );
    if safe.now_l <= 0.0 {
        return say!(
            "Until {until} nothing is drawn, so nothing runs out.",
            "Hasta el {until} no se saca nada, así que nada se acaba.",
            until = date(until)
        );
    }
    let now = flow(safe.now_l);
    let factor = safe.factor(chance);
    if factor >= MOST_FACTOR {
        return say!(
            "{goal}, the house can use as much as it does, {now} on average, and far more.",
            "{goal}, la casa puede usar tanto como ahora, {now} en promedio, y mucho más.",
            goal,
            now
        );
    }
    let change = if factor >= 1.0 {
        say!(
            "It uses {now}, within that. What is left for the time after that day is not in it: look further ahead \
             before you use more.",
            "Usa {now}, dentro de ese límite. Lo que quede para después de ese día no entra: mira más lejos antes \
             de usar más.",
            now
        )
    } else {
        say!(
            "It uses {now}: {over} too much.",
            "Usa {now}: {over} de más.",
            over = flow(safe.now_l * (1.0 - factor)),
            now
        )
    };
    say!(
        "{goal}, the house can use {safe}. {change}",
        "{goal}, la casa puede usar {safe}. {change}",
        safe = flow(safe.litres_a_day(chance)),
        goal,
        change
    )
}

/// A trunk line whose valve is shut.
pub fn shut(line: &str) -> String {
    say!(
        "Open the valve of {line}, if water stands behind it and there is room for it on this side: shut, it is counted for no \
         use here.",
        "Abre la válvula de {line}, si hay agua detrás y lugar para ella de este lado: cerrada, esa agua no cuenta para los \
         usos de aquí.",
        line
    )
}

/// What one help would make of it.
pub fn help(help: Help, with: &Expected, now: &Expected, ration: impl Fn(usize) -> String, units: &Units) -> String {
    let what = match help {
        Help::UseLess(share) if share <= 0.15 => phrase!("Use a tenth less", "Usa una décima parte menos").to_owned(),
        Help::UseLess(_) => phrase!("Use a quarter less", "Usa una cuarta parte menos").to_owned(),
        Help::Ration(step) => say!("Begin “{step}” tomorrow", "Empieza «{step}» mañana", step = ration(step)),
        Help::Delivery(litres) => {
            say!("Have {water} brought", "Encarga {water}", water = shown::figure(litres, Kind::Volume, units))
        }
    };
    let gained = |with: f64, now: f64| match (whole(with), whole(now)) {
        (Some(with), Some(now)) if with > now => say!("{days} more", "{days} más", days = days_text(with - now)),
        (Some(with), Some(now)) if with < now => say!("{days} fewer", "{days} menos", days = days_text(now - with)),
        (None, Some(_)) => more_than_a_year(),
        (Some(_), None) => phrase!("less than before", "menos que antes").to_owned(),
        (None, None) => phrase!("more than a year either way", "más de un año de todos modos").to_owned(),
        (Some(_), Some(_)) => phrase!("no day more", "ningún día más").to_owned(),
    };
    say!(
        "{what}: in a middle year {half}; in a dry year (1 in 10) {tenth}.",
        "{what}: en un año intermedio, {half}; en un año seco (1 de cada 10), {tenth}.",
        half = gained(with.half, now.half),
        tenth = gained(with.tenth, now.tenth),
        what
    )
}

/// So many years.
pub fn years_text(number: usize) -> String {
    count(number, phrase!("year", "año"), phrase!("years", "años"))
}

/// Over the columns of the days, and of the years of so many in which the water runs out before each.
pub fn chance_columns(of: usize) -> Vec<String> {
    let dry = say!("had run dry, of {of}", "ya sin agua, de {of}", of = number_text(of));
    vec![phrase!("before", "antes del").to_owned(), dry]
}

/// Which tanks nobody read, and what that makes of them.
pub fn unread(unread: &[String]) -> Option<String> {
    match unread {
        [] => None,
        [tank] => Some(say!(
            "No reading of {tank}: it counts as empty.",
            "No hay lectura de {tank}: se cuenta como si no tuviera agua.",
            tank
        )),
        tanks => Some(say!(
            "No reading of {tanks}: they count as empty.",
            "No hay lectura de {tanks}: se cuentan como si no tuvieran agua.",
            tanks = super::list(tanks)
        )),
    }
}

/// Where the futures come from, and how far to trust them.
pub fn basis(ahead: &Ahead, origin: Origin) -> Vec<String> {
    let (today, years) = (today(ahead), ahead.lasts.len());
    let read = super::read_on(ahead.read_on, ahead.last_read_on);
    let mut lines = vec![if ahead.read_on == today {
        phrase!(
            "The water in the tanks that were read is today's reading.",
            "El agua de los tanques medidos es la de la lectura de hoy."
        )
        .to_owned()
    } else if i64::try_from(ahead.unknown_days).is_ok_and(|unknown| unknown >= (today - ahead.read_on).num_days()) {
        say!(
            "The water in store was read {read} and carried on to today by the use since, without any measured rain.",
            "El agua almacenada se leyó {read} y se llevó hasta hoy con el uso desde entonces, sin ninguna lluvia \
             medida.",
            read
        )
    } else {
        say!(
            "The water in store was read {read} and carried on to today through the rain since.",
            "El agua almacenada se leyó {read} y se llevó hasta hoy con la lluvia caída desde entonces.",
            read
        )
    }];
    if ahead.unknown_days > 0 {
        lines.push(say!(
            "On {days} since then nobody measured the rain: each future has its own on them, and the floor none.",
            "En {days} desde entonces nadie midió la lluvia: ahí cada futuro tiene la suya, y el mínimo ninguna.",
            days = days_text(ahead.unknown_days)
        ));
    }
    lines.push(match origin {
        Origin::Generated => say!(
            "{years} drawn from the place's rain, as unsure as its record is short. Tried on two published records, the \
             band held 74 to 81 of 100 outcomes instead of 80.",
            "{years} de la lluvia del lugar, con tanta más duda cuanto más corto es su registro. Probada con dos \
             registros publicados, la banda contuvo de 74 a 81 de cada 100 resultados en vez de 80.",
            years = count(years, phrase!("year was", "año generado"), phrase!("years were", "años generados"))
        ),
        _ => say!(
            "The rain of {years}, each from this day of the calendar on.",
            "La lluvia de {years}, cada uno desde este día del calendario.",
            years =
                count(years, phrase!("year on record", "año del registro"), phrase!("years on record", "años del registro"))
        ),
    });
    // Nobody should have to guess why the table has another number than the range.
    lines.push(say!(
        "“A dry year (1 in 10)” is what to expect of the next one: one outcome in ten is less. “{chances}” counts \
         instead in how many of {years} the water ran out before the day, even if it came back.",
        "«Un año seco (1 de 10)» es lo que cabe esperar del próximo: uno de cada diez resultados es menor. «{chances}» \
         cuenta, en cambio, en cuántos de {years} se acabó el agua antes de ese día, aunque después volviera.",
        chances = CHANCES.text(),
        years = years_text(years)
    ));
    if years < FEWEST {
        lines.push(say!(
            "{years} are few: the range is just from the driest to the wettest of them.",
            "Solo hay {years}: el rango va apenas del más seco al más húmedo.",
            years = years_text(years)
        ));
    }
    lines.push(
        phrase!(
            "Loads of hauled water are not counted on; rationing is, as it is entered.",
            "No se cuenta con viajes de agua acarreada; con el racionamiento sí, como está indicado.",
        )
        .to_owned(),
    );
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_dry_year_is_named_wherever_it_is_told_of() {
        let lasting = Expected { tenth: 5.0, half: 7.0, ninetieth: 9.0 };
        let ahead = Ahead { lasts: vec![1.0; 12], lasting, ..Ahead::default() };
        let units = Units::customary(crate::quantity::Customary::Metric);
        let none = Expected::default();
        let help = help(Help::UseLess(0.1), &none, &none, |_| String::new(), &units);
        let told = [range(&ahead), vec![in_a_line(&ahead), help]].concat();
        let of_a_dry_year: Vec<&String> = told.iter().filter(|text| text.to_lowercase().contains("dry year")).collect();
        assert_eq!(of_a_dry_year.len(), 3);
        assert!(of_a_dry_year.iter().all(|text| text.contains("dry year (1 in 10)")), "{of_a_dry_year:?}");
        let basis = basis(&ahead, Origin::Measured);
        assert!(basis.iter().any(|line| line.contains(CHANCES.text()) && line.contains("12 years")), "{basis:?}");
    }

    fn read_days_ago(days: u64) -> Ahead {
        let today = NaiveDate::from_ymd_opt(2026, 8, 30).unwrap_or_default();
        let read_on = today.checked_sub_days(Days::new(days)).unwrap_or_default();
        let unknown_days = usize::try_from(days).unwrap_or_default();
        Ahead { read_on, last_read_on: read_on, dates: vec![today], unknown_days, ..Ahead::default() }
    }

    #[test]
    fn an_old_reading_is_told_and_no_rain_is_claimed_that_nobody_wrote() {
        let old = old_reading(&read_days_ago(200));
        assert!(old.is_some_and(|told| told.contains("200 days old: read the level")));
        assert_eq!(old_reading(&read_days_ago(45)), None);
        let of = |unknown_days| basis(&Ahead { unknown_days, ..read_days_ago(200) }, Origin::Measured)[0].clone();
        assert!(of(200).contains("without any measured rain"), "{}", of(200));
        assert!(of(199).contains("through the rain since"), "{}", of(199));
    }

    #[test]
    fn an_empty_tank_is_said_to_be_empty() {
        let mut ahead = read_days_ago(0);
        ahead.floor = crate::engine::ahead::outlook::Course { live_l: vec![0.0], lasts: Some(0), short: None };
        assert!(headline(&ahead).starts_with("The tanks are empty"));
        assert!(in_a_line(&ahead).starts_with("The tanks are empty"));
        assert_eq!(range(&ahead), Vec::<String>::new());
        ahead.floor.live_l = vec![30.0];
        assert_eq!(headline(&ahead), "The water runs short tomorrow.");
    }
}

//! Words of the diary.

use super::{count, date, parts, percent};
use chrono::NaiveDate;

use crate::engine::diary::doubts::Doubt;
use crate::language::Phrase;
use crate::quantity::{Kind, Range, Units, shown};
use crate::site::diary::{Level, Parameter, Subject, TestResult, Told, Water};
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::work::Task;

/// An entry was written.
pub const WRITTEN: Phrase = phrase!("Written into the diary.", "Anotado en el diario.");
/// An entry was written for another day, among whose entries it stands.
pub fn written_for(day: NaiveDate) -> String {
    let day = date(day);
    say!("Written into the diary. It stands under {day}.", "Anotado en el diario. Está en el {day}.", day)
}

/// A day of a year of which no diary tells.
pub fn no_such_day(day: NaiveDate) -> String {
    say!(
        "{day} is no day that a diary can tell of. Choose a day with all four figures of its year.",
        "Un diario no puede contar del {day}. Elige un día con las cuatro cifras del año.",
        day = date(day)
    )
}

/// An entry was taken out.
pub const REMOVED: Phrase = phrase!("Taken out of the diary.", "Sacado del diario.");
/// Nothing is in it.
pub const EMPTY: Phrase = phrase!(
    "Nothing is written yet. A level now and then and the rain of each day are enough to know how long the water lasts. A \
     day without an entry counts as unknown, never as dry.",
    "Todavía no hay nada anotado. Con un nivel de vez en cuando y la lluvia de cada día basta para saber cuánto dura el \
     agua. Un día sin anotación cuenta como desconocido, nunca como día sin lluvia.",
);
/// Nothing in the span.
pub const EMPTY_SPAN: Phrase = phrase!("Nothing is written in these days.", "No hay nada anotado en estos días.");
/// No tank.
pub const NO_TANK: Phrase = phrase!(
    "There is no tank yet. Add one to the house first.",
    "Todavía no hay ningún tanque. Añade primero uno a la casa.",
);
/// An empty note.
pub const EMPTY_NOTE: Phrase = phrase!("Write a word or two.", "Escribe una palabra o dos.");
/// Over the charts.
pub const LINE: Phrase = phrase!(
    "Dots are readings; a hollow one says full, so it may have been more. The line is what the balance makes of the rain \
     from each reading on; it ends where the rain of a day is not known.",
    "Los puntos son lecturas; uno hueco dice lleno, así que puede haber sido más. La línea es lo que el balance saca \
     de la lluvia desde cada lectura; termina donde no se conoce la lluvia de un día.",
);
/// Behind it, where tanks were joined or parted after a reading that is drawn.
pub const JOINED_OTHERWISE: Phrase = phrase!(
    " Some were read while these tanks were joined otherwise: their dots show what would stand in today's tanks, no line goes \
     on from them, and nothing is learned from them.",
    " Algunas se leyeron cuando estos tanques estaban unidos de otra manera: sus puntos muestran lo que habría en los tanques \
     de hoy; ninguna línea sigue desde ellas y nada se aprende de ellas.",
);
/// Under the chart of rain.
pub const RAIN_CAPTION: Phrase = phrase!(
    "Rain as it was written down or measured. Small crosses: days nobody looked at.",
    "La lluvia como se anotó o se midió. Cruces pequeñas: días en que nadie miró.",
);

/// A number outside what may be written.
pub fn out_of_range(kind: Kind, range: Range, units: &Units) -> String {
    say!(
        "It can be written from {least} to {greatest}.",
        "Se puede anotar de {least} a {greatest}.",
        least = shown::entered(range.least, kind, units),
        greatest = shown::figure(range.greatest, kind, units)
    )
}

/// The button that writes the rain of a day and goes on to the day after.
pub const WRITE_AND_NEXT: Phrase = phrase!("Write, then the next day", "Anotar y seguir con el día siguiente");

/// The button that writes a dry spell.
pub fn dry_spell(first: NaiveDate, last: NaiveDate) -> String {
    let days = usize::try_from((last - first).num_days() + 1).unwrap_or_default();
    say!(
        "No rain since {date}: 0 for {days}",
        "Sin lluvia desde el {date}: 0 en {days}",
        date = super::day_of_year(first),
        days = super::days(days)
    )
}

/// The button that takes a depth too large as what it may have been meant as.
pub fn take_as(text: &str) -> String {
    say!("Take as {text}", "Tomar como {text}", text)
}

/// A part by its name; one that is gone is said to be.
pub fn part_name(id: PartId, system: &System) -> String {
    let name = system.name_of(id);
    if !name.is_empty() {
        return name;
    }
    let barriers = system.uses.iter().flat_map(|using| using.barriers.iter().map(move |barrier| (using, barrier)));
    let barrier = barriers.into_iter().find(|(_, barrier)| barrier.id == id);
    barrier.map_or_else(
        || phrase!("a part that is gone", "una parte que ya no está").to_owned(),
        |(using, barrier)| {
            say!(
                "{barrier} of {of}",
                "{barrier} de {of}",
                barrier = super::treatment::barriers::name(barrier.kind),
                of = using.name
            )
        },
    )
}

/// Where a level was read.
pub fn water(of: Water, system: &System) -> String {
    let tank = part_name(of.tank(), system);
    match of {
        Water::Tank(_) => tank,
        Water::Store(_) => say!("{tank} and all joined with it", "{tank} y todos los unidos con él", tank),
    }
}

/// A level.
pub fn level(level: Level, units: &Units) -> String {
    match level {
        Level::Depth(depth) => {
            say!("{depth} deep", "{depth} de profundidad", depth = shown::entered(depth.get(), Kind::Length, units))
        }
        Level::Share(share) => say!("{share} full", "{share} de lo que cabe", share = percent(share.get())),
        Level::Volume(volume) => shown::entered(volume.get(), Kind::Volume, units),
        Level::Full => phrase!("full", "lleno").to_owned(),
    }
}

/// That nobody drew water for so many hours before a reading.
pub fn undrawn(hours: f64) -> String {
    say!(
        "nobody drew water for {hours} before",
        "nadie sacó agua durante {hours} antes",
        hours = shown::entered(hours, Kind::Hours, &Units::default())
    )
}

/// What an entry tells, without its note.
pub fn told(told: &Told, system: &System, units: &Units) -> String {
    let at = |id: &Option<PartId>| id.map_or_else(String::new, |id| format!(", {}", part_name(id, system)));
    match told {
        Told::Level { of, level: how, undrawn: hours, .. } => {
            let hours = hours.map_or_else(String::new, |hours| format!("; {}", undrawn(hours.get())));
            format!("{}: {}{hours}", water(*of, system), level(*how, units))
        }
        Told::Rain(depth) if depth.get() == 0.0 => phrase!("No rain", "Sin lluvia").to_owned(),
        Told::Rain(depth) => {
            say!("Rain: {depth}", "Lluvia: {depth}", depth = shown::entered(depth.get(), Kind::Depth, units))
        }
        Told::Meter { of, reading } => say!(
            "Meter{at}: {reading}",
            "Medidor{at}: {reading}",
            at = at(of),
            reading = shown::metered(reading.get(), units)
        ),
        Told::Delivery { to, volume, price } => {
            let price = price.map_or_else(String::new, |price| {
                say!(", for {price}", ", por {price}", price = shown::entered(price.get(), Kind::Money, units))
            });
            say!(
                "Brought{at}: {volume}{price}",
                "Agua traída{at}: {volume}{price}",
                at = at(to),
                volume = shown::entered(volume.get(), Kind::Volume, units),
                price
            )
        }
        Told::Work { on, task } => format!("{}{}", done(*task), at(on)),
        Told::Test { at: part, parameter, found } => say!(
            "Test{at}: {what} {found}",
            "Análisis{at}: {what}, {found}",
            at = at(part),
            what = parameter_name(*parameter),
            found = self::found(*parameter, *found)
        ),
        Told::Note => String::new(),
    }
}

/// What a test found.
pub fn found(parameter: Parameter, found: TestResult) -> String {
    let unit = match super::treatment::results::unit(parameter) {
        "" => String::new(),
        unit => format!("\u{a0}{unit}"),
    };
    match found {
        TestResult::Value(value) => format!("{}{unit}", shown::significant(value, 4)),
        TestResult::Below(value) => {
            say!("under {value}{unit}", "menos de {value}{unit}", value = shown::significant(value, 4), unit)
        }
        TestResult::Present => phrase!("present", "presencia").to_owned(),
        TestResult::Absent => phrase!("absent", "ausencia").to_owned(),
    }
}

/// What is tested for, inside a sentence.
pub fn parameter_inside(parameter: Parameter) -> String {
    match parameter {
        Parameter::EColi | Parameter::Ph => parameter_name(parameter).to_owned(),
        _ => super::inside(parameter_name(parameter)),
    }
}

/// What is tested for.
pub fn parameter_name(parameter: Parameter) -> &'static str {
    match parameter {
        Parameter::EColi => "E.\u{a0}coli",
        Parameter::Coliforms => said!("Coliforms", "Coliformes"),
        Parameter::Turbidity => said!("Turbidity", "Turbidez"),
        Parameter::Ph => "pH",
        Parameter::FreeChlorine => said!("Free chlorine", "Cloro libre"),
        Parameter::Lead => said!("Lead", "Plomo"),
        Parameter::Copper => said!("Copper", "Cobre"),
        Parameter::Zinc => said!("Zinc", "Zinc"),
        Parameter::Cadmium => said!("Cadmium", "Cadmio"),
        Parameter::Arsenic => said!("Arsenic", "Arsénico"),
        Parameter::Chromium => said!("Chromium", "Cromo"),
        Parameter::Iron => said!("Iron", "Hierro"),
        Parameter::Manganese => said!("Manganese", "Manganeso"),
        Parameter::Aluminium => said!("Aluminium", "Aluminio"),
        Parameter::Benzopyrene => said!("Benzo(a)pyrene", "Benzo(a)pireno"),
        Parameter::Asbestos => said!("Asbestos fibres", "Fibras de asbesto"),
        Parameter::Nitrate => said!("Nitrate, as nitrate", "Nitrato, como nitrato"),
        Parameter::Conductivity => said!("Conductivity", "Conductividad"),
        Parameter::Transmittance => said!("UV transmittance", "Transmitancia UV"),
        Parameter::Other => said!("Something else (say in the note)", "Otra cosa (indícala en la nota)"),
    }
}

/// Work as it is told once done.
pub fn done(task: Task) -> &'static str {
    match task {
        Task::Roof => said!("Roof looked over", "Techo revisado"),
        Task::Gutter => said!("Gutter cleaned", "Canaleta limpiada"),
        Task::Screen => said!("Leaf screen cleaned", "Malla para hojas limpiada"),
        Task::Diverter => {
            said!("First flush emptied and rinsed, ball checked", "Primeras aguas vaciadas y enjuagadas, bola revisada")
        }
        Task::Hole => said!("Slow-release hole cleared", "Orificio de vaciado lento destapado"),
        Task::InletMesh => said!("Inlet mesh checked", "Malla de la entrada revisada"),
        Task::TankLook => said!("Tank looked into", "Interior del tanque revisado desde la tapa"),
        Task::Desludging => said!("Sludge taken out", "Lodo sacado"),
        Task::Disinfection => said!("Tank disinfected", "Tanque desinfectado"),
        Task::Lid => said!("Lid and lock checked", "Tapa y candado revisados"),
        Task::Anchors => said!("Anchors checked", "Anclajes revisados"),
        Task::PumpStrainer => said!("Pump strainer cleaned", "Colador de la bomba limpiado"),
        Task::Cartridge => said!("Cartridge changed", "Cartucho cambiado"),
        Task::Ceramic => said!("Ceramic candle scrubbed", "Vela de cerámica cepillada"),
        Task::Lamp => said!("Lamp changed", "Lámpara cambiada"),
        Task::Sleeve => said!("Lamp sleeve wiped", "Funda de la lámpara limpiada"),
        Task::WaterTest => said!("Water tested", "Agua analizada"),
        Task::Joints => said!("Joints, valves and taps checked", "Uniones, válvulas y grifos revisados"),
        Task::Other => said!("Work done", "Trabajo hecho"),
    }
}

/// A doubt about what is to be written.
pub fn doubt(doubt: &Doubt, units: &Units) -> String {
    let volume = |litres: f64| shown::figure(litres, Kind::Volume, units);
    let depth = |mm: f64| shown::figure(mm, Kind::Depth, units);
    match doubt {
        Doubt::InTheFuture => phrase!("That day is still to come.", "Ese día todavía no llega.").to_owned(),
        Doubt::MoreThanFits { hold_l } => say!(
            "All tanks together hold {hold}. Is it a zero too many?",
            "Todos los tanques juntos guardan {hold}. ¿Sobra un cero?",
            hold = volume(*hold_l)
        ),
        Doubt::LevelThatDay => phrase!(
            "A level of that day is written already; this counts as brought after it. If it was read afterwards, write the \
             level down once more.",
            "Ya hay anotado un nivel de ese día; esto cuenta como traído después. Si se leyó más tarde, anota el nivel una \
             vez más.",
        )
        .to_owned(),
        Doubt::AboveTheRim => phrase!("That is above the overflow.", "Eso está por encima del rebosadero.").to_owned(),
        Doubt::RoseWithoutRain { by_l, since } => say!(
            "That is {by} more than on {since}, and no rain or delivery is written since. Is it right, or is some rain \
             missing?",
            "Son {by} más que el {since}, y desde entonces no hay anotada lluvia ni agua traída. ¿Está bien, o falta \
             lluvia por anotar?",
            by = volume(*by_l),
            since = date(*since)
        ),
        Doubt::RoseMoreThanRain { by_l, most_l, since } => say!(
            "That is {by} more than on {since}; rain and deliveries since can have brought {most} at most.",
            "Son {by} más que el {since}; la lluvia y el agua traída desde entonces pueden haber dado {most} como mucho.",
            by = volume(*by_l),
            since = date(*since),
            most = volume(*most_l)
        ),
        Doubt::FellFast { by_l, drawn_l, since } => say!(
            "That is {by} less than on {since}; the uses would draw {drawn}. If it is right, look for a leak or an open \
             tap.",
            "Son {by} menos que el {since}; los usos sacarían {drawn}. Si está bien, busca una fuga o un grifo abierto.",
            by = volume(*by_l),
            since = date(*since),
            drawn = volume(*drawn_l)
        ),
        Doubt::MoreThanEver { most_mm } => say!(
            "That is more than on any day of this site's rain record ({most}).",
            "Es más que en cualquier día del registro de lluvia de este sitio ({most}).",
            most = depth(*most_mm)
        ),
        Doubt::RainTwice { there_mm } => say!(
            "Rain of {there} is already written on this day; both will count together.",
            "En este día ya hay anotada una lluvia de {there}; las dos contarán juntas.",
            there = depth(*there_mm)
        ),
        Doubt::MeterWentBack { before_l, on } => say!(
            "The meter stood at {before} on {on}.",
            "El medidor marcaba {before} el {on}.",
            before = shown::metered(*before_l, units),
            on = date(*on)
        ),
    }
}

/// What an entry is about.
pub fn subject(subject: Subject) -> &'static str {
    match subject {
        Subject::Level => said!("Level", "Nivel"),
        Subject::Rain => said!("Rain", "Lluvia"),
        Subject::Meter => said!("Meter", "Medidor"),
        Subject::Delivery => said!("Delivery", "Agua traída"),
        Subject::Work => said!("Work", "Trabajo"),
        Subject::Test => said!("Water test", "Análisis de agua"),
        Subject::Note => said!("Note", "Nota"),
    }
}

/// No part in particular.
pub fn no_part(subject: Subject) -> &'static str {
    match subject {
        Subject::Delivery => said!("the tanks", "los tanques"),
        Subject::Meter => said!("all that is drawn", "toda el agua que se saca"),
        Subject::Test => said!("not written down", "sin anotar"),
        _ => said!("the whole house", "toda la casa"),
    }
}

/// How a level is read: depth, share, volume, full.
pub const LEVEL_WAYS: [Phrase; 4] = [
    phrase!("Depth", "Profundidad"),
    phrase!("Share", "Porcentaje"),
    phrase!("Volume", "Volumen"),
    phrase!("Full", "Lleno"),
];
/// How a result is given: value, below, absent, present.
pub const FOUND_WAYS: [Phrase; 4] = [
    phrase!("Value", "Valor"),
    phrase!("Less than", "Menos de"),
    phrase!("Absent", "Ausencia"),
    phrase!("Present", "Presencia"),
];
/// Labels of the number that is asked for.
pub const DEPTH: Phrase =
    phrase!("Depth of water over the tank's floor", "Profundidad del agua sobre el fondo del tanque");
/// A share.
pub const SHARE: Phrase = phrase!("Share of what it holds", "Porcentaje de lo que cabe");
/// A volume.
pub const VOLUME: Phrase = phrase!("Water in it", "Agua que hay dentro");
/// What reading a level to find a leak is called.
pub const LEAK_TEST: Phrase = phrase!("A test for leaks", "Una prueba de fugas");
/// How that is done.
pub const LEAK_TEST_HOW: Phrase = phrase!(
    "Read the level with care to a few millimetres, let nobody draw water for a night or for days away, read again, and \
     write here how many hours that was. Only dry hours count: write down days without rain too.",
    "Lee el nivel con cuidado, a unos pocos milímetros; que nadie saque agua durante una noche o mientras no hay nadie \
     en casa unos días; lee otra vez y escribe aquí cuántas horas fueron. Solo cuentan las horas sin lluvia: anota \
     también los días sin lluvia.",
);
/// Its field.
pub const UNDRAWN: Phrase = phrase!(
    "Hours since the reading before in which nobody drew water",
    "Horas desde la lectura anterior en que nadie sacó agua",
);
/// Rain.
pub const RAIN: Phrase = phrase!("Rain of the day", "Lluvia del día");
/// A meter.
pub const METER: Phrase = phrase!("Reading of the meter", "Lectura del medidor");
/// Water that was brought.
pub const BROUGHT: Phrase = phrase!("How much was brought", "Cuánta agua se trajo");
/// A test.
pub const FOUND: Phrase = phrase!("What was found", "Qué se encontró");
/// The button that writes.
pub const WRITE: Phrase = phrase!("Write it down", "Anotar");
/// The button that writes what was questioned.
pub const WRITE_ALL_THE_SAME: Phrase = phrase!("It is right: write it down", "Está bien: anotar");
/// Under the number when nothing was written before.
pub const NOTHING_BEFORE: Phrase = phrase!("Nothing written before.", "Nada anotado antes.");

/// A part in a list to choose from.
pub fn part_choice(id: PartId, system: &System) -> String {
    system.part(id).map_or_else(String::new, |part| format!("{} ({})", part.name(), parts::one(part.kind())))
}

/// A note longer than what is kept.
pub const LONG_NOTE: Phrase = phrase!(
    "The note is too long: some 300 words find room. Make it shorter, or write the rest as a note of its own.",
    "La nota es demasiado larga: caben unas 300 palabras. Acórtala o anota el resto como otra nota.",
);

/// The button that opens the form of a subject.
pub fn write(subject: Subject) -> &'static str {
    match subject {
        Subject::Level => said!("Write the level", "Anotar el nivel"),
        Subject::Rain => said!("Write the rain", "Anotar la lluvia"),
        other => self::subject(other),
    }
}

/// What the buttons that open forms are for.
pub const WRITE_GROUP: Phrase = phrase!("Write into the diary", "Anotar en el diario");
/// No rain.
pub const DRY: Phrase = phrase!("No rain: 0", "Sin lluvia: 0");
/// A level of all tanks that are joined.
pub const WITH_JOINED: Phrase = phrase!("With all tanks joined to it", "Con todos los tanques unidos a él");

/// More days can be listed.
pub fn further(days: usize) -> String {
    let days = count(days, phrase!("further day", "día más"), phrase!("further days", "días más"));
    say!("Show more ({days})", "Mostrar más ({days})", days)
}

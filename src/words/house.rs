//! What is said on the house's place.

use chrono::NaiveDate;

use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::barrier::Barrier;
use crate::site::system::PartKind;

/// Names of the buttons that make the drawing larger and smaller.
pub const LARGER: Phrase = phrase!("Larger drawing", "Dibujo más grande");
/// See [`LARGER`].
pub const SMALLER: Phrase = phrase!("Smaller drawing", "Dibujo más pequeño");
/// The button that shows all of it.
pub const WHOLE: Phrase = phrase!("Fit", "Completo");
/// What that is called.
pub const WHOLE_NAME: Phrase = phrase!("Fit the whole drawing", "Dibujo completo");
/// A diverter, where it is taken out.
pub const DIVERTER: Phrase = phrase!("The first-flush diverter", "El desviador de primeras aguas");
/// How else it is made larger.
pub const HOW_LARGER: Phrase = phrase!(
    "Tap a part to open it; pull a valve to turn it. Two fingers or + make the drawing larger.",
    "Toca una parte para abrirla; tira de una válvula para girarla. Con dos dedos o con + agrandas el dibujo.",
);
/// The title of the drawing as a file of its own.
pub const IN_SECTION: Phrase = phrase!("The house in section", "La casa en corte");
/// The button that adds a tank.
pub const ADD_TANK: Phrase = phrase!("Add a tank", "Añadir tanque");
/// What to do then.
pub const WHERE_TANK: Phrase = phrase!(
    "Tap the tank beside which it will stand: on the same level, joined by a pipe with an open valve.",
    "Toca el tanque junto al que estará: al mismo nivel, unido por un tubo con la válvula abierta.",
);
/// Gives it up.
pub const NO_TANK: Phrase = phrase!("Add no tank", "No añadir tanque");
/// Closes the row of what was tapped.
pub const CLOSE: Phrase = phrase!("Close", "Cerrar");

/// The button that turns a valve.
pub fn turn(open: bool) -> &'static str {
    if open { said!("Shut the valve", "Cerrar la válvula") } else { said!("Open the valve", "Abrir la válvula") }
}

/// A valve was turned.
pub fn turned(name: &str, open: bool) -> String {
    if open {
        say!(
            "{name} is open: the tanks share one level.",
            "{name}: la válvula está abierta, los tanques comparten un mismo nivel.",
            name
        )
    } else {
        say!(
            "{name} is shut: each side keeps its own level.",
            "{name}: la válvula está cerrada, cada lado guarda su propio nivel.",
            name
        )
    }
}

/// A tank was put beside another.
pub fn stands(name: &str, beside: &str) -> String {
    say!(
        "{name} stands beside {beside}, with its shape, size and heights. Tap it if yours differs.",
        "{name} está junto a {beside}, con su forma, tamaño y alturas. Tócalo si el tuyo es distinto.",
        name,
        beside
    )
}

/// The place on the ground where a tank can be added.
pub const FREE_PLACE: Phrase = phrase!("Add a tank that stands free", "Añadir un tanque suelto");

/// A part is a copy of another.
pub fn is_copy(name: &str, of: &str) -> String {
    say!("This is {name}, a copy of {of}.", "Esta parte es {name}, copia de {of}.", name, of)
}

/// A tank was added that is joined to nothing.
pub fn stands_free(name: &str) -> String {
    say!(
        "{name} stands free on the ground, of the usual shape and size; nothing fills it yet. Tap it to set what yours is.",
        "{name} está suelto en el suelo, con la forma y el tamaño usuales; aún nada lo llena. Tócalo para poner los datos \
         del tuyo.",
        name
    )
}

/// What a tap's water passes, said of the tap; nothing where that is nothing.
pub fn behind(pumped: bool, barriers: &[Barrier]) -> String {
    let barriers = barriers.iter().map(|barrier| super::treatment::barriers::name(barrier.kind).text());
    let pump = pumped.then(|| super::parts::one(PartKind::Pump));
    let names: Vec<&str> = pump.into_iter().chain(barriers).collect();
    if names.is_empty() {
        String::new()
    } else {
        say!(", after: {names}", ", después de: {names}", names = names.join(", "))
    }
}

/// What the strokes above a tank's water are, by the first tank that has them.
pub fn hatched(stranded: &str) -> String {
    let stranded = super::inside(stranded);
    say!("Hatched: {stranded}", "Rayado: {stranded}", stranded)
}

/// What the water in the drawing is: as read on a day and reckoned on, save where nobody read.
pub fn water_read(
    [read_on, last_read_on]: [NaiveDate; 2],
    today: NaiveDate,
    unmeasured: usize,
    unread: &[&str],
    usual: bool,
) -> String {
    let read = super::read_on(read_on, last_read_on);
    let mut text = say!("Water drawn as read {read}", "El agua dibujada es la leída {read}", read);
    if read_on < today {
        text.push_str(said!(" and reckoned on to today", " y calculada hasta hoy"));
        if unmeasured > 0 {
            text.push_str(&say!(
                ", as if it had not rained on the {days} without a reading of the rain",
                ", como si no hubiera llovido durante {days} sin lectura de la lluvia",
                days = super::days(unmeasured),
            ));
        }
    }
    text.push('.');
    if !unread.is_empty() {
        let names = unread.join(", ");
        text.push_str(&if usual {
            say!(
                " Nobody read {names}: drawn as in a middle year, ahead counted as empty.",
                " Nadie leyó {names}: se dibuja como en un año intermedio; en adelante cuenta como vacío.",
                names
            )
        } else {
            say!(
                " Nobody read {names}: what stands there is unknown.",
                " Nadie leyó {names}: no se sabe cuánta agua hay ahí.",
                names
            )
        });
    }
    text
}

/// What stands in a tank, in L, and what it holds in words.
pub fn of_room(litres: f64, room: &str, units: &Units) -> String {
    say!("{now} of\u{a0}{room}", "{now} de\u{a0}{room}", now = shown::figure_number(litres, Kind::Volume, units), room)
}

/// All of it that was read, reckoned on to today; to go before what it is.
pub fn water_now(litres: f64, units: &Units) -> String {
    say!(
        "{water} stand in the tanks. ",
        "En los tanques hay {water}. ",
        water = shown::figure(litres, Kind::Volume, units)
    )
}

/// What it is where nobody read.
pub fn water_usual(today: NaiveDate) -> String {
    say!(
        "Today's water is unknown until a level is read; drawn as it stands on {day} in a middle year of this rain.",
        "No se sabe cuánta agua hay hoy hasta que se lea un nivel; se dibuja la que hay el {day} en un año intermedio \
         de esta lluvia.",
        day = super::day_of_year(today),
    )
}

/// What it is without rain and readings.
pub const WATER_UNKNOWN: Phrase = phrase!(
    "Today's water is unknown: no level was read, and there is no rain of this time of the year to reckon with.",
    "No se sabe cuánta agua hay hoy: no se leyó ningún nivel, y no hay lluvia de esta época del año con que \
     calcular.",
);

/// That water runs out where a valve is opened.
pub fn runs_out(litres: f64, tank: &str, units: &Units) -> String {
    say!(
        " By the readings {water} more stands in them than they hold together: it runs out over {tank}. Open the real valve \
         only once there is room.",
        " Según las lecturas hay en ellos {water} más de lo que guardan juntos: se sale por {tank}. Abre la válvula de \
         verdad solo cuando haya lugar.",
        water = shown::figure(litres, Kind::Volume, units),
        tank
    )
}

/// Added to what is said of a tank: the water that is drawn in it.
pub fn stands_in(litres: f64, units: &Units) -> String {
    say!(", {water} in it", ", con {water}", water = shown::figure(litres, Kind::Volume, units))
}

/// Added to what is said of a part that bears a mark.
pub const WANTS_ATTENTION: Phrase = phrase!(", wants attention", ", necesita atención");

/// Added to what is said of a downspout through which rain went.
pub const RAN: Phrase = phrase!(", rain ran through it since yesterday", ", por aquí pasó lluvia desde ayer");

/// What the drawing is.
pub const PICTURE: Phrase =
    phrase!("The house in section; each part opens its sheet", "La casa en corte; cada parte abre su hoja");
/// In the place of an answer, of a house with findings.
pub const CANNOT_RUN: Phrase = phrase!(
    "This house can't run yet. Mend what is listed here.",
    "Esta casa aún no puede funcionar. Arregla lo que se lista aquí.",
);
/// In the place of an answer, without rain.
pub const NO_RAIN: Phrase = phrase!(
    "No rain yet. Give this site its rain to see how long the water lasts.",
    "Aún no hay lluvia. Dale su lluvia a este sitio para ver cuánto dura el agua.",
);

//! Words of upkeep.

use super::{count, date, days, diary};
use crate::engine::diary::due::{Because, Due, Standing};
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::part::PartId;
use crate::site::system::System;
use crate::site::work::Task;
use chrono::NaiveDate;

/// Over the place, and over the jobs of a part.
pub const TITLE: Phrase = phrase!("Upkeep", "Cuidados");
/// Nothing to do.
pub const NO_PARTS: Phrase =
    phrase!("The house has no parts yet that want upkeep.", "La casa no tiene todavía partes que pidan cuidados.");
/// Where the intervals come from.
pub const USUAL: Phrase = phrase!(
    "Usual intervals: at least every six months for roof, gutters, inlets and tanks (enHealth, Guidance on use of \
     rainwater tanks, 2011); the rest as makers and councils advise or as is common practice. Change them to suit your \
     trees, birds and rain.",
    "Intervalos usuales: al menos cada seis meses para techo, canaletas, entradas y tanques (enHealth, Guidance on use \
     of rainwater tanks, 2011); lo demás, como aconsejan fabricantes y municipios o como es práctica común. Cámbialos \
     según tus árboles, tus pájaros y tu lluvia.",
);
/// Caution of all upkeep.
pub const CAUTION: Phrase = phrase!(
    "Falls from ladders and wet roofs kill: have somebody hold the ladder, or hire help. Never enter a \
     tank: bad air kills. Switch the pump's power off before you open it.",
    "Las caídas de escaleras y techos mojados matan: pide que alguien sujete la escalera, o \
     contrata ayuda. Nunca entres en un tanque: el aire viciado mata. Corta la corriente de la bomba antes de \
     abrirla.",
);
/// The button that says a job is done.
pub const DONE: Phrase = phrase!("Done today", "Hecho hoy");
/// The button that writes the calendar.
pub const CALENDAR: Phrase = phrase!("Save as a calendar file", "Guardar como archivo de calendario");
/// Under the fields of an interval.
pub const BLANK: Phrase = phrase!(
    "Leave a field blank if it doesn't count. Whichever comes first makes it due.",
    "Deja en blanco el campo que no cuente. Toca en cuanto se cumpla el primero.",
);
/// The button that goes back to the usual interval.
pub const BACK_TO_USUAL: Phrase = phrase!("As usual", "Como de costumbre");

/// Groups of jobs: overdue, soon, later.
pub const GROUPS: [Phrase; 3] =
    [phrase!("Due", "Toca ya"), phrase!("Soon", "Pronto"), phrase!("In good time", "Más adelante")];
/// Over the choice of when all jobs that were never written down were done.
pub const ALL_DONE: Phrase = phrase!("All of them were done about", "Todas se hicieron más o menos");
/// When that may have been, in days ago, with words.
pub const AGO: [(u64, Phrase); 5] = [
    (0, phrase!("today", "hoy")),
    (30, phrase!("a month ago", "hace un mes")),
    (91, phrase!("3 months ago", "hace 3 meses")),
    (182, phrase!("half a year ago", "hace medio año")),
    (365, phrase!("a year ago", "hace un año")),
];

/// The line behind which they are, one by one.
pub fn not_written(jobs: usize) -> String {
    let jobs = count(jobs, phrase!("job", "tarea"), phrase!("jobs", "tareas"));
    say!("{jobs} not written down yet", "{jobs} sin anotar todavía", jobs)
}

/// What a job is that was never written down.
pub const NEVER: Phrase = phrase!("never written down", "nunca anotada");
/// Labels of an interval: days, rain, litres.
pub const INTERVAL: [Phrase; 3] = [
    phrase!("Every so many days", "Cada cuántos días"),
    phrase!("After so much rain", "Después de cuánta lluvia"),
    phrase!("After so much water through it", "Después de cuánta agua"),
];

/// A job: "Gutter: Kitchen corner".
pub fn job(task: Task, part: PartId, system: &System) -> String {
    format!("{}: {}", to_do(task), diary::part_name(part, system))
}

/// Work as it is to be done.
pub fn to_do(task: Task) -> &'static str {
    match task {
        Task::Roof => said!("Look over the roof", "Revisar el techo"),
        Task::Gutter => said!("Clean the gutter", "Limpiar la canaleta"),
        Task::Screen => said!("Clean the leaf screen", "Limpiar la malla para hojas"),
        Task::Diverter => said!(
            "Empty and rinse the first flush, check its ball",
            "Vaciar y enjuagar las primeras aguas, revisar su flotador (la bola)",
        ),
        Task::Hole => said!("Clear the slow-release hole", "Destapar el orificio de vaciado lento"),
        Task::InletMesh => {
            said!(
                "Check the mesh at inlet and overflow (holes of 1\u{a0}mm at most)",
                "Revisar la malla de la entrada y del rebosadero (huecos de 1\u{a0}mm como máximo)"
            )
        }
        Task::TankLook => {
            said!("Look into the tank from outside", "Revisar el interior del tanque desde la tapa, sin entrar")
        }
        Task::Desludging => said!("Take the sludge out", "Sacar el lodo"),
        Task::Disinfection => said!("Disinfect the tank", "Desinfectar el tanque"),
        Task::Lid => said!("Check lid and lock", "Revisar tapa y candado"),
        Task::Anchors => said!("Check anchors and straps", "Revisar anclajes y correas"),
        Task::PumpStrainer => said!("Clean the pump's strainer", "Limpiar el colador de la bomba"),
        Task::Cartridge => said!("Change the cartridge", "Cambiar el cartucho"),
        Task::Ceramic => said!("Scrub the ceramic candle", "Cepillar la vela de cerámica"),
        Task::Lamp => said!("Change the lamp", "Cambiar la lámpara"),
        Task::Sleeve => said!("Wipe the lamp's sleeve", "Limpiar la funda de la lámpara"),
        Task::WaterTest => said!("Test the water", "Analizar el agua"),
        Task::Joints => {
            said!("Look for drips at joints, valves and taps", "Buscar goteos en uniones, válvulas y grifos")
        }
        Task::Other => said!("Other work", "Otro trabajo"),
    }
}

/// How a job stands.
pub fn standing(due: &Due, units: &Units) -> String {
    let last = due
        .last
        .map_or_else(|| NEVER.to_owned(), |last| say!("last on {date}", "última vez el {date}", date = date(last)));
    let because = |because: Because| match because {
        Because::Days(number) => {
            say!("{days} ago", "hace {days}", days = days(usize::try_from(number).unwrap_or(0)))
        }
        Because::Rain(mm) => say!(
            "{rain} of rain since",
            "{rain} de lluvia desde entonces",
            rain = shown::figure(mm, Kind::Depth, units)
        ),
        Because::Litres(litres) => say!(
            "{water} through it since",
            "{water} de paso desde entonces",
            water = shown::figure(litres, Kind::Volume, units)
        ),
        Because::Readings(shows) => {
            let shown = super::learning::shown_by(shows);
            say!("the readings call for it: {shown}", "las lecturas la piden: {shown}", shown)
        }
    };
    match due.standing {
        Standing::Overdue(why) | Standing::Soon(why) => format!("{last}; {}", because(why)),
        Standing::Later => {
            let on =
                due.on.map_or_else(String::new, |on| say!("; due by {date}", "; toca para el {date}", date = date(on)));
            format!("{last}{on}")
        }
        Standing::NeverWritten { long: true } => say!("{last}, perhaps due", "{last}, quizá toque", last),
        Standing::NeverWritten { .. } => last,
    }
}

/// What is due, in a line for the house: jobs that are, else that others may be; nothing if neither is so.
pub fn due_line(overdue: usize, unwritten: usize) -> Option<String> {
    if overdue == 0 {
        let jobs = count(unwritten, phrase!("job", "tarea"), phrase!("jobs", "tareas"));
        return (unwritten > 0).then(|| {
            say!("Never written down, so perhaps due: {jobs}.", "Nunca anotadas, así que quizá toquen: {jobs}.", jobs)
        });
    }
    let jobs = count(overdue, phrase!("job is", "tarea pendiente"), phrase!("jobs are", "tareas pendientes"));
    Some(say!("{jobs} due.", "{jobs}.", jobs))
}

/// A list for an occasion.
pub struct Occasion {
    /// Its title.
    pub title: Phrase,
    /// What is to be done, in order.
    pub steps: &'static [Phrase],
}

/// Lists for before and after.
pub const OCCASIONS: [Occasion; 7] = [
    Occasion {
        title: phrase!("Before a storm", "Antes de una tormenta"),
        steps: &[
            phrase!(
                "Clean gutters, screens and diverters while it is still dry and calm.",
                "Limpia canaletas, mallas y desviadores mientras todavía está seco y en calma.",
            ),
            phrase!(
                "Leave water in light tanks, or tie them down: an empty tank flies, and an empty buried one floats.",
                "Deja agua en los tanques ligeros, o amárralos: un tanque vacío vuela, y uno enterrado vacío flota.",
            ),
            phrase!(
                "Shut and lock lids; take in or tie down whatever can fly against a tank or pipe.",
                "Cierra las tapas con candado; mete bajo techo o amarra todo lo que pueda volar contra un tanque o un tubo.",
            ),
            phrase!(
                "See that every overflow is free and leads away from the house.",
                "Mira que cada rebosadero esté libre y lleve el agua lejos de la casa.",
            ),
            phrase!(
                "Fill clean containers with drinking water for three days: 4\u{a0}L (a gallon) a head and day is common advice. \
                 While a notice says not to drink from the tap, fill them with other water.",
                "Llena recipientes limpios con agua potable para tres días: el consejo común es 4\u{a0}L (un galón) por \
                 persona y día. Mientras un aviso diga que no se beba del grifo, llénalos con otra agua.",
            ),
            phrase!(
                "Unplug the pump if lightning or a flood may come, and know how to shut the tank's outlet by hand.",
                "Desenchufa la bomba si pueden venir rayos o una inundación, y aprende a cerrar a mano la salida del tanque.",
            ),
        ],
    },
    Occasion {
        title: phrase!("After a storm", "Después de una tormenta"),
        steps: &[
            phrase!(
                "Stay away from fallen lines, and from tanks that lean or have moved.",
                "No te acerques a cables caídos ni a tanques inclinados o que se hayan movido.",
            ),
            phrase!(
                "Empty the first-flush diverters; clean screens, gutters and mesh.",
                "Vacía los desviadores de primeras aguas; limpia mallas, canaletas y mosquiteros.",
            ),
            phrase!(
                "Look for cracks, lifted pipes and mud around buried tanks: flood water may have come in.",
                "Busca grietas, tubos levantados y barro alrededor de los tanques enterrados: puede haber entrado agua \
                 de la inundación.",
            ),
            phrase!(
                "If flood water came in, or a lid was off: don't drink it before the tank was cleaned and disinfected. Empty \
                 one in the ground only when the ground has dried: before that it floats up.",
                "Si entró agua de la inundación, o una tapa estaba quitada: no la bebas antes de limpiar y desinfectar el \
                 tanque. Vacía uno enterrado solo cuando el suelo se haya secado: antes de eso flota y se levanta.",
            ),
            phrase!("Write down the level and the rain.", "Anota el nivel y la lluvia."),
        ],
    },
    Occasion {
        title: phrase!("After smoke or ash", "Después de humo o ceniza"),
        steps: &[
            phrase!(
                "Take the downpipes off the tank before the next rain, so that ash doesn't wash in.",
                "Desconecta las bajantes del tanque antes de la próxima lluvia, para que no entre la ceniza.",
            ),
            phrase!(
                "Let rain or a hose wash roof and gutters to the ground; empty the diverters; then join the pipes again.",
                "Deja que la lluvia o una manguera lave techo y canaletas hacia el suelo; vacía los desviadores; luego \
                 conecta otra vez los tubos.",
            ),
            phrase!(
                "If ash or foam is in the tank already, or the water smells or tastes: don't drink it; have it tested or \
                 emptied. Fire-fighting foam wants the tank emptied.",
                "Si ya hay ceniza o espuma en el tanque, o el agua huele o sabe a algo: no la bebas; hazla analizar o \
                 vaciar. Con espuma contra incendios hay que vaciar el tanque.",
            ),
            phrase!("Change cartridges that clogged.", "Cambia los cartuchos que se taparon."),
        ],
    },
    Occasion {
        title: phrase!("After overhead spray", "Después de una fumigación aérea"),
        steps: &[
            phrase!(
                "Take the downpipes off the tank before the next rain; wash roof and gutters to the ground.",
                "Desconecta las bajantes del tanque antes de la próxima lluvia; lava techo y canaletas hacia el suelo.",
            ),
            phrase!(
                "Empty the diverters twice before you join the pipes again.",
                "Vacía los desviadores dos veces antes de conectar otra vez los tubos.",
            ),
            phrase!(
                "If spray may have come in, don't drink the water and don't water animals: ask the sprayer what it was, and \
                 the health office.",
                "Si puede haber entrado lo fumigado, no bebas el agua ni la des a los animales: pregunta a quien \
                 fumigó qué era, y también a la oficina de salud.",
            ),
        ],
    },
    Occasion {
        title: phrase!("No water at the tap", "No sale agua del grifo"),
        steps: &[
            phrase!(
                "Read the level: below the outlet nothing comes, whatever the pump does. Look for shut valves too.",
                "Mira el nivel: bajo la salida no sale nada, haga lo que haga la bomba. Mira también si hay válvulas cerradas.",
            ),
            phrase!(
                "A pump that runs and brings nothing is switched off at once: dry, it burns. Air in the pipe or a clogged \
                 cartridge are the usual causes.",
                "Apaga enseguida una bomba que gira y no trae nada: en seco se quema. Lo usual es aire en el tubo o un \
                 cartucho tapado.",
            ),
            phrase!(
                "A pump that doesn't run: look at plug and breaker with dry hands; a breaker that trips again, or anything \
                 wet, is a licensed electrician's.",
                "Si la bomba no gira: mira el enchufe y el interruptor con las manos secas; si vuelve a saltar, o hay algo \
                 mojado, es cosa de un electricista autorizado.",
            ),
            phrase!(
                "Without power draw at the tank's tap, never by climbing in. Without power a lamp disinfects nothing: boil \
                 what is drunk, also until the pipes were flushed.",
                "Sin electricidad saca agua por el grifo del tanque; nunca te metas. Sin electricidad la lámpara no desinfecta \
                 nada: hierve lo que se beba, también hasta haber enjuagado los tubos.",
            ),
        ],
    },
    Occasion {
        title: phrase!("Wrigglers in the tank", "Larvas de mosquito en el tanque"),
        steps: &[
            phrase!(
                "Find where mosquitoes get in: inlet, overflow, lid, a gutter or diverter that keeps water.",
                "Busca por dónde entran los mosquitos: entrada, rebosadero, tapa, una canaleta o un desviador que guarda agua.",
            ),
            phrase!(
                "Close it with mesh that doesn't rust, with holes of 1\u{a0}mm at most; let gutters and diverters run dry.",
                "Ciérralo con malla que no se oxide, con huecos de 1\u{a0}mm como máximo; que canaletas y desviadores se vacíen.",
            ),
            phrase!(
                "Pour in no oil or poison on your own: ask the health office what is allowed in drinking water.",
                "No eches aceite ni veneno por tu cuenta: pregunta en la oficina de salud qué se permite en agua de beber.",
            ),
            phrase!(
                "Look again after two weeks: what was in there has hatched by then, and nothing new may swim.",
                "Mira otra vez a las dos semanas: lo que había ya habrá salido, y no debe nadar nada nuevo.",
            ),
        ],
    },
    Occasion {
        title: phrase!("A dead animal in the tank", "Un animal muerto en el tanque"),
        steps: &[
            phrase!(
                "Don't drink the water; boiling alone doesn't take away what has dissolved.",
                "No bebas el agua; solo con hervirla no se quita lo que se ha disuelto.",
            ),
            phrase!(
                "Take the animal out from outside with gloves and a net. Never enter the tank: bad air kills.",
                "Saca el animal desde fuera, con guantes y una red. Nunca entres en el tanque: el aire viciado mata.",
            ),
            phrase!(
                "Empty and clean the tank if you can; else disinfect it with the dose worked out for it.",
                "Vacía y limpia el tanque si puedes; si no, desinféctalo con la dosis calculada para él.",
            ),
            phrase!(
                "Find the hole it came in by, and close it with mesh.",
                "Busca el agujero por donde entró y ciérralo con malla.",
            ),
            phrase!(
                "Have the water tested before anyone drinks it.",
                "Haz analizar el agua antes de que alguien la beba.",
            ),
        ],
    },
];

/// The water that keeps a tank where it is in a wind, before a storm.
pub fn holding(tank: &str, held_by_l: f64, capacity_l: f64, units: &Units) -> String {
    let held_by = shown::figure(held_by_l, Kind::Volume, units);
    if held_by_l > capacity_l {
        say!(
            "{tank}: not even full would it stand in the wind of its check. Have it tied down.",
            "{tank}: ni siquiera lleno resistiría el viento de su comprobación. Haz que lo amarren.",
            tank
        )
    } else {
        say!(
            "{tank}: keep at least {held_by} in it, or have it tied down, for the wind that its sheet reckons with.",
            "{tank}: deja al menos {held_by} dentro, o amárralo, para el viento con que cuenta su hoja.",
            tank,
            held_by
        )
    }
}

/// How much more the tanks can take, before a storm.
pub fn room(room_l: f64, read_on: NaiveDate, today: NaiveDate, units: &Units) -> String {
    let (read, room) = (date(read_on), shown::figure(room_l, Kind::Volume, units));
    if read_on == today {
        return say!(
            "By the reading of {read}, the tanks have room for {room} more.",
            "Según la lectura del {read}, en los tanques caben {room} más.",
            read,
            room
        );
    }
    say!(
        "By the reading of {read}, reckoned on to today, the tanks have room for {room} more.",
        "Según la lectura del {read}, calculada hasta hoy, en los tanques caben {room} más.",
        read,
        room
    )
}

/// How a job stood on a day, for what is read later.
pub fn on_day(day: NaiveDate, standing: &str) -> String {
    say!("On {day}: {standing}.", "El {day}: {standing}.", day = date(day), standing)
}

/// The name of the calendar.
pub fn calendar_name(site: &str) -> String {
    say!("Upkeep of {site}", "Cuidados de {site}", site)
}

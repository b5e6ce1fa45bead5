//! Words of the place where sites, units and files are, and of first start.

use super::count;
use crate::language::Phrase;
use crate::quantity::{Customary, Kind};
use crate::records::cupboard::Trouble;
use crate::site::diary::Merged;
use chrono::NaiveDate;

/// What the app is, at first start.
pub const WELCOME: Phrase = phrase!(
    "Your roof is your waterworks. See how long its water lasts, and in how many years it fails.",
    "Tu techo es tu fuente de agua. Mira cuánto dura su agua y en cuántos años falla.",
);
/// Everything stays here.
pub const STAYS_HERE: Phrase = phrase!(
    "Everything you enter stays on this device. Nothing is sent anywhere.",
    "Todo lo que escribes queda en este dispositivo. No se envía nada a ninguna parte.",
);
/// A device is no safe.
pub const KEEP_A_FILE: Phrase = phrase!(
    "A phone may drown: keep a file elsewhere.",
    "Un teléfono puede caer al agua: guarda un archivo en otro lugar.",
);
/// What goes with a site.
pub const WHAT_GOES: Phrase = phrase!(
    "Its parts, rain, options and diary go with it. Export everything first if you may want them again.",
    "Se van con él sus partes, su lluvia, sus opciones y su diario. Exporta todo antes si quizás los quieras otra vez.",
);
/// No storage.
pub const NOTHING_IS_KEPT: Phrase = phrase!(
    "This browser does not let the app keep anything (a private window, perhaps). You can work, but export a file \
     before you close it.",
    "Este navegador no deja que la aplicación guarde nada (quizás es una ventana privada). Puedes trabajar, pero \
     exporta un archivo antes de cerrarla.",
);
/// Offline from now on.
pub const WORKS_OFFLINE: Phrase = phrase!("Ready to work without a network.", "Lista para trabajar sin conexión.");
/// Not offline.
pub const NO_OFFLINE: Phrase = phrase!(
    "This browser did not let the app set itself up to work without a network. It works as long as it is open.",
    "Este navegador no dejó que la aplicación se preparara para trabajar sin conexión. Funciona mientras esté abierta.",
);
/// An update.
pub const UPDATE_READY: Phrase = phrase!(
    "A new version is ready. It takes over when you say so; nothing that you entered changes.",
    "Hay una versión nueva. Entra cuando tú lo digas; nada de lo que escribiste cambia.",
);
/// Another window.
pub const READ_AGAIN: Phrase = phrase!(
    "Another window changed what is kept. This is how it is now.",
    "Otra ventana cambió lo guardado. Así está ahora.",
);

/// Something amiss when the records were opened.
pub fn trouble(trouble: &Trouble) -> String {
    match trouble {
        Trouble::SetAside(key) => say!(
            "A damaged record was set aside, and the one before it used where there was one. It is still in the \
             browser's storage, under “{key}”. Check your latest changes.",
            "Un registro dañado se dejó aparte y se usó el anterior, donde lo había. Sigue en el almacenamiento del \
             navegador, con la clave «{key}». Revisa tus últimos cambios.",
            key
        ),
        Trouble::Newer(_) => phrase!(
            "Something here was saved by a newer Eavewater. It is shown as far as this version understands it, and \
             stays as it is: nothing that you change in it is kept. Load the page while online to get the newer \
             version.",
            "Algo de aquí lo guardó una versión más nueva de Eavewater. Se muestra hasta donde esta versión lo \
             entiende, y queda como está: nada de lo que cambies ahí se guarda. Carga la página con conexión para \
             tener la versión más nueva.",
        )
        .to_owned(),
        Trouble::SiteLost(id) => say!(
            "Site {number} could not be read from either of its two copies. If you have an exported file, import it.",
            "El sitio {number} no se pudo leer de ninguna de sus dos copias. Si tienes un archivo exportado, \
             impórtalo.",
            number = id.0,
        ),
    }
}

/// The button that merges and takes the file's houses where they differ.
pub const WITH_HOUSES: Phrase = phrase!("Merge and take its houses", "Combinar y tomar sus casas");

/// What taking a file in would do.
pub fn file_holds(holds: usize, there: usize) -> String {
    let sites = |number| count(number, phrase!("site", "sitio"), phrase!("sites", "sitios"));
    say!(
        "The file holds {sites}. Merging leaves what is here and brings in what it lacks; replacing removes the \
         {there} here first.",
        "El archivo contiene {sites}. Combinar deja lo que hay aquí y trae lo que falta; reemplazar quita antes lo \
         que hay aquí: {there}.",
        there = sites(there),
        sites = sites(holds),
    )
}

/// What would be lost if a file took the place of all; nothing if there is none.
pub fn lost([sites, rains, trials]: [Vec<String>; 3], entries: usize) -> Option<String> {
    let rains = rains.iter().map(|name| say!("the rain of {name}", "la lluvia de {name}", name));
    let trials = trials.iter().map(|name| say!("the trial of {name}", "la prueba de {name}", name));
    let entries = (entries > 0).then(|| {
        count(
            entries,
            phrase!("diary entry written or changed here", "anotación escrita o cambiada aquí"),
            phrase!("diary entries written or changed here", "anotaciones escritas o cambiadas aquí"),
        )
    });
    let only_here: Vec<String> = sites.into_iter().chain(rains).chain(trials).chain(entries).collect();
    (!only_here.is_empty()).then(|| {
        say!(
            "Not in the file, so lost if it replaces all: {only_here}. Merge instead, or export everything first.",
            "No está en el archivo, así que se pierde si este reemplaza todo: {only_here}. Mejor combina, o exporta antes todo.",
            only_here = only_here.join(said!(", ", ", ")),
        )
    })
}

/// A site of the file that is new here.
pub fn comes_in(name: &str, entries: usize) -> String {
    say!(
        "{name}: comes in as a new site, with {entries}.",
        "{name}: entra como sitio nuevo, con {entries}.",
        entries = count(
            entries,
            phrase!("diary entry", "anotación en el diario"),
            phrase!("diary entries", "anotaciones en el diario")
        ),
        name
    )
}

/// A site of the file that is here already.
pub fn same(name: &str) -> String {
    say!(
        "{name}: is here already; the file has nothing new for it.",
        "{name}: ya está aquí; el archivo no trae nada nuevo.",
        name
    )
}

/// A site of the file that is here already and takes something: entries, perhaps its rain and its trial.
pub fn merged(name: &str, diary: Merged, [rain, trial]: [bool; 2], house_differs: bool) -> String {
    let mut text = say!(
        "{name}: {new} new, {changed} changed",
        "{name}: {new}, {changed}",
        new = count(
            diary.new,
            phrase!("diary entry", "anotación nueva en el diario"),
            phrase!("diary entries", "anotaciones nuevas en el diario")
        ),
        changed =
            count(diary.changed, phrase!("entry", "anotación cambiada"), phrase!("entries", "anotaciones cambiadas")),
        name
    );
    if diary.removed > 0 {
        let gone = count(
            diary.removed,
            phrase!("entry that was taken out there goes", "anotación borrada allí se va"),
            phrase!("entries that were taken out there go", "anotaciones borradas allí se van"),
        );
        text.push_str(&format!("; {gone}"));
    }
    if diary.rained_twice > 0 {
        text.push_str(&say!(
            "; {days} would have the rain of both, counted twice: where it is one gauge, take one of them out afterwards",
            "; {days} tendrían la lluvia de los dos, contada dos veces: donde sea el mismo pluviómetro, borra después una",
            days = super::days(diary.rained_twice)
        ));
    }
    if rain {
        text.push_str(said!("; its rain comes in", "; entra su lluvia"));
    }
    if trial {
        text.push_str(said!("; its trial comes in", "; entra su prueba"));
    }
    if house_differs {
        text.push_str(said!(
            "; its house or rain differs from what is here, which stays, unless you take the file's; rename the site \
             here first to have both",
            "; su casa o su lluvia es distinta de la de aquí, que se queda, salvo que tomes la del archivo; para \
             tener las dos, cambia primero el nombre del sitio de aquí",
        ));
    }
    text.push('.');
    text
}

/// How much room what is kept takes. Browsers keep five million characters for a page, ten million bytes.
pub fn room(used: usize, persists: Option<bool>) -> String {
    const ROOM: usize = 5_000_000;
    #[expect(clippy::cast_precision_loss, reason = "characters of a storage")]
    let share = used as f64 / ROOM as f64;
    let promise = match persists {
        Some(true) => said!(
            " The browser promised not to clear it away by itself.",
            " El navegador prometió no borrarlo por su cuenta.",
        ),
        Some(false) | None => said!(
            " The browser may clear it away when the device runs out of room, unless the app is on the home screen.",
            " El navegador puede borrarlo cuando al dispositivo le falte espacio, salvo que la aplicación esté en la \
             pantalla de inicio.",
        ),
    };
    say!(
        "What is kept takes {share} of the room that browsers give.{promise}",
        "Lo guardado ocupa {share} del espacio que dan los navegadores.{promise}",
        share = super::percent(share),
        promise
    )
}

/// The last export is old.
pub fn export_old(last: Option<NaiveDate>, days: i64) -> String {
    let days = super::days(usize::try_from(days).unwrap_or(0));
    match last {
        Some(last) => {
            say!(
                "The last export was on {date}, {days} ago. A phone may drown: export a file.",
                "La última exportación fue el {date}, hace {days}. Un teléfono puede caer al agua: exporta un archivo.",
                date = super::date(last),
                days
            )
        }
        None => say!(
            "Nothing was exported in {days} of diary. A phone may drown: export a file.",
            "No se ha exportado nada en {days} de diario. Un teléfono puede caer al agua: exporta un archivo.",
            days
        ),
    }
}

/// A set of units.
pub fn customary(set: Customary) -> &'static str {
    match set {
        Customary::Us => said!("US", "EE.\u{a0}UU."),
        Customary::Metric => said!("Metric", "Métrico"),
        Customary::Imperial => said!("Imperial", "Imperial"),
    }
}

/// A kind of quantity whose unit can be chosen.
pub fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Depth => said!("Rain", "Lluvia"),
        Kind::Area => said!("Roof area", "Área del techo"),
        Kind::Volume => said!("Volume", "Volumen"),
        Kind::Flow => said!("Daily use", "Uso diario"),
        Kind::Length => said!("Tank sizes and heights", "Medidas de tanques"),
        Kind::Bore => said!("Pipes and holes", "Tubos y orificios"),
        _ => "",
    }
}

/// That a site or a part is gone.
pub fn removed(name: &str) -> String {
    say!("“{name}” is removed.", "Se quitó «{name}».", name)
}

/// That all is as it was before a file was taken in.
pub const PUT_BACK: Phrase =
    phrase!("All is as it was before the file came.", "Todo está como antes de que entrara el archivo.");

/// That so many sites came in.
pub fn imported(sites: usize) -> String {
    if sites == 0 {
        return phrase!("Nothing is imported.", "No se importó nada.").to_owned();
    }
    say!(
        "{sites} imported.",
        "{sites}.",
        sites = count(sites, phrase!("site", "sitio importado"), phrase!("sites", "sitios importados"))
    )
}

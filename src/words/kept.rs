//! Words of the place where sites, units and files are, and of first start.

use super::count;
use crate::language::{Phrase, said};
use crate::quantity::{Customary, Kind};
use crate::records::cupboard::Trouble;
use crate::say;
use crate::site::diary::Merged;
use chrono::NaiveDate;

/// What the app is, at first start.
pub const WELCOME: Phrase = Phrase(
    "Your roof is your waterworks. See how long its water lasts, and in how many years it fails.",
    "Tu techo es tu planta de agua. Mira cuánto dura su agua y en cuántos años falla.",
);
/// Everything stays here.
pub const STAYS_HERE: Phrase = Phrase(
    "Everything you enter stays on this device. Nothing is sent anywhere.",
    "Todo lo que escribes queda en este dispositivo. No se envía nada a ninguna parte.",
);
/// A device is no safe.
pub const KEEP_A_FILE: Phrase = Phrase(
    "A phone may drown: keep a file elsewhere.",
    "Un teléfono puede caer al agua: guarda un archivo en otro lugar.",
);
/// No storage.
pub const NOTHING_IS_KEPT: &str = "This browser does not let the app keep anything (a private window, perhaps). You can \
                                   work, but export a file before you close it.";
/// Offline from now on.
pub const WORKS_OFFLINE: &str = "Ready to work without a network.";
/// Not offline.
pub const NO_OFFLINE: &str = "This browser did not let the app set itself up to work without a network. It works as long \
                              as it is open.";
/// An update.
pub const UPDATE_READY: &str =
    "A new version is ready. It takes over when you say so; nothing that you entered changes.";
/// Another window.
pub const READ_AGAIN: &str = "Another window changed what is kept. This is how it is now.";

/// Something amiss when the records were opened.
pub fn trouble(trouble: &Trouble) -> String {
    match trouble {
        Trouble::SetAside(key) => format!(
            "A damaged record was set aside, and the one before it used where there was one. It is still in the browser's \
             storage, under “{key}”. Check your latest changes."
        ),
        Trouble::Newer(_) => {
            "Something here was saved by a newer Eavewater. It is shown as far as this version understands it, and stays as it \
             is: nothing that you change in it is kept. Load the page while online to get the newer version."
                .to_owned()
        }
        Trouble::SiteLost(id) => format!(
            "Site {} could not be read from either of its two copies. If you have an exported file, import it.",
            id.0
        ),
    }
}

/// The button that merges and takes the file's houses where they differ.
pub const WITH_HOUSES: &str = "Merge and take its houses";

/// What taking a file in would do.
pub fn file_holds(holds: usize, there: usize) -> String {
    let sites = |number| count(number, said("site", "sitio"), said("sites", "sitios"));
    say!(
        "The file holds {sites}. Merging leaves what is here and brings in what it lacks; replacing removes the {there} here \
         first.",
        "El archivo contiene {sites}. Combinar deja lo que hay aquí y trae lo que falta; reemplazar quita antes lo que hay \
         aquí: {there}.",
        there = sites(there),
        sites = sites(holds),
    )
}

/// A site of the file that is new here.
pub fn comes_in(name: &str, entries: usize) -> String {
    format!("{name}: comes in as a new site, with {}.", count(entries, "diary entry", "diary entries"))
}

/// A site of the file that is here already.
pub fn same(name: &str) -> String {
    format!("{name}: is here already, the same to the last figure.")
}

/// A site of the file that is here already and takes something.
pub fn merged(name: &str, diary: Merged, rain: bool, house_differs: bool) -> String {
    let mut text = format!(
        "{name}: {} new, {} changed",
        count(diary.new, "diary entry", "diary entries"),
        count(diary.changed, "entry", "entries")
    );
    if rain {
        text.push_str("; its rain comes in");
    }
    if house_differs {
        text.push_str("; its house or rain differs from what is here, which stays, unless you take the file's; rename the site here first to have both");
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
        Some(true) => " The browser promised not to clear it away by itself.",
        Some(false) | None => {
            " The browser may clear it away when the device runs out of room, unless the app is on the home screen."
        }
    };
    format!("What is kept takes {} of the room that browsers give.{promise}", super::percent(share))
}

/// The last export is old.
pub fn export_old(last: Option<NaiveDate>, days: i64) -> String {
    let days = count(usize::try_from(days).unwrap_or(0), "day", "days");
    match last {
        Some(last) => {
            format!("The last export was on {}, {days} ago. A phone may drown: export a file.", super::date(last))
        }
        None => format!("Nothing was exported in {days} of diary. A phone may drown: export a file."),
    }
}

/// A set of units.
pub const fn customary(set: Customary) -> &'static str {
    match set {
        Customary::Us => "US",
        Customary::Metric => "Metric",
        Customary::Imperial => "Imperial",
    }
}

/// A kind of quantity whose unit can be chosen.
pub const fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Depth => "Rain",
        Kind::Area => "Roof area",
        Kind::Volume => "Volume",
        Kind::Flow => "Daily use",
        Kind::Length => "Tank sizes and heights",
        Kind::Bore => "Pipes and holes",
        _ => "",
    }
}

//! Words of the place where sites, units and files are, and of first start.

use super::count;
use crate::quantity::{Customary, Kind};
use crate::records::cupboard::Trouble;

/// What the app is, at first start.
pub const WELCOME: &str = "Your roof is your waterworks. See how long its water lasts, and in how many years it fails.";
/// Everything stays here.
pub const STAYS_HERE: &str = "Everything you enter stays on this device. Nothing is sent anywhere.";
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
            "A site here was saved by a newer Eavewater. It stays as it is; load the page while online to get the newer \
             version."
                .to_owned()
        }
        Trouble::SiteLost(id) => format!(
            "Site {} could not be read from either of its two copies. If you have an exported file, import it.",
            id.0
        ),
    }
}

/// What taking a file in would do.
pub fn file_holds(sites: usize, new: usize, there: usize) -> String {
    let known = sites - new;
    let mut text = format!("The file holds {}", count(sites, "site", "sites"));
    if known > 0 {
        text.push_str(&format!(
            ", {} of which {} here already, the same to the last figure",
            known,
            if known == 1 { "is" } else { "are" }
        ));
    }
    text.push_str(&format!(
        ". Adding brings {} beside the {} that {} here; replacing removes those first.",
        count(new, "new site", "new sites"),
        there,
        if there == 1 { "is" } else { "are" }
    ));
    text
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

//! Storage and use together.

use crate::app::view::charts::Chart;
use crate::engine::sizing::smallest::Sought;
use crate::engine::sizing::tally::Tally;
use crate::figures::contours::Contours;
use crate::quantity::{Kind, Units, shown};
use crate::site::household::Site;
use crate::words::size as say;

/// Levels that get a line, in percent.
const LEVELS: [f64; 6] = [50.0, 70.0, 80.0, 90.0, 95.0, 99.0];

/// The surface by the measure that is wanted, as contours.
pub fn surface(site: &Site, (storage, uses): (&[f64], &[f64]), tallies: &[Tally], units: &Units, width: f64) -> Chart {
    let wanted = site.reckoning.wanted;
    let sizes = |sought: Sought, factors: &[f64]| -> Vec<f64> {
        let now = sought.of(site);
        factors.iter().map(|factor| shown::in_unit(now * factor, say::kind(sought), units)).collect()
    };
    let here = |sought: Sought| shown::in_unit(sought.of(site), say::kind(sought), units);
    // A line for "all" would run along the edge of a plain: it is drawn just below.
    let wanted_level = (100.0 * wanted.share()).min(99.9);
    let mut levels: Vec<f64> = LEVELS.into_iter().filter(|level| (level - wanted_level).abs() > 2.0).collect();
    levels.push(wanted_level);
    let contours = Contours {
        across: sizes(Sought::Storage, storage),
        up: sizes(Sought::Uses, uses),
        values: tallies.iter().map(|tally| 100.0 * tally.by(wanted)).collect(),
        levels: crate::quantity::order::sorted(levels),
        wanted: wanted_level,
        here: (here(Sought::Storage), here(Sought::Uses)),
        here_is: phrase!("now", "ahora").to_owned(),
        units: (units.of(Kind::Volume).sign().to_owned(), units.of(Kind::Flow).sign().to_owned()),
        are: (phrase!("storage", "almacenamiento").to_owned(), phrase!("use", "uso").to_owned()),
    };
    Chart {
        title: said!("Reliability over storage and use", "Confiabilidad según almacenamiento y uso"),
        caption: say::surface_caption(wanted),
        drawing: contours.drawing(width),
        table: contours.table(),
    }
}

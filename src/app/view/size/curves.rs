//! Curves against storage, roof and use.

use crate::app::view::charts::Chart;
use crate::engine::sizing::curves::Point;
use crate::engine::sizing::smallest::Sought;
use crate::engine::sizing::tally::Tally;
use crate::figures::curve::Curve;
use crate::quantity::{Kind, Units, shown};
use crate::site::household::Site;
use crate::words::size as say;

/// A chart against each, of reliability and yield.
pub fn curves(site: &Site, curves: &[(Sought, Vec<Point>)], units: &Units, width: f64) -> Vec<Chart> {
    curves.iter().map(|(sought, points)| chart(site, *sought, points, units, width)).collect()
}

fn chart(site: &Site, sought: Sought, points: &[Point], units: &Units, width: f64) -> Chart {
    let (now, kind) = (sought.of(site), say::kind(sought));
    let line = |name: &str, share: fn(&Tally) -> f64| {
        (name.to_owned(), points.iter().map(|(_, tally)| 100.0 * share(tally)).collect())
    };
    let curve = Curve {
        places: points.iter().map(|(factor, _)| shown::in_unit(now * factor, kind, units)).collect(),
        lines: vec![
            line(said!("water there", "uso cubierto"), Tally::volumetric),
            line(said!("days not dry", "días buenos"), Tally::time),
            line(said!("good years", "años buenos"), Tally::good_share),
        ],
        here: shown::in_unit(now, kind, units),
        here_is: phrase!("now", "ahora").to_owned(),
        unit: units.of(kind).sign().to_owned(),
        places_are: format!("{}, {}", say::name(sought), units.of(kind).sign()),
    };
    let mut table = curve.table();
    table.columns.push(say!("used, {unit} a year", "usada, {unit} al año", unit = units.of(Kind::Volume).sign()));
    for (row, (_, tally)) in table.rows.iter_mut().zip(points) {
        row.push(shown::figure_number(tally.yield_a_year_l(), Kind::Volume, units));
    }
    let title = match sought {
        Sought::Storage => said!("Against storage", "Según el almacenamiento"),
        Sought::Roof => said!("Against roof", "Según el techo"),
        Sought::Uses => said!("Against use", "Según el uso"),
    };
    let ends = [points.first(), points.last()].map(|end| end.map_or(0.0, |(_, tally)| tally.yield_a_year_l()));
    let of_now = points.iter().find(|(factor, _)| *factor == 1.0).map_or(0.0, |(_, tally)| tally.yield_a_year_l());
    let caption = say::yield_along([of_now, ends[0], ends[1]], units);
    Chart { title, caption, drawing: curve.drawing(width), table }
}

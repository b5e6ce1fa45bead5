//! The table of the years.

use crate::engine::question::Answer;
use crate::figures::table::Table;
use crate::quantity::{Kind, Units, shown};
use crate::words::{self, sizing as say};

/// Year by year; columns of hauled water and of rationing only where there is any.
pub fn years(answer: &Answer, units: &Units) -> Table {
    // A millionth of a litre is rounding.
    let volume = |litres: f64| shown::figure_number(if litres < 1e-6 { 0.0 } else { litres }, Kind::Volume, units);
    let unit = units.of(Kind::Volume).sign();
    let hauls = !answer.series.loads.is_empty();
    let rations = !answer.series.rationed.is_empty();
    let mut columns = vec![
        phrase!("year", "año").to_owned(),
        say!("rain, {unit}", "lluvia, {unit}", unit = units.of(Kind::Depth).sign()),
        phrase!("dry days", "días de escasez").to_owned(),
        phrase!("longest dry stretch", "racha de escasez más larga").to_owned(),
        say!("used, {unit}", "usada, {unit}", unit),
        say!("lacking, {unit}", "faltante, {unit}", unit),
        say!("spilled, {unit}", "rebosada, {unit}", unit),
        say!("least in store, {unit}", "mínimo guardado, {unit}", unit),
    ];
    if hauls {
        columns.extend([
            phrase!("loads hauled", "viajes acarreados").to_owned(),
            say!("hauled, {unit}", "acarreada, {unit}", unit),
            phrase!("paid for them at your price", "pagado por ellos a tu precio").to_owned(),
        ]);
    }
    if rations {
        columns.extend([
            phrase!("rationed days", "días racionados").to_owned(),
            say!("cut, {unit}", "recortada, {unit}", unit),
        ]);
    }
    let mut rows = Vec::with_capacity(answer.years.len());
    for year in &answer.years {
        let mut row = vec![
            if year.complete {
                year.year.to_string()
            } else {
                say!("{year} (in part)", "{year} (en parte)", year = year.year)
            },
            shown::figure_number(year.rain_mm, Kind::Depth, units),
            words::number_text(year.dry_days),
            say::dry_stretch(year.longest_dry_run.as_ref(), year.year),
            volume(year.yield_l),
            volume(year.shortfall_l),
            volume(year.spill_l),
            volume(year.least_l),
        ];
        if hauls {
            row.extend([
                words::number_text(year.loads),
                volume(year.hauled_l),
                shown::figure(year.hauling_cost, Kind::Money, units),
            ]);
        }
        if rations {
            row.extend([words::number_text(year.rationed_days), volume(year.cut_l)]);
        }
        rows.push(row);
    }
    Table { columns, rows }
}

//! The table of the years.

use crate::engine::question::Answer;
use crate::figures::table::Table;
use crate::quantity::{Kind, Units, shown};
use crate::words::{self, sizing as say};

/// Year by year; columns of hauled water and of rationing only where there is any.
pub fn years(answer: &Answer, units: &Units) -> Table {
    let volume = |litres: f64| shown::figure_number(litres, Kind::Volume, units);
    let unit = units.of(Kind::Volume).sign();
    let hauls = !answer.series.loads.is_empty();
    let rations = !answer.series.rationed.is_empty();
    let mut columns = vec![
        "year".to_owned(),
        format!("rain, {}", units.of(Kind::Depth).sign()),
        "dry days".to_owned(),
        "longest dry stretch".to_owned(),
        format!("used, {unit}"),
        format!("lacking, {unit}"),
        format!("spilled, {unit}"),
        format!("least in store, {unit}"),
    ];
    if hauls {
        columns.extend(["loads hauled".to_owned(), format!("hauled, {unit}"), "paid for them".to_owned()]);
    }
    if rations {
        columns.extend(["rationed days".to_owned(), format!("cut, {unit}")]);
    }
    let mut rows = Vec::with_capacity(answer.years.len());
    for year in &answer.years {
        let mut row = vec![
            if year.complete { year.year.to_string() } else { format!("{} (in part)", year.year) },
            shown::figure_number(year.rain_mm, Kind::Depth, units),
            words::number_text(year.dry_days),
            say::dry_stretch(year.longest_dry_run.as_ref()),
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

//! Charts with their tables, from results to numbers in the person's units.

use chrono::NaiveDate;

use crate::engine::measures::percentiles;
use crate::engine::question::Answer;
use crate::engine::rain::picture;
use crate::engine::rain::weather::Origin;
use crate::figures::band::{YearBand, YearBandWords};
use crate::figures::bars::{Bar, Bars, BarsWords};
use crate::figures::drawing::Drawing;
use crate::figures::interval::{Interval, IntervalWords};
use crate::figures::lines::{Contents, ContentsWords};
use crate::figures::table::Table;
use crate::figures::went::{Portion, Way, WhereItWent, WhereItWentWords};
use crate::quantity::order::sorted;
use crate::quantity::{Kind, Units, shown};
use crate::site::rain::RainRecord;
use crate::words::{self, charts as captions};

/// A figure with its title and the table of the same numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    /// Its title.
    pub title: &'static str,
    /// What it shows, in a line.
    pub caption: String,
    /// The figure.
    pub drawing: Drawing,
    /// The numbers.
    pub table: Table,
}

/// Widest that a figure stands alone in a column of text, in pixels.
pub const COLUMN: f64 = 760.0;
/// Width from which things stand in two columns, the room between them, and the width of the lists beside the house:
/// `style/base.css` and `style/house.css` say the same.
const TWO_COLUMNS: f64 = 1000.0;
const BETWEEN: f64 = 32.0;
const LISTS: f64 = 372.0;

/// The width for a figure, given that of the place: all of it where it has no more than a column's room.
pub fn fitting(width: f64) -> f64 {
    if width < TWO_COLUMNS { width.min(COLUMN) } else { width }
}

/// The width of one of two figures side by side.
pub fn half(width: f64) -> f64 {
    if width < TWO_COLUMNS { width } else { (width - BETWEEN) / 2.0 }
}

/// The width of a figure beside lists.
pub fn beside_lists(width: f64) -> f64 {
    if width < TWO_COLUMNS { width } else { width - BETWEEN - LISTS }
}

fn months() -> [String; 12] {
    words::months().map(str::to_owned)
}

fn unit(kind: Kind, units: &Units) -> String {
    units.of(kind).sign().to_owned()
}

/// Content of all stores over the whole run.
pub fn contents(answer: &Answer, units: &Units, width: f64) -> Chart {
    let live: Vec<f64> =
        answer.series.total_live_l().iter().map(|litres| shown::in_unit(*litres, Kind::Volume, units)).collect();
    let short: Vec<bool> = answer.series.dry_days().collect();
    let (values, short) = without_jumps(&answer.series.dates, &live, &short);
    let capacity: f64 = answer.plan.stores.iter().map(|store| store.joined.live_capacity_l).sum();
    let words = ContentsWords {
        unit: unit(Kind::Volume, units),
        capacity: say!("full: {volume}", "lleno: {volume}", volume = shown::figure(capacity, Kind::Volume, units)),
        shortfall: phrase!("dry days", "días de escasez").to_owned(),
        months: months(),
        columns: [said!("month", "mes"), said!("least", "mínimo"), said!("most", "máximo")].map(str::to_owned),
    };
    let contents = Contents {
        start: answer.series.dates.first().copied().unwrap_or_default(),
        values: &values,
        short: &short,
        capacity: Some(shown::in_unit(capacity, Kind::Volume, units)),
        words: &words,
    };
    let caption = if answer.left_out_years.is_empty() {
        captions::CONTENTS.to_owned()
    } else {
        captions::CONTENTS_WITHOUT_YEARS.to_owned()
    };
    Chart {
        title: said!("Content, day by day", "Contenido, día a día"),
        caption,
        drawing: contents.drawing(width),
        table: contents.table(),
    }
}

/// Values for every civil day: a day that was left out has the value of the day before it, and isn't short.
fn without_jumps(dates: &[NaiveDate], values: &[f64], short: &[bool]) -> (Vec<f64>, Vec<bool>) {
    let mut filled = (Vec::with_capacity(values.len()), Vec::with_capacity(values.len()));
    let mut before: Option<(NaiveDate, f64)> = None;
    for ((date, value), short) in dates.iter().zip(values).zip(short) {
        if let Some((last, level)) = before {
            let left_out = usize::try_from((*date - last).num_days() - 1).unwrap_or(0);
            filled.0.extend(std::iter::repeat_n(level, left_out));
            filled.1.extend(std::iter::repeat_n(false, left_out));
        }
        filled.0.push(*value);
        filled.1.push(*short);
        before = Some((*date, *value));
    }
    filled
}

/// How full the stores are through the year.
pub fn through_the_year(answer: &Answer, units: &Units, width: f64) -> Chart {
    let column = |pick: fn(&percentiles::DayOfYear) -> f64| -> Vec<f64> {
        answer.percentiles.iter().map(|day| shown::in_unit(pick(day), Kind::Volume, units)).collect()
    };
    let (low, median, high) = (column(|day| day.tenth), column(|day| day.half), column(|day| day.ninetieth));
    let capacity: f64 = answer.plan.stores.iter().map(|store| store.joined.live_capacity_l).sum();
    let [low_is, median_is, high_is, _] = words::ahead::FAN_LINES;
    let words = YearBandWords {
        unit: unit(Kind::Volume, units),
        low: low_is.to_owned(),
        median: median_is.to_owned(),
        high: high_is.to_owned(),
        capacity: phrase!("full", "lleno").to_owned(),
        month: phrase!("month", "mes").to_owned(),
        months: months(),
    };
    let band = YearBand {
        low: &low,
        median: &median,
        high: &high,
        capacity: Some(shown::in_unit(capacity, Kind::Volume, units)),
        words: &words,
    };
    Chart {
        title: said!("Content through the year", "Contenido a lo largo del año"),
        caption: captions::THROUGH_THE_YEAR.to_owned(),
        drawing: band.drawing(width),
        table: band.table(),
    }
}

/// Where the rain on the roof went, in an average year.
pub fn where_it_went(answer: &Answer, units: &Units, width: f64) -> Chart {
    let amounts = |pick: fn(&crate::engine::measures::budget::Month) -> f64| -> [f64; 12] {
        std::array::from_fn(|month| shown::in_unit(pick(&answer.budget[month]).max(0.0), Kind::Volume, units))
    };
    let portion = |name: &str, way, amounts| Portion { name: name.to_owned(), way, amounts };
    let went = WhereItWent {
        portions: vec![
            portion(said!("used", "usada"), Way::Used, amounts(|month| month.yield_l)),
            portion(said!("spilled", "rebosada"), Way::Spilled, amounts(|month| month.spill_l)),
            portion(said!("first flush", "primeras aguas"), Way::FirstFlush, amounts(|month| month.first_flush_l)),
            portion(said!("uncollected", "sin recoger"), Way::Uncollected, amounts(|month| month.uncollected_l)),
            portion(
                said!("lost on the way", "pérdidas"),
                Way::Lost,
                amounts(|month| month.roof_loss_l + month.escaped_l + month.tank_loss_l),
            ),
        ],
        shortfall: amounts(|month| month.shortfall_l),
        words: WhereItWentWords {
            unit: say!("{unit} a month", "{unit} al mes", unit = unit(Kind::Volume, units)),
            shortfall: phrase!("lacking", "faltante").to_owned(),
            month: phrase!("month", "mes").to_owned(),
            months: months(),
        },
    };
    Chart {
        title: said!("Where the water went", "Adónde fue el agua"),
        caption: captions::WHERE_IT_WENT.to_owned(),
        drawing: went.drawing(width),
        table: went.table(),
    }
}

/// The share of good years with its range, drawn. `None` without complete measured years.
pub fn good_years(answer: &Answer, width: f64) -> Option<Drawing> {
    let good = answer.good_years.filter(|_| answer.origin != Origin::Even)?;
    #[expect(clippy::cast_precision_loss, reason = "years of a few centuries")]
    let share = good.good as f64 / good.all as f64;
    let words = IntervalWords {
        share: say!(
            "{good} of {all} without a dry day",
            "{good} de {all} sin un día de escasez",
            all = words::count(good.all, phrase!("year", "año"), phrase!("years", "años")),
            good = good.good
        ),
        range: say!(
            "{low} to {high}",
            "{low} a {high}",
            low = words::percent(good.range.0),
            high = words::percent(good.range.1)
        ),
        none: phrase!("no year", "ningún año").to_owned(),
        all: phrase!("every year", "todos los años").to_owned(),
    };
    Some(Interval { low: good.range.0, share, high: good.range.1, words }.drawing(width))
}

/// Mean rain of each month, with wet days.
pub fn monthly_rain(record: &RainRecord, units: &Units, width: f64) -> Chart {
    let wet_days = picture::monthly_wet_days(record);
    let totals = picture::monthly_totals_mm(record);
    let over = wet_days.map(|days| days.map_or_else(|| "—".to_owned(), |days| shown::significant(days, 2)));
    by_month(
        totals.map(Option::unwrap_or_default),
        (over, said!("wet days", "días de lluvia")),
        &captions::MONTHS,
        units,
        width,
    )
}

/// Monthly means as they were entered.
pub fn normals(totals_mm: &[f64; 12], rain_days: Option<&[f64; 12]>, units: &Units, width: f64) -> Chart {
    let over = match rain_days {
        Some(days) => (days.map(|days| shown::significant(days, 2)), said!("rain days", "días de lluvia")),
        None => Default::default(),
    };
    by_month(*totals_mm, over, &captions::MEANS, units, width)
}

/// A bar for each month, with a figure over it and what that figure is.
fn by_month(
    depths_mm: [f64; 12],
    (over, over_is): ([String; 12], &str),
    caption: &str,
    units: &Units,
    width: f64,
) -> Chart {
    let mut bars = Vec::with_capacity(12);
    for ((label, depth_mm), over) in months().into_iter().zip(depths_mm).zip(over) {
        let value = shown::in_unit(depth_mm, Kind::Depth, units);
        bars.push(Bar { label: label.to_owned(), value, over, ..Bar::default() });
    }
    let words = BarsWords {
        unit: unit(Kind::Depth, units),
        label: phrase!("month", "mes").to_owned(),
        value: phrase!("mean rain", "lluvia promedio").to_owned(),
        over: over_is.to_owned(),
        ..BarsWords::default()
    };
    chart(bars, words, said!("Rain by month", "Lluvia por mes"), caption, width)
}

/// Rain of each year; the driest fifth of the complete years are marked.
pub fn yearly_rain(record: &RainRecord, units: &Units, width: f64) -> Chart {
    const DRY_SHARE: usize = 5;
    let years = picture::yearly_totals(record);
    let complete = sorted(years.iter().filter(|year| year.complete).map(|year| year.total_mm).collect());
    let dry_below = complete.get(complete.len() / DRY_SHARE).copied().unwrap_or(0.0);
    let bars = years
        .iter()
        .map(|year| Bar {
            label: year.year.to_string(),
            value: shown::in_unit(year.total_mm, Kind::Depth, units),
            partial: !year.complete,
            dry: year.complete && year.total_mm < dry_below,
            ..Bar::default()
        })
        .collect();
    chart(
        bars,
        BarsWords {
            unit: unit(Kind::Depth, units),
            label: phrase!("year", "año").to_owned(),
            value: phrase!("rain", "lluvia").to_owned(),
            partial: phrase!("days missing", "con días faltantes").to_owned(),
            dry: phrase!("driest fifth", "quinto más seco").to_owned(),
            ..BarsWords::default()
        },
        said!("Rain by year", "Lluvia por año"),
        &captions::YEARS,
        width,
    )
}

/// What generated months are like, beside those of the site's rain.
pub fn months_compared(
    [own, generated]: [[f64; 12]; 2],
    kind: Kind,
    [title, value, caption]: [&'static str; 3],
    units: &Units,
    width: f64,
) -> Chart {
    let mut bars = Vec::with_capacity(12);
    for ((label, own), generated) in months().into_iter().zip(own).zip(generated) {
        let [value, beside] = [own, generated].map(|value| shown::in_unit(value, kind, units));
        bars.push(Bar { label: label.to_owned(), value, beside: Some(beside), ..Bar::default() });
    }
    let words = BarsWords {
        unit: unit(kind, units),
        label: phrase!("month", "mes").to_owned(),
        value: value.to_owned(),
        beside: phrase!("generated", "generados").to_owned(),
        ..BarsWords::default()
    };
    chart(bars, words, title, caption, width)
}

fn chart(bars: Vec<Bar>, words: BarsWords, title: &'static str, caption: &str, width: f64) -> Chart {
    let bars = Bars { bars, words };
    Chart { title, caption: caption.to_owned(), drawing: bars.drawing(width), table: bars.table() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn years_left_out_are_drawn_level() {
        let day = |y, m, d| NaiveDate::from_ymd_opt(y, m, d).unwrap_or_default();
        let dates = [day(2001, 12, 31), day(2002, 1, 3), day(2002, 1, 4)];
        let (values, short) = without_jumps(&dates, &[5.0, 7.0, 8.0], &[true, false, true]);
        assert_eq!(values, [5.0, 5.0, 5.0, 7.0, 8.0]);
        assert_eq!(short, [true, false, false, false, true]);
    }
}

//! Tables as CSV files, for spreadsheets: RFC 4180, numbers in SI so that every program reads them alike.

use crate::engine::balance::plan::Store;
use crate::engine::question::Answer;
use crate::site::diary::{Diary, Level, TestResult, Told, Water};
use crate::site::system::System;
use crate::words;

/// A text as a cell: quoted where it must be. One that a spreadsheet would take for a formula is led by an apostrophe.
fn cell(text: &str) -> String {
    let text = if text.starts_with(['=', '+', '-', '@', '\t', '\r']) { format!("'{text}") } else { text.to_owned() };
    if text.contains([',', '"', '\n', '\r']) { format!("\"{}\"", text.replace('"', "\"\"")) } else { text }
}

fn row(cells: &[String]) -> String {
    format!("{}\r\n", cells.join(","))
}

/// The diary: a row an entry.
pub fn diary(diary: &Diary, system: &System) -> String {
    let mut out =
        phrase!("date,what,part,how,value,unit,note\r\n", "fecha,qué,parte,cómo,valor,unidad,nota\r\n").to_owned();
    for entry in diary.entries() {
        let part = entry.told.part().map_or_else(String::new, |id| cell(&words::diary::part_name(id, system)));
        let (how, value, unit): (String, Option<f64>, &str) = match &entry.told {
            Told::Level { of, level, undrawn, .. } => {
                let whole = if matches!(of, Water::Store(_)) { said!("store ", "depósito ") } else { "" };
                let (how, value, unit) = match level {
                    Level::Depth(depth) => (said!("depth", "profundidad"), Some(depth.get()), "m"),
                    Level::Share(share) => (said!("share", "parte"), Some(share.get()), "1"),
                    Level::Volume(volume) => (said!("volume", "volumen"), Some(volume.get()), "L"),
                    Level::Full => (said!("full", "lleno"), None, ""),
                };
                let how = match undrawn {
                    Some(hours) => format!("{whole}{how}; {}", words::diary::undrawn(hours.get())),
                    None => format!("{whole}{how}"),
                };
                (cell(&how), value, unit)
            }
            Told::Rain(depth) => (String::new(), Some(depth.get()), "mm"),
            Told::Meter { reading, .. } => (String::new(), Some(reading.get()), "L"),
            Told::Delivery { volume, price, .. } => {
                let price = price
                    .map_or_else(String::new, |price| say!("price {coins}", "precio {coins}", coins = price.get()));
                (price, Some(volume.get()), "L")
            }
            Told::Work { task, .. } => (cell(words::diary::done(*task)), None, ""),
            Told::Test { parameter, found, .. } => {
                let name = words::diary::parameter_name(*parameter);
                let (how, value) = match found {
                    TestResult::Value(value) => (name.to_owned(), Some(*value)),
                    TestResult::Below(value) => (say!("{name} less than", "{name} menos de", name), Some(*value)),
                    TestResult::Present => (say!("{name} present", "{name} presente", name), None),
                    TestResult::Absent => (say!("{name} absent", "{name} ausente", name), None),
                };
                (cell(&how), value, words::treatment::results::unit(*parameter))
            }
            Told::Note => Default::default(),
        };
        let value = value.map_or_else(String::new, |value| value.to_string());
        let what = cell(words::diary::subject(entry.told.subject()));
        out += &row(&[entry.date.to_string(), what, part, how, value, unit.to_owned(), cell(&entry.note)]);
    }
    out
}

/// The results: a row a day. What spills into another tank is still there.
pub fn results(answer: &Answer) -> String {
    let mut out = phrase!(
        "date,rain_mm,water_L,spill_L,used_L,lacking_L,hauled_L\r\n",
        "fecha,lluvia_mm,agua_L,rebose_L,usada_L,falta_L,acarreada_L\r\n"
    )
    .to_owned();
    let series = &answer.series;
    let sum = |columns: &[Vec<f64>], day: usize| columns.iter().map(|column| column[day]).sum::<f64>();
    let leaves: Vec<f64> = answer.plan.stores.iter().map(Store::spill_that_leaves).collect();
    let spilled = |day: usize| series.spill_l.iter().zip(&leaves).map(|(of, leaves)| leaves * of[day]).sum::<f64>();
    for (day, date) in series.dates.iter().enumerate() {
        let values = [
            series.rain_mm[day],
            sum(&series.live_l, day),
            spilled(day),
            sum(&series.yield_l, day),
            sum(&series.shortfall_l, day),
            sum(&series.hauled_l, day),
        ];
        // A hundredth of a litre is more than anybody measures.
        let mut cells = vec![date.to_string()];
        cells.extend(values.iter().map(|value| ((value * 100.0).round() / 100.0).to_string()));
        out += &row(&cells);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Depth;
    use crate::site::diary::{Entry, EntryId};
    use chrono::NaiveDate;

    #[test]
    fn a_note_stays_in_its_cell_and_is_no_formula() {
        let entry = |id, note: &str| Entry {
            id: EntryId(id),
            edited: id,
            date: NaiveDate::from_ymd_opt(2026, 1, 2).unwrap_or_default(),
            told: Told::Rain(Depth::millimetres(2.5)),
            note: note.to_owned(),
        };
        let written = Diary::of(vec![entry(1, "=1+1"), entry(2, "a \"big\", wet\nday")]);
        let text = diary(&written, &System::default());
        let lines: Vec<&str> = text.split("\r\n").collect();
        assert_eq!(lines[1], "2026-01-02,Rain,,,2.5,mm,'=1+1");
        assert_eq!(lines[2], "2026-01-02,Rain,,,2.5,mm,\"a \"\"big\"\", wet\nday\"");
    }
    #[test]
    fn what_spills_into_another_tank_has_not_left() {
        let (mut site, rain) = (crate::site::demo::site(), crate::site::demo::rain());
        site.system.trunk_lines.iter_mut().for_each(|line| line.open = false);
        let answer = crate::engine::question::answer(&site, &crate::site::rain::Rain::Record(rain)).unwrap();
        assert!(answer.plan.stores.iter().any(|store| store.spill_that_leaves() < 1.0), "one leads to another");
        let written = results(&answer);
        let cells = |line: &str| line.split(',').map(|cell| cell.parse().unwrap_or(0.0)).collect::<Vec<f64>>();
        let spilled: f64 = written.lines().skip(1).map(|line| cells(line)[3]).sum();
        assert!(spilled > 1000.0 && (spilled - answer.total.spill_l).abs() < 1e-4 * spilled, "{spilled}");
    }
}

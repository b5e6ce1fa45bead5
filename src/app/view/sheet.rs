//! The sheet of one part: its state, its values, its cautions.

use chrono::NaiveDate;

use super::Outcome;
use crate::app::model::KeptSite;
use crate::engine::balance::plan::Plan;
use crate::engine::question::Answer;
use crate::quantity::{Kind, Quantity, Range, Units, shown};
use crate::site::choices::choices;
use crate::site::diary::Told;
use crate::site::edit::CAPACITY;
use crate::site::findings::{Finding, findings};
use crate::site::part::{Choice, Field, PartId};
use crate::site::rationing::CUT;
use crate::site::system::{Part, PartKind, System};
use crate::site::unused::{Unused, unused};
use crate::site::uses::{Amount, Class, Use};
use crate::site::{Shape, TableRow};
use crate::words;

/// The sheet as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetView {
    /// The part.
    pub id: PartId,
    /// Its kind.
    pub kind: PartKind,
    /// Its name.
    pub name: String,
    /// Sentences about its state.
    pub state: Vec<String>,
    /// What is wrong with it.
    pub findings: Vec<String>,
    /// What more there is on it.
    pub extra: Option<Extra>,
    /// Its values in order.
    pub fields: Vec<FieldView>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
    /// Whether it can move up or down in its list.
    pub moves: (bool, bool),
}

/// What a use's sheet has beyond its values.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extra {
    /// The climate that its garden follows.
    Climate,
    /// The habits from which its amount can be worked out.
    Habits,
}

fn extra(part: &Part) -> Option<Extra> {
    match part {
        Part::Use(Use { amount: Amount::Garden(_), .. }) => Some(Extra::Climate),
        Part::Use(Use { class: Class::Drinking | Class::House | Class::Travel, .. }) => Some(Extra::Habits),
        _ => None,
    }
}

/// One value.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldView {
    /// Which.
    pub field: Field,
    /// Its label.
    pub label: String,
    /// A line of help.
    pub hint: Option<&'static str>,
    /// How it is changed.
    pub control: Control,
}

/// How a value is changed.
#[derive(Clone, Debug, PartialEq)]
pub enum Control {
    /// By typing a quantity.
    Number {
        /// The value as text in the person's unit.
        text: String,
        /// Its kind.
        kind: Kind,
        /// What it may be.
        range: Range,
    },
    /// By choosing.
    Choice {
        /// The possibilities with their words.
        options: Vec<(Choice, String)>,
        /// The one that holds.
        chosen: usize,
    },
    /// By typing rows of depth and volume.
    Table {
        /// The rows as text in the person's units.
        text: String,
    },
}

/// The sheet of the part of that identity, if it is there.
pub fn sheet(
    kept: &KeptSite,
    id: PartId,
    outcome: Option<&Outcome>,
    units: &Units,
    today: NaiveDate,
) -> Option<SheetView> {
    let system = &kept.site.system;
    let part = system.part(id)?;
    let same_kind: Vec<PartId> =
        system.parts().iter().filter(|other| other.kind() == part.kind()).map(Part::id).collect();
    let found = findings(system);
    let mut state = state(&part, system, outcome, units);
    state.extend(super::house::read_today(kept, id, today).map(|litres| words::parts::stands(litres, units)));
    let levels =
        kept.diary.entries().iter().filter(|entry| matches!(&entry.told, Told::Level { of, .. } if of.tank() == id));
    state.extend(words::parts::levels_by_size(levels.count()));
    Some(SheetView {
        id,
        kind: part.kind(),
        name: part.name().to_owned(),
        state,
        findings: if found.is_empty() {
            let of_this = |unused: &Unused| unused.part() == id;
            unused(system).into_iter().filter(of_this).map(|it| words::findings::unused(it, system)).collect()
        } else {
            let of_this = |finding: &&Finding| words::findings::part(finding) == Some(id);
            found.iter().filter(of_this).map(|finding| words::findings::sentence(finding, system, units)).collect()
        },
        extra: extra(&part),
        fields: fields(part.clone(), system, units),
        cautions: words::cautions::for_part(&part),
        moves: (same_kind.first() != Some(&id), same_kind.last() != Some(&id)),
    })
}

pub(super) fn fields(mut part: Part, system: &System, units: &Units) -> Vec<FieldView> {
    let fills = matches!(part, Part::Hauling(_));
    let mut fields: Vec<(Field, Control)> = choices(&part, system)
        .into_iter()
        .map(|options| {
            let words = options.options.iter().map(|option| (*option, words::parts::choice(*option, system)));
            (options.field, Control::Choice { options: words.collect(), chosen: options.chosen })
        })
        .collect();
    match &part {
        Part::Tank(tank) => {
            fields.push((Field::Capacity, number(tank.capacity().get(), Kind::Volume, CAPACITY, units)));
            if let Shape::Table(rows) = &tank.shape {
                fields.push((Field::DepthTable, Control::Table { text: table_text(rows, units) }));
            }
        }
        Part::Section(section) => {
            let unused =
                system.feeds.iter().filter(|feed| !section.outlets.iter().any(|outlet| outlet.feed == feed.id));
            fields.extend(
                unused.map(|feed| {
                    (Field::ShareTo(feed.id), number(0.0, Kind::Share, crate::quantity::range::SHARE, units))
                }),
            );
        }
        Part::Ration(step) => {
            let uncut = system.uses.iter().filter(|using| !step.cuts.iter().any(|cut| cut.using == using.id));
            fields.extend(uncut.map(|using| (Field::CutOf(using.id), number(0.0, Kind::Share, CUT, units))));
        }
        _ => {}
    }
    fields.extend(
        part.numbers()
            .into_iter()
            .map(|value| (value.field, number(value.value.si(), value.value.kind(), value.range, units))),
    );
    in_order(fields)
        .into_iter()
        .map(|(field, control)| FieldView {
            field,
            label: words::parts::label(if fills && field == Field::Tank { Field::PumpsTo } else { field }, system),
            hint: source(&control).or(words::parts::hint(field)),
            control,
        })
        .collect()
}

/// Where the published figure that was chosen is from.
fn source(control: &Control) -> Option<&'static str> {
    let Control::Choice { options, chosen } = control else { return None };
    match options.get(*chosen) {
        Some((Choice::HeadFigure(Some(figure)), _)) => Some(words::head_figures::source(*figure)),
        _ => None,
    }
}

/// Fields in the order in which they are shown.
fn in_order(fields: Vec<(Field, Control)>) -> Vec<(Field, Control)> {
    let mut ordered: Vec<(Field, Control)> = Vec::with_capacity(fields.len());
    for field in fields {
        let place = ordered.iter().take_while(|before| before.0 <= field.0).count();
        ordered.insert(place, field);
    }
    ordered
}

fn number(si: f64, kind: Kind, range: Range, units: &Units) -> Control {
    Control::Number { text: shown::entered(si, kind, units), kind, range }
}

fn table_text(rows: &[TableRow], units: &Units) -> String {
    let row = |row: &TableRow| {
        format!(
            "{}  {}",
            shown::entered(row.depth.si(), Kind::Length, units),
            shown::entered(row.volume.si(), Kind::Volume, units)
        )
    };
    rows.iter().map(row).collect::<Vec<_>>().join("\n")
}

fn state(part: &Part, system: &System, outcome: Option<&Outcome>, units: &Units) -> Vec<String> {
    let answer = outcome.and_then(|outcome| outcome.as_ref().ok());
    let at = |id: PartId| system.tanks.iter().position(|tank| tank.id == id);
    match part {
        Part::Section(section) => {
            let left = 1.0 - section.collected_share();
            if left > 1e-9 { vec![words::parts::uncollected(left)] } else { Vec::new() }
        }
        Part::Feed(feed) => {
            let number = system.feeds.iter().position(|other| other.id == feed.id);
            let told = answer.zip(number).filter(|_| feed.diverter.is_some());
            told.and_then(|(answer, number)| words::sizing::diverter(&feed.name, answer, number, units))
                .into_iter()
                .collect()
        }
        Part::Tank(tank) => {
            let mut told = vec![words::parts::holds(tank, units)];
            if !system.is_filled(tank.id) {
                told.push(words::parts::NOTHING_FILLS.to_owned());
            }
            if let Some((answer, at)) = answer.zip(at(tank.id)) {
                told.extend(stranded(&answer.plan, at, system, units));
            }
            told
        }
        Part::Use(using) => garden_state(using, system, answer, units),
        Part::Ration(step) => {
            let place = system.rationing.iter().position(|other| other.id == step.id);
            let tally =
                answer.zip(place).and_then(|(answer, place)| answer.ledger.rations.get(place).zip(Some(answer)));
            let told = tally.map(|(tally, answer)| words::garden::ration(tally, answer.series.dates.len(), units));
            told.into_iter().chain([words::garden::CUT_IS.to_owned()]).collect()
        }
        _ => Vec::new(),
    }
}

/// What a garden by the weather went through, and how it is reckoned.
fn garden_state(using: &Use, system: &System, answer: Option<&Answer>, units: &Units) -> Vec<String> {
    if !matches!(using.amount, Amount::Garden(_)) {
        return Vec::new();
    }
    let place = system.uses.iter().position(|other| other.id == using.id);
    let told = answer.zip(place).and_then(|(answer, place)| {
        let tally = answer.ledger.gardens.iter().find(|tally| tally.using == place)?;
        let yield_l = answer.series.yield_l.get(place)?.iter().sum();
        Some(words::garden::garden(tally, answer.series.dates.len(), yield_l, units))
    });
    told.into_iter().chain([words::garden::HOW.to_owned()]).collect()
}

/// Words about capacity that a tank can never fill, if there is any.
pub(super) fn stranded(plan: &Plan, tank: usize, system: &System, units: &Units) -> Option<String> {
    /// Less than this, in L, is level rims.
    const WORTH_TELLING_L: f64 = 1.0;
    let (litres, lowest) = plan.stranded(tank)?;
    let lowest = system.tanks.get(lowest)?;
    (litres > WORTH_TELLING_L).then(|| words::sizing::stranded(&system.tanks[tank].name, litres, &lowest.name, units))
}

/// Rows of depth and volume as they were typed, one a line.
///
/// # Errors
/// The first line that isn't a depth and a volume, from 1, with its text.
pub fn table_rows(text: &str, units: &Units) -> Result<Vec<TableRow>, (usize, String)> {
    let mut rows = Vec::new();
    for (at, line) in text.lines().enumerate() {
        let line = line.trim();
        if !line.is_empty() {
            rows.push(table_row(line, units).ok_or_else(|| (at + 1, line.to_owned()))?);
        }
    }
    Ok(rows)
}

/// Splits a line at each of its blanks until both sides can be read.
fn table_row(line: &str, units: &Units) -> Option<TableRow> {
    use crate::quantity::{Length, Volume, typed};
    let one = |text: &str, kind| typed::quantity(text, kind, units).ok().filter(|typed| typed.parts.len() == 1);
    for (at, blank) in line.match_indices(|c: char| c.is_whitespace() || matches!(c, ';' | '=' | ':')) {
        let (left, right) = (&line[..at], &line[at + blank.len()..]);
        if let (Some(depth), Some(volume)) = (one(left, Kind::Length), one(right, Kind::Volume)) {
            return Some(TableRow { depth: Length::metres(depth.si), volume: Volume::litres(volume.si) });
        }
    }
    None
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::language::{Language, speak};
    use crate::quantity::{Customary, Length, Volume};
    use crate::records::cupboard::{SiteFile, SiteId};
    use crate::site::demo;
    use crate::site::diary::Diary;
    use crate::site::trial::Trial;

    #[test]
    fn every_part_of_the_demo_has_a_sheet_whose_values_can_be_typed_back() {
        let kept = KeptSite::of_file(
            SiteId(1),
            SiteFile { site: demo::site(), rain: None, diary: Diary::default(), trial: Trial::NONE },
        );
        let languages = Language::ALL.into_iter().flat_map(|language| Customary::ALL.map(|set| (language, set)));
        for (language, set) in languages {
            speak(language);
            let units = Units::customary(set);
            for part in kept.site.system.parts() {
                let view = sheet(&kept, part.id(), None, &units, NaiveDate::default()).unwrap();
                for field in &view.fields {
                    assert!(!field.label.is_empty(), "{:?}", field.field);
                    if let Control::Number { text, kind, range } = &field.control {
                        let typed = crate::quantity::typed::quantity(text, *kind, &units).unwrap();
                        assert!(range.holds(typed.si), "{:?}: {text}", field.field);
                        assert_eq!(shown::entered(typed.si, *kind, &units), *text, "{:?}", field.field);
                    }
                }
                assert!(view.fields.is_sorted_by_key(|field| field.field));
            }
        }
        speak(Language::English);
    }

    #[test]
    fn a_tank_says_that_its_levels_go_by_its_size() {
        let site = demo::site();
        let of = crate::site::diary::Water::Tank(site.system.tanks[0].id);
        let level = Told::Level { of, level: crate::site::diary::Level::Full, undrawn: None, joined: Vec::new() };
        let entry = crate::site::diary::Entry {
            id: crate::site::diary::EntryId(1),
            edited: 1,
            date: chrono::NaiveDate::default(),
            told: level,
            note: String::new(),
        };
        let file = SiteFile { site, rain: None, diary: Diary::of(vec![entry]), trial: Trial::NONE };
        let kept = KeptSite::of_file(SiteId(1), file);
        let says = |at: usize| {
            let view = sheet(
                &kept,
                kept.site.system.tanks[at].id,
                None,
                &Units::customary(Customary::Metric),
                NaiveDate::default(),
            )
            .unwrap();
            view.state.iter().any(|line| line.starts_with("Levels of this tank in the diary: 1."))
        };
        assert!(says(0) && !says(1));
    }

    #[test]
    fn rows_are_typed_as_people_write_them() {
        let units = Units::customary(Customary::Metric);
        let rows = table_rows("0.5 m  900 L\n\n1 1200\n2 m: 2.4 m3", &units).unwrap();
        let plain: Vec<(f64, f64)> = rows.iter().map(|row| (row.depth.get(), row.volume.get())).collect();
        assert_eq!(plain, [(0.5, 900.0), (1.0, 1200.0), (2.0, 2400.0)]);
        speak(Language::Spanish);
        let large = [TableRow { depth: Length::metres(1.5), volume: Volume::litres(12_500.0) }];
        let text = table_text(&large, &units);
        assert_eq!((text.as_str(), table_rows(&text, &units)), ("1,5\u{a0}m  12\u{a0}500\u{a0}L", Ok(large.to_vec())));
        speak(Language::English);
        assert_eq!(table_rows("0.5 900\nhalf full", &units), Err((2, "half full".to_owned())));
    }
}

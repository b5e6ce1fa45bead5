//! What to change next, and options side by side, as they are shown.

use crate::app::case::Case;
use crate::app::model::Model;
use crate::engine::upgrades::{RankBy, Tally, Upgrades};
use crate::figures::table::Table;
use crate::quantity::{Kind, Units, shown};
use crate::site::findings::findings;
use crate::site::household::Site;
use crate::site::prices::Priced;
use crate::site::trial::MOST_OPTIONS;
use crate::site::upgrade::Upgrade;
use crate::words::{self, next as say};

/// What next, as it is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct NextView {
    /// How far the work is, 0 to 1; none while nothing is in hand.
    pub progress: Option<f64>,
    /// Whether there are results.
    pub judged: bool,
    /// Why there can be none.
    pub refused: Option<String>,
    /// What the person should know about them.
    pub remark: Option<&'static str>,
    /// The measures, in words, and the one that holds.
    pub measures: (Vec<(RankBy, &'static str)>, usize),
    /// The best changes, the best first.
    pub best: Vec<ChangeView>,
    /// The others.
    pub others: Vec<ChangeView>,
    /// One after the other.
    pub steps: Vec<(String, String)>,
    /// Prices: which, what for, the price as text.
    pub prices: Vec<(Priced, String, String)>,
}

/// A change.
#[derive(Clone, Debug, PartialEq)]
pub struct ChangeView {
    /// The change itself, to be tried.
    pub upgrade: Upgrade,
    /// What it is.
    pub title: String,
    /// What it brings: the rest of the sentence.
    pub brings: String,
    /// What to be careful of.
    pub caution: Option<&'static str>,
}

/// So many changes stand in the open; the others are folded away.
const BEST: usize = 5;

/// What next, for the open site.
pub fn next(model: &Model) -> Option<NextView> {
    let kept = model.site()?;
    if kept.rain.is_none() {
        kept.clone().with_written_rain().rain?;
    }
    let work = model.next.upgrades.as_deref();
    let mut best: Vec<ChangeView> = work.map(|work| changes(work, &model.units)).unwrap_or_default();
    let others = best.split_off(best.len().min(BEST));
    let steps = work.map(|work| steps(work, &model.units)).unwrap_or_default();
    Some(NextView {
        progress: work.filter(|work| !work.is_done()).map(Upgrades::progress),
        judged: work.is_some_and(Upgrades::is_judged),
        // A house that can't run says so elsewhere on the place.
        refused: model.next.refused.as_ref().and_then(words::errors::refusal),
        remark: work.filter(|work| work.is_judged()).and_then(|work| remark(work, &kept.site, best.is_empty())),
        measures: (
            RankBy::ALL.map(|by| (by, say::rank_by(by))).into(),
            RankBy::ALL.iter().position(|by| *by == model.next.by).unwrap_or(0),
        ),
        best,
        others,
        steps,
        prices: Priced::ALL
            .map(|priced| (priced, say::priced(priced, &model.units), price_text(priced, &kept.site, &model.units)))
            .into(),
    })
}

/// How the work stands, for those who don't see it.
pub fn told(view: &NextView) -> String {
    match (&view.refused, view.progress, view.best.len() + view.others.len()) {
        (Some(refused), _, _) => refused.clone(),
        (None, Some(_), _) => say::JUDGING.to_owned(),
        (None, None, 0) => String::new(),
        (None, None, changes) => say::judged(changes),
    }
}

fn remark(work: &Upgrades, site: &Site, nothing_helps: bool) -> Option<&'static str> {
    if work.site().system != site.system || work.site().reckoning != site.reckoning {
        Some(say::STALE.text())
    } else if work.now().lacking_l_a_year() <= 0.0 && work.by() != RankBy::Spill {
        Some(say::NOTHING_LACKS.text())
    } else {
        nothing_helps.then_some(say::NOTHING_HELPS.text())
    }
}

fn changes(work: &Upgrades, units: &Units) -> Vec<ChangeView> {
    let mut changes: Vec<ChangeView> = Vec::new();
    for judged in work.ranked() {
        let caution = say::caution(&judged.upgrade);
        changes.push(ChangeView {
            title: say::title(&judged.upgrade, &work.site().system, units),
            brings: say::brings(&judged, units),
            // Each caution is told once, with the first change that asks for it.
            caution: caution.filter(|_| changes.iter().all(|other| other.caution != caution)),
            upgrade: judged.upgrade,
        });
    }
    changes
}

fn steps(work: &Upgrades, units: &Units) -> Vec<(String, String)> {
    let mut told = Vec::new();
    for step in work.steps() {
        let mut text = say::brings(&step.judged, units);
        let left = say::left_after(&step.judged);
        if !left.is_empty() {
            text.push(' ');
            text.push_str(&left);
        }
        told.push((say::title(&step.judged.upgrade, &step.system, units), text));
    }
    told
}

/// The price of a litre is told and typed for a thousand of the person's unit, that of a roof for one of it.
fn price_text(priced: Priced, site: &Site, units: &Units) -> String {
    shown::entered(site.prices.of(priced).get() * priced_amount(priced, units), Kind::Money, units)
}

/// For how much of a thing its price is told.
pub fn priced_amount(priced: Priced, units: &Units) -> f64 {
    match priced {
        Priced::TankLitre => shown::thousand(units).0,
        Priced::RoofArea => units.of(Kind::Area).factor,
        _ => 1.0,
    }
}

/// The options side by side, as they are shown.
#[derive(Clone, Debug, PartialEq)]
pub struct OptionsView {
    /// The options, in the household's order.
    pub options: Vec<OptionView>,
    /// The numbers of the house and of each option that has been run.
    pub table: Option<Table>,
    /// Whether there is room for another one, and a trial to keep that can run and isn't kept yet.
    pub can_keep: bool,
    /// Why not, where only the room lacks.
    pub no_room: Option<&'static str>,
}

/// An option.
#[derive(Clone, Debug, PartialEq)]
pub struct OptionView {
    /// Its name.
    pub name: String,
    /// How it differs from the house, in words.
    pub difference: String,
}

/// The options of the open site.
pub fn options(model: &Model) -> Option<OptionsView> {
    let kept = model.site()?;
    let room = kept.site.options.len() < MOST_OPTIONS;
    let tallies = model.next.beside().map(|beside| beside.tallies()).unwrap_or_default();
    let now = tallies.first().copied().flatten();
    let mut rows = vec![row(&say::THE_HOUSE, now.as_ref(), &model.units)];
    let mut options = Vec::new();
    for (at, option) in kept.site.options.iter().enumerate() {
        let tally = tallies.get(at + 1);
        let mut difference = match (now, tally) {
            (_, None) => String::new(),
            (Some(now), Some(Some(tally))) => say::difference(&now, tally, &model.units),
            _ => say::CANNOT_RUN.to_owned(),
        };
        let reckoned_otherwise = *option.reckoning(&kept.site.reckoning) != kept.site.reckoning;
        difference.push_str(&say::apart(option.levers.rain, reckoned_otherwise));
        rows.push(row(&option.name, tally.copied().flatten().as_ref(), &model.units));
        options.push(OptionView { name: option.name.clone(), difference });
    }
    let table = (!options.is_empty() && now.is_some()).then(|| Table { columns: columns(&model.units), rows });
    let trial = model.trial().settled(&kept.site.system);
    let is_new = !model.trial().is_none() && !kept.site.options.iter().any(|option| option.is_the_same(&trial));
    let wants = is_new && findings(&trial.system(&kept.site.system)).is_empty();
    let no_room = (wants && !room).then(|| say::NO_ROOM.text());
    Some(OptionsView { options, table, can_keep: wants && room, no_room })
}

fn columns(units: &Units) -> Vec<String> {
    let volume = units.of(Kind::Volume).sign();
    vec![
        phrase!("option", "opción").to_owned(),
        phrase!("dry days a year", "días de escasez al año").to_owned(),
        phrase!("dry days in the worst year", "días de escasez en el peor año").to_owned(),
        say!("used a year, {volume}", "usada al año, {volume}", volume),
        say!("lacking or hauled a year, {volume}", "faltante o acarreada al año, {volume}", volume),
        say!("spilled a year, {volume}", "rebosada al año, {volume}", volume),
    ]
}

fn row(name: &str, tally: Option<&Tally>, units: &Units) -> Vec<String> {
    let volume = |litres: f64| shown::figure_number(litres, Kind::Volume, units);
    let mut row = vec![name.to_owned()];
    match tally {
        Some(tally) => row.extend([
            shown::significant(tally.dry_days_a_year(), 3),
            words::number_text(tally.worst_dry_days),
            volume(tally.yield_l_a_year()),
            volume(tally.lacking_l_a_year()),
            volume(tally.spill_l_a_year()),
        ]),
        None => row.extend(std::iter::repeat_n("—".to_owned(), 5)),
    }
    row
}

/// What is told of an open trial, wherever the person is: its name, how it differs, and what it means.
pub fn trial(case: &Case) -> Option<String> {
    case.trial.system.as_ref()?;
    let difference = match (case.outcome.as_deref(), case.tried.as_deref()) {
        (Some(Ok(now)), Some(Ok(tried))) => say::difference(&now.into(), &tried.into(), &case.units),
        (_, Some(Err(_))) => say::TRIAL_CANNOT_RUN.to_owned(),
        _ => String::new(),
    };
    Some(say::trial_open(&case.trial.name, &difference))
}

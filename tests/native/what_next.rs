//! What a person does about what to change next: changes judged in slices, trials edited, options kept.

use std::sync::Arc;

use chrono::NaiveDate;
use eavewater::app::ahead::Sight;
use eavewater::app::case::Case;
use eavewater::app::draft::Draft;
use eavewater::app::effect::Effect;
use eavewater::app::event::{Event, Lever};
use eavewater::app::model::{KeptSite, Model, Notice, Place};
use eavewater::app::next::NextEvent;
use eavewater::app::update;
use eavewater::app::view::{Outcome, next as view};
use eavewater::engine::question::answer_beside;
use eavewater::engine::rain::weather::Origin;
use eavewater::engine::upgrades::{Beside, RankBy, Tally};
use eavewater::quantity::{Kind, Money, Share, shown};
use eavewater::records::cupboard::{Opened, SiteFile, SiteId};
use eavewater::records::exchange;
use eavewater::site::diary::{Level, Told, Water};
use eavewater::site::habits::Habit;
use eavewater::site::household::{GeneratedYears, Site};
use eavewater::site::part::{Field, PartId};
use eavewater::site::prices::Priced;
use eavewater::site::rain::{MissingDays, Rain, RainRecord};
use eavewater::site::system::PartKind;
use eavewater::site::trial::MOST_OPTIONS;
use eavewater::site::trial::Trial;

fn demo() -> Model {
    let mut model = Model::default();
    let today = NaiveDate::from_ymd_opt(2026, 11, 25).unwrap();
    update(&mut model, Event::Started(today, Ok(Opened::default())));
    update(&mut model, Event::DemoWanted);
    update(&mut model, Event::PlaceOpened(Place::Sizing));
    model
}

/// What an event does, but for the studies of sizing that it begins or puts an end to.
fn update(model: &mut Model, event: Event) -> Vec<Effect> {
    let mut effects = update::update(model, event);
    effects.retain(|effect| !matches!(effect, Effect::Study(_) | Effect::LeaveStudy(_)));
    effects
}

fn site(model: &Model) -> Arc<Site> {
    model.site().unwrap().site.clone()
}

/// Sends an event and carries out the slices that it asks for; whatever else is to be done outside comes back.
fn send(model: &mut Model, event: Event) -> Vec<Effect> {
    let mut outside = Vec::new();
    let mut effects = update(model, event);
    while let Some(effect) = effects.pop() {
        match effect {
            Effect::GoOn => effects.extend(update(model, Event::Next(NextEvent::GoOn))),
            other => outside.push(other),
        }
    }
    outside
}

fn next(model: &mut Model, event: NextEvent) -> Vec<Effect> {
    send(model, Event::Next(event))
}

#[test]
fn the_work_goes_in_slices_and_can_be_stopped() {
    let mut model = demo();
    assert_eq!(update(&mut model, Event::Next(NextEvent::Wanted)), [Effect::GoOn]);
    // While a slice is on its way no other one is asked for.
    assert_eq!(update(&mut model, Event::PlaceOpened(Place::House)), [Effect::ShowPlace(Place::House)]);
    assert_eq!(update(&mut model, Event::Next(NextEvent::GoOn)), [Effect::GoOn]);
    let seen = view::next(&model).unwrap();
    assert!(seen.progress.is_some_and(|share| share > 0.0 && share < 1.0));
    assert_eq!(update(&mut model, Event::Next(NextEvent::Stopped)), []);
    assert_eq!(update(&mut model, Event::Next(NextEvent::GoOn)), []);
    assert_eq!(view::next(&model).unwrap().progress, None);

    next(&mut model, NextEvent::Wanted);
    let seen = view::next(&model).unwrap();
    assert!(seen.judged && seen.progress.is_none() && seen.remark.is_none());
    assert!(!seen.best.is_empty() && !seen.steps.is_empty());
    assert_eq!(seen.best[0].title, seen.steps[0].0);
    // Another measure, other prices: ranked anew. A changed house is told.
    next(&mut model, NextEvent::RankedBy(RankBy::WorstYear));
    assert_eq!(view::next(&model).unwrap().steps[0].0, view::next(&model).unwrap().best[0].title);
    let effects = next(&mut model, NextEvent::Priced(Priced::Gutter, 12.5));
    assert!(matches!(effects.as_slice(), [Effect::SaveSite(..)]));
    assert_eq!(site(&model).prices.of(Priced::Gutter), Money::coins(12.5));
    assert_eq!(view::next(&model).unwrap().remark, None);
    update(&mut model, Event::PartRemoved(PartId(13)));
    assert!(view::next(&model).unwrap().remark.is_some());
    // Other rain: nothing of it holds any more.
    update(&mut model, Event::RainRemoved);
    assert_eq!(model.next.upgrades, None);
}

/// What is kept beyond trials.
fn kept_but_trials(effects: Vec<Effect>) -> Vec<Effect> {
    effects.into_iter().filter(|effect| !matches!(effect, Effect::SaveTrial(..))).collect()
}

#[test]
fn a_change_is_tried_beside_the_house_and_made_real() {
    let mut model = demo();
    let real = site(&model);
    next(&mut model, NextEvent::Wanted);
    let upgrade = view::next(&model).unwrap().best[0].upgrade.clone();
    assert_eq!(kept_but_trials(next(&mut model, NextEvent::Tried(upgrade.clone()))), []);
    assert_eq!(site(&model), real);
    let told = view::trial(&Case::of(&model, 358.0, None)).unwrap();
    assert!(told.contains("fewer dry days in the worst year") && told.contains("the house stays as it is"), "{told}");
    let tried = model.shown_site().unwrap().site.system.clone();
    assert_eq!(tried, upgrade.made(&real.system, eavewater::words::parts::new_name));
    let effects = update(&mut model, Event::TrialKept);
    assert!(matches!(effects.as_slice(), [Effect::SaveSite(..), Effect::SaveTrial(_, trial)] if trial.is_none()));
    assert_eq!(site(&model).system, tried);
    assert!(model.trial().is_none());
    update(&mut model, Event::UndoWanted);
    assert_eq!(site(&model), real);
    // Thrown away, and brought back.
    next(&mut model, NextEvent::StepsTried(2));
    let trial = model.trial().clone();
    update(&mut model, Event::TrialDropped);
    assert!(model.trial().is_none());
    update(&mut model, Event::UndoWanted);
    assert_eq!(*model.trial(), trial);
}

#[test]
fn a_trial_that_cannot_run_does_not_become_a_house_that_can() {
    let mut model = demo();
    next(&mut model, NextEvent::TrialOpened);
    for tank in model.shown_site().unwrap().site.system.tanks.iter().map(|tank| tank.id).collect::<Vec<_>>() {
        update(&mut model, Event::PartRemoved(tank));
    }
    let real = site(&model);
    let trial = model.trial().clone();
    let told = view::trial(&Case::of(&model, 358.0, None)).unwrap();
    assert!(told.contains("House says what is missing") && !told.contains("open it"), "{told}");
    assert_eq!(update(&mut model, Event::TrialKept), []);
    assert_eq!((site(&model), model.trial()), (real.clone(), &trial));
    assert_eq!(model.notice, Some(Notice::TrialWouldNotRun));
    // A house that can't run either loses nothing by it.
    update(&mut model, Event::TrialDropped);
    for tank in &real.system.tanks {
        update(&mut model, Event::PartRemoved(tank.id));
    }
    next(&mut model, NextEvent::TrialOpened);
    update(&mut model, Event::PartAdded(PartKind::Tank));
    update(&mut model, Event::TrialKept);
    assert!(model.trial().is_none());
    assert_eq!(site(&model).system.tanks.len(), 1);
}

#[test]
fn while_a_trial_is_open_the_sheets_change_it_and_not_the_house() {
    let mut model = demo();
    let real = site(&model);
    update(&mut model, Event::LeverDragged(Lever::Roof, 2.0));
    next(&mut model, NextEvent::TrialOpened);
    // What the lever did is part of the trial.
    let area = |model: &Model| model.shown_site().unwrap().site.system.sections[0].area.get();
    assert!((area(&model) / real.system.sections[0].area.get() - 2.0).abs() < 1e-12);
    let id = real.system.sections[0].id;
    assert_eq!(kept_but_trials(update(&mut model, Event::NumberEntered(id, Field::Area, 77.0))), []);
    assert_eq!(kept_but_trials(update(&mut model, Event::PartNamed(id, "Barn".to_owned()))), []);
    assert_eq!(kept_but_trials(update(&mut model, Event::PartAdded(PartKind::Tank))), []);
    assert_eq!(area(&model), 77.0);
    let tried = model.shown_site().unwrap().site;
    assert_eq!((tried.system.sections[0].name.as_str(), tried.system.tanks.len()), ("Barn", 4));
    assert_eq!(kept_but_trials(update(&mut model, Event::PartRemoved(id))), []);
    assert!(model.shown_site().unwrap().site.system.part(id).is_none());
    update(&mut model, Event::UndoWanted);
    assert_eq!(model.shown_site().unwrap().site, tried);
    // A value that is refused changes neither.
    update(&mut model, Event::NumberEntered(id, Field::Area, -1.0));
    assert!(matches!(model.notice, Some(Notice::Refused(_))));
    assert_eq!((model.shown_site().unwrap().site, site(&model)), (tried, real));
}

#[test]
fn while_a_trial_is_open_the_house_is_reckoned_as_it_was() {
    let mut model = demo();
    let real = site(&model);
    next(&mut model, NextEvent::TrialOpened);
    let factors = [0.8; 12];
    for event in [
        Event::StartChosen(0.5),
        Event::RuleChosen(1.0),
        Event::GeneratedChosen(Some(GeneratedYears::CENTURY)),
        Event::RainFactorsEntered(factors),
        Event::MissingDaysChosen(MissingDays::Fill),
        Event::ClimateWayChosen { temperatures: true },
        Event::HabitFigureChosen(Habit::Shower, 1),
        Event::HabitsPut,
    ] {
        assert_eq!(kept_but_trials(update(&mut model, event)), []);
    }
    assert_eq!(site(&model), real);
    let case = Case::of(&model, 358.0, None);
    let origin = |outcome: &Option<Arc<Outcome>>| outcome.as_deref().unwrap().as_ref().unwrap().origin;
    assert_eq!((origin(&case.outcome), origin(&case.tried)), (Origin::Measured, Origin::Generated));
    let tried = model.trial().reckoning(&real.reckoning).clone();
    assert_eq!((tried.start.get(), tried.inflow_first.get(), tried.missing_days), (0.5, 1.0, MissingDays::Fill));
    assert_eq!(tried.rain_factors.map(Share::get), factors);
    // As an option it is run on its own rain, from its own start, by its own rule.
    next(&mut model, NextEvent::OptionKept);
    update(&mut model, Event::TrialDropped);
    assert_eq!(site(&model).options[0].of(&real).reckoning, tried);
    let mut beside = Beside::new(&site(&model), model.site().unwrap().rain.as_deref().unwrap()).unwrap();
    while beside.step() {}
    let rain = model.site().unwrap().rain.clone().unwrap();
    let own = answer_beside(&site(&model).options[0].of(&real), Some(&real.system), &rain).unwrap();
    assert_eq!(beside.tallies()[1], Some((&own).into()));
    // Opened again and made real, it is the house's own.
    next(&mut model, NextEvent::OptionOpened(0));
    update(&mut model, Event::TrialKept);
    assert_eq!(site(&model).reckoning, tried);
    assert!(model.trial().is_none());
}

/// The model as another start of the program finds it.
fn opened_again(model: &Model, saved: &[(SiteId, Trial)]) -> Model {
    let mut again = Model::default();
    let file = |kept: &KeptSite| {
        let saved = saved.iter().find(|(id, _)| *id == kept.id).map_or(Trial::NONE, |(_, trial)| trial.clone());
        (kept.id, SiteFile { trial: saved, ..kept.file() })
    };
    let opened = Opened { index: model.index(), sites: model.sites.iter().map(file).collect(), ..Opened::default() };
    update(&mut again, Event::Started(model.today, Ok(opened)));
    again
}

#[test]
fn a_trial_survives_another_site_and_another_start() {
    let mut model = demo();
    let first = model.open.unwrap();
    assert_eq!(update(&mut model, Event::LeverDragged(Lever::Roof, 1.5)), [], "kept when the lever is let go");
    let effects = update(&mut model, Event::LeverLeft);
    assert_eq!(effects, [Effect::SaveTrial(first, model.trial().clone())]);
    next(&mut model, NextEvent::TrialOpened);
    let effects = update(&mut model, Event::StartChosen(0.5));
    let trial = model.trial().clone();
    assert_eq!(effects, [Effect::SaveTrial(first, trial.clone())]);
    update(&mut model, Event::DemoWanted);
    assert!(model.trial().is_none(), "a trial is of its own site");
    update(&mut model, Event::SiteOpened(first));
    assert_eq!(*model.trial(), trial);
    let mut again = opened_again(&model, &[(first, trial.clone())]);
    update(&mut again, Event::SiteOpened(first));
    assert_eq!(*again.trial(), trial);
    // A site brought back brings its trial.
    update(&mut again, Event::SiteRemoved(first));
    let effects = update(&mut again, Event::UndoWanted);
    assert!(effects.contains(&Effect::SaveTrial(first, trial.clone())));
    assert_eq!(*again.trial(), trial);
}

#[test]
fn a_trial_goes_out_with_its_site_and_comes_back() {
    let mut model = demo();
    next(&mut model, NextEvent::TrialOpened);
    update(&mut model, Event::StartChosen(0.5));
    let trial = model.trial().clone();
    assert!(!trial.is_none());
    let text = exchange::export(&model.units, None, model.sites.iter().map(KeptSite::file).collect());
    // Where nothing is, and where the same site is without its trial.
    for mut other in [Model::default(), demo()] {
        let mut effects = update(&mut other, Event::FileRead(text.clone().into_bytes()));
        if effects.is_empty() {
            effects = update(&mut other, Event::FileAccepted { replace: false });
        }
        let [Effect::TakeIn { sites, index, replace }] = effects.as_slice() else { panic!("{effects:?}") };
        assert_eq!(sites[0].1.trial, trial, "it is written with the site");
        let (sites, index, replace) = (sites.clone(), index.clone(), *replace);
        update(&mut other, Event::TakenIn { sites, index, replace, result: Ok(()) });
        assert_eq!(*other.trial(), trial);
    }
    // A file of before has none.
    let before = text.replacen(r#""trial":{"#, r#""once":{"#, 1);
    assert!(exchange::import(before.as_bytes()).unwrap().sites[0].trial.is_none());
}

#[test]
fn without_a_whole_year_of_rain_nothing_is_judged_and_it_says_why() {
    let mut model = demo();
    let spring = RainRecord {
        source: String::new(),
        start: NaiveDate::from_ymd_opt(2026, 3, 1).unwrap(),
        depths_mm: vec![Some(4.0); 90],
    };
    model.sites[0].rain = Some(Arc::new(Rain::Record(spring)));
    next(&mut model, NextEvent::Wanted);
    let view = view::next(&model).unwrap();
    assert!(view.best.is_empty() && view.progress.is_none());
    assert!(view.refused.is_some_and(|why| why.contains("at least one whole calendar year")));
    model.sites[0].rain = demo().sites[0].rain.clone();
    next(&mut model, NextEvent::Wanted);
    let view = view::next(&model).unwrap();
    assert!(!view.best.is_empty() && view.refused.is_none());
}

#[test]
fn a_trial_is_kept_as_an_option_once() {
    let mut model = demo();
    update(&mut model, Event::LeverDragged(Lever::Storage, 2.0));
    let can_keep = |model: &Model| view::options(model).unwrap().can_keep;
    assert!(can_keep(&model));
    next(&mut model, NextEvent::OptionKept);
    assert!(!can_keep(&model));
    assert_eq!(next(&mut model, NextEvent::OptionKept), []);
    assert_eq!(site(&model).options.len(), 1);
    // Unnamed, it is called by the size that it has.
    let held_l: f64 = site(&model).system.tanks.iter().map(|tank| tank.capacity().get()).sum();
    let size = shown::figure(2.0 * held_l, Kind::Volume, &model.units);
    assert_eq!(site(&model).options[0].name, format!("Tanks {size}"));
    update(&mut model, Event::LeverDragged(Lever::Storage, 3.0));
    assert!(can_keep(&model), "another one");
    // A trial without a tank can't run: it is no option.
    next(&mut model, NextEvent::TrialOpened);
    let tanks: Vec<PartId> = site(&model).system.tanks.iter().map(|tank| tank.id).collect();
    for tank in tanks {
        update(&mut model, Event::PartRemoved(tank));
    }
    assert!(!can_keep(&model));
    assert_eq!(next(&mut model, NextEvent::OptionKept), []);
    assert_eq!(model.notice, Some(Notice::TrialCannotRun));
    assert_eq!(site(&model).options.len(), 1);
}

#[test]
fn an_option_that_is_made_real_is_the_house_and_no_option_any_more() {
    let mut model = demo();
    for factor in [2.0, 3.0] {
        update(&mut model, Event::LeverDragged(Lever::Storage, factor));
        next(&mut model, NextEvent::OptionKept);
    }
    let (larger, largest) = (site(&model).options[0].clone(), site(&model).options[1].clone());
    next(&mut model, NextEvent::OptionOpened(0));
    update(&mut model, Event::TrialKept);
    assert_eq!(site(&model).system, *larger.system.clone().unwrap());
    assert_eq!(site(&model).options, std::slice::from_ref(&largest));
    update(&mut model, Event::UndoWanted);
    assert_eq!(site(&model).options, [larger, largest]);
}

#[test]
fn options_are_kept_named_opened_removed_and_brought_back() {
    let mut model = demo();
    let real = site(&model);
    assert_eq!(next(&mut model, NextEvent::OptionKept), [], "there is no trial to keep");
    next(&mut model, NextEvent::Wanted);
    let best = view::next(&model).unwrap().best;
    next(&mut model, NextEvent::Tried(best[0].upgrade.clone()));
    update(&mut model, Event::LeverDragged(Lever::Rain, 0.8));
    update(&mut model, Event::LeverLeft);
    let tried = model.trial().of(&real);
    let effects = next(&mut model, NextEvent::OptionKept);
    assert!(matches!(effects.as_slice(), [Effect::SaveSite(..)]));
    assert_eq!(site(&model).system, real.system);
    for (number, rain) in (1..MOST_OPTIONS + 2).zip([0.81, 0.82, 0.83, 0.84, 0.85, 0.86, 0.87]) {
        update(&mut model, Event::LeverDragged(Lever::Rain, rain));
        next(&mut model, NextEvent::OptionKept);
        assert_eq!(site(&model).options.len(), (number + 1).min(MOST_OPTIONS));
    }
    assert!(!view::options(&model).unwrap().can_keep);
    let names: Vec<String> = site(&model).options.iter().map(|option| option.name.clone()).collect();
    assert!(names.iter().all(|name| names.iter().filter(|other| *other == name).count() == 1), "{names:?}");

    next(&mut model, NextEvent::OptionNamed(1, " Dry years ".to_owned()));
    next(&mut model, NextEvent::OptionNamed(2, " ".to_owned()));
    assert_eq!(site(&model).options[1].name, "Dry years");
    assert_eq!(site(&model).options[2].name, names[2]);
    update(&mut model, Event::TrialDropped);
    next(&mut model, NextEvent::OptionOpened(1));
    assert_eq!(
        (model.trial().of(&real), model.trial().name.as_str()),
        (site(&model).options[1].of(&real), "Dry years")
    );
    next(&mut model, NextEvent::OptionOpened(0));
    assert_eq!(model.trial().of(&real), tried);
    next(&mut model, NextEvent::OptionRemoved(1));
    assert_eq!(site(&model).options.len(), MOST_OPTIONS - 1);
    update(&mut model, Event::UndoWanted);
    assert_eq!(site(&model).options[1].name, "Dry years");
}

#[test]
fn options_are_run_on_the_same_rain_and_compared_in_words() {
    let mut model = demo();
    update(&mut model, Event::LeverDragged(Lever::Storage, 3.0));
    next(&mut model, NextEvent::OptionKept);
    update(&mut model, Event::LeverDragged(Lever::Rain, 0.5));
    next(&mut model, NextEvent::OptionKept);
    let (site, rain) = (site(&model), model.site().unwrap().rain.clone().unwrap());
    let real = site.system.clone();
    let independently = |site: &Site| Tally::from(&answer_beside(site, Some(&real), &rain).unwrap());
    let tallies = model.next.beside().unwrap().tallies();
    let expected: Vec<Option<Tally>> = std::iter::once(Some(independently(&site)))
        .chain(site.options.iter().map(|option| Some(independently(&option.of(&site)))))
        .collect();
    assert_eq!(tallies, expected);
    let seen = view::options(&model).unwrap();
    assert_eq!(seen.table.unwrap().rows.len(), 3);
    assert!(seen.options[0].difference.contains("fewer dry days in the worst year"), "{:?}", seen.options);
    assert!(seen.options[1].difference.ends_with("With 50\u{a0}% of the rain."), "{:?}", seen.options);
    assert!(site.options[1].name.ends_with("Rain 50\u{a0}%"), "{:?}", seen.options);
    // A change to the house runs them anew.
    send(&mut model, Event::StartChosen(0.0));
    assert_eq!(model.next.beside().unwrap().tallies()[0], Some(independently(&model.site().unwrap().site.clone())));
}

#[test]
fn once_the_options_are_run_the_weeks_ahead_are_looked_at() {
    let mut model = demo();
    update(&mut model, Event::LeverDragged(Lever::Storage, 3.0));
    next(&mut model, NextEvent::OptionKept);
    assert!(model.next.beside().unwrap().is_done());
    let told = Told::Level {
        of: Water::Tank(site(&model).system.tanks[0].id),
        level: Level::Full,
        undrawn: None,
        joined: Vec::new(),
    };
    let read = Draft { id: None, date: model.today, told, note: String::new() };
    send(&mut model, Event::EntryWritten(read, 1_795_000_000_000));
    let mut effects = update(&mut model, Event::PlaceOpened(Place::Ahead));
    for _ in 0..1000 {
        if !effects.contains(&Effect::GoOn) {
            break;
        }
        effects = update(&mut model, Event::Next(NextEvent::GoOn));
    }
    assert!(matches!(model.ahead.sight, Sight::Clear(_)), "{:?}", model.ahead.sight);
}

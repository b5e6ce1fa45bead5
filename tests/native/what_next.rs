//! What a person does about what to change next: changes judged in slices, trials edited, options kept.

use std::sync::Arc;

use chrono::NaiveDate;
use eavewater::app::case::Case;
use eavewater::app::effect::Effect;
use eavewater::app::event::{Event, Lever};
use eavewater::app::model::{Model, Notice, Place};
use eavewater::app::next::NextEvent;
use eavewater::app::update;
use eavewater::app::view::next as view;
use eavewater::engine::question::answer;
use eavewater::engine::upgrades::{RankBy, Tally};
use eavewater::quantity::Money;
use eavewater::records::cupboard::Opened;
use eavewater::site::household::Site;
use eavewater::site::kept_option::MOST_OPTIONS;
use eavewater::site::part::{Field, PartId};
use eavewater::site::prices::Priced;
use eavewater::site::system::PartKind;

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
    assert_eq!(update(&mut model, Event::PlaceOpened(Place::House)), []);
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

#[test]
fn a_change_is_tried_beside_the_house_and_made_real() {
    let mut model = demo();
    let real = site(&model);
    next(&mut model, NextEvent::Wanted);
    let upgrade = view::next(&model).unwrap().best[0].upgrade.clone();
    assert_eq!(next(&mut model, NextEvent::Tried(upgrade.clone())), []);
    assert_eq!(site(&model), real);
    let told = view::trial(&Case::of(&model, 358.0, None)).unwrap();
    assert!(told.contains("fewer dry days in the worst year") && told.contains("the house stays as it is"), "{told}");
    let tried = model.shown_site().unwrap().site.system.clone();
    assert_eq!(tried, upgrade.made(&real.system, eavewater::words::parts::new_name));
    let effects = update(&mut model, Event::TrialKept);
    assert!(matches!(effects.as_slice(), [Effect::SaveSite(..)]));
    assert_eq!(site(&model).system, tried);
    assert!(model.trial.is_none());
    update(&mut model, Event::UndoWanted);
    assert_eq!(site(&model), real);
    // Thrown away, and brought back.
    next(&mut model, NextEvent::StepsTried(2));
    let trial = model.trial.clone();
    update(&mut model, Event::TrialDropped);
    assert!(model.trial.is_none());
    update(&mut model, Event::UndoWanted);
    assert_eq!(model.trial, trial);
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
    assert_eq!(update(&mut model, Event::NumberEntered(id, Field::Area, 77.0)), []);
    assert_eq!(update(&mut model, Event::PartNamed(id, "Barn".to_owned())), []);
    assert_eq!(update(&mut model, Event::PartAdded(PartKind::Tank)), []);
    assert_eq!(area(&model), 77.0);
    let tried = model.shown_site().unwrap().site;
    assert_eq!((tried.system.sections[0].name.as_str(), tried.system.tanks.len()), ("Barn", 4));
    assert_eq!(update(&mut model, Event::PartRemoved(id)), []);
    assert!(model.shown_site().unwrap().site.system.part(id).is_none());
    update(&mut model, Event::UndoWanted);
    assert_eq!(model.shown_site().unwrap().site, tried);
    // A value that is refused changes neither.
    update(&mut model, Event::NumberEntered(id, Field::Area, -1.0));
    assert!(matches!(model.notice, Some(Notice::Refused(_))));
    assert_eq!((model.shown_site().unwrap().site, site(&model)), (tried, real));
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
    let tried = model.trial.of(&real);
    let effects = next(&mut model, NextEvent::OptionKept);
    assert!(matches!(effects.as_slice(), [Effect::SaveSite(..)]));
    assert_eq!(site(&model).system, real.system);
    assert_eq!(site(&model).options[0].of(&real), tried);
    for number in 1..MOST_OPTIONS + 2 {
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
    assert_eq!((model.trial.of(&real), model.trial.name.as_str()), (tried, "Dry years"));
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
    let independently = |site: &Site| Tally::from(&answer(site, &rain).unwrap());
    let tallies = model.next.beside().unwrap().tallies();
    let expected: Vec<Option<Tally>> = std::iter::once(Some(independently(&site)))
        .chain(site.options.iter().map(|option| Some(independently(&option.of(&site)))))
        .collect();
    assert_eq!(tallies, expected);
    let seen = view::options(&model).unwrap();
    assert_eq!(seen.table.unwrap().rows.len(), 3);
    assert!(seen.options[0].difference.contains("fewer dry days in the worst year"), "{:?}", seen.options);
    assert!(seen.options[1].difference.ends_with("With 50\u{a0}% of the rain."), "{:?}", seen.options);
    // A change to the house runs them anew.
    send(&mut model, Event::StartChosen(0.0));
    assert_eq!(model.next.beside().unwrap().tallies()[0], Some(independently(&model.site().unwrap().site.clone())));
}

//! What a person does, as events on the model: what changes, and what is to be done outside.

use std::sync::Arc;

use chrono::NaiveDate;
use eavewater::app::effect::Effect;
use eavewater::app::event::{Event, Lever, Shift};
use eavewater::app::model::{Model, Notice, Place};
use eavewater::app::next::NextEvent;
use eavewater::app::sketch::{Sketch, SketchRain, means};
use eavewater::app::update::update;
use eavewater::app::view::{
    climate, frame, kept as kept_view, rain as rain_view, sizing as sizing_view, upkeep as upkeep_view,
};
use eavewater::engine::question::answer;
use eavewater::quantity::{Area, Count, Customary, Flow, Kind, Length, Share, Units, Volume};
use eavewater::records::cupboard::{Opened, SiteId, Trouble};
use eavewater::records::exchange;
use eavewater::records::shelf::ShelfError;
use eavewater::records::slots::PutError;
use eavewater::site::climate::ClimateValue;
use eavewater::site::findings::{Finding, findings};
use eavewater::site::household::GeneratedYears;
use eavewater::site::part::{Choice, Field};
use eavewater::site::rain::{Normals, Rain};
use eavewater::site::roof::Material;
use eavewater::site::system::PartKind;
use eavewater::site::tank::Build;
use eavewater::site::trial::{Levers, Trial};
use eavewater::site::uses::AmountKind;
use eavewater::words;

pub fn started() -> Model {
    let mut model = Model::default();
    let today = NaiveDate::from_ymd_opt(2026, 11, 25).unwrap();
    assert_eq!(update(&mut model, Event::Started(today, Ok(Opened::default()))), []);
    model
}

pub fn with_demo() -> Model {
    let mut model = started();
    update(&mut model, Event::DemoWanted);
    model
}

pub fn sketch() -> Sketch {
    Sketch {
        name: "A neighbour's".to_owned(),
        begun: None,
        length: Length::metres(12.0),
        roof: Area::square_metres(120.0),
        material: Material::Tile,
        people: Count::number(3.0),
        per_head: Flow::litres_a_day(60.0),
        other: Flow::litres_a_day(0.0),
        tank: Volume::litres(15_000.0),
        rain: SketchRain::None,
    }
}

pub fn record(name: &str) -> Vec<u8> {
    std::fs::read(format!("{}/tests/data/{name}-daily.csv", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

fn rain_of(model: &Model, units: &Units) -> rain_view::RainView {
    let kept = model.site().unwrap();
    rain_view::rain(kept, &kept.site.reckoning, model.read_rain.as_ref(), units, 358.0)
}

#[test]
fn first_start_to_answer() {
    let mut model = started();
    assert_eq!(model.site(), None);
    update(&mut model, Event::SketchWanted);
    let effects = update(&mut model, Event::SketchDrawn(sketch()));
    let [Effect::SaveSite(..), Effect::SaveIndex(_), Effect::ShowPlace(shown)] = effects.as_slice() else {
        panic!("{effects:?}")
    };
    assert_eq!((*shown, model.place), (Place::Rain, Place::Rain));
    update(&mut model, Event::RainRead(record("hyderabad"), "hyderabad".to_owned()));
    let units = Units::customary(Customary::Metric);
    let view = rain_of(&model, &units);
    assert!(view.kept.is_none() && view.waiting.is_some(), "nothing is kept before the person says so");
    let effects = update(&mut model, Event::RainKept);
    assert!(matches!(effects.as_slice(), [Effect::SaveRain(_, Some(_))]));
    let kept = model.site().unwrap();
    let outcome = answer(&kept.site, kept.rain.as_deref().unwrap());
    let view = sizing_view::sizing(kept, Some(&outcome), &Trial::NONE, None, &units);
    assert!(view.headline.starts_with("In 11 years of rain, the water ran out every year; "), "{}", view.headline);
}

#[test]
fn a_refused_value_changes_nothing_and_says_why() {
    let mut model = with_demo();
    let before = model.site().unwrap().site.clone();
    let section = before.system.sections[0].id;
    let effects = update(&mut model, Event::NumberEntered(section, Field::Area, -5.0));
    assert_eq!(effects, []);
    assert_eq!(model.site().unwrap().site, before);
    let notice = frame::notice(&model).unwrap();
    assert!(notice.warning && notice.text.contains("must be between"), "{}", notice.text);
}

#[test]
fn a_value_that_stays_the_same_is_not_saved_again() {
    let mut model = with_demo();
    let section = model.site().unwrap().site.system.sections[0].clone();
    assert_eq!(update(&mut model, Event::NumberEntered(section.id, Field::Area, section.area.get())), []);
}

#[test]
fn parts_are_added_copied_moved_removed_and_brought_back() {
    let mut model = with_demo();
    let before = model.site().unwrap().site.clone();
    update(&mut model, Event::PartAdded(PartKind::Tank));
    let added = model.sheet.unwrap();
    update(&mut model, Event::PartDuplicated(added));
    let copy = model.sheet.unwrap();
    assert_ne!(added, copy);
    update(&mut model, Event::PartShifted(copy, Shift::Up));
    let order: Vec<_> = model.site().unwrap().site.system.tanks.iter().map(|tank| tank.id).collect();
    assert_eq!(order[3..], [copy, added]);
    update(&mut model, Event::PartRemoved(added));
    update(&mut model, Event::PartRemoved(copy));
    // As before, but that it remembers which numbers are gone.
    let mut after = (*model.site().unwrap().site).clone();
    assert_eq!(std::mem::take(&mut after.system.greatest_gone), copy.0);
    assert_eq!(after, *before);
    let effects = update(&mut model, Event::UndoWanted);
    assert!(matches!(effects.as_slice(), [Effect::SaveSite(..)]));
    assert_eq!(model.site().unwrap().site.system.tanks.len(), before.system.tanks.len() + 1);
}

#[test]
fn a_removed_site_can_be_brought_back_with_its_rain() {
    let mut model = with_demo();
    update(&mut model, Event::SketchDrawn(sketch()));
    let demo = model.sites[0].clone();
    let effects = update(&mut model, Event::SiteRemoved(demo.id));
    assert!(effects.contains(&Effect::RemoveSite(demo.id)));
    assert_eq!(model.sites.len(), 1);
    update(&mut model, Event::UndoWanted);
    assert!(model.sites[0] == demo);
}

#[test]
fn a_trial_changes_the_house_only_when_it_is_kept() {
    let mut model = with_demo();
    let before = model.site().unwrap().site.clone();
    assert_eq!(update(&mut model, Event::LeverDragged(Lever::Storage, 2.0)), []);
    assert_eq!(model.site().unwrap().site, before);
    let effects = update(&mut model, Event::TrialKept);
    assert!(matches!(effects.as_slice(), [Effect::SaveSite(..), Effect::SaveTrial(_, trial)] if trial.is_none()));
    let capacity = |model: &Model| -> f64 {
        model.site().unwrap().site.system.tanks.iter().map(|tank| tank.capacity().get()).sum()
    };
    let doubled: f64 = 2.0 * before.system.tanks.iter().map(|tank| tank.capacity().get()).sum::<f64>();
    assert!((capacity(&model) / doubled - 1.0).abs() < 1e-9);
    assert_eq!(*model.trial(), Trial::NONE);
    update(&mut model, Event::UndoWanted);
    assert_eq!(model.site().unwrap().site, before);
    update(&mut model, Event::LeverDragged(Lever::Storage, f64::NAN));
    assert_eq!(*model.trial(), Trial::NONE);
}

#[test]
fn a_trial_compares_in_words() {
    let model = with_demo();
    let kept = model.site().unwrap();
    let rain = kept.rain.as_deref().unwrap();
    let trial = Trial { levers: Levers { storage: 3.0, ..Levers::NONE }, ..Trial::NONE };
    let (now, tried) = (answer(&kept.site, rain), answer(&trial.of(&kept.site), rain));
    let view = sizing_view::sizing(kept, Some(&now), &trial, Some(&tried), &model.units);
    let (_, compared) = view.trial.unwrap();
    assert!(compared.contains("fewer dry days in the worst year (0 instead of "), "{compared}");
}

#[test]
fn a_number_that_may_be_thousands_is_understood_with_a_word_about_it() {
    let units = Units::customary(Customary::Metric);
    let understood = |text: &str| {
        let typed = eavewater::quantity::typed::quantity(text, Kind::Volume, &units).unwrap();
        words::errors::understood(text, &typed, Kind::Volume, &units)
    };
    let told = understood("5.000").unwrap();
    assert!(told.starts_with("Understood as 5\u{a0}L.") && told.contains("5,000"), "{told}");
    assert_eq!(understood("5,000"), None);
    assert_eq!(understood("5.5"), None);
}

#[test]
fn rain_in_another_unit_is_read_again() {
    let mut model = with_demo();
    let in_inches = b"day,depth\n2001-01-01,0.5\n2001-01-02,0\n2001-01-03,1.25\n".to_vec();
    update(&mut model, Event::RainRead(in_inches, "gauge".to_owned()));
    let depth = |model: &Model| model.read_rain.as_ref().unwrap().import.record.depths_mm[2];
    update(&mut model, Event::RainUnitChosen(eavewater::engine::rain::rain_unit::RainUnit::Inches));
    assert_eq!(depth(&model), Some(1.25 * 25.4));
    update(&mut model, Event::RainUnitChosen(eavewater::engine::rain::rain_unit::RainUnit::Millimetres));
    assert_eq!(depth(&model), Some(1.25));
    update(&mut model, Event::RainDiscarded);
    assert_eq!(model.read_rain, None);
}

#[test]
fn rain_that_was_removed_or_replaced_can_be_brought_back() {
    let mut model = with_demo();
    let rain = model.site().unwrap().rain.clone();
    let effects = update(&mut model, Event::RainRemoved);
    assert_eq!(effects, [Effect::SaveRain(SiteId(1), None)]);
    assert_eq!(frame::notice(&model).unwrap().offer, Some(frame::Offer::Undo));
    update(&mut model, Event::UndoWanted);
    assert!(model.site().unwrap().rain == rain);
    update(&mut model, Event::RainRead(record("seattle"), "seattle".to_owned()));
    update(&mut model, Event::RainKept);
    assert!(model.site().unwrap().rain != rain);
    update(&mut model, Event::UndoWanted);
    assert!(model.site().unwrap().rain == rain);
}

#[test]
fn a_daily_record_ends_the_guessing_from_twelve_means() {
    let mut model = started();
    let means = means("95 80 75 60 40 20 10 15 40 70 90 100", &Units::customary(Customary::Metric)).unwrap();
    update(&mut model, Event::SketchDrawn(Sketch { rain: SketchRain::Means(means), ..sketch() }));
    let generated = |model: &Model| model.site().unwrap().site.reckoning.generated;
    let guessed = generated(&model);
    assert!(guessed.is_some());
    // Three days are no record to reckon with.
    update(
        &mut model,
        Event::RainRead(b"day,mm\n2001-01-01,5\n2001-01-02,0\n2001-01-03,12\n".to_vec(), "gauge".to_owned()),
    );
    update(&mut model, Event::RainKept);
    assert_eq!(generated(&model), guessed);
    update(&mut model, Event::UndoWanted);
    update(&mut model, Event::RainRead(record("hyderabad"), "hyderabad".to_owned()));
    update(&mut model, Event::RainKept);
    assert_eq!(generated(&model), None);
    assert_eq!(frame::notice(&model).unwrap().text, *words::rain::KEPT_INSTEAD);
    update(&mut model, Event::UndoWanted);
    assert_eq!(generated(&model), guessed);
}

#[test]
fn a_rain_file_that_cannot_be_read_is_told_and_changes_nothing() {
    let mut model = with_demo();
    let rain = model.site().unwrap().rain.clone();
    assert_eq!(update(&mut model, Event::RainRead(b"no rain here".to_vec(), "x".to_owned())), []);
    assert!(matches!(model.notice, Some(Notice::RainRefused(_))));
    assert!(model.site().unwrap().rain == rain);
}

#[test]
fn units_change_what_is_shown_and_not_what_is_kept() {
    let mut model = with_demo();
    let before = model.site().unwrap().site.clone();
    for set in Customary::ALL {
        let effects = update(&mut model, Event::UnitsChosen(set));
        assert!(matches!(effects.as_slice(), [Effect::SaveIndex(_)]));
    }
    update(&mut model, Event::UnitChosen(Kind::Depth, "in"));
    assert_eq!(model.units.of(Kind::Depth).symbol, "in");
    assert_eq!(model.site().unwrap().site, before);
}

#[test]
fn a_file_goes_out_and_comes_back() {
    let mut model = with_demo();
    update(&mut model, Event::UnitsChosen(Customary::Us));
    let effects = update(&mut model, Event::ExportWanted);
    let [Effect::Download { text, name, .. }, Effect::SaveIndex(_)] = effects.as_slice() else { panic!("{effects:?}") };
    assert_eq!(name, "eavewater-2026-11-25.json");
    // An empty phone takes it in at once.
    let mut other = started();
    let effects = update(&mut other, Event::FileRead(text.clone().into_bytes()));
    let [Effect::TakeIn { sites, index, replace: true }] = effects.as_slice() else { panic!("{effects:?}") };
    assert_eq!(other.sites, []);
    let taken = Event::TakenIn { sites: sites.clone(), index: index.clone(), replace: true, result: Ok(()) };
    update(&mut other, taken);
    assert!(other.site().unwrap().file() == model.site().unwrap().file());
    assert_eq!(other.units, model.units);
    // The same file again: there is nothing new in it, and the person is asked.
    assert_eq!(update(&mut other, Event::FileRead(text.clone().into_bytes())), []);
    let effects = update(&mut other, Event::FileAccepted { replace: false });
    assert!(matches!(effects.as_slice(), [Effect::TakeIn { sites, .. }] if sites.is_empty()), "{effects:?}");
}

#[test]
fn a_file_that_could_not_be_kept_changes_nothing() {
    let mut model = with_demo();
    let before = model.clone();
    let file = exchange::export(&Units::default(), None, vec![before.site().unwrap().file()]);
    update(&mut model, Event::FileRead(file.into_bytes()));
    let effects = update(&mut model, Event::FileAccepted { replace: true });
    let [Effect::TakeIn { sites, index, replace }] = effects.as_slice() else { panic!("{effects:?}") };
    let full = Event::TakenIn {
        sites: sites.clone(),
        index: index.clone(),
        replace: *replace,
        result: Err(PutError::Shelf(ShelfError::Full)),
    };
    update(&mut model, full);
    assert!(model.sites == before.sites);
    let notice = frame::notice(&model).unwrap();
    assert!(notice.text.starts_with("Not saved: the browser's storage is full"), "{}", notice.text);
}

#[test]
fn what_was_changed_since_is_not_undone_with_what_was_removed() {
    let mut model = with_demo();
    let before = model.site().unwrap().site.clone();
    let section = before.system.sections[0].id;
    update(&mut model, Event::PartRemoved(section));
    assert_eq!(frame::notice(&model).unwrap().offer, Some(frame::Offer::Undo));
    // Looking elsewhere changes nothing.
    update(&mut model, Event::PlaceOpened(Place::Diary));
    assert_eq!(frame::notice(&model).unwrap().offer, Some(frame::Offer::Undo));
    update(&mut model, Event::PartAdded(PartKind::Tank));
    assert_eq!(frame::notice(&model).unwrap().offer, Some(frame::Offer::Undo));
    update(&mut model, Event::UndoWanted);
    let after = model.site().unwrap().site.clone();
    assert_eq!(after.system.sections, before.system.sections);
    assert_eq!(after.system.tanks.len(), before.system.tanks.len() + 1, "the tank is still there");
    // Nor is what was taken out of one house's trial put into another.
    update(&mut model, Event::Next(NextEvent::TrialOpened));
    let section = after.system.sections[1].id;
    update(&mut model, Event::PartRemoved(section));
    assert_eq!(frame::notice(&model).unwrap().offer, Some(frame::Offer::Undo));
    update(&mut model, Event::DemoWanted);
    assert_eq!(frame::notice(&model), None);
    update(&mut model, Event::UndoWanted);
    assert!(model.site().unwrap().trial.is_none());
}

#[test]
fn a_failed_write_stays_on_the_screen_until_one_succeeds() {
    let mut model = with_demo();
    update(&mut model, Event::Saved(Err(PutError::Shelf(ShelfError::Full))));
    assert!(frame::notice(&model).unwrap().offer == Some(frame::Offer::Export));
    update(&mut model, Event::Saved(Ok(())));
    assert_eq!(frame::notice(&model), None);
}

#[test]
fn denied_storage_and_damage_are_told_at_once() {
    let today = NaiveDate::from_ymd_opt(2026, 11, 25).unwrap();
    let mut model = Model::default();
    update(&mut model, Event::Started(today, Err(ShelfError::Denied)));
    assert_eq!(model.notice, Some(Notice::NothingIsKept));
    assert_eq!(
        kept_view::kept(&model).room,
        words::kept::NOTHING_IS_KEPT.text(),
        "no share of a room that isn't there"
    );
    let mut model = Model::default();
    // Of several the worst: a site that is lost was set aside before.
    let aside = |key: &str| Trouble::SetAside(key.to_owned());
    let troubles = vec![aside("site/3"), Trouble::SiteLost(SiteId(3)), aside("site/4")];
    let opened = Opened { troubles, ..Opened::default() };
    update(&mut model, Event::Started(today, Ok(opened)));
    assert!(frame::notice(&model).unwrap().text.starts_with("Site 3 could not be read"));
}

#[test]
fn a_climate_is_known_once_all_of_it_is_entered() {
    let mut model = with_demo();
    let garden = model.site().unwrap().site.system.uses[0].id;
    update(&mut model, Event::ChoiceMade(garden, Field::AmountGiven, Choice::Amount(AmountKind::Garden)));
    update(&mut model, Event::ClimateWayChosen { temperatures: true });
    let warned = |model: &Model| {
        let found = findings(&model.site().unwrap().site.system);
        found.contains(&Finding::GardenWithoutClimate(garden))
    };
    let values = climate::values(model.site().unwrap());
    assert_eq!(values.len(), 25, "a latitude, 12 lows, 12 highs");
    for value in &values {
        assert!(warned(&model));
        assert_eq!(climate::number(model.site().unwrap(), *value, &model.units), "");
        let number = match value {
            ClimateValue::Latitude => -34.0,
            ClimateValue::Least(_) => 0.0,
            _ => 18.0,
        };
        update(&mut model, Event::ClimateEntered(*value, number));
    }
    assert!(!warned(&model), "a low of nought that was entered is a number");
    // What is lacking is kept as lacking; older records have noughts there.
    update(&mut model, Event::ClimateWayChosen { temperatures: false });
    assert!(warned(&model));
    let text = exchange::export(&model.units, None, vec![model.site().unwrap().file()]);
    let read = |text: &str| exchange::import(text.as_bytes()).unwrap().sites.remove(0).site.system;
    assert_eq!(read(&text), model.site().unwrap().site.system);
    let older = text.replace("-9999", "0");
    assert_ne!(older, text);
    assert_eq!(read(&older), model.site().unwrap().site.system);
    update(&mut model, Event::ClimateWayChosen { temperatures: true });
    assert!(!warned(&model), "whoever comes back to the temperatures finds them");
}

#[test]
fn what_another_window_changed_is_taken_over() {
    let mut model = with_demo();
    let kept = model.site().unwrap();
    let mut file = kept.file();
    file.site.name = "Renamed elsewhere".to_owned();
    let opened = Opened { index: model.index(), sites: [(kept.id, file)].into(), ..Opened::default() };
    update(&mut model, Event::ReadAgain(opened));
    assert_eq!(model.site().unwrap().site.name, "Renamed elsewhere");
    assert_eq!(model.notice, Some(Notice::ReadAgain));
}

#[test]
fn monthly_means_are_run_and_called_what_they_are() {
    let mut model = started();
    update(&mut model, Event::SketchDrawn(sketch()));
    let normals = Normals {
        source: "Means".to_owned(),
        totals_mm: [80.0, 70.0, 60.0, 40.0, 20.0, 5.0, 0.0, 0.0, 20.0, 60.0, 80.0, 90.0],
        rain_days: None,
    };
    update(&mut model, Event::NormalsEntered(normals.clone()));
    update(&mut model, Event::GeneratedChosen(None));
    let kept = model.site().unwrap();
    assert!(kept.rain == Some(Arc::new(Rain::Normals(normals))));
    let outcome = answer(&kept.site, kept.rain.as_deref().unwrap());
    let view = sizing_view::sizing(kept, Some(&outcome), &Trial::NONE, None, &model.units);
    assert!(view.headline.contains("rain as even as the monthly means"), "{}", view.headline);
    assert!(view.reservations[0].contains("Real years are rougher"), "{:?}", view.reservations);
    let results = sizing_view::results(kept, Some(&outcome), &Trial::NONE, None, &model.units, 358.0).unwrap();
    assert_eq!(results.good_years, None);
    // The rain says so too, as long as it is run so.
    let caution = |model: &Model| rain_of(model, &model.units).kept.unwrap().caution;
    assert_eq!(caution(&model), Some(words::rain::EVEN_RAIN.text()));
    update(&mut model, Event::GeneratedChosen(Some(GeneratedYears::CENTURY)));
    assert_eq!(caution(&model), None);
}

#[test]
fn generated_years_and_a_drier_future_are_taken_within_their_ranges() {
    let mut model = with_demo();
    let chosen = |model: &Model| model.site().unwrap().site.reckoning.clone();
    let wanted = GeneratedYears { years: 50, ..GeneratedYears::CENTURY };
    let effects = update(&mut model, Event::GeneratedChosen(Some(wanted)));
    assert!(matches!(effects.as_slice(), [Effect::SaveSite(..)]), "{effects:?}");
    assert_eq!(chosen(&model).generated, Some(wanted));
    for refused in [
        GeneratedYears { years: 9, ..wanted },
        GeneratedYears { years: 401, ..wanted },
        GeneratedYears { spread: Some(Share::of_one(1.5)), ..wanted },
    ] {
        assert_eq!(update(&mut model, Event::GeneratedChosen(Some(refused))), []);
        assert_eq!(chosen(&model).generated, Some(wanted));
    }
    update(&mut model, Event::RainFactorsEntered([0.8; 12]));
    assert_eq!(chosen(&model).rain_factors, [Share::of_one(0.8); 12]);
    assert_eq!(update(&mut model, Event::RainFactorsEntered([3.5; 12])), []);
    update(&mut model, Event::GeneratedChosen(None));
    assert_eq!(chosen(&model).generated, None);
}

#[test]
fn the_list_before_a_storm_names_the_water_that_holds_each_tank() {
    let mut model = with_demo();
    let lines = |model: &Model| {
        let kept = model.site().unwrap();
        upkeep_view::upkeep(kept, None, &model.units, model.today).before_storm
    };
    let said = lines(&model);
    let tanks = model.site().unwrap().site.system.tanks.clone();
    for tank in &tanks {
        assert!(said.iter().any(|line| line.starts_with(&format!("{}: ", tank.name))), "{}: {said:?}", tank.name);
    }
    // A cistern is held by the ground.
    let first = &tanks[0];
    update(&mut model, Event::ChoiceMade(first.id, Field::Build, Choice::Build(Build::Cistern)));
    assert!(!lines(&model).iter().any(|line| line.starts_with(&format!("{}: ", first.name))));
}

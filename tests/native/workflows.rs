//! What a person does, as events on the model: what changes, and what is to be done outside.

use std::sync::Arc;

use chrono::{Datelike, NaiveDate};
use eavewater::app::effect::Effect;
use eavewater::app::event::{Event, Lever, Shift};
use eavewater::app::model::{Model, Notice, Place};
use eavewater::app::sketch::{Sketch, SketchRain, means};
use eavewater::app::update::update;
use eavewater::app::view::{
    climate, frame, kept as kept_view, rain as rain_view, sizing as sizing_view, sketch as sketch_view,
    upkeep as upkeep_view,
};
use eavewater::engine::question::answer;
use eavewater::engine::sizing::smallest::{Found, Sought};
use eavewater::engine::sizing::study::{Findings, Inquiry, Study};
use eavewater::quantity::{Area, Count, Customary, Flow, Kind, Length, Share, Units, Volume, shown};
use eavewater::records::cupboard::{Opened, SiteId, Trouble};
use eavewater::records::exchange;
use eavewater::records::shelf::ShelfError;
use eavewater::records::slots::PutError;
use eavewater::site::climate::ClimateValue;
use eavewater::site::feed::Feed;
use eavewater::site::findings::{Finding, findings};
use eavewater::site::household::{GeneratedYears, Site};
use eavewater::site::part::{Choice, Field, PartId};
use eavewater::site::rain::{Normals, Rain};
use eavewater::site::roof::{Material, Outlet, RoofSection};
use eavewater::site::system::PartKind;
use eavewater::site::tank::{Build, Tank};
use eavewater::site::trial::{Levers, Trial};
use eavewater::site::trunk::TrunkLine;
use eavewater::site::uses::AmountKind;
use eavewater::site::wanted::Wanted;
use eavewater::words;

fn started() -> Model {
    let mut model = Model::default();
    let today = NaiveDate::from_ymd_opt(2026, 11, 25).unwrap();
    assert_eq!(update(&mut model, Event::Started(today, Ok(Opened::default()))), []);
    model
}

fn with_demo() -> Model {
    let mut model = started();
    update(&mut model, Event::DemoWanted);
    model
}

fn sketch() -> Sketch {
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

fn record(name: &str) -> Vec<u8> {
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
    assert!(view.headline.starts_with("In 11 years of rain, the water ran out in "), "{}", view.headline);
}

#[test]
fn a_sketch_can_share_the_rain_of_another_site() {
    let mut model = with_demo();
    let rain = model.site().unwrap().rain.clone();
    let demo = model.sites[0].id;
    update(&mut model, Event::SketchDrawn(Sketch { rain: SketchRain::Of(demo), ..sketch() }));
    assert_eq!(model.sites.len(), 2);
    assert!(model.site().unwrap().rain == rain);
    assert_eq!(model.place, Place::Sizing);
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
    assert_eq!(model.site().unwrap().site, before);
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
fn a_sketch_tells_all_that_is_odd_about_its_record() {
    let mut model = started();
    let mut rows = String::from("date,rain_mm\n");
    for day in 0..120 {
        let date = NaiveDate::from_ymd_opt(2001, 1, 1).unwrap() + chrono::Days::new(day);
        let depth = [(30, "1500"), (40, "-999"), (50, "-3"), (60, "2000")].iter().find(|(odd, _)| *odd == day);
        rows.push_str(&format!("{date},{}\n", depth.map_or("12.5", |(_, text)| text)));
    }
    update(&mut model, Event::RainRead(rows.into_bytes(), "gauge".to_owned()));
    let record = &model.read_rain.as_ref().unwrap().import.record.depths_mm;
    assert_eq!([30, 40, 50, 60].map(|day| record[day]), [Some(1500.0), None, None, None]);
    let found = sketch_view::file(&model).found.join("\n");
    for told in ["31\u{a0}January 2001 (1,500\u{a0}mm)", "marked as not measured", "below zero", "1,825\u{a0}mm"] {
        assert!(found.contains(told), "{told}: {found}");
    }
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
fn a_sketch_says_what_reaches_the_tank_and_where_no_tank_would_do() {
    let model = with_demo();
    let rain = SketchRain::Of(model.sites[0].id);
    let days = sketch_view::days(rain, &model);
    let of = |roof_m2| sketch_view::answered(&Sketch { rain, roof: Area::square_metres(roof_m2), ..sketch() }, &days);
    let (small, large) = (of(10.0), of(200.0));
    assert!(small.headline.contains("No tank alone would be enough"), "{}", small.headline);
    assert!(!large.headline.contains("No tank alone would be enough"), "{}", large.headline);
    // Rain of a mean year on 200 m², a millimetre a litre on each: straight from the record.
    let Some(Rain::Record(record)) = model.sites[0].rain.as_deref() else { panic!("the demo has a record") };
    let measured: Vec<f64> = record.depths_mm.iter().flatten().copied().collect();
    let falls_l = 200.0 * measured.iter().sum::<f64>() / measured.len() as f64 * 365.25;
    let told = shown::figure(falls_l, Kind::Volume, &model.units);
    assert!(large.notes.iter().any(|note| note.starts_with(&format!("Of {told} that fall"))), "{:?}", large.notes);
}

#[test]
fn water_that_comes_to_another_tank_is_told_from_water_that_lacks() {
    let model = with_demo();
    let rain = model.sites[0].rain.clone().unwrap();
    let mut site = Sketch { roof: Area::square_metres(20.0), ..sketch() }.site();
    let headline = |site: &Site| words::sizing::headline(&answer(site, &rain).unwrap());
    assert!(headline(&site).contains("More roof or less use has to come first"), "{}", headline(&site));
    // A barn with ten times the roof, on a tank of its own.
    let system = &mut site.system;
    let [tank, feed, section, line] = [21, 22, 23, 24].map(PartId);
    let of_house = system.tanks[0].id;
    system.tanks.push(Tank { id: tank, ..system.tanks[0].clone() });
    system.feeds.push(Feed { id: feed, tank: Some(tank), ..system.feeds[0].clone() });
    let outlets = vec![Outlet { feed, ..system.sections[0].outlets[0].clone() }];
    let area = Area::square_metres(200.0);
    system.sections.push(RoofSection { id: section, area, outlets, ..system.sections[0].clone() });
    assert!(headline(&site).contains("Enough comes in all, but not where it is used"), "{}", headline(&site));
    let name = "Line".to_owned();
    site.system.trunk_lines.push(TrunkLine { id: line, name, ends: [Some(of_house), Some(tank)], open: true });
    assert!(!headline(&site).contains("comes"), "{}", headline(&site));
    site.system.trunk_lines[0].open = false;
    assert!(headline(&site).contains("An open valve"), "{}", headline(&site));
}

fn size_of(sketch: &Sketch, model: &Model) -> Option<sketch_view::SizeFound> {
    let mut search = sketch_view::SizeSought::new(sketch, &sketch_view::days(sketch.rain, model))?;
    while search.step() {}
    Some(sketch_view::size_found(search.found(), &model.units))
}

#[test]
fn a_sketch_says_the_size_that_does_it_whatever_tank_is_drawn() {
    let mut model = started();
    update(&mut model, Event::RainRead(record("hyderabad"), "hyderabad".to_owned()));
    let drawn = Sketch { rain: SketchRain::Read, roof: Area::square_metres(240.0), ..sketch() };
    let size = size_of(&drawn, &model).unwrap();
    let other = Sketch { tank: Volume::litres(500.0), name: "Other".to_owned(), ..drawn.clone() };
    assert_eq!(size_of(&other, &model).unwrap(), size);
    // The house with that tank, asked as any house is: it has what it wants under both orders, and not much less would do.
    let taken = Sketch { tank: Volume::litres(size.tank_l.unwrap()), ..drawn.clone() };
    let rain = taken.rain(&model).unwrap();
    let mut study = Study::new(Inquiry::Smallest, &Arc::new(taken.site()), &rain).unwrap();
    while study.step() {}
    let Findings::Smallest { house, found, .. } = study.findings() else { panic!("as asked") };
    assert!(house.iter().all(|tally| tally.meets(Wanted::default())), "{house:?}");
    let factor = |found: Found| if let Found::Enough { factor, .. } = found { factor } else { panic!("{found:?}") };
    let most = found[0].1.map(factor).into_iter().fold(0.0, f64::max);
    assert!((0.9..=1.003).contains(&most), "{most} of {size:?}");
    // Who keeps animals wants more; a roof that gathers less than is used wants no tank.
    let animals = Sketch { other: Flow::litres_a_day(40.0), ..drawn.clone() };
    assert!(size_of(&animals, &model).unwrap().tank_l > size.tank_l);
    let site = animals.site();
    assert_eq!(Sought::Uses.of(&site), 3.0 * 60.0 + 40.0);
    let none = size_of(&Sketch { roof: Area::square_metres(20.0), ..drawn.clone() }, &model).unwrap();
    assert_eq!((none.tank_l, none.told.contains("no tank does it")), (None, true));
    // Nor does any where nothing is used, or where the years together bring less than is used, however good the first were.
    assert_eq!(size_of(&Sketch { per_head: Flow::litres_a_day(0.0), ..drawn.clone() }, &model), None);
    let day = |day: u64| NaiveDate::from_ymd_opt(2001, 1, 1).unwrap() + chrono::Days::new(day);
    let mm = |date: NaiveDate| if date.year() == 2003 { 2.0 } else { 8.0 };
    let rows =
        (0..3 * 365).map(day).map(|date| format!("{date},{}\n", if date.day() % 5 == 0 { mm(date) } else { 0.0 }));
    update(&mut model, Event::RainRead(rows.collect::<String>().into_bytes(), "gauge".to_owned()));
    let house = drawn.site();
    let came = answer(&house, &drawn.rain(&model).unwrap()).unwrap();
    let a_day = |share: f64| Flow::litres_a_day(came.came_l() / came.series.dates.len() as f64 * share / 3.0);
    let of_use = |share| size_of(&Sketch { per_head: a_day(share), ..drawn.clone() }, &model).unwrap().tank_l;
    assert!(of_use(1.05).is_none() && of_use(0.9).is_some());
    // A small tank is sought as it will stand, low and with more dead storage: the one to take does it.
    let barrel = Sketch { people: Count::number(1.0), per_head: Flow::litres_a_day(1.0), ..drawn.clone() };
    let tank = size_of(&barrel, &model).unwrap().tank_l.unwrap();
    assert!(tank < 1_000.0, "{tank}");
    let taken = Sketch { tank: Volume::litres(tank), ..barrel };
    let mut study = Study::new(Inquiry::Smallest, &Arc::new(taken.site()), &taken.rain(&model).unwrap()).unwrap();
    while study.step() {}
    let Findings::Smallest { house, .. } = study.findings() else { panic!("as asked") };
    assert!(house.iter().all(|tally| tally.meets(Wanted::default())), "{house:?}");
    // Some weeks hold no whole year.
    update(
        &mut model,
        Event::RainRead(b"day,mm\n2001-01-01,5\n2001-01-02,0\n2001-01-03,12\n".to_vec(), "gauge".to_owned()),
    );
    assert_eq!(size_of(&drawn, &model), None);
}

#[test]
fn the_rain_of_another_site_is_run_as_it_is_there_and_means_stay_what_they_are_in_other_units() {
    let mut model = with_demo();
    let like = Sketch { rain: SketchRain::Of(model.site().unwrap().id), ..sketch() };
    let told = |model: &Model| sketch_view::answered(&like, &sketch_view::days(like.rain, model)).headline;
    assert!(told(&model).starts_with("In 12 years"), "{}", told(&model));
    update(&mut model, Event::GeneratedChosen(Some(GeneratedYears { seed: 2, ..GeneratedYears::CENTURY })));
    let generated = told(&model);
    assert!(generated.starts_with("In 100 generated years"), "{generated}");
    update(&mut model, Event::SketchDrawn(like.clone()));
    let kept = model.site().unwrap();
    assert_eq!(words::sizing::headline(&answer(&kept.site, kept.rain.as_deref().unwrap()).unwrap()), generated);

    let totals_mm = [254.0, 80.0, 75.0, 60.0, 40.0, 20.0, 10.0, 15.0, 40.0, 70.0, 90.0, 0.0];
    let inches = Units::customary(Customary::Us);
    let typed = sketch_view::typed(&totals_mm, &inches);
    assert!(typed.starts_with("10 3.15 ") && typed.ends_with(" 0"), "{typed}");
    let Ok(SketchRain::Means(read)) = sketch_view::twelve(&typed, &inches) else { panic!("{typed}") };
    assert!(read.iter().zip(totals_mm).all(|(read, mm)| (read - mm).abs() <= 0.0005 * mm), "{read:?}");
}

#[test]
fn twelve_means_are_run_as_generated_years_on_the_rain_place_as_in_the_sketch() {
    let mut model = started();
    update(&mut model, Event::SketchDrawn(sketch()));
    let totals_mm = [95.0, 80.0, 75.0, 60.0, 40.0, 20.0, 10.0, 15.0, 40.0, 70.0, 90.0, 100.0];
    let entered = Normals { source: "a table".to_owned(), totals_mm, rain_days: None };
    let effects = update(&mut model, Event::NormalsEntered(entered.clone()));
    assert!(matches!(effects.as_slice(), [Effect::SaveRain(..), Effect::SaveSite(..)]), "{effects:?}");
    let told = |model: &Model| {
        let kept = model.site().unwrap();
        words::sizing::headline(&answer(&kept.site, kept.rain.as_deref().unwrap()).unwrap())
    };
    let drawn = Sketch { rain: SketchRain::Means(totals_mm), ..sketch() };
    assert_eq!(told(&model), sketch_view::answered(&drawn, &sketch_view::days(drawn.rain, &model)).headline);
    // Who wants them even keeps them even.
    update(&mut model, Event::GeneratedChosen(None));
    update(&mut model, Event::NormalsEntered(entered));
    assert_eq!(model.site().unwrap().site.reckoning.generated, None);
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
fn a_sketch_drops_the_record_before_one_that_cannot_be_read_and_says_why_beside_it() {
    let mut model = Model { started: true, ..Model::default() };
    update(&mut model, Event::SketchWanted);
    let with_file = Sketch { rain: SketchRain::Read, ..sketch() };
    let bytes = |text: &str| text.as_bytes().to_vec();
    for bad in [Vec::new(), vec![0, 159, 146, 150], bytes("no rain here")] {
        update(&mut model, Event::RainRead(record("hyderabad"), "hyderabad".to_owned()));
        let good = sketch_view::file(&model);
        assert!(good.found[0].starts_with("hyderabad: ") && good.units.is_some() && good.refused.is_none());
        assert!(with_file.rain(&model).is_some());
        update(&mut model, Event::RainRead(bad, "x".to_owned()));
        let refused = sketch_view::file(&model);
        assert!(refused.found.is_empty() && refused.units.is_none());
        assert_eq!(refused.refused, frame::notice(&model).map(|notice| notice.text));
        let days = sketch_view::days(with_file.rain, &model);
        assert_eq!(sketch_view::answered(&with_file, &days).headline, words::sketch::NO_ANSWER.text());
    }
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
    let opened = Opened { troubles: vec![Trouble::SiteLost(SiteId(3))], ..Opened::default() };
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

//! The diary: what is written, changed, taken out and undone, and how it is kept.

use chrono::NaiveDate;
use eavewater::app::draft::Draft;
use eavewater::app::effect::Effect;
use eavewater::app::event::Event;
use eavewater::app::form::LevelBy;
use eavewater::app::model::Model;
use eavewater::app::update::update;
use eavewater::app::view::checks::Announced;
use eavewater::app::view::{frame, house};
use eavewater::quantity::{Depth, Hours, Length, Money, Share, Units, Volume};
use eavewater::records::cupboard::{Opened, SiteFile};
use eavewater::records::exchange;
use eavewater::site::demo;
use eavewater::site::diary::{
    Diary, Entry, EntryId, Half, LAST_MOMENT, LONGEST_NOTE, Level, Line, Parameter, Subject, TestResult, Told, Water,
};
use eavewater::site::part::PartId;
use eavewater::site::trial::Trial;
use eavewater::site::work::Task;
use proptest::prelude::*;

pub(crate) const TODAY: NaiveDate = NaiveDate::from_ymd_opt(2026, 11, 25).unwrap();
const NOW: u64 = 1_795_600_000_000;

pub(crate) fn with_demo() -> Model {
    let mut model = Model::default();
    update(&mut model, Event::Started(TODAY, Ok(Opened::default())));
    update(&mut model, Event::DemoWanted);
    model
}

fn rain(mm: f64) -> Draft {
    Draft { id: None, date: TODAY, told: Told::Rain(Depth::millimetres(mm)), note: String::new() }
}

fn entries(model: &Model) -> Vec<Entry> {
    model.site().unwrap().diary.entries().to_vec()
}

#[test]
fn a_test_over_a_limit_of_health_warns_at_once_and_on_the_house_until_newer_ones_are_within() {
    let mut model = with_demo();
    let tap = model.site().unwrap().site.system.uses[0].clone();
    let tested = |model: &mut Model, days_ago: u64, parameter, found| {
        let told = Told::Test { at: Some(tap.id), parameter, found };
        let date = TODAY - chrono::Days::new(days_ago);
        update(model, Event::EntryWritten(Draft { id: None, date, told, note: String::new() }, NOW));
        frame::notice(model).unwrap()
    };
    let on_house =
        |model: &Model| house::house(model.site().unwrap(), (None, None), &Units::default(), TODAY, 358.0).alarms;
    let said = tested(&mut model, 10, Parameter::EColi, TestResult::Present);
    assert!(said.warning && said.offer == Some(frame::Offer::Undo));
    assert!(said.text.starts_with("Stop drinking it now: E.\u{a0}coli was found (") && said.text.contains(&tap.name));
    assert!(said.text.contains("Boil every glass for 1 min"), "{}", said.text);
    let [line] = on_house(&model).try_into().unwrap();
    assert!(said.text.starts_with(&line), "{line}");
    // One of an older day says nothing of the water now.
    assert!(!tested(&mut model, 20, Parameter::EColi, TestResult::Value(4.0)).warning);
    assert_eq!(on_house(&model).len(), 1);
    let lead = tested(&mut model, 5, Parameter::Lead, TestResult::Value(40.0));
    assert!(lead.warning && lead.text.starts_with("Lead is over the limit for health: 40"), "{}", lead.text);
    assert_eq!(on_house(&model).len(), 2);
    update(&mut model, Event::UndoWanted);
    assert_eq!(on_house(&model).len(), 1);
    assert!(!tested(&mut model, 8, Parameter::EColi, TestResult::Absent).warning);
    let [line] = on_house(&model).try_into().unwrap();
    assert!(
        line.starts_with("E.\u{a0}coli was found (")
            && line.contains("Until a second one, taken at the same place on 24\u{a0}November 2026"),
        "{line}"
    );
    assert!(!tested(&mut model, 0, Parameter::EColi, TestResult::Absent).warning);
    assert!(on_house(&model).is_empty());
}

#[test]
fn an_entry_is_written_changed_taken_out_and_each_is_undone() {
    let mut model = with_demo();
    let effects = update(&mut model, Event::EntryWritten(rain(12.5), NOW));
    let [Effect::SaveLine(site, Line::Entry(entry), None)] = effects.as_slice() else { panic!("{effects:?}") };
    assert_eq!((*site, &entry.told), (model.site().unwrap().id, &rain(12.5).told));
    let written = entries(&model);
    assert_eq!(written, std::slice::from_ref(entry));
    assert_eq!(frame::notice(&model).unwrap().offer, Some(frame::Offer::Undo));

    // Changed, and moved to another half-year.
    let moved = Draft { id: Some(entry.id), date: NaiveDate::from_ymd_opt(2026, 2, 3).unwrap(), ..rain(2.0) };
    // The clock of this phone is slow: the change comes after what it changes all the same.
    let slow = update(&mut model.clone(), Event::EntryWritten(moved.clone(), NOW - 1_000));
    assert!(matches!(slow.as_slice(), [Effect::SaveLine(_, Line::Entry(changed), _)] if changed.edited > entry.edited));
    let effects = update(&mut model, Event::EntryWritten(moved, NOW + 5));
    let was = Some(Half { year: 2026, second: true });
    assert!(
        matches!(effects.as_slice(), [Effect::SaveLine(_, Line::Entry(changed), from)] if changed.id == entry.id && *from == was)
    );
    update(&mut model, Event::UndoWanted);
    let [back] = entries(&model).try_into().unwrap();
    assert_eq!((back.date, &back.told), (TODAY, &rain(12.5).told));
    assert!(back.edited > NOW + 5, "what was undone last counts on another phone too");

    let last = back.edited;
    let effects = update(&mut model, Event::EntryRemoved(entry.id, NOW + 3));
    assert!(
        matches!(effects.as_slice(), [Effect::SaveLine(_, Line::Removed(gone), Some(_))] if gone.edited > last),
        "it comes after what it takes out"
    );
    assert_eq!(entries(&model), []);
    update(&mut model, Event::UndoWanted);
    let [again] = entries(&model).try_into().unwrap();
    assert!(again.edited > last + 1, "it comes after what took it out");

    update(&mut model, Event::EntryWritten(rain(3.0), NOW));
    assert_eq!(entries(&model).len(), 2, "two entries of one moment are two");
    update(&mut model, Event::UndoWanted);
    assert_eq!(entries(&model).len(), 1);
    assert_eq!(update(&mut model, Event::EntryRemoved(EntryId(5), NOW)), [], "what isn't there can't go");
}

#[test]
fn what_another_window_wrote_in_a_half_year_is_taken_over_without_a_word() {
    let mut model = with_demo();
    update(&mut model, Event::EntryWritten(rain(1.0), NOW));
    update(&mut model, Event::EntryWritten(Draft { date: TODAY - chrono::Days::new(200), ..rain(2.0) }, NOW + 1));
    update(&mut model, Event::NoticeDismissed);
    let other = Entry { id: EntryId(NOW + 2), edited: NOW + 2, ..entries(&model)[1].clone() };
    let (site, half) = (model.site().unwrap().id, Half::of(TODAY));
    update(&mut model, Event::HalfReadAgain(site, half, vec![Line::Entry(other.clone())]));
    assert_eq!(entries(&model)[1..], [other]);
    assert_eq!(entries(&model).len(), 2);
    assert_eq!(frame::notice(&model), None);
}

#[test]
fn nothing_is_taken_back_over_what_another_window_wrote_after_it() {
    let mut model = with_demo();
    update(&mut model, Event::EntryWritten(rain(1.0), NOW));
    let mine = entries(&model)[0].clone();
    let (site, half) = (model.site().unwrap().id, Half::of(TODAY));
    // The other window wrote another entry: what was written here can still be taken back.
    let beside = Entry { id: EntryId(NOW + 1), edited: NOW + 1, ..mine.clone() };
    update(
        &mut model,
        Event::HalfReadAgain(site, half, [&mine, &beside].map(|entry| Line::Entry(entry.clone())).to_vec()),
    );
    assert_eq!(frame::notice(&model).unwrap().offer, Some(frame::Offer::Undo));
    // It changed this one: then not.
    let changed = Entry { edited: NOW + 2, note: "by the other".to_owned(), ..mine };
    update(
        &mut model,
        Event::HalfReadAgain(site, half, [&changed, &beside].map(|entry| Line::Entry(entry.clone())).to_vec()),
    );
    assert_eq!(frame::notice(&model).unwrap().offer, None);
    update(&mut model, Event::UndoWanted);
    assert_eq!(entries(&model), [changed, beside]);
}

#[test]
fn a_day_of_no_year_is_refused_with_a_word_and_the_form_stays() {
    let mut model = with_demo();
    update(&mut model, Event::FormWanted(Subject::Rain));
    let draft = Draft { date: NaiveDate::from_ymd_opt(26, 11, 25).unwrap(), ..rain(3.0) };
    for event in [Event::EntryWritten(draft.clone(), NOW), Event::EntryWrittenAndNext(draft.clone(), NOW)] {
        assert_eq!(update(&mut model, event), []);
        assert!(model.form.is_some() && entries(&model).is_empty());
        let told = frame::notice(&model).unwrap();
        assert!(told.warning && told.text.starts_with("25\u{a0}November 26 is no day"), "{}", told.text);
    }
}

#[test]
fn a_note_too_long_is_cut_at_a_letter() {
    let mut model = with_demo();
    let note = "ä".repeat(LONGEST_NOTE);
    update(&mut model, Event::EntryWritten(Draft { note, told: Told::Note, ..rain(0.0) }, NOW));
    assert_eq!(entries(&model)[0].note.len(), LONGEST_NOTE);
}

#[test]
fn a_removed_site_comes_back_with_its_diary_and_a_copy_has_none() {
    let mut model = with_demo();
    update(&mut model, Event::EntryWritten(rain(1.0), NOW));
    let id = model.site().unwrap().id;
    let before = entries(&model);
    update(&mut model, Event::SiteDuplicated(id));
    assert_eq!(entries(&model), []);
    update(&mut model, Event::SiteRemoved(id));
    let effects = update(&mut model, Event::UndoWanted);
    assert!(effects.iter().any(|effect| matches!(effect, Effect::SaveDiary(..))));
    assert_eq!(model.sites[0].diary.entries(), before);
}

fn any_told() -> impl Strategy<Value = Told> {
    let part = || prop::option::of((0..u32::MAX / 2).prop_map(PartId));
    let level = prop_oneof![
        (0.0..30.0).prop_map(|m| Level::Depth(Length::metres(m))),
        (0.0..2.0).prop_map(|share| Level::Share(Share::of_one(share))),
        (0.0..1e7).prop_map(|litres| Level::Volume(Volume::litres(litres))),
        Just(Level::Full),
    ];
    let found = prop_oneof![
        (0.0..1e6).prop_map(TestResult::Value),
        (0.0..1e6).prop_map(TestResult::Below),
        Just(TestResult::Present),
        Just(TestResult::Absent),
    ];
    prop_oneof![
        (any::<bool>(), 0..u32::MAX / 2, level, prop::option::of(1.0..2400.0)).prop_map(|(store, id, level, hours)| {
            let of = if store { Water::Store(PartId(id)) } else { Water::Tank(PartId(id)) };
            let joined = if hours.is_some() { vec![of.tank(), PartId(77)] } else { Vec::new() };
            Told::Level { of, level, undrawn: hours.map(Hours::from_hours), joined }
        }),
        (0.0..1825.0).prop_map(|mm| Told::Rain(Depth::millimetres(mm))),
        (part(), 0.0..1e10).prop_map(|(of, litres)| Told::Meter { of, reading: Volume::litres(litres) }),
        (part(), 0.1..1e6, prop::option::of(0.0..1e9)).prop_map(|(to, litres, price)| Told::Delivery {
            to,
            volume: Volume::litres(litres),
            price: price.map(Money::coins)
        }),
        (part(), prop::sample::select(Task::ALL.to_vec())).prop_map(|(on, task)| Told::Work { on, task }),
        (part(), prop::sample::select(Parameter::ALL.to_vec()), found).prop_map(|(at, parameter, found)| Told::Test {
            at,
            parameter,
            found
        }),
        Just(Told::Note),
    ]
}

/// Any diary.
pub(crate) fn any_diary() -> impl Strategy<Value = Diary> {
    let entry = (0..=LAST_MOMENT, 0..=LAST_MOMENT, -60_000i32..100_000, any_told(), ".{0,40}").prop_map(
        |(id, edited, day, told, note)| Entry {
            id: EntryId(id),
            edited,
            date: NaiveDate::default() + chrono::TimeDelta::days(day.into()),
            told,
            note,
        },
    );
    prop::collection::vec(entry, 0..20).prop_map(Diary::of)
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_diary_comes_back(diary in any_diary()) {
        let file = SiteFile { site: demo::site(), rain: None, diary, trial: Trial::NONE };
        let text = exchange::export(&Units::default(), None, vec![file.clone()]);
        prop_assert_eq!(exchange::import(text.as_bytes()).unwrap().sites, vec![file]);
    }
}

#[test]
fn values_beyond_what_they_may_be_are_refused_with_their_place() {
    let told = |date: &str, what: &str| {
        let entry = format!(r#"{{"id":1,"on":"{date}","what":{what}}}"#);
        let file = exchange::export(
            &Units::default(),
            None,
            vec![SiteFile { site: demo::site(), rain: None, diary: Diary::default(), trial: Trial::NONE }],
        );
        exchange::import(file.replace(r#""diary":[]"#, &format!(r#""diary":[{entry}]"#)).as_bytes())
    };
    assert!(told("2026-01-01", r#"{"rain":12}"#).is_ok());
    for (date, what) in [
        ("2026-01-01", r#"{"rain":-1}"#),
        ("2026-01-01", r#"{"rain":1826}"#),
        ("+200000-01-01", r#"{"rain":1}"#),
        ("2026-01-01", r#"{"level":{"tank":1,"at":{"depth":31}}}"#),
        ("2026-01-01", r#"{"level":{"at":"full"}}"#),
        ("2026-01-01", r#"{"sing":{}}"#),
    ] {
        let error = format!("{:?}", told(date, what).unwrap_err());
        assert!(error.contains("sites[0].diary[0]."), "{what}: {error}");
    }
}

#[test]
fn a_level_is_asked_for_as_that_tank_was_read_last() {
    let mut model = with_demo();
    let tanks: Vec<PartId> = model.site().unwrap().site.system.tanks.iter().map(|tank| tank.id).collect();
    let levels = [Level::Depth(Length::metres(1.0)), Level::Share(Share::of_one(0.5))];
    for (tank, level) in tanks.iter().zip(levels) {
        let told = Told::Level { of: Water::Tank(*tank), level, undrawn: None, joined: Vec::new() };
        update(&mut model, Event::EntryWritten(Draft { id: None, date: TODAY, told, note: String::new() }, NOW));
    }
    update(&mut model, Event::FormWanted(Subject::Level));
    let mut form = model.form.clone().unwrap();
    assert_eq!((form.part, form.by), (Some(tanks[1]), LevelBy::Share), "where it was read last");
    form.turn_to(Some(tanks[0]), &model.site().unwrap().diary);
    assert_eq!((form.part, form.by), (Some(tanks[0]), LevelBy::Depth));
    form.turn_to(Some(tanks[2]), &model.site().unwrap().diary);
    assert_eq!(form.by, LevelBy::Depth, "never read: as it stands");
}

#[test]
fn a_tank_that_is_joined_later_brings_no_water_with_it() {
    use eavewater::engine::ahead::standing::stands;
    use eavewater::engine::balance::plan::plan;
    let mut model = with_demo();
    let tank = model.site().unwrap().site.system.tanks[0].id;
    let all_l = |model: &Model| {
        let kept = model.site().unwrap();
        let (plan, system) = (plan(&kept.site.system).unwrap(), &kept.site.system);
        let stands = stands(&plan, &kept.site, None, &kept.diary, TODAY).unwrap();
        let store = eavewater::engine::levels::store_of(&plan, system, tank).unwrap();
        let dead_l = plan.dead_l(&plan.stores[store].tanks);
        stands.live_l[store] + dead_l
    };
    let read = |model: &mut Model, of: Water, litres: f64, moment: u64| {
        let told = Told::Level { of, level: Level::Volume(Volume::litres(litres)), undrawn: None, joined: Vec::new() };
        update(model, Event::EntryWritten(Draft { id: None, date: TODAY, told, note: String::new() }, moment));
    };
    read(&mut model, Water::Store(tank), 3_000.0, 100);
    assert!((all_l(&model) - 3_000.0).abs() < 1e-6, "{}", all_l(&model));
    update(&mut model, Event::TankWanted(tank));
    assert!((all_l(&model) - 3_000.0).abs() < 1e-6, "{}", all_l(&model));
    // A change of the entry doesn't take the new tank for one that was there.
    let id = entries(&model)[0].id;
    let told = Told::Level {
        of: Water::Store(tank),
        level: Level::Volume(Volume::litres(3_100.0)),
        undrawn: None,
        joined: Vec::new(),
    };
    update(&mut model, Event::EntryWritten(Draft { id: Some(id), date: TODAY, told, note: String::new() }, 200));
    assert!((all_l(&model) - 3_100.0).abs() < 1e-6, "{}", all_l(&model));
    // Read anew it is of all of them.
    read(&mut model, Water::Store(tank), 2_000.0, 300);
    assert!((all_l(&model) - 2_000.0).abs() < 1e-6, "{}", all_l(&model));
}

#[test]
fn tanks_that_were_read_apart_and_then_joined_hold_what_both_held() {
    use eavewater::engine::ahead::standing::stands;
    use eavewater::engine::balance::plan::plan;
    use eavewater::engine::diary::track::levels_read;
    let mut model = with_demo();
    let line = model.site().unwrap().site.system.trunk_lines[0].clone();
    if line.open {
        update(&mut model, Event::ValveTurned(line.id));
    }
    let [one, other] = line.ends.map(Option::unwrap);
    for (tank, litres, moment) in [(one, 900.0, 100), (other, 700.0, 200)] {
        let told = Told::Level {
            of: Water::Tank(tank),
            level: Level::Volume(Volume::litres(litres)),
            undrawn: None,
            joined: Vec::new(),
        };
        update(&mut model, Event::EntryWritten(Draft { id: None, date: TODAY, told, note: String::new() }, moment));
    }
    update(&mut model, Event::ValveTurned(line.id));
    let told = frame::notice(&model).unwrap().text;
    assert!(!told.contains("runs out over"), "there is room: {told}");
    let kept = model.site().unwrap();
    let plan = plan(&kept.site.system).unwrap();
    let store = eavewater::engine::levels::store_of(&plan, &kept.site.system, one).unwrap();
    assert!(plan.stores[store].tanks.len() > 1);
    let dead_l = plan.dead_l(&plan.stores[store].tanks);
    let stands = stands(&plan, &kept.site, None, &kept.diary, TODAY).unwrap();
    assert!((stands.live_l[store] + dead_l - 1_600.0).abs() < 1e-3, "{}", stands.live_l[store] + dead_l);
    // But what happened to them apart says nothing of how the joined ones fare.
    let read = levels_read(&plan, &kept.site.system, &kept.diary);
    assert!(read.len() == 2 && !read.iter().any(|read| read.as_now));
    let told = |model: &Model| {
        let charts = eavewater::app::view::diary::diary(
            model.site().unwrap(),
            &model.units,
            (TODAY - chrono::Days::new(30), TODAY),
            9,
            360.0,
        )
        .charts;
        charts.iter().any(|chart| chart.caption.contains("joined otherwise"))
    };
    assert!(told(&model), "the chart says so");
    update(&mut model, Event::ValveTurned(line.id));
    assert!(!told(&model));
    let kept = model.site().unwrap();
    let apart = eavewater::engine::balance::plan::plan(&kept.site.system).unwrap();
    assert!(levels_read(&apart, &kept.site.system, &kept.diary).iter().all(|read| read.as_now));
}

#[test]
fn a_valve_that_would_let_water_run_out_says_how_much_and_where() {
    // A high box that holds 2000 L, read full, and a low one of 1000 L, read empty, each of 1 m² with its outlet at the
    // floor: joined, the high one stands empty above the low one's rim, and 1000 L run out there.
    let mut model = with_demo();
    let mut site = (*model.site().unwrap().site).clone();
    let [low, high] = [site.system.trunk_lines[0].ends[0].unwrap(), site.system.trunk_lines[0].ends[1].unwrap()];
    site.system.trunk_lines.truncate(1);
    site.system.trunk_lines[0].open = false;
    let line = site.system.trunk_lines[0].id;
    for tank in &mut site.system.tanks {
        let metre = Length::metres(1.0);
        let (floor, height) = if tank.id == high { (3.0, 2.0) } else { (0.0, 1.0) };
        tank.shape = eavewater::site::Shape::Box { length: metre, width: metre, height: Length::metres(height) };
        (tank.floor, tank.outlet, tank.overflow) = (Length::metres(floor), Length::default(), Length::metres(height));
    }
    let name = site.system.tank(low).unwrap().name.clone();
    model.sites[0].site = std::sync::Arc::new(site);
    for (of, level, moment) in [(high, Level::Full, 100), (low, Level::Depth(Length::metres(0.0)), 200)] {
        let told = Told::Level { of: Water::Tank(of), level, undrawn: None, joined: Vec::new() };
        update(&mut model, Event::EntryWritten(Draft { id: None, date: TODAY, told, note: String::new() }, moment));
    }
    update(&mut model, Event::UnitsChosen(eavewater::quantity::Customary::Metric));
    update(&mut model, Event::ValveTurned(line));
    let told = frame::notice(&model).unwrap().text;
    assert!(
        told.contains("1,000\u{a0}L more stands in them") && told.contains(&format!("runs out over {name}")),
        "{told}"
    );
    // Shut again, nothing runs anywhere.
    update(&mut model, Event::ValveTurned(line));
    assert!(!frame::notice(&model).unwrap().text.contains("runs out"));
}

#[test]
fn a_delivery_is_questioned_where_it_cannot_fit_and_where_a_level_of_its_day_is_written() {
    use eavewater::engine::diary::doubts::{Doubt, doubts};
    use eavewater::engine::diary::joined::Known;
    let mut model = with_demo();
    let asked = |model: &Model, litres: f64| {
        let kept = model.site().unwrap();
        let told = Told::Delivery { to: None, volume: Volume::litres(litres), price: None };
        let known = Known::of(None, &kept.diary);
        doubts(&kept.site.system, None, &kept.diary, &known, None, TODAY, (None, TODAY, &told))
    };
    let hold_l: f64 = model.site().unwrap().site.system.tanks.iter().map(|tank| tank.capacity().get()).sum();
    assert_eq!(asked(&model, hold_l - 1.0), []);
    assert_eq!(asked(&model, hold_l + 1.0), [Doubt::MoreThanFits { hold_l }]);
    let tank = model.site().unwrap().site.system.tanks[0].id;
    let level = Told::Level { of: Water::Tank(tank), level: Level::Full, undrawn: None, joined: Vec::new() };
    update(&mut model, Event::EntryWritten(Draft { id: None, date: TODAY, told: level, note: String::new() }, NOW));
    assert_eq!(asked(&model, 100.0), [Doubt::LevelThatDay]);
}

/// Each of two stores is judged by what is drawn from it alone.
#[test]
fn a_store_that_fell_faster_than_its_own_uses_draw_is_questioned_within_a_week() {
    use eavewater::engine::balance::plan::plan;
    use eavewater::engine::diary::doubts::{Doubt, doubts};
    use eavewater::engine::diary::joined::Known;
    let mut model = with_demo();
    update(&mut model, Event::FreeTankWanted);
    let system = model.site().unwrap().site.system.clone();
    let used = system.uses.iter().find_map(|using| using.tank).unwrap();
    let free = system.tanks.last().unwrap().id;
    let week_ago = TODAY - chrono::Days::new(7);
    let level = |of, litres| Told::Level {
        of: Water::Tank(of),
        level: Level::Volume(Volume::litres(litres)),
        undrawn: None,
        joined: Vec::new(),
    };
    let mut asked = |of, before_l: f64, now_l: f64| {
        let draft = Draft { id: None, date: week_ago, told: level(of, before_l), note: String::new() };
        update(&mut model, Event::EntryWritten(draft, NOW));
        let kept = model.site().unwrap();
        let known = Known::of(None, &kept.diary);
        let (system, told) = (&kept.site.system, level(of, now_l));
        let found = doubts(system, plan(system).ok().as_ref(), &kept.diary, &known, None, TODAY, (None, TODAY, &told));
        found.iter().any(|doubt| matches!(doubt, Doubt::FellFast { .. }))
    };
    let holds = |id| system.tank(id).unwrap().capacity().get();
    let drawn_l = 7.0 * system.uses.iter().map(|using| using.amount.mean()).sum::<f64>();
    let (full, least) = (0.9 * holds(used), 2.0 * drawn_l + 0.06 * 3.0 * holds(used));
    assert!(!asked(used, full, full - drawn_l), "as its uses draw");
    assert!(full > 1.2 * least && asked(used, full, full - 1.2 * least), "more than twice that");
    assert!(!asked(free, 0.9 * holds(free), 0.85 * holds(free)), "within what a dipstick can tell");
    assert!(asked(free, 0.9 * holds(free), 0.8 * holds(free)), "nothing draws from it");
}

#[test]
fn a_storm_finds_the_room_that_the_readings_leave() {
    let mut model = with_demo();
    let kept = model.site().unwrap();
    let outcome = Ok(eavewater::engine::question::answer(&kept.site, kept.rain.as_deref().unwrap()).unwrap());
    let tank = kept.site.system.uses[0].tank.unwrap();
    let place = kept.site.system.tanks.iter().position(|other| other.id == tank).unwrap();
    let mut storm_in = |level: Level, announced: Announced| {
        let told = Told::Level { of: Water::Tank(tank), level, undrawn: None, joined: Vec::new() };
        update(&mut model, Event::EntryWritten(Draft { id: None, date: TODAY, told, note: String::new() }, NOW));
        let told =
            eavewater::app::view::checks::storm(model.site().unwrap(), announced, Some(&outcome), TODAY, &model.units);
        assert_eq!(told.len(), model.site().unwrap().site.system.tanks.len());
        told[place].clone()
    };
    let nothing = || Level::Depth(eavewater::quantity::Length::metres(0.0));
    let empty = storm_in(nothing(), Announced::default());
    let full = storm_in(Level::Full, Announced::default());
    assert!(empty.contains("nothing spills") && !full.contains("nothing spills"), "{empty} {full}");
    let said = |depth_mm, hours| Announced { depth_mm, hours };
    // What is announced takes the place of the storm of the checks; out of its range it changes nothing.
    assert!(!storm_in(nothing(), said(Some(1_500.0), Some(12.0))).contains("nothing spills"));
    assert!(storm_in(Level::Full, said(Some(0.0), None)).contains("nothing spills"));
    assert_eq!(storm_in(Level::Full, said(Some(-1.0), None)), full);
}

//! The program `reckon`, run as a person runs it.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use crate::one_tank;
use eavewater::quantity::{Count, Share, Units, Volume};
use eavewater::records::cupboard::SiteFile;
use eavewater::records::exchange::export;
use eavewater::site::demo;
use eavewater::site::details::Detail;
use eavewater::site::diary::{Diary, Entry, EntryId, Level, Parameter, TestResult, Told, Water};
use eavewater::site::household::Site;
use eavewater::site::rain::Rain;
use eavewater::site::trial::Trial;
use eavewater::site::uses::{Amount, Class};
use serde_json::Value;

fn reckon(words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_reckon")).args(words).output().unwrap()
}

/// A file for one test, in the folder that cargo gives to tests.
fn written(name: &str, text: &str) -> String {
    let path: PathBuf = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::write(&path, text).unwrap();
    path.to_str().unwrap().to_owned()
}

fn demo_file(name: &str) -> String {
    let file = SiteFile {
        site: demo::site(),
        rain: Some(Rain::Record(demo::rain())),
        diary: Diary::default(),
        trial: Trial::NONE,
    };
    written(name, &export(&Units::default(), None, vec![file]))
}

fn record(name: &str) -> String {
    format!("{}/tests/data/{name}-daily.csv", env!("CARGO_MANIFEST_DIR"))
}

#[track_caller]
fn refused(words: &[&str], said: &str) {
    let output = reckon(words);
    let error = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2), "{words:?}: {error}");
    assert!(output.stdout.is_empty(), "{words:?} printed on standard output");
    assert!(error.contains(said), "{words:?}: {error}");
}

#[test]
fn a_site_file_and_a_rain_record_give_the_independent_balance() {
    // The first row of the independent balance (see independent_balance.rs): Hyderabad, yield after spillage.
    let site = Site {
        name: "One tank".to_owned(),
        system: one_tank::system(150.0, 0.85, 0.5, 20_000.0, 400.0),
        ..Site::default()
    };
    let file = written(
        "one-tank.json",
        &export(
            &Units::default(),
            None,
            vec![SiteFile { site, rain: None, diary: Diary::default(), trial: Trial::NONE }],
        ),
    );
    let output = reckon(&[&file, &record("hyderabad")]);
    assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
    let report: Value = serde_json::from_slice(&output.stdout).unwrap();
    let total = &report[0]["total"];
    for (key, expected) in [("inflow_l", 1_295_285.25), ("yield_l", 911_178.75), ("spill_l", 404_106.5)] {
        let ours = total[key].as_f64().unwrap();
        assert!((ours / expected - 1.0).abs() < 1e-6, "{key}: {ours}");
    }
    assert_eq!(report[0]["dry_days"], 1795);
}

#[test]
fn the_summary_says_the_answer_and_the_years() {
    let file = demo_file("demo-summary.json");
    let output = reckon(&[&file, "--summary", "--units", "us"]);
    let text = String::from_utf8(output.stdout).unwrap();
    assert!(text.contains("In 12 years of rain, the water ran out in"), "{text}");
    assert!(text.contains("used, gal") && text.contains("2019"), "{text}");
}

#[test]
fn a_portable_tank_and_an_outbuilding_are_in_the_report() {
    // 90 L for two at 15 L each a day (Sphere Handbook 2018, from memory) are three days; 1 kg a litre.
    let mut site = demo::site();
    let cabin = site.system.uses[1].id;
    site.system.details.set(Some(cabin), Detail::Building, Some(1.0)).unwrap();
    let mut portable = site.system.uses[1].clone();
    portable.id = site.system.unused_id();
    (portable.name, portable.class) = ("Can".to_owned(), Class::Travel);
    portable.amount = Amount::PerEvent { each: Volume::litres(90.0), a_week: Count::number(0.5) };
    site.system.uses.push(portable);
    let file = SiteFile { site, rain: Some(Rain::Record(demo::rain())), diary: Diary::default(), trial: Trial::NONE };
    let file = written("demo-portable.json", &export(&Units::default(), None, vec![file]));
    let report: Value = serde_json::from_slice(&reckon(&[&file]).stdout).unwrap();
    let checks = report[0]["checks"].as_array().unwrap();
    let of = |title: &str| checks.iter().find(|check| check["check"] == title).unwrap();
    assert_eq!(of("How long it lasts")["margin"]["has"], 3.0);
    assert_eq!(of("What a filling takes")["verdict"], "holds");
    assert_eq!(of("What it weighs full")["verdict"], "tells");
    for title in ["Outbuilding on this store", "House and outbuilding at once"] {
        assert!(checks.iter().any(|check| check["check"] == title && !check["margin"].is_null()), "{title}");
    }
    let burdens: Vec<&Value> =
        checks.iter().filter(|check| check["check"] == "What it takes from the others").collect();
    assert_eq!(burdens.len(), 2);
    assert!(burdens.iter().all(|check| check["found"].as_array().is_some_and(|found| found.len() == 6)));
}

#[test]
fn the_taps_are_told_with_their_gap_and_their_tests() {
    // A class A lamp (NSF/ANSI 55, 40 mJ/cm²): EPA's table gives half a log of viruses, WHO asks for 5 (from memory). WHO:
    // no E. coli in any 100 mL.
    let site = demo::site();
    let told =
        Told::Test { at: Some(site.system.uses[0].id), parameter: Parameter::EColi, found: TestResult::Value(12.0) };
    let date = chrono::NaiveDate::from_ymd_opt(2026, 3, 4).unwrap();
    let entry = Entry { id: EntryId(1), edited: 1, date, told, note: String::new() };
    let file =
        SiteFile { site, rain: Some(Rain::Record(demo::rain())), diary: Diary::of(vec![entry]), trial: Trial::NONE };
    let file = written("demo-water.json", &export(&Units::default(), None, vec![file]));
    let text = String::from_utf8(reckon(&[&file, "--summary"]).stdout).unwrap();
    for said in [
        "Weakest: viruses. 0.5 of the 5 log needed are proven",
        "12 in 100 mL, 4 March 2026",
        "Boil every glass for 1 min",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    let report: Value = serde_json::from_slice(&reckon(&[&file]).stdout).unwrap();
    let tap = &report[0]["water"][0];
    assert_eq!((&tap["stars"], &tap["weakest"]["germ"]), (&Value::from(1), &Value::from("viruses")));
    assert_eq!(tap["tests"][0]["judgement"], "Over the limit");
}

#[test]
fn every_day_is_there_when_asked_for() {
    let file = demo_file("demo-days.json");
    let report: Value = serde_json::from_slice(&reckon(&[&file, "--days"]).stdout).unwrap();
    let series = &report[0]["series"];
    assert_eq!(series["dates"].as_array().unwrap().len(), series["live_l_by_store"][0].as_array().unwrap().len());
    assert_eq!(series["dates"][0], "2011-01-01");
}

#[test]
fn years_are_generated_when_asked_for() {
    let file = demo_file("demo-generated.json");
    let draw = |words: &[&str]| -> Value {
        serde_json::from_slice(&reckon(&[&[file.as_str(), "--generated", "30"], words].concat()).stdout).unwrap()
    };
    let first = draw(&[]);
    assert_eq!(first[0]["rain"]["origin"], "generated");
    assert_eq!(first[0]["rain_model"]["years"], 30);
    assert_eq!(first[0]["years"].as_array().unwrap().len(), 30);
    // The demo's rain has twelve years.
    assert_eq!(
        first[0]["rain_model"]["recorded"]["rain_years"].as_u64().map(|years| (11..=12).contains(&years)),
        Some(true)
    );
    assert_eq!(first, draw(&["--draw", "1"]));
    assert_ne!(first[0]["total"], draw(&["--draw", "2"])[0]["total"]);
    refused(&[&file, "--generated", "5"], "no number of years");
    refused(&[&file, "--draw", "2"], "goes with --generated");
}

/// One tank of 20,000 L on a roof of 100 m² that uses 200 L a day, under the rain of Hyderabad, read 30 % full.
fn dry_file(name: &str) -> String {
    let site = Site {
        name: "One tank".to_owned(),
        system: one_tank::system(100.0, 0.85, 0.5, 20_000.0, 200.0),
        ..Site::default()
    };
    let told = Told::Level {
        of: Water::Tank(one_tank::TANK),
        level: Level::Share(Share::of_one(0.3)),
        undrawn: None,
        joined: Vec::new(),
    };
    let date = chrono::NaiveDate::from_ymd_opt(2026, 1, 10).unwrap();
    let entry = Entry { id: EntryId(1), edited: 1, date, told, note: String::new() };
    written(
        name,
        &export(
            &Units::default(),
            None,
            vec![SiteFile { site, rain: None, diary: Diary::of(vec![entry]), trial: Trial::NONE }],
        ),
    )
}

#[test]
fn the_weeks_ahead_are_told_from_a_day_and_a_content() {
    let (file, rain) = (dry_file("ahead.json"), record("hyderabad"));
    let ahead = |words: &[&str]| -> Value {
        let output = reckon(&[&[file.as_str(), rain.as_str(), "--from", "2026-01-10"], words].concat());
        assert_eq!(output.status.code(), Some(0), "{}", String::from_utf8_lossy(&output.stderr));
        serde_json::from_slice::<Value>(&output.stdout).unwrap()[0]["ahead"].take()
    };
    let by_diary = ahead(&[]);
    // By hand: 6,000 L at 200 L a day are 30 days without rain.
    assert_eq!(by_diary["days_left_without_rain"], 30);
    assert_eq!(by_diary["from"], "2026-01-10");
    assert!((by_diary["without_rain_l"][7].as_f64().unwrap() - 4600.0).abs() < 1e-6);
    for content in ["30%", "6000", "6000L"] {
        let said = ahead(&["--content", content]);
        for key in ["days_left", "days_left_without_rain", "futures_run_dry_before"] {
            assert_eq!(said[key], by_diary[key], "{content}: {key}");
        }
        let safe = |report: &Value| report["safe_use"]["l_a_day"].as_f64().unwrap();
        assert!((safe(&said) - safe(&by_diary)).abs() < 0.1, "{content}");
    }
    let more = ahead(&["--content", "60%"]);
    assert_eq!(more["days_left_without_rain"], 60);
    assert!(more["safe_use"]["l_a_day"].as_f64() > by_diary["safe_use"]["l_a_day"].as_f64());
    let drawn = ahead(&["--generated", "30"]);
    assert_eq!((&drawn["futures_from"], &drawn["futures"]), (&Value::from("generated"), &Value::from(30)));
    let text = String::from_utf8(reckon(&[&file, &rain, "--from", "2026-01-10", "--summary"]).stdout).unwrap();
    for said in [
        "The weeks ahead, from 10 January 2026:",
        "In a middle year (1 in 2) the water lasts",
        "If it never rains again: 30 days, until 9 February.",
        "Use a tenth less",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
}

#[test]
fn the_weeks_ahead_are_refused_without_a_sound_start() {
    let (file, rain) = (dry_file("ahead-refused.json"), record("hyderabad"));
    for (words, said) in [
        (&["--from", "31.7.2026"] as &[&str], "is no date"),
        (&["--from", "2026-02-30"], "is no date"),
        (&["--from", "99999-01-01"], "is no date"),
        (&["--from", "2026-01-10", "--content", "half"], "is no content"),
        (&["--from", "2026-01-10", "--content", "-5"], "is no content"),
        (&["--from", "2026-01-10", "--content", "101%"], "is no content"),
        (&["--from", "2026-01-10", "--content", "NaN"], "is no content"),
        (&["--from", "2026-01-10", "--content", "20001"], "holds no more than 20000 L"),
        (&["--content", "50%"], "goes with --from"),
        // Before the reading of the diary, and long after it.
        (&["--from", "2026-01-09"], "Write down how full the tanks are"),
        (&["--from", "2028-01-09"], "Write down how full the tanks are"),
    ] {
        refused(&[&[file.as_str(), rain.as_str()], words].concat(), said);
    }
}

#[test]
fn bad_files_and_words_are_refused() {
    let demo = demo_file("demo-refused.json");
    refused(&[], "Name a file");
    refused(&["nowhere.json"], "can't be read");
    refused(&[&written("rubbish.json", "date,rain")], "not a file that Eavewater exported");
    refused(&[&written("newer.json", r#"{"format":"eavewater","version":99}"#)], "newer Eavewater");
    refused(&[&demo, &written("empty.csv", "")], "nothing in it");
    refused(&[&demo, "--site", "Elsewhere"], "No site is called");
    refused(&[&demo, &record("tunis"), "--rain-unit", "cubits"], "no unit of rain");
    refused(&[&demo, "--wet"], "--wet");
    let mut site = demo::site();
    site.system.feeds[0].tank = None;
    let broken = written(
        "broken.json",
        &export(
            &Units::default(),
            None,
            vec![SiteFile { site, rain: None, diary: Diary::default(), trial: Trial::NONE }],
        ),
    );
    refused(&[&broken, &record("tunis")], "fills no tank");
    refused(&[&broken], "no rain of its own");
}

#[test]
fn what_next_is_ranked_by_the_measure_that_was_named() {
    let file = demo_file("demo-next.json");
    let output = reckon(&[&file, "--next", "water"]);
    let report: Value = serde_json::from_slice(&output.stdout).unwrap();
    let next = &report[0]["next"];
    let gains: Vec<f64> =
        next["ranked"].as_array().unwrap().iter().map(|one| one["water_gained_l_a_year"].as_f64().unwrap()).collect();
    assert!(gains.len() > 5 && gains.is_sorted_by(|one, other| one >= other), "{gains:?}");
    assert_eq!(next["one_after_another"][0], next["ranked"][0]);
    let text = String::from_utf8(reckon(&[&file, "--next", "price", "--summary"]).stdout).unwrap();
    assert!(text.contains("What next, by price:") && text.contains("Collect Porch into"), "{text}");
    refused(&[&file, "--next", "beauty"], "beauty is no measure");
}

#[test]
fn sizes_are_there_when_asked_for() {
    // Hyderabad, 150 m², 150 L a day: mean inflow 322 L a day, and a sequent peak of 32,050.5 L (independent_balance.rs).
    let site = Site {
        name: "One tank".to_owned(),
        system: one_tank::system(150.0, 0.85, 0.5, 20_000.0, 150.0),
        ..demo::site()
    };
    let file = written(
        "one-tank-sizes.json",
        &export(
            &Units::default(),
            None,
            vec![SiteFile { site, rain: None, diary: Diary::default(), trial: Trial::NONE }],
        ),
    );
    let output = reckon(&[&file, &record("hyderabad"), "--sizes"]);
    let report: Value = serde_json::from_slice(&output.stdout).unwrap();
    let sizes = &report[0]["sizes"];
    assert!((sizes["sequent_peak"]["before_spillage_l"].as_f64().unwrap() - 32_050.5).abs() < 1e-3);
    assert_eq!(sizes["handbooks"].as_array().unwrap().len(), 4);
    // Larger than the sequent peak under yield after spillage (the same independent values) it is never short.
    let storage = sizes["curves"]["storage_l"].as_array().unwrap();
    let point =
        |point: &Value| (point["size"].as_f64().unwrap(), point["comes_to"]["time_reliability"].as_f64().unwrap());
    let (more, less): (Vec<_>, Vec<_>) = storage.iter().map(point).partition(|(size, _)| *size >= 32_350.5);
    assert!(more.len() > 3 && more.iter().all(|(_, reliability)| *reliability == 1.0), "{more:?}");
    assert!(less.len() > 3 && less[0].1 < 1.0 && less.is_sorted_by(|one, other| one.1 <= other.1), "{less:?}");
    let surface = &sizes["surface"];
    let own_use =
        surface["use_l_a_day"].as_array().unwrap().iter().position(|litres| litres.as_f64() == Some(150.0)).unwrap();
    let rows = surface["time_reliability"].as_array().unwrap();
    for (size, row) in surface["storage_l"].as_array().unwrap().iter().zip(rows) {
        assert!(size.as_f64().unwrap() < 32_350.5 || row[own_use] == 1.0, "{size}: {row}");
    }
    assert!(rows[0][own_use].as_f64().unwrap() < 1.0);
    assert_eq!(sizes["smallest_storage_l"]["under_both_rules"][0]["outcome"], "enough");
    let text = String::from_utf8(reckon(&[&file, &record("hyderabad"), "--sizes", "--summary"]).stdout).unwrap();
    assert!(text.contains("by the sequent peak") && text.contains("6 % rule"), "{text}");
}

#[test]
fn checks_come_with_the_report() {
    let file = demo_file("demo-checks.json");
    let report: Value = serde_json::from_slice(&reckon(&[&file]).stdout).unwrap();
    let checks = report[0]["checks"].as_array().unwrap();
    let gutter = checks.iter().find(|check| check["check"] == "Gutter" && check["part"] == "Kitchen corner").unwrap();
    assert_eq!((&gutter["verdict"], &gutter["on_usual_sizes"]), (&Value::from("fails"), &Value::from(true)));
    // 64 m² at 150 mm/h.
    assert_eq!(gutter["margin"]["wants"].as_f64(), Some(160.0));
    assert!(gutter["inputs"].as_array().unwrap().iter().any(|input| input["from"] == "usual"));
    let text = String::from_utf8(reckon(&[&file, "--summary"]).stdout).unwrap();
    assert!(text.contains("Kitchen corner, Gutter. Not enough, if the usual sizes are yours:"), "{text}");
}

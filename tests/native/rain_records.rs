//! Published rain records read as their provenance note says; and no file, however broken, breaks the import.

use eavewater::engine::rain::gaps::usable;
use eavewater::engine::rain::import::{Form, Import, read};
use eavewater::engine::rain::picture;
use eavewater::engine::rain::rain_unit::RainUnit;
use eavewater::engine::rain::report::Notice;
use eavewater::site::rain::{MissingDays, RainRecord};
use proptest::prelude::*;

fn import(name: &str) -> Import {
    let path = format!("{}/tests/data/{name}-daily.csv", env!("CARGO_MANIFEST_DIR"));
    read(&std::fs::read(path).unwrap(), None, name).unwrap()
}

/// A line of the table in tests/data/README.md.
struct Published {
    days: usize,
    mean_mm: f64,
    driest_mm: f64,
    wettest_mm: f64,
    longest_dry_days: i64,
}

#[track_caller]
fn check(name: &str, published: Published) -> Vec<Notice> {
    let import = import(name);
    let record = &import.record;
    assert_eq!(record.depths_mm.len(), published.days);
    assert_eq!(import.report.rows_read, published.days);
    assert_eq!(import.report.missing_days, 0);
    assert_eq!((import.unit, import.unit_guessed, import.form), (RainUnit::Millimetres, false, Form::Table));
    let years: Vec<f64> =
        picture::yearly_totals(record).iter().filter(|year| year.complete).map(|year| year.total_mm).collect();
    // The table is rounded to whole millimetres.
    assert!((picture::annual_mean_mm(record).unwrap().0 - published.mean_mm).abs() <= 0.51);
    assert!((years.iter().copied().fold(f64::MAX, f64::min) - published.driest_mm).abs() <= 0.5);
    assert!((years.iter().copied().fold(0.0, f64::max) - published.wettest_mm).abs() <= 0.5);
    assert_eq!(picture::longest_dry_spells(record, 3)[0].days(), published.longest_dry_days);
    let weather = usable(record, MissingDays::Fill).unwrap();
    assert_eq!((weather.filled_days, weather.dates.len()), (0, published.days));
    import.report.notices
}

#[test]
fn hyderabad_reads_as_published_and_raises_no_doubt() {
    let published =
        Published { days: 4018, mean_mm: 962.0, driest_mm: 627.0, wettest_mm: 1473.0, longest_dry_days: 154 };
    assert_eq!(check("hyderabad", published), []);
}

#[test]
fn tunis_reads_as_published_and_raises_no_doubt() {
    let published =
        Published { days: 8552, mean_mm: 457.0, driest_mm: 273.0, wettest_mm: 695.0, longest_dry_days: 128 };
    assert_eq!(check("tunis", published), []);
}

#[test]
fn brussels_reads_as_published_and_raises_no_doubt() {
    let published =
        Published { days: 10_958, mean_mm: 841.0, driest_mm: 541.0, wettest_mm: 1088.0, longest_dry_days: 38 };
    assert_eq!(check("brussels", published), []);
}

#[test]
fn seattle_reads_as_published_and_raises_no_doubt() {
    let published =
        Published { days: 1461, mean_mm: 1106.0, driest_mm: 828.0, wettest_mm: 1233.0, longest_dry_days: 81 };
    assert_eq!(check("seattle", published), []);
}

#[test]
fn new_york_reads_as_published_and_raises_no_doubt() {
    let published =
        Published { days: 1461, mean_mm: 1045.0, driest_mm: 903.0, wettest_mm: 1290.0, longest_dry_days: 23 };
    assert_eq!(check("newyork", published), []);
}

#[test]
fn cordoba_is_called_a_drizzle_and_nothing_else() {
    let published =
        Published { days: 11_323, mean_mm: 867.0, driest_mm: 543.0, wettest_mm: 1102.0, longest_dry_days: 125 };
    let notices = check("cordoba", published);
    let [Notice::Drizzle { rain_days, under_1_mm }] = notices[..] else { panic!("{notices:?}") };
    // The note says: rain on 47 % of days, nearly half of them under 1 mm.
    assert!((rain_days - 0.47).abs() < 0.005);
    assert!((0.4..0.5).contains(&under_1_mm));
}

#[test]
fn champion_has_its_winters_without_a_measurement_called_unlikely() {
    let published =
        Published { days: 13_514, mean_mm: 414.0, driest_mm: 138.0, wettest_mm: 635.0, longest_dry_days: 226 };
    let notices = check("champion", published);
    for (from, to) in [("1982-11-01", "1983-03-31"), ("1984-01-01", "1984-03-31"), ("1984-11-01", "1985-04-30")] {
        let covered = notices.iter().any(|notice| match notice {
            Notice::UnlikelyDryRun { span, chance } => {
                span.first.to_string().as_str() <= from && span.last.to_string().as_str() >= to && *chance < 1e-4
            }
            _ => false,
        });
        assert!(covered, "{from} to {to} in {notices:?}");
    }
    assert!(notices.iter().all(|notice| matches!(notice, Notice::UnlikelyDryRun { .. })), "{notices:?}");
}

/// A record as a table, depths with all their digits, missing days left blank.
fn written(record: &RainRecord) -> String {
    let mut text = "date,rain_mm\n".to_string();
    for (date, depth) in record.days() {
        text += &format!("{date},{}\n", depth.map(|depth_mm| depth_mm.to_string()).unwrap_or_default());
    }
    text
}

fn any_record() -> impl Strategy<Value = RainRecord> {
    let depths = prop::collection::vec(prop::option::weighted(0.9, prop_oneof![Just(0.0), 0.0..1825.0_f64]), 1..400);
    // Days since 1 January 1 of the years 1701 to 2190.
    (620_910_i32..799_500, depths)
        .prop_filter("something must be measured", |(_, depths)| depths.iter().any(Option::is_some))
        .prop_map(|(day, depths_mm)| RainRecord {
            source: "made".to_string(),
            start: chrono::NaiveDate::from_num_days_from_ce_opt(day).unwrap(),
            depths_mm,
        })
}

/// Text that looks much like a rain file and is wrong in any way.
fn any_table() -> impl Strategy<Value = Vec<u8>> {
    let cell = prop_oneof![
        "(17|20|22)[0-9]{2}-[01]?[0-9]-[0-3]?[0-9]",
        "[0-3]?[0-9][/.][01]?[0-9][/.](20)?[0-9]{2}( 07:00)?",
        "[0-9]{8}",
        "-?[0-9]{1,3}([.,][0-9]{1,2})?",
        "-?[0-9]{1,30}e[0-9]{1,4}",
        "(T|M|NA|NaN|inf|-99|-9999|STATION|DATE|PRCP|MDPR|DAPR|PRCP_ATTRIBUTES|year|month|day|rain \\(in\\))",
        "\"?[a-zé#\u{feff}:]{0,4}\"?",
    ];
    let row = (prop::collection::vec(cell, 1..6), "[,;\t]", "(\n|\r\n|\r)");
    prop::collection::vec(row, 0..40).prop_map(|rows| {
        rows.into_iter().map(|(cells, delimiter, end)| cells.join(&delimiter) + &end).collect::<String>().into_bytes()
    })
}

/// What is true of every import, whatever the file.
fn check_sound(bytes: &[u8], unit: Option<RainUnit>) -> Result<(), TestCaseError> {
    if let Ok(import) = read(bytes, unit, "any") {
        let depths = &import.record.depths_mm;
        prop_assert!(depths.iter().flatten().all(|depth_mm| (0.0..=1825.0).contains(depth_mm)));
        prop_assert_eq!(import.report.measured_days + import.report.missing_days, depths.len());
        prop_assert_eq!(import.record.end(), Some(import.report.span.last));
        prop_assert!(import.report.measured_days > 0 && import.report.measured_days <= import.report.rows_read);
    }
    Ok(())
}

proptest! {
    #[test]
    fn a_written_record_reads_back_the_same(record in any_record()) {
        let import = read(written(&record).as_bytes(), None, "made").unwrap();
        prop_assert_eq!(import.record, record);
    }

    #[test]
    fn any_bytes_give_a_sound_record_or_an_error(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        check_sound(&bytes, None)?;
    }

    #[test]
    fn any_table_gives_a_sound_record_or_an_error(bytes in any_table(), unit in prop::option::of(0..5_usize)) {
        check_sound(&bytes, unit.map(|at| RainUnit::ALL[at]))?;
    }
}

//! Native tests.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::cast_possible_truncation)]

mod any_system;
mod checks;
mod code_laws;
mod colours;
mod diary;
mod files_in;
mod garden_days;
mod garden_laws;
mod generated_years;
mod hindcast;
mod independent_balance;
mod laws;
mod leaks;
mod learning;
mod lookout;
mod one_tank;
mod published_values;
mod rain_records;
mod reckon;
mod reference_et;
mod saved;
mod saved_now;
mod sizing;
mod sketches;
mod treatment;
mod two_languages;
mod upgrades;
mod upkeep;
mod what_next;
mod work_of_files;
mod worked_days;
mod workflows;

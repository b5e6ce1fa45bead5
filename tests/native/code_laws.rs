//! The code's own laws (DEVELOPERS.md): each breach is named with its file and line.

use std::fs;
use std::path::{Path, PathBuf};

/// The rooms in order, and which each may use (`crate::ROOM`).
const ROOMS: [(&str, &[&str]); 11] = [
    ("packing", &[]),
    ("language", &[]),
    ("quantity", &["language"]),
    ("site", &["language", "quantity"]),
    ("engine", &["quantity", "site"]),
    ("records", &["language", "quantity", "site"]),
    ("figures", &["language", "quantity", "site"]),
    ("words", &["language", "quantity", "site", "engine", "records"]),
    ("app", &["language", "quantity", "site", "engine", "records", "figures", "words"]),
    ("ui", &["language", "quantity", "site", "figures", "words", "app"]),
    ("browser", &["language", "app", "records"]),
];

/// Web crates, which only `ui` and `browser` may name.
const WEB: [&str; 6] = ["leptos", "web_sys", "wasm_bindgen", "js_sys", "gloo_storage", "wasm_bindgen_futures"];
/// What the engine must not ask for: the time, chance, files.
const IMPURE: [&str; 6] = ["SystemTime", "Instant::now", "Utc::now", "Local::now", "std::fs", "std::env"];
/// Names that say nothing.
const EMPTY_NAMES: [&str; 8] = ["utils", "util", "helpers", "common", "misc", "manager", "types", "shared"];
/// No file is longer.
const LONGEST: usize = 600;

fn files_below(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files_below(&path, found);
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            found.push(path);
        }
    }
}

/// Every source file with its path below `src`.
pub fn sources() -> Vec<(String, String)> {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut files = Vec::new();
    files_below(&src, &mut files);
    assert!(files.len() > 50, "the sources are found");
    files
        .into_iter()
        .map(|path| {
            let below = path.strip_prefix(&src).unwrap().to_str().unwrap().to_owned();
            (below, fs::read_to_string(path).unwrap())
        })
        .collect()
}

/// Lines of code before the tests at the foot of a file, with their numbers, comments cut off.
fn code(text: &str) -> impl Iterator<Item = (usize, &str)> {
    text.lines()
        .enumerate()
        .take_while(|(_, line)| !line.starts_with("#[cfg(test)]"))
        .map(|(at, line)| (at + 1, line.split("//").next().unwrap_or_default()))
}

/// Breaches found by a rule that looks at a room's code line by line.
fn breaches(rule: impl Fn(&str, &str, &str) -> Option<String>) -> Vec<String> {
    let mut found = Vec::new();
    for (file, text) in sources() {
        let room = file.split('/').next().unwrap_or_default();
        for (number, line) in code(&text) {
            if let Some(what) = rule(room, &file, line) {
                found.push(format!("src/{file}:{number}: {what}"));
            }
        }
    }
    found
}

#[test]
fn rooms_use_only_rooms_below_them() {
    let found = breaches(|room, _, line| {
        let (_, below) = ROOMS.iter().find(|(name, _)| *name == room)?;
        let (_, after) = line.split_once("crate::")?;
        let used: String = after.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect();
        let is_room = ROOMS.iter().any(|(name, _)| *name == used);
        let allowed = used == room || below.contains(&used.as_str());
        (is_room && !allowed).then(|| format!("{room} must not use {used}"))
    });
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn only_the_page_names_web_crates() {
    let found = breaches(|room, file, line| {
        let is_page = matches!(room, "ui" | "browser") || file == "main.rs";
        let named =
            WEB.iter().find(|name| line.contains(&format!("{name}::")) || line.contains(&format!("use {name}")))?;
        (!is_page).then(|| format!("{named} outside ui and browser"))
    });
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn the_engine_asks_for_no_time_chance_or_file() {
    let found = breaches(|room, _, line| {
        let asked = IMPURE.iter().find(|name| line.contains(**name))?;
        matches!(room, "engine" | "site" | "quantity" | "figures" | "words" | "app").then(|| (*asked).to_owned())
    });
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn nothing_from_outside_can_panic() {
    let found = breaches(|_, file, line| {
        let panics = [".unwrap()", ".expect(", "panic!(", "todo!(", "unimplemented!("];
        // The context is set where the page is mounted.
        let named = panics.iter().find(|name| line.contains(**name))?;
        (!file.ends_with("tests.rs")).then(|| (*named).to_owned())
    });
    assert!(found.is_empty(), "{}", found.join("\n"));
}

/// The released app is built so that they write nothing (`.ci/build-app`).
#[test]
fn nothing_that_is_shown_or_kept_is_written_as_programmers_read_it() {
    let found = breaches(|_, file, line| {
        let named = [":?}", ":#?}"].iter().find(|format| line.contains(**format))?;
        let in_test = file.ends_with("tests.rs") || line.contains("assert");
        (!in_test).then(|| (*named).to_owned())
    });
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn files_are_short_and_named_by_their_subject() {
    let mut found = Vec::new();
    let mut lengths = Vec::new();
    for (file, text) in sources() {
        let lines = text.lines().count();
        lengths.push(lines);
        if lines > LONGEST {
            found.push(format!("src/{file}:{LONGEST}: {lines} lines; split it by subject"));
        }
        for part in file.split(['/', '.']) {
            if EMPTY_NAMES.contains(&part) {
                found.push(format!("src/{file}:1: “{part}” says nothing"));
            }
        }
        if !text.starts_with("//!") {
            found.push(format!("src/{file}:1: no line that says what it is"));
        }
    }
    lengths.sort_unstable();
    let median = lengths[lengths.len() / 2];
    assert!(median <= 150, "median file length {median}");
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn conversion_factors_stand_in_quantity_alone() {
    let factors = ["3.785", "4.546", "0.3048", "0.0254", "0.092903", "0.0929", "25.4"];
    let found = breaches(|room, _, line| {
        let named = factors.iter().find(|factor| line.contains(**factor))?;
        (room != "quantity").then(|| format!("{named} outside quantity"))
    });
    assert!(found.is_empty(), "{}", found.join("\n"));
}

//! How the drinking water stands.

use super::{About, Extent};
use crate::app::view::checks::{self, CheckView};
use crate::app::view::document::Section;
use crate::app::view::water::{TapView, all_tests, taps};
use crate::engine::checks::Verdict;
use crate::figures::table::Table;
use crate::words::{self, report as say};

/// What is drunk; in short how each tap stands and what is wrong there.
pub(super) fn drunk(about: &About, extent: Extent) -> Option<Section> {
    let seen = about.seen();
    let taps = taps(&seen);
    if taps.is_empty() {
        return None;
    }
    let mut section = Section::new(say::WATER.text());
    for tap in taps {
        let TapView { name, class, word, verdict, weakest, wrong, upstream, steps, rows, notes, caution, .. } = tap;
        section.heading(name.as_str());
        section.check(CheckView {
            class,
            word,
            sentence: verdict,
            to_do: weakest.unwrap_or_default(),
            ..CheckView::BLANK
        });
        section.list(wrong);
        if extent == Extent::Short {
            section.list(steps.into_iter().map(|step| [step.check.title, ": ", step.check.word].concat()).collect());
            continue;
        }
        section.text(upstream);
        if steps.is_empty() {
            section.text(words::treatment::chain::NO_BARRIERS);
        }
        for step in steps {
            section.check(CheckView { behind: Vec::new(), ..step.check });
        }
        let columns = words::treatment::chain::COLUMNS.map(String::from).into();
        section.table(
            [say::WATER.text(), " ", &name].concat(),
            Table { columns, rows: rows.into_iter().map(Vec::from).collect() },
        );
        section.list(notes);
        section.caution(caution);
    }
    section.text(words::treatment::chain::ABOUT);
    let mut tests = all_tests(&seen);
    if extent == Extent::Short {
        tests.retain(|test| test.class == checks::class(Verdict::Fails));
    }
    if extent == Extent::Whole || !tests.is_empty() {
        section.heading(words::treatment::results::TITLE);
    }
    if extent == Extent::Whole && tests.is_empty() {
        section.text(words::treatment::results::NONE);
    }
    for test in tests {
        let sentence = format!("{} {}", test.found, test.meaning);
        section.check(CheckView {
            title: test.title,
            class: test.class,
            word: test.word,
            sentence,
            to_do: test.next,
            ..CheckView::BLANK
        });
    }
    section.caution(words::treatment::chain::CAUTION);
    Some(section)
}

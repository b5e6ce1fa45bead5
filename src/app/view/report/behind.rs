//! What stands behind a report: what is taken for granted, sources, cautions.

use super::About;
use crate::app::model::KeptSite;
use crate::app::view::document::{Block, Section};
use crate::engine::checks::Check;
use crate::words::method::{BALANCE, FROM_TODAY, RAIN, STATISTICS};
use crate::words::{self, report as say};

/// The texts of the checks that were made, each once.
fn texts(found: &[Check]) -> Vec<words::checks::Text> {
    let mut texts: Vec<words::checks::Text> = Vec::new();
    for check in found {
        let text = words::checks::text(check.subject);
        if texts.iter().all(|other| other.title != text.title) {
            texts.push(text);
        }
    }
    texts
}

pub(super) fn granted(found: &[Check], about: &About) -> Section {
    let mut section = Section::new(say::ASSUMPTIONS.text());
    section.text(words::sizing::HOW);
    section.text(say::USUAL);
    let mut lines = Vec::new();
    let mut add = |text: &words::checks::Text| {
        if !text.assumes.is_empty() {
            lines.push(format!("{}: {}", text.title, text.assumes));
        }
    };
    let ours = [&BALANCE[..], &RAIN, &STATISTICS];
    ours.iter().flat_map(|topics| topics.iter()).for_each(&mut add);
    if !about.kept.diary.is_empty() {
        FROM_TODAY.iter().for_each(&mut add);
    }
    texts(found).iter().for_each(&mut add);
    section.list(lines);
    section
}

pub(super) fn sources(found: &[Check]) -> Section {
    let mut section = Section::new(say::SOURCES.text());
    let mut lines = Vec::new();
    let mut add = |text: &words::checks::Text| {
        if !text.source.is_empty() && !text.source.starts_with(words::method::OURS.text()) {
            lines.push(format!("{}: {}", text.title, text.source));
        }
    };
    let ours = [&BALANCE[..], &RAIN, &STATISTICS, &FROM_TODAY];
    ours.iter().flat_map(|topics| topics.iter()).for_each(&mut add);
    texts(found).iter().for_each(&mut add);
    section.list(lines);
    section
}

pub(super) fn cautions(kept: &KeptSite) -> Section {
    let mut section = Section::new(say::CAUTIONS.text());
    let mut lines: Vec<String> = Vec::new();
    for part in kept.site.system.parts() {
        for caution in words::cautions::for_part(&part) {
            if lines.iter().all(|line| line != caution) {
                lines.push(caution.to_owned());
            }
        }
    }
    section.list(lines);
    section.caution(words::cautions::NOT_DRINKING_WATER);
    section.blocks.push(Block::Answer(words::cautions::WHO_DECIDES.to_owned()));
    section
}

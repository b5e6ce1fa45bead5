//! How everything is reckoned: one page of all formulas with their sources, and the words.

use super::document::{Document, Section};
use crate::engine::checks::Subject;
use crate::language::capital;
use crate::site::barrier::BarrierKind;
use crate::words::checks::{Text, text};
use crate::words::method::{self as say, HEADS};
use crate::words::terms::{TERMS, name};

/// The page.
pub fn method() -> Document {
    let mut sections: Vec<Section> = say::SECTIONS.map(|(title, topics)| topics_of(title.text(), topics)).into();
    sections.push(topics_of(say::CHECKS.text(), &Subject::OF_PARTS.map(text)));
    let barriers = BarrierKind::ALL.map(|kind| text(Subject::Barrier(kind)));
    sections.push(topics_of(say::BARRIERS.text(), &barriers));
    let mut words = Section::new(say::TERMS.text());
    let told = TERMS.iter().map(|(term, sentence)| (capital(name(term)), sentence.text().to_owned()));
    words.values(told.collect());
    sections.push(words);
    Document { title: say::TITLE.to_owned(), lead: vec![say::LEAD.to_owned()], sections }
}

fn topics_of(title: &'static str, topics: &[Text]) -> Section {
    let mut section = Section::new(title);
    for topic in topics {
        section.heading(topic.title.text());
        let [formula, source, assumes] = HEADS;
        let lines = [(formula, topic.formula.text()), (source, topic.source.text()), (assumes, topic.assumes.text())];
        let lines = lines.into_iter().filter(|(_, text)| !text.is_empty());
        section.values(lines.map(|(head, text)| (head.to_owned(), text.to_owned())).collect());
        if !topic.caution.is_empty() {
            section.caution(topic.caution.text());
        }
    }
    section
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::view::document::Block;

    #[test]
    fn every_formula_stands_on_the_page_with_its_source() {
        let page = method();
        let mut formulas = 0;
        for section in &page.sections[..page.sections.len() - 1] {
            for blocks in section.blocks.windows(2) {
                if let [Block::Heading(title), Block::Values(lines)] = blocks {
                    formulas += 1;
                    // What is asked of a roof is no formula.
                    let asked = *title == text(Subject::OnRoof).title.text();
                    assert!(asked || lines.iter().any(|(head, _)| *head == *HEADS[0]), "{title}: no formula");
                    assert!(lines.iter().any(|(head, _)| *head == *HEADS[1]), "{title}: no source");
                }
            }
        }
        let topics: usize = say::SECTIONS.iter().map(|(_, topics)| topics.len()).sum();
        assert_eq!(formulas, topics + Subject::OF_PARTS.len() + BarrierKind::ALL.len());
    }
}

//! How big it would have to be: what was found in the whole house, and by handbooks.

use super::Extent;
use crate::app::case::Case;
use crate::app::model::Model;
use crate::app::study::{Inquiry, REPORTED};
use crate::app::view::document::Section;
use crate::app::view::size::size;
use crate::words::{self, report as say};

/// How big it would have to be.
pub fn sizes(model: &Model, case: &Case, extent: Extent) -> Section {
    let mut section = Section::new(say::SIZES.text());
    let wanted = case.site.as_ref().map(|kept| words::size::wanted(kept.site.reckoning.wanted));
    section.values(wanted.into_iter().map(|wanted| (words::size::WANTED.to_owned(), wanted)).collect());
    for inquiry in REPORTED {
        let view = size(inquiry, model.studies.of(inquiry), case);
        if inquiry != Inquiry::Smallest {
            if extent == Extent::Short {
                break;
            }
            section.heading(words::size::title(inquiry));
            section.text(words::size::about(inquiry));
        }
        if view.running.is_some() {
            section.text(say::SIZES_RUN);
            continue;
        }
        section.text(view.why_not.unwrap_or_default());
        section.list(view.sentences);
        if extent == Extent::Whole {
            for (name, table) in view.tables {
                section.table(name, table);
            }
            section.list(view.notes);
        }
    }
    section
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::app::event::Event;
    use crate::app::update::update;
    use crate::app::view::document::Block;

    #[test]
    fn it_says_how_big_once_that_is_found() {
        use crate::app::effect::Effect;
        let mut model = Model { started: true, ..Model::default() };
        update(&mut model, Event::DemoWanted);
        let effects = update(&mut model, Event::PlaceOpened(crate::app::model::Place::Report));
        let told = |model: &Model| {
            let case = Case::of(model, 358.0, None);
            [Extent::Whole, Extent::Short].map(|extent| sizes(model, &case, extent).blocks)
        };
        let runs = |blocks: &[Block]| blocks.contains(&Block::Text(say::SIZES_RUN.to_owned()));
        assert!(told(&model).iter().all(|blocks| runs(blocks)));
        let mut asked = 0;
        for effect in effects {
            let Effect::Study(order) = effect else { continue };
            let mut study = order.begin().unwrap();
            while study.step() {}
            update(&mut model, Event::Studied(order.ticket, std::sync::Arc::new(Ok(study.findings()))));
            asked += 1;
        }
        assert_eq!(asked, 2);
        let [whole, short] = told(&model);
        let lists = |blocks: &[Block]| blocks.iter().filter(|block| matches!(block, Block::List(_))).count();
        let tables = |blocks: &[Block]| blocks.iter().filter(|block| matches!(block, Block::Table(..))).count();
        assert_eq!((lists(&short), tables(&short)), (1, 0), "{short:?}");
        assert_eq!((lists(&whole), tables(&whole)), (3, 2), "{whole:?}");
        assert!(!runs(&short) && !runs(&whole));
    }
}

//! Questions about size: asked while their section is open, again whenever the house has changed, left when it is shut.

use std::sync::Arc;

use crate::app::effect::Effect;
use crate::app::model::{KeptSite, Model, Place};
use crate::app::study::{Answered, Findings, Inquiry, Order, REPORTED, Standing};
use crate::engine::question::Refusal;

pub(super) fn opened(model: &mut Model, inquiry: Inquiry, open: bool) -> Vec<Effect> {
    model.studies.of_mut(inquiry).open = open;
    Vec::new()
}

/// It is asked again from the start.
pub(super) fn wanted(model: &mut Model, inquiry: Inquiry) -> Vec<Effect> {
    let asked = model.studies.of_mut(inquiry);
    (asked.order, asked.standing) = (None, Standing::Unasked);
    Vec::new()
}

pub(super) fn cancelled(model: &mut Model, inquiry: Inquiry) -> Vec<Effect> {
    let asked = model.studies.of_mut(inquiry);
    if !matches!(asked.standing, Standing::Running(_)) {
        return Vec::new();
    }
    asked.standing = Standing::Cancelled;
    vec![Effect::LeaveStudy(inquiry)]
}

pub(super) fn went_on(model: &mut Model, ticket: u32, progress: f64) -> Vec<Effect> {
    set(model, ticket, Standing::Running(progress))
}

pub(super) fn studied(model: &mut Model, ticket: u32, findings: Arc<Result<Findings, Refusal>>) -> Vec<Effect> {
    set(model, ticket, Standing::Done(Answered(findings)))
}

/// Of a question that still runs; whatever comes late is dropped.
fn set(model: &mut Model, ticket: u32, standing: Standing) -> Vec<Effect> {
    let runs = |asked: &&mut crate::app::study::Asked| {
        asked.order.as_ref().is_some_and(|order| order.ticket == ticket)
            && matches!(asked.standing, Standing::Running(_))
    };
    if let Some(asked) = model.studies.asked.iter_mut().find(runs) {
        asked.standing = standing;
    }
    Vec::new()
}

/// Asks what is open and not asked yet of the house as it is now, and leaves what nobody looks at.
pub(super) fn follow(model: &mut Model) -> Vec<Effect> {
    let mut effects = Vec::new();
    let (place, sketching) = (model.place, model.sketching);
    let concerns =
        matches!(place, Place::Sizing | Place::Report) || model.studies.asked.iter().any(|asked| asked.order.is_some());
    let house = model.site().filter(|_| concerns).cloned().map(KeptSite::with_written_rain);
    let house = house.and_then(|kept| Some((kept.site, kept.rain?)));
    let Model { studies, .. } = model;
    for inquiry in Inquiry::ALL {
        let ticket = studies.last_ticket + 1;
        let asked = studies.of_mut(inquiry);
        let same = match (&asked.order, &house) {
            (Some(order), Some((site, rain))) => Arc::ptr_eq(&order.site, site) && order.rain == *rain,
            _ => false,
        };
        let wanted = !sketching
            && match place {
                Place::Sizing => asked.open,
                Place::Report => REPORTED.contains(&inquiry),
                _ => false,
            };
        if same && (wanted || !matches!(asked.standing, Standing::Running(_))) {
            continue;
        }
        if matches!(asked.standing, Standing::Running(_)) {
            effects.push(Effect::LeaveStudy(inquiry));
        }
        (asked.order, asked.standing) = (None, Standing::Unasked);
        if let (true, Some((site, rain))) = (wanted, &house) {
            let order = Order { ticket, inquiry, site: Arc::clone(site), rain: Arc::clone(rain) };
            asked.order = Some(order.clone());
            asked.standing = Standing::Running(0.0);
            studies.last_ticket = ticket;
            effects.push(Effect::Study(order));
        }
    }
    effects
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::event::Event;
    use crate::app::update::update;

    fn started() -> (Model, Vec<Effect>) {
        let mut model = Model { started: true, ..Model::default() };
        update(&mut model, Event::DemoWanted);
        let effects = update(&mut model, Event::PlaceOpened(Place::Sizing));
        (model, effects)
    }

    fn tickets(effects: &[Effect]) -> Vec<u32> {
        let ticket = |effect: &Effect| if let Effect::Study(order) = effect { Some(order.ticket) } else { None };
        effects.iter().filter_map(ticket).collect()
    }

    #[test]
    fn a_house_whose_only_rain_is_in_its_diary_is_asked_about_too() {
        let mut model = Model { started: true, ..Model::default() };
        update(&mut model, Event::DemoWanted);
        update(&mut model, Event::RainRemoved);
        let first = chrono::NaiveDate::from_ymd_opt(2024, 1, 1).unwrap_or_default();
        for (moment, date) in (1..).zip(first.iter_days().take(400)) {
            let told = crate::site::diary::Told::Rain(crate::quantity::Depth::millimetres(2.0));
            let draft = crate::app::draft::Draft { id: None, date, told, note: String::new() };
            update(&mut model, Event::EntryWritten(draft, moment));
        }
        let asked = tickets(&update(&mut model, Event::PlaceOpened(Place::Sizing)));
        assert_eq!(asked.len(), 1);
        // Nothing is asked again while nothing changes.
        assert!(tickets(&update(&mut model, Event::NoticeDismissed)).is_empty());
    }

    #[test]
    fn what_is_open_is_asked_and_asked_again_of_a_changed_house() {
        let (mut model, effects) = started();
        assert_eq!(tickets(&effects), [1]);
        assert_eq!(tickets(&update(&mut model, Event::InquiryOpened(Inquiry::Surface, true))), [2]);
        let effects = update(&mut model, Event::StartChosen(0.5));
        assert_eq!(tickets(&effects), [3, 4]);
        assert!(effects.contains(&Effect::LeaveStudy(Inquiry::Smallest)));
        // What the old house came to comes too late.
        let late = Arc::new(Err(Refusal::System(Vec::new())));
        update(&mut model, Event::Studied(1, late));
        assert_eq!(model.studies.of(Inquiry::Smallest).standing, Standing::Running(0.0));
        update(&mut model, Event::StudyWentOn(3, 0.5));
        assert_eq!(model.studies.of(Inquiry::Smallest).standing, Standing::Running(0.5));
    }

    #[test]
    fn it_can_be_cancelled_and_wanted_again_and_is_left_with_the_place() {
        let (mut model, _) = started();
        let effects = update(&mut model, Event::InquiryCancelled(Inquiry::Smallest));
        assert_eq!(effects, [Effect::LeaveStudy(Inquiry::Smallest)]);
        assert_eq!(model.studies.of(Inquiry::Smallest).standing, Standing::Cancelled);
        assert_eq!(tickets(&update(&mut model, Event::InquiryWanted(Inquiry::Smallest))), [2]);
        let effects = update(&mut model, Event::PlaceOpened(Place::House));
        assert_eq!(effects, [Effect::ShowPlace(Place::House), Effect::LeaveStudy(Inquiry::Smallest)]);
        assert_eq!(tickets(&update(&mut model, Event::PlaceOpened(Place::Sizing))), [3]);
    }
}

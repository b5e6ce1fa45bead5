//! Questions about size in slices of a few ms, between which the page draws and listens.

use std::cell::RefCell;
use std::rc::Rc;
use std::sync::Arc;

use super::later;
use crate::app::event::Event;
use crate::app::study::{Inquiry, Order, Study};

/// A slice ends after so many ms, by one small step more at most.
const SLICE_MS: f64 = 8.0;
/// How far it is is told so seldom, in ms.
const TOLD_EVERY_MS: f64 = 150.0;

type Send = Box<dyn Fn(Event)>;

/// What was ordered, and its study once begun.
type Waiting = (Order, Option<Study>);

/// The questions that are being reckoned.
#[derive(Clone, Default)]
pub(super) struct Studies {
    /// Each with its work, once begun.
    waiting: Rc<RefCell<Vec<Waiting>>>,
    send: Rc<RefCell<Option<Send>>>,
    told_at: Rc<RefCell<f64>>,
    ticking: Rc<RefCell<bool>>,
}

fn now() -> f64 {
    web_sys::window().and_then(|window| window.performance()).map_or(0.0, |clock| clock.now())
}

impl Studies {
    /// Answers go here.
    pub fn listen(&self, send: impl Fn(Event) + 'static) {
        *self.send.borrow_mut() = Some(Box::new(send));
    }

    /// Takes a question up, in the place of the same one before.
    pub fn take_up(&self, order: Order) {
        self.leave(order.inquiry);
        self.waiting.borrow_mut().push((order, None));
        if !self.ticking.replace(true) {
            self.tick_later();
        }
    }

    /// Leaves a question.
    pub fn leave(&self, inquiry: Inquiry) {
        self.waiting.borrow_mut().retain(|(order, _)| order.inquiry != inquiry);
    }

    fn tick_later(&self) {
        let studies = self.clone();
        later::soon(move || studies.tick());
    }

    fn tick(&self) {
        // Taken out while at work, so that nothing is held when an event changes the list.
        let first = self.waiting.borrow_mut().first_mut().map(|(order, study)| (order.clone(), study.take()));
        let Some((order, study)) = first else {
            self.ticking.replace(false);
            return;
        };
        let started = now();
        let told = match study.map_or_else(|| order.begin(), Ok) {
            Err(refusal) => self.answered(&order, Err(refusal)),
            Ok(mut study) => {
                let mut left = true;
                while left && now() - started < SLICE_MS {
                    left = study.step();
                }
                if left {
                    let progress = study.progress();
                    if let Some((_, place)) = self.waiting.borrow_mut().iter_mut().find(|(other, _)| *other == order) {
                        *place = Some(study);
                    }
                    let due = started - *self.told_at.borrow() > TOLD_EVERY_MS;
                    due.then_some(Event::StudyWentOn(order.ticket, progress))
                } else {
                    self.answered(&order, Ok(study.findings()))
                }
            }
        };
        if let Some(event) = told {
            self.told_at.replace(started);
            if let Some(send) = &*self.send.borrow() {
                send(event);
            }
        }
        self.tick_later();
    }

    fn answered(
        &self,
        order: &Order,
        findings: Result<crate::app::study::Findings, crate::app::study::Refusal>,
    ) -> Option<Event> {
        self.leave(order.inquiry);
        Some(Event::Studied(order.ticket, Arc::new(findings)))
    }
}

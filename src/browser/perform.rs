//! Carries out effects: the one match.

use std::cell::RefCell;
use std::rc::Rc;

use super::studies::Studies;
use super::{BrowserShelf, address, clock, files, later, service_worker};
use crate::app::effect::Effect;
use crate::app::event::Event;
use crate::app::keeping::{self, Keeping};
use crate::language;
use crate::records::cupboard::{Cupboard, Opened};
use crate::records::shelf::ShelfError;
use crate::records::slots::PutError;

type Send = Rc<RefCell<Option<Box<dyn Fn(Event)>>>>;

/// Holds the open cupboard and carries out effects.
#[derive(Clone)]
pub struct Keeper {
    cupboard: Rc<RefCell<Option<Cupboard<BrowserShelf>>>>,
    keeping: Rc<RefCell<Keeping>>,
    pub(super) studies: Studies,
    /// Sends an event from outside, once somebody listens.
    send: Send,
}

impl Keeper {
    /// Opens the cupboard and says how the app starts.
    pub fn start() -> (Self, Event) {
        let keeper =
            Self { cupboard: Rc::default(), keeping: Rc::default(), studies: Studies::default(), send: Rc::default() };
        language::speak(clock::devices_language());
        let mut opened = keeper.open();
        if let Ok(opened) = &mut opened {
            let (language, minutes_behind) = clock::devices_own();
            keeping::begin(opened, &language, minutes_behind);
        }
        (keeper, Event::Started(clock::today(), opened))
    }

    /// Opens the cupboard again, as another window left it.
    pub(super) fn open(&self) -> Result<Opened, ShelfError> {
        let (cupboard, opened) = Cupboard::open(BrowserShelf::open()?)?;
        *self.cupboard.borrow_mut() = Some(cupboard);
        Ok(opened)
    }

    /// What another window wrote under a key, if that is a half-year of a diary.
    pub(super) fn half_again(&self, key: &str) -> Option<Event> {
        let (site, half) = Cupboard::<BrowserShelf>::half_of_key(key)?;
        let lines = self.cupboard.borrow_mut().as_mut()?.read_half(site, half).ok()?;
        Some(Event::HalfReadAgain(site, half, lines))
    }

    /// Takes the way by which events are sent from outside.
    pub(super) fn sends_by(&self, send: impl Fn(Event) + 'static) {
        *self.send.borrow_mut() = Some(Box::new(send));
    }

    /// Sends an event from outside.
    pub(super) fn send(&self, event: Event) {
        if let Some(send) = &*self.send.borrow() {
            send(event);
        }
    }

    /// Keeps something with the open cupboard.
    fn keep(
        &self,
        keep: impl FnOnce(&mut Keeping, &mut Cupboard<BrowserShelf>) -> Result<(), PutError>,
    ) -> Result<(), PutError> {
        match self.cupboard.borrow_mut().as_mut() {
            Some(cupboard) => keep(&mut self.keeping.borrow_mut(), cupboard),
            None => Err(PutError::Shelf(ShelfError::Denied)),
        }
    }

    /// Tries to keep what found no room; whether nothing is left of it.
    pub(super) fn has_kept_all(&self) -> bool {
        // What came of it shows in what waits.
        let _ = self.keep(|keeping, cupboard| keeping.try_again(cupboard));
        self.keeping.borrow().is_done()
    }

    /// Carries out an effect; what comes of it is an event.
    pub fn perform(&self, effect: Effect) -> Option<Event> {
        match effect {
            effect if effect.keeps() => {
                let result = self.keep(|keeping, cupboard| keeping.keep(&effect, cupboard));
                Some(match effect {
                    Effect::TakeIn { sites, index, replace } => Event::TakenIn { sites, index, replace, result },
                    _ => Event::Saved(result),
                })
            }
            Effect::MeasureStorage => {
                let used = self.cupboard.borrow().as_ref().map(Cupboard::used);
                Some(Event::StorageMeasured(used?.ok()?))
            }
            Effect::AskToPersist => {
                service_worker::ask_to_persist();
                None
            }
            Effect::Download { name, media_type, text } => {
                files::download(&name, media_type, &text);
                None
            }
            Effect::DownloadBitmap { name, svg, size } => {
                files::download_bitmap(name, &svg, size);
                None
            }
            Effect::Study(order) => {
                self.studies.take_up(order);
                None
            }
            Effect::LeaveStudy(inquiry) => {
                self.studies.leave(inquiry);
                None
            }
            Effect::GoOn => {
                later::go_on(self);
                None
            }
            Effect::SwitchVersion => {
                service_worker::switch();
                None
            }
            Effect::ShowPlace(place) => {
                address::show(place);
                None
            }
            // Kept above.
            _ => None,
        }
    }
}

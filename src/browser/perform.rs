//! Carries out effects: the one match.

use std::cell::RefCell;
use std::rc::Rc;

use super::studies::Studies;
use super::{BrowserShelf, address, clock, files, later, service_worker};
use crate::app::effect::Effect;
use crate::app::event::Event;
use crate::language;
use crate::records::cupboard::{Cupboard, Opened};
use crate::records::shelf::ShelfError;
use crate::records::slots::PutError;

type Send = Rc<RefCell<Option<Box<dyn Fn(Event)>>>>;

/// Holds the open cupboard and carries out effects.
#[derive(Clone)]
pub struct Keeper {
    cupboard: Rc<RefCell<Option<Cupboard<BrowserShelf>>>>,
    pub(super) studies: Studies,
    /// Sends an event from outside, once somebody listens.
    send: Send,
}

impl Keeper {
    /// Opens the cupboard and says how the app starts.
    pub fn start() -> (Self, Event) {
        let keeper = Self { cupboard: Rc::default(), studies: Studies::default(), send: Rc::default() };
        language::speak(clock::devices_language());
        let opened = keeper.open();
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
        let entries = self.cupboard.borrow_mut().as_mut()?.read_half(site, half).ok()?;
        Some(Event::HalfReadAgain(site, half, entries))
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

    fn write(&self, write: impl FnOnce(&mut Cupboard<BrowserShelf>) -> Result<(), PutError>) -> Result<(), PutError> {
        match self.cupboard.borrow_mut().as_mut() {
            Some(cupboard) => write(cupboard),
            None => Err(PutError::Shelf(ShelfError::Denied)),
        }
    }

    /// Carries out an effect; what comes of it is an event.
    pub fn perform(&self, effect: Effect) -> Option<Event> {
        match effect {
            Effect::SaveIndex(index) => Some(Event::Saved(self.write(|cupboard| cupboard.save_index(&index)))),
            Effect::SaveSite(id, site) => Some(Event::Saved(self.write(|cupboard| cupboard.save_site(id, &site)))),
            Effect::SaveRain(id, rain) => {
                Some(Event::Saved(self.write(|cupboard| cupboard.save_rain(id, rain.as_deref()))))
            }
            Effect::SaveTrial(id, trial) => Some(Event::Saved(self.write(|cupboard| cupboard.save_trial(id, &trial)))),
            Effect::SaveDiary(id, diary) => Some(Event::Saved(self.write(|cupboard| cupboard.save_diary(id, &diary)))),
            Effect::SaveEntry(id, entry, was) => {
                Some(Event::Saved(self.write(|cupboard| cupboard.save_entry(id, &entry, was))))
            }
            Effect::RemoveEntry(id, entry, half) => {
                Some(Event::Saved(self.write(|cupboard| cupboard.remove_entry(id, entry, half))))
            }
            Effect::RemoveSite(id) => Some(Event::Saved(self.write(|cupboard| Ok(cupboard.remove_site(id)?)))),
            Effect::TakeIn { sites, index, replace } => {
                let result = self.write(|cupboard| cupboard.take_in(&sites, &index));
                Some(Event::TakenIn { sites, index, replace, result })
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
        }
    }
}

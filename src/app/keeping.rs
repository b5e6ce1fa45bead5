//! Keeps what effects say in the cupboard. What finds no room waits, and is tried again with each thing that is kept after
//! it: the person sees it on the screen and may go on, and nothing of it is lost once there is room.

use super::effect::Effect;
use crate::quantity::{Customary, Units};
use crate::records::cupboard::{Cupboard, Opened};
use crate::records::shelf::{Shelf, ShelfError};
use crate::records::slots::PutError;

/// Gives a cupboard in which nothing was ever kept the units that the owner of a device most likely knows; see
/// [`Customary::of_device`].
pub fn begin(opened: &mut Opened, tag: &str, minutes_behind: f64) {
    if opened.used == 0 {
        opened.index.units = Units::customary(Customary::of_device(tag, minutes_behind));
    }
}

/// What waits for room, the oldest first.
#[derive(Debug, Default)]
pub struct Keeping {
    waiting: Vec<Effect>,
}

impl Keeping {
    /// Whether nothing waits.
    pub fn is_done(&self) -> bool {
        self.waiting.is_empty()
    }

    /// Keeps what an effect says and what waits.
    ///
    /// # Errors
    /// The first of what was not kept, this or what waits; see [`PutError`].
    pub fn keep<S: Shelf>(&mut self, effect: &Effect, cupboard: &mut Cupboard<S>) -> Result<(), PutError> {
        // All or none of it, and then what it stands for waits no more.
        if let Effect::TakeIn { .. } = effect {
            write(effect, cupboard)?;
            self.waiting.retain(|before| !effect.makes_needless(before));
            return Ok(());
        }
        self.waiting.retain(|before| !effect.makes_needless(before));
        self.waiting.push(effect.clone());
        self.try_again(cupboard)
    }

    /// Keeps what waits.
    ///
    /// # Errors
    /// The first of what was not kept; see [`PutError`].
    pub fn try_again<S: Shelf>(&mut self, cupboard: &mut Cupboard<S>) -> Result<(), PutError> {
        let mut result = Ok(());
        let mut still: Vec<Effect> = Vec::new();
        for effect in std::mem::take(&mut self.waiting) {
            // One entry goes after another: a later word on the same must not be undone by an earlier.
            let behind = effect.diary().is_some() && still.iter().any(|before| before.diary() == effect.diary());
            let written = if behind { Err(PutError::Shelf(ShelfError::Full)) } else { write(&effect, cupboard) };
            if written == Err(PutError::Shelf(ShelfError::Full)) {
                still.push(effect);
            }
            result = result.and(written);
        }
        self.waiting = still;
        result
    }
}

fn write<S: Shelf>(effect: &Effect, cupboard: &mut Cupboard<S>) -> Result<(), PutError> {
    match effect {
        Effect::SaveIndex(index) => cupboard.save_index(index),
        Effect::SaveSite(id, site) => cupboard.save_site(*id, site),
        Effect::SaveRain(id, rain) => cupboard.save_rain(*id, rain.as_deref()),
        Effect::SaveTrial(id, trial) => cupboard.save_trial(*id, trial),
        Effect::SaveDiary(id, diary) => cupboard.save_diary(*id, diary),
        Effect::SaveLine(id, line, was) => cupboard.save_line(*id, line, *was),
        Effect::RemoveSite(id) => Ok(cupboard.remove_site(*id)?),
        Effect::TakeIn { sites, index, .. } => cupboard.take_in(sites, index),
        _ => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use chrono::NaiveDate;

    use super::*;
    use crate::quantity::Depth;
    use crate::records::cupboard::{Index, SiteId};
    use crate::records::shelf::MemoryShelf;
    use crate::site::demo;
    use crate::site::diary::{Entry, EntryId, Half, Line, Told};
    use crate::site::household::Site;
    use crate::site::rain::Rain;

    const SITE: SiteId = SiteId(1);
    const FULL: Result<(), PutError> = Err(PutError::Shelf(ShelfError::Full));

    fn named(name: &str) -> Effect {
        Effect::SaveSite(SITE, Arc::new(Site { name: name.to_owned(), ..demo::site() }))
    }

    fn rain() -> Effect {
        Effect::SaveRain(SITE, Some(Arc::new(Rain::Record(demo::rain()))))
    }

    fn index() -> Effect {
        Effect::SaveIndex(Index { sites: vec![SITE], open: Some(SITE), ..Index::default() })
    }

    /// Rain on a day of 2026, told with so long a note.
    fn entry(id: u64, month: u32, mm: f64, letters: usize) -> Entry {
        let date = NaiveDate::from_ymd_opt(2026, month, 1).unwrap_or_default();
        Entry { id: EntryId(id), edited: id, date, told: Told::Rain(Depth::millimetres(mm)), note: "n".repeat(letters) }
    }

    /// A shelf that has so many letters of room left beside the demo house without rain.
    fn shelf(room: usize) -> MemoryShelf {
        let used = |shelf: &MemoryShelf| Cupboard::open(shelf).ok().and_then(|(cupboard, _)| cupboard.used().ok());
        let kept = |shelf: &MemoryShelf| {
            let mut keeping = Keeping::default();
            let (mut cupboard, _) = Cupboard::open(shelf).ok()?;
            keeping.keep(&named("House"), &mut cupboard).ok()?;
            keeping.keep(&index(), &mut cupboard).ok()
        };
        let probe = MemoryShelf::with_room(1_000_000);
        assert_eq!(kept(&probe), Some(()));
        let shelf = MemoryShelf::with_room(used(&probe).unwrap_or_default() + room);
        assert_eq!(kept(&shelf), Some(()));
        shelf
    }

    /// Name, whether there is rain, and the diary's days of rain of the house on a shelf.
    fn house(shelf: &MemoryShelf) -> Option<(String, bool, Vec<f64>)> {
        let (_, opened) = Cupboard::open(shelf).ok()?;
        let (_, file) = opened.sites.into_iter().next()?;
        let told = file.diary.entries().iter().filter_map(|entry| match entry.told {
            Told::Rain(depth) => Some(depth.get()),
            _ => None,
        });
        Some((file.site.name, file.rain.is_some(), told.collect()))
    }

    #[test]
    fn what_found_no_room_is_told_until_it_is_kept_once_there_is_some() {
        let shelf = shelf(400_000);
        let Ok((mut cupboard, _)) = Cupboard::open(&shelf) else { unreachable!("in memory") };
        let _ = shelf.put("filler", &"x".repeat(395_000));
        let mut keeping = Keeping::default();
        assert_eq!(keeping.keep(&rain(), &mut cupboard), FULL, "years of rain");
        assert_eq!(keeping.keep(&index(), &mut cupboard), FULL, "kept itself, but the rain still isn't");
        assert_eq!((keeping.is_done(), house(&shelf).map(|house| house.1)), (false, Some(false)));
        let _ = shelf.remove("filler");
        assert_eq!(keeping.keep(&index(), &mut cupboard), Ok(()));
        assert_eq!((keeping.is_done(), house(&shelf).map(|house| house.1)), (true, Some(true)));
    }

    #[test]
    fn an_earlier_word_on_a_record_never_undoes_a_later() {
        let shelf = shelf(600);
        let Ok((mut cupboard, _)) = Cupboard::open(&shelf) else { unreachable!("in memory") };
        let mut keeping = Keeping::default();
        let long = Effect::SaveSite(SITE, Arc::new(Site { name: "l".repeat(20_000), ..demo::site() }));
        assert_eq!(keeping.keep(&long, &mut cupboard), FULL);
        assert_eq!(keeping.waiting.len(), 1);
        let _ = keeping.keep(&named("Later"), &mut cupboard);
        assert_eq!(keeping.waiting, [named("Later")], "the long name waits no more");
    }

    #[test]
    fn entries_are_kept_in_the_order_in_which_they_were_written() {
        let shelf = shelf(3_000);
        let Ok((mut cupboard, _)) = Cupboard::open(&shelf) else { unreachable!("in memory") };
        let mut keeping = Keeping::default();
        let save = |entry, was| Effect::SaveLine(SITE, Line::Entry(entry), was);
        let first = save(entry(1, 1, 1.0, 10), None);
        assert_eq!(keeping.keep(&first, &mut cupboard), Ok(()));
        // It moves to the other half of the year with a note that finds no room, then back without it.
        let half = |month| Half::of(entry(1, month, 0.0, 0).date);
        let moved = save(entry(1, 8, 2.0, 20_000), Some(half(1)));
        let back = save(Entry { edited: 2, ..entry(1, 1, 3.0, 10) }, Some(half(8)));
        assert_eq!(keeping.keep(&moved, &mut cupboard), FULL);
        assert_eq!(keeping.keep(&back, &mut cupboard), FULL);
        assert_eq!(keeping.waiting, [moved, back]);
        assert_eq!(house(&shelf).map(|house| house.2), Some(vec![1.0]), "as it was");
        let gone = Effect::RemoveSite(SITE);
        assert_eq!(keeping.keep(&gone, &mut cupboard), Ok(()), "what waits for a site goes with it");
        assert!(keeping.is_done());
    }
}

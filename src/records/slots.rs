//! A record in two slots on a shelf: the newest generation and the one before. A write goes over the older slot, so
//! that one good generation is there whatever happens; a damaged slot is set aside, never written over unseen.

use super::envelope::{self, Opened};
use super::shelf::{Shelf, ShelfError};

/// The version of the shapes that this program writes.
pub const VERSION: u32 = 2;

const SLOTS: [&str; 2] = ["a", "b"];
const ASIDE: &str = "set-aside";

/// What was found of a record.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Found {
    /// The newest generation that is whole, if there is one.
    pub newest: Option<Opened>,
    /// Keys under which damaged texts have been set aside.
    pub set_aside: Vec<String>,
}

/// Why a record was not written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PutError {
    /// The shelf refused.
    Shelf(ShelfError),
    /// The record was written elsewhere (another window) since it was read.
    ChangedElsewhere,
    /// It was written by a newer program: it stays as it is.
    Newer,
}

impl From<ShelfError> for PutError {
    fn from(error: ShelfError) -> Self {
        PutError::Shelf(error)
    }
}

fn slot_key(key: &str, slot: &str) -> String {
    format!("{key}/{slot}")
}

/// Reads a record. Damaged slots are copied aside and emptied; if the shelf has no room for the copy they stay.
///
/// # Errors
/// Only the shelf's own.
pub fn get(shelf: &impl Shelf, key: &str) -> Result<Found, ShelfError> {
    let mut found = Found::default();
    for slot in SLOTS {
        let slot_key = slot_key(key, slot);
        let Some(text) = shelf.get(&slot_key)? else { continue };
        match envelope::open(&text) {
            Ok(opened) => {
                if found.newest.as_ref().is_none_or(|newest| newest.generation < opened.generation) {
                    found.newest = Some(opened);
                }
            }
            Err(envelope::Damaged) => found.set_aside.push(set_aside(shelf, key, &slot_key, &text)?),
        }
    }
    Ok(found)
}

/// Sets the newest generation aside because its content can't be read; the generation before takes its place.
///
/// # Errors
/// Only the shelf's own.
pub fn set_newest_aside(shelf: &impl Shelf, key: &str) -> Result<(), ShelfError> {
    let mut newest: Option<(u64, String, String)> = None;
    for slot in SLOTS {
        let slot_key = slot_key(key, slot);
        if let Some(text) = shelf.get(&slot_key)?
            && let Ok(opened) = envelope::open(&text)
            && newest.as_ref().is_none_or(|(generation, _, _)| *generation < opened.generation)
        {
            newest = Some((opened.generation, slot_key, text));
        }
    }
    if let Some((_, slot_key, text)) = newest {
        set_aside(shelf, key, &slot_key, &text)?;
    }
    Ok(())
}

fn set_aside(shelf: &impl Shelf, key: &str, slot_key: &str, text: &str) -> Result<String, ShelfError> {
    let taken = shelf.keys()?;
    let free = (1..).map(|number| format!("{ASIDE}/{number}/{key}")).find(|aside| !taken.contains(aside));
    let aside = free.unwrap_or_else(|| format!("{ASIDE}/{key}"));
    match shelf.put(&aside, text) {
        Ok(()) => {
            shelf.remove(slot_key)?;
            Ok(aside)
        }
        Err(ShelfError::Full) => Ok(slot_key.to_owned()),
        Err(denied) => Err(denied),
    }
}

/// Writes the next generation of a record whose newest was `known` when it was read (0 for a new one), over the older
/// slot. Returns the new generation.
///
/// # Errors
/// See [`PutError`]; the newest generation is untouched then.
pub fn put(shelf: &impl Shelf, key: &str, known: u64, content: &str) -> Result<u64, PutError> {
    let found = get(shelf, key)?;
    let newest = found.newest.as_ref().map_or(0, |newest| newest.generation);
    if found.newest.as_ref().is_some_and(|newest| newest.version > VERSION) {
        return Err(PutError::Newer);
    }
    if newest != known {
        return Err(PutError::ChangedElsewhere);
    }
    let next = newest + 1;
    // Generations alternate between the slots, so the next one always falls on the older.
    let slot = SLOTS[usize::from(next.is_multiple_of(2))];
    shelf.put(&slot_key(key, slot), &envelope::seal(VERSION, next, content))?;
    Ok(next)
}

/// Takes a record away, both generations.
///
/// # Errors
/// Only the shelf's own.
pub fn remove(shelf: &impl Shelf, key: &str) -> Result<(), ShelfError> {
    SLOTS.iter().try_for_each(|slot| shelf.remove(&slot_key(key, slot)))
}

/// Keys of the records under a prefix, each once, in order.
///
/// # Errors
/// Only the shelf's own.
pub fn keys(shelf: &impl Shelf, prefix: &str) -> Result<Vec<String>, ShelfError> {
    let mut keys: Vec<String> = Vec::new();
    for slot_key in shelf.keys()? {
        let Some((key, slot)) = slot_key.rsplit_once('/') else { continue };
        if SLOTS.contains(&slot)
            && key.starts_with(prefix)
            && let Err(place) = keys.binary_search_by(|other| other.as_str().cmp(key))
        {
            keys.insert(place, key.to_owned());
        }
    }
    Ok(keys)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::super::shelf::MemoryShelf;
    use super::*;

    fn newest(shelf: &MemoryShelf) -> Option<String> {
        get(shelf, "k").unwrap().newest.map(|opened| opened.content)
    }

    fn written(contents: &[&str]) -> MemoryShelf {
        let shelf = MemoryShelf::with_room(10_000);
        for (known, content) in (0..).zip(contents) {
            assert_eq!(put(&shelf, "k", known, content), Ok(known + 1));
        }
        shelf
    }

    #[test]
    fn the_newest_is_read_and_the_one_before_is_kept() {
        let shelf = written(&["one", "two", "three"]);
        assert_eq!(newest(&shelf), Some("three".to_owned()));
        let slots: Vec<u64> = ["k/a", "k/b"]
            .iter()
            .filter_map(|key| shelf.get(key).unwrap())
            .map(|text| envelope::open(&text).unwrap().generation)
            .collect();
        assert_eq!(slots, [3, 2]);
    }

    #[test]
    fn a_write_torn_anywhere_leaves_the_generation_before() {
        for cut in 0..envelope::seal(VERSION, 3, "three").len() {
            let shelf = written(&["one", "two"]);
            shelf.put("k/a", &envelope::seal(VERSION, 3, "three")[..cut]).unwrap();
            let found = get(&shelf, "k").unwrap();
            assert_eq!(found.newest.map(|opened| opened.content), Some("two".to_owned()));
            assert_eq!(found.set_aside, ["set-aside/1/k"]);
            assert_eq!(put(&shelf, "k", 2, "three again"), Ok(3));
            assert_eq!(newest(&shelf), Some("three again".to_owned()));
        }
    }

    #[test]
    fn a_full_shelf_leaves_the_newest_untouched() {
        let shelf = MemoryShelf::with_room(120);
        put(&shelf, "k", 0, "one").unwrap();
        assert_eq!(put(&shelf, "k", 1, &"x".repeat(200)), Err(PutError::Shelf(ShelfError::Full)));
        assert_eq!(newest(&shelf), Some("one".to_owned()));
    }

    #[test]
    fn a_second_window_does_not_write_over_the_firsts_change() {
        let shelf = written(&["one", "two"]);
        assert_eq!(put(&shelf, "k", 1, "from the other window"), Err(PutError::ChangedElsewhere));
        assert_eq!(newest(&shelf), Some("two".to_owned()));
    }

    #[test]
    fn what_a_newer_program_wrote_stays() {
        let shelf = MemoryShelf::with_room(1000);
        shelf.put("k/a", &envelope::seal(VERSION + 1, 1, "new shapes")).unwrap();
        assert_eq!(put(&shelf, "k", 1, "old shapes"), Err(PutError::Newer));
        assert_eq!(newest(&shelf), Some("new shapes".to_owned()));
    }
}

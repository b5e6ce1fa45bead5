//! Where texts are kept under keys: the browser's local storage, or a map in a test.

#[cfg(test)]
use std::cell::{Cell, RefCell};
#[cfg(test)]
use std::collections::BTreeMap;

/// Why a shelf did not do as asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShelfError {
    /// There is no shelf: storage is denied or absent.
    Denied,
    /// There is no room left.
    Full,
}

/// A shelf of texts. A put is complete or did not happen.
pub trait Shelf {
    /// The text under a key.
    ///
    /// # Errors
    /// [`ShelfError::Denied`].
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError>;

    /// Puts a text under a key.
    ///
    /// # Errors
    /// [`ShelfError::Denied`], [`ShelfError::Full`].
    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError>;

    /// Takes away what is under a key, if anything.
    ///
    /// # Errors
    /// [`ShelfError::Denied`].
    fn remove(&self, key: &str) -> Result<(), ShelfError>;

    /// All keys.
    ///
    /// # Errors
    /// [`ShelfError::Denied`].
    fn keys(&self) -> Result<Vec<String>, ShelfError>;
}

/// A shelf in memory, with so much room for keys and texts together.
#[cfg(test)]
pub struct MemoryShelf {
    texts: RefCell<BTreeMap<String, String>>,
    room: usize,
}

#[cfg(test)]
impl MemoryShelf {
    /// An empty shelf with room for so many bytes.
    pub fn with_room(room: usize) -> Self {
        Self { texts: RefCell::default(), room }
    }
}

#[cfg(test)]
impl Shelf for MemoryShelf {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError> {
        Ok(self.texts.borrow().get(key).cloned())
    }

    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError> {
        let mut texts = self.texts.borrow_mut();
        let others: usize =
            texts.iter().filter(|(other, _)| *other != key).map(|(key, text)| key.len() + text.len()).sum();
        if others + key.len() + text.len() > self.room {
            return Err(ShelfError::Full);
        }
        texts.insert(key.to_owned(), text.to_owned());
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), ShelfError> {
        self.texts.borrow_mut().remove(key);
        Ok(())
    }

    fn keys(&self) -> Result<Vec<String>, ShelfError> {
        Ok(self.texts.borrow().keys().cloned().collect())
    }
}

#[cfg(test)]
impl Shelf for &MemoryShelf {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError> {
        (*self).get(key)
    }

    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError> {
        (*self).put(key, text)
    }

    fn remove(&self, key: &str) -> Result<(), ShelfError> {
        (*self).remove(key)
    }

    fn keys(&self) -> Result<Vec<String>, ShelfError> {
        (*self).keys()
    }
}

/// A shelf that stops working after so many writes, as if the page were killed.
#[cfg(test)]
pub struct Stops<'a> {
    shelf: &'a MemoryShelf,
    left: Cell<usize>,
}

#[cfg(test)]
impl<'a> Stops<'a> {
    /// Stops after so many writes.
    pub fn after(shelf: &'a MemoryShelf, writes: usize) -> Self {
        Self { shelf, left: Cell::new(writes) }
    }

    fn spend(&self) -> Result<(), ShelfError> {
        self.left.set(self.left.get().checked_sub(1).ok_or(ShelfError::Denied)?);
        Ok(())
    }
}

#[cfg(test)]
impl Shelf for Stops<'_> {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError> {
        self.shelf.get(key)
    }

    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError> {
        self.spend()?;
        self.shelf.put(key, text)
    }

    fn remove(&self, key: &str) -> Result<(), ShelfError> {
        self.spend()?;
        self.shelf.remove(key)
    }

    fn keys(&self) -> Result<Vec<String>, ShelfError> {
        self.shelf.keys()
    }
}

//! The browser's local storage as a shelf.

use gloo_storage::{LocalStorage, Storage};

use crate::records::shelf::{Shelf, ShelfError};

/// Local storage of this page's origin.
pub struct BrowserShelf {
    storage: web_sys::Storage,
}

impl BrowserShelf {
    /// The shelf, unless the browser denies it.
    ///
    /// # Errors
    /// [`ShelfError::Denied`].
    pub fn open() -> Result<Self, ShelfError> {
        // `LocalStorage::raw` throws where storage is denied, so the window is asked first.
        let allowed = web_sys::window().is_some_and(|window| matches!(window.local_storage(), Ok(Some(_))));
        if allowed { Ok(Self { storage: LocalStorage::raw() }) } else { Err(ShelfError::Denied) }
    }
}

impl Shelf for BrowserShelf {
    fn get(&self, key: &str) -> Result<Option<String>, ShelfError> {
        self.storage.get_item(key).map_err(|_| ShelfError::Denied)
    }

    fn put(&self, key: &str, text: &str) -> Result<(), ShelfError> {
        // A refused write throws a QuotaExceededError; nothing is written then.
        self.storage.set_item(key, text).map_err(|_| ShelfError::Full)
    }

    fn remove(&self, key: &str) -> Result<(), ShelfError> {
        self.storage.remove_item(key).map_err(|_| ShelfError::Denied)
    }

    fn keys(&self) -> Result<Vec<String>, ShelfError> {
        let length = self.storage.length().map_err(|_| ShelfError::Denied)?;
        (0..length)
            .map(|at| self.storage.key(at).map_err(|_| ShelfError::Denied))
            .filter_map(Result::transpose)
            .collect()
    }
}

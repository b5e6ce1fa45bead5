//! Values that follow signals. Leptos brings its machinery for every type and every closure that it is given; here it is
//! given one of each, and a phone loads it once.

use std::sync::{Arc, Mutex, PoisonError};

use leptos::prelude::*;

use crate::app::model::Model;

/// A signal that holds the model, read by one function for whoever asks.
#[derive(Clone, Copy)]
pub(crate) struct ModelSignal(pub RwSignal<Model>);

impl ModelSignal {
    /// Looks at the model, and again when it has changed.
    pub fn with<R>(self, look: impl FnOnce(&Model) -> R) -> R {
        look(&self.tracked())
    }

    /// Looks at the model once.
    pub fn with_untracked<R>(self, look: impl FnOnce(&Model) -> R) -> R {
        look(&self.untracked())
    }

    #[inline(never)]
    fn tracked(self) -> <RwSignal<Model> as Read>::Value {
        self.0.read()
    }

    #[inline(never)]
    fn untracked(self) -> <RwSignal<Model> as ReadUntracked>::Value {
        self.0.read_untracked()
    }
}

/// A value made from signals, made again when one of them has changed; what reads it hears of it only if it differs.
pub(crate) struct Derived<T: 'static> {
    /// Counts the changes.
    changes: Memo<u32>,
    cell: StoredValue<Arc<Cell<T>>>,
}

type Make<T> = Box<dyn Fn(Option<&T>) -> T + Send + Sync>;

struct Cell<T> {
    held: Mutex<Option<Arc<T>>>,
    make: Make<T>,
    same: fn(&T, &T) -> bool,
}

impl<T> Copy for Derived<T> {}
impl<T> Clone for Derived<T> {
    fn clone(&self) -> Self {
        *self
    }
}

/// A value made from signals.
pub(crate) fn derived<T: PartialEq + Send + Sync>(make: impl Fn() -> T + Send + Sync + 'static) -> Derived<T> {
    derived_from(move |_| make())
}

/// The same, made with a look at what it was before.
pub(crate) fn derived_from<T: PartialEq + Send + Sync>(
    make: impl Fn(Option<&T>) -> T + Send + Sync + 'static,
) -> Derived<T> {
    follow(Box::new(make), T::eq)
}

/// The same, heard of whenever it is made again, for what is dearer to compare than to draw.
pub(crate) fn renewed<T: Send + Sync>(make: impl Fn() -> T + Send + Sync + 'static) -> Derived<T> {
    follow(Box::new(move |_| make()), |_, _| false)
}

fn follow<T: Send + Sync>(make: Make<T>, same: fn(&T, &T) -> bool) -> Derived<T> {
    let cell = Arc::new(Cell { held: Mutex::new(None), make, same });
    let inside = Arc::clone(&cell);
    Derived { changes: counted(Box::new(move || inside.renew())), cell: StoredValue::new(cell) }
}

#[inline(never)]
fn counted(changed: Box<dyn Fn() -> bool + Send + Sync>) -> Memo<u32> {
    Memo::new(move |before: Option<&u32>| before.copied().unwrap_or(0).wrapping_add(u32::from(changed())))
}

impl<T> Cell<T> {
    fn now(&self) -> Option<Arc<T>> {
        self.held.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// Makes the value again; whether it differs.
    fn renew(&self) -> bool {
        let before = self.now();
        let made = (self.make)(before.as_deref());
        let changed = !before.is_some_and(|before| (self.same)(&before, &made));
        if changed {
            *self.held.lock().unwrap_or_else(PoisonError::into_inner) = Some(Arc::new(made));
        }
        changed
    }
}

impl<T: Send + Sync> Derived<T> {
    /// Looks at the value, and again when it has changed.
    pub fn with<R>(self, look: impl FnOnce(&T) -> R) -> R {
        self.changes.get();
        look(&self.value())
    }

    /// Hears of its changes.
    pub fn track(self) {
        self.changes.track();
    }

    /// Looks at the value once.
    pub fn with_untracked<R>(self, look: impl FnOnce(&T) -> R) -> R {
        self.changes.get_untracked();
        look(&self.value())
    }

    fn value(self) -> Arc<T> {
        let cell = self.cell.get_value();
        cell.now().unwrap_or_else(|| Arc::new((cell.make)(None)))
    }
}

impl<T: Clone + Send + Sync> Derived<T> {
    /// The value, and again when it has changed.
    pub fn get(self) -> T {
        self.with(T::clone)
    }

    /// The value once.
    pub fn get_untracked(self) -> T {
        self.with_untracked(T::clone)
    }
}

/// Counts the changes of what `follows` hears of, in a task of its own: the page shows what is quick before it draws what
/// is long. Changes meanwhile are counted as one.
pub(crate) fn afterwards(follows: impl Fn() + 'static) -> RwSignal<usize> {
    let (count, waiting) = (RwSignal::new(0), StoredValue::new(false));
    Effect::new(move |before: Option<()>| {
        follows();
        if before.is_some() && !waiting.get_value() {
            waiting.set_value(true);
            let tell = move || {
                // The page may have gone on to another place meanwhile.
                let _gone = waiting.try_set_value(false);
                let _gone = count.try_update(|count| *count += 1);
            };
            set_timeout(tell, std::time::Duration::ZERO);
        }
    });
    count
}

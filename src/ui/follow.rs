//! Values that are set, and values that follow them. Leptos brings its machinery for every type and every closure that it
//! is given; here it is given one of each, and a phone loads it once.

use std::any::Any;
use std::marker::PhantomData;
use std::sync::{Arc, Mutex, PoisonError};

use leptos::prelude::*;

/// A value that is set, and followed by what reads it.
pub(crate) struct Held<T: 'static> {
    changes: RwSignal<bool>,
    value: StoredValue<T>,
}

impl<T> Copy for Held<T> {}
impl<T> Clone for Held<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: Send + Sync> Held<T> {
    /// Holds a value.
    pub fn new(value: T) -> Self {
        Self { changes: RwSignal::new(false), value: StoredValue::new(value) }
    }

    /// Looks at the value, and again when it was set.
    pub fn with<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(&self.tracked())
    }

    /// Looks at the value once.
    pub fn with_untracked<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(&self.untracked())
    }

    #[inline(never)]
    fn tracked(self) -> <StoredValue<T> as ReadValue>::Value {
        self.changes.track();
        self.untracked()
    }

    #[inline(never)]
    fn untracked(self) -> <StoredValue<T> as ReadValue>::Value {
        self.value.read_value()
    }

    /// Whether the page that it belongs to is still there: what is taken off it while it has the focus is told of that last.
    pub fn is_there(self) -> bool {
        self.value.try_update_value(|_| ()).is_some()
    }

    /// Changes the value, if the page that it belongs to is still there; what came of that.
    pub fn change<R>(self, change: impl FnOnce(&mut T) -> R) -> Option<R> {
        let came = self.value.try_update_value(change);
        self.changes.notify();
        came
    }

    /// The same where nothing comes of it.
    pub fn update(self, change: impl FnOnce(&mut T)) {
        let _gone = self.change(change);
    }

    /// Sets the value.
    pub fn set(self, value: T) {
        self.update(|held| *held = value);
    }
}

impl<T: Clone + Send + Sync> Held<T> {
    /// The value, and again when it was set.
    pub fn get(self) -> T {
        self.with(T::clone)
    }

    /// The value once.
    pub fn get_untracked(self) -> T {
        self.with_untracked(T::clone)
    }
}

/// A value made from signals, made again when one of them has changed; what reads it hears of it only if it differs.
pub(crate) struct Derived<T: 'static> {
    /// Counts the changes.
    changes: Memo<u32>,
    cell: StoredValue<Arc<Cell>>,
    of: PhantomData<fn() -> T>,
}

/// A value of whatever type: so that keeping it is in the program once.
type Kept = Arc<dyn Any + Send + Sync>;
type Make = Box<dyn Fn(Option<&Kept>) -> Kept + Send + Sync>;
type Same = fn(&Kept, &Kept) -> bool;

struct Cell {
    held: Mutex<Option<Kept>>,
    make: Make,
    same: Same,
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
    Derived::follow(make, |one, other| T::eq(seen(one), seen(other)))
}

/// The same, heard of whenever it is made again, for what is dearer to compare than to draw.
pub(crate) fn renewed<T: Send + Sync>(make: impl Fn() -> T + Send + Sync + 'static) -> Derived<T> {
    Derived::follow(move |_| make(), |_, _| false)
}

/// The value of a cell that `Derived::<T>::follow` made.
fn seen<T>(kept: &Kept) -> &T {
    // SAFETY: a cell's values and what looks at them come from one call of `Derived::<T>::follow`, with one `T`.
    unsafe { &*Arc::as_ptr(kept).cast::<T>() }
}

#[inline(never)]
fn follow(make: Make, same: Same) -> (Memo<u32>, StoredValue<Arc<Cell>>) {
    let cell = Arc::new(Cell { held: Mutex::new(None), make, same });
    let inside = Arc::clone(&cell);
    let count = move |before: Option<&u32>| before.copied().unwrap_or(0).wrapping_add(u32::from(inside.renew()));
    (Memo::new(count), StoredValue::new(cell))
}

#[inline(never)]
fn untracked(changes: Memo<u32>, cell: StoredValue<Arc<Cell>>) -> Kept {
    changes.get_untracked();
    let cell = cell.get_value();
    cell.now().unwrap_or_else(|| (cell.make)(None))
}

#[inline(never)]
fn tracked(changes: Memo<u32>, cell: StoredValue<Arc<Cell>>) -> Kept {
    changes.track();
    untracked(changes, cell)
}

impl Cell {
    fn now(&self) -> Option<Kept> {
        self.held.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// Makes the value again; whether it differs.
    fn renew(&self) -> bool {
        let before = self.now();
        let made = (self.make)(before.as_ref());
        let changed = !before.is_some_and(|before| (self.same)(&before, &made));
        if changed {
            *self.held.lock().unwrap_or_else(PoisonError::into_inner) = Some(made);
        }
        changed
    }
}

impl<T: Send + Sync> Derived<T> {
    fn follow(make: impl Fn(Option<&T>) -> T + Send + Sync + 'static, same: Same) -> Self {
        let (changes, cell) = follow(Box::new(move |before| Arc::new(make(before.map(seen)))), same);
        Self { changes, cell, of: PhantomData }
    }

    /// Looks at the value, and again when it has changed.
    pub fn with<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(seen(&tracked(self.changes, self.cell)))
    }

    /// Hears of its changes.
    pub fn track(self) {
        self.changes.track();
    }

    /// Looks at the value once.
    pub fn with_untracked<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(seen(&untracked(self.changes, self.cell)))
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

/// Does something now (then it is told that it is the first time), and again whenever what it looked at has changed.
pub(crate) fn whenever(does: impl Fn(bool) + 'static) {
    effect(Box::new(does));
}

#[inline(never)]
fn effect(does: Box<dyn Fn(bool)>) {
    Effect::new(move |before: Option<()>| does(before.is_none()));
}

/// Counts the changes of what `follows` hears of, in a task of its own: the page shows what is quick before it draws what
/// is long. Changes meanwhile are counted as one.
pub(crate) fn afterwards(follows: impl Fn() + 'static) -> Held<usize> {
    let (count, waiting) = (Held::new(0), StoredValue::new(false));
    whenever(move |first| {
        follows();
        if !first && !waiting.get_value() {
            waiting.set_value(true);
            let tell = move || {
                // The page may have gone on to another place meanwhile.
                let _gone = waiting.try_set_value(false);
                count.update(|count| *count += 1);
            };
            set_timeout(tell, std::time::Duration::ZERO);
        }
    });
    count
}

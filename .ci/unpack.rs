//! The program that unpacks the program, on the phone. No more of the standard library is in it than it needs.
#![no_std]

extern crate alloc;

#[allow(dead_code)]
#[path = "../src/packing/mod.rs"]
mod packing;

use alloc::vec::Vec;
use core::alloc::{GlobalAlloc, Layout};
use core::arch::wasm32;
use core::cell::UnsafeCell;
use core::panic::PanicInfo;

#[panic_handler]
fn stop(_: &PanicInfo) -> ! {
    wasm32::unreachable()
}

/// Hands out memory and takes none back: the program runs once.
struct Once(UnsafeCell<usize>);

// One program of this kind has one thread.
unsafe impl Sync for Once {}

#[global_allocator]
static MEMORY: Once = Once(UnsafeCell::new(0));

const PAGE: usize = 65_536;

unsafe impl GlobalAlloc for Once {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        let next = unsafe { &mut *self.0.get() };
        let has = wasm32::memory_size(0) * PAGE;
        // What the program began with isn't handed out.
        let start = (*next).max(if *next == 0 { has } else { 0 }).next_multiple_of(layout.align());
        let end = start + layout.size();
        if end > has && wasm32::memory_grow(0, (end - has).div_ceil(PAGE)) == usize::MAX {
            return core::ptr::null_mut();
        }
        *next = end;
        start as *mut u8
    }

    unsafe fn alloc_zeroed(&self, layout: Layout) -> *mut u8 {
        // Memory is new, so it holds noughts.
        unsafe { self.alloc(layout) }
    }

    unsafe fn dealloc(&self, _: *mut u8, _: Layout) {}
}

/// What is under way, and the program once it is whole.
struct Work(UnsafeCell<(Option<packing::Unpacking>, Vec<u8>)>);

unsafe impl Sync for Work {}

static WORK: Work = Work(UnsafeCell::new((None, Vec::new())));

/// Room for what may come in all; more costs memory only.
const ROOM: usize = 1 << 19;

fn under_way() -> &'static mut packing::Unpacking {
    let (work, _) = unsafe { &mut *WORK.0.get() };
    work.get_or_insert_with(|| {
        let mut work = packing::Unpacking::default();
        work.arrived().reserve(ROOM);
        work
    })
}

/// Where the next so many bytes that arrive are to be put.
#[unsafe(no_mangle)]
extern "C" fn room(bytes: usize) -> *mut u8 {
    let arrived = under_way().arrived();
    let at = arrived.len();
    arrived.resize(at + bytes, 0);
    arrived[at..].as_mut_ptr()
}

/// Unpacks as far as what has arrived leads. False if it isn't what was packed.
#[unsafe(no_mangle)]
extern "C" fn go_on() -> bool {
    under_way().go_on(false).is_ok()
}

/// Unpacks the rest. Gives the program's length, 0 if it isn't what was packed.
#[unsafe(no_mangle)]
extern "C" fn finish() -> usize {
    let whole = under_way().go_on(true).is_ok();
    let (work, program) = unsafe { &mut *WORK.0.get() };
    if let Some(Ok(made)) = work.take().filter(|_| whole).map(packing::Unpacking::finish) {
        *program = made;
    }
    program.len()
}

/// Where the program is.
#[unsafe(no_mangle)]
extern "C" fn program() -> *const u8 {
    unsafe { (*WORK.0.get()).1.as_ptr() }
}

//! Packs a program: `pack PROGRAM PACKED`.

extern crate alloc;

#[allow(dead_code)]
#[path = "../src/packing/mod.rs"]
mod packing;

use std::{env, fs, process};

fn main() {
    let names: Vec<String> = env::args().skip(1).collect();
    let [program, packed] = names.as_slice() else {
        eprintln!("which files? pack PROGRAM PACKED");
        process::exit(2);
    };
    let done = fs::read(program)
        .map_err(|error| format!("{program}: {error}"))
        .and_then(|bytes| packing::pack(&bytes).map_err(|odd| format!("{program}, byte {}: {}", odd.at, odd.what)))
        .and_then(|bytes| fs::write(packed, bytes).map_err(|error| format!("{packed}: {error}")));
    if let Err(why) = done {
        eprintln!("{why}");
        process::exit(1);
    }
}

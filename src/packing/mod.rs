//! The program on its way to the phone: packed when it is built, unpacked where it arrives.
//!
//! A program of this kind is some two thirds as heavy as the packers of hosts make it, if what packs knows what each byte is.
//! Every decision of every byte is foretold from what stood in like surroundings before (`surroundings`, `memory`, `repeats`),
//! by many predictions that are mixed into one (`mixing`), and costs the less the better it was foretold (`coder`).
//! Who unpacks foretells the same, and so must come to the same bits: no arithmetic here depends on the machine.
//!
//! The rest of the app uses none of this: `.ci/pack.rs` packs, `.ci/unpack.rs` becomes a program of its own that unpacks.

use alloc::vec::Vec;

mod coder;
mod curve;
mod instructions;
mod memory;
mod mixing;
mod model;
mod program;
mod repeats;
mod surroundings;
#[cfg(test)]
mod tests;
mod trees;

use coder::{Reader, Writer};
use model::Model;
pub use program::Odd;
use program::{Bytes, Walk};
use surroundings::{PLACES, Surroundings};
use trees::Counts;

/// Ahead of what is packed: the program's length, its `sum`, and the most bytes that one step reads, each in four bytes with
/// the lowest in front.
const HEAD: usize = 12;

/// What has arrived is too little, or something else.
const SUFFERED: Odd = Odd { at: 0, what: "what arrived isn't what was packed" };

impl Bytes for Counts {
    fn byte(&mut self, around: &mut Surroundings, known: u8) -> Option<u8> {
        self.add(around.place(), known);
        around.see(known);
        Some(known)
    }
}

/// By which a program is known again: the 32-bit hash of Fowler, Noll and Vo (FNV-1a, draft-eastlake-fnv).
fn sum(program: &[u8]) -> u32 {
    program.iter().fold(0x811c_9dc5, |sum, &byte| (sum ^ u32::from(byte)).wrapping_mul(0x0100_0193))
}

/// Packs a program.
///
/// # Errors
/// What is odd about it, if it isn't a WebAssembly program as the build makes them.
pub fn pack(program: &[u8]) -> Result<Vec<u8>, Odd> {
    let mut counting = Walk::new(Counts::new(PLACES), program, program.len());
    while !counting.is_done() {
        counting.step()?;
    }
    let (_, counts) = counting.finish();
    let mut writer = Writer::new();
    let trees = trees::sent(&mut writer, PLACES, Some(&counts.trees()));
    let mut ahead = writer.length();
    let mut walk = Walk::new(Model::new(writer, trees), program, program.len());
    while !walk.is_done() {
        let before = walk.bytes.coder().length();
        walk.step()?;
        ahead = ahead.max(walk.bytes.coder().length() - before);
    }
    let (_, mut model) = walk.finish();
    let head = [program.len() as u32, sum(program), ahead as u32 + Reader::AHEAD];
    let mut packed: Vec<u8> = head.iter().flat_map(|number| number.to_le_bytes()).collect();
    model.coder().finish(&mut packed);
    Ok(packed)
}

/// Unpacks what [`pack`] packed, while it arrives.
#[derive(Default)]
pub struct Unpacking {
    arrived: Vec<u8>,
    walk: Option<Walk<'static, Model<Reader>>>,
    sum: u32,
    ahead: usize,
}

impl Unpacking {
    /// Where more is put as it arrives.
    pub fn arrived(&mut self) -> &mut Vec<u8> {
        match &mut self.walk {
            Some(walk) => walk.bytes.coder().packed(),
            None => &mut self.arrived,
        }
    }

    /// Goes as far as what has arrived leads, to the end if that is `all`.
    ///
    /// # Errors
    /// What is odd about it, if it was never packed, or has suffered on the way.
    pub fn go_on(&mut self, all: bool) -> Result<(), Odd> {
        let mut walk = match self.walk.take() {
            Some(walk) => walk,
            None => {
                let Some((head, _)) = self.arrived.split_first_chunk::<HEAD>() else {
                    return if all { Err(SUFFERED) } else { Ok(()) };
                };
                let number = |at: usize| u32::from_le_bytes([head[at], head[at + 1], head[at + 2], head[at + 3]]);
                let (length, sum, ahead) = (number(0) as usize, number(4), number(8) as usize);
                if self.arrived.len() < HEAD + ahead && !all {
                    return Ok(());
                }
                let mut reader = Reader::new(core::mem::take(&mut self.arrived), HEAD);
                let trees = trees::sent(&mut reader, PLACES, None);
                (self.sum, self.ahead) = (sum, ahead);
                Walk::new(Model::new(reader, trees), &[], length)
            }
        };
        while !walk.is_done() && (all || walk.bytes.coder().left() >= self.ahead) {
            if walk.bytes.coder().is_past_end() {
                return Err(SUFFERED);
            }
            walk.step()?;
        }
        self.walk = Some(walk);
        Ok(())
    }

    /// The program.
    ///
    /// # Errors
    /// If it isn't the one that was packed.
    pub fn finish(self) -> Result<Vec<u8>, Odd> {
        let Some(walk) = self.walk.filter(Walk::is_done) else { return Err(SUFFERED) };
        let (program, _) = walk.finish();
        if sum(&program) == self.sum { Ok(program) } else { Err(SUFFERED) }
    }
}

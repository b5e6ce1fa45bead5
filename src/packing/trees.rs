//! Prefix codes: what is frequent in a place takes few decisions (Huffman, “A method for the construction of minimum-redundancy
//! codes”, Proceedings of the IRE 40, 1952; from memory). One tree for each kind of place, sent ahead of the rest.

use alloc::vec;
use alloc::vec::Vec;
use core::cmp::Reverse;

use super::coder::Coder;

/// In place of how many decisions a byte takes: it never stands there.
const NEVER: u8 = 255;
/// No byte takes more decisions: rarer ones would have to be one of Fibonacci's numbers of bytes.
pub const DEEPEST: u8 = 30;

/// How often each byte stands in each place.
pub struct Counts(Vec<[u32; 256]>);

impl Counts {
    /// Nothing counted, of so many places.
    pub fn new(places: usize) -> Self {
        Self(vec![[0; 256]; places])
    }

    /// One more.
    pub fn add(&mut self, place: usize, byte: u8) {
        self.0[place][usize::from(byte)] += 1;
    }

    /// The best tree of each place.
    pub fn trees(&self) -> Vec<Tree> {
        self.0.iter().map(|counts| Tree::of(&lengths(counts))).collect()
    }
}

/// How many decisions each byte takes, by Huffman's method, `NEVER` for one that never stands there.
fn lengths(counts: &[u32; 256]) -> [u8; 256] {
    let mut lengths = [NEVER; 256];
    let mut heaps: Vec<(u32, Vec<u8>)> = (0..=255)
        .filter(|&byte| counts[usize::from(byte)] > 0)
        .map(|byte| (counts[usize::from(byte)], vec![byte]))
        .collect();
    for (_, bytes) in &heaps {
        lengths[usize::from(bytes[0])] = 0;
    }
    while heaps.len() > 1 {
        heaps.sort_by_key(|heap| Reverse(heap.0));
        let (Some(least), Some(next)) = (heaps.pop(), heaps.pop()) else { break };
        let both = [least.1, next.1].concat();
        for &byte in &both {
            lengths[usize::from(byte)] += 1;
        }
        heaps.push((least.0 + next.0, both));
    }
    lengths
}

/// The codes of one length: the first, how many there are, and how many are shorter.
struct Level {
    first: u32,
    many: u32,
    before: u32,
}

/// A prefix code: shorter ones first, then by byte.
pub struct Tree {
    lengths: [u8; 256],
    codes: [u32; 256],
    levels: Vec<Level>,
    /// Bytes in the order of their codes.
    bytes: Vec<u8>,
}

impl Tree {
    fn of(lengths: &[u8; 256]) -> Self {
        let mut bytes = Vec::with_capacity(256);
        let mut codes = [0; 256];
        let mut levels = Vec::with_capacity(usize::from(DEEPEST) + 1);
        let mut next = 0;
        for level in 0..=DEEPEST {
            let (first, before) = (next, bytes.len() as u32);
            for byte in 0..=255u8 {
                if lengths[usize::from(byte)] == level {
                    codes[usize::from(byte)] = next;
                    next += 1;
                    bytes.push(byte);
                }
            }
            levels.push(Level { first, many: next - first, before });
            next <<= 1;
        }
        Self { lengths: *lengths, codes, levels, bytes }
    }

    /// The decisions that lead to a byte: how many, and which, the first in front. None if it never stands there.
    pub fn way(&self, byte: u8) -> Option<(u32, u32)> {
        let length = self.lengths[usize::from(byte)];
        (length < NEVER).then(|| (u32::from(length), self.codes[usize::from(byte)]))
    }

    /// The byte that so many decisions have led to, if any.
    pub fn byte(&self, decided: u32, code: u32) -> Option<u8> {
        let level = self.levels.get(decided as usize)?;
        let at = code.checked_sub(level.first).filter(|&at| at < level.many)?;
        self.bytes.get((level.before + at) as usize).copied()
    }
}

/// A probability that follows what comes.
struct Lean(u32);

impl Lean {
    fn decide(&mut self, coder: &mut impl Coder, known: bool) -> bool {
        let one = coder.decide(self.0.clamp(64, 65_472), known);
        if one {
            self.0 += (65_535 - self.0) >> 4;
        } else {
            self.0 -= self.0 >> 4;
        }
        one
    }
}

fn leans(many: usize) -> Vec<Lean> {
    (0..many).map(|_| Lean(32_768)).collect()
}

/// Sends trees or has them sent: `known` is what a writer sends.
pub fn sent(coder: &mut impl Coder, places: usize, known: Option<&[Tree]>) -> Vec<Tree> {
    const DEPTH: usize = 5;
    let mut used = leans(4);
    let mut there = leans(8);
    let mut deep = leans(32 << DEPTH);
    let mut before = [NEVER; 256];
    let mut trees = Vec::new();
    for place in 0..places {
        let of = known.and_then(|trees| trees.get(place)).map_or([NEVER; 256], |tree| tree.lengths);
        let mut lengths = [NEVER; 256];
        if used[place % 4].decide(coder, of != lengths) {
            let (mut last, mut run) = (0, 0);
            for byte in 0..256 {
                let like = usize::from(before[byte] < NEVER);
                let present = there[run * 2 + like].decide(coder, of[byte] < NEVER);
                run = (run << 1 | usize::from(present)) & 3;
                if present {
                    let mut node = 1;
                    for bit in (0..DEPTH).rev() {
                        node = node << 1
                            | usize::from(deep[(last << DEPTH) + node].decide(coder, of[byte] >> bit & 1 == 1));
                    }
                    last = node - (1 << DEPTH);
                    lengths[byte] = last as u8;
                }
            }
            before = lengths;
        }
        trees.push(Tree::of(&lengths));
    }
    trees
}

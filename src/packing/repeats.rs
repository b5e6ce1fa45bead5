//! Places where what came last has stood before: the byte that followed there is likely to follow again.

use alloc::vec;
use alloc::vec::Vec;

use super::curve::Curve;
use super::memory::follow;
use super::trees::Tree;

/// How many are followed at once, and how many bytes each must have in common at least.
pub const REPEATS: usize = 2;
const LEAST: [usize; REPEATS] = [12, 5];
/// Longer ones count as so long.
const LONG: usize = 63;
/// Places that are kept, as a power of two.
const BITS: u32 = 18;
/// How fast the trust in a length follows, in 65,536ths, and where it begins.
const FOLLOWS: i32 = 655;
const AT_FIRST: u16 = 52_000;

/// The decisions that lead to the byte that followed, while they hold.
pub type Expected = [Option<(u32, u32)>; REPEATS];

#[derive(Clone, Copy, Default)]
struct Repeat {
    at: usize,
    length: usize,
}

/// The repetitions under way, and where to look for others.
pub struct Repeats {
    now: [Repeat; REPEATS],
    found: [Vec<u32>; REPEATS],
    /// How often what was expected came, by length, in 65,536ths.
    trust: [[u16; LONG + 1]; REPEATS],
}

impl Repeats {
    /// Nothing seen.
    pub fn new() -> Self {
        Self {
            now: [Repeat::default(); REPEATS],
            found: [vec![0; 1 << BITS], vec![0; 1 << BITS]],
            trust: [[AT_FIRST; LONG + 1]; REPEATS],
        }
    }

    /// What is expected of the next byte.
    pub fn expected(&self, seen: &[u8], tree: &Tree) -> Expected {
        self.now.map(|repeat| if repeat.length > 0 { tree.way(*seen.get(repeat.at)?) } else { None })
    }

    /// The bit that is expected of a decision, and the length it goes by.
    fn bit(&self, expected: &Expected, one: usize, depth: u32) -> Option<(bool, usize)> {
        let (length, way) = expected[one].filter(|(length, _)| *length > depth)?;
        Some((way >> (length - 1 - depth) & 1 == 1, self.now[one].length.min(LONG)))
    }

    /// One input from each.
    pub fn recall(&self, expected: &Expected, depth: u32, curve: &Curve, inputs: &mut [f32]) {
        for (one, input) in inputs.iter_mut().enumerate().take(REPEATS) {
            if let Some((bit, length)) = self.bit(expected, one, depth) {
                let odds = curve.odds(u32::from(self.trust[one][length]) >> 4);
                *input = if bit { odds } else { -odds };
            }
        }
    }

    /// Keeps how a decision came out.
    pub fn learn(&mut self, expected: &mut Expected, depth: u32, came: bool) {
        for one in 0..REPEATS {
            if let Some((bit, length)) = self.bit(expected, one, depth) {
                follow(&mut self.trust[one][length], bit == came, FOLLOWS);
                if bit != came {
                    expected[one] = None;
                }
            }
        }
    }

    /// Goes on behind the byte that has just been seen.
    pub fn go_on(&mut self, seen: &[u8]) {
        for repeat in &mut self.now {
            if repeat.length > 0 {
                let again = seen.get(repeat.at) == seen.last();
                *repeat =
                    if again { Repeat { at: repeat.at + 1, length: repeat.length + 1 } } else { Repeat::default() };
            }
        }
        for (one, least) in LEAST.into_iter().enumerate() {
            let Some(tail) = seen.len().checked_sub(least).map(|from| &seen[from..]) else { continue };
            let hash = tail
                .iter()
                .fold(0u64, |hash, &byte| hash.wrapping_add(u64::from(byte) + 1).wrapping_mul(0x9E37_79B9_7F4A_7C15));
            let found = &mut self.found[one][(hash >> (64 - BITS)) as usize];
            if self.now[one].length == 0 && *found > 0 {
                let at = *found as usize;
                let before = seen[..at].iter().rev().zip(seen.iter().rev()).take(LONG);
                let length = before.take_while(|(one, other)| one == other).count();
                if length >= least {
                    self.now[one] = Repeat { at, length };
                }
            }
            *found = seen.len() as u32;
        }
    }
}

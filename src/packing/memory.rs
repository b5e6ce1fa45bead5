//! What came before in like surroundings: for each way of seeing them a table of slots, each with how often a decision came out
//! as one and what came last.

use alloc::vec;
use alloc::vec::Vec;

use super::curve::Curve;
use super::surroundings::{KINDS, N, spread};

/// A way's table has so many slots, as a power of two. One more makes the packed program half a hundredth lighter.
const BITS: u32 = 20;
/// Slots that lie side by side, as a power of two: those of four decisions of one byte.
const LINE_BITS: u32 = 4;
const LINE: usize = 1 << LINE_BITS;
/// Decisions that share a line.
const TOGETHER: u32 = 4;
/// A chance follows what comes as if it had been met at most so many times.
const STEADY: u32 = 15;
/// How fast what a history says follows, in 65,536ths.
const FOLLOWS: i32 = 1311;

/// Where a byte's next four decisions are looked up: lines, and keys of which the low eight bits tell who owns a slot and the
/// next four which slot of the line is whose.
pub struct Lines {
    at: [usize; N],
    keys: [u32; N],
}

impl Lines {
    /// Of no decision yet.
    pub fn none() -> Self {
        Self { at: [0; N], keys: [0; N] }
    }
}

/// What was found for one decision.
pub struct Recalled {
    /// Slots as they were found, or new ones.
    slots: [u32; N],
    histories: [usize; N],
    local: usize,
}

/// A slot: the chance of a one (12 bits), how often it was met (4), what came (8: a one in front, then the newest last), whose
/// it is (8).
const NEW: u32 = 0x8000_0100;

/// All tables.
pub struct Memory {
    slots: Vec<[u32; LINE]>,
    /// What came after each history, for each way and kind, in 65,536ths.
    histories: Vec<u16>,
    /// How far a chance follows when it was met so many times, in 65,536ths.
    rates: [i32; LINE],
}

impl Memory {
    /// Nothing met yet.
    pub fn new() -> Self {
        let at_first: Vec<u16> = (0..256).map(before_any).collect();
        let mut rates = [0; LINE];
        for (met, rate) in rates.iter_mut().enumerate() {
            *rate = (65_536.0 / (met as f64 + 1.5)) as i32;
        }
        Self { slots: vec![[NEW; LINE]; N << (BITS - LINE_BITS)], histories: at_first.repeat(N * KINDS), rates }
    }

    /// The lines of the decisions from `node` on: a one, then what was decided.
    pub fn lines(ways: &[u32; N], node: u32) -> Lines {
        let mut lines = Lines::none();
        for (way, &seen) in ways.iter().enumerate() {
            let mixed = spread(seen, node);
            lines.at[way] = (way << (BITS - LINE_BITS)) + (mixed >> (32 - BITS + LINE_BITS)) as usize;
            lines.keys[way] = mixed & 0xfff;
        }
        lines
    }

    /// True where a decision needs lines of its own.
    pub fn needs_lines(depth: u32) -> bool {
        depth.is_multiple_of(TOGETHER)
    }

    /// What the ways say of a decision at this depth and node, two inputs from each.
    pub fn recall(
        &self,
        lines: &Lines,
        depth: u32,
        node: u32,
        kind: usize,
        curve: &Curve,
        inputs: &mut [f32],
    ) -> Recalled {
        let first = 1 << (depth % TOGETHER);
        let local = (node & (first - 1) | first) as usize;
        let mut recalled = Recalled { slots: [0; N], histories: [0; N], local };
        for way in 0..N {
            let key = lines.keys[way];
            let slot = self.slots[lines.at[way]][(local ^ (key >> 8) as usize) % LINE];
            // Without a branch, which no processor could foretell: all ones where the slot is this one's.
            let own = ((((slot ^ key) & 255).wrapping_sub(1) as i32) >> 31) as u32;
            recalled.slots[way] = slot & own | (NEW | key & 255) & !own;
        }
        for (way, inputs) in inputs.chunks_exact_mut(2).enumerate().take(N) {
            let slot = recalled.slots[way];
            let history = (way * KINDS + kind) << 8 | (slot >> 8 & 255) as usize;
            recalled.histories[way] = history;
            inputs[0] = curve.odds(slot >> 20);
            inputs[1] = curve.odds(u32::from(self.histories[history]) >> 4);
        }
        recalled
    }

    /// Keeps how a decision came out.
    pub fn learn(&mut self, lines: &Lines, recalled: &Recalled, came: bool) {
        let end = if came { 4095 } else { 0 };
        for way in 0..N {
            follow(&mut self.histories[recalled.histories[way]], came, FOLLOWS);
            let slot = recalled.slots[way];
            let (chance, met, history) = ((slot >> 20) as i32, slot >> 16 & 15, slot >> 8 & 255);
            let chance = chance + (((end - chance) * self.rates[met as usize] + 32_768) >> 16);
            let longer = history << 1 | u32::from(came);
            let history = longer & 255 | longer >> 1 & 128;
            self.slots[lines.at[way]][(recalled.local ^ (lines.keys[way] >> 8) as usize) % LINE] =
                (chance as u32) << 20 | (met + 1).min(STEADY) << 16 | history << 8 | slot & 255;
        }
    }
}

/// Moves a chance in 65,536ths towards what came, by so many 65,536ths of the way.
pub fn follow(chance: &mut u16, came: bool, rate: i32) {
    let end = if came { 65_535 } else { 0 };
    *chance = (i32::from(*chance) + (((end - i32::from(*chance)) * rate) >> 16)) as u16;
}

/// What a history says before anything was learnt: what came in it, the newer the more.
fn before_any(history: u32) -> u16 {
    let (mut ones, mut noughts) = (0.4, 0.4);
    for at in (0..history.max(1).ilog2()).rev() {
        let (came, other) = if history >> at & 1 == 1 { (&mut ones, &mut noughts) } else { (&mut noughts, &mut ones) };
        *came += 1.0;
        *other *= 0.7;
    }
    (ones / (ones + noughts) * 65_535.0) as u16
}

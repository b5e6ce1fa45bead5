//! From decisions and their probabilities to bytes and back: a binary arithmetic coder (Witten, Neal and Cleary, “Arithmetic coding
//! for data compression”, Communications of the ACM 30, 1987; from memory).

use alloc::vec::Vec;

/// Codes decisions one after the other: one that writes puts down what it is told, one that reads tells what was put down.
pub trait Coder {
    /// One decision. `one`: how probable it is, in 65,536ths, from 1 to 65,535. `known` is what a writer puts down; one that
    /// reads doesn't look at it.
    fn decide(&mut self, one: u32, known: bool) -> bool;
}

/// Where the part for "one" ends between the two ends of what is left.
fn part(low: u32, high: u32, one: u32) -> u32 {
    low + ((u64::from(high - low) * u64::from(one)) >> 16) as u32
}

/// True while the first byte of both ends is settled.
fn settled(low: u32, high: u32) -> bool {
    (low ^ high) >> 24 == 0
}

/// Writes.
pub struct Writer {
    low: u32,
    high: u32,
    written: Vec<u8>,
}

impl Writer {
    /// Nothing written yet.
    pub fn new() -> Self {
        Self { low: 0, high: u32::MAX, written: Vec::new() }
    }

    /// Bytes written.
    pub fn length(&self) -> usize {
        self.written.len()
    }

    /// Puts all that was written behind `packed`, with what settles the last decisions.
    pub fn finish(&mut self, packed: &mut Vec<u8>) {
        packed.append(&mut self.written);
        packed.extend((self.low + (self.high - self.low) / 2).to_be_bytes());
    }
}

impl Coder for Writer {
    fn decide(&mut self, one: u32, known: bool) -> bool {
        let middle = part(self.low, self.high, one);
        if known {
            self.high = middle;
        } else {
            self.low = middle + 1;
        }
        while settled(self.low, self.high) {
            self.written.push((self.high >> 24) as u8);
            self.low <<= 8;
            self.high = self.high << 8 | 255;
        }
        known
    }
}

/// Reads what a [`Writer`] wrote.
pub struct Reader {
    low: u32,
    high: u32,
    code: u32,
    packed: Vec<u8>,
    at: usize,
}

impl Reader {
    /// It reads so many bytes ahead of what has been decided.
    pub const AHEAD: u32 = 4;

    /// Begins at a byte of what was written.
    pub fn new(packed: Vec<u8>, at: usize) -> Self {
        let mut reader = Self { low: 0, high: u32::MAX, code: 0, packed, at };
        for _ in 0..Self::AHEAD {
            reader.code = reader.code << 8 | reader.next();
        }
        reader
    }

    /// Where more can be put.
    pub fn packed(&mut self) -> &mut Vec<u8> {
        &mut self.packed
    }

    /// Bytes that were not read yet.
    pub fn left(&self) -> usize {
        self.packed.len().saturating_sub(self.at)
    }

    /// True if more was read than is there.
    pub fn is_past_end(&self) -> bool {
        self.at > self.packed.len()
    }

    fn next(&mut self) -> u32 {
        let next = self.packed.get(self.at).copied().unwrap_or(0);
        self.at += 1;
        u32::from(next)
    }
}

impl Coder for Reader {
    fn decide(&mut self, one: u32, _known: bool) -> bool {
        let middle = part(self.low, self.high, one);
        let decided = self.code <= middle;
        if decided {
            self.high = middle;
        } else {
            self.low = middle + 1;
        }
        while settled(self.low, self.high) {
            self.low <<= 8;
            self.high = self.high << 8 | 255;
            self.code = self.code << 8 | self.next();
        }
        decided
    }
}

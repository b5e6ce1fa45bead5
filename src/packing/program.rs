//! A walk through a WebAssembly program byte by byte, in which each is told by what it is; the same walk packs and unpacks.
//!
//! The binary format is that of the WebAssembly Core Specification, release 2.0, chapter 5.

use alloc::vec::Vec;

use super::surroundings::{Block, Kind, NONE, Surroundings, with};

/// What a walk has each byte from.
pub trait Bytes {
    /// One byte in its surroundings, which have seen it afterwards; `known` if the program is there already. None if no byte
    /// can stand here.
    fn byte(&mut self, around: &mut Surroundings, known: u8) -> Option<u8>;
}

/// Nothing that can be packed or unpacked: at which byte of the program, and what is odd there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Odd {
    /// Bytes before it.
    pub at: usize,
    /// What it is.
    pub what: &'static str,
}

const TYPES: u8 = 1;
const IMPORTS: u8 = 2;
const FUNCTIONS: u8 = 3;
const GLOBALS: u8 = 6;
const CODE: u8 = 10;
const DATA: u8 = 11;
/// Ends what gives a value ahead of the start.
const END: u8 = 0x0b;
/// Browsers take no function with more (WebAssembly JavaScript Interface, implementation-defined limits).
const MOST_LOCALS: usize = 50_000;
/// So many bytes of data are one step.
const DATA_STEP: u32 = 4096;

const NO_TYPE: &str = "a type that isn't there";

/// What a function takes and gives.
#[derive(Default)]
struct Signature {
    /// Types of its parameters.
    takes: Vec<u8>,
    /// Types of what it gives back.
    gives: Vec<u8>,
}

/// What the next step walks through.
enum Stage {
    /// The first eight bytes.
    Head,
    /// A section from its start.
    Section,
    /// Functions that are left of the code, which is held in `made` from here.
    Code { from: usize, next: usize, end: usize },
    /// Pieces of data that are left, and bytes of the one at hand.
    Data { pieces: u32, bytes: u32 },
}

/// A walk under way.
pub struct Walk<'a, B> {
    /// Where bytes come from.
    pub bytes: B,
    /// What stands around the next byte.
    pub around: Surroundings,
    /// Types of functions.
    signatures: Vec<Signature>,
    /// For each function, those from outside first, the number of its type.
    pub functions: Vec<u32>,
    /// Types of what is global.
    pub globals: Vec<u8>,
    known: &'a [u8],
    at: usize,
    /// What was walked through.
    made: Vec<u8>,
    length: usize,
    stage: Stage,
    odd: Option<Odd>,
}

impl<'a, B: Bytes> Walk<'a, B> {
    /// Before the first step through a program of `length` bytes, which are `known` if it is there already.
    pub fn new(bytes: B, known: &'a [u8], length: usize) -> Self {
        Self {
            bytes,
            around: Surroundings::new(length),
            signatures: Vec::new(),
            functions: Vec::new(),
            globals: Vec::new(),
            known,
            at: 0,
            made: Vec::with_capacity(length),
            length,
            stage: Stage::Head,
            odd: None,
        }
    }

    /// True when nothing is left.
    pub fn is_done(&self) -> bool {
        self.made.len() >= self.length && matches!(self.stage, Stage::Section)
    }

    /// The program as far as it goes, and what the bytes came from.
    pub fn finish(self) -> (Vec<u8>, B) {
        (self.made, self.bytes)
    }

    /// Goes a little further: a section, a function, or a piece of data. Sizes of functions and of the code aren't told: they
    /// follow from what they hold.
    ///
    /// # Errors
    /// What is odd about the program.
    pub fn step(&mut self) -> Result<(), Odd> {
        self.stage = match self.stage {
            Stage::Head => {
                self.other(Kind::Frame, 8);
                Stage::Section
            }
            Stage::Section => self.section(),
            Stage::Code { from, next, end } if next < end => {
                self.function(next);
                Stage::Code { from, next: next + 1, end }
            }
            Stage::Code { from, .. } => {
                self.put_size(from);
                Stage::Section
            }
            Stage::Data { pieces: 0, bytes: 0 } => Stage::Section,
            Stage::Data { pieces, bytes: 0 } => {
                if self.count(Kind::Other) != 0 {
                    self.fail("data without an address");
                }
                self.byte(Kind::Other);
                self.around.address = self.number(Kind::Other, true) as u32;
                self.byte(Kind::Other);
                Stage::Data { pieces: pieces - 1, bytes: self.count(Kind::Other) }
            }
            Stage::Data { pieces, bytes } => {
                let now = bytes.min(DATA_STEP);
                for _ in 0..now {
                    self.byte(Kind::Data);
                    self.around.address = self.around.address.wrapping_add(1);
                }
                Stage::Data { pieces, bytes: bytes - now }
            }
        };
        self.odd.map_or(Ok(()), Err)
    }

    /// Keeps what is odd here. From then on every byte is taken for an end.
    pub fn fail(&mut self, what: &'static str) {
        self.odd.get_or_insert(Odd { at: self.made.len(), what });
    }

    /// The next byte.
    pub fn byte(&mut self, kind: Kind) -> u8 {
        let known = self.known.get(self.at).copied().unwrap_or(0);
        self.at += 1;
        self.around.kind = kind;
        if self.made.len() >= self.length {
            self.fail("more than was announced");
        }
        if self.odd.is_none() {
            if let Some(byte) = self.bytes.byte(&mut self.around, known) {
                self.made.push(byte);
                return byte;
            }
            self.fail("a byte that can't stand here");
        }
        END
    }

    /// So many bytes that say nothing about others.
    fn other(&mut self, kind: Kind, bytes: u32) {
        for _ in 0..bytes {
            self.byte(kind);
        }
    }

    /// A number in groups of seven bits, the lowest first; if it is `signed`, the highest bit of the last group is its sign.
    pub fn number(&mut self, kind: Kind, signed: bool) -> u64 {
        let (mut number, mut shift) = (0, 0);
        loop {
            let byte = self.byte(kind);
            number |= u64::from(byte & 127) << shift;
            shift += 7;
            self.around.within_number(byte);
            if byte < 128 || shift > 63 {
                if signed && byte & 64 != 0 && shift < 64 {
                    number |= u64::MAX << shift;
                }
                break;
            }
        }
        self.around.behind_number();
        number
    }

    /// Which of several things, or how many; there can't be more than the program has bytes.
    pub fn count(&mut self, kind: Kind) -> u32 {
        let count = self.number(kind, false) as u32;
        if count as usize > self.length {
            self.fail("more of something than the program has bytes");
            return 0;
        }
        count
    }

    /// So many bytes of a number that isn't in groups. Gives what stands for it.
    pub fn fixed(&mut self, kind: Kind, bytes: usize) -> u32 {
        let mut all = 0;
        for _ in 0..bytes {
            let byte = self.byte(kind);
            self.around.within_number(byte);
            all = with(all, u32::from(byte));
        }
        self.around.behind_number();
        all
    }

    /// Takes what a function of this type takes off the stack, and puts what it gives there.
    pub fn called(&mut self, of: u32, made: u32) {
        let Some(signature) = self.signatures.get(of as usize) else { return self.fail(NO_TYPE) };
        for _ in &signature.takes {
            self.around.pop();
        }
        for &kind in &signature.gives {
            self.around.push(kind, made);
        }
    }

    /// Goes past a size that isn't told.
    fn pass_size(&mut self) {
        while self.known.get(self.at).is_some_and(|&byte| byte >= 128) {
            self.at += 1;
        }
        self.at += 1;
    }

    /// Puts its size in front of what was made from `start` on.
    fn put_size(&mut self, start: usize) {
        let mut left = self.made.len() - start;
        let mut at = start;
        loop {
            let more = if left > 127 { 128 } else { 0 };
            self.made.insert(at, left as u8 & 127 | more);
            left >>= 7;
            at += 1;
            if more == 0 {
                break;
            }
        }
    }

    fn section(&mut self) -> Stage {
        let section = self.byte(Kind::Frame);
        if section == CODE {
            self.pass_size();
            let from = self.made.len();
            let functions = self.count(Kind::Frame) as usize;
            let end = self.functions.len();
            if functions > end {
                self.fail("more functions than were announced");
            }
            return Stage::Code { from, next: end.saturating_sub(functions), end };
        }
        let size = self.count(Kind::Frame) as usize;
        let end = self.made.len() + size;
        match section {
            TYPES => self.types(),
            IMPORTS => self.imports(),
            FUNCTIONS => {
                for _ in 0..self.count(Kind::Other) {
                    let of = self.count(Kind::TypeIndex);
                    self.functions.push(of);
                }
            }
            GLOBALS => {
                for _ in 0..self.count(Kind::Other) {
                    let kind = self.byte(Kind::Other);
                    self.globals.push(kind);
                    while self.byte(Kind::Other) != END {}
                }
            }
            DATA => return Stage::Data { pieces: self.count(Kind::Other), bytes: 0 },
            _ => {}
        }
        self.other(Kind::Other, end.saturating_sub(self.made.len()) as u32);
        Stage::Section
    }

    fn types(&mut self) {
        for _ in 0..self.count(Kind::Type) {
            self.byte(Kind::Type);
            let mut signature = Signature::default();
            for list in [&mut signature.takes, &mut signature.gives] {
                for _ in 0..self.count(Kind::Type) {
                    list.push(self.byte(Kind::Type));
                }
            }
            self.signatures.push(signature);
        }
    }

    fn imports(&mut self) {
        for _ in 0..self.count(Kind::Other) {
            for _ in 0..2 {
                let name = self.count(Kind::Other);
                self.other(Kind::Other, name);
            }
            if self.byte(Kind::Other) != 0 {
                self.fail("an import that is no function");
            }
            let of = self.count(Kind::Other);
            self.functions.push(of);
        }
    }

    fn function(&mut self, function: usize) {
        let of = self.functions.get(function).and_then(|&of| self.signatures.get(of as usize));
        let Some(signature) = of else { return self.fail(NO_TYPE) };
        self.around.enter(function as u32, &signature.takes);
        self.pass_size();
        let start = self.made.len();
        for _ in 0..self.count(Kind::Locals) {
            let many = self.count(Kind::Locals) as usize;
            let kind = self.byte(Kind::Locals);
            if self.around.locals.len() + many > MOST_LOCALS {
                return self.fail("more locals than browsers take");
            }
            self.around.declare(many, kind);
        }
        self.around.blocks.push(Block { base: 0, operation: 0, leaves: NONE });
        while !self.around.blocks.is_empty() {
            self.instruction();
        }
        self.put_size(start);
    }
}

//! What stands around the next byte of a program: where in its structure it is, what came before, and what the instructions
//! before it left on the stack.

use alloc::vec;
use alloc::vec::Vec;

mod ways;

/// Ways of seeing the surroundings of a byte.
pub const N: usize = 12;
/// Kinds of byte.
pub const KINDS: usize = Kind::Data as usize + 1;
/// Places, each with a tree of its own: a kind and whether it is the first, second, third or a later byte of what stands there;
/// for operations and data what comes before instead.
pub const PLACES: usize = KINDS * 4 + AFTER_OPERATIONS + AFTER_BYTES;
const AFTER_OPERATIONS: usize = 16;
const AFTER_BYTES: usize = 8;
/// Each of two numbers by which weights are chosen is below this.
pub const CHOICES: [usize; 2] = [32 * KINDS + 64, 1024];

/// Mixes two numbers into one that is spread over all bits.
pub fn spread(one: u32, other: u32) -> u32 {
    let mut all = one.wrapping_mul(0x9E37_79B1) ^ other.wrapping_add(0x7F4A_7C15).wrapping_mul(0x85EB_CA6B);
    all ^= all >> 15;
    all = all.wrapping_mul(0x2C1B_3C6D);
    all ^ all >> 13
}

/// Puts two numbers together into one, in haste: `spread` spreads what comes of it.
pub fn with(one: u32, other: u32) -> u32 {
    (one.rotate_left(9) ^ other).wrapping_mul(0x9E37_79B1)
}

/// What a byte is of.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// The program's frame: its first bytes, names and sizes of sections.
    Frame,
    /// A function's type.
    Type,
    /// What an instruction does.
    Operation,
    /// Which local.
    Local,
    /// Which global.
    Global,
    /// Which function.
    Function,
    /// Which type.
    TypeIndex,
    /// How many blocks to leave.
    Label,
    /// What a block gives.
    Result,
    /// What an address is a multiple of.
    Alignment,
    /// What is added to an address.
    Offset,
    /// A whole number of 32 bits.
    Whole,
    /// A whole number of 64 bits.
    Long,
    /// A number with a point.
    Float,
    /// What further belongs to rarer instructions.
    Further,
    /// Other sections.
    Other,
    /// A function's locals.
    Locals,
    /// Data.
    Data,
}

/// A value on the stack: what made it, and its type.
#[derive(Clone, Copy, Default)]
pub struct Value {
    /// A number that stands for what made it.
    pub made: u32,
    /// Its type.
    pub kind: u8,
}

/// In place of a type: nothing is left on the stack.
pub const NONE: u8 = 0x40;

/// A block that is open.
#[derive(Clone, Copy)]
pub struct Block {
    /// How high the stack was where it began.
    pub base: usize,
    /// What began it.
    pub operation: u8,
    /// The type of what it gives, or `NONE`.
    pub leaves: u8,
}

/// Locals whose last use was a setting, newest first.
const WAITING: usize = 8;
/// Places for the last offset from an address.
const OFFSETS: usize = 4096;

/// What is known when a byte comes.
pub struct Surroundings {
    /// All bytes so far but the sizes that follow from others.
    pub seen: Vec<u8>,
    /// What the next byte is of.
    pub kind: Kind,
    /// The instruction whose parts come.
    pub operation: u32,
    /// Types of the function's locals.
    pub locals: Vec<u8>,
    /// The stack, and the blocks that are open.
    pub stack: Vec<Value>,
    /// See `stack`.
    pub blocks: Vec<Block>,
    /// Where in memory the next byte of data goes.
    pub address: u32,
    /// Bytes of the number so far: how many, and which.
    byte_of: usize,
    number: u32,
    function: u32,
    /// One more than the highest local that was used, and for each type the next one that wasn't.
    highest_local: u32,
    fresh: [u32; 32],
    /// The newest in front, here and below.
    operations: [u32; 9],
    instructions: [u32; 3],
    of_locals: [u32; 3],
    waiting: [u32; WAITING],
    functions: [u32; 2],
    /// The last whole number, the last offset, and the last offset from each address.
    whole: u32,
    offset: u32,
    last_offsets: Vec<u32>,
    /// Of a text: the word so far, words before it, those of the text that this one translates, and how many of it are told.
    word: u32,
    words: [u32; 2],
    meant: Vec<u32>,
    translates: bool,
    told: usize,
}

/// Keeps the newest in front.
fn push<const M: usize>(list: &mut [u32; M], newest: u32) {
    list.copy_within(..M - 1, 1);
    list[0] = newest;
}

impl Surroundings {
    /// Before the first byte of a program of some length.
    pub fn new(length: usize) -> Self {
        Self {
            seen: Vec::with_capacity(length),
            kind: Kind::Frame,
            operation: 0,
            locals: Vec::new(),
            stack: Vec::new(),
            blocks: Vec::new(),
            address: 0,
            byte_of: 0,
            number: 0,
            function: 0,
            highest_local: 0,
            fresh: [0; 32],
            operations: [0; 9],
            instructions: [0; 3],
            of_locals: [0; 3],
            waiting: [0; WAITING],
            functions: [0; 2],
            whole: 0,
            offset: 0,
            last_offsets: vec![0; OFFSETS],
            word: 0,
            words: [0; 2],
            meant: Vec::new(),
            translates: false,
            told: 0,
        }
    }

    /// Which tree and which weights.
    pub fn place(&self) -> usize {
        match self.kind {
            Kind::Operation => KINDS * 4 + after_operation(self.operations[0] & 255),
            Kind::Data => KINDS * 4 + AFTER_OPERATIONS + after_byte(self.back(1) as u8),
            _ => self.kind as usize * 4 + self.byte_of.min(3),
        }
    }

    /// Adds a byte.
    pub fn see(&mut self, byte: u8) {
        self.seen.push(byte);
        if self.kind == Kind::Data {
            self.read(byte);
        }
    }

    /// Adds a byte of a text. A text in two languages is one behind the other, with a one between them and a nought behind.
    fn read(&mut self, byte: u8) {
        if byte >= 128 || byte.is_ascii_alphabetic() {
            self.word = with(self.word, u32::from(byte.to_ascii_lowercase()));
            return;
        }
        if self.word != 0 {
            push(&mut self.words, self.word);
            if self.translates {
                self.told += 1;
            } else {
                self.meant.push(self.word);
            }
            self.word = 0;
        }
        match byte {
            0 => {
                self.meant.clear();
                self.translates = false;
            }
            1 => {
                self.translates = true;
                self.told = 0;
                self.words = [0; 2];
            }
            _ => {}
        }
    }

    /// The next byte is of the same number as this.
    pub fn within_number(&mut self, byte: u8) {
        self.byte_of += 1;
        self.number = self.number << 8 | u32::from(byte);
    }

    /// The next byte isn't.
    pub fn behind_number(&mut self) {
        (self.byte_of, self.number) = (0, 0);
    }

    /// Enters a function with its parameters.
    pub fn enter(&mut self, function: u32, parameters: &[u8]) {
        self.function = function;
        self.locals.clear();
        self.locals.extend(parameters);
        self.stack.clear();
        self.blocks.clear();
        self.of_locals = [0; 3];
        self.waiting = [0; WAITING];
        self.highest_local = parameters.len() as u32;
    }

    /// So many further locals of a type.
    pub fn declare(&mut self, many: usize, kind: u8) {
        self.fresh[usize::from(kind & 31)] = self.locals.len() as u32;
        self.locals.resize(self.locals.len() + many, kind);
    }

    /// Where the stack begins for the block at hand.
    fn base(&self) -> usize {
        self.blocks.last().map_or(0, |block| block.base)
    }

    /// Takes a value off the stack; a nought where code that is never reached has none.
    pub fn pop(&mut self) -> Value {
        if self.stack.len() > self.base() { self.stack.pop().unwrap_or_default() } else { Value::default() }
    }

    /// Puts a value on the stack.
    pub fn push(&mut self, kind: u8, made: u32) {
        self.stack.push(Value { made, kind });
    }

    /// All that the block at hand has on the stack is of no use any more.
    pub fn leave(&mut self) {
        self.stack.truncate(self.base());
    }

    /// A value on the stack, counted from its top.
    pub fn value(&self, from_top: usize) -> Value {
        self.stack.len().checked_sub(from_top + 1).map_or(Value::default(), |at| self.stack[at])
    }

    /// An instruction is complete, with its number if it has one. Gives what stands for it.
    pub fn complete(&mut self, number: u32) -> u32 {
        let whole = with(self.operation + 1, number);
        push(&mut self.instructions, whole);
        push(&mut self.operations, self.operation);
        whole
    }

    /// A local of this type was set or used.
    pub fn had_local(&mut self, local: u32, kind: u8, set: bool) {
        push(&mut self.of_locals, local | self.operation << 16);
        self.highest_local = self.highest_local.max(local + 1);
        let fresh = &mut self.fresh[usize::from(kind & 31)];
        *fresh = (*fresh).max(local + 1);
        if set {
            push(&mut self.waiting, local + 1);
        } else if let Some(at) = self.waiting.iter().position(|&waits| waits == local + 1) {
            self.waiting.copy_within(at + 1.., at);
            self.waiting[WAITING - 1] = 0;
        }
    }

    /// A function was called.
    pub fn had_call(&mut self, function: u32) {
        push(&mut self.functions, function);
    }

    /// A whole number was put on the stack.
    pub fn had_whole(&mut self, whole: u32) {
        self.whole = whole;
    }

    /// What made the address that an instruction goes by; a value to be stored lies above it.
    fn of_address(&self) -> u32 {
        self.value(usize::from(matches!(self.operation, 0x36..=0x3e))).made
    }

    fn last_offset(&self) -> usize {
        with(self.function, self.of_address()) as usize >> 8 & (OFFSETS - 1)
    }

    /// Memory is reached at an offset from an address.
    pub fn had_offset(&mut self, offset: u32) {
        let at = self.last_offset();
        self.last_offsets[at] = offset << 8 | self.operation & 255;
        self.offset = offset;
    }

    /// The byte so many before the next.
    fn back(&self, bytes: usize) -> u32 {
        self.seen.len().checked_sub(bytes).map_or(0, |at| u32::from(self.seen[at]))
    }

    /// How many values the block at hand has on the stack.
    fn depth(&self) -> usize {
        self.stack.len().saturating_sub(self.base())
    }

    /// What weights are chosen by.
    pub fn choices(&self) -> [usize; 2] {
        if self.kind == Kind::Data {
            let prints = |at| usize::from(self.back(at) > 31);
            let newest = self.back(1) as usize;
            let of = if newest < 32 { 0 } else { newest >> 2 };
            return [32 * KINDS + of, 512 + prints(1) * 4 + prints(2) * 2 + prints(3)];
        }
        let of = if self.kind == Kind::Operation { 256 + (self.operations[0] & 255) } else { self.operation & 255 };
        [self.kind as usize * 32 + self.depth().min(3) * 8 + usize::from(self.value(0).kind & 7), of as usize]
    }
}

/// What an operation after this is likely to be goes by.
fn after_operation(operation: u32) -> usize {
    match operation {
        0x20 => 0,
        0x21 => 1,
        0x22 => 2,
        0x41 => 3,
        0x10 => 4,
        0x28..=0x35 => 5,
        0x36..=0x3e => 6,
        0x45..=0x66 => 7,
        0x6a => 14,
        0x67..=0x69 | 0x6b..=0x8a => 8,
        0x0c | 0x0f | 0x00 => 9,
        0x0d => 10,
        0x02 | 0x03 => 11,
        0x0b => 12,
        0x23 | 0x24 => 13,
        _ => 15,
    }
}

/// The same for data.
fn after_byte(byte: u8) -> usize {
    match byte {
        b'a'..=b'z' => 0,
        b' ' => 1,
        0 => 2,
        1 => 3,
        2..32 => 4,
        128.. => 5,
        b'!'..b'A' => 6,
        _ => 7,
    }
}

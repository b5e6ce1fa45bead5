//! Instructions of a program: what each is made of, and what it takes from the stack and leaves on it.

use super::program::{Bytes, Walk};
use super::surroundings::{Block, Kind, NONE, with};

const I32: u8 = 0x7f;
const I64: u8 = 0x7e;
const F32: u8 = 0x7d;
const F64: u8 = 0x7c;
const V128: u8 = 0x7b;
const EXTERN: u8 = 0x6f;

impl<B: Bytes> Walk<'_, B> {
    /// Walks through one instruction.
    pub fn instruction(&mut self) {
        let operation = self.byte(Kind::Operation);
        self.around.operation = u32::from(operation);
        let number = self.parts(operation);
        let whole = self.around.complete(number);
        self.effect(operation, number, whole);
    }

    /// Reads what an instruction is made of. Gives the number that tells most of it.
    fn parts(&mut self, operation: u8) -> u32 {
        match operation {
            0x02..=0x04 => u32::from(self.byte(Kind::Result)),
            0x0c | 0x0d => self.count(Kind::Label),
            0x0e => {
                let labels = self.count(Kind::Label);
                for _ in 0..=labels {
                    self.count(Kind::Label);
                }
                labels
            }
            0x10 => self.count(Kind::Function),
            0x11 => {
                let of = self.count(Kind::TypeIndex);
                self.count(Kind::Further);
                of
            }
            0x20..=0x22 => self.count(Kind::Local),
            0x23 | 0x24 => self.count(Kind::Global),
            0x25 | 0x26 | 0x3f | 0x40 | 0xd0 => self.count(Kind::Further),
            0x28..=0x3e => self.offset(),
            0x41 => self.number(Kind::Whole, true) as u32,
            0x42 => self.number(Kind::Long, true) as u32,
            0x43 => self.fixed(Kind::Float, 4),
            0x44 => self.fixed(Kind::Float, 8),
            0xfc => {
                let which = self.further();
                let indices = match which {
                    8 | 10 => 2,
                    11 | 15..=17 => 1,
                    _ => 0,
                };
                self.fixed(Kind::Further, indices);
                which
            }
            0xfd => {
                let which = self.further();
                let number = if matches!(which, 0..=11 | 84..=93) { self.offset() } else { which };
                let bytes = match which {
                    12 | 13 => 16,
                    21..=34 | 84..=91 => 1,
                    _ => 0,
                };
                self.fixed(Kind::Further, bytes);
                number
            }
            _ => 0,
        }
    }

    /// Where from an address memory is reached.
    fn offset(&mut self) -> u32 {
        self.count(Kind::Alignment);
        let offset = self.number(Kind::Offset, false) as u32;
        self.around.had_offset(offset);
        offset
    }

    /// Which of many instructions that begin alike.
    fn further(&mut self) -> u32 {
        let which = self.count(Kind::Further);
        self.around.operation |= which << 8;
        which
    }

    /// Leaves the stack as it is behind an instruction.
    fn effect(&mut self, operation: u8, number: u32, whole: u32) {
        let (takes, gives) = match operation {
            0x02..=0x04 => {
                if operation == 0x04 {
                    self.around.pop();
                }
                let base = self.around.stack.len();
                self.around.blocks.push(Block { base, operation, leaves: number as u8 });
                return;
            }
            0x00 | 0x05 | 0x0c | 0x0e | 0x0f => return self.around.leave(),
            0x0b => {
                self.around.leave();
                (0, self.around.blocks.pop().map_or(NONE, |block| block.leaves))
            }
            0x10 => {
                let of = self.functions.get(number as usize).copied().unwrap_or(u32::MAX);
                self.called(of, whole);
                return self.around.had_call(number);
            }
            0x11 => {
                self.around.pop();
                return self.called(number, whole);
            }
            0x1b => {
                self.around.pop();
                (2, self.around.value(0).kind)
            }
            0x20..=0x22 => {
                let Some(&kind) = self.around.locals.get(number as usize) else {
                    return self.fail("a local that isn't there");
                };
                self.around.had_local(number, kind, operation != 0x20);
                match operation {
                    0x20 => (0, kind),
                    0x21 => (1, NONE),
                    _ => {
                        self.around.pop();
                        return self.around.push(kind, with(0x21, number));
                    }
                }
            }
            0x23 => (0, self.globals.get(number as usize).copied().unwrap_or(I32)),
            0x28 | 0x2c..=0x2f | 0x45 | 0x50 | 0x67..=0x69 | 0xa7..=0xab | 0xbc | 0xc0 | 0xc1 | 0xd1 | 0x40 => (1, I32),
            0x2a | 0x8b..=0x91 | 0xb2..=0xb6 | 0xbe => (1, F32),
            0x2b | 0x99..=0x9f | 0xb7..=0xbb | 0xbf => (1, F64),
            0x29 | 0x30..=0x35 | 0x79..=0x7b | 0xac..=0xb1 | 0xbd | 0xc2..=0xc4 => (1, I64),
            0x25 => (1, EXTERN),
            0x36..=0x3e | 0x26 => (2, NONE),
            0x3f => (0, I32),
            0x41 => {
                self.around.had_whole(number);
                (0, I32)
            }
            0x42 => (0, I64),
            0x43 => (0, F32),
            0x44 => (0, F64),
            0xd0 => (0, EXTERN),
            0x46..=0x66 | 0x6a..=0x78 => (2, I32),
            0x7c..=0x8a => (2, I64),
            0x92..=0x98 => (2, F32),
            0xa0..=0xa6 => (2, F64),
            0x0d | 0x1a | 0x24 => (1, NONE),
            0x01 => return,
            0xfc => match self.around.operation >> 8 {
                0..=3 => (1, I32),
                4..=7 => (1, I64),
                15 => (2, I32),
                16 => (0, I32),
                _ => (3, NONE),
            },
            0xfd => match self.around.operation >> 8 {
                0..=10 | 15..=20 | 92 | 93 => (1, V128),
                11 | 88..=91 => (2, NONE),
                12 => (0, V128),
                21 | 22 | 24 | 25 | 27 | 0x53 | 0x63 | 0x64 | 0x83 | 0x84 | 0xa3 | 0xa4 | 0xc3 | 0xc4 => (1, I32),
                29 => (1, I64),
                31 => (1, F32),
                33 => (1, F64),
                0x4d
                | 0x5e..=0x62
                | 0x80..=0x82
                | 0xa0..=0xa2
                | 0xc0..=0xc2
                | 0xe0
                | 0xe1
                | 0xe3
                | 0xec
                | 0xed
                | 0xef => (1, V128),
                0x52 => (3, V128),
                _ => (2, V128),
            },
            _ => return self.fail("an instruction that isn't known here"),
        };
        let made = (0..takes).fold(whole, |all, _| with(all, self.around.pop().made));
        if gives != NONE {
            self.around.push(gives, made);
        }
    }
}

//! The surroundings of a byte in several ways at once: what one way doesn't foretell, another may.

use super::{Kind, N, Surroundings, spread, with};

/// What a way is made of; `Nothing` where it is made of less.
#[derive(Clone, Copy)]
enum Of {
    Nothing,
    /// The instruction whose parts come.
    Operation,
    /// Instructions before it without their numbers: the last, the last two and so on.
    Last,
    Two,
    Three,
    Four,
    Six,
    Nine,
    /// And with them.
    One,
    Pair,
    Triple,
    Function,
    /// How many values the block has on the stack, with the types of the highest; how many; what made the highest two.
    Stack,
    Depth,
    Top,
    Second,
    /// How many blocks are open, and what opened the last.
    Blocks,
    Opened,
    /// The last locals: two, and the one before.
    Locals,
    LocalBefore,
    /// Locals that were set and not yet used: the last, and the one before.
    Waiting,
    WaitingBefore,
    /// The next local that wasn't used yet.
    Next,
    Called,
    CalledBefore,
    /// The last whole number, the last offset, the last one from the same address, and what made that address.
    Number,
    Offset,
    Again,
    Address,
    /// The last byte, the last two and so on.
    Byte,
    Bytes2,
    Bytes3,
    Bytes4,
    Bytes5,
    Bytes6,
    /// The byte before the last, and the one before that.
    Byte2,
    Byte3,
    /// A word so far, the word before it, and the one before that.
    Word,
    Word1,
    Word2,
    /// The words that a translation may be at: the one in the same place, the one before, the one behind.
    Meant,
    MeantBefore,
    MeantBehind,
    /// In tables: which byte of four, and of eight; and bytes further back.
    Column,
    Column8,
    Back4,
    Back8,
    Back12,
    Back16,
    Back20,
    Back24,
    /// What follows if a table counts up by one.
    Counted,
}

use Of::*;

const FEATURES: usize = Counted as usize + 1;

type Ways = [[Of; 3]; N];

/// Near ones first, here and below.
const OPERATIONS: Ways = [
    [Stack, Last, Nothing],
    [One, Nothing, Nothing],
    [Four, Nothing, Last],
    [Six, Number, Nothing],
    [Operation, Nine, Three],
    [Pair, Nothing, Nothing],
    [Depth, Locals, Three],
    [Top, Depth, Nothing],
    [Called, Last, Stack],
    [Six, CalledBefore, Depth],
    [Blocks, Last, Nothing],
    [Opened, Depth, Two],
];
const LOCALS: Ways = [
    [Two, Nothing, Nothing],
    [Top, One, Nothing],
    [Operation, Depth, Opened],
    [Three, Locals, Nothing],
    [Operation, Function, Nothing],
    [Operation, Function, Top],
    [WaitingBefore, Nothing, Nothing],
    [Locals, Two, LocalBefore],
    [Operation, Waiting, WaitingBefore],
    [Operation, Next, Waiting],
    [Nothing, Next, Stack],
    [Operation, Six, Last],
];
const OFFSETS: Ways = [
    [Offset, Last, Nothing],
    [Operation, Stack, Nothing],
    [Nothing, Nothing, Offset],
    [Operation, Nothing, Nothing],
    [Operation, Two, Opened],
    [Function, Address, Nothing],
    [Operation, Again, Nothing],
    [Again, Nothing, Nothing],
    [Operation, Again, Two],
    [Six, Nothing, Nothing],
    [Operation, Called, Last],
    [Function, Nothing, Nothing],
];
const WHOLES: Ways = [
    [Opened, Two, Three],
    [One, Nothing, Nothing],
    [Nothing, Nothing, Nothing],
    [Opened, Nothing, Nothing],
    [Nine, Four, Six],
    [Six, Nothing, Operation],
    [Function, Nothing, Nothing],
    [Function, One, Nothing],
    [Top, Second, Nothing],
    [Again, Stack, Nothing],
    [Number, Last, Nothing],
    [Stack, Last, Nothing],
];
const FUNCTIONS: Ways = [
    [Function, Stack, Nothing],
    [Stack, Nothing, Nothing],
    [Second, Stack, Nothing],
    [Two, Operation, Nothing],
    [Three, Opened, Nothing],
    [Called, Called, Nothing],
    [Four, Nothing, Nothing],
    [Function, Nothing, Nothing],
    [Called, Last, Stack],
    [Called, CalledBefore, Depth],
    [Six, Last, Nothing],
    [Number, Stack, Nothing],
];
const PARTS: Ways = [
    [Opened, Three, Nothing],
    [Operation, Nothing, Opened],
    [Operation, Nothing, Nothing],
    [Operation, Two, Nothing],
    [Operation, Pair, Called],
    [Operation, Four, Nothing],
    [Blocks, Nothing, Nothing],
    [Six, Nothing, Nothing],
    [Stack, Nothing, Nothing],
    [Operation, Called, Last],
    [Operation, Nothing, Stack],
    [Operation, Blocks, Depth],
];
const OTHERS: Ways = [
    [Byte, Nothing, Nothing],
    [Bytes2, Nothing, Nothing],
    [Nothing, Nothing, Nothing],
    [Bytes3, Meant, Bytes4],
    [Byte, Nothing, Nothing],
    [Bytes2, Bytes5, Byte3],
    [Back4, Byte2, MeantBehind],
    [Byte2, Nothing, Nothing],
    [Back24, Column8, MeantBefore],
    [Byte2, Byte3, Nothing],
    [Nothing, Back16, Nothing],
    [Back4, Nothing, Nothing],
];
const TEXTS: Ways = [
    [Byte, Nothing, Nothing],
    [Bytes2, Nothing, Nothing],
    [Nothing, Nothing, Nothing],
    [Bytes3, Nothing, Nothing],
    [Bytes4, Nothing, Nothing],
    [Bytes6, Nothing, Nothing],
    [Word, Byte, Nothing],
    [Word, Byte, Word1],
    [Word, Byte, Word2],
    [Word, Byte, MeantBehind],
    [Word, Byte, Meant],
    [Byte3, Byte, MeantBefore],
];
const TABLES: Ways = [
    [Byte, Nothing, Nothing],
    [Bytes2, Nothing, Nothing],
    [Column, Nothing, Nothing],
    [Back20, Bytes2, Nothing],
    [Column, Byte, Bytes3],
    [Back4, Nothing, Nothing],
    [Back4, Back8, Column],
    [Back16, Byte, Column],
    [Counted, Column, Nothing],
    [Byte3, Byte, Column8],
    [Back20, Back24, Column],
    [Back16, Word, Nothing],
];

impl Surroundings {
    /// The surroundings in `N` ways; the first two are near ones.
    pub fn ways(&self) -> [u32; N] {
        let (features, ways) = match self.kind {
            Kind::Data if self.in_text() => (self.of_bytes(), TEXTS),
            Kind::Data => (self.of_bytes(), TABLES),
            Kind::Frame | Kind::Type | Kind::Other | Kind::Locals => (self.of_bytes(), OTHERS),
            Kind::Operation => (self.of_code(), OPERATIONS),
            Kind::Local => (self.of_code(), LOCALS),
            Kind::Offset => (self.of_code(), OFFSETS),
            Kind::Whole => (self.of_code(), WHOLES),
            Kind::Function => (self.of_code(), FUNCTIONS),
            _ => (self.of_code(), PARTS),
        };
        let here = with((self.kind as u32) << 4 | self.byte_of.min(15) as u32, self.number);
        let mut seen = [0; N];
        for (at, way) in ways.iter().enumerate() {
            let made = way.iter().fold(0, |made, &of| with(made, features[of as usize]));
            seen[at] = spread(made, here.wrapping_add(at as u32 * 77_777));
        }
        seen
    }

    fn in_text(&self) -> bool {
        (1..=4).filter(|&at| self.back(at) > 31).count() > 2
    }

    /// A word of the text that is translated, so many behind the one in the same place and one.
    fn meant(&self, behind: usize) -> u32 {
        let at = (self.told + behind).wrapping_sub(1);
        self.meant.get(at).copied().unwrap_or(0)
    }

    fn of_bytes(&self) -> [u32; FEATURES] {
        let mut of = [0; FEATURES];
        let column = self.address & 3;
        of[Column as usize] = column;
        of[Column8 as usize] = self.address & 7;
        for (feature, back) in [
            (Byte, 1),
            (Byte2, 2),
            (Byte3, 3),
            (Back4, 4),
            (Back8, 8),
            (Back12, 12),
            (Back16, 16),
            (Back20, 20),
            (Back24, 24),
        ] {
            of[feature as usize] = self.back(back);
        }
        let mut bytes = self.back(1);
        for (feature, back) in [(Bytes2, 2), (Bytes3, 3), (Bytes4, 4), (Bytes5, 5), (Bytes6, 6)] {
            bytes = with(bytes, self.back(back));
            of[feature as usize] = bytes;
        }
        of[Word as usize] = self.word;
        of[Word1 as usize] = self.words[0];
        of[Word2 as usize] = self.words[1];
        if self.translates {
            of[MeantBefore as usize] = self.meant(0);
            of[Meant as usize] = self.meant(1);
            of[MeantBehind as usize] = self.meant(2);
        } else {
            of[MeantBefore as usize] = with(self.back(2), self.back(3));
            of[MeantBehind as usize] = with(self.words[0], self.words[1]);
        }
        // The word of four bytes before this one and, in its column, what would follow if the next were one more.
        let before = (1..=4).fold(0, |all, at| all << 8 | self.back((column + at) as usize));
        let before = before.swap_bytes().wrapping_add(1);
        let follows = (0..column).all(|at| self.back((column - at) as usize) == before >> (8 * at) & 255);
        of[Counted as usize] = before >> (8 * column) & 255 | u32::from(follows) << 8;
        of
    }

    fn of_code(&self) -> [u32; FEATURES] {
        let mut of = [0; FEATURES];
        let mut operations = self.operations[0];
        of[Last as usize] = operations;
        let runs = [Two, Three, Four, Four, Six, Six, Six, Nine];
        for (&feature, &operation) in runs.iter().zip(&self.operations[1..]) {
            operations = with(operations, operation);
            of[feature as usize] = operations;
        }
        let [top, second, third] = [0, 1, 2].map(|at| self.value(at));
        let depth = self.depth().min(6) as u32;
        let set = self.operation != 0x20;
        for (feature, is) in [
            (Operation, self.operation + 1),
            (One, self.instructions[0]),
            (Pair, with(self.instructions[0], self.instructions[1])),
            (Triple, with(with(self.instructions[0], self.instructions[1]), self.instructions[2])),
            (Function, self.function),
            (Stack, depth | u32::from(top.kind) << 4 | u32::from(second.kind) << 12 | u32::from(third.kind) << 20),
            (Depth, depth),
            (Top, top.made),
            (Second, second.made),
            (Blocks, self.blocks.len() as u32),
            (Opened, self.blocks.last().map_or(0, |block| u32::from(block.operation))),
            (Locals, with(self.of_locals[0], self.of_locals[1])),
            (LocalBefore, self.of_locals[2]),
            (Waiting, self.waiting[0]),
            (WaitingBefore, self.waiting[1]),
            (Next, if set { self.fresh[usize::from(top.kind & 31)] } else { self.highest_local }),
            (Called, self.functions[0]),
            (CalledBefore, self.functions[1]),
            (Number, self.whole),
            (Offset, self.offset),
            (Again, self.last_offsets[self.last_offset()]),
            (Address, self.of_address()),
        ] {
            of[feature as usize] = is;
        }
        of
    }
}

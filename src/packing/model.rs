//! Foretells each decision of each byte, and learns from how it came out.

use alloc::vec::Vec;

use super::coder::Coder;
use super::curve::Curve;
use super::memory::{Lines, Memory};
use super::mixing::{Choice, INPUTS, Mixing};
use super::program::Bytes;
use super::repeats::Repeats;
use super::surroundings::{N, Surroundings};
use super::trees::{DEEPEST, Tree};

/// The model, and the coder that it foretells for.
pub struct Model<C> {
    coder: C,
    trees: Vec<Tree>,
    curve: Curve,
    memory: Memory,
    repeats: Repeats,
    mixing: Mixing,
}

impl<C: Coder> Model<C> {
    /// A model that has seen nothing.
    pub fn new(coder: C, trees: Vec<Tree>) -> Self {
        let curve = Curve::new();
        Self { coder, trees, memory: Memory::new(), repeats: Repeats::new(), mixing: Mixing::new(&curve), curve }
    }

    /// The coder.
    pub fn coder(&mut self) -> &mut C {
        &mut self.coder
    }

    /// The byte at the end of the decisions that start here; None if they lead nowhere.
    fn decided(&mut self, around: &Surroundings, known: u8) -> Option<u8> {
        let place = around.place();
        if let Some(only) = self.trees[place].byte(0, 0) {
            return Some(only);
        }
        let ways = around.ways();
        let kind = around.kind as usize;
        let (length, way) = self.trees[place].way(known).unwrap_or((0, 0));
        let mut expected = self.repeats.expected(&around.seen, &self.trees[place]);
        let mut choice = Choice { place, depth: 0, node: 1, by: around.choices(), near: [ways[0], ways[1]] };
        let mut lines = Lines::none();
        loop {
            if Memory::needs_lines(choice.depth) {
                lines = Memory::lines(&ways, choice.node);
            }
            let mut inputs = [0.0; INPUTS];
            let recalled =
                self.memory.recall(&lines, choice.depth, choice.node, kind, &self.curve, &mut inputs[..2 * N]);
            self.repeats.recall(&expected, choice.depth, &self.curve, &mut inputs[2 * N..]);
            let (one, mixture) = self.mixing.mix(&mut inputs, &choice, &self.curve);
            let known = length > choice.depth && way >> (length - 1 - choice.depth) & 1 == 1;
            let came = self.coder.decide(one, known);
            self.mixing.learn(&inputs, &mixture, came, &self.curve);
            self.memory.learn(&lines, &recalled, came);
            self.repeats.learn(&mut expected, choice.depth, came);
            choice.depth += 1;
            choice.node = choice.node << 1 | u32::from(came);
            let code = choice.node - (1 << choice.depth);
            if let Some(byte) = self.trees[place].byte(choice.depth, code) {
                return Some(byte);
            }
            if choice.depth >= u32::from(DEEPEST) {
                return None;
            }
        }
    }
}

impl<C: Coder> Bytes for Model<C> {
    fn byte(&mut self, around: &mut Surroundings, known: u8) -> Option<u8> {
        let byte = self.decided(around, known)?;
        around.see(byte);
        self.repeats.go_on(&around.seen);
        Some(byte)
    }
}

//! Many predictions become one: weighted sums on the line of log odds, whose weights learn from how wrong they were (Mahoney,
//! “Adaptive weighing of context models for lossless data compression”, Florida Institute of Technology, CS-2005-16; from memory).

use alloc::vec;
use alloc::vec::Vec;
#[cfg(target_arch = "wasm32")]
use core::arch::wasm32::*;

use super::curve::{Curve, FAR};
use super::repeats::REPEATS;
use super::surroundings::{CHOICES, N, PLACES, spread};

/// What is mixed: two inputs from each way, one from each repetition, one that is always there, and one that fills up.
pub const INPUTS: usize = 2 * N + REPEATS + 2;
/// The input that is always there.
const ALWAYS: f32 = 0.3;
/// Mixers; what each chooses its weights by is in `Choice`.
const MIXERS: usize = 3;
/// Nodes of a tree with weights of their own; further ones go by their depth.
const NODES: usize = 32;
const DEPTHS: usize = 16;
const SETS: [usize; MIXERS] = [PLACES * (NODES + DEPTHS), CHOICES[0], CHOICES[1]];
const WEIGHT_AT_FIRST: f32 = 0.17;
/// How fast weights learn: in the end, how many times faster at first, and in how many decisions that wears off.
const LEARNS: f32 = 0.004;
const EAGER: f32 = 5.0;
const CALM_AFTER: f32 = 100_000.0;
/// How fast the weights between mixers learn.
const LEARNS_LAST: f32 = 0.003;
/// Corrections of what was mixed: each for so many surroundings, as a power of two, in so many steps of odds.
const CORRECTIONS: usize = 2;
const CORRECTION_BITS: u32 = 11;
const STEPS: usize = 33;
const CORRECTS: f32 = 0.02;

type Inputs = [f32; INPUTS];

/// What a decision is mixed by.
pub struct Choice {
    pub place: usize,
    pub depth: u32,
    pub node: u32,
    /// Below `CHOICES`.
    pub by: [usize; 2],
    /// Two ways of seeing the surroundings, for the corrections.
    pub near: [u32; CORRECTIONS],
}

/// One decision's mixture.
pub struct Mixture {
    sets: [usize; MIXERS],
    odds: [f32; MIXERS],
    last: usize,
    chance: f32,
    corrections: [usize; CORRECTIONS],
}

/// All weights.
pub struct Mixing {
    weights: [Vec<Inputs>; MIXERS],
    last: Vec<[f32; MIXERS]>,
    corrections: Vec<f32>,
    decisions: u32,
}

/// In four sums at once, as processors like it; the order is part of the format.
#[cfg(not(target_arch = "wasm32"))]
fn sum_of_products(one: &Inputs, other: &Inputs) -> f32 {
    let mut sums = [0.0; 4];
    for (one, other) in one.chunks_exact(4).zip(other.chunks_exact(4)) {
        for lane in 0..4 {
            sums[lane] += one[lane] * other[lane];
        }
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3])
}

/// Adds `by` times the inputs to the weights.
#[cfg(not(target_arch = "wasm32"))]
fn add(weights: &mut Inputs, inputs: &Inputs, by: f32) {
    for (weight, input) in weights.iter_mut().zip(inputs) {
        *weight += by * input;
    }
}

/// The same bits from four numbers at once: a tenth less time for the whole than what the compiler makes of the above.
#[cfg(target_arch = "wasm32")]
fn sum_of_products(one: &Inputs, other: &Inputs) -> f32 {
    let mut sums = f32x4_splat(0.0);
    for at in (0..INPUTS).step_by(4) {
        sums = f32x4_add(sums, f32x4_mul(four(one, at), four(other, at)));
    }
    let lane = [
        f32x4_extract_lane::<0>(sums),
        f32x4_extract_lane::<1>(sums),
        f32x4_extract_lane::<2>(sums),
        f32x4_extract_lane::<3>(sums),
    ];
    (lane[0] + lane[1]) + (lane[2] + lane[3])
}

/// See above.
#[cfg(target_arch = "wasm32")]
fn add(weights: &mut Inputs, inputs: &Inputs, by: f32) {
    let by = f32x4_splat(by);
    for at in (0..INPUTS).step_by(4) {
        let sum = f32x4_add(four(weights, at), f32x4_mul(by, four(inputs, at)));
        // There are four of them: `INPUTS` is a multiple of four.
        unsafe { v128_store(weights.as_mut_ptr().add(at).cast(), sum) };
    }
}

#[cfg(target_arch = "wasm32")]
fn four(of: &Inputs, at: usize) -> v128 {
    unsafe { v128_load(of.as_ptr().add(at).cast()) }
}

impl Mixing {
    /// Nothing learnt.
    pub fn new(curve: &Curve) -> Self {
        let steps: Vec<f32> = (0..STEPS)
            .map(|step| curve.chance(Curve::within(step as f32 * (2.0 * FAR / (STEPS - 1) as f32) - FAR)))
            .collect();
        Self {
            weights: SETS.map(|sets| vec![[WEIGHT_AT_FIRST; INPUTS]; sets]),
            last: vec![[1.0 / MIXERS as f32; MIXERS]; PLACES * DEPTHS],
            corrections: steps.repeat(CORRECTIONS << CORRECTION_BITS),
            decisions: 0,
        }
    }

    /// Mixes the inputs, of which the last two are this mixer's own. Gives the chance of a one, in 65,536ths, from 1 to 65,535.
    pub fn mix(&self, inputs: &mut Inputs, choice: &Choice, curve: &Curve) -> (u32, Mixture) {
        inputs[INPUTS - 2] = ALWAYS;
        let depth = (choice.depth as usize).min(DEPTHS - 1);
        let node = if choice.node < NODES as u32 { choice.node as usize } else { NODES + depth };
        let sets = [choice.place * (NODES + DEPTHS) + node, choice.by[0], choice.by[1]];
        let mut odds = [0.0; MIXERS];
        for mixer in 0..MIXERS {
            odds[mixer] = Curve::within(sum_of_products(&self.weights[mixer][sets[mixer]], inputs));
        }
        let last = choice.place * DEPTHS + depth;
        let mixed = Curve::within(odds.iter().zip(&self.last[last]).map(|(odds, weight)| odds * weight).sum());
        let chance = curve.chance(mixed);

        let step = (mixed + FAR) * ((STEPS - 1) as f32 / (2.0 * FAR));
        let below = (step as usize).min(STEPS - 2);
        let beyond = step - below as f32;
        let mut corrected = 2.0 * chance;
        let mut corrections = [0; CORRECTIONS];
        for (one, correction) in corrections.iter_mut().enumerate() {
            let around = spread(choice.near[one], choice.node) >> (32 - CORRECTION_BITS);
            let at = ((one << CORRECTION_BITS) + around as usize) * STEPS + below;
            corrected += self.corrections[at] * (1.0 - beyond) + self.corrections[at + 1] * beyond;
            *correction = at + usize::from(beyond > 0.5);
        }
        let one = ((corrected / 4.0 * 65_536.0) as u32).clamp(1, 65_535);
        (one, Mixture { sets, odds, last, chance, corrections })
    }

    /// Learns from how a decision came out.
    pub fn learn(&mut self, inputs: &Inputs, mixture: &Mixture, came: bool, curve: &Curve) {
        let came = if came { 1.0 } else { 0.0 };
        let rate = LEARNS * (1.0 + EAGER / (1.0 + self.decisions as f32 / CALM_AFTER));
        for mixer in 0..MIXERS {
            self.last[mixture.last][mixer] += (came - mixture.chance) * LEARNS_LAST * mixture.odds[mixer];
            let by = (came - curve.chance(mixture.odds[mixer])) * rate;
            add(&mut self.weights[mixer][mixture.sets[mixer]], inputs, by);
        }
        for at in mixture.corrections {
            self.corrections[at] += (came - self.corrections[at]) * CORRECTS;
        }
        self.decisions += 1;
    }
}

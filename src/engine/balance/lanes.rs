//! Eight numbers side by side: the same operation on each, in the same order as one alone, and so with the same bits.

/// How many numbers go side by side.
pub const WIDTH: usize = 8;

/// Eight numbers with the operations that a day of a store needs. No number is ever NaN.
pub trait Lanes: Copy {
    /// Eight numbers.
    fn of(values: [f64; WIDTH]) -> Self;
    /// The numbers.
    fn values(self) -> [f64; WIDTH];
    /// One number eight times.
    fn all(value: f64) -> Self;
    /// Sums.
    fn plus(self, other: Self) -> Self;
    /// Differences.
    fn minus(self, other: Self) -> Self;
    /// Products.
    fn times(self, other: Self) -> Self;
    /// Quotients.
    fn over(self, other: Self) -> Self;
    /// The lesser of each pair.
    fn least(self, other: Self) -> Self;
    /// The greater of each pair.
    fn most(self, other: Self) -> Self;
    /// 1 where a number is above the other one, else 0.
    fn above(self, other: Self) -> Self;
    /// Takes a block of cases through its days with the instructions that these lanes are made of.
    fn go_on(
        block: &mut super::side_by_side::Block<Self>,
        frame: &super::side_by_side::Frame,
        most_days: usize,
    ) -> bool;
}

/// The lanes of this platform.
#[cfg(target_arch = "wasm32")]
pub type Eight = vector::Vector;
/// The lanes of this platform.
#[cfg(not(target_arch = "wasm32"))]
pub type Eight = Plain;

/// Lanes in ordinary code; a compiler may make vectors of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plain([f64; WIDTH]);

impl Plain {
    #[inline(always)]
    fn each(self, other: Self, make: impl Fn(f64, f64) -> f64) -> Self {
        let (Plain([a, b, c, d, e, f, g, h]), Plain([i, j, k, l, m, n, o, p])) = (self, other);
        Plain([make(a, i), make(b, j), make(c, k), make(d, l), make(e, m), make(f, n), make(g, o), make(h, p)])
    }
}

impl Lanes for Plain {
    #[inline(always)]
    fn of(values: [f64; WIDTH]) -> Self {
        Plain(values)
    }
    #[inline(always)]
    fn values(self) -> [f64; WIDTH] {
        self.0
    }
    #[inline(always)]
    fn all(value: f64) -> Self {
        Plain([value; WIDTH])
    }
    #[inline(always)]
    fn plus(self, other: Self) -> Self {
        self.each(other, |a, b| a + b)
    }
    #[inline(always)]
    fn minus(self, other: Self) -> Self {
        self.each(other, |a, b| a - b)
    }
    #[inline(always)]
    fn times(self, other: Self) -> Self {
        self.each(other, |a, b| a * b)
    }
    #[inline(always)]
    fn over(self, other: Self) -> Self {
        self.each(other, |a, b| a / b)
    }
    #[inline(always)]
    fn least(self, other: Self) -> Self {
        self.each(other, |a, b| if b < a { b } else { a })
    }
    #[inline(always)]
    fn most(self, other: Self) -> Self {
        self.each(other, |a, b| if a < b { b } else { a })
    }
    #[inline(always)]
    fn above(self, other: Self) -> Self {
        self.each(other, |a, b| if a > b { 1.0 } else { 0.0 })
    }
    fn go_on(
        block: &mut super::side_by_side::Block<Self>,
        frame: &super::side_by_side::Frame,
        most_days: usize,
    ) -> bool {
        block.days(frame, most_days)
    }
}

/// Vectors of WebAssembly. All browsers that can run the page have them (fixed-width SIMD, 2021 and 2023); their
/// functions ask for no `unsafe`, since a module with instructions that a browser doesn't know never starts.
#[cfg(target_arch = "wasm32")]
mod vector {
    use core::arch::wasm32::{
        f64x2, f64x2_add, f64x2_div, f64x2_extract_lane, f64x2_gt, f64x2_mul, f64x2_pmax, f64x2_pmin, f64x2_splat,
        f64x2_sub, v128, v128_and,
    };

    use super::super::side_by_side::{Block, Frame};
    use super::{Lanes, WIDTH};

    /// Four vectors of two numbers.
    #[derive(Clone, Copy)]
    pub struct Vector(v128, v128, v128, v128);

    /// Each operation on all four vectors.
    macro_rules! pairwise {
        ($($name:ident: $one:expr;)*) => {$(
            #[inline]
            #[target_feature(enable = "simd128")]
            fn $name(self, other: Self) -> Self {
                let one = $one;
                Vector(one(self.0, other.0), one(self.1, other.1), one(self.2, other.2), one(self.3, other.3))
            }
        )*};
    }

    impl Lanes for Vector {
        #[inline]
        #[target_feature(enable = "simd128")]
        fn of([a, b, c, d, e, f, g, h]: [f64; WIDTH]) -> Self {
            Vector(f64x2(a, b), f64x2(c, d), f64x2(e, f), f64x2(g, h))
        }
        #[inline]
        #[target_feature(enable = "simd128")]
        fn values(self) -> [f64; WIDTH] {
            let Vector(a, b, c, d) = self;
            [
                f64x2_extract_lane::<0>(a),
                f64x2_extract_lane::<1>(a),
                f64x2_extract_lane::<0>(b),
                f64x2_extract_lane::<1>(b),
                f64x2_extract_lane::<0>(c),
                f64x2_extract_lane::<1>(c),
                f64x2_extract_lane::<0>(d),
                f64x2_extract_lane::<1>(d),
            ]
        }
        #[inline]
        #[target_feature(enable = "simd128")]
        fn all(value: f64) -> Self {
            let both = f64x2_splat(value);
            Vector(both, both, both, both)
        }
        pairwise! {
            plus: f64x2_add;
            minus: f64x2_sub;
            times: f64x2_mul;
            over: f64x2_div;
            // The lesser (greater) without care for NaN and the sign of zero: b < a ? b : a, one instruction.
            least: f64x2_pmin;
            most: f64x2_pmax;
            above: |a, b| v128_and(f64x2_gt(a, b), f64x2_splat(1.0));
        }
        #[target_feature(enable = "simd128")]
        fn go_on(block: &mut Block<Self>, frame: &Frame, most_days: usize) -> bool {
            block.days(frame, most_days)
        }
    }
}

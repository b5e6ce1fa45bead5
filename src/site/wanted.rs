//! How sure the household wants to be of its water.

use crate::quantity::Share;

/// What is enough.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wanted {
    /// So many tenths of the whole years without a dry day, 1 to 10.
    GoodYears(u8),
    /// A share of days that aren't dry, 0 to 1 (time reliability).
    Days(Share),
    /// A share of the water wanted that is there, 0 to 1 (volumetric reliability).
    Water(Share),
}

impl Default for Wanted {
    /// Nine good years in ten.
    fn default() -> Self {
        Wanted::GoodYears(9)
    }
}

impl Wanted {
    /// What can be chosen, the most first.
    pub const CHOICES: [Wanted; 11] = [
        Wanted::GoodYears(10),
        Wanted::GoodYears(9),
        Wanted::GoodYears(8),
        Wanted::GoodYears(7),
        Wanted::GoodYears(5),
        Wanted::Days(Share::of_one(0.99)),
        Wanted::Days(Share::of_one(0.95)),
        Wanted::Days(Share::of_one(0.9)),
        Wanted::Water(Share::of_one(0.99)),
        Wanted::Water(Share::of_one(0.95)),
        Wanted::Water(Share::of_one(0.9)),
    ];

    /// The share that is wanted, 0 to 1, of what it counts.
    pub fn share(self) -> f64 {
        match self {
            Wanted::GoodYears(tenths) => f64::from(tenths) / 10.0,
            Wanted::Days(share) | Wanted::Water(share) => share.get(),
        }
    }
}

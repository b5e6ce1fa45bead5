//! What the quantities share, written once.

/// Makes a quantity: a bare number with its unit in the constructor's and the getter's name.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $unit:ident, $kind:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("From a number of ", stringify!($unit), ".")]
            pub const fn $unit(number: f64) -> Self {
                Self(number)
            }

            #[doc = concat!("The number of ", stringify!($unit), ".")]
            pub const fn get(self) -> f64 {
                self.0
            }
        }

        impl $crate::quantity::Quantity for $name {
            fn kind(&self) -> $crate::quantity::Kind {
                $crate::quantity::Kind::$kind
            }
            fn si(&self) -> f64 {
                self.0
            }
            fn set_si(&mut self, si: f64) {
                self.0 = si;
            }
        }
    };
}
pub(crate) use quantity;

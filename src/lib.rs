//! Eavewater.

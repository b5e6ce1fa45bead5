//! From today: how long the water lasts, under every weather that may come.
//!
//! [`ask`] reads a diary; [`futures`] makes the weathers; [`outlook`] says where to start; [`looking`] runs them in slices and answers.

pub mod ask;
pub mod expected;
pub mod futures;
pub mod looking;
pub mod outlook;
pub mod resampled;
pub mod standing;

//! From today: how long the water lasts, under every weather that may come.
//!
//! [`futures`] makes the weathers; [`outlook`] says where to start; [`looking`] runs them in slices and answers.

pub mod expected;
pub mod futures;
pub mod looking;
pub mod outlook;

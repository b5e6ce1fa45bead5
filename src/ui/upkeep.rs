//! Upkeep.

use leptos::prelude::*;

use super::Desk;
use super::element::{element, worded};
use crate::words;

/// Upkeep.
pub(crate) fn upkeep(desk: Desk) -> AnyView {
    let _ = desk;
    element("SECTION").class("upkeep").child(worded("H1", "Upkeep")).child(worded("P", words::diary::EMPTY)).into()
}

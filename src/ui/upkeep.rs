//! Upkeep.

use leptos::prelude::*;

use super::element::{element, worded};
use super::{Desk, water};
use crate::words;

/// Upkeep.
pub(crate) fn upkeep(desk: Desk) -> AnyView {
    element("SECTION")
        .class("upkeep")
        .child(worded("H1", "Upkeep"))
        .child(worded("P", words::diary::EMPTY))
        .child(water::of_site(desk))
        .into()
}

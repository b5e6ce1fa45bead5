//! The diary.

use leptos::prelude::*;

use super::Desk;
use super::element::{element, worded};
use crate::words;

/// The diary.
pub(crate) fn diary(desk: Desk) -> AnyView {
    let _ = desk;
    element("SECTION").class("diary").child(worded("H1", "Diary")).child(worded("P", words::diary::EMPTY)).into()
}

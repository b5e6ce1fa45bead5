//! The weeks ahead, from today's water.

use crate::app::model::KeptSite;
use crate::site::diary::Told;
use crate::words;

/// The weeks ahead as they are shown.
#[derive(Clone, Debug, PartialEq)]
pub struct AheadView {
    /// What is wanted before anything can be said.
    pub wanted: Option<&'static str>,
}

/// The weeks ahead of a site.
pub fn ahead(kept: &KeptSite) -> AheadView {
    let read = kept.diary.entries().iter().any(|entry| matches!(entry.told, Told::Level { .. }));
    AheadView { wanted: (!read).then_some(words::ahead::WRITE_A_READING) }
}

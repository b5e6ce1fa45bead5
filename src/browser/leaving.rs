//! The page is about to go.

use super::{Keeper, hear};

/// Has the browser ask before the page goes while something of it is not kept.
pub(super) fn listen(keeper: Keeper) {
    hear("beforeunload", move |event| {
        if !keeper.has_kept_all() {
            event.prevent_default();
        }
    });
}

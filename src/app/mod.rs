//! What the person is doing: the model, the events that change it, the effects that follow, and what is drawn.
//!
//! `update` is pure: an event changes the model and lists effects; `browser` carries these out and sends their results
//! back as events. `case` reckons the open site's outcome, `view` turns it into plain structs with words and figures chosen; `ui` only
//! draws them.

pub mod model;

pub mod event;

pub mod effect;

pub mod ahead;
pub mod case;
pub mod csv;
pub mod draft;
pub mod form;
pub mod keeping;
pub mod merging;
pub mod next;
pub mod sketch;
pub mod study;

pub mod update;
pub mod view;

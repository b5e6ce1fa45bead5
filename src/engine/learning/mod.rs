//! What the readings say of the system: between readings it is run with its measured rain, and what it should have
//! caught and used is fitted to what was read.
//!
//! [`timeline`] lays readings and rain along the days, [`draws`] what is known of water drawn; [`spans`] runs the system from each reading to the next;
//! [`fit`] finds capture, use and leak with their ranges; [`watch`] says when the last weeks are unlike the weeks before,
//! [`change`] what of them changed;
//! [`lesson`] does all of it in slices; [`calls`] names the work that it calls for.

pub mod calls;
pub mod change;
pub mod draws;
pub mod fit;
pub mod lesson;
pub mod spans;
pub mod timeline;
pub mod watch;

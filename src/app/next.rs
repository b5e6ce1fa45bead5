//! What to change next, trials and options: what happens there, and how far the work is.

use std::sync::Arc;

use crate::engine::question::Refusal;
use crate::engine::upgrades::{Beside, RankBy, Upgrades};
use crate::site::household::Site;
use crate::site::prices::Priced;
use crate::site::rain::Rain;
use crate::site::upgrade::Upgrade;

/// One thing that happened there.
#[derive(Clone, Debug)]
pub enum NextEvent {
    /// All changes are to be judged.
    Wanted,
    /// The page is free for some more of the work.
    GoOn,
    /// The work is to stop.
    Stopped,
    /// Another measure was chosen.
    RankedBy(RankBy),
    /// A price was entered.
    Priced(Priced, f64),
    /// A change to the house is to be looked at as a trial.
    Tried(Upgrade),
    /// So many steps of the sequence are to be looked at as a trial.
    StepsTried(usize),
    /// What is changed from now on goes to a trial.
    TrialOpened,
    /// The trial is to be kept as an option.
    OptionKept,
    /// An option is to be looked at as a trial.
    OptionOpened(usize),
    /// An option got a name.
    OptionNamed(usize, String),
    /// An option is to go.
    OptionRemoved(usize),
}

/// Work in hand and its results; they are not kept.
#[derive(Clone, Debug)]
pub struct Next {
    /// The measure that ranks.
    pub by: RankBy,
    /// The changes, judged or being judged.
    pub upgrades: Option<Box<Upgrades>>,
    /// Why the changes can't be judged.
    pub refused: Option<Refusal>,
    /// The site and its rain that the options were run for, and what they come to; `None` where they can't be run.
    pub beside: Option<OptionsRun>,
    /// Whether the next slice of the work is on its way.
    pub going: bool,
}

/// A site and its rain, with the work on its options.
pub type OptionsRun = (Arc<Site>, Arc<Rain>, Option<Box<Beside>>);

impl Next {
    /// Nothing in hand.
    pub const NONE: Next = Next { by: RankBy::Price, upgrades: None, refused: None, beside: None, going: false };

    /// The options, run or being run.
    pub fn beside(&self) -> Option<&Beside> {
        self.beside.as_ref()?.2.as_deref()
    }

    /// The same, to go on with.
    pub(super) fn beside_mut(&mut self) -> Option<&mut Beside> {
        self.beside.as_mut()?.2.as_deref_mut()
    }
}

impl PartialEq for Next {
    /// How far the options are follows from the rest of the model and the slices that were done.
    fn eq(&self, other: &Self) -> bool {
        let ran = |next: &Self| next.beside().map(|beside| beside.tallies().len());
        (self.by, self.going, &self.refused) == (other.by, other.going, &other.refused)
            && self.upgrades == other.upgrades
            && ran(self) == ran(other)
    }
}

//! Questions about size on their way: what is asked of which house, and how far it is.

use std::sync::Arc;

pub use crate::engine::question::Refusal;
pub use crate::engine::sizing::study::{Findings, Inquiry, Study};
use crate::site::household::Site;
use crate::site::rain::Rain;

/// The questions that the report answers, the first of them in short too.
pub const REPORTED: [Inquiry; 2] = [Inquiry::Smallest, Inquiry::Handbooks];

/// A question that was put.
#[derive(Clone, Debug)]
pub struct Order {
    /// Its number: a later question has a higher one, and answers to earlier ones are dropped.
    pub ticket: u32,
    /// What is asked.
    pub inquiry: Inquiry,
    /// Of which house.
    pub site: Arc<Site>,
    /// Under which rain.
    pub rain: Arc<Rain>,
}

impl PartialEq for Order {
    /// No two questions have one number.
    fn eq(&self, other: &Self) -> bool {
        self.ticket == other.ticket
    }
}

impl Order {
    /// The work before its first step.
    ///
    /// # Errors
    /// See [`Refusal`].
    pub fn begin(&self) -> Result<Study, Refusal> {
        Study::new(self.inquiry, &self.site, &self.rain)
    }
}

/// How far a question is.
#[derive(Clone, Debug, PartialEq)]
pub enum Standing {
    /// Not asked.
    Unasked,
    /// On its way, 0 to 1.
    Running(f64),
    /// Left before its end.
    Cancelled,
    /// Answered.
    Done(Answered),
}

/// An answer; large, and never changed.
#[derive(Clone, Debug)]
pub struct Answered(pub Arc<Result<Findings, Refusal>>);

impl PartialEq for Answered {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0)
    }
}

/// One question as it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// Whether its section is open.
    pub open: bool,
    /// How far it is.
    pub standing: Standing,
    /// What was asked last.
    pub order: Option<Order>,
}

/// All questions.
#[derive(Clone, Debug, PartialEq)]
pub struct Studies {
    /// In the order of [`Inquiry::ALL`].
    pub asked: [Asked; 4],
    /// The number of the last question.
    pub last_ticket: u32,
}

impl Default for Studies {
    /// The first question is open from the start.
    fn default() -> Self {
        let asked = |open| Asked { open, standing: Standing::Unasked, order: None };
        Self { asked: [asked(true), asked(false), asked(false), asked(false)], last_ticket: 0 }
    }
}

impl Studies {
    /// A question as it stands.
    pub fn of(&self, inquiry: Inquiry) -> &Asked {
        &self.asked[inquiry as usize]
    }

    /// The same, to be changed.
    pub fn of_mut(&mut self, inquiry: Inquiry) -> &mut Asked {
        &mut self.asked[inquiry as usize]
    }
}

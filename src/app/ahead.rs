//! Looking ahead: what was chosen there, and how far the work is.

use std::sync::Arc;

use chrono::NaiveDate;

use crate::app::model::KeptSite;
use crate::engine::ahead::ask::{By, Help, Why, Years, ask, helps};
use crate::engine::ahead::looking::{Ahead, Looking, Target};
use crate::engine::learning::lesson::{Learning, Lesson};
use crate::engine::learning::spans::Factors;
use crate::engine::rain::weather::Origin;
use crate::site::diary::Diary;
use crate::site::household::Site;
use crate::site::rain::Rain;

/// One thing that happened there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AheadEvent {
    /// The water is to last so many days.
    TargetChosen(usize),
    /// It is to last with this chance, 0 to 1.
    ChanceChosen(f64),
    /// The years to look at were chosen.
    YearsChosen(Years),
    /// Whether to go by what the readings show or by what is entered was chosen.
    BasisChosen(By),
}

/// What the household wants to know.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wishes {
    /// How many days the water is to last, 1 to 365.
    pub days: usize,
    /// With what chance, 0 to 1.
    pub chance: f64,
    /// Under which years.
    pub years: Years,
    /// By what.
    pub by: By,
}

impl Wishes {
    /// A quarter of a year, nine times in ten, under the years of the record, by what the readings show.
    pub const USUAL: Wishes = Wishes { days: 90, chance: 0.9, years: Years::Recorded, by: By::Readings };
}

/// What was found.
#[derive(Clone, Debug)]
pub struct Found {
    /// The answer.
    pub ahead: Ahead,
    /// What could be done, in the order of its steps.
    pub helps: Vec<Help>,
    /// Where the futures come from.
    pub origin: Origin,
    /// Tanks of which nothing was read, by name.
    pub unread: Vec<String>,
    /// What the stores hold when full, in L.
    pub capacity_l: f64,
    /// What the readings show instead of what is entered, where it was reckoned with.
    pub shown: Option<Factors>,
}

/// How far it is.
#[derive(Clone, Debug)]
pub enum Sight {
    /// It is being looked at.
    Looking,
    /// It can't be told.
    Refused(Why),
    /// It is told.
    Clear(Arc<Found>),
}

impl PartialEq for Sight {
    /// What was found is another where it was looked for anew.
    fn eq(&self, other: &Self) -> bool {
        match (self, other) {
            (Sight::Looking, Sight::Looking) => true,
            (Sight::Refused(why), Sight::Refused(other)) => why == other,
            (Sight::Clear(found), Sight::Clear(other)) => Arc::ptr_eq(found, other),
            _ => false,
        }
    }
}

/// What all of it follows from.
#[derive(Clone, Debug)]
struct Basis {
    site: Arc<Site>,
    rain: Option<Arc<Rain>>,
    diary: Arc<Diary>,
    today: NaiveDate,
    wishes: Wishes,
}

impl Basis {
    fn is_same_past(&self, other: &Basis) -> bool {
        let rain = match (&self.rain, &other.rain) {
            (Some(rain), Some(other)) => Arc::ptr_eq(rain, other),
            (None, None) => true,
            _ => false,
        };
        rain && Arc::ptr_eq(&self.site, &other.site)
            && Arc::ptr_eq(&self.diary, &other.diary)
            && self.today == other.today
    }

    fn is(&self, other: &Basis) -> bool {
        // The chance is only read off the answer.
        self.is_same_past(other) && Wishes { chance: other.wishes.chance, ..self.wishes } == other.wishes
    }
}

/// A day at a time, as what the readings say is run, costs more than days in a row.
const LESS_FOR_LEARNING: usize = 5;

/// The work in hand and its result; neither is kept.
#[derive(Clone, Debug)]
pub struct Lookout {
    /// What is wanted.
    pub wishes: Wishes,
    /// How far it is.
    pub sight: Sight,
    basis: Option<Basis>,
    work: Option<Box<(Looking, Found)>>,
    /// What the readings say.
    pub lesson: Option<Arc<Lesson>>,
    learning: Option<Box<Learning>>,
}

impl PartialEq for Lookout {
    fn eq(&self, other: &Self) -> bool {
        self.wishes == other.wishes
            && self.sight == other.sight
            && self.lesson == other.lesson
            && self.is_going() == other.is_going()
    }
}

impl Lookout {
    /// Nothing in hand.
    pub const NONE: Lookout =
        Lookout { wishes: Wishes::USUAL, sight: Sight::Looking, basis: None, work: None, lesson: None, learning: None };

    /// Whether work is left.
    pub fn is_going(&self) -> bool {
        self.work.is_some() || self.learning.is_some()
    }

    /// Begins anew where what the answer follows from has changed. While it is looked for under other wishes the answer
    /// before stays.
    pub fn turn_to(&mut self, kept: Option<&KeptSite>, today: NaiveDate) {
        let Some(kept) = kept else {
            *self = Lookout { wishes: self.wishes, ..Lookout::NONE };
            return;
        };
        let basis = Basis {
            site: Arc::clone(&kept.site),
            rain: kept.rain.clone(),
            diary: Arc::clone(&kept.diary),
            today,
            wishes: self.wishes,
        };
        if self.basis.as_ref().is_some_and(|before| before.is(&basis)) {
            return;
        }
        if !self.basis.as_ref().is_some_and(|before| before.is_same_past(&basis)) {
            self.learn(kept, today);
        }
        let same_house = self.basis.as_ref().is_some_and(|before| Arc::ptr_eq(&before.site, &basis.site));
        if !same_house || !matches!(self.sight, Sight::Clear(_)) {
            self.sight = Sight::Looking;
        }
        (self.work, self.basis) = (None, Some(basis));
        // What the readings show comes first where it counts.
        if self.learning.is_none() || self.wishes.by == By::Entered {
            self.look();
        }
    }

    /// Begins to look ahead.
    fn look(&mut self) {
        let Some(Basis { site, rain, diary, today, wishes }) = &self.basis else { return };
        let lesson = self.lesson.as_deref().filter(|_| wishes.by == By::Readings);
        match ask(site, rain.as_deref(), diary, *today, wishes.years, lesson) {
            Err(why) => self.sight = Sight::Refused(why),
            Ok(asked) => {
                let (helps, steps) = helps(&asked.outlook, site).into_iter().unzip();
                let stores = &asked.outlook.plan.stores;
                let tanks = asked.unread.iter().flat_map(|store| &stores[*store].tanks);
                let unread = tanks.filter_map(|tank| Some(site.system.tanks.get(*tank)?.name.clone())).collect();
                let capacity_l = stores.iter().map(|store| store.joined.live_capacity_l).sum();
                let shown = lesson.and_then(Lesson::contradicts);
                let found = Found { ahead: Ahead::default(), helps, origin: asked.origin, unread, capacity_l, shown };
                let looking = Looking::new(asked.outlook, Target { days: wishes.days }, steps);
                self.work = Some(Box::new((looking, found)));
            }
        }
    }

    /// Begins anew with what the readings say.
    fn learn(&mut self, kept: &KeptSite, today: NaiveDate) {
        self.lesson = None;
        self.learning = Learning::of(&kept.site, kept.rain.as_deref(), &kept.diary, today).map(Box::new);
    }

    /// Does a slice of what the readings say.
    fn learn_on(&mut self, days_a_slice: usize) {
        let Some(mut learning) = self.learning.take() else { return };
        let mut days = 0;
        while days < days_a_slice {
            days += learning.days();
            if !learning.step() {
                self.lesson = learning.lesson().map(Arc::new);
                if self.wishes.by == By::Readings {
                    self.look();
                }
                return;
            }
        }
        self.learning = Some(learning);
    }

    /// Does a slice of the work.
    pub fn go_on(&mut self, days_a_slice: usize) {
        let Some(mut work) = self.work.take() else { return self.learn_on(days_a_slice / LESS_FOR_LEARNING) };
        let mut days = 0;
        while days < days_a_slice {
            let next = work.0.next_days();
            if !work.0.step() {
                if let Some(ahead) = work.0.answer() {
                    work.1.ahead = ahead;
                    self.sight = Sight::Clear(Arc::new(work.1));
                }
                return;
            }
            days += next;
        }
        self.work = Some(work);
    }
}

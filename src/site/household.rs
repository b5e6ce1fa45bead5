//! A site: one house with its system and how it wants to be reckoned.

use super::prices::Prices;
use super::rain::MissingDays;
use super::system::System;
use super::trial::Trial;
use super::upkeep::Upkeep;
use super::wanted::Wanted;
use crate::quantity::{Range, Share};

/// One house. Its rain is kept beside it, being much larger.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Site {
    /// What the household calls it.
    pub name: String,
    /// When it was begun, in ms since 1970 (UTC), at most [`super::diary::LAST_MOMENT`]: it tells houses of one name apart, and
    /// knows one that got another name. None of the demo, of a copy, and of what was kept before this was.
    pub begun: Option<u64>,
    /// Its parts.
    pub system: System,
    /// How its balance is reckoned.
    pub reckoning: Reckoning,
    /// Trials kept beside it as options, [`super::trial::MOST_OPTIONS`] at most.
    pub options: Vec<Trial>,
    /// What changes cost.
    pub prices: Prices,
    /// How often its parts are seen to, where that isn't as usual.
    pub upkeep: Upkeep,
}

/// How a balance is reckoned.
#[derive(Clone, Debug, PartialEq)]
pub struct Reckoning {
    /// Share of what each tank holds over its outlet that is full on the first day, 0 to 1; dead storage is full. Tanks that
    /// nothing fills begin empty.
    pub start: Share,
    /// Share θ of a day's inflow that the day's uses may draw before it spills, 0 to 1: 0 is yield after spillage,
    /// 1 yield before spillage.
    pub inflow_first: Share,
    /// What is done about days that the record lacks.
    pub missing_days: MissingDays,
    /// What each month's rain is multiplied by, January to December, 0 to 3: below 1 for a drier future.
    pub rain_factors: [Share; 12],
    /// Generated years in place of the site's own, if they are wanted.
    pub generated: Option<GeneratedYears>,
    /// How sure the household wants to be of its water.
    pub wanted: Wanted,
}

/// Years drawn by a model of the place's rain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GeneratedYears {
    /// How many, within [`GENERATED_YEARS`].
    pub years: u16,
    /// Which draw: the same seed draws the same years everywhere.
    pub seed: u32,
    /// Coefficient of variation of annual rain where the household knows it, within [`ANNUAL_SPREAD`]; else the
    /// record's.
    pub spread: Option<Share>,
}

/// How many years may be generated.
pub const GENERATED_YEARS: Range = Range::new(10.0, 400.0);
/// What the coefficient of variation of annual rain may be.
pub const ANNUAL_SPREAD: Range = Range::new(0.0, 1.0);

impl GeneratedYears {
    /// A century of the first draw, spread as the record is.
    pub const CENTURY: GeneratedYears = GeneratedYears { years: 100, seed: 1, spread: None };
    /// Drawn from twelve means until a household chooses: so many answer within a blink on a slow phone.
    pub const OF_MEANS: GeneratedYears = GeneratedYears { years: 50, ..GeneratedYears::CENTURY };
}

/// What a month's rain may be multiplied by.
pub const RAIN_FACTOR: Range = Range::new(0.0, 3.0);

/// Most days that a year may lack before it is left out, until the household chooses (common practice, no source).
pub const USUAL_MISSING_DAYS: u16 = 30;

impl Default for Reckoning {
    /// Starts full, yield after spillage, years lacking more than 30 days left out, rain as it was, no generated years.
    fn default() -> Self {
        Self {
            start: Share::of_one(1.0),
            inflow_first: Share::of_one(0.0),
            missing_days: MissingDays::LeaveOutYears { with_more_than: USUAL_MISSING_DAYS },
            rain_factors: [Share::of_one(1.0); 12],
            generated: None,
            wanted: Wanted::default(),
        }
    }
}

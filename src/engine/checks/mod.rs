//! Whether each part is big enough, strong enough and safe: inputs, a published formula, a result with its margin.
//!
//! A check reads what the system knows, what was entered as a detail, and else a usual value, and says of each input
//! which it was. It judges; the sentences are in `words::checks`.

pub mod again;
pub mod figure;
pub mod flush;
pub mod gutter;
pub mod now;
pub mod outbuilding;
pub mod overflow;
pub mod pipe;
pub mod pipe_sizes;
pub mod portable;
pub mod standing;
pub mod storm;
pub mod supply;
pub mod trunk;
pub mod water;

use chrono::NaiveDate;

pub use self::figure::Figure;
use super::ahead::standing::Stands;
use super::question::Answer;
use super::treatment;
use crate::site::barrier::BarrierKind;
use crate::site::details::Detail;
use crate::site::household::Site;
use crate::site::part::PartId;
use crate::site::rain::Rain;
use crate::site::system::Part;
use crate::site::uses::Class;

/// What the checks are asked of.
#[derive(Clone, Copy)]
pub struct Asked<'a> {
    /// The site.
    pub site: &'a Site,
    /// Its rain, for the checks that run the balance anew.
    pub rain: Option<&'a Rain>,
    /// What the balance says, if it runs.
    pub answer: Option<&'a Answer>,
    /// What stands in the tanks by the readings, if there are any.
    pub read: Option<&'a Stands>,
    /// The day.
    pub today: NaiveDate,
}

/// What the storm of the site does in each of its tanks, in the order of the list.
pub fn storm_in_tanks(asked: &Asked<'_>) -> Vec<Check> {
    let mut checks = Vec::new();
    asked.site.system.tanks.iter().for_each(|tank| storm::of_tank(asked, tank, &mut checks));
    checks
}

/// What is checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Subject {
    /// Volume of a first-flush diverter for its roof.
    FlushVolume,
    /// Time in which a diverter empties.
    FlushDrain,
    /// Water lost through a diverter's hole in a storm.
    FlushLoss,
    /// What a diverter costs in a year.
    FlushYield,
    /// A feed's gutter.
    Gutter,
    /// A feed's downspouts and their outlets.
    Downspout,
    /// A feed's leaf screen.
    Screen,
    /// The pipe from a feed into its tank.
    Inlet,
    /// A tank's overflow.
    Overflow,
    /// The air gap of a tank that is filled from outside.
    AirGap,
    /// Flow through a trunk line at a difference of level.
    TrunkFlow,
    /// Difference of level while a trunk line's end is drawn on.
    TrunkDraw,
    /// Most that a tank's taps draw at once.
    PeakFlow,
    /// Pressure at the highest tap of a pumped supply.
    HighestTap,
    /// A pump's suction.
    Suction,
    /// A pressure vessel.
    Vessel,
    /// Energy, panel and battery of a supply.
    Power,
    /// A pump between two stores.
    Lift,
    /// Pressure at a tap that gravity supplies.
    Gravity,
    /// How long a portable tank lasts.
    PortableDays,
    /// What it weighs.
    PortableWeight,
    /// What a filling takes out of the store.
    PortableFill,
    /// The supply of an outbuilding off the same store.
    Outbuilding,
    /// House and outbuilding drawing at once.
    BothDraw,
    /// What a use takes from the others on the same water.
    Burden,
    /// Weight of a full tank on its soil.
    Pad,
    /// Wind on an empty tank.
    Wind,
    /// Flotation of a buried tank.
    Uplift,
    /// A storm at a feed.
    StormFeed,
    /// A storm in a tank's store.
    StormTank,
    /// What is on a roof and gets into its water.
    OnRoof,
    /// Chlorine for the water in a tank.
    Dose,
    /// What a barrier before a tap is worth.
    Barrier(BarrierKind),
}

impl Subject {
    /// All but barriers, from the roof down.
    pub const OF_PARTS: [Subject; 32] = [
        Subject::FlushVolume,
        Subject::FlushDrain,
        Subject::FlushLoss,
        Subject::FlushYield,
        Subject::Gutter,
        Subject::Downspout,
        Subject::Screen,
        Subject::Inlet,
        Subject::Overflow,
        Subject::AirGap,
        Subject::TrunkFlow,
        Subject::TrunkDraw,
        Subject::PeakFlow,
        Subject::HighestTap,
        Subject::Suction,
        Subject::Vessel,
        Subject::Power,
        Subject::Lift,
        Subject::Gravity,
        Subject::PortableDays,
        Subject::PortableWeight,
        Subject::PortableFill,
        Subject::Outbuilding,
        Subject::BothDraw,
        Subject::Burden,
        Subject::Pad,
        Subject::Wind,
        Subject::Uplift,
        Subject::StormFeed,
        Subject::StormTank,
        Subject::OnRoof,
        Subject::Dose,
    ];
}

/// Where an input comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Source {
    /// It is known from the system: as this figure.
    Known(Figure),
    /// It is a detail of a part or of the site.
    Detail {
        /// The part; none for the site.
        of: Option<PartId>,
        /// Which detail.
        detail: Detail,
        /// Whether it was entered; else it is the usual value.
        entered: bool,
    },
}

/// A value that a check went in with, in the unit that its kind is kept in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Where it comes from.
    pub source: Source,
    /// The value.
    pub value: f64,
}

/// What a check comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Enough.
    Holds,
    /// Not enough.
    Fails,
    /// Nothing to judge: a figure to know.
    Tells,
    /// Something is missing that has no usual value.
    Lacks,
    /// Outside the range in which the formula holds.
    Outside,
}

/// What there is and what is wanted, of one figure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Margin {
    /// What both are.
    pub of: Figure,
    /// What the part can do.
    pub has: f64,
    /// What it must do.
    pub wants: f64,
}

impl Margin {
    /// How much more there is than wanted, as a share of what is wanted; below 0 where it falls short. Infinite where
    /// nothing is wanted.
    pub fn spare(self) -> f64 {
        if self.wants > 0.0 { self.has / self.wants - 1.0 } else { f64::INFINITY }
    }
}

/// One check of one part.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// What is checked.
    pub subject: Subject,
    /// The part.
    pub part: PartId,
    /// What it went in with.
    pub inputs: Vec<Input>,
    /// What it found, on the way and at the end.
    pub found: Vec<(Figure, f64)>,
    /// What there is against what is wanted.
    pub margin: Option<Margin>,
    /// What it comes to.
    pub verdict: Verdict,
}

impl Check {
    /// A check without inputs yet, which tells.
    pub fn new(part: PartId, subject: Subject) -> Self {
        Self { subject, part, inputs: Vec::new(), found: Vec::new(), margin: None, verdict: Verdict::Tells }
    }

    /// Takes in what the system knows.
    pub fn known(&mut self, figure: Figure, value: f64) -> f64 {
        self.inputs.push(Input { source: Source::Known(figure), value });
        value
    }

    /// Takes in a detail of the part, or its usual value.
    pub fn detail(&mut self, asked: &Asked<'_>, detail: Detail) -> f64 {
        self.detail_of(asked, Some(self.part), detail, detail.row().usual)
    }

    /// Takes in a detail of the site, or its usual value.
    pub fn of_site(&mut self, asked: &Asked<'_>, detail: Detail) -> f64 {
        self.detail_of(asked, None, detail, detail.row().usual)
    }

    /// Takes in a detail of a part or of the site, or else this value.
    pub fn detail_of(&mut self, asked: &Asked<'_>, of: Option<PartId>, detail: Detail, usual: f64) -> f64 {
        let entered = asked.site.system.details.get(of, detail);
        let value = entered.unwrap_or(usual);
        let source = Source::Detail { of, detail, entered: entered.is_some() };
        if !self.inputs.iter().any(|input| input.source == source) {
            self.inputs.push(Input { source, value });
        }
        value
    }

    /// Notes what was found.
    pub fn finds(&mut self, figure: Figure, value: f64) -> f64 {
        self.found.push((figure, value));
        value
    }

    /// Judges: holds where there is at least what is wanted.
    pub fn judge(&mut self, of: Figure, has: f64, wants: f64) {
        self.margin = Some(Margin { of, has, wants });
        self.verdict = if has >= wants { Verdict::Holds } else { Verdict::Fails };
    }

    /// What was found or known of a figure; NaN where nothing was.
    pub fn figure(&self, figure: Figure) -> f64 {
        let found = self.found.iter().find(|(found, _)| *found == figure).map(|(_, value)| *value);
        let known = || self.inputs.iter().find(|input| input.source == Source::Known(figure)).map(|input| input.value);
        found.or_else(known).unwrap_or(f64::NAN)
    }

    /// The value that a detail went in with; NaN where it did not.
    pub fn went_in(&self, wanted: Detail) -> f64 {
        let is = |input: &&Input| matches!(input.source, Source::Detail { detail, .. } if detail == wanted);
        self.inputs.iter().find(is).map_or(f64::NAN, |input| input.value)
    }

    /// Whether somebody has entered a detail that went in.
    pub fn was_entered(&self, wanted: Detail) -> bool {
        let is =
            |input: &Input| matches!(input.source, Source::Detail { detail, entered: true, .. } if detail == wanted);
        self.inputs.iter().any(is)
    }

    /// Whether it is not enough.
    pub fn fails(&self) -> bool {
        self.verdict == Verdict::Fails
    }

    /// Whether the verdict rests on a size of the part that nobody has entered yet.
    pub fn is_guess(&self) -> bool {
        // A question that was answered with yes stands, whatever the others are.
        let answers = self.subject == Subject::OnRoof;
        !answers
            && self.inputs.iter().any(|input| match input.source {
                Source::Detail { of: Some(_), detail, entered } => !entered && !detail.is_wish(),
                _ => false,
            })
    }
}

/// The place of a choice that was kept as a number.
pub fn chosen(value: f64) -> usize {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a detail within its range")]
    let at = value as usize;
    at
}

/// The checks of a part; those that run the balance anew are in [`again`].
pub fn of_part(asked: &Asked<'_>, part: PartId) -> Vec<Check> {
    let mut checks = Vec::new();
    match asked.site.system.part(part) {
        Some(Part::Feed(feed)) => {
            gutter::checks(asked, &feed, &mut checks);
            flush::checks(asked, &feed, &mut checks);
            storm::of_feed(asked, &feed, &mut checks);
        }
        Some(Part::Tank(tank)) => {
            overflow::checks(asked, &tank, &mut checks);
            storm::of_tank(asked, &tank, &mut checks);
            standing::checks(asked, &tank, &mut checks);
            supply::of_tank(asked, &tank, &mut checks);
            checks.push(treatment::parts::dose(asked, &tank));
        }
        Some(Part::Pump(pump)) => supply::of_pump(asked, &pump, &mut checks),
        Some(Part::Use(using)) => {
            portable::checks(asked, &using, &mut checks);
            if let Some(tank) = using.tank.and_then(|id| asked.site.system.tank(id)) {
                supply::of_use(asked, &using, tank, &mut checks);
                if using.class != Class::Travel {
                    outbuilding::checks(asked, &using, tank, &mut checks);
                }
            }
        }
        Some(Part::TrunkLine(line)) => trunk::checks(asked, &line, &mut checks),
        Some(Part::Section(section)) => checks.push(treatment::parts::roof(asked, &section)),
        _ => {}
    }
    checks
}

/// The checks of all parts, from the roof down.
pub fn of_all(asked: &Asked<'_>) -> Vec<Check> {
    let parts = asked.site.system.parts();
    parts
        .iter()
        .flat_map(|part| of_part(asked, part.id()).into_iter().chain(again::of_part(asked, part.id())))
        .collect()
}

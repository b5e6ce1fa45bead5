//! The sketch as it is shown: its answer at once.

use crate::app::model::{Model, Notice};
use crate::app::sketch::{MeansError, Sketch, SketchRain, means, usual_height};
use crate::engine::question::{Refusal, answer_under, weather};
use crate::engine::rain::weather::{Origin, Weather};
use crate::engine::sizing::least_storage::LeastStorage;
use crate::engine::sizing::smallest::{Found, Sought};
use crate::quantity::{Kind, Units, Volume, shown};
use crate::site::edit::CAPACITY;
use crate::site::household::Site;
use crate::site::wanted::Wanted;
use crate::words::{self, sizing, sketch as say};

/// The days that the sketch is run on, made once for its rain; none without rain.
pub struct SketchDays {
    days: Option<Result<Weather, Refusal>>,
    /// What twelve means come to in a year, in mm.
    means: Option<f64>,
    /// How a year's total was spread over its months, in words.
    spread: Option<String>,
    units: Units,
}

impl SketchDays {
    /// Whether there is rain that can be run on.
    pub fn is_rain(&self) -> bool {
        matches!(self.days, Some(Ok(_)))
    }
}

/// The days of a sketch's rain.
pub fn days(rain: SketchRain, model: &Model) -> SketchDays {
    let found = rain.of(model);
    let site = Site { reckoning: rain.reckoning(model), ..Site::default() };
    let days = found.as_deref().map(|rain| weather(&site, rain));
    let means = match rain {
        SketchRain::Means(totals_mm) => Some(totals_mm.iter().sum()),
        SketchRain::Year(total) => Some(total.mm),
        SketchRain::None | SketchRain::Of(_) | SketchRain::Read => None,
    };
    let spread = if let SketchRain::Year(total) = &rain { Some(say::spread(total)) } else { None };
    SketchDays { days, means, spread, units: model.units.clone() }
}

/// The answer of the sketch.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SketchView {
    /// The answer, or what is wanted for one.
    pub headline: String,
    /// Its range, in short.
    pub chance: String,
    /// How sure that is, and what is thin about it.
    pub notes: Vec<String>,
}

/// The answer of a sketch on the days of its rain.
pub fn answered(sketch: &Sketch, under: &SketchDays) -> SketchView {
    let told = |headline: String| SketchView { headline, ..SketchView::default() };
    let weather = match &under.days {
        None => return told(say::NO_ANSWER.to_owned()),
        Some(Err(refusal)) => return told(words::errors::refusal(refusal).unwrap_or_default()),
        Some(Ok(weather)) => weather,
    };
    let site = sketch.site();
    match answer_under(&site, weather) {
        Err(refusal) => told(words::errors::refusal(&refusal).unwrap_or_default()),
        Ok(answer) => {
            let good_years = answer.good_years.filter(|_| answer.origin != Origin::Even);
            let mut notes: Vec<String> = good_years.iter().map(sizing::good_years).collect();
            if under.means.is_some() {
                notes.push(say::GENERATED.to_owned());
                notes.extend(under.spread.clone());
            } else {
                notes.extend(sizing::reservations(&answer));
            }
            let (fell_l, days) = (answer.total.roof_rain_l, answer.series.dates.len());
            let rain_mm = answer.series.rain_mm.iter().sum();
            notes.push(say::reaches_tank([fell_l, answer.came_l()], rain_mm, days, &under.units));
            notes.push(say::BEGINS_FULL.to_owned());
            notes.push(say::SIZE.to_owned());
            let roof = site.system.sections.first().zip(site.system.feeds.first());
            notes.extend(roof.and_then(|(section, feed)| say::taken_for_granted(section, feed, &under.units)));
            let mut headline = sizing::headline(&answer);
            if let Some(doubt) = under.means.and_then(|mm| words::rain::means_doubt(mm, &under.units)) {
                headline = [doubt, headline].join(" ");
            }
            SketchView { headline, chance: good_years.map(|good| say::chance(good.range)).unwrap_or_default(), notes }
        }
    }
}

/// The tank from which others are sought: neither a barrel nor a cistern.
pub const ANY_TANK: Volume = Volume::litres(10_000.0);

/// What the search for the least tank came to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Size {
    /// There is nothing to seek: no days, no whole year of them, or no use.
    Unasked,
    /// No tank does it.
    None,
    /// From the one order within a day to the other, in L.
    Between([f64; 2]),
}

/// The search for the least tank of a sketch on its way.
pub struct SizeSought {
    sketch: Sketch,
    weather: Weather,
    search: LeastStorage,
    left: u8,
}

impl SizeSought {
    /// The search for a sketch, whatever its tank; none where there is nothing to seek.
    pub fn new(sketch: &Sketch, under: &SketchDays) -> Option<Self> {
        /// A tank much smaller than that from which it is sought is kept lower, and has more dead storage: it is sought again
        /// from itself, so often at most.
        const FURTHER: u8 = 3;
        let Some(Ok(weather)) = &under.days else { return None };
        let sketch = sketch.with_tank(ANY_TANK);
        let site = sketch.site();
        if Sought::Uses.of(&site) <= 0.0 {
            return None;
        }
        let search = LeastStorage::new(site, weather)?;
        Some(Self { sketch, weather: weather.clone(), search, left: FURTHER })
    }

    /// Does a small piece of the work; whether some is left.
    pub fn step(&mut self) -> bool {
        if self.search.step() {
            return true;
        }
        let Size::Between([_, most_l]) = self.found() else { return false };
        let tank = Volume::litres(most_l.max(CAPACITY.least));
        if self.left == 0 || usual_height(tank) == usual_height(self.sketch.tank) {
            return false;
        }
        self.left -= 1;
        self.sketch.tank = tank;
        match LeastStorage::new(self.sketch.site(), &self.weather) {
            Some(next) => self.search = next,
            None => return false,
        }
        true
    }

    /// What was found, once nothing is left to do.
    pub fn found(&self) -> Size {
        let does = |found: Found| match found {
            Found::Enough { factor, .. } | Found::EvenAt { factor, .. } => Some(factor * self.sketch.tank.get()),
            Found::NotEvenAt { .. } | Found::CannotRun => None,
        };
        match self.search.found().map(|found| found.map(does)) {
            Some([Some(after), Some(before)]) => Size::Between([after.min(before), after.max(before)]),
            Some(_) => Size::None,
            None => Size::Unasked,
        }
    }
}

/// The least tank in words.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SizeFound {
    /// In words; empty where there was nothing to seek.
    pub told: String,
    /// The tank to take, in L: enough under both orders, up to two digits; none where no tank does it.
    pub tank_l: Option<f64>,
}

/// What the search came to, in words.
pub fn size_found(size: Size, units: &Units) -> SizeFound {
    let wanted = Wanted::default();
    let [least, most] = match size {
        Size::Unasked => return SizeFound::default(),
        Size::None => return SizeFound { told: say::no_tank(wanted), tank_l: None },
        Size::Between(sizes) => sizes,
    };
    let up = |litres: f64| shown::up_in_two_digits(litres, Kind::Volume, units);
    SizeFound { told: say::tank_wanted(up(least), up(most), wanted, units), tank_l: Some(up(most)) }
}

/// What twelve typed means amount to, or what is wrong with them.
pub fn twelve(text: &str, units: &Units) -> Result<SketchRain, String> {
    means(text, units).map(SketchRain::Means).map_err(|error| match error {
        MeansError::Count(found) => say::not_twelve(found),
        MeansError::NotADepth(text) => say::not_a_depth(&text),
    })
}

/// Twelve means as they are typed.
pub fn typed(means_mm: &[f64; 12], units: &Units) -> String {
    let number = |mm: &f64| shown::significant(shown::in_unit(*mm, Kind::Depth, units), 4);
    means_mm.iter().map(number).collect::<Vec<_>>().join(" ")
}

/// The file of the sketch's rain.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct FileView {
    /// What was read from it, in words: nothing while nothing waits.
    pub found: Vec<String>,
    /// The units that it could be in, with words, and the one that it was read in.
    pub units: Option<super::rain::UnitChoice>,
    /// Why it could not be read.
    pub refused: Option<String>,
}

/// What came of the file that was chosen.
pub fn file(model: &Model) -> FileView {
    let refused = match &model.notice {
        Some(Notice::RainRefused(error)) => Some(words::errors::rain(error)),
        _ => None,
    };
    let Some(waiting) = &model.read_rain else { return FileView { refused, ..FileView::default() } };
    let view = super::rain::waiting_view(waiting, &model.units);
    let mut found = vec![format!("{}: {} {}", view.source, view.summary, view.mean_year)];
    found.extend(view.doubts.into_iter().chain(view.notes));
    FileView { found, units: Some((view.units, view.unit)), refused }
}

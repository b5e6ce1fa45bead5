//! A house from a few facts.

use std::sync::Arc;

use super::model::Model;
use crate::engine::checks::flush::TEXAS_MOST;
use crate::quantity::{Area, Bore, Count, Flow, Kind, Length, Range, Share, Units, Volume, shown, typed};
use crate::records::cupboard::SiteId;
use crate::site::feed::{Diverter, Drain, Feed, USUAL_CAPTURE, USUAL_DIVERTER};
use crate::site::household::{GeneratedYears, Reckoning, Site};
use crate::site::new_part;
use crate::site::part::PartId;
use crate::site::rain::{Normals, Rain, YearTotal};
use crate::site::roof::{Material, Outlet, RoofSection};
use crate::site::system::System;
use crate::site::uses::{Amount, Class, Use};
use crate::words;

/// What a person says of a house on its lawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Sketch {
    /// What to call it.
    pub name: String,
    /// The moment at which it is kept, in ms since 1970 (UTC).
    pub begun: Option<u64>,
    /// Plan length of the roof, above 0; its width follows from the area.
    pub length: Length,
    /// Plan area of the roof.
    pub roof: Area,
    /// What it is covered with.
    pub material: Material,
    /// People who live there.
    pub people: Count,
    /// Water for each a day.
    pub per_head: Flow,
    /// Water for anything else a day, 0 for none.
    pub other: Flow,
    /// Capacity of the tank.
    pub tank: Volume,
    /// Its rain.
    pub rain: SketchRain,
}

/// Where the rain of a sketch comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SketchRain {
    /// Not said yet.
    None,
    /// It is that of a site on this phone.
    Of(SiteId),
    /// The record that was read and waits.
    Read,
    /// Twelve monthly means in mm.
    Means([f64; 12]),
    /// A year's total, and when most of it falls.
    Year(YearTotal),
}

/// What a monthly mean may be, in mm.
const MONTHLY: Range = Range::new(0.0, 5_000.0);

/// Why a text is not twelve monthly means.
#[derive(Clone, Debug, PartialEq)]
pub enum MeansError {
    /// There are so many values, not twelve.
    Count(usize),
    /// This is no depth of rain, or one that no month has.
    NotADepth(String),
}

/// Twelve monthly means, January first, with spaces, semicolons or new lines between, or nothing but commas; a number
/// without a unit is in the person's own.
///
/// # Errors
/// See [`MeansError`].
pub fn means(text: &str, units: &Units) -> Result<[f64; 12], MeansError> {
    let mut read = Vec::new();
    let between = |letter: char| letter.is_whitespace() || letter == ';' || letter == ':';
    // More than one comma and nothing else between: they are no decimal commas.
    let only_commas = text.matches(',').count() > 1 && !text.trim().contains(between);
    let words = text.split(|letter: char| between(letter) || only_commas && letter == ',');
    let mut words: Vec<&str> = words.map(|word| word.trim_end_matches(',')).filter(|word| !word.is_empty()).collect();
    // The names of the months may stand beside them; a unit is none.
    let is_unit = |word: &str| typed::quantity(&format!("1 {word}"), Kind::Depth, units).is_ok();
    let is_name = |word: &str| !word.contains(|letter: char| letter.is_ascii_digit()) && !is_unit(word);
    if words.iter().filter(|word| is_name(word)).count() == 12 {
        words.retain(|word| !is_name(word));
    }
    for word in words {
        let depth = typed::quantity(word, Kind::Depth, units).ok().map(|typed| typed.si);
        read.push(depth.filter(|mm| MONTHLY.holds(*mm)).ok_or_else(|| MeansError::NotADepth(word.to_owned()))?);
    }
    let count = read.len();
    read.try_into().map_err(|_| MeansError::Count(count))
}

impl SketchRain {
    /// How it is run.
    pub fn reckoning(&self, model: &Model) -> Reckoning {
        let usual = Reckoning::default();
        match self {
            SketchRain::Of(id) => match model.sites.iter().find(|kept| kept.id == *id) {
                Some(kept) => {
                    let Reckoning { missing_days, rain_factors, generated, .. } = kept.site.reckoning.clone();
                    Reckoning { missing_days, rain_factors, generated, ..usual }
                }
                None => usual,
            },
            SketchRain::Means(_) | SketchRain::Year(_) => {
                Reckoning { generated: Some(GeneratedYears::OF_MEANS), ..usual }
            }
            SketchRain::None | SketchRain::Read => usual,
        }
    }

    /// The rain itself, if it is there.
    pub fn of(&self, model: &Model) -> Option<Arc<Rain>> {
        match self {
            SketchRain::None => None,
            SketchRain::Of(id) => model.sites.iter().find(|kept| kept.id == *id)?.rain.clone(),
            SketchRain::Read => {
                let waiting = model.read_rain.as_ref()?;
                Some(Arc::new(Rain::Record(waiting.import.record.clone())))
            }
            SketchRain::Means(totals_mm) => Some(normals(words::sketch::MEANS_SOURCE.to_owned(), *totals_mm)),
            SketchRain::Year(total) => {
                Some(normals(words::sketch::year_source(total, &model.units), total.by_month_mm()))
            }
        }
    }
}

fn normals(source: String, totals_mm: [f64; 12]) -> Arc<Rain> {
    Arc::new(Rain::Normals(Normals { source, totals_mm, rain_days: None }))
}

/// Height assumed for a sketched tank: 2 m, or less for a small one that would be a pipe (common practice, no source).
pub fn usual_height(capacity: Volume) -> Length {
    // A cylinder as high as it is wide holds π/4 h³.
    let as_wide_as_high = libm::pow(4.0 * capacity.get() / 1000.0 / std::f64::consts::PI, 1.0 / 3.0);
    Length::metres(as_wide_as_high.clamp(0.3, 2.0))
}

/// The diverter of a sketched roof: what the check of its volume wants (Texas Manual on Rainwater Harvesting 2005, from
/// memory) up to the next 5 L, and no less than the usual one. It is as high as that, and its chamber and hole are
/// wider in proportion, so that it empties in the same time and loses the same share through its hole.
fn diverter_for(roof: Area) -> Diverter {
    /// What a diverter may hold, in L, and its chamber measure, in m.
    const MOST_L: f64 = 5_000.0;
    const WIDEST_M: f64 = 1.0;
    let usual_l = USUAL_DIVERTER.volume.get();
    let litres = ((TEXAS_MOST * roof.get() / 5.0).ceil() * 5.0).clamp(usual_l, MOST_L);
    let wider = (litres / usual_l).sqrt();
    let drain = match USUAL_DIVERTER.drain {
        Drain::Hole { diameter } => Drain::Hole { diameter: Bore::metres(diameter.get() * wider) },
        other => other,
    };
    let chamber = Bore::metres((USUAL_DIVERTER.chamber.get() * wider).min(WIDEST_M));
    Diverter { volume: Volume::litres(litres), chamber, drain, ..USUAL_DIVERTER }
}

impl Sketch {
    /// What stands there before anything is said: round in the person's units, with the rain of the site that is open or
    /// else of one that has any.
    pub fn first(name: String, model: &Model) -> Self {
        let round = |si, kind| shown::round(si, kind, &model.units);
        let (length, width) = (round(15.0, Kind::Length), round(10.0, Kind::Length));
        let open = model.site().into_iter().chain(&model.sites).find(|kept| kept.rain.is_some());
        Sketch {
            name,
            begun: None,
            length: Length::metres(length),
            roof: Area::square_metres(length * width),
            material: Material::Metal,
            people: Count::number(2.0),
            per_head: Flow::litres_a_day(round(new_part::USUAL_PER_HEAD.get(), Kind::Flow)),
            other: Flow::litres_a_day(0.0),
            tank: Volume::litres(round(20_000.0, Kind::Volume)),
            rain: open.map_or(SketchRain::None, |kept| SketchRain::Of(kept.id)),
        }
    }

    /// Plan width of the roof, in m.
    pub fn width_m(&self) -> f64 {
        self.roof.get() / self.length.get()
    }

    /// Sets plan length and width, in m; the area follows.
    pub fn set_sides(&mut self, length_m: f64, width_m: f64) {
        self.length = Length::metres(length_m);
        self.roof = Area::square_metres(length_m * width_m);
    }

    /// The same with another tank and no name: what the least tank depends on.
    pub fn with_tank(&self, tank: Volume) -> Self {
        Self { name: String::new(), tank, ..self.clone() }
    }

    /// Its rain, if there is any.
    pub fn rain(&self, model: &Model) -> Option<Arc<Rain>> {
        self.rain.of(model)
    }

    /// The site with its rain: that of another site is run as it is there, monthly means as generated years, since even ones
    /// would tell too little.
    pub fn site_under(&self, model: &Model) -> Site {
        let mut site = self.site();
        site.reckoning = self.rain.reckoning(model);
        site
    }

    /// The site that it describes: one roof section, one feed with a diverter for that roof, one tank, one use or two.
    pub fn site(&self) -> Site {
        let ids = [1, 2, 3, 4, 5].map(PartId);
        let [section, feed, tank, using, other] = ids;
        let house = Use {
            id: using,
            name: phrase!("House", "Casa").to_owned(),
            class: Class::House,
            tank: Some(tank),
            amount: Amount::PerHead { each: self.per_head, heads: self.people },
            outdoor: false,
            barriers: Vec::new(),
        };
        let mut uses = vec![house.clone()];
        if self.other.get() > 0.0 {
            let name = phrase!("Animals and garden", "Animales y huerto").to_owned();
            uses.push(Use { id: other, name, class: Class::Animals, amount: Amount::Daily(self.other), ..house });
        }
        let system = System {
            sections: vec![RoofSection {
                id: section,
                name: phrase!("Roof", "Techo").to_owned(),
                material: self.material,
                area: self.roof,
                runoff_coefficient: self.material.runoff_coefficient(),
                wetting_loss: new_part::USUAL_WETTING_LOSS,
                outlets: vec![Outlet { feed, share: Share::of_one(1.0) }],
            }],
            feeds: vec![Feed {
                id: feed,
                name: phrase!("Downspout", "Bajante").to_owned(),
                tank: Some(tank),
                capture: USUAL_CAPTURE,
                diverter: Some(diverter_for(self.roof)),
            }],
            tanks: vec![new_part::tank(tank, phrase!("Tank", "Tanque").to_owned(), self.tank, usual_height(self.tank))],
            uses,
            ..System::default()
        };
        Site { name: self.name.clone(), begun: self.begun, system, ..Site::default() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::checks::{Asked, Subject, Verdict, of_part};
    use crate::engine::upgrades::candidates;
    use crate::quantity::Customary;
    use crate::site::upgrade::Upgrade;
    use crate::words::parts::new_name;

    #[test]
    fn twelve_means_are_read_in_the_persons_units() {
        let metric = Units::customary(Customary::Metric);
        let us = Units::customary(Customary::Us);
        let twelve = "80 70, 60;50 40 30.5 20 10 0 15\n25 1in";
        let read = means(twelve, &metric).map(|means| (means[0], means[5], means[8], means[11]));
        assert_eq!(read, Ok((80.0, 30.5, 0.0, 25.4)));
        assert_eq!(means("1 1 1 1 1 1 1 1 1 1 1 2.5", &us).map(|means| means[11]), Ok(2.5 * 25.4));
        assert_eq!(
            means("80,70,60.5,50,40,30,20,10,0,15,25,75\n", &metric).map(|means| (means[2], means[11])),
            Ok((60.5, 75.0))
        );
        assert_eq!(means("80,70,60", &metric), Err(MeansError::Count(3)));
        assert_eq!(means("80,5;70,5", &metric), Err(MeansError::Count(2)));
        assert_eq!(means("1 2 3", &metric), Err(MeansError::Count(3)));
        let named = "enero 80\nfebrero: 70\nmarzo 60\nabril 50\nmayo 40\njunio 30\njulio 20\nagosto 10\nseptiembre 0\noctubre 15\nnoviembre 25\ndiciembre 75";
        assert_eq!(means(named, &metric).map(|means| (means[0], means[11])), Ok((80.0, 75.0)));
        let inches = "1 in 1 in 1 in 1 in 1 in 1 in 1 in 1 in 1 in 1 in 1 in 1 in";
        assert_eq!(means(inches, &metric), Err(MeansError::NotADepth("in".to_owned())), "no bare number by mistake");
        assert_eq!(means("1 2 wet", &metric), Err(MeansError::NotADepth("wet".to_owned())));
        assert_eq!(means("1 2 -3", &metric), Err(MeansError::NotADepth("-3".to_owned())));
    }

    #[test]
    fn a_sketch_begins_round_in_every_set_of_units() {
        for (set, tank, side) in
            [(Customary::Metric, "20,000\u{a0}L", "15\u{a0}m"), (Customary::Us, "5,000\u{a0}gal", "50\u{a0}ft")]
        {
            let model = Model { units: Units::customary(set), ..Model::default() };
            let first = Sketch::first(String::new(), &model);
            assert_eq!(shown::entered(first.tank.get(), Kind::Volume, &model.units), tank);
            assert_eq!(shown::entered(first.length.get(), Kind::Length, &model.units), side);
        }
    }

    #[test]
    fn the_diverter_of_a_sketch_passes_its_own_checks() {
        for roof_m2 in [8.0, 24.5, 40.0, 150.0, 400.0, 2_000.0] {
            let sketch =
                Sketch { roof: Area::square_metres(roof_m2), ..Sketch::first(String::new(), &Model::default()) };
            let site = sketch.site();
            let asked =
                Asked { site: &site, rain: None, answer: None, read: None, today: chrono::NaiveDate::default() };
            let checks = of_part(&asked, site.system.feeds[0].id);
            for subject in [Subject::FlushVolume, Subject::FlushDrain, Subject::FlushLoss] {
                let check = checks.iter().find(|check| check.subject == subject);
                assert_eq!(check.map(|check| check.verdict), Some(Verdict::Holds), "{subject:?} of {roof_m2} m²");
            }
            // Nor is it told to take the hole of a narrower one.
            let changes = candidates(&site.system, &Units::customary(Customary::Metric), new_name);
            assert!(!changes.iter().any(|change| matches!(change, Upgrade::HoleBore { .. })), "{roof_m2} m²");
            // By hand: 2 US gal for 100 ft² is 0.815 L/m², so 122.3 L for 150 m².
            if roof_m2 == 150.0 {
                assert_eq!(site.system.feeds[0].diverter.as_ref().map(|diverter| diverter.volume.get()), Some(125.0));
            }
        }
    }

    #[test]
    fn sides_and_area_agree() {
        let mut sketch = Sketch::first(String::new(), &Model::default());
        sketch.set_sides(12.0, 8.0);
        assert_eq!((sketch.roof.get(), sketch.width_m()), (96.0, 8.0));
        sketch.roof = Area::square_metres(120.0);
        assert_eq!(sketch.width_m(), 10.0);
    }
}

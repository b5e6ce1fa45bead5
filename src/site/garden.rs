//! A garden whose watering follows the weather.

use super::part::{Choice, Field, Number};
use crate::quantity::{Area, Count, Length, Share};

/// A watered garden: what grows, in which soil, and how it is watered.
#[derive(Clone, Debug, PartialEq)]
pub struct Garden {
    /// Watered area, 0 to 100,000 m².
    pub area: Area,
    /// What grows there.
    pub crop: Crop,
    /// Crop coefficient K_c, 0.1 to 1.5: what it drinks as a multiple of the reference evapotranspiration.
    pub crop_coefficient: Count,
    /// First month in which it grows and is watered, 0 to 11.
    pub grows_from: u8,
    /// Last month in which it grows and is watered, 0 to 11; before the first it is that of the next year.
    pub grows_to: u8,
    /// The soil.
    pub soil: Soil,
    /// Water that plants can draw from the soil between field capacity and wilting point, as a share of its volume,
    /// 0.02 to 0.4.
    pub available_water: Share,
    /// Depth of the roots, 0.1 to 3 m.
    pub root_depth: Length,
    /// Share p of the available water that may be gone before plants suffer, 0.05 to 0.9.
    pub depletion: Share,
    /// How it is watered.
    pub watering: Watering,
    /// Share of the water drawn that reaches the roots, 0.1 to 1.
    pub efficiency: Share,
}

/// What grows in a garden.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Crop {
    /// Leaf vegetables, roots, onions.
    Vegetables,
    /// Tomatoes and peppers.
    Tomatoes,
    /// Beans and peas.
    Beans,
    /// Squash, cucumbers, melons.
    Squash,
    /// Berry bushes.
    Berries,
    /// Fruit trees.
    FruitTrees,
    /// Lawn of cool-season grass.
    CoolLawn,
    /// Lawn of warm-season grass.
    WarmLawn,
    /// Something else: its numbers are the household's own.
    Other,
}

impl Crop {
    /// All crops.
    pub const ALL: [Crop; 9] = [
        Crop::Vegetables,
        Crop::Tomatoes,
        Crop::Beans,
        Crop::Squash,
        Crop::Berries,
        Crop::FruitTrees,
        Crop::CoolLawn,
        Crop::WarmLawn,
        Crop::Other,
    ];

    /// Crop coefficient in mid-season, depth of roots in m and depletion p at which it begins to suffer; `None` where
    /// they are the household's own.
    ///
    /// Source: FAO Irrigation and Drainage Paper 56, Table 12 (K_c mid; where a family has one value, that) and
    /// Table 22 (root depth: near the lower end, gardens being watered often; p), from memory.
    pub const fn usual(self) -> Option<(f64, f64, f64)> {
        Some(match self {
            Crop::Vegetables => (1.05, 0.4, 0.35),
            Crop::Tomatoes => (1.15, 0.7, 0.40),
            Crop::Beans => (1.05, 0.5, 0.45),
            Crop::Squash => (1.0, 0.6, 0.50),
            Crop::Berries => (1.05, 0.6, 0.50),
            Crop::FruitTrees => (0.95, 1.0, 0.50),
            Crop::CoolLawn => (0.95, 0.5, 0.40),
            Crop::WarmLawn => (0.85, 0.5, 0.50),
            Crop::Other => return None,
        })
    }
}

/// Kinds of soil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Soil {
    /// Sand.
    Sand,
    /// Sandy loam.
    SandyLoam,
    /// Loam.
    Loam,
    /// Silt loam.
    SiltLoam,
    /// Clay.
    Clay,
    /// Something else, measured or known.
    Other,
}

impl Soil {
    /// All soils.
    pub const ALL: [Soil; 6] = [Soil::Sand, Soil::SandyLoam, Soil::Loam, Soil::SiltLoam, Soil::Clay, Soil::Other];

    /// Field capacity less wilting point, as a share of the soil's volume; `None` where it is the household's own.
    ///
    /// Source: FAO-56, Table 19, the middle of each range (sand 0.05–0.11, sandy loam 0.11–0.15, loam 0.13–0.18, silt
    /// loam 0.13–0.19, clay 0.12–0.20), from memory.
    pub const fn available_water(self) -> Option<f64> {
        Some(match self {
            Soil::Sand => 0.08,
            Soil::SandyLoam => 0.13,
            Soil::Loam => 0.155,
            Soil::SiltLoam | Soil::Clay => 0.16,
            Soil::Other => return None,
        })
    }
}

/// Ways of watering.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Watering {
    /// Drip lines.
    Drip,
    /// Can or hose at the foot of the plants.
    ByHand,
    /// Sprinkler.
    Sprinkler,
    /// Furrows or basins.
    Furrow,
    /// Something else, measured or known.
    Other,
}

impl Watering {
    /// All ways.
    pub const ALL: [Watering; 5] =
        [Watering::Drip, Watering::ByHand, Watering::Sprinkler, Watering::Furrow, Watering::Other];

    /// Share of the water that reaches the roots; `None` where it is the household's own.
    ///
    /// Source: FAO Irrigation Water Management Training Manual 4, Annex I (field application efficiency: drip 90 %,
    /// sprinkler 75 %, surface 60 %), from memory; by hand as a sprinkler (common practice, no source).
    pub const fn efficiency(self) -> Option<f64> {
        Some(match self {
            Watering::Drip => 0.9,
            Watering::ByHand | Watering::Sprinkler => 0.75,
            Watering::Furrow => 0.6,
            Watering::Other => return None,
        })
    }
}

impl Default for Garden {
    /// 20 m² of vegetables in loam, watered by hand the whole year.
    fn default() -> Self {
        let mut garden = Self {
            area: Area::square_metres(20.0),
            crop: Crop::Other,
            crop_coefficient: Count::number(1.0),
            grows_from: 0,
            grows_to: 11,
            soil: Soil::Other,
            available_water: Share::of_one(0.15),
            root_depth: Length::metres(0.5),
            depletion: Share::of_one(0.5),
            watering: Watering::Other,
            efficiency: Share::of_one(0.75),
        };
        garden.choose(Field::Crop, Choice::Crop(Crop::Vegetables));
        garden.choose(Field::Soil, Choice::Soil(Soil::Loam));
        garden.choose(Field::Watering, Choice::Watering(Watering::ByHand));
        garden
    }
}

impl Garden {
    /// Whether it grows in a month (0 to 11).
    pub fn grows_in(&self, month: u8) -> bool {
        if self.grows_from <= self.grows_to {
            (self.grows_from..=self.grows_to).contains(&month)
        } else {
            month >= self.grows_from || month <= self.grows_to
        }
    }

    /// The numbers of the garden, with their ranges.
    pub(super) fn numbers(&mut self) -> Vec<Number<'_>> {
        vec![
            Number::new(Field::GardenArea, 0.0, 100_000.0, &mut self.area),
            Number::new(Field::CropCoefficient, 0.1, 1.5, &mut self.crop_coefficient),
            Number::new(Field::AvailableWater, 0.02, 0.4, &mut self.available_water),
            Number::new(Field::RootDepth, 0.1, 3.0, &mut self.root_depth),
            Number::new(Field::Depletion, 0.05, 0.9, &mut self.depletion),
            Number::new(Field::Efficiency, 0.1, 1.0, &mut self.efficiency),
        ]
    }

    /// Takes a choice; a crop, a soil or a way of watering brings its usual numbers.
    pub(super) fn choose(&mut self, field: Field, choice: Choice) {
        match choice {
            Choice::Crop(crop) => {
                self.crop = crop;
                if let Some((coefficient, root_depth_m, depletion)) = crop.usual() {
                    self.crop_coefficient = Count::number(coefficient);
                    self.root_depth = Length::metres(root_depth_m);
                    self.depletion = Share::of_one(depletion);
                }
            }
            Choice::Soil(soil) => {
                self.soil = soil;
                self.available_water = soil.available_water().map_or(self.available_water, Share::of_one);
            }
            Choice::Watering(watering) => {
                self.watering = watering;
                self.efficiency = watering.efficiency().map_or(self.efficiency, Share::of_one);
            }
            Choice::Month(month) if month < 12 && field == Field::GrowsFrom => self.grows_from = month,
            Choice::Month(month) if month < 12 && field == Field::GrowsTo => self.grows_to = month,
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_season_may_run_over_the_turn_of_the_year() {
        let grows = |from, to| {
            let garden = Garden { grows_from: from, grows_to: to, ..Garden::default() };
            (0..12).filter(|month| garden.grows_in(*month)).collect::<Vec<u8>>()
        };
        assert_eq!(grows(3, 5), [3, 4, 5]);
        assert_eq!(grows(10, 1), [0, 1, 10, 11]);
        assert_eq!(grows(7, 7), [7]);
    }

    #[test]
    fn usual_numbers_are_within_their_ranges() {
        for crop in Crop::ALL {
            for soil in Soil::ALL {
                for watering in Watering::ALL {
                    let mut garden = Garden::default();
                    garden.choose(Field::Crop, Choice::Crop(crop));
                    garden.choose(Field::Soil, Choice::Soil(soil));
                    garden.choose(Field::Watering, Choice::Watering(watering));
                    for number in garden.numbers() {
                        assert!(number.range.holds(number.value.si()), "{crop:?} {soil:?} {watering:?}");
                    }
                }
            }
        }
    }
}

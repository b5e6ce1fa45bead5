//! Roof sections.

use super::part::{Choice, Field, Number, PartId};
use crate::quantity::{Area, Depth, Share};

/// One plane or part of the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct RoofSection {
    /// Its identity.
    pub id: PartId,
    /// What the household calls it.
    pub name: String,
    /// What it is covered with.
    pub material: Material,
    /// Plan (horizontal) area, 0 to 100,000 m².
    pub area: Area,
    /// Share of the rain beyond wetting that runs off, 0 to 1.
    pub runoff_coefficient: Share,
    /// Depth per rain day that only wets the roof, 0 to 20 mm.
    pub wetting_loss: Depth,
    /// Which feeds take its water and what share; what is left is uncollected. Together at most 1.
    pub outlets: Vec<Outlet>,
}

/// A share of a section's water on its way to a feed.
#[derive(Clone, Debug, PartialEq)]
pub struct Outlet {
    /// The feed.
    pub feed: PartId,
    /// The share, 0 to 1.
    pub share: Share,
}

/// What a roof section is covered with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Material {
    /// Metal sheet.
    Metal,
    /// Clay or concrete tile.
    Tile,
    /// Asphalt or fibre shingle.
    Shingle,
    /// Sloping membrane or concrete.
    Concrete,
    /// Flat roof with gravel.
    FlatGravel,
    /// Planted roof, thin soil.
    Planted,
    /// Anything else.
    Other,
}

impl Material {
    /// All materials.
    pub const ALL: [Material; 7] = [
        Material::Metal,
        Material::Tile,
        Material::Shingle,
        Material::Concrete,
        Material::FlatGravel,
        Material::Planted,
        Material::Other,
    ];

    /// The runoff coefficient to assume until the household knows better.
    ///
    /// Sources: metal 0.85, corrugated iron 0.8–0.85 as a long-term mean (Gould & Nissen-Petersen, as taught in a
    /// public training course); sloping hard roofs 0.8, flat with gravel 0.6, extensive planting 0.5 (DIN
    /// 1989-1:2002 Table 3, from memory); anything else 0.75, the low end of Texas Manual on Rainwater Harvesting
    /// 2005, ch. 4 (from memory).
    pub const fn runoff_coefficient(self) -> Share {
        Share::of_one(match self {
            Material::Metal => 0.85,
            Material::Tile | Material::Shingle | Material::Concrete => 0.8,
            Material::FlatGravel => 0.6,
            Material::Planted => 0.5,
            Material::Other => 0.75,
        })
    }
}

impl RoofSection {
    /// The numbers of the section, with their ranges.
    pub fn numbers(&mut self) -> Vec<Number<'_>> {
        let mut numbers = vec![
            Number::new(Field::Area, 0.0, 100_000.0, &mut self.area),
            Number::new(Field::RunoffCoefficient, 0.0, 1.0, &mut self.runoff_coefficient),
            Number::new(Field::WettingLoss, 0.0, 20.0, &mut self.wetting_loss),
        ];
        numbers.extend(
            self.outlets.iter_mut().map(|outlet| Number::new(Field::ShareTo(outlet.feed), 0.0, 1.0, &mut outlet.share)),
        );
        numbers
    }

    /// Takes a choice; the coefficient follows the material.
    pub(super) fn choose(&mut self, choice: Choice) {
        if let Choice::Material(material) = choice {
            self.material = material;
            self.runoff_coefficient = material.runoff_coefficient();
        }
    }

    /// The share of its water that feeds take, 0 and more; above 1 is a finding.
    pub fn collected_share(&self) -> f64 {
        self.outlets.iter().map(|outlet| outlet.share.get()).sum()
    }
}

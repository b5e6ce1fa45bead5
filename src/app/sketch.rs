//! A house from five facts.

use crate::quantity::{Area, Count, Flow, Length, Share, Volume};
use crate::records::cupboard::SiteId;
use crate::site::feed::{Feed, USUAL_CAPTURE, USUAL_DIVERTER};
use crate::site::household::Site;
use crate::site::new_part;
use crate::site::part::PartId;
use crate::site::roof::{Material, Outlet, RoofSection};
use crate::site::system::System;
use crate::site::uses::{Amount, Class, Use};

/// What a person says of a house on its lawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Sketch {
    /// What to call it.
    pub name: String,
    /// Plan area of the roof.
    pub roof: Area,
    /// What it is covered with.
    pub material: Material,
    /// People who live there.
    pub people: Count,
    /// Water for each a day.
    pub per_head: Flow,
    /// Capacity of the tank.
    pub tank: Volume,
    /// The site on this phone whose rain it shares, if any.
    pub rain_of: Option<SiteId>,
}

/// Height assumed for a sketched tank: 2 m, or less for a small one that would be a pipe (common practice, no source).
fn usual_height(capacity: Volume) -> Length {
    // A cylinder as high as it is wide holds π/4 h³.
    let as_wide_as_high = libm::cbrt(4.0 * capacity.get() / 1000.0 / std::f64::consts::PI);
    Length::metres(as_wide_as_high.clamp(0.3, 2.0))
}

impl Sketch {
    /// The site that it describes: one roof section, one feed with a usual diverter, one tank, one use.
    pub fn site(&self) -> Site {
        let ids = [1, 2, 3, 4].map(PartId);
        let [section, feed, tank, using] = ids;
        let system = System {
            sections: vec![RoofSection {
                id: section,
                name: "Roof".to_owned(),
                material: self.material,
                area: self.roof,
                runoff_coefficient: self.material.runoff_coefficient(),
                wetting_loss: new_part::USUAL_WETTING_LOSS,
                outlets: vec![Outlet { feed, share: Share::of_one(1.0) }],
            }],
            feeds: vec![Feed {
                id: feed,
                name: "Downspout".to_owned(),
                tank: Some(tank),
                capture: USUAL_CAPTURE,
                diverter: Some(USUAL_DIVERTER),
            }],
            tanks: vec![new_part::tank(tank, "Tank".to_owned(), self.tank, usual_height(self.tank))],
            uses: vec![Use {
                id: using,
                name: "House".to_owned(),
                class: Class::House,
                tank: Some(tank),
                amount: Amount::PerHead { each: self.per_head, heads: self.people },
                outdoor: false,
                barriers: Vec::new(),
            }],
            ..System::default()
        };
        Site { name: self.name.clone(), system, ..Site::default() }
    }
}

//! Cautions, shown where the decision is made.

use crate::site::roof::Material;
use crate::site::system::Part;
use crate::site::tank::{Build, Cover};
use crate::site::uses::Class;

/// Who decides in the end.
pub const WHO_DECIDES: &str = "Local codes and a licensed practitioner decide.";

/// Shown where a house is sketched or its water is told: what the figures are not.
pub const NOT_DRINKING_WATER: &str =
    "These figures are about how much water, not how clean. Untreated roof water isn't drinking water.";

/// What to be careful of with a part.
pub fn for_part(part: &Part) -> Vec<&'static str> {
    match part {
        Part::Section(section) => {
            let mut cautions = vec![
                "Work from the ground where you can: ladders and wet roofs kill. Keep clear of power lines.",
                "Lead flashing, asbestos, treated timber, fresh paint, flue soot and bird droppings all get into the water.",
            ];
            if section.material == Material::Planted {
                cautions.push("A planted roof colours and feeds the water: not for drinking.");
            }
            cautions
        }
        Part::Feed(_) => vec![
            "A diverter sends dirt aside; it does not make water safe to drink.",
            "Let its hole drip into the garden, not against a wall.",
        ],
        Part::Tank(tank) => {
            let mut cautions = vec![
                "Never enter a tank or cistern: the air in it can kill, and kills those who go in to help.",
                "Every cubic metre weighs a tonne (each US gallon 8.3 lb): the pad must carry it full. Empty, it can blow over.",
                "Lock lids and screen openings against children and mosquitoes.",
            ];
            if tank.build == Build::Cistern {
                cautions.push("An empty buried tank can float up in wet ground.");
            }
            if tank.cover != Cover::Covered {
                cautions.push("Open water drowns children and breeds mosquitoes: cover it.");
            }
            cautions
        }
        Part::TrunkLine(_) => {
            vec![
                "Shut the valve before you open the pipe: a full tank pushes hard. Joined tanks share one contamination too.",
            ]
        }
        Part::Pump(_) => {
            vec!["Electricity beside water: a licensed electrician, a residual-current device, a disconnect in reach."]
        }
        Part::Ration(_) => vec!["Drinking water and animals come first: cut them last, if at all."],
        Part::Use(using) => match using.class {
            Class::Drinking => vec![
                "Untreated roof water isn't drinking water. Sediment and carbon cartridges don't disinfect; boiling does nothing against metals.",
                "No pipe may join this water with the mains: backflow makes neighbours ill.",
            ],
            Class::Travel => vec![
                "Its water is fit to drink only as treated at the tap that fills it, and not for long: clean, closed, out of the sun.",
                "A full tank is heavy and surges: strap it, and look up what may be loaded or towed.",
            ],
            _ => vec!["No pipe may join this water with the mains: backflow makes neighbours ill. Mark these taps."],
        },
        Part::Hauling(_) => {
            vec!["Ask where the water comes from and what the truck carried before. Fill through an air gap."]
        }
    }
}

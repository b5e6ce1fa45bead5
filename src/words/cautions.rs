//! Cautions, shown where the decision is made.

use crate::language::Phrase;
use crate::site::feed::Drain;
use crate::site::roof::Material;
use crate::site::system::Part;
use crate::site::tank::{Build, Cover};
use crate::site::uses::Class;

/// Who decides in the end.
pub const WHO_DECIDES: Phrase = phrase!(
    "Local codes and a licensed practitioner decide.",
    "Deciden las normas locales y un profesional con licencia.",
);

/// Shown where a house is sketched or its water is told: what the figures are not.
pub const NOT_DRINKING_WATER: Phrase = phrase!(
    "These figures are about how much water, not how clean. Untreated roof water isn't drinking water.",
    "Estas cifras dicen cuánta agua hay, no cuán limpia está. El agua del techo sin tratar no es agua potable.",
);

const NO_CROSS_CONNECTION: Phrase = phrase!(
    "No pipe may join this water with the mains: backflow makes neighbours ill.",
    "Ninguna tubería puede unir esta agua con la red pública: el reflujo enferma a los vecinos.",
);

/// What to be careful of with a part.
pub fn for_part(part: &Part) -> Vec<&'static str> {
    match part {
        Part::Section(section) => {
            let mut cautions = vec![
                said!(
                    "Work from the ground where you can: ladders and wet roofs kill. Keep clear of power lines.",
                    "Trabaja desde el suelo siempre que puedas: las escaleras y los techos mojados matan. Mantente \
                     lejos de los cables eléctricos.",
                ),
                said!(
                    "Lead flashing, asbestos, treated timber, fresh paint, flue soot and bird droppings all get into \
                     the water.",
                    "El plomo de los tapajuntas, el asbesto, la madera tratada, la pintura fresca, el hollín de \
                     chimenea y el excremento de aves: todo eso llega al agua.",
                ),
            ];
            if section.material == Material::Planted {
                cautions.push(said!(
                    "A planted roof colours and feeds the water: not for drinking.",
                    "Un techo con plantas da color y nutrientes al agua: no es para beber.",
                ));
            }
            cautions
        }
        Part::Feed(feed) => {
            let mut cautions = vec![said!(
                "A diverter sends dirt aside; it does not make water safe to drink.",
                "Un desviador aparta la suciedad; no hace que el agua sea apta para beber.",
            )];
            if feed.diverter.as_ref().is_some_and(|diverter| matches!(diverter.drain, Drain::Hole { .. })) {
                cautions.push(said!(
                    "Let its hole drip into the garden, not against a wall.",
                    "Deja que su orificio gotee en el huerto, no contra una pared.",
                ));
            }
            cautions
        }
        Part::Tank(tank) => {
            let mut cautions = vec![
                said!(
                    "Never enter a tank or cistern: the air in it can kill, and kills those who go in to help.",
                    "Nunca entres en un tanque ni en una cisterna: el aire de adentro puede matar, y mata a quienes \
                     entran a ayudar.",
                ),
                said!(
                    "Every cubic metre weighs a tonne (each US gallon 8.3\u{a0}lb): the pad must carry it full. Empty, it \
                     can blow over.",
                    "Cada metro cúbico pesa una tonelada (cada galón de EE.\u{a0}UU., 8,3\u{a0}lb): la base debe soportar \
                     el tanque lleno. Vacío, puede volcarlo el viento.",
                ),
                said!(
                    "Lock lids and screen openings against children and mosquitoes.",
                    "Cierra las tapas con llave y pon malla en las aberturas, contra niños y mosquitos.",
                ),
            ];
            if tank.build == Build::Cistern {
                cautions.push(said!(
                    "An empty buried tank can float up in wet ground.",
                    "Un tanque enterrado y vacío puede salir a flote en suelo mojado.",
                ));
            }
            if tank.cover != Cover::Covered {
                cautions.push(said!(
                    "Open water drowns children and breeds mosquitoes: cover it.",
                    "En el agua abierta se ahogan niños y se crían mosquitos: cúbrela.",
                ));
            }
            cautions
        }
        Part::TrunkLine(_) => {
            vec![said!(
                "Shut the valve before you open the pipe: a full tank pushes hard. Joined tanks share one \
                 contamination too.",
                "Cierra la válvula antes de abrir la tubería: un tanque lleno empuja con fuerza. Los tanques unidos \
                 comparten también la contaminación.",
            )]
        }
        Part::Pump(_) => {
            vec![said!(
                "Electricity beside water: a licensed electrician, a residual-current device, a disconnect in reach.",
                "Electricidad junto al agua: un electricista con licencia, un interruptor de falla a tierra (diferencial) y un \
                 interruptor de corte al alcance.",
            )]
        }
        Part::Ration(_) => vec![said!(
            "Drinking water and animals come first: cut them last, if at all.",
            "El agua potable y los animales van primero: recórtalos al final, si acaso.",
        )],
        Part::Use(using) => match using.class {
            Class::Drinking => vec![
                said!(
                    "Untreated roof water isn't drinking water. Sediment and carbon cartridges don't disinfect; \
                     boiling does nothing against metals.",
                    "El agua del techo sin tratar no es agua potable. Los cartuchos de sedimentos y de carbón no \
                     desinfectan; hervir no sirve de nada contra los metales.",
                ),
                NO_CROSS_CONNECTION.text(),
            ],
            Class::Travel => vec![
                said!(
                    "Its water is fit to drink only as treated at the tap that fills it, and not for long: clean, \
                     closed, out of the sun.",
                    "Su agua es apta para beber solo según se trató en el grifo que lo llena, y no por mucho tiempo: \
                     con el tanque limpio, cerrado y fuera del sol.",
                ),
                said!(
                    "A full tank is heavy and surges: strap it, and look up what may be loaded or towed.",
                    "Un tanque lleno pesa mucho y el agua se mece: amárralo y averigua cuánto se puede cargar o \
                     remolcar.",
                ),
            ],
            _ => vec![
                NO_CROSS_CONNECTION.text(),
                said!("Mark the taps that are not for drinking.", "Marca los grifos que no son para beber."),
            ],
        },
        Part::Hauling(_) => {
            vec![said!(
                "Ask where the water comes from and what the truck carried before. Fill through an air gap.",
                "Pregunta de dónde viene el agua y qué llevó antes el camión. Llena con una separación de aire.",
            )]
        }
    }
}

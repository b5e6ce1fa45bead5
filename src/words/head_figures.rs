//! Published daily amounts for one person or animal: their names, and where they are from.

use crate::language::Phrase;
use crate::site::head_figures::HeadFigure;

/// The household's own figure.
pub const OWN: Phrase = phrase!("Our own figure", "Tu propia cifra");

/// What a figure is for.
pub fn name(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::SurvivalDrinking => said!("Person: drinking and food alone", "Persona: solo beber y comer"),
        HeadFigure::LeastAtHome => {
            said!("Person: drinking, food, hygiene at the least", "Persona: beber, comer e higiene, lo mínimo")
        }
        HeadFigure::RuralScheme => {
            said!(
                "Person: drinking, cooking, washing, rural scheme",
                "Persona: beber, cocinar y lavar, red rural de agua"
            )
        }
        HeadFigure::BasicNeeds => said!("Person: most basic needs", "Persona: necesidades más básicas"),
        HeadFigure::BasicNeedsUpper => {
            said!("Person: basic needs, upper end", "Persona: necesidades básicas, extremo superior")
        }
        HeadFigure::FarmPlanning => {
            said!("Person: all purposes, farm planning", "Persona: para todo, planificación de granjas")
        }
        HeadFigure::IndoorOnMains => {
            said!("Person: indoors, home on mains", "Persona: dentro de casa, con red pública")
        }
        HeadFigure::MilkingCowSummer => said!("Cow in milk, summer", "Vaca en ordeño, verano"),
        HeadFigure::MilkingCowWinter => said!("Cow in milk, winter", "Vaca en ordeño, invierno"),
        HeadFigure::CowAndCalfSummer => said!("Cow with calf, summer", "Vaca con ternero, verano"),
        HeadFigure::CowAndCalfWinter => said!("Cow with calf, winter", "Vaca con ternero, invierno"),
        HeadFigure::DryCowSummer => said!("Dry cow, bull or horse, summer", "Vaca seca, toro o caballo, verano"),
        HeadFigure::DryCowWinter => said!("Dry cow, bull or horse, winter", "Vaca seca, toro o caballo, invierno"),
        HeadFigure::FinishingSummer => said!("Finishing steer, summer", "Novillo de engorde, verano"),
        HeadFigure::Horse => said!("Horse, average", "Caballo, promedio"),
        HeadFigure::SheepSummer => said!("Sheep, summer", "Oveja, verano"),
        HeadFigure::SheepWinter => said!("Sheep, winter", "Oveja, invierno"),
        HeadFigure::SheepOrGoat => said!("Sheep or goat", "Oveja o cabra"),
        HeadFigure::HenUpper => said!("Hen, upper end", "Gallina, extremo superior"),
        HeadFigure::HenLower => said!("Hen, lower end", "Gallina, extremo inferior"),
        HeadFigure::Pig => said!("Pig", "Cerdo"),
        HeadFigure::Dog => said!("Dog", "Perro"),
    }
}

/// Where a figure is from.
pub fn source(figure: HeadFigure) -> &'static str {
    match figure {
        HeadFigure::SurvivalDrinking => said!(
            "Sphere Handbook, survival needs, 2.5 to 3\u{a0}L (from memory).",
            "Sphere Handbook, necesidades de supervivencia, de 2,5 a 3\u{a0}L (de memoria).",
        ),
        HeadFigure::LeastAtHome => said!(
            "“Water supply and health”, 7.5\u{a0}L at home for drinking, food and hygiene.",
            "«Water supply and health», 7,5\u{a0}L en casa para beber, comer e higiene.",
        ),
        HeadFigure::RuralScheme => said!(
            "A public rainwater training course: 15 to 25\u{a0}L; the middle.",
            "Un curso público de capacitación sobre agua de lluvia: de 15 a 25\u{a0}L; el punto medio.",
        ),
        HeadFigure::BasicNeeds => said!(
            "WHO, quoted for the human right to water: 50 to 100\u{a0}L; the lower end.",
            "OMS, citada para el derecho humano al agua: de 50 a 100\u{a0}L; el extremo inferior.",
        ),
        HeadFigure::BasicNeedsUpper => said!(
            "WHO, quoted for the human right to water: 50 to 100\u{a0}L; the upper end.",
            "OMS, citada para el derecho humano al agua: de 50 a 100\u{a0}L; el extremo superior.",
        ),
        HeadFigure::FarmPlanning => said!(
            "Planning table, Hindawi 2017, article 8504283: 50 US gal.",
            "Tabla de planificación, Hindawi 2017, artículo 8504283: 50\u{a0}gal de EE.\u{a0}UU.",
        ),
        HeadFigure::IndoorOnMains => said!(
            "Water Research Foundation 4309b (2016): 58.6 US gal (from memory).",
            "Water Research Foundation 4309b (2016): 58,6\u{a0}gal de EE.\u{a0}UU. (de memoria).",
        ),
        HeadFigure::MilkingCowSummer
        | HeadFigure::MilkingCowWinter
        | HeadFigure::CowAndCalfSummer
        | HeadFigure::CowAndCalfWinter
        | HeadFigure::DryCowSummer
        | HeadFigure::DryCowWinter
        | HeadFigure::FinishingSummer
        | HeadFigure::SheepSummer
        | HeadFigure::SheepWinter => said!(
            "Agriculture and Agri-Food Canada, typical daily requirement of livestock.",
            "Agriculture and Agri-Food Canada, necesidad diaria típica del ganado.",
        ),
        HeadFigure::Horse => said!(
            "Kansas State, Livestock Watering Handbook: 10 US gal.",
            "Kansas State, Livestock Watering Handbook: 10\u{a0}gal de EE.\u{a0}UU.",
        ),
        HeadFigure::SheepOrGoat => said!(
            "Planning table, Hindawi 2017, article 8504283: 2 US gal.",
            "Tabla de planificación, Hindawi 2017, artículo 8504283: 2\u{a0}gal de EE.\u{a0}UU.",
        ),
        HeadFigure::HenUpper => said!(
            "Planning table, Hindawi 2017, article 8504283: 12 US gal for 100.",
            "Tabla de planificación, Hindawi 2017, artículo 8504283: 12\u{a0}gal de EE.\u{a0}UU. para 100.",
        ),
        HeadFigure::HenLower => said!(
            "Planning table, Hindawi 2017, article 8504283: 6 US gal for 100.",
            "Tabla de planificación, Hindawi 2017, artículo 8504283: 6\u{a0}gal de EE.\u{a0}UU. para 100.",
        ),
        HeadFigure::Pig => said!(
            "Common practice, no source; more for a sow in milk.",
            "Práctica común, sin fuente; más para una cerda que amamanta.",
        ),
        HeadFigure::Dog => said!(
            "Some 60\u{a0}mL for each kg, a dog of 25\u{a0}kg (common practice, no source).",
            "Unos 60\u{a0}mL por cada kg, un perro de 25\u{a0}kg (práctica común, sin fuente).",
        ),
    }
}

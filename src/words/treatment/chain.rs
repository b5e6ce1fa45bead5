//! The chain of barriers as a whole.

use crate::engine::treatment::chain::{Chain, Disorder};
use crate::engine::treatment::step::Effect;
use crate::engine::treatment::targets::{Germ, THREE_STARS, TWO_STARS};
use crate::quantity::shown;
use crate::site::details::Detail;
use crate::site::system::System;
use crate::site::uses::Class;

/// The head of the section.
pub const TITLE: &str = "Fit to drink?";
/// The lists under it.
pub const BARRIERS: &str = "Barriers, in the way of the water";
/// Where nothing stands between tank and tap.
pub const NO_BARRIERS: &str = "No barrier stands between the tank and this tap.";
/// What stars mean, and whose they are.
pub const ABOUT: &str = "Wanted: WHO's classes for \
                         household treatment (2011, from memory), three stars and two. They are set for water that \
                         people's own waste may have reached, which is the safe side for a roof. Only what is proven \
                         counts; leaf screens, first flush and settling count for nothing.";
/// Said where nothing is known of what fits.
pub const CAUTION: &str = "Untreated roof water isn't drinking water. A figure here is no permit to drink: test, and let \
                           local codes and a licensed practitioner decide. Cautious people boil for babies and the sick.";
/// The caution of taps that nobody is meant to drink from.
pub const HOUSE: &str = "Nobody is meant to drink here: mark these taps. Brushing teeth and rinsing salad is drinking.";

/// The button to a tap's own chain.
pub const OPEN: &str = "Open its barriers";
/// The head of the buttons to each tank's dose, and what stands there.
pub const DOSES: &str = "Chlorine doses";
/// What a dose is for.
pub const DOSES_ABOUT: &str = "To disinfect after contamination, to keep a residual, or to shock pipes: the sheet of each \
                               tank reckons it for your bleach and its age.";

/// The verdict where the last test of something is over a limit of health.
pub fn test_fails(parameters: &[String]) -> String {
    format!(
        "The last test of {} is over the limit. What to do stands under water tests.",
        crate::words::list(parameters)
    )
}

/// The verdict in a sentence.
pub fn verdict(chain: &Chain) -> String {
    match chain.stars {
        3 => "What is entered reaches WHO's highest class, three stars, for all three kinds of germ.".to_owned(),
        2 => "What is entered reaches two stars of WHO for all three kinds of germ.".to_owned(),
        1 => "What is entered reaches one star of WHO: two of the three kinds of germ.".to_owned(),
        _ if chain.logs == [0.0; 3] => "Nothing here is proven to stop any germ.".to_owned(),
        _ => "What is entered reaches no class of WHO.".to_owned(),
    }
}

/// The weakest gap and what would close it.
pub fn weakest(chain: &Chain) -> Option<String> {
    let (germ, lacks) = chain.weakest?;
    let way = match germ {
        Germ::Bacteria | Germ::Viruses => {
            "Boiling, chlorine with enough contact time, or a filter certified as a purifier closes it."
        }
        Germ::Protozoa => {
            "Boiling, a class A ultraviolet lamp, or a filter certified for cysts closes it; chlorine does not."
        }
    };
    let at = germ as usize;
    Some(format!(
        "Weakest: {}. Proven are {} of the {} log wanted (1 log stops nine of ten, 2 log 99 of 100); {} are lacking. {way}",
        super::GERMS[at],
        shown::significant(chain.logs[at], 2),
        shown::significant(THREE_STARS[at], 2),
        shown::significant(lacks, 2),
    ))
}

/// What is upstream of the barriers.
pub fn upstream(chain: &Chain) -> String {
    let (feeds, flushing) = chain.feeds;
    let first_flush = match (feeds, flushing) {
        (0, _) => return "No feed brings it rain.".to_owned(),
        (1, 1) => "Its feed has a first flush that works".to_owned(),
        (1, _) => "Its feed has no first flush that works".to_owned(),
        (feeds, flushing) if feeds == flushing => format!("Its {feeds} feeds have a first flush that works"),
        (feeds, flushing) => format!("Of its {feeds} feeds {flushing} have a first flush that works"),
    };
    format!("{first_flush}; in the tank dirt settles. Both make the water cleaner; neither counts against germs.")
}

/// The table: heads.
pub const COLUMNS: [&str; 4] = ["Against", "Proven", "Two stars", "Three stars"];

/// The table: a row each.
pub fn rows(chain: &Chain) -> Vec<[String; 4]> {
    let logs = |logs: f64| format!("{} log", shown::significant(logs, 2));
    let mut rows: Vec<[String; 4]> = Germ::ALL
        .into_iter()
        .map(|germ| {
            let at = germ as usize;
            [super::capital(super::GERMS[at]), logs(chain.logs[at]), logs(TWO_STARS[at]), logs(THREE_STARS[at])]
        })
        .collect();
    for (what, effect) in [("Dirt", chain.sediment), ("Metals", chain.metals), ("Organics", chain.organics)] {
        let proven = match effect {
            Effect::Nothing => "no",
            Effect::Usually => "unproven",
            Effect::Certified => "certified",
        };
        rows.push([what.to_owned(), proven.to_owned(), String::new(), String::new()]);
    }
    rows
}

/// Something in the wrong order.
pub const fn disorder(disorder: Disorder) -> &'static str {
    match disorder {
        Disorder::LampInDirtyWater => "Put a sediment cartridge (5 µm is usual) before the lamp: dirt shades germs.",
        Disorder::CarbonLast => {
            "Germs grow on carbon and nothing after it disinfects: put it before the lamp or chlorine."
        }
        Disorder::Hazy => {
            "The last test found over 1 NTU: filter finer, or light and chlorine may miss germs in the dirt."
        }
    }
}

/// What is on a roof that its water comes from, and no barrier is certified against.
pub fn unguarded(chain: &Chain, system: &System) -> Vec<String> {
    chain
        .unguarded()
        .map(|(section, question)| {
            format!(
                "{}: {}. No barrier here is certified against it; boiling, light and chlorine do nothing. Take it off the \
                 roof, or keep this roof's water from this tap until a laboratory has tested it.",
                system.name_of(section),
                super::roof::found(question)
            )
        })
        .collect()
}

/// What else is on its roofs.
pub fn also_on_roof(chain: &Chain, system: &System) -> Vec<String> {
    let unguarded: Vec<_> = chain.unguarded().collect();
    let others = chain.on_roofs.iter().filter(|found| !unguarded.contains(found));
    let mut said: Vec<String> = others
        .map(|(section, question)| {
            format!(
                "{}: {}. {}",
                system.name_of(*section),
                super::roof::found(*question),
                super::roof::to_do(*question)
            )
        })
        .collect();
    if let [first, rest @ ..] = chain.not_asked.as_slice() {
        let more = if rest.is_empty() { String::new() } else { format!(" and {} more", rest.len()) };
        said.push(format!(
            "Nobody has answered yet what is on {}{more}: lead, asbestos, timber, paint, flue. Open the roof section.",
            system.name_of(*first)
        ));
    }
    said
}

/// Questions of the roof that a detail asks.
pub const fn is_roof_question(detail: Detail) -> bool {
    matches!(
        detail,
        Detail::LeadFlashing
            | Detail::Asbestos
            | Detail::TreatedTimber
            | Detail::FreshPaint
            | Detail::Flue
            | Detail::Droppings
            | Detail::Spray
    )
}

/// What to be careful of at a tap of this class.
pub const fn caution(class: Class) -> &'static str {
    match class {
        Class::House => HOUSE,
        _ => CAUTION,
    }
}

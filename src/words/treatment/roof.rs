//! What is on a roof and gets into its water.

use crate::engine::checks::{Check, Verdict};
use crate::engine::treatment::sources::{ROOF_QUESTIONS, YES};
use crate::language::Phrase;
use crate::site::details::Detail;
use crate::words::checks::Text;

pub(in crate::words) const TEXT: Text = Text {
    title: Phrase("What gets into its water", "What gets into its water"),
    formula: Phrase("", ""),
    source: Phrase(
        "enHealth Guidance on use of rainwater tanks (2011) and WHO on lead, copper and asbestos: from memory.",
        "enHealth Guidance on use of rainwater tanks (2011) and WHO on lead, copper and asbestos: from memory.",
    ),
    assumes: Phrase(
        "Sediment, carbon, light, chlorine and boiling take none of the metals out, but for cartridges certified for \
              them.",
        "Sediment, carbon, light, chlorine and boiling take none of the metals out, but for cartridges certified for \
              them.",
    ),
    caution: Phrase(
        "Never drill, saw, brush or pressure-wash asbestos: leave it to licensed people. Ladders and wet roofs kill.",
        "Never drill, saw, brush or pressure-wash asbestos: leave it to licensed people. Ladders and wet roofs kill.",
    ),
};

/// What is there.
pub const fn found(question: Detail) -> &'static str {
    match question {
        Detail::LeadFlashing => "lead flashing or lead solder",
        Detail::Asbestos => "asbestos cement",
        Detail::TreatedTimber => "treated timber",
        Detail::FreshPaint => "fresh paint, bitumen or a coating not meant for drinking water",
        Detail::Flue => "a flue that drops soot",
        Detail::Droppings => "birds, bats or overhanging branches",
        Detail::Spray => "farm spray or dust that drifts over",
        _ => "",
    }
}

/// What to do about it.
pub const fn to_do(question: Detail) -> &'static str {
    match question {
        Detail::LeadFlashing => "Paint it over with a coating for drinking water or replace it, and test for lead.",
        Detail::Asbestos => "Leave it unbroken; when it must go, licensed people take it. Not a roof to add to.",
        Detail::TreatedTimber => "Keep its water from drinking taps: copper, chromium, arsenic. Test for arsenic.",
        Detail::FreshPaint => "Let the first rains run off; use coatings certified for drinking water; no lead paint.",
        Detail::Flue => "Keep the part around the flue off the tank; burn dry wood only; test for benzo(a)pyrene.",
        Detail::Droppings => {
            "Cut branches back, keep birds off, flush first: droppings carry Campylobacter and Salmonella."
        }
        Detail::Spray => "Turn the downspouts off the tank when spraying is announced, until rain has rinsed the roof.",
        _ => "",
    }
}

pub(in crate::words) const fn word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => "Nothing found",
        Verdict::Fails => "Take care",
        _ => "Not known",
    }
}

pub(in crate::words) fn said(check: &Check) -> (String, String) {
    let yes: Vec<Detail> = ROOF_QUESTIONS.into_iter().filter(|question| check.went_in(*question) == YES).collect();
    let open = ROOF_QUESTIONS.into_iter().filter(|question| check.went_in(*question) == 0.0).count();
    let verdict = match check.verdict {
        Verdict::Holds => "nothing of what is asked is on this roof".to_owned(),
        Verdict::Fails => {
            let found: Vec<String> = yes.iter().map(|question| found(*question).to_owned()).collect();
            format!("on this roof: {}", crate::words::list(&found))
        }
        _ => format!("{} not answered yet", crate::words::count(open, "question", "questions")),
    };
    let to_do = yes.iter().map(|question| to_do(*question)).collect::<Vec<_>>().join(" ");
    (format!("{verdict}."), to_do)
}

//! What a result of a water test means, and what to do next.

use crate::engine::treatment::limits::{Guards, Judgement, Limit, Whose, limits};
use crate::quantity::shown;
use crate::site::diary::Parameter;

/// The head of the section.
pub const TITLE: &str = "Water tests";
/// Where there are none.
pub const NONE: &str =
    "No test of this water is in the diary. The first that tells something: E. coli, turbidity, pH, lead.";
/// Who decides, and what a strip is worth.
pub const ABOUT: &str = "Limits: WHO guidelines, 4th edition, and EPA (40 CFR 141 and 143), from memory. A strip or home kit \
                         is a hint; an accredited laboratory, local codes and a licensed practitioner decide.";

/// How a result is typed.
pub fn hint(of: Parameter) -> String {
    let unit = of.unit();
    match of {
        Parameter::EColi | Parameter::Coliforms => {
            format!("A number {unit}; or “none”, “present”, “<1”.")
        }
        _ if unit.is_empty() => "A number.".to_owned(),
        _ => format!("A number in {unit}; “<2” where the laboratory says less than 2."),
    }
}

/// The labels of the form.
pub const TESTED_FOR: &str = "Tested for";
/// The field for the value.
pub const FOUND: &str = "Found";
/// The field for the day.
pub const SAMPLED: &str = "Sample taken on";
/// The button.
pub const WRITE: &str = "Write it into the diary";
/// The button that opens the diary's own form.
pub const WRITE_A_TEST: &str = "Write a water test";
/// Said of a text that is no result.
pub const NOT_A_RESULT: &str = "Write a number, “<” and a number, “none” or “present”.";

/// A judgement in a word.
pub const fn word(judgement: Judgement) -> &'static str {
    match judgement {
        Judgement::NoLimit => "To know",
        Judgement::Within => "Within limits",
        Judgement::CannotTell => "Can't tell",
        Judgement::Watch => "Look into it",
        Judgement::Fails => "Over the limit",
    }
}

fn number(value: f64, of: Parameter) -> String {
    let unit = of.unit();
    let blank = if unit.is_empty() { "" } else { "\u{a0}" };
    format!("{}{blank}{unit}", shown::significant(value, 3))
}

/// A limit: "WHO: at most 10 µg/L".
fn limit(limit: &Limit) -> String {
    let whose = match limit.whose {
        Whose::Who => "WHO",
        Whose::Epa => "EPA",
    };
    let range = if limit.most == 0.0 {
        "none in 100 mL".to_owned()
    } else if limit.most.is_infinite() {
        format!("at least {}", number(limit.least, limit.of))
    } else if limit.least > 0.0 {
        format!("{}–{}", shown::significant(limit.least, 3), number(limit.most, limit.of))
    } else {
        format!("at most {}", number(limit.most, limit.of))
    };
    let guards = match limit.guards {
        Guards::Health => "",
        Guards::Treatment => " for treatment to work",
        Guards::Taste => " for taste and pipes",
    };
    format!("{whose}: {range}{guards}")
}

/// All limits of a parameter in a sentence.
pub fn limits_of(of: Parameter, chlorinated: bool) -> String {
    let told: Vec<String> = limits(of, chlorinated).map(limit).collect();
    if told.is_empty() { "No limit is published for it.".to_owned() } else { format!("{}.", told.join("; ")) }
}

/// What a parameter tells.
pub const fn meaning(of: Parameter) -> &'static str {
    match of {
        Parameter::EColi => "Droppings got into this water: germs that make people ill may be in it.",
        Parameter::Coliforms => {
            "They live in soil and on leaves too: a sign that dirt gets in or a filter lets through."
        }
        Parameter::Turbidity => "Cloudy water shades germs from light and eats chlorine.",
        Parameter::Ph => "Rain is a little acid and eats copper, zinc and lead; concrete makes it alkaline.",
        Parameter::FreeChlorine => "What is left of chlorine to act.",
        Parameter::Lead => {
            "From flashings, solder, old paint, brass. It harms children's brains; there is no safe amount."
        }
        Parameter::Copper => "From pipes and gutters, most in water that stood overnight.",
        Parameter::Zinc => "From galvanized roofs and tanks: taste rather than health.",
        Parameter::Cadmium => "From galvanizing and soot: it harms kidneys.",
        Parameter::Arsenic => "From treated timber and dust: it causes cancer over the years.",
        Parameter::Chromium => "From treated timber and coatings.",
        Parameter::Iron => "Rust: stains and taste.",
        Parameter::Manganese => {
            "From soil, sludge and dust: black stains. Too much may harm babies' brains; WHO's value is provisional."
        }
        Parameter::Aluminium => {
            "From bare aluminium that acid rain eats, and from dust. WHO sets no limit; from its safe intake 900 µg/L follow."
        }
        Parameter::Benzopyrene => "From soot, tar and bitumen: it causes cancer over the years.",
        Parameter::Asbestos => "From old roofing. WHO sets no limit for drinking; breathing the dust is what kills.",
        Parameter::Nitrate => "From droppings and fertilizer: dangerous to babies on the bottle.",
        Parameter::Conductivity => "How much is dissolved: rain has little, sea spray and dust bring more.",
        Parameter::Transmittance => {
            "How clear the water is to an ultraviolet lamp; the dose at this tap is reckoned with it."
        }
        Parameter::Other => "",
    }
}

/// What to do next.
pub fn next_step(of: Parameter, judgement: Judgement, boil_minutes: f64) -> String {
    match judgement {
        Judgement::NoLimit => return String::new(),
        Judgement::Within => {
            return "Nothing to do. Test again after work on roof, tank or filters, or when it tastes odd.".to_owned();
        }
        Judgement::CannotTell => return "Ask for a test that goes down to the limit.".to_owned(),
        Judgement::Watch | Judgement::Fails => {}
    }
    let text = match of {
        Parameter::EColi => {
            return format!(
                "Stop drinking it now. Boil every glass for {} min, also for teeth, salad and ice. Look for droppings, dead \
                 animals and open lids; clean the screens; disinfect the tank (its sheet has the dose); change or clean \
                 filters and lamp. Test again when the chlorine is gone, and once more a week later.",
                shown::significant(boil_minutes, 2)
            );
        }
        Parameter::Coliforms => {
            "Look at lids, screens, filter housings; disinfect the pipes after the filters; test again with E. coli."
        }
        Parameter::Turbidity => {
            "Change the sediment cartridge, look for stirred-up sludge; don't rely on lamp or chlorine."
        }
        Parameter::Ph => "Test for lead, copper and zinc after a night's standing; a calcite filter raises pH.",
        Parameter::FreeChlorine => {
            "Too little: dose again and measure after 30 minutes. Over 4 mg/L: let it stand open, or don't drink it yet."
        }
        Parameter::Lead => {
            "Don't give it to babies, children or the pregnant; boiling makes it worse. Find the lead (flashing, solder, \
             brass taps); a cartridge certified for lead at the tap; test the first water of the morning and after a minute."
        }
        Parameter::Copper | Parameter::Zinc | Parameter::Iron => {
            "Let the first water of the morning run; raise the pH; look for the metal that is eaten."
        }
        Parameter::Manganese => {
            "Over 80 µg/L not for babies on the bottle; boiling makes it worse. Take out the sludge, keep dust off; a filter \
             made for manganese; test again."
        }
        Parameter::Aluminium => {
            "Bring the pH near 7; look for bare aluminium on the roof, in gutters and pots; take out the sludge; test again."
        }
        Parameter::Cadmium | Parameter::Arsenic | Parameter::Chromium | Parameter::Benzopyrene => {
            "Don't drink it; boiling does nothing. Find where it comes from: that roof off the tank; a certified cartridge; \
             test again."
        }
        Parameter::Asbestos => "Don't touch the roofing. Let licensed people look at it; keep its water to the garden.",
        Parameter::Nitrate => {
            "Not for babies on the bottle; boiling makes it worse. Look for droppings and fertilizer dust."
        }
        Parameter::Conductivity | Parameter::Transmittance | Parameter::Other => "",
    };
    text.to_owned()
}

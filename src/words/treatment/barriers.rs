//! Barriers: what each is, does and leaves, and what is proven of it.

use crate::engine::checks::Figure;
use crate::engine::treatment::step::{Effect, Step, Why};
use crate::language::Phrase;
use crate::quantity::{Kind, Units, shown};
use crate::site::barrier::BarrierKind;
use crate::site::details::Detail;
use crate::words::checks::Text;

/// The name of a kind.
pub const fn name(kind: BarrierKind) -> &'static str {
    match kind {
        BarrierKind::Sediment => "Sediment cartridge",
        BarrierKind::Carbon => "Carbon cartridge",
        BarrierKind::Ceramic => "Ceramic candle",
        BarrierKind::Membrane => "Membrane",
        BarrierKind::Chlorine => "Chlorine",
        BarrierKind::Ultraviolet => "Ultraviolet lamp",
        BarrierKind::Boiling => "Boiling",
    }
}

const FILTER_SOURCE: &str = "NSF/ANSI 53 and 58 (cysts, 99.95 %), NSF P231 and EPA's guide standard for purifiers 1987 \
                             (6, 4 and 3 log), WHO 2011: all from memory. Life: rated litres over what the tap draws.";
const FILTER_FORMULA: &str = "Logs as certified; days = rated litres ÷ litres a day; used up = (lost now − lost clean) ÷ \
                              (changed at − lost clean).";
const FILTER_ASSUMES: &str = "The certificate is for this very cartridge, in its life and flow. Read the list of what it \
                              is certified for: a mark for taste proves nothing about germs.";

/// What is said of a kind whatever is proven of it.
pub const fn text(kind: BarrierKind) -> Text {
    let (caution, formula, source, assumes) = match kind {
        BarrierKind::Sediment => (
            "Holds back dirt so that what follows can work. It does not disinfect.",
            FILTER_FORMULA,
            FILTER_SOURCE,
            FILTER_ASSUMES,
        ),
        BarrierKind::Carbon => (
            "Takes taste, chlorine and many organic substances. It does not disinfect: germs grow on it.",
            FILTER_FORMULA,
            FILTER_SOURCE,
            FILTER_ASSUMES,
        ),
        BarrierKind::Ceramic => (
            "Stops bacteria and protozoa if so certified and not cracked; not viruses, not dissolved metals.",
            FILTER_FORMULA,
            FILTER_SOURCE,
            FILTER_ASSUMES,
        ),
        BarrierKind::Membrane => (
            "What it stops depends on its pores: reverse osmosis takes most metals too, a microfilter no viruses.",
            FILTER_FORMULA,
            FILTER_SOURCE,
            FILTER_ASSUMES,
        ),
        BarrierKind::Chlorine => (
            "Hardly harms Cryptosporidium and does nothing against metals. Never mix chlorine with anything: gas kills.",
            "CT = free chlorine × minutes; minutes = volume ÷ flow × baffling; log = log of the table × CT ÷ CT of the \
             table.",
            "EPA Disinfection Profiling and Benchmarking, 815-R-20-003 (2020): table B-2 for viruses, the regression of \
             Smith and others (1995) for Giardia.",
            "Bacteria count as viruses do, since they need less. Protozoa count for nothing because of Cryptosporidium. \
             The residual is measured after the contact time. Clear water.",
        ),
        BarrierKind::Ultraviolet => (
            "Needs clear water and power; leaves nothing in the pipe behind it; does nothing against metals. Never look \
             into the lamp; unplug it before you open it.",
            "Dose = tested dose × tested flow ÷ flow × light in 25 mm of this water ÷ light in the tested water; never \
             more than tested.",
            "NSF/ANSI 55 (class A 40 mJ/cm², read; class B 16, from memory); EPA LT2 rule and UV guidance manual 2006, \
             table 1.4; Bolton and Linden 2003 (from memory).",
            "Viruses are counted by the hardest, adenovirus; most others need far less. Class B is for water that is safe \
             already and counts for nothing here. Flow limiter fitted; sleeve clean; lamp changed each year.",
        ),
        BarrierKind::Boiling => (
            "Does nothing against metals or nitrate: it concentrates them. Hot water scalds; keep children off.",
            "1 minute of rolling boil; 3 minutes above 1,524 m (5,000 ft).",
            "EPA Emergency Disinfection of Drinking Water; CDC draws the line at 6,500 ft (2,000 m). Logs: WHO guidelines, \
             4th edition, the lower figures (from memory).",
            "Every glass is boiled, kept covered, and drunk the same day.",
        ),
    };
    Text {
        title: Phrase(name(kind), name(kind)),
        formula: Phrase(formula, formula),
        source: Phrase(source, source),
        assumes: Phrase(assumes, assumes),
        caution: Phrase(caution, caution),
    }
}

const WITHOUT_POWER: &str = " Without power untreated water flows on: a valve that shuts belongs to a class A lamp.";

/// Why a barrier is worth what it is worth.
fn why(step: &Step, units: &Units) -> String {
    let figure = |of: Figure| super::super::checks::figure(of, step.check.figure(of), units);
    match step.why {
        Why::NotAgainstGerms => "Nothing is counted against germs.".to_owned(),
        Why::NotProven => "Nothing proves what it stops, so nothing is counted. Enter its certificate.".to_owned(),
        Why::Certificate if step.logs == [0.0; 3] => "Its certificate names no germs: nothing is counted.".to_owned(),
        Why::Certificate => "Counted as certified.".to_owned(),
        Why::Dose if step.logs == [0.0; 3] => {
            format!("{} mJ/cm² reach the water: not enough to count. Class A asks for 40.", figure(Figure::LampDose))
        }
        Why::Dose => {
            let power = if step.check.went_in(Detail::LampPower) == 0.0 { WITHOUT_POWER } else { "" };
            format!("{} mJ/cm² reach the water at its busiest.{power}", figure(Figure::LampDose))
        }
        Why::DoseNotKnown => {
            "Nothing is counted until its class and the flow that it is tested for are entered.".to_owned()
        }
        Why::LampWornOut => {
            "The lamp is over a year old by the diary: it shines but no longer disinfects. Nothing is counted."
                .to_owned()
        }
        Why::TooCloudy => {
            format!("The last test found {} NTU: in water over 5 NTU nothing is counted.", figure(Figure::Turbidity))
        }
        Why::Contact => {
            let giardia = step.check.figure(Figure::LogGiardia);
            let giardia = if giardia.is_finite() {
                format!(" Of Giardia alone {} log.", shown::significant(giardia, 2))
            } else {
                String::new()
            };
            format!(
                "{} mg·min/L for {} that 4 log of viruses take.{giardia}",
                figure(Figure::Ct),
                figure(Figure::CtForViruses)
            )
        }
        Why::NoResidual => {
            "Nothing is counted until a residual is measured and the time that it acts is known.".to_owned()
        }
        Why::TooAlkaline => "Above pH 10 no table says what chlorine does.".to_owned(),
        Why::Boiled => "Counted if every glass is boiled.".to_owned(),
        Why::TooShort => {
            format!("At this height it must boil for {} min: nothing is counted.", figure(Figure::BoilWanted))
        }
    }
}

/// What a barrier is worth, why, and what else it does.
pub fn sentence(step: &Step, units: &Units) -> String {
    let mut germs = Vec::new();
    for (germ, logs) in super::GERMS.into_iter().zip(step.logs) {
        if logs > 0.0 {
            germs.push(format!("{} log of {germ}", shown::significant(logs, 2)));
        }
    }
    let (mut certified, mut usual) = (Vec::new(), Vec::new());
    for (what, effect) in [("dirt", step.sediment), ("metals", step.metals), ("organic substances", step.organics)] {
        match effect {
            Effect::Nothing => {}
            Effect::Usually => usual.push(what.to_owned()),
            Effect::Certified => certified.push(what.to_owned()),
        }
    }
    let mut said = Vec::new();
    if !germs.is_empty() {
        said.push(format!("{}.", crate::words::list(&germs)));
    }
    said.push(why(step, units));
    for (what, list) in [("Certified against", certified), ("Usually helps against", usual)] {
        if !list.is_empty() {
            said.push(format!("{what} {}.", crate::words::list(&list)));
        }
    }
    said.join(" ")
}

/// Days after which a cartridge is changed anyway: makers' usual advice (from memory, 80 %).
const HALF_A_YEAR: f64 = 183.0;

/// How long a filter lasts, if that is known; how far it is clogged.
pub fn life(step: &Step, units: &Units) -> Vec<String> {
    let days = step.check.figure(Figure::CartridgeLasts);
    let clogged = step.check.figure(Figure::Clogged);
    let mut said = Vec::new();
    if days.is_finite() {
        let lasts = shown::figure(days, Kind::Days, units);
        said.push(if days > HALF_A_YEAR {
            format!(
                "By its litres it lasts {lasts} at this tap; usual advice is to change it after half a year anyway."
            )
        } else {
            format!("By its litres it lasts {lasts} at this tap; cloudy water clogs it sooner.")
        });
    }
    if clogged.is_finite() {
        let share = crate::words::percent(clogged);
        said.push(if clogged >= 1.0 {
            format!("{share} of its pressure allowance is used up: change it now.")
        } else {
            format!("{share} of its pressure allowance is used up.")
        });
    }
    said
}

//! One barrier: what went in, what it is worth, and why no more.

use super::{boiling, cartridge, contact, ultraviolet};
use crate::engine::checks::{Asked, Check, Figure, Subject, Verdict, chosen};
use crate::quantity::DAYS_A_MONTH;
use crate::site::barrier::{Barrier, BarrierKind};
use crate::site::details::Detail;
use crate::site::part::PartId;

/// Whether something holds a thing back.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Effect {
    /// It does not.
    #[default]
    Nothing,
    /// It usually does to some degree; nothing proves it here.
    Usually,
    /// A certificate says so.
    Certified,
}

/// Why a barrier is worth what it is worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// It is not made against germs.
    NotAgainstGerms,
    /// Nothing proves it.
    NotProven,
    /// A certificate or a published class.
    Certificate,
    /// The dose that the lamp gives at this flow and clarity.
    Dose,
    /// The lamp's flow or class is not known.
    DoseNotKnown,
    /// The lamp is too old.
    LampWornOut,
    /// The water is too cloudy.
    TooCloudy,
    /// Nothing takes dirt out of the water before the lamp, and no test found it clear.
    Unfiltered,
    /// Residual and time.
    Contact,
    /// No residual was measured, or no time is known.
    NoResidual,
    /// The water is too alkaline for the tables.
    TooAlkaline,
    /// It boils long enough.
    Boiled,
    /// It does not boil long enough.
    TooShort,
}

/// A barrier with what it is worth.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The barrier.
    pub barrier: Barrier,
    /// What went in and came out.
    pub check: Check,
    /// Logs of bacteria, viruses and protozoa that are proven.
    pub logs: [f64; 3],
    /// Why.
    pub why: Why,
    /// Against sediment.
    pub sediment: Effect,
    /// Against metals.
    pub metals: Effect,
    /// Against organic substances.
    pub organics: Effect,
}

/// What is known of the water at a tap from tests and the balance.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Known {
    /// Turbidity, NTU.
    pub turbidity: Option<f64>,
    /// Whether a test found it so clear, lately enough to count, that light passes.
    pub found_clear: bool,
    /// Whether a barrier before this one takes dirt out.
    pub filtered: bool,
    /// Transmittance of ultraviolet light, a share.
    pub clarity: Option<f64>,
    /// Acidity.
    pub ph: Option<f64>,
    /// Free chlorine, mg/L.
    pub residual: Option<f64>,
    /// Whether that was measured so lately that it still counts.
    pub residual_fresh: bool,
    /// What the tap draws, L/day.
    pub litres_a_day: Option<f64>,
    /// Days since the lamp was changed, where the diary tells.
    pub lamp_days: Option<f64>,
    /// The tap whose busiest flow passes the barriers.
    pub tap: Option<PartId>,
}

/// Turbidity to stay under before disinfection, NTU. Source: WHO (from memory).
pub const CLEAR: f64 = 1.0;
/// Turbidity above which neither light nor chlorine counts, NTU. Source: WHO, upper limit for small supplies (from memory).
pub const CLOUDY: f64 = 5.0;
/// Temperature that is taken for chlorine until somebody measures, °C: water in a cold cellar (common practice, no source).
const COLD_C: f64 = 10.0;
const MINUTES_AN_HOUR: f64 = 60.0;

/// Logs that proofs of filters stand for, in the order of the choices of [`Detail::Proof`]: none; NSF/ANSI 53 or 58 for
/// cysts (99.95 %); NSF P231 and EPA's guide standard for purifiers (1987); two and three stars of WHO (all from memory).
const PROVEN: [[f64; 3]; 5] =
    [[0.0; 3], [0.0, 0.0, 3.3], [6.0, 4.0, 3.0], super::targets::TWO_STARS, super::targets::THREE_STARS];
/// The choice of a certificate of one's own.
const OWN_CERTIFICATE: usize = PROVEN.len();

/// A barrier of a tap.
pub fn step(asked: &Asked<'_>, barrier: Barrier, known: &Known) -> Step {
    let mut step = Step {
        barrier,
        check: Check::new(barrier.id, Subject::Barrier(barrier.kind)),
        logs: [0.0; 3],
        why: Why::NotProven,
        sediment: Effect::Nothing,
        metals: Effect::Nothing,
        organics: Effect::Nothing,
    };
    match barrier.kind {
        BarrierKind::Ultraviolet => lamp(asked, known, &mut step),
        BarrierKind::Chlorine => chlorine(asked, known, &mut step),
        BarrierKind::Boiling => boil(asked, &mut step),
        _ => filter(asked, known, &mut step),
    }
    let needs_clear = matches!(barrier.kind, BarrierKind::Ultraviolet | BarrierKind::Chlorine);
    if needs_clear && let Some(turbidity) = known.turbidity {
        step.check.known(Figure::Turbidity, turbidity);
        if turbidity > CLOUDY {
            (step.logs, step.why) = ([0.0; 3], Why::TooCloudy);
        }
    }
    if step.logs != [0.0; 3] {
        for (figure, logs) in [Figure::LogBacteria, Figure::LogViruses, Figure::LogProtozoa].into_iter().zip(step.logs)
        {
            step.check.finds(figure, logs);
        }
    }
    step.check.verdict = match step.why {
        Why::NotAgainstGerms => Verdict::Tells,
        Why::Certificate | Why::Dose | Why::Contact | Why::Boiled if step.logs != [0.0; 3] => Verdict::Holds,
        Why::NotProven | Why::DoseNotKnown | Why::NoResidual => Verdict::Lacks,
        Why::TooAlkaline => Verdict::Outside,
        _ => Verdict::Fails,
    };
    step
}

fn filter(asked: &Asked<'_>, known: &Known, step: &mut Step) {
    let check = &mut step.check;
    let proof = chosen(check.detail(asked, Detail::Proof));
    if proof == OWN_CERTIFICATE {
        let own = [Detail::CertifiedBacteria, Detail::CertifiedViruses, Detail::CertifiedProtozoa];
        step.logs = own.map(|detail| check.detail(asked, detail));
    } else {
        step.logs = PROVEN.get(proof).copied().unwrap_or_default();
    }
    let certified = |check: &mut Check, detail, usually| {
        if chosen(check.detail(asked, detail)) == 1 { Effect::Certified } else { usually }
    };
    let kind = step.barrier.kind;
    let usually = |so: bool| if so { Effect::Usually } else { Effect::Nothing };
    if kind != BarrierKind::Sediment {
        step.metals = certified(check, Detail::CertifiedMetals, usually(kind == BarrierKind::Membrane));
        let organics = usually(matches!(kind, BarrierKind::Carbon | BarrierKind::Membrane));
        step.organics = certified(check, Detail::CertifiedOrganics, organics);
    }
    step.sediment = usually(kind != BarrierKind::Carbon);
    step.why = match proof {
        0 if matches!(kind, BarrierKind::Sediment | BarrierKind::Carbon) => Why::NotAgainstGerms,
        0 => Why::NotProven,
        _ => Why::Certificate,
    };
    let rated = check.detail(asked, Detail::RatedLitres);
    if let Some(litres) = known.litres_a_day {
        check.known(Figure::LitresADay, litres);
        if let Some(days) = cartridge::days(rated, litres) {
            check.finds(Figure::CartridgeLasts, days);
        }
    }
    let clean = check.detail(asked, Detail::FilterClean);
    let change_at = check.detail(asked, Detail::FilterFouled);
    let now = check.detail_of(asked, Some(step.barrier.id), Detail::FilterNow, clean);
    if let Some(clogged) = cartridge::clogged(clean, now, change_at).filter(|_| now != clean) {
        check.finds(Figure::Clogged, clogged);
    }
}

fn lamp(asked: &Asked<'_>, known: &Known, step: &mut Step) {
    const CLASS_A: usize = 1;
    const CLASS_B: usize = 2;
    let check = &mut step.check;
    let class = chosen(check.detail(asked, Detail::LampClass));
    let tested = match class {
        0 => 0.0,
        CLASS_A => ultraviolet::CLASS_A,
        CLASS_B => ultraviolet::CLASS_B,
        _ => check.detail(asked, Detail::LampDose),
    };
    let tested_flow = check.detail(asked, Detail::LampFlow);
    let tested_clarity = check.detail(asked, Detail::LampClarity);
    let flow = check.detail_of(asked, known.tap, Detail::BusiestFlow, Detail::BusiestFlow.row().usual);
    let clarity = match known.clarity {
        Some(clarity) => check.known(Figure::Clarity, clarity),
        None => check.detail(asked, Detail::WaterClarity),
    };
    check.detail(asked, Detail::LampPower);
    let dose = ultraviolet::dose(tested, tested_flow, tested_clarity, flow, clarity);
    let worn_out = known.lamp_days.is_some_and(|days| {
        check.known(Figure::LampAge, days);
        days > ultraviolet::LAMP_LASTS_MONTHS * DAYS_A_MONTH
    });
    if class == 0 || tested_flow <= 0.0 {
        step.why = Why::DoseNotKnown;
        return;
    }
    check.finds(Figure::LampDose, dose);
    if tested > 0.0 && dose > 0.0 {
        check.finds(Figure::LampFlowAtMost, ultraviolet::flow_at_most(tested_flow, tested_clarity, clarity));
    }
    (step.logs, step.why) = if worn_out {
        ([0.0; 3], Why::LampWornOut)
    } else if known.filtered || known.found_clear {
        (ultraviolet::logs(dose), Why::Dose)
    } else {
        ([0.0; 3], Why::Unfiltered)
    };
}

fn chlorine(asked: &Asked<'_>, known: &Known, step: &mut Step) {
    const STANDING: usize = 1;
    let check = &mut step.check;
    let residual = match known.residual {
        Some(residual) => check.known(Figure::Residual, residual),
        None => check.detail(asked, Detail::Residual),
    };
    let minutes = if chosen(check.detail(asked, Detail::DosedWhere)) == STANDING {
        check.detail(asked, Detail::StandsFor) * MINUTES_AN_HOUR
    } else {
        let volume = check.detail(asked, Detail::ContactVolume);
        let flow = check.detail_of(asked, known.tap, Detail::BusiestFlow, Detail::BusiestFlow.row().usual);
        let baffling = check.detail(asked, Detail::Baffling);
        contact::contact_minutes(volume, flow, baffling)
    };
    let ph = match known.ph {
        Some(ph) => check.known(Figure::Ph, ph),
        None => check.detail(asked, Detail::WaterPh),
    };
    let temperature = check.detail_of(asked, None, Detail::WaterTemperature, COLD_C);
    if residual <= 0.0 || minutes <= 0.0 {
        step.why = Why::NoResidual;
        return;
    }
    let achieved = residual * minutes;
    check.finds(Figure::ContactMinutes, minutes);
    check.finds(Figure::Ct, achieved);
    let Some(viruses) = contact::viruses_4_log_ct(temperature, ph) else {
        step.why = Why::TooAlkaline;
        return;
    };
    check.finds(Figure::CtForViruses, viruses);
    if let Some(giardia) = contact::giardia_3_log_ct(residual, temperature, ph) {
        check.finds(Figure::CtForGiardia, giardia);
        check.finds(Figure::LogGiardia, contact::logs(achieved, giardia, contact::MOST_GIARDIA));
    }
    // What is entered without a day, or was measured long ago, shows what would be reached: it proves nothing today.
    if !known.residual_fresh {
        step.why = Why::NoResidual;
        return;
    }
    let logs = contact::logs(achieved, viruses, contact::MOST_VIRUSES);
    // Bacteria need less chlorine than viruses. Cryptosporidium is hardly harmed, so protozoa as a whole count for nothing.
    (step.logs, step.why) = ([logs, logs, 0.0], Why::Contact);
}

fn boil(asked: &Asked<'_>, step: &mut Step) {
    let check = &mut step.check;
    let altitude = check.of_site(asked, Detail::Altitude);
    let minutes = check.detail(asked, Detail::BoilMinutes);
    let wanted = check.finds(Figure::BoilWanted, boiling::minutes(altitude));
    (step.logs, step.why) = if minutes >= wanted { (boiling::LOGS, Why::Boiled) } else { ([0.0; 3], Why::TooShort) };
}

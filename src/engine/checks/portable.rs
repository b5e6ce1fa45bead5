//! A portable tank filled from the store: how long it lasts whom, what it weighs, what a filling takes.

use super::now::live_l;
use super::{Asked, Check, Figure, Subject, Verdict, chosen};
use crate::engine::levels::store_of;
use crate::site::details::Detail;
use crate::site::uses::{Amount, Class, Use};

/// Water for one person in an emergency, litres a day, least and most: drinking and food.
///
/// Source: Sphere Handbook 2018, water supply standard 2.1, basic survival water needs (from memory): 2.5 to 3, 3 to 6,
/// 2 to 6, in all 7.5 to 15.
pub const INTAKE: [f64; 2] = [2.5, 3.0];
/// The same: cooking.
pub const COOKING: [f64; 2] = [3.0, 6.0];
/// The same: washing.
pub const WASHING: [f64; 2] = [2.0, 6.0];

/// Litres a day for each, in the order of the choice [`Detail::CarriedFor`]; the last choice has a figure of its own.
pub const NEEDS: [f64; 4] =
    [INTAKE[1], INTAKE[1] + COOKING[1], INTAKE[0] + COOKING[0] + WASHING[0], INTAKE[1] + COOKING[1] + WASHING[1]];

/// What one person can lift with care, in kg: 51 lb, the load constant of the revised NIOSH lifting equation (1994).
pub const ONE_LIFTS_KG: f64 = 23.0;

/// What an empty portable tank is taken to weigh, kg a litre (a can of 20 L weighs about 1.2 kg: common practice, no
/// source).
const EMPTY_KG_A_LITRE: f64 = 0.06;

pub(super) fn checks(asked: &Asked<'_>, using: &Use, checks: &mut Vec<Check>) {
    if using.class == Class::Travel {
        checks.push(lasts(asked, using));
        checks.push(weighs(asked, using));
        checks.push(takes(asked, using));
    }
}

/// Litres of one filling: what one time draws where the use is given so, a detail else.
fn litres(asked: &Asked<'_>, check: &mut Check, using: &Use) -> f64 {
    match &using.amount {
        Amount::PerEvent { each, .. } => check.known(Figure::PortableVolume, each.get()),
        _ => check.detail(asked, Detail::PortableVolume),
    }
}

fn lasts(asked: &Asked<'_>, using: &Use) -> Check {
    let mut check = Check::new(using.id, Subject::PortableDays);
    let litres = litres(asked, &mut check, using);
    let system = &asked.site.system;
    let usual = match (&using.amount, &system.habits) {
        (Amount::PerHead { heads, .. }, _) => heads.get(),
        (_, Some(habits)) => habits.people.get(),
        _ => Detail::Travellers.row().usual,
    };
    let people = check.detail_of(asked, Some(using.id), Detail::Travellers, usual.max(1.0));
    let purpose = chosen(check.detail(asked, Detail::CarriedFor));
    let each = match NEEDS.get(purpose) {
        Some(need) => *need,
        None => check.detail(asked, Detail::CarriedEach),
    };
    let days = check.detail(asked, Detail::TripDays);
    check.finds(Figure::PortableNeed, each);
    check.finds(Figure::PortableEach, litres / people / days);
    check.finds(Figure::PortableWanted, each * people * days);
    check.judge(Figure::PortableDays, litres / people / each, days);
    check
}

fn weighs(asked: &Asked<'_>, using: &Use) -> Check {
    let mut check = Check::new(using.id, Subject::PortableWeight);
    let litres = litres(asked, &mut check, using);
    let empty = check.detail_of(asked, Some(using.id), Detail::EmptyMass, litres * EMPTY_KG_A_LITRE);
    let may = check.detail(asked, Detail::MayCarry);
    // A litre of water weighs a kilogram.
    let full = check.finds(Figure::FullMass, litres + empty);
    if may > 0.0 {
        check.judge(Figure::FullMass, may, full);
    }
    check
}

/// What one filling takes out of what the store can give today.
fn takes(asked: &Asked<'_>, using: &Use) -> Check {
    let mut check = Check::new(using.id, Subject::PortableFill);
    let litres = litres(asked, &mut check, using);
    let system = &asked.site.system;
    let Some((answer, live)) = asked.answer.and_then(|answer| {
        let store = store_of(&answer.plan, system, using.tank?)?;
        Some((answer, *live_l(asked)?.get(store)?))
    }) else {
        check.verdict = Verdict::Lacks;
        return check;
    };
    check.known(Figure::LiveNow, live);
    if live > 0.0 {
        check.finds(Figure::FillShare, litres / live);
    }
    let others: f64 = super::again::means_l(answer, |at| system.uses[at].id != using.id).0;
    if others > 0.0 {
        check.finds(Figure::FillDays, litres / others);
    }
    check.judge(Figure::LiveNow, live, litres);
    check
}

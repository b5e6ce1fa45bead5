//! What treatment asks of roof sections and tanks: what is on the roof, and how much chlorine a tank takes.

use super::dose::{Purpose, Stock, amount, left_after};
use super::sources::{NO, ROOF_QUESTIONS, YES};
use crate::engine::checks::{Asked, Check, Figure, Subject, Verdict, chosen, now};
use crate::site::details::Detail;
use crate::site::roof::RoofSection;
use crate::site::tank::Tank;

/// What is on a roof section and gets into its water: each question asked, the verdict from the answers.
pub fn roof(asked: &Asked<'_>, section: &RoofSection) -> Check {
    let mut check = Check::new(section.id, Subject::OnRoof);
    let answers = ROOF_QUESTIONS.map(|question| check.detail(asked, question));
    check.verdict = if answers.contains(&YES) {
        Verdict::Fails
    } else if answers.iter().all(|answer| *answer == NO) {
        Verdict::Holds
    } else {
        Verdict::Lacks
    };
    check
}

/// What a tank can never hold, because its store spills at a lower rim, in L; 0 where the balance doesn't run.
fn stranded_l(asked: &Asked<'_>, tank: &Tank) -> f64 {
    let place = asked.site.system.tanks.iter().position(|other| other.id == tank.id);
    asked.answer.zip(place).and_then(|(answer, place)| answer.plan.stranded(place)).map_or(0.0, |(litres, _)| litres)
}

/// Chlorine for a tank: by purpose, stock, its age, and the water in it; until somebody says how much that is, what the readings
/// say, or else all that it can ever hold, joined as it is.
pub fn dose(asked: &Asked<'_>, tank: &Tank) -> Check {
    let mut check = Check::new(tank.id, Subject::Dose);
    let one = |at: usize, last: usize| at.min(last - 1);
    let purpose = Purpose::ALL[one(chosen(check.detail(asked, Detail::DosePurpose)), Purpose::ALL.len())];
    let stock = Stock::ALL[one(chosen(check.detail(asked, Detail::Stock)), Stock::ALL.len())];
    let read_l = now::read_l(asked, tank.id).map(|read_l| check.known(Figure::ContentNow, read_l));
    let usual_l = read_l.unwrap_or_else(|| tank.capacity().get() - stranded_l(asked, tank));
    let litres = check.detail_of(asked, Some(tank.id), Detail::DosedWater, usual_l);
    let left = if stock.is_liquid() {
        let age = check.detail(asked, Detail::StockAge);
        let temperature = check.detail(asked, Detail::StockTemperature);
        left_after(age, stock.strength(), temperature)
    } else {
        1.0
    };
    let wanted = check.finds(Figure::DoseOfStock, purpose.milligrams_a_litre());
    check.finds(Figure::StrengthLeft, left);
    if litres > 0.0
        && let Some(amount) = amount(wanted, litres, stock.strength() * left)
    {
        check.finds(Figure::StockAmount, amount);
    }
    check
}

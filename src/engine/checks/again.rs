//! Checks that run the whole balance anew: what a diverter costs, what a use takes from the others. They take longer
//! than all the rest and follow from the site and its rain alone.

use super::{Asked, Check, Figure, Subject};
use crate::engine::question::{Answer, answer_under, weather};
use crate::quantity::DAYS_A_YEAR;
use crate::site::household::Site;
use crate::site::part::PartId;
use crate::site::system::Part;
use crate::site::uses::Class;

/// The checks of a part that run the balance anew; none without rain or an answer.
pub fn of_part(asked: &Asked<'_>, part: PartId) -> Vec<Check> {
    if asked.rain.is_none() {
        return Vec::new();
    }
    let check = match asked.site.system.part(part) {
        Some(Part::Feed(feed)) if feed.diverter.is_some() => diverter(asked, feed.id),
        Some(Part::Use(using)) if using.class == Class::Travel => burden(asked, part, &[part]),
        Some(Part::Use(using)) => {
            let uses = super::outbuilding::uses_with(&asked.site.system, &using);
            if uses.first() == Some(&part) { burden(asked, part, &uses) } else { None }
        }
        _ => None,
    };
    check.into_iter().collect()
}

/// The answer for the site after a change, under the same weather.
fn changed(asked: &Asked<'_>, change: impl FnOnce(&mut Site)) -> Option<Answer> {
    let mut site = asked.site.clone();
    change(&mut site);
    answer_under(&site, &weather(asked.site, asked.rain?).ok()?).ok()
}

/// What a diverter costs in a year.
fn diverter(asked: &Asked<'_>, feed: PartId) -> Option<Check> {
    let with = asked.answer?;
    let at = asked.site.system.feeds.iter().position(|other| other.id == feed)?;
    let without = changed(asked, |site| site.system.feeds[at].diverter = None)?;
    let mut check = Check::new(feed, Subject::FlushYield);
    check.finds(Figure::DivertedAYear, with.ledger.flushes.get(at)?.diverted_l / with.series.years());
    check.finds(Figure::UsedWith, with.total.yield_l / with.series.years());
    check.finds(Figure::UsedWithout, without.total.yield_l / without.series.years());
    dry_days(&mut check, with, &without);
    Some(check)
}

/// What some uses take from the others on the same water.
fn burden(asked: &Asked<'_>, part: PartId, uses: &[PartId]) -> Option<Check> {
    let with = asked.answer?;
    let ours = |at: usize| asked.site.system.uses.get(at).is_some_and(|using| uses.contains(&using.id));
    let mut check = Check::new(part, Subject::Burden);
    let (asks, gets) = means_l(with, ours);
    check.finds(Figure::LitresADay, asks);
    if asks > 0.0 {
        check.finds(Figure::GetsShare, gets / asks);
    }
    // Without any use there is no system left to run: then nobody else is touched.
    let without = changed(asked, |site| uses.iter().for_each(|using| site.system.remove(*using)));
    if let Some(without) = without {
        let ((asked_with, got_with), (asked_without, got_without)) =
            (means_l(with, |at| !ours(at)), means_l(&without, |_| true));
        if asked_with > 0.0 && asked_without > 0.0 {
            check.finds(Figure::OthersWith, got_with / asked_with);
            check.finds(Figure::OthersWithout, got_without / asked_without);
            dry_days(&mut check, with, &without);
        }
    }
    Some(check)
}

/// Litres that some uses, by their place, ask for and get on a mean day.
pub(super) fn means_l(answer: &Answer, wanted: impl Fn(usize) -> bool) -> (f64, f64) {
    let (mut asks, mut gets) = (0.0, 0.0);
    let series = &answer.series;
    for (at, (got, short)) in series.yield_l.iter().zip(&series.shortfall_l).enumerate() {
        if wanted(at) {
            let got: f64 = got.iter().sum();
            gets += got;
            asks += got + short.iter().sum::<f64>();
        }
    }
    let days = series.years() * DAYS_A_YEAR;
    (asks / days, gets / days)
}

fn dry_days(check: &mut Check, with: &Answer, without: &Answer) {
    for (figure, answer) in [(Figure::DryDaysWith, with), (Figure::DryDaysWithout, without)] {
        #[expect(clippy::cast_precision_loss, reason = "days of a few centuries")]
        let dry = answer.series.dry_days().filter(|dry| *dry).count() as f64;
        check.finds(figure, dry / answer.series.years());
    }
}

//! The checks of parts against handbooks, worked examples and general-purpose libraries.

mod flush;
mod never;
mod outbuilding;
mod pipes;
mod portable;
mod roof_water;
mod standing;
mod storm;
mod supply;

use eavewater::engine::checks::{Asked, Check, Subject, of_part};
use eavewater::site::demo;
use eavewater::site::details::Detail;
use eavewater::site::household::Site;
use eavewater::site::part::PartId;

/// The demo house, changed.
fn house(change: impl FnOnce(&mut Site)) -> Site {
    let mut site = demo::site();
    change(&mut site);
    site
}

/// The check of a part, without rain.
#[track_caller]
fn check(site: &Site, part: PartId, subject: Subject) -> Check {
    let asked = Asked { site, rain: None, answer: None, read: None, today: chrono::NaiveDate::default() };
    of_part(&asked, part).into_iter().find(|check| check.subject == subject).unwrap()
}

#[track_caller]
fn enter(site: &mut Site, of: Option<PartId>, detail: Detail, value: f64) {
    site.system.details.set(of, detail, Some(value)).unwrap();
}

#[track_caller]
fn near(found: f64, expected: f64, relative: f64) {
    assert!((found / expected - 1.0).abs() <= relative, "{found} is not {expected}");
}

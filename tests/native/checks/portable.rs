use eavewater::engine::checks::portable::{COOKING, INTAKE, NEEDS, WASHING};
use eavewater::engine::checks::{Asked, Figure, Subject, Verdict, again, of_part};
use eavewater::engine::question::answer;
use eavewater::quantity::{Count, Volume};
use eavewater::site::demo;
use eavewater::site::details::Detail;
use eavewater::site::household::Site;
use eavewater::site::part::PartId;
use eavewater::site::rain::Rain;
use eavewater::site::uses::{Amount, Class};
use proptest::prelude::*;

use super::{check, enter, house, near};

/// The demo house with a portable tank, filled once a week.
fn travelling(litres: f64) -> (Site, PartId) {
    let site = house(|site| {
        let mut using = site.system.uses[1].clone();
        using.id = site.system.unused_id();
        using.class = Class::Travel;
        using.barriers.clear();
        using.amount = Amount::PerEvent { each: Volume::litres(litres), a_week: Count::number(1.0) };
        site.system.uses.push(using);
    });
    let id = site.system.uses.last().unwrap().id;
    (site, id)
}

#[test]
fn needs_add_up_to_what_the_handbook_sums_them_to() {
    // Sphere Handbook 2018, basic survival water needs: in all 7.5 to 15 L for each a day (from memory); the same total in
    // WHO/WEDC technical note 9, "How much water is needed in emergencies" (2013, from memory).
    near(INTAKE[0] + COOKING[0] + WASHING[0], 7.5, 1e-12);
    near(INTAKE[1] + COOKING[1] + WASHING[1], 15.0, 1e-12);
    assert_eq!(NEEDS, [3.0, 9.0, 7.5, 15.0]);
}

#[test]
fn a_hundred_litres_last_two_people_as_the_sum_says() {
    // 100 L for two at 15 L are 3⅓ days; for 5 days each has 10 L and 150 L are wanted; to drink only, 16⅔ days.
    let (mut site, id) = travelling(100.0);
    enter(&mut site, Some(id), Detail::TripDays, 5.0);
    let found = check(&site, id, Subject::PortableDays);
    near(found.margin.unwrap().has, 10.0 / 3.0, 1e-12);
    near(found.figure(Figure::PortableEach), 10.0, 1e-12);
    near(found.figure(Figure::PortableWanted), 150.0, 1e-12);
    assert_eq!(found.verdict, Verdict::Fails);
    enter(&mut site, Some(id), Detail::CarriedFor, 0.0);
    near(check(&site, id, Subject::PortableDays).margin.unwrap().has, 100.0 / 6.0, 1e-12);
    enter(&mut site, Some(id), Detail::CarriedFor, 4.0);
    enter(&mut site, Some(id), Detail::CarriedEach, 20.0);
    near(check(&site, id, Subject::PortableDays).margin.unwrap().has, 2.5, 1e-12);
}

#[test]
fn a_full_tank_weighs_its_water_and_itself() {
    let (mut site, id) = travelling(100.0);
    enter(&mut site, Some(id), Detail::EmptyMass, 8.0);
    let found = check(&site, id, Subject::PortableWeight);
    near(found.figure(Figure::FullMass), 108.0, 1e-12);
    assert_eq!(found.verdict, Verdict::Tells, "nobody said what may be loaded");
    enter(&mut site, Some(id), Detail::MayCarry, 75.0);
    assert_eq!(check(&site, id, Subject::PortableWeight).verdict, Verdict::Fails);
    enter(&mut site, Some(id), Detail::MayCarry, 120.0);
    assert_eq!(check(&site, id, Subject::PortableWeight).verdict, Verdict::Holds);
}

#[test]
fn a_filling_is_told_beside_what_the_store_has_and_what_it_costs_the_others() {
    let (site, id) = travelling(100.0);
    assert_eq!(check(&site, id, Subject::PortableFill).verdict, Verdict::Lacks, "without an answer nothing is known");
    let rain = Rain::Record(demo::rain());
    let answer = answer(&site, &rain).unwrap();
    let today = answer.series.dates[200];
    let asked = Asked { site: &site, rain: Some(&rain), answer: Some(&answer), read: None, today };
    let found = of_part(&asked, id).into_iter().find(|check| check.subject == Subject::PortableFill).unwrap();
    near(found.figure(Figure::FillShare) * found.figure(Figure::LiveNow), 100.0, 1e-9);
    // The demo's other uses ask for 84 L in the house and the garden's water; 100 L are less than 1.2 of their days.
    assert!(found.figure(Figure::FillDays) <= 100.0 / 84.0);
    let burden = again::of_part(&asked, id).remove(0);
    near(burden.figure(Figure::LitresADay), 100.0 / 7.0, 1e-9);
    assert!(burden.figure(Figure::OthersWith) <= burden.figure(Figure::OthersWithout));
}

proptest! {
    #[test]
    fn more_people_or_longer_days_never_last_longer_and_more_water_never_weighs_less(
        litres in 1.0..1000.0, people in 1.0..20.0, more in 1.0..5.0, days in 0.5..30.0,
    ) {
        let found = |litres: f64, people: f64, days: f64| {
            let (mut site, id) = travelling(litres);
            enter(&mut site, Some(id), Detail::Travellers, people);
            enter(&mut site, Some(id), Detail::TripDays, days);
            let lasts = check(&site, id, Subject::PortableDays);
            let weight = check(&site, id, Subject::PortableWeight).figure(Figure::FullMass);
            (lasts.margin.unwrap().has, lasts.figure(Figure::PortableEach), weight)
        };
        let here = found(litres, people, days);
        let crowd = found(litres, people * more, days);
        prop_assert!(crowd.0 <= here.0 && crowd.1 <= here.1);
        prop_assert!(found(litres, people, days * more).1 <= here.1);
        let larger = found(litres * more, people, days);
        prop_assert!(larger.0 >= here.0 && larger.2 >= here.2);
    }
}

use eavewater::engine::checks::{Asked, Check, Figure, Subject, Verdict, again, of_part};
use eavewater::engine::question::answer;
use eavewater::quantity::{Flow, Length};
use eavewater::site::demo;
use eavewater::site::details::Detail;
use eavewater::site::household::Site;
use eavewater::site::part::PartId;
use eavewater::site::rain::Rain;
use eavewater::site::uses::Amount;
use proptest::prelude::*;

use super::{check, enter, house, near};

/// The demo house whose second use stands in an outbuilding, 200 m of 25 mm plastic pipe away, tap at 1 m; the tank's
/// outlet at an elevation, by pump or by gravity.
fn cabin(outlet_m: f64, pumped: bool) -> (Site, PartId) {
    let mut site = house(|site| site.system.tanks[0].floor = Length::metres(outlet_m - 0.1));
    let (tank, using) = (site.system.tanks[0].id, site.system.uses[1].id);
    enter(&mut site, Some(tank), Detail::SuppliedBy, f64::from(u8::from(pumped)));
    for (detail, value) in [
        (Detail::Building, 1.0),
        (Detail::PipeBore, 0.025),
        (Detail::PipeLength, 200.0),
        (Detail::TapHeight, 1.0),
        (Detail::TapFlow, 12.0),
    ] {
        enter(&mut site, Some(using), detail, value);
    }
    (site, using)
}

#[test]
fn by_gravity_an_outbuilding_gets_what_the_library_says() {
    // fluids 1.3.1 (Colebrook, roughness 1.5e-6 m, water of 20 °C, K = 5.5) and scipy 1.17: 12 L/min through 200 m of
    // 25 mm lose 2.1359 m; of 10 m are left 76.98 kPa; at 5 kPa it gives 28.041 L/min.
    let (mut site, using) = cabin(11.0, false);
    let found = check(&site, using, Subject::Outbuilding);
    near(found.figure(Figure::DarcyLoss), 2.135_913, 2e-4);
    near(found.margin.unwrap().has, 76.981_53, 2e-4);
    near(found.figure(Figure::OutFlow), 28.040_95, 2e-4);
    assert_eq!(found.verdict, Verdict::Holds);
    // A pipe each: what the house draws takes nothing.
    near(check(&site, using, Subject::BothDraw).figure(Figure::OutBoth), 76.981_53, 2e-4);
    // 100 m of 40 mm shared with a tap of the house that draws 6 L/min: 74.752 kPa, 26.933 L/min.
    enter(&mut site, Some(using), Detail::SharedLength, 100.0);
    enter(&mut site, Some(using), Detail::SharedBore, 0.04);
    let both = check(&site, using, Subject::BothDraw);
    near(both.figure(Figure::HouseFlow), 6.0, 1e-12);
    near(both.figure(Figure::OutBoth), 74.752_01, 2e-4);
    near(both.figure(Figure::OutFlowBoth), 26.933_02, 2e-4);
    assert!(both.figure(Figure::HouseBoth) < both.figure(Figure::HouseAlone));
    // The house's filter takes its part on its own tap, as the check of that tap says.
    let tap = site.system.uses[0].id;
    enter(&mut site, Some(tap), Detail::FilterFouled, 0.0);
    let clean = check(&site, using, Subject::BothDraw).figure(Figure::HouseAlone);
    enter(&mut site, Some(tap), Detail::FilterFouled, 24.0);
    near(check(&site, using, Subject::BothDraw).figure(Figure::HouseAlone), clean - 24.0, 1e-9);
}

#[test]
fn one_pump_serves_house_and_outbuilding() {
    // Worked apart with numpy: the parabola through 0, 35, 60 L/min and 42, 32, 12 m; outlet 0.1 m, tap 3 m, the same
    // pipe: 351.44 kPa alone.
    let (mut site, using) = cabin(0.1, true);
    enter(&mut site, Some(using), Detail::TapHeight, 3.0);
    near(check(&site, using, Subject::Outbuilding).margin.unwrap().has, 351.437, 2e-4);
    // The house is left with a kitchen sink, 1.5 units: by the code's table 1.5 gal/min.
    let both = check(&site, using, Subject::BothDraw);
    near(both.figure(Figure::HouseFlow), 1.5 * 3.785_411_784, 1e-9);
    assert!(both.figure(Figure::OutBoth) < 351.4 && both.figure(Figure::HouseBoth) < both.figure(Figure::HouseAlone));
    // 58 L/min and the house's 5.7 leave neither enough: the pump ends at 60.
    enter(&mut site, Some(using), Detail::TapFlow, 58.0);
    assert_eq!(check(&site, using, Subject::BothDraw).verdict, Verdict::Fails);
}

#[test]
fn uses_of_one_outbuilding_share_its_pipe() {
    let (mut site, using) = cabin(11.0, false);
    let copy = site.system.duplicate(using, "Stable".into()).unwrap();
    let found = check(&site, copy, Subject::Outbuilding);
    assert!(found.margin.is_none(), "the first has the pipe");
    enter(&mut site, Some(copy), Detail::Building, 2.0);
    assert!(check(&site, copy, Subject::Outbuilding).margin.is_some());
    enter(&mut site, Some(copy), Detail::Building, 0.0);
    assert_eq!(check(&site, copy, Subject::Outbuilding).verdict, Verdict::Tells);
}

/// What the use takes from the others.
fn burden(site: &Site, using: PartId) -> Check {
    let rain = Rain::Record(demo::rain());
    let answer = answer(site, &rain).unwrap();
    let today = chrono::NaiveDate::default();
    let asked = Asked { site, rain: Some(&rain), answer: Some(&answer), read: None, today };
    assert!(of_part(&asked, using).iter().all(|check| check.subject != Subject::Burden));
    again::of_part(&asked, using).remove(0)
}

#[test]
fn what_an_outbuilding_takes_is_the_balance_with_it_and_without() {
    let (mut site, using) = cabin(11.0, false);
    site.system.uses[1].amount = Amount::Daily(Flow::litres_a_day(60.0));
    let found = burden(&site, using);
    near(found.figure(Figure::LitresADay), 60.0, 1e-9);
    let mut without = site.clone();
    without.system.remove(using);
    let alone = answer(&without, &Rain::Record(demo::rain())).unwrap();
    near(found.figure(Figure::OthersWithout), alone.reliability.volumetric, 1e-9);
    assert!(found.figure(Figure::OthersWith) <= found.figure(Figure::OthersWithout));
    assert!(found.figure(Figure::DryDaysWith) >= found.figure(Figure::DryDaysWithout));
}

proptest! {
    #[test]
    fn longer_or_narrower_pipe_and_a_drawing_house_never_give_more(
        length in 1.0..800.0, more in 1.0..3.0, bore in 0.015..0.06, outlet in 0.5..15.0, shared in 0.0..200.0,
        pumped: bool,
    ) {
        let found = |length: f64, bore: f64| {
            let (mut site, using) = cabin(outlet, pumped);
            enter(&mut site, Some(using), Detail::PipeLength, length);
            enter(&mut site, Some(using), Detail::PipeBore, bore);
            enter(&mut site, Some(using), Detail::SharedLength, shared);
            let (alone, both) = (check(&site, using, Subject::Outbuilding), check(&site, using, Subject::BothDraw));
            (alone.figure(Figure::OutFlow), both.figure(Figure::OutFlowBoth), alone.margin.unwrap().has)
        };
        let here = found(length, bore);
        let longer = found(length * more, bore);
        let wider = found(length, bore * more);
        prop_assert!(longer.0 <= here.0 * 1.000_001 && longer.1 <= here.1 * 1.000_001 && longer.2 <= here.2);
        prop_assert!(wider.0 >= here.0 * 0.999_999 && wider.2 >= here.2 - 1e-6);
        prop_assert!(here.1 <= here.0 * 1.000_001);
    }

    #[test]
    fn a_thirstier_outbuilding_never_leaves_the_others_more(litres in 0.0..200.0, more in 0.0..200.0) {
        let left = |litres: f64| {
            let (mut site, using) = cabin(11.0, false);
            site.system.uses[1].amount = Amount::Daily(Flow::litres_a_day(litres));
            burden(&site, using).figure(Figure::OthersWith)
        };
        prop_assert!(left(litres + more) <= left(litres) + 1e-9);
    }
}

//! What to change next: small cases worked by hand, and laws on random houses.

use chrono::NaiveDate;
use eavewater::engine::checks::flush::wanted_l;
use eavewater::engine::question::{Answer, answer_beside};
use eavewater::engine::upgrades::{Judged, MOST_STEPS, RankBy, Tally, Upgrades, candidates, ranked};
use eavewater::quantity::{Area, Customary, Flow, Length, Money, Share, Units, Volume};
use eavewater::site::demo;
use eavewater::site::household::Site;
use eavewater::site::part::PartId;
use eavewater::site::prices::Priced;
use eavewater::site::rain::{MissingDays, Rain, RainRecord};
use eavewater::site::rationing::{Cut, RationStep};
use eavewater::site::roof::RoofSection;
use eavewater::site::system::{PartKind, System};
use eavewater::site::trunk::TrunkLine;
use eavewater::site::upgrade::{Into, Upgrade};
use eavewater::site::uses::{Amount, Class};
use eavewater::words::parts::new_name;
use proptest::prelude::*;

use crate::{any_system, one_tank};

fn metric() -> Units {
    Units::customary(Customary::Metric)
}

fn record(depths_mm: &[f64]) -> Rain {
    Rain::Record(RainRecord {
        source: String::new(),
        start: NaiveDate::from_ymd_opt(2010, 3, 1).unwrap(),
        depths_mm: depths_mm.iter().copied().map(Some).collect(),
    })
}

/// A site reckoned by yield after spillage on all days of its record.
fn site(system: System, start: f64) -> Site {
    let mut site = Site { name: "By hand".to_owned(), system, ..Site::default() };
    site.reckoning.start = Share::of_one(start);
    site.reckoning.missing_days = MissingDays::Fill;
    site
}

fn done(site: &Site, rain: &Rain, by: RankBy) -> Upgrades {
    let mut work = Upgrades::new(site, rain, &metric(), by, new_name).unwrap();
    let mut last = work.progress();
    while work.step() {
        assert!((0.0..=1.0).contains(&work.progress()));
        last = last.max(work.progress());
    }
    assert!(work.is_done() && work.progress() == 1.0 && last < 1.0);
    work
}

#[track_caller]
fn is(value: f64, expected: f64) {
    assert!((value - expected).abs() < 1e-9 * expected.abs().max(1.0), "{value} instead of {expected}");
}

/// Days as a share of a year, to turn sums over a hand-worked run to what the program tells for a year.
fn a_year(days: f64) -> f64 {
    365.25 / days
}

#[test]
fn where_water_lacks_the_uncollected_roof_is_best_by_hand() {
    // Ten days of 1 mm on a collected roof of 100 m² and an uncollected one of the same size, nothing lost on the
    // way; an empty tank of 1,000 L; 150 L a day wanted, yield after spillage. As it is: nothing on day 1, then the
    // 100 L of the day before, so 150 + 9 × 50 = 600 L lack and all ten days are dry. With both roofs 200 L a day come:
    // only the 150 L of day 1 lack, and so with half as much roof again, which is enough but dearer. With a fifth less use 120 L a day are wanted: 120 + 9 × 20 = 300 L lack on ten dry
    // days. No tank is ever full, so a further one brings nothing.
    let mut system = one_tank::system(100.0, 1.0, 0.0, 1_000.0, 150.0);
    let other = RoofSection { id: PartId(9), outlets: Vec::new(), ..system.sections[0].clone() };
    system.sections.push(other);
    let site = site(system, 0.0);
    let rain = record(&[1.0; 10]);
    let collect = Upgrade::Collect { section: PartId(9), into: Into::Feed(PartId(2)) };
    let cut = Upgrade::CutUse { using: PartId(4), to: Share::of_one(0.8) };

    let work = done(&site, &rain, RankBy::Water);
    assert_eq!((work.now().dry_days, work.now().worst_dry_days), (10, 10));
    is(work.now().lacking_l_a_year(), 600.0 * a_year(10.0));
    let first = work.ranked();
    let roof = Upgrade::AddRoof { like: PartId(1), area: Area::square_metres(50.0) };
    let upgrades: Vec<Upgrade> = first.iter().map(|one| one.upgrade.clone()).collect();
    assert_eq!(upgrades, [collect.clone(), roof, cut.clone()]);
    is(first[0].water_l_a_year(), 450.0 * a_year(10.0));
    is(first[1].water_l_a_year(), 450.0 * a_year(10.0));
    is(first[2].water_l_a_year(), 300.0 * a_year(10.0));
    is(first[0].worst_year_days(), 9.0);
    is(first[2].dry_days_a_year(), 0.0);

    // Then only the cut still brings something: 120 L instead of 150 L lack on day 1.
    let steps = work.steps();
    assert_eq!(steps.iter().map(|step| step.judged.upgrade.clone()).collect::<Vec<_>>(), [collect, cut.clone()]);
    is(steps[1].judged.water_l_a_year(), 30.0 * a_year(10.0));

    // The cut is free, so it is first by price; by dry days it brings nothing.
    assert_eq!(done(&site, &rain, RankBy::Price).ranked()[0].upgrade, cut);
    assert_eq!(done(&site, &rain, RankBy::DryDays).ranked().len(), 2);
}

#[test]
fn where_a_full_tank_runs_dry_the_cheapest_that_suffices_is_best_by_hand() {
    // 10 mm on day 1 of ten, 100 m², nothing lost; a full tank of 500 L, 100 L a day, yield after spillage. Day 1 gives
    // 100 L and leaves 400 L, days 2 to 5 empty it: 500 L lack on five dry days. Another 250 L, full too, last to day
    // 7 and half of day 8: 250 L lack on three. Another 500 L or more last to the end; the smallest is the cheapest.
    // A fifth less use: 420 L after day 1, empty within day 7: 60 + 3 × 80 = 300 L lack on four days.
    let site = site(one_tank::system(100.0, 1.0, 0.0, 500.0, 100.0), 1.0);
    let rain = record(&[10.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0]);
    let work = done(&site, &rain, RankBy::DryDays);
    assert_eq!(work.now().dry_days, 5);
    let best = &work.ranked()[0];
    assert_eq!(best.upgrade, Upgrade::AddTank { beside: PartId(3), capacity: Volume::litres(500.0) });
    is(best.water_l_a_year(), 500.0 * a_year(10.0));
    assert_eq!(best.after.dry_days, 0);
    let by = |wanted: &Upgrade| work.ranked().into_iter().find(|one| one.upgrade == *wanted).unwrap();
    let smaller = by(&Upgrade::AddTank { beside: PartId(3), capacity: Volume::litres(250.0) });
    assert_eq!(smaller.after.dry_days, 3);
    is(smaller.water_l_a_year(), 250.0 * a_year(10.0));
    let cut = by(&Upgrade::CutUse { using: PartId(4), to: Share::of_one(0.8) });
    assert_eq!(cut.after.dry_days, 4);
    is(cut.water_l_a_year(), 200.0 * a_year(10.0));
    // Nothing lacks then: the sequence ends with it.
    assert_eq!(work.steps().len(), 1);
}

#[test]
fn stranded_capacity_is_won_by_levelling_by_hand() {
    // Two boxes of 1 m² and 2 m, joined, one half a metre higher: 2,000 + 1,500 L are live, 500 L stranded. A downpour
    // on the first of forty days fills them, then 100 L a day: five dry days. With level rims 4,000 L last all forty.
    // Drinking water isn't cut.
    let mut system = one_tank::system(100.0, 1.0, 0.0, 2_000.0, 100.0);
    let mut high = system.tanks[0].clone();
    (high.id, high.floor) = (PartId(8), Length::metres(0.5));
    system.tanks.push(high);
    let ends = [Some(PartId(3)), Some(PartId(8))];
    system.trunk_lines.push(TrunkLine { id: PartId(7), name: "Line".to_owned(), ends, open: true });
    system.uses[0].class = Class::Drinking;
    let site = site(system, 1.0);
    let mut days = [0.0; 40];
    days[0] = 100.0;
    let work = done(&site, &record(&days), RankBy::Price);
    assert_eq!(work.now().dry_days, 5);
    let best = &work.ranked()[0];
    assert_eq!(best.upgrade, Upgrade::Level { tanks: vec![PartId(3)], rim: Length::metres(2.5) });
    is(best.water_l_a_year(), 500.0 * a_year(40.0));
    // One tank raised at 200 for 500 L gained in forty days.
    is(best.price_per_l().unwrap(), 200.0 / (500.0 * a_year(40.0)));
    assert_eq!(best.after.dry_days, 0);
}

#[test]
fn a_shut_valve_a_leak_and_a_lid_are_seen_by_hand() {
    // Two full boxes of 1,000 L behind a shut valve, each with a downspout; all 100 L a day are drawn from the first, which
    // lasts ten of twenty days. Opened, both last all twenty.
    let mut system = one_tank::system(0.0, 1.0, 0.0, 1_000.0, 100.0);
    let mut second = system.tanks[0].clone();
    second.id = PartId(8);
    system.tanks.push(second);
    let mut spout = system.feeds[0].clone();
    (spout.id, spout.tank) = (PartId(9), Some(PartId(8)));
    system.feeds.push(spout);
    let ends = [Some(PartId(3)), Some(PartId(8))];
    system.trunk_lines.push(TrunkLine { id: PartId(7), name: "Line".to_owned(), ends, open: false });
    let rain = record(&[0.0; 20]);
    let work = done(&site(system.clone(), 1.0), &rain, RankBy::DryDays);
    assert_eq!((work.now().dry_days, work.ranked()[0].upgrade.clone()), (10, Upgrade::OpenValve(PartId(7))));
    assert_eq!(work.ranked()[0].after.dry_days, 0);
    // The first alone, with a leak of 100 L a day: empty after five days; mended it lasts ten.
    system.tanks.truncate(1);
    system.feeds.truncate(1);
    system.trunk_lines.clear();
    system.tanks[0].leak = Flow::litres_a_day(100.0);
    let work = done(&site(system, 1.0), &rain, RankBy::Price);
    let mend = work.ranked().into_iter().find(|one| one.upgrade == Upgrade::MendLeak(PartId(3))).unwrap();
    assert_eq!((mend.before.dry_days, mend.after.dry_days), (15, 10));
    is(mend.water_l_a_year(), 500.0 * a_year(20.0));
}

#[test]
fn a_larger_tank_gains_nothing_by_having_been_full_on_the_first_day() {
    // 1,000 L and 100 L a day without rain: ten days, however large the tank that is put beside it.
    let system = one_tank::system(10.0, 1.0, 0.0, 1_000.0, 100.0);
    let beside = |system: &System| Upgrade::AddTank { beside: system.tanks[0].id, capacity: Volume::litres(2_000.0) };
    let work = done(&site(system.clone(), 1.0), &record(&[0.0; 20]), RankBy::Water);
    assert_eq!(work.now().dry_days, 10);
    assert!(!work.ranked().iter().any(|one| matches!(one.upgrade, Upgrade::AddTank { .. })));
    // After 50 mm on 100 m² the house holds 1,000 L of the 5,000, with the other tank 3,000: twenty days more.
    let system = one_tank::system(100.0, 1.0, 0.0, 1_000.0, 100.0);
    let mut days = [0.0; 60];
    days[20] = 50.0;
    let with = Site { system: beside(&system).made(&system, name_for), ..site(system.clone(), 1.0) };
    let dry = |answer: Answer| answer.series.dry_days().filter(|dry| *dry).count();
    let before = dry(answer_beside(&site(system.clone(), 1.0), None, &record(&days)).unwrap());
    assert_eq!(before - dry(answer_beside(&with, Some(&system), &record(&days)).unwrap()), 20);
}

#[test]
fn another_roof_is_judged_by_what_it_brings_and_costs() {
    // 10 m² shed 100 L on a day of 10 mm; 300 L a day are wanted. From an empty tank, by yield after spillage, the first
    // day finds nothing and the other nine use what came the day before: with as much roof again 200 L each instead of
    // 100.
    let system = one_tank::system(10.0, 1.0, 0.0, 1_000.0, 300.0);
    let mut house = site(system, 0.0);
    for (priced, price) in [(Priced::Gutter, 50.0), (Priced::RoofArea, 20.0)] {
        house.prices.set(priced, Money::coins(price));
    }
    let work = done(&house, &record(&[10.0; 10]), RankBy::Water);
    let like = house.system.sections[0].id;
    let wanted = Upgrade::AddRoof { like, area: Area::square_metres(10.0) };
    let ranked = work.ranked();
    let roof = ranked.iter().find(|one| one.upgrade == wanted).unwrap_or_else(|| panic!("{ranked:?}"));
    is(roof.price, 250.0);
    is(roof.water_l_a_year(), 900.0 * a_year(10.0));
    // A section that nothing takes yet is to be collected, not doubled.
    let mut loose = house.system.clone();
    loose.sections[0].outlets.clear();
    assert!(!candidates(&loose, &metric(), name_for).iter().any(|one| matches!(one, Upgrade::AddRoof { .. })));
}

#[test]
fn the_demo_house_is_told_of_its_porch_and_its_stranded_water() {
    let rain = Rain::Record(demo::rain());
    let work = done(&demo::site(), &rain, RankBy::Water);
    let offered = |wanted: fn(&Upgrade) -> bool| work.ranked().iter().any(|one| wanted(&one.upgrade));
    assert!(offered(|upgrade| matches!(upgrade, Upgrade::Collect { section: PartId(3), .. })));
    assert!(offered(|upgrade| matches!(upgrade, Upgrade::Level { .. })));
    assert!(offered(|upgrade| matches!(upgrade, Upgrade::AddTank { .. })));
    // Each step leaves less lacking, until nothing does or there are enough of them.
    let lacking: Vec<f64> = work.steps().iter().map(|step| step.judged.after.lacking_l_a_year()).collect();
    assert!(lacking.is_sorted_by(|before, after| before > after), "{lacking:?}");
    assert!(lacking.len() == MOST_STEPS || lacking.last().is_some_and(|last| *last < 1e-6), "{lacking:?}");
}

#[test]
fn other_prices_and_measures_rank_what_was_run_anew() {
    let rain = Rain::Record(demo::rain());
    let mut site = demo::site();
    let mut work = done(&site, &rain, RankBy::DryDays);
    site.prices.set(Priced::TankLitre, Money::coins(0.01));
    work.reprice(&site.prices);
    while work.step() {}
    assert_eq!(work, done(&site, &rain, RankBy::DryDays));
    work.rank_by(RankBy::Price);
    while work.step() {}
    let anew = done(&site, &rain, RankBy::Price);
    assert_eq!(work.ranked(), anew.ranked());
    assert_eq!(work.steps(), anew.steps());
}

fn measured(days: &eavewater::engine::rain::weather::Weather) -> Rain {
    Rain::Record(RainRecord {
        source: String::new(),
        start: days.dates[0],
        depths_mm: days.depths_mm.iter().copied().map(Some).collect(),
    })
}

fn independently(site: &Site, system: System, rain: &Rain) -> Answer {
    answer_beside(&Site { system, ..site.clone() }, Some(&site.system), rain).unwrap()
}

fn name_for(_: &System, _: PartKind) -> String {
    "New".to_owned()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_a_change_gains_is_the_difference_of_two_runs(
        system in any_system::system(), weather in any_system::weather(), start in 0.0..=1.0,
    ) {
        let (site, rain) = (site(system, start), measured(&weather));
        let before = answer_beside(&site, None, &rain).unwrap();
        let work = done(&site, &rain, RankBy::Water);
        prop_assert_eq!(*work.now(), Tally::from(&before));
        for judged in work.ranked() {
            let after = independently(&site, judged.upgrade.made(&site.system, name_for), &rain);
            let lacks = |answer: &Answer| {
                // Rationing saves water; what it cut lacks.
                let series = &answer.series;
                series.shortfall_l.iter().chain(&series.cut_l).chain(&series.hauled_l).flatten().sum::<f64>()
            };
            let days = weather.dates.len() as f64;
            let gained = (lacks(&before) - lacks(&after)) * a_year(days);
            prop_assert!((judged.water_l_a_year() - gained).abs() <= 1e-6 * lacks(&before).max(1.0) * a_year(days));
            prop_assert_eq!(judged.after, Tally::from(&after));
        }
    }

    #[test]
    fn the_first_step_is_the_top_of_the_ranking_and_each_next_one_of_its_own(
        system in any_system::system(), weather in any_system::weather(), by in prop::sample::select(RankBy::ALL.to_vec()),
    ) {
        // From empty tanks, so that the house after a step begins as the house before it did.
        let (site, rain) = (site(system, 0.0), measured(&weather));
        let work = done(&site, &rain, by);
        let top = work.ranked().into_iter().next();
        prop_assert_eq!(work.steps().first().map(|step| step.judged.clone()), top);
        for (at, pair) in work.steps().windows(2).enumerate() {
            let made = pair[0].judged.upgrade.made(&pair[0].system, new_name);
            prop_assert_eq!(&pair[1].system, &made);
            prop_assert_eq!(pair[1].judged.before, pair[0].judged.after);
            let next = done(&Site { system: made, ..site.clone() }, &rain, by);
            let fresh = |one: &&Judged| {
                !work.steps()[..=at].iter().any(|step| step.judged.upgrade == one.upgrade)
                    || !matches!(one.upgrade, Upgrade::CutUse { .. })
            };
            prop_assert_eq!(Some(pair[1].judged.clone()), next.ranked().iter().find(fresh).cloned());
        }
    }
}

#[test]
fn of_equals_the_one_that_gains_more_then_the_cheaper_is_first() {
    let tally = |dry_days, lacked_l| Tally { years: 1.0, dry_days, lacked_l, ..Tally::default() };
    let judged = |id, after, price| Judged {
        upgrade: Upgrade::MendLeak(PartId(id)),
        before: tally(9, 90.0),
        after,
        price,
        own_price: true,
    };
    let all = [
        judged(1, tally(5, 50.0), 7.0),
        judged(2, tally(5, 40.0), 9.0),
        judged(3, tally(5, 40.0), 8.0),
        judged(4, tally(9, 95.0), 0.0),
    ];
    let order: Vec<Upgrade> = ranked(&all, RankBy::DryDays).into_iter().map(|one| one.upgrade).collect();
    assert_eq!(order, [3, 2, 1].map(|id| Upgrade::MendLeak(PartId(id))));
    // 8/50, 7/40 and 9/50 for each litre.
    let order: Vec<Upgrade> = ranked(&all, RankBy::Price).into_iter().map(|one| one.upgrade).collect();
    assert_eq!(order, [3, 1, 2].map(|id| Upgrade::MendLeak(PartId(id))));
}

#[test]
fn the_amount_of_a_cut_use_is_a_fifth_less() {
    let system = one_tank::system(10.0, 1.0, 0.0, 100.0, 50.0);
    let cut = Upgrade::CutUse { using: PartId(4), to: Share::of_one(0.8) }.made(&system, name_for);
    assert_eq!(cut.uses[0].amount, Amount::Daily(Flow::litres_a_day(40.0)));
}

#[test]
fn no_tank_is_offered_on_a_roof_nor_a_change_that_makes_more_days_dry() {
    let mut site = demo::site();
    let tanks = |site: &Site| {
        let all = candidates(&site.system, &metric(), new_name);
        all.iter().filter(|upgrade| matches!(upgrade, Upgrade::AddTank { .. })).count()
    };
    let on_the_ground = tanks(&site);
    for tank in &mut site.system.tanks {
        tank.floor = Length::metres(tank.floor.get() + 4.0);
    }
    assert!(on_the_ground > 0 && tanks(&site) == 0);

    let tally = |dry_days, lacked_l| Tally { years: 1.0, dry_days, lacked_l, ..Tally::default() };
    let judged = |dry_days| Judged {
        upgrade: Upgrade::Cover(PartId(1)),
        before: tally(10, 500.0),
        after: tally(dry_days, 100.0),
        price: 10.0,
        own_price: true,
    };
    assert_eq!(ranked(&[judged(10)], RankBy::Water).len(), 1);
    assert_eq!(ranked(&[judged(11)], RankBy::Water), []);
}

#[test]
fn a_smaller_first_flush_is_offered_only_as_far_as_its_check_holds() {
    let mut site = demo::site();
    let feed = site.system.feeds[0].id;
    let offered = |site: &Site| {
        let all = candidates(&site.system, &metric(), new_name);
        let smaller = all.iter().find_map(|upgrade| match upgrade {
            Upgrade::FlushVolume { feed: of, volume } if *of == feed => Some(volume.get()),
            _ => None,
        });
        (smaller, wanted_l(&site.system, &site.system.feeds[0]))
    };
    let set = |site: &mut Site, litres| {
        site.system.feeds[0].diverter.as_mut().unwrap().volume = Volume::litres(litres);
    };
    let (none, wanted) = offered(&site);
    assert!(wanted > 20.0 && none.is_none(), "its 20 L are less than the {wanted} L wanted");
    set(&mut site, 1.6 * wanted);
    let (less, _) = offered(&site);
    assert!(less.is_some_and(|less| (wanted..1.4 * wanted).contains(&less)), "{less:?} of {wanted}");
    set(&mut site, 10.0 * wanted);
    let (less, _) = offered(&site);
    assert!(less.is_some_and(|less| (5.0 * wanted..7.0 * wanted).contains(&less)), "half of it: {less:?}");
}

#[test]
fn rationing_saves_water_and_makes_none() {
    let mut site = demo::site();
    site.system.hauling.clear();
    let rain = Rain::Record(demo::rain());
    let tally = |site: &Site| Tally::from(&answer_beside(site, None, &rain).unwrap());
    let before = tally(&site);
    let (using, tank) = (site.system.uses[1].id, site.system.uses[1].tank);
    let cuts = vec![Cut { using, share: Share::of_one(0.6) }];
    let id = PartId(9_999);
    site.system.rationing = vec![RationStep { id, name: "Dry".to_owned(), tank, below: Share::of_one(0.9), cuts }];
    let after = tally(&site);
    assert!(after.yield_l < before.yield_l && after.dry_days <= before.dry_days);
    // As much is wanted as before: what isn't got lacks.
    let wanted = |tally: &Tally| tally.yield_l + tally.lacked_l;
    assert!((wanted(&after) / wanted(&before) - 1.0).abs() < 1e-9);
    assert!(after.lacking_l_a_year() > before.lacking_l_a_year());
}

#[test]
fn nobody_is_told_to_let_animals_drink_less_nor_to_mend_what_is_as_usual() {
    use eavewater::engine::upgrades::candidates;
    use eavewater::site::uses::Class;
    let mut system = eavewater::site::demo::site().system;
    let offered = |system: &System| candidates(system, &Units::default(), new_name);
    let cuts = |system: &System| -> Vec<PartId> {
        let cut = |upgrade: &Upgrade| if let Upgrade::CutUse { using, .. } = upgrade { Some(*using) } else { None };
        offered(system).iter().filter_map(cut).collect()
    };
    let spared: Vec<PartId> = system
        .uses
        .iter()
        .filter(|using| matches!(using.class, Class::Drinking | Class::Animals))
        .map(|using| using.id)
        .collect();
    assert!(spared.len() >= 2 && !cuts(&system).is_empty());
    assert!(cuts(&system).iter().all(|using| !spared.contains(using)));
    let mends = |system: &System| offered(system).iter().any(|one| matches!(one, Upgrade::MendScreen { .. }));
    let usual = eavewater::site::feed::USUAL_CAPTURE;
    system.feeds.iter_mut().for_each(|feed| feed.capture = usual);
    assert!(!mends(&system));
    system.feeds[0].capture = Share::of_one(usual.get() - 0.1);
    assert!(mends(&system));
}

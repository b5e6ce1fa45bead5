use eavewater::engine::ahead::standing::Stands;
use eavewater::engine::balance::first_flush::full_head_l_s;
use eavewater::engine::checks::storm::{Storm, Stream, fill, through};
use eavewater::engine::checks::{Asked, Figure, Subject, Verdict, of_part};
use eavewater::engine::question::answer;
use eavewater::quantity::{Depth, Units};
use eavewater::site::demo;
use eavewater::site::details::Detail;
use eavewater::site::feed::Drain;
use eavewater::site::household::Site;
use eavewater::site::rain::Rain;
use eavewater::site::tank::Cover;
use eavewater::words::checks::said;
use proptest::collection::vec;
use proptest::prelude::*;

use super::{check, house, near};

#[test]
fn a_store_fills_and_spills_as_worked_by_hand() {
    // 100 L/h from the start and 50 L/h from hour 2 into 350 L of room: 200 L by hour 2, then 150 L/h: full at hour 3; by
    // hour 6 200 + 600 L have come, 450 spilled, at last 150 L/h.
    let streams = [Stream { from_h: 0.0, rate_l_h: 100.0 }, Stream { from_h: 2.0, rate_l_h: 50.0 }];
    let filled = fill(&streams, 350.0, 6.0);
    assert_eq!(filled.full_h, Some(3.0));
    near(filled.came_l, 800.0, 1e-12);
    near(filled.spilled_l, 450.0, 1e-12);
    near(filled.spill_rate_l_h(), 150.0, 1e-12);
    // What it spills fills the next: 150 L/h from hour 3 on, 300 L of room: full at hour 5.
    assert_eq!(fill(&filled.spill, 300.0, 6.0).full_h, Some(5.0));
    assert_eq!(fill(&streams, 900.0, 6.0).full_h, None);
}

#[test]
fn a_feed_brings_its_roof_less_wetting_capture_and_first_flush() {
    // South roof: 64 m² · 0.85 · (100 − 0.5) mm · 0.9 = 4,871.5 L in 6 h; 20 L of them go to the diverter. Its hole of 0.5 mm
    // under 20 L in a pipe of 102.26 mm, 2.435 m high, passes 0.62 · 1.9635e-7 m² · √(2 · 9.80665 · 2.435) m/s, 3.029 L/h,
    // from when it is full, after 20 ÷ 811.9 h, to the end.
    let drips = 3.028_8 * (6.0 - 20.0 / 811.92);
    let site = house(|_| ());
    let found = check(&site, site.system.feeds[0].id, Subject::StormFeed);
    near(found.figure(Figure::StormLitres), 4_871.52 - 20.0 - drips, 1e-6);
    near(found.figure(Figure::StormRate), (811.92 - 3.028_8) / 60.0, 1e-6);
    let never = house(|site| site.system.feeds[0].diverter.as_mut().unwrap().drain = Drain::Never);
    near(check(&never, never.system.feeds[0].id, Subject::StormFeed).figure(Figure::StormLitres), 4_871.52, 1e-6);
}

#[test]
fn all_that_comes_stays_or_spills_down_to_the_garden() {
    let (site, rain) = (demo::site(), Rain::Record(demo::rain()));
    let outcome = answer(&site, &rain).unwrap();
    let asked =
        Asked { site: &site, rain: None, answer: Some(&outcome), read: None, today: chrono::NaiveDate::default() };
    let stores = through(&asked, Storm { depth_mm: 300.0, hours: 6.0 }).unwrap();
    // What the holes of the diverters pass once they are full, as above.
    let feeds = site.system.feeds.iter().zip([64.0, 58.0]);
    let dripped = feeds.filter_map(|(feed, m2)| {
        let diverter = feed.diverter.as_ref()?;
        let full_h = diverter.volume.get() / (0.85 * 0.9 * (300.0 - 0.5) * m2 / 6.0);
        Some(full_head_l_s(diverter) * 3600.0 * (6.0 - full_h))
    });
    let roofs = 0.85 * 0.9 * (300.0 - 0.5) * (64.0 + 58.0) - 32.0 - dripped.sum::<f64>();
    let (first, barrel) = (&stores.filled[0], &stores.filled[1]);
    near(first.came_l, roofs, 1e-9);
    assert!(first.spilled_l > 0.0);
    near(first.came_l - first.spilled_l, stores.headroom_l[0], 1e-9);
    near(barrel.came_l, first.spilled_l, 1e-9);
    // What stays of it in the two joined tanks is what the store keeps; 300 mm fill it, so it is its headroom.
    let mut stormy = site.clone();
    stormy.system.details.set(None, Detail::StormDepth, Some(300.0)).unwrap();
    let asked_then = Asked { site: &stormy, ..asked };
    let stays = |tank: usize| {
        let told = of_part(&asked_then, stormy.system.tanks[tank].id);
        told.iter().find(|check| check.subject == Subject::StormTank).unwrap().figure(Figure::StormHere)
    };
    near(stays(0) + stays(1), stores.headroom_l[0], 1e-6);
    let told = of_part(&asked, site.system.tanks[2].id);
    assert!(told.iter().any(|check| check.subject == Subject::StormTank && check.verdict == Verdict::Tells));
    let unknown = check(&site, site.system.tanks[0].id, Subject::StormTank);
    assert_eq!(unknown.verdict, Verdict::Lacks);
}

#[test]
fn rain_falls_into_an_open_tank_as_into_the_balance() {
    // A millimetre is a litre on each square metre.
    let (mut site, rain) = (demo::site(), Rain::Record(demo::rain()));
    let came = |site: &Site| {
        let outcome = answer(site, &rain).unwrap();
        let asked = Asked { site, rain: None, answer: Some(&outcome), read: None, today: chrono::NaiveDate::default() };
        through(&asked, Storm { depth_mm: 150.0, hours: 6.0 }).unwrap().filled[0].came_l
    };
    let covered = came(&site);
    let tank = &mut site.system.tanks[0];
    tank.cover = Cover::Uncovered { evaporation: [Depth::millimetres(0.0); 12] };
    let mouth_m2 = tank.shape.full_volume().get() / 1000.0 / tank.shape.height();
    near(came(&site) - covered, mouth_m2 * 150.0, 1e-9);
}

#[test]
fn chlorine_is_for_the_water_that_was_read() {
    let (mut site, rain) = (demo::site(), Rain::Record(demo::rain()));
    let tank = site.system.tanks[0].clone();
    let outcome = answer(&site, &rain).unwrap();
    let store = outcome.plan.stores.iter().position(|store| store.tanks.contains(&0)).unwrap();
    let today = chrono::NaiveDate::default();
    let mut live_l = vec![0.0; outcome.plan.stores.len()];
    live_l[store] = 2_000.0;
    let read = Stands { read_on: today, last_read_on: today, live_l, unread: Vec::new(), unmeasured: 0 };
    let dosed = |site: &Site, read: Option<&Stands>| {
        let asked = Asked { site, rain: None, answer: Some(&outcome), read, today };
        let check = of_part(&asked, tank.id).into_iter().find(|check| check.subject == Subject::Dose).unwrap();
        (check.went_in(Detail::DosedWater), said(&check, &site.system, &Units::default()).verdict)
    };
    // 2,000 L live in two joined tanks and what lies under their outlets, shared by their areas: as the drawing shows it.
    let (litres, told) = dosed(&site, Some(&read));
    assert!(litres > 0.0 && litres < 2_000.0 + tank.dead_storage().get(), "{litres}");
    assert!(told.contains("by the readings"), "{told}");
    let (full, told) = dosed(&site, None);
    assert!(full > 2.0 * litres && told.contains("as full as it gets"), "{full} {told}");
    site.system.details.set(Some(tank.id), Detail::DosedWater, Some(500.0)).unwrap();
    assert_eq!(dosed(&site, Some(&read)).0, 500.0);
}

proptest! {
    #[test]
    fn water_is_kept_and_more_room_never_spills_more(
        streams in vec((0.0..10.0, 0.0..500.0), 0..5), room in 0.0..3000.0, more in 0.0..500.0, hours in 0.1..12.0,
    ) {
        let streams: Vec<Stream> =
            streams.into_iter().map(|(from_h, rate_l_h)| Stream { from_h, rate_l_h }).collect();
        let filled = fill(&streams, room, hours);
        let came: f64 = streams.iter().map(|stream| stream.rate_l_h * (hours - stream.from_h).max(0.0)).sum();
        prop_assert!((filled.came_l - came).abs() < 1e-9 * came.max(1.0));
        let spilled: f64 = filled.spill.iter().map(|stream| stream.rate_l_h * (hours - stream.from_h)).sum();
        prop_assert!((spilled - filled.spilled_l).abs() < 1e-6 * came.max(1.0), "{spilled} {filled:?}");
        prop_assert!(fill(&streams, room + more, hours).spilled_l <= filled.spilled_l);
    }
}

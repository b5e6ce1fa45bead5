//! Laws that every balance keeps, on thousands of random systems.

use crate::any_system::{system, weather};
use eavewater::engine::balance::plan::plan;
use eavewater::engine::balance::run::{Conduct, Standing, run, run_from};
use eavewater::engine::balance::series::{Inside, run_and_keep};
use eavewater::engine::rain::weather::Weather;
use eavewater::quantity::{Flow, Volume};
use eavewater::site::system::System;
use eavewater::site::uses::Amount;
use proptest::prelude::*;

fn conduct(start_share: f64, inflow_first: f64) -> Conduct {
    Conduct { start_share, inflow_first }
}

fn total_yield(system: &System, weather: &Weather, inflow_first: f64) -> f64 {
    run(&plan(system).unwrap(), weather, conduct(1.0, inflow_first), |_| ()).total().yield_l
}

/// Takes rationing out, and gives gardens by the weather a fixed amount.
fn asks_for_the_same_every_day(system: &mut System) {
    system.rationing.clear();
    for using in &mut system.uses {
        if let Amount::Garden(garden) = &using.amount {
            using.amount = Amount::Daily(Flow::litres_a_day(garden.area.get()));
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_balance_closes(
        system in system(), weather in weather(), start in 0.0..=1.0, inflow_first in prop_oneof![Just(0.0), Just(1.0), 0.0..1.0],
    ) {
        let ledger = run(&plan(&system).unwrap(), &weather, conduct(start, inflow_first), |_| ());
        prop_assert!(ledger.residual().abs() <= 1e-9, "{}", ledger.residual());
    }

    #[test]
    fn days_run_in_two_pieces_are_the_days_run_in_one(
        system in system(), weather in weather(), start in 0.0..=1.0, cut in 0usize..380,
    ) {
        let plan = plan(&system).unwrap();
        let (dates, depths) = (&weather.dates, &weather.depths_mm);
        let cut = cut.min(dates.len());
        let mut whole = Standing::share(&plan, start);
        let mut pieces = whole.clone();
        run_from(&plan, dates, depths, &mut whole, 0.0, |_| true);
        run_from(&plan, &dates[..cut], &depths[..cut], &mut pieces, 0.0, |_| true);
        run_from(&plan, &dates[cut..], &depths[cut..], &mut pieces, 0.0, |_| true);
        prop_assert_eq!(whole, pieces);
    }

    #[test]
    fn rain_on_the_roof_is_accounted_for_drop_by_drop(system in system(), weather in weather()) {
        let total = run(&plan(&system).unwrap(), &weather, conduct(1.0, 0.0), |_| ()).total();
        let parts = total.wetting_l + total.not_run_off_l + total.uncollected_l + total.escaped_l
            + total.first_flush_l + total.inflow_l;
        prop_assert!((parts - total.roof_rain_l).abs() <= 1e-9 * total.roof_rain_l.max(1.0));
    }

    #[test]
    fn no_store_is_below_empty_or_above_its_rim(
        system in system(), weather in weather(), inflow_first in 0.0..=1.0,
    ) {
        let plan = plan(&system).unwrap();
        run(&plan, &weather, conduct(1.0, inflow_first), |day| {
            for (live, store) in day.live_l.iter().zip(&plan.stores) {
                assert!(*live >= 0.0 && *live <= store.joined.live_capacity_l * (1.0 + 1e-12) + 1e-9, "{live}");
            }
            assert!(day.yield_l.iter().zip(&day.demand_l).all(|(given, wanted)| *given >= 0.0 && given <= wanted));
            assert!(day.spill_l.iter().chain(&day.first_flush_l).chain(&day.dead_l).all(|litres| *litres >= 0.0));
        });
    }

    #[test]
    fn the_days_kept_add_up_to_the_ledger(system in system(), weather in weather()) {
        let plan = plan(&system).unwrap();
        let (ledger, series) = run_and_keep(&plan, &weather, conduct(0.5, 0.0));
        let inside = Inside::of(&plan, &series, conduct(0.5, 0.0));
        let total = ledger.total();
        let sum = |columns: &[Vec<f64>]| columns.iter().flatten().sum::<f64>();
        for (days, all) in [
            (sum(&series.yield_l), total.yield_l),
            (sum(&series.shortfall_l), total.shortfall_l()),
            (sum(&inside.inflow_l), total.inflow_l),
            (sum(&inside.first_flush_l), total.first_flush_l),
            (sum(&series.hauled_l), total.hauled_l),
        ] {
            prop_assert!((days - all).abs() <= 1e-6 * all.max(1.0), "{days} {all}");
        }
    }

    #[test]
    fn the_days_kept_are_the_days_that_were_watched(system in system(), weather in weather(), inflow_first in 0.0..=1.0) {
        let plan = plan(&system).unwrap();
        let (_, series) = run_and_keep(&plan, &weather, conduct(0.3, inflow_first));
        let mut number = 0;
        run(&plan, &weather, conduct(0.3, inflow_first), |day| {
            let kept = |columns: &[Vec<f64>]| columns.iter().map(|column| column[number]).collect::<Vec<_>>();
            assert_eq!(kept(&series.live_l), *day.live_l);
            assert_eq!(kept(&series.spill_l), *day.spill_l);
            assert_eq!(kept(&series.yield_l), *day.yield_l);
            assert_eq!(kept(&series.hauled_l), *day.hauled_l);
            assert!(plan.rations.is_empty() || kept(&series.cut_l) == *day.cut_l);
            let lacked: Vec<f64> = day.demand_l.iter().zip(&day.yield_l).map(|(asked, given)| asked - given).collect();
            assert_eq!(kept(&series.shortfall_l), lacked);
            assert_eq!(series.house_shortfall_l[number], day.house_shortfall_l(&plan));
            assert!(series.rationed.iter().zip(&day.rationed).all(|(column, now)| column[number] == *now));
            number += 1;
        });
        prop_assert_eq!(number, series.dates.len());
    }

    #[test]
    fn a_larger_tank_never_yields_less(system in system(), weather in weather(), by in 1.0..4.0, inflow_first in 0.0..=1.0) {
        // One store, so that a larger tank takes its water from no other; no hauling, which would bring less.
        let mut small = system;
        small.tanks.truncate(1);
        let only = small.tanks[0].id;
        small.tanks[0].overflow_to = eavewater::site::tank::OverflowTo::Ground;
        small.tanks[0].cover = eavewater::site::tank::Cover::Covered;
        small.feeds.iter_mut().for_each(|feed| feed.tank = Some(only));
        small.uses.iter_mut().for_each(|using| using.tank = Some(only));
        small.trunk_lines.clear();
        small.pumps.clear();
        small.hauling.clear();
        // What is drawn today must not change what is asked for tomorrow.
        asks_for_the_same_every_day(&mut small);
        // What lies below the outlet grows too and must be filled first: without it the law is exact.
        small.tanks[0].outlet = eavewater::quantity::Length::metres(0.0);
        let mut large = small.clone();
        large.tanks[0].set_capacity(Volume::litres(small.tanks[0].capacity().get() * by));
        let (less, more) = (total_yield(&small, &weather, inflow_first), total_yield(&large, &weather, inflow_first));
        prop_assert!(more >= less - 1e-6 * less.max(1.0), "{more} < {less}");
    }

    #[test]
    fn yield_before_spillage_never_yields_less_than_after(system in system(), weather in weather()) {
        let mut system = system;
        system.hauling.clear();
        system.pumps.clear();
        asks_for_the_same_every_day(&mut system);
        system.tanks.iter_mut().for_each(|tank| {
            tank.overflow_to = eavewater::site::tank::OverflowTo::Ground;
            tank.cover = eavewater::site::tank::Cover::Covered;
            tank.leak = eavewater::quantity::Flow::litres_a_day(0.0);
        });
        let (after, before) = (total_yield(&system, &weather, 0.0), total_yield(&system, &weather, 1.0));
        prop_assert!(before >= after - 1e-6 * after.max(1.0), "{before} < {after}");
    }
}

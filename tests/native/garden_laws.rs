//! Laws of gardens by the weather and of rationing, on thousands of random systems.

use crate::any_system::{system, weather};
use eavewater::engine::balance::plan::plan;
use eavewater::engine::balance::run::{Conduct, run};
use eavewater::engine::balance::series::run_and_keep;
use eavewater::quantity::Share;
use proptest::prelude::*;

const FROM_HALF: Conduct = Conduct { start_share: 0.5, inflow_first: 0.0 };

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_soil_of_every_garden_closes_its_own_balance(system in system(), weather in weather()) {
        let plan = plan(&system).unwrap();
        let (ledger, series) = run_and_keep(&plan, &weather, FROM_HALF);
        let rain: f64 = weather.depths_mm.iter().sum();
        for (tally, garden) in ledger.gardens.iter().zip(&plan.gardens) {
            // From field capacity: what the plants drank beyond rain and watering is what the soil lacks.
            let lacking = tally.drunk_mm - tally.rain_mm - tally.watered_mm;
            let flowed = tally.drunk_mm.max(1.0);
            prop_assert!((lacking - tally.depletion_last_mm).abs() <= 1e-9 * flowed, "{tally:?}");
            prop_assert!((tally.rain_mm + tally.percolated_mm - rain).abs() <= 1e-9 * rain.max(1.0));
            prop_assert!(tally.depletion_last_mm >= 0.0 && tally.depletion_last_mm <= garden.taw_mm * (1.0 + 1e-12));
            prop_assert!(tally.drunk_mm <= tally.potential_mm * (1.0 + 1e-12));
            // Every litre that it got is on its books.
            let drawn: f64 = series.yield_l[tally.using].iter().sum();
            prop_assert!((drawn - tally.watered_mm * garden.litres_per_mm).abs() <= 1e-9 * drawn.max(1.0));
        }
    }

    #[test]
    fn a_garden_never_asks_for_more_than_a_days_use(system in system(), weather in weather()) {
        let plan = plan(&system).unwrap();
        run(&plan, &weather, FROM_HALF, |day| {
            for garden in &plan.gardens {
                let most = garden.etc_mm.iter().copied().fold(0.0, f64::max) * garden.litres_per_mm;
                let wanted = day.demand_l[garden.using] + day.cut_l[garden.using];
                assert!(wanted >= 0.0 && wanted <= most * (1.0 + 1e-12));
            }
        });
    }

    #[test]
    fn a_garden_that_gets_all_it_asks_for_never_suffers(system in system(), weather in weather()) {
        let (ledger, series) = run_and_keep(&plan(&system).unwrap(), &weather, FROM_HALF);
        for tally in &ledger.gardens {
            let met = series.shortfall_l[tally.using].iter().all(|short| *short <= 0.0);
            let uncut = series.cut_l.get(tally.using).is_none_or(|cut| cut.iter().all(|litres| *litres <= 0.0));
            // What bare soil left behind out of season may already be beyond what plants bear.
            let all_year = system.uses[tally.using].grows_all_year();
            if met && uncut && all_year {
                prop_assert_eq!(tally.thirsty_days, 0);
            }
        }
    }

    #[test]
    fn what_is_cut_and_what_is_asked_for_is_what_is_wanted(system in system(), weather in weather()) {
        let plan = plan(&system).unwrap();
        let (ledger, series) = run_and_keep(&plan, &weather, FROM_HALF);
        let total = ledger.total();
        let by_step: f64 = ledger.rations.iter().map(|step| step.cut_l).sum();
        prop_assert!((by_step - total.cut_l).abs() <= 1e-9 * total.cut_l.max(1.0));
        let by_day: f64 = series.cut_l.iter().flatten().sum();
        prop_assert!((by_day - total.cut_l).abs() <= 1e-9 * total.cut_l.max(1.0));
        for (step, tally) in series.rationed.iter().zip(&ledger.rations) {
            prop_assert_eq!(step.iter().filter(|in_force| **in_force).count(), tally.days);
        }
        for (day, cut) in series.cut_l.iter().flat_map(|column| column.iter().enumerate()) {
            prop_assert!(*cut >= 0.0);
            prop_assert!(*cut == 0.0 || series.rationed.iter().any(|step| step[day]), "cut on a day without rationing");
        }
    }

    #[test]
    fn a_step_that_cuts_nothing_changes_nothing(system in system(), weather in weather()) {
        let mut idle = system.clone();
        for step in &mut idle.rationing {
            step.cuts.iter_mut().for_each(|cut| cut.share = Share::of_one(0.0));
        }
        let mut without = system;
        without.rationing.clear();
        let (with, without) = (
            run(&plan(&idle).unwrap(), &weather, FROM_HALF, |_| ()),
            run(&plan(&without).unwrap(), &weather, FROM_HALF, |_| ()),
        );
        prop_assert_eq!(with.by_month, without.by_month);
        prop_assert_eq!(with.gardens, without.gardens);
    }
}

trait Season {
    fn grows_all_year(&self) -> bool;
}

impl Season for eavewater::site::uses::Use {
    fn grows_all_year(&self) -> bool {
        matches!(&self.amount, eavewater::site::uses::Amount::Garden(garden) if (0..12).all(|month| garden.grows_in(month)))
    }
}

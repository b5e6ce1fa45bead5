//! Cases in vectors against the same cases in ordinary code, here in the browser, bit for bit.

use eavewater::engine::balance::lanes::{Eight, Lanes, Plain};
use eavewater::engine::balance::lean::{Calendar, Inflows, Lean};
use eavewater::engine::balance::plan::plan;
use eavewater::engine::balance::run::Conduct;
use eavewater::engine::balance::side_by_side::{Block, Frame};
use wasm_bindgen_test::wasm_bindgen_test;

use crate::kernel::{century, full, small};

#[wasm_bindgen_test]
fn vectors_give_the_bits_of_ordinary_code() {
    let weather = century();
    for system in [small(), full()] {
        let plan = plan(&system).unwrap();
        for conduct in [(1.0, 0.0), (0.3, 0.0), (1.0, 1.0), (0.6, 0.4)] {
            let conduct = Conduct { start_share: conduct.0, inflow_first: conduct.1 };
            let lean = Lean::of(&plan).unwrap();
            let frame = Frame::new(lean, Inflows::of(&plan, &weather), Calendar::of(&weather.dates), conduct);
            let (mut vectors, mut plain) =
                (Block::<Eight>::new(&frame, &[(&plan, &plan)]), Block::<Plain>::new(&frame, &[(&plan, &plan)]));
            while Eight::go_on(&mut vectors, &frame, 5_000) {}
            while Plain::go_on(&mut plain, &frame, 5_000) {}
            for (ours, theirs) in vectors.outcomes(8).iter().zip(plain.outcomes(8)) {
                assert_eq!(ours.yield_l.to_bits(), theirs.yield_l.to_bits());
                assert_eq!(ours.stored_last_l.to_bits(), theirs.stored_last_l.to_bits());
                assert_eq!(
                    (ours.dry_days, ours.good_years, ours.worst_year),
                    (theirs.dry_days, theirs.good_years, theirs.worst_year)
                );
            }
        }
    }
}

//! Tests in a real browser: the storage that sites are kept in, and the same results as natively, bit for bit.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "../bench/kernel.rs"]
mod kernel;
mod same_bits;
mod side_by_side;
mod storage;

use wasm_bindgen_test::{console_log, wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// Not a test of speed: prints it (`make bench`).
#[wasm_bindgen_test]
#[ignore = "a benchmark: make bench"]
fn balance_benchmark() {
    let clock = web_sys::window().and_then(|window| window.performance()).unwrap();
    console_log!("{}", kernel::table(&kernel::time(|| clock.now())));
}
